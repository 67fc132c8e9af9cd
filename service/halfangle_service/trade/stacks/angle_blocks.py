"""Angle gauge blocks: each added, subtracted or left out, the fewest for an angle. 0.001″.

Angles are integers of a thousandth of an arc-second. Blocks of one angle are one kind, and a stack
says how many times each kind is added, or subtracted where that is negative: never both, since a
block subtracted from its like leaves nothing.

The box is cut in two, and every stack of each half is listed by its key: the number of its blocks
times `_PER_BLOCK`, plus its sum. Keys add up as sums do, so a stack of n blocks is a pair of
halves whose keys come to n · `_PER_BLOCK` + the angle, found by looking up in a sorted list what
each half leaves. The fewest blocks are the first n for which there is a pair; as no combination is
left out, that is proved. Derived here (meet in the middle: Horowitz and Sahni, 1974, from memory).
"""

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import prod

import numpy as np
from numpy.typing import NDArray

from halfangle_service.trade.stacks.search.kept import Kept
from halfangle_service.trade.stacks.search.work import Work

Longs = NDArray[np.int64]
#: A kind of blocks: its angle in 0.001″, and how many of it there are.
Kind = tuple[int, int]

#: Most blocks of a box: its halves then have at most 354,294 rows of 12 bytes, 4.3 MB.
MOST_PIECES = 22
#: Most stacks of as few blocks that are compared in one request; C(22, 11) is 705,432.
MOST_COMPARED = 1_000_000
#: Stacks compared at a time, so that they take a few megabytes.
_AT_A_TIME = 50_000

#: What a block adds to a key: many times any sum, so that keys of different counts lie apart.
_PER_BLOCK = 1 << 40
#: Farther than any sum of 22 blocks of up to 180° is from an angle of up to 360°.
_FARTHEST = 1 << 36

#: Most rows of all boxes together that are kept for the next request: 24 MB.
MOST_KEPT_ROWS = 2_000_000


@dataclass(frozen=True, slots=True)
class AngleStack:
    """A stack: `terms` of (angle, times added or subtracted), largest first, and their sum."""

    terms: tuple[Kind, ...]
    total: int

    @property
    def count(self) -> int:
        """How many blocks."""
        return sum(abs(times) for _, times in self.terms)


@dataclass(frozen=True, slots=True)
class AngleChoice:
    """Stacks in order: the fewest blocks, then the nearest, then fewer subtracted, then larger.

    The first has the fewest blocks in any case. `first_proved`: it is the nearest of these too.
    `complete`: every stack that comes before the last one given was considered.
    """

    stacks: tuple[AngleStack, ...]
    first_proved: bool = True
    complete: bool = True


@dataclass(frozen=True, slots=True)
class _Half:
    """Every stack of some kinds by its key, ascending; `ranks` are places in the order of ties."""

    keys: Longs
    ranks: NDArray[np.int32]

    def rows(self, kept: slice | NDArray[np.bool_]) -> "_Half":
        """These rows alone."""
        return _Half(self.keys[kept], self.ranks[kept])


@dataclass(frozen=True, slots=True, weakref_slot=True)
class _Box:
    """Kinds by descending angle: the first `cut` of them are in `left`, the others in `right`."""

    kinds: tuple[Kind, ...]
    cut: int
    left: _Half
    right: _Half

    @property
    def blocks(self) -> int:
        """How many blocks there are."""
        return sum(count for _, count in self.kinds)

    def layer(self, count: int) -> slice:
        """Rows of the left half that the right one may complete to so many blocks."""
        right = sum(copies for _, copies in self.kinds[self.cut :])
        # Half a block off: the keys of a count lie around its multiple.
        edges = (
            (count - right) * _PER_BLOCK - _PER_BLOCK // 2,
            count * _PER_BLOCK + _PER_BLOCK // 2,
        )
        return slice(*self.left.keys.searchsorted(edges).tolist())


def fewest_within(
    angles: Sequence[int],
    target: int,
    tolerance: int,
    max_pieces: int,
    wanted: int = 1,
    work: Work | None = None,
) -> AngleChoice:
    """Give the `wanted` best stacks within a tolerance of an angle, all different, if there are.

    `angles` one entry a block, at most `MOST_PIECES`. Ends early where `work` is exhausted.
    """
    work = work or Work(MOST_COMPARED)
    tolerance = min(tolerance, _FARTHEST)
    box = _completable(_box(angles), target, tolerance)
    stacks: list[AngleStack] = []
    first_proved = True
    for count in range(1, min(max_pieces, box.blocks) + 1):
        found = _best(box, count, target, tolerance, wanted - len(stacks), work)
        if found and not stacks:
            first_proved = not work.exhausted or found[0].total == target
        stacks += found
        if len(stacks) == wanted or work.exhausted:
            break
    return AngleChoice(tuple(stacks), first_proved, not work.exhausted)


def nearest(
    angles: Sequence[int], target: int, max_pieces: int
) -> tuple[AngleStack | None, AngleStack | None]:
    """Give the stacks nearest to an angle: the best at or below it, and the best at or above it."""
    box = _box(angles)
    gaps = [
        (*_gaps(box, count, target), count) for count in range(1, min(max_pieces, box.blocks) + 1)
    ]
    below = min((gap, count) for gap, _, count in gaps)
    above = min((gap, count) for _, gap, count in gaps)
    return _at(box, target, -below[0], below[1]), _at(box, target, above[0], above[1])


def _at(box: _Box, target: int, gap: int, count: int) -> AngleStack | None:
    """The first in order of the stacks of so many blocks just this far from an angle."""
    if abs(gap) > _FARTHEST:
        return None
    return _best(box, count, target + gap, 0, 1, Work(MOST_COMPARED))[0]


def _gaps(box: _Box, count: int, target: int) -> tuple[int, int]:
    """How far the sums of so many blocks next below and above an angle are from it.

    More than `_FARTHEST` where there are none.
    """
    rests = count * _PER_BLOCK + target - box.left.keys[box.layer(count)]
    keys = box.right.keys
    places = keys.searchsorted(rests)
    above = keys.take(places, mode="clip") - rests
    below = rests - keys.take(places - (above != 0), mode="clip")
    # What lies past the first or the last key comes out negative.
    return (
        int(below.min(initial=_PER_BLOCK, where=below >= 0)),
        int(above.min(initial=_PER_BLOCK, where=above >= 0)),
    )


def _box(angles: Sequence[int]) -> _Box:
    """The halves of a box, kept within the bytes that are set aside for them."""
    kinds = tuple(sorted(Counter(angles).items(), reverse=True))
    cut = _middle([2 * count + 1 for _, count in kinds])
    return _KEPT.get((kinds, cut))


def _middle(ways: Sequence[int]) -> int:
    """Where to cut the kinds so that the larger half has as few stacks as can be."""
    return min(range(len(ways)), key=lambda cut: max(prod(ways[:cut]), prod(ways[cut:])))


def _rows(kinds: Sequence[Kind], cut: int) -> int:
    """How many rows the two halves have together."""
    return sum(prod(2 * count + 1 for _, count in half) for half in (kinds[:cut], kinds[cut:]))


def _halved(kinds: tuple[Kind, ...], cut: int) -> _Box:
    return _Box(kinds, cut, _half(kinds[:cut]), _half(kinds[cut:]))


_KEPT: Kept[tuple[tuple[Kind, ...], int], _Box] = Kept(
    lambda key: _halved(*key), lambda box: _rows(box.kinds, box.cut), MOST_KEPT_ROWS
)


def _half(kinds: Sequence[Kind]) -> _Half:
    """List every stack of these kinds: of the largest as many added as can be comes first."""
    keys = np.zeros(1, np.int64)
    for angle, count in kinds:
        times = np.arange(count, -count - 1, -1)
        keys = np.add.outer(keys, times * angle + np.abs(times) * _PER_BLOCK).ravel()
    order = keys.argsort(kind="stable")
    return _Half(keys[order], order.astype(np.int32))


def _completable(box: _Box, target: int, tolerance: int) -> _Box:
    """Leave out rows of the left half from which the smaller angles do not reach the wanted one."""
    reach = tolerance + sum(angle * count for angle, count in box.kinds[box.cut :])
    half = _PER_BLOCK // 2
    sums = ((box.left.keys + half) & (_PER_BLOCK - 1)) - half
    kept = np.abs(sums - target) <= reach
    return _Box(box.kinds, box.cut, box.left.rows(kept), box.right)


def _best(
    box: _Box, count: int, target: int, tolerance: int, wanted: int, work: Work
) -> list[AngleStack]:
    """Give the best stacks of exactly so many blocks; ends early where `work` is exhausted."""
    left, right = box.left.rows(box.layer(count)), box.right
    middle = count * _PER_BLOCK + target
    errors, ranks = np.zeros(0, np.int64), np.zeros(0, np.int64)
    for first, second in _pairs(left.keys, right.keys, middle, tolerance, work):
        joined = left.keys[first] + right.keys[second] - middle
        ranked = left.ranks[first].astype(np.int64) * len(right.ranks) + right.ranks[second]
        errors, ranks = np.concatenate([errors, joined]), np.concatenate([ranks, ranked])
        kept = _in_order(box.kinds, errors, ranks, wanted)
        errors, ranks = errors[kept], ranks[kept]
    if not len(ranks):
        return []
    times = _times(box.kinds, ranks)
    return [
        AngleStack(
            tuple((angle, n) for (angle, _), n in zip(box.kinds, row, strict=True) if n),
            target + error,
        )
        for error, row in zip(errors.tolist(), times.T.tolist(), strict=True)
    ]


def _pairs(
    left: Longs, right: Longs, middle: int, tolerance: int, work: Work
) -> Iterator[tuple[NDArray[np.intp], NDArray[np.intp]]]:
    """Give index pairs of keys that come within the tolerance of `middle`, some at a time."""
    rests = middle - left
    lows = right.searchsorted(rests - tolerance)
    # Most rows have no partner at all: only for the others is the last one looked up.
    rows = (right.take(lows, mode="clip") <= rests + tolerance).nonzero()[0]
    highs = right.searchsorted(rests[rows] + tolerance, "right")
    ends = (highs - lows[rows]).cumsum()
    total = int(ends[-1]) if len(ends) else 0
    for begin in range(0, total, _AT_A_TIME):
        many = min(_AT_A_TIME, total - begin)
        numbers = np.arange(begin, begin + min(many, work.left))
        places = ends.searchsorted(numbers, "right")
        yield rows[places], numbers + (highs - ends)[places]
        if not work.take(many):
            return


def _in_order(kinds: Sequence[Kind], errors: Longs, ranks: Longs, wanted: int) -> NDArray[np.intp]:
    """Places of the `wanted` nearest; of equals those that subtract fewer, then by rank."""
    off = np.abs(errors)
    if len(off) > wanted:
        near = (off <= np.partition(off, wanted - 1)[wanted - 1]).nonzero()[0]
    else:
        near = np.arange(len(off))
    subtracted = -_times(kinds, ranks[near]).clip(max=0).sum(axis=0)
    order = np.lexsort((ranks[near], subtracted, off[near]))
    best: NDArray[np.intp] = near[order[:wanted]]
    return best


def _times(kinds: Sequence[Kind], ranks: Longs) -> NDArray[np.int8]:
    """How many times each kind is added in the stacks of these ranks: a row a kind."""
    counts = np.array([count for _, count in kinds], np.int8)[:, None]
    digits = np.unravel_index(ranks, tuple(2 * count + 1 for _, count in kinds))
    times: NDArray[np.int8] = counts - np.array(digits, np.int8)
    return times
