"""The plan of a center against independent geometry and the sum of its parts."""

import math
from typing import Any

import numpy as np
import pytest
from uncertainties import ufloat, umath

from halfangle_service.errors import Disagreement, Unreachable
from halfangle_service.registry import load_registry
from support import Call

#: Every error of an angle that a plan asks for, in the order in which it names what is missing.
ANGLE_ERRORS = (
    "center_distance_error_limit",
    "roll_difference",
    "roll_parallelism",
    "face_parallelism",
    "face_flatness",
    "table_flatness",
    "particle",
    "temperature_error_limit_celsius",
    "temperature_difference_celsius",
    "axis_yaw_error_limit_arcsec",
    "axis_pitch_error_limit_arcsec",
    "wheel_face_error_limit_arcsec",
    "temperature_celsius",
)


#: Those that can act on steel blocks and a steel plate: how far their temperature is off cannot.
ACTING = tuple(name for name in ANGLE_ERRORS if name != "temperature_error_limit_celsius")


def example(**changes: Any) -> dict[str, Any]:
    """The operation's own example, changed; a change to None leaves the field out."""
    request = {**load_registry().operations["jobs.center"].example, **changes}
    return {field: value for field, value in request.items() if value is not None}


def angle_error(call: Call, **changes: Any) -> dict[str, Any]:
    """Estimate of the included angle's error for the example, changed."""
    result = call("jobs.center", **example(**changes))["result"]
    error: dict[str, Any] = result["angle_budget"]["included_angle_error_arcsec"]
    return error


@pytest.mark.outside("jobs.center", source="Common practice: 30° on a 5 in sine plate is 2.5 in")
def test_sixty_degree_center_is_set_with_two_and_a_half_inches(call: Call) -> None:
    """A 60° center on a 5 in plate takes a 2.5 in stack, exact, of the fewest blocks."""
    setting = call("jobs.center", **example())["result"]["plate_setting"]
    assert setting["blocks"] == [2.0, 0.5]
    assert setting["deviation"] == pytest.approx(0, abs=1e-12)
    assert setting["plate_angle"]["degrees"] == 30


@pytest.mark.outside("jobs.center", source="uncertainties library, every term of the angle budget")
def test_angle_budget_matches_a_general_uncertainty_library(call: Call) -> None:
    """Standard uncertainty of the included angle is that of a general library on the same model."""
    errors = {
        "center_distance_error_limit": 0.0002,
        "axis_pitch_error_limit_arcsec": 8,
        "wheel_face_error_limit_arcsec": 15,
    }
    error = angle_error(call, angle_errors=errors)
    arcsec = math.radians(1 / 3600)
    third = math.sqrt(3)
    # ASME 0: 8 µin for 1 to 2 in, 6 µin for 0.45 to 1 in (from memory, table of B89.1.9).
    height = ufloat(2, 8e-6 / third) + ufloat(0.5, 6e-6 / third)
    half = umath.asin(height / ufloat(5, 0.0002 / third))
    half += ufloat(0, 8 * arcsec / third) + ufloat(0, 15 * arcsec / third)
    expected = 2 * half.std_dev / arcsec
    assert error["standard_uncertainty"] == pytest.approx(expected, rel=1e-6)
    # Drawn at random: 95 % of a million such centers are within the expanded uncertainty.
    limits = [part["worst_case"] for part in error["contributions"]]
    drawn = np.random.default_rng(3).uniform(-1, 1, (1_000_000, len(limits))) @ np.array(limits)
    within = np.mean(np.abs(drawn) <= error["expanded_uncertainty"])
    assert within == pytest.approx(0.95, abs=0.001)
    assert sum(part["share_percent"] for part in error["contributions"]) == pytest.approx(100)
    assert error["not_stated"] == [name for name in ACTING if name not in errors]


@pytest.mark.outside("jobs.center", source="Brute force: cone swept by a plane, rotated in 3-D")
def test_yaw_and_feed_match_the_swept_cone(call: Call) -> None:
    """Yaw and downfeed do to the cone what turning the spin axis under a plane does."""
    yaw = math.radians(300 / 3600)
    theta = math.radians(30)
    axis = np.array([math.cos(theta) * math.cos(yaw), math.sin(yaw), math.sin(theta)])
    # Tilting a yawed axis: yaw in the plate's top, then tilt about the rolls' direction.
    axis = np.array(
        [math.cos(theta) * math.cos(yaw), math.sin(yaw), math.sin(theta) * math.cos(yaw)]
    )
    half = math.asin(axis @ np.array([0, 0, 1.0]) / np.linalg.norm(axis))
    error = angle_error(call, angle_errors={"axis_yaw_error_limit_arcsec": 300.0})
    part = next(
        part for part in error["contributions"] if part["name"] == "axis_yaw_error_limit_arcsec"
    )
    assert part["worst_case"] == pytest.approx(2 * (theta - half) * 206264.806, rel=1e-6)
    feed = call("jobs.center", **example(downfeed_step=0.001))["result"]["downfeed"]
    # A plane moved by h along its normal: the cone's points shift, its radius grows by h / cos α.
    assert feed["off_diameter"] == pytest.approx(2.3094e-3, abs=1e-7)
    assert feed["off_point"] == pytest.approx(2e-3)


def test_runout_is_forecast_three_ways(call: Call) -> None:
    """The runout holds in 95 of 100 assemblies, or in some, or in not even 5."""
    forecasts = [
        call("jobs.center", **example(limit_tir=limit))["result"]["runout_budget"]["forecast"]
        for limit in (0.0002, 0.00015, 0.00002)
    ]
    assert forecasts == ["holds", "may-not-hold", "does-not-hold"]


def test_height_that_cannot_be_built_counts_as_a_known_offset(call: Call) -> None:
    """A height between steps is set with the nearest stack, and the offset is in the budget."""
    answer = call("jobs.center", **example(included_angle="59°47'", angle_errors=None))
    setting, angle = answer["result"]["plate_setting"], answer["result"]["angle_budget"]
    assert "stack-not-exact" in [a["code"] for a in answer["advisories"]]
    moved = 2 * math.degrees(math.asin(setting["total"] / 5)) - (59 + 47 / 60)
    error = angle["included_angle_error_arcsec"]
    assert error["value"] == pytest.approx(moved * 3600, abs=1e-6)
    assert error["worst_case"] > abs(moved * 3600)


def test_angle_out_of_reach_of_the_blocks_is_refused(call: Call) -> None:
    """Blocks that miss the angle by more than its tolerance are refused, with the nearest stack."""
    with pytest.raises(Unreachable, match="nearest stack of up to 5 of these blocks, 2 in, misses"):
        call("jobs.center", **example(set=None, sizes=[2.0, 1.0]))


def test_a_nearest_stack_that_stands_the_plate_upright_is_refused_so(call: Call) -> None:
    """Where the nearest stack is not below the center distance, a field sent is said to miss."""
    steep = {"included_angle": 178.9, "large_diameter": 0.002, "set": None, "sizes": [1.0, 4.0]}
    with pytest.raises(Unreachable, match="is not below the center distance 5 in: the") as refusal:
        call("jobs.center", **example(**steep))
    assert list(refusal.value.fields) == ["sizes"]


def test_angles_that_disagree_and_unknown_names_are_refused(call: Call) -> None:
    """Two angles that disagree, and names that no table holds, are refused by their field."""
    with pytest.raises(Disagreement, match="half_angle disagrees with included_angle"):
        call("jobs.center", **example(half_angle=31))
    with pytest.raises(Unreachable, match="no built-in set 'box 9'") as refusal:
        call("jobs.center", **example(set="box 9"))
    assert list(refusal.value.fields) == ["set"]
    with pytest.raises(Unreachable, match="no standard taper or rate 'morse-9'"):
        call("jobs.center", **example(shank={"kind": "taper", "designation": "morse-9"}))


def test_blocks_that_are_away_are_not_built_with(call: Call) -> None:
    """Without the .5 in block the stack is another; one that the set has not is refused by name."""
    usual = call("jobs.center", **example())["result"]["plate_setting"]["blocks"]
    assert 0.5 in usual
    away = call("jobs.center", **example(in_use=[0.5]))["result"]["plate_setting"]["blocks"]
    assert 0.5 not in away
    assert sum(away) == pytest.approx(sum(usual))
    with pytest.raises(Disagreement, match="said to be away") as refusal:
        call("jobs.center", **example(in_use=[0.5, 0.5]))
    assert list(refusal.value.fields) == ["in_use/1"]


#: Every error of an angle that both operations know, stated as none.
NO_ERRORS = {
    **dict.fromkeys(ANGLE_ERRORS, 0),
    "temperature_celsius": 20,
}
del NO_ERRORS["wheel_face_error_limit_arcsec"]


@pytest.mark.parametrize(
    ("errors", "block", "stack_error_limit"),
    [
        ({"axis_yaw_error_limit_arcsec": 3600}, {"expanded_uncertainty": 0}, 0),
        (
            {
                "axis_yaw_error_limit_arcsec": 900,
                "axis_pitch_error_limit_arcsec": 5,
                "center_distance_error_limit": 0.0001,
                "temperature_celsius": 23,
                "temperature_error_limit_celsius": 1,
                "temperature_difference_celsius": 0.5,
                "block_material": "ceramic",
                "roll_difference": 0.00005,
                "roll_parallelism": 0.00004,
                "face_parallelism": 0.0001,
                "face_parallelism_on_rolls": True,
                "face_flatness": 0.00003,
                "face_length": 6,
                "table_flatness": 0.00006,
                "particle": 0.00002,
            },
            {"material": "ceramic"},
            # ASME 0: 10 µin for a block of 2 to 3 in (from memory, table of B89.1.9).
            10e-6,
        ),
        ({"axis_pitch_error_limit_arcsec": None}, {}, 10e-6),
    ],
    ids=["yaw alone", "everything", "pitch not stated"],
)
def test_plan_and_uncertainty_agree(
    call: Call, errors: dict[str, Any], block: dict[str, Any], stack_error_limit: float
) -> None:
    """One set-up has one value, u, U, worst case and forecast, as a job and as a sine set-up."""
    stated = NO_ERRORS | errors
    plan = call(
        "jobs.center",
        **example(
            included_angle_tolerance_arcsec=38,
            set=None,
            box=[{"size": 2.5, **block}],
            angle_errors={**stated, "wheel_face_error_limit_arcsec": 0},
        ),
    )["result"]["angle_budget"]
    alone = call(
        "sine.uncertainty",
        units="in",
        center_distance=5,
        angle=30,
        height=2.5,
        stack_error_limit=stack_error_limit,
        tolerance_arcsec=38,
        tolerance_on="included-angle",
        wheel_breakdown=0,
        **stated,
    )["result"]
    planned = plan["included_angle_error_arcsec"]
    for name in ("value", "standard_uncertainty", "expanded_uncertainty", "worst_case"):
        expected = alone["included_angle_error_arcsec"][name]
        assert planned[name] == pytest.approx(expected, rel=1e-9), name
    assert planned["not_stated"] == alone["included_angle_error_arcsec"]["not_stated"]
    assert plan["forecast"] == alone["forecast"]


def test_yaw_of_a_degree_leaves_room_in_thirty_eight_seconds(call: Call) -> None:
    """60° on 5 in, yaw within ±1°: −12.09″ with U 20.65″ holds ±38″.

    By hand: 2 (30° − asin(sin 30° cos 1°)) is 36.27″ at the limit; a third of it is the mean. 95 of
    100 yaws are within 0.95 of the limit, where it is 0.9025 of that: 0.5692 of it from the mean.
    """
    errors = {**NO_ERRORS, "axis_yaw_error_limit_arcsec": 3600, "wheel_face_error_limit_arcsec": 0}
    request = example(
        angle_errors=errors,
        included_angle_tolerance_arcsec=38,
        set=None,
        box=[{"size": 2.5, "expanded_uncertainty": 0}],
    )
    plan = call("jobs.center", **request)["result"]["angle_budget"]
    error = plan["included_angle_error_arcsec"]
    assert error["value"] == pytest.approx(-12.0914, abs=0.00005)
    assert error["expanded_uncertainty"] == pytest.approx(20.65, abs=0.005)
    assert error["worst_case"] == pytest.approx(36.274, abs=0.0005)
    assert plan["forecast"] == "holds"


def test_nothing_stated_is_nothing_said(call: Call) -> None:
    """Without grade and errors there are nulls and names, and no forecast of angle or runout."""
    answer = call("jobs.center", **example(grade=None, angle_errors=None, runout_errors=None))
    plan = answer["result"]
    error, tir = plan["angle_budget"]["included_angle_error_arcsec"], plan["runout_budget"]["tir"]
    for estimate in (error, tir):
        assert estimate["contributions"] == []
        for name in ("value", "standard_uncertainty", "expanded_uncertainty", "worst_case"):
            assert estimate[name] is None
    assert error["not_stated"] == ["grade", *ACTING]
    assert tir["not_stated"][1:] == ["adapter_tir", "fixture_tir", "indicating_tir"]
    assert plan["angle_budget"]["tolerance_used_percent"] is None
    assert plan["runout_budget"]["mend_first"] is None
    assert plan["angle_budget"]["forecast"] == plan["runout_budget"]["forecast"] == "not-stated"
    assert "unstated-contributions" in [a["code"] for a in answer["advisories"]]


@pytest.mark.parametrize(
    ("changes", "budget"),
    [
        ({"grade": None}, "angle_budget"),
        ({"angle_errors": {"axis_pitch_error_limit_arcsec": 5}}, "angle_budget"),
        ({"runout_errors": {"adapter_tir": 0.0001}}, "runout_budget"),
    ],
)
def test_nothing_holds_with_something_not_stated(
    call: Call, changes: dict[str, Any], budget: str
) -> None:
    """The example holds; with one thing left out of it, it only may not hold."""
    assert call("jobs.center", **example())["result"][budget]["forecast"] == "holds"
    answer = call("jobs.center", **example(**changes))
    assert answer["result"][budget]["forecast"] == "may-not-hold"
    assert "unstated-contributions" in [a["code"] for a in answer["advisories"]]


def test_a_calibrated_box_is_built_with(call: Call) -> None:
    """Blocks of the shop's own box count by deviation and calibration, the others by their grade.

    The 2 in block is 4 µin long: 2 × 4e-6 / (5 cos 30°) rad is 0.381″ of included angle.
    """
    box = [
        {"size": 2, "deviation": 4e-6, "expanded_uncertainty": 2e-6, "mark": "B17"},
        {"size": 0.5, "count": 2},
        {"size": 0.1},
    ]
    errors = {**NO_ERRORS, "wheel_face_error_limit_arcsec": 0}
    plan = call("jobs.center", **example(set=None, box=box, angle_errors=errors))["result"]
    setting = plan["plate_setting"]
    assert setting["marks"] == ["B17", None]
    assert setting["actual_deviation"] == pytest.approx(4e-6)
    error = plan["angle_budget"]["included_angle_error_arcsec"]
    assert error["value"] == pytest.approx(0.381, abs=0.0005)
    shapes = {(p["name"], p["of"]): p["distribution"] for p in error["contributions"]}
    assert shapes["block_calibration", "2"] == "normal"
    assert shapes["block_grade_limit", "0.5"] == "rectangular"
    # Calibration U = 2 µin, k = 2; ASME 0 allows 6 µin for 0.5 in.
    expected = math.hypot(1e-6, 6e-6 / math.sqrt(3)) * 0.381 / 4e-6
    assert error["standard_uncertainty"] == pytest.approx(expected, rel=0.002)


def test_a_cone_may_be_stated_as_a_standard_taper(call: Call) -> None:
    """A slope of 7:24 sets the plate to atan(7/48), whichever way it is stated."""
    for slope in ({"one_in_x": 24 / 7}, {"rate_of_taper": 7 / 24}, {"taper_per_foot": 3.5}):
        plan = call("jobs.center", **example(included_angle=None, **slope))["result"]
        degrees = plan["plate_setting"]["plate_angle"]["degrees"]
        assert degrees == pytest.approx(math.degrees(math.atan(7 / 48)))
    morse = call("jobs.center", **example(included_angle=None, designation="morse-2"))["result"]
    expected = math.degrees(math.atan(0.59941 / 24))
    assert morse["cone"]["half_angle"]["degrees"] == pytest.approx(expected)


def test_blocks_come_from_one_place_and_are_of_one_material(call: Call) -> None:
    """A set and sizes together, no blocks at all, and a material against the box's are refused."""
    with pytest.raises(Disagreement, match="sent together"):
        call("jobs.center", **example(sizes=[2.0, 0.5]))
    with pytest.raises(Disagreement, match="missing"):
        call("jobs.center", **example(set=None))
    box = [{"size": 2.5, "material": "ceramic"}]
    errors = {"block_material": "steel"}
    with pytest.raises(Disagreement, match="says the material of each block") as refusal:
        call("jobs.center", **example(set=None, box=box, angle_errors=errors))
    assert list(refusal.value.fields) == ["angle_errors/block_material"]
