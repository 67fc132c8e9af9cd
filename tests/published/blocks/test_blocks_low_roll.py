"""Wrong blocks under the low roll, and explanations of unequal worth. Worked by hand."""

import math
from typing import Any

import pytest

from halfangle_service.errors import Disagreement
from halfangle_service.registry import load_registry
from support import Call

#: Stacks under both rolls of a 5 in plate: 2.5001 in more under the high one.
BOTH: dict[str, Any] = {
    "units": "in",
    "set": "inch-81",
    "blocks": [2.0, 0.6, 0.1003],
    "low_blocks": [0.1, 0.1002],
    "center_distance": 5,
}


def angle_of(rise: float) -> float:
    """Angle on a 5 in plate in degrees, by hand."""
    return math.degrees(math.asin(rise / 5))


def messages(answer: dict[str, Any]) -> dict[str, str]:
    """What each advisory says, by its code."""
    return {entry["code"]: entry["message"] for entry in answer["advisories"]}


@pytest.mark.outside("blocks.check", source="Worked by hand: .102 for .1002 lifts .0018 in less")
def test_a_wrong_block_under_the_low_roll_is_found(call: Call) -> None:
    """An angle measured too small is explained by .102 for .1002 under the low roll, exactly."""
    wrong = angle_of(2.7003 - 0.1 - 0.102)
    answer = call("blocks.check", **BOTH, measured_angle=wrong, max_explanations=50)
    result = answer["result"]
    assert result["mistakes_explain"] == "what-was-measured"
    found = next(m for m in result["mistakes"] if m["roll"] == "low-roll")
    assert found["words"] == "0.102 in place of 0.1002 under the low roll"
    assert (found["meant"], found["wrung"], found["likeness"]) == (0.1002, 0.102, "same-digits")
    assert found["explains"]
    assert found["unexplained"] == pytest.approx(0, abs=1e-9)
    assert found["angle"]["degrees"] == pytest.approx(wrong)
    # Against the angle of the stacks as read, exactly: -85.8″.
    as_read = angle_of(2.7003 - 0.2002)
    assert result["measured_error_arcsec"] == pytest.approx((wrong - as_read) * 3600, abs=1e-3)
    assert "low-stack-not-searched" not in messages(answer)


@pytest.mark.outside("blocks.check", source="Worked by hand: 2.7003 − .1001 − .1002 in is 2.5 in")
def test_a_wrong_block_under_the_low_roll_is_found_against_the_angle_wanted(call: Call) -> None:
    """Nothing measured: .1004 as read where .1002 was meant makes the lift .0002 in too small."""
    request = {**BOTH, "angle": 30}
    right = call("blocks.check", **{**request, "low_blocks": [0.1001, 0.1002]})["result"]
    assert (right["verdict"], right["mistakes"]) == ("conforming", [])
    wrong = {**request, "low_blocks": [0.1001, 0.1004]}
    result = call("blocks.check", **wrong, max_explanations=50)["result"]
    assert result["verdict"] == "not-conforming"
    assert result["mistakes_explain"] == "the-stack-as-read"
    words = [m["words"] for m in result["mistakes"] if m["explains"]]
    assert "0.1004 in place of 0.1002 under the low roll" in words


def test_deviations_under_the_low_roll_count(call: Call) -> None:
    """A low block 20 millionths long lowers the plate by as much, and nothing is wrong then."""
    box = [{"size": 2}, {"size": 0.5}, {"size": 0.1, "deviation": 0.00002}, {"size": 0.2}]
    request = {"units": "in", "box": box, "blocks": [2, 0.5], "low_blocks": [0.1]}
    measured = angle_of(2.5 - 0.10002)
    answer = call(
        "blocks.check",
        **request,
        center_distance=5,
        measured_angle=measured,
        measurement_error_limit=0.000002,
    )
    result = answer["result"]
    assert result["verdict"] == "conforming"
    assert result["angle"]["degrees"] == pytest.approx(measured)
    assert result["measured_deviation"] == pytest.approx(0, abs=1e-10)


def test_a_height_measured_on_the_high_stack_says_nothing_of_the_low_one(call: Call) -> None:
    """The stack's own height is wrong: no block under the low roll can be the reason."""
    result = call("blocks.check", **BOTH, measured_height=2.7, max_explanations=50)["result"]
    assert {m["roll"] for m in result["mistakes"]} == {"high-roll"}


def test_a_low_stack_of_unknown_blocks_is_said_to_be_unsearched(call: Call) -> None:
    """Where only its height was sent, the answer says that no mistake was looked for there."""
    request = {**BOTH, "low_blocks": None, "low_stack": 0.2002}
    wrong = angle_of(2.7003 - 0.1 - 0.102)
    answer = call("blocks.check", **request, measured_angle=wrong)
    assert "Send `low_blocks`" in messages(answer)["low-stack-not-searched"]
    with pytest.raises(Disagreement, match="were sent together"):
        call("blocks.check", **{**BOTH, "low_stack": 0.2})


def test_a_block_stands_in_one_stack_only(call: Call) -> None:
    """A block under both rolls is refused by name; wear blocks may stand under the low roll."""
    with pytest.raises(Disagreement, match="both stacks name it") as refused:
        call("blocks.check", **{**BOTH, "low_blocks": [0.1, 0.1003]})
    assert list(refused.value.fields) == ["low_blocks/1"]
    with pytest.raises(Disagreement, match="Send `center_distance` together"):
        call("blocks.check", **{**BOTH, "center_distance": None})
    ends = {"set": "inch-83", "blocks": [2.0, 0.55], "low_blocks": [0.05, 0.05], "angle": 30}
    worn = call("blocks.check", **{**BOTH, **ends, "wear_blocks": [0.05]})["result"]
    assert worn["verdict"] == "conforming"


def test_explanations_of_unequal_worth_are_not_said_to_be_equal(call: Call) -> None:
    """Several mistakes within a wide limit: the best and the worst of them are told."""
    request = {**BOTH, "low_blocks": None, "measured_height": 2.701}
    answer = call("blocks.check", **request, measurement_error_limit=0.0003, max_explanations=50)
    missed = [abs(m["unexplained"]) for m in answer["result"]["mistakes"] if m["explains"]]
    assert max(missed) > min(missed) + 1e-5
    said = messages(answer)["several-explanations"]
    assert said.startswith(f"{len(missed)} single mistakes explain it within the limit")
    assert "equally" not in said


@pytest.mark.parametrize("center_distance", [0.5, 127])
def test_a_plate_in_the_other_unit_is_refused(call: Call, center_distance: float) -> None:
    """No plate has rolls half an inch or 127 in apart: that is a slip of the unit."""
    with pytest.raises(Disagreement, match="No sine bar or plate") as refused:
        call("blocks.check", **{**BOTH, "low_blocks": None, "center_distance": center_distance})
    assert list(refused.value.fields) == ["center_distance"]


@pytest.mark.outside("jobs.center", source="asin of heights, by hand; −4747.8″ of the demo's stack")
@pytest.mark.parametrize("included", [20, 60, 106.26])
def test_a_job_and_a_check_say_the_same_of_one_mistake(call: Call, included: float) -> None:
    """The smallest mistake does twice to the cone what the check says of the plate, exactly."""
    example = {**load_registry().operations["jobs.center"].example, "included_angle": included}
    plan = call("jobs.center", **example)["result"]
    said, blocks = plan["smallest_mistake"], plan["plate_setting"]["blocks"]
    half, total, length = included / 2, sum(blocks), example["center_distance"]
    check = call(
        "blocks.check",
        **{name: example[name] for name in ("units", "set", "center_distance")},
        blocks=blocks,
        angle=half,
        measured_height=total + said["wrung"] - said["meant"],
        max_explanations=50,
    )["result"]
    pair = (said["meant"], said["wrung"])
    exact = math.degrees(math.asin((total + said["wrung"] - said["meant"]) / length)) - half
    assert said["included_angle_error_arcsec"] == pytest.approx(2 * exact * 3600, abs=1e-3)
    found = next(m for m in check["mistakes"] if (m["meant"], m["wrung"]) == pair)
    assert found["explains"]
    twice = 2 * found["angle_error_arcsec"]
    assert said["included_angle_error_arcsec"] == pytest.approx(twice, abs=1e-6)
    if included == 60:
        assert twice == pytest.approx(-4747.8, abs=0.05)
