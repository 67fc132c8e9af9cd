"""Gauges by depth, and vees and dovetails in the nominal direction, against drawn geometry."""

import math
from typing import Any

import pytest
from litestar.testing import TestClient
from shapely.geometry import LineString, Point

from coverage_support import half_width_of_rectangles
from halfangle_service.errors import Disagreement, Impossible
from support import Call

SOCKET: dict[str, Any] = {"units": "mm", "length": 64}


def wall(large: float, half_degrees: float, length: float) -> LineString:
    """A cone's side as a line: x along the axis from the large end, y the radius."""
    end = large / 2 - length * math.tan(math.radians(half_degrees))
    return LineString([(0, large / 2), (length, end)])


def station_of(side: LineString, diameter: float) -> float:
    """Where the side has that diameter, by intersection with a line along the axis."""
    point = side.intersection(LineString([(-10, diameter / 2), (1000, diameter / 2)]))
    assert isinstance(point, Point)
    return float(point.x)


@pytest.mark.outside("tapers.plug-depth-nominal", source="shapely: the side cut at the diameter")
@pytest.mark.parametrize("gauge", [17.9, 16.5, 15.2])
def test_a_gauge_rests_where_the_side_has_its_diameter(call: Call, gauge: float) -> None:
    """The depth to expect is the station at which the drawn side has the gauge's diameter."""
    result = call(
        "tapers.plug-depth-nominal",
        half_angle=1.43,
        large_diameter=18,
        gauge_diameter=gauge,
        large_diameter_tolerance=0.01,
        **SOCKET,
    )["result"]
    assert result["gauge_depth"] == pytest.approx(station_of(wall(18, 1.43, 64), gauge), rel=1e-9)
    limits = {"smallest_gauge_depth": 17.99, "largest_gauge_depth": 18.01}
    for name, large in limits.items():
        expected = (large - gauge) / 2 / math.tan(math.radians(1.43))
        assert result[name] == pytest.approx(expected, rel=1e-9)


@pytest.mark.outside("tapers.plug-depth", source="shapely: two sharp edges on a drawn side")
def test_two_gauges_find_the_taper(call: Call) -> None:
    """Two edges of known diameter, where the drawn side has them, give back slope and diameters."""
    side = wall(18, 1.5, 64)
    result = call(
        "tapers.plug-depth",
        gauge_diameter=17.5,
        gauge_depth=station_of(side, 17.5),
        second_gauge_diameter=15.5,
        second_gauge_depth=station_of(side, 15.5),
        gauge_line=10,
        half_angle=1.49,
        **SOCKET,
    )["result"]
    assert result["half_angle"]["value"]["degrees"] == pytest.approx(1.5, rel=1e-9)
    assert result["large_diameter"]["value"] == pytest.approx(18, rel=1e-9)
    at_end = side.intersection(LineString([(64, 0), (64, 100)]))
    assert isinstance(at_end, Point)
    assert result["small_diameter"]["value"] == pytest.approx(2 * at_end.y, rel=1e-9)
    at_line = side.intersection(LineString([(10, 0), (10, 100)]))
    assert isinstance(at_line, Point)
    assert result["gauge_line_diameter"]["value"] == pytest.approx(2 * at_line.y, rel=1e-9)
    assert result["included_angle_off_stated_arcsec"] == pytest.approx(0.02 * 3600, rel=1e-6)


@pytest.mark.outside(
    "tapers.plug-depth", source="ISO 296:1991, Morse 2: D 17.780 mm, a 5 mm, D1 18.0 mm"
)
def test_a_morse_gauge_line_under_the_mouth(call: Call) -> None:
    """A Morse 2 plug whose gauge line lies 5 mm under the mouth shows the printed D1, 18.0 mm."""
    result = call(
        "tapers.plug-depth",
        one_in_x=20.02,
        gauge_diameter=17.78,
        gauge_depth=5,
        gauge_length=59,
        **SOCKET,
    )["result"]
    assert result["large_diameter"]["value"] == pytest.approx(18.0, abs=0.05)
    assert result["engaged_length"] == pytest.approx(59)


def test_uncertainty_by_depth_follows_the_derivatives(call: Call) -> None:
    """Errors of gauge, depth and angle reach the diameter by 1, 2 tan α and 2 p sec² α."""
    half = math.radians(1.5)
    result = call(
        "tapers.plug-depth",
        half_angle=1.5,
        gauge_diameter=17.78,
        gauge_depth=4,
        gauge_error_limit=0.001,
        depth_error_limit=0.02,
        included_angle_error_limit_arcsec=20,
        **SOCKET,
    )["result"]
    angle = math.radians(10 / 3600)
    terms = (0.001, 2 * math.tan(half) * 0.02, 8 / math.cos(half) ** 2 * angle)
    assert result["gauge_line_diameter"]["worst_case"] == pytest.approx(sum(terms), rel=1e-6)
    covered = half_width_of_rectangles(*terms)
    assert result["gauge_line_diameter"]["expanded_uncertainty"] == pytest.approx(covered, rel=3e-4)


@pytest.mark.parametrize(
    ("changed", "error", "reason"),
    [
        ({"half_angle": None}, Disagreement, "slope of the cone is missing"),
        ({"gauge_depth": 70}, Impossible, "misses the part's cone"),
        ({"gauge_depth": -3}, Impossible, "misses the part's cone"),
        ({"gauge_diameter": 2.0}, Impossible, "comes to its point"),
        ({"gauge_line": 65}, Impossible, "gauge line would touch"),
        ({"second_gauge_depth": 20}, Disagreement, "needs its diameter"),
        (
            {"second_gauge_depth": 2, "second_gauge_diameter": 15},
            Impossible,
            "nearer to the small end",
        ),
        (
            {"second_gauge_depth": 90, "second_gauge_diameter": 15},
            Impossible,
            "second gauge would touch",
        ),
        (
            {"second_gauge_depth": 30, "second_gauge_diameter": 15, "gauge_length": 9},
            Disagreement,
            "sharp edges",
        ),
        (
            {"second_gauge_depth": 6, "second_gauge_diameter": 17.7, "depth_error_limit": 3},
            Impossible,
            "swallow",
        ),
    ],
)
def test_gauges_that_tell_nothing_are_refused(
    call: Call, changed: dict[str, Any], error: type[Exception], reason: str
) -> None:
    """Gauges off the part, contradictory ones, and tolerances above the difference are refused."""
    request = {"half_angle": 1.5, "gauge_diameter": 17.78, "gauge_depth": 4, **SOCKET, **changed}
    with pytest.raises(error, match=reason):
        call("tapers.plug-depth", **{k: v for k, v in request.items() if v is not None})


def test_a_gauge_too_large_or_a_point_is_refused(call: Call) -> None:
    """A gauge larger than the part's cone, or a cone that ends early, has no depth to expect."""
    nominal: dict[str, Any] = {"half_angle": 1.5, "large_diameter": 18, "units": "mm"}
    with pytest.raises(Impossible, match="misses the part's cone"):
        call("tapers.plug-depth-nominal", gauge_diameter=18.5, length=64, **nominal)
    with pytest.raises(Impossible, match="comes to its point"):
        call("tapers.plug-depth-nominal", gauge_diameter=17, length=640, **nominal)


@pytest.mark.outside("tapers.vee-over-rolls-nominal", source="shapely: rolls tangent to the sides")
@pytest.mark.parametrize("angle", [40.0, 60.0, 90.0, 120.0])
def test_rolls_touch_a_nominal_vee(call: Call, angle: float) -> None:
    """Rolls at the answered heights stand one radius off the side and touch where answered."""
    half = math.radians(angle / 2)
    request = {"units": "mm", "vee_angle": angle, "face_width": 50, "roll_diameters": [40, 20]}
    result = call("tapers.vee-over-rolls-nominal", **request)["result"]
    side = LineString([(0, -result["apex_depth"]), (25, 0)])
    for roll in result["rolls"]:
        center = Point(0, roll["roll_top"] - roll["roll_diameter"] / 2)
        assert side.distance(center) == pytest.approx(roll["roll_diameter"] / 2, rel=1e-9)
        touch = side.interpolate(side.project(center))
        assert roll["contact_depth"] == pytest.approx(-touch.y, abs=1e-9)
    largest = Point(0, result["largest_roll_diameter"] / 2 * math.sin(half))
    assert largest.distance(Point(25, 0)) == pytest.approx(result["largest_roll_diameter"] / 2)


def test_a_roll_too_large_for_the_vee_is_refused(call: Call) -> None:
    """A roll that would touch over the edges is refused, and named."""
    request = {"units": "mm", "vee_angle": 60, "face_width": 40, "roll_diameters": [20, 47]}
    with pytest.raises(Impossible, match="roll would touch") as refused:
        call("tapers.vee-over-rolls-nominal", **request)
    assert "roll_diameters/1" in refused.value.fields


def test_uncertainty_of_a_vee(call: Call) -> None:
    """δν = tan ν (δR − δr − sin ν δrise) / (R − r): worst case by its derivatives."""
    request = {
        "large_roll_diameter": 40,
        "small_roll_diameter": 20,
        "large_roll_top": 20,
        "small_roll_top": -10,
    }
    result = call("tapers.vee-over-rolls", units="mm", measure_error_limit=0.002, **request)[
        "result"
    ]
    worst = math.degrees(0.004 * math.tan(math.radians(30)) / 20) * 3600
    assert result["vee_half_angle"]["worst_case"] == pytest.approx(worst, rel=1e-6)
    covered = half_width_of_rectangles(worst / 2, worst / 2)
    assert result["vee_half_angle"]["expanded_uncertainty"] == pytest.approx(covered, rel=3e-4)
    assert result["face_width"]["expanded_uncertainty"] > 0
    with pytest.raises(Impossible, match="swallow"):
        call("tapers.vee-over-rolls", units="mm", measure_error_limit=12, **request)


@pytest.mark.parametrize("given", ["corner_width", "measure"])
def test_uncertainty_of_a_dovetail(call: Call, given: str) -> None:
    """Errors of roll and angle reach the width by 1 + cot(θ/2) and d / (2 sin²(θ/2))."""
    result = call(
        "tapers.dovetail-over-rolls",
        units="mm",
        kind="male",
        flank_angle=60,
        flank_height=10,
        roll_diameter=8,
        measure_error_limit=0.003,
        roll_error_limit=0.001,
        flank_angle_error_limit_arcsec=30,
        **{given: 70},
    )["result"]
    half = math.radians(30)
    by_angle = 8 / (2 * math.sin(half) ** 2) * math.radians(30 / 3600)
    terms = [0.001 * (1 + 1 / math.tan(half)), by_angle]
    terms += [0.003] if given == "measure" else []
    sought = result["corner_width" if given == "measure" else "measure"]
    assert sought["worst_case"] == pytest.approx(sum(terms), rel=1e-6)
    covered = half_width_of_rectangles(*terms)
    assert sought["expanded_uncertainty"] == pytest.approx(covered, rel=3e-4)


def test_gauging_by_http(service: TestClient[Any]) -> None:
    """Both directions answer over HTTP, and a refusal names the field."""
    body = {
        "units": "mm",
        "one_in_x": 20,
        "gauge_diameter": 17.78,
        "gauge_depth": 0.5,
        "length": 64,
    }
    answer = service.post("/v1/tapers/plug-depth", json=body)
    assert answer.json()["result"]["gauge_line_diameter"]["value"] == pytest.approx(17.805)
    wrong = service.post("/v1/tapers/plug-depth", json={**body, "gauge_depth": 80})
    assert wrong.status_code == 422
    assert wrong.json()["errors"][0]["pointer"] == "/gauge_depth"


def test_a_gauge_with_a_cone_is_taken_to_fit(call: Call) -> None:
    """The answer says that slopes are taken as equal for a gauge's cone, and not for an edge."""
    request = {"half_angle": 1.5, "gauge_diameter": 17.78, "gauge_depth": 4, **SOCKET}
    cone = call("tapers.plug-depth", gauge_length=50, **request)
    assert [advisory["code"] for advisory in cone["advisories"]] == ["gauge-slope-assumed"]
    assert call("tapers.plug-depth", **request)["advisories"] == []
