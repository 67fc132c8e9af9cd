"""Coverage intervals against closed forms, published factors and a sampled sum."""

import math
from fractions import Fraction
from itertools import product

import numpy as np
import pytest
from scipy import stats

from halfangle_service.trade.uncertainty import (
    Budget,
    Contribution,
    forecast_of,
    smallest_limit,
    verdict_of,
)
from halfangle_service.trade.uncertainty.coverage import (
    guard_band,
    half_width,
    probability_between,
    probability_within,
)
from halfangle_service.trade.uncertainty.decision import DecisionRule, conformance
from halfangle_service.trade.uncertainty.monte_carlo import draw

RECTANGLE = Contribution("a", 1.0)


@pytest.mark.parametrize(
    ("distribution", "factor"),
    [
        # JCGM 100:2008, G.1.3 and table G.1 (from memory): normal 1.960; rectangle 1.65.
        ("normal", 1.959964),
        ("rectangular", 0.95 * math.sqrt(3.0)),
        # Derived: the tails of a triangle hold (1 − x)²; of an arc-sine, 1 − 2 asin(x)/π.
        ("triangular", (1.0 - math.sqrt(0.05)) * math.sqrt(6.0)),
        ("u-shaped", math.sin(0.95 * math.pi / 2.0) * math.sqrt(2.0)),
    ],
)
def test_one_contribution_has_its_own_factor(distribution: str, factor: float) -> None:
    """One contribution alone is covered by the factor of its own distribution."""
    budget = Budget((Contribution("a", 0.7, distribution, -3.0),))  # type: ignore[arg-type]
    assert half_width(budget) / budget.standard_uncertainty == pytest.approx(factor, rel=1e-7)


def test_one_rectangle_never_passes_its_worst_case() -> None:
    """No coverage of bounded contributions passes what they can do at most."""
    for probability in (0.9, 0.95, 0.9545, 0.99, 0.999):
        assert half_width(Budget((RECTANGLE,)), probability) <= 1.0


def test_a_one_sided_contribution_is_covered_about_its_mean() -> None:
    """Of x² for x even over ±1, 95 % lie within the half-width about the mean of a third.

    Derived: x² passes 1/3 + w with probability 1 − √(1/3 + w); below 1/3 − w lies nothing for
    w > 1/3. So √(1/3 + w) = 0.95.
    """
    budget = Budget((Contribution("yaw", 1.0, sensitivity=-2.0, one_sided=True),))
    assert half_width(budget) == pytest.approx(2.0 * (0.95**2 - 1.0 / 3.0), rel=1e-9)


def test_many_contributions_against_a_sampled_sum() -> None:
    """A mixed budget is covered as two million sampled sums are (JCGM 101:2008, 7)."""
    parts = (
        Contribution("a", 1.0),
        Contribution("b", 0.6, "triangular", 2.0),
        Contribution("c", 0.3, "normal"),
        Contribution("d", 0.5, "u-shaped"),
        Contribution("e", 0.8, sensitivity=1.5, one_sided=True),
    )
    budget = Budget(parts)
    generator = np.random.default_rng(20261126)
    total = np.zeros(2_000_000)
    for part in parts:
        drawn = draw(generator, part.distribution, part.value, len(total))
        acts = drawn**2 / part.value if part.one_sided else drawn
        total += part.sensitivity * acts - part.mean
    for probability in (0.5, 0.9, 0.95, 0.99):
        sampled = float(np.quantile(np.abs(total), probability))
        assert half_width(budget, probability) == pytest.approx(sampled, rel=3e-3)
        assert probability_within(budget, sampled) == pytest.approx(probability, abs=1e-3)


@pytest.mark.parametrize("seed", range(20))
def test_rectangles_are_covered_as_their_closed_form_says(seed: int) -> None:
    """Two to six rectangles of any widths are covered as the convolution's closed form has it.

    Of uniforms over ±a: P(sum ≤ x) = Σ (Π s) (x + Σ s a)₊ⁿ / (n! 2ⁿ Π a) over all signs s.
    """
    generator = np.random.default_rng(seed)
    half_widths = 10.0 ** generator.uniform(-2.5, 0.0, generator.integers(2, 7))
    exact = [Fraction(a) for a in half_widths.tolist()]
    budget = Budget(tuple(Contribution("a", a) for a in half_widths.tolist()))

    def below(x: float) -> Fraction:
        total, whole = Fraction(0), Fraction(math.prod(exact))
        for signs in product((1, -1), repeat=len(exact)):
            reached = Fraction(x) + sum(s * a for s, a in zip(signs, exact, strict=True))
            total += math.prod(signs) * max(reached, Fraction(0)) ** len(exact)
        return Fraction(total / (math.factorial(len(exact)) * 2 ** len(exact) * whole))

    width = half_width(budget)
    assert float(below(width) - below(-width)) == pytest.approx(0.95, abs=1e-9)
    low, high = -0.3 * width, 0.7 * width
    between = probability_between(budget, low, high)
    assert between == pytest.approx(float(below(high) - below(low)), abs=1e-9)


@pytest.mark.parametrize("spread", [1e-7, 0.003, 0.03, 0.3, 3.0, 1e5])
def test_a_rectangle_and_a_normal_are_covered_as_their_closed_form_says(spread: float) -> None:
    """However fine the normal part is: its sum with a rectangle is an integral of Φ.

    With G(t) = t Φ(t) + φ(t): P(sum ≤ x) = s/(2a) · (G((x + a)/s) − G((x − a)/s)).
    """
    width = half_width(Budget((Contribution("a", 1.0), Contribution("b", spread, "normal"))))

    def below(x: float) -> float:
        t = np.array([x + 1.0, x - 1.0]) / spread
        integral = t * stats.norm.cdf(t) + stats.norm.pdf(t)
        return float(spread / 2.0 * (integral[0] - integral[1]))

    assert below(width) - below(-width) == pytest.approx(0.95, abs=1e-9)


def test_few_readings_take_student() -> None:
    """Two degrees of freedom ask for 4.303, as JCGM 100:2008, table G.2 has it (from memory)."""
    budget = Budget((Contribution("mean", 1.0, "normal", degrees_of_freedom=2),))
    assert half_width(budget) == pytest.approx(4.303, abs=5e-4)
    assert half_width(budget, 0.9) == pytest.approx(stats.t.ppf(0.95, 2), rel=1e-9)
    assert probability_within(budget, 4.3027) == pytest.approx(0.95, abs=1e-4)


def test_guard_band_is_one_sided() -> None:
    """The guard band of a normal result is 1.645 u (ISO 14253-1:2017, from memory: 1.65 u)."""
    budget = Budget((Contribution("a", 2.0, "normal"),))
    assert guard_band(budget) == pytest.approx(2.0 * 1.644854, rel=1e-4)


def test_a_verdict_is_a_probability() -> None:
    """Of a normal result between wide limits, 1.65 u at a limit proves; 1.64 u does not (2017)."""
    budget = Budget((Contribution("a", 1.0, "normal"),))
    assert verdict_of(10.0 - 1.65, -10.0, 10.0, budget) == "conforming"
    assert verdict_of(10.0 - 1.64, -10.0, 10.0, budget) == "not-provable"
    assert verdict_of(10.0 + 1.65, -10.0, 10.0, budget) == "not-conforming"
    assert verdict_of(10.0 - 1.65, -10.0, 10.0, budget, "iso-14253-1-2013") == "not-provable"
    assert verdict_of(10.0 - 2.0, -10.0, 10.0, budget, "iso-14253-1-2013") == "conforming"
    assert verdict_of(10.0 - 1.65, -math.inf, 10.0, budget) == "conforming"
    assert verdict_of(0.0, -10.0, 10.0, Budget(())) == "not-provable"


def test_both_tails_count_between_narrow_limits() -> None:
    """Where both limits are near, both tails count: 1.65 u to either side holds only 90 %."""
    budget = Budget((Contribution("a", 1.0, "normal"),))
    assert conformance(0.0, -1.65, 1.65, budget) == pytest.approx(0.901057, abs=1e-5)
    assert verdict_of(0.0, -1.65, 1.65, budget) == "not-provable"
    assert verdict_of(0.0, -1.9600, 1.9600, budget) == "conforming"


def test_one_sided_probabilities_against_a_sampled_sum() -> None:
    """Probabilities to one side are those of two million sampled sums, skew included."""
    parts = (
        Contribution("a", 1.0),
        Contribution("e", 3.0, sensitivity=-1.5, one_sided=True),
        Contribution("c", 0.3, "normal"),
    )
    budget = Budget(parts)
    generator = np.random.default_rng(20261127)
    total = np.zeros(2_000_000)
    for part in parts:
        drawn = draw(generator, part.distribution, part.value, len(total))
        acts = drawn**2 / part.value if part.one_sided else drawn
        total += part.sensitivity * acts - part.mean
    for low, high in ((-1.0, 0.5), (-math.inf, 0.8), (0.2, math.inf), (-3.2, -2.0)):
        sampled = float(np.mean((total >= low) & (total <= high)))
        assert probability_between(budget, low, high) == pytest.approx(sampled, abs=1.5e-3)


def test_a_forecast_never_holds_by_what_was_not_stated() -> None:
    """A plan holds by its budget; with something not stated it may not; with nothing, no word."""
    known = Contribution("a", 1.0)
    assert forecast_of(Budget((known,)), -2.0, 2.0) == "holds"
    assert forecast_of(Budget((known,), 0.0, ("yaw",)), -2.0, 2.0) == "may-not-hold"
    assert forecast_of(Budget((known,), 5.0, ("yaw",)), -2.0, 2.0) == "does-not-hold"
    assert forecast_of(Budget((), 0.0, ("yaw",)), -2.0, 2.0) == "not-stated"


def test_the_smallest_limit_is_the_one_that_just_holds() -> None:
    """The tightest limit holds, and one a little tighter does not."""
    budget = Budget((Contribution("a", 1.0), Contribution("b", 2.0, "normal")), 0.7)
    rules: tuple[DecisionRule, ...] = ("iso-14253-1-2017", "iso-14253-1-2013")
    for rule in rules:
        limit = smallest_limit(budget, rule)
        assert forecast_of(budget, -limit, limit, rule) == "holds"
        assert forecast_of(budget, -0.999 * limit, 0.999 * limit, rule) == "may-not-hold"


def test_nothing_contributes_nothing() -> None:
    """Without contributions there is no width, and everything lies within it."""
    assert half_width(Budget(())) == 0.0
    assert probability_within(Budget(()), 0.0) == 1.0
    assert probability_within(Budget((RECTANGLE,)), 5.0) == 1.0
