"""A straight line under readings along a surface: least squares, and the least zone that holds all.

Readings are square to the line, places along it, both in one unit; slopes are so small that the
zone's width is taken in the direction of the readings (an error of the second order of the slope).
"""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from halfangle_service.trade.decimals import tidy

#: A reading: its place along the line, itself, and which one it is.
_Point = tuple[float, float, int]


@dataclass(frozen=True, slots=True)
class Zone:
    """The narrowest zone: its slope, its width, and the places of the three readings it rests on.

    Two of them, `ends`, are on one side; `opposite` is on the other, `above` where that is on top.
    """

    slope: float
    width: float
    ends: tuple[int, int]
    opposite: int
    above: bool

    def weights(self, places: Sequence[float]) -> tuple[float, float]:
        """Shares of the two ends in the line at the opposite reading; they sum to 1, pure."""
        first, second = (places[end] for end in self.ends)
        share = (places[self.opposite] - first) / (second - first)
        return 1.0 - share, share


@dataclass(frozen=True, slots=True)
class LeastSquares:
    """The least-squares line: its slope, and what it leaves of each reading, in their unit."""

    slope: float
    residuals: tuple[float, ...]

    @property
    def straightness(self) -> float:
        """Highest less lowest residual, in the readings' unit."""
        return max(self.residuals) - min(self.residuals)


def least_squares(places: Sequence[float], readings: Sequence[float]) -> LeastSquares:
    """Line of least squares, in the unit of places and readings."""
    along = np.asarray(places, dtype=np.float64)
    away = along - along.mean()
    off = np.asarray(readings, dtype=np.float64)
    off = off - off.mean()
    slope = float(away @ off) / float(away @ away)
    largest = float(np.max(np.abs(off)))
    return LeastSquares(slope, tuple(tidy(float(r), largest) for r in off - slope * away))


def minimum_zone(places: Sequence[float], readings: Sequence[float]) -> Zone:
    """Narrowest zone between two parallel lines that holds all readings, all in one unit.

    One of its lines lies along an edge of the readings' convex hull (derived here, as for the width
    of any convex polygon). Places are different from one another.
    """
    points = sorted(zip(places, readings, range(len(places)), strict=True))
    zones = [_over(points, upper=False), _over(points, upper=True)]
    return min(zones, key=lambda zone: zone.width)


def _over(points: Sequence[_Point], *, upper: bool) -> Zone:
    """Narrowest zone with an edge of the upper, or the lower, hull for one of its lines."""
    sign = 1.0 if upper else -1.0
    hull = _hull([(x, sign * y, place) for x, y, place in points])
    best: Zone | None = None
    for (x1, y1, first), (x2, y2, second) in pairwise(hull):
        slope = (y2 - y1) / (x2 - x1)
        width, farthest = max((y1 + slope * (x - x1) - sign * y, place) for x, y, place in points)
        if best is None or width < best.width:
            best = Zone(sign * slope, max(width, 0.0), (first, second), farthest, not upper)
    if best is None:
        raise ValueError("a hull has an edge where places differ")
    return best


def _hull(points: Sequence[_Point]) -> list[_Point]:
    """Upper hull of points in the order of their places, from left to right."""
    hull: list[_Point] = []
    for point in points:
        while len(hull) > 1 and _turns_up(hull[-2], hull[-1], point):
            hull.pop()
        hull.append(point)
    return hull


def _turns_up(first: _Point, middle: _Point, last: _Point) -> bool:
    """True where the middle point lies on or below the line from the first to the last."""
    (x1, y1, _), (x2, y2, _), (x3, y3, _) = first, middle, last
    return (x2 - x1) * (y3 - y1) - (x3 - x1) * (y2 - y1) >= 0.0
