"""A stack as answers write it: heights, deviations and errors in the request's unit."""

from collections.abc import Hashable, Sequence
from typing import Annotated, Any

from pydantic import Field

from halfangle_service.fields import (
    CountOut,
    LengthOut,
    ResultModel,
    Units,
    from_tenth_nm,
)
from halfangle_service.fields.estimate import LengthEstimate, estimate
from halfangle_service.trade.stacks.height_budget import blocks_budget
from halfangle_service.trade.stacks.supply import Piece

ActualHeight = Annotated[
    LengthEstimate,
    Field(
        description="Height of the stack at 20 °C: the sum of nominal sizes and measured "
        "deviations, and how far calibrations and grade limits leave it open. Nothing is said of "
        "that, and `grade` named as not stated, where neither is known of some block. "
        "`blocks.budget` takes in films and temperature."
    ),
]


class BlockAlternative(ResultModel):
    """Another stack."""

    blocks: list[LengthOut] = Field(description="Nominal sizes of the blocks, largest first.")
    marks: list[str | None] = Field(
        description="Identification marks of the same blocks, null where one has none; empty where "
        "none of them has one."
    )
    count: CountOut = Field(description="How many blocks.")
    total: LengthOut = Field(description="Sum of the nominal sizes.")
    deviation: LengthOut = Field(description="Total less the height asked for.")
    actual_height: ActualHeight
    actual_deviation: LengthOut = Field(description="Actual height less the height asked for.")


class BlockBuilt(BlockAlternative):
    """A stack to wring."""

    wear_blocks: list[LengthOut] = Field(
        description="Which of the blocks are wear blocks at the ends; empty without them."
    )
    wringing_order: list[LengthOut] = Field(
        description="The blocks from the bottom up: a wear block first and last where they are "
        "used, the others from the largest up."
    )


def stack_facts(pieces: Sequence[Piece], asked: int, units: Units) -> dict[str, Any]:
    """Facts of a stack for a height asked for in 0.1 nm, as the fields of BlockAlternative."""
    ordered = sorted(pieces, key=_by_size, reverse=True)
    total = sum([piece.size for piece in ordered])
    actual = sum([piece.actual for piece in ordered])
    return {
        "blocks": [from_tenth_nm(piece.size, units) for piece in ordered],
        "marks": [piece.mark for piece in ordered] if any(map(_mark, ordered)) else [],
        "count": len(ordered),
        "total": from_tenth_nm(total, units),
        "deviation": from_tenth_nm(total - asked, units),
        "actual_height": actual_height(ordered, units),
        "actual_deviation": from_tenth_nm(actual - asked, units),
    }


def actual_height(pieces: Sequence[Piece], units: Units) -> LengthEstimate:
    """Height of a stack by its blocks' deviations, with what is known of their errors."""
    height = from_tenth_nm(sum([piece.actual for piece in pieces]), units)
    return estimate(LengthEstimate, blocks_budget(pieces, units), height)


def looks(pieces: Sequence[Piece], units: Units) -> Hashable:
    """What an answer shows of a stack: two stacks of which it is the same look alike."""
    ordered = sorted(pieces, key=_by_size, reverse=True)
    shown = tuple((piece.size, piece.mark) for piece in ordered)
    return shown, sum(piece.actual for piece in ordered), blocks_budget(ordered, units)


def built_facts(
    inner: Sequence[Piece], wear: Sequence[Piece], asked: int, units: Units
) -> dict[str, Any]:
    """The same with the order of wringing, as the fields of BlockBuilt."""
    ends = [from_tenth_nm(piece.size, units) for piece in wear]
    between = [from_tenth_nm(piece.size, units) for piece in inner]
    return {
        **stack_facts((*inner, *wear), asked, units),
        "wear_blocks": ends,
        "wringing_order": [*ends[:1], *between, *ends[1:]],
    }


def _mark(piece: Piece) -> str | None:
    return piece.mark


def _by_size(piece: Piece) -> int:
    return piece.size
