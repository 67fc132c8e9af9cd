"""A calibrated block some years later, at another temperature. Lengths in mm, times in years."""

from typing import Literal

Stability = Literal["grades-k-and-0", "grades-1-and-2"]
#: Largest change ± a year: constant in mm, and part of the length. ISO 3650:1998, dimensional
#: stability of gauge blocks of steel, from memory.
_A_YEAR: dict[Stability, tuple[float, float]] = {
    "grades-k-and-0": (0.02e-3, 0.25e-6),
    "grades-1-and-2": (0.05e-3, 0.5e-6),
}


def largest_change_a_year_mm(stability: Stability, size_mm: float) -> float:
    """Largest change ± in mm of a block's length in a year that its standard allows.

    >>> round(largest_change_a_year_mm("grades-1-and-2", 100.0), 9)
    0.0001
    """
    constant, part = _A_YEAR[stability]
    return constant + part * size_mm
