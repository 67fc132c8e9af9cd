"""A plan's forecasts against parts that are made and inspected by dice.

Every error is drawn within its stated limits; the part is what a plane wheel leaves of it in three
dimensions, by rotation matrices and points alone: rolls on stacks, a plate's face on the rolls, the
work on the face, the plane that the wheel sweeps. Nothing here is a sensitivity.
"""

import copy
import math
from collections import Counter
from typing import Any

import numpy as np
import pytest

from dice_support import (
    ARCSEC,
    COMPOUND_PLATE,
    ERRORS,
    PIECES,
    WHEEL_FACE,
    Made,
    Values,
    lot,
    turned_about,
)
from halfangle_service.errors import Unreachable
from halfangle_service.registry import load_registry
from support import Call

Json = dict[str, Any]
#: Deviations of a share of so many pieces that a test lets pass: one in 15,000 does so by chance.
SURE = 4.0
#: Of inch-81, each block once.
INCH_81 = Counter(
    [
        *(round(0.1001 + 0.0001 * i, 4) for i in range(9)),
        *(round(0.101 + 0.001 * i, 3) for i in range(49)),
        *(round(0.05 + 0.05 * i, 2) for i in range(19)),
        *(1.0, 2.0, 3.0, 4.0),
    ]
)


def included_angles(axis: Values, wheel: Values) -> Values:
    """Included angle of what a plane leaves of work that turns about its axis, in radians.

    At two places along the axis the plane cuts the work down to its distance from the axis, square
    to it; the cone goes through both circles.
    """
    along = np.sum(axis * wheel, axis=1)
    across = np.linalg.norm(wheel - along[:, np.newaxis] * axis, axis=1)
    height = 1.0
    radii = [(height - place * along) / across for place in (0.0, 0.5)]
    return np.asarray(2.0 * np.arctan2(np.abs(radii[0] - radii[1]), 0.5))


def angle_errors(made: Made, kind: str, wanted: float, *, quarter: bool) -> Values:
    """Errors of the angle that has the tolerance, in arc-seconds; `wanted` in degrees."""
    work, wheel = made.seats(quarter=quarter)
    if kind == "angled-face":
        # Between the ground plane and the base, as two planes of the part.
        base = work @ (np.array([-1.0, 0.0, 0.0]) if quarter else np.array([0.0, 0.0, 1.0]))
        between = np.arctan2(
            np.linalg.norm(np.cross(base, wheel), axis=1), np.sum(base * wheel, axis=1)
        )
        between = np.pi - between if quarter else between
        between = np.minimum(between, np.pi - between)
        return np.asarray((between - math.radians(wanted)) * ARCSEC)
    axis = work @ (np.array([0.0, 0.0, 1.0]) if quarter else np.array([1.0, 0.0, 0.0]))
    return np.asarray((included_angles(axis, wheel) - math.radians(wanted)) * ARCSEC)


def agrees(share: float, expected: float) -> bool:
    """Whether a share of the pieces is what was expected, as far as so many can tell."""
    return abs(share - expected) <= SURE * math.sqrt(max(expected * (1 - expected), 1e-4) / PIECES)


def assert_covered(row: Json, errors: Values) -> None:
    """The pieces lie about the forecast's value as widely as it says, and keep what it says."""
    error, tolerance = row["error_arcsec"], row["tolerance_arcsec"]
    assert error["not_stated"] == []
    spread = error["standard_uncertainty"]
    assert np.mean(errors) == pytest.approx(error["value"], abs=SURE * spread / math.sqrt(PIECES))
    assert np.std(errors) == pytest.approx(spread, rel=0.03)
    covered = np.abs(errors - error["value"]) <= error["expanded_uncertainty"]
    assert agrees(float(np.mean(covered)), error["coverage_probability"])
    assert float(np.max(np.abs(errors))) <= error["worst_case"] * 1.001
    kept = float(np.mean(np.abs(errors) <= tolerance))
    room = SURE * math.sqrt(0.95 * 0.05 / PIECES)
    bounds = {
        "holds": (0.95 - room, 1.0),
        "may-not-hold": (0.05 - room, 0.95 + room),
        "does-not-hold": (0.0, 0.05 + room),
    }
    low, high = bounds[row["forecast"]]
    assert low <= kept <= high


def assert_no_block_twice(way: Json) -> None:
    """All stacks of a way together take no block of the set more than once."""
    used = Counter(size for stack in way["stacks"] for size in stack["blocks"])
    assert used
    assert used <= INCH_81


def request_for(feature: Json, tolerance: float) -> Json:
    """The job with everything stated of one plate, one set and the means of measuring."""
    example = load_registry().operations["jobs.plan"].example
    tolerances = {
        name: tolerance
        for name in ("tolerance_arcsec", "included_angle_tolerance_arcsec")
        if (name == "tolerance_arcsec") == (feature["kind"] in {"angled-face", "compound-face"})
    }
    errors = {**ERRORS, "wheel_face_error_limit_arcsec": WHEEL_FACE}
    plate = {
        "name": "5 in plate",
        "center_distance": 5,
        "largest_angle": 60,
        "angle_errors": errors,
        "squareness_error_limit_arcsec": ERRORS["axis_pitch_error_limit_arcsec"],
    }
    return {
        "job": "HL-0700",
        "units": "in",
        "feature": {**copy.deepcopy(feature), **tolerances},
        "equipment": {
            "sine_plates": [plate],
            "block_sets": [{"name": "set", "set": "inch-81", "grade": "asme-0"}],
            "internal_spindle": {"wheel_diameter": 0.5, "reach": 4},
            "measuring": copy.deepcopy(example["equipment"]["measuring"]),
        },
    }


MORSE_3 = 2 * math.degrees(math.atan(0.60235 / 24))
CONE_2 = {"kind": "cone", "included_angle": 2, "large_diameter": 0.75, "small_diameter": 0.7}
CASES: dict[str, tuple[Json, str, float]] = {
    "60° center": (
        {"kind": "center", "included_angle": 60, "large_diameter": 0.75},
        "sine-plate",
        60.0,
    ),
    "0°30′ bar": (
        {"kind": "angled-face", "face_angle": 0.5, "rise": 0.04},
        "stacks-under-both-rolls",
        0.5,
    ),
    "72° on a 60° plate": (
        {"kind": "angled-face", "face_angle": 72, "rise": 0.5},
        "quarter-turn",
        72.0,
    ),
    "144° on a 60° plate": (
        {"kind": "center", "included_angle": 144, "large_diameter": 0.75},
        "quarter-turn",
        144.0,
    ),
    "Morse 3 plug": ({"kind": "taper-plug", "designation": "morse-3"}, "", MORSE_3),
    "15° face": ({"kind": "angled-face", "face_angle": 15, "rise": 0.2}, "sine-plate", 15.0),
    "2° on both stacks": (CONE_2, "stacks-under-both-rolls", 2.0),
}


@pytest.mark.outside("jobs.plan", source="Monte Carlo: rolls, plate, work and wheel in 3-D")
@pytest.mark.parametrize("tolerance", [10.0, 40.0, 120.0])
@pytest.mark.parametrize("name", CASES)
def test_pieces_made_by_dice_are_as_forecast(call: Call, name: str, tolerance: float) -> None:
    """Mean, spread, coverage and share kept of 20,000 parts are those of each way's forecast."""
    feature, expected_way, wanted = CASES[name]
    ways = call("jobs.plan", **request_for(feature, tolerance))["result"]["ways"]
    assert not expected_way or expected_way in {way["way"] for way in ways}
    for place, way in enumerate(ways):
        stacks = {stack["role"]: stack for stack in way["stacks"]}
        made = Made(
            np.random.default_rng([place, int(tolerance), len(name)]),
            ERRORS,
            5.0,
            stacks["high"],
            stacks.get("low"),
        )
        quarter = way["way"] == "quarter-turn"
        errors = angle_errors(made, feature["kind"], wanted, quarter=quarter)
        assert_covered(way["angles"][0], errors)
        assert_no_block_twice(way)


COMPOUND: Json = {
    "kind": "compound-face",
    "orientation": {"kind": "projected-angles", "x_angle": 12.0, "y_angle": 20.0},
    "rise": 0.4,
}
#: Quarter turns of the work in plan, by what the plan says of it.
TURNS = (("right to the back", 1), ("half round", 2), ("right to the front", 3), ("as drawn", 0))


def compound_request(hand: str, tolerance: float) -> Json:
    """The face on a compound plate with everything stated."""
    request = request_for({**COMPOUND, "hand": hand}, tolerance)
    del request["equipment"]["sine_plates"]
    request["equipment"]["compound_plates"] = [COMPOUND_PLATE]
    return request


def view_errors(way: Json, rng: np.random.Generator, sign: float) -> list[Values]:
    """Errors of the angles that the part shows in both views, in arc-seconds."""
    base_set, upper_set = way["settings"]
    stacks = {stack["role"]: stack for stack in way["stacks"]}
    wheel_slope = lot(rng, WHEEL_FACE) / ARCSEC
    hinges = []
    for role, length in (("base", 5.0), ("upper", 4.0)):
        hinge = Made(rng, ERRORS, length, stacks[role]).plates()
        pitch = lot(rng, ERRORS["axis_pitch_error_limit_arcsec"]) / ARCSEC
        yaw = lot(rng, ERRORS["axis_yaw_error_limit_arcsec"]) / ARCSEC
        hinges.append((hinge + pitch, yaw))
    (base, base_yaw), (upper, upper_yaw) = hinges
    base = base * (-1.0 if "the front roll" in base_set["action"] else 1.0)
    upper = upper * (-1.0 if "the left roll" in upper_set["action"] else 1.0)
    turns = next(turns for words, turns in TURNS if words in base_set["action"])
    part = (
        turned_about("x", base)
        @ turned_about("z", base_yaw)
        @ turned_about("y", -upper)
        @ turned_about("z", upper_yaw)
        @ turned_about("z", math.radians(90.0 * turns))
    )
    # The wheel's face slopes along its own width, which is across the travel.
    wheel = turned_about("x", wheel_slope) @ np.array([0.0, 0.0, 1.0])
    normal = np.einsum("nji,nj->ni", part, wheel)
    shown = [np.arctan2(-normal[:, place], normal[:, 2]) for place in (0, 1)]
    wanted = (sign * math.radians(12.0), math.radians(20.0))
    return [(found - angle) * ARCSEC for found, angle in zip(shown, wanted, strict=True)]


@pytest.mark.outside("jobs.plan", source="Monte Carlo: both hinges, work and wheel in 3-D")
@pytest.mark.parametrize("tolerance", [30.0, 300.0, 900.0])
@pytest.mark.parametrize(("hand", "sign"), [("as-drawn", 1.0), ("opposite", -1.0)])
def test_compound_faces_made_by_dice_are_as_forecast(
    call: Call, hand: str, sign: float, tolerance: float
) -> None:
    """Both hands of a face in two views: each view's errors of 20,000 parts are as forecast."""
    ways = call("jobs.plan", **compound_request(hand, tolerance))["result"]["ways"]
    assert ways
    for place, way in enumerate(ways):
        rng = np.random.default_rng([place, int(tolerance), len(hand)])
        shown = view_errors(way, rng, sign)
        for row, errors in zip(way["angles"], shown, strict=True):
            assert_covered(row, errors)
        assert_no_block_twice(way)


@pytest.mark.outside("jobs.plan", source="Trigonometry: the sine of the stacks' difference")
@pytest.mark.parametrize("name", CASES)
def test_the_stacks_of_each_setting_give_its_angle(call: Call, name: str) -> None:
    """High less low over the center distance is the sine of what each way is set to, and off by."""
    feature, _, wanted = CASES[name]
    half = wanted / (1.0 if feature["kind"] == "angled-face" else 2.0)
    for way in call("jobs.plan", **request_for(feature, 120.0))["result"]["ways"]:
        (setting,) = way["settings"]
        asked = 90.0 - half if way["way"] == "quarter-turn" else half
        assert setting["angle"]["degrees"] == pytest.approx(asked, abs=1e-9)
        stands = {s["role"]: math.fsum(s["blocks"]) for s in way["stacks"]}
        rise = stands["high"] - stands.get("low", 0.0)
        off = (math.degrees(math.asin(rise / 5.0)) - asked) * 3600.0
        assert setting["deviation_arcsec"] == pytest.approx(off, abs=1e-4)
        if "check" in stands:
            assert stands["check"] == pytest.approx(stands["high"], abs=1e-9)


@pytest.mark.outside("jobs.plan", source="Monte Carlo: rolls laid against a cone, seen in section")
@pytest.mark.parametrize("name", ["60° center", "Morse 3 plug", "2° on both stacks"])
def test_cones_measured_by_dice_are_as_the_inspection_says(call: Call, name: str) -> None:
    """Cones made by dice and measured by dice over rolls are told as surely as the plan says.

    What is read less what was made has the uncertainty of the means; what reads within the limits
    of acceptance is within the tolerance with 95 % at least.
    """
    feature, _, wanted = CASES[name]
    tolerance = 120.0
    request = request_for(feature, tolerance)
    result = call("jobs.plan", **request)["result"]
    way, checks = result["ways"][0], result["checks"]
    rolls = next(row for row in checks["inspections"] if row["means"] == "over-rolls")
    stated = request["equipment"]["measuring"]["rolls"]
    stacks = {stack["role"]: stack for stack in way["stacks"]}
    rng = np.random.default_rng(len(name))
    made = Made(rng, ERRORS, 5.0, stacks["high"], stacks.get("low"))
    errors = angle_errors(made, "cone", wanted, quarter=way["way"] == "quarter-turn")
    half = (math.radians(wanted) + errors / ARCSEC) / 2.0
    settings = {setting["name"]: setting["set_to"] for setting in rolls["settings"]}
    rise = settings["stack_rise"] + lot(rng, stated["stack_rise_error_limit"])
    # A roll touches table and cone: its center is where its distance to the slant is its radius.
    foot = feature.get("large_diameter", 0.938) / 2.0
    radius = settings["roll_diameter"] / 2.0
    leaning = -1.0 if "on its large end" in rolls["how"] else 1.0

    def over(height: Values | float, half: Values | float) -> Values:
        """Measure over two rolls that stand so high beside the cone."""
        center = foot + leaning * (height + radius) * np.tan(half) + radius / np.cos(half)
        return np.asarray(2.0 * (center + radius))

    readings = {reading["name"]: reading for reading in rolls["readings"]}
    read, nominal = readings["measure_difference"], math.radians(wanted) / 2.0
    expected = over(settings["stack_rise"], nominal) - over(0.0, nominal)
    assert read["expected_reading"] == pytest.approx(float(expected), abs=1e-12)
    readings_off = lot(rng, stated["measure_error_limit"]) - lot(rng, stated["measure_error_limit"])
    difference = over(rise, half) - over(0.0, half) + readings_off
    found = 2.0 * np.arctan2(leaning * difference / 2.0, settings["stack_rise"]) - 2.0 * half
    proof = rolls["angle_proof"]["angle_error_arcsec"]
    assert np.std(found) * ARCSEC == pytest.approx(proof["standard_uncertainty"], rel=0.03)
    told = np.abs(found * ARCSEC) <= proof["expanded_uncertainty"]
    assert agrees(float(np.mean(told)), proof["coverage_probability"])
    low, high = read["smallest_accepted_reading"], read["largest_accepted_reading"]
    if low is None:
        assert proof["expanded_uncertainty"] > tolerance * 0.9
        return
    accepted = (difference >= low) & (difference <= high)
    wrong = np.abs(errors) > tolerance
    assert float(np.mean(wrong[accepted])) <= 0.05


def test_a_refusal_names_nothing_that_does_not_work(call: Call) -> None:
    """Where a plate reaches neither seat's angle, none of them is named in place of the other."""
    request = request_for({"kind": "angled-face", "face_angle": 8.3, "rise": 0.2}, 60.0)
    request["equipment"]["sine_plates"][0]["largest_angle"] = 5
    request["equipment"]["sine_plates"].append(
        {"name": "other", "center_distance": 5, "largest_angle": 8}
    )
    with pytest.raises(Unreachable, match="asked of it") as refused:
        call("jobs.plan", **request)
    assert "the work asks for" not in str(refused.value)
