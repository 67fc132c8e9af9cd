"""What must be held of a sine set-up so that its angle keeps a limit: the budget, turned round.

Angles in radians, a term's value in its own unit.
"""

from collections.abc import Callable
from dataclasses import dataclass
from functools import cache

from halfangle_service.trade.angles import ARCSEC_PER_RADIAN
from halfangle_service.trade.sine.angle_error import (
    LARGEST_YAW_ARCSEC,
    ErrorInputs,
    budget,
    contribution,
)
from halfangle_service.trade.sine.angle_model import TERMS, Term, sensitivity
from halfangle_service.trade.sine.geometry import yaw_that_turns
from halfangle_service.trade.uncertainty import (
    Budget,
    Contribution,
    DecisionRule,
    Distribution,
    shortfall,
    smallest_limit,
)

#: Most steps to a value, and how near the bounds around it come, as a part of it.
STEPS, NEAR_ENOUGH = 60, 1e-10


@dataclass(frozen=True, slots=True)
class Goal:
    """± a limit of the plate's angle in radians, and the rule by which it is to be kept."""

    limit: float
    rule: DecisionRule

    def missed_by(self, errors: Budget) -> float:
        """How far what was stated of the errors is from keeping the limit; at most 0 within it."""
        return shortfall(errors, self.limit, self.rule)

    def kept_by(self, errors: Budget) -> bool:
        """True where what was stated of the errors keeps the limit."""
        return self.missed_by(errors) <= 0.0


def largest_value(inputs: ErrorInputs, term: Term, goal: Goal) -> float | None:
    """Largest value of one term at which the rest as stated keeps a goal.

    None where there is no room even with the term at zero. Yaw ends at LARGEST_YAW_ARCSEC.
    """

    def missed(value: float) -> float:
        return goal.missed_by(budget(inputs.with_value(term, value)))

    # The others leave a term less than all the room; but yaw, always to one side, can take up what
    # is off to the other.
    bound = (
        LARGEST_YAW_ARCSEC
        if term == "axis_yaw_error_limit_arcsec"
        else 2.0 * largest_alone(inputs, term, goal)
    )
    return _largest(missed, bound)


def largest_alone(inputs: ErrorInputs, term: Term, goal: Goal) -> float:
    """Largest value of one term were all else perfect: at 20 °C, the stack as asked for."""
    lone = contribution(inputs.with_value(term, 1.0), term)
    needed = abs(lone.at_limit) * _limit_of_one(lone.distribution, lone.one_sided, goal.rule)
    return _value(inputs, term, goal.limit / needed)


@cache
def _limit_of_one(shape: Distribution, one_sided: bool, rule: DecisionRule) -> float:
    """Smallest limit that a contribution of size 1 keeps by itself."""
    lone = Contribution("", 1.0, shape, one_sided=one_sided)
    return smallest_limit(Budget((lone,)), rule)


def equal_shares(inputs: ErrorInputs, goal: Goal) -> dict[Term, float]:
    """Largest value of each term where it and all those at hand add the same uncertainty.

    What is known to be off counts; all 0 where that alone is past the limit.
    """
    terms = holdable_terms(inputs)
    of_one = {t: contribution(inputs.with_value(t, 1.0), t).in_result for t in terms}
    at_hand = tuple(term for term in terms if inputs.values.get(term))
    offset = budget(inputs).offset

    def spread_among(sharers: tuple[Term, ...]) -> float:
        def missed(spread: float) -> float:
            values = {term: _value(inputs, term, spread / of_one[term]) for term in sharers}
            parts = (contribution(inputs.with_value(t, v), t) for t, v in values.items())
            return goal.missed_by(Budget(tuple(parts), offset))

        return _largest(missed, goal.limit) or 0.0

    common = spread_among(at_hand) if at_hand else 0.0
    spreads = {t: common if t in at_hand else spread_among((*at_hand, t)) for t in terms}
    return {t: _value(inputs, t, spread / of_one[t]) for t, spread in spreads.items()}


def _value(inputs: ErrorInputs, term: Term, times: float) -> float:
    """Value of a term that acts so many times as much as a value of 1; yaw acts by its square."""
    if term != "axis_yaw_error_limit_arcsec":
        return times
    of_one = contribution(inputs.with_value(term, 1.0), term).at_limit
    yaw = yaw_that_turns(inputs.set_up.angle_rad, times * abs(of_one)) * ARCSEC_PER_RADIAN
    return min(yaw, LARGEST_YAW_ARCSEC)


def allowed_spread(errors: Budget, goal: Goal) -> float | None:
    """Standard uncertainty, of a normal distribution, that a goal leaves after the mean error.

    None where that alone is past the limit.
    """

    def missed(spread: float) -> float:
        return goal.missed_by(Budget((Contribution("", spread, "normal"),), errors.mean))

    return _largest(missed, goal.limit)


def _largest(missed: Callable[[float], float], bound: float) -> float | None:
    """Largest value up to a bound at which nothing is missed; None where 0 misses.

    False position, the kept end's figure halved (the Illinois rule), so that a few steps do.
    """
    low, high = 0.0, bound
    at_low, at_high = missed(low), missed(high)
    if at_low > 0.0 or at_high <= 0.0:
        return None if at_low > 0.0 else bound
    before = 0.0
    for _ in range(STEPS):
        if at_low == 0.0 or high - low <= NEAR_ENOUGH * high:
            break
        value = high - at_high * (high - low) / (at_high - at_low)
        found = missed(value)
        if found <= 0.0:
            low, at_low = value, found
            at_high = at_high / 2.0 if before < 0.0 else at_high
        else:
            high, at_high = value, found
            at_low = at_low / 2.0 if before > 0.0 else at_low
        before = -1.0 if found <= 0.0 else 1.0
    return low


def holdable_terms(inputs: ErrorInputs) -> tuple[Term, ...]:
    """Terms that can be held, and that can change this set-up's angle at all.

    Expansions are left out: a coefficient comes with the material.
    """
    return tuple(
        term
        for term in TERMS
        if not term.endswith("_expansion") and sensitivity(inputs.set_up, term) != 0.0
    )


def fewest_to_mend(inputs: ErrorInputs, goal: Goal) -> tuple[Term, ...]:
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
