"""Requests and results of several stacks at once, and of a day's settings."""

from typing import Annotated

from pydantic import Field

from halfangle_service.fields import (
    Count,
    CountOut,
    Length,
    LengthOut,
    NonNegativeLength,
    RequestModel,
    ResultModel,
)
from halfangle_service.fields.blocks import BlockFinishFields
from halfangle_service.fields.stacks import BlockBuilt

Label = Annotated[str, Field(min_length=1, max_length=60)]
MaxBlocks = Annotated[int, Count(ge=1, le=8)]


class BlockHeightWanted(RequestModel):
    """One of several heights."""

    name: Label = Field(description="What it is for; each name once.", examples=["base"])
    height: Length = Field(
        description="Height, in `units`; taken to the nearest 0.1 nm.", examples=[2.2361]
    )
    tolerance: NonNegativeLength = Field(
        0.0, description="Heights within ± this will do, in `units`; at most 100 steps of the set."
    )


class BlockStacksRequest(BlockFinishFields):
    """Several heights to stand at once, from one box."""

    heights: Annotated[list[BlockHeightWanted], Field(min_length=1, max_length=12)] = Field(
        description="The heights, the most important first: where not all can stand, the earlier "
        "ones are kept."
    )
    max_blocks: MaxBlocks = Field(5, description="Most blocks in each stack, wear blocks included.")


class BlockNamedStack(BlockBuilt):
    """The stack for one of the heights."""

    name: str = Field(description="Name of the height.")


class BlockToBorrow(ResultModel):
    """A block that is not at hand, with which a height could stand."""

    block: LengthOut = Field(description="Its nominal size.")
    where: str = Field(
        description="`missing` or `in use` where the box has it; else `not in the box`, or "
        "`another of this size` where those of the box stand already."
    )


class BlockLeftOut(ResultModel):
    """A height for which there is no stack beside the others."""

    name: str = Field(description="Name of the height.")
    reason: str = Field(description="Why it is left out.")
    would_make_it_possible: list[BlockToBorrow] = Field(
        description="Single blocks, of the sizes of the built-in sets, any one of which would let "
        "it stand beside the stacks given, those away first; at most three, and none where none "
        "was found."
    )


class BlockStacksResult(ResultModel):
    """Stacks that can stand at once."""

    complete: bool = Field(description="True where every height has its stack.")
    stacks: list[BlockNamedStack] = Field(
        description="The stacks, no block used twice: of all the heights, or else of the largest "
        "number of them that can stand at once."
    )
    left_out: list[BlockLeftOut] = Field(description="Heights without a stack, and why.")
    count: CountOut = Field(description="Blocks in all stacks together.")
    fewest_possible: CountOut = Field(
        description="No stacks for these heights have fewer blocks together. Where it is less than "
        "`count`, the difference is the proved gap."
    )
    most_possible: CountOut = Field(
        description="No more of the heights than this can stand at once. Where it is more than "
        "there are stacks, whether more can is not known."
    )
    proved: bool = Field(
        description="The number of blocks is the fewest, and where heights are left out, no more "
        "of them can stand at once. False where the bound on the work was reached."
    )
    bound: str | None = Field(description="What bounded the search; null where nothing did.")


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
    tolerance: NonNegativeLength = Field(
        0.0, description="Heights within ± this will do, in `units`; at most 100 steps of the set."
    )


class BlockDayRequest(BlockFinishFields):
    """A day's settings, from one box that all benches share."""

    jobs: Annotated[list[BlockDayJob], Field(min_length=1, max_length=60)] = Field(
        description="The jobs, the most important first."
    )
    max_blocks: MaxBlocks = Field(5, description="Most blocks in each stack, wear blocks included.")


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
