"""A stack as wrung: is it what was wanted, and which mistake explains it where not. 0.1 nm.

Two comparisons are made: what was measured with the stack as read from its blocks, and the stack as
read with what is wanted. Where one of them fails, every single mistake is tried on it.
"""

import math
from collections import Counter
from dataclasses import dataclass, replace
from itertools import takewhile
from typing import Literal

from halfangle_service.trade.angles import ARCSEC_PER_RADIAN
from halfangle_service.trade.sine.geometry import angle_for_height
from halfangle_service.trade.stacks.height_budget import blocks_budget
from halfangle_service.trade.stacks.mistakes import (
    ROUNDING,
    Comparison,
    Mistake,
    against_wanted,
    distinct,
    ranked,
    single_mistakes,
    within_limit,
)
from halfangle_service.trade.stacks.supply import Box, Piece
from halfangle_service.trade.uncertainty import Verdict, verdict_of
from halfangle_service.trade.units import Units, bench_step, to_tenth_nm

#: What single mistakes are to explain.
MistakesExplain = Literal["what-was-measured", "the-stack-as-read"]


@dataclass(frozen=True, slots=True)
class Plate:
    """The plate that a stack stands under, in `units`.

    `low_stack` stands under its low roll, `offset` is the difference of the stacks at zero.
    """

    units: Units
    center_distance: float
    low_stack: float
    offset: float

    def rise(self, height: float) -> float:
        """What a stack of this height (0.1 nm) lifts the high roll by, in `units`."""
        return height / to_tenth_nm(1.0, self.units) - self.low_stack - self.offset

    def angle_rad(self, height: float) -> float | None:
        """Angle that a stack of this height (0.1 nm) gives; None past the plate's end."""
        length = self.center_distance
        if not -length < self.rise(height) < length:
            return None
        high = height / to_tenth_nm(1.0, self.units) - self.low_stack
        return angle_for_height(length, high, self.offset)

    def height(self, angle_rad: float) -> float:
        """Height of the stack (0.1 nm) for an angle."""
        rise = self.center_distance * math.sin(angle_rad)
        # To 0.1 pm: sin 30° falls short of a half by the last bit, which would show as an error.
        return round((rise + self.low_stack + self.offset) * to_tenth_nm(1.0, self.units), 3)


@dataclass(frozen=True, slots=True)
class Wrung:
    """The blocks in a stack, those left beside it, and what it is compared with.

    `any_wear` are all wear blocks there are; `low` and `low_wear` the blocks under the low roll, as
    far as they are known. `angle_wanted` and `angle_measured` tell that the height `wanted` or
    `measured` is of an angle: then a wrong block under the low roll shows in it too, and a wanted
    height rounded to the bench's step will do. `limit` is that of what was `measured`, or of what
    is wanted where nothing was; None for the usual one.
    """

    units: Units
    box: Box
    any_wear: tuple[Piece, ...]
    inner: tuple[Piece, ...]
    spare: tuple[Piece, ...]
    wear: tuple[Piece, ...]
    spare_wear: tuple[Piece, ...]
    low: tuple[Piece, ...]
    low_wear: tuple[Piece, ...]
    plate: Plate | None
    wanted: float | None
    angle_wanted: bool
    measured: float | None
    angle_measured: bool
    limit: float | None

    @property
    def pieces(self) -> tuple[Piece, ...]:
        """All blocks of the stack, wear blocks last."""
        return (*self.inner, *self.wear)

    @property
    def total(self) -> int:
        """Nominal height."""
        return sum(piece.size for piece in self.pieces)

    @property
    def actual(self) -> int:
        """Height, measured deviations included."""
        return sum(piece.actual for piece in self.pieces)

    @property
    def low_deviation(self) -> int:
        """Sum of the measured deviations under the low roll."""
        return sum(piece.deviation for piece in (*self.low, *self.low_wear))

    @property
    def unit(self) -> int:
        """The length unit in 0.1 nm."""
        return to_tenth_nm(1.0, self.units)

    def angle_rad(self, height: float) -> float | None:
        """Angle that a stack of this height gives; None without a plate, or past its end."""
        return None if self.plate is None else self.plate.angle_rad(height)

    def error_arcsec(self, height: float | None, reference: float | None) -> float | None:
        """Angle of one height less that of another; None where one of them is not known."""
        if height is None or reference is None:
            return None
        angle, meant = self.angle_rad(height), self.angle_rad(reference)
        return None if angle is None or meant is None else (angle - meant) * ARCSEC_PER_RADIAN

    @property
    def unclear(self) -> frozenset[int]:
        """Sizes of which the box has blocks that differ by deviation or mark."""
        return frozenset(
            size
            for pieces in (self.box.pieces, self.any_wear)
            for size, count in Counter(piece.size for piece in distinct(pieces)).items()
            if count > 1
        )


@dataclass(frozen=True, slots=True)
class Search:
    """Mistakes looked for, the likeliest first: what they are to explain, and what they did.

    `unclear` are the sizes of which it must be said which of several blocks is meant.
    """

    comparison: Comparison
    explains: MistakesExplain
    mistakes: tuple[Mistake, ...]
    unclear: frozenset[int]

    @property
    def explaining(self) -> tuple[Mistake, ...]:
        """Those that explain it; ranked, they come first."""
        return tuple(takewhile(self.comparison.explained_by, self.mistakes))


def search_mistakes(bench: Wrung) -> Search | None:
    """Give the mistakes that could explain what is wrong; None where nothing is.

    What was measured differs from the stack as read: the mistake leads from this stack to another.
    What was wanted differs from it: the mistake led from another to this stack, so the search runs
    the other way round.
    """
    measured, wanted = measured_comparison(bench), wanted_comparison(bench)
    if measured is not None and not measured.agrees:
        found = _mistakes(bench, low=bench.angle_measured, nominal=False)
        return Search(measured, "what-was-measured", tuple(ranked(found, measured)), bench.unclear)
    if wanted is None or wanted.agrees:
        return None
    nominal = _limit_of_wanted(bench) is None
    of_stacks = _mistakes(bench, low=bench.angle_wanted, nominal=nominal)
    found = [mistake.reversed() for mistake in of_stacks]
    unclear = frozenset[int]() if nominal else bench.unclear
    return Search(wanted, "the-stack-as-read", tuple(ranked(found, wanted)), unclear)


def likeliest_hidden(bench: Wrung) -> Mistake | None:
    """Give the likeliest wrong block with which a measurement would agree as well.

    None where nothing was measured, or where it disagrees, or where it is fine enough.
    """
    comparison = measured_comparison(bench)
    if comparison is None or not comparison.agrees:
        return None
    hidden = [
        mistake
        for mistake in _mistakes(bench, low=bench.angle_measured, nominal=False)
        if mistake.likeness != "same-size" and comparison.explained_by(mistake)
    ]
    return next(iter(ranked(hidden, comparison)), None)


def measured_comparison(bench: Wrung) -> Comparison | None:
    """What was measured against the stack as read, measured deviations included."""
    if bench.measured is None:
        return None
    usual = bench_step(bench.units) / 2.0 * bench.unit
    limit = usual if bench.limit is None else bench.limit
    return within_limit(bench.measured, bench.actual, limit)


def wanted_comparison(bench: Wrung) -> Comparison | None:
    """The stack as read against what is wanted: nominal sizes, unless a limit was sent for it."""
    if bench.wanted is None:
        return None
    limit = _limit_of_wanted(bench)
    if limit is not None:
        return within_limit(bench.actual, bench.wanted, limit)
    step = bench_step(bench.units) * bench.unit
    # An angle's height stands on the low stack as it is; by nominal sizes both stacks count so.
    total = bench.total + (bench.low_deviation if bench.angle_wanted else 0)
    rounded = bench.angle_wanted
    return against_wanted(total, bench.wanted, bench.box.sizes, step, rounded=rounded)


def _limit_of_wanted(bench: Wrung) -> float | None:
    """The limit sent, where nothing was measured that it could be of."""
    return bench.limit if bench.measured is None else None


def verdict_on(bench: Wrung, search: Search | None) -> Verdict:
    """Judge a stack that was compared with something; `search` is what was found wrong with it.

    A measurement that would agree with a wrong block in the stack as well proves nothing. A limit
    about the wanted height is kept, or not, by the blocks' actual sizes: at 95 % (ISO 14253-1), so
    not where nothing is known of their errors.
    """
    limit = _limit_of_wanted(bench)
    if bench.wanted is not None and limit is not None:
        errors = blocks_budget((*bench.pieces, *bench.low, *bench.low_wear), bench.units)
        if errors.contributions or search is None:
            off, limit = (bench.actual - bench.wanted) / bench.unit, (limit + ROUNDING) / bench.unit
            return verdict_of(off, -limit, limit, errors)
    if search is not None:
        return "not-conforming"
    return "conforming" if likeliest_hidden(bench) is None else "not-provable"


def _mistakes(bench: Wrung, *, low: bool, nominal: bool) -> list[Mistake]:
    """Every single mistake with the stack as read, and with the one under the low roll if asked.

    By nominal sizes alone, each size once.
    """
    unclear = bench.unclear
    inner, spare, wear, spare_wear, low_inner, low_wear = (
        [_nominal(piece, unclear) for piece in part] if nominal else part
        for part in (
            bench.inner,
            bench.spare,
            bench.wear,
            bench.spare_wear,
            bench.low,
            bench.low_wear,
        )
    )
    found = single_mistakes(inner, spare, wear, spare_wear, bench.unit)
    if low and (low_inner or low_wear):
        under = single_mistakes(low_inner, spare, low_wear, spare_wear, bench.unit)
        found += [replace(mistake, low=True) for mistake in under]
    return found


def _nominal(piece: Piece, unclear: frozenset[int]) -> Piece:
    return Piece(piece.size, mark=None if piece.size in unclear else piece.mark)
