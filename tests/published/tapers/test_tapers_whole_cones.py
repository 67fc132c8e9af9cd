"""One test of whether a cone ends before its length: at its point it is whole, past it refused."""

import math
from typing import Any

import pytest

from halfangle_service.errors import Impossible
from halfangle_service.trade.cone import cone_length
from support import Call

#: Half angles in degrees whose tangents are no round figures.
HALF_DEGREES = [0.7, 1.4321, 8.297, 17.3, 30.0, 44.9]
LARGE = 0.7
Request = dict[str, Any]


def ball_at(share: float, half: float) -> float:
    """Diameter of the ball that touches the cone at a share of the way to its point."""
    return (1 - share) * LARGE / math.cos(half)


def nominal(verb: str, half: float, length: float) -> Request:
    """A request of the cone that states its large diameter and its length."""
    to_point = cone_length(LARGE, half)
    more: dict[str, Request] = {
        "solve": {},
        "plug-depth-nominal": {"gauge_diameter": 0.6},
        "tolerance": {"diameter_band_over_length": 0.001},
        "clean-up": {},
        "over-rolls-nominal": {
            "standing_on": "large-end",
            "roll_diameter": 0.2 * to_point,
            "stack_rise": 0.5 * to_point,
        },
        "over-balls-nominal": {
            "large_ball_diameter": ball_at(0.2, half),
            "small_ball_diameter": ball_at(0.6, half),
        },
    }
    cone = {"units": "in", "half_angle": math.degrees(half), "length": length}
    return {**cone, "large_diameter": LARGE, **more[verb]}


NOMINAL = (
    "solve",
    "plug-depth-nominal",
    "tolerance",
    "clean-up",
    "over-rolls-nominal",
    "over-balls-nominal",
)


@pytest.mark.parametrize("half_degrees", HALF_DEGREES)
@pytest.mark.parametrize("verb", NOMINAL)
def test_a_cone_may_end_at_its_point(call: Call, verb: str, half_degrees: float) -> None:
    """A cone as long as it can be is answered; one a thousandth longer is refused, with its end."""
    half = math.radians(half_degrees)
    to_point = cone_length(LARGE, half)
    assert call(f"tapers.{verb}", **nominal(verb, half, to_point))["result"]
    with pytest.raises(Impossible, match="comes to its point") as refused:
        call(f"tapers.{verb}", **nominal(verb, half, 1.001 * to_point))
    assert set(refused.value.fields) == {"length"}


def measured(call: Call, verb: str, half: float, length: float) -> Request:
    """A request that measures the cone, from what its nominal twin expects."""
    to_point = cone_length(LARGE, half)
    if verb == "plug-depth":
        slope = {"half_angle": math.degrees(half)}
        return {"gauge_diameter": LARGE, "gauge_depth": 0, "length": length, **slope}
    if verb == "one-ball":
        ball = ball_at(0.4, half)
        depth = 0.4 * to_point - ball / 2 * (1 + math.sin(half))
        slope = {"half_angle": math.degrees(half)}
        return {"ball_diameter": ball, "ball_depth": depth, "length": length, **slope}
    set_up = nominal(f"{verb}-nominal", half, to_point)
    expected = call(f"tapers.{verb}-nominal", **set_up)["result"]
    read = {
        "over-rolls": ("lower_measure", "upper_measure"),
        "over-balls": ("large_ball_depth", "small_ball_depth"),
    }[verb]
    stated = {"roll_diameter", "stack_rise", "large_ball_diameter", "small_ball_diameter"}
    kept = {name: value for name, value in set_up.items() if name in stated}
    return {**kept, **{name: expected[name] for name in read}, "length": length}


@pytest.mark.parametrize("half_degrees", HALF_DEGREES)
@pytest.mark.parametrize("verb", ["over-rolls", "over-balls", "one-ball", "plug-depth"])
def test_a_measured_cone_may_end_at_its_point(call: Call, verb: str, half_degrees: float) -> None:
    """A cone measured as long as it can be is whole, its small end 0; a longer one is refused."""
    half = math.radians(half_degrees)
    to_point = cone_length(LARGE, half)
    result = call(f"tapers.{verb}", units="in", **measured(call, verb, half, to_point))["result"]
    assert result["large_diameter"]["value"] == pytest.approx(LARGE, rel=1e-9)
    if verb != "one-ball":
        assert result["small_diameter"]["value"] == pytest.approx(0, abs=1e-9)
        assert result["small_diameter"]["value"] >= 0
    with pytest.raises(Impossible, match="comes to its point") as refused:
        call(f"tapers.{verb}", units="in", **measured(call, verb, half, 1.001 * to_point))
    assert set(refused.value.fields) == {"length"}


def test_figures_that_leave_no_large_end_name_themselves(call: Call) -> None:
    """Measures smaller than their rolls, and a gauge far outside, are refused by their names."""
    with pytest.raises(Impossible, match="leave the large end a diameter of -") as over:
        call(
            "tapers.over-rolls",
            units="mm",
            roll_diameter=12,
            lower_measure=10,
            upper_measure=11,
            stack_rise=75,
            length=100,
        )
    assert set(over.value.fields) == {"lower_measure", "upper_measure"}
    with pytest.raises(Impossible, match="large end would have a diameter of -") as gauged:
        call(
            "tapers.plug-depth",
            units="mm",
            half_angle=30,
            gauge_diameter=5,
            gauge_depth=-20,
            gauge_length=30,
            length=60,
        )
    assert set(gauged.value.fields) == {"gauge_depth"}


@pytest.mark.parametrize("half_degrees", HALF_DEGREES)
@pytest.mark.parametrize("verb", ["over-rolls", "over-balls", "one-ball", "plug-depth"])
@pytest.mark.parametrize("off", [-5e-5, 5e-5])
def test_readings_of_a_pointed_cone_may_be_off(
    call: Call, verb: str, half_degrees: float, off: float
) -> None:
    """A cone to its point is taken though its readings make it end a hair early; its end is 0."""
    half = math.radians(half_degrees)
    request = measured(call, verb, half, cone_length(LARGE, half))
    read = {"over-rolls": "lower_measure", "over-balls": "large_ball_diameter"}
    read |= {"one-ball": "ball_diameter", "plug-depth": "gauge_diameter"}
    step = off * math.cos(half) / 4
    request[read[verb]] += step
    tolerance = "gauge_error_limit" if verb == "plug-depth" else "roll_error_limit"
    result = call(f"tapers.{verb}", units="in", **request, **{tolerance: abs(step)})["result"]
    assert result["large_diameter"]["value"] == pytest.approx(LARGE, abs=1e-3)
    if verb != "one-ball":
        assert 0 <= result["small_diameter"]["value"] < 1e-3


def test_a_blunt_pointed_cone_can_be_cleaned_up(call: Call) -> None:
    """A length to the drawing's point is taken of a part whose own point comes a hair earlier."""
    half = math.radians(30)
    request = {"units": "in", "half_angle": 30, "large_diameter": LARGE, "wear": 0.001}
    to_point = cone_length(LARGE, half)
    result = call("tapers.clean-up", length=to_point, half_angle_error_arcsec=120, **request)[
        "result"
    ]
    as_is = half + math.radians(120 / 3600)
    slant = LARGE / 2 / math.sin(as_is)
    assert result["from_angle"] == pytest.approx(slant * math.sin(as_is - half), rel=1e-12)
    with pytest.raises(Impossible, match="comes to its point"):
        call("tapers.clean-up", length=1.001 * to_point, half_angle_error_arcsec=120, **request)


@pytest.mark.parametrize("half_degrees", HALF_DEGREES)
def test_a_sharp_point_can_be_stated(call: Call, half_degrees: float) -> None:
    """A small diameter of 0 is a sharp point, and any two more give the whole cone."""
    half = math.radians(half_degrees)
    whole = {
        "large_diameter": LARGE,
        "length": cone_length(LARGE, half),
        "half_angle": half_degrees,
    }
    for left_out in whole:
        stated = {name: value for name, value in whole.items() if name != left_out}
        result = call("tapers.solve", units="in", small_diameter=0, **stated)["result"]
        found = result | {"half_angle": result["half_angle"]["degrees"]}
        assert {name: found[name] for name in whole} == pytest.approx(whole, rel=1e-12)
