"""Uncertainty budgets after JCGM 100:2008 (GUM).

A budget is a list of contributions: each a half-width or standard deviation of an input, its
distribution, and the sensitivity of the result to it. Independent inputs are assumed, as the law
of propagation in GUM 5.1.2 does; inputs that move together belong into one contribution.
"""

import math
from collections.abc import Callable, Iterable
from dataclasses import dataclass, replace
from typing import Literal

from halfangle_service.trade import elementary
from halfangle_service.trade.columns import is_column, mapped

Distribution = Literal["normal", "rectangular", "triangular", "u-shaped"]

#: Divisor from the stated half-width to a standard uncertainty; GUM 4.3.7, 4.3.9 and, for the
#: arc-sine distribution, JCGM 101:2008 6.4.6. A normal input states its standard deviation.
DIVISOR: dict[Distribution, float] = {
    "normal": 1.0,
    "rectangular": math.sqrt(3.0),
    "triangular": math.sqrt(6.0),
    "u-shaped": math.sqrt(2.0),
}


#: Spread of x² for x even over ±1: its standard deviation is 2/(3 √5) and its mean 1/3.
SQUARE_SPREAD = 2.0 / (3.0 * math.sqrt(5.0))
SQUARE_MEAN = 1.0 / 3.0


@dataclass(frozen=True, slots=True)
class Contribution:
    """One input of a budget.

    `value` is the half-width of the distribution (the standard deviation for `normal`), in the
    input's unit; `sensitivity` the result's change per unit of input; `degrees_of_freedom` those
    of the estimate (infinite where a limit is known).

    A `one_sided` input acts by its square, so always the same way: its `sensitivity` is the
    result's change at its limit, over that limit, and its mean shifts the result (JCGM 100:2008,
    5.1.2 note: where the first-order term vanishes, higher orders count). It is rectangular.
    `unit` names the input's unit where it is not the result's; `of` which one it is where several
    bear one `name`, such as a block of a stack.
    """

    name: str
    value: float
    distribution: Distribution = "rectangular"
    sensitivity: float = 1.0
    degrees_of_freedom: float = math.inf
    one_sided: bool = False
    unit: str = ""
    of: str | None = None

    @property
    def standard_uncertainty(self) -> float:
        """Standard uncertainty of the input, in the input's unit."""
        return abs(self.value) / DIVISOR[self.distribution]

    @property
    def at_limit(self) -> float:
        """Change of the result with the input at its limit, signed."""
        return self.sensitivity * self.value

    @property
    def mean(self) -> float:
        """What the input adds to the result on average: nothing, unless it is one-sided."""
        return self.at_limit * SQUARE_MEAN if self.one_sided else 0.0

    @property
    def in_result(self) -> float:
        """What the input adds to the result: |sensitivity| x standard uncertainty."""
        if self.one_sided:
            return abs(self.at_limit) * SQUARE_SPREAD
        return abs(self.sensitivity) * self.standard_uncertainty

    def times(self, factor: float) -> "Contribution":
        """The same input to a result that follows this one so many times over."""
        return Contribution(
            self.name,
            self.value,
            self.distribution,
            factor * self.sensitivity,
            self.degrees_of_freedom,
            self.one_sided,
            self.unit,
            self.of,
        )

    @property
    def worst_case(self) -> float | None:
        """Largest change of the result that the input can cause; 3 sigma for a normal input.

        None where its spread was itself estimated from few readings: three times what may be far
        too small is no limit, and Student's factor passes it.
        """
        if elementary.isfinite(self.degrees_of_freedom):
            return None
        reach = 3.0 if self.distribution == "normal" else 1.0
        return abs(self.at_limit) * reach


@dataclass(frozen=True, slots=True)
class Budget:
    """Independent contributions to one result, in the result's unit.

    `offset` is what is known to be off, such as a stack's deviation; `not_stated` names the
    contributions that were not stated, which the budget knows nothing of.
    """

    contributions: tuple[Contribution, ...]
    offset: float = 0.0
    not_stated: tuple[str, ...] = ()

    @property
    def mean(self) -> float:
        """The result's expected error: the known offset and the means of one-sided inputs."""
        return self.offset + elementary.fsum(c.mean for c in self.contributions)

    @property
    def standard_uncertainty(self) -> float:
        """Combined standard uncertainty: root sum of squares (GUM 5.1.2)."""
        return elementary.hypot(*(c.in_result for c in self.contributions))

    @property
    def worst_case(self) -> float | None:
        """|offset| and all the worst cases, as if all stood at their limits at once.

        None where a contribution has none. It is never less than what covers 95 %.
        """
        cases = [c.worst_case for c in self.contributions]
        limits = [case for case in cases if case is not None]
        return abs(self.offset) + elementary.fsum(limits) if len(limits) == len(cases) else None

    @property
    def degrees_of_freedom(self) -> float:
        """Effective degrees of freedom by Welch and Satterthwaite (GUM G.4.1)."""
        estimated = (c for c in self.contributions if elementary.isfinite(c.degrees_of_freedom))
        fourth = elementary.fsum(c.in_result**4 / c.degrees_of_freedom for c in estimated)
        return self.standard_uncertainty**4 / fourth if fourth else math.inf

    def shares(self) -> tuple[float, ...]:
        """Share of each contribution in the combined variance, in percent; they sum to 100."""
        spreads = [c.in_result for c in self.contributions]
        total = elementary.hypot(*spreads) ** 2
        return tuple(100.0 * spread**2 / total if total else 0.0 for spread in spreads)

    def largest(self) -> Contribution | None:
        """The contribution with the largest share; None where nothing contributes."""
        return max(
            (c for c in self.contributions if c.in_result),
            key=lambda contribution: contribution.in_result,
            default=None,
        )

    def row_for_row(self, work: Callable[["Budget"], float]) -> float | None:
        """What is found of a budget of columns by work on each row's; None for one of floats."""
        numbers = [(c.value, c.sensitivity, c.degrees_of_freedom) for c in self.contributions]
        flat = [self.offset, *(number for each in numbers for number in each)]
        if not any(map(is_column, flat)):
            return None

        def of_row(offset: float, *own: float) -> float:
            each = zip(self.contributions, own[::3], own[1::3], own[2::3], strict=True)
            contributions = (
                replace(c, value=value, sensitivity=sensitivity, degrees_of_freedom=freedom)
                for c, value, sensitivity, freedom in each
            )
            return work(replace(self, contributions=tuple(contributions), offset=offset))

        return mapped(of_row, *flat)  # type: ignore[return-value]

    def expanded(self, coverage: float = 2.0) -> float:
        """Expanded uncertainty: coverage factor x combined standard uncertainty (GUM 6.2.1)."""
        return coverage * self.standard_uncertainty


def budget_as_stated(offset: float, stated: Iterable[str], not_stated: Iterable[str]) -> Budget:
    """Budget of errors that are stated as they are, by name: an offset in any unit, no spread."""
    return Budget(tuple(Contribution(name, 0.0) for name in stated), offset, tuple(not_stated))


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
