"""Several stacks at once from one box, no block used twice, fewest blocks overall. 0.1 nm.

The fewest blocks of each height alone, added up, bound the sum from below, and so does what pairs
of them need in excess; the search raises the sum by one block at a time from there, so what it
finds first is the fewest. The work is counted: past its bound the best found is given with the
bound on the sum. Derived here.
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field
from functools import cached_property
from itertools import combinations, product
from random import Random

import numpy as np

from halfangle_service.topics.blocks.layers import Layers
from halfangle_service.topics.blocks.listed import Listed, free_of
from halfangle_service.topics.blocks.stacking import UNREACHED, StackTable
from halfangle_service.topics.blocks.work import Work

Stacks = tuple[tuple[int, ...], ...]

#: Work of one request, each a fraction of a second: blocks tried to list stacks, stacks compared,
#: and blocks picked where stacks are built one after another.
MOST_CELLS = 6_000_000
MOST_COMPARED = 100_000_000
MOST_PICKED = 30_000
#: What one step of the search costs beside the stacks that it compares, in comparisons.
_STEP_COST = 10_000
_FINE_COST = 500
#: Most blocks that count as fine ones.
_MOST_FINE = 24
#: Comparisons made in one go, few enough for a processor's nearer memory.
_AT_ONCE = 65_536
#: Blocks picked at most for one of these stacks.
_MOST_A_STACK = 500
#: Orders in which stacks are built one after another where a search did not end.
MOST_ORDERS = 100


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
    picked: Work = field(default_factory=lambda: Work(MOST_PICKED))
    _fewest: dict[int, int] = field(default_factory=dict)
    _layers: dict[tuple[int, int], Listed] = field(default_factory=dict)
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
        if index not in self._fewest:
            counts = map(self.table.count, self.wanted[index])
            self._fewest[index] = min(counts, default=UNREACHED)
        return self._fewest[index]

    def solve(self, indices: Sequence[int]) -> Assignment:
        """Give stacks for these of the wanted heights, the fewest blocks overall."""
        fewest = [self.fewest(index) for index in indices]
        if UNREACHED in fewest:
            return Assignment(None, True, 0)
        least = sum(fewest)
        quick: Stacks | None = None
        for first in range(len(indices)):  # some stacks, built first, leave the others more
            built = self._one_after_another([*indices[first:], *indices[:first]])
            if len(built) < len(indices):
                continue
            stacks = tuple(built[index] for index in indices)
            if _count(stacks) == least:
                return Assignment(stacks, True, least)
            quick = min(quick or stacks, stacks, key=_count)
        least += self._excess_of_pairs(indices)
        if quick is None and not self.exhausted and not self.may_stand(indices):
            return Assignment(None, True, least)
        return self._raise_sum(indices, quick, least)

    def may_stand(self, indices: Sequence[int]) -> bool:
        """False where it is proved that these cannot stand at once: by pairs, or by fine blocks."""
        pairs = combinations(indices, 2)
        if not self.exhausted and any(self.pair_excess(*pair) is None for pair in pairs):
            return False
        most = self.table.max_blocks * len(indices)
        fine = {index: self._every(index).by_fine() for index in indices}
        return self.exhausted or any(True for _ in self._fine_choices(fine, most))

    def _raise_sum(self, indices: Sequence[int], quick: Stacks | None, least: int) -> Assignment:
        """Search with one block more in all at a time; `quick` are stacks found otherwise."""
        most = _count(quick) - 1 if quick else self.table.max_blocks * len(indices)
        for blocks in range(least, most + 1):
            found = self._choose(self._choices(indices, blocks), blocks)
            if found is not None:
                stacks = tuple(found[index] for index in indices)
                return Assignment(stacks, proved=True, bound=blocks)
            if self.exhausted:
                return self._best_found(indices, quick, blocks)
        return Assignment(quick, True, most + 1)

    def _best_found(self, indices: Sequence[int], quick: Stacks | None, bound: int) -> Assignment:
        """Give the best stacks that are found without a proof."""
        built = self._most_after_another(indices)
        if len(built) == len(indices):
            stacks = tuple(built[index] for index in indices)
            quick = min(quick or stacks, stacks, key=_count)
        return Assignment(quick, quick is not None and _count(quick) == bound, bound)

    def _most_after_another(self, indices: Sequence[int]) -> dict[int, tuple[int, ...]]:
        """Build stacks one after another in many orders: the most of them, then the fewest blocks.

        Of equally many the earlier ones are preferred.
        """
        # The same order at every call: the same request has the same answer.
        shuffled = Random(len(indices))  # noqa: S311
        best = self._one_after_another(indices)
        order = list(indices)
        for _ in range(MOST_ORDERS):
            if self.picked.left < _MOST_A_STACK * len(indices):
                break
            shuffled.shuffle(order)
            best = min(best, self._one_after_another(order), key=_worth)
        return dict(sorted(best.items()))

    def _one_after_another(self, indices: Iterable[int]) -> dict[int, tuple[int, ...]]:
        """Build one stack after another, passing over those for which there is nothing left."""
        used: set[int] = set()
        stacks: dict[int, tuple[int, ...]] = {}
        for index in indices:
            stack = self._next_stack(index, used)
            if stack is not None:
                stacks[index] = stack
                used.update(stack)
        return stacks

    def _next_stack(self, index: int, used: set[int]) -> tuple[int, ...] | None:
        """Give a stack of few blocks that are not used yet."""
        table, fewest = self.table, self.fewest(index)
        for height in self.wanted[index]:
            sizes = table.stack(height) or ()
            if len(sizes) == fewest and used.isdisjoint(stack := table.positions(sizes)):
                return stack
        work = Work(min(_MOST_A_STACK, self.picked.left))
        given = work.left
        for count, height in product(range(fewest, table.max_blocks + 1), self.wanted[index]):
            picked = table.pick(height, count, used, work)
            if picked is not None or work.exhausted:
                break
        self.picked.take(given - work.left)
        return picked

    def layer(self, index: int, count: int) -> Listed:
        """All stacks of one wanted height with exactly so many blocks."""
        key = (index, count)
        if key not in self._layers:
            parts = [
                part
                for height in self.wanted[index]
                for part in self.layers.stacks(height, count, self.cells)
            ]
            rows = np.concatenate([np.zeros((0, count), np.int16), *parts])
            blocks, most = len(self.table.sizes), self.table.max_blocks
            self._layers[key] = Listed.of(rows, self._fine, blocks, most)
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
                pair = self.layer(first, counts[0]), self.layer(second, counts[1])
                if self._pair(*pair, sum(counts)) is not None:
                    return excess
            if self.exhausted:
                break
        return None

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

    def _every(self, index: int, most: int = UNREACHED) -> Listed:
        """All stacks of one wanted height with up to so many blocks."""
        fewest = self.fewest(index)
        most = min(most, self.table.max_blocks)
        return Listed.joined([self.layer(index, count) for count in range(fewest, most + 1)])

    def _choices(self, indices: Sequence[int], blocks: int) -> dict[int, Listed]:
        """The stacks of each height that a sum of so many blocks may use."""
        slack = blocks - sum(map(self.fewest, indices))
        return {index: self._every(index, self.fewest(index) + slack) for index in indices}

    def _choose(self, choices: dict[int, Listed], blocks: int) -> dict[int, tuple[int, ...]] | None:
        """Choose a stack for each height, none sharing a block, of at most so many blocks in all.

        The fine blocks of all the stacks are chosen first: they are what most often fails.
        """
        fine = {index: choice.by_fine() for index, choice in choices.items()}
        for chosen in self._fine_choices(fine, blocks):
            kept = {i: choices[i].where(choices[i].fine == bits) for i, bits in chosen.items()}
            found = self._choose_stacks(kept, blocks)
            if found is not None or self.exhausted:
                return found
        return None

    def _fine_choices(
        self, fine: dict[int, dict[int, int]], blocks: int, used: int = 0
    ) -> Iterator[dict[int, int]]:
        """Give every choice of fine blocks for the heights that uses none of them twice.

        `fine` has for each height the choices there are, as bits, and the fewest blocks of each,
        which together must not be more than `blocks`.
        """
        free = {
            index: {bits: count for bits, count in choices.items() if not bits & used}
            for index, choices in fine.items()
        }
        if not self.compared.take(_FINE_COST * len(fine)) or not all(free.values()):
            return
        if not free:
            yield {}
            return
        slack = blocks - sum(min(choices.values()) for choices in free.values())
        index = min(free, key=lambda index: len(free[index]))
        choices = free.pop(index)
        least = min(choices.values())
        for bits, count in choices.items():
            if count - least <= slack:
                for rest in self._fine_choices(free, blocks - count, used | bits):
                    yield {index: bits, **rest}

    def _choose_stacks(
        self, choices: dict[int, Listed], blocks: int
    ) -> dict[int, tuple[int, ...]] | None:
        """Choose from these stacks alone.

        The height with the fewest stacks left goes first; for every choice the others keep only
        what shares no block with it, and what still fits the sum.
        """
        if any(len(choice) == 0 for choice in choices.values()):
            return None
        slack = blocks - sum(choice.least for choice in choices.values())
        if slack < 0:
            return None
        left = {
            index: choice.up_to(choice.least + slack)
            for index, choice in sorted(choices.items(), key=lambda entry: len(entry[1]))
        }
        first, *others = left
        if not others:
            return {first: left[first].stack(0)}
        if len(others) > 1:
            return self._choose_first(left, first, blocks)
        pair = self._pair(left[first], left[others[0]], blocks)
        return None if pair is None else dict(zip(left, pair, strict=True))

    def _choose_first(
        self, left: dict[int, Listed], first: int, blocks: int
    ) -> dict[int, tuple[int, ...]] | None:
        """Try the stacks of the first height one by one, and choose those of the others."""
        others = {index: choice for index, choice in left.items() if index != first}
        for part in left[first].parts(_AT_ONCE // max(map(len, others.values()))):
            if not self.compared.take(len(part) * sum(map(len, others.values()))):
                return None
            free = {index: free_of(part, other) for index, other in others.items()}
            least = part.counts + sum(
                other.least_of(free[index]) for index, other in others.items()
            )
            for place in (least <= blocks).nonzero()[0].tolist():
                if not self.compared.take(_STEP_COST):
                    return None
                rest = {index: other.where(free[index][place]) for index, other in others.items()}
                found = self._choose_stacks(rest, blocks - int(part.counts[place]))
                if found is not None:
                    return {first: part.stack(place), **found}
        return None

    def _pair(self, first: Listed, second: Listed, blocks: int) -> Stacks | None:
        """Give a stack of each, sharing no block, of at most so many blocks together, or None."""
        if not len(second):
            return None
        for part in first.parts(_AT_ONCE // len(second)):
            if not self.compared.take(len(part) * len(second)):
                return None
            free = free_of(part, second)
            free &= part.counts[:, None] + second.counts <= blocks
            if free.any():
                place, other = divmod(int(free.argmax()), len(second))
                return part.stack(place), second.stack(other)
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
        for size in range(len(able), 0, -1):
            for subset in combinations(able, size):
                result = self.solve(subset) if self.may_stand(subset) else None
                if self.exhausted:
                    return self._subset_built(able)
                if result is not None and result.stacks is not None:
                    return subset, result, True
        return (), Assignment((), True, 0), True

    def _subset_built(self, indices: Sequence[int]) -> tuple[tuple[int, ...], Assignment, bool]:
        """Give as many stacks as can be built one after another."""
        built = self._most_after_another(indices)
        bound = sum(map(self.fewest, built))
        return tuple(built), Assignment(tuple(built.values()), False, bound), False


def _worth(built: dict[int, tuple[int, ...]]) -> tuple[int, list[int], int]:
    """What stacks are preferred by: as many as can be, then earlier ones, then fewer blocks."""
    return -len(built), sorted(built), _count(tuple(built.values()))


def _count(stacks: Sequence[Sequence[int]]) -> int:
    return sum(map(len, stacks))
