"""A plan as a routing: the plan's own figures, codes that jobs share, stops on each operation."""

import math
import re
from typing import Any

import pytest

from halfangle_service.errors import Unreachable
from halfangle_service.topics.jobs.routing.result import LONGEST_NAME
from routing_support import CENTER, JOBS, answered, plan, routings, sent
from sheets_support import center_job
from support import Call

Json = dict[str, Any]

#: Every code of the named jobs' ways. A code is for ever: none may get another meaning.
CODES = {
    "HA-DRESS-FLANK",
    "HA-DRESS-FLAT-WHEEL",
    "HA-DRESS-WHEEL-SIDE",
    "HA-FINISH",
    "HA-GRIND-CONE-FLAT-WHEEL",
    "HA-GRIND-FACE-FLANK",
    "HA-GRIND-FACE-FLAT-WHEEL",
    "HA-GRIND-FACE-WHEEL-SIDE",
    "HA-GRIND-SOCKET-INTERNAL-WHEEL",
    "HA-HOLD-FACE-WORK",
    "HA-HOLD-FACE-WORK-UPRIGHT",
    "HA-HOLD-TURNED-WORK",
    "HA-HOLD-TURNED-WORK-UPRIGHT",
    "HA-INSPECT-ANGLE",
    "HA-INSPECT-OVER-ROLLS",
    "HA-INSPECT-RUNOUT",
    "HA-SET-COMPOUND-SINE-PLATE",
    "HA-SET-QUARTER-TURN",
    "HA-SET-SINE-PLATE",
    "HA-SET-STACKS-UNDER-BOTH-ROLLS",
    "HA-SET-SWIVELLED-WORKHEAD",
    "HA-SET-WHEEL-SIDE",
}


def every() -> list[Json]:
    """The routing of each way of each named job."""
    return [routing for job in JOBS for routing in routings(job)]


def seconds(operation: Json) -> float:
    """Time of an operation, once; 0 where another's holds it."""
    return float(operation["set_up_seconds"] or 0.0) + float(operation["run_seconds"] or 0.0)


def by_code(routing: Json) -> dict[str, Json]:
    """The operations of a routing by their codes, HA left out."""
    return {each["code"].removeprefix("HA-"): each for each in routing["result"]["operations"]}


def figures(operation: Json) -> dict[str, tuple[Any, str]]:
    """The figures of an operation with their units, by name."""
    return {one["name"]: (one["value"], one["unit"]) for one in operation["values"]}


@pytest.mark.outside("jobs.routing", source="By hand: 5 in × sin 30°; sums of the minutes stated")
def test_a_center_is_set_ground_and_inspected_in_the_times_stated() -> None:
    """A plate at 30° on 2.5 in; 30 min, 2 blocks of 1 and a stack of 2 are 2040 s of set-up."""
    request = center_job(minutes_per_piece=12)
    result = answered("jobs.routing", request)["result"]
    found = by_code({"result": result})
    assert figures(found["SET-SINE-PLATE"])["plate/angle"] == (pytest.approx(30), "degree")
    height = figures(found["SET-SINE-PLATE"])["plate/height"]
    assert height == (pytest.approx(5 * math.sin(math.radians(30))), "inch")
    assert found["SET-SINE-PLATE"]["set_up_seconds"] == (30 + 2 * 1 + 2) * 60
    assert found["GRIND-CONE-FLAT-WHEEL"]["run_seconds"] == 12 * 60
    assert found["INSPECT-OVER-ROLLS"]["run_seconds"] == 5 * 60
    assert {name: found[name]["times_done"] for name in found} == {
        "DRESS-FLAT-WHEEL": 1,
        "HOLD-TURNED-WORK": 1,
        "SET-SINE-PLATE": 1,
        "GRIND-CONE-FLAT-WHEEL": 5,
        "INSPECT-RUNOUT": 2,
        "INSPECT-OVER-ROLLS": 2,
        "FINISH": 5,
    }
    assert result["pieces"] == 5
    assert result["first_piece_minutes"] == 34 + 12 + 5
    assert result["total_minutes"] == 34 + 5 * 12 + 2 * 5


def test_the_seconds_are_the_plan_s_own_minutes() -> None:
    """Of each way of each named job: all operations so often as they are done, and each once."""
    for job in JOBS:
        ways = plan(job)["result"]["ways"]
        for way, routing in zip(ways, routings(job), strict=True):
            result = routing["result"]
            operations = result["operations"]
            whole = sum(each["times_done"] * seconds(each) for each in operations)
            first = sum(seconds(each) for each in operations if each["timed_by"] != "dress")
            assert whole / 60 == pytest.approx(way["total_minutes"], rel=1e-12)
            assert first / 60 == pytest.approx(way["first_piece_minutes"], rel=1e-12)
            assert result["total_minutes"] == way["total_minutes"]
            assert result["first_piece_minutes"] == way["first_piece_minutes"]


def test_a_dress_between_pieces_is_an_operation(call: Call) -> None:
    """Pieces on a wheel that keeps a few: it is dressed again, each time in the time stated."""
    request = center_job(pieces=200, times={"dressing_minutes": 4})
    result = call("jobs.routing", **request)["result"]
    (way, *_) = call("jobs.plan", **request)["result"]["ways"]
    again = by_code({"result": result})["DRESS-AGAIN-FLAT-WHEEL"]
    assert again["run_seconds"] == 240
    assert again["times_done"] == way["batch"]["dressings"] > 1
    assert again["timed_by"] == "dress"
    assert again["assumptions"] == []
    whole = sum(each["times_done"] * seconds(each) for each in result["operations"])
    assert whole == pytest.approx(60 * way["total_minutes"])


def test_operations_stand_in_tens_and_point_at_who_holds_their_time() -> None:
    """10, 20, 30; one without a time of its own names one that has, but for finishing."""
    for routing in every():
        operations = routing["result"]["operations"]
        places = {each["sequence"]: each for each in operations}
        assert list(places) == [10 * n for n in range(1, len(operations) + 1)]
        for each in operations:
            timed = each["set_up_seconds"] is not None or each["run_seconds"] is not None
            assert not (each["set_up_seconds"] is not None and each["run_seconds"] is not None)
            assert timed == (each["timed_in"] is None) or each["code"] == "HA-FINISH"
            if each["timed_in"] is not None:
                holder = places[each["timed_in"]]
                assert seconds(holder) > 0
                assert holder["kind"] == each["kind"]
                assert holder["times_done"] == each["times_done"]


def test_a_code_has_one_meaning_and_nothing_of_the_job() -> None:
    """One code, one kind, one name of at most 80 characters, no digit; the codes are as listed."""
    meanings: dict[str, set[tuple[str, str]]] = {}
    for routing in every():
        codes = [each["code"] for each in routing["result"]["operations"]]
        assert len(codes) == len(set(codes))
        for each in routing["result"]["operations"]:
            meanings.setdefault(each["code"], set()).add((each["kind"], each["name"]))
    assert set(meanings) == CODES
    assert all(len(found) == 1 for found in meanings.values())
    assert len({name for ((_, name),) in meanings.values()}) == len(CODES)
    assert max(len(name) for ((_, name),) in meanings.values()) <= LONGEST_NAME
    assert [code for code in meanings if re.search(r"\d", code)] == []


def test_numbers_of_a_job_change_no_code() -> None:
    """Another angle, size, tolerance, allowance, batch and name have the same master operations."""
    other = center_job(job="HL-0999", pieces=3, feeding={"grinding_allowance": 0.006})
    other["feature"] |= {"included_angle": 62, "large_diameter": 0.7}
    found = answered("jobs.routing", other)["result"]["operations"]
    assert [each["code"] for each in found] == [
        each["code"] for each in routings(CENTER)[0]["result"]["operations"]
    ]
    assert [each["text"] for each in found] != [
        each["text"] for each in routings(CENTER)[0]["result"]["operations"]
    ]


def test_every_step_of_the_plan_is_in_one_operation() -> None:
    """The steps of each way stand in its operations once, in their order, with their cautions."""
    for job in JOBS:
        steps = plan(job)["result"]["steps"]
        operations = routings(job)[0]["result"]["operations"]
        texts = "\n".join(each["text"] for each in operations)
        lines = re.findall(r"^(\d+)\. (.*)$", texts, re.M)
        assert [int(number) for number, _ in lines] == list(range(1, len(steps) + 1))
        assert [action for _, action in lines] == [step["action"] for step in steps]
        told = {caution for each in operations for caution in each["cautions"]}
        assert told == {caution for step in steps for caution in step["cautions"]}


def test_figures_are_those_of_the_plan() -> None:
    """Stacks with their blocks, feed, limits of the best means: each the plan's own number."""
    way, checks = plan(CENTER)["result"]["ways"][0], plan(CENTER)["result"]["checks"]
    found = by_code(routings(CENTER)[0])
    setting = figures(found["SET-SINE-PLATE"])
    high = next(stack for stack in way["stacks"] if stack["role"] == "high")
    assert setting["high/total"] == (high["total"], "inch")
    blocks = [value for name, (value, _) in setting.items() if name.startswith("high/blocks/")]
    assert blocks == high["blocks"]
    grinding = figures(found["GRIND-CONE-FLAT-WHEEL"])
    assert grinding["rough/cutting_passes"] == (
        way["feed_plan"]["rough"]["cutting_passes"],
        "count",
    )
    assert grinding["finish/dial_per_pass"][0] == way["feed_plan"]["finish"]["dial_per_pass"]
    assert grinding["work_rpm"] == (way["feed_plan"]["work_rpm"], "per_minute")
    rolls = next(means for means in checks["inspections"] if means["means"] == checks["best"])
    difference = next(one for one in rolls["readings"] if one["name"] == "measure_difference")
    inspection = figures(found["INSPECT-OVER-ROLLS"])
    assert inspection["included-angle/tolerance_arcsec"] == (120, "arcsecond")
    for limit in ("smallest_accepted_reading", "largest_accepted_reading"):
        assert inspection[f"measure_difference/{limit}"] == (difference[limit], "inch")
    assert figures(found["INSPECT-RUNOUT"])["limit_tir"] == (0.0003, "inch")


def test_figures_of_a_metric_job_are_in_millimetres(call: Call) -> None:
    """A length says its own unit: whoever takes one line in does not know the request's."""
    request = {
        "units": "mm",
        "job": "HL-0600",
        "feature": {
            "kind": "angled-face", "face_angle": 30, "tolerance_arcsec": 120, "rise": 10,
        },
        "equipment": {
            "sine_plates": [{"name": "plate", "center_distance": 100}],
            "block_sets": [{"name": "set", "set": "metric-88"}],
        },
    }  # fmt: skip
    result = call("jobs.routing", **request)["result"]
    assert figures(by_code({"result": result})["SET-SINE-PLATE"])["plate/height"] == (
        pytest.approx(50),
        "millimetre",
    )
    named = {one["unit"] for each in result["operations"] for one in each["values"]}
    assert not named & {"inch", "length"}


def test_usual_times_are_named_and_stated_ones_are_not(call: Call) -> None:
    """What nobody stated otherwise is told with its value; a time of the shop's own is none."""
    usual = by_code(routings(CENTER)[0])["SET-SINE-PLATE"]["assumptions"]
    assert {one["name"]: one["assumed_value"] for one in usual} == {
        "equipment/sine_plates/0/setup_minutes": 30,
        "times/block_minutes": 1,
        "times/stack_minutes": 2,
    }
    request = center_job(minutes_per_piece=12, times={"block_minutes": 1.5, "stack_minutes": 3})
    request["equipment"]["sine_plates"][0] |= {"setup_minutes": 25, "inspection_minutes": 8}
    stated = by_code(call("jobs.routing", **request))
    assert stated["SET-SINE-PLATE"]["assumptions"] == []
    assert stated["SET-SINE-PLATE"]["set_up_seconds"] == (25 + 2 * 1.5 + 3) * 60
    assert stated["INSPECT-OVER-ROLLS"]["assumptions"] == []
    named = [one["name"] for one in stated["GRIND-CONE-FLAT-WHEEL"]["assumptions"]]
    assert not {"minutes_per_piece", "times/loading_minutes"} & set(named)
    del request["minutes_per_piece"], request["feeding"]
    unknown = by_code(call("jobs.routing", **request))["GRIND-CONE-FLAT-WHEEL"]["assumptions"]
    assert {one["name"]: one["assumed_value"] for one in unknown}["minutes_per_piece"] == 10


def test_what_was_not_stated_is_named_and_has_no_figure(call: Call) -> None:
    """Without an allowance no pass is told, and the routing says what it lacks."""
    request = center_job()
    del request["feeding"]
    answer = call("jobs.routing", **request)
    assert "feeding/grinding_allowance" in answer["result"]["not_stated"]
    grinding = figures(by_code(answer)["GRIND-CONE-FLAT-WHEEL"])
    assert [name for name in grinding if name.startswith(("rough/", "finish/"))] == []


def test_tools_are_called_as_the_shop_calls_them() -> None:
    """Plate, blocks with their sizes, wheel with its size, adapter and means of inspection."""
    found = by_code(routings(CENTER)[0])
    told = {one["tool"]: one for each in found.values() for one in each["tools"]}
    assert told["sine-plate"]["name"] == "5 in plate"
    assert told["block-set"]["name"] == "toolroom set"
    assert told["block-set"]["detail"].startswith("high: 2 + 0.5 in")
    assert told["wheel"]["detail"] == "7.0000 in diameter, 0.5000 in wide"
    assert told["test-bar"]["detail"] == "a test bar with a Morse No. 2 shank"
    assert {"dresser", "spin-fixture", "indicator", "rolls"} <= told.keys()
    by_flank = next(r for r in every() if r["result"]["way"] == "dressed-wheel")
    dressing = by_code(by_flank)["DRESS-FLANK"]
    assert dressing["set_up_seconds"] > 0
    assert dressing["tools"][0]["name"] is not None


def test_the_plan_it_belongs_to_is_named() -> None:
    """Its fingerprint of the plan is that of the plan's own answer, whichever way is followed."""
    for job in JOBS:
        fingerprint = plan(job)["basis"]["fingerprint"]
        assert {each["result"]["plan_fingerprint"] for each in routings(job)} == {fingerprint}
        own = {each["basis"]["fingerprint"] for each in routings(job)}
        assert len(own) == len(routings(job))
        assert fingerprint not in own


def test_the_first_way_advises_what_the_plan_does() -> None:
    """Nothing that the plan advises is lost, and nothing is added."""
    for job in JOBS:
        assert answered("jobs.routing", sent(job))["advisories"] == plan(job)["advisories"]


def test_a_stop_stands_on_each_operation(call: Call) -> None:
    """Work that no way keeps: each operation says so by itself, on top of its text."""
    request = center_job()
    request["feature"]["included_angle_tolerance_arcsec"] = 1
    answer = call("jobs.routing", **request)
    (message,) = (one["message"] for one in answer["advisories"] if one["severity"] == "stop")
    assert "Do not grind" in message
    for each in answer["result"]["operations"]:
        assert each["stops"] == [message]
        assert each["text"].startswith(f"STOP: {message}\n")
    assert answer["result"]["forecast"] == "does-not-hold"


def test_a_way_that_was_chosen_stops_by_itself(call: Call) -> None:
    """The best way holds: one chosen in its place that does not is a stop with its own reason."""
    request = center_job()
    request["equipment"]["swivelled_workheads"] = [
        {
            "name": "grinder", "grinder": "cylindrical", "graduation": "1 00",
            "wheel_diameter": 12,
        }
    ]  # fmt: skip
    plan_answer = call("jobs.plan", **request)
    assert [way["forecast"] for way in plan_answer["result"]["ways"]][::2] == [
        "holds",
        "does-not-hold",
    ]
    assert [one for one in plan_answer["advisories"] if one["severity"] == "stop"] == []
    answer = call("jobs.routing", **request, way="swivelled-workhead")
    (stop,) = (one for one in answer["advisories"] if one["severity"] == "stop")
    assert stop["code"] == "chosen-way-does-not-hold"
    assert re.search(r"swivelled workhead.*not ±120″.*Do not grind", stop["message"])
    assert answer["result"]["forecast"] == "does-not-hold"
    assert all(each["stops"] == [stop["message"]] for each in answer["result"]["operations"])


@pytest.mark.parametrize("way", ["3", "0", "-1", "dressed-wheel", "²", "sine plate"])
def test_a_way_that_the_plan_has_not_is_refused(call: Call, way: str) -> None:
    """The refusal names those that it has."""
    with pytest.raises(Unreachable, match="it has: 1 sine-plate, 2 quarter-turn") as refused:
        call("jobs.routing", **center_job(), way=way)
    assert refused.value.fields == {"way": "should be one of 1 sine-plate, 2 quarter-turn"}
