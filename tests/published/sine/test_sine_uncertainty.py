"""The angle's budget against numeric derivatives, a general uncertainty library and Monte Carlo."""

import math
from collections.abc import Mapping
from dataclasses import replace
from typing import Any

import pytest
import uncertainties
from uncertainties import umath

from halfangle_service.errors import Disagreement, Impossible
from halfangle_service.registry import load_registry
from halfangle_service.trade.sine.angle_error import (
    LARGEST_YAW_ARCSEC,
    ErrorInputs,
    budget,
    contribution,
    of_included_angle,
)
from halfangle_service.trade.sine.angle_model import (
    TERMS,
    SetUp,
    Term,
    realised_angle,
    sensitivity,
)
from sine_support import ARCSEC, FULL
from support import Call

SET_UP = SetUp(
    center_distance=5.0,
    angle_rad=math.radians(40),
    face_length=4.0,
    wheel_contact_length=0.5,
    temperature_offset=6.0,
    block_expansion=4.5e-6,
    plate_expansion=11.5e-6,
)
LINEAR = [term for term in TERMS if term != "axis_yaw_error_limit_arcsec"]

#: What each linear term is stated as in `FULL`; the expansions of carbide and steel from memory.
LIMITS = {
    "center_distance_error_limit": 0.0002, "roll_difference": 0.00005, "roll_parallelism": 0.00004,
    "face_parallelism": 0.00008, "face_flatness": 0.00003, "stack_error_limit": 0.00002,
    "resolution": 0.0001, "table_flatness": 0.00005, "particle": 0.00003,
    "temperature_error_limit_celsius": 1.0, "temperature_difference_celsius": 0.5,
    "block_expansion": 0.7e-6, "plate_expansion": 1e-6,
    "axis_pitch_error_limit_arcsec": 3.0, "wheel_breakdown": 0.00001,
}  # fmt: skip


@pytest.mark.parametrize("on_rolls", [False, True])
@pytest.mark.parametrize("term", LINEAR)
def test_each_sensitivity_is_the_numeric_derivative(term: Term, on_rolls: bool) -> None:
    """Each sensitivity is the slope of the whole model, by central differences, offset or not."""
    offset = 0.3 if on_rolls else 0.0
    set_up = replace(SET_UP, parallelism_on_rolls=on_rolls, stack_offset=offset)
    step = 1e-8
    if not term.endswith("_expansion"):
        # At 20 °C the closed forms are exact; off it they leave out ΔT · α, 7e-5 here.
        step, set_up = 1e-4, replace(set_up, temperature_offset=0.0)
    if term.startswith("temperature_"):
        step = 0.1
    ahead = realised_angle(set_up, {term: step})
    behind = realised_angle(set_up, {term: -step})
    slope = (float(ahead) - float(behind)) / (2 * step)
    assert sensitivity(set_up, term) == pytest.approx(
        slope, rel=2e-4 if step == 1e-8 else 1e-7, abs=1e-12
    )


def _library_angle(off: Mapping[Any, Any]) -> Any:
    """The model written anew for the library: sin θ = (H + d/2)/L, leans added."""
    warm = 6.0 + off["temperature_error_limit_celsius"]
    height = 5 * math.sin(math.radians(40)) + off["stack_error_limit"] + off["resolution"] / 2
    height *= 1 + (4.5e-6 + off["block_expansion"]) * (warm + off["temperature_difference_celsius"])
    height += off["particle"] + off["table_flatness"] + off["roll_parallelism"] / 2
    length = (5 + off["center_distance_error_limit"]) * (
        1 + (11.5e-6 + off["plate_expansion"]) * warm
    )
    centers = umath.asin((height + off["roll_difference"] / 2) / length)
    lean = (off["face_parallelism"] + off["face_flatness"]) / 4
    return (
        centers
        + lean
        + off["axis_pitch_error_limit_arcsec"] / ARCSEC
        + off["wheel_breakdown"] / 0.5
    )


@pytest.mark.outside(
    "sine.uncertainty", source="uncertainties 3.2: error components of every term by its own rules."
)
def test_every_term_against_a_general_library(call: Call) -> None:
    """Every term's standard uncertainty, and their sum, is what a general library propagates."""
    result = call("sine.uncertainty", **FULL)["result"]
    error = result["angle_error_arcsec"]
    terms = {term["name"]: term for term in error["contributions"]}
    assert {name: terms[name]["input_value"] for name in LINEAR} == pytest.approx(LIMITS)
    off = {
        name: uncertainties.ufloat(0, limit / math.sqrt(3), name) for name, limit in LIMITS.items()
    }
    angle = _library_angle(off)
    parts = {variable.tag: part for variable, part in angle.error_components().items()}
    for name in LINEAR:
        expected = parts.get(name, 0.0) * ARCSEC
        assert terms[name]["standard_uncertainty"] == pytest.approx(expected, rel=2e-4)
    assert error["standard_uncertainty"] == pytest.approx(angle.std_dev * ARCSEC, rel=2e-4)
    # Carbide blocks on a steel plate, 6 K warm: tan 40° × (4.5 − 11.5)e-6 × 6 rad, by hand.
    assert error["value"] == pytest.approx(-7.27, abs=5e-3)


@pytest.mark.outside(
    "sine.uncertainty",
    source="Derived by hand: carbide on steel, +5 °C at 30°: −4.2″; same material: 0.",
)
def test_thermal_shift_by_hand(call: Call) -> None:
    """Carbide blocks on a steel plate at 25 °C and 30° are 4.2″ flat; steel on steel is true."""
    request = {"units": "in", "center_distance": 5, "angle": 30, "temperature_celsius": 25}
    carbide = call("sine.uncertainty", block_material="tungsten-carbide", **request)["result"]
    steel = call("sine.uncertainty", **request)["result"]
    assert carbide["thermal_shift_arcsec"] == pytest.approx(-4.17, abs=5e-3)
    assert steel["thermal_shift_arcsec"] == 0


@pytest.mark.parametrize("yaw_arcsec", [0, 1800])
def test_budget_agrees_with_monte_carlo(call: Call, yaw_arcsec: float) -> None:
    """Budget and simulation agree to 2 % in spread, and in their means, with and without yaw."""
    request = FULL | {"axis_yaw_error_limit_arcsec": yaw_arcsec}
    result = call("sine.uncertainty", trials=200_000, **request)["result"]
    monte_carlo = result["monte_carlo"]
    assert abs(monte_carlo["difference_percent"]) < 2
    assert monte_carlo["mean_arcsec"] == pytest.approx(
        result["angle_error_arcsec"]["value"], abs=0.05
    )
    terms = result["angle_error_arcsec"]["contributions"]
    assert math.fsum(t["share_percent"] for t in terms) == pytest.approx(100)


def _errors_by_yaw(reach_degrees: float) -> list[float]:
    """Errors of the exact angle, in radians, for yaw even over ± so many degrees."""
    count = 200_001
    yaws = [math.radians(reach_degrees * (2 * i / (count - 1) - 1)) for i in range(count)]
    return [math.asin(math.sin(SET_UP.angle_rad) * math.cos(y)) - SET_UP.angle_rad for y in yaws]


def test_yaw_moments_by_integration() -> None:
    """Mean and spread of the yaw term are those of the exact angle over ±1°, integrated."""
    errors = _errors_by_yaw(1.0)
    mean = math.fsum(errors) / len(errors)
    spread = math.sqrt(math.fsum((e - mean) ** 2 for e in errors) / len(errors))
    yaw = contribution(
        ErrorInputs(SET_UP, {"axis_yaw_error_limit_arcsec": 3600.0}), "axis_yaw_error_limit_arcsec"
    )
    assert yaw.mean == pytest.approx(mean, rel=1e-3)
    assert yaw.in_result == pytest.approx(spread, rel=1e-3)
    assert yaw.at_limit == pytest.approx(min(errors), rel=1e-3)


def test_yaw_at_its_limit_is_exact() -> None:
    """The largest yaw taken does what the arc sine says; of a second its second order is left.

    From sin α = sin θ cos ψ the next order is tan θ (1/24 + tan²θ/8) ψ⁴: nothing at a second.
    """
    name: Term = "axis_yaw_error_limit_arcsec"
    largest, second = (
        contribution(ErrorInputs(SET_UP, {name: arcsec}), name).worst_case
        for arcsec in (LARGEST_YAW_ARCSEC, 1.0)
    )
    seen = math.asin(math.sin(SET_UP.angle_rad) * math.cos(math.radians(5)))
    assert largest == pytest.approx(SET_UP.angle_rad - seen, rel=1e-12)
    assert second == pytest.approx(math.tan(SET_UP.angle_rad) / ARCSEC**2 / 2, rel=1e-9)


def test_yaw_at_its_limit(call: Call) -> None:
    """At 30°, yaw of 0.5° can cost 4.5″ and of 1° 18″: sin α = sin θ cos ψ, by hand."""
    for yaw, expected in ((1800, 4.5), (3600, 18)):
        error = call(
            ""
            "sine.uncertainty", units="in", center_distance=5, angle=30,
            axis_yaw_error_limit_arcsec=yaw,
        )["result"]["angle_error_arcsec"]  # fmt: skip
        (term,) = error["contributions"]
        assert term["name"] == "axis_yaw_error_limit_arcsec"
        assert term["worst_case"] == pytest.approx(expected, abs=0.2)
        assert error["value"] == pytest.approx(-expected / 3, abs=0.1)


@pytest.mark.outside(
    "sine.uncertainty", source="Bench figures by hand: 0.0001 in over 4 in is 5.2″, 0.5 in 41″."
)
def test_face_and_wheel_enter_one_to_one(call: Call) -> None:
    """A face out by 0.0001 in 4 is 5″, a wheel broken down by 0.0001 over 0.5 is 41″."""
    result = call(
        "sine.uncertainty", units="in", center_distance=5, angle=30, face_parallelism=0.0001,
        face_length=4, wheel_breakdown=0.0001, wheel_contact_length=0.5,
    )["result"]  # fmt: skip
    terms = result["angle_error_arcsec"]["contributions"]
    worst = {term["name"]: term["worst_case"] for term in terms}
    assert worst["face_parallelism"] == pytest.approx(5.16, abs=5e-3)
    assert worst["wheel_breakdown"] == pytest.approx(41.25, abs=5e-3)
    assert result["largest_term"] == "wheel_breakdown"


def test_the_largest_of_what_was_stated_is_not_said_to_be_the_largest(call: Call) -> None:
    """With one term stated of fourteen nobody is sent to mend it before anything else."""
    plate = {"units": "in", "center_distance": 5, "angle": 30}
    [advice] = call("sine.uncertainty", **plate, stack_error_limit=0.00005)["advisories"]
    assert advice["code"] == "one-term-dominates"
    assert "of what was stated; not stated, and perhaps larger: 13" in advice["message"]
    whole = dict(load_registry().operations["sine.uncertainty"].example)
    said = call("sine.uncertainty", **whole | {"face_parallelism": 0.001})["advisories"]
    [large] = [a["message"] for a in said if a["code"] == "one-term-dominates"]
    assert large.endswith("mend it before anything else.")


def test_carbide_at_20_degrees_shifts_nothing_and_not_minus_nothing(call: Call) -> None:
    """At the reference temperature no material turns the plate: 0, written without a sign."""
    plate = {"units": "in", "center_distance": 5, "angle": 30, "block_material": "tungsten-carbide"}
    warm = call("sine.uncertainty", temperature_celsius=20, **plate)
    shift = warm["result"]["thermal_shift_arcsec"]
    assert (shift, math.copysign(1.0, shift)) == (0.0, 1.0)


def test_included_angle_counts_twice(call: Call) -> None:
    """The included angle has twice the half angle's error, so a tolerance on it halves."""
    alone = call("sine.uncertainty", tolerance_arcsec=30, **FULL)["result"]
    cone = call(
        "sine.uncertainty", tolerance_arcsec=30, tolerance_on="included-angle", **FULL
    )["result"]  # fmt: skip
    assert cone["smallest_tolerance_arcsec"] == 2 * alone["smallest_tolerance_arcsec"]
    for member in ("value", "standard_uncertainty", "expanded_uncertainty", "worst_case"):
        plate = alone["angle_error_arcsec"][member]
        assert alone["included_angle_error_arcsec"][member] == pytest.approx(2 * plate, rel=1e-15)
    assert (alone["forecast"], cone["forecast"]) == ("holds", "may-not-hold")


def test_normal_and_u_shaped_terms(call: Call) -> None:
    """A normal term states its standard deviation, a U-shaped one divides its limit by √2."""
    result = call(
        "sine.uncertainty", units="mm", center_distance=100, angle=30, stack_error_limit=0.001,
        temperature_difference_celsius=1, normal_terms=["stack_error_limit"],
        u_shaped_terms=["temperature_difference_celsius"],
    )["result"]  # fmt: skip
    terms = {t["name"]: t for t in result["angle_error_arcsec"]["contributions"]}
    stack, warm = terms["stack_error_limit"], terms["temperature_difference_celsius"]
    assert stack["standard_uncertainty"] == pytest.approx(0.001 * stack["sensitivity"])
    assert warm["standard_uncertainty"] == pytest.approx(warm["sensitivity"] / math.sqrt(2))


@pytest.mark.parametrize(
    ("change", "says"),
    [
        ({"wheel_contact_length": None}, "over a length of slant"),
        (
            {"normal_terms": ["stack_error_limit"], "triangular_terms": ["stack_error_limit"]},
            "listed twice",
        ),
        ({"normal_terms": ["axis_yaw_error_limit_arcsec"]}, "yaw is rectangular"),
    ],
)
def test_uncertainty_refusals(call: Call, change: dict[str, Any], says: str) -> None:
    """A breakdown without its length, or two distributions for one term, is refused."""
    with pytest.raises(Disagreement, match=says):
        call("sine.uncertainty", **(FULL | change))


def test_errors_that_stand_the_plate_upright(call: Call) -> None:
    """Errors past the plate's own size are refused, not drawn into nonsense."""
    with pytest.raises(Impossible, match="more than the center distance"):
        call("sine.uncertainty", units="in", center_distance=5, angle=80, particle=1)


def test_bias_past_the_tolerance_leaves_no_room(call: Call) -> None:
    """Where temperature alone is past the tolerance, nothing can be allowed, and it says why."""
    answer = call(
        "sine.requirements", units="in", center_distance=5, angle=60, tolerance_arcsec=1,
        temperature_celsius=30, block_material="tungsten-carbide",
    )  # fmt: skip
    assert answer["result"]["limit_standard_uncertainty_arcsec"] is None
    assert "let-it-soak" in [a["code"] for a in answer["advisories"]]


def test_a_set_up_that_states_no_error(call: Call) -> None:
    """Without any error stated nothing is said of the angle, and every field left out is named."""
    request = {"units": "in", "center_distance": 5, "angle": 30, "tolerance_arcsec": 20}
    result = call("sine.uncertainty", **request)["result"]
    for name in ("angle_error_arcsec", "included_angle_error_arcsec"):
        error = result[name]
        assert error["value"] is None
        assert error["standard_uncertainty"] is None
        assert error["worst_case"] is None
        assert error["contributions"] == []
        assert len(error["not_stated"]) == 14
        assert {"stack_error_limit", "axis_yaw_error_limit_arcsec"} <= set(error["not_stated"])
    assert result["forecast"] == "not-stated"
    assert result["smallest_tolerance_arcsec"] is None
    assert result["monte_carlo"] is None
    held = call("sine.requirements", **request)["result"]
    assert (held["forecast"], held["smallest_tolerance_arcsec"]) == ("not-stated", None)
    assert held["not_stated"] == result["angle_error_arcsec"]["not_stated"]
    assert {row["at_hand"] for row in held["requirements"]} == {None}


def test_an_error_left_out_never_lets_the_plan_hold(call: Call) -> None:
    """What is not stated is not 0: with one error left out the plan may not hold, and it is named.

    The numbers are those of the errors that were stated.
    """
    request = {"tolerance_arcsec": 30, **FULL}
    whole = call("sine.uncertainty", **request)["result"]
    without = {
        name: value for name, value in request.items() if name != "axis_yaw_error_limit_arcsec"
    }
    part = call("sine.uncertainty", **without)["result"]
    assert (whole["forecast"], part["forecast"]) == ("holds", "may-not-hold")
    assert whole["angle_error_arcsec"]["not_stated"] == []
    assert part["angle_error_arcsec"]["not_stated"] == ["axis_yaw_error_limit_arcsec"]
    assert part["smallest_tolerance_arcsec"] == whole["smallest_tolerance_arcsec"]
    held = call("sine.requirements", **without)["result"]
    assert (held["forecast"], held["not_stated"]) == (
        "may-not-hold",
        ["axis_yaw_error_limit_arcsec"],
    )


def test_temperature_alone_is_known(call: Call) -> None:
    """Off 20 °C the materials' expansions count though no error was stated; at 20 °C not."""
    request = {"units": "in", "center_distance": 5, "angle": 30, "block_material": "ceramic"}
    warm = call("sine.uncertainty", temperature_celsius=25, **request)["result"]
    error = warm["angle_error_arcsec"]
    assert error["value"] == warm["thermal_shift_arcsec"] != 0
    assert [c["name"] for c in error["contributions"]] == ["block_expansion", "plate_expansion"]
    assert call("sine.uncertainty", **request)["result"]["angle_error_arcsec"]["value"] is None


def test_the_included_angle_has_twice_the_budget() -> None:
    """Offset, mean, spread and worst case of a cone's included angle are twice the plate's."""
    plate = budget(
        ErrorInputs(
            SET_UP,
            {"stack_error_limit": 1e-5, "axis_yaw_error_limit_arcsec": 900.0},
            not_stated=("x",),
        )
    )
    cone = of_included_angle(plate)
    assert cone.mean == 2 * plate.mean
    assert cone.standard_uncertainty == 2 * plate.standard_uncertainty
    assert plate.worst_case is not None
    assert cone.worst_case == 2 * plate.worst_case
    assert cone.not_stated == ("x",)


def test_what_was_not_stated_is_named_as_the_request_names_it(call: Call) -> None:
    """Each name in `not_stated` is a field of the request: stating them all leaves none."""
    request = {"units": "in", "center_distance": 5, "angle": 30}
    missing = call("sine.uncertainty", **request)["result"]["angle_error_arcsec"]["not_stated"]
    none = dict.fromkeys(missing, 0) | {"temperature_celsius": 20}
    stated = call("sine.uncertainty", **request, **none)["result"]
    assert stated["angle_error_arcsec"]["not_stated"] == []
    assert stated["angle_error_arcsec"]["worst_case"] == 0
