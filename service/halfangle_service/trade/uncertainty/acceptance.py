"""What a measured value must show to prove its limits: the zone of acceptance (JCGM 106:2012, 8).

The way back of `verdict_of`: a value within the zone is conforming by the rule, one outside it is
not. All in one unit.
"""

import math
from collections.abc import Callable

from halfangle_service.trade.uncertainty.budget import Budget
from halfangle_service.trade.uncertainty.coverage import COVERAGE_PROBABILITY, guard_band
from halfangle_service.trade.uncertainty.decision import (
    FACTOR_2013,
    DecisionRule,
    conformance,
)

#: Halvings in the search for an edge of the zone: to a few parts in 10⁹ of the tolerance.
_HALVINGS = 28
#: Of a probability; what a guard band is worked out to.
_NEAR_ENOUGH = 1e-6


def acceptance_zone(
    budget: Budget, lower: float, upper: float, rule: DecisionRule = "iso-14253-1-2017"
) -> tuple[float, float] | None:
    """Smallest and largest value whose verdict is conforming; None where no value proves anything.

    Without contributions nothing is known of the value's error, so nothing can be proved. A limit
    may be infinite, where there is none to that side.
    """
    if not budget.contributions:
        return None
    if rule == "iso-14253-1-2013":
        return _within(lower, upper, FACTOR_2013 * budget.standard_uncertainty)
    if not any(part.one_sided for part in budget.contributions):
        zone = _within(lower, upper, guard_band(budget))
        if zone is not None and _holds(zone[1], lower, upper, budget):
            return zone
    return _searched(budget, lower, upper)


def proves(
    budget: Budget, lower: float, upper: float, rule: DecisionRule = "iso-14253-1-2017"
) -> bool | None:
    """Say whether some value can prove the limits; None where what was not stated decides.

    What is stated alone may be too much: then what was not stated cannot mend it.
    """
    if not budget.contributions:
        return None
    if acceptance_zone(budget, lower, upper, rule) is None:
        return False
    return None if budget.not_stated else True


def _within(lower: float, upper: float, band: float) -> tuple[float, float] | None:
    return (lower + band, upper - band) if lower + band <= upper - band else None


def _holds(value: float, lower: float, upper: float, budget: Budget) -> bool:
    """True where a value conforms with the probability that 2017 asks for, rounding aside."""
    return conformance(value, lower, upper, budget) >= COVERAGE_PROBABILITY - _NEAR_ENOUGH


def _searched(budget: Budget, lower: float, upper: float) -> tuple[float, float] | None:
    """The zone where both limits count at once, or an error acts one way: each edge by halving.

    About the middle of the limits, where a value proves most.
    """
    reach = 4.0 * (budget.standard_uncertainty + (budget.worst_case or 0.0))
    if math.isinf(upper - lower):
        middle = upper - reach if math.isinf(lower) else lower + reach
    else:
        middle = (lower + upper) / 2.0
    if not _holds(middle, lower, upper, budget):
        return None
    smallest, largest = (
        _edge(middle, limit, lambda value: _holds(value, lower, upper, budget))
        for limit in (lower, upper)
    )
    return smallest, largest


def _edge(inside: float, outside: float, holds: Callable[[float], bool]) -> float:
    """Where a zone that holds inside ends; an infinite limit ends nothing."""
    if math.isinf(outside):
        return outside
    for _ in range(_HALVINGS):
        between = (inside + outside) / 2.0
        inside, outside = (between, outside) if holds(between) else (inside, between)
    return inside
