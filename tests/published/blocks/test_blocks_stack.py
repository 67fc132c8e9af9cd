"""Single stacks: published examples, and what is refused and why."""

import re
from collections import Counter
from fractions import Fraction

import pytest

from halfangle_service.errors import BeyondBound, Disagreement, Refusal, Unreachable
from halfangle_service.topics.blocks.stack import BlockStackRequest, is_heavy
from halfangle_service.trade.tables.blocks.sets import built_in_sets
from halfangle_service.trade.tables.blocks.tolerances import grades
from support import Call


@pytest.mark.outside("blocks.stack", source="National laboratory's page on wringing: 58.345 mm")
def test_published_metric_stack(call: Call) -> None:
    """58.345 mm from 112 pieces takes no more than the five blocks of the published stack."""
    result = call("blocks.stack", units="mm", height=58.345, set="metric-112")["result"]
    assert result["total"] == pytest.approx(1.005 + 1.04 + 1.3 + 5 + 50, abs=1e-9)
    assert result["count"] <= 5


@pytest.mark.outside("blocks.stack", source="GATE 1992 examination: 61.18 from M45 by four blocks")
def test_published_examination_stack(call: Call) -> None:
    """61.18 mm from the normal set M45 takes the four blocks of the printed answer."""
    result = call("blocks.stack", units="mm", height=61.18, set="metric-45")["result"]
    assert sorted(result["blocks"]) == pytest.approx([1.08, 1.1, 9, 50])


def test_thirty_degrees_on_five_inches_is_two_blocks(call: Call) -> None:
    """2.5 in, the setting of 30° on 5 in, is 2 and 0.5, the larger first."""
    result = call("blocks.stack", units="in", height=2.5, set="inch-81")["result"]
    assert result["blocks"] == [2.0, 0.5]


def test_unbuildable_height_is_refused_with_the_nearest(call: Call) -> None:
    """A height finer than the set's step is refused, with the nearest stacks on either side."""
    with pytest.raises(Unreachable, match=r"No stack .* nearest below it is 2.5 in and above") as e:
        call("blocks.stack", units="in", height=2.50003, set="inch-81")
    nearest = e.value.more["nearest"]
    assert nearest["below"]["total"] == 2.5  # type: ignore[index]
    assert nearest["above"]["total"] == 2.5001  # type: ignore[index]


def test_each_block_is_used_once(call: Call) -> None:
    """A shop with one block of 1 in cannot build 2 in of it, and a size sent twice is refused."""
    with pytest.raises(Unreachable, match="No stack"):
        call("blocks.stack", units="in", height=2, sizes=[1, 0.5])
    with pytest.raises(Disagreement, match="stands in `sizes` twice"):
        call("blocks.stack", units="in", height=2, sizes=[1, 1])


@pytest.mark.outside(
    "blocks.stack",
    source="Textbook exercise: 92.357 mm from 112 pieces between two protectors of 2.5 mm",
)
def test_published_stack_between_protectors(call: Call) -> None:
    """92.357 mm between protectors of 2.5 mm is 75, 10, 1.35 and 1.007 as in the exercise."""
    result = call(
        "blocks.stack",
        units="mm",
        height=92.357,
        set="metric-112",
        wear_ends="both-ends",
        wear_block_size=2.5,
    )["result"]
    assert result["blocks"] == [75, 10, 2.5, 2.5, 1.35, 1.007]
    assert result["wringing_order"] == [2.5, 75, 10, 1.35, 1.007, 2.5]
    assert result["total"] == pytest.approx(92.357, abs=1e-9)


def test_own_wear_blocks_are_taken_from_the_set_once(call: Call) -> None:
    """The wear blocks of an 83-piece set go to the ends and leave one .050 for the inside."""
    result = call("blocks.stack", units="in", height=2.55, set="inch-83", wear_ends="both-ends")[
        "result"
    ]
    assert result["wear_blocks"] == [0.05, 0.05]
    assert result["blocks"].count(0.05) <= 3
    with pytest.raises(Unreachable, match="No stack"):
        call(
            "blocks.stack",
            units="in",
            height=0.25,
            box=[{"size": 0.05, "count": 2, "wear_block": True}, {"size": 0.1}],
            wear_ends="both-ends",
        )


def test_a_missing_block_that_would_do_it_is_named(call: Call) -> None:
    """Where the one block needed is away, the refusal says so, and what goes with it."""
    with pytest.raises(Unreachable, match=r"A block of 0\.1003 in \(in use\)") as refused:
        call(
            "blocks.stack", units="in", height=1.1003, set="inch-81", in_use=[0.1003], max_blocks=2
        )
    first = refused.value.more["would_make_it_possible"][0]  # type: ignore[index]
    assert first == {"block": 0.1003, "where": "in-use", "with": [1.0]}


def test_alternatives_differ_and_are_in_order(call: Call) -> None:
    """Alternatives are all different, each of the height, none with fewer blocks than before."""
    result = call("blocks.stack", units="in", height=2.3456, set="inch-81", max_alternatives=20)
    stacks = [result["result"], *result["result"]["alternatives"]]
    assert len({tuple(stack["blocks"]) for stack in stacks}) == 21
    assert all(sum(stack["blocks"]) == pytest.approx(2.3456) for stack in stacks)
    counts = [stack["count"] for stack in stacks]
    assert counts == sorted(counts)
    assert result["result"]["order_proved"]


def test_grade_gives_the_stack_its_uncertainty(call: Call) -> None:
    """Limits add up, and as rectangular distributions combine by root sum of squares."""
    result = call("blocks.stack", units="mm", height=61.3, set="metric-112", grade="iso-1")
    limits = [grades()["iso-1"].limit_deviation(round(b * 1e7)) for b in result["result"]["blocks"]]
    height = result["result"]["actual_height"]
    assert height["worst_case"] == pytest.approx(sum(limits))
    expected = (sum(limit**2 for limit in limits) / 3) ** 0.5
    assert height["standard_uncertainty"] == pytest.approx(expected)
    sizes = [("block_grade_limit", f"{b:g}") for b in result["result"]["blocks"]]
    assert [(part["name"], part["of"]) for part in height["contributions"]] == sizes


def test_blocks_of_one_size_are_told_apart(call: Call) -> None:
    """Of two blocks of one size the second bears its number, so that each has a name of its own."""
    budget = call("blocks.budget", units="mm", blocks=[50, 10, 10], grade="iso-1")["result"]
    parts = [(part["name"], part["of"]) for part in budget["height"]["contributions"]]
    blocks = [("block_grade_limit", size) for size in ("50", "10", "10 (2)")]
    assert parts == [*blocks, *(("film_error_limit_nanometres", film) for film in ("1", "2", "3"))]


def test_a_stack_of_blocks_of_no_known_grade_has_no_uncertainty(call: Call) -> None:
    """Without calibration or grade nothing is said of the height's error, and that is named."""
    height = call("blocks.stack", units="in", height=2.5, set="inch-81")["result"]["actual_height"]
    assert height["value"] == 2.5
    assert height["standard_uncertainty"] is height["worst_case"] is None
    assert (height["contributions"], height["not_stated"]) == ([], ["grade"])


def test_measured_blocks_come_nearer_than_nominal_ones(call: Call) -> None:
    """Aimed at the actual height, the stack is nearer to it than one chosen by nominal sizes."""
    box = [
        {"size": size / 254e6, "deviation": (place % 9 - 4) * 1e-6, "expanded_uncertainty": 2e-6}
        for place, size in enumerate(built_in_sets()["inch-81"].sizes)
    ]
    asked = {"units": "in", "height": 1.5451, "box": box, "max_blocks": 5}
    nominal = call("blocks.stack", **asked)["result"]
    actual = call("blocks.stack", **asked, aim="actual")["result"]
    assert actual["proved"]
    assert abs(actual["actual_deviation"]) <= abs(nominal["actual_deviation"])
    assert abs(actual["actual_deviation"]) < 1e-9


def test_fine_sizes_past_the_table_are_still_exact(call: Call) -> None:
    """Sizes with no common step are searched by pairs and triples; the bound is then named."""
    sizes = [round(0.1 + 0.0012345671 * k * k, 10) for k in range(40)]
    asked = {"units": "in", "sizes": sizes, "max_blocks": 4}
    result = call("blocks.stack", height=sizes[3] + sizes[20] + sizes[31], **asked)["result"]
    assert result["proved"]
    assert result["total"] == pytest.approx(sizes[3] + sizes[20] + sizes[31], abs=1e-8)
    wide = [round(0.1 + 0.0001234567 * k * k, 10) for k in range(300)]
    with pytest.raises(BeyondBound, match="No stack of up to 4") as refused:
        call("blocks.stack", units="in", height=0.05, sizes=wide)
    assert "max_blocks" in refused.value.fields


def test_a_tolerance_saves_blocks(call: Call) -> None:
    """Within a tolerance the fewest blocks are taken, and the deviation stays within it."""
    exact = call("blocks.stack", units="in", height=2.3456, set="inch-81")["result"]
    near = call("blocks.stack", units="in", height=2.3456, set="inch-81", tolerance=0.001)["result"]
    assert near["count"] < exact["count"]
    assert abs(near["deviation"]) <= 0.001


REFUSED: list[tuple[dict[str, object], type[Refusal], str, str]] = [
    ({"sizes": [1, 0.5, 1]}, Disagreement, "stands in `sizes` twice", "sizes/2"),
    ({"box": [{"size": 1}, {"size": 1}]}, Disagreement, "twice, with the same data", "box/1"),
    (
        {"box": [{"size": 1, "count": 20 - k % 2, "times_wrung": k} for k in range(30)]},
        BeyondBound,
        "holds 585 blocks; at most 500",
        "box",
    ),
    ({"sizes": [1, 2, 1.49, 1.01]}, Disagreement, "sizes of metric sets: 1.49, 1.01", "sizes/2"),
    ({"sizes": [1, 2000]}, Disagreement, "not the size of a gauge block", "sizes/1"),
    ({"set": "inch-81", "missing": [0.1003, 0.1003]}, Disagreement, "said to be away", "missing/1"),
    ({"set": "inch-81", "sizes": [1]}, Disagreement, "were sent together", "sizes"),
    ({}, Disagreement, "they are all missing", "box"),
    ({"set": "inch-80"}, Unreachable, "no built-in set", "set"),
    ({"box": [{"size": 1, "deviation": 3.0}]}, Disagreement, "millionths", "box/0/deviation"),
    ({"box": [{"size": 1, "state": "missing"}]}, Unreachable, "No block is left", "box"),
    ({"set": "inch-81", "wear_ends": "one-end"}, Disagreement, "which size", "wear_block_size"),
    ({"set": "inch-81", "wear_block_size": 0.05}, Disagreement, "no end to put", "wear_ends"),
    ({"set": "inch-81", "prefer": "least-uncertainty"}, Disagreement, "cannot be found", "grade"),
    ({"set": "inch-81", "tolerance": 2.0}, BeyondBound, "at most 20000 are taken", "tolerance"),
    ({"set": "inch-81", "grade": "ISO 9"}, Unreachable, "no grade", "grade"),
    ({"set": "inch-81", "height": 63.5}, Unreachable, "would build 63.5 mm", "height"),
]


@pytest.mark.parametrize(("request_", "kind", "words", "field"), REFUSED)
def test_bad_blocks_are_refused_by_name(
    call: Call, request_: dict[str, object], kind: type[Refusal], words: str, field: str
) -> None:
    """Each wrong box or wish is refused with the reason, naming the field."""
    with pytest.raises(kind, match=words) as refused:
        call("blocks.stack", **{"units": "in", "height": 2.5, **request_})
    assert field in refused.value.fields


def test_a_height_finer_than_the_set_says_by_how_much(call: Call) -> None:
    """The refusal names the step of the blocks and how far the height is off it."""
    with pytest.raises(Unreachable, match=r"steps of 0\.0001 in; .* off one by 0\.00003 in"):
        call("blocks.stack", units="in", height=2.50003, set="inch-81")


def test_an_odd_block_may_be_marked_special(call: Call) -> None:
    """A size of the other system is taken where the shop says that it is one."""
    box = [{"size": 1}, {"size": 1.49, "special": True}]
    assert call("blocks.stack", units="in", height=2.49, box=box)["result"]["count"] == 2
    noted = call("blocks.stack", units="in", height=2.5, sizes=[1, 1.5])
    assert noted["advisories"][0]["code"] == "size-of-other-units"


@pytest.mark.outside("blocks.stack", source="Worked by hand: 5 in × sin 0°30′ is 0.0436 in")
@pytest.mark.parametrize(
    ("height", "units", "name", "makes"),
    [
        (0.0436, "in", "inch-81", "0.0436"),
        # 0°30′ on 5 in before rounding, and on 100 mm.
        (0.043633, "in", "inch-81", "0.0436"),
        (0.873, "mm", "metric-88", "0.873"),
    ],
)
def test_a_height_below_the_blocks_names_the_two_stacks_that_make_it(
    call: Call, height: float, units: str, name: str, makes: str
) -> None:
    """Too small for one stack: two stacks of the set's blocks are named, with that difference."""
    with pytest.raises(Unreachable, match=r"sine\.low-stack") as refused:
        call("blocks.stack", units=units, height=height, set=name)
    said = re.search(
        r"two stacks make (\S+) \w+ by their difference: (.+) \w+ under the high roll, (\S+) \w+ "
        "under the low one",
        str(refused.value),
    )
    assert said is not None
    assert said[1] == makes
    high = [Fraction(size) for size in said[2].split(" + ")]
    assert sum(high) - Fraction(said[3]) == Fraction(makes)
    unit = 254_000_000 if units == "in" else 10_000_000
    used = Counter(int(size * unit) for size in (*high, Fraction(said[3])))
    assert not used - Counter(built_in_sets()[name].sizes)


def test_a_height_for_more_blocks_than_allowed_says_how_many(call: Call) -> None:
    """Where only `max_blocks` stands in the way, that is what is named, with a number that does."""
    asked = {"units": "in", "height": 2.2345, "set": "inch-81"}
    with pytest.raises(Unreachable, match="A stack of 3 blocks would do") as refused:
        call("blocks.stack", **asked, max_blocks=2)
    assert refused.value.fields == {"max_blocks": "should be at least 3"}
    assert call("blocks.stack", **asked, max_blocks=3)["result"]["count"] == 3


@pytest.mark.parametrize(
    ("units", "sizes"), [("mm", [0.03937, 0.0433071, 0.3937008]), ("in", [25.4, 12.7, 6.35])]
)
def test_a_whole_box_in_the_other_unit_is_refused(
    call: Call, units: str, sizes: list[float]
) -> None:
    """1, 1.1 and 10 mm in inches, or an inch and its halves in mm, are a slip of the unit."""
    with pytest.raises(Disagreement, match=r"sizes of (metric|inch) sets written in") as refused:
        call("blocks.stack", units=units, height=sizes[0], sizes=sizes)
    assert list(refused.value.fields) == ["units"]
    assert call("blocks.stack", units=units, height=sizes[0], sizes=sizes[:1])["result"]


@pytest.mark.parametrize(
    ("more", "heavy"),
    [
        ({}, False),
        ({"grade": "iso-1", "wear_ends": "both-ends"}, False),
        ({"missing": [1.01]}, True),
        ({"in_use": [1.01]}, True),
        ({"max_blocks": 5}, True),
    ],
)
def test_a_table_that_is_not_kept_is_made_off_the_loop(
    more: dict[str, object], heavy: bool
) -> None:
    """A set less some blocks asks for a table of its own, of up to a million heights."""
    request = BlockStackRequest.model_validate(
        {"units": "mm", "height": 58.345, "set": "metric-112", **more}
    )
    assert is_heavy(request) == heavy
