"""A cone in its gauge, or a gauge in a socket: what contact at one end says of the half angle.

Derived here, with the gauge taken true. Two cones that touch at one end gape at the other: over the
length l between, the radial gap is l (tan α_outer − tan α_inner) in size, and the blunter of the
two touches first: the inner one at its large end, the outer one at the inner one's small end.
Angles in radians, lengths in one unit, shares from 0 to 1.
"""

import math
from dataclasses import dataclass

from halfangle_service.trade.angles import ARCSEC_PER_RADIAN
from halfangle_service.trade.runout.vectors import Surface
from halfangle_service.trade.tapers.feed import End


@dataclass(frozen=True, slots=True)
class Contact:
    """Where a part's cone touches its gauge, and the length from there to the open end."""

    surface: Surface
    touches: End
    length: float
    gauge_half_rad: float

    @property
    def sense(self) -> int:
        """1 where the part's half angle is larger than the gauge's, -1 smaller, 0 alike."""
        if self.touches == "both-ends":
            return 0
        blunter_inner = self.touches == "large-end"
        return 1 if blunter_inner == (self.surface == "external") else -1

    def error_arcsec(self, gap: float) -> float:
        """Half angle of the part less the gauge's, for a radial gap at the open end."""
        rise = math.tan(self.gauge_half_rad) + self.sense * gap / self.length
        return (math.atan(rise) - self.gauge_half_rad) * ARCSEC_PER_RADIAN

    def arcsec_per_gap(self, gap: float) -> float:
        """Change of that error for one unit of gap: cos² α / l, α of the part."""
        half = self.gauge_half_rad + self.error_arcsec(gap) / ARCSEC_PER_RADIAN
        return math.cos(half) ** 2 / self.length * ARCSEC_PER_RADIAN


def gap_of_mark(share: float, film: float, gauge_half_rad: float) -> float:
    """Radial gap at the open end where a film marks a share of the length.

    It marks as far as the gap, square to the gauge's surface, is no wider than itself.
    """
    return film / (share * math.cos(gauge_half_rad))
