"""The stack whose actual height is nearest to a wanted one, exactly. Integers of 0.1 nm.

Every stack of up to three blocks (two of a very large box, more of a small one) is listed once,
sorted by its actual height; a stack of up to twice as many is one of these with up to as many more.
For each such first part the list is searched for what comes nearest to the rest, and stacks are
then given in the order of their error: those that would use a block twice are passed over. No
combination is left out, so the order is exact. Derived here (meet in the middle: Horowitz and
Sahni, 1974, from memory).
"""

import heapq
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property, lru_cache
from itertools import accumulate
from math import comb

import numpy as np
from numpy.typing import NDArray

from halfangle_service.topics.blocks.layers import Work

Longs = NDArray[np.int64]

#: Most parts listed: the triples of 200 blocks; of more blocks pairs alone are listed.
MOST_PARTS = 1_350_000
#: Most blocks of one stack, and so the widest part that is of use.
MOST_IN_STACK = 8
#: Most candidate stacks looked at in one request: under half a second.
MOST_CANDIDATES = 100_000
#: Beginnings this near (0.1 nm) to the best one are sorted first, the others only if needed.
_NEAR = 20


@dataclass(frozen=True, slots=True)
class Parts:
    """Combinations of blocks sorted by height: `heights`, and the `positions` of the blocks.

    A combination of fewer blocks than the widest has −1 in place of the others.
    """

    heights: Longs
    positions: NDArray[np.int16]


@dataclass(frozen=True)
class MeasuredBlocks:
    """A box of blocks by their actual `lengths`, one entry a block."""

    lengths: tuple[int, ...]

    @property
    def most_exact(self) -> int:
        """Most blocks in a stack for which the nearest height is found exactly."""
        return min(2 * self._widest, MOST_IN_STACK)

    @cached_property
    def _widest(self) -> int:
        """Blocks of the widest parts listed; 2 at the least."""
        parts = accumulate(comb(len(self.lengths), width) for width in range(MOST_IN_STACK + 1))
        return max(2, sum(total <= MOST_PARTS for total in parts) - 1)

    @cached_property
    def _by_count(self) -> tuple[Parts, ...]:
        """Parts of no block, of one, of two and so on up to the widest."""
        parts = [Parts(np.zeros(1, np.int64), np.zeros((1, 0), np.int16))]
        for _ in range(self._widest):
            parts.append(_with_one_more(parts[-1], self.lengths))
        return tuple(parts)

    @cached_property
    def up_to(self) -> tuple[Parts, ...]:
        """Parts of at most no block, one, two and so on up to the widest."""
        parts = self._by_count
        merged = tuple(_merged(parts[:width]) for width in range(1, len(parts) + 1))
        del self.__dict__["_by_count"]  # the same parts again, and many of them
        return merged

    def nearest(
        self, target: int, most_blocks: int, work: Work
    ) -> Iterator[tuple[int, tuple[int, ...]]]:
        """Give stacks as (error, positions ascending), from the least absolute error on.

        The error is actual less wanted height. Counts go from 1 to `most_blocks`, at most
        `most_exact`. A set of blocks comes once. Ends early where `work` is exhausted.
        """
        more = min(max(most_blocks - self._widest, 0), self._widest)
        first, second = self.up_to[more], self.up_to[min(most_blocks, self._widest)]
        seen: set[tuple[int, ...]] = {()}
        for error, start, end in _matches(first.heights, second.heights, target, work):
            blocks = [*first.positions[start].tolist(), *second.positions[end].tolist()]
            stack = tuple(sorted(position for position in blocks if position >= 0))
            if stack not in seen and len(set(stack)) == len(stack):
                seen.add(stack)
                yield error, stack


def _matches(
    first: Longs, second: Longs, target: int, work: Work
) -> Iterator[tuple[int, int, int]]:
    """Give (error, index in first, index in second) from the least absolute error of the sum on.

    For each entry of `first` two streams run from where its rest falls into `second`, one upward
    and one downward; a heap takes the least of all streams.
    """
    starts = _starts(first, second, target)
    heap: list[tuple[int, int, int, int]] = []
    upcoming = next(starts, None)
    while heap or upcoming:
        while upcoming and (not heap or upcoming[0] <= heap[0][0]):
            _, start, above = upcoming
            for end, direction in ((above, 1), (above - 1, -1)):
                if 0 <= end < len(second):
                    error = int(first[start]) + int(second[end]) - target
                    heapq.heappush(heap, (abs(error), start, end, direction))
            upcoming = next(starts, None)
        if not work.take(1):
            return
        gap, start, end, direction = heap[0]
        yield gap * direction, start, end
        end += direction
        if 0 <= end < len(second):
            error = int(first[start]) + int(second[end]) - target
            heapq.heapreplace(heap, (abs(error), start, end, direction))
        else:
            heapq.heappop(heap)


def _starts(first: Longs, second: Longs, target: int) -> Iterator[tuple[int, int, int]]:
    """Give (gap, index in first, index in second of the least entry not below the rest).

    They come from the least gap on, the gap being that of the nearest entry of `second`, whose
    least entry is no block at all. First parts beyond the target are not searched for: the higher
    they are, the farther off.
    """
    fitting = int(first.searchsorted(target, "right"))
    beyond = ((int(first[i]) - target, i, 0) for i in range(fitting, len(first)))
    return heapq.merge(_fitting_starts(first[:fitting], second, target), beyond)


def _fitting_starts(first: Longs, second: Longs, target: int) -> Iterator[tuple[int, int, int]]:
    """Give the starts of first parts that are not higher than the target."""
    # The rests fall as the first parts grow: searched in rising order they are faster to find.
    rests = target - first[::-1]
    above = second.searchsorted(rests)
    gaps = np.abs(second.take(above, mode="clip") - rests)
    np.minimum(gaps, rests - second.take(above - 1, mode="clip"), out=gaps)
    for index in _in_order(gaps):
        yield int(gaps[index]), len(first) - 1 - index, int(above[index])


def _in_order(gaps: Longs) -> Iterator[int]:
    """Give all indices from the least gap on; at first only those near the least are sorted."""
    if len(gaps) == 0:
        return
    near = gaps <= 2 * gaps.min() + _NEAR
    few = near.nonzero()[0]
    yield from few[gaps[few].argsort(kind="stable")].tolist()
    order = gaps.argsort(kind="stable")
    yield from order[~near[order]].tolist()


def _with_one_more(parts: Parts, lengths: Sequence[int]) -> Parts:
    """Add to each part one block behind its last."""
    last = np.full(1, -1) if parts.positions.shape[1] == 0 else parts.positions[:, -1].astype(int)
    extensions = len(lengths) - 1 - last
    origin = np.repeat(np.arange(len(last)), extensions)
    begin = np.cumsum(extensions) - extensions
    added = np.arange(len(origin)) - begin[origin] + last[origin] + 1
    heights = parts.heights[origin] + np.array(lengths, np.int64)[added]
    positions = np.column_stack([parts.positions[origin], added.astype(np.int16)])
    return Parts(heights, positions)


def _merged(parts: Sequence[Parts]) -> Parts:
    """Put parts of different counts into one list, sorted by height, fewer blocks first."""
    widest = parts[-1].positions.shape[1]
    heights = np.concatenate([part.heights for part in parts])
    order = np.argsort(heights, kind="stable")
    padded = [
        np.pad(part.positions, ((0, 0), (0, widest - part.positions.shape[1])), constant_values=-1)
        for part in parts
    ]
    return Parts(heights[order], np.concatenate(padded)[order])


@lru_cache(maxsize=3)
def measured_blocks(lengths: tuple[int, ...]) -> MeasuredBlocks:
    """Give the lists of a box, made once and kept; actual lengths in 0.1 nm, one a block."""
    return MeasuredBlocks(lengths)
