"""Lines and angles from picked points against scipy's fits, simulation and known figures."""

import math
from typing import Any

import numpy as np
import pytest
from numpy.typing import NDArray
from odrpack import odr_fit
from scipy import optimize, stats

from halfangle_service.errors import Disagreement, Impossible
from support import Call, assert_values

ODR = "orthogonal distance regression of ODRPACK95"
LEAST_SQUARES = "nonlinear least squares of scipy on the distances square to the line"
GUM = "JCGM 100:2008, 5.1.2 and 4.3: contributions by hand, their squares added"
SIMULATED = "Profiles drawn with their errors, by numpy's normal generator"
TRIALS = 2000
ARCSEC = 3600 * 180 / math.pi

Floats = NDArray[np.float64]


def on_line(
    direction: float, start: float, end: float, count: int, *, through: tuple[float, float] = (0, 0)
) -> Floats:
    """Points along a line through a point, `direction` in degrees, from one place to another."""
    turn = math.radians(direction)
    places = np.linspace(start, end, count)
    line = np.column_stack([places * math.cos(turn), places * math.sin(turn)])
    return np.asarray(line + np.array(through), dtype=np.float64)


def listed(points: Floats) -> list[dict[str, float]]:
    """Points as a request holds them."""
    return [{"x": float(x), "y": float(y)} for x, y in points]


def measured(call: Call, **request: Any) -> dict[str, Any]:
    """The result for a request in millimetres."""
    points = {k: listed(v) if isinstance(v, np.ndarray) else v for k, v in request.items()}
    result: dict[str, Any] = call("inspection.comparator", **{"units": "mm", **points})["result"]
    return result


def scattered(points: Floats, spread: float, seed: int) -> Floats:
    """Points picked with an error in either direction."""
    return points + np.random.default_rng(seed).normal(0.0, spread, points.shape)


@pytest.mark.outside("inspection.comparator", source=ODR)
@pytest.mark.parametrize("direction", [-80.0, -31.0, 0.0, 12.0, 30.0, 89.0])
def test_a_line_is_that_of_orthogonal_regression(call: Call, direction: float) -> None:
    """Direction, scatter and standard uncertainty are those that ODRPACK finds of the points."""
    points = scattered(on_line(direction, 1.0, 9.0, 12), 0.01, seed=7)
    base = on_line(direction - 40.0, 1.0, 9.0, 2)
    result = measured(call, flank=points, base_line=base, picking_standard_uncertainty=0.0)
    # Turned level first, so that a slope is what ODRPACK fits.
    turn = math.radians(direction)
    across = np.array([[math.cos(turn), math.sin(turn)], [-math.sin(turn), math.cos(turn)]])
    x, y = across @ points.T
    fitted = odr_fit(lambda t, beta: beta[0] * t + beta[1], x, y, np.zeros(2))
    line = result["lines"][0]
    found = direction + math.degrees(math.atan(fitted.beta[0]))
    assert math.sin(math.radians(line["direction"] - found)) == pytest.approx(0.0, abs=1e-8)
    assert line["point_scatter"] == pytest.approx(math.sqrt(fitted.res_var), rel=1e-6)
    own = result["estimate"]["contributions"][0]
    assert own["name"] == "scatter"
    assert own["standard_uncertainty"] == pytest.approx(fitted.sd_beta[0] * ARCSEC, rel=1e-3)
    assert result["estimate"]["degrees_of_freedom"] == pytest.approx(10.0)


@pytest.mark.outside("inspection.comparator", source=LEAST_SQUARES)
def test_an_included_angle_is_that_of_least_squares(call: Call) -> None:
    """Two flanks and their apex fitted at once by scipy, the distances square to them least."""
    flank = scattered(on_line(31.0, 2.0, 12.0, 9, through=(5.0, -3.0)), 0.004, seed=1)
    other = scattered(on_line(-29.5, 1.0, 12.0, 14, through=(5.0, -3.0)), 0.004, seed=2)

    def distances(unknown: Floats) -> Floats:
        one, two, x, y = unknown
        return np.concatenate(
            [
                (p[:, 1] - y) * math.cos(turn) - (p[:, 0] - x) * math.sin(turn)
                for p, turn in ((flank, one), (other, two))
            ]
        )

    start = np.array([math.radians(31.0), math.radians(-29.5), 5.0, -3.0])
    fit = optimize.least_squares(distances, start, xtol=1e-15, ftol=1e-15, gtol=1e-15)
    one, two, x, y = fit.x
    result = measured(call, flank=flank, other_flank=other)
    assert result["quantity"] == "included-angle"
    value = result["estimate"]["value"]["degrees"]
    assert value == pytest.approx(math.degrees(one - two), abs=1e-7)
    assert result["apex"] == {
        "x": pytest.approx(x, abs=1e-7),
        "y": pytest.approx(y, abs=1e-7),
    }
    spans = [np.ptp(distances(fit.x)[:9]), np.ptp(distances(fit.x)[9:])]
    for line, points, span in zip(result["lines"], (flank, other), spans, strict=True):
        assert_values(line, {"straightness": span}, rel=1e-5)
        assert 0 <= line["farthest_point"] < len(points)
    assert_values(result["lines"][0], {"direction": math.degrees(one)}, rel=1e-8)
    assert_values(result["lines"][1], {"direction": math.degrees(two)}, rel=1e-8)


@pytest.mark.outside("inspection.comparator", source="a straight line with one point set off it")
def test_the_farthest_point_is_named(call: Call) -> None:
    """The point set off its line by most is the one named, counted from 0."""
    flank = on_line(20.0, 1.0, 9.0, 7)
    flank[4] += (-0.001, 0.002)
    result = measured(
        call,
        flank=flank,
        axis_line=on_line(0.0, 1.0, 9.0, 2),
        picking_standard_uncertainty=0.002,
    )
    assert result["lines"][0]["farthest_point"] == 4


@pytest.mark.outside("inspection.comparator", source=SIMULATED)
@pytest.mark.parametrize("stated", [0.003, None])
def test_of_simulated_profiles_95_in_100_are_covered(call: Call, stated: float | None) -> None:
    """A known angle picked with its scatter is within the expanded uncertainty 95 in 100 times."""
    generator = np.random.default_rng(11)
    known = {} if stated is None else {"picking_standard_uncertainty": stated}
    within, errors, spread = 0, [], 0.0
    trials = TRIALS // 4
    for _ in range(trials):
        flanks = [
            on_line(turn, 1.0, 9.0, 8) + generator.normal(0.0, 0.003, (8, 2))
            for turn in (30.0, -30.0)
        ]
        result = measured(
            call,
            flank=flanks[0],
            other_flank=flanks[1],
            magnification_difference_limit_percent=0.0,
            instrument_angle_error_limit_arcsec=0.0,
            **known,
        )["estimate"]
        off = (result["value"]["degrees"] - 60.0) * 3600.0
        errors.append(off)
        spread = result["standard_uncertainty"]
        within += abs(off) <= result["expanded_uncertainty"]
    assert within / trials == pytest.approx(0.95, abs=0.03)
    if stated is not None:
        assert float(np.std(errors)) == pytest.approx(spread, rel=0.08)


@pytest.mark.outside("inspection.comparator", source=SIMULATED)
@pytest.mark.parametrize("turns", [(30.0, -30.0), (75.0, 20.0), (100.0, 60.0), (-60.0, -115.0)])
def test_unequal_magnification_opens_an_angle(call: Call, turns: tuple[float, float]) -> None:
    """Points with x stretched by a tenth of a percent show the angle that the sensitivity says."""
    true = [on_line(turn, 1.0, 9.0, 5) for turn in turns]
    request = {
        "magnification_difference_limit_percent": 0.1,
        "instrument_angle_error_limit_arcsec": 0.0,
        "picking_standard_uncertainty": 0.0001,
    }
    straight = measured(call, flank=true[0], other_flank=true[1], **request)["estimate"]
    (row,) = (
        r
        for r in straight["contributions"]
        if r["name"] == "magnification_difference_limit_percent"
    )
    degrees = []
    for stretch in (1.001, 0.999):
        seen = [points * (stretch, 1.0) for points in true]
        shown = measured(call, flank=seen[0], other_flank=seen[1], **request)["estimate"]
        degrees.append(shown["value"]["degrees"])
    opened = (degrees[0] - degrees[1]) / 2.0 * 3600.0
    assert opened == pytest.approx(0.1 * row["sensitivity"], rel=1e-4)
    assert row["input_value"] == 0.1


@pytest.mark.outside("inspection.comparator", source=GUM)
def test_what_is_stated_adds_up(call: Call) -> None:
    """Picking turns each line by σ / √Σt²; unequal scales and the comparator's own error add."""
    result = measured(
        call,
        flank=on_line(30.0, 1.0, 9.0, 5),
        other_flank=on_line(-30.0, 1.0, 9.0, 5),
        picking_standard_uncertainty=0.001,
        magnification_difference_limit_percent=0.05,
        instrument_angle_error_limit_arcsec=30.0,
    )["estimate"]
    one = 0.001 / math.sqrt(4 + 4 + 16 + 16) * ARCSEC
    unequal = 0.0005 * math.sin(math.radians(60.0)) * ARCSEC
    expected = [one, one, unequal / math.sqrt(3), 30 / math.sqrt(3)]
    rows = result["contributions"]
    assert [r["of"] for r in rows] == ["flank", "other_flank", None, None]
    for row, spread in zip(rows, expected, strict=True):
        assert_values(row, {"standard_uncertainty": spread}, rel=1e-9)
        share = 100 * spread**2 / math.fsum(s**2 for s in expected)
        assert_values(row, {"share_percent": share}, rel=1e-9)
    limits = [3 * one, 3 * one, unequal, 30.0]
    for row, limit in zip(rows, limits, strict=True):
        assert_values(row, {"worst_case": limit}, rel=1e-9)
    total = math.hypot(*expected)
    assert_values(result, {"standard_uncertainty": total, "worst_case": math.fsum(limits)})
    assert result["coverage_probability"] == 0.95
    factor = result["expanded_uncertainty"] / total
    assert 1.9 < factor < 1.97
    assert_values(result, {"coverage_factor": factor})
    assert result["not_stated"] == []


# What the angle is ---------------------------------------------------------------------------
@pytest.mark.parametrize("turn", [0.0, 37.0, 90.0, 181.0, 300.0])
@pytest.mark.parametrize("angle", [2.0, 60.0, 90.0, 118.0, 165.0])
def test_an_included_angle_however_it_lies(call: Call, turn: float, angle: float) -> None:
    """Two flanks turned any way round enclose the angle that lies between their points."""
    result = measured(
        call,
        flank=on_line(turn, 2.0, 7.0, 4),
        other_flank=on_line(turn + angle, 1.0, 9.0, 5),
    )
    assert result["estimate"]["value"]["degrees"] == pytest.approx(angle, abs=1e-9)


@pytest.mark.parametrize(
    ("field", "quantity"), [("axis_line", "half-angle"), ("base_line", "flank-angle")]
)
@pytest.mark.parametrize("backward", [False, True])
def test_a_flank_against_a_line(call: Call, field: str, quantity: str, backward: bool) -> None:
    """The smaller angle between them, whichever way the line was picked and across the apex."""
    datum = on_line(10.0, -4.0, 9.0, 3)
    result = measured(
        call,
        flank=on_line(40.0, 2.0, 7.0, 4),
        **{field: datum[::-1].copy() if backward else datum},
    )
    assert result["quantity"] == quantity
    assert result["estimate"]["value"]["degrees"] == pytest.approx(30.0, abs=1e-9)


def test_points_at_the_screen_are_brought_to_the_part(call: Call) -> None:
    """At 20 times the angle is the same, and lengths are those at the part."""
    flank = scattered(on_line(30.0, 1.0, 9.0, 6), 0.002, seed=3)
    other = scattered(on_line(-30.0, 1.0, 9.0, 6), 0.002, seed=4)
    part = measured(call, flank=flank, other_flank=other)
    screen = measured(call, flank=20 * flank, other_flank=20 * other, magnification=20)
    assert screen["estimate"]["value"]["degrees"] == pytest.approx(
        part["estimate"]["value"]["degrees"], abs=1e-9
    )
    for here, there in zip(part["lines"], screen["lines"], strict=True):
        for name in ("straightness", "point_scatter"):
            assert there[name] == pytest.approx(here[name], rel=1e-9)
    assert screen["apex"]["x"] == pytest.approx(part["apex"]["x"], abs=1e-9)
    assert screen["apex"]["y"] == pytest.approx(part["apex"]["y"], abs=1e-9)


# What it proves ------------------------------------------------------------------------------
def judged(call: Call, half: float, **more: Any) -> dict[str, Any]:
    """A cone of this half angle against 60° ±120″, with 15.7″ of standard uncertainty."""
    request = {
        "flank": on_line(half, 1.0, 9.0, 9),
        "other_flank": on_line(-half, 1.0, 9.0, 9),
        "picking_standard_uncertainty": 0.0004,
        "magnification_difference_limit_percent": 0.0,
        "instrument_angle_error_limit_arcsec": 0.0,
        "included_angle": 60,
        "included_angle_tolerance_arcsec": 120,
    }
    return measured(call, **{**request, **more})


@pytest.mark.outside("inspection.comparator", source="normal distribution of scipy")
def test_a_tolerance_is_judged(call: Call) -> None:
    """By the probability that the angle is within; the same as inspection.verdict says of it."""
    for off, verdict in ((0.0, "conforming"), (60.0, "not-provable"), (120.0, "not-conforming")):
        result = judged(call, 30.0 + off / 3600.0)
        assert result["verdict"] == verdict
        assert result["measured_error_arcsec"] == pytest.approx(2.0 * off, abs=1e-6)
        spread = result["estimate"]["standard_uncertainty"]
        within = stats.norm(2.0 * off, spread)
        assert result["probability_of_conformance"] == pytest.approx(
            within.cdf(120) - within.cdf(-120), abs=1e-6
        )
        asked = call(
            "inspection.verdict",
            units="mm",
            measured_included_angle=result["estimate"]["value"]["degrees"],
            included_angle=60,
            included_angle_tolerance_arcsec=120,
            standard_uncertainty_arcsec=spread,
        )["result"]
        assert asked["verdict"] == verdict


def test_with_something_not_stated_nothing_is_proved(call: Call) -> None:
    """What the comparator errs by itself was not stated: it is named, and nothing is judged."""
    result = judged(call, 30.0, instrument_angle_error_limit_arcsec=None)
    assert result["estimate"]["not_stated"] == ["instrument_angle_error_limit_arcsec"]
    assert result["verdict"] == "not-provable"
    assert result["probability_of_conformance"] is None


# Refusals ------------------------------------------------------------------------------------
ASIDE = on_line(30.0, 1.0, 9.0, 6, through=(0.0, 1.0))
SQUARE = np.array([[0.0, 0.0], [1.0, 0.0], [0.0, 1.0], [1.0, 1.0]])
FLANK, OTHER = on_line(30.0, 1.0, 9.0, 6), on_line(-30.0, 1.0, 9.0, 6)


def with_stray(points: Floats, place: int, off: float) -> Floats:
    """Points scattered a little, of which one lies off."""
    moved = scattered(points, 0.001, seed=5)
    moved[place] += (0.0, off)
    return moved


@pytest.mark.parametrize(
    ("request_", "field", "why"),
    [
        ({"flank": FLANK}, "axis_line", "One of"),
        ({"flank": FLANK, "other_flank": OTHER, "axis_line": OTHER}, "axis_line", "sent together"),
        ({"flank": FLANK, "other_flank": ASIDE}, "other_flank", "parallel"),
        (
            {"flank": on_line(30.0, -5.0, 5.0, 6), "other_flank": OTHER},
            "flank",
            "cross among the points",
        ),
        ({"flank": FLANK * 0.0 + 1.0, "other_flank": OTHER}, "flank", "lie in no line"),
        (
            {
                "flank": SQUARE,
                "axis_line": OTHER,
            },
            "flank",
            "lie in no line",
        ),
        (
            {"flank": with_stray(FLANK, 3, 0.4), "other_flank": OTHER},
            "flank/3",
            "Point 4 of `flank` lies 0.34",
        ),
        ({"flank": FLANK, "other_flank": OTHER, "half_angle": 30}, "half_angle", "says nothing"),
        (
            {"flank": FLANK, "other_flank": OTHER, "included_angle": 60},
            "included_angle_tolerance_arcsec",
            "about the angle that is wanted",
        ),
    ],
)
def test_points_that_make_no_angle(
    call: Call, request_: dict[str, Any], field: str, why: str
) -> None:
    """The refusal names the points at fault and says why."""
    with pytest.raises(Disagreement, match=why) as refused:
        measured(call, **request_)
    assert field in refused.value.fields


@pytest.mark.parametrize("count", [4, 6, 20, 200])
def test_scatter_alone_is_no_stray_point(call: Call, count: int) -> None:
    """Of normal scatter, whatever it is and however many points, none is called stray."""
    for seed in range(40):
        flank = scattered(on_line(30.0, 1.0, 9.0, count), 0.01, seed=seed)
        assert measured(call, flank=flank, other_flank=OTHER)["lines"][0]["point_scatter"] > 0.0


OVERLAY = {
    "included_angle": 60,
    "large_diameter": 8.0,
    "length": 6.0,
    "large_diameter_tolerance": 0.02,
    "included_angle_tolerance_arcsec": 600,
    "magnification": 20,
    "formats": ["svg"],
}


def test_an_overlay_needs_an_axis(call: Call) -> None:
    """Against a base there is no axis to lay the cone's profile on."""
    with pytest.raises(Disagreement, match="about its axis"):
        measured(call, flank=FLANK, base_line=OTHER, overlay=OVERLAY)
    with pytest.raises(Impossible, match="comes to its point"):
        measured(call, flank=FLANK, other_flank=OTHER, overlay={**OVERLAY, "length": 7.0})
