"""Sines, roots and the like of a pure number, float or column: the same function for both.

NumPy's own differ from Python's in the last bit (asin in one of twelve on some processors), and a
column must give what a row gives: so these are Python's `math`, row for row.
"""

import math
from collections.abc import Callable
from typing import Any

import numpy as np

from halfangle_service.trade.columns import Column, Mask, Parting, mapped

_One = Callable[[float], float]
_Two = Callable[[float, float], float]


def _of_one(function: _One) -> _One:
    def of_one(value: Any) -> Any:
        return mapped(function, value) if isinstance(value, Column) else function(value)

    return of_one


def _of_two(function: _Two) -> _Two:
    def of_two(one: Any, other: Any) -> Any:
        if isinstance(one, Column) or isinstance(other, Column):
            return mapped(function, one, other)
        return function(one, other)

    return of_two


sin, cos, tan = _of_one(math.sin), _of_one(math.cos), _of_one(math.tan)
asin, acos, atan = _of_one(math.asin), _of_one(math.acos), _of_one(math.atan)
exp, log, log10 = _of_one(math.exp), _of_one(math.log), _of_one(math.log10)
atan2, hypot = _of_two(math.atan2), _of_two(math.hypot)
copysign = _of_two(math.copysign)
_RADIANS, _DEGREES = math.pi / 180.0, 180.0 / math.pi


def radians(degrees: float) -> float:
    """Radians of so many degrees."""
    return degrees * _RADIANS if isinstance(degrees, Column) else math.radians(degrees)


def degrees(radians: float) -> float:
    """Degrees of so many radians."""
    return radians * _DEGREES if isinstance(radians, Column) else math.degrees(radians)


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
