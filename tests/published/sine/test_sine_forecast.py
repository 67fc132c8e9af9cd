"""What a set-up is good for: coverage, decision rules, what counts as stated, its rounding."""

import math
from typing import Any

import mpmath
import numpy as np
import pytest

from halfangle_service.errors import Disagreement, Impossible
from halfangle_service.trade.sine.angle_model import SetUp, realised_angle, stack_shift
from support import Call

ARCSEC = 206264.80624709636
PLATE: dict[str, Any] = {"units": "in", "center_distance": 5, "angle": 30}
#: Every error that can act on a steel plate with steel blocks.
ACTING: dict[str, Any] = {
    "center_distance_error_limit": 0.0001,
    "roll_difference": 0.00002,
    "roll_parallelism": 0.00002,
    "face_parallelism": 0.00005,
    "face_flatness": 0.00002,
    "stack_error_limit": 0.00001,
    "resolution": 0.0001,
    "table_flatness": 0.00002,
    "particle": 0,
    "temperature_celsius": 20,
    "temperature_difference_celsius": 0.2,
    "axis_yaw_error_limit_arcsec": 300,
    "axis_pitch_error_limit_arcsec": 2,
    "wheel_breakdown": 0,
}


@pytest.mark.outside(
    "sine.uncertainty",
    source="By hand: the center of a rectangle that holds 95 % is 0.95 of it; its limit is "
    "0.00005 in × 206264.8″ / (5 in × cos 30°).",
)
def test_one_rectangle_never_reaches_past_its_limit(call: Call) -> None:
    """The expanded uncertainty of one rectangular term is 0.95 of its worst case, not 1.15."""
    error = call("sine.uncertainty", stack_error_limit=0.00005, **PLATE)["result"][
        "angle_error_arcsec"
    ]
    limit = 0.00005 * ARCSEC / (5 * math.cos(math.radians(30)))
    assert error["worst_case"] == pytest.approx(limit, rel=1e-12)
    assert error["expanded_uncertainty"] == pytest.approx(0.95 * limit, rel=1e-4)
    assert error["coverage_probability"] == 0.95


def test_a_stated_coverage_factor_is_taken(call: Call) -> None:
    """A stated k multiplies the standard uncertainty; it changes no forecast."""
    request = {**PLATE, **ACTING, "tolerance_arcsec": 8}
    plain = call("sine.uncertainty", **request)["result"]
    stated = call("sine.uncertainty", coverage_factor=3, **request)["result"]
    error = stated["angle_error_arcsec"]
    assert error["coverage_factor"] == 3
    assert error["expanded_uncertainty"] == pytest.approx(3 * error["standard_uncertainty"])
    assert stated["forecast"] == plain["forecast"]
    assert stated["smallest_tolerance_arcsec"] == plain["smallest_tolerance_arcsec"]


@pytest.mark.outside(
    "sine.uncertainty", source="numpy: 400,000 set-ups drawn, sin θ = (H + d/2)/L written out."
)
def test_the_smallest_tolerance_holds_in_95_percent_of_trials(call: Call) -> None:
    """Of set-ups drawn at random 95 % keep the smallest tolerance by the edition of 2017."""
    wide = ACTING | {"axis_yaw_error_limit_arcsec": 3600, "temperature_error_limit_celsius": 1}
    smallest = call("sine.uncertainty", **PLATE, **wide)["result"]["smallest_tolerance_arcsec"]
    chance = np.random.default_rng(7)
    drawn = {
        "center_distance_error_limit": 0.0001,
        "roll_difference": 0.00002,
        "roll_parallelism": 0.00002,
        "face_parallelism": 0.00005,
        "face_flatness": 0.00002,
        "stack_error_limit": 0.00001,
        "resolution": 0.0001,
        "table_flatness": 0.00002,
        "temperature_difference_celsius": 0.2,
        "axis_yaw_error_limit_arcsec": 3600.0,
        "axis_pitch_error_limit_arcsec": 2.0,
    }
    off = {name: chance.uniform(-limit, limit, 400_000) for name, limit in drawn.items()}
    height = 2.5 + off["stack_error_limit"] + off["resolution"] / 2
    height *= 1 + 11.5e-6 * off["temperature_difference_celsius"]
    height += off["table_flatness"] + (off["roll_parallelism"] + off["roll_difference"]) / 2
    angle = np.arcsin(height / (5 + off["center_distance_error_limit"]))
    angle += (off["face_parallelism"] + off["face_flatness"]) / 5
    angle += off["axis_pitch_error_limit_arcsec"] / ARCSEC
    surface = np.arcsin(np.sin(angle) * np.cos(off["axis_yaw_error_limit_arcsec"] / ARCSEC))
    errors = (surface - math.radians(30)) * ARCSEC
    assert float(np.mean(np.abs(errors) <= smallest)) == pytest.approx(0.95, abs=0.002)


@pytest.mark.outside(
    "sine.uncertainty",
    source="ISO 14253-1:2017 (from memory): guard band 1.65 u to one side of a normal result, "
    "1.96 u to both; 1998 and 2013: 2 u.",
)
@pytest.mark.parametrize(
    ("rule", "height", "guard"),
    [
        ("iso-14253-1-2017", 2.5, 1.95996),
        ("iso-14253-1-2017", 2.5004, 1.64485),
        ("iso-14253-1-2013", 2.5, 2.0),
        ("iso-14253-1-2013", 2.5004, 2.0),
    ],
)
def test_guard_bands_by_edition(call: Call, rule: str, height: float, guard: float) -> None:
    """The smallest tolerance is the expected error and the guard band of the edition asked for."""
    result = call(
        "sine.uncertainty", stack_error_limit=0.00002, normal_terms=["stack_error_limit"],
        height=height, decision_rule=rule, **PLATE,
    )["result"]  # fmt: skip
    error = result["angle_error_arcsec"]
    expected = abs(error["value"]) + guard * error["standard_uncertainty"]
    assert result["smallest_tolerance_arcsec"] == pytest.approx(expected, rel=2e-4)


@pytest.mark.outside("sine.uncertainty", source="mpmath 1.3: asin to 30 digits.")
def test_the_stack_as_built_is_a_known_shift(call: Call) -> None:
    """1.9134 in for 22°30' on 5 in sets the plate 0.77″ flat: its value, with nothing to hold."""
    request = PLATE | {"angle": "22°30'"}
    result = call("sine.uncertainty", height=1.9134, **request)["result"]
    exact = mpmath.asin(mpmath.mpf("1.9134") / 5) - mpmath.pi / 8
    assert result["deviation_arcsec"] == pytest.approx(float(exact) * ARCSEC, rel=1e-9)
    error = result["angle_error_arcsec"]
    assert error["value"] == pytest.approx(result["deviation_arcsec"])
    assert "resolution" not in error["not_stated"]
    held = call("sine.requirements", height=1.9134, tolerance_arcsec=10, **request)["result"]
    assert "resolution" not in [row["term"] for row in held["requirements"]]


@pytest.mark.outside(
    "sine.uncertainty", source="By hand: half of 0.0001 in × 206264.8″ / (5 in × cos 22.5°)."
)
def test_rounding_of_an_unknown_stack(call: Call) -> None:
    """A stack built to 0.0001 in may be 2.2″ off at 22°30' on 5 in; left out it is not stated."""
    request = PLATE | {"angle": "22°30'"}
    (term,) = call("sine.uncertainty", resolution=0.0001, **request)["result"][
        "angle_error_arcsec"
    ]["contributions"]
    assert term["name"] == "resolution"
    by_hand = 0.00005 * ARCSEC / (5 * math.cos(math.radians(22.5)))
    assert term["worst_case"] == pytest.approx(by_hand, rel=1e-12)
    assert round(term["worst_case"], 1) == 2.2
    nothing = call("sine.uncertainty", **request)["result"]["angle_error_arcsec"]
    assert "resolution" in nothing["not_stated"]


def test_a_stack_of_another_angle_is_called_out(call: Call) -> None:
    """A stack that sets the plate minutes away is more than rounding, and said to be."""
    answer = call("sine.uncertainty", height=2.6, **PLATE)
    assert "stack-far-off" in [a["code"] for a in answer["advisories"]]
    with pytest.raises(Impossible, match="upright or beyond"):
        call("sine.uncertainty", height=5.2, **PLATE)


@pytest.mark.outside(
    "sine.requirements", source="By hand: equal coefficients leave (α − α) ΔT = 0 whatever ΔT is."
)
def test_what_cannot_act_need_not_be_stated(call: Call) -> None:
    """Of equal materials the temperature's error cannot act, so a plan may hold without it."""
    request = {**PLATE, **ACTING, "tolerance_arcsec": 20}
    for name in ("sine.uncertainty", "sine.requirements"):
        assert call(name, **request)["result"]["forecast"] == "holds"
        carbide = call(name, block_material="tungsten-carbide", **request)["result"]
        assert carbide["forecast"] == "may-not-hold"
    error = call("sine.uncertainty", block_material="tungsten-carbide", **request)["result"]
    assert error["angle_error_arcsec"]["not_stated"] == ["temperature_error_limit_celsius"]


def test_a_wheel_of_unknown_contact_is_not_harmless(call: Call) -> None:
    """The wheel's breakdown left out is named, though its length of slant is not known either."""
    without = {name: value for name, value in ACTING.items() if name != "wheel_breakdown"}
    result = call("sine.uncertainty", tolerance_arcsec=30, **PLATE, **without)["result"]
    assert result["angle_error_arcsec"]["not_stated"] == ["wheel_breakdown"]
    assert result["forecast"] == "may-not-hold"


def test_equal_shares_add_up_to_the_tolerance(call: Call) -> None:
    """With every term at hand at its equal share the tolerance just holds."""
    terms = (
        "center_distance_error_limit",
        "stack_error_limit",
        "resolution",
        "axis_pitch_error_limit_arcsec",
    )
    at_hand = dict.fromkeys(terms, 1e-5)
    rows = call("sine.requirements", tolerance_arcsec=15, **PLATE, **at_hand)["result"][
        "requirements"
    ]
    share = {row["term"]: row["equal_share"] for row in rows}
    shared = {term: share[term] for term in terms}
    result = call("sine.uncertainty", **PLATE, **shared)["result"]
    assert result["smallest_tolerance_arcsec"] == pytest.approx(15, rel=1e-6)
    parts = result["angle_error_arcsec"]["contributions"]
    assert [part["share_percent"] for part in parts] == pytest.approx([25.0] * 4)


@pytest.mark.outside(
    "sine.uncertainty",
    source="IS 5359-1969, 100 mm bar, as a textbook tabulates it (centers ±0.003, face 0.001, "
    "rolls 0.002 mm); an army ordnance course: angles accurate within 1 minute with gage blocks.",
)
def test_a_bar_of_the_indian_standard_is_good_to_a_minute(call: Call) -> None:
    """A 100 mm bar at its standard's limits keeps a minute at 45°, with much to spare."""
    result = call(
        "sine.uncertainty", units="mm", center_distance=100, angle=45, tolerance_arcsec=60,
        center_distance_error_limit=0.003, roll_difference=0.002, roll_parallelism=0.001,
        face_parallelism=0.001, face_flatness=0.001, stack_error_limit=0.0005, resolution=0.001,
        table_flatness=0.001, particle=0, temperature_difference_celsius=0, temperature_celsius=20,
        axis_yaw_error_limit_arcsec=0, axis_pitch_error_limit_arcsec=0, wheel_breakdown=0,
    )["result"]  # fmt: skip
    assert result["forecast"] == "holds"
    # 0.003 mm of 100 mm at 45° is 0.003 / 100 rad, by hand.
    parts = {p["name"]: p for p in result["angle_error_arcsec"]["contributions"]}
    assert parts["center_distance_error_limit"]["worst_case"] == pytest.approx(
        3e-5 * ARCSEC, rel=1e-12
    )
    assert 10 < result["angle_error_arcsec"]["worst_case"] < 60


def test_a_tolerance_far_missed_does_not_hold(call: Call) -> None:
    """Where the expected error is past the tolerance by more than its uncertainty, it is missed."""
    result = call(
        "sine.uncertainty", units="in", center_distance=5, angle=60, tolerance_arcsec=1,
        temperature_celsius=30, block_material="ceramic",
    )["result"]  # fmt: skip
    assert result["forecast"] == "does-not-hold"
    assert call("sine.uncertainty", **PLATE, **ACTING)["result"]["forecast"] is None


def test_an_offset_is_warmed_as_the_plate_is() -> None:
    """A step under the low roll expands with the plate: of one material nothing turns the plate."""
    steel = SetUp(
        5.0, math.radians(20), temperature_offset=10.0, block_expansion=11.5e-6,
        plate_expansion=11.5e-6, stack_offset=1.0, stack_deviation=0.001,
    )  # fmt: skip
    cold = math.asin((5 * math.sin(math.radians(20)) + 0.001) / 5)
    assert float(realised_angle(steel, {})) == pytest.approx(cold, abs=1e-15)
    assert stack_shift(steel) == pytest.approx(cold - math.radians(20), abs=1e-15)


@pytest.mark.parametrize(
    ("change", "says"),
    [
        ({"height": 2.5, "resolution": 0.0001}, "were sent together"),
        ({"triangular_terms": ["resolution"]}, "rounding is rectangular"),
        ({"high_roll_diameter": 1.0}, "One roll's diameter alone"),
        ({"center_distance": 127}, "No sine bar or plate has a center distance of 127 in"),
    ],
)
def test_set_ups_that_contradict_themselves(call: Call, change: dict[str, Any], says: str) -> None:
    """A stack both known and rounded, or a plate that cannot be, is refused with the reason."""
    with pytest.raises(Disagreement, match=says):
        call("sine.uncertainty", **(PLATE | change))
