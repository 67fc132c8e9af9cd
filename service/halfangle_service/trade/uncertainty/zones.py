"""What a measured value proves, where it would have to lie to prove it, and how well known.

A case is a kind of measurement against its limits: what is judged of one value by `verdict_of` is
turned round here to the values at which the judgement changes, and to the uncertainty with which it
would be another. All lengths or angles of a case in one unit.
"""

import math
from collections.abc import Callable
from dataclasses import dataclass
from functools import cached_property

from halfangle_service.trade.roots import crossing
from halfangle_service.trade.uncertainty.budget import Budget, Contribution
from halfangle_service.trade.uncertainty.coverage import (
    COVERAGE_PROBABILITY,
    band_at_either,
    probability_between,
)
from halfangle_service.trade.uncertainty.decision import (
    Verdict,
    VerdictRule,
    edge,
    fixed_band,
    verdict_by,
    verdict_of,
)
from halfangle_service.trade.uncertainty.lengths import length_of_nothing, length_within

#: Of a normal error of 1, where no error was stated.
_UNIT = Budget((Contribution("unit", 1.0, "normal"),))
#: Farthest that a value can lie from a limit and be in doubt, in standard uncertainties; Student's
#: distribution with one degree of freedom passes it by far, and is searched for.
_FIRST_REACH = 4.0
_DOUBLINGS = 60
#: What lies 20 standard uncertainties off is sure, by Student's distribution of any kind too.
_SURE_SHARE = 0.05

Zone = tuple[float, float]


@dataclass(frozen=True)
class Case:
    """A kind of measurement by its budget, and the limits and the rule by which it is judged.

    A limit may be infinite, where there is none to that side. With a capability index below
    `least_index` nothing is judged. `of_a_vector` is the length of one,
    such as a runout's, which is never below nothing; it has no lower limit.
    """

    lower: float
    upper: float
    budget: Budget
    rule: VerdictRule = "iso-14253-1-2017"
    guard_band: float = 0.0
    least_index: float = 0.0
    of_a_vector: bool = False

    @property
    def stated(self) -> bool:
        """Whether anything was stated of the error."""
        return bool(self.budget.contributions)

    @property
    def tolerance(self) -> float | None:
        """Width between the limits, that of a vector's from nothing; None with one limit."""
        width = self.upper - (0.0 if self.of_a_vector else self.lower)
        return width if math.isfinite(width) else None

    @property
    def capability_index(self) -> float | None:
        """Tolerance over four standard uncertainties (JCGM 106:2012, 7.6.3); None without both."""
        spread = self.budget.standard_uncertainty
        return None if self.tolerance is None or not spread else self.tolerance / (4.0 * spread)

    @cached_property
    def _within(self) -> Callable[[float, float], float]:
        """Probability that what was measured so is within the limits, all over a scale."""
        if self.of_a_vector:
            length = length_within(self._error)
            return lambda value, scale: length(value / scale, self.upper / scale)
        error = self._error
        return lambda value, scale: probability_between(
            error, (self.lower - value) / scale, (self.upper - value) / scale
        )

    @property
    def _error(self) -> Budget:
        return self.budget if self.stated else _UNIT

    def conformance(self, value: float) -> float | None:
        """Probability, from 0 to 1, that what was measured so keeps its limits; None of nothing."""
        return self._within(value, 1.0) if self.stated else None

    def under(self, value: float) -> float | None:
        """Probability, from 0 to 1, that what was measured so lies under its lower limit."""
        if not self.stated:
            return None
        if self.of_a_vector:
            return 0.0
        return probability_between(self.budget, -math.inf, self.lower - value)

    def verdict(self, value: float) -> Verdict:
        """Judge a measured value."""
        if self._too_coarse:
            return "not-provable"
        if self.of_a_vector and self._by_probability:
            return verdict_by(self._within(value, 1.0), inside=value <= self._never_rejected)
        return verdict_of(value, self.lower, self.upper, self.budget, self.rule, self.guard_band)

    # Gauge limits ---------------------------------------------------------------------------
    def accepted(self) -> Zone | None:
        """Smallest and largest measured value that prove conformity; None where none does.

        A side without a limit is infinite.
        """
        if not self.stated or self._too_coarse:
            return None
        if self._by_probability:
            return self._accepted_by_probability
        band = fixed_band(self.budget, self.rule, self.guard_band)
        zone = edge(self.lower, band), edge(self.upper, -band)
        return zone if max(zone[0], self._floor) <= zone[1] else None

    def rejected(self) -> Zone:
        """Measured values below the first and above the second prove that limits are not kept.

        Infinite where no value does.
        """
        if not self.stated or self._too_coarse:
            return -math.inf, math.inf
        if self._by_probability:
            return self._rejected_at(-1.0), self._rejected_at(1.0)
        band = fixed_band(self.budget, self.rule, self.guard_band)
        return edge(self.lower, -band), edge(self.upper, band)

    @property
    def _by_probability(self) -> bool:
        return self.rule == "iso-14253-1-2017" and self.budget.standard_uncertainty > 0.0

    @property
    def _too_coarse(self) -> bool:
        """True where the measurement is coarser than what was agreed on."""
        index = self.capability_index
        return index is not None and index < self.least_index

    @property
    def _never_rejected(self) -> float:
        """What a length may be read as and never be proved too long, in its unit.

        Within its limit, of course; or where nothing at all would be read as so long 1 time in 20.
        """
        return max(self.upper, length_of_nothing(self._error, 1.0 - COVERAGE_PROBABILITY))

    @property
    def _floor(self) -> float:
        """The smallest value that can be measured."""
        return 0.0 if self.of_a_vector else -math.inf

    @cached_property
    def _band(self) -> float | None:
        """Guard band at either limit, where the other one is out of an error's reach."""
        far = math.isinf(self.lower) and math.isinf(self.upper)
        if self.of_a_vector or far or not self.stated:
            return None
        return band_at_either(self.budget, self.upper - self.lower)

    @cached_property
    def _accepted_by_probability(self) -> Zone | None:
        if self._band is not None:
            return self.lower + self._band, self.upper - self._band
        best = self._surest()
        if self._within(best, 1.0) < COVERAGE_PROBABILITY:
            return None
        low, high = (self._accepted_to(limit, best) for limit in (self.lower, self.upper))
        return low, high

    def _surest(self) -> float:
        """The measured value that most surely keeps the limits."""
        if self.of_a_vector:
            return 0.0
        if math.isinf(self.lower) or math.isinf(self.upper):
            known = self.upper if math.isinf(self.lower) else self.lower
            inward = -1.0 if math.isinf(self.lower) else 1.0
            return known + inward * self._far(
                lambda way: self._within(known + inward * way, 1.0) - COVERAGE_PROBABILITY
            )
        return (self.lower + self.upper) / 2.0

    def _accepted_to(self, limit: float, best: float) -> float:
        """The measured value nearest to a limit that proves conformity."""
        if math.isinf(limit):
            return limit
        inward = best - limit

        def rising(share: float) -> float:
            return self._within(limit + share * inward, 1.0) - COVERAGE_PROBABILITY

        return limit if rising(0.0) >= 0.0 else limit + inward * crossing(rising, 0.0, 1.0)[1]

    def _rejected_at(self, outward: float) -> float:
        """The measured value beyond a limit from which on it is proved not to be kept."""
        limit = self.upper if outward > 0.0 else self.lower
        if math.isinf(limit):
            return limit

        if self._band is not None:
            return limit + outward * self._band

        def rising(way: float) -> float:
            within = self._within(limit + outward * way, 1.0)
            return 1.0 - COVERAGE_PROBABILITY - within

        # No value within the limits proves that they are not kept, however coarse it is.
        found = 0.0 if rising(0.0) >= 0.0 else crossing(rising, 0.0, self._far(rising))[1]
        beyond = limit + outward * found
        return max(beyond, self._never_rejected) if self.of_a_vector else beyond

    def _far(self, rising: Callable[[float], float]) -> float:
        """A distance at which a function that rises with it is above 0."""
        far = _FIRST_REACH * self.budget.standard_uncertainty
        for _ in range(_DOUBLINGS):
            if rising(far) > 0.0:
                break
            far *= 2.0
        return far

    # What would prove it --------------------------------------------------------------------
    def needed_uncertainty(self, value: float) -> float | None:
        """Largest standard uncertainty with which a measured value would prove the one or other.

        By the distribution of the error stated, or by a normal one. None where the rule does not
        go by it, where none would do, and where every one would.
        """
        inside = self.lower < value < self.upper
        unit = self._error.standard_uncertainty
        nearest = min(abs(value - self.lower), abs(value - self.upper))
        if self.rule == "simple-acceptance" and self.least_index and self.tolerance is not None:
            return self.tolerance / (4.0 * self.least_index)
        if not nearest or not unit or self.rule in ("guard-band", "simple-acceptance"):
            return None
        if self.rule == "iso-14253-1-2013":
            return nearest / fixed_band(self._error, self.rule, 0.0) * unit

        def rising(scale: float) -> float:
            within = self._within(value, scale)
            return COVERAGE_PROBABILITY - within if inside else within - 1.0 + COVERAGE_PROBABILITY

        most = math.inf
        if self.of_a_vector and not inside:
            most = value / length_of_nothing(self._error, 1.0 - COVERAGE_PROBABILITY)
        scale = nearest / unit * _SURE_SHARE
        for _ in range(_DOUBLINGS):
            if rising(scale) > 0.0:
                return unit * min(crossing(rising, scale / 2.0, scale)[0], most)
            scale *= 2.0
        return unit * most if math.isfinite(most) else None
