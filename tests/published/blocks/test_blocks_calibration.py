"""Calibration by comparison against the GUM's H.1 and JCGM 101's 9.5; a block some years later."""

import math
from typing import Any

import numpy as np
import pytest

from estimates_support import assert_budget
from halfangle_service.errors import Disagreement, Impossible
from halfangle_service.registry import load_registry
from halfangle_service.trade.calibration.since import largest_change_a_year_mm
from halfangle_service.trade.uncertainty.monte_carlo import (
    draw_estimated,
    draw_inexact,
    shortest_interval,
)
from support import Call

H1 = "JCGM 100:2008 (GUM), H.1, end-gauge calibration"
MONTE_CARLO = "JCGM 101:2008, 9.5, gauge block calibration"
EXAMPLE: dict[str, Any] = dict(load_registry().operations["blocks.calibration"].example)


@pytest.fixture(scope="module")
def compared(call: Call) -> dict[str, Any]:
    """The answer to H.1, with as many trials as are taken."""
    result: dict[str, Any] = call("blocks.calibration", **{**EXAMPLE, "trials": 200_000})["result"]
    return result


#: GUM, table H.1: what each input adds, in nm, and its degrees of freedom.
TERMS = {
    "standard_expanded_uncertainty": (25.0, 0.05),
    "repeatability": (5.8, 0.05),
    "comparator_random_uncertainty": (3.9, 0.05),
    "comparator_systematic_uncertainty": (6.7, 0.05),
    "expansion_difference": (2.9, 0.05),
    "temperature_difference_celsius": (16.6, 0.05),
}


@pytest.mark.outside("blocks.calibration", source=H1)
def test_each_term_of_h1_adds_what_is_printed(compared: dict[str, Any]) -> None:
    """25, 5.8, 3.9, 6.7, 2.9 and 16.6 nm, to the digits printed; shares sum to 100."""
    rows = {row["name"]: row for row in compared["length"]["contributions"]}
    assert set(rows) == set(TERMS)
    for name, (nanometres, digit) in TERMS.items():
        assert rows[name]["standard_uncertainty"] * 1e6 == pytest.approx(nanometres, abs=digit)
    assert sum(row["share_percent"] for row in rows.values()) == pytest.approx(100.0)
    assert rows["repeatability"]["sensitivity"] == pytest.approx(1 / math.sqrt(5))
    assert rows["repeatability"]["input_value"] == pytest.approx(13e-6)
    assert rows["repeatability"]["worst_case"] is None


@pytest.mark.outside("blocks.calibration", source=H1)
def test_h1_comes_out_as_printed(compared: dict[str, Any]) -> None:
    """50.000838 mm, 32 nm, 16 degrees of freedom, 93 nm for 99 % by 2.92."""
    length = compared["length"]
    assert length["value"] == pytest.approx(50.000838, abs=5e-7)
    assert compared["difference"] == pytest.approx(0.000215)
    assert compared["deviation"] == pytest.approx(0.000838, abs=1e-12)
    assert length["standard_uncertainty"] * 1e6 == pytest.approx(32, abs=0.5)
    # 25² + 9.7² + 2.9² + 16.6² = 1003 nm².
    assert (length["standard_uncertainty"] * 1e6) ** 2 == pytest.approx(1003.1, abs=1.0)
    assert length["degrees_of_freedom"] == pytest.approx(16.7, abs=0.1)
    assert length["coverage_factor"] == pytest.approx(2.92, abs=0.005)
    assert length["expanded_uncertainty"] * 1e6 == pytest.approx(93, abs=0.6)
    assert length["coverage_probability"] == pytest.approx(0.99)


@pytest.mark.outside("blocks.calibration", source=f"{H1}, of 95 %, from memory")
def test_h1_of_95_percent(call: Call) -> None:
    """68 nm for 95 % by 2.12."""
    length = call("blocks.calibration", **{**EXAMPLE, "coverage_probability": 0.95})["result"][
        "length"
    ]
    assert length["coverage_factor"] == pytest.approx(2.12, abs=0.005)
    assert length["expanded_uncertainty"] * 1e6 == pytest.approx(68, abs=1.0)


@pytest.mark.outside("blocks.calibration", source=f"{H1}.7, from memory")
def test_terms_of_second_order(compared: dict[str, Any]) -> None:
    """11.7 and 1.7 nm, with which the standard uncertainty is 34 nm; u of the temperature 0.41."""
    assert compared["second_order_of_expansion"] * 1e6 == pytest.approx(11.7, abs=0.05)
    assert compared["second_order_of_temperature"] * 1e6 == pytest.approx(1.7, abs=0.05)
    assert compared["second_order_standard_uncertainty"] * 1e6 == pytest.approx(34, abs=0.5)
    kelvins = compared["second_order_of_expansion"] / (50.000623 * 1e-6 / math.sqrt(3))
    assert kelvins == pytest.approx(0.41, abs=0.005)


@pytest.mark.outside("blocks.calibration", source=MONTE_CARLO)
def test_monte_carlo_gives_what_is_printed(compared: dict[str, Any]) -> None:
    """838 and 36 nm; the shortest interval of 99 % is 745 to 932 nm, as near as trials say."""
    check = compared["monte_carlo"]
    assert check["trials"] == 200_000
    off = {
        name: (check[name] - 50.0) * 1e6
        for name in (
            "mean",
            "shortest_low",
            "shortest_high",
            "symmetric_low",
            "symmetric_high",
        )
    }
    assert off["mean"] == pytest.approx(838, abs=0.5)
    assert check["standard_deviation"] * 1e6 == pytest.approx(36, abs=0.5)
    # An end of so rare an interval is known to some 1.2 nm by 200,000 trials, the shortest to more.
    assert off["shortest_low"] == pytest.approx(745, abs=3)
    assert off["shortest_high"] == pytest.approx(932, abs=3)
    assert off["symmetric_low"] == pytest.approx(744.35, abs=2.5)
    assert off["symmetric_high"] == pytest.approx(931.61, abs=2.5)
    shortest = off["shortest_high"] - off["shortest_low"]
    assert shortest <= off["symmetric_high"] - off["symmetric_low"] + 1e-6


@pytest.mark.outside("blocks.calibration", source=f"{MONTE_CARLO}, table of inputs, from memory")
def test_an_own_simulation_of_the_whole_model_agrees(compared: dict[str, Any]) -> None:
    """The nine inputs of 9.5.2 drawn here by numpy, in nm, with another seed: 838 and 36 nm."""
    rng, n = np.random.default_rng(101), 400_000
    standard = 50_000_623 + 25 * rng.standard_t(18, n)
    difference = 215 + 6 * rng.standard_t(24, n)
    random, systematic = 4 * rng.standard_t(5, n), 7 * rng.standard_t(8, n)
    alpha = rng.uniform(9.5e-6, 13.5e-6, n)
    theta = rng.normal(-0.1, 0.2, n) + 0.5 * np.sin(rng.uniform(-np.pi, np.pi, n))

    def inexact(limit: float, off: float) -> np.ndarray[Any, np.dtype[np.float64]]:
        return rng.uniform(-1, 1, n) * rng.uniform(limit - off, limit + off, n)

    apart, uneven = inexact(1e-6, 0.1e-6), inexact(0.05, 0.025)
    length = standard * (1 + alpha * (theta - uneven)) + difference + random + systematic
    length /= 1 + (alpha + apart) * theta
    check = compared["monte_carlo"]
    assert np.mean(length) - 50e6 == pytest.approx((check["mean"] - 50) * 1e6, abs=0.5)
    assert np.std(length) == pytest.approx(check["standard_deviation"] * 1e6, rel=0.02)


def test_the_shortest_interval_of_a_skewed_sample() -> None:
    """Of an exponential the shortest 95 % begins at 0 and ends at −ln 0.05 = 2.9957."""
    sample = -np.log1p(-np.linspace(0, 1, 100_001)[:-1])
    low, high = shortest_interval(sample, 0.95)
    assert low == pytest.approx(0.0, abs=1e-4)
    assert high == pytest.approx(-math.log(0.05), abs=1e-3)


def test_draws_have_the_spread_of_their_distributions() -> None:
    """Student's of ν: √(ν/(ν − 2)); limits ± a known to ± d: √((a² + d²/3)/3) (JCGM 101, 6.4)."""
    rng = np.random.default_rng(3)
    student = draw_estimated(rng, 2.0, 18.0, 200_000)
    assert np.std(student) == pytest.approx(2 * math.sqrt(18 / 16), rel=0.01)
    assert np.std(draw_estimated(rng, 2.0, math.inf, 200_000)) == pytest.approx(2.0, rel=0.01)
    inexact = draw_inexact(rng, 0.05, 0.025, 200_000)
    assert np.std(inexact) == pytest.approx(math.sqrt((0.05**2 + 0.025**2 / 3) / 3), rel=0.01)
    assert np.max(np.abs(inexact)) <= 0.075


def test_what_was_not_stated_is_named(call: Call) -> None:
    """One reading alone gives a length, no uncertainty, and names what was not stated."""
    answer = call("blocks.calibration", units="mm", standard_length=10.0, differences=[0.0001])
    length = answer["result"]["length"]
    assert length["value"] == pytest.approx(10.0001)
    assert length["standard_uncertainty"] is None
    assert answer["result"]["monte_carlo"] is None
    assert answer["result"]["deviation"] is None
    assert length["not_stated"] == [
        "standard_expanded_uncertainty",
        "repeatability",
        "comparator_random_uncertainty",
        "comparator_systematic_uncertainty",
        "expansion_difference",
        "temperature_celsius",
        "temperature_difference_celsius",
    ]


def test_an_uncertainty_of_minus_nothing_is_nothing(call: Call) -> None:
    """A spread written −0 adds nothing, to the budget or the simulation."""
    spread = {"repeatability": -0.0, "repeatability_degrees_of_freedom": None}
    kelvins = {"temperature_standard_uncertainty_celsius": -0.0, "trials": 1000}
    length = call("blocks.calibration", **{**EXAMPLE, **spread, **kelvins})["result"]["length"]
    rows = {row["name"]: row["standard_uncertainty"] for row in length["contributions"]}
    assert rows["repeatability"] == 0.0


def test_readings_alone_show_their_scatter(call: Call) -> None:
    """Five readings of 1 to 5: s = √2.5, its mean's u s/√5, four degrees of freedom."""
    readings = [k * 1e-4 for k in range(1, 6)]
    length = call("blocks.calibration", units="mm", standard_length=10.0, differences=readings)[
        "result"
    ]["length"]
    (row,) = length["contributions"]
    assert row["name"] == "scatter"
    assert row["standard_uncertainty"] == pytest.approx(math.sqrt(0.5) * 1e-4)
    assert length["degrees_of_freedom"] == pytest.approx(4.0)
    assert length["coverage_factor"] == pytest.approx(2.776, abs=5e-4)


def test_two_or_three_readings_have_an_interval_but_no_spread(call: Call) -> None:
    """Student's distribution of one or two degrees has no variance, and chance is not shown as one.

    The interval of 95 % of one degree is ± 12.706 of the mean's s/√2.
    """
    request = {"units": "mm", "standard_length": 10.0, "trials": 200_000}
    simulated = call("blocks.calibration", **request, differences=[1e-4, 2e-4])
    found = simulated["result"]["monte_carlo"]
    assert found["standard_deviation"] is found["mean"] is None
    half = (found["symmetric_high"] - found["symmetric_low"]) / 2
    assert half == pytest.approx(12.706 * 0.5e-4, rel=0.03)
    assert not simulated["advisories"]
    four = call("blocks.calibration", **request, differences=[1e-4, 2e-4, 1e-4, 2e-4])["result"]
    assert four["monte_carlo"]["standard_deviation"] > four["length"]["standard_uncertainty"]


def test_a_limit_known_to_next_to_nothing_is_a_limit(call: Call) -> None:
    """Inexact by 1e-300 percent it has no limit to its degrees of freedom."""
    change = {"expansion_difference_inexact_percent": 1e-300, "trials": 1000}
    rows = call("blocks.calibration", **{**EXAMPLE, **change})["result"]["length"]["contributions"]
    (own,) = [row for row in rows if row["name"] == "expansion_difference"]
    assert own["distribution"] == "rectangular"


def test_without_limits_to_degrees_of_freedom_the_worst_is_known(call: Call) -> None:
    """The standard's and the comparator's, all as limits: normal, three of each at the worst."""
    length = call(
        "blocks.calibration",
        units="mm",
        standard_length=10.0,
        differences=[0.0001],
        standard_expanded_uncertainty=0.00008,
        comparator_systematic_uncertainty=0.00003,
        temperature_celsius=21.0,
        expansion_difference=1e-6,
        temperature_difference_celsius=0.1,
    )["result"]["length"]
    assert_budget(
        length,
        [
            ("normal", 0.00008, 0.5),
            ("normal", 0.00003, 1.0),
            ("rectangular", 1e-6, -10.0),
            ("rectangular", 0.1, -10 * 11.5e-6),
        ],
    )
    assert length["degrees_of_freedom"] is None


@pytest.mark.parametrize(
    ("change", "error", "words"),
    [
        ({"differences": [0.215]}, Impossible, "no difference of two blocks"),
        ({"differences": [0.0201]}, Impossible, "no difference of two blocks"),
        ({"standard_expanded_uncertainty": 0.075}, Impossible, "0.075 mm is no uncertainty"),
        ({"repeatability": 0.0201}, Impossible, "0.0201 mm is no uncertainty"),
        ({"size": 40}, Impossible, "none for a block of 40"),
        ({"repeatability": None}, Disagreement, "Degrees of freedom are of a standard deviation"),
        (
            {"standard_expanded_uncertainty": None},
            Disagreement,
            "Degrees of freedom are of an uncertainty",
        ),
    ],
)
def test_what_cannot_be_is_refused(
    call: Call, change: dict[str, Any], error: type[Exception], words: str
) -> None:
    """A reading in the wrong unit, another size, degrees of freedom of nothing."""
    with pytest.raises(error, match=words):
        call("blocks.calibration", **{**EXAMPLE, **change})


# Some years later -----------------------------------------------------------------------------
@pytest.mark.outside(
    "blocks.since", source="ISO 3650:1998, dimensional stability, from memory; by hand"
)
def test_a_block_some_years_later(call: Call) -> None:
    """100 mm, grade K or 0: 0.045 µm a year; two years, 0.5 K off and 0.2 K in doubt, by hand."""
    result = call(
        "blocks.since",
        units="mm",
        size=100,
        deviation=0.00012,
        expanded_uncertainty=0.00006,
        years_since=2,
        drift_per_year=0.00001,
        stability="grades-k-and-0",
        temperature_celsius=20.5,
        temperature_error_limit_celsius=0.2,
    )["result"]
    assert result["drift_since"] == pytest.approx(0.00002)
    assert result["deviation_today"] == pytest.approx(0.00014)
    assert result["expansion"] == pytest.approx(100 * 11.5e-6 * 0.5)
    length = result["length"]
    assert length["value"] == pytest.approx(100 + 0.00014 + 0.000575)
    parts = {
        "expanded_uncertainty": 0.00003,
        "stability": 2 * (0.02e-3 + 0.25e-6 * 100) / math.sqrt(3),
        "material": 100 * 0.5 * 1e-6 / math.sqrt(3),
        "temperature_error_limit_celsius": 100 * 11.5e-6 * 0.2 / math.sqrt(3),
    }
    assert_budget(
        length,
        [
            ("normal", 0.00006, 0.5),
            ("rectangular", 0.000045, 2.0),
            ("rectangular", 1e-6, 50.0),
            ("rectangular", 0.2, 100 * 11.5e-6),
        ],
    )
    found = {r["name"]: r["standard_uncertainty"] for r in length["contributions"]}
    assert found == pytest.approx(parts)
    assert length["standard_uncertainty"] == pytest.approx(math.hypot(*parts.values()))


def test_stability_by_grade_and_in_inches(call: Call) -> None:
    """Grades 1 and 2 may change 0.1 µm a year at 100 mm; inches give the same as millimetres."""
    assert largest_change_a_year_mm("grades-1-and-2", 100.0) == pytest.approx(0.0001)
    request = {"size": 4, "deviation": 0, "years_since": 1, "stability": "grades-1-and-2"}
    length = call("blocks.since", units="in", **request)["result"]["length"]
    (row,) = length["contributions"]
    assert row["input_value"] == pytest.approx((0.05e-3 + 0.5e-6 * 101.6) / 25.4)
    assert length["not_stated"] == ["expanded_uncertainty", "temperature_celsius"]


@pytest.mark.parametrize(
    ("change", "words"),
    [
        ({"deviation": 0.12}, "no deviation of a gauge block"),
        ({"drift_per_year": 0.1}, "no deviation of a gauge block"),
        ({"expanded_uncertainty": 0.06}, "nor an error of one"),
        ({"drift_error_limit_per_year": 0.1}, "nor an error of one"),
        ({"drift_per_year": 0.01}, "would deviate by 0.03 mm today"),
        ({"size": 0.001}, "is none"),
    ],
)
def test_a_slip_of_the_unit_is_refused(call: Call, change: dict[str, Any], words: str) -> None:
    """A deviation typed in micrometres, or a block of nothing, is refused with the field."""
    request = {"units": "mm", "size": 10, "deviation": 0, "years_since": 3, **change}
    with pytest.raises(Impossible, match=words) as refused:
        call("blocks.since", **request)
    assert list(refused.value.fields) == list(change)
