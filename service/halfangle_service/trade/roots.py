"""Where a function of one number changes its sign; number and function in whatever unit."""

import math
from collections.abc import Callable, Sequence

import numpy as np
from numpy.typing import NDArray

#: How near the ends of what is found are, as a part of the larger.
NEAR_ENOUGH = 1e-11
_STEPS = 100
#: The first step from a guess to the other side, as a part of it; each further one is twice as far.
_FIRST_STEP = 0.06

#: Where a zero is looked for about a guess, as parts of it: at first, and then again.
_ABOUT = (np.array([-0.02, -0.01, 0.0, 0.01, 0.02]), np.array([-1e-5, 0.0, 1e-5]))

Values = NDArray[np.float64]
Function = Callable[[float], float]
#: A place, and the function there.
_Point = tuple[float, float]


def crossing(rising: Function, low: float, high: float) -> tuple[float, float]:
    """The ends, next to one another, between which a function goes from 0 or less to more.

    It does so between `low` and `high`.
    """
    return _closed_in(rising, (low, rising(low)), (high, rising(high)))


def crossing_near(rising: Function, low: float, high: float, guess: float) -> tuple[float, float]:
    """The same, sought from a guess on, which is above 0; `high` may be infinite.

    Both ends are `low`, or `high`, where the function does not change its sign before that.
    """
    here = (guess, rising(guess))
    step = guess * _FIRST_STEP
    while here[0] != (low if here[1] > 0.0 else high):
        place = max(low, here[0] - step) if here[1] > 0.0 else min(high, here[0] + step)
        beyond = (place, rising(place))
        if (beyond[1] > 0.0) != (here[1] > 0.0):
            return _closed_in(rising, here, beyond)
        here, step = beyond, 2.0 * step
    return here[0], here[0]


def zero_about(rising: Callable[[Values], Values], guess: float) -> float | None:
    """Where a smooth function is 0, by the curve through its values about a good guess.

    It gives the values at many places at once, for little more than at one. None where it does not
    rise there from below 0 to above it.
    """
    for about in _ABOUT:
        places = guess * (1.0 + about)
        values = rising(places)
        if not values[0] < 0.0 < values[-1] or (values[1:] <= values[:-1]).any():
            return None
        guess = curve_at_zero(values.tolist(), places.tolist())
        if not places[0] < guess < places[-1]:
            return None
    return guess


def curve_at_zero(values: Sequence[float], places: Sequence[float]) -> float:
    """Where the curve through points is 0, if it has these values at these places.

    A polynomial of the values, of as high a degree as the points allow (Neville's scheme); no two
    values are the same.
    """
    row = list(places)
    for apart in range(1, len(row)):
        for start in range(len(row) - apart):
            left, right = values[start], values[start + apart]
            row[start] = (right * row[start] - left * row[start + 1]) / (right - left)
    return row[0]


def _closed_in(rising: Function, last: _Point, opposite: _Point) -> tuple[float, float]:
    """Chandrupatla's method (Advances in Engineering Software 28, 1997, from memory).

    Inverse quadratic interpolation of the last three points where they allow it, else halving; but
    never nearer to an end than what is near enough, so that both ends close in.
    """
    part = _straight(last, opposite)
    for _ in range(_STEPS):
        value = last[0] + part * (opposite[0] - last[0])
        found = rising(value)
        third = last
        if (found > 0.0) != (last[1] > 0.0):
            third, opposite = opposite, last
        last = (value, found)
        width = abs(opposite[0] - value)
        near = NEAR_ENOUGH * max(abs(value), abs(opposite[0]))
        if width <= near:
            break
        least = near / (2.0 * width)
        part = min(max(_part(last, opposite, third), least), 1.0 - least)
    return (last[0], opposite[0]) if last[1] <= 0.0 else (opposite[0], last[0])


def _straight(one: _Point, other: _Point) -> float:
    """How far from one point to another a straight line is 0."""
    return one[1] / (one[1] - other[1]) if one[1] != other[1] else 0.5


def _part(last: _Point, opposite: _Point, third: _Point) -> float:
    """How far from the last point to the opposite one the function is expected to be 0."""
    (a, at_a), (b, at_b), (c, at_c) = last, opposite, third
    if at_c in (at_a, at_b):
        return 0.5
    along, up = (a - b) / (c - b), (at_a - at_b) / (at_c - at_b)
    if not 1.0 - math.sqrt(max(0.0, 1.0 - along)) < up < math.sqrt(max(0.0, along)):
        return 0.5
    to_b = at_a / (at_b - at_a) * at_c / (at_b - at_c)
    to_c = (c - a) / (b - a) * at_a / (at_c - at_a) * at_b / (at_c - at_b)
    return to_b + to_c
