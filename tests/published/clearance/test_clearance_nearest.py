"""Every gap over a tilted plate against a set-up drawn apart and a wheel moved step by step."""

import math
from typing import Any

import numpy as np
import pytest
import shapely
from shapely import Point, Polygon
from shapely.affinity import rotate, translate

from halfangle_service.topics.clearance.tilted_plate import tilted_plate
from support import Call, changed

EXAMPLE: dict[str, Any] = dict(tilted_plate.example)
#: Places of the wheel over its stroke: no more than 0.0012 in apart.
PLACES = 4001
DOG = {"name": "dog", "diameter": 2.4, "length": 0.3, "behind_face": -0.1}
SLOW = changed(
    EXAMPLE,
    included_angle=3,
    small_diameter=0.7,
    fixture__axis_height=1.0,
    fixture__body_height=1.2,
    fixture__front_to_high_end=3,
)
LONG_PLATE = changed(
    EXAMPLE,
    fixture__front_to_high_end=6,
    plate__length=10,
    plate__low_roll_from_end=0.5,
    past_small_end=2.0,
)
NOSE = ("new", "wheel", "nose")
#: Each set-up with what is nearest in it: along the travel, and across it.
SET_UPS: dict[str, tuple[dict[str, Any], tuple[str, ...], tuple[str, ...]]] = {
    "nose": (EXAMPLE, NOSE, NOSE),
    "body": (changed(EXAMPLE, fixture__body_height=3.3), ("new", "wheel", "fixture body"), NOSE),
    "dog": (
        changed(EXAMPLE, fixture__turning_parts=[DOG], fixture__stick_out=1.2),
        ("new", "wheel", "dog"),
        ("new", "wheel", "dog"),
    ),
    "plate": (LONG_PLATE, ("new", "wheel", "plate"), ("new", "wheel", "plate")),
    "shank": (
        changed(EXAMPLE, fixture__shank_diameter=0.9),
        ("new", "wheel", "shank"),
        ("new", "wheel", "shank"),
    ),
    "slow taper": (changed(SLOW, fixture__stick_out=3), NOSE, ("worn", "flange", "cone")),
    "worn to the flanges": (
        changed(EXAMPLE, wheel__worn_diameter=3.1),
        ("worn", "flange", "cone"),
        ("worn", "flange", "cone"),
    ),
    "low guard": (
        changed(EXAMPLE, wheel__guard__lower_edge_below_spindle=2.6, wheel__guard__length=3),
        ("worn", "guard", "cone"),
        ("worn", "guard", "cone"),
    ),
    "blunt": (
        changed(EXAMPLE, included_angle=120, plate__low_roll_from_end=0.1, past_large_end=0.01),
        NOSE,
        NOSE,
    ),
}


def bodies_of(request: dict[str, Any]) -> dict[str, Polygon]:
    """The set-up's section, drawn lying flat and then turned about the ground line's large end.

    Flat, the work's axis is the line y = 0, the cone pointing to the right from x = 0.
    """
    fixture, plate = request["fixture"], request["plate"]
    half, large = request["included_angle"] / 2, request["large_diameter"] / 2
    small = request["small_diameter"] / 2
    length = (large - small) / math.tan(math.radians(half))
    face = -fixture["stick_out"]
    front = face - fixture["nose_length"]
    top = -fixture["axis_height"]
    high = front + fixture["front_to_high_end"]
    low = high - plate["length"]
    flat = {
        "cone": Polygon([(0, large), (0, -large), (length, -small), (length, small)]),
        "shank": shapely.box(
            face, -fixture["shank_diameter"] / 2, 0, fixture["shank_diameter"] / 2
        ),
        "nose": shapely.box(
            front, -fixture["nose_diameter"] / 2, face, fixture["nose_diameter"] / 2
        ),
        "fixture body": shapely.box(
            front - fixture["body_length"], top, front, top + fixture["body_height"]
        ),
        "plate": shapely.box(low, top - plate["thickness"], high, top),
    }
    for part in fixture.get("turning_parts", []):
        end = face - part["behind_face"]
        half_swing = part["diameter"] / 2
        flat[part["name"]] = shapely.box(end - part["length"], -half_swing, end, half_swing)

    def tilted(shape: Any) -> Any:
        turned = rotate(shape, half, origin=(0, large))
        return translate(turned, 0, -large)

    bodies = {name: tilted(shape) for name, shape in flat.items()}
    spare = plate["length"] - plate["center_distance"]
    from_end = plate.get("low_roll_from_end", spare / 2)
    under = top - plate["thickness"]
    low_roll = tilted(Point(low + from_end, under))
    high_roll = tilted(Point(low + from_end + plate["center_distance"], under))
    radius = plate["roll_diameter"] / 2
    stands_on = low_roll.y - radius
    table = low_roll.y + plate["thickness"] - plate["closed_height"]
    bodies["stack"] = shapely.box(
        high_roll.x - radius, stands_on, high_roll.x + radius, high_roll.y - radius
    )
    left = low_roll.x - from_end
    bodies["base"] = shapely.box(left, table, left + plate["length"], stands_on)
    return bodies


def gaps_by_moving(request: dict[str, Any], radius: float) -> dict[tuple[str, str], float]:
    """Gap of each part of the head from each body that it does not reach, by moving it along."""
    half = math.radians(request["included_angle"] / 2)
    slant = (request["large_diameter"] - request["small_diameter"]) / 2 / math.sin(half)
    first, last = -request["past_large_end"], slant + request["past_small_end"]
    wheel, guard = request["wheel"], request["wheel"]["guard"]
    flange = wheel["flange_diameter"] / 2
    low_edge = radius - guard["lower_edge_below_spindle"]
    top = 2 * radius + abs(guard["lower_edge_below_spindle"])
    if request["tilt_direction"] == "along-travel":
        places = np.linspace(first, last, PLACES)
        centers = shapely.points(places, np.full(PLACES, radius))
        half_guard = guard["length"] / 2
        guards = shapely.box(places - half_guard, low_edge, places + half_guard, top)
        parts = {"wheel": (centers, radius), "flange": (centers, flange), "guard": (guards, 0.0)}
    else:  # on edge: the wheel's middle, fed until its sides have covered the whole line
        width = wheel["width"]
        places = np.linspace(first + width / 2, max(last - width / 2, first + width / 2), PLACES)

        def boxes(over_all: float, bottom: float, upper: float) -> Any:
            return shapely.box(places - over_all / 2, bottom, places + over_all / 2, upper)

        parts = {
            "wheel": (boxes(width, 0, 2 * radius), 0.0),
            "flange": (boxes(wheel["flange_width"], radius - flange, radius + flange), 0.0),
            "guard": (boxes(guard["width"], low_edge, top), 0.0),
        }
    return {
        (name, body): float(np.min(shapely.distance(moved, outline))) - about
        for name, (moved, about) in parts.items()
        for body, outline in bodies_of(request).items()
    }


@pytest.mark.outside(
    "clearance.tilted-plate",
    source="shapely: the set-up drawn flat and turned, the head moved to 4001 places of its stroke",
)
@pytest.mark.parametrize("direction", ["along-travel", "across-travel"])
@pytest.mark.parametrize("name", SET_UPS)
def test_every_gap_is_found_by_moving_the_head(call: Call, name: str, direction: str) -> None:
    """Wheel, flange and guard, new and worn, are as far from every body as when they are moved.

    No place of theirs is nearer than the gap, and one comes within 0.0005 in of it; and what
    is nearest of all is what the set-up was made for.
    """
    made, *nearest = SET_UPS[name]
    request = changed(made, tilt_direction=direction)
    result = call("clearance.tilted-plate", **request)["result"]
    ground = {("wheel", "cone")}
    if request["fixture"]["shank_diameter"] <= request["large_diameter"]:
        ground.add(("wheel", "shank"))
    moved = {
        (state, *pair): gap
        for state, field in (("new", "diameter"), ("worn", "worn_diameter"))
        for pair, gap in gaps_by_moving(request, request["wheel"][field] / 2).items()
        if pair not in ground
    }
    found = {(g["wheel_state"], g["part"], g["body"]): g["gap"] for g in result["gaps"]}
    assert found.keys() == moved.keys()
    apart = {key: gap for key, gap in moved.items() if gap > 0.001}
    for key, gap in apart.items():
        assert found[key] - 1e-9 <= gap <= found[key] + 0.0005, key
    for key in moved.keys() - apart.keys():  # where they foul, see below
        assert found[key] < 0.001, key
    least = result["smallest_gap"]
    closest = (least["wheel_state"], least["part"], least["body"])
    assert closest == nearest[direction == "across-travel"]
    assert least["gap"] == min(found.values()) == result["gaps"][0]["gap"]


@pytest.mark.outside(
    "clearance.tilted-plate", source="shapely: pushed apart in every direction of half a degree"
)
@pytest.mark.parametrize("body_height", [4.5, 5.0])
def test_a_foul_is_the_least_way_out(call: Call, body_height: float) -> None:
    """A body too tall fouls the wheel's path by the shortest push that frees it, and no shorter."""
    request = changed(SLOW, fixture__body_height=body_height, past_large_end=1.5)
    result = call("clearance.tilted-plate", **request)["result"]
    gaps = {(g["wheel_state"], g["part"], g["body"]): g["gap"] for g in result["gaps"]}
    depth = -gaps["new", "wheel", "fixture body"]
    slant = 0.025 / math.sin(math.radians(1.5))
    path = shapely.LineString([(-1.5, 3.5), (slant + request["past_small_end"], 3.5)])
    body = bodies_of(request)["fixture body"]

    def parted(degrees: float, way: float) -> bool:
        way_x, way_y = (way * f(math.radians(degrees)) for f in (math.cos, math.sin))
        return bool(translate(body, way_x, way_y).distance(path) >= 3.5 - 1e-9)

    directions = np.arange(0, 360, 0.5)
    assert depth > 0
    assert any(parted(float(d), depth * 1.001) for d in directions)
    assert not any(parted(float(d), depth * 0.99) for d in directions)


@pytest.mark.outside("clearance.tilted-plate", source="A chord of the wheel over the nose's corner")
@pytest.mark.parametrize(
    ("past", "forecast", "codes"),
    [
        (0.0, "holds", set()),
        (-0.001, "holds", set()),
        (0.001, "does-not-hold", {"fouling"}),
    ],
)
def test_what_just_touches_has_a_gap_of_0(
    call: Call, past: float, forecast: str, codes: set[str]
) -> None:
    """Run on until it touches the nose's corner, the wheel has a gap of 0; further, it fouls.

    A corner s above the line is touched √(s (2R − s)) beside it; at a gap wanted of 0 that holds.
    """
    request = changed(SLOW, gap_wanted=0, wheel__worn_diameter=None, fixture__stick_out=3)
    x, z = max(bodies_of(request)["nose"].exterior.coords, key=lambda corner: corner[1])
    assert z > 0
    touching = -x - math.sqrt(z * (7 - z))
    assert touching > 0
    answer = call("clearance.tilted-plate", **{**request, "past_large_end": touching + past})
    least = answer["result"]["smallest_gap"]
    assert (least["part"], least["body"]) == ("wheel", "nose")
    # Past it, the gap falls by the cosine of the direction in which the corner is touched.
    cosine = math.sqrt(z * (7 - z)) / 3.5
    assert least["gap"] == pytest.approx(-past * cosine, abs=1e-6)
    assert answer["result"]["forecast"] == forecast
    told = {a["code"] for a in answer["advisories"]}
    assert told & {"fouling", "gap-too-small"} == codes
