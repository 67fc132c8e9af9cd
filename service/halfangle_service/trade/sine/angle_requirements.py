"""What must be held of a sine set-up so that its angle keeps a limit: the budget, turned round.

Angles in radians, a term's value in its own unit.
"""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import cache, cached_property

from halfangle_service.trade.angles import ARCSEC_PER_RADIAN
from halfangle_service.trade.sine.angle_error import (
    LARGEST_YAW_ARCSEC,
    ErrorInputs,
    budget,
    contribution,
)
from halfangle_service.trade.sine.angle_model import TERMS, Term, sensitivity
from halfangle_service.trade.sine.geometry import turned_by_yaw, yaw_that_turns
from halfangle_service.trade.uncertainty import (
    Budget,
    Contribution,
    DecisionRule,
    Distribution,
    shortfall,
    smallest_limit,
)
from halfangle_service.trade.uncertainty.room import largest_spread, largest_times


@dataclass(frozen=True, slots=True)
class Goal:
    """± a limit of the plate's angle in radians, and the rule by which it is to be kept."""

    limit: float
    rule: DecisionRule

    def kept_by(self, errors: Budget) -> bool:
        """True where what was stated of the errors keeps the limit."""
        return shortfall(errors, self.limit, self.rule) <= 0.0


@dataclass(frozen=True)
class Requirements:
    """What each term of a set-up may be so that a goal is kept; values in the term's own unit."""

    inputs: ErrorInputs
    goal: Goal

    @cached_property
    def errors(self) -> Budget:
        """The budget of what is at hand."""
        return budget(self.inputs)

    @cached_property
    def of_one(self) -> Mapping[Term, Contribution]:
        """Contribution of a value of 1 of each term that can be held."""
        terms = holdable_terms(self.inputs)
        return {term: contribution(self.inputs.with_value(term, 1.0), term) for term in terms}

    def alone(self, term: Term) -> float:
        """Largest value of a term were all else perfect: at 20 °C, the stack as asked for."""
        return self._value(term, self._times_alone(term))

    def with_others(self, term: Term) -> float | None:
        """Largest value of a term at which the rest as stated keeps the goal.

        None where there is no room even with the term at zero. Yaw ends at LARGEST_YAW_ARCSEC.
        """
        rest = tuple(part for part in self.errors.contributions if part.name != term)
        others, one = replace(self.errors, contributions=rest), self.of_one[term]
        # The others leave a term less than all the room; but yaw, always to one side, can take up
        # what is off to the other.
        most = self._most_yaw if one.one_sided else 2.0 * self._times_alone(term)
        times = largest_times(others, one, self.goal.limit, self.goal.rule, most)
        return None if times is None else self._value(term, times)

    @cached_property
    def equal_shares(self) -> Mapping[Term, float]:
        """Largest value of each term where it and all those at hand add the same uncertainty.

        What is known to be off counts; all 0 where that alone is past the limit.
        """
        at_hand = tuple(term for term in self.of_one if self.inputs.values.get(term))
        common = self._spread_among(at_hand) if at_hand else 0.0
        return {
            term: self._value(
                term,
                (common if term in at_hand else self._spread_among((*at_hand, term)))
                / one.in_result,
            )
            for term, one in self.of_one.items()
        }

    def _spread_among(self, sharers: tuple[Term, ...]) -> float:
        """Standard uncertainty that each of these terms may add, all the same; yaw has its end."""
        spread = self._largest_spread(sharers)
        rest = tuple(term for term in sharers if not self.of_one[term].one_sided)
        if rest == sharers or not rest:
            return spread
        yaw = self.of_one["axis_yaw_error_limit_arcsec"]
        at_most = replace(yaw, value=self._most_yaw)
        return self._largest_spread(rest, at_most) if spread > at_most.in_result else spread

    def _largest_spread(self, sharers: tuple[Term, ...], *beside: Contribution) -> float:
        ones = [self.of_one[term] for term in sharers]
        alike = [replace(one, value=one.value / one.in_result) for one in ones]
        others = Budget(beside, self.errors.offset)
        return largest_spread(alike, others, self.goal.limit, self.goal.rule) or 0.0

    def _times_alone(self, term: Term) -> float:
        """The same as how many times a value of 1; yaw acts by its square."""
        one = self.of_one[term]
        needed = _limit_of_one(one.distribution, one.one_sided, self.goal.rule)
        return self.goal.limit / (abs(one.at_limit) * needed)

    @cached_property
    def _most_yaw(self) -> float:
        """How many times as much as one arc-second the largest yaw turns."""
        turned = turned_by_yaw(self.inputs.set_up.angle_rad, LARGEST_YAW_ARCSEC / ARCSEC_PER_RADIAN)
        return turned / self.of_one["axis_yaw_error_limit_arcsec"].at_limit

    def _value(self, term: Term, times: float) -> float:
        """Value of a term that acts so many times as much as a value of 1."""
        one = self.of_one[term]
        if not one.one_sided:
            return times
        yaw = yaw_that_turns(self.inputs.set_up.angle_rad, times * abs(one.at_limit))
        return min(yaw * ARCSEC_PER_RADIAN, LARGEST_YAW_ARCSEC)


@cache
def _limit_of_one(shape: Distribution, one_sided: bool, rule: DecisionRule) -> float:
    """Smallest limit that a contribution of size 1 keeps by itself."""
    lone = Contribution("", 1.0, shape, one_sided=one_sided)
    return smallest_limit(Budget((lone,)), rule)


def allowed_spread(errors: Budget, goal: Goal) -> float | None:
    """Standard uncertainty, of a normal distribution, that a goal leaves after the mean error.

    None where that alone is past the limit.
    """
    normal = Contribution("", 1.0, "normal")
    return largest_spread([normal], Budget((), errors.mean), goal.limit, goal.rule)


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
