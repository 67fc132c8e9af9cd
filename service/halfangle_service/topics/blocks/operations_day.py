"""A day's settings from one box: models to maths and back."""

from collections.abc import Iterator, Sequence

from halfangle_service.errors import Disagreement
from halfangle_service.operation import Advisory, Operation, Outcome, caution
from halfangle_service.quantities import from_tenth_nm, to_tenth_nm
from halfangle_service.topics.blocks.disjoint import DisjointSearch
from halfangle_service.topics.blocks.models_stacks import (
    BlockContention,
    BlockDayJob,
    BlockDayRequest,
    BlockDayResult,
    BlockDaySlot,
    BlockDayStack,
    BlockLeftOut,
    BlockSharedStack,
)
from halfangle_service.topics.blocks.operations_stack import SETS
from halfangle_service.topics.blocks.operations_stacks import (
    LARGEST,
    METHOD,
    Chosen,
    best_of,
    contended,
    new_search,
    why_left_out,
)
from halfangle_service.topics.blocks.operations_supply import Supply, read_supply

#: A slot with more stacks than this is refused: benches, not wishes.
MOST_IN_SLOT = 8


def day(request: BlockDayRequest) -> Outcome[BlockDayResult]:
    """What one box can do for a day's settings."""
    _require_distinct(request.jobs)
    supply = read_supply(request)
    search = new_search(supply, (), request.max_blocks)
    search.asked = [to_tenth_nm(entry.height, request.units) for entry in request.jobs]
    search.wanted = [[height] for height in search.asked]
    slots = sorted({entry.slot for entry in request.jobs})
    planned = [_slot(search, supply, request, slot) for slot in slots]
    result = BlockDayResult(
        complete=not any(slot.left_out for slot in planned),
        slots=planned,
        shared=_shared(search, request),
    )
    return Outcome(result, (*supply.advisories, *_advisories(result)))


def _require_distinct(jobs: Sequence[BlockDayJob]) -> None:
    """Refuse two jobs of one name, or on one bench at one time."""
    names: set[str] = set()
    places: set[tuple[str, int]] = set()
    for place, entry in enumerate(jobs):
        if entry.job in names:
            raise Disagreement(
                f"{entry.job!r} names two jobs.",
                fields={f"jobs/{place}/job": "should differ from those before it"},
            )
        if (entry.bench, entry.slot) in places:
            raise Disagreement(
                f"{entry.bench!r} has two jobs in slot {entry.slot}.",
                fields={f"jobs/{place}/slot": "should be a slot in which the bench is free"},
            )
        names.add(entry.job)
        places.add((entry.bench, entry.slot))
    for slot in {entry.slot for entry in jobs}:
        if sum(entry.slot == slot for entry in jobs) > MOST_IN_SLOT:
            raise Disagreement(
                f"Slot {slot} has more than {MOST_IN_SLOT} jobs; one box serves so many at once.",
                fields={"jobs": f"should have at most {MOST_IN_SLOT} in one slot"},
            )


def _slot(
    search: DisjointSearch, supply: Supply, request: BlockDayRequest, slot: int
) -> BlockDaySlot:
    jobs = request.jobs
    here = [place for place, entry in enumerate(jobs) if entry.slot == slot]
    chosen = best_of(search, here)
    names = [entry.job for entry in jobs]
    return BlockDaySlot(
        slot=slot,
        stacks=list(_stacks(request, chosen)),
        left_out=[
            BlockLeftOut(
                name=names[place],
                reason=why_left_out(search, names, request.units, place, chosen.indices),
            )
            for place in here
            if place not in chosen.indices
        ],
        contention=list(_contention(search, supply, request, here)),
        proved=chosen.proved,
    )


def _stacks(request: BlockDayRequest, chosen: Chosen) -> Iterator[BlockDayStack]:
    for place, blocks in zip(chosen.indices, chosen.stacks, strict=True):
        entry = request.jobs[place]
        sizes = [from_tenth_nm(size, request.units) for size in blocks]
        yield BlockDayStack(job=entry.job, bench=entry.bench, blocks=sizes)


def _contention(
    search: DisjointSearch, supply: Supply, request: BlockDayRequest, here: Sequence[int]
) -> Iterator[BlockContention]:
    """Which benches would take the same block, each building its fewest by itself."""
    jobs = request.jobs
    alone = [search.table.stack(search.asked[place]) for place in here]
    positions = [search.table.positions(stack) if stack else None for stack in alone]
    for first, second, shared in contended(positions):
        pair = here[first], here[second]
        sizes = [supply.box.sizes[position] for position in shared]
        yield BlockContention(
            jobs=[jobs[place].job for place in pair],
            benches=[jobs[place].bench for place in pair],
            blocks=[from_tenth_nm(size, request.units) for size in sizes],
            avoidable=search.pair_excess(*pair) is not None,
        )


def _shared(search: DisjointSearch, request: BlockDayRequest) -> list[BlockSharedStack]:
    """Heights that several jobs need, most jobs first."""
    by_height: dict[int, list[BlockDayJob]] = {}
    for asked, entry in zip(search.asked, request.jobs, strict=True):
        by_height.setdefault(asked, []).append(entry)
    shared = [
        BlockSharedStack(
            height=from_tenth_nm(height, request.units),
            jobs=[entry.job for entry in sorted(entries, key=lambda entry: entry.slot)],
            at_once=len({entry.slot for entry in entries}) < len(entries),
        )
        for height, entries in by_height.items()
        if len(entries) > 1
    ]
    return sorted(shared, key=lambda entry: -len(entry.jobs))


def _advisories(result: BlockDayResult) -> Iterator[Advisory]:
    for slot in result.slots:
        if slot.left_out:
            names = ", ".join(entry.name for entry in slot.left_out)
            yield caution("not-all-heights", f"In slot {slot.slot} there is no stack for {names}.")


DAY = Operation(
    topic="blocks",
    verb="day",
    title="A day's settings from one box",
    summary="For a day's list of jobs: stacks for each period that do not get in one another's "
    "way, settings that can share a stack, and benches that would need the same block.",
    request=BlockDayRequest,
    result=BlockDayResult,
    calculate=day,
    relations=("in each slot every block stands in one stack at most",),
    sources=(METHOD, SETS),
    example={
        "units": "in",
        "set": "inch-81",
        "jobs": [
            {"job": "HL-0412", "bench": "grinder 1", "slot": 1, "height": 2.5},
            {"job": "HL-0413", "bench": "grinder 2", "slot": 1, "height": 1.2941},
            {"job": "HL-0420", "bench": "grinder 2", "slot": 2, "height": 2.5},
        ],
    },
    largest_request=f"60 jobs, 8 in a slot; for the whole day as for several stacks: {LARGEST}",
    heavy=True,
)
