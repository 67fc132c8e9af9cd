"""A block's length by comparison with a standard of the same nominal length.

The model of JCGM 100:2008 (GUM), H.1: with both at the same temperature but for δθ, and of the same
expansion but for δα, l (1 + (α + δα) θ) = l_s (1 + α (θ − δθ)) + d, θ counted from 20 °C. Lengths
in one unit, temperatures in kelvins, coefficients per kelvin.
"""

import math
from dataclasses import dataclass

import numpy as np

from halfangle_service.trade.uncertainty import Budget, Contribution
from halfangle_service.trade.uncertainty.monte_carlo import (
    SEED,
    Samples,
    draw,
    draw_estimated,
    draw_inexact,
    shortest_interval,
    summarise,
)

#: Degrees of freedom up to which Student's distribution has no variance.
_WITHOUT_VARIANCE = 2.0


@dataclass(frozen=True, slots=True)
class Estimated:
    """A standard uncertainty, in the unit of what it is of, and how well that is known."""

    field: str
    spread: float
    degrees_of_freedom: float = math.inf
    per_spread: float = 1.0


@dataclass(frozen=True, slots=True)
class Limited:
    """A limit ± of what is nothing on average, itself known to so much of it, from 0 to 1."""

    field: str
    limit: float
    inexact: float

    @property
    def degrees_of_freedom(self) -> float:
        """½ / (relative uncertainty of the uncertainty)², a pure number (JCGM 100:2008, G.4.2)."""
        square = self.inexact**2
        return 0.5 / square if square else math.inf


@dataclass(frozen=True, slots=True)
class Comparison:
    """What was measured and what is known of it; None where nothing was stated.

    `estimated` are uncertainties of lengths. `cycle` is the amplitude of the temperature about its
    mean, `kelvins` that mean over 20 °C, `coefficient_limit` the error ± of `coefficient`.
    """

    standard: float
    difference: float
    estimated: tuple[Estimated, ...]
    coefficient: float
    coefficient_limit: float | None
    expansion_difference: Limited | None
    kelvins: float
    kelvins_spread: float | None
    cycle: float | None
    temperature_difference: Limited | None

    @property
    def length(self) -> float:
        """Best estimate of the block's length at 20 °C, in the unit of the standard's."""
        return self.standard + self.difference

    @property
    def has_moments(self) -> bool:
        """False where Student's distribution of two degrees or less takes part.

        It has no standard deviation, of one degree no mean either (JCGM 101:2008, 6.4.9.4).
        """
        return all(e.degrees_of_freedom > _WITHOUT_VARIANCE for e in self.estimated if e.spread)

    def budget(self, not_stated: tuple[str, ...]) -> Budget:
        """Budget of the length by the terms of first order (GUM, H.1.3)."""
        return Budget((*self._of_lengths(), *self._of_temperatures()), not_stated=not_stated)

    def _of_lengths(self) -> list[Contribution]:
        return [
            Contribution(e.field, e.spread, "normal", e.per_spread, e.degrees_of_freedom)
            for e in self.estimated
        ]

    def _of_temperatures(self) -> list[Contribution]:
        terms = (
            (self.expansion_difference, -self.standard * self.kelvins, "per_kelvin"),
            (self.temperature_difference, -self.standard * self.coefficient, "celsius"),
        )
        return [
            Contribution(
                known.field,
                known.limit,
                "rectangular",
                sensitivity,
                known.degrees_of_freedom,
                unit=unit,
            )
            for known, sensitivity, unit in terms
            if known is not None
        ]

    def second_order(self) -> tuple[float, float]:
        """What products of two small errors add (GUM, H.1.7), in the unit of the standard's.

        Of the difference of expansions with the temperature, and of the coefficient with the
        difference of temperatures.
        """
        kelvins = math.hypot(self.kelvins_spread or 0.0, (self.cycle or 0.0) / math.sqrt(2.0))
        apart = _rectangular(self.expansion_difference)
        uneven = _rectangular(self.temperature_difference)
        coefficient = (self.coefficient_limit or 0.0) / math.sqrt(3.0)
        return self.standard * apart * kelvins, self.standard * coefficient * uneven

    def simulate(self, trials: int) -> Samples:
        """Lengths of the block less the best estimate, by the whole model, in the same unit.

        The seed is fixed, so that the same request gives the same answer.
        """
        generator = np.random.default_rng(SEED)
        lengths = [
            e.per_spread * draw_estimated(generator, e.spread, e.degrees_of_freedom, trials)
            for e in self.estimated
        ]
        coefficient = self.coefficient + draw(
            generator, "rectangular", self.coefficient_limit or 0.0, trials
        )
        kelvins = (
            self.kelvins
            + draw(generator, "normal", self.kelvins_spread or 0.0, trials)
            + draw(generator, "u-shaped", self.cycle or 0.0, trials)
        )
        apart = _drawn(self.expansion_difference, generator, trials)
        uneven = _drawn(self.temperature_difference, generator, trials)
        off = self.difference + np.sum(lengths, axis=0)
        grown = 1.0 + (coefficient + apart) * kelvins
        # l − l_s, so that no digits are lost to the length itself.
        over = (off - self.standard * (apart * kelvins + coefficient * uneven)) / grown
        return np.asarray(over - self.difference, dtype=np.float64)


def _rectangular(known: Limited | None) -> float:
    return 0.0 if known is None else known.limit / math.sqrt(3.0)


def _drawn(known: Limited | None, generator: np.random.Generator, trials: int) -> Samples:
    if known is None:
        return np.zeros(trials)
    return draw_inexact(generator, known.limit, known.inexact * known.limit, trials)


@dataclass(frozen=True, slots=True)
class Simulated:
    """What a simulation says of a length, all less the best estimate, in the samples' unit."""

    mean: float | None
    standard_deviation: float | None
    shortest: tuple[float, float]
    symmetric: tuple[float, float]


def simulated(samples: Samples, probability: float, *, has_moments: bool) -> Simulated:
    """Summary of a simulation with its intervals of a probability from 0 to 1.

    Without moments a mean and a standard deviation of the samples would be of chance alone.
    """
    whole = summarise(samples, probability)
    return Simulated(
        whole.mean if has_moments else None,
        whole.standard_deviation if has_moments else None,
        shortest_interval(samples, probability),
        (whole.low, whole.high),
    )
