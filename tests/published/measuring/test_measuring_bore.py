"""A bore over two touching balls: a published problem, and circles in a rectangle."""

import math
from typing import Any

import pytest
from scipy.optimize import brentq
from shapely.geometry import LineString, Point

from coverage_support import half_width_of_rectangles
from halfangle_service.errors import Impossible
from support import Call, assert_values

_PROBLEM: dict[str, Any] = {
    "units": "mm",
    "lower_ball_diameter": 60,
    "upper_ball_diameter": 40,
    "lower_ball_depth": 35.55,
    "upper_ball_depth": 20.55,
}


@pytest.mark.outside(
    "measuring.bore",
    source="GATE mechanical, recessed ring over balls of 40 and 60 mm: the key, 92 to 94 mm, from "
    "memory; D = (r1 + r2) + √((r1 + r2)² − dz²), what-when-how.com",
)
def test_the_published_problem(call: Call) -> None:
    """Depths 20.55 and 35.55 mm to balls of 40 and 60 mm: 50 + √(50² − 25²) = 93.30 mm."""
    result = call("measuring.bore", **_PROBLEM)["result"]
    assert result["bore_diameter"]["value"] == pytest.approx(93.3013, abs=5e-5)
    assert 92.0 < result["bore_diameter"]["value"] < 94.0
    expected = {"center_rise": 25.0, "lean_of_centers": 60.0}
    assert_values(result, expected | {"lower_contact_depth": 65.55, "upper_contact_depth": 40.55})


@pytest.mark.outside("measuring.bore", source="shapely: balls against both walls and each other")
@pytest.mark.parametrize(("lower", "upper"), [(60.0, 40.0), (30.0, 50.0), (45.0, 45.0)])
def test_the_balls_touch_the_walls_and_each_other(call: Call, lower: float, upper: float) -> None:
    """In the answered bore each ball is one radius off its wall, and the balls just touch."""
    upper_depth = 5.0

    def answered(lower_depth: float) -> dict[str, Any]:
        balls = {"lower_ball_diameter": lower, "upper_ball_diameter": upper}
        depths = {"lower_ball_depth": lower_depth, "upper_ball_depth": upper_depth}
        result: dict[str, Any] = call("measuring.bore", units="mm", **balls, **depths)["result"]
        return result

    lower_depth = upper_depth + upper / 2 - lower / 2 + 0.4 * (lower + upper)
    result = answered(lower_depth)
    bore = result["bore_diameter"]["value"]
    walls = [LineString([(x, -200), (x, 200)]) for x in (0.0, bore)]
    low = Point(lower / 2, lower_depth + lower / 2)
    high = Point(bore - upper / 2, upper_depth + upper / 2)
    assert low.distance(walls[0]) == pytest.approx(lower / 2)
    assert high.distance(walls[1]) == pytest.approx(upper / 2)
    assert low.distance(high) == pytest.approx((lower + upper) / 2, rel=1e-12)
    assert result["lower_contact_depth"] == pytest.approx(low.y)
    assert result["upper_contact_depth"] == pytest.approx(high.y)
    # And back: the depth that gives this bore is the one sent.
    found = brentq(
        lambda z: answered(z)["bore_diameter"]["value"] - bore, lower_depth - 1, lower_depth + 1
    )
    assert found == pytest.approx(lower_depth, abs=1e-6)


def test_its_uncertainty_follows_the_derivatives(call: Call) -> None:
    """dD/dz = −dz/h, dD/dd = ½ + (s − ... )/(2h): by hand at the problem's own figures."""
    result = call("measuring.bore", **_PROBLEM, measure_error_limit=0.01, roll_error_limit=0.002)[
        "result"
    ]["bore_diameter"]
    across = math.sqrt(50**2 - 25**2)
    # A ball's diameter moves its own center too: by half, down for the lower and up for the upper.
    lower = 0.5 + (50 - 25) / (2 * across)
    upper = 0.5 + (50 + 25) / (2 * across)
    depth = 25 / across
    parts = [0.01 * depth, 0.01 * depth, 0.002 * lower, 0.002 * upper]
    assert result["worst_case"] == pytest.approx(sum(parts), rel=1e-5)
    assert result["expanded_uncertainty"] == pytest.approx(
        half_width_of_rectangles(*parts), rel=1e-3
    )
    assert result["not_stated"] == []


@pytest.mark.parametrize(
    ("change", "words"),
    [
        ({"lower_ball_depth": 5.0}, "above the other"),
        ({"lower_ball_depth": 61.0}, "less than 50"),
        ({"lower_ball_depth": 60.0}, "has no room"),
        ({"upper_ball_depth": -20.5, "lower_ball_depth": -5.0}, "no wall to touch"),
        ({"measure_error_limit": 25.1}, "swallows"),
    ],
)
def test_balls_that_no_bore_holds_are_refused(
    call: Call, change: dict[str, Any], words: str
) -> None:
    """Balls the wrong way round, apart, in too narrow a bore or above the face are refused."""
    with pytest.raises(Impossible, match=words):
        call("measuring.bore", **(_PROBLEM | change))
