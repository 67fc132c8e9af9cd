"""Judgements against limits: a verdict on a measurement, a forecast of a plan; never one word.

By the edition of ISO 14253-1 that is asked for (both from memory). 2017: what conforms does so with
a probability of 95 % at least, what does not conform with 5 % at most; for a normal result and wide
limits that is a guard band of 1.65 u at either limit. 1998 and 2013: the guard band is the expanded
uncertainty, 2 u. A verdict may go by a guard band agreed on, or by none: then supplier and customer
share the risk (JCGM 106:2012, 8.2 and 8.3, from memory).
"""

import math
from collections.abc import Iterable
from typing import Literal

from halfangle_service.trade.decimals import tidy
from halfangle_service.trade.roots import crossing_near
from halfangle_service.trade.uncertainty.budget import Budget
from halfangle_service.trade.uncertainty.coverage import COVERAGE_PROBABILITY, probability_between

#: Edition of the decision rule.
DecisionRule = Literal["iso-14253-1-2017", "iso-14253-1-2013"]
#: Rule of a verdict; a plan is held to an edition of the standard.
VerdictRule = Literal[DecisionRule, "guard-band", "simple-acceptance"]
#: Coverage factor of the guard band before 2017.
FACTOR_2013 = 2.0

#: On a measurement.
Verdict = Literal["conforming", "not-conforming", "not-provable"]
#: Of a plan.
Forecast = Literal["holds", "may-not-hold", "does-not-hold", "not-stated"]

#: Judgements that say yes; every other word does not.
YES: frozenset[Verdict | Forecast] = frozenset({"conforming", "holds"})

_FORECASTS: dict[Verdict, Forecast] = {
    "conforming": "holds",
    "not-conforming": "does-not-hold",
    "not-provable": "may-not-hold",
}


def verdict_of(
    value: float,
    lower: float,
    upper: float,
    budget: Budget,
    rule: VerdictRule = "iso-14253-1-2017",
    guard_band: float = 0.0,
) -> Verdict:
    """Judge a measured value by its budget against its limits, all in one unit.

    A limit may be infinite, where there is none to that side. Without contributions nothing is
    known of the value's error, so nothing can be proved. `guard_band` is the one agreed on.
    """
    inside = lower <= value <= upper
    if not budget.contributions:
        return "not-provable"
    if rule == "iso-14253-1-2017":
        return verdict_by(conformance(value, lower, upper, budget), inside=inside)
    return _zone_of(value, lower, upper, fixed_band(budget, rule, guard_band))


def verdict_by(probability: float, *, inside: bool) -> Verdict:
    """Judge by the probability of conformance, from 0 to 1 (the edition of 2017).

    What was measured within its limits is never proved to be outside, however coarsely.
    """
    if probability >= COVERAGE_PROBABILITY:
        return "conforming"
    outside = probability <= 1.0 - COVERAGE_PROBABILITY and not inside
    return "not-conforming" if outside else "not-provable"


def fixed_band(budget: Budget, rule: VerdictRule, guard_band: float) -> float:
    """Guard band of a rule that has one whatever is measured, in the unit of the budget."""
    if rule == "iso-14253-1-2013":
        return FACTOR_2013 * budget.standard_uncertainty
    return guard_band if rule == "guard-band" else 0.0


def edge(limit: float, guard_band: float) -> float:
    """A limit moved by a guard band, signed; decimals stay the decimals that they are.

    >>> 10.02 - 0.0043, edge(10.02, -0.0043)
    (10.015699999999999, 10.0157)
    """
    return tidy(limit + guard_band, max(abs(limit), guard_band))


def _zone_of(value: float, lower: float, upper: float, guard_band: float) -> Verdict:
    """Judge by the zones of acceptance and rejection; between them neither can be proved."""
    if edge(lower, guard_band) <= value <= edge(upper, -guard_band):
        return "conforming"
    if value < edge(lower, -guard_band) or value > edge(upper, guard_band):
        return "not-conforming"
    return "not-provable"


def conformance(value: float, lower: float, upper: float, budget: Budget) -> float:
    """Probability, from 0 to 1, that what was measured as `value` lies within its limits.

    JCGM 106:2012, 7 (from memory); all in one unit.
    """
    return probability_between(budget, lower - value, upper - value)


def forecast_of(
    budget: Budget, lower: float, upper: float, rule: DecisionRule = "iso-14253-1-2017"
) -> Forecast:
    """Say of a plan whether its expected error will keep its limits, all in one unit.

    Where some contribution was not stated the limits may be missed, and are never said to hold;
    where none was, nothing is said.
    """
    if rule == "iso-14253-1-2017":
        # An error wide enough misses its limits even where they lie about its mean.
        judged = verdict_by(conformance(budget.mean, lower, upper, budget), inside=False)
    else:
        judged = verdict_of(budget.mean, lower, upper, budget, rule)
    return forecast_by(judged, budget)


def forecast_by(verdict: Verdict, budget: Budget) -> Forecast:
    """What a plan's expected error forecasts, by how it would be judged if it were measured.

    As `forecast_of` says of a budget with something not stated.
    """
    if not budget.contributions:
        return "not-stated"
    found = _FORECASTS[verdict]
    return "may-not-hold" if found == "holds" and budget.not_stated else found


def together(forecasts: Iterable[Forecast]) -> Forecast:
    """Say of a plan whether several things will all hold, by the forecast of each.

    One that does not hold settles it; else they are as they are alike, and where they differ
    something may not hold.

    >>> together(["holds", "not-stated"]), together(["not-stated", "does-not-hold"])
    ('may-not-hold', 'does-not-hold')
    """
    found = set(forecasts)
    if "does-not-hold" in found:
        return "does-not-hold"
    return found.pop() if len(found) == 1 else "may-not-hold"


def shortfall(budget: Budget, limit: float, rule: DecisionRule = "iso-14253-1-2017") -> float:
    """How far a plan's error is from keeping ± a limit by the rule; at most 0 where it keeps it.

    Budget and limit in one unit. What is short is probability (2017), or the part of the limit that
    the error would need beyond it (2013). What was not stated is not counted.
    """
    if rule == "iso-14253-1-2013":
        return (abs(budget.mean) + FACTOR_2013 * budget.standard_uncertainty) / limit - 1.0
    return COVERAGE_PROBABILITY - conformance(budget.mean, -limit, limit, budget)


def smallest_limit(budget: Budget, rule: DecisionRule = "iso-14253-1-2017") -> float:
    """The tightest ± limit that a plan's error keeps by the rule, in the budget's unit."""
    mean = abs(budget.mean)
    if rule == "iso-14253-1-2013":
        return mean + FACTOR_2013 * budget.standard_uncertainty

    def spare(limit: float) -> float:
        return -shortfall(budget, limit, rule)

    guess = mean + 1.8 * budget.standard_uncertainty
    return crossing_near(spare, mean, math.inf, guess)[1]
