"""A stack as answers write it: heights, deviations and errors in the request's unit."""

import math
from collections.abc import Sequence
from typing import Any

from halfangle_service.fields import Units, from_tenth_nm, to_tenth_nm
from halfangle_service.trade.stacks.supply import Piece


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
