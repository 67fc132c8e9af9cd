"""How well a standard taper fits two measured diameters; lengths in one unit, angles in radians."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Protocol, TypeVar

from halfangle_service.trade.angles import ARCSEC_PER_RADIAN
from halfangle_service.trade.cone import half_angle_from_rate

#: How far a measured diameter may lie past the table's, as a share, and still be of that size.
SIZE_SLACK = 0.05
#: Slopes whose included angles lie this near, in arc-seconds, are one taper: tables print the same
#: taper so far apart, by the digits that they give, and no measuring of a cone tells them apart.
ONE_TAPER_ARCSEC = 2.0
#: Part of a diameter that is rounding of the arithmetic, not a misfit.
_ROUNDING = 1e-12


@dataclass(frozen=True, slots=True)
class Cut:
    """Two diameters measured on a cone, and the length between them.

    `slack` is what the errors stated make on the difference of the diameters; `complete` tells
    whether all of them were stated.
    """

    large_diameter: float
    small_diameter: float
    length: float
    slack: float
    complete: bool

    @property
    def rate(self) -> float:
        """Rate of taper as measured, on the diameter."""
        return (self.large_diameter - self.small_diameter) / self.length

    def misfit(self, rate: float) -> float:
        """Difference of the diameters less the one of a standard rate over the same length."""
        return (self.rate - rate) * self.length

    def included_misfit_rad(self, rate: float) -> float:
        """Included angle as measured less that of a standard rate."""
        return 2.0 * (half_angle_from_rate(self.rate) - half_angle_from_rate(rate))

    def explained(self, rate: float) -> bool | None:
        """True where the errors stated explain the misfit; None where others might.

        What was not stated can only make the errors larger.
        """
        if abs(self.misfit(rate)) <= self.slack + _ROUNDING * self.large_diameter:
            return True
        return False if self.complete else None

    def fits_sizes(self, smallest: float, largest: float) -> bool:
        """True where both diameters lie within a table's, to `SIZE_SLACK`."""
        return (
            self.large_diameter <= (1.0 + SIZE_SLACK) * largest
            and self.small_diameter >= (1.0 - SIZE_SLACK) * smallest
        )


class Sloped(Protocol):
    """What has a rate of taper."""

    @property
    def rate(self) -> float:
        """Rate of taper C, on the diameter."""
        ...


SlopedT = TypeVar("SlopedT", bound=Sloped)


def of_one_slope(rows: Sequence[SlopedT]) -> list[list[SlopedT]]:
    """Rows put together that no measuring of a cone's slope tells apart, by rising rate."""
    groups: list[list[SlopedT]] = []
    for row in sorted(rows, key=lambda row: row.rate):
        if groups and _apart_arcsec(groups[-1][0].rate, row.rate) <= ONE_TAPER_ARCSEC:
            groups[-1].append(row)
        else:
            groups.append([row])
    return groups


def _apart_arcsec(rate: float, other: float) -> float:
    return 2.0 * (half_angle_from_rate(other) - half_angle_from_rate(rate)) * ARCSEC_PER_RADIAN
