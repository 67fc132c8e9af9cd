"""Which blocks of a stack to swap for another height, as few as can be. Integers of 0.1 nm.

Derived here: every subset of the blocks that stay is tried, cheapest first (blocks taken out plus
blocks put in); the table of the fewest blocks (`trade.stacks`) tells what the rest needs at least.
"""

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations

from halfangle_service.errors import BeyondBound
from halfangle_service.trade.stacks.search.stacking import StackTable, stack_table
from halfangle_service.trade.stacks.search.work import Work

#: Most blocks picked in one search: under a second of work.
MOST_PICKED = 50_000


@dataclass(frozen=True, slots=True)
class Swap:
    """Blocks to take out and to put in, and the stack that results; all largest first."""

    remove: tuple[int, ...]
    add: tuple[int, ...]
    stack: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class _Bench:
    """The stack as it stands, as positions in the table of all blocks, and the work left."""

    current: tuple[int, ...]
    table: StackTable
    work: Work

    def swaps(self, out: int, into: int, height: int) -> Iterator[Swap]:
        """Give the swaps of exactly `out` blocks for `into` others, one a choice of blocks."""
        stands = self._sizes(self.current)
        for removed in combinations(self.current, out):
            taken = self._sizes(removed)
            rest = height - sum(stands) + sum(taken)
            picked = self.table.pick(rest, into, self.current, self.work)
            if picked is not None:
                added = self._sizes(picked)
                stays = Counter(stands) - Counter(taken)
                stack = sorted([*stays.elements(), *added], reverse=True)
                yield Swap(taken, added, tuple(stack))

    def _sizes(self, positions: Iterable[int]) -> tuple[int, ...]:
        return tuple(self.table.sizes[position] for position in positions)


def fewest_swaps(
    current: Sequence[int], sizes: Sequence[int], heights: Iterable[int], max_blocks: int
) -> Swap | None:
    """Give the swap of the fewest blocks that turns a stack into one of `heights`.

    `current` must be among `sizes`. Of equal counts the earlier height wins, then the smaller new
    stack. None where there is no such swap. Raises BeyondBound where the bound on the work was
    reached before one was found.
    """
    table = stack_table(sizes, max_blocks)
    stands = table.positions(sorted(current, reverse=True))
    bench = _Bench(stands, table, Work(MOST_PICKED))
    wanted = list(heights)
    for handled in range(len(stands) + max_blocks + 1):
        for height in wanted:
            for out in range(min(handled, len(stands)), -1, -1):
                into = handled - out
                if bench.work.exhausted or not 0 < len(stands) - out + into <= max_blocks:
                    continue
                swap = next(bench.swaps(out, into, height), None)
                if swap is not None:
                    return swap
    if bench.work.exhausted:
        raise BeyondBound(
            "The search for blocks to swap reached its bound on the work.",
            fields={"max_blocks": "should be smaller"},
        )
    return None
