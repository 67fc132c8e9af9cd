"""What mends a measured angle: the change of a stack's height, and the blocks to swap for it.

Angles in radians; heights of the high roll's stack over the low one's in one unit, those of blocks
integers of 0.1 nm. The cause is taken to be a constant offset in height: where the center distance
errs, the answer is off by the ratio of the two, which is of second order.
"""

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from halfangle_service.trade import elementary
from halfangle_service.trade.decimals import tidy
from halfangle_service.trade.sine.block_swap import Swap, fewest_swaps
from halfangle_service.trade.sine.geometry import height_change
from halfangle_service.trade.sine.low_stack import Conditions, difference_table, fewest_pair

#: An error past this is rarely the plate's: first a wrong block is looked for.
WRONG_BLOCK_ARCSEC = 60.0
#: Which of a plate's rolls a stack stands under.
Roll = Literal["high-roll", "low-roll"]


@dataclass(frozen=True, slots=True)
class HeightCorrection:
    """The height as it stands and its change, in one unit; angles wanted and measured, radians."""

    center_distance: float
    wanted_rad: float
    measured_rad: float
    now: float

    @property
    def change(self) -> float:
        """Change of the height that takes the angle from the one measured to the one wanted."""
        return height_change(self.center_distance, self.wanted_rad, self.measured_rad)

    @property
    def new(self) -> float:
        """The height to build."""
        return tidy(self.now + self.change, self.now)

    def angle_at(self, height: float) -> float:
        """Angle to expect at a height, in radians, the error as it is now: no approximation."""
        if height == self.new:  # else rounding would stand for an error
            return self.wanted_rad
        rise = self.center_distance * elementary.sin(self.wanted_rad) + height - self.new
        return elementary.asin(max(-1.0, min(1.0, rise / self.center_distance)))


def swap_for(
    current: Sequence[int],
    sizes: Sequence[int],
    target: float,
    max_blocks: int,
    within: tuple[float, float] | None = None,
) -> Swap | None:
    """The swap of the fewest blocks that makes a stack as high as `target`; None without one.

    `within` are the least and the greatest height that will do; without it the nearest height to
    half a step of the set. `current` must be among `sizes`. Raises BeyondBound as `fewest_swaps`.
    """
    table = difference_table(sizes, max_blocks)
    heights = [height for height in table.candidates(target, within) if height]
    return fewest_swaps(current, sizes, heights, max_blocks)


@dataclass(frozen=True, slots=True)
class StackChange:
    """A stack under one roll: as it is to be, and what comes out and goes in; largest first."""

    roll: Roll
    blocks: tuple[int, ...]
    remove: tuple[int, ...]
    add: tuple[int, ...]

    @property
    def total(self) -> int:
        """Height of the stack to build."""
        return sum(self.blocks)


def changed(roll: Roll, before: Sequence[int], after: Sequence[int]) -> StackChange:
    """The change from one stack to another."""
    was, will = Counter(before), Counter(after)
    return StackChange(
        roll,
        tuple(sorted(after, reverse=True)),
        tuple(sorted((was - will).elements(), reverse=True)),
        tuple(sorted((will - was).elements(), reverse=True)),
    )


def stacks_for_difference(
    high: Sequence[int],
    low: Sequence[int],
    sizes: Sequence[int],
    difference: float,
    max_blocks: int,
    *,
    low_can_stand: bool,
) -> tuple[StackChange, ...] | None:
    """New stacks for a difference of height, from those that stand now; None where there are none.

    The low roll's stack stays where swapping under the high roll alone does it; else, where the low
    roll can stand on blocks, both are built anew with the fewest blocks. No block is used twice.
    """
    left = list((Counter(sizes) - Counter(low)).elements())
    target = difference + sum(low)
    swap = swap_for(high, left, target, max_blocks) if left and target > 0 else None
    if swap is not None:
        stays = (changed("low-roll", low, low),) if low else ()
        return (changed("high-roll", high, swap.stack), *stays)
    if not low_can_stand:
        return None
    table = difference_table(sizes, max_blocks)
    wanted = table.candidates(difference)
    pair, _ = fewest_pair(table, wanted, Conditions())
    if pair is None:
        return None
    return changed("high-roll", high, pair.high), changed("low-roll", low, pair.low)
