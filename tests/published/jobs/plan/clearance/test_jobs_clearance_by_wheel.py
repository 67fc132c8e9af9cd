"""Clearance of the ways by the wheel and of a socket, against shapes moved and points in space."""

import math
import re
from typing import Any

import numpy as np
import pytest
from shapely import Polygon
from shapely.affinity import translate

from clearance_support import (
    CONE,
    FACE,
    FIXTURE,
    HEAD,
    HOLDER,
    OVERRUN,
    PLATE_BODY,
    SPINDLE,
    block,
    least,
    shop_request,
    tilted,
    way_of,
)
from halfangle_service.errors import Unreachable
from support import Call

Json = dict[str, Any]
SLANT = 0.325 / math.sin(math.radians(30))
RUN = 0.325 / math.tan(math.radians(30))
WORKHEAD: Json = {
    "name": "cylindrical grinder",
    "grinder": "cylindrical",
    "graduation": "0 05",
    "wheel_diameter": 12,
    "wheel_width": 0.75,
    "head": {**HEAD, "guard": {"length": 14, "width": 3, "lower_edge_below_spindle": 3}},
    "workhead_body": {
        "body_length": 8,
        "body_width": 5,
        "nose_diameter": 2.5,
        "nose_length": 1,
        "stick_out": 2.5,
        "shank_diameter": 0.75,
        "turning_parts": [{"name": "dog", "diameter": 1.6, "length": 0.3, "behind_face": -0.4}],
    },
}
DRESSED: Json = {
    "name": "7 in wheel, dresser",
    "wheel_diameter": 7,
    "wheel_width": 1.25,
    "dresser": {"kind": "scale", "graduation": "0 01"},
    "depth_per_pass": 0.001,
    "head": {**HEAD, "guard": {**HEAD["guard"], "width": 4}},
    "work_holder": HOLDER,
}
SIDE: Json = {
    "name": "cup wheel",
    "rated_for_side": True,
    "usable_width": 1.25,
    "wheel_diameter": 7,
    "wheel_width": 1,
    "head": {
        "flange_diameter": 3,
        "flange_width": 2,
        "guard": {"length": 8, "width": 2.5, "lower_edge_below_spindle": 1.4},
    },
    "work_below_spindle": 2.8,
    "body_width": 2,
}


def cone_on_axis(stick_out: float, shank: float = 0.75) -> Json:
    """The cone and its shank along the axis, from the cone's large end at 0, 0 up the axis."""
    corners = [(0, -0.375), (RUN, -0.05), (RUN, 0.05), (0, 0.375)]
    return {"cone": Polygon(corners), "shank": block(-stick_out, -shank / 2, 0, shank / 2)}


def places(first: float, last: float, step: float = 0.01) -> Any:
    """Places close together."""
    return np.linspace(first, last, math.ceil((last - first) / step) + 1)


@pytest.mark.outside("jobs.plan", source="Brute force: polygons turned by GEOS, a wheel in steps")
def test_a_swivelled_workhead_clears_by_what_turned_polygons_do(call: Call) -> None:
    """Seen from above, the workhead swivelled by half the cone and the wheel moved past it."""
    request = shop_request(CONE, swivelled_workheads=[WORKHEAD])
    found = way_of(call, request, "swivelled-workhead")["clearance"]
    body = WORKHEAD["workhead_body"]
    out, nose = body["stick_out"], body["nose_length"]
    drawn = {
        **cone_on_axis(out),
        "nose": block(-out - nose, -1.25, -out, 1.25),
        "dog": block(-out + 0.4 - 0.3, -0.8, -out + 0.4, 0.8),
        "workhead": block(-out - nose - 8, -2.5, -out - nose, 2.5),
    }
    bodies = {name: tilted(shape, 30, (0, 0.375)) for name, shape in drawn.items()}
    wheel = {
        "wheel": block(0, 0, 0.75, 12),
        "flange": block(-0.25, 4.5, 1, 7.5),
        "guard": block(0.375 - 1.5, 3, 0.375 + 1.5, 15),
    }
    first, last = -OVERRUN["past_large_end"], SLANT + OVERRUN["past_small_end"]
    nearest = least(wheel, bodies, places(first, last - 0.75), {"cone", "shank"})
    gap = found["smallest_gap"]
    assert gap["gap"] == pytest.approx(nearest[0], abs=2e-4)
    assert (gap["part"], gap["body"]) == nearest[1:]
    assert found["room_left"] is None


@pytest.mark.outside("jobs.plan", source="Brute force: polygons by GEOS, the wheel drawn on edge")
@pytest.mark.parametrize("kind", ["cone", "face"])
def test_a_dressed_flank_clears_by_what_the_shapes_do(call: Call, kind: str) -> None:
    """Wheel with its flank, flange and guard beside fixture or holder, axes level."""
    feature = CONE if kind == "cone" else FACE
    over = 1.6 if kind == "cone" else 2.2
    head = {**DRESSED["head"], "flange_width": over}
    dressed = {**DRESSED, "wheel_width": 1.25 if kind == "cone" else 2, "head": head}
    found = way_of(call, shop_request(feature, dressed_wheels=[dressed]), "dressed-wheel")[
        "clearance"
    ]
    width = dressed["wheel_width"]
    if kind == "cone":
        angle, slant, out, front = 30, SLANT, 0.75, -1.5
        drawn = {
            **cone_on_axis(out),
            "nose": block(front, -0.625, -out, 0.625),
            "fixture body": block(front - 3, -1.5, front, 1.1),
            "table": block(-50, -60, 50, -1.5),
        }
        bodies = {name: translate(shape, 0, -0.375) for name, shape in drawn.items()}
        grinds = {"cone", "shank"}
    else:
        angle, slant = FACE["face_angle"], 0.4 / math.sin(math.radians(FACE["face_angle"]))
        work = FACE["work_body"]
        end = work["base_length"] - 0.5
        bodies = {
            "work": Polygon([(-0.5, -1.25), (end, -1.25), (end, -0.4), (0, 0), (-0.5, 0)]),
            "holder": block(-1.5, -1.5, end + 0.75, -0.9),
            "table": block(-50, -60, 50, -1.5),
        }
        grinds = {"work"}
    turn = math.radians(angle)
    left, right = -0.1 * math.cos(turn), (slant + 0.2) * math.cos(turn)
    low, middle = -(slant + 0.2) * math.sin(turn), left + width / 2
    spindle = low + 3.5
    flank = [(left, 0.1 * math.sin(turn)), (right, low), (left + width, low)]
    wheel = {
        "wheel": Polygon([*flank, (left + width, low + 7), (left, low + 7)]),
        "flange": block(middle - over / 2, spindle - 1.5, middle + over / 2, spindle + 1.5),
        "guard": block(middle - 2, spindle - 1, middle + 2, spindle + 4.5),
    }
    nearest = least(wheel, bodies, [0.0], grinds)
    gap = found["smallest_gap"]
    assert gap["gap"] == pytest.approx(nearest[0], abs=1e-6)
    assert (gap["part"], gap["body"]) == nearest[1:]


def _of_revolution(radius: float, start: float, end: float) -> Any:
    """Points of a solid cylinder about the work's axis, in (u, v, w)."""
    u, share, turn = np.meshgrid(
        np.linspace(start, end, 41), np.linspace(0, 1, 11), np.linspace(0, 2 * math.pi, 121)
    )
    return np.stack([u, radius * share * np.cos(turn), radius * share * np.sin(turn)], axis=-1)


@pytest.mark.outside("jobs.plan", source="Brute force: points of solids in space about a wheel")
def test_a_wheel_s_side_is_never_nearer_in_space_than_is_said(call: Call) -> None:
    """Of all points of nose and fixture none is nearer to wheel, flange or guard than the gap."""
    found = way_of(call, shop_request(CONE, wheel_sides=[SIDE]), "wheel-side")["clearance"]
    gap = found["smallest_gap"]["gap"]
    assert gap > 0.05
    assert found["forecast"] == "holds"
    u, v, w = (axis.ravel() for axis in np.meshgrid(*(np.linspace(0, 1, 41) for _ in range(3))))
    body = np.stack([-4.5 + 3 * u, -1 + 2 * v, -1.5 + 2.6 * w], axis=-1)
    bodies = {
        "nose": _of_revolution(0.625, -1.5, -0.75).reshape(-1, 3),
        "fixture body": body,
    }
    turn = math.radians(30)
    middle, below = (SLANT + 0.1) / 2, SIDE["work_below_spindle"]
    nearest = math.inf
    for points in bodies.values():
        u, v, w = points[:, 0], points[:, 1] - 0.375, points[:, 2] - below
        x, z = u * math.cos(turn) - v * math.sin(turn), u * math.sin(turn) + v * math.cos(turn)
        away = np.hypot(x - middle, w)
        for radius, low, high in ((3.5, 0.0, 1.0), (1.5, -0.5, 1.5)):
            aside = np.maximum(np.maximum(low - z, z - high), 0)
            nearest = min(nearest, float(np.min(np.hypot(np.maximum(away - radius, 0), aside))))
        aside = np.maximum(np.maximum(-0.75 - z, z - 1.75), 0)
        across = np.maximum(np.abs(x - middle) - 4, 0)
        under = np.maximum(-1.4 - w, 0)
        nearest = min(nearest, float(np.min(np.sqrt(aside**2 + across**2 + under**2))))
    assert nearest >= gap - 1e-9
    assert found["smallest_gap"]["part"] in {"wheel", "flange", "guard"}
    # The nearest of all is told to within what both views leave open.
    assert nearest <= gap + 0.35


def test_a_flange_that_meets_the_work_rules_the_side_out(call: Call) -> None:
    """Work near under the spindle meets a large flange, or lies where the side does not grind."""
    large = {**SIDE["head"], "flange_diameter": 4.4}
    near = {**SIDE, "work_below_spindle": 2.4, "head": large, "name": "large flange"}
    inside = {**SIDE, "work_below_spindle": 2.24, "name": "inside"}
    request = shop_request(CONE, wheel_sides=[SIDE, near, inside])
    ruled = call("jobs.plan", **request)["result"]["ruled_out"]
    met, off = ruled
    assert met["equipment"] == ["large flange"]
    assert re.search(r"foul by .*flange and", met["reason"])
    assert off["field"] == "equipment/wheel_sides/2/work_below_spindle"
    # The wheel of 7 in is usable over 1.25 in from its edge.
    assert "From 2.25 in to 3.5 in" in off["instead"]


SOCKET: Json = {
    "kind": "taper-socket",
    "designation": "morse-3",
    "included_angle_tolerance_arcsec": 120,
    "relief_length": 0.5,
}
IN_SOCKET: Json = {
    "sine_plates": [{"plate_body": PLATE_BODY, "largest_angle": 60}],
    "spin_fixture": {**FIXTURE, "stick_out": 4.25, "shank_diameter": 1.75, "nose_diameter": 1.75},
    "internal_spindle": SPINDLE,
}


@pytest.mark.outside("jobs.plan", source="Brute force: polygons turned by GEOS, a quill in steps")
def test_a_quill_clears_its_bore_by_what_turned_polygons_do(call: Call) -> None:
    """Wheel, quill and spindle moved along the bore's lower wall, the mouth up the slope."""
    way = way_of(call, shop_request(SOCKET, **IN_SOCKET), "sine-plate")
    found = way["clearance"]
    feature = call("jobs.plan", **shop_request(SOCKET, **IN_SOCKET))["result"]["feature"]
    half, length = feature["half_angle"]["degrees"], feature["length"]
    large, small = feature["large_diameter"] / 2, feature["small_diameter"] / 2
    slant = feature["slant_length"]
    wall = [(0, large), (-length, small), (-length, 0.875), (0, 0.875)]
    front = -4.25 - 0.75
    drawn = {
        "opposite wall": Polygon(wall),
        "bore": Polygon([(u, -v) for u, v in wall]),
        "relief": block(-length - 0.5, small, -length, 0.875),
        "bottom of the bore": block(-4.25, -0.875, -length - 0.5, 0.875),
        "nose": block(front, -0.875, -4.25, 0.875),
        "fixture body": block(front - 3, -1.5, front, 1.1),
        "plate": block(front + 1 - 6, -2.25, front + 1, -1.5),
    }
    bodies = {name: tilted(shape, half, (0, -large)) for name, shape in drawn.items()}
    # Drawn with the wheel's front at 0, its lowest line on the wall.
    head = {
        "wheel": block(0, 0, 0.375, 0.5),
        "quill": block(0.375, 0.1, 4, 0.4),
        "spindle": block(4, -0.5, 8, 1),
    }
    deep = -slant - OVERRUN["past_small_end"]
    nearest = least(head, bodies, places(deep, OVERRUN["past_large_end"] - 0.375), {"bore"})
    gap = found["smallest_gap"]
    assert gap["gap"] == pytest.approx(nearest[0], abs=2e-4)
    assert (gap["part"], gap["body"]) == nearest[1:]


@pytest.mark.outside("jobs.plan", source="Brute force: polygons turned by GEOS, a quill in steps")
def test_a_socket_on_an_upright_clears_by_what_turned_polygons_do(call: Call) -> None:
    """Its axis square to the plate, the mouth away from it: drawn upright, then tilted as a whole.

    Drawn with the plate rising to the right the quill goes in to the right.
    """
    upright = {"upright_height": 5, "upright_thickness": 0.75, "face_to_high_end": 3.5}
    body = {**PLATE_BODY, "low_roll_from_end": 0.2}
    plate = {"plate_body": body, "angle_plate": upright}
    request = shop_request(SOCKET, **{**IN_SOCKET, "sine_plates": [plate]})
    found = way_of(call, request, "quarter-turn")["clearance"]
    feature = call("jobs.plan", **request)["result"]["feature"]
    half, length = feature["half_angle"]["degrees"], feature["length"]
    large, small = feature["large_diameter"] / 2, feature["small_diameter"] / 2
    face = 6 - 3.5
    axis, mouth = face + 1.5, 3 + 0.75 + 4.25
    wall = [(large, mouth), (small, mouth - length), (0.875, mouth - length), (0.875, mouth)]
    end = mouth - length - 0.5
    drawn = {
        "opposite wall": Polygon([(axis + x, y) for x, y in wall]),
        "bore": Polygon([(axis - x, y) for x, y in wall]),
        "relief": block(axis + small, end, axis + 0.875, mouth - length),
        "bottom of the bore": block(axis - 0.875, 3.75, axis + 0.875, end),
        "nose": block(axis - 0.875, 3, axis + 0.875, 3.75),
        "fixture body": block(face, 0, face + 2.6, 3),
        "angle plate": block(face - 0.75, 0, face, 5),
        "plate": block(0, -0.75, 6, 0),
    }
    edge = (axis - large, mouth)
    bodies = {name: tilted(shape, 90 - half, edge) for name, shape in drawn.items()}
    head = {
        "wheel": block(-0.375, 0, 0, 0.5),
        "quill": block(-4, 0.1, -0.375, 0.4),
        "spindle": block(-8, -0.5, -4, 1),
    }
    deep = feature["slant_length"] + OVERRUN["past_small_end"]
    nearest = least(head, bodies, places(0.375 - OVERRUN["past_large_end"], deep), {"bore"})
    gap = found["smallest_gap"]
    assert gap["gap"] == pytest.approx(nearest[0], abs=2e-4)
    assert (gap["part"], gap["body"]) == nearest[1:]


@pytest.mark.parametrize(
    ("change", "says", "field"),
    [
        ({"spindle": {"quill_diameter": 0.5}}, "rubs the bore", "quill_diameter"),
        ({"spindle": {"reach": 3.3}}, "through the small end", "reach"),
        ({"feature": {"relief_length": 0.1}}, "run into the bottom", "past_small_end"),
        ({"spindle": {"spindle_diameter": 5}}, "foul by", "internal_spindle"),
    ],
)
def test_a_quill_that_cannot_grind_the_whole_bore_rules_the_way_out(
    call: Call, change: Json, says: str, field: str
) -> None:
    """Too thick, too short, a blind bore, a spindle that meets the work: each with its field."""
    spindle = {**SPINDLE, **change.get("spindle", {})}
    feature = {**SOCKET, **change.get("feature", {})}
    fixture = {**IN_SOCKET["spin_fixture"], "front_to_high_end": 7}
    shop = {**IN_SOCKET, "internal_spindle": spindle, "spin_fixture": fixture}
    request = shop_request(feature, **shop)
    with pytest.raises(Unreachable, match="No way of the shop") as refusal:
        call("jobs.plan", **request)
    ruled: Any = refusal.value.more["ruled_out"]
    (out,) = (way for way in ruled if way["way"] == "sine-plate")
    assert says in out["reason"]
    assert out["field"].endswith(field)
    assert out["instead"]
