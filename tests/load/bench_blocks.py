"""Stacks of gauge blocks, side by side with a general exact solver in one run. Not collected.

    .venv/bin/python tests/load/bench_blocks.py

For the same targets: single stacks, stacks with measured deviations, two and more stacks at once.
Each figure of ours stands beside that of OR-Tools CP-SAT (one worker) on targets of the same run,
and both must agree on the optimum, or the run fails; where the solver runs out of its time (some
seconds a target, which is usual with measured deviations) it must not have found better. Ours is
the least of three goes, since the times are far below what else a machine does at the same moment;
the solver's is of one.
"""

import argparse
import random
import statistics
import time
import tracemalloc
from collections.abc import Callable, Iterator, Sequence
from functools import partial
from itertools import islice
from typing import Any, TypeVar

from ortools.sat.python import cp_model

from halfangle_service.trade.stacks.search.disjoint import Assignment, DisjointSearch
from halfangle_service.trade.stacks.search.measured import MOST_CANDIDATES, MeasuredBlocks
from halfangle_service.trade.stacks.search.stacking import StackTable, stack_table
from halfangle_service.trade.stacks.search.work import Work
from halfangle_service.trade.stacks.supply import Box, Piece
from halfangle_service.trade.tables.blocks.sets import built_in_sets

T = TypeVar("T")
#: What a solver found, None where nothing, and whether that is the optimum.
Found = tuple[int | None, bool]
#: No stack is farther off than this, in 0.1 nm; it bounds the solver's error variable.
FARTHEST = 10_000_000_000
#: Seconds that the general solver may take for one target.
PATIENCE = 10.0


def timed(work: Callable[[], T], goes: int = 1) -> tuple[float, T]:
    """Least time of some goes in seconds, and the result."""
    seconds = []
    for _ in range(goes):
        started = time.perf_counter()
        result = work()
        seconds.append(time.perf_counter() - started)
    return min(seconds), result


def spread(seconds: Sequence[float]) -> tuple[float, float, float]:
    """Median, 99th percentile and greatest."""
    ordered = sorted(seconds)
    return statistics.median(ordered), ordered[int(0.99 * (len(ordered) - 1))], ordered[-1]


def report(title: str, ours: Sequence[float], theirs: Sequence[float], proved: int) -> None:
    """Print one comparison."""
    our_median, our_p99, our_most = spread(ours)
    their_median, their_p99, _ = spread(theirs)
    print(
        f"  {title}: {len(ours)} targets, median {our_median * 1e6:.1f} µs, "
        f"p99 {our_p99 * 1e3:.3f} ms, greatest {our_most * 1e3:.1f} ms\n"
        f"    solver on {len(theirs)} of them, {proved} proved within {PATIENCE:g} s: median "
        f"{their_median * 1e3:.1f} ms, p99 {their_p99 * 1e3:.1f} ms; ratio of medians "
        f"{their_median / our_median:,.0f}, of p99 {their_p99 / our_p99:,.0f}",
        flush=True,
    )


def new_model(
    steps: Sequence[int], count: int, most: int
) -> tuple[cp_model.CpModel, list[list[Any]]]:
    """A model of so many stacks of up to `most` blocks, each block used once."""
    model = cp_model.CpModel()
    stacks = [[model.new_bool_var(f"{s}-{b}") for b in range(len(steps))] for s in range(count)]
    for used in stacks:
        model.add(cp_model.LinearExpr.sum(used) <= most)
    for block in zip(*stacks, strict=True):
        model.add(cp_model.LinearExpr.sum(list(block)) <= 1)
    return model, stacks


def solved(model: cp_model.CpModel) -> Found:
    """What the general solver finds."""
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    solver.parameters.max_time_in_seconds = PATIENCE
    status = solver.solve(model)
    found = status in (cp_model.OPTIMAL, cp_model.FEASIBLE)
    proved = status in (cp_model.OPTIMAL, cp_model.INFEASIBLE)
    return round(solver.objective_value) if found else None, proved


def fewest_by_solver(steps: Sequence[int], targets: Sequence[int], most: int) -> Found:
    """Fewest blocks for some heights at once."""
    model, stacks = new_model(steps, len(targets), most)
    for used, target in zip(stacks, targets, strict=True):
        model.add(cp_model.LinearExpr.weighted_sum(used, list(steps)) == target)
    model.minimize(cp_model.LinearExpr.sum([used for stack in stacks for used in stack]))
    return solved(model)


def nearest_by_solver(lengths: Sequence[int], target: int, most: int) -> Found:
    """Least error of a stack of measured blocks."""
    model, (used,) = new_model(lengths, 1, most)
    error = model.new_int_var(0, FARTHEST, "error")
    height = cp_model.LinearExpr.weighted_sum(used, list(lengths))
    model.add(height - target <= error)
    model.add(target - height <= error)
    model.minimize(error)
    return solved(model)


def require_agreement(ours: int | None, theirs: Found) -> None:
    """Fail where the solver proved another optimum, or found something better."""
    found, proved = theirs
    if proved:
        assert found == ours, (found, ours)
    elif found is not None:
        assert ours is not None, found
        assert ours <= found, (found, ours)


def targets_of(table: StackTable, seed: int) -> Iterator[int]:
    """Heights in steps, up to that of the three largest blocks."""
    generator = random.Random(seed)  # noqa: S311  reproducible targets, not secrets
    highest = sum(table.sizes[:3]) // table.step
    while True:
        yield generator.randrange(1, highest)


def single_stacks(box: Box, targets: int, checked: int) -> None:
    """Time a new table, and single stacks from it."""
    fresh = [timed(lambda: StackTable(box.sizes, 6).stack(box.sizes[0]))[0] for _ in range(15)]
    print(f"  new set: table and first stack, median {statistics.median(fresh) * 1e3:.2f} ms")
    table = StackTable(box.sizes, 6)
    table.stack(box.sizes[0])
    steps = [size // table.step for size in table.sizes]
    ours, theirs, proved = [], [], 0
    for place, target in enumerate(islice(targets_of(table, 1), targets)):
        seconds, blocks = timed(partial(table.stack, target * table.step), 3)
        ours.append(seconds)
        if place < checked:
            seconds, fewest = timed(partial(fewest_by_solver, steps, [target], 6))
            theirs.append(seconds)
            proved += fewest[1]
            require_agreement(len(blocks) if blocks else None, fewest)
    report("single stack, up to 6 blocks", ours, theirs, proved)


def measured_blocks_of(lengths: tuple[int, ...]) -> MeasuredBlocks:
    """One block of each length, nothing prepared yet."""
    return MeasuredBlocks(lengths, (1,) * len(lengths))


def nearest_stack(blocks: MeasuredBlocks, target: int) -> tuple[int, tuple[int, ...]]:
    """The stack of up to five measured blocks that comes nearest."""
    return next(blocks.nearest(target, 5, Work(MOST_CANDIDATES)))


def measured_stacks(box: Box, targets: int, checked: int) -> None:
    """Time stacks with measured deviations."""
    generator = random.Random(2)  # noqa: S311  reproducible deviations, not secrets
    lengths = tuple(size + generator.randrange(-1500, 1501) for size in box.sizes)
    blocks = measured_blocks_of(lengths)
    made = [timed(lambda: measured_blocks_of(lengths).up_to)[0] for _ in range(15)]
    tracemalloc.start()
    kept = measured_blocks_of(lengths)
    assert kept.up_to
    megabytes, peak = (amount / 1e6 for amount in tracemalloc.get_traced_memory())
    tracemalloc.stop()
    print(
        f"  measured: prepared in {statistics.median(made) * 1e3:.1f} ms (median), "
        f"{megabytes:.1f} MB kept, {peak:.1f} at most"
    )
    table = StackTable(box.sizes, 5)
    ours, theirs, proved = [], [], 0
    for place, step in enumerate(islice(targets_of(table, 3), targets)):
        target = step * table.step
        seconds, found = timed(partial(nearest_stack, blocks, target), 3)
        ours.append(seconds)
        if place < checked:
            seconds, error = timed(partial(nearest_by_solver, lengths, target, 5))
            theirs.append(seconds)
            proved += error[1]
            require_agreement(abs(found[0]), error)
    report("nearest actual height, up to 5 blocks", ours, theirs, proved)


def stand_at_once(table: StackTable, heights: Sequence[int]) -> Assignment:
    """Stacks for heights in steps, all at once."""
    search = DisjointSearch(table, [[height * table.step] for height in heights])
    return search.solve(range(len(heights)))


def several_stacks(box: Box, count: int, targets: int, checked: int) -> None:
    """Time stacks that stand at once."""
    table = stack_table(box.sizes, 5)
    table.stack(table.sizes[0])
    steps = [size // table.step for size in table.sizes]
    every = targets_of(table, 3 + count)
    ours, theirs, proved, verdicts = [], [], 0, [0, 0, 0]
    for place in range(targets):
        heights = list(islice(every, count))
        seconds, found = timed(partial(stand_at_once, table, heights), 3)
        ours.append(seconds)
        verdicts[(0 if found.stacks else 1) if found.proved else 2] += 1
        if place < checked and found.proved:
            seconds, fewest = timed(partial(fewest_by_solver, steps, heights, 5))
            theirs.append(seconds)
            proved += fewest[1]
            require_agreement(found.count if found.stacks else None, fewest)
    report(f"{count} stacks at once, up to 5 blocks each", ours, theirs, proved)
    possible, impossible, bounded = verdicts
    print(f"    proved fewest {possible}, proved impossible {impossible}, with a gap {bounded}")


def main() -> None:
    """Run the benchmark."""
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    parser.add_argument("sets", nargs="*", default=["inch-81", "metric-112"])
    parser.add_argument("--targets", type=int, default=1000, help="targets of each kind")
    parser.add_argument("--checked", type=int, default=100, help="of them given to the solver too")
    parser.add_argument("--hard", type=int, default=5, help="the same, measured and several")
    options = parser.parse_args()
    for name in options.sets:
        box = Box.of(map(Piece, built_in_sets()[name].sizes))
        print(f"{name}, {len(box.sizes)} blocks", flush=True)
        single_stacks(box, options.targets, options.checked)
        measured_stacks(box, options.targets, options.hard)
        for count in (2, 3, 4):
            several_stacks(box, count, max(options.targets // count**2, 1), 4 * options.hard)


if __name__ == "__main__":
    main()
