"""How far off a result may be, at a stated probability: distributions propagated, not assumed.

Independent inputs add, so their characteristic functions multiply, and the probability that a sum
lies between two distances from its mean is a Fourier series (the propagation of distributions of
JCGM 101:2008 without the dice; derived here). The two widest rectangular inputs are kept out of it:
what they do is the mean of that probability over their widths, which is exact, and leaves a short
series.
Where an input's standard deviation was estimated from few readings, Student's distribution with the
effective degrees of freedom is used instead (JCGM 100:2008, G.4). All in the unit of the result.
"""

import math
from collections.abc import Callable, Iterable
from functools import lru_cache
from statistics import NormalDist

import numpy as np
from numpy.typing import NDArray

from halfangle_service.trade.roots import crossing_near, zero_about
from halfangle_service.trade.uncertainty.budget import (
    DIVISOR,
    SQUARE_MEAN,
    SQUARE_SPREAD,
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
#: A rectangle narrower than this part of all else is averaged over by Simpson's rule: differences
#: would lose more to rounding.
_NARROW = 1e-7
#: Rectangular contributions that are kept out of the series.
_KEPT_OUT = 2


def half_width(budget: Budget, probability: float = COVERAGE_PROBABILITY) -> float:
    """Half-width of the interval about the mean that covers a probability, from 0 to 1.

    0 where nothing contributes.
    """
    of_rows = budget.row_for_row(lambda own: half_width(own, probability))
    if of_rows is not None:
        return of_rows
    parts = parts_of(budget.contributions)
    if not parts:
        return 0.0
    if math.isfinite(budget.degrees_of_freedom):
        factor = coverage_factor(probability, budget.degrees_of_freedom)
        return factor * budget.standard_uncertainty
    if all(kind == "normal" for kind, _ in parts):
        return coverage_factor(probability) * budget.standard_uncertainty
    if len(parts) == 1 and parts[0][0] == "rectangular":
        return probability * parts[0][1]
    return _covering(parts, probability)


@lru_cache(maxsize=1024)
def _covering(parts: Parts, probability: float) -> float:
    """Half-width that covers a probability, kept: many ways of a plan have errors alike."""
    spread = math.hypot(*(size * _SPREAD[kind] for kind, size in parts))
    # No distribution has less within so many standard deviations (Chebyshev's inequality).
    most = spread / math.sqrt(1.0 - probability) if probability < 1.0 else math.inf
    most = min(most, _reach(parts))
    if len(parts) > 1 and probability < 1.0:
        others, beside = without_widest(parts)
        rest = sum_of(others, beside)
        guess = _likely_factor(parts, spread, probability) * spread
        found = zero_about(lambda widths: rest.within(widths, beside) - probability, guess)
        if found is not None:
            return found
    between = probability_of(parts)

    def short(width: float) -> float:
        return between(-width, width) - probability

    # Most distributions are covered by twice their standard deviation, nearly.
    return crossing_near(short, 0.0, most, min(1.9 * spread, most))[1]


def _likely_factor(parts: Parts, spread: float, probability: float) -> float:
    """How many standard deviations cover a probability, to a hundredth or so.

    By the sum's excess kurtosis, as a normal, a triangular and a rectangular one have it.
    """
    fourth = math.fsum(_FOURTH[kind] * size**4 for kind, size in parts) / spread**4
    normal = NormalDist().inv_cdf((1.0 + probability) / 2.0)  # a guess needs no scipy
    triangular = (1.0 - math.sqrt(1.0 - probability)) * math.sqrt(6.0)
    along = fourth / _FOURTH_TRIANGULAR
    bend = normal - 2.0 * triangular + probability * math.sqrt(3.0)
    return normal + along * (triangular - normal) + along * (along - 1.0) / 2.0 * bend


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
    return 0.0 if low >= high else _probability(parts, low, high)


@lru_cache(maxsize=1024)
def _probability(parts: Parts, low: float, high: float) -> float:
    """Probability between two distances, kept as half-widths are."""
    return probability_of(parts)(low, high)


def guard_band(budget: Budget, probability: float = COVERAGE_PROBABILITY) -> float:
    """Half-width that a result passes to one side with no more than 1 − `probability`.

    The guard band of ISO 14253-1:2017 (from memory): the limit of the conformance probability, 95 %
    by default, is one-sided; for a normal distribution it is 1.645 standard uncertainties.
    """
    return half_width(budget, 2.0 * probability - 1.0)


def band_at_either(budget: Budget, width: float) -> float | None:
    """The guard band at each of two limits so far apart that no error passes one by the other.

    None where an error may, or where errors one way are likelier than the other way.
    """
    parts = parts_of(budget.contributions)
    if not parts or _skew(parts) or math.isfinite(budget.degrees_of_freedom):
        return None
    band = guard_band(budget)
    return band if band + _reach(parts) <= width else None


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
    if len(parts) == 1:
        kind, size = parts[0]
        below = _BELOW[kind]
        return lambda low, high: abs(below(high / size) - below(low / size))
    others, beside = without_widest(parts)
    rest = sum_of(others, beside)
    return lambda low, high: rest.between(low, high, *beside)


def without_widest(parts: Parts, count: int = _KEPT_OUT) -> tuple[Parts, tuple[float, ...]]:
    """What contributions do without the widest rectangular ones, and the half-widths of these."""
    widest = [part for part in parts if part[0] == "rectangular"][-count:]
    others = tuple(part for part in parts if part not in widest)
    # Of several alike only as many are taken out as were counted.
    alike = parts.count(widest[0]) - widest.count(widest[0]) if widest else 0
    return tuple(sorted((*others, *widest[:1] * alike))), tuple(size for _, size in widest)


def _within(low: float, value: float, high: float) -> float:
    return min(max(value, low), high)


#: Probability that a contribution alone lies below so many times its half-width (a square: its
#: change at the limit) from its mean.
_BELOW: dict[str, Callable[[float], float]] = {
    "rectangular": lambda x: 0.5 + _within(-1.0, x, 1.0) / 2.0,
    "triangular": lambda x: 0.5 + _within(-1.0, x, 1.0) * (1.0 - abs(_within(-1.0, x, 1.0)) / 2.0),
    "u-shaped": lambda x: 0.5 + math.asin(_within(-1.0, x, 1.0)) / math.pi,
    "one-sided": lambda x: math.sqrt(_within(0.0, x + SQUARE_MEAN, 1.0)),
}


def _reach(parts: Parts) -> float:
    """The furthest that the sum can lie from its mean, in the unit of the result."""
    return math.fsum(_REACH.get(kind, 1.0) * abs(size) for kind, size in parts)


#: Standard deviation of a contribution, and the furthest that it lies from its mean, for a
#: half-width (or what it is) of 1.
_SPREAD = {kind: 1.0 / divisor for kind, divisor in DIVISOR.items()} | {"one-sided": SQUARE_SPREAD}
_REACH = {"one-sided": 1.0 - SQUARE_MEAN, "normal": _NORMAL_REACH}
#: Excess kurtosis of a contribution times the square of its variance, likewise.
_FOURTH = {
    "normal": 0.0,
    "rectangular": -1.2 / 9.0,
    "triangular": -0.6 / 36.0,
    "u-shaped": -1.5 / 4.0,
    "one-sided": -6.0 / 7.0 * SQUARE_SPREAD**4,
}
_FOURTH_TRIANGULAR = -0.6


def _skew(parts: Parts) -> bool:
    return any(kind == "one-sided" for kind, _ in parts)


class Sum:
    """The sum of contributions about its mean: a Fourier series over its reach."""

    def __init__(self, parts: Parts, terms: int) -> None:
        self._period = _period_of(parts)
        self._skew = _skew(parts)
        if not parts:
            return
        kinds: dict[str, list[float]] = {}
        for kind, size in parts:
            kinds.setdefault(kind, []).append(size)
        numbers = np.arange(1, terms + 1)
        self._waves: Values = np.asarray(numbers * (math.pi / self._period), dtype=np.float64)
        transform = np.ones(len(numbers), dtype=np.complex128)
        for kind, sizes in kinds.items():
            transform *= _transform(kind, np.array(sizes), self._waves)
        self._even, self._odd = transform.real / self._period, transform.imag / self._period
        self._ends = np.where(numbers % 2, -1.0, 1.0)
        self._variance = math.fsum((size * _SPREAD[kind]) ** 2 for kind, size in parts)

    def between(self, low: float, high: float, *beside: float) -> float:
        """Probability, from 0 to 1, of lying between two distances from the mean, signed.

        `beside` are the half-widths of rectangular contributions more, two at most.
        """
        bound = 2.0 * (self._period + sum(beside)) or 1.0
        low, high = _within(-bound, low, bound), _within(-bound, high, bound)
        if low == -high and not self._skew:
            found = 2.0 * float(self._below(np.array([high]), beside)[0]) - 1.0
        else:
            below, above = self._below(np.array([low, high]), beside)
            found = float(above - below)
        return _within(0.0, found, 1.0)

    def within(self, distances: Values, beside: tuple[float, ...]) -> Values:
        """Probability of lying within ± each of the distances."""
        if not self._skew:
            return np.asarray(2.0 * self._below(distances, beside) - 1.0)
        both = self._below(np.concatenate([distances, -distances]), beside)
        return both[: len(distances)] - both[len(distances) :]

    def _below(self, distances: Values, beside: tuple[float, ...]) -> Values:
        """Probability of lying below distances, on average over the widths beside.

        That is the difference of its integral at both ends of a width, over the width.
        """
        least = _NARROW * (self._period + sum(beside))
        for place, width in enumerate(beside):
            if width <= least:
                others = beside[:place] + beside[place + 1 :]
                low, middle, high = (
                    self._below(distances + way, others) for way in (-width, 0.0, width)
                )
                return np.asarray((low + 4.0 * middle + high) / 6.0)
        shifts, weights = _corners(beside)
        places = distances[:, np.newaxis] + shifts
        found = self._integral(places.ravel(), len(beside)).reshape(places.shape)
        return np.asarray(np.dot(found, weights))

    def _integral(self, distances: Values, times: int) -> Values:
        """The probability of lying below distances, integrated so many times, at most twice."""
        period, above = self._period, np.maximum(distances, 0.0)
        if not period:
            return above**times / max(1, times) if times else np.where(distances >= 0.0, 1.0, 0.0)
        turns = distances[:, np.newaxis] * self._waves
        even, odd = self._even / self._waves ** (times + 1), self._odd / self._waves ** (times + 1)
        if times == 1:
            waves = np.dot(np.cos(turns), even)
            waves += np.dot(np.sin(turns), odd) if self._skew else 0.0
        else:
            waves = np.dot(np.sin(turns), even)
            waves -= np.dot(np.cos(turns) - self._ends, odd) if self._skew else 0.0
        from_start = distances + period
        steady = from_start ** (times + 1) / (2.0 * period * math.factorial(times + 1))
        # What the integral's own series is short of at the end of its period.
        left = self._variance / (4.0 * period) - period / 12.0
        if not times:
            outside, inside = np.where(distances > 0.0, 1.0, 0.0), steady + waves
        elif times == 1:
            outside, inside = above, steady + left - waves
        else:
            outside = np.where(distances > 0.0, (distances**2 + self._variance) / 2.0, 0.0)
            inside = steady + left * from_start - waves
        return np.where(np.abs(distances) < period, inside, outside)


@lru_cache(maxsize=64)
def _corners(beside: tuple[float, ...]) -> tuple[Values, Values]:
    """Where an integral is asked to give its mean over widths, and how each place counts."""
    shifts, weights = np.zeros(1), np.ones(1)
    for width in beside:
        shifts = np.concatenate([shifts + width, shifts - width])
        weights = np.concatenate([weights, -weights]) / (2.0 * width)
    return shifts, weights


def sum_of(parts: Parts, beside: tuple[float, ...] = ()) -> Sum:
    """The sum of contributions, kept: it is asked again and again while a limit is looked for.

    `beside` are half-widths of rectangular contributions that will always be asked for with it.
    """
    return _sum_of(parts, _terms_for(parts, beside))


@lru_cache(maxsize=64)
def _sum_of(parts: Parts, terms: int) -> Sum:
    return Sum(parts, terms)


def _period_of(parts: Parts) -> float:
    """A little over the reach: an edge just at the period's end would be taken for two."""
    return 1.02 * _reach(parts)


@lru_cache(maxsize=256)
def _terms_for(parts: Parts, beside: tuple[float, ...]) -> int:
    """How many terms the series of a sum takes."""
    if not parts:
        return 0
    everything = (*parts, *(("rectangular", size) for size in beside))
    wave = math.pi / _period_of(parts)

    def left_out(terms: int) -> float:
        return _envelope(everything, terms * wave) / terms

    return next((terms for terms in _TERMS if left_out(terms) < _NEGLIGIBLE), _TERMS[-1])


def _envelope(parts: Parts, wave: float) -> float:
    """What no term of this wave or a shorter one exceeds: the transforms' decay."""
    return math.prod(min(1.0, _DECAY[kind](abs(size) * wave)) for kind, size in parts)


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
        found = np.sin(turns) / turns
    elif kind == "triangular":
        found = (np.sin(turns / 2.0) / (turns / 2.0)) ** 2
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
