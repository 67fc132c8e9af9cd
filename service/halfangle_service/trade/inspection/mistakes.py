"""The smallest wrong block of each stack of a plan that takes what is ground out of its tolerance.

Exact: every block of the box that may be taken for one of the stack, measured deviations counted,
and what the stack then gives by the sine itself, not by its slope. Heights in 0.1 nm, errors of
what the tolerance belongs to in arc-seconds.

An angle goes one way with the height of its stack, so that of the blocks in the order of their
heights all beyond some place leave a limit: the place is found by halving.
"""

import math
from bisect import bisect_left, bisect_right
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from itertools import islice
from operator import attrgetter, itemgetter
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
    of the plan's other stacks are among them, for it is not known which is wrung first. The error
    is `monotone` where it goes one way with the height, and is none beyond some height at most.
    """

    role: StackRole
    pieces: tuple[Piece, ...]
    spare: tuple[Piece, ...]
    error_of: ErrorOfHeight
    monotone: bool = True

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


#: A way to take a wrong block: its place in the order of mistakes (five numbers), the block meant,
#: the one wrung, and the change of height.
_Way = tuple[int, int, int, int, int, Piece, Piece, int]
_order = itemgetter(0, 1, 2, 3, 4)
_height = attrgetter("actual")


class WrongBlocks:
    """Every block that may be wrung for one of another size of a stack.

    What changes the height least is hardest to see; of equal changes the one of the smaller blocks
    comes first, so that the order of the blocks makes no difference.
    """

    def __init__(self, stack: PlannedStack) -> None:
        self._stack = stack
        self._meant = distinct(stack.pieces)
        spare = distinct(stack.spare)
        # Of equal heights the smaller block stays first.
        upward = sorted(spare, key=_height)
        downward = sorted(spare, key=_height, reverse=True)
        self._sides = (
            (1, upward, list(map(_height, upward))),
            (-1, downward, [-height for height in map(_height, downward)]),
        )

    def smallest(self) -> StackMistake | None:
        """The one that changes the height least; None where no other block could be taken."""
        return next(self._mistakes(self._beyond(lambda _: True)), None)

    def past(self, lower_arcsec: float, upper_arcsec: float) -> Iterator[StackMistake]:
        """To either side the one that leaves the limits with the least change, that change first.

        It leaves them where nothing stands on the stack too. Where the error goes one way, one of
        both has the least error of all that leave them.
        """
        stack = self._stack
        actual, error_of = stack.actual, stack.error_of

        def leaves(change: int) -> bool:
            error = error_of(actual + change)
            return error is None or not lower_arcsec <= error <= upper_arcsec

        # What is outside by itself may come inside by a mistake, and leave again.
        if stack.monotone and not leaves(0):
            yield from self._mistakes(self._beyond(leaves))
            return
        sides: set[bool] = set()
        for mistake in self._mistakes(self._every()):
            side = mistake.height_change < 0
            if side not in sides and leaves(mistake.height_change):
                sides.add(side)
                yield mistake

    def _mistakes(self, ways: Iterator[_Way]) -> Iterator[StackMistake]:
        """The mistakes of these ways in their order, worked out as they are asked for."""
        stack = self._stack
        for *_, meant, wrung, change in sorted(ways, key=_order):
            error = stack.error_of(stack.actual + change)
            yield StackMistake(stack.role, meant, wrung, change, error)

    def _every(self) -> Iterator[_Way]:
        _, wrung, _ = self._sides[0]
        for place, meant in enumerate(self._meant):
            for piece in wrung:
                if piece.size != meant.size:
                    yield _way(place, meant, piece)

    def _beyond(self, leaves: Callable[[int], bool]) -> Iterator[_Way]:
        """To either side the way of least change that leaves, where one does."""
        for sign, wrung, heights in self._sides:
            found = []
            for place, meant in enumerate(self._meant):
                own = meant.actual
                # No change at all counts as one upward.
                first = (bisect_left if sign > 0 else bisect_right)(heights, sign * own)

                def there(height: int, sign: int = sign, own: int = own) -> bool:
                    return leaves(sign * height - own)

                beyond = bisect_left(heights, True, first, key=there)
                others = (piece for piece in wrung[beyond:] if piece.size != meant.size)
                found += [_way(place, meant, piece) for piece in islice(others, 1)]
            yield from sorted(found, key=_order)[:1]


def _way(place: int, meant: Piece, wrung: Piece) -> _Way:
    """One way; `place` is that of the block meant among those of the stack."""
    change = wrung.actual - meant.actual
    return abs(change), meant.size, wrung.size, place, wrung.deviation, meant, wrung, change


def smallest_past(
    stack: PlannedStack, lower_arcsec: float, upper_arcsec: float
) -> StackMistake | None:
    """The mistake that leaves the limits with the least change of height; None where none does."""
    return next(WrongBlocks(stack).past(lower_arcsec, upper_arcsec), None)


def spare_beside(box: Box, pieces: Sequence[Piece]) -> tuple[Piece, ...]:
    """The blocks of a box without those of a stack, each counted as often as it is there."""
    left = list(box.pieces)
    for piece in pieces:
        left.remove(piece)
    return tuple(left)


def rise_error(
    center_distance: float,
    wanted_rad: float,
    per_unit: int,
    other: int,
    sign: int,
    *,
    times: float = 1.0,
) -> ErrorOfHeight:
    """Error of an angle that follows a sine plate `times` over, by the height of one of its stacks.

    That height counts by `sign`, and `other` is added to it; `center_distance` in any unit of
    `per_unit` 0.1 nm. `times` is 2 for a cone's included angle. For the stack under the high roll:
    `other` is what is taken from it, sign 1. For that under the low roll: `other` is the high
    roll's height, sign −1. A plate that would stand at its center distance or beyond, or below
    level where it was wanted above, has no angle.
    """

    def error(height: int) -> float | None:
        rise = (other + sign * height) / per_unit
        if not 0.0 <= rise < center_distance:
            return None
        return times * ARCSEC_PER_RADIAN * (math.asin(rise / center_distance) - wanted_rad)

    return error
