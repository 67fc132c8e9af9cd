"""How an angle's error grows over the pieces of a batch, when to dress again, which to measure.

A wheel that breaks down by b a piece at one end of its line of contact, square to the surface,
leaves after k pieces a generator turned by atan(k b / s), s the slant: twice that on the included
angle (derived here; exact, not its slope). Angles in radians unless a name says arc-seconds.
"""

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from typing import Literal

from halfangle_service.trade.angles import ARCSEC_PER_RADIAN
from halfangle_service.trade.uncertainty import (
    Budget,
    Contribution,
    DecisionRule,
    Verdict,
    forecast_of,
    verdict_of,
)

#: Which way the included angle grows as the wheel breaks down.
Sense = Literal["blunter", "sharper"]
#: Observed pieces below which a line through them leaves no doubt to estimate.
FEWEST_OBSERVED = 3
#: So many pieces to measure are listed; of more the count is told.
MOST_LISTED = 24
#: A generator that is turned so far stands upright, nearly: no tolerance asks for more.
_UPRIGHT = 1.5
#: How near the largest growth is found, as a part of the tolerance.
NEAR_ENOUGH = 1e-3


@dataclass(frozen=True, slots=True)
class Growth:
    """Growth of the included angle's error over the pieces of one dress.

    `slope` is what the generator turns in the first piece, as a tangent; `sense` None where it is
    not known which end of the wheel breaks down. `spread_arcsec` is the standard uncertainty of the
    growth a piece where it was observed, with its degrees of freedom. `counted`: how often a turn
    of the generator counts in the angle, twice in an included one and once in a face's.
    """

    slope: float
    sense: Sense | None = None
    spread_arcsec: float = 0.0
    degrees_of_freedom: float = math.inf
    counted: float = 2.0

    @classmethod
    def of_breakdown(
        cls, breakdown: float, slant: float, sense: Sense | None = None, counted: float = 2.0
    ) -> "Growth":
        """That of a wheel that breaks down by so much a piece over a slant, both in one unit."""
        return cls(breakdown / slant, sense, counted=counted)

    @classmethod
    def of_angle(
        cls, arcsec_per_piece: float, sense: Sense | None = None, counted: float = 2.0
    ) -> "Growth":
        """That of an angle that grows by so much a piece, unsigned."""
        turned = arcsec_per_piece / ARCSEC_PER_RADIAN / counted
        return cls(math.tan(turned), sense, counted=counted)

    def error_arcsec(self, piece: int) -> float:
        """Size of the angle's error at a piece, the first after a dress being 1."""
        return self.counted * math.atan(piece * self.slope) * ARCSEC_PER_RADIAN

    def pieces_within(self, error_arcsec: float) -> float:
        """How many pieces it takes to grow by so much, infinite where it does not grow."""
        if self.slope == 0.0:
            return math.inf
        turned = min(error_arcsec / ARCSEC_PER_RADIAN / self.counted, _UPRIGHT)
        return math.tan(turned) / self.slope

    def added_to(self, budget: Budget, piece: int) -> tuple[Budget, ...]:
        """A budget in arc-seconds with the growth at a piece, either way where that is unknown."""
        signs = {"blunter": (1.0,), "sharper": (-1.0,), None: (1.0, -1.0)}[self.sense]
        if self.slope == 0.0:
            signs = signs[:1]
        parts = budget.contributions
        if self.spread_arcsec:
            own = Contribution(
                "growth_per_piece_arcsec",
                self.spread_arcsec,
                "normal",
                sensitivity=float(piece),
                degrees_of_freedom=self.degrees_of_freedom,
            )
            parts = (*parts, own)
        error = self.error_arcsec(piece)
        return tuple(
            replace(budget, contributions=parts, offset=budget.offset + sign * error)
            for sign in signs
        )


@dataclass(frozen=True, slots=True)
class Line:
    """The least-squares line through values by pieces since a dress, in the values' unit.

    `scatter` is the standard deviation of a piece about it, `spread` the standard uncertainty of
    its slope; both are estimates with these degrees of freedom.
    """

    slope: float
    spread: float
    degrees_of_freedom: float
    scatter: float
    count: int
    mean_piece: float
    mean_value: float
    square: float
    last: int

    def at(self, piece: int) -> float:
        """Value on the line at a piece."""
        return self.mean_value + self.slope * (piece - self.mean_piece)

    def added_to(self, budget: Budget, piece: int) -> tuple[Budget, ...]:
        """A budget with what a further piece has by the line, and how far it may lie off it.

        By the prediction of a further value: s √(1 + 1/n + (k − mean)² / Σ(k − mean)²).
        """
        off = (piece - self.mean_piece) ** 2 / self.square
        own = Contribution(
            "scatter",
            self.scatter,
            "normal",
            sensitivity=math.sqrt(1.0 + 1.0 / self.count + off),
            degrees_of_freedom=self.degrees_of_freedom,
        )
        parts = (*budget.contributions, own)
        return (replace(budget, contributions=parts, offset=budget.offset + self.at(piece)),)


def line_through(values: Sequence[tuple[int, float]]) -> Line | None:
    """The line through (piece since its dress, value).

    None where it leaves no doubt to estimate: fewer than three pieces, or all at one place.
    """
    count = len(values)
    if count < FEWEST_OBSERVED:
        return None
    mean_piece = math.fsum(piece for piece, _ in values) / count
    mean_value = math.fsum(value for _, value in values) / count
    square = math.fsum((piece - mean_piece) ** 2 for piece, _ in values)
    if square == 0.0:
        return None
    slope = math.fsum((p - mean_piece) * (v - mean_value) for p, v in values) / square
    left = math.fsum((v - mean_value - slope * (p - mean_piece)) ** 2 for p, v in values)
    freedom = count - 2
    scatter = math.sqrt(left / freedom)
    spread = scatter / math.sqrt(square)
    return Line(
        slope,
        spread,
        float(freedom),
        scatter,
        count,
        mean_piece,
        mean_value,
        square,
        max(values)[0],
    )


def observed_growth(errors: Sequence[tuple[int, float]], counted: float = 2.0) -> Growth | None:
    """Growth by the pieces that were measured: (piece since its dress, error in arc-seconds).

    None where no line goes through them: see `line_through`.
    """
    line = line_through(errors)
    if line is None:
        return None
    sense: Sense = "blunter" if line.slope >= 0.0 else "sharper"
    found = Growth.of_angle(abs(line.slope), sense, counted)
    return replace(found, spread_arcsec=line.spread, degrees_of_freedom=line.degrees_of_freedom)


def judged_at(
    budget: Budget, growth: Growth | Line, piece: int, tolerance: float, rule: DecisionRule
) -> Verdict:
    """Whether a piece keeps ± a tolerance by what was stated, the worse way where both may be.

    Budget, growth and tolerance are all of an angle in arc-seconds, or all of a size.
    """
    order: tuple[Verdict, ...] = ("not-conforming", "not-provable", "conforming")
    found = (
        verdict_of(grown.mean, -tolerance, tolerance, grown, rule)
        for grown in growth.added_to(budget, piece)
    )
    return min(found, key=order.index)


def first_piece_fails(
    budget: Budget, growth: Growth, tolerance_arcsec: float, rule: DecisionRule
) -> bool:
    """True where not even the first piece on a dress keeps its tolerance, whichever way it grows.

    That it is not sure to keep it, `pieces_per_dress` says by 0. `budget` as there.
    """
    return all(
        forecast_of(grown, -tolerance_arcsec, tolerance_arcsec, rule) == "does-not-hold"
        for grown in growth.added_to(budget, 1)
    )


def largest_growth(
    budget: Budget, sense: Sense | None, tolerance_arcsec: float, rule: DecisionRule
) -> float | None:
    """Growth in arc-seconds up to which the tolerance is kept by what was stated; None at none.

    To a thousandth of the tolerance. It is below twice the tolerance, whichever way it leans.
    """
    signs = {"blunter": (1.0,), "sharper": (-1.0,), None: (1.0, -1.0)}[sense]

    def keeps(error: float) -> bool:
        return all(
            verdict_of(
                budget.mean + sign * error, -tolerance_arcsec, tolerance_arcsec, budget, rule
            )
            == "conforming"
            for sign in signs
        )

    if not budget.contributions or not keeps(0.0):
        return None
    low, high = 0.0, 2.0 * tolerance_arcsec
    while high - low > NEAR_ENOUGH * tolerance_arcsec:
        middle = (low + high) / 2.0
        low, high = (middle, high) if keeps(middle) else (low, middle)
    return low


def pieces_per_dress(
    budget: Budget, growth: Growth, pieces: int, tolerance_arcsec: float, rule: DecisionRule
) -> int | None:
    """Most pieces that may be ground on one dress, so that the last still keeps the tolerance.

    `budget` is the set-up's in arc-seconds of included angle, without the wheel's breakdown. 0
    where not even the first piece keeps it; None where nothing of the set-up was stated. What was
    not stated can only make it fewer. The offsets that keep a tolerance lie together, so that the
    range is halved.
    """
    if not budget.contributions:
        return None

    return most_pieces(
        lambda piece: judged_at(budget, growth, piece, tolerance_arcsec, rule) == "conforming",
        pieces,
    )


def most_pieces(keeps: Callable[[int], bool], pieces: int) -> int:
    """Most pieces of which the last still keeps its tolerance; 0 where not even the first does.

    The pieces that keep it lie together, so that the range is halved.
    """
    if not keeps(1):
        return 0
    if keeps(pieces):
        return pieces
    low, high = 1, pieces
    while high - low > 1:
        middle = (low + high) // 2
        low, high = (middle, high) if keeps(middle) else (low, middle)
    return low


@dataclass(frozen=True, slots=True)
class Inspected:
    """Which pieces of a batch to measure: how many, the first of them, dresses between pieces."""

    count: int
    listed: tuple[int, ...]
    dressings: int


def to_inspect(pieces: int, per_dress: int) -> Inspected:
    """First, last before each dress, first after it, and the last of all.

    >>> to_inspect(10, 4)
    Inspected(count=6, listed=(1, 4, 5, 8, 9, 10), dressings=2)
    """
    dressings = (pieces - 1) // per_dress
    last_first = dressings * per_dress + 1
    if per_dress == 1 or pieces == 1:
        count = pieces
    else:
        count = 2 * (dressings + 1) - (pieces == last_first)
    listed = {1}
    for dress in range(1, min(dressings, MOST_LISTED) + 1):
        listed |= {dress * per_dress, dress * per_dress + 1}
    if dressings <= MOST_LISTED:
        listed.add(pieces)
    return Inspected(count, tuple(sorted(listed)[:MOST_LISTED]), dressings)
