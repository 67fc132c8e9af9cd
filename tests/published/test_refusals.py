"""Refusals that nothing else asks for, each with its true reason, its fields and its limit.

The limits are worked out by hand, and just inside of them there is an answer.
"""

import math
from collections.abc import Mapping
from typing import Any

import pytest

from halfangle_service.errors import BeyondBound, Disagreement, Impossible, Refusal, Unreachable
from halfangle_service.registry import load_registry
from support import Call


def asked(name: str, changes: Mapping[str, Any]) -> dict[str, Any]:
    """The operation's own example, changed; a change to None leaves the field out."""
    request = {**load_registry().operations[name].example, **changes}
    return {field: value for field, value in request.items() if value is not None}


def readings_at(*angles: float) -> list[dict[str, float]]:
    """Readings of nothing at these places on the part."""
    return [{"angular_position": angle, "reading": 0.0} for angle in angles]


def jobs(count: int) -> list[dict[str, Any]]:
    """So many jobs at once, each at its own bench."""
    return [
        {"job": f"HL-{n}", "bench": f"bench {n}", "slot": 1, "height": 1 + n / 10}
        for n in range(count)
    ]


#: Operation, changes of its example, the refusal, its reason, its fields, and a like request that
#: is answered.
CASES: list[tuple[str, dict[str, Any], type[Refusal], str, dict[str, str], dict[str, Any]]] = [
    (
        "blocks.angle-stack",  # 0.0005″ is half of the least difference of sizes, 0.001″
        {"set": None, "grade": None, "angle": 1, "box": [{"angle": 1e-7}, {"angle": 1}]},
        Disagreement,
        r"An angle block of less than 0\.0005″ is none",
        {"box/0/angle": "should be at least 0.001″"},
        {"set": None, "grade": None, "angle": 1, "box": [{"angle": 3e-7}, {"angle": 1}]},
    ),
    (
        "blocks.day",
        {"jobs": jobs(9)},
        Disagreement,
        r"A slot has 9 jobs; one box serves at most 8 at once",
        {"jobs": "should have at most 8 in one slot"},
        {"jobs": jobs(8)},
    ),
    (
        "runout.axis",
        {"far": {"station": 1, "tir": 0.001, "high_spot": 140}},
        Disagreement,
        r"Both sections stand at the same station: no tilt can be told",
        {"far/station": "should differ from near/station"},
        {"far": {"station": 1.001, "tir": 0.001, "high_spot": 140}},
    ),
    (
        # Four of five readings within 3°, for the five unknowns of two harmonics.
        "runout.indicate",
        {"harmonics": 2, "readings": readings_at(0, 1, 2, 3, 180)},
        Impossible,
        r"do not tell the harmonics asked for apart: 2",
        {"readings": "should be spread round the whole section", "harmonics": "or ask for fewer"},
        {"harmonics": 2, "readings": readings_at(0, 72, 144, 216, 288)},
    ),
    (
        "sine.taper-angle",  # asin(.0001/5) less atan(1/1): 0.00115° − 45°
        {"height": 0.0001, "indicator_rise": -1, "indicator_travel": 1},
        Impossible,
        r"would lean -44\.9989° to the plate's top",
        {"height": "should stand for a lean between 0° and 90°"},
        {"height": 3.5356, "indicator_rise": -1, "indicator_travel": 1},
    ),
    (
        "sine.taper-angle",  # asin(4.9/5) and atan(1/1): 78.5217° + 45°
        {"height": 4.9, "indicator_rise": 1, "indicator_travel": 1},
        Impossible,
        r"would lean 123\.522° to the plate's top",
        {"height": "should stand for a lean between 0° and 90°"},
        {"height": 3.5355, "indicator_rise": 1, "indicator_travel": 1},
    ),
    (
        # d (1 + cot(α/2)) with d 8 and α 60°: 8 (1 + 1.7320508) = 21.856406; 70 less it 48.143594.
        "tapers.dovetail-over-rolls",
        {"measure": 70},
        Disagreement,
        r"measure gives a corner width of 48\.1436 mm, not 50 mm",
        {"measure": "should agree with corner_width, or be left out"},
        {"measure": 71.8569},
    ),
    (
        # Female: edge 10 − 2 · 10 cot 60° = −1.54701; measure 10 − 21.8564.
        "tapers.dovetail-over-rolls",
        {"kind": "female", "corner_width": 10},
        Impossible,
        r"corner width 10 mm, edge width -1\.547 mm, measure -11\.8564 mm; all must be above zero",
        {"corner_width": "should leave room for flanks and rolls"},
        {"kind": "female", "corner_width": 21.86},
    ),
    (
        # By the measure alone: the corner width is 20 − 21.856406, and nobody sent one.
        "tapers.dovetail-over-rolls",
        {"corner_width": None, "measure": 20},
        Impossible,
        r"corner width -1\.8564 mm, .*, measure 20 mm; all must be above zero",
        {"measure": "should leave room for flanks and rolls"},
        {"corner_width": None, "measure": 21.86},
    ),
    (
        "tapers.over-rolls",
        {"upper_measure": 60.21},
        Impossible,
        r"Equal measures at both heights: this is a cylinder, not a taper",
        {"upper_measure": "should differ from lower_measure"},
        {"upper_measure": 60.22},
    ),
    (
        # 1 in below a surface of half angle 30° is 2/cos 30° = 2.3094 in of diameter, and more for
        # what lies above it.
        "tapers.clean-up",
        {"wear": 1},
        Impossible,
        r"Cleaning up would take 2\.31264 in off a diameter of 0\.75 in",
        {"large_diameter": "should exceed what cleaning up takes off it"},
        {"wear": 0.32},
    ),
    (
        "tapers.plug-depth",
        {
            "one_in_x": None,
            "gauge_length": None,
            "second_gauge_diameter": 17.78,
            "second_gauge_depth": 20,
        },
        Impossible,
        r"Two gauges of one diameter, 17\.78 mm, give no taper",
        {"second_gauge_diameter": "should differ from gauge_diameter"},
        {
            "one_in_x": None,
            "gauge_length": None,
            "second_gauge_diameter": 17,
            "second_gauge_depth": 20,
        },
    ),
    (
        "tapers.solve",
        {"length": None},
        Disagreement,
        r"small_diameter, length are missing",
        {
            "small_diameter": "is needed, or another of the four",
            "length": "is needed, or another of the four",
        },
        {"length": None, "small_diameter": 0.6},
    ),
    (
        # Two wear blocks of .05 make .1: nothing is left of .1.
        "blocks.stack",
        {
            "set": None,
            "sizes": [1, 2],
            "height": 0.1,
            "wear_ends": "both-ends",
            "wear_block_size": 0.05,
        },
        Unreachable,
        r"The wear blocks alone are 0\.1 in high; 0\.1 in leaves nothing for the stack",
        {"height": "should be more than the wear blocks, 0.1 in"},
        {
            "set": None,
            "sizes": [1, 2],
            "height": 1.1,
            "wear_ends": "both-ends",
            "wear_block_size": 0.05,
        },
    ),
    (
        # In 0.1 nm 4.0000001 in is 1016000025, so that the sizes share no step but that; the five
        # largest sum up to 3,556,000,101 of them.
        "sine.compound",
        {"set": None, "sizes": [4.0000001, 3.9, 3.1, 2.0000003, 1, 0.5]},
        BeyondBound,
        r"6 blocks with a common step of 0\.0000001 mm have 3556000102 heights",
        {"sizes": "should share a coarser step than 0.0000001 mm"},
        {"set": None, "sizes": [4, 3.9, 3.1, 2, 1, 0.5]},
    ),
]


@pytest.mark.parametrize(
    ("name", "changes", "kind", "reason", "fields", "answered"),
    CASES,
    ids=[f"{case[0]}-{place}" for place, case in enumerate(CASES)],
)
def test_a_refusal_gives_its_true_reason(
    call: Call,
    name: str,
    changes: dict[str, Any],
    kind: type[Refusal],
    reason: str,
    fields: dict[str, str],
    answered: dict[str, Any],
) -> None:
    """What was asked is refused by this kind, reason, fields and limits; its like is answered."""
    with pytest.raises(kind, match=reason) as refused:
        call(name, **asked(name, changes))
    assert refused.value.fields == fields
    assert call(name, **asked(name, answered))["result"]


@pytest.mark.outside("sine.compound", source="Every stack and difference of two blocks, by hand")
def test_blocks_that_build_no_stack_for_a_hinge_say_so(call: Call) -> None:
    """Blocks of 4 and 4.01 in make 4, 4.01, 8.01 and the difference .01: none near √5 in.

    Ten of their steps are 0.1 in.
    """
    request = asked("sine.compound", {"set": None, "sizes": [4, 4.01]})
    with pytest.raises(Unreachable, match=r"build no single stack within 10 steps") as refused:
        call("sine.compound", **request)
    assert refused.value.fields == {"max_blocks": "does not help; the blocks should be others"}
    assert f"base plate's {math.sqrt(5):.5f} in, however many they are." in refused.value.detail
    assert refused.value.more == {}
