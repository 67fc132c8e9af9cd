"""The stacks of a way as a wrong block may be wrung into them, each with what its height makes."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from halfangle_service.fields import ARCSEC_PER_RADIAN, Units, to_tenth_nm
from halfangle_service.topics.jobs.plan.result import PlanStack
from halfangle_service.topics.jobs.plan.ways.way import taken
from halfangle_service.trade.inspection.mistakes import (
    ErrorOfHeight,
    PlannedStack,
    StackRole,
    rise_error,
    spare_beside,
)
from halfangle_service.trade.sine.compound_errors import CompoundSet
from halfangle_service.trade.sine.geometry import angle_for_height
from halfangle_service.trade.stacks.supply import Box, Piece


@dataclass(frozen=True, slots=True)
class SetByStacks:
    """A plate, or a dresser's sine base, on stacks of one box; lengths in `units`.

    `times` is how often its angle counts, signed, in the one that has the tolerance; `offset` the
    difference of the stacks at which it stands at zero.
    """

    units: Units
    center_distance: float
    angle_rad: float
    times: float
    box: Box
    high: Sequence[Piece]
    low: Sequence[Piece] = ()
    offset: float = 0.0

    def error_of(self, other: int, sign: int) -> ErrorOfHeight:
        """Error of the angle by one stack's height; `other` is added to it, both in 0.1 nm."""
        unit = to_tenth_nm(1.0, self.units)
        at_zero = round(self.offset * unit)
        return rise_error(
            self.center_distance, self.angle_rad, unit, other - at_zero, sign, times=self.times
        )


def on_rolls(made: SetByStacks, stacks: Sequence[PlanStack]) -> tuple[PlannedStack, ...]:
    """The stacks under both rolls, and those of `stacks` that one of them is compared with."""
    box = made.box
    high, low = _actual(made.high), _actual(made.low)
    by_high = made.error_of(-low, 1)
    found = [PlannedStack("high", tuple(made.high), spare_beside(box, made.high), by_high)]
    if made.low:
        by_low = made.error_of(high, -1)
        found.append(PlannedStack("low", tuple(made.low), spare_beside(box, made.low), by_low))
    in_use = (*made.high, *made.low)
    return (*found, *_to_compare(box, in_use, stacks, made.units, {_nominal(made.high): by_high}))


def on_hinges(
    laid: CompoundSet,
    hinges: Sequence["HingeOnStack"],
    box: Box,
    stacks: Sequence[PlanStack],
    units: Units,
) -> tuple[PlannedStack, ...]:
    """The stacks of a compound plate: the view's angle that is furthest off is what counts.

    Which view that is changes with the height, so that the error need not go one way.
    """
    base, upper = hinges
    errors: dict[StackRole, ErrorOfHeight] = {
        "base": _of_views(laid, base, lambda off: (off, upper.off_rad), units),
        "upper": _of_views(laid, upper, lambda off: (base.off_rad, off), units),
    }
    raised = [hinge for hinge in hinges if hinge.pieces]
    found = tuple(
        PlannedStack(
            hinge.role,
            hinge.pieces,
            spare_beside(box, hinge.pieces),
            errors[hinge.role],
            monotone=False,
        )
        for hinge in raised
    )
    in_use = (*base.pieces, *upper.pieces)
    of_second = {_nominal(hinge.pieces): errors[hinge.role] for hinge in raised}
    compared = _to_compare(box, in_use, stacks, units, of_second)
    return (*found, *(replace(stack, monotone=False) for stack in compared))


@dataclass(frozen=True, slots=True)
class HingeOnStack:
    """One hinge of a compound plate on its stack; `off_rad` toward a steeper angle as it stands."""

    role: StackRole
    center_distance: float
    angle_rad: float
    offset: float
    pieces: tuple[Piece, ...]
    off_rad: float


def _of_views(
    laid: CompoundSet,
    hinge: HingeOnStack,
    both: Callable[[float], tuple[float, float]],
    units: Units,
) -> ErrorOfHeight:
    nominal, unit = laid.views(), to_tenth_nm(1.0, units)

    def error(height: int) -> float | None:
        rise = height / unit - hinge.offset
        if not 0.0 <= rise < hinge.center_distance:
            return None
        off = angle_for_height(hinge.center_distance, rise) - hinge.angle_rad
        views = zip(laid.views(*both(off)), nominal, strict=True)
        return max((as_set - wanted for as_set, wanted in views), key=abs) * ARCSEC_PER_RADIAN

    return error


def _to_compare(
    box: Box,
    in_use: Sequence[Piece],
    stacks: Sequence[PlanStack],
    units: Units,
    errors: Mapping[int, ErrorOfHeight],
) -> Iterator[PlannedStack]:
    """Stacks to compare others with: wrong, they pass off a wrong one.

    `errors` are by the nominal height of the stack compared, in 0.1 nm, which is theirs too.
    """
    left: Sequence[Piece] = spare_beside(box, in_use)
    for second in stacks:
        if second.role == "check":
            pieces, left = taken(left, [to_tenth_nm(size, units) for size in second.blocks])
            error = errors[_nominal(pieces)]
            yield PlannedStack("check", pieces, spare_beside(box, pieces), error)


def _nominal(pieces: Sequence[Piece]) -> int:
    return sum(piece.size for piece in pieces)


def _actual(pieces: Sequence[Piece]) -> int:
    return sum(piece.actual for piece in pieces)
