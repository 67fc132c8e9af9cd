"""How long the sum of vectors is whose directions are unknown, each uniform over the turn.

Lengths in any one unit; shares of all sums from 0 to 1. Derived here. Two vectors: by the law of
cosines, in closed form. Three: that of the third with the first two, averaged over the angle
between these. More: Kluyver's product of Bessel functions as a Fourier-Bessel series over a disc
that no sum reaches past (DLMF 10.22.37 and 10.23.18, from memory); but where some are so short
beside others that the series would be long, the longest is turned over, the rest averaged over
evenly spread directions.
"""

import math
from collections.abc import Callable, Sequence
from functools import cache, lru_cache
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from halfangle_service.trade.roots import curve_at_zero

Floats = NDArray[np.float64]

#: A vector shorter than this part of all of them is none.
_NOTHING = 1e-12
#: Gauss-Legendre from 0 to 1, spread by sin²: at both ends of the average stand square roots.
_NODES, _WEIGHTS = np.polynomial.legendre.leggauss(64)
_PLACES = np.sin(math.pi / 4.0 * (_NODES + 1.0)) ** 2
_PARTS = _WEIGHTS * math.pi / 4.0 * np.sin(math.pi / 2.0 * (_NODES + 1.0))
#: Terms of the series: as few as leave out no term larger than this. Its shares are then good to
#: 1e-7, mostly 1e-8.
_TERMS = (64, 128, 256, 512, 1024)
_NEGLIGIBLE = 1e-7
#: Directions where these do not do: shares good to 5e-5, the better the more unlike the lengths.
_DIRECTIONS = 2048
#: Radius of the disc, in lengths of all vectors in line: at its edge the series is nothing.
_DISC = 1.02
#: Steps to a length at most, and how near to its share it comes.
_STEPS, _NEAR_ENOUGH = 60, 1e-9
#: Where the whole range is looked at, as parts of it, closest at its ends; where about a guess, how
#: often, and how little a curve bends there.
_LOOK = (1.0 - np.cos(np.linspace(0.0, math.pi, 15))) / 2.0
_NEXT = np.array([-1e-5, 0.0, 1e-5])
_TRIES, _STRAIGHT = 3, 1e-8

#: Shares of sums within distances, in lengths of all vectors in line.
_Within = Callable[[Floats], Floats]


def share_within(lengths: Sequence[float], distance: float) -> float:
    """Share of the sums that are no longer than a distance."""
    total = math.fsum(lengths)
    if distance >= total:
        return 1.0
    return _share_within(tuple(length / total for length in lengths), distance / total)


@lru_cache(maxsize=256)
def _share_within(parts: tuple[float, ...], distance: float) -> float:
    """The same in lengths of all vectors in line; kept, for the jobs of a shop are held alike."""
    return float(_within(parts)(np.array([distance]))[0])


def not_passed(lengths: Sequence[float], shares: Sequence[float]) -> Floats:
    """For each share the length that so many of the sums do not pass."""
    total = math.fsum(lengths)
    parts = sorted(
        (length / total for length in lengths if length > _NOTHING * total), reverse=True
    )
    return total * np.array(_not_passed(tuple(parts), tuple(shares)))


@lru_cache(maxsize=256)
def _not_passed(parts: tuple[float, ...], shares: tuple[float, ...]) -> tuple[float, ...]:
    """The same in lengths of all vectors in line; kept likewise."""
    wanted = np.array(shares)
    if len(parts) < 2:
        found = np.ones_like(wanted)
    elif len(parts) == 2:
        found = _sum_at(parts[0], parts[1], wanted)
    else:
        rising, shortest = _within(parts), max(0.0, 2.0 * parts[0] - 1.0)
        if len(parts) == 3:
            found = _looked_for(rising, wanted, shortest)
        else:
            ends = (np.full_like(wanted, shortest), -wanted), (np.ones_like(wanted), 1.0 - wanted)
            found = _crossings(rising, wanted, *ends)
    return tuple(found.tolist())


def _within(lengths: Sequence[float]) -> _Within:
    """Shares of sums within distances, of vectors whose lengths add up to 1."""
    parts = sorted((length for length in lengths if length > _NOTHING), reverse=True)
    longest = parts[0]
    if len(parts) == 1:
        return lambda distances: np.where(distances >= longest, 1.0, 0.0)
    if len(parts) == 2:
        return lambda distances: _share_of_two(longest, parts[1], distances)
    if len(parts) == 3:
        return lambda distances: _share_of_three(parts, distances)
    if terms := _terms_for(parts):
        return _series(parts, terms)
    rest = _spread_sums(parts[1:])
    return lambda distances: np.mean(_share_of_two(rest, longest, distances[:, np.newaxis]), axis=1)


def _share_of_two(one: float | Floats, other: float, distance: Floats) -> Floats:
    """Share of the sums of two vectors that are no longer than a distance."""
    shortest, longest = np.abs(one - other), one + other
    over = (distance - shortest) * (distance + shortest)
    under = (longest - distance) * (longest + distance)
    turned = np.arctan2(np.sqrt(np.maximum(over, 0.0)), np.sqrt(np.maximum(under, 0.0)))
    return np.asarray(turned * (2.0 / math.pi))


def _sum_at(one: float, other: float, share: Floats) -> Floats:
    """Length that a share of the sums of two vectors does not pass."""
    opened = np.sin(math.pi / 2.0 * share) ** 2
    return np.sqrt((one - other) ** 2 + 4.0 * one * other * opened)


def _share_of_three(lengths: Sequence[float], distances: Floats) -> Floats:
    """Share of the sums of three vectors, the longest first, within each distance.

    The sums of the first two from |distance - third| to distance + third are within it or not by
    the third's direction; those below by any, or by none, those above by none.
    """
    first, second, third = lengths
    low = _share_of_two(first, second, np.abs(distances - third))
    high = _share_of_two(first, second, distances + third)
    between = low[:, np.newaxis] + (high - low)[:, np.newaxis] * _PLACES
    sums = _sum_at(first, second, between)
    average = _share_of_two(sums, third, distances[:, np.newaxis]) @ _PARTS
    return np.asarray(np.where(distances > third, low, 0.0) + (high - low) * average)


def _series(lengths: Sequence[float], terms: int) -> _Within:
    """The same of any number of vectors, best of four or more."""
    # Imported here: most answers need no Bessel function, and scipy costs start-up time and memory.
    from scipy.special import j0, j1  # noqa: PLC0415

    zeros, scale = _zeros(terms)
    waves = zeros / _DISC
    product = np.prod(j0(np.outer(lengths, waves)), axis=0) * scale

    def within(distances: Floats) -> Floats:
        found = distances / _DISC * np.sum(j1(np.outer(distances, waves)) * product, axis=1)
        return np.asarray(np.clip(found, 0.0, 1.0))

    return within


def _terms_for(lengths: Sequence[float]) -> int | None:
    """How many terms the series takes, by what no Bessel function exceeds: √(2/πx)."""

    def left_out(terms: int) -> float:
        wave = math.pi * terms / _DISC
        decayed = (min(1.0, math.sqrt(2.0 / (math.pi * wave * length))) for length in lengths)
        return math.prod(decayed) / math.sqrt(wave)

    return next((terms for terms in _TERMS if left_out(terms) < _NEGLIGIBLE), None)


def _spread_sums(lengths: Sequence[float]) -> Floats:
    """Lengths of the sums of vectors, the directions of all but the first evenly spread.

    By multiples of the powers of the root of x^(d+1) = x + 1, which fill d turns most evenly.
    """
    turning = lengths[1:]
    root = 2.0
    for _ in range(_STEPS):
        root = (1.0 + root) ** (1.0 / (len(turning) + 1))
    places = np.arange(_DIRECTIONS) + 0.5
    sums = np.full(_DIRECTIONS, lengths[0], dtype=np.complex128)
    for power, length in enumerate(turning, start=1):
        sums += length * np.exp(2j * math.pi * (places * root**-power % 1.0))
    return np.abs(sums)


@cache
def _zeros(terms: int) -> tuple[Floats, Floats]:
    """The first zeros z of J₀, and 2 / (z J₁(z)²) of each."""
    from scipy.special import j1, jn_zeros  # noqa: PLC0415  as above

    zeros = jn_zeros(0, terms)
    return zeros, 2.0 / (zeros * j1(zeros) ** 2)


def _looked_for(rising: _Within, wanted: Floats, start: float) -> Floats:
    """Where a function that rises from 0 at `start` to 1 at 1 reaches each of the wanted shares.

    A look at the whole range tells about where, the curve through values next to there where
    exactly, at the second or third time. Where it bends sharply, the places looked at on both sides
    are closed in on.
    """
    places = start + (1.0 - start) * _LOOK
    values = np.concatenate([[0.0], rising(places[1:-1]), [1.0]])
    after = np.clip(np.searchsorted(values, wanted), 1, len(places) - 1)
    found = [
        _nearer(rising, share, _about(share, place, values, places))
        for share, place in zip(wanted.tolist(), after.tolist(), strict=True)
    ]
    result = np.array([math.nan if place is None else place for place in found])
    bent = np.isnan(result)
    if bent.any():
        low, high = after[bent] - 1, after[bent]
        ends = ((places[end], values[end] - wanted[bent]) for end in (low, high))
        result[bent] = _crossings(rising, wanted[bent], *ends)
    return result


def _about(share: float, after: int, values: Floats, places: Floats) -> float:
    """About where a share is, between one of the places looked at and the one before."""
    first = min(max(after - 2, 0), len(places) - 4)
    low, high = float(places[after - 1]), float(places[after])
    looked = (values[first : first + 4] - share).tolist()
    if all(below < above for below, above in pairwise(looked)):
        guess = curve_at_zero(looked, places[first : first + 4].tolist())
        if low < guess < high:
            return guess
    return (low + high) / 2.0


def _nearer(rising: _Within, share: float, guess: float) -> float | None:
    """Where a function reaches a share, by the curve through three values about a guess.

    None where it bends too sharply: a straight line comes as near but for the bend.
    """
    for _ in range(_TRIES):
        places = guess + _NEXT
        off = (rising(places) - share).tolist()
        if not off[0] < off[1] < off[2]:
            return None
        at = places.tolist()
        guess = curve_at_zero(off, at)
        if off[0] <= 0.0 <= off[2]:
            bend = guess - curve_at_zero(off[::2], at[::2])
            rise = (off[2] - off[0]) / (at[2] - at[0])
            return guess if abs(bend) * rise < _STRAIGHT else None
    return None


def _crossings(
    rising: _Within, wanted: Floats, below: tuple[Floats, Floats], above: tuple[Floats, Floats]
) -> Floats:
    """Where a rising function reaches each of the wanted shares, between places on both sides.

    With each place goes the function less the share there. False position, the kept end's value
    halved (the Illinois rule), all of them at once.
    """
    (low, at_low), (high, at_high) = below, above
    before = np.zeros_like(wanted)
    for _ in range(_STEPS):
        value = high - at_high * (high - low) / (at_high - at_low)
        found = rising(value) - wanted
        if np.max(np.abs(found)) < _NEAR_ENOUGH:
            break
        side = np.sign(found)
        kept = np.where(side == before, 0.5, 1.0)
        under = found <= 0.0
        low, high = np.where(under, value, low), np.where(under, high, value)
        at_low = np.where(under, found, at_low * kept)
        at_high = np.where(under, at_high * kept, found)
        before = side
    return value
