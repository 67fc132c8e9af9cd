"""Stacks of angle blocks against enumeration and an exact solver; what a person gets to read."""

import random
from collections import Counter
from collections.abc import Iterator, Sequence
from itertools import product
from typing import Any

import numpy as np
import pytest
from numpy.typing import NDArray
from ortools.sat.python import cp_model

from halfangle_service.errors import Unreachable
from halfangle_service.topics.blocks import angle_stack
from halfangle_service.trade.stacks.angle_blocks import AngleStack, fewest_within, nearest
from halfangle_service.trade.stacks.search.work import Work
from halfangle_service.trade.tables.blocks.angle_sets import angle_sets
from support import Call

#: Reproducible boxes and angles, not secrets.
CHANCE = 31
SIX_KINDS = [{"angle": k, "count": 4} for k in range(1, 6)] + [{"angle": 6, "count": 2}]
LARGE = [41, 27, 9, 3, 1, 20, 15, 30, 45]
MINUTES, SECONDS = [27, 9, 3, 1, 5, 20, 30], [30, 18, 9, 6, 3, 1]
TWENTY_TWO = [
    *({"angle": degrees} for degrees in LARGE),
    *({"angle": f"0 {minutes}"} for minutes in MINUTES),
    *({"angle": f"0 0 {seconds}"} for seconds in SECONDS),
]
THOUSANDTHS = [d * 3_600_000 for d in LARGE] + [m * 60_000 for m in MINUTES]
THOUSANDTHS += [s * 1_000 for s in SECONDS]


def every_stack(angles: Sequence[int]) -> tuple[tuple[int, ...], NDArray[np.int64]]:
    """The angles, descending, and every way to take each of them so many times: a row a stack."""
    copies = Counter(angles)
    kinds = tuple(sorted(copies, reverse=True))
    times = product(*(range(copies[kind], -copies[kind] - 1, -1) for kind in kinds))
    rows = np.array(list(times), np.int64)
    return kinds, rows[np.abs(rows).sum(axis=1) > 0]


def in_order(
    angles: Sequence[int], target: int, tolerance: int, most: int, wanted: int
) -> list[AngleStack]:
    """The best stacks by plain enumeration and one sort."""
    kinds, rows = every_stack(angles)
    sums, counts = rows @ np.array(kinds), np.abs(rows).sum(axis=1)
    subtracted = -rows.clip(max=0).sum(axis=1)
    order = np.lexsort((*(-rows.T)[::-1], subtracted, np.abs(sums - target), counts))
    kept = order[((np.abs(sums - target) <= tolerance) & (counts <= most))[order]][:wanted]
    return [
        AngleStack(
            tuple((k, n) for k, n in zip(kinds, rows[row].tolist(), strict=True) if n),
            int(sums[row]),
        )
        for row in kept
    ]


def random_boxes(boxes: int) -> Iterator[tuple[random.Random, list[int]]]:
    """Small boxes, some with blocks alike, in steps from fine to coarse."""
    for seed in range(boxes):
        generator = random.Random(CHANCE + seed)  # noqa: S311
        step, reach = generator.choice([(1, 30), (1_000, 60), (1, 100_000)])
        kinds = [step * generator.randrange(1, reach) for _ in range(generator.randrange(1, 8))]
        yield (
            generator,
            [kind for kind in kinds for _ in range(generator.choice([1, 1, 1, 2, 3]))][:9],
        )


@pytest.mark.outside("blocks.angle-stack", source="Enumeration of every stack, 1,200 angles")
def test_stacks_and_alternatives_come_in_the_order_of_enumeration() -> None:
    """The best stacks are those of enumeration, in order and each once, whatever is asked."""
    for generator, angles in random_boxes(150):
        for _ in range(8):
            target = generator.randrange(1, sum(angles) + 2)
            tolerance = generator.choice([0, 0, 1, target // 50, target // 4, 3 * target])
            most, wanted = generator.randrange(1, 10), generator.randrange(1, 22)
            found = fewest_within(angles, target, tolerance, most, wanted)
            assert list(found.stacks) == in_order(angles, target, tolerance, most, wanted)
            assert found.complete
            assert found.first_proved


@pytest.mark.outside("blocks.angle-stack", source="Enumeration of every stack, 1,200 angles")
def test_the_nearest_below_and_above_are_those_of_enumeration() -> None:
    """However few blocks are allowed, no stack lies between an angle and the nearest ones."""
    for generator, angles in random_boxes(150):
        kinds, rows = every_stack(angles)
        sums, counts = rows @ np.array(kinds), np.abs(rows).sum(axis=1)
        for _ in range(8):
            target, most = generator.randrange(1, 2 * sum(angles)), generator.randrange(1, 10)
            allowed = sums[counts <= most]
            lower, upper = allowed[allowed <= target], allowed[allowed >= target]
            below, above = nearest(angles, target, most)
            assert (below.total if below else None) == (lower.max() if len(lower) else None)
            assert (above.total if above else None) == (upper.min() if len(upper) else None)
            for stack in (below, above):
                if stack:
                    assert stack.count == counts[sums == stack.total].min()


@pytest.mark.outside("blocks.angle-stack", source="Enumeration of all signs of the 13-piece set")
@pytest.mark.parametrize(("most", "tolerance"), [(3, 1_500), (5, 0), (8, 4_000), (13, 0)])
def test_a_whole_set_gives_the_fewest_of_enumeration(most: int, tolerance: int) -> None:
    """From all 1.6 million signed sums of a set no fewer blocks do it, and none as few nearer."""
    angles = angle_sets()["angle-13"].angles
    sums, counts = np.zeros(1, np.int64), np.zeros(1, np.int8)
    for angle in angles:
        sums = np.concatenate([sums, sums + angle, sums - angle])
        counts = np.concatenate([counts, counts + 1, counts + 1])
    generator = random.Random(CHANCE)  # noqa: S311
    for _ in range(12):
        target = generator.randrange(1, 81 * 1_200) * 3_000 + generator.choice([0, 0, 500])
        within = (np.abs(sums - target) <= tolerance) & (counts <= most) & (counts > 0)
        found = fewest_within(angles, target, tolerance, most).stacks
        assert (found[0].count if found else None) == min(counts[within], default=None)
        if found:
            off = np.abs(sums[within & (counts == found[0].count)] - target).min()
            assert abs(found[0].total - target) == off


def by_constraints(
    angles: Sequence[int], target: int, tolerance: int, most: int
) -> tuple[int, int] | None:
    """Fewest blocks, and of as few the least error, by OR-Tools CP-SAT; alike ones together."""
    model = cp_model.CpModel()
    kinds = Counter(angles)
    plus = [model.new_int_var(0, count, "") for count in kinds.values()]
    minus = [model.new_int_var(0, count, "") for count in kinds.values()]
    for added, subtracted, count in zip(plus, minus, kinds.values(), strict=True):
        model.add(added + subtracted <= count)
    off = model.new_int_var(0, tolerance, "")
    error = cp_model.LinearExpr.weighted_sum([*plus, *minus], [*kinds, *(-k for k in kinds)])
    model.add_abs_equality(off, error - target)
    count = cp_model.LinearExpr.sum([*plus, *minus])
    model.add(count >= 1)
    model.add(count <= most)
    fewest = _least(model, count)
    if fewest is None:
        return None
    model.add(count == fewest)
    return fewest, _least(model, off) or 0


def _least(model: cp_model.CpModel, what: Any) -> int | None:
    """The least value of an expression; None where nothing fulfils the model."""
    model.minimize(what)
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    status = solver.solve(model)
    assert status in (cp_model.OPTIMAL, cp_model.INFEASIBLE)
    return round(solver.objective_value) if status == cp_model.OPTIMAL else None


@pytest.mark.outside("blocks.angle-stack", source="OR-Tools CP-SAT, within a tolerance and alike")
@pytest.mark.parametrize("box", ["alike", "different", "angle-16"])
def test_fewest_and_nearest_are_those_of_a_constraint_solver(box: str) -> None:
    """Whole boxes, blocks alike among them, give as few blocks and as near as an exact solver."""
    angles = {
        "alike": [k * 3_600_000 for k in range(1, 6) for _ in range(4)] + [6 * 3_600_000] * 2,
        "different": THOUSANDTHS[:12],
        "angle-16": list(angle_sets()["angle-16"].angles),
    }[box]
    generator = random.Random(CHANCE + 1)  # noqa: S311
    for _ in range(5):
        target = generator.randrange(1, 60 * 3_600) * 1_000
        if box == "alike":
            target = generator.randrange(1, 75) * 3_600_000
        tolerance, most = generator.choice([0, 1_700, 43_000]), generator.randrange(3, 6)
        found = fewest_within(angles, target, tolerance, most).stacks
        best = (found[0].count, abs(found[0].total - target)) if found else None
        assert best == by_constraints(angles, target, tolerance, most)


def test_a_few_of_many_pieces_are_refused_with_the_nearest(call: Call) -> None:
    """One block alone: the nearest below and above are the blocks themselves."""
    with pytest.raises(Unreachable, match="nearest below it is 45°") as refused:
        call("blocks.angle-stack", angle=70, set="angle-16", max_blocks=1)
    assert set(refused.value.fields) == {"angle"}
    around = refused.value.more["nearest"]
    assert around == {
        "below": {"angle": "45°00'00.00\"", "deviation_arcsec": -90_000.0, "sum": "45°"}
    }
    with pytest.raises(Unreachable, match=r"below it is 30°.* and above it is 45°"):
        call("blocks.angle-stack", angle=40, set="angle-16", max_blocks=1)


def test_blocks_alike_are_one_kind(call: Call) -> None:
    """22 blocks of six kinds give 37° from eight of them, the other ways each once."""
    result = call("blocks.angle-stack", angle=37, box=SIX_KINDS, max_alternatives=20)["result"]
    # 6 + 6 + 5 + 5 + 5 + 5 = 32: six blocks give no more, seven take one more.
    assert (result["count"], result["words"]) == (8, "6° + 6° + 5° + 5° + 5° + 5° + 4° + 1°")
    words = [result["words"], *(entry["words"] for entry in result["alternatives"])]
    assert len(set(words)) == 21
    assert result["proved"]
    assert result["order_proved"]
    assert result["bound"] is None


def test_the_best_of_very_many_stacks_are_given(call: Call) -> None:
    """A wide tolerance over 22 different blocks is answered, proved, with what comes next."""
    answer = call(
        "blocks.angle-stack",
        angle=37.405,
        tolerance_arcsec=43,
        max_alternatives=20,
        box=TWENTY_TWO,
    )
    result = answer["result"]
    assert result["order_proved"]
    assert (result["count"], result["deviation_arcsec"]) == (4, -18.0)
    order = [
        (entry["count"], abs(entry["deviation_arcsec"]))
        for entry in [result, *result["alternatives"]]
    ]
    assert order == sorted(order)
    every = fewest_within(THOUSANDTHS, round(37.405 * 3_600_000), 43_000, 22, 21).stacks
    assert [count for count, _ in order] == [stack.count for stack in every]


def test_any_tolerance_is_answered(call: Call) -> None:
    """Where any angle will do, the nearest single block is given."""
    result = call("blocks.angle-stack", angle="37 24 18", set="angle-16", tolerance_arcsec=3e5)[
        "result"
    ]
    assert (result["words"], result["proved"]) == ("30°", True)


def test_past_its_bound_the_best_found_is_given(
    call: Call, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Past the bound the count is still the fewest; the rest is said not to be proved."""
    monkeypatch.setattr(angle_stack, "MOST_COMPARED", 1_000)
    # Eleven of these 22 blocks make 110°, in 705,432 ways; ten never do.
    pieces = [{"angle": 10 + k / 3_600} for k in range(22)]
    answer = call(
        "blocks.angle-stack", angle=110.0201, box=pieces, tolerance_arcsec=300, max_alternatives=20
    )
    result = answer["result"]
    assert (result["proved"], result["order_proved"]) == (False, False)
    assert "More than 1000 stacks" in result["bound"]
    assert "bound-reached" in [advisory["code"] for advisory in answer["advisories"]]
    assert result["count"] == 11
    assert abs(result["deviation_arcsec"]) <= 300
    assert len(result["alternatives"]) == 20


def test_work_that_ends_in_a_later_count_leaves_the_first_proved() -> None:
    """Where the bound falls among stacks of more blocks, the first one stays proved."""
    angles = [9, 4, 3, 2, 1]
    whole = fewest_within(angles, 9, 0, 5, 6)
    cut = fewest_within(angles, 9, 0, 5, 6, Work(2))
    assert (cut.stacks[0], cut.first_proved, cut.complete) == (whole.stacks[0], True, False)
    assert whole.complete


def test_blocks_of_one_angle_that_differ_are_told_apart(call: Call) -> None:
    """Of blocks measured apart each choice is a stack of its own; of those alike one is given."""
    pieces = [
        {"angle": 5},
        {"angle": 1, "deviation_arcsec": 0.3, "count": 2},
        {"angle": 1, "deviation_arcsec": -0.2},
    ]
    result = call("blocks.angle-stack", angle=3, box=pieces, max_alternatives=20)["result"]
    every = [result, *result["alternatives"]]
    assert [entry["words"] for entry in every] == ["1° + 1° + 1°", *["5° − 1° − 1°"] * 2]
    assert [entry["actual_deviation_arcsec"] for entry in every] == pytest.approx([0.4, -0.6, -0.1])


def test_very_many_choices_of_blocks_alike_end(call: Call) -> None:
    """22 blocks of one angle, each measured apart, can be chosen in 705,432 ways: 21 are given."""
    pieces = [{"angle": 1, "deviation_arcsec": k / 100} for k in range(22)]
    result = call("blocks.angle-stack", angle=11, box=pieces, max_alternatives=20)["result"]
    chosen = [entry["actual_deviation_arcsec"] for entry in [result, *result["alternatives"]]]
    assert len(chosen) == 21
    assert chosen[0] == pytest.approx(sum(range(11)) / 100)
