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


def material_shares(pieces: Sequence[Piece], low: Sequence[Piece] = ()) -> dict[str, float]:
    """Part of the stacks' difference that is of each material; the parts sum to 1.

    `pieces` stand under the high roll, `low` under the other.
    """
    sized = [*((p.material, p.size) for p in pieces), *((p.material, -p.size) for p in low)]
    height = sum(size for _, size in sized) or 1  # a plate at zero has no stack
    shares = dict.fromkeys((material for material, _ in sized), 0.0)
    for material, size in sized:
        shares[material] += size / height
    return shares


def expansion_of_blocks(pieces: Sequence[Piece], low: Sequence[Piece] = ()) -> float:
    """Coefficient of expansion of the stacks' difference, per kelvin, by the blocks' materials."""
    known = materials()
    shares = material_shares(pieces, low)
    return math.fsum(known[name].coefficient * part for name, part in shares.items())


def budget_on_blocks(
    set_up: SetUp,
    values: Mapping[Term, float],
    not_stated: Sequence[str],
    pieces: Sequence[Piece],
    units: Units,
    low: Sequence[Piece] = (),
) -> Budget:
    """Budget of the plate's angle in radians: blocks by calibration or grade, then the set-up."""
    stack = blocks_budget((*pieces, *low), units)
    shares = material_shares(pieces, low)
    names = (*stack.not_stated, *not_stated)
    whole = budget(ErrorInputs(set_up, values, not_stated=names, block_materials=shares))
    slope = sensitivity(set_up, "stack_error_limit")
    blocks = (replace(part, sensitivity=slope, unit="length") for part in stack.contributions)
    return replace(whole, contributions=(*blocks, *whole.contributions))
