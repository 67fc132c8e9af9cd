"""Budgets, coverage, Monte Carlo and decision rules against published examples and libraries."""

import math
from collections.abc import Callable
from typing import get_args

import numpy as np
import pytest
from mpmath import mp
from scipy import stats
from uncertainties import ufloat
from uncertainties import umath as exact

from halfangle_service.trade.uncertainty import (
    DIVISOR,
    Budget,
    Contribution,
    Forecast,
    coverage_factor,
    draw,
    summarise,
    together,
    verdict_of,
)

# JCGM 100:2008, H.1: calibration of a gauge block of nominal 50 mm against a standard. Its figures
# are printed in H.1.3 to H.1.6 and in table H.1; lengths in nm here.
H1_STANDARD_LENGTH = 50_000_623.0
H1_ALPHA = 11.5e-6  # per °C
H1_THETA = -0.1  # °C

H1 = Budget(
    (
        Contribution("standard", 25.0, "normal", degrees_of_freedom=18),
        Contribution("difference, repeated", 5.8, "normal", degrees_of_freedom=24),
        Contribution("difference, comparator random", 3.9, "normal", degrees_of_freedom=5),
        Contribution("difference, comparator systematic", 6.7, "normal", degrees_of_freedom=8),
        Contribution(
            "difference of expansion", 1e-6, "rectangular", H1_STANDARD_LENGTH * H1_THETA, 50
        ),
        Contribution(
            "difference of temperature", 0.05, "rectangular", H1_STANDARD_LENGTH * H1_ALPHA, 2
        ),
    )
)


def test_gum_h1_contributions() -> None:
    """Each input adds what GUM table H.1 prints: 25, 9.7, 2.9 and 16.6 nm."""
    standard, repeated, random, systematic, expansion, temperature = H1.contributions
    difference = math.hypot(repeated.in_result, random.in_result, systematic.in_result)
    assert standard.in_result == 25.0
    assert difference == pytest.approx(9.7, abs=0.05)
    assert expansion.in_result == pytest.approx(2.9, abs=0.05)
    assert temperature.in_result == pytest.approx(16.6, abs=0.05)


def test_gum_h1_standard_inputs() -> None:
    """Half-widths become the standard uncertainties of table H.1: 0.58e-6 per °C and 0.029 °C."""
    *_, expansion, temperature = H1.contributions
    assert expansion.standard_uncertainty == pytest.approx(0.58e-6, abs=0.005e-6)
    assert temperature.standard_uncertainty == pytest.approx(0.029, abs=0.0005)


def test_gum_h1_combined() -> None:
    """GUM H.1.4: the combined standard uncertainty is 32 nm, its square 1002 nm²."""
    assert H1.standard_uncertainty == pytest.approx(32.0, abs=0.5)
    assert H1.standard_uncertainty**2 == pytest.approx(1002.0, abs=2.0)


def test_gum_h1_degrees_of_freedom_and_expanded() -> None:
    """GUM H.1.6: 16.7 effective degrees of freedom, k = 2.92 at 99 %, U = 93 nm."""
    assert H1.degrees_of_freedom == pytest.approx(16.7, abs=0.1)
    k = coverage_factor(0.99, H1.degrees_of_freedom)
    assert k == pytest.approx(2.92, abs=0.005)
    # H.1.6 multiplies the rounded 32 nm; unrounded it is 92.5 nm.
    assert k * round(H1.standard_uncertainty) == pytest.approx(93.0, abs=0.5)
    assert H1.expanded(k) == pytest.approx(92.5, abs=0.05)


def test_gum_h1_shares_sum_to_all() -> None:
    """Shares of the variance are those of table H.1's squares, and sum to 100 percent."""
    shares = H1.shares()
    assert math.fsum(shares) == pytest.approx(100.0, abs=1e-9)
    assert shares[0] == pytest.approx(100.0 * 625.0 / 1002.0, abs=0.3)


# GUM table G.2: t for degrees of freedom ν and fraction p percent, as printed.
TABLE_G2 = {
    1: {68.27: 1.84, 90: 6.31, 95: 12.71, 95.45: 13.97, 99: 63.66, 99.73: 235.80},
    2: {68.27: 1.32, 90: 2.92, 95: 4.30, 95.45: 4.53, 99: 9.92, 99.73: 19.21},
    3: {68.27: 1.20, 90: 2.35, 95: 3.18, 95.45: 3.31, 99: 5.84, 99.73: 9.22},
    4: {68.27: 1.14, 90: 2.13, 95: 2.78, 95.45: 2.87, 99: 4.60, 99.73: 6.62},
    5: {68.27: 1.11, 90: 2.02, 95: 2.57, 95.45: 2.65, 99: 4.03, 99.73: 5.51},
    8: {68.27: 1.07, 90: 1.86, 95: 2.31, 95.45: 2.37, 99: 3.36, 99.73: 4.28},
    10: {68.27: 1.05, 90: 1.81, 95: 2.23, 95.45: 2.28, 99: 3.17, 99.73: 3.96},
    16: {68.27: 1.03, 90: 1.75, 95: 2.12, 95.45: 2.17, 99: 2.92, 99.73: 3.54},
    20: {68.27: 1.03, 90: 1.72, 95: 2.09, 95.45: 2.13, 99: 2.85, 99.73: 3.42},
    50: {68.27: 1.01, 90: 1.68, 95: 2.01, 95.45: 2.05, 99: 2.68, 99.73: 3.16},
    100: {68.27: 1.005, 90: 1.660, 95: 1.984, 95.45: 2.025, 99: 2.626, 99.73: 3.077},
}


@pytest.mark.parametrize("freedom", TABLE_G2)
def test_students_t_is_that_of_gum_table_g2(freedom: int) -> None:
    """The coverage factor is the t of GUM table G.2 (rows from memory), to its printed digits."""
    # Three of its columns are those of one, two and three standard deviations of a normal quantity.
    sigmas = {68.27: 1.0, 95.45: 2.0, 99.73: 3.0}
    for percent, printed in TABLE_G2[freedom].items():
        digits = 0.0006 if freedom == 100 else 0.006
        one = sigmas.get(percent)
        probability = percent / 100.0 if one is None else math.erf(one / math.sqrt(2.0))
        assert coverage_factor(probability, freedom) == pytest.approx(printed, abs=digits)


def test_many_degrees_of_freedom_give_the_normal_factor() -> None:
    """GUM table G.1: 1.645, 1.960, 2, 2.576 and 3 for 90, 95, 95.45, 99 and 99.73 percent."""
    printed = {0.90: 1.645, 0.95: 1.960, 0.9545: 2.0, 0.99: 2.576, 0.9973: 3.0}
    for probability, factor in printed.items():
        assert coverage_factor(probability) == pytest.approx(factor, abs=6e-4)
        assert coverage_factor(probability, 1e9) == pytest.approx(factor, abs=6e-4)


@pytest.mark.parametrize("freedom", [1, 2, 7, 30, 400])
def test_coverage_factor_inverts_students_distribution(freedom: int) -> None:
    """An interval of ±k holds the probability asked for, by an arbitrary-precision library."""
    k = coverage_factor(0.95, freedom)
    with mp.workdps(30):
        half = mp.mpf(freedom) / 2
        inside = mp.betainc(half, 0.5, mp.mpf(freedom) / (freedom + mp.mpf(k) ** 2), 1)
        probability = inside / mp.beta(half, 0.5)
    assert float(probability) == pytest.approx(0.95, abs=1e-10)


def test_degrees_of_freedom_are_truncated() -> None:
    """GUM G.4.1: 16.7 is read as 16; below one it is one."""
    assert coverage_factor(0.95, 16.7) == coverage_factor(0.95, 16)
    assert coverage_factor(0.95, 0.3) == coverage_factor(0.95, 1)


# Against a library of linear error propagation ------------------------------------------------
def test_budget_of_a_sine_angle_agrees_with_a_propagation_library() -> None:
    """θ = asin(h / L): combined uncertainty and shares agree with the library `uncertainties`."""
    height, length = 2.5, 5.0
    u_height, u_length = 20e-6, 60e-6
    angle = exact.asin(ufloat(height, u_height) / ufloat(length, u_length))
    cosine = math.sqrt(1.0 - (height / length) ** 2)
    ours = Budget(
        (
            Contribution("height", u_height, "normal", 1.0 / (length * cosine)),
            Contribution("length", u_length, "normal", -height / (length**2 * cosine)),
        )
    )
    assert ours.standard_uncertainty == pytest.approx(angle.std_dev, rel=1e-12)
    parts = sorted(angle.error_components().values())
    in_result = sorted(c.in_result for c in ours.contributions)
    assert in_result == pytest.approx(parts, rel=1e-12)


DENSITIES: dict[str, Callable[[float], object]] = {
    "normal": lambda a: stats.norm(0.0, a),
    "rectangular": lambda a: stats.uniform(-a, 2.0 * a),
    "triangular": lambda a: stats.triang(0.5, -a, 2.0 * a),
    "u-shaped": lambda a: stats.arcsine(-a, 2.0 * a),
}


@pytest.mark.parametrize("distribution", DIVISOR)
def test_divisors_are_those_of_the_distributions(distribution: str) -> None:
    """A half-width over its divisor is the standard deviation that scipy gives the distribution."""
    half_width = 0.35
    contribution = Contribution("x", half_width, distribution)  # type: ignore[arg-type]
    expected = DENSITIES[distribution](half_width).std()  # type: ignore[attr-defined]
    assert contribution.standard_uncertainty == pytest.approx(expected, rel=1e-9)


@pytest.mark.parametrize("distribution", DIVISOR)
def test_samples_follow_their_distribution(distribution: str) -> None:
    """Drawn deviations pass a Kolmogorov-Smirnov test against scipy's distribution."""
    drawn = draw(np.random.default_rng(7), distribution, 2.0, 20_000)  # type: ignore[arg-type]
    frozen = DENSITIES[distribution](2.0)
    assert stats.kstest(drawn, frozen.cdf).pvalue > 0.001  # type: ignore[attr-defined]


def test_gauge_block_of_jcgm_101() -> None:
    """JCGM 101:2008, 9.5: Monte Carlo gives 838 nm, u = 36 nm and, at 99 %, about [745, 932] nm.

    Input distributions as in 9.5.2, from memory. That interval is the shortest one; this one has
    equal tails, which for this nearly symmetric density moves its ends by less than a nanometre.
    """
    trials = 400_000
    generator = np.random.default_rng(101)

    def scaled_t(mean: float, scale: float, freedom: int) -> np.ndarray:
        return mean + scale * generator.standard_t(freedom, trials)

    def curved_trapezoid(low: float, high: float, inexact: float) -> np.ndarray:
        """Rectangle with inexactly known limits (JCGM 101, 6.4.3)."""
        start = low - inexact + 2.0 * inexact * generator.random(trials)
        return start + ((low + high) - 2.0 * start) * generator.random(trials)

    standard = scaled_t(H1_STANDARD_LENGTH, 25.0, 18)
    difference = scaled_t(215.0, 6.0, 24) + scaled_t(0.0, 4.0, 5) + scaled_t(0.0, 7.0, 8)
    alpha = H1_ALPHA + draw(generator, "rectangular", 2e-6, trials)
    theta = H1_THETA + draw(generator, "normal", 0.2, trials)
    theta = theta + draw(generator, "u-shaped", 0.5, trials)
    delta_alpha = curved_trapezoid(-1e-6, 1e-6, 0.1e-6)
    delta_theta = curved_trapezoid(-0.05, 0.05, 0.025)
    deviation = (standard - 50e6) + difference
    deviation -= standard * (delta_alpha * theta + alpha * delta_theta)
    found = summarise(deviation, 0.99)
    assert found.mean == pytest.approx(838.0, abs=1.0)
    assert found.standard_deviation == pytest.approx(36.0, abs=0.5)
    assert found.low == pytest.approx(745.0, abs=2.0)
    assert found.high == pytest.approx(932.0, abs=2.0)


def test_monte_carlo_agrees_with_the_budget_where_it_is_linear() -> None:
    """A sum of inputs has the root sum of squares of the budget as its standard deviation."""
    inputs = (
        Contribution("a", 3.0, "normal", 1.5),
        Contribution("b", 4.0, "rectangular", -2.0),
        Contribution("c", 5.0, "triangular"),
        Contribution("d", 2.0, "u-shaped", 3.0),
    )
    generator = np.random.default_rng(20)
    total = sum(c.sensitivity * draw(generator, c.distribution, c.value, 200_000) for c in inputs)
    assert isinstance(total, np.ndarray)
    found = summarise(total)
    assert found.standard_deviation == pytest.approx(Budget(inputs).standard_uncertainty, rel=0.01)
    assert found.low < found.mean < found.high


# Decision rule --------------------------------------------------------------------------------
# Limits 9.98 to 10.02, guard band 0.004: acceptance from 9.984 to 10.016, rejection below 9.976 and
# above 10.024. The zones are those of ISO 14253-1 (from memory); the figures are an example made
# for this test, since the standard gives no numeric one.
def judged(value: float, *, guard_band: float) -> str:
    """Verdict on a value by the rule of 2013, whose guard band is twice the uncertainty."""
    budget = Budget((Contribution("value", guard_band / 2.0, "normal"),))
    return verdict_of(value, 9.98, 10.02, budget, "iso-14253-1-2013")


@pytest.mark.parametrize(
    ("value", "verdict"),
    [
        (9.9839, "not-provable"),
        (9.984001, "conforming"),
        (10.0, "conforming"),
        (10.015999, "conforming"),
        (10.0161, "not-provable"),
        (10.0239, "not-provable"),
        (10.0241, "not-conforming"),
        (9.9761, "not-provable"),
        (9.9759, "not-conforming"),
    ],
)
def test_decision_rule(value: float, verdict: str) -> None:
    """Conforming in the acceptance zone, not so beyond the rejection zone, neither in between."""
    assert judged(value, guard_band=0.004) == verdict


def test_without_a_guard_band_every_value_is_judged() -> None:
    """With no uncertainty the limits themselves still conform, and nothing is left undecided."""
    assert judged(10.02, guard_band=0.0) == "conforming"
    assert judged(9.98, guard_band=0.0) == "conforming"
    assert judged(math.nextafter(10.02, 11.0), guard_band=0.0) == "not-conforming"


def test_a_guard_band_wider_than_the_zone_accepts_nothing() -> None:
    """Where the uncertainty is larger than half the tolerance, no value can be accepted."""
    values = np.linspace(9.9, 10.1, 401)
    verdicts = {judged(float(value), guard_band=0.03) for value in values}
    assert verdicts == {"not-provable", "not-conforming"}


# Several forecasts ----------------------------------------------------------------------------
HOLDS, MAY, NOT, UNSTATED = FORECASTS = get_args(Forecast)


@pytest.mark.parametrize(
    ("first", "row"),
    [
        (HOLDS, (HOLDS, MAY, NOT, MAY)),
        (MAY, (MAY, MAY, NOT, MAY)),
        (NOT, (NOT, NOT, NOT, NOT)),
        (UNSTATED, (MAY, MAY, NOT, UNSTATED)),
    ],
)
def test_forecasts_together(first: Forecast, row: tuple[Forecast, ...]) -> None:
    """Two forecasts are one by this table, whichever comes first; one is itself, twice too."""
    for second, expected in zip(FORECASTS, row, strict=True):
        assert together((first, second)) == together((second, first)) == expected
        assert together((first, second, first)) == expected
    assert together((first,)) == together((first, first)) == first
