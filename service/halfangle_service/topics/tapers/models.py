"""Requests and results of the tapers topic."""

from typing import Annotated

from pydantic import Field

from halfangle_service.fields import (
    Angle,
    AngleInput,
    Length,
    LengthOut,
    NumberOut,
    RequestModel,
    ResultModel,
    Unit,
    Units,
)
from halfangle_service.trade.tables.tapers.standard import RowStanding

TaperPerFoot = Annotated[
    float,
    Field(strict=True, allow_inf_nan=False, ge=1e-6, le=1e4),
    Unit("inch_per_foot"),
]
OneInX = Annotated[float, Field(strict=True, allow_inf_nan=False, ge=1e-3, le=1e6), Unit("1")]


class TaperSolveRequest(RequestModel):
    """Any three of large diameter, small diameter, length and slope; more must agree.

    The slope is one of included angle, half angle, taper per foot and 1:x.
    """

    units: Units = Field(description="Unit of every length here and in the answer.")
    large_diameter: Length | None = Field(
        None, description="Diameter of the large end, in `units`.", examples=[0.7]
    )
    small_diameter: Length | None = Field(
        None, description="Diameter of the small end, in `units`.", examples=[0.572]
    )
    length: Length | None = Field(
        None,
        description="Distance between the two diameters along the axis, in `units`.",
        examples=[2.5625],
    )
    included_angle: Annotated[float, AngleInput(gt=0, lt=180)] | None = Field(
        None, description="Angle between opposite surfaces of the cone, in degrees."
    )
    half_angle: Annotated[float, AngleInput(gt=0, lt=90)] | None = Field(
        None, description="Angle between axis and surface, in degrees."
    )
    taper_per_foot: TaperPerFoot | None = Field(
        None,
        description="Inches of diameter a foot of length, whatever `units` are.",
        examples=[0.59941],
    )
    one_in_x: OneInX | None = Field(
        None, description="The x of a taper written 1:x, on the diameter.", examples=[20.0]
    )
    agree_within: Length | None = Field(
        None,
        description="How far diameters that follow from redundant values may differ, in `units`; "
        "0.0001 in or 0.001 mm where left out.",
    )


class TaperSolveResult(ResultModel):
    """The whole taper, its slope in every form."""

    large_diameter: LengthOut = Field(description="Diameter of the large end.")
    small_diameter: LengthOut = Field(description="Diameter of the small end; 0 for a sharp point.")
    length: LengthOut = Field(description="Distance between the two diameters along the axis.")
    slant_length: LengthOut = Field(description="Length along the surface.")
    included_angle: Angle = Field(description="Angle between opposite surfaces of the cone.")
    half_angle: Angle = Field(description="Angle between axis and surface.")
    taper_per_foot: Annotated[float, Unit("inch_per_foot")] = Field(
        description="Inches of diameter a foot of length."
    )
    one_in_x: NumberOut = Field(description="The x of the taper written 1:x, on the diameter.")
    rate_of_taper: Annotated[float, Unit("length_per_length")] = Field(
        description="C = (D - d) / l = 2 tan α, change of diameter for one unit of length."
    )


class StandardShankDimensions(ResultModel):
    """Principal dimensions of a shank and its socket, null where the standard gives none."""

    units: Units = Field(description="Unit of these lengths.")
    gauge_plane_to_end: LengthOut | None = Field(
        description="How far the cone runs on past the gauge plane, at most: a."
    )
    end_diameter: LengthOut | None = Field(
        description="Diameter at the cone's large end, about: D1 = D + C a."
    )
    small_end_diameter: LengthOut | None = Field(
        description="Diameter at the small end, about: d = D − C l1."
    )
    small_end_depth: LengthOut | None = Field(
        description="Gauge plane to the small end, at most: l1."
    )
    plain_shank_depth: LengthOut | None = Field(
        description="Gauge plane to the end of a shank without tang, at most: l2."
    )
    tang_shoulder_depth: LengthOut | None = Field(
        description="Gauge plane to the tang's shoulder, at most: l3."
    )
    tang_end_depth: LengthOut | None = Field(
        description="Gauge plane to the tang's end, at most: l4."
    )
    tang_thickness: LengthOut | None = Field(description="Thickness of the tang: b, h13.")
    socket_bore: LengthOut | None = Field(description="Bore at the socket's small end: d5, H11.")
    socket_depth: LengthOut | None = Field(
        description="Least depth of the socket's cone and bore: l5."
    )
    slot_depth: LengthOut | None = Field(
        description="Gauge plane to the far end of the slot for the drift: l6."
    )
    slot_width: LengthOut | None = Field(description="Width of the slot: g, A13.")
    published: list[str] = Field(description="Names of the columns seen in print.")
    source: str = Field(description="Standard and table.")
    standing: RowStanding = Field(description="How the other columns are had.")


class StandardTaperEntry(ResultModel):
    """A standard taper; lengths in its own units."""

    designation: str = Field(description="Designation to ask by.", examples=["morse-2"])
    name: str = Field(description="Its name.")
    series: str = Field(description="Series that it belongs to.")
    units: Units = Field(description="Unit of its lengths.")
    gauge_diameter: LengthOut = Field(description="Large diameter, at the gauge plane.")
    small_diameter: LengthOut | None = Field(
        description="Small diameter, where the table gives one."
    )
    depth: LengthOut | None = Field(
        description="Distance from the gauge plane to the small diameter, where the table gives it."
    )
    included_angle: Angle = Field(description="Included angle.")
    taper_per_foot: Annotated[float, Unit("inch_per_foot")] = Field(
        description="Inches of diameter a foot of length."
    )
    one_in_x: NumberOut = Field(description="The x of the taper written 1:x, on the diameter.")
    source: str = Field(description="Standard and clause.")
    dimensions: StandardShankDimensions | None = Field(
        description="Principal dimensions of shank and socket, where the table holds them."
    )
    standing: RowStanding = Field(description="How the row is had.")


class StandardTaperList(ResultModel):
    """The standard tapers."""

    tapers: list[StandardTaperEntry] = Field(description="The tapers, by series and number.")
