"""The stacks of both plates of a compound plate from one set, no block used twice. 0.1 nm."""

from collections.abc import Sequence
from dataclasses import dataclass

from halfangle_service.errors import BeyondBound
from halfangle_service.trade.stacks.search.disjoint import Assignment, DisjointSearch
from halfangle_service.trade.stacks.search.stacking import StackTable, stack_table
from halfangle_service.trade.stacks.search.work import Left

#: Steps of the set that both heights may be off, to either side, before there is no answer.
MOST_STEPS_OFF = 10


@dataclass(frozen=True, slots=True)
class BothStacks:
    """A stack for each height, largest block first, empty for no height; `proved` the fewest."""

    stacks: tuple[tuple[int, ...], ...]
    proved: bool


def both_stacks(
    sizes: Sequence[int], heights: Sequence[float], max_blocks: int, left: Left | None = None
) -> BothStacks | None:
    """Give stacks for heights in 0.1 nm that stand at once, each as near as the set allows.

    The heights are taken to the nearest step of the set, and where these cannot stand at once to
    those one step off, and so on. None where no heights within `MOST_STEPS_OFF` can. Raises
    BeyondBound where the set is too fine for a table, and where the work is not enough to know.

    `left` is the work that this and other searches may take; without it each step off may take all
    the work of one request.
    """
    table = stack_table(sizes, max_blocks)
    table.require_bounded()
    raised = [place for place, height in enumerate(heights) if height > 0]
    stacks: list[tuple[int, ...]] = [()] * len(heights)
    if not raised:
        return BothStacks(tuple(stacks), proved=True)
    found = _nearest_that_stand(table, [heights[place] for place in raised], left)
    if found is None or found.stacks is None:
        return None
    for place, positions in zip(raised, found.stacks, strict=True):
        stacks[place] = tuple(table.sizes[position] for position in sorted(positions))
    return BothStacks(tuple(stacks), found.proved)


def _nearest_that_stand(
    table: StackTable, heights: Sequence[float], left: Left | None
) -> Assignment | None:
    """Stacks for heights, one at least, that stand at once, with as few steps off as can be."""
    share, before = 1.0 if left is None else left.for_one, None
    for off in range(MOST_STEPS_OFF + 1):
        wanted = [_near(table, height, off) for height in heights]
        search = DisjointSearch(table, wanted, share)
        if left is not None and before is not None:
            search.go_on_from(before)
        before, found = search, search.solve(range(len(heights)))
        if left is not None and (found.stacks is not None or off == MOST_STEPS_OFF):
            left.share -= search.taken
        if found.stacks is not None:
            return found
        if left is not None and search.exhausted:
            left.share -= share
            raise BeyondBound(
                "The search for two stacks that stand at once reached its bound on the work.",
                fields={"max_blocks": "should be smaller"},
            )
    return None


def can_be_built(sizes: Sequence[int], height: float, max_blocks: int) -> bool:
    """True where some stack of these blocks alone comes as near to a height as `both_stacks` asks.

    All in 0.1 nm.
    """
    return bool(_near(stack_table(sizes, max_blocks), height, MOST_STEPS_OFF))


def _near(table: StackTable, height: float, off: int) -> list[int]:
    """Heights that some stack has, up to `off` steps from the nearest step; nearest first."""
    nearest = round(height / table.step) * table.step
    reach = off * table.step
    reached = [there for there, _ in table.within(nearest - reach, nearest + reach)]
    return sorted(reached, key=lambda there: abs(there - height))
