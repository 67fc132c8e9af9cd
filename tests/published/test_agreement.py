"""One question, one answer: a set-up asked of several operations, and of its geometry by hand.

Set-ups are drawn from a seed: plates, blocks and cones in inches and millimetres, materials alike
and not, some of the errors stated and some not. Where an operation does not ask for an error that
another one does, that is stated there as none.
"""

import math
import random
from functools import partial
from typing import Any, NamedTuple

import pytest

from halfangle_service.errors import Refusal
from sine_support import ARCSEC
from support import Call

#: Errors of the set-up that sine.uncertainty, sine.requirements and jobs.center all ask for, with
#: the most that each is drawn as, in inches, kelvins and arc-seconds.
SHARED = {
    "center_distance_error_limit": 0.0002,
    "roll_difference": 0.00005,
    "roll_parallelism": 0.00005,
    "face_parallelism": 0.0001,
    "face_flatness": 0.00005,
    "table_flatness": 0.00005,
    "particle": 0.00003,
    "temperature_error_limit_celsius": 1.5,
    "temperature_difference_celsius": 0.5,
    "axis_yaw_error_limit_arcsec": 3600,
    "axis_pitch_error_limit_arcsec": 10,
}
#: What each error is called where it is not called alike, or is stated as another quantity.
SAME = {"block_grade_limit": "stack_error_limit", "grade": "stack_error_limit"}
SAME |= {"wheel_face_error_limit_arcsec": "wheel_breakdown"}
#: Blocks that set some angle on a plate of this center distance, each by itself.
PLATES: dict[str, dict[float, tuple[float, ...]]] = {
    "in": {5.0: (0.5, 1.0, 2.0, 2.5, 3.0, 4.0), 10.0: (1.0, 2.0, 3.0, 5.0, 8.0)},
    "mm": {100.0: (10.0, 25.0, 50.0, 75.0), 200.0: (20.0, 50.0, 100.0, 150.0)},
}
MATERIALS = ("steel", "steel", "tungsten-carbide", "chromium-carbide", "ceramic")
SET_UPS = 20
#: Nearly a point: `wheels.choose` asks for a cone that has two ends.
SMALL_END = 1e-6
#: What a forecast is reached by is worked out to so much of a probability.
COVERED = {"expanded_uncertainty", "coverage_factor"}


class SetUp(NamedTuple):
    """A plate on one block, with the cone that it is set for, and what is stated of its errors."""

    units: str
    center_distance: float
    block: float
    half_angle: float
    materials: dict[str, str]
    errors: dict[str, float]
    breakdown: float | None
    large_diameter: float
    tolerance: float

    @property
    def slant(self) -> float:
        """Length of the cone's surface, from the small end."""
        return (self.large_diameter - SMALL_END) / 2 / math.sin(math.radians(self.half_angle))

    @property
    def millimetres(self) -> float:
        """What an inch is in its unit."""
        return 25.4 if self.units == "mm" else 1.0


def set_up_of(seed: int, *, exact: bool = False) -> SetUp:
    """A set-up drawn from a seed; `exact` where the block makes just its angle."""
    chance = random.Random(f"agreement {seed}")  # noqa: S311  reproducible, not secret
    units = ("in", "mm")[seed % 2]
    inch = 25.4 if units == "mm" else 1.0
    center_distance = chance.choice(list(PLATES[units]))
    block = chance.choice(PLATES[units][center_distance])
    half_angle = math.degrees(math.asin(block / center_distance))
    half_angle += 0 if exact else chance.choice((0, chance.uniform(-5, 5) / 3600))
    errors = {
        name: chance.choice((0.0, chance.uniform(0.1, 1) * most))
        * (inch if name.split("_")[-1] not in {"celsius", "arcsec"} else 1)
        for name, most in SHARED.items()
        if chance.random() < (1.0 if seed % 4 < 2 else 0.7)
    }
    if chance.random() < 0.7:
        errors["temperature_celsius"] = chance.choice((20.0, chance.uniform(15, 28)))
    breakdown = chance.choice((None, 0.0, 0.00002 * inch))
    materials = {f"{part}_material": chance.choice(MATERIALS) for part in ("block", "plate")}
    tolerance = chance.choice((30.0, 60.0, 120.0))
    return SetUp(
        units, center_distance, block, half_angle, materials, errors, breakdown, 0.75 * inch,
        tolerance,
    )  # fmt: skip


def grade_limit(call: Call, made: SetUp) -> float:
    """Limit of the block by its grade, as the budget of a stack of it says."""
    asked = {"units": made.units, "blocks": [made.block], "grade": "iso-1"}
    [row] = [
        row
        for row in call("blocks.budget", **asked)["result"]["height"]["contributions"]
        if row["name"] == "block_grade_limit"
    ]
    return float(row["input_value"])


def as_sine(call: Call, made: SetUp) -> dict[str, Any]:
    """The set-up as sine.uncertainty and sine.requirements ask for it."""
    wheel = {} if made.breakdown is None else {"wheel_breakdown": made.breakdown}
    return {
        "units": made.units,
        "center_distance": made.center_distance,
        "angle": made.half_angle,
        "height": made.block,
        "stack_error_limit": grade_limit(call, made),
        "tolerance_on": "included-angle",
        "tolerance_arcsec": made.tolerance,
        "wheel_contact_length": made.slant,
        **wheel,
        **made.materials,
        **made.errors,
    }


def as_job(made: SetUp) -> dict[str, Any]:
    """The set-up as jobs.center asks for it."""
    wheel = (
        {}
        if made.breakdown is None
        else {"wheel_face_error_limit_arcsec": made.breakdown / made.slant * ARCSEC}
    )
    return {
        "job": "HL-0412",
        "units": made.units,
        "included_angle": 2 * made.half_angle,
        "included_angle_tolerance_arcsec": made.tolerance,
        "large_diameter": made.large_diameter,
        "shank": {"kind": "taper", "designation": "morse-2"},
        "limit_tir": 0.0003 * made.millimetres,
        "center_distance": made.center_distance,
        "sizes": [made.block],
        "grade": "iso-1",
        "angle_errors": {**made.errors, **made.materials, **wheel},
    }


def by_name(estimate: dict[str, Any]) -> dict[tuple[str, str | None], dict[str, float]]:
    """What each contribution adds, by its name and which one it is of, those of none left out."""
    rows = {}
    for row in estimate["contributions"]:
        name = SAME.get(row["name"], row["name"])
        of = None if name != row["name"] else row["of"]
        figures = ("standard_uncertainty", "worst_case", "share_percent")
        if row["standard_uncertainty"]:
            rows[name, of] = {figure: row[figure] for figure in figures}
    return rows


def assert_agree(one: dict[str, Any], other: dict[str, Any]) -> None:
    """Two estimates of an angle's error say the same, in every figure and every name."""
    assert {SAME.get(name, name) for name in one["not_stated"]} == set(other["not_stated"])
    for name in ("value", "standard_uncertainty", "worst_case", *sorted(COVERED)):
        if other[name] is None:
            assert one[name] is None, name
            continue
        rel = 1e-5 if name in COVERED else 1e-9
        assert one[name] == pytest.approx(other[name], rel=rel, abs=1e-7), name
    mine, theirs = by_name(one), by_name(other)
    assert mine.keys() == theirs.keys()
    for part, figures in mine.items():
        assert figures == pytest.approx(theirs[part], rel=1e-9), part


@pytest.mark.parametrize("seed", range(SET_UPS))
def test_a_plan_and_its_set_up_have_one_answer(call: Call, seed: int) -> None:
    """A cone's error, what was not stated of it and its forecast are one, whichever is asked."""
    made = set_up_of(seed)
    sine = as_sine(call, made)
    alone = call("sine.uncertainty", **sine)["result"]
    held = call("sine.requirements", **sine)["result"]
    plan = call("jobs.center", **as_job(made))["result"]["angle_budget"]
    error = alone["included_angle_error_arcsec"]
    assert_agree(plan["included_angle_error_arcsec"], error)
    assert plan["forecast"] == alone["forecast"] == held["forecast"]
    assert held["not_stated"] == error["not_stated"] == alone["angle_error_arcsec"]["not_stated"]
    assert held["smallest_tolerance_arcsec"] == alone["smallest_tolerance_arcsec"]
    if error["not_stated"]:
        assert plan["forecast"] != "holds"


@pytest.mark.parametrize("seed", range(SET_UPS))
def test_a_way_to_grind_and_its_set_up_have_one_answer(call: Call, seed: int) -> None:
    """The sine plate among four ways errs as the same plate does by itself at 20 °C, all else none.

    Of the plate itself a way asks for one figure, which is named where it is not stated.
    """
    made = set_up_of(seed, exact=True)
    own = ("axis_yaw_error_limit_arcsec", "axis_pitch_error_limit_arcsec")
    stated = {name: made.errors[name] for name in own if name in made.errors}
    none = dict.fromkeys(SHARED.keys() - set(own), 0) | {"temperature_celsius": 20}
    sine = {
        key: value
        for key, value in as_sine(call, made).items()
        if key not in SHARED and key not in made.materials
    }
    alone = call("sine.uncertainty", **{**sine, **none, **stated})["result"]
    wheel = {} if made.breakdown is None else {"wheel_breakdown": made.breakdown}
    plate = {
        "center_distance": made.center_distance,
        "stack_error_limit": sine["stack_error_limit"],
        "plate_error_limit_arcsec": 0,
        **wheel,
        **stated,
    }
    asked = {
        "units": made.units,
        "included_angle": 2 * made.half_angle,
        "large_diameter": made.large_diameter,
        "small_diameter": SMALL_END,
        "wheel_diameter": 7 * made.millimetres,
        "included_angle_tolerance_arcsec": made.tolerance,
    }
    [way] = call("wheels.choose", **asked, ways={"sine_plate": plate})["result"]["ways"]
    assert_agree(way["included_angle_error_arcsec"], alone["included_angle_error_arcsec"])
    assert way["forecast"] == alone["forecast"]
    del plate["plate_error_limit_arcsec"]
    [way] = call("wheels.choose", **asked, ways={"sine_plate": plate})["result"]["ways"]
    assert "plate_error_limit_arcsec" in way["included_angle_error_arcsec"]["not_stated"]
    assert way["forecast"] != "holds"


@pytest.mark.parametrize("seed", range(SET_UPS))
def test_a_stack_and_its_plate_grow_alike(call: Call, seed: int) -> None:
    """What warmth and the block's grade do to a stack's height turns the plate by 1 / (L cos θ)."""
    made = set_up_of(seed, exact=True)
    warmth = {name: value for name, value in made.errors.items() if "celsius" in name}
    stack = call(
        "blocks.budget",
        units=made.units,
        blocks=[made.block],
        grade="iso-1",
        film_error_limit_nanometres=0,
        **warmth,
        **made.materials,
    )["result"]
    result = call("sine.uncertainty", **as_sine(call, made))["result"]
    turns = ARCSEC / (made.center_distance * math.cos(math.radians(made.half_angle)))
    shift = result["thermal_shift_arcsec"]
    if shift is None:
        assert stack["expansion"] is None
    else:
        assert stack["expansion"] * turns == pytest.approx(shift, rel=1e-9, abs=1e-12)
    error, height = result["angle_error_arcsec"], stack["height"]
    of_plate, of_stack = by_name(error), by_name(height)
    acting = {key for key in of_plate if key in of_stack or "expansion" in key[0]}
    assert of_stack.keys() == acting
    for key, figures in of_stack.items():
        for figure in ("standard_uncertainty", "worst_case"):
            turned = figures[figure] * turns
            assert turned == pytest.approx(of_plate[key][figure], rel=1e-9), key
    thermal = [name for name in error["not_stated"] if "celsius" in name]
    assert sorted(height["not_stated"]) == sorted(thermal)


@pytest.mark.parametrize("seed", range(SET_UPS))
def test_what_is_named_as_not_stated_would_count(call: Call, seed: int) -> None:
    """What is left out is named just where stating it would change the answer."""
    made = set_up_of(seed)
    sine = as_sine(call, made)
    before = call("sine.uncertainty", **sine)["result"]["angle_error_arcsec"]
    left_out = (SHARED.keys() | {"temperature_celsius"}) - made.errors.keys()
    for name in left_out:
        value = 27.0 if name == "temperature_celsius" else 20.0 if "arcsec" in name else 1e-4
        after = call("sine.uncertainty", **sine, **{name: value})["result"]["angle_error_arcsec"]
        changed = any(
            (after[figure] or 0) != pytest.approx(before[figure] or 0, rel=1e-12, abs=1e-12)
            for figure in ("value", "worst_case")
        )
        assert changed == (name in before["not_stated"]), name


# By hand ----------------------------------------------------------------------------------------
CARBIDE = {"block_material": "tungsten-carbide", "plate_material": "steel"}


@pytest.mark.outside("sine.uncertainty", source="asin of the lengths grown by hand")
@pytest.mark.outside("jobs.center", source="asin of the lengths grown by hand")
def test_a_temperature_that_was_not_stated_is_not_20_degrees(call: Call) -> None:
    """Carbide on steel at an unknown temperature: the shift is not said, and nothing holds.

    By hand: 2.5 in of carbide (4.5) on 5 in of steel (11.5e-6 / K) is 0.83″ flat for each kelvin,
    so that a tolerance of ±2″ that holds at 20 °C is missed at 25 °C.
    """
    errors = dict.fromkeys(SHARED, 0.0)
    asked = {
        "units": "in", "center_distance": 5, "angle": 30, "height": 2.5, "stack_error_limit": 1e-6,
        "wheel_breakdown": 0, "tolerance_arcsec": 2, **errors, **CARBIDE,
    }  # fmt: skip
    uncertain = partial(call, "sine.uncertainty", **asked)
    for celsius, forecast in ((20, "holds"), (25, "does-not-hold"), (None, "may-not-hold")):
        stated = {} if celsius is None else {"temperature_celsius": celsius}
        result = uncertain(**stated)["result"]
        assert result["forecast"] == forecast
        if celsius is None:
            assert result["thermal_shift_arcsec"] is None
            assert result["angle_error_arcsec"]["not_stated"] == ["temperature_celsius"]
            continue
        warm = celsius - 20
        grown = 2.5 * (1 + 4.5e-6 * warm) / (5 * (1 + 11.5e-6 * warm))
        by_hand = (math.degrees(math.asin(grown)) - 30) * 3600
        assert result["thermal_shift_arcsec"] == pytest.approx(by_hand, rel=1e-3, abs=1e-6)


@pytest.mark.outside("sine.uncertainty", source="asin(sin θ cos ψ) by its series, by hand")
@pytest.mark.outside("jobs.center", source="asin(sin θ cos ψ) by its series, by hand")
@pytest.mark.outside("wheels.choose", source="asin(sin θ cos ψ) by its series, by hand")
def test_a_yaw_turns_alike_wherever_it_is_asked(call: Call) -> None:
    """A yaw of 1° at 30° takes 36.274″ off the included angle, a third of it on average.

    By series: with t = tan θ, θ − α is t ψ²/2 − t (1/24 + t²/8) ψ⁴ and less than ψ⁶ more.
    """
    theta, psi = math.radians(30), math.radians(1)
    tangent = math.tan(theta)
    turned = tangent * psi**2 / 2 - tangent * (1 / 24 + tangent**2 / 8) * psi**4
    yaw = {"axis_yaw_error_limit_arcsec": 3600}
    plate = {"units": "in", "center_distance": 5, "angle": 30}
    cone = {
        "units": "in", "included_angle": 60, "large_diameter": 0.75, "small_diameter": 0.05,
        "wheel_diameter": 7,
    }  # fmt: skip
    alone = call("sine.uncertainty", **plate, **yaw)["result"]["included_angle_error_arcsec"]
    [way] = call(
        "wheels.choose",
        **cone,
        included_angle_tolerance_arcsec=60,
        ways={"sine_plate": {"center_distance": 5, **yaw}},
    )["result"]["ways"]
    job = as_job(set_up_of(0)) | {"units": "in", "center_distance": 5, "included_angle": 60}
    job |= {"sizes": [2.5], "grade": None, "large_diameter": 0.75, "limit_tir": 0.0003}
    job |= {"included_angle_tolerance_arcsec": 60, "angle_errors": yaw}
    plan = call("jobs.center", **{k: v for k, v in job.items() if v is not None})["result"]
    answers = (
        alone,
        way["included_angle_error_arcsec"],
        plan["angle_budget"]["included_angle_error_arcsec"],
    )
    for error in answers:
        [row] = error["contributions"]
        assert row["worst_case"] == pytest.approx(2 * turned * ARCSEC, rel=1e-7)
        assert error["worst_case"] == pytest.approx(alone["worst_case"], rel=1e-12)
        assert error["value"] == pytest.approx(-2 * turned * ARCSEC / 3, rel=1e-7)
        assert error["value"] == pytest.approx(alone["value"], rel=1e-12)


def test_a_set_up_that_no_block_makes_is_refused(call: Call) -> None:
    """The set-ups above are what they say: another block misses the angle, and is refused."""
    job = as_job(set_up_of(0, exact=True)) | {"sizes": [0.1]}
    with pytest.raises(Refusal, match="misses the included angle"):
        call("jobs.center", **job)
