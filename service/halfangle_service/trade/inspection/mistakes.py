"""The smallest wrong block of each stack of a plan that takes what is ground out of its tolerance.

Exact: every block of the box that may be taken for one of the stack, measured deviations counted,
and what the stack then gives by the sine itself, not by its slope. Heights in 0.1 nm, errors of
what the tolerance belongs to in arc-seconds.
"""

import math
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from operator import itemgetter
from typing import Literal

from halfangle_service.trade.angles import ARCSEC_PER_RADIAN
from halfangle_service.trade.stacks.mistakes import distinct
from halfangle_service.trade.stacks.supply import Box, Piece

#: The stack of a plan that a block is wrung into: under the high or the low roll of a plate or of a
#: dresser's sine base, under a compound plate's base or upper plate, or to compare another with.
StackRole = Literal["high", "low", "base", "upper", "check"]
#: Error in arc-seconds of what the tolerance belongs to, for a stack's actual height in 0.1 nm;
#: None where nothing stands on that height.
ErrorOfHeight = Callable[[int], float | None]


@dataclass(frozen=True, slots=True)
class PlannedStack:
    """A stack of a plan: its blocks, the others of the box, and what its height makes of the work.

    `spare` is every block that may be taken by mistake: all of the box but the stack's own. Those
    of the plan's other stacks are among them, for it is not known which is wrung first.
    """

    role: StackRole
    pieces: tuple[Piece, ...]
    spare: tuple[Piece, ...]
    error_of: ErrorOfHeight

    @property
    def actual(self) -> int:
        """Height with the measured deviations."""
        return sum(piece.actual for piece in self.pieces)


@dataclass(frozen=True, slots=True)
class StackMistake:
    """A block `wrung` in place of the one `meant`, what it adds to the height, and the error."""

    role: StackRole
    meant: Piece
    wrung: Piece
    height_change: int
    error_arcsec: float | None

    def leaves(self, lower_arcsec: float, upper_arcsec: float) -> bool:
        """True where it takes the error out of these limits, or nothing stands on the stack."""
        return self.error_arcsec is None or not lower_arcsec <= self.error_arcsec <= upper_arcsec


def stack_mistakes(stack: PlannedStack) -> tuple[StackMistake, ...]:
    """Every block that may be wrung for one of another size of the stack, the least change first.

    What changes the height least is hardest to see; of equal changes the one of the smaller blocks
    comes first, so that the order of the blocks makes no difference.
    """
    return tuple(_in_order(stack))


def past_limits(
    found: Iterable[StackMistake], lower_arcsec: float, upper_arcsec: float
) -> tuple[StackMistake, ...]:
    """Those of the mistakes that leave the limits, in their order."""
    return tuple(mistake for mistake in found if mistake.leaves(lower_arcsec, upper_arcsec))


def smallest_past(
    stack: PlannedStack, lower_arcsec: float, upper_arcsec: float
) -> StackMistake | None:
    """The mistake that leaves the limits with the least change of height; None where none does."""
    mistakes = _in_order(stack)
    return next((m for m in mistakes if m.leaves(lower_arcsec, upper_arcsec)), None)


def _in_order(stack: PlannedStack) -> Iterator[StackMistake]:
    """The mistakes as they are asked for, so that none is worked out that is not."""
    spare = [(piece.size, piece.actual, piece) for piece in distinct(stack.spare)]
    ways = [
        (abs(height - meant.actual), meant.size, size, height - meant.actual, meant, wrung)
        for meant in distinct(stack.pieces)
        for size, height, wrung in spare
        if size != meant.size
    ]
    actual = stack.actual
    for *_, change, meant, wrung in sorted(ways, key=itemgetter(0, 1, 2)):
        yield StackMistake(stack.role, meant, wrung, change, stack.error_of(actual + change))


def spare_beside(box: Box, pieces: Sequence[Piece]) -> tuple[Piece, ...]:
    """The blocks of a box without those of a stack, each counted as often as it is there."""
    left = list(box.pieces)
    for piece in pieces:
        left.remove(piece)
    return tuple(left)


def plate_error(
    center_distance: float, wanted_rad: float, per_unit: int, *, times: float = 1.0
) -> ErrorOfHeight:
    """Error of an angle that follows a sine plate `times` over, by the height under its high roll.

    `center_distance` in any unit of `per_unit` 0.1 nm; `times` is 2 for a cone's included angle.
    """
    return rise_error(center_distance, wanted_rad, per_unit, 0, 1, times=times)


def rise_error(
    center_distance: float,
    wanted_rad: float,
    per_unit: int,
    other: int,
    sign: int,
    *,
    times: float = 1.0,
) -> ErrorOfHeight:
    """The same for one of two stacks: its height counts by `sign`, and `other` is added to it.

    For the stack under the high roll: `other` is what is taken from it, sign 1. For that under the
    low roll: `other` is the high roll's height, sign −1. A plate that would stand at its center
    distance or beyond, or below level where it was wanted above, has no angle.
    """

    def error(height: int) -> float | None:
        rise = (other + sign * height) / per_unit
        if not 0.0 <= rise < center_distance:
            return None
        return times * ARCSEC_PER_RADIAN * (math.asin(rise / center_distance) - wanted_rad)

    return error
