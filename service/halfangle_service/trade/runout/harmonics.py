"""Harmonic least squares of readings round one section; angles in radians, lengths in one unit."""

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from halfangle_service.errors import Disagreement, Impossible
from halfangle_service.trade.runout.vectors import ROUNDING
from halfangle_service.trade.wording import plain

Floats = NDArray[np.float64]
SAME_ANGLE_RAD = math.radians(0.01)
#: A reading this many deleted standard deviations off its own prediction is not form.
OUTLIER_SIGMAS = 8.0
#: Past this the angles hardly tell the harmonics apart.
WORST_CONDITION = 50.0
#: Most harmonics that are ever fitted.
MOST_HARMONICS = 15
#: Readings that the fullest fit leaves to spare, to judge the scatter by.
SPARE_FOR_SCATTER = 3


@dataclass(frozen=True)
class HarmonicFit:
    """Complex amplitude of each harmonic from the first, residuals, unit covariance.

    `weights` are those of each reading in the first harmonic's cosine and sine, 2 by readings.
    """

    amplitudes: tuple[complex, ...]
    residuals: Floats
    covariance: Floats
    weights: Floats

    @property
    def eccentricity(self) -> complex:
        """First harmonic as a vector: modulus is the eccentricity, argument its high spot."""
        return self.amplitudes[0]

    @property
    def spare(self) -> int:
        """Readings beyond the unknowns; a stray one can be told from form with two or more."""
        return len(self.residuals) - len(self.covariance)


def fit_harmonics(
    angles_rad: Floats, readings: Floats, harmonics: int, *, path: str = ""
) -> HarmonicFit:
    """Fit mean and `harmonics` harmonics; raises Impossible or Disagreement, naming readings.

    `path` is that of the object that holds the readings, such as `near/`.
    """
    _require_enough(len(angles_rad), harmonics, path)
    _require_distinct(angles_rad, path)
    fit = _fit(angles_rad, readings, harmonics)
    if fit is None:
        raise Impossible(
            "The readings stand at angles that do not tell the harmonics asked for apart: "
            f"{harmonics}, the eccentricity included.",
            fields={
                f"{path}readings": "should be spread round the whole section",
                "harmonics": "or ask for fewer",
            },
        )
    return fit


def fullest_fit(angles_rad: Floats, readings: Floats, asked: HarmonicFit) -> HarmonicFit:
    """The fit of as many harmonics as leave readings to spare, so that form is no scatter.

    The one asked for, where the readings do not carry more.
    """
    most = min(MOST_HARMONICS, (len(readings) - 1 - SPARE_FOR_SCATTER) // 2)
    for harmonics in range(most, len(asked.amplitudes), -1):
        fit = _fit(angles_rad, readings, harmonics)
        if fit is not None:
            return fit
    return asked


def _fit(angles_rad: Floats, readings: Floats, harmonics: int) -> HarmonicFit | None:
    """The fit, or None where the angles do not tell so many harmonics apart."""
    design = _design(angles_rad, harmonics)
    if np.linalg.cond(design) > WORST_CONDITION:
        return None
    solution = np.linalg.lstsq(design, readings, rcond=None)[0]
    residuals = readings - design @ solution
    noise = ROUNDING * float(np.max(np.abs(readings)))
    solution[np.abs(solution) < noise] = 0.0
    residuals[np.abs(residuals) < noise] = 0.0
    vectors = tuple(complex(c, s) for c, s in zip(solution[1::2], solution[2::2], strict=True))
    covariance = np.asarray(np.linalg.inv(design.T @ design), dtype=np.float64)
    return HarmonicFit(vectors, residuals, covariance, (covariance @ design.T)[1:3])


def _design(angles_rad: Floats, harmonics: int) -> Floats:
    columns = [np.ones_like(angles_rad)]
    for order in range(1, harmonics + 1):
        columns += [np.cos(order * angles_rad), np.sin(order * angles_rad)]
    return np.column_stack(columns)


def _require_enough(count: int, harmonics: int, path: str) -> None:
    needed = 2 * harmonics + 1
    if count < needed:
        raise Impossible(
            f"{harmonics} harmonics need {needed} readings at least; {count} came.",
            fields={
                f"{path}readings": f"should be {needed} or more",
                "harmonics": "or ask for fewer",
            },
        )


def _require_distinct(angles_rad: Floats, path: str) -> None:
    turn = np.mod(angles_rad, 2.0 * math.pi)
    order = np.argsort(turn, kind="stable")
    gaps = np.diff(np.append(turn[order], turn[order[0]] + 2.0 * math.pi))
    tight = int(np.argmin(gaps))
    if gaps[tight] < SAME_ANGLE_RAD:
        first, second = sorted((int(order[tight]), int(order[(tight + 1) % len(order)])))
        raise Disagreement(
            f"Readings {first + 1} and {second + 1} stand at the same angle.",
            fields={
                f"{path}readings/{second}/angular_position": "repeats the angle of reading "
                f"{first + 1}"
            },
        )


def require_no_stray(angles_rad: Floats, fit: HarmonicFit, noise: float, *, path: str = "") -> None:
    """Refuse a reading that the harmonics through all others contradict; `noise` is a length.

    `path` is that of the object that holds the readings, such as `near/`.

    Each residual is compared with the scatter of the fit that leaves it out, so at least two
    readings must be left over; with fewer, a stray reading cannot be told from form.
    """
    spare = fit.spare - 1  # the reading judged is left out
    if spare < 1:
        return
    design = _design(angles_rad, len(fit.amplitudes))
    leverage = np.sum((design @ fit.covariance) * design, axis=1)
    left = np.maximum(1.0 - leverage, 1e-9)
    deleted = fit.residuals / left
    scatter = np.sqrt(
        np.maximum(np.sum(fit.residuals**2) - fit.residuals**2 / left, 0.0) / spare + noise**2
    )
    ratio = np.abs(deleted) * np.sqrt(left) / np.maximum(scatter, 1e-15)
    worst = int(np.argmax(ratio))
    if ratio[worst] > OUTLIER_SIGMAS:
        off = plain(abs(deleted[worst]), 4)
        raise Disagreement(
            f"No circle with {len(fit.amplitudes) - 1} further harmonics explains reading "
            f"{worst + 1}: all others put it {off} {'lower' if deleted[worst] > 0.0 else 'higher'} "
            "than it was read.",
            fields={f"{path}readings/{worst}/reading": "should be read again"},
            more={"off_by": float(deleted[worst])},
        )


def left_after_tapping(angles_rad: Floats, readings: Floats, fit: HarmonicFit) -> float:
    """Highest less lowest of the readings, less the eccentricity, a length."""
    e = fit.eccentricity
    left = readings - (e.real * np.cos(angles_rad) + e.imag * np.sin(angles_rad))
    found = float(np.ptp(left))
    return found if found > ROUNDING * float(np.max(np.abs(readings))) else 0.0


def sensed_station(station_from_apex: float, half_angle_rad: float) -> float:
    """Where, from the apex, an indicator square to a cone senses the axis: z / cos² α."""
    return station_from_apex / math.cos(half_angle_rad) ** 2
