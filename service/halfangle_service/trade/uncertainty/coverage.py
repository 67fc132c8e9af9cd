"""How far off a result may be, at a stated probability: distributions propagated, not assumed.

Independent inputs add, so their characteristic functions multiply, and the probability that a sum
lies between two distances from its mean is a Fourier series (the propagation of distributions of
JCGM 101:2008 without the dice; derived here). The widest rectangular input is kept out of it: what
it does is the mean of that probability over its width, which is exact, and leaves a short series.
Where an input's standard deviation was estimated from few readings, Student's distribution with the
effective degrees of freedom is used instead (JCGM 100:2008, G.4). All in the unit of the result.
"""

import math
from collections.abc import Callable, Iterable, Mapping, Sequence
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from halfangle_service.trade.roots import crossing_near
from halfangle_service.trade.uncertainty.budget import (
    SQUARE_MEAN,
    Budget,
    Contribution,
    coverage_factor,
)

Values = NDArray[np.float64]
#: What contributions do, in order: kind (`one-sided`, or the distribution), and the result's change
#: at the half-width or standard deviation, signed where it is one-sided.
Parts = tuple[tuple[str, float], ...]

#: Probability that an expanded uncertainty covers, unless another is asked for.
COVERAGE_PROBABILITY = 0.95
#: Reach of a normal contribution in the series, in standard deviations: beyond it lie 1e-15.
_NORMAL_REACH = 8.0
#: Terms of the series: as few as leave out no term larger than this, or the most, which leave out
#: more only where a budget has no rectangular contribution and next to no normal one.
_TERMS = (16, 32, 64, 128, 256, 512, 1024, 2048, 4096)
_NEGLIGIBLE = 1e-10
#: A rectangle narrower than this part of the series' period is averaged over by Simpson's rule:
#: differences would lose more to rounding.
_NARROW = 1e-5


def half_width(budget: Budget, probability: float = COVERAGE_PROBABILITY) -> float:
    """Half-width of the interval about the mean that covers a probability, from 0 to 1.

    0 where nothing contributes.
    """
    parts = parts_of(budget.contributions)
    if not parts:
        return 0.0
    spread = budget.standard_uncertainty
    if math.isfinite(budget.degrees_of_freedom):
        return coverage_factor(probability, budget.degrees_of_freedom) * spread
    if all(kind == "normal" for kind, _ in parts):
        return coverage_factor(probability) * spread
    # No distribution has less within so many standard deviations (Chebyshev's inequality).
    most = spread / math.sqrt(1.0 - probability) if probability < 1.0 else math.inf
    between = probability_of(parts)
    most = min(most, _reach(parts))

    def short(width: float) -> float:
        return between(-width, width) - probability

    # Most distributions are covered by twice their standard deviation, nearly.
    return crossing_near(short, 0.0, most, min(1.9 * spread, most))[1]


def probability_within(budget: Budget, distance: float) -> float:
    """Probability, from 0 to 1, that the result lies within ± a distance of its mean."""
    return probability_between(budget, -distance, distance)


def probability_between(budget: Budget, low: float, high: float) -> float:
    """Probability, from 0 to 1, that the result lies between two distances from its mean.

    Both in the unit of the result, signed; either may be infinite, for a limit to one side.
    """
    parts = parts_of(budget.contributions)
    if not parts:
        return 1.0 if low <= 0.0 <= high else 0.0
    if math.isfinite(budget.degrees_of_freedom):
        # Imported here: most answers need no quantile, and scipy costs start-up time and memory.
        from scipy.special import stdtr  # noqa: PLC0415

        freedom = max(1, math.floor(budget.degrees_of_freedom))
        below, above = (stdtr(freedom, x / budget.standard_uncertainty) for x in (low, high))
        return max(0.0, float(above - below))
    return 0.0 if low >= high else probability_of(parts)(low, high)


def guard_band(budget: Budget, probability: float = COVERAGE_PROBABILITY) -> float:
    """Half-width that a result passes to one side with no more than 1 − `probability`.

    The guard band of ISO 14253-1:2017 (from memory): the limit of the conformance probability, 95 %
    by default, is one-sided; for a normal distribution it is 1.645 standard uncertainties.
    """
    return half_width(budget, 2.0 * probability - 1.0)


def parts_of(contributions: Iterable[Contribution]) -> Parts:
    """What contributions do to their result; those that do nothing are left out."""
    return tuple(
        sorted(
            ("one-sided", c.at_limit) if c.one_sided else (c.distribution, abs(c.at_limit))
            for c in contributions
            if c.at_limit
        )
    )


def probability_of(parts: Parts) -> Callable[[float, float], float]:
    """Probability that the sum of contributions lies between two distances from its mean."""
    kinds = {kind for kind, _ in parts}
    if kinds == {"normal"}:
        spread = math.hypot(*(size for _, size in parts)) * math.sqrt(2.0)
        return lambda low, high: (math.erf(high / spread) - math.erf(low / spread)) / 2.0
    if len(parts) == 1 and kinds != {"rectangular"}:
        kind, size = parts[0]
        below = _BELOW[kind]
        return lambda low, high: abs(below(high / size) - below(low / size))
    widths = [size for kind, size in parts if kind == "rectangular"]
    if not widths:
        return lambda low, high: sum_of(parts).between(low, high)
    widest = parts.index(("rectangular", max(widths)))
    others = sum_of(parts[:widest] + parts[widest + 1 :], max(widths))
    return lambda low, high: others.between(low, high, max(widths))


def _within(low: float, value: float, high: float) -> float:
    return min(max(value, low), high)


#: Probability that a contribution alone lies below so many times its half-width (a square: its
#: change at the limit) from its mean.
_BELOW: dict[str, Callable[[float], float]] = {
    "triangular": lambda x: 0.5 + _within(-1.0, x, 1.0) * (1.0 - abs(_within(-1.0, x, 1.0)) / 2.0),
    "u-shaped": lambda x: 0.5 + math.asin(_within(-1.0, x, 1.0)) / math.pi,
    "one-sided": lambda x: math.sqrt(_within(0.0, x + SQUARE_MEAN, 1.0)),
}


def _reach(parts: Parts) -> float:
    """The furthest that the sum can lie from its mean, in the unit of the result."""
    return math.fsum(_REACH.get(kind, 1.0) * abs(size) for kind, size in parts)


#: Furthest that a contribution lies from its mean, for a half-width (or what it is) of 1.
_REACH = {"one-sided": 1.0 - SQUARE_MEAN, "normal": _NORMAL_REACH}


class Sum:
    """The sum of contributions about its mean: a Fourier series over its reach."""

    def __init__(self, parts: Parts, beside: float) -> None:
        # A little over the reach: an edge just at the period's end would be taken for two.
        self._period = 1.02 * _reach(parts)
        if not parts:
            return
        kinds: dict[str, list[float]] = {}
        for kind, size in parts:
            kinds.setdefault(kind, []).append(size)
        numbers = np.arange(1, _terms_for(kinds, beside, math.pi / self._period) + 1)
        self._waves: Values = np.asarray(numbers * (math.pi / self._period), dtype=np.float64)
        transform = np.ones(len(numbers), dtype=np.complex128)
        for kind, sizes in kinds.items():
            transform *= _transform(kind, np.array(sizes), self._waves)
        self._even, self._odd = transform.real / self._period, transform.imag / self._period
        self._skew = "one-sided" in kinds
        self._at_end = float(np.sum(self._even / self._waves**2 * np.where(numbers % 2, -1.0, 1.0)))

    def between(self, low: float, high: float, beside: float = 0.0) -> float:
        """Probability, from 0 to 1, of lying between two distances from the mean, signed.

        `beside` is the half-width of a rectangular contribution more.
        """
        bound = 2.0 * (self._period + beside) or 1.0
        ends = np.clip([high, low], -bound, bound)
        if beside > _NARROW * self._period:
            most, least = self._excess(np.concatenate([ends + beside, ends - beside])).reshape(2, 2)
            above, below = (most - least) / (2.0 * beside)
        elif beside > 0.0:
            places = np.concatenate([ends - beside, ends, ends + beside])
            above, below = np.array([1.0, 4.0, 1.0]) / 6.0 @ self._below(places).reshape(3, 2)
        else:
            above, below = self._below(ends)
        return _within(0.0, float(above - below), 1.0)

    def _below(self, distances: Values) -> Values:
        """Probability of lying below a distance."""
        if not self._period:
            return np.where(distances >= 0.0, 1.0, 0.0)
        turns = np.outer(distances, self._waves)
        waves = np.sum(np.sin(turns) * (self._even / self._waves), axis=1)
        if self._skew:
            ends = np.where(np.arange(1, len(self._waves) + 1) % 2, -1.0, 1.0)
            waves -= np.sum((np.cos(turns) - ends) * (self._odd / self._waves), axis=1)
        inside = 0.5 + distances / (2.0 * self._period) + waves
        return np.where(np.abs(distances) < self._period, inside, distances > 0.0)

    def _excess(self, distances: Values) -> Values:
        """Integral of that probability up to a distance: the mean of what is above it, or 0."""
        outside = np.maximum(distances, 0.0)
        if not self._period:
            return outside
        turns = np.outer(distances, self._waves)
        waves = np.sum(np.cos(turns) * (self._even / self._waves**2), axis=1)
        if self._skew:
            waves += np.sum(np.sin(turns) * (self._odd / self._waves**2), axis=1)
        inside = (distances + self._period) ** 2 / (4.0 * self._period) + self._at_end - waves
        return np.where(np.abs(distances) < self._period, inside, outside)


@lru_cache(maxsize=64)
def sum_of(parts: Parts, beside: float = 0.0) -> Sum:
    """The sum of contributions, kept: it is asked again and again while a limit is looked for.

    `beside` is the least half-width of a rectangular contribution that will be asked for with it.
    """
    return Sum(parts, beside)


def _terms_for(kinds: Mapping[str, Sequence[float]], beside: float, wave: float) -> int:
    """How many terms the series takes, `wave` being the first one's."""

    def left_out(terms: int) -> float:
        narrower = min(1.0, 1.0 / (beside * terms * wave)) if beside else 1.0
        return _envelope(kinds, terms * wave) * narrower / terms

    return next((terms for terms in _TERMS if left_out(terms) < _NEGLIGIBLE), _TERMS[-1])


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
