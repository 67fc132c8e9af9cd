"""Clearance of faces and of work turned a quarter, against polygons that are turned and moved.

The set-up is drawn with the plate closed, its top along y = 0 from its low end at 0, 0, tilted as a
whole, and a wheel is moved over it in small steps.
"""

import math
from typing import Any

import numpy as np
import pytest
from shapely import Point, Polygon

from clearance_support import (
    ANGLE_PLATE,
    CONE,
    FACE,
    FIXTURE,
    HOLDER,
    OVERRUN,
    PLATE_BODY,
    block,
    head_along,
    least,
    shop_request,
    tilted,
    way_of,
)
from support import Call

Json = dict[str, Any]
STEP = 0.01
BLOCK: Json = FACE["work_body"]
SLANT = FACE["rise"] / math.sin(math.radians(FACE["face_angle"]))
ON_PLATE: Json = {
    "plate_body": PLATE_BODY,
    "work_holder": HOLDER,
    "work_to_high_end": 0.5,
    "angle_plate": ANGLE_PLATE,
}


def places(slant: float) -> Any:
    """Places of the wheel along the ground line and past both ends, close together."""
    first, last = -OVERRUN["past_large_end"], slant + OVERRUN["past_small_end"]
    return np.linspace(first, last, math.ceil((last - first) / STEP) + 1)


def plate_under() -> Json:
    """Plate and rolls as they lie closed."""
    low = PLATE_BODY["low_roll_from_end"]
    plate = block(0, -PLATE_BODY["thickness"], PLATE_BODY["length"], 0)
    rolls = [(low, -PLATE_BODY["thickness"]), (low + 5, -PLATE_BODY["thickness"])]
    return {"plate": plate, "rolls": rolls}


def stacks_of(rolls: list[Any], low_stack: float, uphill: float) -> tuple[Json, float]:
    """Stacks and base under rolls as they stand tilted, and the table."""
    (x, y), (to_x, to_y) = rolls
    foot = y - 0.25 - low_stack
    table = y + PLATE_BODY["thickness"] - PLATE_BODY["closed_height"] - low_stack
    left = x - uphill * PLATE_BODY["low_roll_from_end"]
    ends = sorted((left, left + uphill * PLATE_BODY["length"]))
    bodies = {
        "stack": block(to_x - 0.25, foot, to_x + 0.25, to_y - 0.25),
        "base": block(ends[0], table, ends[1], foot),
    }
    if low_stack:
        bodies["low stack"] = block(x - 0.25, foot, x + 0.25, y - 0.25)
    return bodies, table


def tilted_rolls(rolls: list[Any], degrees: float, at: tuple[float, float]) -> list[Any]:
    """Centers of the rolls once the plate is tilted."""
    return [(p.x, p.y) for p in (tilted(Point(roll), degrees, at) for roll in rolls)]


@pytest.mark.outside("jobs.plan", source="Brute force: polygons turned by GEOS, a wheel in steps")
@pytest.mark.parametrize(
    "more",
    [
        {"work_to_high_end": 0.5},
        {"work_to_high_end": 2.6, "work_holder": {**HOLDER, "holder_height": 0.85}},
    ],
    ids=["plate near", "holder near"],
)
def test_a_face_along_a_plate_clears_by_what_turned_polygons_do(call: Call, more: Json) -> None:
    """The least gap and the height are those of block, holder, plate and stack as drawn."""
    request = shop_request(FACE, sine_plates=[{**ON_PLATE, **more}])
    found = way_of(call, request, "sine-plate")["clearance"]
    holder, angle = {**ON_PLATE, **more}["work_holder"], FACE["face_angle"]
    short = PLATE_BODY["length"] - more["work_to_high_end"]
    tall, seat = short - BLOCK["base_length"], holder["seat_height"]
    edge = (tall + BLOCK["before_face"], seat + BLOCK["face_height"])
    lower = seat + BLOCK["face_height"] - FACE["rise"]
    corners = [(tall, seat), (short, seat), (short, lower), edge, (tall, edge[1])]
    held = block(
        tall - holder["past_tall_end"],
        0,
        short + holder["past_short_end"],
        holder["holder_height"],
    )
    closed = plate_under()
    drawn = {"work": Polygon(corners), "holder": held, "plate": closed["plate"]}
    bodies = {name: tilted(shape, angle, edge) for name, shape in drawn.items()}
    rolls = tilted_rolls(closed["rolls"], angle, edge)
    under, table = stacks_of(rolls, 0.0, 1.0)
    nearest = least(head_along(), bodies | under, places(SLANT), {"work"})
    gap = found["smallest_gap"]
    assert gap["gap"] == pytest.approx(nearest[0], abs=2e-4)
    assert (gap["part"], gap["body"]) == nearest[1:]
    top = max(shape.bounds[3] for shape in (bodies | under).values())
    assert found["room_left"] == pytest.approx(14 - (max(top, 0.0) - table))
    assert found["forecast"] == ("holds" if gap["gap"] >= 0.05 else "may-not-hold")


def _upright_scene(
    kind: str, to_high_end: float
) -> tuple[Json, list[Any], float, tuple[float, float], set[str]]:
    """Work turned a quarter, drawn with the plate closed: u of the work stands upright."""
    if kind == "face":
        angle, work_foot = FACE["face_angle"], 0.0
        face = PLATE_BODY["length"] - to_high_end
        high = BLOCK["face_height"]
        top, run = BLOCK["base_length"], BLOCK["before_face"]
        work = Polygon(
            [
                (face, work_foot),
                (face + high, work_foot),
                (face + high, run),
                (face + high - FACE["rise"], top),
                (face, top),
            ]
        )
        edge = (face + high, run)
        drawn = {"work": work}
        grinds = {"work"}
    else:
        angle = CONE["included_angle"] / 2
        axis = PLATE_BODY["length"] - to_high_end + FIXTURE["axis_height"]
        face, rear = axis - FIXTURE["axis_height"], 0.0
        front = rear + FIXTURE["body_length"]
        nose = front + FIXTURE["nose_length"]
        large = nose + FIXTURE["stick_out"]
        run = (0.375 - 0.05) / math.tan(math.radians(angle))
        drawn = {
            "cone": Polygon(
                [
                    (axis - 0.375, large),
                    (axis + 0.375, large),
                    (axis + 0.05, large + run),
                    (axis - 0.05, large + run),
                ]
            ),
            "shank": block(axis - 0.375, nose, axis + 0.375, large),
            "nose": block(axis - 0.625, front, axis + 0.625, nose),
            "fixture body": block(face, rear, face + FIXTURE["body_height"], front),
        }
        edge = (axis + 0.375, large)
        grinds = {"cone", "shank"}
    drawn["angle plate"] = block(
        face - ANGLE_PLATE["upright_thickness"], 0, face, ANGLE_PLATE["upright_height"]
    )
    closed = plate_under()
    drawn["plate"] = closed["plate"]
    return drawn, closed["rolls"], 90.0 - angle, edge, grinds


@pytest.mark.outside("jobs.plan", source="Brute force: polygons turned by GEOS, a wheel in steps")
@pytest.mark.parametrize(("kind", "to_high_end"), [("face", 1.3), ("cone", 3.5)])
def test_work_turned_a_quarter_clears_by_what_turned_polygons_do(
    call: Call, kind: str, to_high_end: float
) -> None:
    """On a plate tilted by the complement the least gap is that of the set-up as drawn.

    Drawn with the plate rising to the right the surface falls to the left: the wheel moves so.
    """
    feature = FACE if kind == "face" else CONE
    body = {**PLATE_BODY, "low_roll_from_end": 0.2}
    upright = {**ANGLE_PLATE, "face_to_high_end": to_high_end}
    plate = {**ON_PLATE, "plate_body": body, "angle_plate": upright}
    found = way_of(call, shop_request(feature, sine_plates=[plate]), "quarter-turn")["clearance"]
    drawn, rolls, degrees, edge, grinds = _upright_scene(kind, to_high_end)
    rolls = [(0.2, rolls[0][1]), (5.2, rolls[1][1])]
    bodies = {name: tilted(shape, degrees, edge) for name, shape in drawn.items()}
    at = tilted_rolls(rolls, degrees, edge)
    under, table = stacks_of(at, 0.0, 1.0)
    slant = SLANT if kind == "face" else 0.65
    nearest = least(head_along(), bodies | under, -places(slant), grinds)
    gap = found["smallest_gap"]
    assert gap["gap"] == pytest.approx(nearest[0], abs=2e-4)
    assert (gap["part"], gap["body"]) == nearest[1:]
    top = max(shape.bounds[3] for shape in (bodies | under).values())
    assert found["room_left"] == pytest.approx(14 - (max(top, 0.0) - table))
