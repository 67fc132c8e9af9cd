"""A day's settings from one box: models to maths and back."""

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import combinations

from halfangle_service.errors import Disagreement
from halfangle_service.fields import from_tenth_nm
from halfangle_service.fields.advisories import Advisory, note
from halfangle_service.operation import Operation, Outcome
from halfangle_service.topics.blocks.models_stacks import (
    BlockContention,
    BlockDayJob,
    BlockDayRequest,
    BlockDayResult,
    BlockDaySlot,
    BlockDayStack,
    BlockSharedStack,
)
from halfangle_service.topics.blocks.operations_stack import GRADES, SETS
from halfangle_service.topics.blocks.operations_stacks import BOUND_WORDS
from halfangle_service.topics.blocks.several import (
    LARGEST,
    METHOD,
    Several,
    best_of,
    left_out,
    not_all,
    read_several,
    to_height,
)
from halfangle_service.trade.stacks.search.sharing import Shared, shared_stacks

#: A slot with more stacks than this is refused: benches, not wishes.
MOST_IN_SLOT = 8
#: The slots of a day share so many times the work that several stacks may take.
_WORK_OF_A_DAY = 2.0


def day(request: BlockDayRequest) -> Outcome[BlockDayResult]:
    """What one box can do for a day's settings."""
    _require_distinct(request.jobs)
    slots = sorted({entry.slot for entry in request.jobs})
    at_once = max(sum(entry.slot == slot for entry in request.jobs) for slot in slots)
    if at_once > MOST_IN_SLOT:
        raise Disagreement(
            f"A slot has {at_once} jobs; one box serves at most {MOST_IN_SLOT} at once.",
            fields={"jobs": f"should have at most {MOST_IN_SLOT} in one slot"},
        )
    heights = [
        to_height(entry.job, entry.height, entry.tolerance, request.units, f"jobs/{place}")
        for place, entry in enumerate(request.jobs)
    ]
    several = read_several(request, heights, at_once, request.max_blocks)
    share = min(1.0, _WORK_OF_A_DAY / len(slots))
    planned = [
        _slot(replace(several, search=several.search.renewed(share)), request.jobs, slot)
        for slot in slots
    ]
    shared = shared_stacks(several.search.table, several.search.wanted)
    result = BlockDayResult(
        complete=not any(slot.left_out for slot in planned),
        slots=planned,
        shared=[_shared(several, request.jobs, entry) for entry in shared],
    )
    return Outcome(result, (*several.supply.advisories, *_advisories(several, result)))


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


def _slot(several: Several, jobs: Sequence[BlockDayJob], slot: int) -> BlockDaySlot:
    here = [place for place, entry in enumerate(jobs) if entry.slot == slot]
    chosen = best_of(several, here)
    placed = zip(chosen.indices, chosen.stacks, strict=True)
    return BlockDaySlot(
        slot=slot,
        stacks=[
            BlockDayStack(
                job=jobs[place].job,
                bench=jobs[place].bench,
                **several.facts(place, positions, nth),
            )
            for nth, (place, positions) in enumerate(placed)
        ],
        left_out=[
            left_out(several, place, chosen) for place in here if place not in chosen.indices
        ],
        contention=list(_contention(several, jobs, here)),
        proved=chosen.proved,
    )


def _contention(
    several: Several, jobs: Sequence[BlockDayJob], here: Sequence[int]
) -> Iterator[BlockContention]:
    """Which benches would take the same block, each building its fewest by itself."""
    table, search = several.search.table, several.search
    owned = Counter(table.sizes)
    alone = {}
    for place in here:
        built = search.solve([place]).stacks
        alone[place] = Counter(table.sizes[at] for at in built[0]) if built else Counter()
    for pair in combinations(here, 2):
        needed = alone[pair[0]] + alone[pair[1]]
        short = sorted((needed - owned).elements())
        if short:
            yield BlockContention(
                jobs=[jobs[place].job for place in pair],
                benches=[jobs[place].bench for place in pair],
                blocks=[from_tenth_nm(size, several.units) for size in short],
                avoidable=_avoidable(several, pair),
            )


def _avoidable(several: Several, pair: tuple[int, int]) -> bool | None:
    """Whether two heights can stand at once; None where that is not known."""
    if several.most_at_once < 2:
        return False
    if several.search.pair_excess(*pair) is not None:
        return True
    return None if several.search.exhausted else False


def _shared(several: Several, jobs: Sequence[BlockDayJob], shared: Shared) -> BlockSharedStack:
    """A stack for several jobs, as the answer writes it."""
    entries = sorted((jobs[place] for place in shared.places), key=lambda entry: entry.slot)
    sizes = several.search.table.stack(shared.height) or ()
    ends = several.supply.wear[: several.wear_ends]
    blocks = sorted([*sizes, *(piece.size for piece in ends)], reverse=True)
    return BlockSharedStack(
        height=from_tenth_nm(sum(blocks), several.units),
        blocks=[from_tenth_nm(size, several.units) for size in blocks],
        jobs=[entry.job for entry in entries],
        at_once=len({entry.slot for entry in entries}) < len(entries),
    )


def _advisories(several: Several, result: BlockDayResult) -> Iterator[Advisory]:
    for slot in result.slots:
        names = [entry.name for entry in slot.left_out]
        yield from not_all(several, names, f"In slot {slot.slot}: ")
    if not all(slot.proved for slot in result.slots):
        yield note("bound-reached", BOUND_WORDS)


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
    sources=(METHOD, SETS, GRADES),
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
