"""A plan of sets that take much work: what is past the bound is ruled out, and nothing else."""

import random
from collections.abc import Sequence
from typing import Any

import pytest

from halfangle_service.registry import load_registry
from halfangle_service.topics.jobs.plan.ways.bounds import MOST_ENTRIES
from halfangle_service.trade.stacks.search.kept import Kept
from halfangle_service.trade.stacks.search.stacking import StackTable, stack_table
from support import Call

Json = dict[str, Any]
#: A face that a sine plate and the dressed wheel both make.
FACE = {"kind": "angled-face", "face_angle": 15, "rise": 0.2, "tolerance_arcsec": 60}
DRESSED = {
    "name": "dressed wheel",
    "wheel_diameter": 7,
    "wheel_width": 0.75,
    "depth_per_pass": 0.0005,
    "dresser": {"kind": "sine-base", "center_distance": 3, "zero": "wheel-axis"},
}


def odd_set(name: str, count: int, decimals: int, seed: int = 1) -> Json:
    """So many sizes from 0.1 in to 4 in of so many decimals."""
    chance = random.Random(seed)  # noqa: S311
    sizes = {round(chance.uniform(0.1, 4.0), decimals) for _ in range(count)}
    return {"name": name, "sizes": sorted(sizes)}


def plan_with(call: Call, sets: Sequence[Json], max_blocks: int = 8) -> Json:
    """The plan of the face with these sets on the example's plate and a dressed wheel."""
    example = load_registry().operations["jobs.plan"].example
    plate = {**example["equipment"]["sine_plates"][0], "center_distance": 5.001}
    answer: Json = call(
        "jobs.plan",
        job="HL-0707",
        units="in",
        feature=FACE,
        equipment={"sine_plates": [plate], "dressed_wheels": [DRESSED], "block_sets": [*sets]},
        max_blocks=max_blocks,
    )
    result: Json = answer["result"]
    return result


def test_a_set_past_the_bound_rules_out_only_itself(call: Call) -> None:
    """A set too fine for a table is a way that cannot, by its field, and the others go on."""
    inch = {"name": "toolroom set", "set": "inch-81"}
    result = plan_with(call, [inch, odd_set("odd", 300, 6)])
    assert {tuple(way["equipment"]) for way in result["ways"]} == {
        ("5 in plate", "toolroom set"),
        ("dressed wheel", "toolroom set"),
    }
    odd = [row for row in result["ruled_out"] if "odd" in row["equipment"]]
    assert {row["equipment"][0] for row in odd} == {"5 in plate", "dressed wheel"}
    assert {row["field"] for row in odd} == {"equipment/block_sets/1"}
    assert all("at most 12000000 heights" in row["reason"] for row in odd)


def test_what_small_sets_leave_is_for_the_large_one(call: Call) -> None:
    """A set of much work stands beside small ones; of several of them each has its share."""
    large = [odd_set(name, 200, 5, seed) for seed, name in enumerate("abcd")]
    alone = plan_with(call, [*large[:1], {"name": "toolroom set", "set": "inch-81"}])
    assert ["5 in plate", "a"] in [way["equipment"] for way in alone["ways"]]
    assert not [row for row in alone["ruled_out"] if "a" in row["equipment"]]
    work = [stack_table([round(size * 254e6) for size in s["sizes"]], 8).work for s in large]
    assert sum(work) > MOST_ENTRIES > max(work)
    together = plan_with(call, large)
    refused = [row for row in together["ruled_out"] if "leave" in row["reason"]]
    assert {row["way"] for row in refused} == {"stacks-under-both-rolls", "dressed-wheel"}
    single = [way["equipment"][1] for way in together["ways"] if way["way"] == "sine-plate"]
    assert sorted(single) == ["a", "b", "c", "d"]


def test_what_is_past_the_bound_does_not_go_by_the_order_of_the_sets(call: Call) -> None:
    """The same sets in another order have the same ways ruled out."""
    large = [odd_set(name, 200, 5, seed) for seed, name in enumerate("abcd")]
    first, turned = plan_with(call, large), plan_with(call, large[::-1])
    for part in ("ways", "ruled_out"):
        rows = [
            sorted((way["way"], *way["equipment"]) for way in result[part])
            for result in (first, turned)
        ]
        assert rows[0] == rows[1]


def test_a_table_in_use_is_not_made_twice() -> None:
    """What is dropped for its weight is given again as long as somebody has it."""
    kept: Kept[int, StackTable] = Kept(lambda n: StackTable((n + 1,), 1), lambda _: 1, 1)
    first = kept.get(1)
    assert kept.get(2) is not first
    assert kept.get(1) is first


@pytest.mark.parametrize("max_blocks", [4, 8])
def test_every_set_beside_a_small_one_has_its_ways_named(call: Call, max_blocks: int) -> None:
    """A set is in the ways or among those ruled out, never left out."""
    sets = [odd_set("fine", 40, 6), odd_set("odd", 80, 5), {"name": "inch", "set": "inch-36"}]
    result = plan_with(call, sets, max_blocks)
    rows = [*result["ways"], *result["ruled_out"]]
    for name in ("fine", "odd", "inch"):
        assert [row for row in rows if name in row["equipment"]]
