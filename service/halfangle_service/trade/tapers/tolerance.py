"""Tolerance of a cone's angle: as an angle, and on the difference of the end diameters.

Angles in radians, lengths in one unit. A band is a whole tolerance, from the least to the most, of
the included angle or of the difference of diameters over the length. α is the half angle.
"""

import math
from dataclasses import dataclass
from typing import Literal

from halfangle_service.errors import Impossible
from halfangle_service.trade.cone import diameter_at
from halfangle_service.trade.wording import plain

Disposition = Literal["plus", "minus", "symmetric"]
#: Largest rate of taper for which ISO 1947 takes AT_D = AT_α × L.
STANDARD_RATE = 1.0 / 3.0
#: Shares of the band's half angle below and above the nominal one.
_SHARES: dict[Disposition, tuple[float, float]] = {
    "plus": (0.0, 0.5),
    "minus": (0.5, 0.0),
    "symmetric": (0.25, 0.25),
}


def diameter_band_by_standard(angle_band_rad: float, length: float) -> float:
    """AT_D = AT_α × L, as the standard states it: exact enough for slopes up to 1:3."""
    return angle_band_rad * length


def diameter_band(half_rad: float, angle_band_rad: float, length: float) -> float:
    """Change of the difference of diameters over the length, from half the band below to above."""
    quarter = angle_band_rad / 4.0
    return 2.0 * length * (math.tan(half_rad + quarter) - math.tan(half_rad - quarter))


def angle_band(half_rad: float, diameter_band: float, length: float) -> float:
    """Band of the included angle whose difference of diameters over the length spans that much.

    The way back of `diameter_band`: the limits lie at tan α ± ΔD / (4 l). Raises Impossible.
    """
    tangent, step = math.tan(half_rad), diameter_band / (4.0 * length)
    if step >= tangent:
        raise Impossible(
            "This tolerance lets the taper vanish.",
            fields={"diameter_band_over_length": f"should be below {plain(4 * length * tangent)}"},
        )
    return 2.0 * (math.atan(tangent + step) - math.atan(tangent - step))


def half_angle_limits(
    half_rad: float, angle_band_rad: float, disposition: Disposition
) -> tuple[float, float]:
    """Smallest and largest half angle; raises Impossible where one of them is no cone's."""
    below, above = _SHARES[disposition]
    low, high = half_rad - below * angle_band_rad, half_rad + above * angle_band_rad
    quarter = angle_band_rad / 4.0
    least, most = min(low, half_rad - quarter), max(high, half_rad + quarter)
    if least <= 0.0 or most >= math.pi / 2.0:
        raise Impossible(
            "This tolerance leaves no cone at its limit.",
            fields={"included_angle_band_arcsec": "should be less than the cone's angle"},
        )
    return low, high


@dataclass(frozen=True, slots=True)
class Cone:
    """A cone with its tolerances: half angles as nominal and at their limits, ± on its diameter."""

    large_diameter: float
    half_rad: float
    smallest_half_rad: float
    largest_half_rad: float

    def nominal(self, from_large_end: float) -> float:
        """Nominal diameter at a distance from the large end."""
        return diameter_at(self.large_diameter, self.half_rad, from_large_end)

    def limits(self, from_large_end: float, tolerance: float) -> tuple[float, float]:
        """Smallest and largest diameter there; `tolerance` of the large diameter, plus and minus.

        The smallest belongs to the bluntest cone, which falls away fastest from the large end.
        """
        large = self.large_diameter
        return (
            diameter_at(large - tolerance, self.largest_half_rad, from_large_end),
            diameter_at(large + tolerance, self.smallest_half_rad, from_large_end),
        )
