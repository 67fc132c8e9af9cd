"""Where balls, rolls and plugs touch, and every form of the slope that they show."""

import math
from typing import Any

import pytest

from support import Call, assert_values

MORSE_2 = math.atan(0.59941 / 24)


def slope_of(half: float, *names: str) -> dict[str, float]:
    """The slope of a half angle in radians, by the names of the answer."""
    rate = 2 * math.tan(half)
    forms = {
        "half_angle.degrees": math.degrees(half),
        "included_angle.degrees": 2 * math.degrees(half),
        "taper_per_foot": 12 * rate,
        "one_in_x": 1 / rate,
        "rate_of_taper": rate,
    }
    return {name: forms[name] for name in names}


@pytest.mark.outside("tapers.one-ball", source="Ball in a cone, by hand: contact r sin α deeper")
def test_one_ball_touches_below_its_center(call: Call) -> None:
    """A ½ in ball that stands 0.2 in out of a 60° hole has its center 0.05 in deep.

    It touches the wall along its normal, 0.25 sin 30° deeper: at 0.175 in.
    """
    hole = {"units": "in", "included_angle": 60, "length": 0.4}
    result = call("tapers.one-ball", ball_diameter=0.5, ball_depth=-0.2, **hole)["result"]
    assert_values(result, {"contact_depth": 0.175, **slope_of(math.radians(30), "rate_of_taper")})


@pytest.mark.outside("tapers.over-balls", source="Two balls in a cone, by hand: sin α = Δr / Δh")
def test_two_balls_touch_below_their_centers(call: Call) -> None:
    """Balls of 40 and 32 mm whose centers lie 12 and 92 mm deep: sin α = 4 / 80.

    They touch r sin α below their centers: 13 and 92.8 mm. At its end, 28 mm under the small ball's
    center, the wall has come in by 28 tan α from where it is r / cos α off the axis.
    """
    balls = {"large_ball_diameter": 40, "small_ball_diameter": 32}
    depths = {"large_ball_depth": -8, "small_ball_depth": 76}
    result = call("tapers.over-balls", units="mm", **balls, **depths, length=120)["result"]
    half = math.asin(0.05)
    expected = {
        "large_ball_contact_depth": 13,
        "small_ball_contact_depth": 92.8,
        "small_diameter.value": 2
        * (16 / math.cos(math.asin(0.05)) - 28 * math.tan(math.asin(0.05))),
        **slope_of(half, "one_in_x", "rate_of_taper"),
    }
    assert_values(result, expected)


@pytest.mark.outside("tapers.over-balls-nominal", source="Ball in a cone, by hand")
def test_balls_in_a_known_socket(call: Call) -> None:
    """A ball's center lies where the wall is r away: (D/2 − c tan α) cos α = r; it touches lower.

    Morse No. 2, 0.7 in at its mouth.
    """
    balls = {"large_ball_diameter": 0.6875, "small_ball_diameter": 0.625}
    socket = {"units": "in", "taper_per_foot": 0.59941, "large_diameter": 0.7, "length": 2.5}
    result = call("tapers.over-balls-nominal", **socket, **balls)["result"]

    def contact(radius: float) -> float:
        center = (0.35 - radius / math.cos(MORSE_2)) / math.tan(MORSE_2)
        return center + radius * math.sin(MORSE_2)

    expected = {
        "large_ball_contact_depth": contact(0.34375),
        "small_ball_contact_depth": contact(0.3125),
        **slope_of(MORSE_2, "half_angle.degrees"),
    }
    assert_values(result, expected)


@pytest.mark.outside("tapers.over-rolls", source="Rolls at a plug, by hand: tan α = ΔM / 2h")
def test_rolls_touch_above_their_centers(call: Call) -> None:
    """A plug on its small end, measured 60 and 67.5 mm over rolls 75 mm apart: tan α = 0.05.

    A roll of 12 mm touches it 6 sin α above its center, which is 6 mm over plate or stack.
    """
    rolls = {"roll_diameter": 12, "lower_measure": 60, "upper_measure": 67.5, "stack_rise": 75}
    result = call("tapers.over-rolls", units="mm", length=100, **rolls)["result"]
    half = math.atan(0.05)
    forms = ("included_angle.degrees", "taper_per_foot", "one_in_x", "rate_of_taper")
    expected = {
        "lower_contact_height": 6 + 6 * math.sin(half),
        "upper_contact_height": 81 + 6 * math.sin(half),
        **slope_of(half, *forms),
    }
    assert_values(result, expected)


@pytest.mark.outside("tapers.over-rolls-nominal", source="By hand: ΔM = 2 h tan α, and its slope")
@pytest.mark.parametrize(("units", "rise", "step"), [("in", 2, 0.0001), ("mm", 50, 0.001)])
def test_measures_over_a_known_plug(call: Call, units: str, rise: float, step: float) -> None:
    """ΔM is 2 h tan α, so a step of it turns α by step cos² α / 2h."""
    sizes = {"large_diameter": 0.35 * rise, "length": 1.3 * rise, "roll_diameter": rise / 8}
    plug = {"units": units, "taper_per_foot": 0.59941, "stack_rise": rise, **sizes}
    result = call("tapers.over-rolls-nominal", **plug)["result"]
    turn = step * math.cos(MORSE_2) ** 2 / (2 * rise)
    expected = {
        "measure_difference": 2 * rise * 0.59941 / 24,
        "half_angle_arcsec_per_measure_step": math.degrees(turn) * 3600,
        **slope_of(MORSE_2, "half_angle.degrees"),
    }
    assert_values(result, expected)


@pytest.mark.outside("tapers.plug-depth", source="By hand: 2 tan α of 2.5°")
def test_a_plugs_slope_in_every_form(call: Call) -> None:
    """A socket of 5° included is 1 in 11.4519."""
    plug = {"gauge_diameter": 17.78, "gauge_depth": 0.5, "gauge_length": 60, "length": 64}
    result = call("tapers.plug-depth", units="mm", included_angle=5, **plug)["result"]
    forms = ("included_angle.degrees", "taper_per_foot", "one_in_x", "rate_of_taper")
    assert_values(result, slope_of(math.radians(2.5), *forms))
    assert result["one_in_x"] == pytest.approx(11.4519, abs=5e-5)


@pytest.mark.outside("tapers.plug-depth-nominal", source="Two lengths laid side by side, by hand")
@pytest.mark.parametrize(
    ("large_diameter", "length", "engaged"),
    [(20.2, 64, 60), (20.2, 50, 46), (19.9, 64, 58)],
)
def test_how_much_of_a_plug_is_in_the_socket(
    call: Call, large_diameter: float, length: float, engaged: float
) -> None:
    """A plug of 20 mm, 60 mm long, in a socket of 1 in 20.

    A mouth larger by 0.2 mm lets it in by 4 mm: all of it, or what a short socket has left below
    them. A mouth smaller by 0.1 mm leaves 2 mm of it outside.
    """
    plug = {"gauge_diameter": 20, "gauge_length": 60}
    cone = {"units": "mm", "one_in_x": 20, "large_diameter": large_diameter, "length": length}
    result = call("tapers.plug-depth-nominal", **plug, **cone)["result"]
    forms = (
        *("half_angle.degrees", "included_angle.degrees"),
        *("taper_per_foot", "rate_of_taper", "one_in_x"),
    )
    assert_values(
        result, {"engaged_length": engaged, **slope_of(math.atan(1 / 40), *forms)}, rel=1e-8
    )


VEE: dict[str, Any] = {"units": "mm", "large_roll_diameter": 40, "small_roll_diameter": 20}


@pytest.mark.outside("tapers.vee-over-rolls", source="Circle in a vee, by hand: contact r sin α")
def test_rolls_touch_a_vee_below_their_centers(call: Call) -> None:
    """In a vee of 60°, rolls of 40 and 20 mm have centers 2 r above the point, 0 and 20 mm deep.

    They touch 20 sin 30° and 10 sin 30° lower, at 10 and 25 mm.
    """
    result = call("tapers.vee-over-rolls", **VEE, large_roll_top=20, small_roll_top=-10)["result"]
    contacts = {"large_roll_contact_depth": 10, "small_roll_contact_depth": 25}
    assert_values(result, contacts)


@pytest.mark.outside("tapers.vee-over-rolls-nominal", source="By hand: depth = width / (2 tan α)")
@pytest.mark.parametrize("included", [60, 90, 120])
def test_a_vee_falls_as_it_widens(call: Call, included: float) -> None:
    """A roll sinks by 1 / (2 tan α) for one of width: 0.866 in a vee of 60°, ½ in one of 90°."""
    vee = {"units": "mm", "vee_angle": included, "face_width": 40, "roll_diameters": [25, 20]}
    result = call("tapers.vee-over-rolls-nominal", **vee)["result"]
    expected = 1 / (2 * math.tan(math.radians(included / 2)))
    assert result["fall_per_width"] == pytest.approx(expected)


@pytest.mark.outside("tapers.dovetail-over-rolls", source="Handbook rule D (1 + cot(θ/2)), by hand")
@pytest.mark.parametrize("flank", [45, 55, 60])
def test_a_dovetails_rolls(call: Call, flank: float) -> None:
    """A roll lies in the corner of flank and base: the measure is D (1 + cot(θ/2)) over the corner.

    It touches the flank r (1 + cos θ) above the base.
    """
    request = {"kind": "male", "flank_angle": flank, "flank_height": 10, "roll_diameter": 8}
    result = call("tapers.dovetail-over-rolls", units="mm", corner_width=50, **request)["result"]
    angle = math.radians(flank)
    expected = {
        "contact_height": 4 * (1 + math.cos(angle)),
        "rolls_constant": 8 * (1 + 1 / math.tan(angle / 2)),
    }
    assert_values(result, expected)
    # The corner comes back from the measure over the rolls.
    measure = {**request, "measure": 50 + expected["rolls_constant"]}
    back = call("tapers.dovetail-over-rolls", units="mm", **measure)["result"]
    assert_values(back, {"corner_width.value": 50})
