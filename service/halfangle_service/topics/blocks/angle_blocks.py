"""Angle gauge blocks: each added, subtracted or left out, the fewest for an angle. 0.001″.

Angles are integers of a thousandth of an arc-second. The box is split in halves; every signed
sum of a half is listed (three to the power of its blocks), and the halves are joined where they
come to the wanted angle. No combination is left out, so the fewest is proved. Derived here.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from halfangle_service.errors import BeyondBound

Longs = NDArray[np.int64]

#: Most blocks of a box: each half then has 177,147 signed sums.
MOST_PIECES = 22
#: Most joined combinations looked at in one request.
MOST_JOINED = 4_000_000


@dataclass(frozen=True, slots=True)
class SignedSums:
    """All signed sums of some blocks: `sums` ascending, `counts` of blocks, `signs` a row each."""

    sums: Longs
    counts: Longs
    signs: NDArray[np.int8]


@dataclass(frozen=True, slots=True)
class AngleStack:
    """A sign for each block of the box (1, −1, 0), and the sum in 0.001″."""

    signs: tuple[int, ...]
    total: int


def signed_sums(angles: Sequence[int]) -> SignedSums:
    """List every signed sum of these blocks, each used at most once."""
    sums = np.zeros(1, np.int64)
    signs = np.zeros((1, 0), np.int8)
    for angle in angles:
        rows = len(sums)
        sums = np.concatenate([sums, sums + angle, sums - angle])
        column = np.repeat(np.array([0, 1, -1], np.int8), rows)[:, None]
        signs = np.column_stack([np.tile(signs, (3, 1)), column])
    order = np.argsort(sums, kind="stable")
    counts = np.abs(signs).sum(axis=1, dtype=np.int64)
    return SignedSums(sums[order], counts[order], signs[order])


@lru_cache(maxsize=4)
def _halves(angles: tuple[int, ...]) -> tuple[SignedSums, SignedSums]:
    if len(angles) > MOST_PIECES:
        raise BeyondBound(
            f"{len(angles)} angle blocks; at most {MOST_PIECES} are taken.",
            fields={"pieces": f"should have at most {MOST_PIECES} entries"},
        )
    middle = len(angles) // 2
    return signed_sums(angles[:middle]), signed_sums(angles[middle:])


@dataclass(frozen=True, slots=True)
class _Candidates:
    """Stacks near an angle, as arrays: `signs` a row each, `totals`, `counts` of blocks."""

    signs: NDArray[np.int8]
    totals: Longs
    counts: Longs

    def stack(self, row: int) -> AngleStack:
        return AngleStack(tuple(self.signs[row].tolist()), int(self.totals[row]))


def fewest_within(
    angles: tuple[int, ...], target: int, tolerance: int, max_pieces: int, wanted: int
) -> list[AngleStack]:
    """Give the stacks within a tolerance of an angle: fewest blocks first, then the nearest.

    Of equals the one that subtracts fewer. `angles` one entry a block; at most `wanted` stacks.
    Raises BeyondBound where the tolerance admits too many combinations.
    """
    found = _candidates(angles, target, tolerance, max_pieces)
    subtracted = (found.signs < 0).sum(axis=1)
    order = np.lexsort((subtracted, np.abs(found.totals - target), found.counts))[:wanted]
    return [found.stack(row) for row in order.tolist()]


def _candidates(
    angles: tuple[int, ...], target: int, tolerance: int, max_pieces: int
) -> _Candidates:
    left, right = _halves(angles)
    first, second = _joined(left, right, target, tolerance)
    counts = left.counts[first] + right.counts[second]
    kept = (counts <= max_pieces) & (counts > 0)
    first, second = first[kept], second[kept]
    return _Candidates(
        np.column_stack([left.signs[first], right.signs[second]]),
        left.sums[first] + right.sums[second],
        counts[kept],
    )


def _joined(
    left: SignedSums, right: SignedSums, target: int, tolerance: int
) -> tuple[NDArray[np.intp], NDArray[np.intp]]:
    """Give index pairs of the halves whose sums come within the tolerance of the target."""
    rests = target - left.sums
    low = np.searchsorted(right.sums, rests - tolerance, "left")
    high = np.searchsorted(right.sums, rests + tolerance, "right")
    found = high - low
    total = int(found.sum())
    if total > MOST_JOINED:
        raise BeyondBound(
            f"{total} combinations of these angle blocks come within {tolerance / 1000:g}″; at "
            f"most {MOST_JOINED} are compared.",
            fields={"tolerance_arcsec": "should be smaller"},
        )
    first = np.repeat(np.arange(len(found)), found)
    begin = np.cumsum(found) - found
    second = np.arange(total) - begin[first] + low[first]
    return first, second


def nearest(
    angles: tuple[int, ...], target: int, max_pieces: int
) -> tuple[AngleStack | None, AngleStack | None]:
    """Give the stacks nearest to an angle: the best at or below it, and the best at or above it."""
    return (
        _nearest_on_side(angles, target, max_pieces, -1),
        _nearest_on_side(angles, target, max_pieces, 1),
    )


def _nearest_on_side(
    angles: tuple[int, ...], target: int, max_pieces: int, side: int
) -> AngleStack | None:
    """Widen a window on one side of the angle until it holds a stack; the nearest one then."""
    width = 0
    reach = sum(angles) + abs(target)
    while width <= 2 * reach:
        half = -(-width // 2)
        found = _candidates(angles, target + side * half, half, max_pieces)
        if len(found.totals):
            off = np.abs(found.totals - target)
            return found.stack(int(np.lexsort((found.counts, off))[0]))
        width = max(2 * width, 1_000)
    return None
