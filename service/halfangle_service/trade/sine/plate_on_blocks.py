"""The budget of a plate's angle on a stack of gauge blocks, each with what is known of it.

Angles in radians, lengths of blocks in 0.1 nm, of a set-up in its own unit.
"""

import math
from collections.abc import Mapping, Sequence
from dataclasses import replace

from halfangle_service.trade.sine.angle_error import ErrorInputs, budget
from halfangle_service.trade.sine.angle_model import SetUp, Term, sensitivity
from halfangle_service.trade.stacks.height_budget import blocks_budget
from halfangle_service.trade.stacks.supply import Piece
from halfangle_service.trade.tables.materials.expansion import materials
from halfangle_service.trade.uncertainty import Budget
from halfangle_service.trade.units import Units


def material_shares(pieces: Sequence[Piece]) -> dict[str, float]:
    """Part of the stack's height that is of each material; the parts sum to 1."""
    height = sum(piece.size for piece in pieces)
    shares = dict.fromkeys((piece.material for piece in pieces), 0.0)
    for piece in pieces:
        shares[piece.material] += piece.size / height
    return shares


def expansion_of_blocks(pieces: Sequence[Piece]) -> float:
    """Coefficient of expansion of a stack, per kelvin, by its blocks' materials."""
    known = materials()
    shares = material_shares(pieces)
    return math.fsum(known[name].coefficient * part for name, part in shares.items())


def budget_on_blocks(
    set_up: SetUp,
    values: Mapping[Term, float],
    not_stated: Sequence[str],
    pieces: Sequence[Piece],
    units: Units,
) -> Budget:
    """Budget of the plate's angle in radians: blocks by calibration or grade, then the set-up."""
    stack = blocks_budget(pieces, units)
    shares = material_shares(pieces)
    names = (*stack.not_stated, *not_stated)
    whole = budget(ErrorInputs(set_up, values, not_stated=names, block_materials=shares))
    slope = sensitivity(set_up, "stack_error_limit")
    blocks = (replace(part, sensitivity=slope, unit="length") for part in stack.contributions)
    return replace(whole, contributions=(*blocks, *whole.contributions))
