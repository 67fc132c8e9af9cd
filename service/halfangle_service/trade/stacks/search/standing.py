"""Which of the stacks listed for several heights can stand at once: a search over sets of bits.

For each height the stacks still in question are a set, kept as the bits of one integer. Where a
stack is chosen for one height, the others keep only what shares no block with it; where one keeps
nothing, or only stacks of too many blocks, the choice is taken back. The fine blocks of all the
stacks are chosen before the stacks: there heights most often get in one another's way. Derived
here (forward checking: Haralick and Elliott, 1980, from memory).
"""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, field
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

from halfangle_service.trade.stacks.search.listed import Listed, free_of
from halfangle_service.trade.stacks.search.work import Work

Bits = int
Stack = tuple[int, ...]

#: What one step of a search costs for each height in question, in comparisons of two stacks.
_STEP_COST = 300
#: Comparisons made ahead for two heights, where that is all of them.
_AT_ONCE = 500_000


@dataclass(frozen=True)
class Standing:
    """A search among the stacks that `listed` gives for a height; comparisons count as `work`.

    `fine` is how many fine blocks there are.
    """

    listed: Callable[[int], Listed]
    fine: int
    work: Work
    _sets: dict[int, "_Sets"] = field(default_factory=dict)
    _free: dict[tuple[int, int], dict[int, Bits]] = field(default_factory=dict)

    def choose(self, indices: Sequence[int], blocks: int) -> tuple[Stack, ...] | None:
        """Choose a stack for each height, none sharing a block, of so many blocks in all at most.

        None where there are none, or where `work` is exhausted.
        """
        for index in indices:
            if index not in self._sets:
                self._sets[index] = _Sets(self.listed(index))
        fine = {index: self._sets[index].by_fine for index in indices}
        for chosen in self._fine_choices(fine, blocks, 0):
            left = {index: self._sets[index].with_fine[bits] for index, bits in chosen.items()}
            places = self._choose(left, blocks)
            if places is not None:
                return tuple(self._sets[index].listed.stack(places[index]) for index in indices)
            if self.work.exhausted:
                return None
        return None

    def _fine_choices(
        self, fine: dict[int, dict[Bits, int]], blocks: int, used: Bits
    ) -> Iterator[dict[int, Bits]]:
        """Give every choice of fine blocks for these heights that uses none of them twice.

        The stacks must not have more than so many blocks together.
        """
        free = {
            index: {bits: count for bits, count in choices.items() if not bits & used}
            for index, choices in fine.items()
        }
        if not all(free.values()) or not self.work.take(_STEP_COST * len(free)):
            return
        if not free:
            yield {}
            return
        needed = sum(min(map(int.bit_count, choices)) for choices in free.values())
        if needed > self.fine - used.bit_count():
            return
        least = {index: min(choices.values()) for index, choices in free.items()}
        fewest = sum(least.values())
        slack = blocks - fewest
        index = min(free, key=lambda index: len(free[index]))
        for bits, count in free.pop(index).items():
            if count - least[index] <= slack:
                for rest in self._fine_choices(free, blocks - count, used | bits):
                    yield {index: bits, **rest}

    def _choose(self, left: dict[int, Bits], blocks: int) -> dict[int, int] | None:
        """Choose a stack for each of these heights from the sets of those still in question."""
        if not left:
            return {}
        least = {index: self._sets[index].least(stacks) for index, stacks in left.items()}
        slack = blocks - sum(least.values())
        if slack < 0:
            return None
        left = {i: stacks & self._sets[i].fitting(least[i] + slack) for i, stacks in left.items()}
        index = min(left, key=lambda index: left[index].bit_count())
        stacks = left.pop(index)
        while stacks:
            if not self.work.take(_STEP_COST * (len(left) + 1)):
                return None
            lowest = stacks & -stacks
            stacks ^= lowest
            place = lowest.bit_length() - 1
            rest = {i: others & self._free_of(index, place, i) for i, others in left.items()}
            if not all(rest.values()):
                continue
            found = self._choose(rest, blocks - self._sets[index].counts[place])
            if found is not None:
                return {index: place, **found}
        return None

    def _free_of(self, index: int, place: int, other: int) -> Bits:
        """The stacks of another height that share no block with this one."""
        known = self._free.get((index, other))
        if known is None:
            known = self._free[index, other] = self._compared(index, other)
        if place not in known:
            masks = self._sets[index].listed.masks[:, place : place + 1]
            known[place] = self._bits(masks, other)[0]
        return known[place]

    def _compared(self, index: int, other: int) -> dict[int, Bits]:
        """Compare the stacks of two heights: all of them, or none yet where they are too many."""
        first, second = self._sets[index].listed, self._sets[other].listed
        if len(first) * len(second) > _AT_ONCE:
            return {}
        return dict(enumerate(self._bits(first.masks, other)))

    def _bits(self, masks: NDArray[np.uint64], other: int) -> list[Bits]:
        listed = self._sets[other].listed
        # A search that has no work left ends at its next step.
        self.work.take(masks.shape[1] * len(listed))
        return _bits_of(free_of(masks, listed.masks))


@dataclass(frozen=True)
class _Sets:
    """Sets of the stacks listed for one height."""

    listed: Listed

    @cached_property
    def counts(self) -> list[int]:
        """Blocks of each stack."""
        counts: list[int] = self.listed.counts.tolist()
        return counts

    @cached_property
    def with_fine(self) -> dict[Bits, Bits]:
        """The stacks with each choice of fine blocks, fewest blocks first."""
        kinds, first = np.unique(self.listed.fine, return_index=True)
        in_order = kinds[first.argsort()]
        sets = _bits_of(self.listed.fine == in_order[:, None])
        return dict(zip(in_order.tolist(), sets, strict=True))

    @cached_property
    def by_fine(self) -> dict[Bits, int]:
        """The fewest blocks with each choice of fine blocks."""
        return {fine: self.least(stacks) for fine, stacks in self.with_fine.items()}

    @cached_property
    def _up_to(self) -> list[Bits]:
        """For each count: the stacks of up to so many blocks."""
        most = self.listed.rows.shape[1]
        ends = self.listed.counts.searchsorted(np.arange(most + 1), "right")
        return [(1 << end) - 1 for end in ends.tolist()]

    def fitting(self, count: int) -> Bits:
        """The stacks of up to so many blocks."""
        return self._up_to[min(count, len(self._up_to) - 1)]

    def least(self, stacks: Bits) -> int:
        """Blocks of the first of these stacks, which has the fewest."""
        return self.counts[(stacks & -stacks).bit_length() - 1]


def _bits_of(rows: NDArray[np.bool_]) -> list[Bits]:
    """Give each row as the bits of an integer, the first one lowest."""
    packed = np.packbits(rows, axis=1, bitorder="little")
    return [int.from_bytes(row.tobytes(), "little") for row in packed]
