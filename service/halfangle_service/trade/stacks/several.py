"""Several stacks from one box, no block used twice: which heights can stand at once. 0.1 nm."""

from collections import Counter
from collections.abc import Container, Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import combinations

from halfangle_service.errors import BeyondBound
from halfangle_service.trade.stacks.one_stack import require_room
from halfangle_service.trade.stacks.search.disjoint import DisjointSearch
from halfangle_service.trade.stacks.search.stacking import UNREACHED, StackTable
from halfangle_service.trade.stacks.search.work import Work
from halfangle_service.trade.stacks.supply import Box, Piece
from halfangle_service.trade.units import Units, from_tenth_nm
from halfangle_service.trade.wording import plain

#: What bounds the search, in words.
LARGEST = (
    "12 heights from 500 blocks; 8 million blocks tried to list stacks and 60 million comparisons "
    "of stacks, then the best found and the proved gap"
)
#: Most steps of the set that the tolerance of a height may span, either way.
MOST_STEPS_OFF = 100
#: How long a block is looked for that would let a height stand beside the others.
_NEAREST_FEW = 3
_MOST_PICKED = 20_000


@dataclass(frozen=True, slots=True)
class Height:
    """A height asked for: its name, the height itself and its tolerance.

    `path` is its place in the request, for refusals.
    """

    name: str
    asked: int
    tolerance: int
    path: str


@dataclass(frozen=True, slots=True)
class Several:
    """Heights to be built from one box, each with `wear_ends` of the wear blocks.

    `search` counts the heights between the wear blocks; `max_blocks` is what each stack may have,
    wear blocks included. What is said of them is said in `units`.
    """

    units: Units
    box: Box
    wear: tuple[Piece, ...]
    heights: tuple[Height, ...]
    max_blocks: int
    wear_ends: int
    search: DisjointSearch

    @property
    def wear_height(self) -> int:
        """Nominal height of the wear blocks of one stack."""
        return _height(self.wear[: self.wear_ends])

    @property
    def most_at_once(self) -> int:
        """How many stacks the wear blocks are enough for."""
        enough = len(self.wear) // self.wear_ends if self.wear_ends else len(self.heights)
        return min(enough, len(self.heights))

    @property
    def names(self) -> tuple[str, ...]:
        """Names of the heights."""
        return tuple(height.name for height in self.heights)

    def buildable(self, place: int) -> bool:
        """True where some stack has this height, whatever stands beside it."""
        return self.search.fewest(place) != UNREACHED

    def clash(self, first: int, second: int) -> bool:
        """True where two heights cannot stand at once, and that is proved."""
        return self.search.pair_excess(first, second) is None and not self.search.exhausted

    def stand_together(self, first: int, second: int) -> bool | None:
        """Whether two heights can stand at once; None where that is not known."""
        if self.most_at_once < 2:
            return False
        if self.search.pair_excess(first, second) is not None:
            return True
        return None if self.search.exhausted else False

    def renewed(self, share: float) -> "Several":
        """The same heights with this share of the work of a search, and none of it done."""
        return replace(self, search=self.search.renewed(share))

    def pieces(
        self, positions: Sequence[int], nth: int
    ) -> tuple[tuple[Piece, ...], tuple[Piece, ...]]:
        """Blocks and wear blocks of the stack at these positions that is the nth of all."""
        wear = self.wear[nth * self.wear_ends : (nth + 1) * self.wear_ends]
        return self.box.pick(sorted(positions)), wear


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


def search_for(
    box: Box,
    wear: tuple[Piece, ...],
    wear_ends: int,
    heights: Sequence[Height],
    max_blocks: int,
    units: Units,
) -> Several:
    """Give a search for these heights; a refusal speaks of lengths in `units`.

    Raises Unreachable where the wear blocks leave no block, BeyondBound where the box is too fine
    for a table, or a tolerance too wide.
    """
    require_room(max_blocks, wear_ends)
    table = box.table(max_blocks - wear_ends)
    table.require_bounded()
    ends = _height(wear[:wear_ends])
    wanted = [_inner_heights(table, height, ends, units) for height in heights]
    search = DisjointSearch(table, wanted)
    return Several(units, box, wear, tuple(heights), max_blocks, wear_ends, search)


def _height(pieces: Sequence[Piece]) -> int:
    return sum([piece.size for piece in pieces])


def _inner_heights(table: StackTable, height: Height, wear: int, units: Units) -> list[int]:
    """Heights between wear blocks, within the tolerance, that some stack has; nearest first."""
    if height.tolerance > MOST_STEPS_OFF * table.step:
        step = from_tenth_nm(table.step, units)
        raise BeyondBound(
            f"The tolerance of {height.name} spans more than {MOST_STEPS_OFF} steps of these "
            f"blocks, {plain(step, 10)} {units} each.",
            fields={
                f"{height.path}/tolerance": f"should be at most "
                f"{plain(MOST_STEPS_OFF * step, 10)} {units}"
            },
        )
    inner = height.asked - wear
    reached = table.within(inner - height.tolerance, inner + height.tolerance)
    found = [reach for reach, _ in reached if reach > 0]
    return sorted(found, key=lambda reach: (abs(reach - inner), reach))


def best_of(several: Several, indices: Sequence[int]) -> Chosen:
    """Give stacks for all of the heights, or for as many of them as can stand at once."""
    search, most = several.search, several.most_at_once
    able = [index for index in indices if several.buildable(index)]
    if len(able) == len(indices) <= most:
        whole = search.solve(able)
        if whole.stacks is not None:
            return Chosen(tuple(indices), whole.stacks, whole.bound, len(able), whole.proved)
    found = search.largest_subset(able, most)
    stacks, bound = found.assignment.stacks or (), found.assignment.bound
    return Chosen(found.indices, stacks, bound, found.most, found.proved)


def wear_is_short(several: Several, chosen: Chosen) -> bool:
    """True where as many stacks stand as there are wear blocks for."""
    return len(chosen.indices) == several.most_at_once


def sizes_to_borrow(
    several: Several, index: int, chosen: Chosen, sizes: Sequence[int]
) -> list[tuple[int, int]]:
    """Give which of these sizes would let a height stand beside the stacks that stand.

    Each with the fewest blocks that would go with it, in the order given. One after another is put
    in and the rest picked from the blocks that are left, within a bound: none given does not mean
    that there is none. No such block helps where wear blocks are short.
    """
    if several.wear_ends and wear_is_short(several, chosen):
        return []
    height = several.heights[index]
    used = {position for stack in chosen.stacks for position in stack}
    inner, work = height.asked - several.wear_height, Work(_MOST_PICKED)
    counts = (
        (size, _fewest_beside(several, inner - size, height.tolerance, used, work))
        for size in sizes
    )
    return [(size, count) for size, count in counts if count is not None]


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


def contended(
    several: Several, indices: Sequence[int]
) -> Iterator[tuple[tuple[int, int], tuple[int, ...]]]:
    """Give the pairs of heights that would take the same blocks, each built of its fewest alone.

    Each with the sizes of which there are too few for both, the smallest first.
    """
    table, search = several.search.table, several.search
    owned = Counter(table.sizes)
    alone = {}
    for index in indices:
        built = search.solve([index]).stacks
        alone[index] = Counter(table.sizes[at] for at in built[0]) if built else Counter[int]()
    for pair in combinations(indices, 2):
        short = sorted((alone[pair[0]] + alone[pair[1]] - owned).elements())
        if short:
            yield pair, tuple(short)
