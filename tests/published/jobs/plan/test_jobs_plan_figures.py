"""Figures of a plan against hand calculations: the feature, budgets, stacks, times, ranking."""

import math
from typing import Any

import pytest

from halfangle_service.registry import load_registry
from support import Call, assert_values

Json = dict[str, Any]


def example(**changes: Any) -> Json:
    """The operation's own example, with fields of its feature changed."""
    request = dict(load_registry().operations["jobs.plan"].example)
    return {**request, "feature": {**request["feature"], **changes}}


@pytest.mark.outside("jobs.plan", source="Trigonometry of a 60° cone of 0.75 in")
def test_the_feature_is_worked_out(call: Call) -> None:
    """A 60° center of 0.75 in is 0.75 √3 / 2 long, its slant 0.75; Morse 2 has 0.7 in."""
    result = call("jobs.plan", **example())["result"]
    assert_values(
        result["feature"],
        {
            "included_angle.degrees": 60,
            "half_angle.degrees": 30,
            "large_diameter": 0.75,
            "length": 0.75 * math.sqrt(3) / 2,
            "slant_length": 0.75,
        },
    )
    assert result["feature"]["small_diameter"] == 0
    assert result["shank"]["gauge_diameter"] == 0.7
    assert result["shank"]["included_angle"]["degrees"] == pytest.approx(2.8614, abs=1e-4)
    assert [step["number"] for step in result["steps"]] == list(range(1, len(result["steps"]) + 1))


@pytest.mark.outside("jobs.plan", source="Vectors by hand: a face at 30° in both views")
def test_a_compound_face_is_read_in_every_way(call: Call) -> None:
    """30° in both views: normal (−tan 30, −tan 30, 1), tilt atan(√2 tan 30) toward 45°."""
    plate = {
        "name": "compound",
        "base_center_distance": 5,
        "upper_center_distance": 5,
        "base_axis": "x",
    }
    request = {
        "units": "in",
        "job": "HL-0500",
        "feature": {
            "kind": "compound-face",
            "orientation": {"kind": "projected-angles", "x_angle": 30, "y_angle": 30},
            "hand": "opposite",
            "rise": 0.3,
            "tolerance_arcsec": 300,
        },
        "equipment": {
            "compound_plates": [plate],
            "block_sets": [{"name": "set", "set": "inch-81"}],
        },
    }
    feature = call("jobs.plan", **request)["result"]["feature"]
    length = math.sqrt(5 / 3)
    tilt = math.degrees(math.atan(math.sqrt(2 / 3)))
    assert_values(
        feature["surface_orientation"],
        {
            "x_angle.degrees": -30,
            "y_angle.degrees": 30,
            "tilt.degrees": tilt,
            "rise_direction.degrees": 135,
            "unit_normal.normal_x": 1 / math.sqrt(3) / length,
            "unit_normal.normal_y": -1 / math.sqrt(3) / length,
            "unit_normal.normal_z": 1 / length,
        },
    )
    assert feature["face_angle"]["degrees"] == pytest.approx(tilt)
    assert feature["slant_length"] == pytest.approx(0.3 / math.sin(math.radians(tilt)))


@pytest.mark.outside("jobs.plan", source="JCGM 100:2008, 5.1.2: root sum of squares by hand")
def test_the_budget_is_the_root_of_the_sum_of_squares(call: Call) -> None:
    """Pitch ±5″, wheel face ±20″ and no more: u = 2 √(25 + 400) / √3, worst case 50″."""
    request = example()
    plate = {
        "name": "5 in plate",
        "center_distance": 5,
        "angle_errors": {"axis_pitch_error_limit_arcsec": 5, "wheel_face_error_limit_arcsec": 20},
    }
    request["equipment"] = {
        "sine_plates": [plate],
        "block_sets": [{"name": "set", "set": "inch-81"}],
    }
    rows = call("jobs.plan", **request)["result"]["ways"]
    angle = next(row for row in rows if row["way"] == "sine-plate")["angles"][0]
    error = angle["error_arcsec"]
    spread = 2 * math.sqrt(425) / math.sqrt(3)
    assert_values(
        error,
        {"standard_uncertainty": spread, "worst_case": 50, "coverage_probability": 0.95},
    )
    assert error["value"] == 0
    assert error["coverage_factor"] * error["standard_uncertainty"] == pytest.approx(
        error["expanded_uncertainty"]
    )
    # Two rectangles of 10 and 40 to either side: 95 % of their trapezium lie within this.
    within = 50 - math.sqrt(2 * 10 * 40 * 2 * 0.05 / 2 * 2)
    assert error["expanded_uncertainty"] == pytest.approx(within, abs=0.02)
    assert angle["tolerance_arcsec"] == 120
    assert angle["tolerance_used_percent"] == pytest.approx(100 * 50 / 120)
    assert angle["forecast"] == "may-not-hold"
    assert "center_distance_error_limit" in error["not_stated"]


def test_a_stack_has_the_errors_of_its_blocks(call: Call) -> None:
    """2 + 0.5 in of grade 0: 8 and 6 millionths, rectangular, as ASME B89.1.9 has them."""
    stack = call("jobs.plan", **example())["result"]["ways"][0]["stacks"][0]
    height = stack["actual_height"]
    spread = math.hypot(8e-6, 6e-6) / math.sqrt(3)
    assert_values(
        height,
        {
            "value": 2.5,
            "standard_uncertainty": spread,
            "worst_case": 14e-6,
            "coverage_probability": 0.95,
        },
    )
    assert height["expanded_uncertainty"] == pytest.approx(
        height["coverage_factor"] * height["standard_uncertainty"]
    )
    assert stack["actual_deviation"] == 0


@pytest.mark.outside("jobs.plan", source="Vectors of 0.0001, 0.00005 and 0.00005 in by hand")
def test_the_runout_is_that_of_the_holding(call: Call) -> None:
    """Root of the sum of squares, sum, and the limit as the cone's surface shows it."""
    runout = call("jobs.plan", **example())["result"]["ways"][0]["runout_budget"]
    assert_values(
        runout,
        {
            "limit_tir": 0.0003,
            "limit_eccentricity": 0.00015,
            "limit_zone_diameter": 0.0003,
            "limit_tir_on_cone": 0.0003 * math.cos(math.radians(30)),
            "tir.standard_uncertainty": math.sqrt(1.5) * 1e-4,
            "tir.worst_case": 2e-4,
            "tir.coverage_probability": 0.95,
        },
    )
    assert runout["tir"]["standard_uncertainty"] < runout["tir"]["expanded_uncertainty"] < 2e-4
    assert runout["tir"]["rms_share_percent"] == pytest.approx(59, abs=1)


@pytest.mark.outside("jobs.plan", source="Derivative of asin by hand")
def test_a_step_of_height_turns_the_plate_by_the_derivative(call: Call) -> None:
    """0.0001 in on 5 in at 30° is 0.0001 / (5 cos 30°) radians."""
    setting = call("jobs.plan", **example())["result"]["ways"][0]["settings"][0]
    expected = math.degrees(0.0001 / (5 * math.cos(math.radians(30)))) * 3600
    assert setting["arcsec_per_step"] == pytest.approx(expected)


def test_a_tolerance_finer_than_any_budget_stops_the_job(call: Call) -> None:
    """Where no way holds, the answer says which tolerance the best would hold."""
    answer = call("jobs.plan", **example(included_angle_tolerance_arcsec=1.5))
    assert answer["result"]["best"] is None
    (stop,) = (a for a in answer["advisories"] if a["severity"] == "stop")
    assert "not ±1.5″" in stop["message"]


def test_a_face_to_ten_seconds_is_ranked_by_its_uncertainty(call: Call) -> None:
    """Of ways that may not hold ±10″ that is first which may be off least: of the finer grade."""
    request = example()
    request["feature"] = {
        "kind": "angled-face",
        "face_angle": 50,
        "rise": 0.5,
        "tolerance_arcsec": 10,
    }
    sets = [
        {"name": "coarse", "set": "inch-81", "grade": "asme-as-2"},
        {"name": "fine", "set": "inch-81", "grade": "asme-00"},
    ]
    plate = dict(request["equipment"]["sine_plates"][0], squareness_error_limit_arcsec=5)
    request["equipment"] = {
        **request["equipment"],
        "sine_plates": [plate],
        "block_sets": sets,
    }
    rows = call("jobs.plan", **request)["result"]["ways"]
    errors = [row["angles"][0]["error_arcsec"] for row in rows]
    doubts = [abs(error["value"]) + error["expanded_uncertainty"] for error in errors]
    assert [row["forecast"] for row in rows] == ["may-not-hold"] * len(rows)
    assert doubts == sorted(doubts)
    assert rows[0]["equipment"][1] == "fine"


def test_a_quarter_turned_cone_has_the_errors_of_the_plate_turned_about(call: Call) -> None:
    """A cone of 120° on a plate at 30°: the plate's error counts with the other sign, twice."""
    request = example(included_angle=120, included_angle_tolerance_arcsec=600)
    plate = dict(request["equipment"]["sine_plates"][0], squareness_error_limit_arcsec=7)
    request["equipment"] = {**request["equipment"], "sine_plates": [plate]}
    rows = call("jobs.plan", **request)["result"]["ways"]
    turned = next(row for row in rows if row["way"] == "quarter-turn")
    assert turned["settings"][0]["angle"]["degrees"] == 30
    parts = {p["name"]: p for p in turned["angles"][0]["error_arcsec"]["contributions"]}
    slope = 2 * math.tan(math.radians(30)) / 5 * math.degrees(1) * 3600
    assert parts["center_distance_error_limit"]["sensitivity"] == pytest.approx(slope)
    assert parts["squareness_error_limit_arcsec"]["sensitivity"] == pytest.approx(2)
    assert "axis_pitch_error_limit_arcsec" not in parts
    yaw = math.radians(300 / 3600)
    seen = math.asin(math.sin(math.radians(60)) * math.cos(yaw))
    at_limit = 2 * (math.degrees(seen) - 60) * 3600
    assert parts["axis_yaw_error_limit_arcsec"]["sensitivity"] * 300 == pytest.approx(
        at_limit, rel=1e-5
    )


def test_what_lacks_a_statement_is_no_less_doubtful(call: Call) -> None:
    """Of two ways that may not hold the one of which all was stated is first."""
    rows = call("jobs.plan", **example(included_angle_tolerance_arcsec=30))["result"]["ways"]
    assert [row["forecast"] for row in rows] == ["may-not-hold", "may-not-hold"]
    lacking = [row["angles"][0]["error_arcsec"]["not_stated"] for row in rows]
    assert lacking == [[], ["squareness_error_limit_arcsec"]]


def test_the_room_to_prove_is_what_set_up_and_inspection_leave(call: Call) -> None:
    """Tolerance less |value|, less the set-up's and the finest inspection's uncertainty."""
    result = call("jobs.plan", **example())["result"]
    finest = min(
        means["angle_proof"]["angle_error_arcsec"]["expanded_uncertainty"]
        for means in result["checks"]["inspections"]
        if means["angle_proof"] and not means["angle_proof"]["angle_error_arcsec"]["not_stated"]
    )
    way = next(row for row in result["ways"] if row["way"] == "sine-plate")
    error = way["angles"][0]["error_arcsec"]
    spent = abs(error["value"]) + error["expanded_uncertainty"] + finest
    assert way["room_to_prove_arcsec"] == pytest.approx(120 - spent)
    lacking = next(row for row in result["ways"] if row["way"] == "quarter-turn")
    assert lacking["room_to_prove_arcsec"] is None
