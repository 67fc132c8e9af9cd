"""Where gaps lie over a tilted plate, and how high it stands, worked out apart."""

import math
from typing import Any

import numpy as np
import pytest

from halfangle_service.topics.clearance.tilted_plate import tilted_plate
from support import Call, assert_values

EXAMPLE: dict[str, Any] = dict(tilted_plate.example)
SINE, COSINE = 0.5, math.cos(math.radians(30))


def level(u: float, v: float) -> Any:
    """A point of the plate's frame, u up the slope and v off the axis, in the level frame.

    The plate tilts by 30°; the origin is the ground line's large end, 0.375 in off the axis.
    """
    v -= 0.375
    return np.array([u * COSINE - v * SINE, u * SINE + v * COSINE])


@pytest.mark.outside("clearance.tilted-plate", source="A corner and a circle in a plane, by hand")
@pytest.mark.parametrize(("state", "diameter"), [("new", 7.0), ("worn", 5.5)])
def test_the_nose_is_nearest_with_its_corner(call: Call, state: str, diameter: float) -> None:
    """Nearest to the wheel is the nose's upper corner, at the end of the stroke toward it.

    The nose of 1.25 in ends 0.75 in below the large end; the wheel's center comes 0.1 in past that
    end, its radius above the line. The gap is their distance less the radius, along that line.
    """
    corner = level(-0.75, 0.625)
    center = np.array([-0.1, diameter / 2])
    away = np.linalg.norm(corner - center)
    touches = center + (corner - center) * (diameter / 2 / away)
    result = call("clearance.tilted-plate", **EXAMPLE)["result"]
    row = next(
        row
        for row in result["gaps"]
        if (row["wheel_state"], row["part"], row["body"]) == (state, "wheel", "nose")
    )
    expected = {
        "gap": away - diameter / 2,
        "on_body.x": corner[0],
        "on_body.z": corner[1],
        "on_part.x": touches[0],
        "on_part.z": touches[1],
    }
    assert_values(row, expected, rel=1e-6)
    if state == "new":
        least = {name: expected[name] for name in ("gap", "on_part.x", "on_part.z")}
        assert_values(result["smallest_gap"], least, rel=1e-6)


@pytest.mark.outside("clearance.tilted-plate", source="Right triangles by hand")
@pytest.mark.parametrize("body_height", [2.6, 5.0])
def test_how_high_it_stands(call: Call, body_height: float) -> None:
    """The line to grind is 0.35 / sin 30° long; a body taller than it is the highest of all.

    The low roll's center is 1.5 + 0.75 in below the work's axis, square to the plate; the rest of
    the closed height stands under it. A body of 5 in rises 3.5 in over the axis, from the nose's
    end 1.5 in below the large end.
    """
    fixture = {**EXAMPLE["fixture"], "body_height": body_height}
    result = call("clearance.tilted-plate", **{**EXAMPLE, "fixture": fixture})["result"]
    plate = {"slant_length": 0.7, "plate_angle.degrees": 30, "high_stack": 2.5}
    assert_values(result, plate)
    over_line = level(-1.5, body_height - 1.5)[1]
    expected = result["height_to_wheel"] + max(over_line, 0)
    assert result["height_over_all"] == pytest.approx(expected)
    assert result["room_left"] == pytest.approx(EXAMPLE["room_under_wheel"] - expected)
    assert (over_line > 0) == (body_height == 5.0)
