"""What must be held of a sine set-up so that its angle keeps a limit: the budget, turned round.

Angles in radians, a term's value in its own unit.
"""

import math
from collections.abc import Callable
from dataclasses import dataclass

from halfangle_service.trade.sine.angle_error import (
    LARGEST_YAW_ARCSEC,
    ErrorInputs,
    budget,
    contribution,
)
from halfangle_service.trade.sine.angle_model import TERMS, Term, sensitivity
from halfangle_service.trade.uncertainty import (
    Budget,
    Contribution,
    DecisionRule,
    keeps,
    smallest_limit,
)

#: Most bisections, and how near the two bounds come, of the value.
HALVINGS, NEAR_ENOUGH = 60, 1e-10


@dataclass(frozen=True, slots=True)
class Goal:
    """± a limit of the plate's angle in radians, and the rule by which it is to be kept."""

    limit: float
    rule: DecisionRule

    def kept_by(self, errors: Budget) -> bool:
        """True where what was stated of the errors keeps the limit."""
        return keeps(errors, self.limit, self.rule)


def largest_value(inputs: ErrorInputs, term: Term, goal: Goal) -> float | None:
    """Largest value of one term at which the rest as stated keeps a goal.

    None where there is no room even with the term at zero. Yaw ends at LARGEST_YAW_ARCSEC.
    """

    def kept(value: float) -> bool:
        return goal.kept_by(budget(inputs.with_value(term, value)))

    # The others leave a term less than all the room; but yaw, always to one side, can take up what
    # is off to the other.
    bound = LARGEST_YAW_ARCSEC if term == "axis-yaw" else 2.0 * largest_alone(inputs, term, goal)
    return _largest(kept, bound) if kept(0.0) else None


def largest_alone(inputs: ErrorInputs, term: Term, goal: Goal) -> float:
    """Largest value of one term were all else perfect: at 20 °C, the stack as asked for."""
    lone = contribution(inputs.with_value(term, 1.0), term)
    return _value(term, goal.limit / smallest_limit(Budget((lone,)), goal.rule))


def equal_shares(inputs: ErrorInputs, goal: Goal) -> dict[Term, float]:
    """Largest value of each term where it and all those at hand add the same uncertainty.

    What is known to be off counts; all 0 where that alone is past the limit.
    """
    terms = holdable_terms(inputs)
    of_one = {t: contribution(inputs.with_value(t, 1.0), t).in_result for t in terms}
    at_hand = tuple(term for term in terms if inputs.values.get(term))
    offset = budget(inputs).offset

    def spread_among(sharers: tuple[Term, ...]) -> float:
        def kept(spread: float) -> bool:
            values = {term: _value(term, spread / of_one[term]) for term in sharers}
            parts = (contribution(inputs.with_value(t, v), t) for t, v in values.items())
            return goal.kept_by(Budget(tuple(parts), offset))

        return _largest(kept, goal.limit) if kept(0.0) else 0.0

    common = spread_among(at_hand) if at_hand else 0.0
    spreads = {t: common if t in at_hand else spread_among((*at_hand, t)) for t in terms}
    return {term: _value(term, spread / of_one[term]) for term, spread in spreads.items()}


def _value(term: Term, times: float) -> float:
    """Value of a term that acts so many times as much as a value of 1; yaw acts by its square."""
    return min(math.sqrt(times), LARGEST_YAW_ARCSEC) if term == "axis-yaw" else times


def allowed_spread(errors: Budget, goal: Goal) -> float | None:
    """Standard uncertainty, of a normal distribution, that a goal leaves after the mean error.

    None where that alone is past the limit.
    """

    def kept(spread: float) -> bool:
        return goal.kept_by(Budget((Contribution("", spread, "normal"),), errors.mean))

    return _largest(kept, goal.limit) if abs(errors.mean) < goal.limit else None


def _largest(kept: Callable[[float], bool], bound: float) -> float:
    """Largest value up to a bound that is kept, where 0 is."""
    if kept(bound):
        return bound
    low, high = 0.0, bound
    for _ in range(HALVINGS):
        middle = (low + high) / 2.0
        low, high = (middle, high) if kept(middle) else (low, middle)
        if high - low <= NEAR_ENOUGH * high:
            break
    return low


def holdable_terms(inputs: ErrorInputs) -> tuple[Term, ...]:
    """Terms that can be held, and that can change this set-up's angle at all.

    Expansions are left out: a coefficient comes with the material.
    """
    return tuple(
        term
        for term in TERMS
        if not term.endswith("-expansion") and sensitivity(inputs.set_up, term) != 0.0
    )


def together(inputs: ErrorInputs, goal: Goal) -> tuple[Term, ...]:
    """Fewest terms, the largest first, whose removal brings a set-up within a goal.

    All of them where even that does not: then the expected error itself is too large.
    """
    ranked = sorted(holdable_terms(inputs), key=lambda term: -contribution(inputs, term).in_result)
    mended: list[Term] = []
    for term in ranked:
        if goal.kept_by(budget(inputs)) or not inputs.values.get(term):
            break
        inputs = inputs.with_value(term, 0.0)
        mended.append(term)
    return tuple(mended)
