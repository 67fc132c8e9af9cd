"""Several stacks from one supply: what `blocks/stacks` and `blocks/day` have in common."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Any

from halfangle_service.errors import BeyondBound, Unreachable
from halfangle_service.operation import Source
from halfangle_service.quantities import Units, from_tenth_nm, plain, to_tenth_nm
from halfangle_service.topics.blocks.built import built_facts
from halfangle_service.topics.blocks.disjoint import Assignment, DisjointSearch
from halfangle_service.topics.blocks.models import BlockFinishFields
from halfangle_service.topics.blocks.models_stacks import BlockLeftOut, BlockToBorrow
from halfangle_service.topics.blocks.operations_supply import ENDS, Supply, finished_supply
from halfangle_service.topics.blocks.sets import nominal_sizes
from halfangle_service.topics.blocks.stacking import UNREACHED, StackTable, stack_table
from halfangle_service.topics.blocks.work import Work

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

    `search` counts the heights between the wear blocks.
    """

    supply: Supply
    units: Units
    heights: tuple[Height, ...]
    wear_ends: int
    search: DisjointSearch

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
    """Which heights stand, their stacks as positions in the box, and how sure that is."""

    indices: tuple[int, ...]
    stacks: tuple[tuple[int, ...], ...]
    bound: int
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
    table = stack_table(supply.box.sizes, max_blocks - ends)
    table.require_bounded()
    wear = sum(piece.size for piece in supply.wear[:ends])
    wanted = [_inner_heights(table, height, wear, request.units) for height in heights]
    search = DisjointSearch(table, wanted)
    return Several(supply, request.units, tuple(heights), ends, search)


def _inner_heights(table: StackTable, height: Height, wear: int, units: Units) -> list[int]:
    """Heights between wear blocks, within the tolerance, that some stack has; nearest first."""
    if height.tolerance > MOST_STEPS_OFF * table.step:
        step = from_tenth_nm(table.step, units)
        raise BeyondBound(
            f"The tolerance of {height.name} spans more than {MOST_STEPS_OFF} steps of these "
            f"blocks, {plain(step)} {units} each.",
            fields={
                f"{height.path}/tolerance": f"should be at most {plain(MOST_STEPS_OFF * step)}"
            },
        )
    inner = height.asked - wear
    reached = table.within(inner - height.tolerance, inner + height.tolerance)
    found = [reach for reach, _ in reached if reach > 0]
    return sorted(found, key=lambda reach: (abs(reach - inner), reach))


def best_of(search: DisjointSearch, indices: Sequence[int]) -> Chosen:
    """Give stacks for all of the heights, or for as many of them as can stand at once."""
    able = [index for index in indices if search.fewest(index) != UNREACHED]
    whole = search.solve(able) if len(able) == len(indices) else None
    if whole is not None and whole.stacks is not None:
        return _chosen(indices, whole, whole.proved)
    subset, assignment, most_proved = search.largest_subset(able)
    # Where a search for all of them ended early, that no more can stand is not proved.
    proved = most_proved and assignment.proved and (whole is None or whole.proved)
    return _chosen(subset, assignment, proved)


def _chosen(indices: Sequence[int], assignment: Assignment, proved: bool) -> Chosen:
    return Chosen(tuple(indices), assignment.stacks or (), assignment.bound, proved)


def left_out(several: Several, index: int, chosen: Chosen) -> BlockLeftOut:
    """Say why a height has no stack beside those that stand, and which block would give it one."""
    helpers = list(_blocks_to_borrow(several, index, chosen))
    return BlockLeftOut(
        name=several.heights[index].name,
        reason=_why(several, index, chosen.indices),
        would_make_it_possible=helpers,
    )


def _why(several: Several, index: int, kept: Sequence[int]) -> str:
    search, names = several.search, several.names
    if search.fewest(index) == UNREACHED:
        return why_unbuildable(several, index)
    clashes = [names[other] for other in kept if _clash(search, index, other)]
    if clashes:
        return (
            f"It and {', '.join(clashes)} cannot stand at once: every stack of up to "
            f"{search.table.max_blocks} blocks for the one shares a block with every one for the "
            "other."
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
    wear = sum(piece.size for piece in several.supply.wear[: several.wear_ends])
    if height.asked <= wear:
        return (
            f"The wear blocks alone are {plain(from_tenth_nm(wear, units))} {units} high; "
            f"{plain(from_tenth_nm(height.asked, units))} {units} leaves nothing for the stack."
        )
    nearest = [stack for stack in table.nearest(height.asked - wear) if stack]
    words = " and ".join(f"{plain(from_tenth_nm(sum(stack) + wear, units))}" for stack in nearest)
    return (
        f"No stack of up to {table.max_blocks} of these blocks is "
        f"{plain(from_tenth_nm(height.asked, units))} {units} high by itself; nearest {words} "
        f"{units}."
    )


def _blocks_to_borrow(several: Several, index: int, chosen: Chosen) -> Iterator[BlockToBorrow]:
    """Blocks that would let a height stand beside the stacks that stand, those away first.

    One after another is put in and the rest picked from the blocks that are left; all of a few
    blocks at most, so that none given does not mean that there is none.
    """
    table, units = several.search.table, several.units
    wear = sum(piece.size for piece in several.supply.wear[: several.wear_ends])
    inner = several.heights[index].asked - wear
    used = {position for stack in chosen.stacks for position in stack}
    away = {piece.size: state for piece, state in reversed(several.supply.away)}
    found: list[tuple[int, int]] = []
    work = Work(_MOST_PICKED)
    for size in dict.fromkeys([*away, *nominal_sizes(units)]):
        rest = inner - size
        for count in range(table.count(rest), table.max_blocks) if rest > 0 else ():
            if table.pick(rest, count, used, work) is not None:
                found.append((count, size))
                break
        if rest == 0:
            found.append((0, size))
    found.sort(key=lambda entry: (entry[1] not in away, entry[0]))
    owned = set(table.sizes)
    for _, size in found[:_NAMED]:
        where = away.get(size, "another of this size" if size in owned else "not in the box")
        yield BlockToBorrow(block=from_tenth_nm(size, units), where=where)


def to_height(name: str, height: float, tolerance: float, units: Units, path: str) -> Height:
    """Give a height of a request in 0.1 nm."""
    return Height(name, to_tenth_nm(height, units), to_tenth_nm(tolerance, units), path)
