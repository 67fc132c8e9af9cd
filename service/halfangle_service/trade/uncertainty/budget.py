"""Uncertainty budgets after JCGM 100:2008 (GUM).

A budget is a list of contributions: each a half-width or standard deviation of an input, its
distribution, and the sensitivity of the result to it. Independent inputs are assumed, as the law
of propagation in GUM 5.1.2 does; inputs that move together belong into one contribution.
"""

import math
from dataclasses import dataclass
from typing import Literal

Distribution = Literal["normal", "rectangular", "triangular", "u-shaped"]

#: Divisor from the stated half-width to a standard uncertainty; GUM 4.3.7, 4.3.9 and, for the
#: arc-sine distribution, JCGM 101:2008 6.4.6. A normal input states its standard deviation.
DIVISOR: dict[Distribution, float] = {
    "normal": 1.0,
    "rectangular": math.sqrt(3.0),
    "triangular": math.sqrt(6.0),
    "u-shaped": math.sqrt(2.0),
}


@dataclass(frozen=True, slots=True)
class Contribution:
    """One input of a budget.

    `value` is the half-width of the distribution (the standard deviation for `normal`), in the
    input's unit; `sensitivity` the result's change per unit of input; `degrees_of_freedom` those
    of the estimate (infinite where a limit is known).
    """

    name: str
    value: float
    distribution: Distribution = "rectangular"
    sensitivity: float = 1.0
    degrees_of_freedom: float = math.inf

    @property
    def standard_uncertainty(self) -> float:
        """Standard uncertainty of the input, in the input's unit."""
        return abs(self.value) / DIVISOR[self.distribution]

    @property
    def in_result(self) -> float:
        """What the input adds to the result: |sensitivity| x standard uncertainty."""
        return abs(self.sensitivity) * self.standard_uncertainty

    @property
    def worst_case(self) -> float:
        """Largest change of the result that the input can cause; 3 sigma for a normal input."""
        reach = 3.0 if self.distribution == "normal" else 1.0
        return abs(self.sensitivity * self.value) * reach


@dataclass(frozen=True, slots=True)
class Budget:
    """Independent contributions to one result, in the result's unit."""

    contributions: tuple[Contribution, ...]

    @property
    def standard_uncertainty(self) -> float:
        """Combined standard uncertainty: root sum of squares (GUM 5.1.2)."""
        return math.hypot(*(c.in_result for c in self.contributions))

    @property
    def worst_case(self) -> float:
        """Sum of all the worst cases, as if all stood at their limits at once."""
        return math.fsum(c.worst_case for c in self.contributions)

    @property
    def degrees_of_freedom(self) -> float:
        """Effective degrees of freedom by Welch and Satterthwaite (GUM G.4.1)."""
        fourth = math.fsum(
            c.in_result**4 / c.degrees_of_freedom for c in self.contributions if c.in_result
        )
        return self.standard_uncertainty**4 / fourth if fourth else math.inf

    def shares(self) -> tuple[float, ...]:
        """Share of each contribution in the combined variance, in percent; they sum to 100."""
        total = self.standard_uncertainty**2
        if not total:
            return tuple(0.0 for _ in self.contributions)
        return tuple(100.0 * c.in_result**2 / total for c in self.contributions)

    def expanded(self, coverage: float = 2.0) -> float:
        """Expanded uncertainty: coverage factor x combined standard uncertainty (GUM 6.2.1)."""
        return coverage * self.standard_uncertainty


def coverage_factor(probability: float, degrees_of_freedom: float = math.inf) -> float:
    """Coverage factor k of a symmetric interval, from Student's t (GUM G.3.2, table G.2).

    `probability` is that of the interval, between 0 and 1; the degrees of freedom are truncated to
    a whole number, as GUM G.4.1 asks.
    """
    # Imported here: most answers need no quantile, and scipy costs start-up time and memory.
    from scipy.special import ndtri, stdtrit  # noqa: PLC0415

    tail = 0.5 + probability / 2.0
    if math.isinf(degrees_of_freedom):
        return float(ndtri(tail))
    return float(stdtrit(max(1, math.floor(degrees_of_freedom)), tail))
