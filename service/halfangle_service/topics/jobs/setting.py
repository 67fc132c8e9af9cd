"""The stack for a center's plate angle, from the blocks there are. Heights in 0.1 nm."""

from collections.abc import Sequence
from dataclasses import dataclass

from halfangle_service.errors import Unreachable
from halfangle_service.topics.jobs.mistakes import Mistake, smallest_mistake, without
from halfangle_service.trade.stacks.search.stacking import stack_table


@dataclass(frozen=True, slots=True)
class Setting:
    """A stack for a height, what could go wrong with it, and another stack to check it by."""

    blocks: tuple[int, ...]
    exact: bool
    mistake: Mistake | None
    second_stack: tuple[int, ...] | None

    @property
    def total(self) -> int:
        """Height of the stack in 0.1 nm."""
        return sum(self.blocks)


def choose_setting(height: float, sizes: Sequence[int], max_blocks: int) -> Setting:
    """Give the stack of the fewest blocks, or the nearest one where the height cannot be built.

    `height` in 0.1 nm, not rounded: a sine height is seldom a whole step of the set. Raises
    Unreachable where no stack comes near at all.
    """
    table = stack_table(sizes, max_blocks)
    rounded = round(height)
    blocks = table.stack(rounded)
    chosen = blocks or _nearer(table.nearest(rounded), height)
    if chosen is None:
        raise Unreachable(
            "No stack can be wrung from these blocks.",
            fields={"block_sizes": "should hold a block that fits under the plate"},
        )
    left = without(sizes, chosen)
    second = stack_table(left, max_blocks).stack(sum(chosen)) if left else None
    return Setting(chosen, blocks is not None, smallest_mistake(chosen, sizes), second)


def _nearer(
    nearest: tuple[tuple[int, ...] | None, tuple[int, ...] | None], height: float
) -> tuple[int, ...] | None:
    """The nearer of two stacks; at a tie the lower one."""
    there_are = [stack for stack in nearest if stack]
    return min(there_are, key=lambda stack: abs(sum(stack) - height), default=None)
