"""Readings in turn through drift; a straight line under readings along a surface."""

import math
from typing import Any

import numpy as np
import pytest
from scipy.optimize import linprog
from shapely import MultiPoint

from estimates_support import assert_budget
from halfangle_service.errors import Disagreement
from support import Call

DRIFT: dict[str, Any] = {
    "units": "mm",
    "reading_order": "ABBA",
    "readings_in_order": [0.0, 0.0021, 0.0023, 0.0004],
}


@pytest.mark.outside("inspection.drift", source="Design A-B-B-A: (B1 + B2 − A1 − A2) / 2, by hand")
def test_abba_takes_a_steady_drift_out(call: Call) -> None:
    """The difference is half of the two middle readings less the two outer ones; drift by hand."""
    result = call("inspection.drift", **DRIFT)["result"]
    assert result["difference"]["value"] == pytest.approx(0.002)
    assert result["difference_of_means"] == pytest.approx(0.002)
    # (4·3 + …): slope of four equally spaced readings less the difference: Σ t y / Σ t² = 0.00014.
    assert result["drift_per_reading"] == pytest.approx(0.00014)
    assert result["drift_per_minute"] is None
    left = [1e-5, -3e-5, 3e-5, -1e-5]
    assert result["residuals"] == pytest.approx(left)
    assert result["scatter_about_fit"] == pytest.approx(math.sqrt(20e-10))
    assert result["uncertainty_inflation"] == pytest.approx(1.0)
    (row,) = result["difference"]["contributions"]
    assert row["name"] == "scatter"
    assert result["difference"]["degrees_of_freedom"] == pytest.approx(1.0)


@pytest.mark.outside("inspection.drift", source="numpy.linalg.lstsq on the same design, with times")
@pytest.mark.parametrize("order", ["ABA", "ABAB", "AABBB", "ABBAABBA", "BABBAAB"])
def test_any_order_is_least_squares(call: Call, order: str) -> None:
    """Difference, drift, residuals and uncertainty are those of numpy's least squares."""
    rng = np.random.default_rng(len(order))
    times = np.cumsum(rng.uniform(0.5, 2.0, len(order)))
    part = np.array([letter == "B" for letter in order], dtype=float)
    readings = 0.01 + 0.0003 * times + 0.002 * part + rng.normal(0, 1e-4, len(order))
    result = call(
        "inspection.drift",
        units="mm",
        reading_order=order,
        readings_in_order=readings.tolist(),
        read_at_minutes=times.tolist(),
        repeatability=1e-4,
        indicator_resolution=1e-4,
    )["result"]
    design = np.column_stack([np.ones_like(times), times, part])
    fitted, *_ = np.linalg.lstsq(design, readings, rcond=None)
    covariance = np.linalg.inv(design.T @ design)
    assert result["difference"]["value"] == pytest.approx(fitted[2])
    assert result["drift_per_minute"] == pytest.approx(fitted[1])
    assert result["residuals"] == pytest.approx(list(readings - design @ fitted), abs=1e-12)
    per_spread = math.sqrt(covariance[2, 2])
    reading, steps = result["difference"]["contributions"]
    assert_budget(
        result["difference"],
        [("normal", 1e-4, per_spread), ("rectangular", 0.5e-4, per_spread)],
    )
    assert reading["sensitivity"] == pytest.approx(per_spread)
    assert steps["standard_uncertainty"] == pytest.approx(per_spread * 0.5e-4 / math.sqrt(3))
    alone = np.column_stack([np.ones_like(times), part])
    without = math.sqrt(np.linalg.inv(alone.T @ alone)[1, 1])
    assert result["uncertainty_inflation"] == pytest.approx(per_spread / without)


def test_three_readings_have_none_to_spare(call: Call) -> None:
    """A-B-A fits exactly: without a repeatability stated nothing is said of its uncertainty."""
    request = {**DRIFT, "reading_order": "ABA", "readings_in_order": [0, 0.0021, 0.0002]}
    result = call("inspection.drift", **request)["result"]
    assert result["difference"]["value"] == pytest.approx(0.002)
    assert result["scatter_about_fit"] is None
    assert result["difference"]["standard_uncertainty"] is None
    assert result["difference"]["not_stated"] == ["repeatability", "indicator_resolution"]


def test_readings_that_hardly_scatter_are_as_sure_as_the_indicators_steps(call: Call) -> None:
    """Alike to the last step they leave the steps in doubt, a step over √12; unknown, named."""
    request = {**DRIFT, "readings_in_order": [0, 0.001, 0.001, 0]}
    difference = call("inspection.drift", **request, indicator_resolution=0.001)["result"][
        "difference"
    ]
    assert_budget(difference, [("rectangular", 0.0005, 1.0)])
    unknown = call("inspection.drift", **request)["result"]["difference"]
    assert unknown["not_stated"] == ["indicator_resolution"]


def test_a_repeatability_next_to_none_shows_the_scatter(call: Call) -> None:
    """However small it is stated, the answer comes and says that more scatters."""
    codes = call("inspection.drift", **DRIFT, repeatability=1e-300)["advisories"]
    assert "drift-not-steady" in {advisory["code"] for advisory in codes}


@pytest.mark.parametrize(
    ("change", "words"),
    [
        ({"reading_order": "ABB"}, "3 readings are named in the order, and 4 were sent"),
        ({"reading_order": "AAAA"}, "Only A was read"),
        ({"read_at_minutes": [0, 1, 2]}, "4 readings are named in the order, and 3 times"),
        ({"read_at_minutes": [0, 1, 1, 2]}, "no later than the one before it"),
    ],
)
def test_readings_that_do_not_go_together_are_refused(
    call: Call, change: dict[str, Any], words: str
) -> None:
    """Lists of unequal length, one letter alone, times that do not run on."""
    with pytest.raises(Disagreement, match=words):
        call("inspection.drift", **{**DRIFT, **change})


def test_an_order_that_is_a_drift_itself_is_refused(call: Call) -> None:
    """Where the part was read at the one later time only, drift and difference are one."""
    with pytest.raises(Disagreement, match="cannot be told apart"):
        call(
            "inspection.drift",
            units="mm",
            reading_order="AAB",
            readings_in_order=[0, 0, 1],
            read_at_minutes=[0, 1e-9, 10],
        )


# Straightness ---------------------------------------------------------------------------------
def profile(seed: int, count: int) -> tuple[list[float], list[float]]:
    """Stations, not in order, and readings of a tilted, bent, rough line."""
    rng = np.random.default_rng(seed)
    x = rng.permutation(np.linspace(-20, 60, count))
    y = 0.001 * x + rng.choice([-1, 1]) * 1e-5 * (x - 20) ** 2 + rng.normal(0, 0.002, count)
    return x.tolist(), y.tolist()


@pytest.mark.outside(
    "inspection.straightness", source="scipy's linear programming (minimum zone); numpy.polyfit"
)
@pytest.mark.parametrize(("seed", "count"), [(1, 3), (2, 5), (3, 12), (4, 60), (5, 60)])
def test_the_zone_is_the_narrowest(call: Call, seed: int, count: int) -> None:
    """Its width and slope are the linear program's; the fitted line is numpy's."""
    x, y = profile(seed, count)
    result = call("inspection.straightness", units="mm", stations=x, readings_in_order=y)["result"]
    xs, ys = np.array(x), np.array(y)
    one, zero = np.ones_like(xs), np.zeros_like(xs)
    # Least w with a + b x ≤ y ≤ a + b x + w.
    program = linprog(
        [0, 0, 1],
        A_ub=np.vstack([np.column_stack([one, xs, zero]), np.column_stack([-one, -xs, -one])]),
        b_ub=np.concatenate([ys, -ys]),
        bounds=[(None, None)] * 3,
    )
    width = result["straightness"]["value"]
    assert width == pytest.approx(program.fun, abs=1e-9)
    slope, level = np.polyfit(xs, ys, 1)
    left = ys - slope * xs - level
    assert result["residuals"] == pytest.approx(left.tolist(), abs=1e-12)
    assert result["fitted_straightness"] == pytest.approx(np.ptp(left))
    assert result["fitted_slope_arcsec"] == pytest.approx(
        math.degrees(math.atan(slope)) * 3600, rel=1e-9
    )
    assert width <= result["fitted_straightness"] + 1e-12
    found = math.tan(math.radians(result["zone_slope_arcsec"] / 3600))
    assert np.ptp(ys - found * xs) == pytest.approx(width, abs=1e-12)


@pytest.mark.outside(
    "inspection.straightness", source="shapely's convex hull: its width across is least on an edge"
)
def test_the_zone_lies_along_an_edge_of_the_hull(call: Call) -> None:
    """The least of the hull's widths over its own edges, by shapely, is the zone's."""
    x, y = profile(9, 40)
    width = call("inspection.straightness", units="mm", stations=x, readings_in_order=y)["result"][
        "straightness"
    ]["value"]
    corners = np.array(MultiPoint(list(zip(x, y, strict=True))).convex_hull.exterior.coords)
    steps = np.diff(corners, axis=0)
    upright = [np.ptp(corners[:, 1] - s[1] / s[0] * corners[:, 0]) for s in steps if s[0]]
    assert width == pytest.approx(min(upright), abs=1e-12)


def test_a_crown_by_hand(call: Call) -> None:
    """Ends at 0 and 0.001, the middle at 0.005: 0.0045 crowned; each reading acts by its share."""
    request: dict[str, Any] = {
        "units": "mm",
        "stations": [0, 10, 20, 30, 40],
        "readings_in_order": [0.0, 0.003, 0.005, 0.004, 0.001],
        "indicator_error_limit": 0.0005,
        "datum_straightness": 0.001,
    }
    result = call("inspection.straightness", **request)["result"]
    estimate = result["straightness"]
    assert estimate["value"] == pytest.approx(0.0045)
    assert result["shape"] == "crowned"
    assert [row["station"] for row in result["rests_on"]] == [0, 40, 20]
    assert [row["reading"] for row in result["rests_on"]] == [0, 0.001, 0.005]
    by_share = [("rectangular", 0.0005, share) for share in (0.5, 0.5, -1.0)]
    assert_budget(estimate, [*by_share, ("rectangular", 0.001, 1.0)])
    shares = [row["sensitivity"] for row in estimate["contributions"]]
    assert shares == pytest.approx([0.5, 0.5, -1.0, 1.0])
    spread = math.sqrt(1.5 * 0.0005**2 / 3 + 0.001**2 / 3)
    assert estimate["standard_uncertainty"] == pytest.approx(spread)
    assert estimate["worst_case"] == pytest.approx(0.002)
    turned = [-r for r in request["readings_in_order"]]
    hollow = call("inspection.straightness", **{**request, "readings_in_order": turned})["result"]
    assert hollow["shape"] == "hollow"
    assert hollow["straightness"]["value"] == pytest.approx(0.0045)
    level = call("inspection.straightness", **{**request, "readings_in_order": [0.1] * 5})
    assert level["result"]["shape"] == "straight"
    assert level["result"]["straightness"]["value"] == 0.0


@pytest.mark.parametrize(
    ("stations", "words"),
    [([0, 1, 2, 3], "4 stations and 3 readings"), ([0, 1, 1], "was sent twice")],
)
def test_stations_that_make_no_line_are_refused(
    call: Call, stations: list[float], words: str
) -> None:
    """One reading to a station, and each station once."""
    with pytest.raises(Disagreement, match=words):
        call(
            "inspection.straightness",
            units="mm",
            stations=stations,
            readings_in_order=[0, 0.001, 0],
        )


def test_the_drawing_says_how_wide_the_zone_is(call: Call) -> None:
    """Drawn where it is asked for, with the zone's width and the line's length."""
    request = {
        "units": "mm",
        "stations": [0, 10, 20, 30, 40],
        "readings_in_order": [0.0, 0.003, 0.005, 0.004, 0.001],
    }
    assert call("inspection.straightness", **request)["result"]["svg"] is None
    svg = call("inspection.straightness", **request, formats=["svg"])["result"]["svg"]
    assert "0.0045 mm" in svg
    assert "40 mm" in svg
