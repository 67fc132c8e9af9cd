"""One section as it was read round a turn: its eccentricity, and how far that may be off."""

import math
from dataclasses import dataclass

import numpy as np

from halfangle_service.trade.runout import doubt, harmonics
from halfangle_service.trade.runout.harmonics import Floats, HarmonicFit
from halfangle_service.trade.uncertainty import Budget


@dataclass(frozen=True, slots=True)
class Indicator:
    """How the readings were taken, as they stand on the dial; lengths in one unit.

    `to_axis` turns what the dial shows into a movement square to the axis: the cosine of a lever's
    tip, and of a cone that is read square to its surface the cosine below it.
    """

    step: float
    repeatability: float | None
    to_axis: float

    @property
    def rounding(self) -> float:
        """Standard deviation of one reading by the step alone, square to the axis."""
        return self.to_axis * self.step / math.sqrt(12.0)


@dataclass(frozen=True, slots=True)
class Section:
    """Readings round a section, square to the axis, and the harmonics fitted to them."""

    readings: Floats
    known: doubt.Readings
    fit: HarmonicFit
    fullest: HarmonicFit

    @property
    def eccentricity(self) -> complex:
        """First harmonic as a vector: modulus is the eccentricity, argument its high spot."""
        return self.fit.eccentricity

    def budgets(self) -> tuple[Budget, Budget]:
        """Uncertainty of the eccentricity along its own direction and across it."""
        return doubt.eccentricity_budgets(self.known, self.fit, self.fullest)

    @property
    def from_mean(self) -> list[float]:
        """Readings less their fitted mean: what was fitted of them, and what it leaves."""
        waves = np.exp(-1j * np.outer(np.arange(1, len(self.fit.amplitudes) + 1), self._angles))
        fitted = (np.array(self.fit.amplitudes) @ waves).real
        return [float(value) for value in fitted + self.fit.residuals]

    @property
    def _angles(self) -> Floats:
        return self.known.angles_rad

    @property
    def left_after_tapping(self) -> float:
        """Highest less lowest of the readings, less the eccentricity."""
        return harmonics.left_after_tapping(self.known.angles_rad, self.readings, self.fit)


def read_section(
    angles_rad: Floats, read: Floats, by: Indicator, orders: int, *, path: str = ""
) -> Section:
    """Fit so many harmonics to readings; refuses too few of them, and one that strays, by index.

    `path` is that of the object that holds the readings, such as `near/`.
    """
    readings = read * by.to_axis
    fit = harmonics.fit_harmonics(angles_rad, readings, orders, path=path)
    harmonics.require_no_stray(angles_rad, fit, by.rounding, path=path)
    known = doubt.Readings(
        angles_rad,
        by.to_axis * by.step,
        None if by.repeatability is None else by.to_axis * by.repeatability,
    )
    return Section(readings, known, fit, harmonics.fullest_fit(angles_rad, readings, fit))
