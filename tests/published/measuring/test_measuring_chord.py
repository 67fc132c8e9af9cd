"""The angle between two arms by the chord over their rolls."""

import math
from typing import Any

import mpmath
import pytest
from shapely.geometry import Point

from coverage_support import half_width_of_rectangles
from halfangle_service.errors import Disagreement, Impossible
from support import Call, assert_values

_ARMS: dict[str, Any] = {
    "units": "in",
    "first_center_distance": 5,
    "second_center_distance": 5,
    "first_roll_diameter": 1,
    "second_roll_diameter": 0.75,
}
_UNEQUAL = _ARMS | {"second_center_distance": 3}


@pytest.mark.outside(
    "measuring.chord", source="shapely: centers at the arms' ends, less or with the rolls"
)
@pytest.mark.parametrize("arms", [_ARMS, _UNEQUAL])
@pytest.mark.parametrize("angle", [20.0, 60.0, 90.0, 135.0])
def test_rolls_at_the_ends_of_the_arms(call: Call, arms: dict[str, Any], angle: float) -> None:
    """The gap between the rolls, and the width over them, are those of circles laid out so."""
    p, q = arms["first_center_distance"], arms["second_center_distance"]
    turned = math.radians(angle)
    apart = Point(p, 0).distance(Point(q * math.cos(turned), q * math.sin(turned)))
    gap = call("measuring.chord", **arms, measure_is="between-rolls", angle=angle)["result"]
    over = call("measuring.chord", **arms, measure_is="over-both-rolls", angle=angle)["result"]
    assert gap["measure"]["value"] == pytest.approx(apart - 0.875)
    assert over["measure"]["value"] == pytest.approx(apart + 0.875)
    assert_values(gap, {"chord": apart})


@pytest.mark.outside("measuring.chord", source="mpmath: the arms' triangle solved by its tangents")
@pytest.mark.parametrize("arms", [_ARMS, _UNEQUAL])
@pytest.mark.parametrize("angle", [0.5, 47.0, 101.0, 170.0])
def test_the_measure_gives_the_angle_back(call: Call, arms: dict[str, Any], angle: float) -> None:
    """From the measure the angle returns, and its step is the derivative taken by mpmath."""
    p, q = arms["first_center_distance"], arms["second_center_distance"]
    set_to = call("measuring.chord", **arms, measure_is="over-both-rolls", angle=angle)["result"]
    sent = arms | {"measure_is": "over-both-rolls", "measure": set_to["measure"]["value"]}
    back = call("measuring.chord", **sent)["result"]
    assert back["angle"]["value"]["degrees"] == pytest.approx(angle, abs=1e-9)

    def solved(c: Any) -> Any:
        s = (p + q + c) / 2
        return 2 * mpmath.atan(mpmath.sqrt((s - p) * (s - q) / (s * (s - c))))

    step = float(mpmath.diff(solved, set_to["chord"])) * 0.0001 * 206264.806
    lean = math.degrees(math.asin(min(1.0, 1 / (min(p, q) * step / 0.0001 / 206264.806))))
    assert back["arcsec_per_measure_step"] == pytest.approx(step, rel=1e-6)
    assert back["lean_of_chord"] == pytest.approx(lean, rel=1e-5)
    sine = (
        None if angle >= 90 else 0.0001 * 206264.806 / (min(p, q) * math.cos(math.radians(angle)))
    )
    assert back["sine_arcsec_per_step"] == pytest.approx(sine)


def test_past_45_degrees_the_chord_turns_less_than_a_sine_bar(call: Call) -> None:
    """With equal arms 1/(L cos(θ/2)) against 1/(L cos θ): at 75° 5.2″ against 15.9″ a step."""
    result = call("measuring.chord", **_ARMS, measure_is="between-rolls", angle=75)["result"]
    per_radian = 0.0001 / 5 * 206264.806
    expected = {
        "arcsec_per_measure_step": per_radian / math.cos(math.radians(37.5)),
        "sine_arcsec_per_step": per_radian / math.cos(math.radians(75)),
        "lean_of_chord": 90 - 37.5,
    }
    assert_values(result, expected, rel=1e-7)


def test_its_uncertainty_follows_the_derivatives(call: Call) -> None:
    """Of a measured angle: dθ/dc for measure and rolls, −(p − q cos θ) of it for an arm."""
    limits = {
        "measure_error_limit": 0.0002,
        "roll_error_limit": 0.0001,
        "center_distance_error_limit": 0.0003,
    }
    arms = _UNEQUAL | {"measure_is": "between-rolls"} | limits
    p, q, angle = 5.0, 3.0, math.radians(70)
    c = math.sqrt(p * p + q * q - 2 * p * q * math.cos(angle))
    per_chord = c / (p * q * math.sin(angle))
    by_arm = [(p - q * math.cos(angle)) / c, (q - p * math.cos(angle)) / c]
    found = call("measuring.chord", **arms, measure=c - 0.875)["result"]
    parts = [0.0002, 0.00005, 0.00005, *(0.0003 * abs(share) for share in by_arm)]
    parts = [part * per_chord * 206264.806 for part in parts]
    assert found["angle"]["worst_case"] == pytest.approx(sum(parts), rel=1e-4)
    covered = half_width_of_rectangles(*parts)
    assert found["angle"]["expanded_uncertainty"] == pytest.approx(covered, rel=2e-3)
    assert found["measure"]["worst_case"] == pytest.approx(0.0002)
    to_set = call("measuring.chord", **arms, angle=70)["result"]["measure"]
    own = [0.00005, 0.00005, *(0.0003 * abs(share) for share in by_arm)]
    assert to_set["worst_case"] == pytest.approx(sum(own), rel=1e-4)
    assert to_set["value"] == pytest.approx(c - 0.875)


@pytest.mark.parametrize(
    ("change", "refusal", "words"),
    [
        ({"angle": 70, "measure": 3}, Disagreement, "were sent together"),
        ({}, Disagreement, "all missing"),
        ({"angle": 5}, Impossible, "cut into one another"),
        ({"angle": 5e-324}, Impossible, "enclose no angle"),
        ({"measure": 9.2}, Impossible, "between 0 in? ?.*apart"),
        ({"angle": 70, "first_center_distance": 500}, Disagreement, "center distance of 500 in"),
    ],
)
def test_what_no_arms_make_is_refused(
    call: Call, change: dict[str, Any], refusal: type[Exception], words: str
) -> None:
    """Angle and measure together, neither, rolls in one another, no triangle, no such arm."""
    with pytest.raises(refusal, match=words):
        call("measuring.chord", **(_ARMS | {"measure_is": "between-rolls"} | change))
