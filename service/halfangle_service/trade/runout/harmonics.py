"""Harmonic least squares of readings round one section; angles in radians, lengths in one unit."""

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from halfangle_service.errors import Disagreement, Impossible
from halfangle_service.trade.uncertainty import Budget, Contribution
from halfangle_service.trade.wording import plain

Floats = NDArray[np.float64]
SAME_ANGLE_RAD = math.radians(0.01)
#: A reading this many deleted standard deviations off its own prediction is not form.
OUTLIER_SIGMAS = 8.0
#: Past this the angles hardly tell the harmonics apart.
WORST_CONDITION = 50.0


@dataclass(frozen=True)
class HarmonicFit:
    """Complex amplitude of each harmonic from the first, residuals, unit covariance."""

    amplitudes: tuple[complex, ...]
    residuals: Floats
    covariance: Floats

    @property
    def eccentricity(self) -> complex:
        """First harmonic as a vector: modulus is the eccentricity, argument its high spot."""
        return self.amplitudes[0]


def fit_harmonics(angles_rad: Floats, readings: Floats, harmonics: int) -> HarmonicFit:
    """Fit mean and `harmonics` harmonics; raises Impossible or Disagreement, naming readings."""
    _require_enough(len(angles_rad), harmonics)
    _require_distinct(angles_rad)
    design = _design(angles_rad, harmonics)
    if np.linalg.cond(design) > WORST_CONDITION:
        raise Impossible(
            f"The angles of the readings do not tell {harmonics} harmonics apart.",
            fields={"readings": "should be spread round the whole section"},
        )
    solution = np.linalg.lstsq(design, readings, rcond=None)[0]
    vectors = tuple(complex(c, s) for c, s in zip(solution[1::2], solution[2::2], strict=True))
    covariance = np.asarray(np.linalg.inv(design.T @ design), dtype=np.float64)
    return HarmonicFit(vectors, readings - design @ solution, covariance)


def _design(angles_rad: Floats, harmonics: int) -> Floats:
    columns = [np.ones_like(angles_rad)]
    for order in range(1, harmonics + 1):
        columns += [np.cos(order * angles_rad), np.sin(order * angles_rad)]
    return np.column_stack(columns)


def _require_enough(count: int, harmonics: int) -> None:
    needed = 2 * harmonics + 1
    if count < needed:
        raise Impossible(
            f"{harmonics} harmonics need {needed} readings at least; {count} came.",
            fields={"readings": f"should be {needed} or more", "harmonics": "or ask for fewer"},
        )


def _require_distinct(angles_rad: Floats) -> None:
    turn = np.mod(angles_rad, 2.0 * math.pi)
    order = np.argsort(turn, kind="stable")
    gaps = np.diff(np.append(turn[order], turn[order[0]] + 2.0 * math.pi))
    tight = int(np.argmin(gaps))
    if gaps[tight] < SAME_ANGLE_RAD:
        first, second = sorted((int(order[tight]), int(order[(tight + 1) % len(order)])))
        raise Disagreement(
            f"Readings {first + 1} and {second + 1} stand at the same angle.",
            fields={
                f"readings/{second}/angular_position": f"repeats the angle of reading {first + 1}"
            },
        )


def require_no_stray(angles_rad: Floats, readings: Floats, fit: HarmonicFit, noise: float) -> None:
    """Refuse a reading that the harmonics through all others contradict; `noise` is a length.

    Each residual is compared with the scatter of the fit that leaves it out, so at least two
    readings must be left over; with fewer, a stray reading cannot be told from form.
    """
    count, unknowns = len(readings), len(fit.covariance)
    spare = count - unknowns - 1  # one fewer than spare_readings: the reading judged is left out
    if spare < 1:
        return
    design = _design(angles_rad, (unknowns - 1) // 2)
    leverage = np.einsum("ij,jk,ik->i", design, fit.covariance, design)
    left = np.maximum(1.0 - leverage, 1e-9)
    deleted = fit.residuals / left
    scatter = np.sqrt(
        np.maximum(np.sum(fit.residuals**2) - fit.residuals**2 / left, 0.0) / spare + noise**2
    )
    ratio = np.abs(deleted) * np.sqrt(left) / np.maximum(scatter, 1e-15)
    worst = int(np.argmax(ratio))
    if ratio[worst] > OUTLIER_SIGMAS:
        raise Disagreement(
            f"No circle with {len(fit.amplitudes) - 1} further harmonics explains reading "
            f"{worst + 1}: all others put it {plain(deleted[worst], 4)} lower than it was read.",
            fields={f"readings/{worst}/reading": "should be read again"},
            more={"off_by": float(deleted[worst])},
        )


def eccentricity_budget(fit: HarmonicFit, resolution: float, per_reading: float) -> Budget:
    """Uncertainty of the eccentricity along its own direction, a length.

    By the larger of the indicator's resolution, a half-width of half a step times `per_reading`,
    and the scatter of the readings about the fit: scatter holds the resolution already.
    """
    by_resolution, by_scatter = resolution_effect(fit, resolution, per_reading), scatter_effect(fit)
    larger = by_resolution
    if by_scatter is not None and by_scatter.in_result > by_resolution.in_result:
        larger = by_scatter
    return Budget((larger,))


def resolution_effect(fit: HarmonicFit, resolution: float, per_reading: float) -> Contribution:
    """What the indicator's resolution adds to the eccentricity's uncertainty."""
    return Contribution(
        "indicator_resolution", resolution / 2.0, "rectangular", per_reading * _along_itself(fit)
    )


def scatter_effect(fit: HarmonicFit) -> Contribution | None:
    """What the scatter of the readings adds to it; None without a spare reading."""
    spare = spare_readings(fit)
    if spare < 1:
        return None
    scatter = math.sqrt(float(np.sum(fit.residuals**2)) / spare)
    return Contribution("scatter", scatter, "normal", _along_itself(fit), degrees_of_freedom=spare)


def _along_itself(fit: HarmonicFit) -> float:
    """Standard uncertainty of the eccentricity along its direction for readings of 1."""
    direction = np.angle(fit.eccentricity)
    along = np.array([math.cos(direction), math.sin(direction)])
    return float(np.sqrt(along @ fit.covariance[1:3, 1:3] @ along))


def left_after_tapping(angles_rad: Floats, readings: Floats, fit: HarmonicFit) -> float:
    """Highest less lowest of the readings, less the eccentricity, a length."""
    e = fit.eccentricity
    return float(np.ptp(readings - (e.real * np.cos(angles_rad) + e.imag * np.sin(angles_rad))))


def spare_readings(fit: HarmonicFit) -> int:
    """Readings beyond the unknowns; a stray one can be told from form with two or more."""
    return len(fit.residuals) - len(fit.covariance)


def sensed_station(station_from_apex: float, half_angle_rad: float) -> float:
    """Where, from the apex, an indicator square to a cone senses the axis: z / cos² α."""
    return station_from_apex / math.cos(half_angle_rad) ** 2
