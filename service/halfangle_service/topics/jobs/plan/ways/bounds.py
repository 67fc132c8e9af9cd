"""How much work the ways of one plan may take: counted, so that all of them end within a second.

Most of it is shared out beforehand, so that no way goes by what the others took before it.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Self

from halfangle_service.errors import BeyondBound
from halfangle_service.topics.jobs.plan.ways.way import ShopBox
from halfangle_service.trade.sine.low_stack import DifferenceTable, difference_table
from halfangle_service.trade.stacks.search.stacking import SizesInSteps, StackTable
from halfangle_service.trade.stacks.search.work import Left
from halfangle_service.trade.wording import plain

#: Entries that the tables of stacks of all sets may visit, and those of differences: a quarter of a
#: second each.
MOST_ENTRIES = 1_000_000_000
#: Blocks tried for stacks under both rolls, in all ways: a quarter of a second.
MOST_TRIES = 200_000
#: Searches for stacks that stand at once, as parts of the work of one request: under a second.
_SEARCHES = 2.0
#: Ways to lay the work on one compound plate.
_LAYINGS = 8
#: A table is made up to so many times the height that is asked of it; seldom it goes on from there.
_BEYOND = 2


@dataclass(frozen=True, slots=True)
class WorkShare:
    """The part of a plan's work that one of its `ways` may take.

    Tables are made once a set of blocks; each may visit `entries`. `searches` is what is left for
    stacks that stand at once: few ways need much of that, and it is not known before which. The
    `tables` are those of the sets, held so that each is made once a plan.
    """

    ways: int
    entries: int
    searches: Left
    tables: tuple[StackTable | DifferenceTable, ...]

    @classmethod
    def of(cls, boxes: Sequence[ShopBox], max_blocks: int, ways: int) -> "WorkShare":
        """Share the work out: what sets of little work leave is for those of more."""
        left, share = MOST_ENTRIES, MOST_ENTRIES
        sets = [box.supply.box for box in boxes]
        tables = [blocks.table(max_blocks) for blocks in sets]
        needs = sorted(table.work for table in tables)
        for place, need in enumerate(needs):
            share = left // (len(needs) - place)
            left -= min(need, share)
        both = [difference_table(blocks.sizes, max_blocks) for blocks in sets]
        return cls(max(ways, 1), share, Left(_SEARCHES), (*tables, *both))

    @classmethod
    def of_one_way(cls) -> Self:
        """All of the work, for a way by one stack."""
        return cls(1, MOST_ENTRIES, Left(_SEARCHES), ())

    @property
    def tries(self) -> int:
        """Blocks that may be tried for stacks under both rolls."""
        return MOST_TRIES // self.ways

    def require_stacks(self, table: StackTable, height: float) -> None:
        """Raise BeyondBound where stacks up to a height (0.1 nm) would take more than the share."""
        table.require_bounded()
        self._require(table, table.work_to(round(_BEYOND * height / table.step)))

    def require_differences(self, table: DifferenceTable) -> None:
        """Raise BeyondBound where differences of stacks would take more than the share."""
        self._require(table, table.work)

    def require_differences_of_a_way(self, table: DifferenceTable) -> None:
        """The same of a table that one way alone makes, of the blocks that are left to it."""
        self._require(table, table.work * self.ways * _LAYINGS)

    def _require(self, table: SizesInSteps, work: int) -> None:
        if work > self.entries:
            raise BeyondBound(
                f"{len(table.sizes)} blocks with a common step of {plain(table.step / 1e7)} mm "
                f"would take a table of {work} entries; the other sets of the plan leave "
                f"{self.entries}. Round the sizes to their nominals, or name fewer sets.",
                fields={"sizes": f"should share a coarser step than {plain(table.step / 1e7)} mm"},
            )
