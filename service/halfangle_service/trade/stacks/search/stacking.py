"""The fewest blocks for a height, each block once, proved. Lengths are integers of 0.1 nm.

A table holds, for each height in steps of the set's smallest step, the fewest blocks that reach it:
the dynamic programme of the subset sum with a block count. It considers every combination, so a
height that it does not hold does not exist. While it is made, an entry is the set of the counts
that reach its height, a bit each: one more block is a shift of the heights and of the bits. Derived
here; see Kellerer, Pferschy and Pisinger, Knapsack Problems, 2004, chapter 4, for the method (from
memory).
"""

import math
from collections import Counter
from collections.abc import Container, Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property, lru_cache
from itertools import accumulate

import numpy as np
from numpy.typing import NDArray

from halfangle_service.errors import BeyondBound
from halfangle_service.trade.stacks.search.kept import Kept
from halfangle_service.trade.stacks.search.picking import Picker
from halfangle_service.trade.stacks.search.work import Work

#: Most entries of a table (three bytes each while it is made). The 112-piece metric set needs
#: about 0.6 million.
MOST_STEPS = 12_000_000
#: Most entries that making a table may visit: about a second of work.
MOST_WORK = 600_000_000
#: Stands in a table for a height that no stack reaches.
UNREACHED = 200
#: Counts of blocks that reach a height, a bit each from one block on.
COUNTS = np.uint8
#: The counts of a block by itself.
ALONE = COUNTS(1)
#: Most blocks of a stack: as many counts as there are bits.
MOST_COUNTED = 8
#: Tables are kept while together they stay below this many entries.
MOST_KEPT_STEPS = 12_000_000
#: Heights in steps up to which a table is made at first; then it goes on by this part beyond what
#: is asked for.
_AT_FIRST, _LONGER = 131_072, 8
#: Blocks picked at most before a table of those left is made: at least so many, and one more for so
#: many entries that making it would visit.
_MOST_PICKED, _WORK_OF_A_PICK = 50, 20_000
#: Entries looked at in one go when a table is searched for the nearest height.
_STRETCH = 65_536


def one_more(counts: NDArray[np.uint8]) -> NDArray[np.uint8]:
    """The counts with one block more; what passes the most counted falls out."""
    return counts + counts


def fewest_of(counts: NDArray[np.uint8], max_blocks: int) -> bytes:
    """The least of each entry's counts up to `max_blocks`, UNREACHED where there is none.

    The first entry is no height: no block at all reaches it.
    """
    return b"\0" + counts[1:].tobytes().translate(_least_counts(max_blocks))


@lru_cache(maxsize=MOST_COUNTED + 1)
def _least_counts(max_blocks: int) -> bytes:
    """For each set of counts the least of them up to `max_blocks`, else UNREACHED."""
    least = [(bits & -bits).bit_length() for bits in range(1 << MOST_COUNTED)]
    return bytes([count if 0 < count <= max_blocks else UNREACHED for count in least])


@dataclass(frozen=True)
class SizesInSteps:
    """Up to `max_blocks` of `sizes`, and the steps in which a table counts what they reach.

    `sizes` in 0.1 nm, in descending order, a size as often as there are blocks of it.
    """

    sizes: tuple[int, ...]
    max_blocks: int

    def __post_init__(self) -> None:
        """Refuse what a table has no room for."""
        if self.max_blocks > MOST_COUNTED:
            raise ValueError(
                f"A table counts stacks of up to {MOST_COUNTED} blocks, not of {self.max_blocks}."
            )

    @cached_property
    def step(self) -> int:
        """Smallest step in 0.1 nm: the greatest common divisor of all sizes."""
        return math.gcd(*self.sizes)

    @cached_property
    def reach(self) -> int:
        """The highest stack, in steps: all the blocks allowed, the largest."""
        return sum(self.sizes[: self.max_blocks]) // self.step

    @cached_property
    def reach_of_each(self) -> list[int]:
        """For each block, smallest first: the highest stack in steps of it and smaller ones."""
        upward = [size // self.step for size in reversed(self.sizes)]
        sums = [0, *accumulate(upward)]
        most = self.max_blocks
        return [sums[end] - sums[max(end - most, 0)] for end in range(1, len(sums))]

    @property
    def work(self) -> int:
        """Entries that making a whole table visits: the bound on it is counted in these."""
        return sum(self.reach_of_each)

    def work_to(self, top: int) -> int:
        """Entries that making a table up to so many steps visits."""
        return sum(min(reach, top) for reach in self.reach_of_each)


@dataclass(frozen=True, slots=True)
class _Part:
    """A table up to some height, in steps from none at all on.

    `lookup` holds the fewest blocks, UNREACHED where none of up to max_blocks; bytes, since looking
    up one entry is several times faster than in an array, which `fewest` is of the same. `picker`
    names the blocks of a stack, of which the table says only how many there are.
    """

    lookup: bytes
    fewest: NDArray[np.uint8]
    picker: Picker


@dataclass(frozen=True)
class StackTable(SizesInSteps):
    """The fewest blocks for every height that so many blocks reach, made as far as is asked for."""

    @cached_property
    def length(self) -> int:
        """Entries of the table: the highest stack in steps, and one for nothing at all."""
        return self.reach + 1

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
    def _parts(self) -> list[_Part]:
        """The table as far as it was asked for: one entry, put in place of a shorter one.

        What is asked for is seldom near the highest stack's height.
        """
        return [self._made(min(_AT_FIRST, self.reach))]

    @property
    def held(self) -> int:
        """Entries that are held of the table."""
        return len(self._parts[0].lookup) if "_parts" in self.__dict__ else 1

    @property
    def fewest(self) -> NDArray[np.uint8]:
        """Fewest blocks for each height in steps, up to the highest one that was asked for."""
        return self._parts[0].fewest

    def _to(self, height: int) -> _Part:
        """The table up to a height in steps that some stack may have.

        Raises BeyondBound where the whole table would be too long.
        """
        part = self._parts[0]
        if height >= len(part.lookup):
            longer = max(height + height // _LONGER, 2 * len(part.lookup))
            self._parts[0] = part = self._made(min(longer, self.reach))
        return part

    def _made(self, top: int) -> _Part:
        """Make the table up to a height in steps."""
        self.require_bounded()
        counts = np.zeros(top + 1, COUNTS)
        reach_before = 0
        # Blocks join from the smallest up, so that only heights already in reach are visited.
        for size, reach in zip(reversed(self.sizes), self.reach_of_each, strict=True):
            step = size // self.step
            if step > top:
                break
            last = min(reach_before, top - step)
            # Made before any is written: each block is used at most once.
            with_block = one_more(counts[: last + 1])
            counts[step : step + last + 1] |= with_block
            counts[step] |= ALONE
            reach_before = reach
        lookup = fewest_of(counts, self.max_blocks)
        return _Part(lookup, np.frombuffer(lookup, np.uint8), Picker(self._steps, lookup))

    @cached_property
    def _steps(self) -> tuple[int, ...]:
        return tuple(size // self.step for size in self.sizes)

    def count(self, height: int) -> int:
        """Fewest blocks for a height in 0.1 nm, 0 for no height, UNREACHED where there are none."""
        quotient, rest = divmod(height, self.step)
        if rest or not 0 <= quotient <= self.reach:
            return UNREACHED
        return self._to(quotient).lookup[quotient]

    def stack(self, height: int) -> tuple[int, ...] | None:
        """Give a stack of the fewest blocks for a height in 0.1 nm, largest first, or None.

        Of several it is the one whose largest block is the largest, then the next, and so on.
        """
        count = self.count(height)
        if not 0 < count < UNREACHED:
            return None
        picked = self.pick(height, count, (), Work(MOST_WORK))
        return None if picked is None else tuple([self.sizes[place] for place in picked])

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
        steps = height // self.step
        return self._to(steps).picker.pick(steps, count, used, work)

    def stack_of(self, left: Sequence[int], height: int) -> tuple[int, ...] | None:
        """Give the stack that a table of the blocks `left` would give, some of this table's own.

        They are picked by this table, unless that takes more work than to make theirs.
        """
        gone = Counter(self.sizes)
        gone.subtract(left)
        first_at = self._first_at
        used = {first_at[size] + nth for size, count in gone.items() for nth in range(count)}
        work = Work(_MOST_PICKED + self.work // _WORK_OF_A_PICK)
        for count in range(self.count(height), self.max_blocks + 1):
            picked = self.pick(height, count, used, work)
            if picked is not None:
                return tuple([self.sizes[place] for place in picked])
            if work.exhausted:
                return stack_table(left, self.max_blocks).stack(height) if left else None
        return None

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
                part = self._to(start)
                stretch = part.fewest[max(start - _STRETCH, 0) + 1 : start + 1][::-1]
            else:
                part = self._to(min(start + _STRETCH, self.reach))
                stretch = part.fewest[start : start + _STRETCH]
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
        behind = max((height + tolerance) // self.step + 1, first)
        stretch = self._to(min(behind, self.reach)).fewest[first:behind]
        if len(stretch) == 0 or (count := int(stretch.min())) == UNREACHED:
            return None
        reached = (np.flatnonzero(stretch == count) + first) * self.step
        return count, int(reached[np.abs(reached - height).argmin()])

    def within(self, low: int, high: int) -> Iterator[tuple[int, int]]:
        """Give each height from `low` to `high` (0.1 nm) that is reached, and its fewest blocks."""
        first = max(-(-low // self.step), 1)
        last = min(high // self.step, self.length - 1)
        for start in range(first, last + 1, _STRETCH):
            stretch = self._to(last).fewest[start : min(start + _STRETCH, last + 1)]
            for hit in np.flatnonzero(stretch != UNREACHED).tolist():
                yield (start + hit) * self.step, int(stretch[hit])


_KEPT: Kept[tuple[tuple[int, ...], int], StackTable] = Kept(
    lambda key: StackTable(*key), lambda table: table.held, MOST_KEPT_STEPS
)


def stack_table(sizes: Sequence[int], max_blocks: int) -> StackTable:
    """Give the table of a set, made once and kept; `sizes` in 0.1 nm, one entry a block."""
    return ordered_table(tuple(sorted(sizes, reverse=True)), max_blocks)


def ordered_table(sizes: tuple[int, ...], max_blocks: int) -> StackTable:
    """Give the same for sizes that are in descending order already."""
    return _KEPT.get((sizes, min(max_blocks, len(sizes))))
