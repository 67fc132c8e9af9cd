"""The zone of acceptance against JCGM 106, the normal law of a library, and the verdict itself."""

import math
from collections.abc import Iterator

import numpy as np
import pytest
from scipy import stats

from halfangle_service.trade.uncertainty import (
    Budget,
    Contribution,
    DecisionRule,
    verdict_of,
)
from halfangle_service.trade.uncertainty.zones import Case

Zone = tuple[float, float]

RULES: tuple[DecisionRule, ...] = ("iso-14253-1-2017", "iso-14253-1-2013")
#: Nothing, two alike, a yaw that acts one way, and a spread found from few readings.
BUDGETS: dict[str, Budget] = {
    "rectangular": Budget((Contribution("a", 3.0),)),
    "two": Budget((Contribution("a", 3.0), Contribution("b", 2.0, "triangular", 1.5))),
    "normal": Budget((Contribution("a", 2.0, "normal"),)),
    "one-sided": Budget((Contribution("a", 2.0), Contribution("y", 4.0, one_sided=True))),
    "few readings": Budget((Contribution("a", 1.0, "normal", degrees_of_freedom=4),)),
}


def acceptance_zone(
    budget: Budget, lower: float, upper: float, rule: DecisionRule = "iso-14253-1-2017"
) -> Zone | None:
    """Values measured that prove these limits."""
    return Case(lower, upper, budget, rule).accepted()


def test_a_normal_result_keeps_off_its_limits_by_its_quantile() -> None:
    """JCGM 106:2012, 8.3.2 (from memory): for wide limits 1.645 u, in 1998 and 2013 2 u."""
    budget = Budget((Contribution("a", 0.5, "normal"),))
    band = stats.norm.ppf(0.95) * 0.5
    assert acceptance_zone(budget, -10, 10) == pytest.approx((-10 + band, 10 - band), abs=1e-6)
    assert acceptance_zone(budget, -10, 10, "iso-14253-1-2013") == (-9.0, 9.0)
    smallest, largest = acceptance_zone(budget, -math.inf, 10) or (0.0, 0.0)
    assert math.isinf(smallest)
    assert largest == pytest.approx(10 - band, abs=1e-6)


def test_near_limits_both_count() -> None:
    """Where the normal law reaches past both limits, the zone ends where 95 % lie between them."""
    budget, limit = Budget((Contribution("a", 1.0, "normal"),)), 2.1
    smallest, largest = acceptance_zone(budget, -limit, limit) or (0.0, 0.0)
    assert smallest == pytest.approx(-largest)
    between = stats.norm.cdf(limit - largest) - stats.norm.cdf(-limit - largest)
    assert between == pytest.approx(0.95, abs=1e-5)
    assert acceptance_zone(budget, -1.95, 1.95) is None  # 95 % take ±1.96 u
    assert acceptance_zone(budget, -1.97, 1.97) is not None
    assert acceptance_zone(budget, -1.97, 1.97, "iso-14253-1-2013") is None


def near(edge: float, inward: float) -> Iterator[tuple[float, bool]]:
    """Values just inside and just outside an edge, with which of them lies inside."""
    yield edge + inward * 1e-3, True
    yield edge - inward * 1e-3, False


@pytest.mark.parametrize("rule", RULES)
@pytest.mark.parametrize("name", BUDGETS)
@pytest.mark.parametrize("limits", [(-30.0, 50.0), (-7.0, 7.0), (-math.inf, 9.0), (-9.0, math.inf)])
def test_the_verdict_changes_at_the_edges(
    name: str, limits: tuple[float, float], rule: DecisionRule
) -> None:
    """A value just inside the zone is conforming, one just outside it is not."""
    zone = acceptance_zone(BUDGETS[name], *limits, rule)
    assert zone is not None
    for edge, inward in zip(zone, (1.0, -1.0), strict=True):
        for value, inside in near(edge, inward) if math.isfinite(edge) else ():
            found = verdict_of(value, *limits, BUDGETS[name], rule)
            assert (found == "conforming") is inside


@pytest.mark.parametrize("name", BUDGETS)
def test_no_value_is_accepted_where_there_is_no_zone(name: str) -> None:
    """Where no zone is found, no value between the limits is conforming."""
    for limit in (0.5, 1.0, 1.5, 2.0):
        if acceptance_zone(BUDGETS[name], -limit, limit) is not None:
            continue
        values = np.linspace(-limit, limit, 41)
        found = {verdict_of(float(value), -limit, limit, BUDGETS[name]) for value in values}
        assert "conforming" not in found
