"""Several stacks from one supply: what `blocks/stacks` and `blocks/day` have in common."""

from collections.abc import Container, Iterator, Sequence
from dataclasses import dataclass
from typing import Any

from halfangle_service.errors import BeyondBound, Unreachable
from halfangle_service.fields import Units, from_tenth_nm, to_tenth_nm
from halfangle_service.fields.advisories import Advisory, caution
from halfangle_service.fields.blocks import BlockFinishFields
from halfangle_service.fields.stacks import built_facts
from halfangle_service.fields.supply import (
    ENDS,
    Supply,
    finished_supply,
    where_else,
)
from halfangle_service.operation import Source
from halfangle_service.topics.blocks.models_stacks import BlockLeftOut, BlockToBorrow
from halfangle_service.trade.stacks.search.disjoint import DisjointSearch
from halfangle_service.trade.stacks.search.stacking import UNREACHED, StackTable
from halfangle_service.trade.stacks.search.work import Work
from halfangle_service.trade.wording import plain

METHOD = Source(
    citation="Derived here: a search that raises the number of blocks in all by one at a time, "
    "bounded from below by each height alone and by every pair; checked against an independent "
    "exact solver.",
    standing="derived",
)
LARGEST = (
    "12 heights from 500 blocks; 8 million blocks tried to list stacks and 60 million comparisons "
    "of stacks, then the best found and the proved gap"
)
#: Most steps of the set that the tolerance of a height may span, either way.
MOST_STEPS_OFF = 100
#: How many blocks that would let a height stand are named, and how long they are looked for.
_NAMED = 3
_NEAREST_FEW = 3
_MOST_PICKED = 20_000


@dataclass(frozen=True, slots=True)
class Height:
    """A height asked for: its name, the height itself and its tolerance in 0.1 nm."""

    name: str
    asked: int
    tolerance: int
    path: str


@dataclass(frozen=True, slots=True)
class Several:
    """Heights to be built from one supply, each with `wear_ends` wear blocks.

    `search` counts the heights between the wear blocks; `max_blocks` is what the request allows
    each stack, wear blocks included.
    """

    supply: Supply
    units: Units
    heights: tuple[Height, ...]
    max_blocks: int
    wear_ends: int
    search: DisjointSearch

    @property
    def wear_height(self) -> int:
        """Nominal height of the wear blocks of one stack in 0.1 nm."""
        return sum([piece.size for piece in self.supply.wear[: self.wear_ends]])

    @property
    def most_at_once(self) -> int:
        """How many stacks the wear blocks are enough for."""
        enough = len(self.supply.wear) // self.wear_ends if self.wear_ends else len(self.heights)
        return min(enough, len(self.heights))

    @property
    def names(self) -> tuple[str, ...]:
        """Names of the heights."""
        return tuple(height.name for height in self.heights)

    def facts(self, place: int, positions: Sequence[int], nth: int) -> dict[str, Any]:
        """Facts of the stack that stands for a height as the nth, as the fields of BlockBuilt."""
        pieces = self.supply.box.pick(sorted(positions))
        wear = self.supply.wear[nth * self.wear_ends : (nth + 1) * self.wear_ends]
        return built_facts(pieces, wear, self.heights[place].asked, self.units)


@dataclass(frozen=True, slots=True)
class Chosen:
    """Which heights stand, their stacks as positions in the box, and how sure that is.

    No stacks for these heights have fewer blocks than `bound`, and no more than `most` heights can
    stand at once; `proved` says that neither leaves a gap.
    """

    indices: tuple[int, ...]
    stacks: tuple[tuple[int, ...], ...]
    bound: int
    most: int
    proved: bool

    @property
    def count(self) -> int:
        """Blocks in all stacks, without wear blocks."""
        return sum(map(len, self.stacks))


def read_several(
    request: BlockFinishFields, heights: Sequence[Height], at_once: int, max_blocks: int
) -> Several:
    """Give a search for these heights, `at_once` of which stand at a time.

    Raises BeyondBound where the box is too fine for a table, or a tolerance too wide.
    """
    ends = ENDS[request.wear_blocks]
    supply = finished_supply(request, at_once)
    if max_blocks <= ends:
        raise Unreachable(
            "The wear blocks leave no block for the stacks.",
            fields={"max_blocks": f"should be more than {ends}"},
        )
    table = supply.box.table(max_blocks - ends)
    table.require_bounded()
    wear = sum([piece.size for piece in supply.wear[:ends]])
    wanted = [_inner_heights(table, height, wear, request.units) for height in heights]
    search = DisjointSearch(table, wanted)
    return Several(supply, request.units, tuple(heights), max_blocks, ends, search)


def _inner_heights(table: StackTable, height: Height, wear: int, units: Units) -> list[int]:
    """Heights between wear blocks, within the tolerance, that some stack has; nearest first."""
    if height.tolerance > MOST_STEPS_OFF * table.step:
        step = from_tenth_nm(table.step, units)
        raise BeyondBound(
            f"The tolerance of {height.name} spans more than {MOST_STEPS_OFF} steps of these "
            f"blocks, {plain(step, 10)} {units} each.",
            fields={
                f"{height.path}/tolerance": f"should be at most {plain(MOST_STEPS_OFF * step, 10)}"
            },
        )
    inner = height.asked - wear
    reached = table.within(inner - height.tolerance, inner + height.tolerance)
    found = [reach for reach, _ in reached if reach > 0]
    return sorted(found, key=lambda reach: (abs(reach - inner), reach))


def best_of(several: Several, indices: Sequence[int]) -> Chosen:
    """Give stacks for all of the heights, or for as many of them as can stand at once."""
    search, most = several.search, several.most_at_once
    able = [index for index in indices if search.fewest(index) != UNREACHED]
    if len(able) == len(indices) <= most:
        whole = search.solve(able)
        if whole.stacks is not None:
            return Chosen(tuple(indices), whole.stacks, whole.bound, len(able), whole.proved)
    found = search.largest_subset(able, most)
    stacks, bound = found.assignment.stacks or (), found.assignment.bound
    return Chosen(found.indices, stacks, bound, found.most, found.proved)


def left_out(several: Several, index: int, chosen: Chosen) -> BlockLeftOut:
    """Say why a height has no stack beside those that stand, and which block would give it one."""
    helpers = list(_blocks_to_borrow(several, index, chosen))
    return BlockLeftOut(
        name=several.heights[index].name,
        reason=_why(several, index, chosen),
        would_make_it_possible=helpers,
    )


def not_all(several: Several, left: Sequence[str], where: str) -> Iterator[Advisory]:
    """Caution that some heights have no stack, and what to do: not the same for all reasons."""
    search, names = several.search, several.names
    alone = [name for name in left if search.fewest(names.index(name)) == UNREACHED]
    beside = [name for name in left if name not in alone]
    if beside:
        yield caution(
            "not-all-heights",
            f"{where}{', '.join(beside)} cannot stand beside the others, or no way was found: "
            "build in turn, take more blocks a stack, or borrow a block.",
        )
    if alone:
        yield caution(
            "no-such-height",
            f"{where}No stack of these blocks has the height of {', '.join(alone)}, not even "
            "alone.",
        )


def _why(several: Several, index: int, chosen: Chosen) -> str:
    search, names = several.search, several.names
    if search.fewest(index) == UNREACHED:
        return why_unbuildable(several, index)
    if len(chosen.indices) == several.most_at_once:
        size = plain(from_tenth_nm(several.supply.wear[0].size, several.units), 10)
        most = "one stack" if several.most_at_once == 1 else f"{several.most_at_once} stacks"
        return (
            f"The wear blocks of {size} {several.units}, {len(several.supply.wear)} in number, are "
            f"enough for {most} at once."
        )
    clashes = [names[other] for other in chosen.indices if _clash(search, index, other)]
    if clashes:
        return (
            f"It and {', '.join(clashes)} cannot stand at once: every stack of up to "
            f"{several.max_blocks} blocks for the one shares a block with every one for the other."
        )
    if not chosen.proved:
        return (
            "It can be built alone; that it cannot stand beside the others is not proved, but no "
            "stack for it was found."
        )
    return (
        "It can be built alone, but the box has too few of the blocks that it and the others need "
        "at once."
    )


def _clash(search: DisjointSearch, first: int, second: int) -> bool:
    """True where two heights cannot stand at once, and that is proved."""
    return search.pair_excess(first, second) is None and not search.exhausted


def why_unbuildable(several: Several, index: int) -> str:
    """Say that no stack has a height, and which heights near it there are."""
    table, units, height = several.search.table, several.units, several.heights[index]
    asked, wear = plain(from_tenth_nm(height.asked, units), 10), several.wear_height
    if height.asked <= wear:
        alone = plain(from_tenth_nm(wear, units), 10)
        return (
            f"The wear blocks alone are {alone} {units} high; {asked} {units} leaves nothing for "
            "the stack."
        )
    nearest = [stack for stack in table.nearest(height.asked - wear) if stack]
    words = " and ".join(plain(from_tenth_nm(sum(stack) + wear, units), 10) for stack in nearest)
    return (
        f"No stack of up to {several.max_blocks} of these blocks is {asked} {units} high by "
        f"itself; nearest {words} {units}."
    )


def _blocks_to_borrow(several: Several, index: int, chosen: Chosen) -> Iterator[BlockToBorrow]:
    """Blocks that would let a height stand beside the stacks that stand, those away first.

    One after another is put in and the rest picked from the blocks that are left, within a bound:
    none given does not mean that there is none. No such block helps where wear blocks are short.
    """
    units, height = several.units, several.heights[index]
    if len(chosen.indices) == several.most_at_once and several.wear_ends:
        return
    used = {position for stack in chosen.stacks for position in stack}
    where = where_else(several.supply, units)
    away = {piece.size for piece, _ in several.supply.away}
    inner = height.asked - several.wear_height
    found: list[tuple[int, int]] = []
    work = Work(_MOST_PICKED)
    for size in where:
        count = _fewest_beside(several, inner - size, height.tolerance, used, work)
        if count is not None:
            found.append((count, size))
    found.sort(key=lambda entry: (entry[1] not in away, entry[0]))
    for _, size in found[:_NAMED]:
        yield BlockToBorrow(block=from_tenth_nm(size, units), where=where[size])


def _fewest_beside(
    several: Several, rest: int, tolerance: int, used: Container[int], work: Work
) -> int | None:
    """Fewest unused blocks that make up a rest within the tolerance, 0 for none; None if none do.

    Of a wide tolerance the nearest few heights are tried.
    """
    if abs(rest) <= tolerance:
        return 0
    table = several.search.table
    most = several.max_blocks - several.wear_ends - 1
    reached = [reach for reach, _ in table.within(rest - tolerance, rest + tolerance)]
    for reach in sorted(reached, key=lambda reach: abs(reach - rest))[:_NEAREST_FEW]:
        for count in range(table.count(reach), most + 1):
            if table.pick(reach, count, used, work) is not None:
                return count
    return None


def to_height(name: str, height: float, tolerance: float, units: Units, path: str) -> Height:
    """Give a height of a request in 0.1 nm."""
    return Height(name, to_tenth_nm(height, units), to_tenth_nm(tolerance, units), path)
