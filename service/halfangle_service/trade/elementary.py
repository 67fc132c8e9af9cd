"""Sines, roots and the like of a pure number, float or column: the same function for both.

NumPy's own differ from Python's in the last bit (asin in one of twelve on some processors), and a
column must give what a row gives: so these are Python's `math`, row for row.
"""

import math
from collections.abc import Callable, Iterable
from typing import Any

import numpy as np

from halfangle_service.trade.columns import Column, Mask, Parting, in_rows, mapped

_One = Callable[[float], float]
_Two = Callable[[float, float], float]


def _of_one(function: _One) -> _One:
    def of_one(value: Any) -> Any:
        try:
            return function(value)
        except TypeError:
            if isinstance(value, Column):
                return mapped(function, value)
            raise

    return of_one


def _of_two(function: _Two) -> _Two:
    def of_two(one: Any, other: Any) -> Any:
        try:
            return function(one, other)
        except TypeError:
            if isinstance(one, Column) or isinstance(other, Column):
                return mapped(function, one, other)
            raise

    return of_two


sin, cos, tan = _of_one(math.sin), _of_one(math.cos), _of_one(math.tan)
asin, acos, atan = _of_one(math.asin), _of_one(math.acos), _of_one(math.atan)
exp, log, log10 = _of_one(math.exp), _of_one(math.log), _of_one(math.log10)
atan2, copysign = _of_two(math.atan2), _of_two(math.copysign)
_RADIANS, _DEGREES = math.pi / 180.0, 180.0 / math.pi


def radians(degrees: float) -> float:
    """Radians of so many degrees."""
    return degrees * _RADIANS if isinstance(degrees, Column) else math.radians(degrees)


def degrees(radians: float) -> float:
    """Degrees of so many radians."""
    return radians * _DEGREES if isinstance(radians, Column) else math.degrees(radians)


def hypot(*sides: float) -> float:
    """Root of the sum of squares."""
    try:
        return math.hypot(*sides)
    except TypeError:
        return in_rows(math.hypot, *sides)


def fsum(parts: Iterable[float]) -> float:
    """Sum without loss, as `math.fsum` has it."""
    parts = list(parts)
    try:
        return math.fsum(parts)
    except TypeError:
        return in_rows(lambda *each: math.fsum(each), *parts)


def isfinite(value: float) -> bool:
    """Whether a number is finite, as `math.isfinite` has it."""
    if isinstance(value, Column):
        finite: Any = np.isfinite(value.values)
        return bool(Mask(finite))
    return math.isfinite(value)


def sqrt(value: float) -> float:
    """Square root, correctly rounded by Python and NumPy alike."""
    if not isinstance(value, Column):
        return math.sqrt(value)
    below: Any = value.values < 0.0
    if not below.any():
        return _column(np.sqrt(value.values), value)
    if below.all():
        raise ValueError("math domain error")
    raise Parting(below)


def isclose(one: float, other: float, *, rel_tol: float = 1e-9, abs_tol: float = 0.0) -> bool:
    """Whether two numbers are near one another, as `math.isclose` has it."""
    if not (isinstance(one, Column) or isinstance(other, Column)):
        return math.isclose(one, other, rel_tol=rel_tol, abs_tol=abs_tol)
    apart: Any = abs(one - other)
    near = [apart <= abs(rel_tol * other), apart <= abs(rel_tol * one), apart <= abs_tol]
    where = near[0].where | near[1].where | near[2].where
    return bool(Mask(where))


def _column(values: Any, like: Column) -> Any:
    return Column(values, like.tape)
