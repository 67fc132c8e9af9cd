"""Taps that bring an axis true: how far each, and how far off what they leave may be.

Derived here. A tap at a station moves the axis of the work square to itself: a swing turns it about
a pivot, so that the movement grows with the distance from there, a slide takes it along whole. Both
are lines along the axis, as the error is, so two unlike taps end it at every station and one ends
it at one. Moves are vectors toward where the center lies, to be made the opposite way. Lengths in
one unit; tilts are small.

What is left is a vector with an error alike in every direction, so its length follows Rice's law,
or Rayleigh's where nothing is to be left, and not the normal one.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import partial
from typing import Literal, NamedTuple

from halfangle_service.errors import Disagreement, Impossible
from halfangle_service.trade.runout import doubt
from halfangle_service.trade.runout.vectors import along, weight, without_rounding
from halfangle_service.trade.uncertainty import Budget, Contribution, Verdict
from halfangle_service.trade.uncertainty.coverage import COVERAGE_PROBABILITY

TapKind = Literal["swing", "slide"]
#: Two taps whose movements differ by less than this part of themselves move the axis alike.
ALIKE = 1e-6
_HALVINGS = 40


class Line(NamedTuple):
    """An axis through two sections: station and vector of each, toward where the center lies."""

    z_1: float
    e_1: complex
    z_2: float
    e_2: complex

    @property
    def vectors(self) -> tuple[complex, complex]:
        """Offset at each section."""
        return self.e_1, self.e_2

    def at(self, station: float) -> complex:
        """Offset of the axis at a station, a vector."""
        return along(self.e_1, self.z_1, self.e_2, self.z_2, station)


@dataclass(frozen=True, slots=True)
class TapPlace:
    """Where the work can be tapped, and about which station it then swings; None where it slides.

    `path` is the place's own in the request.
    """

    station: float
    pivot: float | None
    path: str = ""

    def share(self, station: float) -> float:
        """Movement of the axis at a station for one unit at the place tapped."""
        if self.pivot is None:
            return 1.0
        return (station - self.pivot) / (self.station - self.pivot)


@dataclass(frozen=True, slots=True)
class Shares:
    """What a move takes of each section's eccentricity: move = near * e_1 + far * e_2."""

    near: float
    far: float

    def move(self, line: Line) -> complex:
        """The move for a line found."""
        size = abs(self.near * line.e_1) + abs(self.far * line.e_2)
        return without_rounding(self.near * line.e_1 + self.far * line.e_2, size)

    def budget(self, near: Budget, far: Budget) -> Budget:
        """Budget of that move, in any direction, by those of both sections."""
        return joined((near, self.near, "near"), (far, self.far, "far"))


def shares_at(line: Line, station: float) -> Shares:
    """What the line's offset at a station takes of each section's."""
    far = weight(line.z_1, line.z_2, station)
    return Shares(1.0 - far, far)


@dataclass(frozen=True, slots=True)
class Tap:
    """A tap that could be made: what it takes of each section's vector, and whether it is made."""

    place: TapPlace
    shares: Shares
    made: bool


def taps_for(
    line: Line, places: Sequence[TapPlace], true_at: float, near: Budget, far: Budget
) -> tuple[Tap, ...]:
    """The taps in their order; `near` and `far` are the budgets of both sections.

    One within its own uncertainty is left. The other then brings true the station `true_at`, as one
    tap alone does. Refuses two places that move the axis alike, and one that cannot move that
    station.
    """
    if len(places) == 1:
        shares = _one(line, places[0], true_at)
        return (Tap(places[0], shares, _is_told(line, shares, near, far)),)
    both = _both(line, places[0], places[1])
    if all(_is_told(line, shares, near, far) for shares in both):
        return tuple(Tap(place, shares, True) for place, shares in zip(places, both, strict=True))
    left = max((0, 1), key=lambda i: _doubt(both[i].move(line), both[i].budget(near, far)))
    other = 1 - left
    moves = abs(places[other].share(true_at)) > ALIKE
    shares = _one(line, places[other], true_at) if moves else both[other]
    found = [
        Tap(places[left], both[left], False),
        Tap(places[other], shares, _is_told(line, shares, near, far)),
    ]
    return tuple(found if left == 0 else reversed(found))


def _both(line: Line, first: TapPlace, second: TapPlace) -> tuple[Shares, Shares]:
    """How far to tap at two places to bring the whole axis true."""
    z_1, z_2 = line.z_1, line.z_2
    a, b, c, d = first.share(z_1), second.share(z_1), first.share(z_2), second.share(z_2)
    determinant = a * d - b * c
    if abs(determinant) <= ALIKE * (abs(a * d) + abs(b * c)):
        raise Disagreement(
            "Both taps move the axis alike: tilt and offset cannot both be mended by them.",
            fields={
                second.path: "should slide where the other swings, or swing about another station"
            },
        )
    return Shares(d / determinant, -b / determinant), Shares(-c / determinant, a / determinant)


def _one(line: Line, place: TapPlace, true_at: float) -> Shares:
    """How far to tap at one place to bring one station true."""
    share = place.share(true_at)
    if abs(share) <= ALIKE:
        raise Impossible(
            "The station to bring true is the pivot, which no tap here moves.",
            fields={place.path: "should have its pivot elsewhere", "stations/0": "or be another"},
        )
    there = shares_at(line, true_at)
    return Shares(there.near / share, there.far / share)


def _is_told(line: Line, shares: Shares, near: Budget, far: Budget) -> bool:
    """True where a move is larger than its own uncertainty: only then is there one to make."""
    return _doubt(shares.move(line), shares.budget(near, far)) < 1.0


def _doubt(move: complex, budget: Budget) -> float:
    """Uncertainty of a move, as a part of it; none where it is nothing."""
    if not move:
        return math.inf
    return doubt.length_half_width(abs(move), budget) / abs(move)


def tapped(line: Line, place: TapPlace, move: complex) -> Line:
    """The line once a move has been made: what is left of it."""
    return Line(
        line.z_1,
        without_rounding(line.e_1 - move * place.share(line.z_1), abs(line.e_1) + abs(move)),
        line.z_2,
        without_rounding(line.e_2 - move * place.share(line.z_2), abs(line.e_2) + abs(move)),
    )


def joined(*parts: tuple[Budget, float, str]) -> Budget:
    """Budget of a sum of independent vectors, each times a factor and with its own name."""
    return Budget(
        tuple(
            replace(c.times(factor), of=name)
            for budget, factor, name in parts
            for c in budget.contributions
        ),
        not_stated=tuple(dict.fromkeys(n for budget, _, _ in parts for n in budget.not_stated)),
    )


def in_any_direction(along_it: Budget, across: Budget) -> Budget:
    """Budget of a vector whatever the direction: the larger of those along it and across it."""
    return max(along_it, across, key=lambda budget: budget.standard_uncertainty)


def by_tapping(limit: float | None, factors: Sequence[tuple[float, str]]) -> Budget:
    """What taps that end within ± a limit of where they should add, each times a factor."""
    if limit is None:
        return Budget((), not_stated=("tap_error_limit",) if factors else ())
    return Budget(
        tuple(
            Contribution("tap_error_limit", limit, "rectangular", factor, of=name)
            for factor, name in factors
        )
    )


# What is left, as a length ------------------------------------------------------------------------
def probability_within(left: complex, budget: Budget, radius: float) -> float:
    """Probability, from 0 to 1, that a vector expected to be `left` is no longer than a radius.

    Rice's law with the budget's standard uncertainty in each direction; where that was estimated
    from few readings it is widened as Student's factor widens an interval.
    """
    spread = _spread(budget)
    if not spread:
        return 1.0 if abs(left) <= radius else 0.0
    # Imported here: most answers need no such law, and scipy costs start-up time and memory.
    from scipy.special import chndtr  # noqa: PLC0415

    return float(chndtr((radius / spread) ** 2, 2.0, (abs(left) / spread) ** 2))


def verdict_within(found: complex, budget: Budget, radius: float) -> Verdict:
    """Judge by 95 and 5 of 100 whether a vector is no longer than a radius.

    Without contributions nothing is known of its error, so nothing can be proved.
    """
    if not budget.contributions:
        return "not-provable"
    within = probability_within(found, budget, radius)
    if within <= 1.0 - COVERAGE_PROBABILITY:
        return "not-conforming"
    return "conforming" if within >= COVERAGE_PROBABILITY else "not-provable"


def left_half_width(left: complex, budget: Budget) -> float:
    """Half-width about the length of a vector expected to be `left` that covers 95 %."""
    spread = _spread(budget)
    if not spread:
        return 0.0
    within = partial(probability_within, left, budget)
    low, high, length = 0.0, 8.0 * spread, abs(left)
    for _ in range(_HALVINGS):
        middle = (low + high) / 2.0
        inside = within(length + middle) - within(max(length - middle, 0.0))
        low, high = (middle, high) if inside < COVERAGE_PROBABILITY else (low, middle)
    return high


def _spread(budget: Budget) -> float:
    """Standard deviation of each component of a vector.

    Where it was estimated with ν degrees of freedom, widened as much as a vector of nothing then
    reaches further: r² = ν (0.05^(-2/ν) - 1) instead of -2 ln 0.05, of which two components of
    Student's law are made.
    """
    freedom = budget.degrees_of_freedom
    if math.isinf(freedom):
        return budget.standard_uncertainty
    whole, tail = max(1, math.floor(freedom)), 1.0 - COVERAGE_PROBABILITY
    reach = whole * (tail ** (-2.0 / whole) - 1.0) / (-2.0 * math.log(tail))
    return budget.standard_uncertainty * math.sqrt(reach)
