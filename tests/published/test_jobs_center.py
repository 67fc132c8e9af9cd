"""The plan of a center against independent geometry and the sum of its parts."""

import math
from typing import Any

import numpy as np
import pytest
from uncertainties import ufloat, umath

from halfangle_service.errors import Disagreement, Unreachable
from halfangle_service.registry import load_registry
from support import Call


def example(**changes: Any) -> dict[str, Any]:
    """The operation's own example, changed; a change to None leaves the field out."""
    request = {**load_registry().operations["jobs.center"].example, **changes}
    return {field: value for field, value in request.items() if value is not None}


@pytest.mark.outside("jobs.center", source="Common practice: 30° on a 5 in sine plate is 2.5 in")
def test_sixty_degree_center_is_set_with_two_and_a_half_inches(call: Call) -> None:
    """A 60° center on a 5 in plate takes a 2.5 in stack, exact, of the fewest blocks."""
    setting = call("jobs.center", **example())["result"]["setting"]
    assert setting["blocks"] == [2.0, 0.5]
    assert setting["deviation"] == pytest.approx(0, abs=1e-12)
    assert setting["plate_angle"]["degrees"] == 30


@pytest.mark.outside("jobs.center", source="uncertainties library, every term of the angle budget")
def test_angle_budget_matches_a_general_uncertainty_library(call: Call) -> None:
    """Standard uncertainty of the included angle is that of a general library on the same model."""
    errors = {"center_distance_tolerance": 0.0002, "axis_pitch_arcsec": 8, "wheel_face_arcsec": 15}
    angle = call("jobs.center", **example(angle_errors=errors))["result"]["angle"]
    arcsec = math.radians(1 / 3600)
    third = math.sqrt(3)
    # ASME 0: 8 µin for 1 to 2 in, 6 µin for 0.45 to 1 in (from memory, table of B89.1.9).
    height = ufloat(2, 8e-6 / third) + ufloat(0.5, 6e-6 / third)
    half = umath.asin(height / ufloat(5, 0.0002 / third))
    half += ufloat(0, 8 * arcsec / third) + ufloat(0, 15 * arcsec / third)
    expected = 2 * half.std_dev / arcsec
    assert angle["expanded_uncertainty_arcsec"] / 2 == pytest.approx(expected, rel=1e-6)
    assert sum(line["share_percent"] for line in angle["lines"]) == pytest.approx(100)
    assert angle["not_stated"] == ["yaw of the fixture's axis", "temperature"]


@pytest.mark.outside("jobs.center", source="Brute force: cone swept by a plane, rotated in 3-D")
def test_yaw_and_feed_match_the_swept_cone(call: Call) -> None:
    """Yaw and downfeed do to the cone what turning the spin axis under a plane does."""
    yaw = math.radians(1)
    theta = math.radians(30)
    axis = np.array([math.cos(theta) * math.cos(yaw), math.sin(yaw), math.sin(theta)])
    # Tilting a yawed axis: yaw in the plate's top, then tilt about the rolls' direction.
    axis = np.array(
        [math.cos(theta) * math.cos(yaw), math.sin(yaw), math.sin(theta) * math.cos(yaw)]
    )
    half = math.asin(axis @ np.array([0, 0, 1.0]) / np.linalg.norm(axis))
    errors = {"axis_yaw_arcsec": 3600.0}
    line = call("jobs.center", **example(angle_errors=errors))["result"]["angle"]["lines"][1]
    assert line["worst_case_arcsec"] == pytest.approx(2 * (theta - half) * 206264.806, rel=1e-6)
    feed = call("jobs.center", **example(downfeed_step=0.001))["result"]["feed"]
    # A plane moved by h along its normal: the cone's points shift, its radius grows by h / cos α.
    assert feed["off_diameter"] == pytest.approx(2.3094e-3, abs=1e-7)
    assert feed["off_point"] == pytest.approx(2e-3)


@pytest.mark.outside("jobs.center", source="Two rolls against a cone, distances by coordinates")
def test_readings_over_rolls_match_coordinates(call: Call) -> None:
    """The expected difference over rolls is that of circles laid against a line of the cone."""
    plan = call("jobs.center", **example())["result"]
    check = next(c for c in plan["checks"] if "rolls" in c["check"])
    rise, roll = 0.3, 0.1
    assert f"raised by {rise:.4f} in" in check["how"]

    def over_rolls(height: float) -> float:
        """Distance over two rolls of radius `roll` whose centers are `height` above the base."""
        radius_there = 0.375 - height * math.tan(math.radians(30))
        return 2 * (radius_there + roll / math.cos(math.radians(30)) + roll)

    difference = over_rolls(roll) - over_rolls(roll + rise)
    assert f"{difference:.4f} in" in check["expected"]


def test_runout_budget_is_judged_three_ways(call: Call) -> None:
    """The runout holds in the worst case, or only by root sum of squares, or not at all."""
    verdicts = [
        call("jobs.center", **example(runout_allowed_tir=limit))["result"]["runout"]["verdict"]
        for limit in (0.0002, 0.00015, 0.0001)
    ]
    assert verdicts == [
        "holds in the worst case",
        "holds by root sum of squares",
        "does not hold",
    ]


def test_some_check_catches_a_wrong_block_and_the_same_setting_does_not(call: Call) -> None:
    """Measuring the stack catches a wrong block; a check on the same setting never does."""
    checks = call("jobs.center", **example())["result"]["checks"]
    caught = {c["check"]: c["catches_wrong_block"] for c in checks}
    assert caught["Measure the wrung stack"] is True
    assert caught["Run an indicator along the cone on the same setting"] is False


def test_fine_mistake_is_not_claimed_to_be_caught(call: Call) -> None:
    """Where a wrong block changes the height by 0.0001 in, a micrometer is not said to catch it."""
    plan = call("jobs.center", **example(included_angle="59°47'"))["result"]
    mistake = plan["smallest_mistake"]
    assert abs(mistake["taken"] - mistake["wanted"]) == pytest.approx(0.0001)
    first = plan["checks"][0]
    assert first["catches_wrong_block"] is False
    assert "within" in first["why"]


def test_height_that_cannot_be_built_counts_as_a_known_offset(call: Call) -> None:
    """A height between steps is set with the nearest stack, and the offset is in the budget."""
    answer = call("jobs.center", **example(included_angle="59°47'"))
    setting, angle = answer["result"]["setting"], answer["result"]["angle"]
    assert "stack-not-exact" in [a["code"] for a in answer["advisories"]]
    moved = 2 * math.degrees(math.asin(setting["total"] / 5)) - (59 + 47 / 60)
    assert angle["offset_arcsec"] == pytest.approx(moved * 3600, abs=1e-6)


def test_angle_out_of_reach_of_the_blocks_is_refused(call: Call) -> None:
    """Blocks that miss the angle by more than its tolerance are refused, with the nearest stack."""
    with pytest.raises(Unreachable, match="nearest stack of up to 5 of these blocks, 2 in, misses"):
        call("jobs.center", **example(block_set=None, block_sizes=[2.0, 1.0]))


def test_angles_that_disagree_and_unknown_names_are_refused(call: Call) -> None:
    """Two angles that disagree, and names that no table holds, are refused by their field."""
    with pytest.raises(Disagreement, match="is not twice half_angle"):
        call("jobs.center", **example(half_angle=31))
    with pytest.raises(Unreachable, match="no built-in set 'box 9'") as refusal:
        call("jobs.center", **example(block_set="box 9"))
    assert list(refusal.value.fields) == ["block_set"]
    with pytest.raises(Unreachable, match="no standard taper 'morse-9'"):
        call("jobs.center", **example(shank={"kind": "taper", "designation": "morse-9"}))


def test_blocks_that_are_away_are_not_built_with(call: Call) -> None:
    """Without the .5 in block the stack is another; one that the set has not is refused by name."""
    usual = call("jobs.center", **example())["result"]["setting"]["blocks"]
    assert 0.5 in usual
    away = call("jobs.center", **example(blocks_away=[0.5]))["result"]["setting"]["blocks"]
    assert 0.5 not in away
    assert sum(away) == pytest.approx(sum(usual))
    with pytest.raises(Disagreement, match="said to be away") as refusal:
        call("jobs.center", **example(blocks_away=[0.5, 0.5]))
    assert list(refusal.value.fields) == ["blocks_away/1"]
