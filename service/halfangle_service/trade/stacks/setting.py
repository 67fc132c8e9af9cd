"""The stack that sets a height, from the blocks there are.

Heights in 0.1 nm.
"""

from dataclasses import dataclass

from halfangle_service.trade.stacks.search.stacking import StackTable
from halfangle_service.trade.stacks.supply import Box, Piece


@dataclass(frozen=True, slots=True)
class Setting:
    """A stack for a height: its blocks, largest first, and the `spare` ones left in the box."""

    pieces: tuple[Piece, ...]
    spare: tuple[Piece, ...]

    @property
    def blocks(self) -> tuple[int, ...]:
        """Nominal sizes of the blocks, largest first."""
        return tuple(piece.size for piece in self.pieces)

    @property
    def total(self) -> int:
        """Sum of the nominal sizes."""
        return sum(self.blocks)

    @property
    def actual(self) -> int:
        """Sum of nominal sizes and measured deviations."""
        return sum(piece.actual for piece in self.pieces)


def choose_setting(height: float, box: Box, max_blocks: int) -> Setting:
    """Give the stack of the fewest blocks, or the nearest one where the height cannot be built.

    `height` is not rounded: a sine height is seldom a whole step of the set. Stacks are chosen by
    nominal sizes.
    """
    table = box.table(max_blocks)
    blocks = table.stack(round(height)) or _nearest(table, height)
    positions = table.positions(blocks)
    spare = box.pick(place for place in range(len(box.pieces)) if place not in positions)
    return Setting(box.pick(positions), spare)


def _nearest(table: StackTable, height: float) -> tuple[int, ...]:
    """The nearer of the stacks below and above, one of which there is; at a tie the lower one."""
    there_are = [stack for stack in table.nearest(round(height)) if stack]
    return min(there_are, key=lambda stack: abs(sum(stack) - height))
