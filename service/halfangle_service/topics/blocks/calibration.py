"""Calibration of a block by comparison with a standard: its length at 20 °C, and how sure it is."""

import math
from collections.abc import Iterator, Sequence
from statistics import stdev
from typing import Annotated

from pydantic import Field

from halfangle_service.errors import Impossible
from halfangle_service.fields import (
    FINITE,
    Celsius,
    Count,
    CountOut,
    Length,
    LengthOut,
    NonNegativeLength,
    RequestModel,
    ResultModel,
    SignedLength,
    Unit,
    UnitsField,
)
from halfangle_service.fields.advisories import Advisory, caution
from halfangle_service.fields.base import Rule
from halfangle_service.fields.choice import needs, not_sent
from halfangle_service.fields.estimate import LengthEstimate, estimate
from halfangle_service.fields.supply import LARGEST_DEVIATION
from halfangle_service.operation import Outcome, Source, operation
from halfangle_service.trade.calibration.comparison import (
    Comparison,
    Estimated,
    Limited,
    simulated,
)
from halfangle_service.trade.decimals import tidy
from halfangle_service.trade.tables.materials.expansion import REFERENCE_CELSIUS
from halfangle_service.trade.uncertainty import Budget
from halfangle_service.trade.uncertainty.coverage import half_width
from halfangle_service.trade.wording import of_any_unit, percent

_H1 = Source(
    citation="JCGM 100:2008 (GUM), H.1, end-gauge calibration, with its terms of second order.",
    standing="published",
)
_MONTE_CARLO = Source(
    citation="JCGM 101:2008, 9.5, gauge block calibration; distributions of 6.4, shortest coverage "
    "interval of 7.7.",
    standing="from-memory",
)
#: Past this, in percent, Monte Carlo's standard deviation and the budget's no longer agree.
BENT_PERCENT = 5.0
#: Largest difference of block and standard, as part of the length: else they are not alike. A
#: reading is besides no larger than a deviation of a block may be.
_ALIKE = 0.001
_COMPARATOR = ("comparator_random_uncertainty", "comparator_systematic_uncertainty")
#: Uncertainties of lengths, none of them larger than a deviation of a block may be.
_UNCERTAINTIES = ("standard_expanded_uncertainty", "repeatability", *_COMPARATOR)
Freedom = Annotated[float, FINITE, Field(ge=1, le=1e6), Unit("1")]
Percent = Annotated[float, FINITE, Field(ge=0, le=100), Unit("percent")]
Kelvins = Annotated[float, FINITE, Field(ge=0, le=50), Unit("celsius")]
PerKelvin = Annotated[float, FINITE, Field(ge=0, le=1e-3), Unit("per_kelvin")]


class BlockCalibrationRequest(RequestModel):
    """A comparison of a block with a standard, and what is known of it."""

    rules = (
        Rule("needs", ("repeatability_degrees_of_freedom",), "repeatability"),
        Rule("needs", ("standard_degrees_of_freedom",), "standard_expanded_uncertainty"),
    )

    units: UnitsField
    size: Length | None = Field(None, description="Nominal size of the block.", examples=[50.0])
    standard_length: Length = Field(
        description="Length of the standard at 20 °C by its certificate.", examples=[50.000623]
    )
    standard_expanded_uncertainty: NonNegativeLength | None = Field(
        None, description="Its expanded uncertainty.", examples=[0.000075]
    )
    standard_coverage_factor: Annotated[float, FINITE, Field(ge=1, le=5), Unit("1")] = Field(
        2.0, description="Coverage factor k of that."
    )
    standard_degrees_of_freedom: Freedom | None = Field(
        None, description="Degrees of freedom of that; absent, they are not limited."
    )
    differences: Annotated[list[SignedLength], Field(min_length=1, max_length=100)] = Field(
        description="Each reading of the comparator: block less standard.",
        examples=[[0.000215, 0.000221, 0.000209]],
    )
    repeatability: NonNegativeLength | None = Field(
        None,
        description="Standard deviation of one reading, from earlier series; absent, that of "
        "`differences`.",
    )
    repeatability_degrees_of_freedom: Freedom | None = Field(
        None, description="Degrees of freedom of that; absent, they are not limited."
    )
    comparator_random_uncertainty: NonNegativeLength | None = Field(
        None, description="Standard uncertainty by the comparator's random effects."
    )
    comparator_random_degrees_of_freedom: Freedom | None = Field(
        None, description="Degrees of freedom of that; absent, they are not limited."
    )
    comparator_systematic_uncertainty: NonNegativeLength | None = Field(
        None, description="Standard uncertainty by the comparator's systematic effects."
    )
    comparator_systematic_degrees_of_freedom: Freedom | None = Field(
        None, description="Degrees of freedom of that; absent, they are not limited."
    )
    expansion_coefficient: PerKelvin = Field(
        11.5e-6, description="Coefficient of expansion of the standard, per kelvin: steel."
    )
    expansion_coefficient_error_limit: PerKelvin | None = Field(
        None, description="Largest error ± of that."
    )
    expansion_difference: PerKelvin | None = Field(
        None, description="Largest difference ± of the block's coefficient from the standard's."
    )
    expansion_difference_inexact_percent: Percent = Field(
        0.0, description="How far that limit itself may be off, in percent of it."
    )
    temperature_celsius: Celsius | None = Field(
        None, description="Mean temperature of the bench.", examples=[19.9]
    )
    temperature_standard_uncertainty_celsius: Kelvins | None = Field(
        None, description="Standard uncertainty of that mean, in kelvins."
    )
    temperature_cycle_celsius: Kelvins | None = Field(
        None, description="Amplitude ± of the cycles about that mean, in kelvins."
    )
    temperature_difference_celsius: Kelvins | None = Field(
        None,
        description="Largest difference ± of the block's temperature from the standard's, in "
        "kelvins.",
    )
    temperature_difference_inexact_percent: Percent = Field(
        0.0, description="How far that limit itself may be off, in percent of it."
    )
    coverage_probability: Annotated[float, FINITE, Field(ge=0.5, le=0.999), Unit("1")] = Field(
        0.95, description="Probability that the expanded uncertainty covers.", examples=[0.99]
    )
    trials: Annotated[int, Count(ge=1_000, le=200_000)] = Field(
        50_000, description="Trials of the Monte Carlo check."
    )


class BlockMonteCarlo(ResultModel):
    """The same comparison drawn at random through the whole model (JCGM 101)."""

    trials: CountOut = Field(description="Trials, with a fixed seed.")
    mean: LengthOut | None = Field(
        description="Mean of the block's length; null where an uncertainty of two degrees of "
        "freedom or fewer leaves it none."
    )
    standard_deviation: LengthOut | None = Field(
        description="Its standard deviation; null likewise."
    )
    shortest_low: LengthOut = Field(description="Lower end of the shortest coverage interval.")
    shortest_high: LengthOut = Field(description="Upper end of it.")
    symmetric_low: LengthOut = Field(description="Lower end of the interval with equal tails.")
    symmetric_high: LengthOut = Field(description="Upper end of it.")


class BlockCalibrationResult(ResultModel):
    """The block's length at 20 °C, and how sure it is."""

    length: LengthEstimate = Field(
        description="Length by the budget of first order; Student's factor where degrees of "
        "freedom are limited."
    )
    deviation: LengthOut | None = Field(
        description="That length less the nominal size; null without `size`."
    )
    difference: LengthOut = Field(description="Mean of the readings: block less standard.")
    second_order_of_expansion: LengthOut = Field(
        description="Standard uncertainty by the unlike expansions times the temperature's doubt."
    )
    second_order_of_temperature: LengthOut = Field(
        description="Standard uncertainty by the unlike temperatures times the coefficient's doubt."
    )
    second_order_standard_uncertainty: LengthOut = Field(
        description="Standard uncertainty with these terms of second order."
    )
    monte_carlo: BlockMonteCarlo | None = Field(
        description="The check by Monte Carlo; null where no uncertainty was stated."
    )


@operation(
    "blocks.calibration",
    relations=(
        "l = (l_s (1 + α (θ − δθ)) + d) / (1 + (α + δα) θ), θ = t − 20 °C",
        "l ≈ l_s + d − l_s (δα θ + α δθ)",
        "u² = u²(l_s) + u²(d) + (l_s θ u(δα))² + (l_s α u(δθ))²",
        "second order: l_s u(δα) u(θ) and l_s u(α) u(δθ)",
        "ν = u⁴ / Σ u_i⁴ / ν_i; ν_i = ½ (share that a limit may be off)⁻²",
    ),
    sources=(_H1, _MONTE_CARLO),
    example={
        "units": "mm",
        "size": 50,
        "standard_length": 50.000623,
        "standard_expanded_uncertainty": 0.000075,
        "standard_coverage_factor": 3,
        "standard_degrees_of_freedom": 18,
        "differences": [0.000215] * 5,
        "repeatability": 0.000013,
        "repeatability_degrees_of_freedom": 24,
        "comparator_random_uncertainty": 0.0000039,
        "comparator_random_degrees_of_freedom": 5,
        "comparator_systematic_uncertainty": 0.0000067,
        "comparator_systematic_degrees_of_freedom": 8,
        "expansion_coefficient_error_limit": 2e-6,
        "expansion_difference": 1e-6,
        "expansion_difference_inexact_percent": 10,
        "temperature_celsius": 19.9,
        "temperature_standard_uncertainty_celsius": 0.2,
        "temperature_cycle_celsius": 0.5,
        "temperature_difference_celsius": 0.05,
        "temperature_difference_inexact_percent": 50,
        "coverage_probability": 0.99,
    },
    largest_request="100 readings, 200,000 Monte Carlo trials",
    heavy=True,
)
def calibration(request: BlockCalibrationRequest) -> Outcome[BlockCalibrationResult]:
    """Calibration of a block by comparison.

    A block's length at 20 °C from its difference to a standard on a comparator, with the budget of
    the GUM's H.1, its terms of second order, and Monte Carlo with the shortest interval.
    """
    compared = _comparison(request)
    budget = compared.budget(tuple(_not_stated(request)))
    products = compared.second_order()
    result = BlockCalibrationResult(
        length=_estimate(budget, compared.length, request.coverage_probability),
        deviation=None
        if request.size is None
        else tidy(compared.length - request.size, request.size),
        difference=compared.difference,
        second_order_of_expansion=products[0],
        second_order_of_temperature=products[1],
        second_order_standard_uncertainty=math.hypot(budget.standard_uncertainty, *products),
        monte_carlo=_monte_carlo(request, compared, budget),
    )
    return Outcome(result, tuple(_advisories(budget, result)))


def _comparison(request: BlockCalibrationRequest) -> Comparison:
    needs(
        request,
        "repeatability_degrees_of_freedom",
        "repeatability",
        why="Degrees of freedom are of a standard deviation.",
    )
    needs(
        request,
        "standard_degrees_of_freedom",
        "standard_expanded_uncertainty",
        why="Degrees of freedom are of an uncertainty.",
    )
    mean = math.fsum(request.differences) / len(request.differences)
    _require_alike(request)
    celsius = request.temperature_celsius
    return Comparison(
        standard=request.standard_length,
        difference=mean,
        estimated=tuple(_estimated(request)),
        coefficient=request.expansion_coefficient,
        coefficient_limit=request.expansion_coefficient_error_limit,
        expansion_difference=_limited(
            "expansion_difference",
            request.expansion_difference,
            request.expansion_difference_inexact_percent,
        ),
        kelvins=0.0 if celsius is None else celsius - REFERENCE_CELSIUS,
        kelvins_spread=request.temperature_standard_uncertainty_celsius,
        cycle=request.temperature_cycle_celsius,
        temperature_difference=_limited(
            "temperature_difference_celsius",
            request.temperature_difference_celsius,
            request.temperature_difference_inexact_percent,
        ),
    )


def _require_alike(request: BlockCalibrationRequest) -> None:
    """Refuse readings, uncertainties or a size that blocks of one length cannot have."""
    most = min(_ALIKE * request.standard_length, LARGEST_DEVIATION[request.units])
    for place, reading in enumerate(request.differences):
        if abs(reading) > most:
            raise Impossible(
                f"A reading of {of_any_unit(reading)} is no difference of two blocks of one "
                f"nominal length; is its unit the one of `units`?",
                fields={f"differences/{place}": f"should be within {of_any_unit(most)} of 0"},
            )
    most = LARGEST_DEVIATION[request.units]
    for name in _UNCERTAINTIES:
        value = getattr(request, name) or 0.0
        if value > most:
            raise Impossible(
                f"{of_any_unit(value)} is no uncertainty of blocks; is its unit that of `units`?",
                fields={name: f"should be at most {of_any_unit(most)}"},
            )
    if request.size is not None and abs(request.size - request.standard_length) > most:
        raise Impossible(
            f"A standard of {of_any_unit(request.standard_length)} is none for a block of "
            f"{of_any_unit(request.size)}: a comparator takes the like only.",
            fields={"size": "should be the nominal size of the standard too"},
        )


def _estimated(request: BlockCalibrationRequest) -> Iterator[Estimated]:
    """Uncertainties of lengths that were stated, or that the readings show."""
    expanded, factor = request.standard_expanded_uncertainty, request.standard_coverage_factor
    if expanded is not None:
        freedom = request.standard_degrees_of_freedom or math.inf
        yield Estimated("standard_expanded_uncertainty", expanded, freedom, 1.0 / factor)
    spread, freedom = _repeatability(request)
    if spread is not None:
        root = math.sqrt(len(request.differences))
        field = "scatter" if request.repeatability is None else "repeatability"
        yield Estimated(field, spread, freedom, 1.0 / root)
    for kind in ("random", "systematic"):
        stated: float | None = getattr(request, f"comparator_{kind}_uncertainty")
        if stated is not None:
            known: float | None = getattr(request, f"comparator_{kind}_degrees_of_freedom")
            yield Estimated(f"comparator_{kind}_uncertainty", stated, known or math.inf)


def _repeatability(request: BlockCalibrationRequest) -> tuple[float | None, float]:
    """Standard deviation of one reading and its degrees of freedom; None of a single reading."""
    if request.repeatability is not None:
        return request.repeatability, request.repeatability_degrees_of_freedom or math.inf
    readings: Sequence[float] = request.differences
    return (stdev(readings), len(readings) - 1.0) if len(readings) > 1 else (None, math.inf)


def _limited(field: str, limit: float | None, inexact_percent: float) -> Limited | None:
    return None if limit is None else Limited(field, limit, inexact_percent / 100.0)


def _not_stated(request: BlockCalibrationRequest) -> Iterator[str]:
    yield from not_sent(request, "standard_expanded_uncertainty")
    if len(request.differences) == 1:
        yield from not_sent(request, "repeatability")
    yield from not_sent(
        request,
        "comparator_random_uncertainty",
        "comparator_systematic_uncertainty",
        "expansion_difference",
        "temperature_celsius",
        "temperature_difference_celsius",
    )


def _estimate(budget: Budget, length: float, probability: float) -> LengthEstimate:
    spread = budget.standard_uncertainty
    factor = half_width(budget, probability) / spread if spread else None
    return estimate(LengthEstimate, budget, length, coverage=factor)


def _monte_carlo(
    request: BlockCalibrationRequest, compared: Comparison, budget: Budget
) -> BlockMonteCarlo | None:
    if not budget.contributions:
        return None
    found = simulated(
        compared.simulate(request.trials),
        request.coverage_probability,
        has_moments=compared.has_moments,
    )
    length = compared.length
    return BlockMonteCarlo(
        trials=request.trials,
        mean=None if found.mean is None else length + found.mean,
        standard_deviation=found.standard_deviation,
        shortest_low=length + found.shortest[0],
        shortest_high=length + found.shortest[1],
        symmetric_low=length + found.symmetric[0],
        symmetric_high=length + found.symmetric[1],
    )


def _advisories(budget: Budget, result: BlockCalibrationResult) -> Iterator[Advisory]:
    check, spread = result.monte_carlo, budget.standard_uncertainty
    if check is None or check.standard_deviation is None or not spread:
        return
    apart = 100.0 * (check.standard_deviation / spread - 1.0)
    if abs(apart) > BENT_PERCENT:
        yield caution(
            "budget-bends",
            f"Monte Carlo differs from the budget by {percent(apart)}: products of small errors, "
            "or few readings, count here; take the Monte Carlo figures.",
        )
