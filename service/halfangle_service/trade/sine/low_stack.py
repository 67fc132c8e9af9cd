"""Two stacks from one set, one under each roll, with the fewest blocks. Integers of 0.1 nm.

A table holds, for each difference (high less low) in steps of the set's smallest step, the fewest
blocks that reach it when every block stands under the high roll, under the low roll or in the box:
a dynamic programme over signed sums, each block once. Derived here. A difference that it does not
hold does not exist; a search guided by it then names the blocks.
"""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from halfangle_service.errors import BeyondBound
from halfangle_service.trade.stacks.search.kept import Kept
from halfangle_service.trade.stacks.search.stacking import (
    ALONE,
    COUNTS,
    UNREACHED,
    SizesInSteps,
    StackTable,
    fewest_of,
    one_more,
    stack_table,
)
from halfangle_service.trade.wording import plain

#: Most entries of a table, and most entries times blocks: about a second of work.
MOST_ENTRIES = 20_000_000
MOST_WORK = 2_000_000_000
#: Most blocks tried in a search that has to meet further conditions: under a second of work.
MOST_TRIES = 500_000
#: Most steps of the set that a tolerance may span.
MOST_CANDIDATES = 2_000

#: When a stack goes under the low roll too; see `Preference`.
LowStackUse = Literal["if-needed", "fewest-blocks", "always", "never"]


@dataclass(frozen=True, slots=True)
class Pair:
    """Blocks under the high and under the low roll, largest first; `low` may be empty."""

    high: tuple[int, ...]
    low: tuple[int, ...]

    @property
    def difference(self) -> int:
        """Height of the high stack over the low one."""
        return sum(self.high) - sum(self.low)

    @property
    def count(self) -> int:
        """How many blocks in both."""
        return len(self.high) + len(self.low)


@dataclass(frozen=True, slots=True)
class Conditions:
    """Least heights of both stacks; `low_needed` asks for a stack under the low roll at all."""

    smallest_high: int = 0
    smallest_low: int = 0
    low_needed: bool = False

    def met_by(self, pair: Pair) -> bool:
        """True where a pair keeps them; a low stack that is not there need have no height."""
        low = sum(pair.low)
        return sum(pair.high) >= self.smallest_high and (
            low >= self.smallest_low if pair.low else not self.low_needed
        )

    def within_reach_of(self, pair: Pair, room: int) -> bool:
        """False where not even `room` more under one roll would meet the least heights."""
        low_counts = self.low_needed or bool(pair.low)
        return sum(pair.high) + room >= self.smallest_high and (
            not low_counts or sum(pair.low) + room >= self.smallest_low
        )


@dataclass(frozen=True)
class DifferenceTable(SizesInSteps):
    """The fewest blocks for every difference, high less low, that so many blocks reach."""

    @cached_property
    def _lookup(self) -> bytes:
        """Fewest blocks for the differences 0 … +reach; UNREACHED where there are none.

        Those of −1 … −reach are the same. Raises BeyondBound where the table would be too long.
        """
        length = 2 * self.reach + 1
        if length > MOST_ENTRIES or length * len(self.sizes) > MOST_WORK:
            raise BeyondBound(
                f"{len(self.sizes)} blocks with a common step of {plain(self.step / 1e7)} mm make "
                f"{length} differences; the work is bounded to {MOST_ENTRIES} differences and "
                f"{MOST_WORK} differences times blocks. Round the sizes to their nominals.",
                fields={"sizes": f"should share a coarser step than {plain(self.step / 1e7)} mm"},
            )
        counts, reach = np.zeros(self.reach + 1, COUNTS), 0
        # Blocks join from the smallest up, so that only differences already in reach are visited.
        for size, reach_with in zip(reversed(self.sizes), self.reach_of_each, strict=True):
            self._add_block(counts, size // self.step, reach)
            reach = reach_with
        return fewest_of(counts, self.max_blocks)

    @staticmethod
    def _add_block(counts: NDArray[np.uint8], step: int, reach: int) -> None:
        """Let one more block stand under either roll; differences up to `reach` are there."""
        with_block = one_more(counts[: reach + 1])
        higher = counts[step : step + reach + 1]
        higher |= with_block[: len(higher)]
        if reach >= step:
            counts[: reach + 1 - step] |= with_block[step:]
        turned = min(step, reach)  # differences less than the block: the low stack is the higher
        counts[step - turned : step] |= with_block[turned:0:-1]
        counts[step] |= ALONE

    @cached_property
    def _fewest(self) -> NDArray[np.uint8]:
        return np.frombuffer(self._lookup, np.uint8)

    def count(self, difference: int) -> int:
        """Fewest blocks for a difference in 0.1 nm, UNREACHED where there are none."""
        quotient, rest = divmod(abs(difference), self.step)
        if rest or quotient > self.reach:
            return UNREACHED
        return self._lookup[quotient]

    def candidates(self, target: float, within: tuple[float, float] | None = None) -> list[int]:
        """Differences that can be reached from the least to the greatest that will do.

        The nearest to the target first. Without `within`: to half a step of the set. Raises
        BeyondBound where it spans too many steps.
        """
        low, high = within or (target - self.step / 2.0, target + self.step / 2.0)
        tolerance = (high - low) / 2.0
        if 2.0 * tolerance > MOST_CANDIDATES * self.step:
            raise BeyondBound(
                f"A tolerance of ±{plain(tolerance / 1e7)} mm spans more than {MOST_CANDIDATES} "
                f"steps of {plain(self.step / 1e7)} mm.",
                fields={
                    "tolerance_arcsec": f"should be at most {MOST_CANDIDATES // 2} steps of the set"
                },
            )
        first = max(math.ceil(low / self.step), -self.reach)
        last = min(math.floor(high / self.step), self.reach)
        if first > last:
            return []
        steps = np.arange(first, last + 1)
        found = (steps[self._fewest[np.abs(steps)] != UNREACHED] * self.step).tolist()
        return sorted(found, key=lambda difference: (abs(difference - target), difference))

    def nearest(self, target: float) -> list[int]:
        """The differences nearest to a target that can be reached: at or below, at or above."""
        upward = np.flatnonzero(self._fewest != UNREACHED) * self.step
        reached = np.concatenate([-upward[:0:-1], upward])
        position = int(np.searchsorted(reached, target))
        return [int(d) for d in reached[max(position - 1, 0) : position + 1]]


@dataclass
class _Search:
    """A search for blocks with signs, larger ones first, bounded by a count of tries."""

    table: DifferenceTable
    conditions: Conditions
    tries_left: int = MOST_TRIES

    def find(self, difference: int, blocks: int) -> Pair | None:
        """Give a pair of at most so many blocks, or None."""
        return self._extend(difference, blocks, 0, Pair((), ()))

    def _extend(self, rest: int, blocks: int, first: int, pair: Pair) -> Pair | None:
        """Go on from a pair whose difference still lacks `rest`, with the blocks from `first`."""
        if rest == 0 and pair.count and self.conditions.met_by(pair):
            return pair
        sizes = self.table.sizes
        if blocks == 0 or first == len(sizes):
            return None
        if not self.conditions.within_reach_of(pair, blocks * sizes[first]):
            return None
        for position in range(first, len(sizes)):
            self.tries_left -= 1
            if self.tries_left < 0 or sizes[position] * blocks < abs(rest):
                return None
            if position > first and sizes[position] == sizes[position - 1]:
                continue  # the same size again at this place would repeat the search just made
            found = self._try(rest, blocks, position, pair)
            if found is not None:
                return found
        return None

    def _try(self, rest: int, blocks: int, position: int, pair: Pair) -> Pair | None:
        """Put one block under the high roll, then under the low one, where the table allows."""
        size, count = self.table.sizes[position], self.table.count
        if count(rest - size) < blocks:
            more = Pair((*pair.high, size), pair.low)
            found = self._extend(rest - size, blocks - 1, position + 1, more)
            if found is not None:
                return found
        if count(rest + size) < blocks:
            more = Pair(pair.high, (*pair.low, size))
            return self._extend(rest + size, blocks - 1, position + 1, more)
        return None


def fewest_pair(
    table: DifferenceTable,
    differences: Iterable[int],
    conditions: Conditions,
    most_tries: int = MOST_TRIES,
) -> tuple[Pair | None, bool]:
    """Give the pair of the fewest blocks for any of the differences, and whether that is proved.

    Of equal counts the earlier difference wins. The search goes up by counts, so what it finds is
    the fewest. No pair and False: the bound on the work was reached before the end.
    """
    wanted = list(differences)
    search = _Search(table, conditions, most_tries)
    for blocks in range(1, table.max_blocks + 1):
        for difference in wanted:
            if table.count(difference) > blocks:
                continue
            pair = search.find(difference, blocks)
            if pair is not None or search.tries_left < 0:
                return pair, pair is not None
    return None, True


_KEPT: Kept[tuple[tuple[int, ...], int], DifferenceTable] = Kept(
    lambda key: DifferenceTable(*key), lambda table: table.reach, MOST_ENTRIES
)


def difference_table(sizes: Sequence[int], max_blocks: int) -> DifferenceTable:
    """Give the table of a set, made once and kept; `sizes` in 0.1 nm, one entry a block."""
    return _KEPT.get((tuple(sorted(sizes, reverse=True)), min(max_blocks, len(sizes))))


@dataclass(frozen=True, slots=True)
class Preference:
    """Which stacks are preferred.

    `if-needed`: one under the low roll only where no single stack of up to `max_single_blocks` does
    it; `fewest-blocks`: wherever it saves a block; `always`; `never`, as for a plate that pivots on
    its low roll.
    """

    use: LowStackUse
    max_single_blocks: int
    conditions: Conditions
    most_tries: int = MOST_TRIES

    def singles(self, table: DifferenceTable) -> StackTable:
        """Table of the single stacks that will do, from the same blocks."""
        most = table.max_blocks if self.use == "never" else self.max_single_blocks
        return stack_table(table.sizes, min(most, table.max_blocks))

    def choose(self, table: DifferenceTable, differences: Sequence[int]) -> Pair | None:
        """Give the pair preferred for any of the differences, None where there is none.

        Raises BeyondBound where the search reached its bound on the work.
        """
        if self.use in {"if-needed", "never"}:
            single = self._single(table, differences)
            if single is not None or self.use == "never":
                return single
        pair, finished = fewest_pair(table, differences, self.conditions, self.most_tries)
        if pair is None and not finished:
            raise BeyondBound(
                "The search for two stacks under these conditions reached its bound on the work.",
                fields={"smallest_low_stack": "should be lower, or max_blocks smaller"},
            )
        return pair

    def nearest(self, table: DifferenceTable, target: float) -> list[int]:
        """The differences nearest to a target that can be built, conditions aside."""
        if self.use == "never":
            stacks = self.singles(table).nearest(round(target))
            return sorted({sum(stack) for stack in stacks if stack})
        return table.nearest(target)

    def _single(self, table: DifferenceTable, differences: Sequence[int]) -> Pair | None:
        """Give the single stack of the fewest blocks for any of the differences, or None."""
        singles = self.singles(table)
        least = max(self.conditions.smallest_high, 1)
        stacks = [singles.stack(difference) for difference in differences if difference >= least]
        found = [stack for stack in stacks if stack is not None]
        return Pair(min(found, key=len), ()) if found else None
