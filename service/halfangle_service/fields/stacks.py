"""A stack as answers write it: heights, deviations and errors in the request's unit."""

import math
from collections.abc import Sequence
from typing import Any

from pydantic import Field

from halfangle_service.fields import (
    CountOut,
    LengthOut,
    ResultModel,
    Units,
    from_tenth_nm,
    to_tenth_nm,
)
from halfangle_service.trade.stacks.supply import Piece


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
    actual_height: LengthOut = Field(
        description="Sum of nominal sizes and measured deviations; the total where none are known."
    )
    actual_deviation: LengthOut = Field(description="Actual height less the height asked for.")
    standard_uncertainty: LengthOut | None = Field(
        description="Standard uncertainty of the height from calibrations and grade limits "
        "(rectangular); null where neither is known of some block."
    )
    worst_case: LengthOut | None = Field(
        description="Sum of the blocks' grade limits, or of their expanded uncertainties (k = 2) "
        "where calibrated; null where neither is known of some block. `blocks/budget` takes in "
        "films and temperature, and three standard deviations of what is normally distributed."
    )


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
    actual = total + sum([piece.deviation for piece in ordered])
    uncertainty, worst = errors_of(pieces, units)
    return {
        "blocks": [from_tenth_nm(piece.size, units) for piece in ordered],
        "marks": [piece.mark for piece in ordered] if any(map(_mark, ordered)) else [],
        "count": len(ordered),
        "total": from_tenth_nm(total, units),
        "deviation": from_tenth_nm(total - asked, units),
        "actual_height": from_tenth_nm(actual, units),
        "actual_deviation": from_tenth_nm(actual - asked, units),
        "standard_uncertainty": uncertainty,
        "worst_case": worst,
    }


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


def errors_of(pieces: Sequence[Piece], units: Units) -> tuple[float | None, float | None]:
    """Standard uncertainty and worst case in `units`; None where they are not known."""
    limits = [piece.worst_case for piece in pieces]
    known = [limit for limit in limits if limit is not None]
    if len(known) < len(limits):
        return None, None
    uncertainty = math.hypot(*[piece.standard_uncertainty for piece in pieces])
    per_unit = to_tenth_nm(1.0, units)
    return uncertainty / per_unit, sum(known) / per_unit


def _mark(piece: Piece) -> str | None:
    return piece.mark


def _by_size(piece: Piece) -> int:
    return piece.size
