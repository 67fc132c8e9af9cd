"""What a way's clearance lacks, what would mend it, and what no one runs."""

from typing import Any

import pytest

from clearance_support import (
    ANGLE_PLATE,
    CONE,
    DRESSED,
    FACE,
    GRINDER,
    HEAD,
    HOLDER,
    PLATE_BODY,
    SIDE,
    SOCKET,
    SPINDLE,
    shop_request,
    way_of,
)
from halfangle_service.errors import Impossible, Unreachable
from support import Call, changed

Json = dict[str, Any]
PLATE: Json = {
    "plate_body": PLATE_BODY,
    "work_holder": {**HOLDER, "holder_height": 0.3},
    "work_to_high_end": 0.5,
    "angle_plate": ANGLE_PLATE,
}
STROKE = ["feeding/past_large_end", "feeding/past_small_end", "room/gap_wanted"]


@pytest.mark.parametrize(
    ("feature", "shop", "way", "lacks"),
    [
        (
            {name: value for name, value in FACE.items() if name != "work_body"},
            {"sine_plates": [{}], "wheel": None},
            "sine-plate",
            [
                "feature/work_body",
                "equipment/sine_plates/0/plate_body",
                "equipment/sine_plates/0/work_holder",
                "equipment/sine_plates/0/work_to_high_end",
                "equipment/wheel",
            ],
        ),
        (
            CONE,
            {"sine_plates": [{}], "spin_fixture": None},
            "quarter-turn",
            [
                "equipment/spin_fixture",
                "equipment/sine_plates/0/plate_body",
                "equipment/sine_plates/0/angle_plate",
            ],
        ),
        (
            CONE,
            {"dressed_wheels": [DRESSED]},
            "dressed-wheel",
            ["equipment/dressed_wheels/0/head"],
        ),
        (
            CONE,
            {"wheel_sides": [SIDE]},
            "wheel-side",
            [
                "equipment/wheel_sides/0/body_width",
                "equipment/wheel_sides/0/work_below_spindle",
                "equipment/wheel_sides/0/wheel_diameter",
                "equipment/wheel_sides/0/wheel_width",
                "equipment/wheel_sides/0/head",
            ],
        ),
        (
            CONE,
            {"swivelled_workheads": [GRINDER]},
            "swivelled-workhead",
            [
                "equipment/swivelled_workheads/0/workhead_body",
                "equipment/swivelled_workheads/0/wheel_width",
                "equipment/swivelled_workheads/0/head",
            ],
        ),
        (
            SOCKET,
            {"sine_plates": [{}], "internal_spindle": {"wheel_diameter": 0.5, "reach": 4}},
            "sine-plate",
            [
                "feature/relief_length",
                "equipment/sine_plates/0/plate_body",
                "equipment/internal_spindle/wheel_width",
                "equipment/internal_spindle/quill_diameter",
                "equipment/internal_spindle/spindle_diameter",
            ],
        ),
    ],
)
def test_each_way_names_what_its_clearance_lacks(
    call: Call, feature: Json, shop: Json, way: str, lacks: list[str]
) -> None:
    """What is not stated is named by its path, nothing else, and nothing is said to clear."""
    request = shop_request(feature, **shop)
    request["equipment"] = {n: v for n, v in request["equipment"].items() if v is not None}
    found = way_of(call, request, way)["clearance"]
    assert found["forecast"] == "not-stated"
    assert found["not_stated"] == lacks
    assert found["smallest_gap"] is None
    request["feeding"], request["room"] = {}, {}
    assert way_of(call, request, way)["clearance"]["not_stated"] == [*lacks, *STROKE]


def test_work_raised_as_a_change_says_clears(call: Call) -> None:
    """A holder that fouls rules the plate out; raised as it says, the work keeps the gap."""
    holder = {**HOLDER, "holder_height": 1.1}
    plate = {**PLATE, "work_holder": holder, "work_to_high_end": 2.6, "largest_angle": 60}
    with pytest.raises(Unreachable, match=r"foul by .*holder") as refused:
        call("jobs.plan", **shop_request(FACE, sine_plates=[plate]))
    raised = float(refused.value.detail.split("Put the work ")[1].split(" in")[0])
    mended = {**plate, "work_holder": {**holder, "seat_height": raised + 1e-4}}
    found = way_of(call, shop_request(FACE, sine_plates=[mended]), "sine-plate")["clearance"]
    assert found["forecast"] == "holds"
    assert found["smallest_gap"]["gap"] == pytest.approx(0.05, abs=5e-4)


def test_work_that_stands_out_as_a_change_says_clears(call: Call) -> None:
    """Beside a wheel more stick-out opens the gap: what it says is what it takes."""
    body = {
        "body_length": 8,
        "body_width": 5,
        "nose_diameter": 3,
        "nose_length": 1,
        "stick_out": 0.6,
        "shank_diameter": 0.75,
    }
    head = {**GRINDER, "wheel_width": 0.75, "head": HEAD, "workhead_body": body}
    near = shop_request(CONE, swivelled_workheads=[head])
    near["room"]["gap_wanted"] = 1.2
    found = way_of(call, near, "swivelled-workhead")["clearance"]
    assert found["forecast"] == "may-not-hold"
    (change,) = found["changes"]
    assert (change["kind"], change["keeps_gap_wanted"]) == ("stick-out", True)
    assert found["stick_out_needed"] == change["change_to"] > 0.6
    path = "equipment__swivelled_workheads"
    out = {**head, "workhead_body": {**body, "stick_out": change["change_to"]}}
    mended = way_of(call, near, "swivelled-workhead", **{path: [out]})["clearance"]
    assert mended["smallest_gap"]["gap"] == pytest.approx(1.2)
    less = {**head, "workhead_body": {**body, "stick_out": change["change_to"] - 0.01}}
    short = way_of(call, near, "swivelled-workhead", **{path: [less]})["clearance"]
    assert short["smallest_gap"]["gap"] < 1.2


@pytest.mark.parametrize(
    ("feature", "change", "says", "field"),
    [
        (CONE, {"wheel__marked_rpm": 3400}, "3400 per minute is marked", "wheel/rpm"),
        (
            FACE,
            {
                "sine_plates": [
                    {
                        **PLATE,
                        "name": "plate",
                        "center_distance": 5,
                        "largest_angle": 30,
                        "work_holder": {
                            "seat_height": 0,
                            "holder_height": 0,
                            "magnet_holds": False,
                        },
                    }
                ]
            },
            "No magnet holds this work",
            "work_holder/holder_height",
        ),
        (
            SOCKET,
            {"internal_spindle": {**SPINDLE, "rpm": 31_000, "marked_rpm": 30_000}},
            "31000 per minute; 30000 per minute is marked",
            "internal_spindle/rpm",
        ),
    ],
)
def test_what_nobody_runs_is_ruled_out_with_what_would_do(
    call: Call, feature: Json, change: Json, says: str, field: str
) -> None:
    """A spindle past its wheel's mark, work that no magnet holds: the field, and what to change."""
    plate = {**PLATE, "largest_angle": 30}
    request = shop_request(feature, sine_plates=[plate])
    stated = {f"equipment__{name}": value for name, value in change.items()}
    with pytest.raises(Unreachable, match=says) as refused:
        call("jobs.plan", **changed(request, **stated))
    assert any(name.endswith(field) for name in refused.value.fields)
    ruled: Any = refused.value.more["ruled_out"]
    assert all(out["instead"] for out in ruled if says in out["reason"])


@pytest.mark.parametrize(
    ("change", "field"),
    [({"base_length": 1.0}, "base_length"), ({"face_height": 0.3}, "face_height")],
)
def test_work_that_its_face_does_not_fit_is_refused(call: Call, change: Json, field: str) -> None:
    """A face longer than its base, or that begins lower than it rises, is refused by its field."""
    face = {**FACE, "work_body": {**FACE["work_body"], **change}}
    with pytest.raises(Impossible, match="face") as refused:
        call("jobs.plan", **shop_request(face, sine_plates=[PLATE]))
    assert set(refused.value.fields) == {f"feature/work_body/{field}"}
