"""The angle's budget against numeric derivatives, a general uncertainty library and Monte Carlo."""

import math
from collections.abc import Mapping
from dataclasses import replace
from typing import Any

import pytest
import uncertainties
from halfangle_service.trade.sine.angle_budget import (
    TERMS,
    SetUp,
    Term,
    realised_angle,
    sensitivity,
    yaw_bias,
    yaw_standard_uncertainty,
)
from uncertainties import umath

from halfangle_service.errors import Disagreement, Impossible
from support import Call

ARCSEC = 206264.80624709636
SET_UP = SetUp(
    center_distance=5.0,
    angle_rad=math.radians(40),
    face_length=4.0,
    wheel_contact_length=0.5,
    temperature_offset=6.0,
    block_expansion=4.5e-6,
    plate_expansion=11.5e-6,
)
LINEAR = [term for term in TERMS if term != "yaw"]
FULL: dict[str, Any] = {
    "units": "in",
    "center_distance": 5,
    "angle": 40,
    "center_distance_tolerance": 0.0002,
    "roll_difference": 0.00005,
    "roll_parallelism": 0.00004,
    "face_parallelism": 0.00008,
    "face_flatness": 0.00003,
    "face_length": 4,
    "stack_tolerance": 0.00002,
    "table_flatness": 0.00005,
    "particle": 0.00003,
    "temperature_celsius": 26,
    "temperature_uncertainty_celsius": 1,
    "temperature_difference_celsius": 0.5,
    "block_material": "tungsten-carbide",
    "plate_material": "steel",
    "fixture_pitch_arcsec": 3,
    "wheel_breakdown": 0.00001,
    "wheel_contact_length": 0.5,
}


@pytest.mark.parametrize("on_rolls", [False, True])
@pytest.mark.parametrize("term", LINEAR)
def test_each_sensitivity_is_the_numeric_derivative(term: Term, on_rolls: bool) -> None:
    """Each sensitivity is the slope of the whole model, by central differences."""
    set_up = replace(SET_UP, parallelism_on_rolls=on_rolls)
    step = 1e-8
    if not term.endswith("-expansion"):
        # At 20 °C the closed forms are exact; off it they leave out ΔT · α, 7e-5 here.
        step, set_up = 1e-4, replace(set_up, temperature_offset=0.0)
    if term.startswith("temperature"):
        step = 0.1
    ahead = realised_angle(set_up, {term: step})
    behind = realised_angle(set_up, {term: -step})
    slope = (float(ahead) - float(behind)) / (2 * step)
    assert sensitivity(set_up, term) == pytest.approx(
        slope, rel=2e-4 if step == 1e-8 else 1e-7, abs=1e-12
    )


def _library_angle(off: Mapping[Any, Any]) -> Any:
    """The model written anew for the library: sin θ = (H + d/2)/L, leans added."""
    warm = 6.0 + off["temperature"]
    height = 5 * math.sin(math.radians(40)) + off["stack"]
    height *= 1 + (4.5e-6 + off["block-expansion"]) * (warm + off["temperature-difference"])
    height += off["particle"] + off["table-flatness"] + off["roll-parallelism"] / 2
    length = (5 + off["center-distance"]) * (1 + (11.5e-6 + off["plate-expansion"]) * warm)
    centers = umath.asin((height + off["roll-difference"] / 2) / length)
    lean = (off["face-parallelism"] + off["face-flatness"]) / 4
    return centers + lean + off["fixture-pitch"] / ARCSEC + off["wheel-breakdown"] / 0.5


@pytest.mark.outside(
    "sine.uncertainty", source="uncertainties 3.2: error components of every term by its own rules."
)
def test_every_term_against_a_general_library(call: Call) -> None:
    """Every term's standard uncertainty, and their sum, is what a general library propagates."""
    result = call("sine.uncertainty", **FULL)["result"]
    terms = {term["term"]: term for term in result["terms"]}
    off = {
        name: uncertainties.ufloat(0, terms[name]["value"] / math.sqrt(3), name) for name in LINEAR
    }
    angle = _library_angle(off)
    parts = {variable.tag: part for variable, part in angle.error_components().items()}
    for name in LINEAR:
        expected = parts.get(name, 0.0) * ARCSEC
        assert terms[name]["standard_uncertainty_arcsec"] == pytest.approx(expected, rel=2e-4)
    assert result["standard_uncertainty_arcsec"] == pytest.approx(angle.std_dev * ARCSEC, rel=2e-4)
    # Carbide blocks on a steel plate, 6 K warm: tan 40° × (4.5 − 11.5)e-6 × 6 rad, by hand.
    assert result["bias_arcsec"] == pytest.approx(-7.27, abs=5e-3)


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


@pytest.mark.outside("sine.uncertainty", source="Monte Carlo through the whole model (JCGM 101).")
@pytest.mark.parametrize("yaw", [0, 0.5])
def test_budget_agrees_with_monte_carlo(call: Call, yaw: float) -> None:
    """Budget and simulation agree to 2 % in spread, and in their means, with and without yaw."""
    result = call("sine.uncertainty", yaw=yaw, trials=200_000, **FULL)["result"]
    monte_carlo = result["monte_carlo"]
    assert abs(monte_carlo["difference_percent"]) < 2
    assert monte_carlo["mean_arcsec"] == pytest.approx(result["bias_arcsec"], abs=0.05)
    assert math.fsum(t["share_percent"] for t in result["terms"]) == pytest.approx(100)


def test_yaw_moments_by_integration() -> None:
    """Mean and spread of the yaw term are those of cos ψ over ±a, integrated numerically."""
    count, reach = 200_001, 1.0
    yaws = [math.radians(reach * (2 * i / (count - 1) - 1)) for i in range(count)]
    errors = [math.asin(math.sin(SET_UP.angle_rad) * math.cos(y)) - SET_UP.angle_rad for y in yaws]
    mean = math.fsum(errors) / count
    spread = math.sqrt(math.fsum((e - mean) ** 2 for e in errors) / count)
    assert yaw_bias(SET_UP, reach) == pytest.approx(mean, rel=1e-3)
    assert yaw_standard_uncertainty(SET_UP, reach) == pytest.approx(spread, rel=1e-3)


def test_yaw_at_its_limit(call: Call) -> None:
    """At 30°, yaw of 0.5° can cost 4.5″ and of 1° 18″: sin α = sin θ cos ψ, by hand."""
    for yaw, expected in ((0.5, 4.5), (1, 18)):
        result = call("sine.uncertainty", units="in", center_distance=5, angle=30, yaw=yaw)
        term = next(t for t in result["result"]["terms"] if t["term"] == "yaw")
        assert term["worst_case_arcsec"] == pytest.approx(expected, abs=0.2)


@pytest.mark.outside(
    "sine.uncertainty", source="Bench figures by hand: 0.0001 in over 4 in is 5.2″, 0.5 in 41″."
)
def test_face_and_wheel_enter_one_to_one(call: Call) -> None:
    """A face out by 0.0001 in 4 is 5″, a wheel broken down by 0.0001 over 0.5 is 41″."""
    result = call(
        "sine.uncertainty", units="in", center_distance=5, angle=30, face_parallelism=0.0001,
        face_length=4, wheel_breakdown=0.0001, wheel_contact_length=0.5,
    )["result"]  # fmt: skip
    worst = {t["term"]: t["worst_case_arcsec"] for t in result["terms"]}
    assert worst["face-parallelism"] == pytest.approx(5.16, abs=5e-3)
    assert worst["wheel-breakdown"] == pytest.approx(41.25, abs=5e-3)
    assert result["largest_term"] == "wheel-breakdown"


def test_included_angle_counts_twice(call: Call) -> None:
    """The included angle has twice the half angle's error, so a tolerance on it halves."""
    alone = call("sine.uncertainty", tolerance_arcsec=30, **FULL)["result"]
    cone = call(
        "sine.uncertainty", tolerance_arcsec=30, tolerance_on="included angle", **FULL
    )["result"]  # fmt: skip
    assert cone["smallest_tolerance_arcsec"] == 2 * alone["smallest_tolerance_arcsec"]
    assert alone["included_expanded_uncertainty_arcsec"] == 2 * alone["expanded_uncertainty_arcsec"]
    assert (alone["verdict"], cone["verdict"]) == ("conforming", "neither can be said")


@pytest.mark.outside(
    "sine.requirements",
    source="The definition, by sine.uncertainty: at the value to hold |bias| + U = tolerance.",
)
def test_holding_the_requirement_just_fits(call: Call) -> None:
    """With any one term at the value to hold, the set-up is good for just the tolerance."""
    fields = {
        "center-distance": "center_distance_tolerance",
        "stack": "stack_tolerance",
        "yaw": "yaw",
        "fixture-pitch": "fixture_pitch_arcsec",
        "wheel-breakdown": "wheel_breakdown",
    }
    answer = call("sine.requirements", tolerance_arcsec=25, **FULL)["result"]
    assert answer["good"]
    hold = {r["term"]: r["with_others"] for r in answer["requirements"]}
    for term, field in fields.items():
        held = FULL | {field: hold[term]}
        reached = call("sine.uncertainty", **held)["result"]["smallest_tolerance_arcsec"]
        assert reached == pytest.approx(25, rel=1e-9)


@pytest.mark.outside(
    "sine.requirements", source="By hand: ±10″ alone, k 2, rectangular: 10/2 × √3 ″ × 5 cos 30°."
)
def test_requirement_alone_by_hand(call: Call) -> None:
    """Were the stack the only error, ±10″ at 30° on 5 in would allow ±0.000182 in."""
    result = call(
        "sine.requirements", units="in", center_distance=5, angle=30, tolerance_arcsec=10
    )["result"]
    alone = {r["term"]: r["alone"] for r in result["requirements"]}
    by_hand = 5 * math.sqrt(3) / ARCSEC * 5 * math.cos(math.radians(30))
    assert alone["stack"] == pytest.approx(by_hand, rel=1e-9)
    assert alone["yaw"] < 5
    assert "wheel-breakdown" not in alone


def test_cheapest_to_mend_mends(call: Call) -> None:
    """Mending the cheapest term to the value named makes the set-up good; none cheaper does."""
    request = FULL | {"yaw": 0.1, "fixture_pitch_arcsec": 20}
    before = call("sine.requirements", tolerance_arcsec=25, **request)["result"]
    assert not before["good"]
    assert before["mend_together"] == []
    mend = before["cheapest_to_mend"]
    assert mend["term"] == "fixture-pitch"
    after = call(
        "sine.requirements",
        tolerance_arcsec=25,
        **(request | {"fixture_pitch_arcsec": mend["hold"]}),
    )["result"]
    assert after["good"]


def test_mend_together_where_no_single_term_can(call: Call) -> None:
    """Where two terms are each past the tolerance, both are named, the larger first."""
    result = call(
        "sine.requirements", units="in", center_distance=5, angle=30, tolerance_arcsec=5,
        stack_tolerance=0.0005, fixture_pitch_arcsec=60,
    )["result"]  # fmt: skip
    assert result["cheapest_to_mend"] is None
    assert result["mend_together"] == ["fixture-pitch", "stack"]


def test_normal_and_u_shaped_terms(call: Call) -> None:
    """A normal term states its standard deviation, a U-shaped one divides its limit by √2."""
    result = call(
        "sine.uncertainty", units="mm", center_distance=100, angle=30, stack_tolerance=0.001,
        temperature_difference_celsius=1, normal_terms=["stack"],
        u_shaped_terms=["temperature-difference"],
    )["result"]  # fmt: skip
    terms = {t["term"]: t for t in result["terms"]}
    stack, warm = terms["stack"], terms["temperature-difference"]
    assert stack["standard_uncertainty_arcsec"] == pytest.approx(
        0.001 * stack["sensitivity_arcsec_per_unit"]
    )
    assert warm["standard_uncertainty_arcsec"] == pytest.approx(
        warm["sensitivity_arcsec_per_unit"] / math.sqrt(2)
    )


@pytest.mark.parametrize(
    ("change", "says"),
    [
        ({"wheel_contact_length": None}, "over a length of slant"),
        ({"normal_terms": ["stack"], "triangular_terms": ["stack"]}, "listed twice"),
        ({"normal_terms": ["yaw"]}, "yaw is rectangular"),
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
    assert answer["result"]["allowed_standard_uncertainty_arcsec"] is None
    assert "let-it-soak" in [a["code"] for a in answer["advisories"]]
