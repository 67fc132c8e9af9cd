"""Requests and results about V-blocks and about an indicator off the crest."""

from typing import Annotated, Literal

from pydantic import Field

from halfangle_service.fields import (
    Angle,
    AngleInput,
    Arcsec,
    ArcsecOut,
    Count,
    CountOut,
    Length,
    LengthOut,
    NonNegativeLength,
    NumberOut,
    RequestModel,
    ResultModel,
    Units,
)


class RunoutVBlockRequest(RequestModel):
    """A part turned in a V-block under an indicator."""

    units: Units = Field(description="Unit of every length here and in the answer.")
    v_angle: Annotated[float, AngleInput(ge=30, le=170)] = Field(
        90.0, description="Included angle of the V, in degrees.", examples=[90]
    )
    indicator_angle: Annotated[float, AngleInput(ge=-90, le=90)] = Field(
        0.0,
        description="Angle of the indicator from the V's bisector, in degrees; 0 opposite the V.",
    )
    most_lobes: Annotated[int, Count(ge=2, le=50)] = Field(
        15, description="Largest number of lobes to list."
    )
    lobes: Annotated[int, Count(ge=2, le=50)] | None = Field(
        None, description="Lobes that the part has, such as 3 from a three-jaw chuck."
    )
    reading: NonNegativeLength | None = Field(
        None, description="Full indicator movement in the V, in `units`; needs `lobes`."
    )


class RunoutVBlockFactor(ResultModel):
    """What is shown of one number of lobes."""

    lobes: CountOut = Field(description="Lobes a turn.")
    factor: NumberOut = Field(description="Full movement for a departure from roundness of 1.")
    hidden: bool = Field(description="True where less than a twentieth is shown.")
    two_point_factor: NumberOut = Field(
        description="The same for a two-point check, as with a micrometer: odd lobes read 0."
    )


class RunoutVBlockResult(ResultModel):
    """What the V shows, hides, and what a reading means."""

    factors: list[RunoutVBlockFactor] = Field(description="From 2 lobes up.")
    hidden_lobes: list[CountOut] = Field(description="Numbers of lobes that the setting hides.")
    hidden_from_both: list[CountOut] = Field(
        description="Of these, what a two-point check hides as well."
    )
    out_of_roundness: LengthOut | None = Field(
        description="Departure from roundness, peak to valley: reading / factor. None without a "
        "reading."
    )
    better_v_angle: Angle | None = Field(
        description="Of 60°, 72°, 90°, 108° and 120°, indicator opposite the V, the one that "
        "shows most of `lobes`; None without `lobes`."
    )
    better_factor: NumberOut | None = Field(description="Its factor.")


class RunoutOffCrestRequest(RequestModel):
    """An indicator run along a cone beside its crest."""

    units: Units = Field(description="Unit of every length here and in the answer.")
    included_angle: Annotated[float, AngleInput(gt=0, lt=170)] = Field(
        description="Included angle of the cone, in degrees.", examples=[60]
    )
    small_diameter: Length = Field(description="Diameter at the small end of the run.")
    large_diameter: Length = Field(description="Diameter at its large end.")
    miss: NonNegativeLength = Field(
        description="How far beside the crest the tip runs, in `units`.", examples=[0.01]
    )
    tip_radius: NonNegativeLength = Field(
        0.0, description="Radius of the indicator's tip, in `units`.", examples=[0.04]
    )
    angle_error_allowed_arcsec: Arcsec | None = Field(
        None, description="False half angle to allow, in arc-seconds; gives the miss allowed."
    )


class RunoutOffCrestResult(ResultModel):
    """The false taper."""

    drop_at_small_end: LengthOut = Field(description="How much lower it reads at the small end.")
    drop_at_large_end: LengthOut = Field(description="How much lower it reads at the large end.")
    false_reading: LengthOut = Field(description="Their difference over the run.")
    false_half_angle_arcsec: ArcsecOut = Field(
        description="By how much the half angle seems larger than it is."
    )
    false_included_angle_arcsec: ArcsecOut = Field(description="Twice that.")
    seems: Literal["true", "steeper"] = Field(description="How the cone seems.")
    ground_by_this: Literal["true", "shallower"] = Field(
        description="What the cone becomes when it is adjusted until the indicator stands still."
    )
    miss_allowed: LengthOut | None = Field(
        description="Largest miss for `angle_error_allowed_arcsec`; None where that was not sent."
    )
