"""What must be held of a sine set-up so that its angle keeps a limit: the budget, turned round.

Angles and limits in radians, a term's value in its own unit. `coverage` is the coverage factor.
"""

import math
from collections.abc import Callable
from dataclasses import replace

from halfangle_service.trade.sine.angle_error import (
    LARGEST_YAW_ARCSEC,
    ErrorInputs,
    budget,
    contribution,
    reach,
)
from halfangle_service.trade.sine.angle_model import TERMS, Term, sensitivity

#: Bisections: enough for the last bit of a float between bounds a factor 2 apart.
HALVINGS = 60


def largest_value(inputs: ErrorInputs, term: Term, limit: float, coverage: float) -> float | None:
    """Largest value of one term at which the rest as stated keeps within a limit.

    None where there is no room even with the term at zero. Yaw ends at LARGEST_YAW_ARCSEC.
    """

    def holds(value: float) -> bool:
        return reach(budget(inputs.with_value(term, value)), coverage) <= limit

    if not holds(0.0):
        return None
    high = LARGEST_YAW_ARCSEC if term == "axis-yaw" else _first_guess(inputs, term, limit)
    if holds(high):
        return high
    return _bisect(holds, 0.0, high)


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
    """The same set-up with no other term, and at 20 °C."""
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
    if reach(budget(inputs), coverage) <= limit:
        return {}
    allowed = {
        term: largest_value(inputs, term, limit, coverage)
        for term in holdable_terms(inputs)
        if inputs.values.get(term)
    }
    return {term: value for term, value in allowed.items() if value}


def together(inputs: ErrorInputs, limit: float, coverage: float) -> tuple[Term, ...]:
    """Fewest terms, the largest first, whose removal brings a set-up within a limit.

    All of them where even that does not: then the expected error itself is too large.
    """
    ranked = sorted(holdable_terms(inputs), key=lambda term: -contribution(inputs, term).in_result)
    mended: list[Term] = []
    for term in ranked:
        if reach(budget(inputs), coverage) <= limit or not inputs.values.get(term):
            break
        inputs = inputs.with_value(term, 0.0)
        mended.append(term)
    return tuple(mended)
