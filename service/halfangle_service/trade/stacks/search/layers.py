"""Every stack of exactly so many blocks, guided by a table of the fewest. Integers of 0.1 nm.

The search goes from the largest block down, many partial stacks at a time as arrays; it drops a
partial stack as soon as the table says that its rest needs more blocks than are left. Its work is
counted, in blocks tried for partial stacks, so that the same request ends at the same place.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

from halfangle_service.trade.stacks.search.stacking import StackTable
from halfangle_service.trade.stacks.search.work import Work

Positions = NDArray[np.int16]

#: Work of one request: under half a second.
MOST_CELLS = 12_000_000
#: What a stack listed costs beside the blocks tried for it: it is kept, and put in order.
_LISTED_COST = 24
#: Partial stacks handled at once.
_ROWS = 1_024


@dataclass(frozen=True)
class Layers:
    """The stacks of a table by their count.

    `kinds` names each block of the table by a number: blocks of one kind are alike in everything
    that matters, next to each other, and stacks that differ only in which of them is used count as
    one.
    """

    table: StackTable
    kinds: tuple[int, ...]

    def stacks(self, heights: Sequence[int], count: int, work: Work) -> Iterator[Positions]:
        """Give all stacks of exactly `count` blocks, in parts, each a row of positions.

        Positions are those in `table.sizes`, ascending; stacks come in the order of `heights`, and
        those of one height in order of their positions, so with the largest blocks first. Ends
        early where `work` is exhausted.
        """
        step = self.table.step
        reached = [height // step for height in heights if self.table.count(height) <= count]
        rest = np.array(reached, np.int64)
        yield from self._extend(rest, np.zeros((len(rest), 0), np.int16), count, work)

    @cached_property
    def _falling(self) -> NDArray[np.int64]:
        """Sizes in steps, negative, and so in rising order."""
        return np.array(self.table.sizes, np.int64) // -self.table.step

    @cached_property
    def _alike(self) -> NDArray[np.bool_]:
        """True for each block that is alike the one before it."""
        return np.concatenate([[False], np.diff(self.kinds) == 0])

    def _extend(
        self, rest: NDArray[np.int64], chosen: Positions, left: int, work: Work
    ) -> Iterator[Positions]:
        """Go on from partial stacks whose `rest` (in steps) needs exactly `left` more blocks."""
        if left == 0:
            if work.take(_LISTED_COST * len(chosen)):
                yield chosen
            return
        for start in range(0, len(rest), _ROWS):
            rows = slice(start, start + _ROWS)
            first, counts = self._in_reach(rest[rows], chosen[rows], left)
            if not work.take(len(counts) + int(counts.sum())):
                return
            partial, position = self._fitting(rest[rows], first, counts, left)
            if len(partial):
                yield from self._extend(
                    rest[rows][partial] + self._falling[position],
                    np.column_stack([chosen[rows][partial], position.astype(np.int16)]),
                    left - 1,
                    work,
                )

    def _in_reach(
        self, rest: NDArray[np.int64], chosen: Positions, left: int
    ) -> tuple[NDArray[np.intp], NDArray[np.intp]]:
        """For each partial stack: the first block that may come next, and how many of them may.

        It comes after the last one, is not larger than the rest, and not so small that as many as
        are left of it would not reach the rest.
        """
        first = self._falling.searchsorted(-rest)
        if chosen.shape[1]:
            first = np.maximum(first, chosen[:, -1] + 1)
        behind = self._falling.searchsorted(-rest // left, "right")
        return first, np.maximum(behind - first, 0)

    def _fitting(
        self, rest: NDArray[np.int64], first: NDArray[np.intp], counts: NDArray[np.intp], left: int
    ) -> tuple[NDArray[np.intp], NDArray[np.intp]]:
        """Give partial stacks and the positions of blocks that may come next, as index pairs."""
        partial = np.arange(len(rest)).repeat(counts)
        nth = np.arange(len(partial)) - (counts.cumsum() - counts).repeat(counts)
        position = first[partial] + nth
        after = rest[partial] + self._falling[position]
        least = self.table.fewest[after]
        good = ((after == 0) == (left == 1)) & (least < left)
        if self._alike.any():
            # Of blocks alike only the first free one is tried: the others would repeat the search.
            good &= ~self._alike[position] | (nth == 0)
        return partial[good], position[good]


def kinds_of(pieces: Sequence[object]) -> tuple[int, ...]:
    """Number each piece by its kind: equal neighbours have one number."""
    kinds = []
    number = -1
    for position, piece in enumerate(pieces):
        number += position == 0 or piece != pieces[position - 1]
        kinds.append(number)
    return tuple(kinds)
