"""Several stacks at once from one box, no block used twice, fewest blocks overall. 0.1 nm.

The fewest blocks of each height alone, added up, bound the sum from below, and so does what pairs
of them need in excess; the search raises the sum by one block at a time from there, so what it
finds first is the fewest. The work is counted: past its bound the best found is given with the
bound on the sum. Derived here.
"""

from collections.abc import Sequence
from dataclasses import dataclass, field
from functools import cached_property, partial
from itertools import combinations

import numpy as np

from halfangle_service.trade.stacks.search.in_turn import MOST_PICKED, InTurn, worth
from halfangle_service.trade.stacks.search.layers import Layers
from halfangle_service.trade.stacks.search.listed import Listed, free_of
from halfangle_service.trade.stacks.search.stacking import UNREACHED, StackTable
from halfangle_service.trade.stacks.search.standing import Standing
from halfangle_service.trade.stacks.search.work import Work

Stacks = tuple[tuple[int, ...], ...]

#: Work of one request, each a fraction of a second: blocks tried to list stacks, stacks compared.
MOST_CELLS = 8_000_000
MOST_COMPARED = 60_000_000
#: Most blocks that count as fine ones.
_MOST_FINE = 24
#: Comparisons made in one go, few enough for a processor's nearer memory.
_AT_ONCE = 65_536


@dataclass(frozen=True, slots=True)
class Assignment:
    """Blocks for several heights: `stacks` in their order, positions in `table.sizes`.

    `stacks` is None where none was found; with `proved` that means that there is none, and
    otherwise that no other has fewer blocks overall. `bound`: no assignment has fewer blocks.
    """

    stacks: Stacks | None
    proved: bool
    bound: int

    @property
    def count(self) -> int:
        """Blocks in all stacks together."""
        return sum(map(len, self.stacks or ()))


@dataclass(frozen=True, slots=True)
class Subset:
    """Which heights stand, their stacks, and that no more than `most` heights can."""

    indices: tuple[int, ...]
    assignment: Assignment
    most: int

    @property
    def proved(self) -> bool:
        """True where no more heights can stand, and these not with fewer blocks."""
        return self.assignment.proved and len(self.indices) == self.most


@dataclass
class DisjointSearch:
    """A search for stacks of the same box that stand at once.

    `wanted` holds for each stack the heights that will do, nearest first; `share` is how much of
    the work of one request it may take.
    """

    table: StackTable
    wanted: Sequence[Sequence[int]]
    share: float = 1.0
    cells: Work = field(init=False)
    compared: Work = field(init=False)
    _in_turn: InTurn = field(init=False)
    _standing: dict[int, Standing] = field(default_factory=dict)
    _layers: dict[tuple[int, int], Listed] = field(default_factory=dict)
    _excess: dict[tuple[int, int], int | None] = field(default_factory=dict)

    def __post_init__(self) -> None:
        self.cells = Work(int(MOST_CELLS * self.share))
        self.compared = Work(int(MOST_COMPARED * self.share))
        self._in_turn = InTurn(self.table, self.wanted, Work(int(MOST_PICKED * self.share)))

    def renewed(self, share: float) -> "DisjointSearch":
        """Give the same search with this share of the work, and only the lists that are whole."""
        search = DisjointSearch(self.table, self.wanted, share)
        search._layers.update(self._layers)
        return search

    def go_on_from(self, other: "DisjointSearch") -> None:
        """Take no more than the work that another search left."""
        self.cells, self.compared = other.cells, other.compared
        self._in_turn.picked = other._in_turn.picked

    @property
    def taken(self) -> float:
        """How much of the work of one request was taken, of the kind of which it was most."""
        works = (self.cells, MOST_CELLS), (self.compared, MOST_COMPARED)
        picked = self.share - self._in_turn.picked.left / MOST_PICKED
        return max(picked, *(self.share - work.left / most for work, most in works))

    @cached_property
    def _stacks(self) -> Layers:
        """The stacks by their count; of blocks alike each counts, since two stacks may use them."""
        return Layers(self.table, tuple(range(len(self.table.sizes))))

    @property
    def exhausted(self) -> bool:
        """True once some of the work was left undone, so that nothing is proved any more."""
        return self.cells.exhausted or self.compared.exhausted

    def fewest(self, index: int) -> int:
        """Fewest blocks of one stack alone, UNREACHED where there is none."""
        return self._in_turn.fewest(index)

    def solve(self, indices: Sequence[int]) -> Assignment:
        """Give stacks for these of the wanted heights, one at least; the fewest blocks overall."""
        fewest = [self._in_turn.fewest(index) for index in indices]
        if UNREACHED in fewest:
            return Assignment(None, True, 0)
        least = sum(fewest)
        quick: Stacks | None = None
        for first in range(len(indices)):  # some stacks, built first, leave the others more
            built = self._in_turn.build([*indices[first:], *indices[:first]])
            if len(built) < len(indices):
                continue
            stacks = tuple(built[index] for index in indices)
            if _count(stacks) == least:
                return Assignment(stacks, True, least)
            quick = min(quick or stacks, stacks, key=_count)
        return self._search(indices, quick, least)

    def _search(self, indices: Sequence[int], quick: Stacks | None, least: int) -> Assignment:
        """Search with one block more in all at a time; `quick` are stacks found otherwise."""
        if quick is None:
            quick = self._some(indices)
            if quick is None and not self.exhausted:
                return Assignment(None, True, least)
        least += self._excess_of_pairs(indices)
        most = _count(quick) - 1 if quick else self.table.max_blocks * len(indices)
        for blocks in range(least, most + 1):
            stacks = self._choose(indices, blocks - sum(map(self.fewest, indices)), blocks)
            if stacks is not None:
                return Assignment(stacks, proved=True, bound=blocks)
            if self.exhausted:
                return self._best_found(indices, quick, blocks)
        return Assignment(quick, True, most + 1)

    def _some(self, indices: Sequence[int]) -> Stacks | None:
        """Give some stacks that stand at once; None where there are none, or the work ran out."""
        if not self._pairs_stand(indices):
            return None
        most = self.table.max_blocks
        for extra in range(most - min(map(self.fewest, indices)) + 1):
            stacks = self._choose(indices, extra, most * len(indices))
            if stacks is not None or self.exhausted:
                return stacks
        return None

    def _pairs_stand(self, indices: Sequence[int]) -> bool:
        """True where every two of these can stand at once."""
        return all(self.pair_excess(*pair) is not None for pair in combinations(indices, 2))

    def _choose(self, indices: Sequence[int], extra: int, blocks: int) -> Stacks | None:
        """Choose a stack for each height, none sharing a block, of at most so many blocks in all.

        Each has at most `extra` blocks more than the fewest. None where there are none, or where
        the work is exhausted.
        """
        if len(indices) == 2:
            first, second = (self._with(extra, index) for index in indices)
            return self._pair(first, second, blocks)
        if extra not in self._standing:
            listed = partial(self._with, extra)
            self._standing[extra] = Standing(listed, len(self._fine), self.compared)
        return self._standing[extra].choose(indices, blocks)

    def _with(self, extra: int, index: int) -> Listed:
        """All stacks of one wanted height with up to so many blocks more than the fewest."""
        fewest = self.fewest(index)
        counts = range(fewest, min(fewest + extra, self.table.max_blocks) + 1)
        return Listed.joined([self.layer(index, count) for count in counts])

    def _best_found(self, indices: Sequence[int], quick: Stacks | None, bound: int) -> Assignment:
        """Give the best stacks that are found without a proof."""
        built = self._in_turn.build_most(indices)
        if len(built) == len(indices):
            stacks = tuple(built[index] for index in indices)
            quick = min(quick or stacks, stacks, key=_count)
        return Assignment(quick, quick is not None and _count(quick) == bound, bound)

    def layer(self, index: int, count: int) -> Listed:
        """All stacks of one wanted height with exactly so many blocks."""
        key = (index, count)
        if key not in self._layers:
            parts = self._stacks.stacks(self.wanted[index], count, self.cells)
            rows = np.concatenate([np.zeros((0, count), np.int16), *parts])
            blocks, most = len(self.table.sizes), self.table.max_blocks
            listed = Listed.of(rows, self._fine, blocks, most)
            if self.cells.exhausted:  # some stacks may be missing: not for a later search
                return listed
            self._layers[key] = listed
        return self._layers[key]

    @cached_property
    def _fine(self) -> tuple[int, ...]:
        """Positions of the fine blocks: those that are not whole tens of the set's step.

        They are few, and few of them go together for a height, so that heights most often get in
        one another's way there. None where they are not few.
        """
        ten = 10 * self.table.step
        fine = tuple(place for place, size in enumerate(self.table.sizes) if size % ten)
        return fine if len(fine) <= _MOST_FINE else ()

    def pair_excess(self, first: int, second: int) -> int | None:
        """Blocks that two stacks need at once over what they need alone; None where they cannot.

        What is given is proved, since the search goes up by one; None is so only while the search
        is not `exhausted`.
        """
        key = (min(first, second), max(first, second))
        if key not in self._excess:
            self._excess[key] = self._least_excess(*key)
        return self._excess[key]

    def _least_excess(self, first: int, second: int) -> int | None:
        fewest = self.fewest(first), self.fewest(second)
        most = self.table.max_blocks
        for excess in range(2 * most - sum(fewest) + 1):
            for extra in range(excess + 1):
                counts = fewest[0] + extra, fewest[1] + excess - extra
                if max(counts) > most:
                    continue
                pair = self.layer(first, counts[0]), self.layer(second, counts[1])
                if self._pair(*pair, sum(counts)) is not None:
                    return excess
            if self.exhausted:
                break
        return None

    def _excess_of_pairs(self, indices: Sequence[int]) -> int:
        """Blocks that pairs of the stacks need in excess, each stack in one pair at most."""
        excesses = [(self.pair_excess(*pair) or 0, pair) for pair in combinations(indices, 2)]
        total, paired = 0, set[int]()
        for excess, pair in sorted(excesses, key=lambda entry: -entry[0]):
            if excess and not paired & set(pair):
                total += excess
                paired |= set(pair)
        return total

    def _pair(self, first: Listed, second: Listed, blocks: int) -> Stacks | None:
        """Give a stack of each, sharing no block, of at most so many blocks together, or None."""
        if not len(second):
            return None
        for part in first.parts(_AT_ONCE // len(second)):
            if not self.compared.take(len(part) * len(second)):
                return None
            free = free_of(part.masks, second.masks)
            free &= part.counts[:, None] + second.counts <= blocks
            if free.any():
                place, other = divmod(int(free.argmax()), len(second))
                return part.stack(place), second.stack(other)
        return None

    def largest_subset(self, indices: Sequence[int], most: int) -> Subset:
        """Give the most of the heights that can stand at once, up to `most` of them.

        Of equally many the earlier ones are preferred. Past the bound it is as many as could be
        built without a proof that there are not more.
        """
        able = [index for index in indices if self.fewest(index) != UNREACHED]
        for size in range(min(len(able), most), 0, -1):
            for subset in combinations(able, size):
                result = self._search(subset, None, sum(map(self.fewest, subset)))
                if result.stacks is not None:
                    return Subset(subset, result, size)
                if self.exhausted:
                    return self._subset_built(able, size)
        return Subset((), Assignment((), True, 0), 0)

    def _subset_built(self, indices: Sequence[int], most: int) -> Subset:
        """Give as many stacks as are found, when no more than `most` are known to be possible."""
        in_turn = dict(list(self._in_turn.build_most(indices).items())[:most])
        built = min(in_turn, self._one_more_each(indices, most), key=worth)
        bound = sum(map(self.fewest, built))
        return Subset(tuple(built), Assignment(tuple(built.values()), False, bound), most)

    def _one_more_each(self, indices: Sequence[int], most: int) -> dict[int, tuple[int, ...]]:
        """Take in one height after another as long as all those taken can stand at once."""
        # What was found while the work ran out proves nothing, and so begins anew.
        search = self.renewed(self.share / 3.0)
        built: dict[int, tuple[int, ...]] = {}
        for index in indices:
            stacks = search._some([*built, index]) if len(built) < most else None
            if stacks is not None:
                built = dict(zip([*built, index], stacks, strict=True))
        return built


def _count(stacks: Sequence[Sequence[int]]) -> int:
    return sum(map(len, stacks))
