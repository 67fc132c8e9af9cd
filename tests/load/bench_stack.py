"""Single stacks of gauge blocks, side by side with a general exact solver. Not collected.

    .venv/bin/python tests/load/bench_stack.py

For each set: the time to make a table, the time to answer from it, and that of OR-Tools CP-SAT on
the same targets, all in one run; both give the same number of blocks, or the run fails.
"""

import argparse
import random
import statistics
import time
from collections.abc import Callable, Sequence

from ortools.sat.python import cp_model

from halfangle_service.topics.blocks.sets import built_in_sets
from halfangle_service.topics.blocks.stacking import StackTable, stack_table

MAX_BLOCKS = 6


def by_general_solver(steps: Sequence[int], target: int) -> int | None:
    """Fewest blocks for a target by CP-SAT, or None where it proves that none do."""
    model = cp_model.CpModel()
    used = [model.new_bool_var(f"b{position}") for position in range(len(steps))]
    model.add(cp_model.LinearExpr.weighted_sum(used, list(steps)) == target)
    model.add(cp_model.LinearExpr.sum(used) <= MAX_BLOCKS)
    model.minimize(cp_model.LinearExpr.sum(used))
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    status = solver.solve(model)
    return round(solver.objective_value) if status == cp_model.OPTIMAL else None


def seconds_of(work: Callable[[], object]) -> float:
    """Time of one call."""
    started = time.perf_counter()
    work()
    return time.perf_counter() - started


def summary(seconds: Sequence[float]) -> tuple[float, float]:
    """Median and 99th percentile."""
    return statistics.median(seconds), sorted(seconds)[int(0.99 * (len(seconds) - 1))]


def compare(name: str, targets: int) -> None:
    """Print the figures of one set."""
    sizes = tuple(sorted(built_in_sets()[name].sizes, reverse=True))
    fresh = [seconds_of(lambda: StackTable(sizes, MAX_BLOCKS).stack(sizes[0])) for _ in range(20)]
    table = stack_table(sizes, MAX_BLOCKS)
    steps = [size // table.step for size in sizes]
    generator = random.Random(7)  # noqa: S311  reproducible targets, not secrets
    highest = sum(sorted(steps)[-3:])
    ours: list[float] = []
    theirs: list[float] = []
    for _ in range(targets):
        target = generator.randrange(1, highest)
        blocks = table.stack(target * table.step)
        ours.append(seconds_of(lambda t=target: table.stack(t * table.step)))  # type: ignore[misc]
        started = time.perf_counter()
        count = by_general_solver(steps, target)
        theirs.append(time.perf_counter() - started)
        assert count == (len(blocks) if blocks else None), target
    (our_median, our_p99), (their_median, their_p99) = summary(ours), summary(theirs)
    print(
        f"{name}: new set {statistics.median(fresh) * 1e3:.2f} ms; from its table median "
        f"{our_median * 1e6:.1f} µs, p99 {our_p99 * 1e6:.1f} µs; general solver median "
        f"{their_median * 1e3:.1f} ms, p99 {their_p99 * 1e3:.1f} ms; ratios "
        f"{their_median / our_median:.0f} and {their_p99 / our_p99:.0f}"
    )


def main() -> None:
    """Run the benchmark."""
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    parser.add_argument("sets", nargs="*", default=["inch-81", "metric-112"])
    parser.add_argument("--targets", type=int, default=1000)
    options = parser.parse_args()
    for name in options.sets:
        compare(name, options.targets)


if __name__ == "__main__":
    main()
