"""A shop with all that stands under its wheels stated, and brute force to look at it by."""

import copy
import math
from collections.abc import Iterable, Mapping
from typing import Any

from shapely import Polygon
from shapely import box as rectangle
from shapely.affinity import rotate, translate
from shapely.geometry import Point

from plan_support import whole_request
from support import Call, changed

Json = dict[str, Any]
HEAD: Json = {
    "flange_diameter": 3,
    "flange_width": 1.25,
    "guard": {"length": 8, "width": 2.5, "lower_edge_below_spindle": 1},
}
WHEEL: Json = {"diameter": 7, "width": 0.5, "rpm": 3450, "head": HEAD}
PLATE_BODY: Json = {
    "length": 6,
    "thickness": 0.75,
    "closed_height": 2.2,
    "roll_diameter": 0.5,
    "low_roll_from_end": 0.3,
}
FIXTURE: Json = {
    "axis_height": 1.5,
    "body_length": 3,
    "body_height": 2.6,
    "nose_diameter": 1.25,
    "nose_length": 0.75,
    "stick_out": 0.75,
    "shank_diameter": 0.75,
    "front_to_high_end": 1,
}
ANGLE_PLATE: Json = {"upright_height": 5, "upright_thickness": 0.75, "face_to_high_end": 3.5}
HOLDER: Json = {
    "seat_height": 0.25,
    "holder_height": 0.6,
    "past_tall_end": 1,
    "past_short_end": 0.75,
}
SPINDLE: Json = {
    "wheel_diameter": 0.5,
    "reach": 4,
    "wheel_width": 0.375,
    "quill_diameter": 0.3,
    "spindle_diameter": 1.5,
}
FACE: Json = {
    "kind": "angled-face",
    "face_angle": 20,
    "rise": 0.4,
    "tolerance_arcsec": 120,
    "work_body": {
        "base_length": 0.4 / math.tan(math.radians(20)) + 0.5,
        "base_width": 1.5,
        "face_height": 1.25,
        "before_face": 0.5,
    },
}
CONE: Json = {
    "kind": "cone",
    "included_angle": 60,
    "large_diameter": 0.75,
    "small_diameter": 0.1,
    "included_angle_tolerance_arcsec": 300,
}
SOCKET: Json = {
    "kind": "taper-socket",
    "designation": "morse-3",
    "included_angle_tolerance_arcsec": 120,
}
#: Ways by the wheel, and a grinder whose workhead swivels.
DRESSED: Json = {
    "name": "7 in wheel",
    "wheel_diameter": 7,
    "wheel_width": 1.25,
    "dresser": {"kind": "scale", "graduation": "0 01"},
    "depth_per_pass": 0.001,
}
SIDE: Json = {"name": "cup wheel", "rated_for_side": True, "usable_width": 1.25}
GRINDER: Json = {
    "name": "grinder",
    "grinder": "cylindrical",
    "graduation": "0 05",
    "wheel_diameter": 12,
}
OVERRUN: Json = {"past_large_end": 0.1, "past_small_end": 0.2}
ROOM: Json = {"gap_wanted": 0.05, "room_under_wheel": 14}


def shop_request(feature: Json, **equipment: Any) -> Json:
    """A plan of a feature in a shop of this equipment, stroke and room stated."""
    request = whole_request()
    errors = copy.deepcopy(request["equipment"]["sine_plates"][0]["angle_errors"])
    sine = {"name": "5 in plate", "center_distance": 5, "angle_errors": errors}
    shop = {
        "block_sets": [{"name": "toolroom set", "set": "inch-81", "grade": "asme-0"}],
        "wheel": WHEEL,
        "spin_fixture": FIXTURE,
        **equipment,
    }
    for plate in shop.get("sine_plates", []):
        for name, value in sine.items():
            plate.setdefault(name, value)
    return {
        "units": "in",
        "job": "HL-0611 clearance",
        "feature": feature,
        "equipment": shop,
        "feeding": dict(OVERRUN),
        "room": dict(ROOM),
    }


def way_of(call: Call, request: Json, name: str, **changes: Any) -> Json:
    """One way of a plan that can."""
    ways = call("jobs.plan", **changed(request, **changes))["result"]["ways"]
    found: Json = next(way for way in ways if way["way"] == name)
    return found


def out_of(call: Call, request: Json, name: str, **changes: Any) -> Json:
    """One way that the plan rules out; alone, out of its refusal."""
    ruled = call("jobs.plan", **changed(request, **changes))["result"]["ruled_out"]
    found: Json = next(way for way in ruled if way["way"] == name)
    return found


def block(left: float, bottom: float, right: float, top: float) -> Polygon:
    """An upright rectangle."""
    return rectangle(left, bottom, right, top)


def tilted(shape: Any, degrees: float, to_origin: tuple[float, float]) -> Any:
    """A shape turned about 0, 0, then moved so that a point of it, turned too, lies at 0, 0."""
    turned = rotate(shape, degrees, origin=(0, 0))
    at = rotate(Point(to_origin), degrees, origin=(0, 0))
    return translate(turned, -at.x, -at.y)


def circle(radius: float) -> Polygon:
    """A disc whose polygon is within a few millionths of it, its lowest point at 0, 0."""
    return Point(0, radius).buffer(radius, quad_segs=256)


def least(
    parts: Mapping[str, Any], bodies: Mapping[str, Any], places: Iterable[float], grinds: set[str]
) -> tuple[float, str, str]:
    """The nearest that parts come to bodies as they are moved along x; the wheel grinds some."""
    found = []
    for place in places:
        for name, part in parts.items():
            there = translate(part, place)
            for body, shape in bodies.items():
                if name == "wheel" and body in grinds:
                    continue
                found.append((there.distance(shape), name, body))
    return min(found)


def head_along(radius: float = 3.5) -> Json:
    """Wheel, flange and guard in the wheel's plane, the wheel's lowest point at 0, 0."""
    return {
        "wheel": circle(radius),
        "flange": Point(0, radius).buffer(1.5, quad_segs=256),
        "guard": block(-4, radius - 1, 4, 3 * radius),
    }
