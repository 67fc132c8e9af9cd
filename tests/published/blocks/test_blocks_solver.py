"""Stacks against independent exact solvers, and against enumeration of every combination."""

import random
from collections import Counter
from collections.abc import Callable, Container, Iterator, Sequence
from itertools import combinations, islice, product
from typing import Any

import numpy as np
import pytest
from ortools.algorithms.python import knapsack_solver
from ortools.sat.python import cp_model

from halfangle_service.trade.stacks.angle_blocks import fewest_within, nearest
from halfangle_service.trade.stacks.choosing import choose
from halfangle_service.trade.stacks.nearest import choose_measured
from halfangle_service.trade.stacks.search.disjoint import DisjointSearch
from halfangle_service.trade.stacks.search.layers import MOST_CELLS
from halfangle_service.trade.stacks.search.measured import MeasuredBlocks
from halfangle_service.trade.stacks.search.stacking import MOST_COUNTED, StackTable, stack_table
from halfangle_service.trade.stacks.search.work import Work
from halfangle_service.trade.stacks.supply import Box, Piece
from halfangle_service.trade.tables.blocks.sets import built_in_sets
from solver_support import by_constraints
from support import Call

MAX_BLOCKS = 6
#: Reproducible targets, not secrets.
CHANCE = 20


def by_knapsack(steps: Sequence[int], target: int, most: int) -> int | None:
    """Fewest blocks for a target by OR-Tools' knapsack solver; None where there are none.

    The worth of a block is a hundred times its size less one: the greatest worth that fits into
    the target fills it, if anything does, and then with the fewest blocks.
    """
    solver = knapsack_solver.KnapsackSolver(
        knapsack_solver.SolverType.KNAPSACK_DYNAMIC_PROGRAMMING_SOLVER, "blocks"
    )
    solver.init([100 * step - 1 for step in steps], [list(steps)], [target])
    count = 100 * target - int(solver.solve())
    return count if count <= most else None


def require_stack(table: StackTable, blocks: Sequence[int] | None, target: int) -> None:
    """A stack, if there is one, has its height, its order, and no block too often."""
    if blocks is not None:
        assert sum(blocks) == target * table.step
        assert list(blocks) == sorted(blocks, reverse=True)
        assert not Counter(blocks) - Counter(table.sizes)


@pytest.mark.outside("blocks.stack", source="OR-Tools knapsack solver, 1,900 random targets")
@pytest.mark.parametrize(
    ("name", "targets"), [("inch-81", 500), ("inch-36", 700), ("metric-47", 700)]
)
def test_fewest_blocks_are_those_of_a_knapsack_solver(name: str, targets: int) -> None:
    """On random heights the fewest blocks are as few as an independent exact solver finds."""
    table = stack_table(built_in_sets()[name].sizes, MAX_BLOCKS)
    steps = [size // table.step for size in table.sizes]
    generator = random.Random(CHANCE)  # noqa: S311
    for _ in range(targets):
        target = generator.randrange(1, sum(steps[:3]))
        blocks = table.stack(target * table.step)
        require_stack(table, blocks, target)
        assert by_knapsack(steps, target, MAX_BLOCKS) == (len(blocks) if blocks else None)


@pytest.mark.outside("blocks.stack", source="OR-Tools CP-SAT, 60 random targets")
@pytest.mark.parametrize("name", ["inch-83", "metric-112"])
def test_fewest_blocks_are_those_of_a_constraint_solver(name: str) -> None:
    """On the largest sets the fewest blocks are as few as a constraint solver finds."""
    table = stack_table(built_in_sets()[name].sizes, MAX_BLOCKS)
    steps = [size // table.step for size in table.sizes]
    generator = random.Random(CHANCE + 1)  # noqa: S311
    for _ in range(30):
        target = generator.randrange(1, sum(steps[:3]))
        blocks = table.stack(target * table.step)
        require_stack(table, blocks, target)
        assert by_constraints(steps, [target], MAX_BLOCKS)[0] == (len(blocks) if blocks else None)


def measured_box(count: int, seed: int) -> tuple[int, ...]:
    """Actual lengths of the last blocks of the 81-piece set, each off by up to 0.15 µm."""
    generator = random.Random(seed)  # noqa: S311
    sizes = built_in_sets()["inch-81"].sizes
    chosen = sorted(generator.sample(sizes, count), reverse=True)
    return tuple(size + generator.randrange(-1500, 1501) for size in chosen)


def one_each(lengths: Sequence[int]) -> MeasuredBlocks:
    """One block of each of these lengths."""
    return MeasuredBlocks(tuple(lengths), (1,) * len(lengths))


def every_sum(lengths: Sequence[int], most: int) -> np.ndarray:
    """The height of every stack of up to `most` blocks, ascending, by plain enumeration."""
    heights = [
        np.array(list(combinations(lengths, count)), np.int64).sum(axis=1)
        for count in range(1, most + 1)
    ]
    return np.sort(np.concatenate(heights))


@pytest.mark.outside("blocks.stack", source="Enumeration of 180,000 stacks, 2,000 random targets")
def test_nearest_actual_height_is_that_of_enumeration() -> None:
    """With measured deviations no stack of up to five blocks of 30 comes nearer than the one given.

    The next nearest ones follow in order.
    """
    lengths = measured_box(30, 3)
    blocks = one_each(lengths)
    heights = every_sum(lengths, 5)
    generator = random.Random(CHANCE + 2)  # noqa: S311
    for _ in range(2000):
        target = generator.randrange(1, sum(lengths[:4]))
        found = list(islice(blocks.nearest(target, 5, Work(5_000)), 3))
        assert all(sum(lengths[p] for p in stack) - target == error for error, stack in found)
        place = int(np.searchsorted(heights, target))
        around = heights[max(place - 3, 0) : place + 3] - target
        assert [abs(error) for error, _ in found] == sorted(np.abs(around).tolist())[:3]


@pytest.mark.outside("blocks.stack", source="Enumeration of every stack, blocks alike among them")
def test_blocks_alike_give_each_stack_once() -> None:
    """Of several blocks alike a stack takes as many as there are, and is given once."""
    lengths, copies = (501, 300, 199, 70), (1, 3, 2, 4)
    every: dict[tuple[int, ...], int] = {}
    blocks = [kind for kind, count in enumerate(copies) for _ in range(count)]
    for count in range(1, 6):
        for stack in combinations(blocks, count):
            every[stack] = sum(lengths[kind] for kind in stack)
    measured = MeasuredBlocks(lengths, copies)
    for target in range(60, 2600, 37):
        found = list(measured.nearest(target, 5, Work(100_000)))
        assert {stack: target + error for error, stack in found} == every
        errors = [abs(error) for error, _ in found]
        assert errors == sorted(errors)
        assert len(found) == len(every)


def test_more_blocks_and_large_boxes() -> None:
    """Up to eight blocks of a small box are exact, six of 200, and four of a larger one."""
    lengths = measured_box(14, 5)
    heights = every_sum(lengths, 8)
    blocks = one_each(lengths)
    usual = one_each([10_000_000 + 7_919 * k * k for k in range(200)])
    wide = one_each([10_000_000 + 7_919 * k * k for k in range(201)])
    assert (blocks.most_exact, usual.most_exact, wide.most_exact) == (8, 6, 4)
    for target in range(10_000_000, sum(lengths[:5]), 90_000_019):
        error, _ = next(blocks.nearest(target, 8, Work(5_000)))
        assert abs(error) == int(np.abs(heights - target).min())
    stack = (3, 50, 120, 200)
    error, found = next(wide.nearest(sum(wide.lengths[p] for p in stack), 4, Work(5_000)))
    assert error == 0
    assert sum(wide.lengths[p] for p in found) == sum(wide.lengths[p] for p in stack)


def assignments(sizes: Sequence[int], stacks: int) -> dict[tuple[int, ...], int]:
    """The fewest blocks for every tuple of heights that can stand at once, by enumeration.

    Each block stands in one of the stacks or in the box: (stacks + 1) to the power of the blocks.
    """
    sums = np.zeros((1, stacks), np.int64)
    counts = np.zeros(1, np.int64)
    for size in sizes:
        placed = [sums + size * np.eye(stacks, dtype=np.int64)[stack] for stack in range(stacks)]
        sums = np.concatenate([sums, *placed])
        counts = np.concatenate([counts, *[counts + 1] * stacks])
    order = np.argsort(-counts, kind="stable")
    return dict(zip(map(tuple, sums[order].tolist()), counts[order].tolist(), strict=True))


def random_heights(
    generator: random.Random, sizes: Sequence[int], stacks: int
) -> Iterator[tuple[int, ...]]:
    """Heights that each have a stack; together they may have none."""
    while True:
        yield tuple(sum(generator.sample(sizes, generator.randrange(1, 4))) for _ in range(stacks))


@pytest.mark.outside("blocks.stacks", source="Enumeration of every assignment, 2,000 targets")
@pytest.mark.parametrize(("count", "stacks", "targets"), [(12, 2, 1400), (8, 3, 600)])
def test_several_stacks_are_those_of_enumeration(count: int, stacks: int, targets: int) -> None:
    """Several stacks at once use as few blocks as any assignment, or there is none."""
    sizes = (400, 300, 200, 100, 95, 55, 30, 14, 13, 11, 7, 3)[12 - count :]
    truth = assignments(sizes, stacks)
    layers = Box.of(Piece(size) for size in sizes).layers(min(count, MOST_COUNTED))
    generator = random.Random(CHANCE + stacks)  # noqa: S311
    for heights in islice(random_heights(generator, sizes, stacks), targets):
        search = DisjointSearch(layers.table, [[height] for height in heights])
        found = search.solve(range(stacks))
        assert found.proved
        assert (found.count if found.stacks else None) == truth.get(heights)
        if found.stacks:
            assert found.bound == found.count
            assert [sum(sizes[p] for p in stack) for stack in found.stacks] == list(heights)
            assert len({p for stack in found.stacks for p in stack}) == found.count


@pytest.mark.outside("blocks.stacks", source="OR-Tools CP-SAT, two and three stacks at once")
@pytest.mark.parametrize(("name", "stacks", "cases"), [("inch-81", 2, 12), ("metric-47", 3, 6)])
def test_several_stacks_are_those_of_a_constraint_solver(
    name: str, stacks: int, cases: int
) -> None:
    """From whole sets, too, several stacks use as few blocks as a constraint solver finds."""
    box = Box.of(map(Piece, built_in_sets()[name].sizes))
    layers = box.layers(5)
    steps = [size // layers.table.step for size in box.sizes]
    generator = random.Random(CHANCE + 9)  # noqa: S311
    for heights in islice(random_heights(generator, steps, stacks), cases):
        search = DisjointSearch(layers.table, [[height * layers.table.step] for height in heights])
        found = search.solve(range(stacks))
        assert found.proved
        assert by_constraints(steps, heights, 5)[0] == (found.count if found.stacks else None)


def fewest_of_any(sizes: Sequence[int], heights: Sequence[int], most: int) -> int | None:
    """Fewest blocks of stacks of up to `most` each for these heights, by trying every choice."""
    alone: dict[int, list[frozenset[int]]] = {height: [] for height in heights}
    for count in range(1, most + 1):
        for stack in combinations(range(len(sizes)), count):
            alone.get(sum(sizes[place] for place in stack), []).append(frozenset(stack))
    counts = [
        sum(map(len, stacks))
        for stacks in product(*(alone[height] for height in heights))
        if sum(map(len, stacks)) == len(frozenset().union(*stacks))
    ]
    return min(counts, default=None)


@pytest.mark.outside("blocks.stacks", source="Every choice of stacks tried, 720 targets")
@pytest.mark.parametrize("stacks", [2, 3])
def test_blocks_alike_may_stand_in_several_stacks(stacks: int) -> None:
    """Of two blocks alike one may stand in each of two stacks; the fewest are those of all choices.

    With few blocks a stack, so that building one stack after another most often does not do.
    """
    generator = random.Random(CHANCE + 6)  # noqa: S311
    for _ in range(40):
        sizes = sorted(
            (generator.choice([20, 14, 13, 11, 9, 7, 5]) for _ in range(8)), reverse=True
        )
        table = StackTable(tuple(sizes), 3)
        for _ in range(9):
            heights = [
                sum(generator.sample(sizes, generator.randrange(2, 4))) for _ in range(stacks)
            ]
            found = DisjointSearch(table, [[height] for height in heights]).solve(range(stacks))
            assert found.proved
            assert (found.count if found.stacks else None) == fewest_of_any(sizes, heights, 3)


def subsets_that_stand(truth: Container[tuple[int, ...]], heights: Sequence[int]) -> int:
    """Most of three heights that can stand at once, by enumeration."""
    return max(
        sum(height > 0 for height in chosen)
        for chosen in (
            tuple(height if mask >> place & 1 else 0 for place, height in enumerate(heights))
            for mask in range(8)
        )
        if chosen in truth
    )


@pytest.mark.outside("blocks.stacks", source="Enumeration of every assignment, 200 targets")
def test_the_largest_subset_is_that_of_enumeration() -> None:
    """Where not all heights can stand at once, no larger part of them can than the one given."""
    sizes = (95, 55, 30, 14, 13, 11, 7, 3)
    truth = assignments(sizes, 3)
    layers = Box.of(map(Piece, sizes)).layers(len(sizes))
    generator = random.Random(CHANCE + 4)  # noqa: S311
    for heights in islice(random_heights(generator, sizes, 3), 200):
        search = DisjointSearch(layers.table, [[height] for height in heights])
        subset = search.largest_subset(range(3), 3)
        assert subset.proved
        assert len(subset.indices) == subset.most == subsets_that_stand(truth, heights)


@pytest.mark.outside("blocks.stack", source="Enumeration of every stack of the 36-piece set")
@pytest.mark.parametrize("preference", ["fewer-small-blocks", "least-wear", "least-uncertainty"])
def test_preferred_stacks_are_those_of_enumeration(preference: str) -> None:
    """Of all stacks of as few blocks the ten given are the ten most preferred, in order."""
    box = Box.of(
        Piece(size, standard_uncertainty=float(17 * place % 11), calibrated=True, wrung=place * 7)
        for place, size in enumerate(built_in_sets()["inch-36"].sizes)
    )
    keys: dict[str, Callable[[Sequence[Piece]], Any]] = {
        "fewer-small-blocks": lambda stack: tuple(-piece.size for piece in reversed(stack)),
        "least-wear": lambda stack: sum(piece.wrung for piece in stack),
        "least-uncertainty": lambda stack: sum(p.standard_uncertainty**2 for p in stack),
    }
    height = 254_000_000 * 7 // 10
    every = sorted(
        (len(stack), keys[preference](stack))
        for count in range(1, 6)
        for stack in combinations(box.pieces, count)
        if sum(piece.size for piece in stack) == height
    )
    choice = choose(box, height, 0, 5, preference, 10, Work(MOST_CELLS))  # type: ignore[arg-type]
    assert choice.complete
    assert len(set(choice.stacks)) == 10
    given = [box.pick(stack) for stack in choice.stacks]
    assert [(len(stack), keys[preference](stack)) for stack in given] == every[:10]


def test_a_tolerance_takes_the_fewest_measured_blocks() -> None:
    """With a tolerance no stack of fewer blocks comes within it."""
    lengths = measured_box(20, 11)
    box = Box.of(map(Piece, lengths))
    for target in range(300_000_000, 900_000_000, 50_000_017):
        choice = choose_measured(box, target, 40_000, 5, 1, Work(100_000))
        within = next(
            (n for n in range(1, 6) if np.abs(every_sum(lengths, n) - target).min() <= 40_000), None
        )
        assert (len(choice.stacks[0]) if choice.stacks else None) == within


def fewest_by_signs(angles: Sequence[int], targets: Sequence[int]) -> list[int | None]:
    """Fewest angle blocks for each angle by OR-Tools CP-SAT, each added or subtracted."""
    counts: list[int | None] = []
    for target in targets:
        model = cp_model.CpModel()
        plus = [model.new_bool_var(f"p{k}") for k in range(len(angles))]
        minus = [model.new_bool_var(f"m{k}") for k in range(len(angles))]
        model.add(
            cp_model.LinearExpr.weighted_sum([*plus, *minus], [*angles, *(-a for a in angles)])
            == target
        )
        for first, second in zip(plus, minus, strict=True):
            model.add(first + second <= 1)
        model.minimize(cp_model.LinearExpr.sum([*plus, *minus]))
        solver = cp_model.CpSolver()
        solver.parameters.num_workers = 1
        status = solver.solve(model)
        counts.append(round(solver.objective_value) if status == cp_model.OPTIMAL else None)
    return counts


@pytest.mark.outside("blocks.angle-stack", source="OR-Tools CP-SAT, 40 random angles")
def test_fewest_angle_blocks_are_those_of_a_constraint_solver() -> None:
    """On random angles the fewest angle blocks are as few as an exact solver finds."""
    seconds = [162_000, 108_000, 54_000, 18_000, 10_800, 3_600]
    seconds += [1_800, 1_200, 300, 180, 60, 30, 20, 5, 3, 1]
    generator = random.Random(CHANCE)  # noqa: S311
    targets = [generator.randrange(1, 356_400) for _ in range(40)]
    for target, expected in zip(targets, fewest_by_signs(seconds, targets), strict=True):
        found = fewest_within([s * 1000 for s in seconds], target * 1000, 0, 22).stacks
        assert (found[0].count if found else None) == expected
        if found:
            assert sum(angle * times for angle, times in found[0].terms) == target * 1000


def test_nearest_angles_are_those_of_enumeration() -> None:
    """Where an angle cannot be built the nearest below and above are those of all signed sums."""
    angles = (15_000, 5_000, 3_000, 1_300, 700)
    sums = np.zeros(1, np.int64)
    for angle in angles:
        sums = np.concatenate([sums, sums + angle, sums - angle])
    # No block at all is no stack, though it makes an angle of zero.
    sums = np.unique(sums[np.arange(len(sums)) > 0])
    for target in range(50, 24_000, 613):
        below, above = nearest(angles, target, 22)
        assert below is not None
        assert above is not None
        assert below.total == sums[sums <= target].max()
        assert above.total == sums[sums >= target].min()


@pytest.mark.outside("blocks.stacks", source="OR-Tools CP-SAT: each block once, fewest of all")
@pytest.mark.parametrize(
    ("name", "heights"),
    [
        ("inch-36", (0.8144, 1.9504, 0.597)),
        ("inch-81", (1.9919, 2.8689, 3.5692, 3.2698)),
        ("inch-81", (1.906, 2.6529, 3.9164, 2.6899)),
        ("inch-81", (2.877, 2.976, 2.8582, 1.099, 3.3502)),
    ],
)
def test_heights_in_one_anothers_way_take_the_fewest_blocks(
    call: Call, name: str, heights: tuple[float, ...]
) -> None:
    """Where not each height can have its own fewest blocks, together they have the fewest.

    Such heights are few: of random ones most have stacks at once of the fewest blocks each.
    """
    wanted = [{"name": f"h{height}", "height": height} for height in heights]
    result = call("blocks.stacks", units="in", set=name, heights=wanted, max_blocks=5)["result"]
    steps = [round(size / 25_400) for size in built_in_sets()[name].sizes]
    fewest, _ = by_constraints(steps, [round(height * 10_000) for height in heights], 5)
    alone = [by_constraints(steps, [round(height * 10_000)], 5)[0] or 0 for height in heights]
    assert result["complete"]
    assert result["proved"]
    assert result["count"] == result["fewest_possible"] == fewest
    assert fewest is not None
    assert fewest > sum(alone)
