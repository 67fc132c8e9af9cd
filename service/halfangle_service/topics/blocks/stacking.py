"""The fewest blocks for a height, each block once, proved. Lengths are integers of 0.1 nm.

A table holds, for each height in steps of the set's smallest step, the fewest blocks that reach it:
the dynamic programme of the subset sum with a block count. It considers every combination, so a
height that it does not hold does not exist. Derived here; see Kellerer, Pferschy and Pisinger,
Knapsack Problems, 2004, chapter 4, for the method (from memory).
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property, lru_cache

import numpy as np
from numpy.typing import NDArray

from halfangle_service.errors import BeyondBound

#: Most entries of a table (one byte each). The 112-piece metric set needs about 1.5 million.
MOST_STEPS = 40_000_000
#: Stands in a table for a height that no stack reaches; one more than it still fits a byte.
UNREACHED = 200


@dataclass(frozen=True)
class StackTable:
    """The fewest blocks for every height that up to `max_blocks` of `sizes` reach.

    `sizes` in 0.1 nm, in descending order, a size as often as there are blocks of it.
    """

    sizes: tuple[int, ...]
    max_blocks: int

    @cached_property
    def step(self) -> int:
        """Smallest step in 0.1 nm: the greatest common divisor of all sizes."""
        return math.gcd(*self.sizes)

    @cached_property
    def fewest(self) -> NDArray[np.uint8]:
        """For each height in steps: the fewest blocks, UNREACHED where none of up to max_blocks.

        Raises BeyondBound where the table would be too long.
        """
        steps = [size // self.step for size in self.sizes]
        length = sum(steps[: self.max_blocks]) + 1
        if length > MOST_STEPS:
            raise BeyondBound(
                f"These sizes have {length} steps of {self.step / 1e7:g} mm up to the highest "
                f"stack; at most {MOST_STEPS} are taken. Round the sizes to their nominals.",
                fields={"sizes": f"should share a coarser step than {self.step / 1e7:g} mm"},
            )
        table = np.full(length, UNREACHED, np.uint8)
        table[0] = 0
        for step in steps:
            # One block more than the table before this block: each block is used at most once.
            np.minimum(table[step:], table[: length - step] + np.uint8(1), out=table[step:])
        table[table > self.max_blocks] = UNREACHED
        return table

    @cached_property
    def _lookup(self) -> bytes:
        """The table as bytes: looking up one entry is several times faster than in an array."""
        return self.fewest.tobytes()

    def stack(self, height: int) -> tuple[int, ...] | None:
        """Give a stack of the fewest blocks for a height in 0.1 nm, largest first, or None."""
        quotient, rest = divmod(height, self.step)
        table = self._lookup
        if rest or not 0 < quotient < len(table) or table[quotient] == UNREACHED:
            return None
        return self._pick(height, table[quotient], 0)

    def _pick(self, height: int, count: int, first: int) -> tuple[int, ...] | None:
        """Pick `count` blocks from `sizes[first:]`, larger ones first; None where there are none.

        The table bounds the search: it goes on only where the rest is reached in time.
        """
        if count == 0:
            return () if height == 0 else None
        for position in range(first, len(self.sizes)):
            size = self.sizes[position]
            if size * count < height:
                return None
            if size > height or self._lookup[(height - size) // self.step] > count - 1:
                continue
            rest = self._pick(height - size, count - 1, position + 1)
            if rest is not None:
                return (size, *rest)
        return None

    def nearest(self, height: int) -> tuple[tuple[int, ...] | None, tuple[int, ...] | None]:
        """Give the stacks nearest to a height in 0.1 nm: at or below it, and at or above it."""
        reached = np.flatnonzero(self.fewest != UNREACHED)[1:] * self.step
        position = int(np.searchsorted(reached, height))
        above = self.stack(int(reached[position])) if position < len(reached) else None
        if position < len(reached) and reached[position] == height:
            return above, above
        below = self.stack(int(reached[position - 1])) if position > 0 else None
        return below, above


@lru_cache(maxsize=32)
def _table(sizes: tuple[int, ...], max_blocks: int) -> StackTable:
    return StackTable(sizes, max_blocks)


def stack_table(sizes: Sequence[int], max_blocks: int) -> StackTable:
    """Give the table of a set, made once and kept; `sizes` in 0.1 nm, one entry a block."""
    return _table(tuple(sorted(sizes, reverse=True)), min(max_blocks, len(sizes)))
