"""Several stacks at once as a shop asks for them: wear blocks, calibrations, blocks to borrow."""

import math
from typing import Any

import pytest

from halfangle_service.errors import Disagreement, Unreachable
from support import Call, stacks_request

#: Invented certificate of the demo shop's box, inches.
BOX = [
    {"size": 2.0, "deviation": 2e-6, "expanded_uncertainty": 4e-6, "mark": "A1"},
    {"size": 1.0, "deviation": -3e-6, "expanded_uncertainty": 2e-6, "mark": "A2"},
    {"size": 0.5, "deviation": 1e-6, "expanded_uncertainty": 2e-6, "mark": "A3"},
    {"size": 0.5, "deviation": -4e-6, "expanded_uncertainty": 2e-6, "mark": "A4"},
    {"size": 0.1, "expanded_uncertainty": 2e-6},
    {"size": 0.05, "wear_block": True, "count": 4, "expanded_uncertainty": 2e-6},
]


@pytest.fixture(name="worn")
def worn_stacks(call: Call) -> dict[str, Any]:
    """Two stacks from the calibrated box, wear blocks on both ends of each."""
    heights = [{"name": "high", "height": 2.6}, {"name": "low", "height": 1.6}]
    answer = call("blocks.stacks", units="in", box=BOX, heights=heights, wear_ends="both-ends")
    result: dict[str, Any] = answer["result"]
    return result


def test_each_stack_has_its_wear_blocks(worn: dict[str, Any]) -> None:
    """Wear blocks are first and last in each stack, and count in its height and in the total."""
    high, low = worn["stacks"]
    assert high["wringing_order"] == [0.05, 2.0, 0.5, 0.05]
    assert low["wringing_order"] == [0.05, 1.0, 0.5, 0.05]
    assert high["total"] == pytest.approx(2.6)
    assert worn["count"] == worn["fewest_possible"] == 8
    assert worn["proved"]


@pytest.mark.outside("blocks.stacks", source="JCGM 100:2008, 5.1.2: root sum of squares, by hand")
def test_each_stack_has_its_actual_height_and_uncertainty(worn: dict[str, Any]) -> None:
    """Deviations add up, standard uncertainties (half of U at k = 2) add up as squares."""
    high, low = worn["stacks"]
    first, second = sorted(stack["marks"][1] for stack in (high, low))
    assert (first, second) == ("A3", "A4")
    half = {"A3": 1e-6, "A4": -4e-6}
    assert high["actual_deviation"] == pytest.approx(2e-6 + half[high["marks"][1]], abs=1e-11)
    assert low["actual_deviation"] == pytest.approx(-3e-6 + half[low["marks"][1]], abs=1e-11)
    height = high["actual_height"]
    assert height["value"] == pytest.approx(2.6 + high["actual_deviation"])
    assert height["standard_uncertainty"] == pytest.approx(math.sqrt(2**2 + 3 * 1**2) * 1e-6)
    assert height["worst_case"] == pytest.approx(3 * (2 + 3 * 1) * 1e-6)


def test_marks_say_which_of_two_blocks_alike_is_meant(call: Call) -> None:
    """With measured deviations the answer names the very block, not its size alone."""
    asked = {"units": "in", "box": BOX, "height": 0.6, "aim": "actual", "max_blocks": 2}
    result = call("blocks.stack", **asked)["result"]
    assert list(zip(result["blocks"], result["marks"], strict=True)) == [(0.5, "A3"), (0.1, None)]
    assert result["actual_deviation"] == pytest.approx(1e-6, abs=1e-11)


def test_a_mark_is_one_blocks(call: Call) -> None:
    """A mark with a count of two, or on two blocks, is refused by name."""
    for box, path in (
        ([{"size": 0.5, "count": 2, "mark": "A"}], "box/0/count"),
        ([{"size": 0.5, "mark": "A"}, {"size": 0.6, "mark": "A"}], "box/1/mark"),
    ):
        with pytest.raises(Disagreement, match="mark 'A' is") as refused:
            call("blocks.stack", units="in", height=0.5, box=box)
        assert list(refused.value.fields) == [path]


def test_as_many_stacks_as_there_are_wear_blocks_for(call: Call) -> None:
    """Three stacks with two wear blocks each need six; the box has four: two stacks stand."""
    heights = [{"name": f"h{k}", "height": 2.6 - k} for k in range(3)]
    asked = {"units": "in", "box": BOX, "heights": heights, "wear_ends": "both-ends"}
    result = call("blocks.stacks", **asked)["result"]
    assert [stack["name"] for stack in result["stacks"]] == ["h0", "h1"]
    assert result["largest_count"] == 2
    assert result["proved"]
    [left] = result["left_out"]
    words = "The wear blocks of 0.05 in, 4 in number, are enough for 2 stacks at once."
    assert left["reason"] == words
    assert left["would_make_it_possible"] == []


def test_wear_blocks_that_leave_nothing(call: Call) -> None:
    """No room between the wear blocks, in blocks or in height, is refused with the reason."""
    with pytest.raises(Unreachable, match="leave no block"):
        call(
            "blocks.stacks",
            **stacks_request(1.0, wear_ends="both-ends", wear_block_size=0.05, max_blocks=2),
        )
    low = [{"name": "a", "height": 0.08}]
    with pytest.raises(Unreachable, match=r"alone are 0\.1 in high") as refused:
        call("blocks.stacks", units="in", box=BOX, wear_ends="both-ends", heights=low)
    left: Any = refused.value.more["left_out"]
    assert left[0]["name"] == "a"
    one = [{"size": 1.0, "wear_block": True}, {"size": 5.0}]
    with pytest.raises(Unreachable, match="only 1 wear block of 1 mm"):
        call("blocks.stack", units="mm", box=one, height=7, wear_ends="both-ends")
    with pytest.raises(Unreachable, match="Only wear blocks are left"):
        call("blocks.stack", units="mm", box=one[:1], height=7, wear_ends="one-end")


def test_a_plain_block_of_a_wear_blocks_size_stays_in_the_box(call: Call) -> None:
    """2 + 2 + 2: two wear blocks at the ends and the plain one of the same size between."""
    box = [{"size": 2, "wear_block": True, "count": 2}, {"size": 2}, {"size": 10}]
    asked = {"units": "mm", "box": box, "height": 6, "wear_ends": "both-ends"}
    assert call("blocks.stack", **asked)["result"]["wringing_order"] == [2, 2, 2]
    heights = [{"name": "a", "height": 4}, {"name": "b", "height": 12}]
    asked = {"units": "mm", "box": box, "heights": heights, "wear_ends": "one-end"}
    assert call("blocks.stacks", **asked)["result"]["complete"]


def test_a_sets_wear_blocks_go_to_the_ends_or_nowhere(call: Call) -> None:
    """The 83-piece set's two .050 wear blocks do not stand between others, as a box's do not."""
    asked = {"units": "in", "set": "inch-83", "height": 0.15, "missing": [0.15, 0.1]}
    with pytest.raises(Unreachable, match="nearest"):
        call("blocks.stack", **asked)
    usual = call("blocks.stack", units="in", set="inch-83", height=2.6, wear_ends="both-ends")
    assert usual["result"]["wringing_order"][::3] == [0.05, 0.05]


@pytest.mark.outside("blocks.stack", source="By hand: 2.000 of the second wear block + 10")
def test_the_wear_block_that_comes_nearest_is_taken(call: Call) -> None:
    """Wear blocks differ as other blocks do: the one is used with which the height is exact."""
    box = [
        {"size": 2, "wear_block": True, "deviation": 0.001},
        {"size": 2, "wear_block": True},
        {"size": 10},
    ]
    asked = {"units": "mm", "box": box, "height": 12, "aim": "actual", "wear_ends": "one-end"}
    result = call("blocks.stack", **asked)["result"]
    assert result["actual_deviation"] == 0
    assert result["proved"]


def test_wear_blocks_of_two_sizes(call: Call) -> None:
    """Both ends take a pair of one size: the size of which there are enough."""
    box = [
        {"size": 2, "wear_block": True},
        {"size": 1, "wear_block": True, "count": 2},
        {"size": 10},
    ]
    asked = {"units": "mm", "box": box, "height": 12, "wear_ends": "both-ends"}
    assert call("blocks.stack", **asked)["result"]["wringing_order"] == [1, 10, 1]
    gone = {**asked, "missing": [1], "height": 12, "wear_ends": "one-end"}
    assert call("blocks.stack", **gone)["result"]["wear_blocks"] == [2]


@pytest.mark.parametrize("aim", ["nominal", "actual"])
def test_a_missing_block_is_named_above_the_highest_stack_too(call: Call, aim: str) -> None:
    """4 + 3 + 2 = 9 is above the highest stack of what is left: the missing 4 would do it."""
    asked = {"units": "in", "set": "inch-81", "height": 9, "max_blocks": 4, "missing": [4.0]}
    with pytest.raises(Unreachable, match=r"A block of 4 in \(missing\)") as refused:
        call("blocks.stack", **asked, aim=aim, tolerance=0.0)
    helpers: Any = refused.value.more["would_make_it_possible"]
    assert helpers[0] == {"block": 4.0, "where": "missing", "with": [3.0, 2.0]}


def test_a_helper_may_use_the_tolerance(call: Call) -> None:
    """0.5 ± .0002 from .4 alone: the missing .1001 comes within it."""
    box = [{"size": 0.4}, {"size": 0.1001, "state": "missing"}]
    with pytest.raises(Unreachable, match=r"A block of 0\.1001 in .* would") as refused:
        call("blocks.stack", units="in", box=box, height=0.5, tolerance=0.0002, max_blocks=2)
    helpers: Any = refused.value.more["would_make_it_possible"]
    assert helpers[0]["block"] == 0.1001


def test_of_stacks_as_near_the_one_of_fewer_blocks_is_given(call: Call) -> None:
    """Without deviations very many stacks are as near: one block is proved to be the nearest."""
    asked = {"units": "in", "set": "inch-81", "height": 1.00005, "aim": "actual"}
    result = call("blocks.stack", **asked)["result"]
    assert result["blocks"] == [1.0]
    assert result["proved"]
    asked = {"units": "mm", "set": "metric-112", "height": 100, "aim": "actual", "max_blocks": 8}
    result = call("blocks.stack", **asked)["result"]
    assert (result["blocks"], result["proved"]) == ([100.0], True)


def test_alternatives_within_a_tolerance_go_on_to_more_blocks(call: Call) -> None:
    """5 itself, then 4 + 1 and 3 + 2: fewest blocks first, then the nearest."""
    box = [{"size": 5, "deviation": 0.0001}, *({"size": size} for size in (1, 2, 3, 4))]
    asked = {"units": "mm", "box": box, "height": 5, "tolerance": 0.001, "max_alternatives": 5}
    for aim in ("actual", "nominal"):
        result = call("blocks.stack", **asked, aim=aim)["result"]
        given = [entry["blocks"] for entry in (result, *result["alternatives"])]
        assert given[0] == [5]
        assert sorted(given[1:]) == [[3, 2], [4, 1]]


def test_as_near_below_as_above_is_for_the_preference(call: Call) -> None:
    """.45 ± .2 from .3 and .6: the larger block is preferred, both are .15 off."""
    asked = {"units": "in", "sizes": [0.3, 0.6], "height": 0.45, "tolerance": 0.2}
    assert call("blocks.stack", **asked)["result"]["blocks"] == [0.6]


def test_a_block_to_borrow_is_named(call: Call) -> None:
    """.1003 is needed twice: another .1003, or the one that is in use, would do it."""
    result = call("blocks.stacks", **stacks_request(0.1003, 0.1003))["result"]
    borrowed = result["left_out"][0]["would_make_it_possible"]
    assert borrowed == [{"block": 0.1003, "where": "another-of-this-size"}]
    asked = stacks_request(0.6003, in_use=[0.1003])
    heights = [{"name": "set", "height": 1.0}, *asked["heights"]]
    result = call("blocks.stacks", **{**asked, "heights": heights, "max_blocks": 2})["result"]
    assert [stack["name"] for stack in result["stacks"]] == ["set"]
    helpers = result["left_out"][0]["would_make_it_possible"]
    assert helpers[0] == {"block": 0.1003, "where": "in-use"}


def test_settings_share_a_stack_within_their_tolerances(call: Call) -> None:
    """2.5 ± .0002 and 2.5001 ± .0001 have 2.5 in common; 2.6 shares with nobody."""
    jobs: list[dict[str, Any]] = [
        {"job": "A", "bench": "one", "slot": 1, "height": 2.5, "tolerance": 0.0002},
        {"job": "B", "bench": "one", "slot": 2, "height": 2.5001, "tolerance": 0.0001},
        {"job": "C", "bench": "two", "slot": 2, "height": 2.6},
    ]
    result = call("blocks.day", units="in", set="inch-81", jobs=jobs)["result"]
    assert len(result["shared"]) == 1
    shared = result["shared"][0]
    assert shared["jobs"] == ["A", "B"]
    assert not shared["at_once"]
    for entry in jobs[:2]:
        assert abs(shared["height"] - entry["height"]) <= entry["tolerance"] + 1e-9


def test_a_box_too_fine_for_a_table_still_names_the_nearest(call: Call) -> None:
    """Sizes that share no step but 0.1 nm: the refusal tells the nearest stacks all the same."""
    sizes = [50.0000001, 25.0000003, 10.0000007, 5.0000009, 1.0000011]
    with pytest.raises(Unreachable, match=r"nearest below it is .* and above it is") as refused:
        call("blocks.stack", units="mm", sizes=sizes, height=17, tolerance=0.001)
    nearest: Any = refused.value.more["nearest"]
    assert nearest["below"]["actual_height"]["value"] == pytest.approx(16.0000027)
    assert nearest["above"]["actual_height"]["value"] == pytest.approx(25.0000003)


def test_benches_contend_only_for_blocks_that_are_too_few(call: Call) -> None:
    """Two blocks of 10 serve two benches; one wear block serves one of them."""
    box = [{"size": 10, "count": 2}, {"size": 4}, {"size": 6}]
    jobs = [{"job": name, "bench": name, "slot": 1, "height": 10} for name in "ab"]
    [slot] = call("blocks.day", units="mm", box=box, jobs=jobs)["result"]["slots"]
    assert len(slot["stacks"]) == 2
    assert slot["contention"] == []
    single = [{"size": 10}, {"size": 4}, {"size": 6}, {"size": 2, "wear_block": True}]
    asked = {"units": "mm", "box": single, "wear_ends": "one-end"}
    jobs = [{**job, "height": 12} for job in jobs]
    [slot] = call("blocks.day", **asked, jobs=jobs)["result"]["slots"]
    assert [entry["avoidable"] for entry in slot["contention"]] == [False]
    assert slot["left_out"][0]["reason"].endswith("1 in number, are enough for one stack at once.")


def test_the_slots_of_a_day_share_the_work(call: Call) -> None:
    """In a day too hard to prove every slot has stacks, and what is not known is not denied."""
    jobs = [
        {
            "job": f"j{k}",
            "bench": f"b{k % 8}",
            "slot": k // 8 + 1,
            "height": round(1.0003 + 0.001 * k, 4),
            "tolerance": 0.0005,
        }
        for k in range(48)
    ]
    result = call("blocks.day", units="in", set="inch-81", jobs=jobs, max_blocks=8)["result"]
    stacks = [len(slot["stacks"]) for slot in result["slots"]]
    assert min(stacks) >= max(stacks) - 2
    for slot in result["slots"]:
        standing = {entry["job"] for entry in slot["stacks"]}
        for entry in slot["contention"]:
            assert entry["avoidable"] is not False or not set(entry["jobs"]) <= standing


def test_five_wear_blocks_alike_are_one_kind(call: Call) -> None:
    """Wear blocks that do not differ leave nothing open; of those that do, the nearest is told."""
    box: list[dict[str, Any]] = [{"size": 2, "wear_block": True, "count": 5}, {"size": 10}]
    asked = {"units": "mm", "height": 12, "aim": "actual", "wear_ends": "one-end"}
    assert call("blocks.stack", **asked, box=box)["result"]["proved"]
    ends = [{"size": 2, "wear_block": True, "deviation": off} for off in (-0.005, 0.01)]
    box = [*ends, {"size": 10}, {"size": 20}]
    with pytest.raises(Unreachable, match=r"nearest below it is 11\.995 mm and above") as refused:
        call("blocks.stack", **{**asked, "height": 12.007}, box=box, tolerance=0.001)
    nearest: Any = refused.value.more["nearest"]
    assert nearest["above"]["actual_height"]["value"] == pytest.approx(12.01)


def test_a_height_above_every_stack_has_the_highest_as_its_nearest(call: Call) -> None:
    """Without a tolerance the nearest to a height out of reach is the highest stack, proved."""
    asked = {"units": "in", "set": "inch-81", "height": 10_000, "aim": "actual", "max_blocks": 8}
    result = call("blocks.stack", **asked)["result"]
    assert result["blocks"] == [4.0, 3.0, 2.0, 1.0, 0.95, 0.9, 0.85, 0.8]
    assert result["proved"]
    with pytest.raises(Unreachable, match="the highest of all"):
        call("blocks.stack", **asked, tolerance=0.0)


def test_a_block_of_no_length_is_refused(call: Call) -> None:
    """A deviation that leaves nothing of a thin block is a slip of the unit."""
    box = [{"size": 0.01, "deviation": -0.02}, {"size": 1.0}]
    with pytest.raises(Disagreement, match=r"would be -0\.01 mm long"):
        call("blocks.stack", units="mm", box=box, height=1)


@pytest.mark.parametrize("aim", ["nominal", "actual"])
def test_alternatives_that_look_alike_are_given_once(call: Call, aim: str) -> None:
    """Blocks that differ only in how often they were wrung make no two answers."""
    worn = [{"size": 1.02, "times_wrung": times} for times in (0, 8, 9)]
    box = [*worn, {"size": 1.0}, {"size": 0.02, "special": True}]
    asked = {"units": "mm", "box": box, "height": 1.02, "tolerance": 0.0, "prefer": "least-wear"}
    result = call("blocks.stack", **asked, aim=aim, max_alternatives=3)["result"]
    given = [entry["blocks"] for entry in (result, *result["alternatives"])]
    assert given == [[1.02], [1.0, 0.02]]


def test_a_nominal_helper_is_taken_at_its_nominal_size(call: Call) -> None:
    """Where no table can be, too, a block that is away helps by its nominal size."""
    box = [
        {"size": 1.6383816, "deviation": 2e-06, "state": "in-use"},
        {"size": 2.0178346},
        {"size": 2.6741442},
    ]
    with pytest.raises(Unreachable, match=r"A block of 1\.6383816 mm \(in use\)"):
        call("blocks.stack", units="mm", box=box, height=6.3303604)


def test_alternatives_are_looked_for_behind_many_that_look_alike(call: Call) -> None:
    """However many stacks look alike, those that do not are still given."""
    worn = [{"size": 0.5, "times_wrung": times} for times in range(12)]
    box = [*worn, {"size": 0.6}, {"size": 0.4}]
    result = call("blocks.stack", units="in", box=box, height=1.0, max_alternatives=1)["result"]
    assert {tuple(result["blocks"]), tuple(result["alternatives"][0]["blocks"])} == {
        (0.5, 0.5),
        (0.6, 0.4),
    }
