"""How far off an eccentricity may be: what its readings leave in doubt, and what its length hides.

Derived here. An eccentricity is a vector with an error of its own in every direction. Its length is
read too long where the vector is small (a length is never below nothing), and its direction is
worth no more than the error across it: seen from the axis, a circle of radius U about the center
found spans ± asin(U/e). Angles in degrees or radians as named, lengths in one unit.
"""

import math
from dataclasses import dataclass, replace

import numpy as np

from halfangle_service.trade.runout.harmonics import Floats, HarmonicFit
from halfangle_service.trade.uncertainty import Budget, Contribution
from halfangle_service.trade.uncertainty.coverage import COVERAGE_PROBABILITY, half_width
from halfangle_service.trade.uncertainty.lengths import length_of_nothing

#: Sides of a vector on which its error acts, as factors of its direction.
ALONG, ACROSS = 1.0 + 0.0j, 1.0j
#: So many roundings add up to a triangular distribution at most.
TWO_ROUNDINGS = 2
#: Two readings this near to half a turn apart are opposed, in radians.
OPPOSED_RAD = math.radians(1.0)
#: Half-width and standard deviation of a direction of which nothing is known, in degrees.
ANY_DIRECTION_DEG, ANY_DIRECTION_SPREAD_DEG = 180.0, 180.0 / math.sqrt(3.0)
#: Eccentricities below this, in inches or millimetres, are nobody's to tell a direction of.
LEAST_OFFSET = 1e-9


@dataclass(frozen=True, slots=True)
class Readings:
    """What is known of readings round a section beside the readings themselves; lengths.

    `step` is the indicator's, `repeatability` the standard deviation of one reading, None where it
    was not stated; both as they act on the eccentricity, square to the axis.
    """

    angles_rad: Floats
    step: float
    repeatability: float | None


def eccentricity_budgets(
    readings: Readings, asked: HarmonicFit, fullest: HarmonicFit
) -> tuple[Budget, Budget]:
    """Uncertainty of the eccentricity along its own direction and across it, lengths.

    By the indicator's rounding or by the scatter, whichever reaches further at 95 %, since scatter
    holds rounding already; and by form that was not fitted, as far as it leaks in.
    """
    return (
        _budget(readings, asked, fullest, ALONG),
        _budget(readings, asked, fullest, ACROSS),
    )


def _budget(readings: Readings, asked: HarmonicFit, fullest: HarmonicFit, side: complex) -> Budget:
    form = form_effect(asked, fullest)
    rounding = Budget((rounding_effect(readings, asked, side), *form))
    scatter = scatter_effect(readings, asked, fullest, side)
    if scatter is None:
        return replace(rounding, not_stated=("repeatability",))
    return max(rounding, Budget((scatter, *form)), key=half_width)


def rounding_effect(readings: Readings, asked: HarmonicFit, side: complex = ALONG) -> Contribution:
    """What the indicator's step adds along the eccentricity, or across it.

    Opposed readings share their rounding: zeroed about the middle they are as large with opposite
    signs, and are rounded alike. Of two roundings the sum is triangular at most, of more it is
    near to normal (JCGM 100:2008, G.2).
    """
    weights = _shared(readings.angles_rad, _weights(asked, side))
    effect = float(np.linalg.norm(weights))
    spread = readings.step / math.sqrt(12.0)
    if len(weights) > TWO_ROUNDINGS:
        return Contribution("indicator_resolution", spread, "normal", effect)
    return Contribution("indicator_resolution", spread * math.sqrt(6.0), "triangular", effect)


def scatter_effect(
    readings: Readings, asked: HarmonicFit, fullest: HarmonicFit, side: complex = ALONG
) -> Contribution | None:
    """What the scatter of the readings adds along the eccentricity; None where it cannot be told.

    By their repeatability where that was stated, else by what the fullest fit leaves, with the few
    degrees of freedom that it has.
    """
    effect = float(np.linalg.norm(_weights(asked, side)))
    if readings.repeatability is not None:
        return Contribution("repeatability", readings.repeatability, "normal", effect)
    if fullest.spare < 1:
        return None
    scatter = math.sqrt(float(np.sum(fullest.residuals**2)) / fullest.spare)
    return Contribution("scatter", scatter, "normal", effect, degrees_of_freedom=fullest.spare)


def _weights(asked: HarmonicFit, side: complex) -> Floats:
    """Weight of each reading in the eccentricity along its direction, or across it."""
    offset = asked.eccentricity
    toward = side * (offset / abs(offset) if offset else 1.0)
    return np.asarray(np.array([toward.real, toward.imag]) @ asked.weights, dtype=np.float64)


def form_effect(asked: HarmonicFit, fullest: HarmonicFit) -> tuple[Contribution, ...]:
    """What ovality and lobes that were not fitted add, through angles that are not even."""
    leak = abs(fullest.eccentricity - asked.eccentricity)
    if leak <= 1e-9 * max(abs(vector) for vector in fullest.amplitudes):
        return ()
    return (Contribution("form_not_fitted", leak, "normal"),)


def _shared(angles_rad: Floats, along: Floats) -> Floats:
    """Weights of the independent roundings: opposed readings together, the others by themselves."""
    turn = np.mod(angles_rad, 2.0 * math.pi)
    order = np.argsort(turn)
    opposite = np.mod(turn + math.pi, 2.0 * math.pi)
    place = np.searchsorted(turn[order], opposite)
    nearest = order[np.stack([place - 1, place % len(turn)])]
    off = np.abs(np.mod(turn[nearest] - opposite + math.pi, 2.0 * math.pi) - math.pi)
    partner = np.where(off[0] <= off[1], nearest[0], nearest[1])
    own = np.arange(len(turn))
    paired = (np.min(off, axis=0) <= OPPOSED_RAD) & (partner[partner] == own)
    first = paired & (own < partner)
    return np.concatenate([along[first] - along[partner[first]], along[~paired]])


# Of a vector whose error is alike in every direction -------------------------------------------
def length_half_width(offset: float, budget: Budget) -> float:
    """Half-width about a vector's length, as found, that covers 95 % whatever the true length is.

    That of the error along it; but where no offset at all would show as much as often as 1 time in
    40, the interval reaches down to nothing.
    """
    spread = half_width(budget)
    return offset if spread < offset <= _length_of_nothing(budget) else spread


def _length_of_nothing(budget: Budget) -> float:
    """The length that a vector of nothing passes 1 time in 40, and never more than it can show.

    Rounding has limits that no law of chance knows of.
    """
    worst = budget.worst_case
    chance = length_of_nothing(budget, (1.0 - COVERAGE_PROBABILITY) / 2.0)
    return min(chance, math.inf if worst is None else worst)


def direction_budget(offset: float, across: Budget) -> Budget:
    """Budget of a vector's direction in degrees, by the error across it; for small angles.

    A vector shorter than its own uncertainty counts as one of that length: one radian.
    """
    per_length = math.degrees(1.0 / max(offset, across.standard_uncertainty, LEAST_OFFSET))
    return replace(
        across,
        contributions=tuple(
            replace(c.times(per_length), unit=c.unit or "length") for c in across.contributions
        ),
    )


def direction_half_width(offset: float, across: Budget) -> float:
    """Half-width of a direction that covers 95 %, in degrees; 180 where any may be true."""
    return _span(offset, length_half_width(offset, across))


def direction_worst_case(offset: float, across: Budget) -> float | None:
    """Largest error of a vector's direction, in degrees; 180 where any may be true.

    None where the error across the vector has no limit.
    """
    worst = across.worst_case
    return None if worst is None else _span(offset, worst)


def _span(offset: float, radius: float) -> float:
    """The circle about the center found spans ± asin(U/e); about an axis inside it, all round."""
    return ANY_DIRECTION_DEG if radius >= offset else math.degrees(math.asin(radius / offset))
