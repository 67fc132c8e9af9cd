"""Blocks for a height picked one after another, where some are in use already. Steps of a set."""

from bisect import bisect_right
from collections.abc import Container
from dataclasses import dataclass
from functools import cached_property

from halfangle_service.trade.stacks.search.work import Work


@dataclass(frozen=True)
class Picker:
    """Picks from blocks of these `steps`, largest first, guided by a table of the fewest blocks."""

    steps: tuple[int, ...]
    fewest: bytes

    @cached_property
    def _rising(self) -> tuple[int, ...]:
        return self.steps[::-1]

    def pick(
        self, rest: int, count: int, used: Container[int], work: Work, first: int = 0
    ) -> tuple[int, ...] | None:
        """Pick exactly `count` unused blocks that make up `rest`, an entry of the table.

        Gives positions from `first` on, the largest block as large as can be, then the next; None
        where there are none, or where `work` is exhausted. The table bounds the search: it goes on
        only where the rest is reached in time.
        """
        if count == 0:
            return () if rest == 0 else None
        if not work.take(1):
            return None
        steps, fewest = self.steps, self.fewest
        start = max(first, len(steps) - bisect_right(self._rising, rest))
        if count == 1:
            return self._alone(rest, used, start)
        for position in range(start, len(steps)):
            step = steps[position]
            if step * count < rest:
                return None
            if fewest[rest - step] >= count or position in used:
                continue
            # Of blocks alike only the first free one is tried: the others would do no better.
            if position > start and steps[position - 1] == step and position - 1 not in used:
                continue
            found = self.pick(rest - step, count - 1, used, work, position + 1)
            if found is not None:
                return (position, *found)
        return None

    def _alone(self, rest: int, used: Container[int], start: int) -> tuple[int] | None:
        """The first unused block of just this size, from the first one not larger on."""
        for position in range(start, len(self.steps)):
            if self.steps[position] != rest:
                break
            if position not in used:
                return (position,)
        return None
