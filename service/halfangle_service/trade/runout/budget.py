"""Runout budget: eccentricity vectors of unknown phase, added; lengths in one unit, as TIR."""

import math
from collections.abc import Sequence

import numpy as np

SEED = 7
TRIALS = 100_000
PERCENTILES = (50.0, 95.0, 99.0)


def tir_at_distance(tir: float, tilt_tir: float, tilt_span: float, distance: float) -> float:
    """Largest TIR of one contributor at a distance from its seat.

    `tilt_tir` is the change of TIR over `tilt_span`; offset and tilt add in the worst phase.
    """
    return tir + tilt_tir * distance / tilt_span


def worst_case(tirs: Sequence[float]) -> float:
    """All vectors in line: the sum."""
    return math.fsum(tirs)


def root_sum_of_squares(tirs: Sequence[float]) -> float:
    """Root mean square of the vector sum, over phases that are independent and uniform."""
    return math.sqrt(math.fsum(tir * tir for tir in tirs))


def best_case(tirs: Sequence[float]) -> float:
    """Best clocking of all: zero where the vectors can close a polygon."""
    return max(0.0, 2.0 * max(tirs) - math.fsum(tirs))


def percentiles(tirs: Sequence[float]) -> tuple[float, ...]:
    """TIR not passed in 50, 95 and 99 of 100 assemblies, by Monte Carlo of uniform phases."""
    phases = np.random.default_rng(SEED).uniform(0.0, 2.0 * math.pi, (len(tirs), TRIALS))
    x, y = np.zeros(TRIALS), np.zeros(TRIALS)
    for tir, phase in zip(tirs, phases, strict=True):
        x += tir * np.cos(phase)
        y += tir * np.sin(phase)
    return tuple(float(p) for p in np.percentile(np.hypot(x, y), PERCENTILES))
