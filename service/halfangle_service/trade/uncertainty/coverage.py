"""How far off a result may be, at a stated probability: distributions propagated, not assumed.

Independent inputs add, so their characteristic functions multiply; the probability that a sum lies
within ±x of its mean is then a Fourier series (the propagation of distributions of JCGM 101:2008
without the dice; derived here). Where an input's standard deviation was estimated from few
readings, Student's distribution with the effective degrees of freedom is used instead (JCGM
100:2008, G.4). All in the unit of the result.
"""

import math
from collections.abc import Callable, Mapping, Sequence

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
#: Probability between two distances from a result's mean, signed.
Between = Callable[[float, float], float]

#: Probability that an expanded uncertainty covers, unless another is asked for.
COVERAGE_PROBABILITY = 0.95
#: Reach of a normal contribution in the series, in standard deviations: beyond it lie 1e-15.
_NORMAL_REACH = 8.0
#: Terms of the series: as few as leave out no term larger than this, or the most. Few contributions
#: have edges, which ask for more.
_TERMS = (16, 32, 64, 128, 256, 512, 1024, 2048, 4096)
_NEGLIGIBLE = 1e-5
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
    return crossing(lambda width: series.within(width) - probability, reach)


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
    return between_of(budget)(low, high)


def between_of(budget: Budget) -> Between:
    """The function that `probability_between` is of a budget, for many pairs of distances."""
    contributions = _effective(budget)
    if not contributions:
        return lambda low, high: 1.0 if low <= 0.0 <= high else 0.0
    if math.isfinite(budget.degrees_of_freedom):
        from scipy.special import stdtr  # noqa: PLC0415  as above

        freedom = max(1, math.floor(budget.degrees_of_freedom))
        return _by_distribution(lambda x: float(stdtr(freedom, x)), budget.standard_uncertainty)
    if all(c.distribution == "normal" for c in contributions):
        return _by_distribution(_normal, budget.standard_uncertainty)
    reach = _reach(contributions)
    if len(contributions) == 1 and _is_even(contributions[0]):
        return _by_distribution(lambda x: min(1.0, max(0.0, (x + 1.0) / 2.0)), reach)
    series = _Series(contributions, reach)

    def between(low: float, high: float) -> float:
        low, high = max(low, -reach), min(high, reach)
        return 0.0 if low >= high else series.between(low, high)

    return between


def _is_even(contribution: Contribution) -> bool:
    return contribution.distribution == "rectangular" and not contribution.one_sided


def _normal(deviations: float) -> float:
    """Normal distribution, of so many standard deviations."""
    return math.erfc(-deviations / math.sqrt(2.0)) / 2.0


def _by_distribution(distribution: Callable[[float], float], spread: float) -> Between:
    """Probability between two distances, by the distribution of a distance over the spread.

    Both are counted from the nearer tail, so that small probabilities keep their digits; the
    distribution is even.
    """

    def between(low: float, high: float) -> float:
        if low > high:
            return 0.0
        if low > 0.0:
            low, high = -high, -low
        return max(0.0, distribution(high / spread) - distribution(low / spread))

    return between


def guard_band(budget: Budget, probability: float = COVERAGE_PROBABILITY) -> float:
    """Half-width that a result passes to one side with no more than 1 − `probability`.

    The guard band of ISO 14253-1:2017 (from memory): the limit of the conformance probability, 95 %
    by default, is one-sided; for a normal distribution it is 1.645 standard uncertainties.
    """
    return half_width(budget, 2.0 * probability - 1.0)


def crossing(rising: Callable[[float], float], end: float) -> float:
    """Where a function that rises from at most 0 to 0 at least, between 0 and `end`, crosses 0.

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
        # A little over the reach: an edge just at the period's end would be taken for two.
        self._period = 1.02 * reach
        kinds: dict[str, list[float]] = {}
        for contribution in contributions:
            kind: str = "one-sided" if contribution.one_sided else contribution.distribution
            kinds.setdefault(kind, []).append(contribution.at_limit)
        terms = _terms_for(kinds, math.pi / self._period)
        numbers = np.arange(1, terms + 1)
        self._waves: Values = np.asarray(numbers * (math.pi / self._period), dtype=np.float64)
        transform = np.ones(terms, dtype=np.complex128)
        for kind, sizes in kinds.items():
            transform *= _transform(kind, np.array(sizes), self._waves)
        self._even: Values = transform.real / (math.pi * numbers)
        self._odd: Values = transform.imag / (math.pi * numbers)

    def within(self, distance: float) -> float:
        """Probability, from 0 to 1, of lying within ± a distance of the mean."""
        # The interval is even about the mean, so that the odd terms cancel.
        found = distance / self._period + 2.0 * np.dot(self._even, np.sin(self._waves * distance))
        return min(1.0, max(0.0, float(found)))

    def between(self, low: float, high: float) -> float:
        """Probability, from 0 to 1, of lying between two distances from the mean, signed."""
        to, start = self._waves * high, self._waves * low
        waves = np.dot(self._even, np.sin(to) - np.sin(start))
        waves += np.dot(self._odd, np.cos(start) - np.cos(to))
        return min(1.0, max(0.0, (high - low) / (2.0 * self._period) + float(waves)))


def _terms_for(kinds: Mapping[str, Sequence[float]], wave: float) -> int:
    """How many terms the series takes, `wave` being the first one's."""
    return next((n for n in _TERMS if _envelope(kinds, n * wave) < _NEGLIGIBLE), _TERMS[-1])


def _envelope(kinds: Mapping[str, Sequence[float]], wave: float) -> float:
    """What no term of this wave or a shorter one exceeds: the transforms' decay."""
    return math.prod(
        min(1.0, _DECAY[kind](abs(size) * wave)) for kind, sizes in kinds.items() for size in sizes
    )


#: No characteristic function exceeds this, for a half-width (or standard deviation) times a wave;
#: that of an arc-sine by Bessel's asymptote, that of a square by Fresnel's.
_DECAY: dict[str, Callable[[float], float]] = {
    "normal": lambda x: math.exp(-0.5 * x * x),
    "rectangular": lambda x: 1.0 / x,
    "triangular": lambda x: 4.0 / (x * x),
    "u-shaped": lambda x: math.sqrt(2.0 / (math.pi * x)),
    "one-sided": lambda x: math.sqrt(math.pi / x),
}


def _transform(kind: str, sizes: Values, waves: Values) -> NDArray[np.complex128]:
    """Characteristic function of the sum of contributions of one kind, about its mean."""
    if kind == "one-sided":
        return _square_transform(sizes, waves)
    if kind == "normal":
        return np.asarray(np.exp(-0.5 * np.dot(sizes, sizes) * waves**2), dtype=np.complex128)
    turns = np.outer(sizes, waves)
    if kind == "rectangular":
        found = np.sinc(turns / math.pi)
    elif kind == "triangular":
        found = np.sinc(turns / (2.0 * math.pi)) ** 2
    else:
        from scipy.special import j0  # noqa: PLC0415  as above

        found = j0(turns)
    return np.asarray(np.prod(found, axis=0), dtype=np.complex128)


def _square_transform(sizes: Values, waves: Values) -> NDArray[np.complex128]:
    """That of size · (x² − 1/3) for x even over ±1: Fresnel's integrals, less the mean."""
    from scipy.special import fresnel  # noqa: PLC0415  as above

    root = np.sqrt(np.outer(np.abs(sizes), waves) * (2.0 / math.pi))
    sine, cosine = fresnel(root)
    transform = (cosine + 1j * np.sign(sizes)[:, None] * sine) / root
    turned = transform * np.exp(-1j * SQUARE_MEAN * np.outer(sizes, waves))
    return np.asarray(np.prod(turned, axis=0), dtype=np.complex128)
