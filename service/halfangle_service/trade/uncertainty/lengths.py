"""How large a runout may truly be: the length of a vector, which is never below nothing.

Derived here; vector quantities are treated in JCGM 102:2011 (from memory). What is read is the
length r of a vector whose error is alike in both directions, so a true length τ reads r by Rice's
law, f(r | τ) = r/u² exp(−(r² + τ²) / 2u²) I0(r τ / u²): near nothing it reads too long more often
than too short. Before it is read one length is as likely as another, and none is below nothing (as
JCGM 106:2012, 6.2 has it of what cannot be negative, from memory). Then

    P(τ ≤ L | r) = ∫ exp(−(τ − r)² / 2u²) i0e(r τ / u²) dτ / (u √(π/2) i0e(r² / 4u²)), τ from 0 to L

with i0e(x) = exp(−x) I0(x). Where the spread was estimated from few readings both integrals are
averaged over what it may truly be, whose square is ν u² over a chi-square. Far from nothing all
that is the error along the vector alone, normal or Student's.

Of an error that is known by its limit a only, the length lies between r − a, or nothing, and r + a,
all alike likely.
"""

import math
from collections.abc import Callable
from functools import cache

import numpy as np
from numpy.typing import NDArray

from halfangle_service.trade.uncertainty.budget import Budget

Values = NDArray[np.float64]
#: Probability that a length read as the first is truly at most the second.
LengthWithin = Callable[[float, float], float]

#: Reach of a normal error in the integral, in standard uncertainties: beyond it lie 1e-15.
_REACH = 8.0
#: Nodes of the integrals over the length and over the spread: better than 1e-6 of a probability.
_NODES, _SPREADS = 48, 48


def length_within(budget: Budget) -> LengthWithin:
    """Give the probability that the length of a vector is truly within a limit.

    `budget` is that of the length along the vector, in its unit.
    """
    spread = budget.standard_uncertainty
    if not spread:
        return lambda found, limit: 1.0 if found <= limit else 0.0
    reach = _only_limit(budget)
    if reach is not None:
        return lambda found, limit: _even(found, limit, reach)
    spreads, weights = _spreads(budget.degrees_of_freedom)
    return lambda found, limit: _share(found, limit, spread * spreads, weights)


def length_of_nothing(budget: Budget, chance: float) -> float:
    """The length that a vector of nothing is read as at least, with such a probability.

    Rayleigh's law, or Student's in two directions; in the budget's unit.
    """
    reach = _only_limit(budget)
    if reach is not None:
        return reach * (1.0 - chance)
    freedom = budget.degrees_of_freedom
    if math.isinf(freedom):
        return budget.standard_uncertainty * math.sqrt(-2.0 * math.log(chance))
    whole = max(1, math.floor(freedom))
    return budget.standard_uncertainty * math.sqrt(whole * (chance ** (-2.0 / whole) - 1.0))


def _only_limit(budget: Budget) -> float | None:
    """The limit of an error of which nothing else is known; None of any other."""
    acting = [c for c in budget.contributions if c.in_result]
    if len(acting) == 1 and acting[0].distribution == "rectangular":
        return abs(acting[0].at_limit)
    return None


def _even(found: float, limit: float, reach: float) -> float:
    """Between the smallest and the largest that the length can be, all alike likely."""
    smallest, largest = max(0.0, found - reach), found + reach
    return min(1.0, max(0.0, (limit - smallest) / (largest - smallest)))


def _share(found: float, limit: float, spreads: Values, weights: Values) -> float:
    """Share of the lengths that are within a limit, each as likely as it makes the reading."""
    from scipy.special import i0e  # noqa: PLC0415  most answers need none, and it costs start-up

    low = np.maximum(0.0, found - _REACH * spreads)
    half = np.maximum(0.0, np.minimum(limit, found + _REACH * spreads) - low) / 2.0
    nodes, shares = _unit_nodes(_NODES)
    lengths = low[:, None] + half[:, None] * (nodes + 1.0)
    likely = np.exp(-0.5 * ((lengths - found) / spreads[:, None]) ** 2)
    likely *= i0e(found * lengths / spreads[:, None] ** 2)
    # Every spread makes the reading as likely as its own law says: once by its square.
    within = half * (likely @ shares) / spreads**2
    whole = math.sqrt(math.pi / 2.0) * i0e((found / spreads) ** 2 / 4.0) / spreads
    return min(1.0, max(0.0, float(np.dot(weights, within) / np.dot(weights, whole))))


@cache
def _unit_nodes(count: int) -> tuple[Values, Values]:
    """Nodes and weights of Gauss and Legendre, from −1 to 1."""
    nodes, weights = np.polynomial.legendre.leggauss(count)
    return nodes, weights


@cache
def _spreads(freedom: float) -> tuple[Values, Values]:
    """What the spread may truly be, over the one estimated, and how likely each is."""
    if math.isinf(freedom):
        return np.ones(1), np.ones(1)
    whole = max(1, math.floor(freedom))
    middle = math.sqrt(whole)
    low = max(0.0, middle - _REACH)
    nodes, weights = _unit_nodes(_SPREADS)
    chi = low + (middle + _REACH - low) / 2.0 * (nodes + 1.0)
    # The chi distribution by its logarithm, less that at its middle: large powers stay small.
    density = (whole - 1.0) * np.log(chi / middle) - (chi**2 - whole) / 2.0
    return middle / chi, weights * np.exp(density)
