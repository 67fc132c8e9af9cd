"""Several heights to stand at once, from one box."""

from collections.abc import Iterator, Sequence
from typing import Annotated

from pydantic import Field

from halfangle_service.errors import Unreachable
from halfangle_service.fields import CountOut, Length, RequestModel, ResultModel
from halfangle_service.fields.advisories import Advisory, note
from halfangle_service.fields.base import Rule
from halfangle_service.fields.blocks import SOURCES, BlockFinishFields
from halfangle_service.fields.stacks import BlockBuilt
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
from halfangle_service.trade.stacks.several import LARGEST, Chosen, Several, best_of


class BlockHeightWanted(RequestModel):
    """One of several heights."""

    name: Label = Field(description="What it is for; each name once.", examples=["base"])
    height: Length = Field(
        description="Height, in `units`; taken to the nearest 0.1 nm.", examples=[2.2361]
    )
    tolerance: HeightTolerance = 0.0


class BlockStacksRequest(BlockFinishFields):
    """Several heights to stand at once, from one box."""

    rules = (Rule("one-of", SOURCES),)

    heights: Annotated[list[BlockHeightWanted], Field(min_length=1, max_length=12)] = Field(
        description="The heights, the most important first: where not all can stand, the earlier "
        "ones are kept."
    )
    max_blocks: MaxBlocks = 5


class BlockNamedStack(BlockBuilt):
    """The stack for one of the heights."""

    name: str = Field(description="Name of the height.")


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
    largest_count: CountOut = Field(
        description="No more of the heights than this can stand at once. Where it is more than "
        "there are stacks, whether more can is not known."
    )
    proved: bool = Field(
        description="The number of blocks is the fewest, and where heights are left out, no more "
        "of them can stand at once. False where the bound on the work was reached."
    )
    bound: str | None = Field(description="What bounded the search; null where nothing did.")


@operation(
    "blocks.stacks",
    relations=("count = Σ blocks over the stacks, each block in one stack at most",),
    sources=(SEVERAL_STACKS, SETS, GRADES),
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
def stacks(request: BlockStacksRequest) -> Outcome[BlockStacksResult]:
    """Several stacks at once.

    Stacks for several heights from one box, no block used twice, the fewest blocks overall; or why
    they cannot all stand at once, and the most of them that can.
    """
    require_distinct([h.name for h in request.heights], what="heights", field="name")
    heights = [
        to_height(entry.name, entry.height, entry.tolerance, request.units, f"heights/{place}")
        for place, entry in enumerate(request.heights)
    ]
    supply, several = read_several(request, heights, len(heights), request.max_blocks)
    chosen = best_of(several, range(len(heights)))
    left = [
        left_out(several, supply, place, chosen)
        for place in range(len(heights))
        if place not in chosen.indices
    ]
    if not chosen.indices:
        raise _none_at_all(left)
    result = _result(several, chosen, left)
    return Outcome(result, (*supply.advisories, *_advisories(several, result)))


def _none_at_all(left: Sequence[BlockLeftOut]) -> Unreachable:
    return Unreachable(
        f"None of the heights can be built. {left[0].reason}",
        fields={f"heights/{place}/height": entry.reason for place, entry in enumerate(left)},
        more={"left_out": [entry.model_dump() for entry in left]},
    )


def _result(several: Several, chosen: Chosen, left: list[BlockLeftOut]) -> BlockStacksResult:
    placed = zip(chosen.indices, chosen.stacks, strict=True)
    built = [
        BlockNamedStack(
            name=several.heights[place].name, **stack_of(several, place, positions, nth)
        )
        for nth, (place, positions) in enumerate(placed)
    ]
    wear = several.wear_ends * len(built)
    return BlockStacksResult(
        complete=not left,
        stacks=built,
        left_out=left,
        count=chosen.count + wear,
        fewest_possible=min(chosen.count, chosen.bound) + wear,
        largest_count=chosen.most,
        proved=chosen.proved,
        bound=None if chosen.proved else BOUND_WORDS,
    )


def _advisories(several: Several, result: BlockStacksResult) -> Iterator[Advisory]:
    yield from not_all(several, [entry.name for entry in result.left_out], "")
    if not result.proved:
        gap = result.count - result.fewest_possible
        more = result.largest_count - len(result.stacks)
        words = f" At most {more} more of the heights can stand." if more else ""
        yield note(
            "bound-reached",
            f"{BOUND_WORDS} The number of blocks is at most {gap} too many for these heights."
            f"{words}",
        )
