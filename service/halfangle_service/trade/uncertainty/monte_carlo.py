"""Propagation of distributions by Monte Carlo after JCGM 101:2008.

The seed is fixed, so that the same request gives the same answer.
"""

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from halfangle_service.trade.uncertainty.budget import Distribution

Samples = NDArray[np.float64]

SEED = 20


@dataclass(frozen=True, slots=True)
class Sample:
    """Summary of a sampled result, in the result's unit."""

    mean: float
    standard_deviation: float
    low: float
    high: float


def draw(
    generator: np.random.Generator, distribution: Distribution, value: float, trials: int
) -> Samples:
    """Draw `trials` deviations about zero, in the unit of `value`, which is as in `Contribution`.

    JCGM 101:2008, 6.4.
    """
    if distribution == "normal":
        return generator.normal(0.0, abs(value), trials)  # -0.0 is no spread to numpy
    if distribution == "rectangular":
        return generator.uniform(-value, value, trials)
    if distribution == "triangular":
        return value * (generator.random(trials) + generator.random(trials) - 1.0)
    return value * np.cos(generator.uniform(0.0, np.pi, trials))


def summarise(samples: Samples, probability: float = 0.95) -> Sample:
    """Mean, standard deviation and the probabilistically symmetric interval (JCGM 101, 7.7).

    In the unit of the samples; `probability` from 0 to 1.
    """
    tail = (1.0 - probability) / 2.0
    low, high = np.quantile(samples, [tail, 1.0 - tail])
    return Sample(float(np.mean(samples)), float(np.std(samples, ddof=1)), float(low), float(high))


def draw_estimated(
    generator: np.random.Generator, spread: float, degrees_of_freedom: float, trials: int
) -> Samples:
    """Draw deviations about zero of what was estimated with a standard uncertainty, in its unit.

    Student's distribution scaled by it (JCGM 101:2008, 6.4.9), normal without a limit to the
    degrees of freedom.
    """
    if math.isinf(degrees_of_freedom):
        return generator.normal(0.0, abs(spread), trials)
    return spread * generator.standard_t(degrees_of_freedom, trials)


def draw_inexact(
    generator: np.random.Generator, limit: float, inexact: float, trials: int
) -> Samples:
    """Draw deviations about zero within limits that are themselves known to ± so much, in one unit.

    The curvilinear trapezoid of JCGM 101:2008, 6.4.3.
    """
    low = -limit - inexact + 2.0 * inexact * generator.random(trials)
    return low - 2.0 * low * generator.random(trials)


def shortest_interval(samples: Samples, probability: float) -> tuple[float, float]:
    """Shortest interval that covers a probability, 0 to 1 (JCGM 101:2008, 5.3.4 and 7.7).

    In the unit of the samples.
    """
    ordered = np.sort(samples)
    inside = min(round(probability * len(ordered)), len(ordered) - 1)
    first = int(np.argmin(ordered[inside:] - ordered[: len(ordered) - inside]))
    return float(ordered[first]), float(ordered[first + inside])
