"""How far off a result may be, at a stated probability: distributions propagated, not assumed.

Independent inputs add, so their characteristic functions multiply; the probability that a sum lies
within ±x of its mean is then a Fourier series (the propagation of distributions of JCGM 101:2008
without the dice; derived here). Where an input's standard deviation was estimated from few
readings, Student's distribution with the effective degrees of freedom is used instead (JCGM
100:2008, G.4). All in the unit of the result.
"""

import math
from collections.abc import Callable, Sequence

import numpy as np
from numpy.typing import NDArray

from halfangle_service.trade.uncertainty.budget import (
    SQUARE_MEAN,
    Budget,
    Contribution,
    Distribution,
    coverage_factor,
)

Values = NDArray[np.float64]

#: Probability that an expanded uncertainty covers, unless another is asked for.
COVERAGE_PROBABILITY = 0.95
#: Reach of a normal contribution in the series, in standard deviations: beyond it lie 1e-15.
_NORMAL_REACH = 8.0
#: Terms of the series; few contributions have edges, which ask for more.
_TERMS, _TERMS_OF_FEW, _FEW = 512, 4096, 2
_STEPS = 60
#: Of a probability; the series itself is good to a few 1e-5.
_NEAR_ENOUGH = 1e-7
#: Share of its half-width within which a single contribution lies with a probability.
_SHARE_OF_REACH: dict[Distribution, Callable[[float], float]] = {
    "rectangular": lambda probability: probability,
    "triangular": lambda probability: 1.0 - math.sqrt(1.0 - probability),
    "u-shaped": lambda probability: math.sin(math.pi * probability / 2.0),
}


def half_width(budget: Budget, probability: float = COVERAGE_PROBABILITY) -> float:
    """Half-width of the interval about the mean that covers a probability, from 0 to 1.

    0 where nothing contributes.
    """
    contributions = _effective(budget)
    if not contributions:
        return 0.0
    if math.isfinite(budget.degrees_of_freedom):
        factor = coverage_factor(probability, budget.degrees_of_freedom)
        return factor * budget.standard_uncertainty
    if all(c.distribution == "normal" for c in contributions):
        return coverage_factor(probability) * budget.standard_uncertainty
    reach = _reach(contributions)
    if len(contributions) == 1 and not contributions[0].one_sided:
        return reach * _SHARE_OF_REACH[contributions[0].distribution](probability)
    series = _Series(contributions, reach)
    return _crossing(lambda width: series.within(width) - probability, reach)


def probability_within(budget: Budget, distance: float) -> float:
    """Probability, from 0 to 1, that the result lies within ± a distance of its mean."""
    contributions = _effective(budget)
    if not contributions:
        return 1.0
    if math.isfinite(budget.degrees_of_freedom):
        # Imported here: most answers need no quantile, and scipy costs start-up time and memory.
        from scipy.special import stdtr  # noqa: PLC0415

        freedom = max(1, math.floor(budget.degrees_of_freedom))
        return float(2.0 * stdtr(freedom, distance / budget.standard_uncertainty) - 1.0)
    reach = _reach(contributions)
    return 1.0 if distance >= reach else _Series(contributions, reach).within(distance)


def probability_between(budget: Budget, low: float, high: float) -> float:
    """Probability, from 0 to 1, that the result lies between two distances from its mean.

    Both in the unit of the result, signed; either may be infinite, for a limit to one side.
    """
    contributions = _effective(budget)
    if not contributions:
        return 1.0 if low <= 0.0 <= high else 0.0
    if math.isfinite(budget.degrees_of_freedom):
        from scipy.special import stdtr  # noqa: PLC0415  as above

        freedom = max(1, math.floor(budget.degrees_of_freedom))
        below, above = (stdtr(freedom, x / budget.standard_uncertainty) for x in (low, high))
        return max(0.0, float(above - below))
    reach = _reach(contributions)
    low, high = max(low, -reach), min(high, reach)
    return 0.0 if low >= high else _Series(contributions, reach).between(low, high)


def guard_band(budget: Budget, probability: float = COVERAGE_PROBABILITY) -> float:
    """Half-width that a result passes to one side with no more than 1 − `probability`.

    The guard band of ISO 14253-1:2017 (from memory): the limit of the conformance probability, 95 %
    by default, is one-sided; for a normal distribution it is 1.645 standard uncertainties.
    """
    return half_width(budget, 2.0 * probability - 1.0)


def _crossing(rising: Callable[[float], float], end: float) -> float:
    """Where a function that rises from below 0 to above it, between 0 and `end`, crosses.

    False position, the kept end's value halved (the Illinois rule), so that a few steps do.
    """
    low, high = 0.0, end
    at_low, at_high = rising(low), rising(high)
    for _ in range(_STEPS):
        width = high - at_high * (high - low) / (at_high - at_low)
        found = rising(width)
        if abs(found) < _NEAR_ENOUGH:
            return width
        if found * at_high < 0.0:
            low, at_low = high, at_high
        else:
            at_low /= 2.0
        high, at_high = width, found
    return high


def _effective(budget: Budget) -> tuple[Contribution, ...]:
    return tuple(c for c in budget.contributions if c.in_result)


def _reach(contributions: Sequence[Contribution]) -> float:
    """The furthest that the sum can lie from its mean, in the unit of the result."""
    return math.fsum(_own_reach(c) for c in contributions)


def _own_reach(contribution: Contribution) -> float:
    size = abs(contribution.at_limit)
    if contribution.one_sided:
        return size * (1.0 - SQUARE_MEAN)
    return size * (_NORMAL_REACH if contribution.distribution == "normal" else 1.0)


class _Series:
    """The probability within ±x of the mean, as a Fourier series over the sum's reach."""

    def __init__(self, contributions: Sequence[Contribution], reach: float) -> None:
        terms = _TERMS_OF_FEW if len(contributions) <= _FEW else _TERMS
        # A little over the reach: an edge just at the period's end would be taken for two.
        self._period = 1.02 * reach
        numbers = np.arange(1, terms + 1)
        self._waves: Values = np.asarray(numbers * (math.pi / self._period), dtype=np.float64)
        transform = np.ones(terms, dtype=np.complex128)
        for contribution in contributions:
            transform = transform * _transform(contribution, self._waves)
        self._weights = transform / (math.pi * numbers)

    def within(self, distance: float) -> float:
        """Probability, from 0 to 1, of lying within ± a distance of the mean."""
        return self.between(-distance, distance)

    def between(self, low: float, high: float) -> float:
        """Probability, from 0 to 1, of lying between two distances from the mean, signed."""
        even = (high - low) / (2.0 * self._period)
        turns = np.exp(-1j * self._waves * low) - np.exp(-1j * self._waves * high)
        return min(1.0, max(0.0, even + float(np.dot(self._weights, turns).imag)))


def _transform(contribution: Contribution, waves: Values) -> NDArray[np.complex128]:
    """Characteristic function of one contribution about its mean."""
    size = contribution.at_limit
    if contribution.one_sided:
        return _square_transform(size, waves)
    if contribution.distribution == "normal":
        return np.exp(-0.5 * (size * waves) ** 2).astype(np.complex128)
    if contribution.distribution == "rectangular":
        return np.sinc(size * waves / math.pi).astype(np.complex128)
    if contribution.distribution == "triangular":
        return (np.sinc(size * waves / (2.0 * math.pi)) ** 2).astype(np.complex128)
    from scipy.special import j0  # noqa: PLC0415  as above

    return np.asarray(j0(size * waves), dtype=np.complex128)


def _square_transform(size: float, waves: Values) -> NDArray[np.complex128]:
    """That of size · (x² − 1/3) for x even over ±1: Fresnel's integrals, less the mean."""
    from scipy.special import fresnel  # noqa: PLC0415  as above

    root = np.sqrt(2.0 * abs(size) * waves / math.pi)
    sine, cosine = fresnel(root)
    transform = (cosine + 1j * math.copysign(1.0, size) * sine) / root
    turned: NDArray[np.complex128] = transform * np.exp(-1j * size * waves * SQUARE_MEAN)
    return turned
