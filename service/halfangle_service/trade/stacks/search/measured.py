"""The stack whose actual height is nearest to a wanted one, exactly. Integers of 0.1 nm.

Every stack of up to three blocks (two of a very large box, more of a small one) is listed once,
sorted by its actual height; a stack of up to twice as many is one of these, its first part, with up
to as many more. The list is searched for what comes within a margin of the rest of a first part,
and the margin is widened until there are stacks enough. Only first parts that can hold the longest
blocks of a stack are searched with, since each stack has one such part: no combination is left out,
so the order is exact. Derived here (meet in the middle: Horowitz and Sahni, 1974, from memory).
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import accumulate

import numpy as np
from numpy.typing import NDArray

from halfangle_service.trade.stacks.search.kept import Kept
from halfangle_service.trade.stacks.search.work import Work

Longs = NDArray[np.int64]
#: A stack as (error, index of its first part, index of what follows).
Match = tuple[int, int, int]

#: Most parts listed: the triples of 200 blocks; of more blocks pairs alone are listed.
MOST_PARTS = 1_350_000
#: Most parts of all boxes together that are kept for the next request: 35 MB.
MOST_KEPT_PARTS = 1_600_000
#: Most blocks of one stack, and so the widest part that is of use.
MOST_IN_STACK = 8
#: Most candidate stacks looked at in one request: under half a second.
MOST_CANDIDATES = 100_000
#: Errors in 0.1 nm that are looked for first: half of a step of the usual sets and less.
_NEAR = 5_000
#: How many times wider the next margin is where one left too few stacks.
_WIDER = 8
#: Most stacks that are put in order at once; a margin that holds more is narrowed.
_MOST_SORTED = 20_000


@dataclass(frozen=True, slots=True)
class Parts:
    """Combinations of blocks sorted by height: `heights`, and the `kinds` of the blocks, ascending.

    A combination of fewer blocks than the widest has −1 in place of the others. `highest` is the
    height of the highest stack of which it holds the longest blocks.
    """

    heights: Longs
    kinds: NDArray[np.int16]
    highest: Longs


@dataclass(frozen=True)
class MeasuredBlocks:
    """A box of blocks by their actual `lengths`, one entry a kind, of which there are `copies`."""

    lengths: tuple[int, ...]
    copies: tuple[int, ...]

    @property
    def most_exact(self) -> int:
        """Most blocks in a stack for which the nearest height is found exactly."""
        return min(2 * self._widest, MOST_IN_STACK)

    @cached_property
    def _widest(self) -> int:
        """Blocks of the widest parts listed; 2 at the least."""
        parts = accumulate(_how_many(self.copies, MOST_IN_STACK))
        return max(2, sum(total <= MOST_PARTS for total in parts) - 1)

    @cached_property
    def size(self) -> int:
        """How many parts are listed."""
        return sum(_how_many(self.copies, self._widest))

    @cached_property
    def up_to(self) -> tuple[Parts, ...]:
        """Parts of at most no block, one, two and so on up to the widest."""
        every = np.array([np.iinfo(np.int64).max])
        exactly = [Parts(np.zeros(1, np.int64), np.zeros((1, 0), np.int16), every)]
        for _ in range(self._widest):
            exactly.append(self._with_one_more(exactly[-1]))
        return tuple(_merged(exactly[:width]) for width in range(1, len(exactly) + 1))

    def highest(self, most_blocks: int) -> int:
        """Actual height of the highest stack of up to so many blocks."""
        each = zip(self.lengths, self.copies, strict=True)
        every = sorted((length for length, count in each for _ in range(count)), reverse=True)
        return sum(every[:most_blocks])

    def nearest(
        self, target: int, most_blocks: int, work: Work, farthest: int | None = None
    ) -> Iterator[tuple[int, tuple[int, ...]]]:
        """Give stacks as (error, kinds ascending), from the least absolute error on.

        The error is actual less wanted height, at most `farthest` either way. Counts go from 1 to
        `most_blocks`, at most `most_exact`. A stack comes once. Ends early where `work` is
        exhausted.
        """
        more = min(max(most_blocks - self._widest, 0), self._widest)
        first, second = self.up_to[more], self.up_to[min(most_blocks, self._widest)]
        seen: set[tuple[int, ...]] = {()}
        for error, start, end in _matches(first, second, target, work):
            if (farthest is not None and abs(error) > farthest) or not work.take(1):
                return
            blocks = [*first.kinds[start].tolist(), *second.kinds[end].tolist()]
            stack = tuple(sorted([kind for kind in blocks if kind >= 0]))
            if stack not in seen and self._has(stack):
                seen.add(stack)
                yield error, stack

    def _has(self, stack: Sequence[int]) -> bool:
        """True where there are as many blocks of each kind as the stack takes."""
        kinds = set(stack)
        return len(kinds) == len(stack) or all(stack.count(k) <= self.copies[k] for k in kinds)

    def _with_one_more(self, parts: Parts) -> Parts:
        """Add to each part one block of its last kind, if there is one left, or of one behind."""
        if parts.kinds.shape[1]:
            last = parts.kinds[:, -1].astype(int)
            taken = (parts.kinds == parts.kinds[:, -1:]).sum(axis=1)
            begin = last + (taken >= np.array(self.copies)[last])
        else:
            begin = np.zeros(1, int)
        extensions = len(self.lengths) - begin
        origin = np.repeat(np.arange(len(begin)), extensions)
        before = np.cumsum(extensions) - extensions
        added = np.arange(len(origin)) - before[origin] + begin[origin]
        blocks = np.array(self.lengths, np.int64)[added]
        heights = parts.heights[origin] + blocks
        kinds = np.column_stack([parts.kinds[origin], added.astype(np.int16)])
        # No block that follows is longer than the shortest: the part is to hold the longest ones.
        room = (parts.highest - parts.heights)[origin] // self._widest
        return Parts(heights, kinds, heights + self._widest * np.minimum(room, blocks))


@dataclass(frozen=True, slots=True)
class _Candidates:
    """Stacks as ranges: first part `starts[k]` with all of `lows[k]` up to before `highs[k]`."""

    starts: NDArray[np.intp]
    lows: NDArray[np.intp]
    highs: NDArray[np.intp]

    @property
    def total(self) -> int:
        """How many stacks there are in all."""
        return int((self.highs - self.lows).sum())


def _matches(first: Parts, second: Parts, target: int, work: Work) -> Iterator[Match]:
    """Give all stacks from the least absolute error on; one may come several times.

    Searching is work as well: it ends early where `work` is exhausted.
    """
    farthest = target + int(first.heights[-1] + second.heights[-1]) + 1
    if not work.take(_cost(len(first.heights), 0)):
        return
    nearest = _nearest(first, second, target)
    yield from nearest
    if nearest:
        near = abs(nearest[0][0])
        width = _WIDER * (near + 1)
    elif not work.take(_cost(len(first.heights), len(first.heights))):
        return
    else:  # none is within `_NEAR`: the search goes on from where the nearest of all may be
        near, width = _least_gap(first, second, target), _NEAR
    while near < farthest and not work.exhausted:
        found = _candidates(first, second, target, near, near + width)
        if not work.take(_cost(len(first.heights), len(found.starts))):
            return
        if found.total <= _MOST_SORTED:
            yield from _sorted(first, second, target, found)
        elif width > 1:
            width //= _WIDER if width >= _WIDER else 2
            continue
        else:
            yield from _as_listed(first, second, target, found)
        near += width
        width *= _WIDER


def _cost(parts: int, starts: int) -> int:
    """What looking through so many first parts, and searching for so many, costs in candidates."""
    return parts // 2_000 + starts // 30


def _least_gap(first: Parts, second: Parts, target: int) -> int:
    """Give the least error of all, even of a stack that uses a block twice."""
    rests = target - first.heights[::-1]
    above = second.heights.searchsorted(rests)
    least = int(np.abs(second.heights.take(above, mode="clip") - rests).min())
    return min(least, int(np.abs(second.heights.take(above - 1, mode="clip") - rests).min()))


def _nearest(first: Parts, second: Parts, target: int) -> list[Match]:
    """Give stacks of the least error of all, but none where that is not below `_NEAR`.

    It is the quick way to what is most often the only stack wanted; others may be as near.
    """
    starts = (first.highest > target - _NEAR).nonzero()[0]
    rests = target - first.heights[starts]
    above = second.heights.searchsorted(rests)
    ends = np.array((above, above - 1)).clip(0, len(second.heights) - 1)
    errors = second.heights[ends] - rests
    gaps = np.abs(errors)
    least = gaps.min(initial=_NEAR)
    if least == _NEAR:
        return []
    sides, places = (gaps == least).nonzero()
    return [
        (int(errors[side, place]), int(starts[place]), int(ends[side, place]))
        for side, place in zip(sides.tolist(), places.tolist(), strict=True)
    ]


def _starts(first: Parts, target: int, margin: int) -> NDArray[np.intp]:
    """Find the first parts of stacks that may come nearer than a margin."""
    fitting = first.heights.searchsorted(target + margin)
    return (first.highest[:fitting] > target - margin).nonzero()[0]


def _candidates(first: Parts, second: Parts, target: int, near: int, far: int) -> _Candidates:
    """Find the stacks whose error is at least `near` and less than `far`, above or below."""
    starts = _starts(first, target, far)
    rests = target - first.heights[starts]
    least = second.heights.searchsorted(rests - far, "right")
    most = second.heights.searchsorted(rests + far)
    if near == 0:
        return _Candidates(starts, least, most)
    below = second.heights.searchsorted(rests - near, "right")
    above = second.heights.searchsorted(rests + near)
    return _Candidates(
        np.concatenate([starts, starts]),
        np.concatenate([least, above]),
        np.concatenate([below, most]),
    )


def _sorted(first: Parts, second: Parts, target: int, found: _Candidates) -> Iterator[Match]:
    """Give these stacks from the least absolute error on."""
    counts = found.highs - found.lows
    starts = found.starts.repeat(counts)
    ends = np.arange(len(starts)) + (found.highs - counts.cumsum()).repeat(counts)
    errors = first.heights[starts] + second.heights[ends] - target
    for place in np.abs(errors).argsort(kind="stable").tolist():
        yield int(errors[place]), int(starts[place]), int(ends[place])


def _as_listed(first: Parts, second: Parts, target: int, found: _Candidates) -> Iterator[Match]:
    """Give these stacks, which are all as near, one by one: there may be very many."""
    for start, low, high in zip(found.starts, found.lows, found.highs, strict=True):
        for end in range(low, high):
            yield int(first.heights[start] + second.heights[end]) - target, int(start), end


def _how_many(copies: Sequence[int], most: int) -> list[int]:
    """Count the combinations of no block, of one and so on up to `most`."""
    counts = [1] + [0] * most
    for copy in copies:
        counts = [sum(counts[max(n - copy, 0) : n + 1]) for n in range(most + 1)]
    return counts


def _merged(parts: Sequence[Parts]) -> Parts:
    """Put parts of different counts into one list, sorted by height, fewer blocks first."""
    widest = parts[-1].kinds.shape[1]
    heights = np.concatenate([part.heights for part in parts])
    order = np.argsort(heights, kind="stable")
    padded = [
        np.pad(part.kinds, ((0, 0), (0, widest - part.kinds.shape[1])), constant_values=-1)
        for part in parts
    ]
    # Nothing follows a part that has fewer blocks than it may have.
    highest = np.concatenate([*(part.heights for part in parts[:-1]), parts[-1].highest])
    return Parts(heights[order], np.concatenate(padded)[order], highest[order])


_KEPT: Kept[tuple[tuple[int, ...], tuple[int, ...]], MeasuredBlocks] = Kept(
    lambda key: MeasuredBlocks(*key), lambda blocks: blocks.size, MOST_KEPT_PARTS
)


def measured_blocks(lengths: tuple[int, ...], copies: tuple[int, ...]) -> MeasuredBlocks:
    """Give the lists of a box, made once and kept; actual lengths in 0.1 nm, one a kind."""
    return _KEPT.get((lengths, copies))
