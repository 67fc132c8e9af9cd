"""Rolls and balls against textbook examples and brute-force tangent circles."""

import math
from typing import Any

import pytest
from shapely.geometry import LineString, Point

from coverage_support import half_width_of_rectangles
from halfangle_service.errors import Impossible
from support import Call


def side(diameter: float, slope: float, length: float) -> LineString:
    """A side of a cone as a line: x along the axis from the standing face, y the radius."""
    return LineString([(0, diameter / 2), (length, diameter / 2 + slope * length)])


@pytest.mark.outside("tapers.over-rolls-nominal", source="shapely: distance from center to side")
@pytest.mark.parametrize("standing", ["small-end", "large-end"])
def test_rolls_touch_the_side(call: Call, standing: str) -> None:
    """Rolls at the answered measures stand one radius off the side, and touch where answered."""
    r = 0.25
    result = call(
        "tapers.over-rolls-nominal",
        units="in",
        included_angle=20,
        large_diameter=3,
        length=4,
        standing_on=standing,
        roll_diameter=2 * r,
        lower_stack=0.5,
        stack_rise=2,
    )["result"]
    slope = math.tan(math.radians(10)) * (1 if standing == "small-end" else -1)
    base = 3 - 8 * slope if standing == "small-end" else 3
    line = side(base, slope, 4)
    for name, height in (("lower", 0.75), ("upper", 2.75)):
        center = Point(height, result[f"{name}_measure"] / 2 - r)
        assert line.distance(center) == pytest.approx(r, rel=1e-9)
        touch = line.interpolate(line.project(center)).x
        assert result[f"{name}_contact_height"] == pytest.approx(touch, rel=1e-9)


@pytest.mark.outside(
    "tapers.over-rolls", source="shapely: circles tangent to a side, measured over"
)
def test_a_taper_is_found_again_over_rolls(call: Call) -> None:
    """Measures over tangent rolls give back the angle and both diameters."""
    slope, r = math.tan(math.radians(3)), 6.0
    line = side(40, slope, 120)
    measures = []
    for height in (r, r + 75):
        low, high = 20.0, 60.0
        for _ in range(80):
            middle = (low + high) / 2
            clear = line.distance(Point(height, middle)) > r
            low, high = (low, middle) if clear else (middle, high)
        measures.append(2 * (high + r))
    result = call(
        "tapers.over-rolls",
        units="mm",
        roll_diameter=12,
        lower_measure=measures[0],
        upper_measure=measures[1],
        stack_rise=75,
        length=120,
    )["result"]
    assert result["half_angle"]["value"]["degrees"] == pytest.approx(3, abs=1e-9)
    assert result["small_diameter"]["value"] == pytest.approx(40, abs=1e-9)
    assert result["large_diameter"]["value"] == pytest.approx(40 + 240 * slope, abs=1e-9)


def test_uncertainty_over_rolls_follows_the_derivative(call: Call) -> None:
    """The half angle's worst case is cos²α (δM1 + δM2) / (2 H) for errors of the measures."""
    request: dict[str, Any] = {"units": "mm", "roll_diameter": 12, "stack_rise": 75, "length": 100}
    result = call(
        "tapers.over-rolls",
        lower_measure=60.21,
        upper_measure=67.695,
        measure_error_limit=0.002,
        **request,
    )["result"]
    half = math.atan((67.695 - 60.21) / 150)
    worst = math.degrees(math.cos(half) ** 2 * 0.004 / 150) * 3600
    assert result["half_angle"]["worst_case"] == pytest.approx(worst, rel=1e-6)
    covered = half_width_of_rectangles(worst / 2, worst / 2)
    assert result["half_angle"]["expanded_uncertainty"] == pytest.approx(covered, rel=3e-4)


@pytest.mark.outside(
    "tapers.over-balls",
    source="a published textbook question: balls 40 and 32 mm, from memory 5.73°",
)
def test_two_balls_in_a_socket(call: Call) -> None:
    """Balls of 40 and 32 mm, 8 out and 76 below: centers 80 apart, sin α = 4/80."""
    result = call(
        "tapers.over-balls",
        units="mm",
        large_ball_diameter=40,
        small_ball_diameter=32,
        large_ball_depth=-8,
        small_ball_depth=76,
        length=120,
    )["result"]
    assert result["included_angle"]["degrees"] == pytest.approx(5.73, abs=0.005)


@pytest.mark.outside("tapers.over-balls-nominal", source="shapely: circles one radius off the wall")
def test_balls_touch_the_wall(call: Call) -> None:
    """Both balls lie one radius off the wall, and give back the socket that they lie in."""
    size = {"large_ball_diameter": 0.6875, "small_ball_diameter": 0.625}
    nominal = {"units": "in", "taper_per_foot": 0.59941, "large_diameter": 0.7, "length": 2.5}
    expected = call("tapers.over-balls-nominal", **nominal, **size)["result"]
    slope = 0.59941 / 24
    wall = LineString([(0, 0.35), (2.5, 0.35 - 2.5 * slope)])
    depths = {name: expected[name] for name in ("large_ball_depth", "small_ball_depth")}
    for depth, ball in zip(depths.values(), size.values(), strict=True):
        center = Point(depth + ball / 2, 0)
        assert wall.distance(center) == pytest.approx(ball / 2, rel=1e-9)
    back = call("tapers.over-balls", units="in", length=2.5, **size, **depths)["result"]
    assert back["large_diameter"]["value"] == pytest.approx(0.7, rel=1e-9)
    assert back["taper_per_foot"] == pytest.approx(0.59941, rel=1e-9)


@pytest.mark.outside("tapers.one-ball", source="shapely: distance of a ball's center to the wall")
def test_one_ball_gives_the_mouth(call: Call) -> None:
    """The wall drawn from the answered mouth is one radius from the ball's center."""
    result = call(
        "tapers.one-ball",
        units="in",
        included_angle=60,
        ball_diameter=0.5,
        ball_depth=-0.2,
        length=0.5,
    )["result"]
    mouth = result["large_diameter"]["value"] / 2
    wall = LineString([(0, mouth), (0.5, mouth - 0.5 * math.tan(math.radians(30)))])
    assert wall.distance(Point(0.05, 0)) == pytest.approx(0.25, rel=1e-9)
    assert result["contact_diameter"] == pytest.approx(0.5 * math.cos(math.radians(30)))


@pytest.mark.outside("tapers.vee-over-rolls", source="shapely: rolls tangent to the vee's sides")
def test_vee_over_rolls(call: Call) -> None:
    """Rolls of 40 and 20 mm, centers 20 mm apart, lie in a 60° vee and touch both its sides."""
    result = call(
        "tapers.vee-over-rolls",
        units="mm",
        large_roll_diameter=40,
        small_roll_diameter=20,
        large_roll_top=20,
        small_roll_top=-10,
    )["result"]
    assert result["vee_angle"]["degrees"] == pytest.approx(60)
    flank = LineString(
        [(0, -result["apex_depth"]["value"]), (result["face_width"]["value"] / 2, 0)]
    )
    assert flank.distance(Point(0, 0)) == pytest.approx(20)
    assert flank.distance(Point(0, -20)) == pytest.approx(10)


@pytest.mark.outside(
    "tapers.dovetail-over-rolls",
    source="Machinery's Handbook: D (1 + cot(θ/2)); a published dovetail example, base 20, height "
    "4, 60°: 24.6188",
)
def test_dovetail_over_rolls(call: Call) -> None:
    """A 60° dovetail's rolls add 2.7320508 diameters; base 20 and height 4 give 24.6188."""
    result = call(
        "tapers.dovetail-over-rolls",
        units="mm",
        kind="male",
        flank_angle=60,
        flank_height=4,
        roll_diameter=4,
        corner_width=20,
    )["result"]
    assert result["measure"]["value"] - 20 == pytest.approx(4 * 2.7320508, abs=2e-7)
    assert result["edge_width"]["value"] == pytest.approx(24.6188, abs=5e-5)


def test_contacts_off_the_surface_are_refused(call: Call) -> None:
    """Rolls past the taper, balls that miss the wall and rolls past a flank are refused."""
    nominal = {"units": "in", "included_angle": 20, "large_diameter": 3, "roll_diameter": 0.5}
    with pytest.raises(Impossible, match=r"roll would touch 3\.29"):
        call("tapers.over-rolls-nominal", length=3, stack_rise=3, **nominal)
    socket = {"units": "in", "taper_per_foot": 0.6, "large_diameter": 0.7, "length": 2.5}
    with pytest.raises(Impossible, match="ball would touch"):
        call(
            "tapers.over-balls-nominal", large_ball_diameter=0.68, small_ball_diameter=0.4, **socket
        )
    with pytest.raises(Impossible, match="touch no common cone"):
        call(
            "tapers.over-balls",
            units="mm",
            large_ball_diameter=40,
            small_ball_diameter=32,
            large_ball_depth=0,
            small_ball_depth=1,
            length=100,
        )
    with pytest.raises(Impossible, match="roll would touch 6"):
        call(
            "tapers.dovetail-over-rolls",
            units="mm",
            kind="male",
            flank_angle=60,
            flank_height=4,
            roll_diameter=8,
            corner_width=20,
        )


BALLS: dict[str, Any] = {
    "large_ball_diameter": 40,
    "small_ball_diameter": 32,
    "large_ball_depth": -8,
    "small_ball_depth": 76,
}
ROLLS: dict[str, Any] = {
    "large_roll_diameter": 40,
    "small_roll_diameter": 20,
    "large_roll_top": 20,
    "small_roll_top": -10,
}


def swapped(request: dict[str, Any], *ends: str) -> dict[str, Any]:
    """The request with large and small exchanged, in the fields that end so."""
    exchanged = {
        name: "small" + name[5:] if name.startswith("large") else "large" + name[5:]
        for name in request
        if name.endswith(ends)
    }
    return {exchanged.get(name, name): value for name, value in request.items()}


@pytest.mark.parametrize("ends", [("diameter",), ("diameter", "depth", "top")])
@pytest.mark.parametrize(("verb", "sent"), [("over-balls", BALLS), ("vee-over-rolls", ROLLS)])
def test_two_sizes_sent_the_wrong_way_round_are_refused_at_the_sizes(
    call: Call, verb: str, sent: dict[str, Any], ends: tuple[str, ...]
) -> None:
    """Where the larger ball or roll is not the larger one, its diameter is the field to mend."""
    length = {"length": 120} if verb == "over-balls" else {}
    with pytest.raises(Impossible, match="not larger than the other") as refused:
        call(f"tapers.{verb}", units="mm", **swapped(sent, *ends), **length)
    diameters = {name for name in sent if name.endswith("diameter")}
    assert set(refused.value.fields) == diameters


@pytest.mark.parametrize(("verb", "sent"), [("over-balls", BALLS), ("vee-over-rolls", ROLLS)])
def test_readings_sent_the_wrong_way_round_are_refused_at_the_readings(
    call: Call, verb: str, sent: dict[str, Any]
) -> None:
    """Where the sizes are right and the readings exchanged, the readings are the fields to mend."""
    length = {"length": 120} if verb == "over-balls" else {}
    readings = {name for name in sent if not name.endswith("diameter")}
    with pytest.raises(Impossible, match="no common") as refused:
        call(f"tapers.{verb}", units="mm", **swapped(sent, "depth", "top"), **length)
    assert set(refused.value.fields) == readings


@pytest.mark.parametrize(
    ("verb", "request_"),
    [
        ("over-rolls", {"lower_measure": 40, "upper_measure": 45, "stack_rise": 60, "length": 90}),
        ("dovetail-over-rolls", {"kind": "male", "flank_angle": 60, "corner_width": 50}),
    ],
)
def test_rolls_of_another_unit_are_doubted(call: Call, verb: str, request_: dict[str, Any]) -> None:
    """Rolls of 12 mm sent as 12 in are answered with a caution; 12 mm are not doubted."""
    more = {"flank_height": 20} if verb == "dovetail-over-rolls" else {}
    codes = {
        units: [
            a["code"]
            for a in call(f"tapers.{verb}", units=units, roll_diameter=12, **request_, **more)[
                "advisories"
            ]
        ]
        for units in ("in", "mm")
    }
    assert codes == {"in": ["odd-size"], "mm": []}
