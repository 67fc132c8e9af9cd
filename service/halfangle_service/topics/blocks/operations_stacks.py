"""Several stacks at once: models to maths and back."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations

from halfangle_service.errors import BeyondBound, Disagreement, Unreachable
from halfangle_service.operation import Advisory, Operation, Outcome, Source, caution, note
from halfangle_service.quantities import Units, from_tenth_nm, to_tenth_nm
from halfangle_service.topics.blocks.disjoint import Assignment, DisjointSearch
from halfangle_service.topics.blocks.models import BlockSupplyFields
from halfangle_service.topics.blocks.models_stacks import (
    BlockHeightWanted,
    BlockLeftOut,
    BlockNamedStack,
    BlockStacksRequest,
    BlockStacksResult,
)
from halfangle_service.topics.blocks.operations_stack import SETS
from halfangle_service.topics.blocks.operations_supply import Supply, read_supply
from halfangle_service.topics.blocks.stacking import UNREACHED, stack_table

METHOD = Source(
    citation="Derived here: a search that raises the number of blocks in all by one at a time, "
    "bounded from below by each height alone and by every pair; checked against an independent "
    "exact solver.",
    standing="derived",
)
LARGEST = (
    "12 heights from 500 blocks; 25 million partial stacks times blocks and 12 million comparisons "
    "of stacks, then the best found and the proved gap"
)
#: Most steps of the set that the tolerance of one of several heights may span, either way.
MOST_STEPS_OFF = 100
BOUND_WORDS = (
    "The bound on the work was reached: these stacks can be built, but fewer blocks, or more of "
    "the heights, may be possible."
)


@dataclass(frozen=True, slots=True)
class Chosen:
    """What a search chose: which heights, their stacks as sizes, and how sure that is."""

    indices: tuple[int, ...]
    stacks: tuple[tuple[int, ...], ...]
    bound: int
    proved: bool


def new_search(supply: Supply, wanted: Sequence[Sequence[int]], max_blocks: int) -> DisjointSearch:
    """Give a search for stacks from a supply; `wanted` as in DisjointSearch."""
    table = stack_table(supply.box.sizes, max_blocks)
    table.require_bounded()
    return DisjointSearch(table, wanted)


def best_of(search: DisjointSearch, indices: Sequence[int]) -> Chosen:
    """Give stacks for all of the heights, or for as many of them as can stand at once."""
    able = [index for index in indices if search.fewest(index) != UNREACHED]
    whole = search.solve(able) if len(able) == len(indices) else None
    if whole is not None and whole.stacks is not None:
        return _chosen(search, indices, whole, whole.proved)
    subset, assignment, most_proved = search.largest_subset(able)
    # Where a search for all of them ended early, that no more can stand is not proved.
    proved = most_proved and assignment.proved and (whole is None or whole.proved)
    return _chosen(search, subset, assignment, proved)


def _chosen(
    search: DisjointSearch, indices: Sequence[int], assignment: Assignment, proved: bool
) -> Chosen:
    sizes = search.table.sizes
    stacks = tuple(
        tuple(sizes[position] for position in sorted(stack)) for stack in assignment.stacks or ()
    )
    return Chosen(tuple(indices), stacks, assignment.bound, proved)


def why_left_out(
    search: DisjointSearch, names: Sequence[str], units: Units, index: int, kept: Sequence[int]
) -> str:
    """Say why a height has no stack beside those kept."""
    height = search.wanted[index][0] if search.wanted[index] else None
    if height is None or search.fewest(index) == UNREACHED:
        return _why_unbuildable(search, units, index)
    clashes = [other for other in kept if (index, other) in search_conflicts(search, index, other)]
    if clashes:
        words = ", ".join(names[other] for other in clashes)
        return (
            f"It and {words} cannot stand at once: every stack of up to "
            f"{search.table.max_blocks} blocks for the one shares a block with every one for the "
            "other."
        )
    return (
        "It can be built alone, and beside any one of the others, but the box has too few of the "
        "blocks that they all need."
    )


def search_conflicts(search: DisjointSearch, first: int, second: int) -> set[tuple[int, int]]:
    """The pair of heights, if they cannot stand at once and that is proved."""
    if search.pair_excess(first, second) is None and not search.exhausted:
        return {(first, second)}
    return set()


def _why_unbuildable(search: DisjointSearch, units: Units, index: int) -> str:
    target = search.asked[index]
    stacks = search.table.nearest(target)
    words = " and ".join(f"{from_tenth_nm(sum(stack), units):.10g}" for stack in stacks if stack)
    return (
        f"No stack of up to {search.table.max_blocks} of these blocks is "
        f"{from_tenth_nm(target, units):.10g} {units} high by itself; nearest {words} {units}."
    )


def stacks(request: BlockStacksRequest) -> Outcome[BlockStacksResult]:
    """Several stacks from one box, no block used twice."""
    _require_distinct([entry.name for entry in request.heights], "heights", "name")
    supply = read_supply(request)
    search = new_search(supply, (), request.max_blocks)
    search.asked = [to_tenth_nm(entry.height, request.units) for entry in request.heights]
    search.wanted = [
        wanted_heights(search, request, place) for place in range(len(request.heights))
    ]
    chosen = best_of(search, range(len(request.heights)))
    if not chosen.indices:
        raise _none_at_all(search, request)
    result = _result(search, request, chosen)
    return Outcome(result, (*supply.advisories, *_advisories(result)))


def wanted_heights(search: DisjointSearch, request: BlockStacksRequest, place: int) -> list[int]:
    """Heights within the tolerance that some stack has, nearest first."""
    entry, asked = request.heights[place], search.asked[place]
    tolerance = to_tenth_nm(entry.tolerance, request.units)
    if tolerance > MOST_STEPS_OFF * search.table.step:
        step = from_tenth_nm(search.table.step, request.units)
        raise BeyondBound(
            f"The tolerance of {entry.name} spans more than {MOST_STEPS_OFF} steps of these "
            f"blocks, {step:.10g} {request.units} each.",
            fields={
                f"heights/{place}/tolerance": f"should be at most {MOST_STEPS_OFF * step:.10g}"
            },
        )
    found = [height for height, _ in search.table.within(asked - tolerance, asked + tolerance)]
    return sorted(found, key=lambda height: (abs(height - asked), height))


def _require_distinct(names: Sequence[str], field: str, part: str) -> None:
    for place, name in enumerate(names):
        if name in names[:place]:
            raise Disagreement(
                f"{name!r} names two of {field}.",
                fields={f"{field}/{place}/{part}": "should differ from those before it"},
            )


def _none_at_all(search: DisjointSearch, request: BlockSupplyFields) -> Unreachable:
    reasons = [_why_unbuildable(search, request.units, place) for place in range(len(search.asked))]
    return Unreachable(
        f"None of the heights can be built. {reasons[0]}",
        fields={f"heights/{place}/height": reason for place, reason in enumerate(reasons)},
    )


def named_stack(
    entry: BlockHeightWanted, asked: int, blocks: Sequence[int], units: Units
) -> BlockNamedStack:
    """Give a stack as the answer writes it."""
    return BlockNamedStack(
        name=entry.name,
        blocks=[from_tenth_nm(size, units) for size in blocks],
        count=len(blocks),
        total=from_tenth_nm(sum(blocks), units),
        deviation=from_tenth_nm(sum(blocks) - asked, units),
    )


def _result(
    search: DisjointSearch, request: BlockStacksRequest, chosen: Chosen
) -> BlockStacksResult:
    entries, units = request.heights, request.units
    names = [entry.name for entry in entries]
    left = [place for place in range(len(entries)) if place not in chosen.indices]
    count = sum(map(len, chosen.stacks))
    return BlockStacksResult(
        complete=not left,
        stacks=[
            named_stack(entries[place], search.asked[place], blocks, units)
            for place, blocks in zip(chosen.indices, chosen.stacks, strict=True)
        ],
        left_out=[
            BlockLeftOut(
                name=names[place],
                reason=why_left_out(search, names, units, place, chosen.indices),
            )
            for place in left
        ],
        count=count,
        fewest_possible=min(count, chosen.bound),
        proved=chosen.proved,
        bound=None if chosen.proved else BOUND_WORDS,
    )


def _advisories(result: BlockStacksResult) -> Iterator[Advisory]:
    if not result.complete:
        names = ", ".join(entry.name for entry in result.left_out)
        yield caution(
            "not-all-heights",
            f"These stacks cannot all stand at once: {names} left out. Build in turn, take more "
            "blocks a stack, or borrow from another set.",
        )
    if not result.proved:
        gap = result.count - result.fewest_possible
        yield note(
            "bound-reached", f"{BOUND_WORDS} The number of blocks is at most {gap} too many."
        )


def contended(stacks_of: Sequence[tuple[int, ...] | None]) -> list[tuple[int, int, list[int]]]:
    """Pairs of stacks that use the same block, and those blocks, as positions in the box."""
    pairs = []
    for first, second in combinations(range(len(stacks_of)), 2):
        shared = sorted(set(stacks_of[first] or ()) & set(stacks_of[second] or ()))
        if shared:
            pairs.append((first, second, shared))
    return pairs


STACKS = Operation(
    topic="blocks",
    verb="stacks",
    title="Several stacks at once",
    summary="Stacks for several heights from one box, no block used twice, the fewest blocks "
    "overall; or why they cannot all stand at once, and the most of them that can.",
    request=BlockStacksRequest,
    result=BlockStacksResult,
    calculate=stacks,
    relations=("count = Σ blocks over the stacks, each block in one stack at most",),
    sources=(METHOD, SETS),
    example={
        "units": "in",
        "set": "inch-81",
        "heights": [
            {"name": "base", "height": 2.2361},
            {"name": "top", "height": 2.5},
        ],
    },
    largest_request=LARGEST,
    heavy=True,
)
