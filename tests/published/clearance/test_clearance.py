"""Clearance over a tilted plate against brute force in space, and closed forms."""

import math
from itertools import pairwise
from typing import Any

import numpy as np
import pytest
from shapely.affinity import translate
from shapely.geometry import LineString, Polygon

from halfangle_service.errors import Disagreement, Impossible
from halfangle_service.topics.clearance.tilted_plate import tilted_plate
from halfangle_service.trade.clearance.bodies import Body, HeadPart, box, gaps_between, overlap
from support import Call, changed

EXAMPLE: dict[str, Any] = dict(tilted_plate.example)
SLOW: dict[str, Any] = {
    **EXAMPLE,
    "included_angle": 3,
    "large_diameter": 0.75,
    "small_diameter": 0.7,
    "fixture": {
        **EXAMPLE["fixture"],
        "axis_height": 1.0,
        "body_height": 1.2,
        "front_to_high_end": 3,
    },
}


def _surface_of_revolution(radius: float, start: float, end: float) -> Any:
    """Points of a cylinder about the work's axis, through a full turn, in (u, v, y)."""
    u, turn = np.meshgrid(np.linspace(start, end, 121), np.linspace(0, 2 * math.pi, 721))
    disc_radius, disc_turn = np.meshgrid(
        np.linspace(0, radius, 61), np.linspace(0, 2 * math.pi, 721)
    )
    side = np.stack([u, radius * np.cos(turn), radius * np.sin(turn)], axis=-1).reshape(-1, 3)
    faces = [
        np.stack(
            [
                np.full_like(disc_turn, at),
                disc_radius * np.cos(disc_turn),
                disc_radius * np.sin(disc_turn),
            ],
            axis=-1,
        ).reshape(-1, 3)
        for at in (start, end)
    ]
    return np.vstack([side, *faces])


def _block(left: float, bottom: float, right: float, top: float, width: float) -> Any:
    """Points of a block's surface, in (u, v, y)."""
    grid = np.linspace(0, 1, 161)
    edge = np.array([(left, bottom), (right, bottom), (right, top), (left, top), (left, bottom)])
    way = np.concatenate([a + np.outer(grid, b - a) for a, b in pairwise(edge)])
    across = np.linspace(-width / 2, width / 2, 41)
    return np.array([(u, v, y) for u, v in way for y in across])


def _level(points: Any, half: float, large_radius: float) -> Any:
    """The plate's frame turned by its tilt, the ground line's large end at the origin."""
    u, v, y = points.T
    v = v - large_radius
    return np.column_stack(
        [u * math.cos(half) - v * math.sin(half), y, u * math.sin(half) + v * math.cos(half)]
    )


def _wheel_gap(points: Any, request: dict[str, Any], radius: float, half_width: float) -> float:
    """Least distance of points from a wheel (a solid disc) at 801 places of its stroke."""
    slant = (request["large_diameter"] - request["small_diameter"]) / 2
    slant /= math.sin(math.radians(request["included_angle"] / 2))
    first, last = -request["past_large_end"], slant + request["past_small_end"]
    x, y, z = points.T
    if request["tilt_direction"] == "along-travel":
        along, across, places = x, y, np.linspace(first, last, 801)
    else:
        # The table's travel carries every section under the spindle: here it moves along y.
        along, across = y, x
        last = max(last, first + request["wheel"]["width"])
        places = np.linspace(-3, 3, 801)
    out = np.inf
    reach = request["wheel"]["diameter"] / 2
    if request["tilt_direction"] == "across-travel":
        middle, half_width = (first + last) / 2, (last - first) / 2
        across = across - middle
    beside = np.maximum(np.abs(across) - half_width, 0)
    for place in places[::8]:
        away = np.hypot(along - place, z - reach) - radius
        out = min(out, float(np.min(np.hypot(np.maximum(away, 0), beside))))
    return out


@pytest.mark.outside(
    "clearance.tilted-plate", source="Brute force in space: turned surfaces against a solid wheel"
)
@pytest.mark.parametrize("direction", ["along-travel", "across-travel"])
@pytest.mark.parametrize(
    "request_", [EXAMPLE, changed(SLOW, fixture__stick_out=3)], ids=["center", "slow taper"]
)
def test_gaps_are_those_in_space(call: Call, request_: dict[str, Any], direction: str) -> None:
    """Nose, body and plate are as far from the wheel as their surfaces in space are.

    The nose is turned through a full turn, body and plate are 2 in wide, the wheel is a solid disc
    set at 101 places of its stroke: none is nearer than the gap, and the nearest comes close to it.
    """
    request = changed(request_, tilt_direction=direction)
    fixture, plate = request["fixture"], request["plate"]
    half = math.radians(request["included_angle"] / 2)
    face = -fixture["stick_out"]
    front = face - fixture["nose_length"]
    top = -fixture["axis_height"]
    high = front + fixture["front_to_high_end"]
    bodies = {
        "nose": _surface_of_revolution(fixture["nose_diameter"] / 2, front, face),
        "fixture body": _block(
            front - fixture["body_length"], top, front, top + fixture["body_height"], 2
        ),
        "plate": _block(high - plate["length"], top - plate["thickness"], high, top, 2),
    }
    result = call("clearance.tilted-plate", **request)["result"]
    gaps = {(g["wheel_state"], g["part"], g["body"]): g["gap"] for g in result["gaps"]}
    for name, points in bodies.items():
        level = _level(points, half, request["large_diameter"] / 2)
        found = _wheel_gap(level, request, 3.5, request["wheel"]["width"] / 2)
        assert found == pytest.approx(gaps["new", "wheel", name], abs=0.004)
        assert found > gaps["new", "wheel", name] - 1e-9


@pytest.mark.outside("clearance.tilted-plate", source="Closed form: a nose under the ground line")
def test_stick_out_to_pass_under(call: Call) -> None:
    """At (r_nose − r_large)/tan α + gap/sin α the wheel runs over the nose with just that gap."""
    half = math.radians(1.5)
    expected = (0.625 - 0.375) / math.tan(half) + 0.1 / math.sin(half)
    request = changed(SLOW, past_large_end=expected + 2, past_small_end=0)
    result = call("clearance.tilted-plate", **request)["result"]
    assert result["stick_out_to_pass_under"] == pytest.approx(expected)
    assert result["stick_out_needed"] == pytest.approx(expected, rel=1e-6)
    moved = call("clearance.tilted-plate", **changed(request, fixture__stick_out=expected))
    nose = next(
        g
        for g in moved["result"]["gaps"]
        if (g["wheel_state"], g["part"], g["body"]) == ("new", "wheel", "nose")
    )
    assert nose["gap"] == pytest.approx(0.1)


@pytest.mark.outside("clearance.tilted-plate", source="Closed form: chord of a circle over a step")
def test_a_step_stops_the_wheel(call: Call) -> None:
    """A step s over the ground line stops the wheel's center √(s(2R − s)) before it."""
    request = changed(SLOW, gap_wanted=0, wheel__worn_diameter=None, past_large_end=0.05)
    result = call("clearance.tilted-plate", **request)["result"]
    moved = changed(request, fixture__stick_out=result["stick_out_needed"])
    touching = call("clearance.tilted-plate", **moved)["result"]["smallest_gap"]
    assert touching["gap"] == pytest.approx(0, abs=1e-6)
    step = touching["on_body"]["z"]
    center = -0.05
    assert center - touching["on_body"]["x"] == pytest.approx(
        math.sqrt(step * (7 - step)), rel=1e-6
    )


@pytest.mark.outside("clearance.tilted-plate", source="shapely: outlines pushed apart in all ways")
def test_overlap_is_the_least_way_out() -> None:
    """Two overlapping outlines come apart by that way, and by no shorter one in any direction."""
    first = tuple((x, y) for x, y in Polygon(box(0, 0, 4, 1)).exterior.coords[:-1])
    turn = math.radians(20)
    second = tuple(
        (
            2.5 + x * math.cos(turn) - y * math.sin(turn),
            0.6 + x * math.sin(turn) + y * math.cos(turn),
        )
        for x, y in box(0, 0, 2, 3)
    )
    depth = overlap(first, second)

    def parted(direction: float, way: float) -> bool:
        moved = translate(Polygon(second), way * math.cos(direction), way * math.sin(direction))
        return bool(Polygon(first).intersection(moved).area < 1e-12)

    directions = np.radians(np.arange(0, 360, 0.5))
    assert any(parted(float(d), depth * 1.0001) for d in directions)
    assert not any(parted(float(d), depth * 0.999) for d in directions)
    path = HeadPart("wheel", ((0.5, 0.5), (2.0, 0.5)), 2.0)
    body = Body("block", "turning-part", box(1.0, 0.0, 3.0, 0.75))
    # Up by 0.25, or down by 0.5: the shorter way, and the wheel's radius, part them.
    assert gaps_between([(path, body)])[0].gap == pytest.approx(-2.25)


@pytest.mark.outside("clearance.tilted-plate", source="shapely: a wheel drawn as a fine polygon")
def test_round_wheel_is_not_a_polygon() -> None:
    """The gap of a round wheel is exact; a polygon of 4 × 4000 sides comes within a millionth."""
    path = HeadPart("wheel", ((0.0, 3.5), (0.8, 3.5)), 3.5)
    body = Body("nose", "nose", ((-1.0, -0.3), (-0.4, -0.1), (-0.6, -0.8)))
    drawn = LineString(path.core).buffer(3.5, quad_segs=4000).distance(Polygon(body.corners))
    assert gaps_between([(path, body)])[0].gap == pytest.approx(drawn, abs=1e-6)


def test_changes_clear_by_the_least_that_will_do(call: Call) -> None:
    """The stick-out named gives the gap wanted; a thousandth less does not."""
    answer = call("clearance.tilted-plate", **changed(SLOW, fixture__body_height=2.0))
    assert answer["result"]["forecast"] == "does-not-hold"
    assert "fouling" in [a["code"] for a in answer["advisories"] if a["severity"] == "stop"]
    change = answer["result"]["changes"][0]
    assert (change["kind"], change["keeps_gap_wanted"]) == ("stick-out", True)
    for less, forecast in ((0, "holds"), (0.001, "may-not-hold")):
        moved = changed(
            SLOW, fixture__body_height=2.0, fixture__stick_out=change["change_to"] - less
        )
        assert call("clearance.tilted-plate", **moved)["result"]["forecast"] == forecast


def test_plate_in_the_way_wants_a_riser(call: Call) -> None:
    """A plate far past the point stands in the wheel's way until the fixture is raised."""
    long = changed(
        EXAMPLE,
        fixture__front_to_high_end=7,
        plate__length=11,
        plate__low_roll_from_end=0.5,
        past_small_end=4,
    )
    result = call("clearance.tilted-plate", **long)["result"]
    assert result["smallest_gap"]["body"] == "plate"
    riser = next(c for c in result["changes"] if c["kind"] == "riser")
    raised = changed(
        long,
        fixture__axis_height=1.5 + riser["change_to"],
        fixture__body_height=2.6 + riser["change_to"],
    )
    gaps = call("clearance.tilted-plate", **raised)["result"]["gaps"]
    assert min(g["gap"] for g in gaps if g["body"] == "plate") == pytest.approx(0.1, abs=1e-6)


def test_smaller_wheel_or_other_direction_may_clear(call: Call) -> None:
    """A wheel too large for the gap before the nose is told its largest diameter."""
    near = changed(SLOW, fixture__stick_out=1.2, wheel__worn_diameter=None, gap_wanted=0.02)
    result = call("clearance.tilted-plate", **near)["result"]
    changes = {c["kind"]: c for c in result["changes"]}
    assert changes["tilt-direction"]["keeps_gap_wanted"]
    smaller = changed(near, wheel__diameter=changes["wheel-diameter"]["change_to"])
    gaps = call("clearance.tilted-plate", **smaller)["result"]["gaps"]
    wheel = [
        g["gap"] for g in gaps if g["part"] == "wheel" and g["body"] in ("nose", "fixture body")
    ]
    assert min(wheel) == pytest.approx(0.02, abs=1e-6)


def test_impossible_ways_say_why(call: Call) -> None:
    """A limit on the stick-out, a shank thicker than the cone and low room rule the way out."""
    limited = call("clearance.tilted-plate", **changed(SLOW, fixture__limit_stick_out=0.8))[
        "result"
    ]
    assert limited["forecast"] == "does-not-hold"
    assert "the work may stand out 0.8" in limited["ruled_out_by"][0]
    thick = call("clearance.tilted-plate", **changed(EXAMPLE, fixture__shank_diameter=1))["result"]
    assert thick["stick_out_needed"] is None
    assert "thicker than the cone" in thick["ruled_out_by"][0]
    low = call("clearance.tilted-plate", **changed(EXAMPLE, room_under_wheel=6, loading_height=0.5))
    assert low["result"]["room_left"] == pytest.approx(6 - 0.5 - low["result"]["height_to_wheel"])
    assert "no-room-under-the-wheel" in [a["code"] for a in low["advisories"]]


@pytest.mark.parametrize(
    "change",
    [
        {},
        {"fixture__stick_out": 0.2},
        {"fixture__body_height": 6},
        {"room_under_wheel": 6},
        {"fixture__limit_stick_out": 0.7},
        {"fixture__shank_diameter": 1},
        {"wheel__guard": None},
        {"gap_wanted": 0.6},
        {"gap_wanted": 0.6, "fixture__limit_stick_out": 0.8},
        {"fixture__turning_parts": [{"name": "dog", "diameter": 3.4, "length": 0.3}]},
    ],
)
def test_forecast_agrees_with_the_advisories(call: Call, change: dict[str, Any]) -> None:
    """A set-up holds only where nothing stops it, no gap is too small and no limit is passed.

    Where it does not hold an advisory stops it, and `ruled_out_by` says why; and nowhere else.
    """
    answer = call("clearance.tilted-plate", **changed(EXAMPLE, **change))
    forecast, reasons = answer["result"]["forecast"], answer["result"]["ruled_out_by"]
    codes = {a["code"] for a in answer["advisories"]}
    stopped = any(a["severity"] == "stop" for a in answer["advisories"])
    assert (forecast == "does-not-hold") == stopped == bool(reasons)
    if forecast != "does-not-hold":
        assert (forecast == "holds") == (not codes & {"gap-too-small", "guard-left-out"})


def test_without_a_guard_nothing_is_said_to_hold(call: Call) -> None:
    """The example holds with its guard; without it the same set-up only may hold."""
    assert call("clearance.tilted-plate", **EXAMPLE)["result"]["forecast"] == "holds"
    answer = call("clearance.tilted-plate", **changed(EXAMPLE, wheel__guard=None))
    assert answer["result"]["forecast"] == "may-not-hold"
    assert "guard-left-out" in [a["code"] for a in answer["advisories"]]


def test_stick_out_past_its_limit_does_not_hold(call: Call) -> None:
    """Work that stands out more than it may is ruled out, and told what would do."""
    request = changed(EXAMPLE, fixture__stick_out=1.5, fixture__limit_stick_out=1.2)
    result = call("clearance.tilted-plate", **request)["result"]
    assert result["forecast"] == "does-not-hold"
    assert "may stand out 1.2000 in" in result["ruled_out_by"][0]
    assert result["stick_out_needed"] < 1.2


def test_a_standard_taper_is_taken_by_its_designation(call: Call) -> None:
    """Morse taper 2 by its name, and by its 0.59941 in a foot, sets the plate by its angle."""
    angle = math.degrees(math.atan(0.59941 / 12 / 2))
    slopes: list[dict[str, Any]] = [
        {"designation": "morse-2"},
        {"taper_per_foot": 0.59941},
        {"half_angle": angle},
    ]
    found = [
        call("clearance.tilted-plate", **changed(SLOW, included_angle=None, **slope))["result"]
        for slope in slopes
    ]
    degrees = [result["plate_angle"]["degrees"] for result in found]
    assert degrees == pytest.approx([angle] * 3, abs=1e-6)


def test_heights_add_up(call: Call) -> None:
    """Table to wheel: closed height, rise of the plate under the cone, and the axis over it."""
    result = call("clearance.tilted-plate", **EXAMPLE)["result"]
    half = math.radians(30)
    # Along the plate from the low roll's center to under the cone's large end.
    along = (6 - 0.5) - 1 + 0.75 + 0.75
    rise = along * math.sin(half) + (0.75 + 1.5 + 0.375) * math.cos(half)
    assert result["height_to_wheel"] == pytest.approx(2.2 - 0.75 + rise)
    assert result["high_stack"] == pytest.approx(2.5)


def test_worn_wheel_brings_flange_and_guard_down(call: Call) -> None:
    """Gaps of flange and guard to the cone shrink by the radius that the wheel loses."""
    gaps = call("clearance.tilted-plate", **EXAMPLE)["result"]["gaps"]
    found = {(g["wheel_state"], g["part"]): g["gap"] for g in gaps if g["body"] == "cone"}
    assert found["new", "flange"] - found["worn", "flange"] == pytest.approx(0.75)
    assert found["new", "guard"] == pytest.approx(2.5)
    assert found["worn", "guard"] == pytest.approx(1.75)


def test_turning_parts_count_by_their_swing(call: Call) -> None:
    """A dog is in the way by the circle that it sweeps, before the nose's face too."""
    dog = {"name": "dog", "diameter": 2.4, "length": 0.3, "behind_face": -0.1}
    with_dog = changed(EXAMPLE, fixture__turning_parts=[dog])
    result = call("clearance.tilted-plate", **with_dog)["result"]
    assert result["smallest_gap"]["body"] == "dog"
    assert result["stick_out_needed"] > 0.75


@pytest.mark.parametrize(
    ("change", "error", "match"),
    [
        ({"included_angle": None}, Disagreement, r"slope of the cone is missing"),
        ({"small_diameter": 0.8}, Impossible, r"not below the larger one"),
        (
            {"included_angle": 0.011, "large_diameter": 100, "small_diameter": 1},
            Impossible,
            r"at most 10000 in is taken",
        ),
        ({"half_angle": 29}, Disagreement, r"half_angle disagrees with included_angle"),
        ({"wheel__flange_diameter": 5.5}, Impossible, r"does not reach past flanges"),
        ({"wheel__worn_diameter": 7.5}, Impossible, r"does not wear to 7\.5"),
        ({"wheel__flange_width": 0.4}, Impossible, r"do not hold a wheel"),
        ({"wheel__guard__lower_edge_below_spindle": 2.8}, Impossible, r"hangs below the wheel"),
        ({"plate__center_distance": 7}, Impossible, r"do not lie under a plate"),
        ({"plate__closed_height": 0.9}, Impossible, r"no room for its rolls"),
        ({"plate__low_roll_from_end": 2}, Impossible, r"high roll lies off the plate"),
        ({"fixture__shank_diameter": 3}, Impossible, r"reaches the plate"),
    ],
)
def test_impossible_set_ups_are_refused(
    call: Call, change: dict[str, Any], error: type[Exception], match: str
) -> None:
    """Figures that cannot belong together are refused with the reason."""
    with pytest.raises(error, match=match):
        call("clearance.tilted-plate", **changed(EXAMPLE, **change))
