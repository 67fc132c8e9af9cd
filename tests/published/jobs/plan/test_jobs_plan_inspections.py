"""Inspections of a plan: as `inspection.plan` gives them, and those of two views by geometry."""

import math
from typing import Any

import numpy as np
import pytest
from scipy.spatial.transform import Rotation

from inspection_plan_support import BALLS, BLUING, GAUGES, PLATE, ROLLS, by, reading, setting
from support import Call

Json = dict[str, Any]
ARCSEC = math.degrees(1) * 3600
MEANS: Json = {
    "rolls": ROLLS,
    "balls": BALLS,
    "gauges": {**GAUGES, "second_gauge_diameter": 0.85},
    "comparator": {"instrument_angle_error_limit_arcsec": 40},
    "bluing": BLUING,
    "plate": PLATE,
}
CONE: Json = {
    "kind": "cone",
    "included_angle": 60,
    "large_diameter": 0.75,
    "small_diameter": 0.1,
    "included_angle_tolerance_arcsec": 120,
}
MORSE: Json = {"designation": "morse-3", "included_angle_tolerance_arcsec": 40}
FACE: Json = {"kind": "angled-face", "face_angle": 15, "rise": 0.5, "tolerance_arcsec": 60}
COMPOUND: Json = {
    "kind": "compound-face",
    "orientation": {"kind": "projected-angles", "x_angle": -12, "y_angle": 20},
    "rise": 0.4,
    "tolerance_arcsec": 60,
    "work_body": {"base_length": 1.5, "base_width": 1, "face_height": 1},
}


def checks_of(call: Call, feature: Json, **measuring: Any) -> Json:
    """The checks of a plan of a feature in a shop that can make it."""
    shop: Json = {
        "sine_plates": [{"name": "plate", "center_distance": 5}],
        "compound_plates": [
            {
                "name": "compound plate",
                "base_center_distance": 5,
                "upper_center_distance": 5,
                "base_axis": "x",
            }
        ],
        "block_sets": [{"name": "set", "set": "inch-81", "grade": "asme-0"}],
        "internal_spindle": {"wheel_diameter": 0.5, "reach": 4},
        "measuring": measuring,
    }
    request = {
        "units": "in",
        "job": "HL-0702 proof",
        "feature": feature,
        "equipment": shop,
        "max_blocks": 4,
    }
    found: Json = call("jobs.plan", **request)["result"]["checks"]
    return found


def assert_alike(one: Any, other: Any, where: str = "") -> None:
    """Both hold the same words, and the same numbers to nine digits."""
    if isinstance(one, dict):
        assert one.keys() == other.keys(), where
        for name in one:
            assert_alike(one[name], other[name], f"{where}/{name}")
    elif isinstance(one, list):
        assert len(one) == len(other), where
        for place, pair in enumerate(zip(one, other, strict=True)):
            assert_alike(*pair, f"{where}/{place}")
    elif isinstance(one, float):
        assert one == pytest.approx(other, rel=1e-9, abs=1e-12), where
    else:
        assert one == other, where


@pytest.mark.outside("jobs.plan", source="inspection.plan, itself against the single operations")
@pytest.mark.parametrize(
    "feature",
    [CONE, {"kind": "taper-plug", **MORSE}, {"kind": "taper-socket", **MORSE}, FACE],
    ids=["cone", "plug", "socket", "face"],
)
def test_a_plan_s_inspections_are_inspection_plan_s_own(call: Call, feature: Json) -> None:
    """The same part and the same means: every figure, word and reason is the same in both."""
    alone = call("inspection.plan", units="in", feature=feature, **MEANS)["result"]
    checks = checks_of(call, feature, **MEANS)
    assert checks["best"] == alone["best"]
    for own in alone["inspections"]:
        own.pop("size_proof")
        own.pop("blocks")
    assert_alike(checks["inspections"], alone["inspections"])
    for out in alone["ruled_out"]:
        if not out["field"].startswith("feature/"):
            out["field"] = f"equipment/measuring/{out['field']}"
    assert checks["ruled_out"] == alone["ruled_out"]
    assert checks["not_at_hand"] == []


@pytest.mark.outside("jobs.plan", source="Coordinates: a bore's lower wall turned on a plate")
@pytest.mark.parametrize("off_arcsec", [-40, 0, 25])
def test_a_socket_s_bore_rises_as_its_lower_wall_does(call: Call, off_arcsec: float) -> None:
    """An indicator along the bore reads the rise of the wall, its mouth up the slope."""
    feature = {"kind": "taper-socket", **MORSE}
    found = by(checks_of(call, feature, plate=PLATE), "sine-plate")
    result = call("inspection.plan", units="in", feature=feature, plate=PLATE)["result"]["feature"]
    half = math.radians(result["half_angle"]["degrees"]) + off_arcsec / ARCSEC / 2
    tilt = math.asin(setting(found, "height") / 5)
    travel = setting(found, "indicator_travel")
    # The wall from the mouth in, along the axis and down from it, then tilted with the mouth up.
    wall = np.array([[0.0, -1.0], [-1.0, -1.0 + math.tan(half)]])
    turn = np.array([[math.cos(tilt), -math.sin(tilt)], [math.sin(tilt), math.cos(tilt)]])
    (mouth, inner) = wall @ turn.T
    toward_low = (inner[1] - mouth[1]) / math.hypot(*(inner - mouth)) * travel
    proof = found["angle_proof"]
    rise = reading(found, "indicator_rise")
    if off_arcsec == 0:
        # The stack is built to a step; the plate's own deviation is counted.
        assert rise["expected_reading"] == pytest.approx(toward_low, abs=2e-7)
        assert proof["proves_tolerance"] is not None
    else:
        side = "smallest_reading" if off_arcsec < 0 else "largest_reading"
        slope = (rise[side] - rise["expected_reading"]) / (40 if off_arcsec > 0 else -40)
        expected = (toward_low - rise["expected_reading"]) / off_arcsec
        assert slope == pytest.approx(expected, rel=0.02)


def _level(direction: Any, tilt: float, yaw: float, along: int) -> float:
    """Rise of a line of the face per length, the work's axis up a plate's slope, turned by a yaw.

    `along` is 0 for X, 1 for Y: the plate tilts so that this axis of the work falls.
    """
    turned = Rotation.from_euler("z", yaw).as_matrix() @ direction
    axis = np.array([0, 1, 0]) if along == 0 else np.array([-1, 0, 0])
    machine = Rotation.from_rotvec(axis * tilt).as_matrix() @ turned
    return float(machine[2] / np.linalg.norm(machine[:2]))


@pytest.mark.outside("jobs.plan", source="Coordinates: a face turned in space on a sine plate")
@pytest.mark.parametrize("view", ["x-angle", "y-angle"])
def test_each_view_of_a_compound_face_is_levelled_by_its_own_angle(call: Call, view: str) -> None:
    """A plate at the view's angle levels the line that this view shows; a yaw acts at once.

    The face's plane, z = x tan X + y tan Y, is cut by the vertical plane in which the indicator
    runs; the yaw's sensitivity is its difference quotient.
    """
    checks = checks_of(call, COMPOUND, plate={**PLATE, "axis_yaw_error_limit_arcsec": 30})
    found = next(one for one in checks["inspections"] if one["of"] == view)
    angles = [math.radians(-12), math.radians(20)]
    along = 0 if view == "x-angle" else 1
    own, other = angles[along], angles[1 - along]
    assert setting(found, "plate_angle") == pytest.approx(math.degrees(abs(own)))
    length = (1.5, 1.0)[along] / math.cos(own)
    assert setting(found, "indicator_travel") == pytest.approx(0.8 * length)

    def line(yaw: float, error: float) -> Any:
        """Direction of the face's line over which the indicator runs, yawed back to the work."""
        flat = np.array([math.cos(yaw), -math.sin(yaw)])
        x, y = flat if along == 0 else np.array([-flat[1], flat[0]])
        slopes = [math.tan(a) for a in angles]
        slopes[along] = math.tan(own + error)
        return np.array([x, y, x * slopes[0] + y * slopes[1]])

    assert abs(_level(line(0, 0), own, 0, along)) < 1e-12
    step = 1e-6
    risen = _level(line(step, 0), own, step, along)
    by_error = _level(line(0, step), own, 0, along)
    parts = {
        part["name"]: part for part in found["angle_proof"]["angle_error_arcsec"]["contributions"]
    }
    yaw = parts["axis_yaw_error_limit_arcsec"]
    assert yaw["sensitivity"] == pytest.approx(abs(risen / by_error), rel=1e-4)
    assert abs(yaw["sensitivity"]) == pytest.approx(
        abs(math.tan(other)) * math.cos(own) ** 2, rel=1e-9
    )
    assert found["angle_proof"]["proves_tolerance"] is True
    assert found["cannot_see"] == ["size", "form-between-contacts"]


@pytest.mark.outside("jobs.plan", source="Brute force over the corners of both views' tolerances")
def test_the_true_tilt_has_the_limits_of_both_views(call: Call) -> None:
    """Tilt and direction to read are those of the faces at the limits of both views."""
    checks = checks_of(call, COMPOUND, plate=PLATE)
    found = next(one for one in checks["inspections"] if one["of"] is None)
    tilts, ways = [], []
    for x in (-60, 0, 60):
        for y in (-60, 0, 60):
            slope_x = math.tan(math.radians(-12 + x / 3600))
            slope_y = math.tan(math.radians(20 + y / 3600))
            tilts.append(math.degrees(math.atan(math.hypot(slope_x, slope_y))))
            ways.append(math.degrees(math.atan2(slope_y, slope_x)) % 360)
    tilt, way = reading(found, "tilt"), reading(found, "rise_direction")
    assert tilt["expected_reading"] == pytest.approx(tilts[4])
    assert (tilt["smallest_reading"], tilt["largest_reading"]) == pytest.approx(
        (min(tilts), max(tilts))
    )
    assert way["expected_reading"] == pytest.approx(ways[4])
    assert (way["smallest_reading"], way["largest_reading"]) == pytest.approx(
        (min(ways), max(ways))
    )
    assert found["angle_proof"] is None
    assert setting(found, "height") == pytest.approx(5 * math.sin(math.radians(tilts[4])))


@pytest.mark.outside("jobs.plan", source="Coordinates: the edge of a face seen from the front")
def test_a_screen_shows_each_view_s_angle(call: Call) -> None:
    """Front and side view show the drawing's angles, with limits, by the instrument's error."""
    checks = checks_of(call, COMPOUND, comparator={"instrument_angle_error_limit_arcsec": 30})
    assert checks["best"] == "comparator"
    for one, angle in zip(checks["inspections"], (-12, 20), strict=True):
        shown = reading(one, "measured_angle")
        assert shown["expected_reading"] == pytest.approx(angle)
        assert shown["largest_reading"] - shown["smallest_reading"] == pytest.approx(120 / 3600)
        assert shown["largest_accepted_reading"] < shown["largest_reading"]
    coarse = checks_of(call, COMPOUND, comparator={"instrument_angle_error_limit_arcsec": 90})
    assert coarse["best"] is None


def test_of_two_views_the_worse_one_decides_what_can_be_proved(call: Call) -> None:
    """A yaw that spoils one view alone leaves the means no proof of the face."""
    steep = {
        **COMPOUND,
        "orientation": {"kind": "projected-angles", "x_angle": 6, "y_angle": 45},
        "rise": 1,
    }
    fine = checks_of(call, steep, plate={**PLATE, "axis_yaw_error_limit_arcsec": 20})
    assert fine["best"] == "sine-plate"
    yawed = checks_of(call, steep, plate={**PLATE, "axis_yaw_error_limit_arcsec": 120})
    proofs = {one["of"]: one["angle_proof"] for one in yawed["inspections"] if one["of"]}
    assert proofs["x-angle"]["proves_tolerance"] is False
    assert proofs["y-angle"]["proves_tolerance"] is True
    assert yawed["best"] is None


def test_what_is_not_at_hand_is_named_with_what_states_it(call: Call) -> None:
    """Means usual for a feature that the shop does not have are named, with what to get."""
    socket = checks_of(call, {"kind": "taper-socket", **MORSE}, bluing=BLUING)
    assert [(one["means"], one["field"]) for one in socket["not_at_hand"]] == [
        ("over-balls", "equipment/measuring/balls"),
        ("gauge-depth", "equipment/measuring/gauges"),
        ("sine-plate", "equipment/measuring/plate"),
    ]
    assert "Two balls" in socket["not_at_hand"][0]["action"]
    compound = checks_of(call, COMPOUND)
    assert [one["means"] for one in compound["not_at_hand"]] == ["sine-plate", "comparator"]
    assert compound["inspections"] == []


def test_where_an_indicator_may_run_is_asked_for(call: Call) -> None:
    """Without the work's size the travel along a compound face has to be stated."""
    bare = {name: value for name, value in COMPOUND.items() if name != "work_body"}
    checks = checks_of(call, bare, plate=PLATE)
    assert [one["field"] for one in checks["ruled_out"]] == [
        "equipment/measuring/plate/indicator_travel"
    ] * 2
    stated = checks_of(call, bare, plate={**PLATE, "indicator_travel": 0.5})
    assert [one["of"] for one in stated["inspections"]] == ["x-angle", "y-angle", None]
