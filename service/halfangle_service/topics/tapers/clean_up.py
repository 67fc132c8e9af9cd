"""Whether a worn or wrongly ground cone can be saved: stock needed against stock there is."""

import math
from collections.abc import Iterator
from dataclasses import asdict
from typing import Literal

from pydantic import Field

from halfangle_service.cautions import WHEEL_SAFETY
from halfangle_service.fields import (
    CountOut,
    Length,
    LengthOut,
    NonNegativeLength,
    ResultModel,
    UnitsField,
)
from halfangle_service.fields.advisories import Advisory, caution, note, stop
from halfangle_service.fields.choice import not_sent, sent_of
from halfangle_service.fields.estimate import NotStated
from halfangle_service.fields.numbers import SparkOutPasses
from halfangle_service.fields.slopes import SlopeFields, slope_of
from halfangle_service.operation import Outcome, operation
from halfangle_service.topics.tapers.feeding import (
    HalfAngleError,
    feed_cautions,
)
from halfangle_service.topics.tapers.sources import LAYER
from halfangle_service.trade import elementary
from halfangle_service.trade.tapers.feed import Worn, clean_up, normal_of, passes
from halfangle_service.trade.uncertainty import Forecast, budget_as_stated, forecast_of

#: Of the diameter: what rounding leaves of a margin of nothing.
_ROUNDING = 1e-12
#: What the stock needed follows from.
_ASKS_FOR_STOCK = ("tir_large_end", "tir_small_end", "half_angle_error_arcsec", "wear")


class TaperCleanUpRequest(SlopeFields):
    """A cone as it stands, and what may still come off it."""

    units: UnitsField
    large_diameter: Length = Field(
        description="Diameter at the large end as it stands, the mean over a turn.", examples=[0.75]
    )
    length: Length = Field(
        description="Length to clean up along the axis, at most to the point.", examples=[0.6]
    )
    tir_large_end: NonNegativeLength | None = Field(
        None, description="Full indicator movement at the large end."
    )
    tir_small_end: NonNegativeLength | None = Field(
        None, description="Full indicator movement at the small end."
    )
    tir_indicated: Literal["square-to-surface", "radially"] = Field(
        "square-to-surface", description="How the indicator stood."
    )
    half_angle_error_arcsec: HalfAngleError = None
    wear: NonNegativeLength | None = Field(
        None, description="Deepest wear or dent below the surface, square to it."
    )
    allowance: NonNegativeLength = Field(
        0.0, description="Further stock to be sure that all is clean, square to the surface."
    )
    smallest_large_diameter: Length | None = Field(
        None, description="Smallest diameter at the large end's station that is still of use."
    )
    limit_point_loss: NonNegativeLength | None = Field(
        None, description="Most that the point may lose along the axis."
    )
    downfeed_per_pass: Length | None = Field(None, description="Feed a pass, square to the cone.")
    spark_out_passes: SparkOutPasses = 2


class TaperCleanUpResult(ResultModel):
    """Stock needed against stock there is.

    It counts what was stated of the part, see `not_stated`; null where nothing was.
    """

    forecast: Forecast = Field(
        description="Whether the part cleans up within the limits given; `not-stated` without a "
        "limit, or with nothing stated that asks for stock."
    )
    needed_at_large_end: LengthOut | None = Field(
        description="Stock below the mean surface at the large end, square to the surface."
    )
    needed_at_small_end: LengthOut | None = Field(description="The same at the small end.")
    downfeed_from_first_touch: LengthOut | None = Field(
        description="Downfeed from the first spark to clean."
    )
    off_diameter: LengthOut | None = Field(description="What the large end's station loses.")
    final_large_diameter: LengthOut | None = Field(
        description="Diameter at the large end's station."
    )
    point_loss: LengthOut | None = Field(
        description="How far the cone's (virtual) point comes back along the axis."
    )
    from_runout: LengthOut | None = Field(
        description="Larger share of runout, square to the surface."
    )
    from_angle: LengthOut | None = Field(description="What the angle error alone asks for.")
    available_at_large_end: LengthOut | None = Field(
        description="Stock that the least diameter leaves, square to the surface."
    )
    margin_at_large_end: LengthOut | None = Field(description="Available less needed.")
    point_margin: LengthOut | None = Field(description="`limit_point_loss` less the point's loss.")
    cutting_passes: CountOut | None = Field(description="Passes with feed.")
    total_passes: CountOut | None = Field(description="Passes with and without feed.")
    not_stated: NotStated


@operation(
    "tapers.clean-up",
    relations=(
        "u = mean surface of the part less the right cone, square to the surface, at each end",
        "needed = −min(u − swing) + wear; from first touch = max(u + swing) − min(u − swing) + "
        "wear",
        "point loss = D / (2 tan α_part) − D_final / (2 tan α)",
    ),
    sources=(LAYER,),
    example={
        "units": "in",
        "included_angle": 60,
        "large_diameter": 0.75,
        "length": 0.6,
        "tir_large_end": 0.001,
        "tir_small_end": 0.002,
        "half_angle_error_arcsec": 120,
        "wear": 0.002,
        "smallest_large_diameter": 0.74,
        "downfeed_per_pass": 0.0002,
    },
)
def can_be_saved(request: TaperCleanUpRequest) -> Outcome[TaperCleanUpResult]:
    """Whether this part can be saved.

    Stock needed to clean up runout, angle error and wear of a cone against what is there, and how
    much its point shortens.
    """
    half = slope_of(request).half_angle_rad
    not_stated = not_sent(request, *_ASKS_FOR_STOCK)
    figures: dict[str, float | None] = asdict(clean_up(_worn(request, half)))
    if len(not_stated) == len(_ASKS_FOR_STOCK):
        figures = dict.fromkeys(figures)
    available = _available(request, half)
    margin = _less(available, figures["needed_at_large_end"])
    point_margin = _less(request.limit_point_loss, figures["point_loss"])
    worst = min((m for m in (margin, point_margin) if m is not None), default=None)
    cuts = _cuts(figures["downfeed_from_first_touch"], request.downfeed_per_pass)
    result = TaperCleanUpResult(
        forecast=_forecast(request, worst, available, half),
        available_at_large_end=available,
        margin_at_large_end=margin,
        point_margin=point_margin,
        cutting_passes=cuts,
        total_passes=None if cuts is None else cuts + request.spark_out_passes,
        not_stated=not_stated,
        **figures,
    )
    feed = feed_cautions(
        request.units, figures["downfeed_from_first_touch"], request.downfeed_per_pass, cuts
    )
    return Outcome(result, (*_advisories(result), *feed, WHEEL_SAFETY))


def _worn(request: TaperCleanUpRequest, half: float) -> Worn:
    return Worn(
        half_rad=half,
        large_diameter=request.large_diameter,
        length=request.length,
        large_swing=_swing(request, request.tir_large_end, half),
        small_swing=_swing(request, request.tir_small_end, half),
        half_angle_error_arcsec=request.half_angle_error_arcsec,
        depth=_depth(request),
    )


def _swing(request: TaperCleanUpRequest, tir: float | None, half: float) -> float | None:
    """Half the indicator's movement, square to the surface."""
    across = 1.0 if request.tir_indicated == "square-to-surface" else elementary.cos(half)
    return None if tir is None else tir / 2.0 * across


def _available(request: TaperCleanUpRequest, half: float) -> float | None:
    if request.smallest_large_diameter is None:
        return None
    spare = request.large_diameter - request.smallest_large_diameter
    return normal_of(spare, "diameter", half)


def _less(there_is: float | None, needed: float | None) -> float | None:
    return None if there_is is None or needed is None else there_is - needed


def _forecast(
    request: TaperCleanUpRequest, margin: float | None, available: float | None, half: float
) -> Forecast:
    """Whether the margin is kept, by what was stated of the part, taken as it stands.

    An angle error that was not stated may lessen what the small end asks for, and the loss of the
    point; then only what the large end itself lacks is sure to be missing.
    """
    if margin is None:
        return "not-stated"
    slack = _ROUNDING * request.large_diameter
    if margin < -slack and request.half_angle_error_arcsec is None:
        own = (_swing(request, request.tir_large_end, half) or 0.0) + _depth(request)
        if available is None or own <= available + slack:
            return "may-not-hold"
    budget = budget_as_stated(
        margin, sent_of(request, *_ASKS_FOR_STOCK), not_sent(request, *_ASKS_FOR_STOCK)
    )
    return forecast_of(budget, -slack, math.inf)


def _depth(request: TaperCleanUpRequest) -> float:
    """What must come off below the surface: wear, and what is added to be sure."""
    return (request.wear or 0.0) + request.allowance


def _cuts(downfeed: float | None, per_pass: float | None) -> int | None:
    """Passes with feed; None where the downfeed or what a pass takes is not known."""
    return None if downfeed is None or per_pass is None else passes(downfeed, per_pass)[0]


def _advisories(result: TaperCleanUpResult) -> Iterator[Advisory]:
    if result.forecast == "does-not-hold":
        yield stop(
            "does-not-clean-up",
            "The part does not clean up within its limits: do not start grinding it as it is held.",
        )
    if result.forecast == "may-not-hold" and _lacks(result):
        yield caution(
            "may-not-clean-up",
            "By what was stated the part does not clean up within its limits; the angle error, "
            "which was not stated, may alter that: measure it before grinding.",
        )
    if (result.from_runout or 0.0) > (result.needed_at_large_end or 0.0) / 2.0:
        yield note(
            "runout-takes-the-stock",
            "Runout asks for most of the stock: truing the part in its fixture saves it.",
        )


def _lacks(result: TaperCleanUpResult) -> bool:
    return min(result.margin_at_large_end or 0.0, result.point_margin or 0.0) < 0.0
