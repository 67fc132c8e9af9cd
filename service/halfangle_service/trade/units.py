"""Length units: `in` or `mm`, named by each request, never guessed.

Lengths that must be exact (gauge blocks and their stacks) are integers of 0.1 nm: every inch and
metric block size is exact in it, since 0.0001 in = 25,400 and 0.0005 mm = 5,000 of them.
The inch is 25.4 mm exactly (international yard and pound agreement of 1959; ISO 31-1).
"""

from typing import Literal

Units = Literal["in", "mm"]

MM_PER_INCH = 25.4
TENTH_NM_PER_MM = 10_000_000
TENTH_NM_PER_INCH = 254_000_000

_TENTH_NM: dict[Units, int] = {"in": TENTH_NM_PER_INCH, "mm": TENTH_NM_PER_MM}
_BENCH_STEP: dict[Units, float] = {"in": 0.0001, "mm": 0.001}


def to_tenth_nm(length: float, units: Units) -> int:
    """Give a length in `units` as a whole number of 0.1 nm, rounded to the nearest.

    >>> to_tenth_nm(0.1003, "in"), to_tenth_nm(1.0005, "mm")
    (25476200, 10005000)
    """
    return round(length * _TENTH_NM[units])


def from_tenth_nm(length: int, units: Units) -> float:
    """Give a whole number of 0.1 nm as a length in `units`, the nearest float to it.

    >>> from_tenth_nm(25476200, "in")
    0.1003
    """
    return length / _TENTH_NM[units]


def to_mm(length: float, units: Units) -> float:
    """Give a length in `units` in millimetres."""
    return length * MM_PER_INCH if units == "in" else length


def from_mm(length_mm: float, units: Units) -> float:
    """Give a length in millimetres in `units`."""
    return length_mm / MM_PER_INCH if units == "in" else length_mm


def bench_step(units: Units) -> float:
    """Give the step a toolmaker reads at the bench: 0.0001 in or 0.001 mm, in `units`."""
    return _BENCH_STEP[units]


def in_units(length: float, given: Units, wanted: Units) -> float:
    """A length given in one unit, in the one wanted; where that is the same, the figure itself."""
    return length if given == wanted else from_mm(to_mm(length, given), wanted)
