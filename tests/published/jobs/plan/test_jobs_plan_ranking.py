"""Which way comes first by the rule that the answer states: cases between neighbours."""

import copy
from typing import Any

import pytest

from halfangle_service.errors import Unreachable
from plan_support import ANGLE_ERRORS, Json, whole_request
from support import Call

MORSE: Json = {"kind": "taper-plug", "designation": "morse-3"}
SIDE: Json = {
    "name": "cup wheel",
    "rated_for_side": True,
    "usable_width": 1,
    "swivel_error_limit_arcsec": 15,
    "side_error_limit_arcsec": 10,
    "axis_yaw_error_limit_arcsec": 60,
    "side_wear": 0,
}
FACE: Json = {"kind": "angled-face", "face_angle": 50, "rise": 0.3, "tolerance_arcsec": 60}


def morse(tolerance: float, **changes: Any) -> Json:
    """A Morse 3 plug, for which one block is 37″ off, or both rolls stand 4″ off."""
    feature = {**MORSE, "included_angle_tolerance_arcsec": tolerance}
    return whole_request(
        feature=feature, equipment__spin_fixture=None, pieces=5, minutes_per_piece=10, **changes
    )


def ways(call: Call, request: Json) -> list[Json]:
    """The ways of a plan as they are ranked."""
    found: list[Json] = call("jobs.plan", **request)["result"]["ways"]
    return found


def dear(way: Json) -> float:
    """Minutes for all pieces over arc-seconds of room."""
    return float(way["total_minutes"] / way["room_to_prove_arcsec"])


def test_exact_pair_comes_before_one_block_that_is_off(call: Call) -> None:
    """At ±120″ four minutes buy 33″ more of 44″: the pair; at ±1° they buy nothing: one block."""
    fine, wide = ways(call, morse(120)), ways(call, morse(3600))
    assert [way["way"] for way in fine] == ["stacks-under-both-rolls", "sine-plate"]
    assert [way["way"] for way in wide] == ["sine-plate", "stacks-under-both-rolls"]
    assert fine[0]["total_minutes"] > fine[1]["total_minutes"]
    for found in (fine, wide):
        assert {way["forecast"] for way in found} == {"holds"}
        assert dear(found[0]) < dear(found[1])


def test_a_tenth_more_time_is_paid_for_by_a_tenth_more_room(call: Call) -> None:
    """The plate is first until its set-up takes longer by the share of room that it leaves more."""
    request = whole_request(
        pieces=5, minutes_per_piece=10, equipment__wheel_sides=[SIDE], equipment__block_sets=None
    )
    request["equipment"]["block_sets"] = [{"name": "set", "set": "inch-81", "grade": "asme-0"}]
    request["equipment"]["sine_plates"][0].pop("plate_body")
    rows = {way["way"]: way for way in ways(call, request)}
    plate, side = rows["sine-plate"], rows["wheel-side"]
    assert 0 < side["room_to_prove_arcsec"] < plate["room_to_prove_arcsec"]
    # By hand: the total at which minutes over room are alike, less what it takes beside the plate.
    alike = dear(side) * plate["room_to_prove_arcsec"]
    setup = 30 + alike - plate["total_minutes"]
    assert setup > 0
    for share, first in ((0.99, "sine-plate"), (1.01, "wheel-side")):
        request["equipment"]["sine_plates"][0]["setup_minutes"] = share * setup
        found = [w["way"] for w in ways(call, request) if w["way"] != "quarter-turn"]
        assert found[0] == first


def test_what_can_be_proved_comes_before_what_is_quicker(call: Call) -> None:
    """A way without room to prove it comes after one that leaves some, however quick it is."""
    request = morse(75)
    rows = {way["way"]: way for way in ways(call, request)}
    assert [way["forecast"] for way in rows.values()] == ["holds", "holds"]
    assert rows["sine-plate"]["room_to_prove_arcsec"] < 0
    slow = {"times": {"stack_minutes": 1000}}
    both = rows["stacks-under-both-rolls"]["room_to_prove_arcsec"]
    assert both > 0
    found = ways(call, {**request, **slow})
    assert [way["way"] for way in found] == ["stacks-under-both-rolls", "sine-plate"]
    assert found[0]["total_minutes"] > found[1]["total_minutes"] + 900


def test_without_an_inspection_the_room_of_a_finer_one_counts(call: Call) -> None:
    """Where nothing was stated of measuring, tolerance less the set-up's error is weighed."""
    request = morse(120, equipment__measuring=None)
    found = ways(call, request)
    assert [way["room_to_prove_arcsec"] for way in found] == [None, None]
    assert [way["way"] for way in found] == ["stacks-under-both-rolls", "sine-plate"]


@pytest.mark.outside("jobs.plan", source="Times stated, added up by hand")
def test_each_part_of_a_set_up_costs_its_own_time(call: Call) -> None:
    """Blocks, stacks, an edge, a quarter turn: each as often as it is done, at the time stated."""
    times = {
        "block_minutes": 0.5,
        "stack_minutes": 4,
        "further_tilt_minutes": 7,
        "squaring_minutes": 11,
        "edge_trueing_minutes": 13,
    }
    request = whole_request(feature=FACE, pieces=1, minutes_per_piece=10, times=times)
    request["equipment"]["sine_plates"][0]["squareness_error_limit_arcsec"] = 5
    for way in ways(call, request):
        stacks = [stack for stack in way["stacks"] if stack["role"] != "check"]
        blocks = sum(len(stack["blocks"]) for stack in stacks)
        expected = {
            "equipment": (1, 30.0),
            "block": (blocks, 0.5),
            "stack": (len(stacks), 4.0),
            "edge-trueing": (1, 13.0),
        }
        if way["way"] == "quarter-turn":
            expected["squaring"] = (1, 11.0)
        found = {
            part["setup_part"]: (part["times_done"], part["minutes_each"])
            for part in way["time"]["setup_parts"]
        }
        assert found == expected
        total = sum(count * each for count, each in expected.values())
        assert way["time"]["setup_minutes"] == pytest.approx(total)
        assert way["first_piece_minutes"] == pytest.approx(total + 10 + 5)


def test_the_second_plate_of_a_compound_face_costs_its_tilt(call: Call) -> None:
    """Two hinges set take one further tilt, one that stays at zero none; an edge is trued."""
    orientation = {"kind": "projected-angles", "x_angle": 10, "y_angle": 20}
    feature = {"kind": "compound-face", "orientation": orientation, "rise": 0.3}
    centers = {"base_center_distance": 5, "upper_center_distance": 5}
    plates = [{"name": "compound", "base_axis": "x", **centers}]
    request = whole_request(
        feature={**feature, "tolerance_arcsec": 60}, equipment__compound_plates=plates, pieces=1
    )
    found = ways(call, request)
    for way in found:
        parts = {part["setup_part"]: part for part in way["time"]["setup_parts"]}
        assert parts["further-tilt"]["times_done"] == 1
        assert parts["further-tilt"]["minutes_each"] == 10
        assert parts["edge-trueing"]["times_done"] == 1
    assert len({way["in_words"] for way in found}) == len(found) > 1


def test_times_of_pieces_can_be_stated(call: Call) -> None:
    """Loading and dressing take what the shop says."""
    times = {"loading_minutes": 2.5, "dressing_minutes": 6}
    request = whole_request(times=times, equipment__wheel__breakdown_per_piece=0.00001)
    way = ways(call, request)[0]
    time = way["time"]
    assert (time["loading_minutes"], time["dressing_minutes"]) == (2.5, 6)
    expected = time["setup_minutes"] + 40 * (2.5 + time["minutes_per_piece"])
    expected += time["pieces_inspected"] * time["inspection_minutes"] + 6 * time["dressings"]
    assert time["dressings"] > 0
    assert way["total_minutes"] == pytest.approx(expected)


def test_no_two_ways_are_called_alike(call: Call) -> None:
    """By one plate and one set a quarter turn stands on one stack or on two: each has its name."""
    plate: Json = {"name": "5 in plate", "center_distance": 5, "angle_errors": ANGLE_ERRORS}
    second = {**plate, "name": "10 in plate", "center_distance": 10}
    sets = [{"name": name, "set": "inch-81", "grade": "asme-0"} for name in ("old", "new")]
    request = whole_request(feature={**FACE, "face_angle": 88.5623, "tolerance_arcsec": 120})
    request["equipment"] |= {"sine_plates": [plate, second], "block_sets": sets}
    found = ways(call, request)
    names = [way["in_words"] for way in found]
    assert len(set(names)) == len(names)
    alike = [way for way in found if way["equipment"] == ["5 in plate", "old"]]
    assert [way["way"] for way in alike].count("quarter-turn") == 2


def test_a_refusal_keeps_every_reason_of_a_field(call: Call) -> None:
    """Where several ways fail by one field each reason is told there, and none twice."""
    request = whole_request(feature={**FACE, "face_angle": 45.5})
    request["equipment"]["sine_plates"][0]["largest_angle"] = 30
    request["equipment"]["wheel_sides"] = [{**SIDE, "usable_width": 0.1, "rated_for_side": False}]
    with pytest.raises(Unreachable, match="No way of the shop") as refused:
        call("jobs.plan", **request)
    reach = refused.value.fields["equipment/sine_plates/0/largest_angle"]
    assert "45.5° is asked" in reach
    assert "44.5° is asked" in reach
    few = copy.deepcopy(request)
    few["equipment"]["wheel_sides"] = []
    few["equipment"]["sine_plates"][0]["largest_angle"] = 60
    few["equipment"]["block_sets"] = [{"name": "few", "sizes": [0.1, 0.2]}]
    with pytest.raises(Unreachable, match="No way of the shop") as refused:
        call("jobs.plan", **few)
    (told,) = refused.value.fields.values()
    assert told.count("The nearest stack of up to 5") == 2


def test_a_quarter_turn_is_not_missed_by_work_that_stands_along_the_plate(call: Call) -> None:
    """Why work is not turned is said only where it does not stand along the plate either."""
    request = whole_request(feature={**FACE, "face_angle": 10})
    out = call("jobs.plan", **request)["result"]["ruled_out"]
    assert [way for way in out if way["way"] == "quarter-turn"] == []
    request["equipment"]["sine_plates"][0]["largest_angle"] = 5
    with pytest.raises(Unreachable, match="No way of the shop") as refused:
        call("jobs.plan", **request)
    ruled: Any = refused.value.more["ruled_out"]
    assert [way["way"] for way in ruled] == ["sine-plate", "quarter-turn"]
