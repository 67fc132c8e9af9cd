"""Tolerance of a cone's angle: as an angle, and on the difference of the end diameters.

Angles in radians, lengths in one unit. A band is a whole tolerance, from the least to the most, of
the included angle or of the difference of diameters over the length. α is the half angle.
"""

import math
from dataclasses import dataclass
from typing import Literal

from halfangle_service.errors import Impossible
from halfangle_service.trade import elementary
from halfangle_service.trade.angles import ARCSEC_PER_RADIAN
from halfangle_service.trade.cone import diameter_at
from halfangle_service.trade.wording import of_any_unit, plain

Disposition = Literal["plus", "minus", "symmetric"]
#: Largest rate of taper for which ISO 1947 takes AT_D = AT_α × L.
STANDARD_RATE = 1.0 / 3.0
#: Shares of the included angle's band by which the half angle lies below and above its nominal.
_SHARES: dict[Disposition, tuple[float, float]] = {
    "plus": (0.0, 0.5),
    "minus": (0.5, 0.0),
    "symmetric": (0.25, 0.25),
}


def diameter_band_by_standard(angle_band_rad: float, length: float) -> float:
    """AT_D = AT_α × L, as the standard states it: exact enough for slopes up to 1:3."""
    return angle_band_rad * length


def diameter_band(low_half_rad: float, high_half_rad: float, length: float) -> float:
    """What two half angles span on the difference of diameters over the length."""
    return 2.0 * length * (elementary.tan(high_half_rad) - elementary.tan(low_half_rad))


def angle_band(
    half_rad: float, diameter_band: float, length: float, disposition: Disposition
) -> float:
    """Band of the included angle whose limits span that much on the difference of diameters.

    The way back of `half_angle_limits` and `diameter_band`. Derived here: two half angles that lie
    x apart about α differ by 2 sin x / (cos 2α + cos x) in their tangents; ΔD / (2 l) it must be.
    """
    tangent, step = elementary.tan(half_rad), diameter_band / (2.0 * length)
    if disposition == "plus":
        return 2.0 * elementary.atan2(step, 1.0 + tangent * (tangent + step))
    if disposition == "minus":
        return 2.0 * elementary.atan2(step, 1.0 + tangent * (tangent - step))
    between = elementary.asin(step * elementary.cos(2.0 * half_rad) / elementary.hypot(2.0, step))
    return 2.0 * (elementary.atan(step / 2.0) + between)


def half_angle_limits(
    half_rad: float, angle_band_rad: float, disposition: Disposition
) -> tuple[float, float]:
    """Smallest and largest half angle."""
    below, above = _SHARES[disposition]
    return half_rad - below * angle_band_rad, half_rad + above * angle_band_rad


def largest_angle_band(half_rad: float, disposition: Disposition) -> float:
    """Band of the included angle at which a limit is no cone's any more, in radians."""
    below, above = _SHARES[disposition]
    blunt = (math.pi / 2.0 - half_rad) / above if above else math.inf
    return min(half_rad / below if below else math.inf, blunt)


def require_cones(
    half_rad: float,
    angle_band_rad: float,
    disposition: Disposition,
    *,
    field: str,
    limit: str | None = None,
) -> None:
    """Refuse a tolerance at whose limit there is no cone, with the largest that leaves one.

    `limit` writes that largest one where the field states it in another form than an angle.
    """
    most = largest_angle_band(half_rad, disposition)
    if angle_band_rad >= most:
        limit = limit or f"{plain(most * ARCSEC_PER_RADIAN)}″ of included angle"
        raise Impossible(
            "This tolerance leaves no cone at its limit, where the half angle would be 0° or 90°.",
            fields={field: f"should be below {limit}"},
        )


def require_size_left(large_diameter: float, tolerance: float | None, *, path: str = "") -> None:
    """Refuse a tolerance of the large diameter that leaves nothing of it; None is not stated.

    `path` is that of the object that holds the field, such as `feature/`.
    """
    if tolerance is not None and tolerance >= large_diameter:
        raise Impossible(
            f"The tolerance {of_any_unit(tolerance)} of the large diameter leaves nothing of "
            f"{of_any_unit(large_diameter)}.",
            fields={f"{path}large_diameter_tolerance": "should be less than large_diameter"},
        )


@dataclass(frozen=True, slots=True)
class Cone:
    """A cone with its tolerances: half angles as nominal and at their limits, ± on its diameter."""

    large_diameter: float
    half_rad: float
    smallest_half_rad: float
    largest_half_rad: float

    def nominal(self, station_from_large_end: float) -> float:
        """Nominal diameter at a distance from the large end."""
        return diameter_at(self.large_diameter, self.half_rad, station_from_large_end)

    def limits(self, station_from_large_end: float, tolerance: float) -> tuple[float, float]:
        """Smallest and largest diameter there; `tolerance` of the large diameter, plus and minus.

        The smallest belongs to the bluntest cone, which falls away fastest from the large end.
        """
        large = self.large_diameter
        return (
            diameter_at(large - tolerance, self.largest_half_rad, station_from_large_end),
            diameter_at(large + tolerance, self.smallest_half_rad, station_from_large_end),
        )
