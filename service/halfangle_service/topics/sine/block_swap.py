"""Which blocks of a stack to swap for another height, as few as can be. Integers of 0.1 nm.

Derived here: every subset of the blocks that stay is tried, cheapest first (blocks taken out plus
blocks put in); the table of the fewest blocks (blocks topic) tells what the rest needs at least.
"""

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations

from halfangle_service.topics.blocks.stacking import UNREACHED, StackTable, stack_table

#: Most blocks tried in one search: under a second of work.
MOST_TRIES = 500_000


@dataclass(frozen=True, slots=True)
class Swap:
    """Blocks to take out and to put in, and the stack that results; all largest first."""

    remove: tuple[int, ...]
    add: tuple[int, ...]
    stack: tuple[int, ...]


@dataclass
class _Bench:
    """The stack as it stands, the blocks left in the box, and the work that is left."""

    current: tuple[int, ...]
    spare: tuple[int, ...]
    table: StackTable
    tries_left: int = MOST_TRIES

    def swaps(self, out: int, into: int, height: int) -> Iterator[Swap]:
        """Give the swaps of exactly `out` blocks for `into` others, one a choice of blocks."""
        for removed in combinations(self.current, out):
            added = self._pick(height - sum(self.current) + sum(removed), into, 0)
            if added is not None:
                stays = Counter(self.current) - Counter(removed)
                stack = sorted([*stays.elements(), *added], reverse=True)
                yield Swap(removed, added, tuple(stack))

    def _pick(self, height: int, count: int, first: int) -> tuple[int, ...] | None:
        """Pick exactly `count` spare blocks, larger ones first; None where there are none."""
        if count == 0:
            return () if height == 0 else None
        if self.tries_left < 0 or self._at_least(height) > count:
            return None
        for position in range(first, len(self.spare)):
            size = self.spare[position]
            self.tries_left -= 1
            if size * count < height:
                return None
            if size > height or (position > first and size == self.spare[position - 1]):
                continue
            rest = self._pick(height - size, count - 1, position + 1)
            if rest is not None:
                return (size, *rest)
        return None

    def _at_least(self, height: int) -> int:
        """Fewest blocks of the whole set for a height; UNREACHED where there are none."""
        quotient, rest = divmod(height, self.table.step)
        if rest or not 0 <= quotient < len(self.table.fewest):
            return UNREACHED
        return int(self.table.fewest[quotient])


def fewest_swaps(
    current: Sequence[int], sizes: Sequence[int], heights: Iterable[int], max_blocks: int
) -> Swap | None:
    """Give the swap of the fewest blocks that turns a stack into one of `heights`.

    `current` must be among `sizes`. Of equal counts the earlier height wins, then the smaller new
    stack. None where there is no such swap, or none was found within the bound on the work.
    """
    spare = sorted((Counter(sizes) - Counter(current)).elements(), reverse=True)
    stack = tuple(sorted(current, reverse=True))
    bench = _Bench(stack, tuple(spare), stack_table(sizes, max_blocks))
    wanted = list(heights)
    for handled in range(len(stack) + max_blocks + 1):
        for height in wanted:
            for out in range(min(handled, len(stack)), -1, -1):
                into = handled - out
                if bench.tries_left < 0 or not 0 < len(stack) - out + into <= max_blocks:
                    continue
                swap = next(bench.swaps(out, into, height), None)
                if swap is not None:
                    return swap
    return None
