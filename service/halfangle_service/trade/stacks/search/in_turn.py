"""Stacks built one after another from what is left: quick, and most often all that is needed.

Heights are integers of 0.1 nm.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from itertools import product
from random import Random

from halfangle_service.trade.stacks.search.stacking import UNREACHED, StackTable
from halfangle_service.trade.stacks.search.work import Work

Stack = tuple[int, ...]

#: Blocks picked at most in one request, and for one stack.
MOST_PICKED = 30_000
_MOST_A_STACK = 500
#: How many of the heights that will do are tried.
_HEIGHTS = 24
#: Orders tried where the most stacks are wanted.
MOST_ORDERS = 100


@dataclass
class InTurn:
    """Builds stacks from the blocks of a table; `wanted` holds for each the heights that will do.

    Stacks are positions in `table.sizes`.
    """

    table: StackTable
    wanted: Sequence[Sequence[int]]
    picked: Work = field(default_factory=lambda: Work(MOST_PICKED))
    _first: dict[int, Sequence[int]] = field(default_factory=dict)

    def fewest(self, index: int) -> int:
        """Fewest blocks of one stack alone, UNREACHED where there is none."""
        heights = self._heights(index)
        return self.table.count(heights[0]) if heights else UNREACHED

    def _heights(self, index: int) -> Sequence[int]:
        """The first of the wanted heights, those of the fewest blocks first."""
        known = self._first.get(index)
        if known is None:
            wanted = self.wanted[index]
            known = wanted if len(wanted) == 1 else sorted(wanted, key=self.table.count)
            known = [height for height in known[:_HEIGHTS] if self.table.count(height) < UNREACHED]
            self._first[index] = known
        return known

    def build(self, indices: Iterable[int]) -> dict[int, Stack]:
        """Build one stack after another, passing over those for which there is nothing left."""
        used: set[int] = set()
        stacks: dict[int, Stack] = {}
        for index in indices:
            stack = self._next(index, used)
            if stack is not None:
                stacks[index] = stack
                used.update(stack)
        return stacks

    def build_most(self, indices: Sequence[int]) -> dict[int, Stack]:
        """Build stacks in many orders: of the results the best by `worth`."""
        # The same orders at every call: the same request has the same answer.
        shuffled = Random(len(indices))  # noqa: S311
        best = self.build(indices)
        order = list(indices)
        for _ in range(MOST_ORDERS):
            if self.picked.left < _MOST_A_STACK * len(indices):
                break
            shuffled.shuffle(order)
            best = min(best, self.build(order), key=worth)
        return dict(sorted(best.items()))

    def _next(self, index: int, used: set[int]) -> Stack | None:
        """Give a stack of few blocks that are not used yet."""
        table, heights = self.table, self._heights(index)
        fewest = self.fewest(index)
        for height in heights:
            sizes = table.stack(height) or ()
            if len(sizes) == fewest and used.isdisjoint(stack := table.positions(sizes)):
                return stack
        allowed = min(_MOST_A_STACK, self.picked.left)
        work = Work(allowed)
        picked = None
        for count, height in product(range(fewest, table.max_blocks + 1), heights):
            picked = table.pick(height, count, used, work)
            if picked is not None or work.exhausted:
                break
        self.picked.take(allowed - work.left)
        return picked


def worth(built: dict[int, Stack]) -> tuple[int, list[int], int]:
    """What built stacks are preferred by: the most, then those wanted earlier, then few blocks."""
    return -len(built), sorted(built), sum(map(len, built.values()))
