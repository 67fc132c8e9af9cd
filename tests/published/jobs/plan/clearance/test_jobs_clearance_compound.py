"""Clearance of a compound face on its plates, against points of solids turned in space."""

import math
from typing import Any

import numpy as np
import pytest
from scipy.spatial.transform import Rotation

from clearance_support import HOLDER, OVERRUN, out_of, shop_request, way_of
from support import Call

Json = dict[str, Any]
X, Y = 12.0, 20.0
SIZES = (1.5, 1.0, 1.25)
RISE = SIZES[0] * math.tan(math.radians(X)) + SIZES[1] * math.tan(math.radians(Y))
FACE: Json = {
    "kind": "compound-face",
    "orientation": {"kind": "projected-angles", "x_angle": X, "y_angle": Y},
    "rise": RISE,
    "tolerance_arcsec": 120,
    "work_body": {"base_length": SIZES[0], "base_width": SIZES[1], "face_height": SIZES[2]},
}
BODY: Json = {
    "length": 6,
    "thickness": 0.75,
    "closed_height": 1.5,
    "roll_diameter": 0.5,
    "low_roll_from_end": 0.4,
    "plate_width": 5,
}
PLATE: Json = {
    "name": "compound plate",
    "base_center_distance": 5,
    "upper_center_distance": 5,
    "base_axis": "x",
    "base_body": {**BODY, "closed_height": 2.25},
    "upper_body": BODY,
    "work_holder": {**HOLDER, "past_tall_end": 0.5, "past_short_end": 0.5, "holder_height": 0.5},
}


def grid(low: Any, high: Any, count: int = 25) -> Any:
    """Points all through a box."""
    ways = [np.linspace(a, b, count) for a, b in zip(low, high, strict=True)]
    return np.stack(np.meshgrid(*ways), axis=-1).reshape(-1, 3)


def scene() -> tuple[Json, float]:
    """Points of each body as they stand with the face level, and the table's height.

    The hinges raise the back and the right: the work lies turned half round in plan, its face
    falling to the right and to the back.
    """
    slope = -np.array([math.tan(math.radians(X)), math.tan(math.radians(Y))])
    normal = np.array([-slope[0], -slope[1], 1.0])
    normal /= np.linalg.norm(normal)
    base = math.asin(normal[1])
    upper = math.atan2(normal[0], normal[2])
    raise_right = Rotation.from_euler("y", -upper).as_matrix()
    raise_back = Rotation.from_euler("x", base).as_matrix()
    lows, highs = (-SIZES[0] / 2, -SIZES[1] / 2, 0), (SIZES[0] / 2, SIZES[1] / 2, SIZES[2])
    work = grid(lows, highs)
    top = SIZES[2] - RISE / 2
    seat = np.array([0, 0, 0.25])
    work = work[work[:, 2] <= top + work[:, :2] @ slope + 1e-9] + seat
    corners = grid(lows, highs, 2)[:, :2]
    face = np.column_stack([corners, top + corners @ slope]) + seat
    over = 0.5
    solids = {
        "work": work,
        "holder": grid(
            (lows[0] - over, lows[1] - over, 0), (highs[0] + over, highs[1] + over, 0.5)
        ),
        "upper plate": grid((-3, -2.5, -0.75), (3, 2.5, 0)),
    }
    roll = np.array([(0.4 - 3) * np.sign(upper), 0, -0.75])
    base_roll = np.array([0, (0.4 - 3) * np.sign(base), -0.75])

    def on_base(points: Any) -> Any:
        return base_roll + (points - base_roll) @ raise_back.T

    def up(points: Any) -> Any:
        return on_base(roll + (points - roll) @ raise_right.T + np.array([0, 0, 1.5]))

    placed = {name: up(points) for name, points in solids.items()}
    placed["base plate"] = on_base(grid((-2.5, -3, -0.75), (2.5, 3, 0)))
    ground = up(face)
    assert np.ptp(ground[:, 2]) < 1e-12
    to = np.array([*np.min(ground[:, :2], axis=0), ground[0, 2]])
    table = on_base(base_roll[None])[0, 2] - (2.25 - 0.75) - to[2]
    size = np.ptp(ground[:, :2], axis=0)
    return {"size": size, **{name: points - to for name, points in placed.items()}}, table


def gap_in_space(points: Any, size: Any, radius: float, width: float) -> float:
    """How near points come to a disc whose lowest place is swept over the face and past it.

    The disc's half width beyond the strip that it grinds is `width`.
    """
    past = max(OVERRUN.values())
    x, y, z = points.T
    along = np.maximum(np.maximum(-past - x, x - size[0] - past), 0)
    away = np.maximum(np.hypot(along, z - 3.5) - radius, 0)
    beside = np.maximum(np.maximum(-past - width - y, y - size[1] - past - width), 0)
    return float(np.min(np.hypot(away, beside)))


RAISED: Json = {**PLATE, "base_raised_side": "back", "upper_raised_side": "right"}


@pytest.mark.outside("jobs.plan", source="Brute force: points of solids turned by scipy in space")
def test_a_compound_face_is_never_nearer_in_space_than_is_said(call: Call) -> None:
    """Of all points of work, holder and plates none comes nearer than the gap that is told."""
    found = way_of(call, shop_request(FACE, compound_plates=[RAISED]), "compound-sine-plate")
    clearance = found["clearance"]
    gap = clearance["smallest_gap"]
    solids, table = scene()
    size = solids.pop("size")
    nearest = {
        name: min(
            gap_in_space(points, size, 1.5, 0.375),
            math.inf if name == "work" else gap_in_space(points, size, 3.5, 0.0),
        )
        for name, points in solids.items()
    }
    assert (gap["body"], gap["part"]) == ("holder", "wheel")
    assert gap["gap"] <= nearest["holder"] == min(nearest.values())
    # What both views leave open, and the grid of points.
    assert gap["gap"] == pytest.approx(nearest["holder"], abs=0.03)
    top = max(float(points[:, 2].max()) for points in solids.values())
    assert clearance["room_left"] == pytest.approx(14 - (max(top, 0.0) - table), abs=1e-6)


def test_the_other_hand_stands_as_a_mirror_image(call: Call) -> None:
    """With no side of the plates bound, both hands clear by the same."""
    found = [
        way_of(
            call,
            shop_request({**FACE, "hand": hand}, compound_plates=[PLATE]),
            "compound-sine-plate",
        )["clearance"]
        for hand in ("as-drawn", "opposite")
    ]
    assert found[0]["smallest_gap"]["gap"] == pytest.approx(found[1]["smallest_gap"]["gap"])
    assert found[0]["room_left"] == pytest.approx(found[1]["room_left"])


@pytest.mark.outside("jobs.plan", source="Brute force: points of solids turned by scipy in space")
@pytest.mark.parametrize("height", [0.65, 1.1])
def test_a_holder_fouls_where_its_points_meet_the_wheel(call: Call, height: float) -> None:
    """A holder whose points go into the wheel rules the plate out; one that does not, does not."""
    plate = {**RAISED, "work_holder": {**PLATE["work_holder"], "holder_height": height}}
    request = shop_request(FACE, compound_plates=[plate, {**RAISED, "name": "other plate"}])
    solids, _ = scene()
    size, raised = solids.pop("size"), solids["holder"]
    # The holder's top is a plane of its points: they are moved up along its normal.
    top = raised.reshape(25, 25, 25, 3)
    up = top[0, 0, 1] - top[0, 0, 0]
    points = raised + up / np.linalg.norm(up) * (height - 0.5)
    if gap_in_space(points, size, 3.5, 0.0) == 0.0:
        out = out_of(call, request, "compound-sine-plate")
        assert "foul" in out["reason"]
        assert out["field"] == "equipment/compound_plates/0/work_holder"
        assert height == 1.1
    else:
        ways = call("jobs.plan", **request)["result"]["ways"]
        assert {way["equipment"][0] for way in ways} == {"compound plate", "other plate"}
