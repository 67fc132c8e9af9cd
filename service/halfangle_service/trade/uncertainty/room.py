"""How large a contribution may be for a plan's error still to keep ± a limit: budgets turned round.

All in the unit of the result.
"""

import math
from collections.abc import Callable, Sequence
from dataclasses import replace

from halfangle_service.trade.roots import crossing
from halfangle_service.trade.uncertainty.budget import Budget, Contribution
from halfangle_service.trade.uncertainty.coverage import (
    COVERAGE_PROBABILITY,
    parts_of,
    sum_of,
    without_widest,
)
from halfangle_service.trade.uncertainty.decision import DecisionRule, shortfall

#: What is less than this part of a limit is no spread.
_NOTHING = 1e-9


def largest_times(
    others: Budget, part: Contribution, limit: float, rule: DecisionRule, most: float
) -> float | None:
    """How many times as large as it is a contribution may be beside others, at most `most`.

    None where these alone do not keep the limit.
    """
    missed = _missed_by_times(others, part, limit, rule)
    if missed(0.0) > 0.0:
        return None
    return most if missed(most) <= 0.0 else crossing(missed, 0.0, most)[0]


def _missed_by_times(
    others: Budget, part: Contribution, limit: float, rule: DecisionRule
) -> Callable[[float], float]:
    """How far the others, and so many times the contribution, are from keeping the limit."""
    if (
        rule == "iso-14253-1-2017"
        and part.distribution == "rectangular"
        and not part.one_sided
        and math.isinf(others.degrees_of_freedom)
    ):
        low, high, unit = -limit - others.mean, limit - others.mean, abs(part.at_limit)
        parts, widest = without_widest(parts_of(others.contributions), 1)
        rest = sum_of(parts, widest)
        return lambda times: COVERAGE_PROBABILITY - rest.between(low, high, *widest, times * unit)

    def missed(times: float) -> float:
        parts = (*others.contributions, replace(part, value=times * part.value))
        return shortfall(replace(others, contributions=parts), limit, rule)

    return missed


def largest_spread(
    alike: Sequence[Contribution], others: Budget, limit: float, rule: DecisionRule
) -> float | None:
    """Largest standard uncertainty that each of these may add, all the same, beside others.

    Each adds 1 as it is. None where the others' mean alone is past the limit.
    """
    if abs(others.mean) > limit:
        return None

    def missed(spread: float) -> float:
        # In spreads, so that where there are no others the contributions stay as they are.
        beside = (replace(part, value=part.value / spread) for part in others.contributions)
        scaled = Budget((*alike, *beside), others.offset / spread)
        return shortfall(scaled, limit / spread, rule)

    least = _NOTHING * limit
    return 0.0 if missed(least) > 0.0 else crossing(missed, least, limit)[0]
