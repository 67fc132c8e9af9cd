"""The budget of a sine set-up's angle, checked by Monte Carlo, and what it is good for."""

import math
from collections.abc import Iterator
from typing import Annotated

from pydantic import Field

from halfangle_service.cautions import STEEP_DEGREES, steep_angle
from halfangle_service.fields import (
    ARCSEC_PER_RADIAN,
    Angle,
    Arcsec,
    ArcsecOut,
    Count,
    CountOut,
    ResultModel,
    SharePercent,
)
from halfangle_service.fields.advisories import Advisory, caution
from halfangle_service.fields.estimate import ArcsecEstimate, estimate
from halfangle_service.fields.plates import arcsec_per_step
from halfangle_service.operation import Outcome, Source, operation
from halfangle_service.topics.sine.stated_errors import (
    BUDGET,
    DECISION,
    EXAMPLE,
    EXPANSION,
    RELATIONS,
    SENSITIVITIES,
    SineErrorFields,
    angle_forecast,
    error_inputs,
    smallest_tolerance_arcsec,
    stack_advisories,
    tolerance_rad,
)
from halfangle_service.trade.sine.angle_error import (
    ErrorInputs,
    budget,
    of_included_angle,
    simulate,
)
from halfangle_service.trade.sine.angle_model import (
    TERMS,
    SetUp,
    Term,
    known_thermal_shift,
    stack_shift,
)
from halfangle_service.trade.uncertainty import Budget, Forecast
from halfangle_service.trade.wording import percent

COVERAGE_PROBABILITY = 0.95
#: Past this difference the budget's straight lines no longer describe the set-up.
BENT_PERCENT = 5.0
#: A single term past this share is what to look at.
DOMINANT_PERCENT = 50.0

_TRIALS = Source(
    citation="JCGM 101:2008, propagation of distributions, 7 and 8.", standing="from-memory"
)


class SineUncertaintyRequest(SineErrorFields):
    """A set-up, its errors, and the tolerance to judge it by."""

    tolerance_arcsec: Arcsec | None = Field(
        None, description="The angle must keep within ± this, in arc-seconds.", examples=[20.0]
    )
    trials: Annotated[int, Count(ge=1_000, le=200_000)] = Field(
        50_000, description="Trials of the Monte Carlo check."
    )


class SineMonteCarlo(ResultModel):
    """The same set-up drawn at random through the whole model (JCGM 101)."""

    trials: CountOut = Field(description="Trials, with a fixed seed.")
    mean_arcsec: ArcsecOut = Field(description="Mean error of the angle.")
    standard_deviation_arcsec: ArcsecOut = Field(description="Standard deviation of the angle.")
    low_arcsec: ArcsecOut = Field(description="Lower end of the 95 % interval.")
    high_arcsec: ArcsecOut = Field(description="Upper end of the 95 % interval.")
    difference_percent: SharePercent = Field(
        description="Standard deviation over the budget's combined standard uncertainty, less one."
    )


class SineUncertaintyResult(ResultModel):
    """The budget of a set-up's angle, in arc-seconds of the plate's angle unless said."""

    angle: Angle = Field(description="The angle as it was read.")
    angle_error_arcsec: ArcsecEstimate = Field(
        description="Error of the plate's angle: its value is the expected angle less the wanted "
        "one, from the stack as built, from temperature off 20 °C and from yaw, which always "
        "flattens the angle. The contributions are the terms stated, by name."
    )
    included_angle_error_arcsec: ArcsecEstimate = Field(
        description="Error of a cone's included angle: twice that of the plate's, which its half "
        "angle follows."
    )
    thermal_shift_arcsec: ArcsecOut | None = Field(
        description="What the temperature does to the plate's angle; 0 where blocks and plate are "
        "of one material, else null where no temperature was stated."
    )
    deviation_arcsec: ArcsecOut | None = Field(
        description="What the stack's height as built does to the plate's angle: the angle that it "
        "sets less the one wanted; null without `height`."
    )
    largest_term: Term | None = Field(description="Term with the largest share, if any.")
    monte_carlo: SineMonteCarlo | None = Field(
        description="The check by Monte Carlo; null where no error was stated."
    )
    smallest_tolerance_arcsec: ArcsecOut | None = Field(
        description="Tightest ± tolerance, on what `tolerance_on` names, that holds with the "
        "errors stated, by `decision_rule`. Null where no error was stated."
    )
    forecast: Forecast | None = Field(
        description="Whether the set-up will keep the tolerance, by `decision_rule`; null without "
        "a tolerance. `holds` only where every error that can act here was stated."
    )


@operation(
    "sine.uncertainty",
    relations=RELATIONS,
    sources=(SENSITIVITIES, BUDGET, _TRIALS, DECISION, EXPANSION),
    example=EXAMPLE,
    largest_request="200,000 Monte Carlo trials",
    heavy=True,
)
def uncertainty(request: SineUncertaintyRequest) -> Outcome[SineUncertaintyResult]:
    """Uncertainty of a sine set-up.

    The budget of a set-up's angle in arc-seconds, each term with its sensitivity and share, checked
    by Monte Carlo, and whether it will hold a tolerance.
    """
    inputs = error_inputs(request)
    plate, shift = budget(inputs), known_thermal_shift(inputs.set_up)
    result = SineUncertaintyResult(
        angle=Angle.of(request.angle),
        angle_error_arcsec=_estimate(plate, request.coverage_factor),
        included_angle_error_arcsec=_estimate(of_included_angle(plate), request.coverage_factor),
        thermal_shift_arcsec=None if shift is None else shift * ARCSEC_PER_RADIAN + 0.0,
        deviation_arcsec=None
        if request.height is None
        else stack_shift(inputs.set_up) * ARCSEC_PER_RADIAN,
        largest_term=_largest(plate),
        monte_carlo=_monte_carlo(inputs, request.trials, plate),
        smallest_tolerance_arcsec=smallest_tolerance_arcsec(request, plate),
        forecast=_forecast(request, plate),
    )
    return Outcome(result, tuple(_advisories(request, inputs.set_up, result)))


def _estimate(errors: Budget, coverage: float | None) -> ArcsecEstimate:
    return estimate(ArcsecEstimate, errors, per_unit=ARCSEC_PER_RADIAN, coverage=coverage)


def _largest(plate: Budget) -> Term | None:
    largest = plate.largest()
    return next((term for term in TERMS if largest and term == largest.name), None)


def _monte_carlo(inputs: ErrorInputs, trials: int, plate: Budget) -> SineMonteCarlo | None:
    if not plate.contributions:
        return None
    sample = simulate(inputs, trials, COVERAGE_PROBABILITY)
    spread, expected = sample.standard_deviation, plate.standard_uncertainty
    return SineMonteCarlo(
        trials=trials,
        mean_arcsec=sample.mean * ARCSEC_PER_RADIAN,
        standard_deviation_arcsec=spread * ARCSEC_PER_RADIAN,
        low_arcsec=sample.low * ARCSEC_PER_RADIAN,
        high_arcsec=sample.high * ARCSEC_PER_RADIAN,
        difference_percent=100.0 * (spread / expected - 1.0) if expected else 0.0,
    )


def _forecast(request: SineUncertaintyRequest, plate: Budget) -> Forecast | None:
    if request.tolerance_arcsec is None:
        return None
    return angle_forecast(request, plate, tolerance_rad(request, request.tolerance_arcsec))


def _advisories(
    request: SineUncertaintyRequest, set_up: SetUp, result: SineUncertaintyResult
) -> Iterator[Advisory]:
    yield from stack_advisories(request, set_up)
    per_step = arcsec_per_step(request.center_distance, math.radians(request.angle), request.units)
    yield from steep_angle(request.angle, per_step, STEEP_DEGREES)
    shares = {c.name: c.share_percent for c in result.angle_error_arcsec.contributions}
    largest = shares.get(result.largest_term or "", 0.0)
    if largest > DOMINANT_PERCENT:
        unknown = len(result.angle_error_arcsec.not_stated)
        then = (
            f" of what was stated; not stated, and perhaps larger: {unknown}, see not_stated."
            if unknown
            else ": mend it before anything else."
        )
        yield caution(
            "one-term-dominates",
            f"`{result.largest_term}` makes {percent(largest)} of the variance{then}",
        )
    check = result.monte_carlo
    if check is not None and abs(check.difference_percent) > BENT_PERCENT:
        yield caution(
            "budget-bends",
            f"Monte Carlo differs from the budget by {percent(check.difference_percent)}: so large "
            "errors, or so steep an angle, do not act in straight lines; take the Monte Carlo "
            "figures.",
        )
