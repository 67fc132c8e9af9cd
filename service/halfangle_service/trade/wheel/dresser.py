"""The dresser's setting: a stack of gauge blocks under its sine base, or a reading of its scale.

Lengths of blocks are integers of 0.1 nm.
"""

import math
from collections.abc import Callable, Sequence

from halfangle_service.trade.sine.low_stack import (
    Conditions,
    DifferenceTable,
    Pair,
    difference_table,
    fewest_pair,
)
from halfangle_service.trade.stacks.search.stacking import UNREACHED, stack_table

#: A single stack of up to so many blocks is preferred to one under each roll.
SINGLE_BLOCKS = 4


def stacks_for(
    height: float,
    sizes: Sequence[int],
    max_blocks: int,
    require: Callable[[DifferenceTable], None] | None = None,
) -> Pair:
    """Blocks whose difference in height is nearest to `height` (0.1 nm): one stack, or two.

    One stack of up to SINGLE_BLOCKS within half a step of the set, else two stacks within it, else
    whatever two stacks come nearest. No blocks at all where the nearest height is none. `require`
    refuses a table that would take too much work.
    """
    single = stack_table(sizes, min(max_blocks, SINGLE_BLOCKS))
    blocks = single.stack(round(height / single.step) * single.step)
    if blocks is not None:
        return Pair(blocks, ())
    table = difference_table(sizes, max_blocks)
    if require is not None:
        require(table)
    wanted = round(height / table.step) * table.step
    if table.count(wanted) == UNREACHED:
        wanted = min(table.nearest(height), key=lambda d: abs(d - height))
    return fewest_pair(table, [wanted], Conditions())[0] or Pair((), ())


def round_to_graduation(angle_rad: float, graduation_rad: float) -> float:
    """Angle to set on a scale: the nearest whole number of graduations, in radians."""
    return round(angle_rad / graduation_rad) * graduation_rad


def dresser_angle(flank_rad: float, *, from_side: bool) -> float:
    """Angle from the dresser's zero, for a zero along the wheel's axis or along its side."""
    return math.pi / 2.0 - flank_rad if from_side else flank_rad
