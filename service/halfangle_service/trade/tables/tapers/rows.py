"""What rows of the tables of tapers have in common: numbers kept as printed, and a rate of taper.

A table holds its numbers as decimal strings, so that the digits printed are not lost; a rate that a
row states as a ratio or a taper per foot is read exactly.
"""

import math
from collections.abc import Mapping
from fractions import Fraction
from typing import Any

from halfangle_service.trade.angles import parse_dms
from halfangle_service.trade.cone import INCHES_PER_FOOT, rate_from_half_angle


def number(row: Mapping[str, Any], column: str) -> float | None:
    """A row's number, None where it has none in this column."""
    text = row.get(column)
    return None if text is None else float(text)


def rate_in(row: Mapping[str, Any]) -> float:
    """Rate of taper C, on the diameter, by the one of `ratio`, `taper_per_foot` or `angle` stated.

    >>> rate_in({"ratio": "7:24"}), rate_in({"taper_per_foot": "0.6"}), rate_in({"angle": "90°"})
    (0.2916666666666667, 0.05, 1.9999999999999998)
    """
    if "ratio" in row:
        return float(ratio(row["ratio"]))
    if "taper_per_foot" in row:
        return float(Fraction(row["taper_per_foot"]) / Fraction(INCHES_PER_FOOT))
    return rate_from_half_angle(math.radians(parse_dms(row["angle"])) / 2.0)


def ratio(text: str) -> Fraction:
    """A ratio written a:b as an exact number.

    >>> ratio("1:19.212")
    Fraction(250, 4803)
    """
    top, bottom = text.split(":")
    return Fraction(top) / Fraction(bottom)
