"""Wrong blocks: the single mistakes that are hardest to notice. Lengths in integers of 0.1 nm."""

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Mistake:
    """One block taken in place of another, both in 0.1 nm."""

    wanted: int
    taken: int

    @property
    def height_error(self) -> int:
        """Error of the stack's height in 0.1 nm."""
        return self.taken - self.wanted


def smallest_mistake(stack: Sequence[int], sizes: Sequence[int]) -> Mistake | None:
    """Give the swap of one block of the stack for another of the set that changes height least.

    None where the set has no other block. Of equal changes the one of the smaller block is given,
    so that the answer does not depend on the order of the set.
    """
    spare = sorted(set(without(sizes, stack)))
    swaps = (
        Mistake(wanted, taken) for wanted in sorted(stack) for taken in spare if taken != wanted
    )
    return min(swaps, key=lambda swap: abs(swap.height_error), default=None)


def without(sizes: Sequence[int], stack: Sequence[int]) -> tuple[int, ...]:
    """Give the blocks of the set that are left when the stack is wrung."""
    return tuple((Counter(sizes) - Counter(stack)).elements())
