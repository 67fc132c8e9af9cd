"""Round trips of the tapers topic: what a nominal taper shows gives that taper back."""

import math
from typing import Any

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from halfangle_service.errors import Impossible
from halfangle_service.registry import load_registry
from halfangle_service.trade.tapers import contact, feed, plugs

few = settings(max_examples=50, deadline=None)
standings = st.sampled_from(["small-end", "large-end"])
half_degrees = st.floats(0.5, 35)
half_angles = st.floats(math.radians(0.5), math.radians(60))
sizes = st.floats(1, 100)
shares = st.floats(0.05, 0.95)


def answer(verb: str, **request: Any) -> Any:
    """Result of one operation, straight through its models, in mm."""
    operation: Any = load_registry().operations[f"tapers.{verb}"]
    return operation.calculate(operation.request(units="mm", **request)).result


@few
@given(half_degrees, sizes, shares, st.floats(0.02, 0.2), standings)
def test_over_rolls_there_and_back(
    half: float, length: float, share: float, roll: float, standing: str
) -> None:
    """Measures expected over rolls give back the slope and both diameters of the nominal taper."""
    small = length * share + 1
    large = small + 2 * length * math.tan(math.radians(half))
    set_up = {"length": length, "roll_diameter": roll * length, "stack_rise": 0.6 * length}
    expected = answer(
        "over-rolls-nominal", half_angle=half, large_diameter=large, standing_on=standing, **set_up
    )
    back = answer(
        "over-rolls",
        lower_measure=expected.lower_measure,
        upper_measure=expected.upper_measure,
        **set_up,
    )
    assert back.half_angle.value.degrees == pytest.approx(half, rel=1e-7)
    assert back.large_diameter.value == pytest.approx(large, rel=1e-7)
    assert back.small_diameter.value == pytest.approx(small, rel=1e-7)
    assert back.lower_contact_height == pytest.approx(expected.lower_contact_height, rel=1e-7)
    assert back.upper_contact_height == pytest.approx(expected.upper_contact_height, rel=1e-7)


@few
@given(half_degrees, sizes, st.floats(0.1, 0.4), st.floats(0.5, 0.9))
def test_over_balls_there_and_back(half: float, mouth: float, first: float, second: float) -> None:
    """Depths expected of two balls give back the slope and the mouth of the nominal socket."""
    slope = math.tan(math.radians(half))
    length = 0.95 * mouth / (2 * slope)
    # Balls that touch at these shares of the length, from the diameter there.
    balls = [
        (mouth - 2 * share * length * slope) / math.cos(math.radians(half))
        for share in (first, second)
    ]
    sized = {"length": length, "large_ball_diameter": balls[0], "small_ball_diameter": balls[1]}
    expected = answer("over-balls-nominal", half_angle=half, large_diameter=mouth, **sized)
    assert expected.large_ball_contact_depth == pytest.approx(first * length, rel=1e-7)
    back = answer(
        "over-balls",
        large_ball_depth=expected.large_ball_depth,
        small_ball_depth=expected.small_ball_depth,
        **sized,
    )
    assert back.half_angle.value.degrees == pytest.approx(half, rel=1e-6)
    assert back.large_diameter.value == pytest.approx(mouth, rel=1e-6)
    one = answer(
        "one-ball",
        half_angle=half,
        ball_diameter=balls[0],
        ball_depth=expected.large_ball_depth,
        length=length,
    )
    assert one.large_diameter.value == pytest.approx(mouth, rel=1e-7)


@few
@given(
    half_degrees,
    st.floats(1e-3, 1),
    st.sampled_from(["square-to-surface", "radius", "diameter", "axial"]),
)
def test_infeed_there_and_back(half: float, amount: float, measure: str) -> None:
    """A layer stated in any measure, answered in all, is the same layer stated in any other."""
    first = answer("infeed", half_angle=half, amount=amount, amount_is=measure)
    forms = {
        "square-to-surface": first.off_normal,
        "radius": first.off_radius,
        "diameter": first.off_diameter,
        "axial": first.axial_shift,
    }
    assert forms[measure] == pytest.approx(amount, rel=1e-12)
    for other, value in forms.items():
        again = answer("infeed", half_angle=half, amount=value, amount_is=other)
        assert again.off_normal == pytest.approx(first.off_normal, rel=1e-12)


@few
@given(half_angles, st.floats(1e-3, 1), st.floats(1e-3, 1))
def test_passes_take_off_the_stock(half: float, stock: float, per_pass: float) -> None:
    """Passes of the downfeed add up to the stock, and none exceeds the downfeed."""
    count, last = feed.passes(stock, per_pass)
    assert (count - 1) * per_pass + last == pytest.approx(stock, rel=1e-9)
    assert 0 < last <= per_pass * (1 + 1e-6)
    assert feed.off_diameter(stock, half) == pytest.approx(
        2 * math.tan(half) * feed.axial_shift(stock, half)
    )


@few
@given(half_degrees, sizes, shares, shares)
def test_gauge_depth_there_and_back(half: float, large: float, one: float, two: float) -> None:
    """Depths expected of two gauges give back slope and diameters of the nominal taper."""
    assume(abs(one - two) > 0.05)
    slope = math.tan(math.radians(half))
    length = 0.9 * large / (2 * slope)
    gauges = [large - 2 * share * length * slope for share in (one, two)]
    nominal = {"half_angle": half, "large_diameter": large, "length": length}
    depths = [answer("plug-depth-nominal", gauge_diameter=g, **nominal).gauge_depth for g in gauges]
    assert depths == pytest.approx([one * length, two * length], rel=1e-7)
    back = answer(
        "plug-depth",
        gauge_diameter=gauges[0],
        gauge_depth=depths[0],
        second_gauge_diameter=gauges[1],
        second_gauge_depth=depths[1],
        length=length,
    )
    assert back.half_angle.value.degrees == pytest.approx(half, rel=1e-7)
    assert back.large_diameter.value == pytest.approx(large, rel=1e-7)


@few
@given(half_angles, sizes, shares, st.floats(0.2, 0.9))
def test_vee_there_and_back(half: float, width: float, share: float, ratio: float) -> None:
    """Tops expected of two rolls in a vee give back its angle and its width."""
    large = share * width / math.cos(half)
    expected = answer(
        "vee-over-rolls-nominal",
        vee_angle=math.degrees(2 * half),
        face_width=width,
        roll_diameters=[large, large * ratio],
    )
    tops = [roll.roll_top for roll in expected.rolls]
    found = contact.vee_half_angle(large, large * ratio, tops[0], tops[1])
    assert found == pytest.approx(half, rel=1e-7)
    assert contact.vee_width(tops[0], found, large) == pytest.approx(width, rel=1e-7)


@few
@given(sizes, sizes, st.floats(0.1, 10), st.floats(0.1, 10))
def test_gauges_in_the_wrong_order_are_refused(
    diameter: float, depth: float, apart: float, difference: float
) -> None:
    """Two gauges of which the larger rests deeper are refused, whichever is named first."""
    with pytest.raises(Impossible, match="nearer to the small end"):
        plugs.half_angle_by_depths(diameter, depth, diameter + difference, depth + apart)
    with pytest.raises(Impossible, match="nearer to the small end"):
        plugs.half_angle_by_depths(diameter + difference, depth + apart, diameter, depth)
