"""Two things read in turn while the instrument drifts: their difference, freed of a steady drift.

Least squares of reading = a + b t + c x, x 1 for the part and 0 for the standard (derived here; of
the order A-B-B-A with equal times c is the mean of both differences). Readings in one unit.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from halfangle_service.errors import Disagreement
from halfangle_service.trade.decimals import tidy

#: Unknowns of the fit: where it begins, the drift, the difference.
UNKNOWNS = 3
#: Share of the time's spread that must be left once the order is known, to tell drift from part.
_TOLD_APART = 1e-9


@dataclass(frozen=True, slots=True)
class Fit:
    """The difference found, the drift for one unit of time, and what one reading's spread does.

    `per_spread` is the difference's standard uncertainty for a reading's standard deviation of 1;
    `inflation` how many times it is what it would be without drift.
    """

    difference: float
    drift: float
    residuals: tuple[float, ...]
    per_spread: float
    inflation: float

    @property
    def spare(self) -> int:
        """Readings to spare: degrees of freedom of the scatter."""
        return len(self.residuals) - UNKNOWNS

    @property
    def scatter(self) -> float | None:
        """Standard deviation of one reading about the fit, in the readings' unit; None without."""
        if self.spare < 1:
            return None
        return math.sqrt(math.fsum(r * r for r in self.residuals) / self.spare)


def fit_drift(order: str, readings: Sequence[float], times: Sequence[float]) -> Fit:
    """Fit readings of the standard (A) and the part (B) in this order, at times of any one unit.

    Raises Disagreement where drift and difference cannot be told apart.
    """
    part = np.array([1.0 if letter == "B" else 0.0 for letter in order])
    time = np.asarray(times, dtype=np.float64)
    level = np.asarray(readings, dtype=np.float64)
    early = time - time.mean()
    apart = part - part.mean()
    steps = float(early @ early)
    slope = float(apart @ early) / steps
    own = apart - slope * early
    left, whole = float(own @ own), float(apart @ apart)
    if left <= _TOLD_APART * whole:
        raise Disagreement(
            f"In the order {order} the drift and the difference cannot be told apart: each change "
            "of one is a change of the other.",
            fields={"reading_order": "should return to the first, such as ABA or ABBA"},
        )
    off = level - level.mean()
    difference = float(own @ off) / left
    drift = float(early @ (off - difference * apart)) / steps
    residuals = off - difference * apart - drift * early
    largest = float(np.max(np.abs(level)))
    return Fit(
        difference,
        drift,
        tuple(tidy(float(r), largest) for r in residuals),
        1.0 / math.sqrt(left),
        math.sqrt(whole / left),
    )
