"""A day's settings from one box that all benches share."""

from collections.abc import Iterator, Sequence
from typing import Annotated

from pydantic import Field

from halfangle_service.errors import Disagreement
from halfangle_service.fields import (
    Count,
    CountOut,
    Length,
    LengthOut,
    RequestModel,
    ResultModel,
    from_tenth_nm,
)
from halfangle_service.fields.advisories import Advisory, note
from halfangle_service.fields.base import Rule
from halfangle_service.fields.blocks import SOURCES, BlockFinishFields
from halfangle_service.fields.stacks import BlockBuilt
from halfangle_service.fields.supply import Supply
from halfangle_service.operation import Outcome, operation
from halfangle_service.topics.blocks.several import (
    BOUND_WORDS,
    BlockLeftOut,
    HeightTolerance,
    Label,
    MaxBlocks,
    left_out,
    not_all,
    read_several,
    require_distinct,
    stack_of,
    to_height,
)
from halfangle_service.topics.blocks.sources import GRADES, SETS, SEVERAL_STACKS
from halfangle_service.trade.stacks.search.sharing import Shared, shared_stacks
from halfangle_service.trade.stacks.several import LARGEST, Several, best_of, contended

#: A slot with more stacks than this is refused: benches, not wishes.
MOST_IN_SLOT = 8
#: The slots of a day share so many times the work that several stacks may take.
_WORK_OF_A_DAY = 2.0


class BlockDayJob(RequestModel):
    """A setting that a bench needs at some time of the day."""

    job: Label = Field(description="Name of the job; each name once.", examples=["HL-0412"])
    bench: Label = Field(description="Bench or machine.", examples=["grinder 1"])
    slot: Annotated[int, Count(ge=1, le=24)] = Field(
        1, description="Period of the day: jobs of one slot run at once."
    )
    height: Length = Field(
        description="Height of its stack, in `units`; taken to the nearest 0.1 nm."
    )
    tolerance: HeightTolerance = 0.0


class BlockDayRequest(BlockFinishFields):
    """A day's settings, from one box that all benches share."""

    rules = (Rule("one-of", SOURCES),)

    jobs: Annotated[list[BlockDayJob], Field(min_length=1, max_length=60)] = Field(
        description="The jobs, the most important first."
    )
    max_blocks: MaxBlocks = 5


class BlockDayStack(BlockBuilt):
    """The stack of one job."""

    job: str = Field(description="Name of the job.")
    bench: str = Field(description="Its bench.")


class BlockContention(ResultModel):
    """Two benches that would take the same blocks if each built its fewest blocks by itself."""

    jobs: list[str] = Field(description="The two jobs.")
    benches: list[str] = Field(description="Their benches, in the same order.")
    blocks: list[LengthOut] = Field(description="Blocks that both would need.")
    avoidable: bool | None = Field(
        description="True where the two can stand at once all the same, with other blocks; null "
        "where the bound on the work was reached before that was known."
    )


class BlockDaySlot(ResultModel):
    """One period: stacks that do not get in one another's way."""

    slot: CountOut = Field(description="Number of the period.")
    stacks: list[BlockDayStack] = Field(description="Stacks, no block used twice.")
    left_out: list[BlockLeftOut] = Field(description="Jobs without a stack, and why.")
    contention: list[BlockContention] = Field(
        description="Where benches would need the same block."
    )
    proved: bool = Field(description="Fewest blocks, and as many jobs as can be, are proved.")


class BlockSharedStack(ResultModel):
    """A stack that serves several jobs."""

    height: LengthOut = Field(
        description="Height of the stack, wear blocks included: within the tolerance of each job."
    )
    blocks: list[LengthOut] = Field(
        description="Nominal sizes of the fewest blocks for it, largest first; beside the other "
        "stacks of a slot it may be of other blocks."
    )
    jobs: list[str] = Field(description="Jobs that need it, in order of slots.")
    at_once: bool = Field(
        description="True where some of them run in one slot: the stack then has to go from bench "
        "to bench, or stand twice."
    )


class BlockDayResult(ResultModel):
    """What the box can do for the day."""

    complete: bool = Field(description="True where every job has its stack.")
    slots: list[BlockDaySlot] = Field(description="The periods, in order.")
    shared: list[BlockSharedStack] = Field(
        description="Stacks to wring once and pass on, most jobs first."
    )


@operation(
    "blocks.day",
    relations=("in each slot every block stands in one stack at most",),
    sources=(SEVERAL_STACKS, SETS, GRADES),
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
def day(request: BlockDayRequest) -> Outcome[BlockDayResult]:
    """A day's settings from one box.

    For a day's list of jobs: stacks for each period that do not get in one another's way, settings
    that can share a stack, and benches that would need the same block.
    """
    require_distinct([entry.job for entry in request.jobs], what="jobs", field="job")
    _require_free_benches(request.jobs)
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
    supply, several = read_several(request, heights, at_once, request.max_blocks)
    share = min(1.0, _WORK_OF_A_DAY / len(slots))
    planned = [_slot(several.renewed(share), supply, request.jobs, slot) for slot in slots]
    shared = shared_stacks(several.search.table, several.search.wanted)
    result = BlockDayResult(
        complete=not any(slot.left_out for slot in planned),
        slots=planned,
        shared=[_shared(several, request.jobs, entry) for entry in shared],
    )
    return Outcome(result, (*supply.advisories, *_advisories(several, result)))


def _require_free_benches(jobs: Sequence[BlockDayJob]) -> None:
    """Refuse two jobs on one bench at one time."""
    taken: set[tuple[str, int]] = set()
    for place, entry in enumerate(jobs):
        if (entry.bench, entry.slot) in taken:
            raise Disagreement(
                f"{entry.bench!r} has two jobs in slot {entry.slot}.",
                fields={f"jobs/{place}/slot": "should be a slot in which the bench is free"},
            )
        taken.add((entry.bench, entry.slot))


def _slot(several: Several, supply: Supply, jobs: Sequence[BlockDayJob], slot: int) -> BlockDaySlot:
    here = [place for place, entry in enumerate(jobs) if entry.slot == slot]
    chosen = best_of(several, here)
    placed = zip(chosen.indices, chosen.stacks, strict=True)
    return BlockDaySlot(
        slot=slot,
        stacks=[
            BlockDayStack(
                job=jobs[place].job,
                bench=jobs[place].bench,
                **stack_of(several, place, positions, nth),
            )
            for nth, (place, positions) in enumerate(placed)
        ],
        left_out=[
            left_out(several, supply, place, chosen)
            for place in here
            if place not in chosen.indices
        ],
        contention=[
            BlockContention(
                jobs=[jobs[place].job for place in pair],
                benches=[jobs[place].bench for place in pair],
                blocks=[from_tenth_nm(size, several.units) for size in sizes],
                avoidable=several.stand_together(*pair),
            )
            for pair, sizes in contended(several, here)
        ],
        proved=chosen.proved,
    )


def _shared(several: Several, jobs: Sequence[BlockDayJob], shared: Shared) -> BlockSharedStack:
    """A stack for several jobs, as the answer writes it."""
    entries = sorted((jobs[place] for place in shared.places), key=lambda entry: entry.slot)
    sizes = several.search.table.stack(shared.height) or ()
    ends = several.wear[: several.wear_ends]
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
