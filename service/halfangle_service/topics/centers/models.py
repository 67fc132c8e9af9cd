"""Requests and results of the centers topic."""

from typing import Annotated, Literal

from pydantic import Field

from halfangle_service.fields import (
    Angle,
    AngleInput,
    ArcsecOut,
    Length,
    LengthOut,
    NonNegativeLength,
    RequestModel,
    ResultModel,
    SignedLength,
    Unit,
    Units,
)

Share = Annotated[float, Field(strict=True, allow_inf_nan=False, gt=0, le=1), Unit("1")]


class CenterLimitsRequest(RequestModel):
    """What the work may see at a station between two centers: its runout, its position, or both."""

    units: Units = Field(description="Unit of every length here and in the answer.")
    runout_allowed_tir: Length | None = Field(
        None,
        description="Runout that the work may show at the station, as full indicator movement, in "
        "`units`.",
        examples=[0.0005],
    )
    position_allowed: Length | None = Field(
        None,
        description="How far the work's axis may be off its place at the station, in `units`.",
        examples=[0.0002],
    )
    share: Share = Field(
        1.0,
        description="Part of what is allowed that the center may take, such as 0.1 or 0.25.",
        examples=[0.25],
    )
    distance_between_centers: Length = Field(
        description="Distance between the two centers, in `units`.", examples=[6.0]
    )
    station: NonNegativeLength = Field(
        description="Distance of the station from this center, in `units`.", examples=[1.0]
    )
    other_eccentricity: NonNegativeLength = Field(
        0.0, description="Eccentricity of the other center, in `units`; it counts in the worst way."
    )
    both_alike: bool = Field(
        False,
        description="Hold both centers to one limit, in place of `other_eccentricity`.",
    )
    included_angle: Annotated[float, AngleInput(gt=0, lt=180)] = Field(
        60.0, description="Included angle of the center, for the reading square to its surface."
    )


class CenterLimit(ResultModel):
    """One limit in every form, all of one meaning for a round cone that is only off center."""

    eccentricity: LengthOut = Field(description="Offset of the cone's axis from the shank's.")
    tir: LengthOut = Field(
        description="Full indicator movement square to the axis: twice the eccentricity."
    )
    zone_diameter: LengthOut = Field(
        description="Diameter of the coaxiality zone: twice the eccentricity."
    )
    tir_on_cone: LengthOut = Field(
        description="Full indicator movement square to the cone's surface: 2 e cos α."
    )


class CenterLimitsResult(ResultModel):
    """The limits of this center, for each way of using it."""

    part_seen: Annotated[float, Unit("1")] = Field(
        description="Part of this center's eccentricity that the work sees at the station: 1 - z/L."
    )
    live: CenterLimit = Field(
        description="For a live center, which turns with the work: its eccentricity is runout of "
        "the work, and moves its axis."
    )
    dead: CenterLimit | None = Field(
        description="For a dead center, which stands still: its eccentricity only moves the work's "
        "axis. None where no position is given, since it makes no runout."
    )
    dead_reseated: CenterLimit | None = Field(
        description="For a dead center that may be put back at any clocking between parts: from "
        "part to part the axis may then move by twice as much."
    )


class CenterContactRequest(RequestModel):
    """A center and the conical hole that it enters."""

    units: Units = Field(description="Unit of every length here and in the answer.")
    center_included_angle: Annotated[float, AngleInput(ge=20, le=140)] = Field(
        description="Included angle of the center, in degrees.", examples=[60]
    )
    hole_included_angle: Annotated[float, AngleInput(ge=20, le=140)] = Field(
        description="Included angle of the hole's cone, in degrees.", examples=[59]
    )
    mouth_diameter: Length = Field(description="Large diameter of the hole's cone, in `units`.")
    pilot_diameter: Length = Field(description="Diameter of the pilot, in `units`.")
    diameter_error: NonNegativeLength = Field(
        0.0, description="Error of the bearing diameter to turn into an axial shift, in `units`."
    )


class CenterContactResult(ResultModel):
    """Where the center bears, and how the work shifts."""

    bearing: Literal["whole cone", "mouth", "small end"] = Field(
        description="`mouth` or `small end`: an edge carries; `whole cone`: the angles match."
    )
    contact_diameter: LengthOut = Field(description="Largest diameter at which it bears.")
    gap_at_other_end: LengthOut = Field(description="Radial gap at the other end of the cone.")
    point_from_mouth: LengthOut = Field(
        description="How far the center's sharp point would lie inside the mouth."
    )
    axial_shift: LengthOut = Field(
        description="How far the work shifts along the axis for `diameter_error`, with the hole's "
        "depth kept."
    )


class CenterError(RequestModel):
    """How far a center's cone is off the axis of rotation."""

    eccentricity: NonNegativeLength = Field(description="Its eccentricity, half its TIR.")
    high_spot: Annotated[float, AngleInput(ge=-360, le=360)] = Field(
        0.0, description="Direction of it, in degrees."
    )
    turns: bool = Field(description="True for a center that turns with the work.")


class CenterPartRunout(RequestModel):
    """The part's own runout about its own center holes, at one end."""

    tir: NonNegativeLength = Field(description="Its own TIR there, in `units`.")
    high_spot: Annotated[float, AngleInput(ge=-360, le=360)] = Field(
        0.0, description="Its high spot, in degrees on the spindle, as first put in."
    )


class CenterEffectRequest(RequestModel):
    """A part between two centers that are off."""

    units: Units = Field(description="Unit of every length here and in the answer.")
    first: CenterError = Field(description="Center at station 0.")
    second: CenterError = Field(description="Center at the other end.")
    distance_between_centers: Length = Field(description="Distance between the centers.")
    stations: list[NonNegativeLength] = Field(
        min_length=1, max_length=100, description="Distances from the first center, in `units`."
    )
    part_at_first: CenterPartRunout | None = Field(
        None, description="The part's own runout at station 0; none where it is not sent."
    )
    part_at_second: CenterPartRunout | None = Field(
        None, description="The part's own runout at the other end; none where it is not sent."
    )
    second_height: SignedLength = Field(
        0.0, description="How much higher the second center stands than the first, in `units`."
    )
    second_line: SignedLength = Field(
        0.0,
        description="How far the second center stands beside the line of the ways through the "
        "first, in `units`.",
    )


class CenterEffectAt(ResultModel):
    """What is seen at one station."""

    station: LengthOut = Field(description="The station.")
    apparent_tir: LengthOut = Field(description="Runout made by the centers that turn.")
    high_spot: Angle = Field(description="High spot of that runout.")
    standing_offset: LengthOut = Field(
        description="Offset made by centers that stand still: taper or place, no runout."
    )
    worst_tir: LengthOut = Field(description="Runout at the worst clocking of the same centers.")
    part_tir: LengthOut = Field(description="The part's own runout at this section.")
    seen_tir: LengthOut = Field(description="What an indicator shows: centers and part together.")
    seen_high_spot: Angle = Field(description="Its high spot.")
    seen_tir_end_for_end: LengthOut = Field(
        description="The same section of the part after it is turned end for end, its mark kept up."
    )
    height_offset: LengthOut = Field(
        description="Height of the axis here over the first center, by `second_height`."
    )
    line_offset: LengthOut = Field(
        description="Distance of the axis here from the line of the ways, by `second_line`: the "
        "miss of an indicator set on the crest at the first center."
    )


class CenterEffectResult(ResultModel):
    """What both centers do."""

    at_stations: list[CenterEffectAt] = Field(description="In the order sent.")
    tilt_arcsec: ArcsecOut = Field(description="Tilt of the axis with the directions sent.")
    worst_tilt_arcsec: ArcsecOut = Field(description="Tilt with the centers opposed.")
    bench_height_tilt_arcsec: ArcsecOut = Field(
        description="Slope of the bench centers' axis in height: taken for taper by an indicator "
        "that runs along the top; signed as `second_height`."
    )
    bench_line_tilt_arcsec: ArcsecOut = Field(
        description="Slope of their axis in plan: taken for taper by an indicator that runs along "
        "the side; signed as `second_line`."
    )
