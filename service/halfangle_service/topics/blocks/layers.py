"""Every stack of exactly so many blocks, guided by a table of the fewest. Integers of 0.1 nm.

The search goes from the largest block down, many partial stacks at a time as arrays; it drops a
partial stack as soon as the table says that its rest needs more blocks than are left. Its work is
counted, in partial stacks times blocks looked at, so that the same request ends at the same place.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from halfangle_service.topics.blocks.stacking import StackTable

Positions = NDArray[np.int16]

#: Work of one request: under half a second.
MOST_CELLS = 60_000_000
#: Partial stacks handled at once: a matrix of these by the blocks stays small.
_ROWS = 1_024


@dataclass
class Work:
    """Work that is left to a search; `exhausted` once it asked for more."""

    left: int = MOST_CELLS
    exhausted: bool = False

    def take(self, amount: int) -> bool:
        """Take so much work; False, and nothing is taken, where so much is not left."""
        if amount > self.left:
            self.exhausted = True
            return False
        self.left -= amount
        return True


@dataclass(frozen=True)
class Layers:
    """The stacks of a table by their count.

    `kinds` names each block of the table by a number: blocks of one kind are alike in everything
    that matters, next to each other, and stacks that differ only in which of them is used count as
    one.
    """

    table: StackTable
    kinds: tuple[int, ...]

    def stacks(self, height: int, count: int, work: Work) -> Iterator[Positions]:
        """Give all stacks of exactly `count` blocks, in parts, each a row of positions.

        Positions are those in `table.sizes`, ascending; stacks come in order of their positions,
        so with the largest blocks first. Ends early where `work` is exhausted.
        """
        step = self.table.step
        if height % step or not 0 < height // step < self.table.length:
            return
        rest = np.array([height // step], np.int64)
        yield from self._extend(rest, np.zeros((1, 0), np.int16), count, work)

    def _extend(
        self, rest: NDArray[np.int64], chosen: Positions, left: int, work: Work
    ) -> Iterator[Positions]:
        """Go on from partial stacks whose `rest` (in steps) needs exactly `left` more blocks."""
        if left == 0:
            yield chosen
            return
        sizes = np.array(self.table.sizes, np.int64) // self.table.step
        for start in range(0, len(rest), _ROWS):
            rows = slice(start, start + _ROWS)
            if not work.take(len(rest[rows]) * len(sizes)):
                return
            partial, position = self._fitting(sizes, rest[rows], chosen[rows], left)
            if len(partial):
                yield from self._extend(
                    rest[rows][partial] - sizes[position],
                    np.column_stack([chosen[rows][partial], position.astype(np.int16)]),
                    left - 1,
                    work,
                )

    def _fitting(
        self, sizes: NDArray[np.int64], rest: NDArray[np.int64], chosen: Positions, left: int
    ) -> tuple[NDArray[np.intp], NDArray[np.intp]]:
        """Give partial stacks and the positions of blocks that may come next, as index pairs."""
        last = chosen[:, -1:] if chosen.shape[1] else np.full((len(rest), 1), -1, np.int16)
        numbers = np.arange(len(sizes))
        after = rest[:, None] - sizes[None, :]
        fits = (numbers > last) & (after >= 0) & (sizes * left >= rest[:, None])
        # Of blocks alike only the first free one is tried: the others would repeat the search.
        alike = np.concatenate([[False], np.diff(self.kinds) == 0])
        fits &= ~alike | (numbers == last + 1)
        partial, position = np.nonzero(fits)
        least = self.table.fewest[after[partial, position]]
        good = (least == 0) == (left == 1)
        good &= least <= left - 1
        return partial[good], position[good]


def kinds_of(pieces: Sequence[object]) -> tuple[int, ...]:
    """Number each piece by its kind: equal neighbours have one number."""
    kinds = []
    number = -1
    for position, piece in enumerate(pieces):
        number += position == 0 or piece != pieces[position - 1]
        kinds.append(number)
    return tuple(kinds)
