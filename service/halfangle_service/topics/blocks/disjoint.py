"""Several stacks at once from one box, no block used twice, fewest blocks overall. 0.1 nm.

The fewest blocks of each height alone, added up, bound the sum from below, and so does what pairs
of them need in excess; the search raises the sum by one block at a time from there, so what it
finds first is the fewest. The work is counted: past its bound the best found is given with the
bound on the sum. Derived here.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from itertools import combinations, islice, permutations

import numpy as np
from numpy.typing import NDArray

from halfangle_service.topics.blocks.layers import Layers, Positions, Work
from halfangle_service.topics.blocks.stacking import UNREACHED, StackTable

Masks = NDArray[np.uint64]
Stacks = tuple[tuple[int, ...], ...]

#: Work of one request, each a fraction of a second: partial stacks listed, stacks compared, and
#: blocks tried where stacks are built one after another.
MOST_CELLS = 25_000_000
MOST_COMPARED = 12_000_000
MOST_TRIED = 50_000
#: What one step of the search costs beside the stacks that it compares, in stacks.
_STEP_COST = 1_500
#: Subsets of the heights tried where not all of them can stand at once.
MOST_SUBSETS = 300
#: Orders in which stacks are built one after another.
MOST_ORDERS = 24
_ROWS = 128


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
class Choice:
    """Stacks of one height, fewest blocks first: `rows` of the layers, their `counts`, `masks`."""

    rows: NDArray[np.intp]
    counts: NDArray[np.intp]
    masks: Masks

    def where(self, kept: NDArray[np.bool_]) -> "Choice":
        """Give some of the stacks."""
        return Choice(self.rows[kept], self.counts[kept], self.masks[kept])


@dataclass
class DisjointSearch:
    """A search for stacks of the same box that stand at once.

    `wanted` holds for each stack the heights that will do, nearest first; `asked` the height that
    was asked for.
    """

    layers: Layers
    wanted: Sequence[Sequence[int]]
    asked: Sequence[int] = ()
    cells: Work = field(default_factory=lambda: Work(MOST_CELLS))
    compared: Work = field(default_factory=lambda: Work(MOST_COMPARED))
    tried: Work = field(default_factory=lambda: Work(MOST_TRIED))
    _stacks: dict[tuple[int, int], Positions] = field(default_factory=dict)
    _excess: dict[tuple[int, int], int | None] = field(default_factory=dict)

    @property
    def table(self) -> StackTable:
        """Table of the fewest blocks of the box."""
        return self.layers.table

    @property
    def exhausted(self) -> bool:
        """True once some of the work was left undone, so that nothing is proved any more."""
        return self.cells.exhausted or self.compared.exhausted

    def fewest(self, index: int) -> int:
        """Fewest blocks of one stack alone, UNREACHED where there is none."""
        return min(map(self.table.count, self.wanted[index]), default=UNREACHED)

    def solve(self, indices: Sequence[int]) -> Assignment:
        """Give stacks for these of the wanted heights, the fewest blocks overall."""
        fewest = [self.fewest(index) for index in indices]
        if UNREACHED in fewest:
            return Assignment(None, True, 0)
        quick = self._one_after_another(indices)
        least = sum(fewest)
        if quick is not None and _count(quick) == least:
            return Assignment(quick, True, least)
        quick = min(self._in_other_orders(indices), key=_count, default=quick)
        least += self._excess_of_pairs(indices)
        if not self.exhausted and any(
            self.pair_excess(*pair) is None for pair in combinations(indices, 2)
        ):
            return Assignment(None, True, least)
        return self._raise_sum(indices, quick, least)

    def _raise_sum(self, indices: Sequence[int], quick: Stacks | None, least: int) -> Assignment:
        """Search with one block more in all at a time; `quick` are stacks found otherwise."""
        most = _count(quick) - 1 if quick else self.table.max_blocks * len(indices)
        for blocks in range(least, most + 1):
            if self.exhausted:
                return Assignment(quick, False, blocks)
            found = self._choose(self._choices(indices, blocks), blocks)
            if found is not None:
                stacks = tuple(found[index] for index in indices)
                return Assignment(stacks, not self.exhausted or blocks == least, blocks)
        if self.exhausted:
            return Assignment(quick, False, max(least, most))
        return Assignment(quick, True, most + 1)

    def _one_after_another(self, indices: Sequence[int]) -> Stacks | None:
        """Build one stack after another from what is left, or give None where one cannot be."""
        used: set[int] = set()
        stacks = []
        for index in indices:
            stack = self._next_stack(index, used)
            if stack is None:
                return None
            stacks.append(stack)
            used.update(stack)
        return tuple(stacks)

    def _in_other_orders(self, indices: Sequence[int]) -> Iterator[Stacks]:
        """Build the stacks one after another in several orders: some leave the others more."""
        for order in islice(permutations(range(len(indices))), MOST_ORDERS):
            stacks = self._one_after_another([indices[place] for place in order])
            if stacks is not None:
                yield tuple(stacks[order.index(place)] for place in range(len(indices)))

    def _next_stack(self, index: int, used: set[int]) -> tuple[int, ...] | None:
        """Give a stack of few blocks that are not used yet."""
        for count in range(self.fewest(index), self.table.max_blocks + 1):
            for height in self.wanted[index]:
                if self.table.count(height) <= count:
                    stack = pick_unused(self.table, height, count, used, self.tried)
                    if stack is not None:
                        return stack
        return None

    def layer(self, index: int, count: int) -> Positions:
        """All stacks of one wanted height with exactly so many blocks."""
        key = (index, count)
        if key not in self._stacks:
            parts = [
                part
                for height in self.wanted[index]
                for part in self.layers.stacks(height, count, self.cells)
            ]
            self._stacks[key] = np.concatenate([np.zeros((0, count), np.int16), *parts])
        return self._stacks[key]

    def pair_excess(self, first: int, second: int) -> int | None:
        """Blocks that two stacks need at once over what they need alone; None where they cannot.

        Proved only while the search is not `exhausted`.
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
                if self._some_disjoint(self.layer(first, counts[0]), self.layer(second, counts[1])):
                    return excess
            if self.exhausted:
                break
        return None

    def _some_disjoint(self, first: Positions, second: Positions) -> bool:
        """True where a stack of each share no block."""
        blocks = len(self.table.sizes)
        if not len(second):
            return False
        others = _incidence(second, blocks).T
        for start in range(0, len(first), _ROWS):
            rows = first[start : start + _ROWS]
            # A product of this kind is some ten times cheaper than a step of the search.
            if not self.compared.take(len(rows) * len(second) // 8):
                return False
            if (_incidence(rows, blocks) @ others).min() == 0:
                return True
        return False

    def _excess_of_pairs(self, indices: Sequence[int]) -> int:
        """Blocks that pairs of the stacks need in excess, each stack in one pair at most."""
        excesses = [(self.pair_excess(*pair) or 0, pair) for pair in combinations(indices, 2)]
        if self.exhausted:
            return 0
        total, paired = 0, set[int]()
        for excess, pair in sorted(excesses, key=lambda entry: -entry[0]):
            if excess and not paired & set(pair):
                total += excess
                paired |= set(pair)
        return total

    def _choices(self, indices: Sequence[int], blocks: int) -> dict[int, Choice]:
        """The stacks of each height that a sum of so many blocks may use."""
        slack = blocks - sum(map(self.fewest, indices))
        choices = {}
        for index in indices:
            most = min(self.fewest(index) + slack, self.table.max_blocks)
            layers = [self.layer(index, c) for c in range(self.fewest(index), most + 1)]
            choices[index] = Choice(
                np.concatenate([np.arange(len(layer)) for layer in layers]),
                np.concatenate([np.full(len(layer), layer.shape[1]) for layer in layers]),
                np.concatenate([_masks(layer, len(self.table.sizes)) for layer in layers]),
            )
        return choices

    def _choose(self, choices: dict[int, Choice], blocks: int) -> dict[int, tuple[int, ...]] | None:
        """Choose a stack for each height, none sharing a block, of at most so many blocks in all.

        The height with the fewest stacks left goes first; for every choice the others keep only
        what shares no block with it, and what still fits the sum.
        """
        if not choices:
            return {}
        if any(not len(choice.counts) for choice in choices.values()):
            return None
        slack = blocks - sum(int(choice.counts[0]) for choice in choices.values())
        if slack < 0:
            return None
        left = {
            index: choice.where(choice.counts <= choice.counts[0] + slack)
            for index, choice in choices.items()
        }
        index = min(left, key=lambda i: len(left[i].counts))
        choice = left.pop(index)
        cost = _STEP_COST + sum(len(other.counts) for other in left.values())
        for row, count, mask in zip(choice.rows, choice.counts, choice.masks, strict=True):
            if not self.compared.take(cost if left else 1):
                return None
            free = {i: other.where(_free_of(other.masks, mask)) for i, other in left.items()}
            found = self._choose(free, blocks - int(count))
            if found is not None:
                return {index: tuple(self.layer(index, int(count))[row].tolist()), **found}
        return None

    def conflicts(self, indices: Sequence[int]) -> list[tuple[int, int]]:
        """The pairs of heights that cannot stand at once, each of which can alone."""
        able = [index for index in indices if self.fewest(index) != UNREACHED]
        return [pair for pair in combinations(able, 2) if self.pair_excess(*pair) is None]

    def largest_subset(self, indices: Sequence[int]) -> tuple[tuple[int, ...], Assignment, bool]:
        """Give the most of the heights that can stand at once, their stacks, and whether proved.

        Of equally many the earlier ones are preferred. Past the bound it is as many as could be
        built one after another.
        """
        able = [index for index in indices if self.fewest(index) != UNREACHED]
        conflicts = set(self.conflicts(able))
        in_turn = self._as_many_as_fit(able)
        proved, tried = not self.exhausted, 0
        for size in range(len(able), len(in_turn) - 1, -1):
            for subset in combinations(able, size):
                if conflicts & set(combinations(subset, 2)):
                    continue
                tried += 1
                result = self.solve(subset)
                if result.stacks is not None:
                    return subset, result, proved
                proved = proved and result.proved and not self.exhausted
                if tried >= MOST_SUBSETS:
                    stacks = tuple(in_turn.values())
                    bound = sum(map(self.fewest, in_turn))
                    return tuple(in_turn), Assignment(stacks, False, bound), False
        return tuple(in_turn), Assignment(tuple(in_turn.values()), False, 0), proved

    def _as_many_as_fit(self, indices: Sequence[int]) -> dict[int, tuple[int, ...]]:
        """Build one stack after another, passing over those for which there is nothing left."""
        used: set[int] = set()
        stacks: dict[int, tuple[int, ...]] = {}
        work, self.tried = self.tried, Work(MOST_TRIED)
        for index in indices:
            stack = self._next_stack(index, used)
            if stack is not None:
                stacks[index] = stack
                used.update(stack)
        self.tried = work
        return stacks


def pick_unused(
    table: StackTable, height: int, count: int, used: set[int], work: Work, first: int = 0
) -> tuple[int, ...] | None:
    """Pick exactly `count` blocks from `first` on that are not used; positions, or None."""
    if count == 0:
        return () if height == 0 else None
    if not work.take(1):
        return None
    sizes = table.sizes
    for position in range(first, len(sizes)):
        size = sizes[position]
        if size * count < height:
            return None
        if size > height or position in used or table.count(height - size) > count - 1:
            continue
        rest = pick_unused(table, height - size, count - 1, used, work, position + 1)
        if rest is not None:
            return (position, *rest)
    return None


def _count(stacks: Sequence[Sequence[int]]) -> int:
    return sum(map(len, stacks))


def _incidence(rows: Positions, blocks: int) -> NDArray[np.float32]:
    """A row of ones and zeros for each stack: which blocks it uses."""
    incidence = np.zeros((len(rows), blocks), np.float32)
    if rows.size:
        incidence[np.arange(len(rows))[:, None], rows] = 1.0
    return incidence


def _masks(rows: Positions, blocks: int) -> Masks:
    """The blocks of each stack as bits, in as many words of 64 as the box needs."""
    masks = np.zeros((len(rows), -(-blocks // 64)), np.uint64)
    numbers = np.arange(len(rows))
    for column in rows.T:
        masks[numbers, column // 64] |= np.uint64(1) << (column % 64).astype(np.uint64)
    return masks


def _free_of(masks: Masks, used: Masks) -> NDArray[np.bool_]:
    """True for each stack that shares no block with those used."""
    free: NDArray[np.bool_] = (masks[:, 0] & used[0]) == 0
    for word in range(1, masks.shape[1]):
        free &= (masks[:, word] & used[word]) == 0
    return free
