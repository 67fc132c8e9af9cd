"""A compound face of a plan: settings, both hands, orders of the hinges, errors in each view."""

import math
from typing import Any

import numpy as np
import pytest
from scipy.spatial.transform import Rotation

from support import Call

Json = dict[str, Any]
VIEWS = {"x_angle": 12.0, "y_angle": 20.0}
PLATE: Json = {
    "name": "compound plate",
    "base_center_distance": 5,
    "upper_center_distance": 5,
    "base_axis": "x",
}
ERRORS: Json = {
    "base_errors": {"center_distance_error_limit": 0.0001, "axis_yaw_error_limit_arcsec": 30},
    "upper_errors": {"roll_difference": 0.0001, "axis_yaw_error_limit_arcsec": 60},
    "wheel_face_error_limit_arcsec": 10,
}


def feature(**changes: Any) -> Json:
    """A face 0.4 in high that slopes in both views."""
    return {
        "kind": "compound-face",
        "orientation": {"kind": "projected-angles", **VIEWS},
        "rise": 0.4,
        "tolerance_arcsec": 60,
        **changes,
    }


def plan_of(call: Call, plate: Json, **changes: Any) -> Json:
    """The plan of the face on one plate."""
    result: Json = call(
        "jobs.plan",
        units="in",
        job="HL-0500 wedge",
        feature=feature(**changes),
        equipment={
            "compound_plates": [plate],
            "block_sets": [{"name": "set", "set": "inch-81", "grade": "asme-0"}],
        },
    )["result"]
    return result


def test_a_compound_face_is_set_as_sine_compound_sets_it(call: Call) -> None:
    """Angles, heights, stacks and what they are off are those of `sine.compound`."""
    alone = call(
        "sine.compound",
        units="in",
        frame="part",
        orientation={"kind": "projected-angles", **VIEWS},
        set="inch-81",
        **{name: value for name, value in PLATE.items() if name != "name"},
    )["result"]
    way = next(way for way in plan_of(call, PLATE)["ways"] if "as drawn." in action(way))
    for setting in way["settings"]:
        one = alone[setting["part"]]
        assert setting["angle"]["degrees"] == pytest.approx(abs(one["angle"]["degrees"]))
        assert setting["height"] == one["height"]
        assert f"the {one['raised_side']} roll" in setting["action"]
    stacks = {stack["role"]: stack["blocks"] for stack in way["stacks"]}
    assert stacks["base"] == alone["stacks"]["base_blocks"]
    assert stacks["upper"] == alone["stacks"]["upper_blocks"]


def action(way: Json) -> str:
    """What is done first."""
    words: str = way["settings"][0]["action"]
    return words


def level(base: float, upper: float, *, turns: int = 0) -> np.ndarray:
    """Normal, in the part's views, of what is level: scipy's rotations, degrees, hinge along X."""
    plate = Rotation.from_euler("x", base, degrees=True) * Rotation.from_euler(
        "y", -upper, degrees=True
    )
    laid = Rotation.from_euler("z", 90 * turns, degrees=True)
    return np.asarray((plate * laid).inv().apply([0.0, 0.0, 1.0]))


@pytest.mark.outside("jobs.plan", source="scipy.spatial.transform: the surface rotated level")
@pytest.mark.parametrize(("hand", "sign"), [("as-drawn", 1.0), ("opposite", -1.0)])
def test_both_hands_come_level(call: Call, hand: str, sign: float) -> None:
    """Rotated through both hinges as planned, the face of either hand is level."""
    ways = plan_of(call, PLATE, hand=hand)["ways"]
    assert len(ways) == 2
    for way in ways:
        raised = [setting["action"] for setting in way["settings"]]
        base, upper = (
            setting["angle"]["degrees"] * (-1.0 if name in words else 1.0)
            for setting, words, name in zip(
                way["settings"], raised, ("the front roll", "the left roll"), strict=True
            )
        )
        turns = next(
            turns
            for words, turns in (
                ("right to the back", 1),
                ("half round", 2),
                ("right to the front", 3),
                ("as drawn", 0),
            )
            if words in raised[0]
        )
        x, y, z = level(base, upper, turns=turns)
        assert math.degrees(math.atan2(-x, z)) == pytest.approx(sign * 12.0, abs=1e-9)
        assert math.degrees(math.atan2(-y, z)) == pytest.approx(20.0, abs=1e-9)


def test_the_other_hand_raises_the_other_side(call: Call) -> None:
    """What one hand raises at the left the other raises at the right."""
    left, right = (
        plan_of(call, PLATE, hand=hand)["ways"][0]["settings"] for hand in ("as-drawn", "opposite")
    )
    assert [setting["angle"] for setting in left] == [setting["angle"] for setting in right]
    sides = {"left": "right", "right": "left"}
    words = next(side for side in sides if f"the {side} roll" in left[1]["action"])
    assert f"the {sides[words]} roll" in right[1]["action"]


def test_a_plate_that_raises_one_side_has_the_work_turned(call: Call) -> None:
    """Where each plate raises one side only, either hand is had by turning the work in plan."""
    plate = {**PLATE, "base_raised_side": "back", "upper_raised_side": "right"}
    for hand in ("as-drawn", "opposite"):
        for way in plan_of(call, plate, hand=hand)["ways"]:
            assert "the back roll" in way["settings"][0]["action"]
            assert "the right roll" in way["settings"][1]["action"]


@pytest.mark.outside("jobs.plan", source="scipy.spatial.transform: each error turned in one by one")
def test_errors_act_on_each_view_as_rotations_do(call: Call) -> None:
    """Each contribution is what a rotation by that error does to the angle in the view."""
    way = next(
        way for way in plan_of(call, {**PLATE, **ERRORS})["ways"] if "as drawn." in action(way)
    )
    base, upper = (math.radians(setting["angle"]["degrees"]) for setting in way["settings"])
    base *= -1.0 if "the front roll" in way["settings"][0]["action"] else 1.0
    upper *= -1.0 if "the left roll" in way["settings"][1]["action"] else 1.0

    def views(name: str, by: float) -> tuple[float, float]:
        """Angles in both views with one error of so many radians."""
        turn = {key: by if key == name else 0.0 for key in ("base_yaw", "upper_yaw", "wheel")}
        plate = (
            Rotation.from_rotvec([base, 0, 0])
            * Rotation.from_rotvec([0, 0, turn["base_yaw"]])
            * Rotation.from_rotvec([0, -upper, 0])
            * Rotation.from_rotvec([0, 0, turn["upper_yaw"]])
        )
        x, y, z = plate.inv().apply([0.0, math.sin(turn["wheel"]), math.cos(turn["wheel"])])
        return math.atan2(-x, z), math.atan2(-y, z)

    names = {
        "base_errors/axis_yaw_error_limit_arcsec": "base_yaw",
        "upper_errors/axis_yaw_error_limit_arcsec": "upper_yaw",
        "wheel_face_error_limit_arcsec": "wheel",
    }
    step = 1e-6
    for place, angle in enumerate(way["angles"]):
        found = {part["name"]: part for part in angle["error_arcsec"]["contributions"]}
        for name, key in names.items():
            slope = (views(key, step)[place] - views(key, -step)[place]) / (2 * step)
            assert found[name]["sensitivity"] == pytest.approx(slope, abs=1e-6)


def test_each_hinge_has_the_errors_of_a_sine_plate(call: Call) -> None:
    """With a surface along one view alone, the hinge counts as `sine.uncertainty` has it."""
    orientation = {"kind": "projected-angles", "x_angle": 0, "y_angle": 20}
    plate = {**PLATE, "base_errors": ERRORS["base_errors"]}
    ways = plan_of(call, plate, orientation=orientation)["ways"]
    way = next(way for way in ways if "as drawn." in action(way))
    view = way["angles"][1]["error_arcsec"]["contributions"]
    found = next(part for part in view if part["name"].endswith("center_distance_error_limit"))
    alone = call(
        "sine.uncertainty",
        units="in",
        center_distance=5,
        angle=20,
        center_distance_error_limit=0.0001,
    )["result"]["angle_error_arcsec"]["contributions"][0]
    assert found["standard_uncertainty"] == pytest.approx(alone["standard_uncertainty"])


def test_a_compound_face_is_beyond_what_sets_one_angle(call: Call) -> None:
    """A sine plate is ruled out, with the turn in plan by which it would do."""
    answer = call(
        "jobs.plan",
        units="in",
        job="HL-0500 wedge",
        feature=feature(),
        equipment={
            "sine_plates": [{"name": "5 in plate", "center_distance": 5}],
            "compound_plates": [PLATE],
            "block_sets": [{"name": "set", "set": "inch-81"}],
        },
    )["result"]
    ruled_out = answer["ruled_out"][0]
    slopes = (math.tan(math.radians(angle)) for angle in VIEWS.values())
    tilt = math.degrees(math.atan(math.hypot(*slopes)))
    assert ruled_out["way"] == "sine-plate"
    assert f"{tilt:.6g}°" in ruled_out["instead"]
