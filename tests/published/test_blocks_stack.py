"""Stacks against an independent exact solver, and sets and grades against published tables."""

import random
from collections.abc import Sequence

import pytest
from ortools.sat.python import cp_model

from halfangle_service.errors import Disagreement, Unreachable
from halfangle_service.topics.blocks.sets import built_in_sets
from halfangle_service.topics.blocks.stacking import stack_table
from halfangle_service.topics.blocks.tolerances import grades
from support import Call

MAX_BLOCKS = 6


def fewest_by_constraint_solver(sizes: Sequence[int], height: int) -> int | None:
    """Give the fewest blocks for a height by OR-Tools CP-SAT, or None where it proves none do."""
    model = cp_model.CpModel()
    used = [model.new_bool_var(f"b{position}") for position in range(len(sizes))]
    model.add(cp_model.LinearExpr.weighted_sum(used, list(sizes)) == height)
    model.add(cp_model.LinearExpr.sum(used) <= MAX_BLOCKS)
    model.minimize(cp_model.LinearExpr.sum(used))
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    status = solver.solve(model)
    assert status in (cp_model.OPTIMAL, cp_model.INFEASIBLE)
    return round(solver.objective_value) if status == cp_model.OPTIMAL else None


@pytest.mark.outside("blocks.stack", source="OR-Tools CP-SAT, 500 random targets")
@pytest.mark.parametrize("name", ["inch-81", "metric-87"])
def test_fewest_blocks_are_as_few_as_an_exact_solver_finds(name: str) -> None:
    """On 250 random heights of a set, the fewest blocks are those of an exact solver."""
    sizes = built_in_sets()[name].sizes
    table = stack_table(sizes, MAX_BLOCKS)
    generator = random.Random(20)  # noqa: S311  reproducible targets, not secrets
    highest = sum(sorted(sizes)[-3:])
    # The solver works in steps of the set, so that its numbers stay small.
    steps = [size // table.step for size in sizes]
    for _ in range(250):
        target = generator.randrange(1, highest // table.step)
        blocks = table.stack(target * table.step)
        assert fewest_by_constraint_solver(steps, target) == (len(blocks) if blocks else None)
        if blocks:
            assert sum(blocks) == target * table.step
            assert len(set(blocks)) == len(blocks)


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


@pytest.mark.outside("blocks.stack", source="GGG-G-15C composition of the 81-piece inch set")
def test_81_piece_inch_set_is_the_published_one() -> None:
    """The 81-piece inch set has the series of the published table, block by block."""
    sizes = built_in_sets()["inch-81"].sizes
    published = (
        [1001 + k for k in range(9)]
        + [10 * (101 + k) for k in range(49)]
        + [500 * k for k in range(1, 20)]
        + [10_000 * k for k in range(1, 5)]
    )
    assert list(sizes) == sorted(25_400 * size for size in published)


def test_sets_hold_as_many_blocks_as_their_names_say() -> None:
    """Each set has the number of pieces in its name, in ascending order."""
    for name, block_set in built_in_sets().items():
        assert f"-{len(block_set.sizes)}" in name
        assert list(block_set.sizes) == sorted(block_set.sizes)


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


# ISO 3650:1998, table 5 as reprinted: limit deviation in µm by grade and size in mm.
ISO_3650 = [("ISO 0", 10, 0.12), ("ISO 1", 10, 0.2), ("ISO 2", 10, 0.45), ("ISO 0", 25, 0.14)]


@pytest.mark.outside("jobs.center", source="ISO 3650:1998, table 5, as reprinted")
@pytest.mark.parametrize(("grade", "size_mm", "limit_um"), ISO_3650)
def test_grade_limits_are_the_published_ones(grade: str, size_mm: int, limit_um: float) -> None:
    """The limit deviation of a grade is that of the published table, ends of ranges included."""
    limit = grades()[grade].limit_deviation(size_mm * 10_000_000)
    assert limit * 1000 == pytest.approx(limit_um)
