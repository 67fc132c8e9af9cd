"""Feed on a cone: what a layer takes off in every measure, what each end loses, and the passes."""

from collections.abc import Iterator

from pydantic import Field

from halfangle_service.cautions import WHEEL_SAFETY
from halfangle_service.fields import (
    Angle,
    CountOut,
    Length,
    LengthOut,
    NumberOut,
    ResultModel,
    UnitsField,
)
from halfangle_service.fields.advisories import Advisory, caution, note
from halfangle_service.fields.choice import needs, not_sent
from halfangle_service.fields.estimate import NotStated
from halfangle_service.fields.numbers import SparkOutPasses
from halfangle_service.fields.slopes import SlopeFields, slope_of
from halfangle_service.operation import Outcome, operation
from halfangle_service.topics.tapers.feeding import (
    HalfAngleError,
    feed_cautions,
)
from halfangle_service.topics.tapers.sources import LAYER
from halfangle_service.trade.tapers.feed import (
    End,
    Measure,
    Wedge,
    axial_shift,
    normal_of,
    off_diameter,
    passes,
    wedge_of,
)
from halfangle_service.trade.wording import plain, small_length

#: Axial shift for one unit of downfeed from which a gauge line runs away.
_SLOW_TAPER_SHIFT = 5.0


class TaperInfeedRequest(SlopeFields):
    """A layer on a cone, stated in one way; how it is to be taken off."""

    units: UnitsField
    amount: Length = Field(
        description="Size of the layer that comes off everywhere, measured as `amount_is` says; "
        "where the angle is in error, more comes off one end.",
        examples=[0.001],
    )
    amount_is: Measure = Field(
        "square-to-surface",
        description="How `amount` is measured. `square-to-surface`: as a slide feeds that goes "
        "square to the generator, over a sine plate, beside a swivelled workhead or with the "
        "wheel's side; `radius`: at a fixed station, as a slide feeds that goes square to the "
        "work's axis, to a flank dressed on the wheel; `diameter`: twice that; `axial`: as the "
        "gauge line and the point move.",
    )
    downfeed_per_pass: Length | None = Field(
        None, description="Feed a pass, square to the surface.", examples=[0.0002]
    )
    spark_out_passes: SparkOutPasses = 2
    length: Length | None = Field(
        None, description="Length of the cone along its axis; needed with `half_angle_error_arcsec`"
    )
    half_angle_error_arcsec: HalfAngleError = None


class TaperFeedAtEnd(ResultModel):
    """What one end of a cone meets, and what it loses by the whole downfeed."""

    gap_at_first_touch: LengthOut = Field(
        description="Air between wheel and part here when the wheel first touches the other end, "
        "square to the surface."
    )
    off_normal: LengthOut = Field(description="Thickness that comes off square to the surface.")
    off_diameter: LengthOut = Field(description="What comes off the diameter at a fixed station.")


class TaperInfeedResult(ResultModel):
    """One layer in every measure, what each end loses, and the passes that take it off.

    Ends, total downfeed and passes count an angle error where one was stated; see `not_stated`. The
    layer is what comes off everywhere: where the angle is right, and at the end touched last.
    """

    half_angle: Angle = Field(description="Half angle of the cone.")
    off_normal: LengthOut = Field(description="Thickness of the layer square to the surface.")
    off_radius: LengthOut = Field(
        description="What the layer takes off the radius at a fixed station."
    )
    off_diameter: LengthOut = Field(
        description="What the layer takes off the diameter at a fixed station."
    )
    axial_shift: LengthOut = Field(
        description="How far the layer moves gauge line and point along the axis."
    )
    diameter_per_downfeed: NumberOut = Field(description="Diameter for one unit of downfeed.")
    axial_per_downfeed: NumberOut = Field(description="Axial shift for one unit of downfeed.")
    touches_first: End | None = Field(
        description="End that the wheel reaches first; null where no angle error was stated."
    )
    large_end: TaperFeedAtEnd | None = Field(
        description="What the large end loses; null where no angle error was stated."
    )
    small_end: TaperFeedAtEnd | None = Field(
        description="What the small end loses; null where no angle error was stated."
    )
    total_downfeed: LengthOut = Field(
        description="Downfeed from the first touch: the layer and the gap at the end touched last."
    )
    cutting_passes: CountOut | None = Field(description="Passes with feed.")
    last_pass: LengthOut | None = Field(description="Feed of the last cutting pass.")
    total_passes: CountOut | None = Field(description="Passes with and without feed.")
    not_stated: NotStated


@operation(
    "tapers.infeed",
    relations=(
        "ΔD = 2 h / cos α",
        "axial shift = h / sin α",
        "gap at the end touched last = slant × sin δα; the end touched first loses the layer and "
        "the gap",
    ),
    sources=(LAYER,),
    example={
        "units": "in",
        "included_angle": 60,
        "amount": 0.001,
        "downfeed_per_pass": 0.0002,
        "length": 0.6,
        "half_angle_error_arcsec": 30,
    },
    columns=True,
)
def infeed(request: TaperInfeedRequest) -> Outcome[TaperInfeedResult]:
    """Feed on a cone.

    What a downfeed square to the surface takes off diameter and radius, how far gauge line and
    point move, what each end loses where the angle is in error, and the passes.
    """
    slope = slope_of(request)
    half = slope.half_angle_rad
    normal = normal_of(request.amount, request.amount_is, half)
    wedge = _wedge(request, half)
    total = normal + (wedge.gap if wedge else 0.0)
    cuts = passes(total, request.downfeed_per_pass) if request.downfeed_per_pass else None
    result = TaperInfeedResult(
        half_angle=Angle.of(slope.half_angle_degrees),
        off_normal=normal,
        off_radius=off_diameter(normal, half) / 2.0,
        off_diameter=off_diameter(normal, half),
        axial_shift=axial_shift(normal, half),
        diameter_per_downfeed=off_diameter(1.0, half),
        axial_per_downfeed=axial_shift(1.0, half),
        touches_first=wedge.touches_first if wedge else None,
        large_end=_at_end("large-end", normal, wedge, half),
        small_end=_at_end("small-end", normal, wedge, half),
        total_downfeed=total,
        cutting_passes=cuts[0] if cuts else None,
        last_pass=cuts[1] if cuts else None,
        total_passes=cuts[0] + request.spark_out_passes if cuts else None,
        not_stated=not_sent(request, "half_angle_error_arcsec"),
    )
    return Outcome(result, (*_advisories(request, result), WHEEL_SAFETY))


def _wedge(request: TaperInfeedRequest, half: float) -> Wedge | None:
    """Gap that an angle error leaves at one end; None where no error was stated."""
    error = request.half_angle_error_arcsec
    if error:
        why = "An angle error leaves a gap only over a length."
        needs(request, "half_angle_error_arcsec", "length", why=why)
    return None if error is None else wedge_of(request.length or 0.0, half, error)


def _at_end(end: End, layer: float, wedge: Wedge | None, half: float) -> TaperFeedAtEnd | None:
    if wedge is None:
        return None
    off = wedge.off_at(end, layer)
    return TaperFeedAtEnd(
        gap_at_first_touch=wedge.gap_at(end), off_normal=off, off_diameter=off_diameter(off, half)
    )


def _advisories(request: TaperInfeedRequest, result: TaperInfeedResult) -> Iterator[Advisory]:
    if result.axial_per_downfeed > _SLOW_TAPER_SHIFT:
        yield caution(
            "gauge-line-runs",
            f"On this slow taper the gauge line moves {plain(result.axial_per_downfeed, 4)} times "
            "the downfeed: gauge before the last passes.",
        )
    if result.large_end and result.small_end and result.touches_first != "both-ends":
        yield caution(
            "ends-lose-unequally",
            "The angle error takes more off one end: the diameter loses "
            f"{small_length(result.large_end.off_diameter, request.units)} at the large end and "
            f"{small_length(result.small_end.off_diameter, request.units)} at the small end.",
        )
    yield from feed_cautions(
        request.units, result.total_downfeed, request.downfeed_per_pass, result.cutting_passes
    )
    if request.spark_out_passes == 0 and request.downfeed_per_pass:
        yield note("no-spark-out", "Without spark-out the last feed is not fully ground away.")
