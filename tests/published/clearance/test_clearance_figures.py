"""Where gaps lie over a tilted plate, and how high it stands, worked out apart."""

import math
from typing import Any

import numpy as np
import pytest
from scipy.optimize import brentq

from halfangle_service.topics.clearance.tilted_plate import tilted_plate
from support import Call, assert_values, changed

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


@pytest.mark.outside("clearance.tilted-plate", source="A corner and a circle in a plane, by hand")
@pytest.mark.parametrize("wanted", [0.1, 0.25])
def test_the_stick_out_named_gives_the_gap_wanted(call: Call, wanted: float) -> None:
    """Standing out as far as is named, the nose's corner is as far from the wheel as is wanted.

    The wheel's center comes 0.1 in past the large end, its radius above the ground line; the
    corner of the nose of 1.25 in lies the stick-out behind that end.
    """

    def gap(stick_out: float) -> float:
        center = np.array([-0.1, 3.5])
        return float(np.linalg.norm(level(-stick_out, 0.625) - center)) - 3.5

    assert gap(0.4) < 0.1
    request = changed(EXAMPLE, fixture__stick_out=0.4, wheel__worn_diameter=None, gap_wanted=wanted)
    result = call("clearance.tilted-plate", **request)["result"]
    change = next(entry for entry in result["changes"] if entry["kind"] == "stick-out")
    assert change["change_to"] == pytest.approx(brentq(lambda s: gap(s) - wanted, 0.4, 3), rel=1e-5)
