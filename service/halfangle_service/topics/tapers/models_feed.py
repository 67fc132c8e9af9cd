"""Requests and results of feed on a cone, its clean-up, and gauges that stand off."""

from typing import Annotated, Literal

from pydantic import Field

from halfangle_service.fields import (
    FINITE,
    Angle,
    ArcsecOut,
    Count,
    CountOut,
    Length,
    LengthOut,
    NonNegativeLength,
    NumberOut,
    ResultModel,
    SignedLength,
    Unit,
)
from halfangle_service.topics.tapers.models_slope import TaperSlopeFields
from halfangle_service.trade.tapers.feed import End, Measure

SmallError = Annotated[float, FINITE, Field(ge=-36_000, le=36_000), Unit("arcsecond")]
CleanUpVerdict = Literal["can be saved", "cannot be saved", "no limit given"]
SparkOut = Annotated[int, Count(ge=0, le=100)]


class TaperInfeedRequest(TaperSlopeFields):
    """A layer on a cone, stated in one way; how it is to be taken off."""

    amount: Length = Field(
        description="Size of the layer, measured as `amount_is` says.", examples=[0.001]
    )
    amount_is: Measure = Field(
        "normal",
        description="How `amount` is measured. `normal`: square to the surface, as a sine plate "
        "feeds down under a flat wheel; `radius` or `diameter`: at a fixed station, as a swivelled "
        "workhead feeds; `axial`: as the gauge line and the point move.",
    )
    downfeed_per_pass: Length | None = Field(
        None, description="Feed a pass, square to the surface.", examples=[0.0002]
    )
    spark_out_passes: SparkOut = Field(2, description="Passes without feed at the end.")
    length: Length | None = Field(
        None, description="Length of the cone along its axis; needed with `half_angle_error_arcsec`"
    )
    half_angle_error_arcsec: SmallError = Field(
        0.0,
        description="Half angle of the part as it stands less the right one: positive where it is "
        "too blunt.",
    )


class TaperInfeedResult(ResultModel):
    """One layer in every measure, and the passes that take it off."""

    half_angle: Angle = Field(description="Half angle of the cone.")
    normal: LengthOut = Field(description="Thickness square to the surface: the plate's downfeed.")
    off_radius: LengthOut = Field(description="What comes off the radius at a fixed station.")
    off_diameter: LengthOut = Field(description="What comes off the diameter at a fixed station.")
    axial_shift: LengthOut = Field(description="How far gauge line and point move along the axis.")
    diameter_per_downfeed: NumberOut = Field(description="Diameter for one unit of downfeed.")
    axial_per_downfeed: NumberOut = Field(description="Axial shift for one unit of downfeed.")
    touches_first: End = Field(description="End that the wheel reaches first.")
    stock_at_large_end: LengthOut = Field(
        description="Stock square to the surface left at the large end at the first touch."
    )
    stock_at_small_end: LengthOut = Field(
        description="Stock square to the surface left at the small end at the first touch."
    )
    total_downfeed: LengthOut = Field(
        description="Downfeed from the first touch: the layer and what the angle error adds."
    )
    cutting_passes: CountOut | None = Field(description="Passes with feed.")
    last_pass: LengthOut | None = Field(description="Feed of the last cutting pass.")
    total_passes: CountOut | None = Field(description="Passes with and without feed.")


class TaperCleanUpRequest(TaperSlopeFields):
    """A cone as it stands, and what may still come off it."""

    large_diameter: Length = Field(
        description="Diameter at the large end as it stands, the mean over a turn.", examples=[0.75]
    )
    length: Length = Field(description="Length to clean up along the axis.", examples=[0.6])
    tir_large_end: NonNegativeLength = Field(
        0.0, description="Full indicator movement at the large end."
    )
    tir_small_end: NonNegativeLength = Field(
        0.0, description="Full indicator movement at the small end."
    )
    tir_indicated: Literal["square to the surface", "radially"] = Field(
        "square to the surface", description="How the indicator stood."
    )
    half_angle_error_arcsec: SmallError = Field(
        0.0, description="Half angle as it stands less the right one: positive where too blunt."
    )
    wear: NonNegativeLength = Field(
        0.0, description="Deepest wear or dent below the surface, square to it."
    )
    allowance: NonNegativeLength = Field(
        0.0, description="Further stock to be sure that all is clean, square to the surface."
    )
    least_large_diameter: Length | None = Field(
        None, description="Smallest diameter at the large end's station that is still of use."
    )
    largest_point_loss: NonNegativeLength | None = Field(
        None, description="Most that the point may lose along the axis."
    )
    downfeed_per_pass: Length | None = Field(None, description="Feed a pass, square to the cone.")
    spark_out_passes: SparkOut = Field(2, description="Passes without feed at the end.")


class TaperCleanUpResult(ResultModel):
    """Stock needed against stock there is."""

    verdict: CleanUpVerdict = Field(
        description="Whether the part cleans up within the limits given."
    )
    needed_normal: LengthOut = Field(
        description="Stock below the mean surface at the large end, square to the surface."
    )
    needed_at_small_end: LengthOut = Field(description="The same at the small end.")
    downfeed_from_first_touch: LengthOut = Field(
        description="Downfeed from the first spark to clean."
    )
    off_diameter: LengthOut = Field(description="What the large end's station loses.")
    final_large_diameter: LengthOut = Field(description="Diameter at the large end's station.")
    point_loss: LengthOut = Field(
        description="How far the cone's (virtual) point comes back along the axis."
    )
    from_runout: LengthOut = Field(description="Larger share of runout, square to the surface.")
    from_angle: LengthOut = Field(description="What the angle error alone asks for.")
    available_normal: LengthOut | None = Field(
        description="Stock that the least diameter leaves, square to the surface."
    )
    margin_normal: LengthOut | None = Field(description="Available less needed.")
    point_margin: LengthOut | None = Field(description="Largest point loss less the point's loss.")
    cutting_passes: CountOut | None = Field(description="Passes with feed.")
    total_passes: CountOut | None = Field(description="Passes with and without feed.")


class TaperStandoffRequest(TaperSlopeFields):
    """A cone and its gauge; the slope is the gauge's."""

    part: Literal["external", "internal"] = Field(
        description="`external`: a plug or shank in a ring gauge; `internal`: a socket with a plug "
        "gauge in it.",
        examples=["external"],
    )
    contact_length: Length = Field(
        description="Length of contact along the axis, from the gauge plane at the large end.",
        examples=[2.5],
    )
    diameter_error: SignedLength = Field(
        0.0, description="Part's diameter at the gauge plane less the gauge's.", examples=[0.0005]
    )
    included_angle_error_arcsec: SmallError = Field(
        0.0, description="Part's included angle less the gauge's."
    )
    blue_film: Length | None = Field(
        None,
        description="Thickness of the marking film; 0.00008 in or 0.002 mm where left out (common "
        "practice, no source).",
    )


class TaperStandoffResult(ResultModel):
    """Where the gauge line stands and where the cones bear."""

    standoff: LengthOut = Field(
        description="How far the inner cone stands out of the outer one: positive out, negative in."
    )
    standoff_from_diameter: LengthOut = Field(description="Its share from the diameter.")
    standoff_from_angle: LengthOut = Field(description="Its share from the angle.")
    standoff_per_diameter: NumberOut = Field(description="Axial shift for one unit of diameter.")
    bears_at: End = Field(description="Where the cones bear.")
    open_at: End | None = Field(description="Where they stand apart.")
    gap_normal: LengthOut = Field(description="Gap at the open end, square to the surface.")
    gap_on_diameter: LengthOut = Field(description="The same on the diameter.")
    marked_share: Annotated[float, Unit("percent")] = Field(
        description="Share of the length that the film would mark."
    )
    marked_length: LengthOut = Field(description="Length along the axis that the film would mark.")
    bluing_verdict: Literal[
        "marks all over", "marks at the large end only", "marks at the small end only"
    ] = Field(description="What the marking shows.")
    smallest_error_shown_arcsec: ArcsecOut = Field(
        description="Least error of included angle that this film shows over this length: smaller "
        "ones mark all over."
    )
