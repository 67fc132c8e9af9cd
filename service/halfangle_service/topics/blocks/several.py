"""Several stacks from one box: what `blocks.stacks` and `blocks.day` ask and say alike.

Above all why a height cannot stand beside the others, and which block would let it.
"""

from collections.abc import Iterator, Sequence
from typing import Annotated, Any

from pydantic import Field

from halfangle_service.errors import Disagreement
from halfangle_service.fields import (
    Count,
    LengthOut,
    NonNegativeLength,
    ResultModel,
    Units,
    from_tenth_nm,
    to_tenth_nm,
)
from halfangle_service.fields.advisories import Advisory, caution
from halfangle_service.fields.blocks import BlockFinishFields
from halfangle_service.fields.stacks import built_facts
from halfangle_service.fields.supply import ENDS, Supply, Where, finished_supply, where_else
from halfangle_service.topics.blocks.unbuildable import two_stacks_words
from halfangle_service.trade.stacks.one_stack import nothing_left
from halfangle_service.trade.stacks.several import (
    Chosen,
    Height,
    Several,
    search_for,
    sizes_to_borrow,
    wear_is_short,
)
from halfangle_service.trade.wording import plain

BOUND_WORDS = (
    "The bound on the work was reached: these stacks can be built, but fewer blocks, or more of "
    "the heights, may be possible."
)
#: How many blocks that would let a height stand are named.
_NAMED = 3


Label = Annotated[str, Field(min_length=1, max_length=60)]
MaxBlocks = Annotated[
    int,
    Count(ge=1, le=8),
    Field(description="Most blocks in each stack, wear blocks included."),
]
HeightTolerance = Annotated[
    NonNegativeLength,
    Field(description="Heights within ± this will do, in `units`; at most 100 steps of the set."),
]


class BlockToBorrow(ResultModel):
    """A block that is not at hand, with which a height could stand."""

    block: LengthOut = Field(description="Its nominal size.")
    where: Where = Field(
        description="`missing` or `in-use` where the box has it; else `not-in-the-box`, or "
        "`another-of-this-size` where those of the box stand already."
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


def require_distinct(names: Sequence[str], *, what: str, field: str) -> None:
    """Refuse two of one name; `what` they are, in the request the `field` of each is its name."""
    for place, name in enumerate(names):
        if name in names[:place]:
            raise Disagreement(
                f"{name!r} names two {what}.",
                fields={f"{what}/{place}/{field}": "should differ from those before it"},
            )


def to_height(name: str, height: float, tolerance: float, units: Units, path: str) -> Height:
    """Give a height of a request in 0.1 nm; `path` is its place there."""
    return Height(name, to_tenth_nm(height, units), to_tenth_nm(tolerance, units), path)


def read_several(
    request: BlockFinishFields, heights: Sequence[Height], at_once: int, max_blocks: int
) -> tuple[Supply, Several]:
    """Give the blocks of a request, and the search for these heights, so many of them at a time."""
    supply = finished_supply(request, at_once)
    ends = ENDS[request.wear_ends]
    search = search_for(supply.box, supply.wear, ends, heights, max_blocks, request.units)
    return supply, search


def stack_of(several: Several, place: int, positions: Sequence[int], nth: int) -> dict[str, Any]:
    """The stack that stands for a height as the nth of all, as the fields of BlockBuilt."""
    inner, wear = several.pieces(positions, nth)
    return built_facts(inner, wear, several.heights[place].asked, several.units)


def left_out(several: Several, supply: Supply, index: int, chosen: Chosen) -> BlockLeftOut:
    """Say why a height has no stack beside those that stand, and which block would give it one."""
    where = where_else(supply, several.units)
    away = {piece.size for piece, _ in supply.away}
    found = sizes_to_borrow(several, index, chosen, list(where))
    found.sort(key=lambda entry: (entry[0] not in away, entry[1]))
    return BlockLeftOut(
        name=several.heights[index].name,
        reason=_why(several, index, chosen),
        would_make_it_possible=[
            BlockToBorrow(block=from_tenth_nm(size, several.units), where=where[size])
            for size, _ in found[:_NAMED]
        ],
    )


def not_all(several: Several, left: Sequence[str], where: str) -> Iterator[Advisory]:
    """Caution that some heights have no stack, and what to do: not the same for all reasons."""
    alone = [name for name in left if not several.buildable(several.names.index(name))]
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
    if not several.buildable(index):
        return _why_unbuildable(several, index)
    if wear_is_short(several, chosen):
        size = plain(from_tenth_nm(several.wear[0].size, several.units), 10)
        most = "one stack" if several.most_at_once == 1 else f"{several.most_at_once} stacks"
        return (
            f"The wear blocks of {size} {several.units}, {len(several.wear)} in number, are "
            f"enough for {most} at once."
        )
    clashes = [several.names[other] for other in chosen.indices if several.clash(index, other)]
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


def _why_unbuildable(several: Several, index: int) -> str:
    """Say that no stack has a height, and which heights near it there are."""
    units, wear = several.units, several.wear_height
    asked = several.heights[index].asked
    if asked <= wear:
        return nothing_left(wear, from_tenth_nm(asked, units), units)
    nearest = [stack for stack in several.search.table.nearest(asked - wear) if stack]
    words = " and ".join(plain(from_tenth_nm(sum(stack) + wear, units), 10) for stack in nearest)
    return (
        f"No stack of up to {several.max_blocks} of these blocks is "
        f"{plain(from_tenth_nm(asked, units), 10)} {units} high by itself; nearest {words} {units}."
        + ("" if wear else two_stacks_words(several.box, asked, units))
    )
