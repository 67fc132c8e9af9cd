"""The fewest blocks for a height, each block once, proved. Lengths are integers of 0.1 nm.

A table holds, for each height in steps of the set's smallest step, the fewest blocks that reach it:
the dynamic programme of the subset sum with a block count. It considers every combination, so a
height that it does not hold does not exist. Derived here; see Kellerer, Pferschy and Pisinger,
Knapsack Problems, 2004, chapter 4, for the method (from memory).
"""

import math
from collections.abc import Container, Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import accumulate

import numpy as np
from numpy.typing import NDArray

from halfangle_service.errors import BeyondBound
from halfangle_service.trade.stacks.search.kept import Kept
from halfangle_service.trade.stacks.search.picking import Picker
from halfangle_service.trade.stacks.search.work import Work

#: Most entries of a table (some seven bytes each while it is made). The 112-piece metric set needs
#: about 0.6 million.
MOST_STEPS = 12_000_000
#: Most entries that making a table may visit: about a second of work.
MOST_WORK = 600_000_000
#: Stands in a table for a height that no stack reaches; one more than it still fits a byte.
UNREACHED = 200
#: Tables are kept while together they stay below this many entries.
MOST_KEPT_STEPS = 12_000_000
#: Entries looked at in one go when a table is searched for the nearest height.
_STRETCH = 65_536


@dataclass(frozen=True)
class SizesInSteps:
    """Up to `max_blocks` of `sizes`, and the steps in which a table counts what they reach.

    `sizes` in 0.1 nm, in descending order, a size as often as there are blocks of it.
    """

    sizes: tuple[int, ...]
    max_blocks: int

    @cached_property
    def step(self) -> int:
        """Smallest step in 0.1 nm: the greatest common divisor of all sizes."""
        return math.gcd(*self.sizes)

    @cached_property
    def reach(self) -> int:
        """The highest stack, in steps: all the blocks allowed, the largest."""
        return sum(self.sizes[: self.max_blocks]) // self.step


@dataclass(frozen=True)
class StackTable(SizesInSteps):
    """The fewest blocks for every height that so many blocks reach."""

    @cached_property
    def length(self) -> int:
        """Entries of the table: the highest stack in steps, and one for nothing at all."""
        return self.reach + 1

    @cached_property
    def _reach_of_each(self) -> list[int]:
        """For each block, smallest first: the highest stack in steps of it and smaller ones."""
        upward = [size // self.step for size in reversed(self.sizes)]
        sums = [0, *accumulate(upward)]
        most = self.max_blocks
        return [sums[end] - sums[max(end - most, 0)] for end in range(1, len(sums))]

    @property
    def work(self) -> int:
        """Entries that making the table visits: the bound on it is counted in these."""
        return sum(self._reach_of_each)

    @cached_property
    def bounded(self) -> bool:
        """False where the table would be too long, or too much work to make."""
        return self.length <= MOST_STEPS and self.work <= MOST_WORK

    def require_bounded(self) -> None:
        """Raise BeyondBound where the table would be too long, or too much work to make."""
        if self.bounded:
            return
        raise BeyondBound(
            f"{len(self.sizes)} blocks with a common step of {self.step / 1e7:.7f} mm have "
            f"{self.length} heights up to the highest stack; at most {MOST_STEPS} heights, and "
            f"{MOST_WORK} heights times blocks, are taken. Round the sizes to their nominals.",
            fields={"sizes": f"should share a coarser step than {self.step / 1e7:.7f} mm"},
        )

    @cached_property
    def _keys(self) -> NDArray[np.unsignedinteger]:
        """For each height in steps one key: the fewest blocks, and which of them is the largest.

        A key is the count times a base, plus the base less one less the block's number (from the
        smallest): of equal counts the larger block makes the smaller key. Blocks join from the
        smallest up, so that only heights already in reach are visited.
        """
        self.require_bounded()
        narrow = len(self.sizes) < 256
        kind: type[np.unsignedinteger] = np.uint16 if narrow else np.uint32
        base = kind(256 if narrow else 65_536)
        counts = ~(base - kind(1))
        keys = np.full(self.length, UNREACHED * base, kind)
        keys[0] = 0
        reach_before = 0
        for number, (size, reach) in enumerate(
            zip(reversed(self.sizes), self._reach_of_each, strict=True)
        ):
            step = size // self.step
            top = min(reach_before, self.length - 1 - step)
            # A copy of the counts before this block: each block is used at most once.
            with_block = keys[: top + 1] & counts
            with_block += base + (base - kind(1) - kind(number))
            target = keys[step : step + top + 1]
            np.minimum(target, with_block, out=target)
            reach_before = reach
        return keys

    @cached_property
    def _tables(self) -> tuple[NDArray[np.uint8], NDArray[np.uint8] | NDArray[np.uint16]]:
        """Fewest blocks for each height, and the position of the largest of them."""
        keys = self._keys
        bits = 8 * keys.itemsize // 2
        fewest = (keys >> bits).astype(np.uint8)
        fewest[fewest > self.max_blocks] = UNREACHED
        # A key counts blocks from the smallest, downward from the base; positions from the largest.
        keys &= keys.dtype.type((1 << bits) - 1)
        keys -= keys.dtype.type((1 << bits) - len(self.sizes))
        del self.__dict__["_keys"]
        return fewest, keys.astype(np.uint16) if bits > 8 else keys.astype(np.uint8)

    @property
    def fewest(self) -> NDArray[np.uint8]:
        """For each height in steps: the fewest blocks, UNREACHED where none of up to max_blocks.

        Raises BeyondBound where the table would be too long.
        """
        return self._tables[0]

    @cached_property
    def _lookup(self) -> bytes:
        """The table as bytes: looking up one entry is several times faster than in an array."""
        return self.fewest.tobytes()

    @cached_property
    def _walk(self) -> tuple[bytes, memoryview, tuple[int, ...], tuple[int, ...], int]:
        """What walking down a stack needs: counts, largest blocks, sizes, sizes in steps, step."""
        return self._lookup, self._tables[1].data, self.sizes, self._picker.steps, self.step

    @cached_property
    def _picker(self) -> Picker:
        """Picks from the same blocks where the table alone does not name them."""
        return Picker(tuple(size // self.step for size in self.sizes), self._lookup)

    def count(self, height: int) -> int:
        """Fewest blocks for a height in 0.1 nm, 0 for no height, UNREACHED where there are none."""
        quotient, rest = divmod(height, self.step)
        if rest or not 0 <= quotient < self.length:
            return UNREACHED
        return self._lookup[quotient]

    def stack(self, height: int) -> tuple[int, ...] | None:
        """Give a stack of the fewest blocks for a height in 0.1 nm, largest first, or None.

        Of several it is the one whose largest block is the largest, then the next, and so on.
        """
        lookup, largest, sizes, steps, step = self._walk
        quotient, rest = divmod(height, step)
        if rest or not 0 < quotient < len(lookup):
            return None
        count = lookup[quotient]
        if count == UNREACHED:
            return None
        blocks = []
        before = -1
        while quotient:
            position = largest[quotient]
            if position <= before:  # the rest's own stack would use a block twice
                picked = self.pick(height, count, (), Work(MOST_WORK))
                return None if picked is None else tuple([sizes[place] for place in picked])
            before = position
            blocks.append(sizes[position])
            quotient -= steps[position]
        return tuple(blocks)

    @cached_property
    def _first_at(self) -> dict[int, int]:
        """Position of the first block of each size."""
        return {size: place for place, size in reversed(list(enumerate(self.sizes)))}

    def positions(self, stack: Sequence[int]) -> tuple[int, ...]:
        """Give the positions in `sizes` of a stack's blocks, largest first, each used once."""
        first_at, places, last = self._first_at, [], -1
        for size in stack:
            place = first_at[size]
            # Blocks of a size stand next to each other: a second one comes after the first.
            last = place if place > last else last + 1
            places.append(last)
        return tuple(places)

    def pick(
        self, height: int, count: int, used: Container[int], work: Work
    ) -> tuple[int, ...] | None:
        """Give a stack of exactly `count` blocks that are not `used`, as positions in `sizes`.

        None where there is none, or where `work` is exhausted.
        """
        if self.count(height) > count:
            return None
        return self._picker.pick(height // self.step, count, used, work)

    def nearest(self, height: int) -> tuple[tuple[int, ...] | None, tuple[int, ...] | None]:
        """Give the stacks nearest to a height in 0.1 nm: at or below it, and at or above it."""
        below = self._reached_from(min(height // self.step, self.length - 1), downward=True)
        above = self._reached_from(max(-(-height // self.step), 1), downward=False)
        return (
            self.stack(below * self.step) if below else None,
            self.stack(above * self.step) if above else None,
        )

    def _reached_from(self, start: int, *, downward: bool) -> int | None:
        """The first height in steps that is reached, from `start` on; None where there is none."""
        while 1 <= start < self.length:
            if downward:
                stretch = self.fewest[max(start - _STRETCH, 0) + 1 : start + 1][::-1]
            else:
                stretch = self.fewest[start : start + _STRETCH]
            hits = np.flatnonzero(stretch != UNREACHED)
            if len(hits):
                return start - int(hits[0]) if downward else start + int(hits[0])
            start += -_STRETCH if downward else _STRETCH
        return None

    def best_within(self, height: int, tolerance: int) -> tuple[int, int] | None:
        """Give (blocks, height) of the fewest blocks within a tolerance, and of these the nearest.

        All in 0.1 nm; None where no stack comes within it.
        """
        first = max(-(-(height - tolerance) // self.step), 1)
        stretch = self.fewest[first : max((height + tolerance) // self.step + 1, first)]
        if len(stretch) == 0 or (count := int(stretch.min())) == UNREACHED:
            return None
        reached = (np.flatnonzero(stretch == count) + first) * self.step
        return count, int(reached[np.abs(reached - height).argmin()])

    def within(self, low: int, high: int) -> Iterator[tuple[int, int]]:
        """Give each height from `low` to `high` (0.1 nm) that is reached, and its fewest blocks."""
        first = max(-(-low // self.step), 1)
        last = min(high // self.step, self.length - 1)
        for start in range(first, last + 1, _STRETCH):
            stretch = self.fewest[start : min(start + _STRETCH, last + 1)]
            for hit in np.flatnonzero(stretch != UNREACHED).tolist():
                yield (start + hit) * self.step, int(stretch[hit])


_KEPT: Kept[tuple[tuple[int, ...], int], StackTable] = Kept(
    lambda key: StackTable(*key), lambda table: table.length, MOST_KEPT_STEPS
)


def stack_table(sizes: Sequence[int], max_blocks: int) -> StackTable:
    """Give the table of a set, made once and kept; `sizes` in 0.1 nm, one entry a block."""
    return ordered_table(tuple(sorted(sizes, reverse=True)), max_blocks)


def ordered_table(sizes: tuple[int, ...], max_blocks: int) -> StackTable:
    """Give the same for sizes that are in descending order already."""
    return _KEPT.get((sizes, min(max_blocks, len(sizes))))
