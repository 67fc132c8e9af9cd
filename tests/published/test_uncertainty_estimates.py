"""Every estimate of every operation is combined from its contributions as JCGM 100 and 101 say.

That a contribution is the right one is held where its operation is; here that nothing is lost, or
counted twice, between a contribution and what is said of the whole.
"""

import math
from typing import Any

import numpy as np
import pytest

from halfangle_service.registry import load_registry
from support import Call, assert_values, value_at

GUM = "JCGM 100:2008, 5.1.2 and 4.3; JCGM 101:2008, 6.4 and 7, by numpy"
#: Half-width over standard deviation (JCGM 100:2008, 4.3.7 and 4.3.9).
HALF_WIDTHS = {"rectangular": math.sqrt(3), "triangular": math.sqrt(6), "normal": 1.0}
#: These act by their square: x² of x even over ±1 has mean 1/3 and variance 4/45.
ONE_SIDED = {
    "axis_yaw_error_limit_arcsec",
    "axis_offset_error_limit",
    "diamond_height_error_limit",
}
TRIALS = 400_000

#: A diameter judged instead of the example's angle.
_WARM_DIAMETER: dict[str, Any] = {
    **dict.fromkeys(("measured_included_angle", "included_angle", "coverage_factor")),
    **dict.fromkeys(("included_angle_tolerance_arcsec", "expanded_uncertainty_arcsec")),
    "measured_diameter": 1.0,
    "largest_diameter": 1.001,
    "measurement_error_limit": 2e-5,
    "part_temperature_celsius": 30,
    "part_material": "steel",
    "instrument_temperature_celsius": 25,
    "instrument_material": "ceramic",
    "temperature_error_limit_celsius": 1,
}

#: Operation, changes to its example, and its estimates.
ESTIMATES: list[tuple[str, dict[str, Any], list[str]]] = [
    ("blocks.budget", {}, ["height"]),
    ("blocks.angle-stack", {"max_alternatives": 1}, ["actual_angle"]),
    ("inspection.verdict", {}, ["angle_judged.estimate"]),
    ("inspection.verdict", _WARM_DIAMETER, ["length_judged.estimate"]),
    (
        "inspection.plan",
        {},
        [
            "inspections[0].angle_proof.angle_error_arcsec",
            "inspections[0].size_proof.large_diameter_error",
            "inspections[1].size_proof.large_diameter_error",
            "inspections[4].angle_proof.angle_error_arcsec",
        ],
    ),
    (
        "jobs.center",
        {},
        ["angle_budget.included_angle_error_arcsec", "plate_setting.actual_height"],
    ),
    ("measuring.bore", {}, ["bore_diameter"]),
    (
        "measuring.chord",
        {"angle": None, "measure": 5.0876, "measure_error_limit": 0.0001},
        ["angle", "measure"],
    ),
    ("measuring.lever-tip", {}, ["true_movement"]),
    (
        "measuring.small-angle",
        {"turned_tilt_reading": -1.0},
        ["tilt_arcsec", "height_over_base", "zero_error_arcsec"],
    ),
    ("measuring.square", {}, ["square_error_arcsec", "reference_error_arcsec"]),
    ("sine.center-distance", {}, ["center_distance", "face_lean_arcsec"]),
    ("sine.measured-angle", {}, ["measured_angle"]),
    ("sine.over-pin", {}, ["height_over_pin"]),
    ("sine.uncertainty", {}, ["angle_error_arcsec", "included_angle_error_arcsec"]),
    (
        "tapers.dovetail-over-rolls",
        {"measure_error_limit": 0.002},
        ["measure", "edge_width"],
    ),
    (
        "tapers.dovetail-over-rolls",
        {"measure_error_limit": 0.002, "measure": 71.86, "corner_width": None},
        ["corner_width", "edge_width"],
    ),
    ("tapers.identify", {}, ["half_angle"]),
    (
        "tapers.one-ball",
        {"roll_error_limit": 0.0002, "included_angle_error_limit_arcsec": 60},
        ["large_diameter"],
    ),
    ("tapers.over-balls", {}, ["half_angle", "large_diameter", "small_diameter"]),
    ("tapers.over-rolls", {}, ["half_angle", "large_diameter", "small_diameter"]),
    (
        "tapers.plug-depth",
        {"included_angle_error_limit_arcsec": 30},
        ["half_angle", "large_diameter", "small_diameter", "gauge_line_diameter"],
    ),
    ("tapers.probed", {}, ["half_angle", "face_diameter"]),
    (
        "tapers.set-over",
        {},
        [
            *(f"ways[{way}].half_angle_error_arcsec" for way in range(3)),
            *(f"ways[{way}].error_on_diameter" for way in range(3)),
        ],
    ),
    ("tapers.vee-over-rolls", {}, ["vee_half_angle", "face_width", "apex_depth"]),
    ("wheels.radius", {}, ["radius", "arc_width", "sagitta"]),
    ("wheels.choose", {}, [f"ways[{way}].included_angle_error_arcsec" for way in range(4)]),
]


def _spread(row: dict[str, Any]) -> Any:
    """Standard uncertainty that a contribution adds, from its input, sensitivity and form."""
    limit = float(abs(row["sensitivity"]) * row["input_value"])
    if row["name"] in ONE_SIDED:
        return limit * math.sqrt(4 / 45)
    return limit / HALF_WIDTHS[row["distribution"]]


def _drawn(row: dict[str, Any], generator: np.random.Generator) -> Any:
    """Trials of what a contribution does, about its mean."""
    limit = row["sensitivity"] * row["input_value"]
    if row["name"] in ONE_SIDED:
        return limit * (generator.uniform(-1, 1, TRIALS) ** 2 - 1 / 3)
    if row["distribution"] == "normal":
        return limit * generator.standard_normal(TRIALS)
    if row["distribution"] == "triangular":
        return limit * generator.triangular(-1, 0, 1, TRIALS)
    return limit * generator.uniform(-1, 1, TRIALS)


def assert_rows(estimate: dict[str, Any], offset: float = 0.0) -> None:
    """Contributions have their spread, share and limit, and add up; `offset` is a known error."""
    rows = estimate["contributions"]
    assert rows
    spreads = [_spread(row) for row in rows]
    variance = math.fsum(spread**2 for spread in spreads)
    for row, spread in zip(rows, spreads, strict=True):
        limit = abs(row["sensitivity"]) * row["input_value"]
        expected = {
            "standard_uncertainty": spread,
            "worst_case": 3 * limit if row["distribution"] == "normal" else limit,
            "share_percent": 100 * spread**2 / variance,
        }
        assert_values(row, expected, rel=1e-6)
    worst = abs(offset) + math.fsum(row["worst_case"] for row in rows)
    assert_values(estimate, {"standard_uncertainty": math.sqrt(variance)}, rel=1e-6)
    assert estimate["worst_case"] == pytest.approx(worst, rel=1e-3)


def assert_covers(estimate: dict[str, Any]) -> None:
    """Of trials drawn from the contributions 95 of 100 lie within the expanded uncertainty."""
    generator = np.random.default_rng(20261126)
    total = np.abs(sum(_drawn(row, generator) for row in estimate["contributions"]))
    covered = float(np.quantile(total, 0.95))
    assert estimate["expanded_uncertainty"] == pytest.approx(covered, rel=6e-3)
    factor = estimate["expanded_uncertainty"] / estimate["standard_uncertainty"]
    assert_values(estimate, {"coverage_factor": factor, "coverage_probability": 0.95})


@pytest.mark.outside("blocks.budget", source=GUM)
@pytest.mark.outside("blocks.angle-stack", source=GUM)
@pytest.mark.outside("inspection.verdict", source=GUM)
@pytest.mark.outside("jobs.center", source=GUM)
@pytest.mark.outside("sine.uncertainty", source=GUM)
@pytest.mark.outside("tapers.dovetail-over-rolls", source=GUM)
@pytest.mark.outside("tapers.identify", source=GUM)
@pytest.mark.outside("tapers.one-ball", source=GUM)
@pytest.mark.outside("tapers.over-balls", source=GUM)
@pytest.mark.outside("tapers.over-rolls", source=GUM)
@pytest.mark.outside("tapers.plug-depth", source=GUM)
@pytest.mark.outside("tapers.set-over", source=GUM)
@pytest.mark.outside("tapers.vee-over-rolls", source=GUM)
@pytest.mark.outside("wheels.choose", source=GUM)
@pytest.mark.parametrize(
    ("name", "changes", "path"),
    [(name, changes, path) for name, changes, paths in ESTIMATES for path in paths],
)
def test_an_estimate_is_combined_from_its_contributions(
    call: Call, name: str, changes: dict[str, Any], path: str
) -> None:
    """Squares add to the variance, limits to the worst case, and 95 of 100 trials are covered."""
    example = {**load_registry().operations[name].example, **changes}
    request = {field: value for field, value in example.items() if value is not None}
    estimate = value_at(call(name, **request)["result"], path)
    assert_rows(estimate)
    assert_covers(estimate)
    assert estimate["degrees_of_freedom"] is None


@pytest.mark.outside("tapers.set-over", source=GUM)
def test_a_way_to_set_a_taper_has_no_known_error(call: Call) -> None:
    """What is stated of a setting is how far it may be off either way: 0 is the best estimate."""
    request = load_registry().operations["tapers.set-over"].example
    ways = call("tapers.set-over", **request)["result"]["ways"]
    assert [way["half_angle_error_arcsec"]["value"] for way in ways] == [0, 0, 0]
    assert [way["error_on_diameter"]["value"] for way in ways] == [0, 0, 0]


#: Measured operations: their example, with what each contribution without `of` is an error of.
MEASURED: dict[str, dict[str, tuple[str, float]]] = {
    "tapers.identify": {"length_error_limit": ("length", 1)},
    "tapers.one-ball": {
        "measure_error_limit": ("ball_depth", 1),
        "roll_error_limit": ("ball_diameter", 1),
        "included_angle_error_limit_arcsec": ("included_angle", 1 / 3600),
    },
    "tapers.over-balls": {},
    "tapers.over-rolls": {
        "stack_rise_error_limit": ("stack_rise", 1),
        "roll_error_limit": ("roll_diameter", 1),
    },
    "tapers.plug-depth": {
        "gauge_error_limit": ("gauge_diameter", 1),
        "depth_error_limit": ("gauge_depth", 1),
    },
    "tapers.vee-over-rolls": {},
}


def _plain(value: Any) -> float:
    """The value of an estimate in the unit of its uncertainty."""
    return 3600 * float(value["degrees"]) if isinstance(value, dict) else float(value)


@pytest.mark.parametrize(
    ("name", "changes", "path"),
    [
        (name, changes, path)
        for name, changes, paths in ESTIMATES
        if name in MEASURED
        for path in paths
        if (name, path) != ("tapers.plug-depth", "half_angle")
    ],
)
def test_a_sensitivity_is_the_answer_to_a_moved_measure(
    call: Call, name: str, changes: dict[str, Any], path: str
) -> None:
    """Each measure moved a little either way moves the value as its contribution says."""
    request: dict[str, Any] = {**load_registry().operations[name].example, **changes}
    estimate = value_at(call(name, **request)["result"], path)
    for row in estimate["contributions"]:
        field, unit = (row["of"], 1) if row["of"] else MEASURED[name].get(row["name"], ("", 1))
        if not field:
            continue
        values = []
        for step in (1e-4, -1e-4):
            moved = {**request, field: request[field] + step * unit}
            values.append(_plain(value_at(call(name, **moved)["result"], path)["value"]))
        moves = (values[0] - values[1]) / 2e-4
        assert row["sensitivity"] == pytest.approx(moves, rel=2e-3, abs=1e-6)
