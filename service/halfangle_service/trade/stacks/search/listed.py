"""Stacks of one height in a list, each with its blocks as bits, to see which of them share none."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from halfangle_service.trade.stacks.search.layers import Positions


@dataclass(frozen=True, slots=True)
class Listed:
    """Stacks, fewest blocks first.

    `rows` are the positions of their blocks, −1 behind the last; `counts` how many there are;
    `masks` the same blocks as bits, in as many words of 64 as the box needs, a word a row; `fine`
    the fine blocks among them as bits of their own.
    """

    rows: Positions
    counts: NDArray[np.int16]
    masks: NDArray[np.uint64]
    fine: NDArray[np.uint64]

    @classmethod
    def of(cls, rows: Positions, fine: Sequence[int], blocks: int, most: int) -> "Listed":
        """List stacks of as many blocks each, from a box of so many, `most` at most in a stack.

        `fine` are the positions of the fine blocks, at most 64.
        """
        numbers = np.arange(len(rows))
        masks = np.zeros((-(-blocks // 64), len(rows)), np.uint64)
        for column in rows.T:
            masks[column // 64, numbers] |= _bit(column % 64)
        bits = np.zeros(blocks, np.uint64)
        bits[list(fine)] = _bit(np.arange(len(fine)))
        count = rows.shape[1]
        padded = np.pad(rows, ((0, 0), (0, most - count)), constant_values=-1)
        counts = np.full(len(rows), count, np.int16)
        return cls(padded, counts, masks, np.bitwise_or.reduce(bits[rows], axis=1))

    @classmethod
    def joined(cls, parts: Sequence["Listed"]) -> "Listed":
        """Put lists into one; each must have as many blocks a stack as those before it, or more."""
        return cls(
            np.concatenate([part.rows for part in parts]),
            np.concatenate([part.counts for part in parts]),
            np.concatenate([part.masks for part in parts], axis=1),
            np.concatenate([part.fine for part in parts]),
        )

    def __len__(self) -> int:
        return len(self.counts)

    def stack(self, place: int) -> tuple[int, ...]:
        """Give the positions of one stack's blocks."""
        return tuple(self.rows[place, : self.counts[place]].tolist())

    def parts(self, length: int) -> Iterator["Listed"]:
        """Give all stacks in parts of so many, one at the least."""
        for start in range(0, len(self), max(length, 1)):
            part = slice(start, start + max(length, 1))
            yield Listed(self.rows[part], self.counts[part], self.masks[:, part], self.fine[part])


def free_of(first: NDArray[np.uint64], second: NDArray[np.uint64]) -> NDArray[np.bool_]:
    """For the masks of some stacks, in columns: which of the second ones share no block with it."""
    free: NDArray[np.bool_] = (first[0][:, None] & second[0]) == 0
    for word, other in zip(first[1:], second[1:], strict=True):
        free &= (word[:, None] & other) == 0
    return free


def _bit(number: NDArray[np.integer]) -> NDArray[np.uint64]:
    bits: NDArray[np.uint64] = np.uint64(1) << number.astype(np.uint64)
    return bits
