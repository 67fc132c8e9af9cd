"""Runout budget: eccentricity vectors of unknown phase, added; lengths in one unit, as TIR.

A chain's contributors are vectors of known length in directions of which nothing is known: each
has its phase uniform over the turn, independent of the others. Their sum is a vector of which only
the length, the TIR of the assembly, is asked for (JCGM 102:2011 treats such vector quantities).
"""

import math
from dataclasses import dataclass
from typing import NamedTuple

from halfangle_service.trade.runout.phases import not_passed, share_within
from halfangle_service.trade.uncertainty import Forecast

#: A chain holds where so many of 100 assemblies keep the limit, and does not where so few do.
HOLDING, NOT_HOLDING = 95.0, 5.0
#: A TIR past the limit by no more than this part of it, and a percentage less than another by no
#: more than this, is rounding of the arithmetic.
ROUNDING, PERCENT_ROUNDING = 1e-12, 1e-6


class Contributor(NamedTuple):
    """One vector of the chain: its name, and its TIR at the station, which is its length.

    `of` is what the request calls it, where that has a name for it.
    """

    name: str
    tir: float
    of: str | None = None


@dataclass(frozen=True)
class RunoutBudget:
    """The contributors to the runout at one station.

    `not_stated` names what a request did not say of the chain beside the phases: nothing is known
    of it, and nothing counted.
    """

    contributors: tuple[Contributor, ...]
    not_stated: tuple[str, ...] = ()

    @property
    def tirs(self) -> tuple[float, ...]:
        """The TIR of each contributor."""
        return tuple(contributor.tir for contributor in self.contributors)

    @property
    def worst_case(self) -> float:
        """All vectors in line: the sum."""
        return math.fsum(self.tirs)

    @property
    def root_sum_of_squares(self) -> float:
        """Root mean square of the vector sum, over phases that are independent and uniform."""
        return math.sqrt(math.fsum(tir * tir for tir in self.tirs))

    @property
    def best_case(self) -> float:
        """Best clocking of all: zero where the vectors can close a polygon."""
        return max(0.0, 2.0 * max(self.tirs, default=0.0) - self.worst_case)

    def not_passed(self, *percents: int) -> list[float]:
        """For each percentage the TIR that is not passed in so many of 100 assemblies."""
        found: list[float] = not_passed(self.tirs, [p / 100.0 for p in percents]).tolist()
        return found

    def percent_within(self, tir: float) -> float:
        """Share of assemblies, in percent, that do not pass a TIR."""
        return 100.0 * share_within(self.tirs, tir * (1.0 + ROUNDING))

    def shares(self) -> tuple[float, ...]:
        """Share of each contributor in the sum of squares, in percent; they sum to 100."""
        total = self.root_sum_of_squares**2
        if not total:
            return tuple(0.0 for _ in self.contributors)
        return tuple(100.0 * tir**2 / total for tir in self.tirs)

    def forecast(self, limit_tir: float) -> Forecast:
        """Say whether assemblies of this chain will keep a limit on TIR.

        It holds where 95 of 100 assemblies do not pass the limit, and does not where not even 5 of
        100 do. With something not stated it is never said to hold; of no contributor nothing is
        said.
        """
        if not self.contributors:
            return "not-stated"
        within = self.percent_within(limit_tir) + PERCENT_ROUNDING
        if within < NOT_HOLDING:
            return "does-not-hold"
        return "holds" if within >= HOLDING and not self.not_stated else "may-not-hold"


def tilt_at_distance(
    tilt_tir: float | None, tilt_span: float | None, distance: float | None
) -> float:
    """What a contributor's tilt adds to its TIR at a distance from its seat, in the worst phase.

    `tilt_tir` is the change of its TIR over `tilt_span`; what was not stated counts nothing.
    """
    if tilt_tir is None or tilt_span is None or distance is None:
        return 0.0
    return tilt_tir * distance / tilt_span
