"""Requests and results: which taper is this, tolerances, notations, other ways to set a taper."""

from typing import Annotated, Literal

from pydantic import Field

from halfangle_service.fields import (
    FINITE,
    Angle,
    ArcsecOut,
    Count,
    Length,
    LengthOut,
    NonNegativeLength,
    NumberOut,
    RequestModel,
    ResultModel,
    Unit,
    Units,
)
from halfangle_service.topics.tapers.models_contact import UNITS_TEXT, TaperPerFootOut
from halfangle_service.topics.tapers.models_slope import TaperSlopeFields
from halfangle_service.trade.tables.tapers.standard import RowStanding
from halfangle_service.trade.tapers.notation import Meaning

Grade = Literal[
    "AT1", "AT2", "AT3", "AT4", "AT5", "AT6", "AT7", "AT8", "AT9", "AT10", "AT11", "AT12"
]
WayName = Literal["swivel", "tailstock set-over", "taper attachment"]


class TaperIdentifyRequest(RequestModel):
    """Two diameters of an unknown taper and the distance between them."""

    units: Units = Field(description=UNITS_TEXT)
    large_diameter: Length = Field(description="Larger diameter measured.", examples=[0.699])
    small_diameter: Length = Field(description="Smaller diameter measured.", examples=[0.599])
    distance: Length = Field(description="Distance between them along the axis.", examples=[2.0])
    diameter_error: NonNegativeLength = Field(
        0.0, description="Largest error of each diameter as measured."
    )
    distance_error: NonNegativeLength = Field(
        0.0, description="Largest error of the distance as measured."
    )
    candidates: Annotated[int, Count(ge=1, le=50)] = Field(
        5, description="How many candidates to list."
    )


class TaperCandidate(ResultModel):
    """A standard taper, and how well it fits."""

    designation: str = Field(description="Designation of the taper or of the rate.")
    name: str = Field(description="Its name or purpose.")
    taper_per_foot: TaperPerFootOut
    misfit_on_diameter: LengthOut = Field(
        description="Measured difference of the diameters less the one that this taper has over "
        "the same distance: the error of measured diameters that would explain it."
    )
    distance_error_to_explain: LengthOut = Field(
        description="Error of the distance that would explain the same misfit."
    )
    misfit_arcsec: ArcsecOut = Field(description="Measured less standard included angle.")
    explained: bool = Field(description="Whether the measuring errors stated explain the misfit.")
    sizes_fit: bool = Field(
        description="Whether both diameters lie within the table's, to 5 %; true for a mere rate."
    )
    source: str = Field(description="Where the row comes from.")
    standing: RowStanding = Field(description="How the row is had.")


class TaperIdentifyResult(ResultModel):
    """Standard tapers, best fit first: those of fitting size before the others."""

    measured_taper_per_foot: Annotated[float, Unit("inch_per_foot")] = Field(
        description="Taper per foot as measured."
    )
    measured_included_angle: Angle = Field(description="Included angle as measured.")
    included_angle_error_arcsec: ArcsecOut = Field(
        description="Largest error of it that the measuring errors stated cause."
    )
    candidates: list[TaperCandidate] = Field(description="Candidates, best first.")


class TaperToleranceRequest(TaperSlopeFields):
    """A cone, and the tolerance of its angle in one of three ways."""

    large_diameter: Length = Field(description="Diameter at the large end.", examples=[40.0])
    length: Length = Field(description="Length of the cone.", examples=[80.0])
    grade: Grade | None = Field(None, description="Grade of the cone angle.", examples=["AT5"])
    included_angle_tolerance_arcsec: (
        Annotated[float, FINITE, Field(gt=0, le=36_000), Unit("arcsecond")] | None
    ) = Field(None, description="Whole tolerance of the included angle.")
    diameter_tolerance_over_length: Length | None = Field(
        None, description="Whole tolerance of the difference of the end diameters."
    )
    disposition: Literal["plus", "minus", "symmetric"] = Field(
        "symmetric", description="Where the tolerance lies to the nominal angle."
    )
    large_diameter_tolerance: NonNegativeLength = Field(
        0.0, description="Tolerance of the large diameter, plus and minus."
    )
    stations: Annotated[list[NonNegativeLength], Field(min_length=1, max_length=50)] | None = Field(
        None, description="Distances from the large end for limits of size; both ends else."
    )


class TaperStationLimits(ResultModel):
    """Limits of size at one station."""

    distance: LengthOut = Field(description="Distance from the large end.")
    nominal: LengthOut = Field(description="Nominal diameter.")
    smallest: LengthOut = Field(description="Smallest diameter.")
    largest: LengthOut = Field(description="Largest diameter.")


class TaperToleranceResult(ResultModel):
    """The tolerance in every form."""

    included_angle: Angle = Field(description="Nominal included angle.")
    tolerance_arcsec: ArcsecOut = Field(description="Whole tolerance of the included angle.")
    tolerance_microradians: Annotated[float, Unit("microradian")] = Field(
        description="The same in microradians."
    )
    diameter_tolerance_over_length: LengthOut = Field(
        description="What it spans on the difference of the end diameters, exactly."
    )
    diameter_tolerance_by_standard: LengthOut = Field(
        description="AT_D = AT_α × length, as the standard states it for slopes up to 1:3."
    )
    smallest_included_angle: Angle = Field(description="Smallest included angle.")
    largest_included_angle: Angle = Field(description="Largest included angle.")
    stations: list[TaperStationLimits] = Field(description="Limits of size.")


class TaperAngleRequest(RequestModel):
    """The angle of a taper as a drawing writes it."""

    text: Annotated[str, Field(min_length=1, max_length=60)] = Field(
        description="`60° included`, `8°17'50\" half`, `30 complement`, `1:20`, `7/24`, `5 %`, "
        "`0.6 in/ft`, `3/4 per foot`, `0.05 per inch`, `D 20 d 18 L 40`.",
        examples=["3/4 per foot"],
    )
    bare_angle_is: Meaning | None = Field(
        None,
        description="Which angle it is where the text does not say; `complement` is from the face.",
    )


class TaperAngleResult(ResultModel):
    """The same angle in every form."""

    read_as: str = Field(description="How the text was read.")
    included_angle: Angle = Field(description="Included angle.")
    half_angle: Angle = Field(description="Half angle.")
    complement: Angle = Field(description="Angle between the surface and the face: 90° − half.")
    half_angle_radians: NumberOut = Field(description="Half angle in radians.")
    taper_per_foot: TaperPerFootOut
    taper_per_length: Annotated[float, Unit("length_per_length")] = Field(
        description="Diameter for one unit of length."
    )
    one_in_x: NumberOut = Field(description="The x of 1:x, on the diameter.")
    percent: Annotated[float, Unit("percent")] = Field(description="Taper in percent.")


class TaperSetOverRequest(TaperSlopeFields):
    """A taper to be set, and how finely each way can be set."""

    work_length: Length = Field(
        description="Length of the work between its center holes.", examples=[9.0]
    )
    scale_radius: Length = Field(
        description="Radius of the swivel's scale, or of an indicator from its pivot.",
        examples=[6.0],
    )
    scale_reading_error: NonNegativeLength = Field(
        description="Error of setting along that scale.", examples=[0.005]
    )
    set_over_error: NonNegativeLength = Field(
        description="Error of setting the tailstock over.", examples=[0.002]
    )
    work_length_error: NonNegativeLength = Field(
        0.0, description="Error of the length between the center holes."
    )
    attachment_length: Length = Field(
        description="Length of the taper attachment's bar between its pointers.", examples=[12.0]
    )
    attachment_error: NonNegativeLength = Field(
        description="Error of setting the bar at that length.", examples=[0.005]
    )


class TaperWayToSet(ResultModel):
    """One way to set a taper and its error."""

    way: WayName = Field(description="The way.")
    setting: LengthOut = Field(
        description="Arc on the scale, set-over, or offset of the bar at its length."
    )
    half_angle_error_arcsec: ArcsecOut = Field(description="Largest error of the half angle.")
    error_on_diameter: LengthOut = Field(
        description="What it makes over the work's length on the diameter."
    )


class TaperSetOverResult(ResultModel):
    """Ways to set the taper, the surest first."""

    half_angle: Angle = Field(description="Half angle to swivel the workhead or table.")
    scale_arc: LengthOut = Field(description="Arc along the scale.")
    scale_chord: LengthOut = Field(description="Chord across the scale: 2 r sin(α / 2).")
    set_over: LengthOut = Field(description="Set-over on ball centers: L sin α.")
    set_over_by_rule: LengthOut = Field(description="Set-over by the shop rule: L tan α.")
    rule_error_arcsec: ArcsecOut = Field(
        description="Error of the half angle that the rule's set-over makes."
    )
    ways: list[TaperWayToSet] = Field(description="Each way with its error, the surest first.")


class TaperRateEntry(ResultModel):
    """A standard rate of taper or cone angle."""

    designation: str = Field(description="Designation to ask by.", examples=["1-in-20"])
    purpose: str = Field(description="What it is for.")
    included_angle: Angle = Field(description="Cone angle.")
    one_in_x: NumberOut = Field(description="The x of 1:x, on the diameter.")
    taper_per_foot: TaperPerFootOut
    source: str = Field(description="Standard and table.")
    standing: RowStanding = Field(description="How the row is had.")


class TaperRateList(ResultModel):
    """The standard rates."""

    rates: list[TaperRateEntry] = Field(description="The rates, as the tables order them.")
