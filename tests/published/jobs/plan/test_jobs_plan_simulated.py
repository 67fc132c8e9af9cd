"""Plans drawn at random: errors within their limits, the part by vectors, held to the forecast."""

import math
from typing import Any

import numpy as np
import pytest
from numpy.typing import NDArray
from scipy.spatial.transform import Rotation

from halfangle_service.registry import load_registry
from support import Call

Json = dict[str, Any]
Values = NDArray[np.float64]
TRIALS = 100_000
#: Four standard deviations of a share of 95 % in so many trials.
WITHIN = 4 * math.sqrt(0.95 * 0.05 / TRIALS)
ARCSEC = math.degrees(1) * 3600
EXAMPLE: Json = dict(load_registry().operations["jobs.plan"].example)
PLATE: Json = dict(EXAMPLE["equipment"]["sine_plates"][0], squareness_error_limit_arcsec=8)
ERRORS: Json = PLATE["angle_errors"]
SETS: list[Json] = EXAMPLE["equipment"]["block_sets"]
#: Limits ± of single blocks of grade 0 (ASME B89.1.9, from memory) by size, in inches.
STEEL = 11.5e-6


def plan_of(call: Call, feature: Json, **equipment: Any) -> Json:
    """The best way of a shop for a feature."""
    request = {**EXAMPLE, "feature": feature, "equipment": {"block_sets": SETS, **equipment}}
    way: Json = call("jobs.plan", **request)["result"]["ways"][0]
    return way


class Draws:
    """Values drawn alike likely within ± a limit."""

    def __init__(self) -> None:
        self.generator = np.random.default_rng(20261126)

    def within(self, limit: float) -> Values:
        """So many values within ± a limit."""
        return self.generator.uniform(-limit, limit, TRIALS)

    def plate_angle(self, way: Json, roles: tuple[str, ...], errors: Json, place: int) -> Values:
        """Angle of a plate of 5 in on its stacks as built, with the plate's and blocks' errors."""
        setting = way["settings"][place]
        signs = {roles[0]: 1.0, **dict.fromkeys(roles[1:], -1.0)}
        height = np.zeros(TRIALS)
        for stack in way["stacks"]:
            for part in stack["actual_height"]["contributions"] if stack["role"] in signs else ():
                height += self.within(part["input_value"])
            height += signs.get(stack["role"], 0.0) * stack["total"]
        nominal = setting["height"]
        warm = errors["temperature_celsius"] - 20
        off = warm + self.within(errors["temperature_error_limit_celsius"])
        apart = self.within(errors["temperature_difference_celsius"])
        grown = self.expansion() * (off + apart) - self.expansion() * off
        height += nominal * grown
        for name, part in (("table_flatness", 1), ("particle", 1), ("roll_parallelism", 0.5)):
            height += part * self.within(errors[name])
        height += self.within(errors["roll_difference"]) / 2
        length = 5 + self.within(errors["center_distance_error_limit"])
        face = self.within(errors["face_parallelism"]) + self.within(errors["face_flatness"])
        return np.arcsin(height / length) + face / 5

    def expansion(self) -> Values:
        """Expansion of gauge-block steel, as ISO 3650 bounds it."""
        return STEEL + self.within(1e-6)

    def angle(self, arcsec: float) -> Values:
        """Angles within ± so many arc-seconds, in radians."""
        return self.within(arcsec) / ARCSEC


def share_covered(found: Values, wanted: float, error: Json) -> float:
    """Share of the simulated errors that the estimate's interval covers."""
    off = (found - wanted) * ARCSEC - error["value"]
    return float(np.mean(np.abs(off) <= error["expanded_uncertainty"]))


CENTER: Json = EXAMPLE["feature"]
SLIM: Json = {
    "kind": "cone",
    "included_angle": 2,
    "included_angle_tolerance_arcsec": 120,
    "large_diameter": 0.75,
    "small_diameter": 0.74,
}


@pytest.mark.outside("jobs.plan", source="Monte Carlo of the whole set-up by vectors (JCGM 101)")
@pytest.mark.parametrize(
    ("feature", "roles"),
    [(CENTER, ("high",)), (SLIM, ("high", "low"))],
    ids=["60° center", "2° on both stacks"],
)
def test_cones_drawn_at_random_keep_the_interval(
    call: Call, feature: Json, roles: tuple[str, ...]
) -> None:
    """A spin axis pitched and yawed on a plate: of the cones ground 95 of 100 are as forecast."""
    way, draws = plan_of(call, feature, sine_plates=[PLATE]), Draws()
    assert {stack["role"] for stack in way["stacks"]} - {"check"} == set(roles)
    theta = draws.plate_angle(way, roles, ERRORS, 0)
    pitch = draws.angle(ERRORS["axis_pitch_error_limit_arcsec"])
    yaw = draws.angle(ERRORS["axis_yaw_error_limit_arcsec"])
    # The axis' rise out of the level plane that the wheel sweeps.
    rise = np.sin(theta) * np.cos(pitch) * np.cos(yaw) + np.cos(theta) * np.sin(pitch)
    half = np.arcsin(rise) + draws.angle(ERRORS["wheel_face_error_limit_arcsec"])
    wanted = math.radians(feature["included_angle"])
    error = way["angles"][0]["error_arcsec"]
    assert share_covered(2 * half, wanted, error) == pytest.approx(0.95, abs=WITHIN)


@pytest.mark.outside("jobs.plan", source="Monte Carlo of the whole set-up by vectors (JCGM 101)")
def test_faces_turned_a_quarter_keep_the_interval(call: Call) -> None:
    """Work of 72° on a plate at 18°, its base square to the top: the angle of face and base."""
    feature = {"kind": "angled-face", "face_angle": 72, "rise": 0.5, "tolerance_arcsec": 60}
    way, draws = plan_of(call, feature, sine_plates=[PLATE]), Draws()
    assert way["way"] == "quarter-turn"
    theta = draws.plate_angle(way, ("high",), ERRORS, 0)
    square = draws.angle(PLATE["squareness_error_limit_arcsec"])
    slope = draws.angle(ERRORS["wheel_face_error_limit_arcsec"])
    yaw = draws.angle(ERRORS["axis_yaw_error_limit_arcsec"])
    # Normal of the base, which stands along the plate, and of the plane that is ground.
    lean = theta + square
    along = np.cos(lean) * np.cos(yaw), np.sin(yaw), np.sin(lean) * np.cos(yaw)
    found = np.arccos(np.sin(slope) * along[0] + np.cos(slope) * along[2])
    error = way["angles"][0]["error_arcsec"]
    assert share_covered(found, math.radians(72), error) == pytest.approx(0.95, abs=2 * WITHIN)


@pytest.mark.outside("jobs.plan", source="Monte Carlo by scipy's rotations (JCGM 101)")
@pytest.mark.parametrize("hand", ["as-drawn", "opposite"])
def test_compound_faces_of_both_hands_keep_their_intervals(call: Call, hand: str) -> None:
    """Both hinges, the yaw of each and the wheel's slope drawn: each view's angle as forecast."""
    feature = {
        "kind": "compound-face",
        "orientation": {"kind": "projected-angles", "x_angle": 12, "y_angle": 20},
        "hand": hand,
        "rise": 0.4,
        "tolerance_arcsec": 120,
    }
    errors = {name: value for name, value in ERRORS.items() if not name.startswith("wheel")}
    errors["axis_yaw_error_limit_arcsec"] = 20
    plate = {
        "name": "compound",
        "base_center_distance": 5,
        "upper_center_distance": 5,
        "base_axis": "x",
        "base_errors": errors,
        "upper_errors": errors,
        "wheel_face_error_limit_arcsec": 10,
    }
    request = {**EXAMPLE, "feature": feature}
    request["equipment"] = {"block_sets": SETS, "compound_plates": [plate]}
    ways = call("jobs.plan", **request)["result"]["ways"]
    way = next(way for way in ways if "as drawn." in way["settings"][0]["action"])
    draws, hinges = Draws(), []
    for place, (role, down) in enumerate((("base", "front"), ("upper", "left"))):
        turned = draws.plate_angle(way, (role,), errors, place)
        turned += draws.angle(errors["axis_pitch_error_limit_arcsec"])
        hinges.append(-turned if f"the {down} roll" in way["settings"][place]["action"] else turned)
    zero = np.zeros(TRIALS)
    base, upper = (draws.angle(20) for _ in range(2))
    plates = (
        Rotation.from_rotvec(np.column_stack([hinges[0], zero, zero]))
        * Rotation.from_rotvec(np.column_stack([zero, zero, base]))
        * Rotation.from_rotvec(np.column_stack([zero, -hinges[1], zero]))
        * Rotation.from_rotvec(np.column_stack([zero, zero, upper]))
    )
    slope = draws.angle(10)
    x, y, z = plates.inv().apply(np.column_stack([zero, np.sin(slope), np.cos(slope)])).T
    views = np.arctan2(-x, z), np.arctan2(-y, z)
    for found, angle, wanted in zip(
        views, way["angles"], (12 if hand == "as-drawn" else -12, 20), strict=True
    ):
        covered = share_covered(found, math.radians(wanted), angle["error_arcsec"])
        assert covered == pytest.approx(0.95, abs=2 * WITHIN)
