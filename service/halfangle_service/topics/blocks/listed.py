"""Stacks of one height in a list, each with its blocks as bits, to see which of them share none."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from halfangle_service.topics.blocks.layers import Positions
from halfangle_service.topics.blocks.stacking import UNREACHED


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

    @property
    def least(self) -> int:
        """Blocks of the first stack, and so the fewest."""
        return int(self.counts[0])

    def stack(self, place: int) -> tuple[int, ...]:
        """Give the positions of one stack's blocks."""
        return tuple(self.rows[place, : self.counts[place]].tolist())

    def up_to(self, count: int) -> "Listed":
        """Give the stacks of up to so many blocks."""
        return self._slice(0, int(self.counts.searchsorted(count, "right")))

    def where(self, kept: NDArray[np.bool_]) -> "Listed":
        """Give some of the stacks."""
        places = kept.nonzero()[0]
        return Listed(
            self.rows[places], self.counts[places], self.masks[:, places], self.fine[places]
        )

    def by_fine(self) -> dict[int, int]:
        """Give each choice of fine blocks, as bits, that some stack makes, and its fewest blocks.

        Those of fewer blocks come first.
        """
        kinds, first = np.unique(self.fine, return_index=True)
        order = first.argsort()
        counts = self.counts[first[order]]
        return dict(zip(kinds[order].tolist(), counts.tolist(), strict=True))

    def parts(self, length: int) -> Iterator["Listed"]:
        """Give all stacks in parts of so many, one at the least."""
        for start in range(0, len(self), max(length, 1)):
            yield self._slice(start, start + max(length, 1))

    def least_of(self, kept: NDArray[np.bool_]) -> NDArray[np.int16]:
        """For each row of `kept`: the fewest blocks of a stack it keeps; UNREACHED for none."""
        fewest: NDArray[np.int16] = np.where(
            kept.any(axis=1), self.counts[kept.argmax(axis=1)], np.int16(UNREACHED)
        )
        return fewest

    def _slice(self, start: int, stop: int) -> "Listed":
        part = slice(start, stop)
        return Listed(self.rows[part], self.counts[part], self.masks[:, part], self.fine[part])


def _bit(number: NDArray[np.integer]) -> NDArray[np.uint64]:
    bits: NDArray[np.uint64] = np.uint64(1) << number.astype(np.uint64)
    return bits


def free_of(first: Listed, second: Listed) -> NDArray[np.bool_]:
    """For each stack of the first list: which of the second share no block with it."""
    free: NDArray[np.bool_] = (first.masks[0][:, None] & second.masks[0]) == 0
    for word, other in zip(first.masks[1:], second.masks[1:], strict=True):
        free &= (word[:, None] & other) == 0
    return free
