"""Budget, simulation and inverse of a sine set-up's angle error. Angles in radians.

Yaw acts by its square: its contribution carries the standard deviation that its second-order term
has, and its mean joins the bias (JCGM 100:2008, 5.1.2 note: where the first-order term vanishes,
higher orders count).
"""

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace

import numpy as np

from halfangle_service.errors import Impossible
from halfangle_service.trade.sine.angle_budget import (
    TERMS,
    SetUp,
    Term,
    Values,
    realised_angle,
    sensitivity,
    thermal_shift,
    yaw_bias,
    yaw_standard_uncertainty,
    yaw_worst_case,
)
from halfangle_service.trade.uncertainty import (
    Budget,
    Contribution,
    Distribution,
    Sample,
    draw,
    summarise,
)
from halfangle_service.trade.uncertainty.monte_carlo import SEED

#: The yaw up to which the second-order term is good to 1 % of itself.
LARGEST_YAW_DEGREES = 5.0
#: Bisections: enough for the last bit of a float between bounds a factor 2 apart.
HALVINGS = 60


@dataclass(frozen=True, slots=True)
class ErrorInputs:
    """A set-up, how far each term may be off (its unit: `unit_of`), and each distribution.

    A missing value is zero, a missing distribution rectangular. Yaw is always rectangular.
    """

    set_up: SetUp
    values: Mapping[Term, float]
    distributions: Mapping[Term, Distribution] = field(default_factory=dict)

    def with_value(self, term: Term, value: float) -> "ErrorInputs":
        """The same inputs with another value of one term."""
        return replace(self, values={**self.values, term: value})


def contribution(inputs: ErrorInputs, term: Term) -> Contribution:
    """One term's contribution to the angle, in radians."""
    value = inputs.values.get(term, 0.0)
    if term == "yaw":
        return Contribution(term, yaw_standard_uncertainty(inputs.set_up, value), "normal")
    shape = inputs.distributions.get(term, "rectangular")
    return Contribution(term, value, shape, sensitivity(inputs.set_up, term))


def budget(inputs: ErrorInputs) -> Budget:
    """The budget of the angle over all terms, in radians."""
    return Budget(tuple(contribution(inputs, term) for term in TERMS))


def term_worst_case(inputs: ErrorInputs, term: Term) -> float:
    """Largest change of the angle in radians that one term can cause."""
    if term == "yaw":
        return yaw_worst_case(inputs.set_up, inputs.values.get(term, 0.0))
    return contribution(inputs, term).worst_case


def bias(inputs: ErrorInputs) -> float:
    """Expected angle less the wanted one, in radians: temperature off 20 °C, and yaw's mean."""
    yaw = inputs.values.get("yaw", 0.0)
    return thermal_shift(inputs.set_up) + yaw_bias(inputs.set_up, yaw)


def worst_case(inputs: ErrorInputs) -> float:
    """Largest change of the angle in radians when all terms stand at their limits at once."""
    terms = math.fsum(term_worst_case(inputs, term) for term in TERMS)
    return abs(thermal_shift(inputs.set_up)) + terms


def reach(inputs: ErrorInputs, coverage: float) -> float:
    """|bias| + expanded uncertainty in radians: what a tolerance must hold (ISO 14253-1)."""
    return abs(bias(inputs)) + budget(inputs).expanded(coverage)


def simulate(inputs: ErrorInputs, trials: int, probability: float) -> Sample:
    """Draw the set-up so many times through the whole model; angle errors in radians.

    Raises Impossible where the errors are so large that some trial has no angle at all.
    """
    generator = np.random.default_rng(SEED)
    off: dict[Term, Values] = {
        term: draw(
            generator, inputs.distributions.get(term, "rectangular"), inputs.values[term], trials
        )
        for term in TERMS
        if inputs.values.get(term)
    }
    with np.errstate(invalid="ignore", divide="ignore"):
        errors = realised_angle(inputs.set_up, off) - inputs.set_up.angle_rad
    if not np.all(np.isfinite(errors)):
        raise Impossible(
            "The errors are so large that the rolls would rise by more than the center distance.",
            fields={"angle": "should leave room for the errors stated below 90°"},
        )
    return summarise(np.broadcast_to(np.asarray(errors), (trials,)), probability)


def largest_value(inputs: ErrorInputs, term: Term, limit: float, coverage: float) -> float | None:
    """Largest value of one term at which the rest as stated keeps within a limit in radians.

    None where there is no room even with the term at zero. Yaw ends at LARGEST_YAW_DEGREES.
    """

    def holds(value: float) -> bool:
        return reach(inputs.with_value(term, value), coverage) <= limit

    if not holds(0.0):
        return None
    low, high = 0.0, LARGEST_YAW_DEGREES if term == "yaw" else _first_guess(inputs, term, limit)
    if holds(high):
        return high
    return _bisect(holds, low, high)


def _first_guess(inputs: ErrorInputs, term: Term, limit: float) -> float:
    """A value that is certainly too large: four times its limit at the narrowest distribution."""
    slope = abs(sensitivity(inputs.set_up, term))
    return 4.0 * limit * math.sqrt(6.0) / slope


def _bisect(holds: Callable[[float], bool], low: float, high: float) -> float:
    """Largest value between a bound that holds and one that does not."""
    for _ in range(HALVINGS):
        middle = (low + high) / 2.0
        low, high = (middle, high) if holds(middle) else (low, middle)
    return low


def alone(inputs: ErrorInputs, term: Term) -> ErrorInputs:
    """The same set-up with every other term at zero, and at 20 °C."""
    ideal = replace(inputs.set_up, temperature_offset=0.0)
    return replace(inputs, set_up=ideal, values={term: inputs.values.get(term, 0.0)})


def holdable_terms(inputs: ErrorInputs) -> tuple[Term, ...]:
    """Terms that can be held, and that can change this set-up's angle at all.

    Expansions are left out: a coefficient comes with the material.
    """
    return tuple(
        term
        for term in TERMS
        if not term.endswith("-expansion") and sensitivity(inputs.set_up, term) != 0.0
    )


def mendable(inputs: ErrorInputs, limit: float, coverage: float) -> dict[Term, float]:
    """For each term that could by itself bring a set-up within a limit: the value to hold.

    Empty where no single term can, or where the set-up is within it already.
    """
    if reach(inputs, coverage) <= limit:
        return {}
    allowed = {
        term: largest_value(inputs, term, limit, coverage)
        for term in holdable_terms(inputs)
        if inputs.values.get(term)
    }
    return {term: value for term, value in allowed.items() if value}


def together(inputs: ErrorInputs, limit: float, coverage: float) -> tuple[Term, ...]:
    """Fewest terms, the largest first, whose removal brings a set-up within a limit.

    All of them where even that does not: then the bias itself is too large.
    """
    ranked = sorted(holdable_terms(inputs), key=lambda term: -contribution(inputs, term).in_result)
    mended: list[Term] = []
    for term in ranked:
        if reach(inputs, coverage) <= limit or not inputs.values.get(term):
            break
        inputs = inputs.with_value(term, 0.0)
        mended.append(term)
    return tuple(mended)
