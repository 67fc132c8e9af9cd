"""A compound face on one plate, its work turned in plan, against parts tilted by rotations."""

import math
from typing import Any

import numpy as np
import pytest
from scipy.spatial.transform import Rotation

from support import Call

Json = dict[str, Any]
X, Y = 12.0, 20.0
#: Everything of the plate stated, its center distance alone in error.
ERRORS: Json = {
    "center_distance_error_limit": 0.001,
    "roll_difference": 0,
    "roll_parallelism": 0,
    "face_parallelism": 0,
    "face_flatness": 0,
    "table_flatness": 0,
    "particle": 0,
    "temperature_celsius": 20,
    "temperature_error_limit_celsius": 0,
    "temperature_difference_celsius": 0,
    "axis_pitch_error_limit_arcsec": 0,
    "axis_yaw_error_limit_arcsec": 0,
    "wheel_face_error_limit_arcsec": 0,
}


def planned(call: Call, *, hand: str = "as-drawn", **plate: Any) -> Json:
    """The plan of a face that slopes in two views on one plate."""
    stated = {"name": "5 in plate", "center_distance": 5, "angle_errors": ERRORS, **plate}
    result: Json = call(
        "jobs.plan",
        units="in",
        job="HL-0500 wedge",
        feature={
            "kind": "compound-face",
            "orientation": {"kind": "projected-angles", "x_angle": X, "y_angle": Y},
            "hand": hand,
            "rise": 0.4,
            "tolerance_arcsec": 120,
        },
        equipment={
            "sine_plates": [stated],
            "block_sets": [{"name": "set", "set": "inch-81", "grade": "asme-0"}],
        },
    )["result"]
    return result


@pytest.mark.outside("jobs.plan", source="Monte Carlo: rotations of scipy, a seeded set-up")
@pytest.mark.parametrize("hand", ["as-drawn", "opposite"])
@pytest.mark.parametrize("direction", ["along-travel", "across-travel"])
def test_both_views_of_a_part_turned_and_tilted_are_as_forecast(
    call: Call, hand: str, direction: str
) -> None:
    """Turned so that it rises toward the hinge and tilted by the stack, the face shows both views.

    An error of the center distance and one of the turn in plan, drawn, spread them as forecast.
    """
    answer = planned(
        call,
        hand=hand,
        tilt_direction=direction,
        swivel_base={"swivel_error_limit_arcsec": 60},
    )
    way = answer["ways"][0]
    assert way["way"] == "sine-plate-turned-in-plan"
    turn, plate = way["settings"]
    wanted = (-X if hand == "opposite" else X, Y)
    slopes = [math.tan(math.radians(angle)) for angle in wanted]
    tilt = math.degrees(math.atan(math.hypot(*slopes)))
    rises = math.degrees(math.atan2(slopes[1], slopes[0])) % 360
    assert turn["angle"]["degrees"] == pytest.approx(rises)
    assert plate["angle"]["degrees"] == pytest.approx(tilt)
    assert "square to the hinge of 5 in plate and toward it" in turn["action"]
    dice, count = np.random.default_rng(4), 4_000
    height = next(s for s in way["stacks"] if s["role"] == "high")["total"]
    low = sum(s["total"] for s in way["stacks"] if s["role"] == "low")
    centers = 5 + dice.uniform(-0.001, 0.001, count)
    tilts = np.arcsin((height - low) / centers)
    turns = np.radians(-rises) + np.radians(dice.uniform(-60, 60, count) / 3600)
    # Uphill to the left of a machine whose plate raises its right end, by right-hand rotations.
    laid = Rotation.from_rotvec(np.outer(turns + math.pi, [0.0, 0.0, 1.0]))
    tilted = Rotation.from_rotvec(np.outer(-tilts, [0.0, 1.0, 0.0]))
    normals = (tilted * laid).inv().apply([0.0, 0.0, 1.0])
    shown = np.degrees(np.arctan2(-normals[:, :2], normals[:, 2:]))
    for place, angle in enumerate(way["angles"]):
        off = (shown[:, place] - wanted[place]) * 3600
        error = angle["error_arcsec"]
        grade = next(c for c in error["contributions"] if c["name"] == "block_grade_limit")
        own = error["standard_uncertainty"] ** 2
        blocks = sum(
            c["standard_uncertainty"] ** 2
            for c in error["contributions"]
            if c["name"].startswith("block_")
        )
        assert grade["standard_uncertainty"] > 0
        assert float(np.mean(off)) == pytest.approx(error["value"], abs=1.5)
        assert float(np.std(off)) == pytest.approx(math.sqrt(own - blocks), rel=0.04)
        assert angle["of"] == ("x-angle", "y-angle")[place]


def test_without_a_swivelling_base_it_is_told_what_would_do(call: Call) -> None:
    """Where nothing turns the work in plan the plate is ruled out, with its field and remedy."""
    compound = {
        "name": "compound plate",
        "base_center_distance": 5,
        "upper_center_distance": 5,
        "base_axis": "x",
    }
    answer = call(
        "jobs.plan",
        units="in",
        job="HL-0500 wedge",
        feature={
            "kind": "compound-face",
            "orientation": {"kind": "projected-angles", "x_angle": X, "y_angle": Y},
            "rise": 0.4,
            "tolerance_arcsec": 120,
        },
        equipment={
            "sine_plates": [{"name": "5 in plate", "center_distance": 5}],
            "compound_plates": [compound],
            "block_sets": [{"name": "set", "set": "inch-81"}],
        },
    )["result"]
    (out,) = (way for way in answer["ruled_out"] if way["equipment"] == ["5 in plate"])
    assert out["field"] == "equipment/sine_plates/0/swivel_base"
    assert "state a swivelling base" in out["instead"]


def test_a_turn_that_was_not_stated_is_named(call: Call) -> None:
    """A swivelling base of which nothing was stated leaves both views in doubt, and is named."""
    way = planned(call, swivel_base={})["ways"][0]
    for angle in way["angles"]:
        assert angle["error_arcsec"]["not_stated"] == ["swivel_base/swivel_error_limit_arcsec"]
        assert angle["forecast"] == "may-not-hold"
    parts = {part["setup_part"]: part["times_done"] for part in way["time"]["setup_parts"]}
    assert (parts["turn-in-plan"], parts["edge-trueing"]) == (1, 1)


def test_a_wrong_block_turns_the_view_that_it_turns_most(call: Call) -> None:
    """The smallest wrong block that leaves the tolerance does so in one of both views."""
    way = planned(call, swivel_base={"swivel_error_limit_arcsec": 0})["ways"][0]
    for mistake in way["mistakes"]:
        assert abs(mistake["angle_error_arcsec"]) > 120


def test_the_steps_turn_the_work_before_the_plate_is_tilted(call: Call) -> None:
    """The hand turns the work in plan first, then wrings and sets."""
    actions = [
        step["action"]
        for step in planned(call, swivel_base={"swivel_error_limit_arcsec": 30})["steps"]
    ]
    turned = next(n for n, text in enumerate(actions) if text.startswith("Turn the work in plan"))
    tilted = next(n for n, text in enumerate(actions) if text.startswith("Set 5 in plate"))
    assert turned < tilted
