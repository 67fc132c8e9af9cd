"""A center of one half angle in a hole of another; angles in radians, lengths in one unit."""

from dataclasses import dataclass
from typing import Literal

from halfangle_service.trade import elementary

Bearing = Literal["whole-cone", "mouth", "small-end"]
#: Half angles closer than half a second of arc bear along the whole cone.
SAME_RAD = elementary.radians(0.5 / 3600.0)


@dataclass(frozen=True)
class Contact:
    """Where a center bears, on which diameter, and the radial gap at the other end of the hole."""

    bearing: Bearing
    diameter: float
    gap_at_other_end: float
    point_from_mouth: float


def contact(
    center_half_rad: float, hole_half_rad: float, mouth_diameter: float, pilot_diameter: float
) -> Contact:
    """Bearing of a center in a conical hole from `pilot_diameter` out to `mouth_diameter`.

    A hole narrower in angle than the center is touched at its mouth, a wider one at the pilot's
    edge. `point_from_mouth` is how far the center's sharp point lies inside the mouth.
    """
    depth = (mouth_diameter - pilot_diameter) / (2.0 * elementary.tan(hole_half_rad))
    slope = elementary.tan(center_half_rad)
    gap = depth * abs(elementary.tan(hole_half_rad) - slope)
    if hole_half_rad > center_half_rad + SAME_RAD:
        point = depth + pilot_diameter / (2.0 * slope)
        return Contact("small-end", pilot_diameter, gap, point)
    at_mouth = mouth_diameter / (2.0 * slope)
    bearing: Bearing = "mouth" if hole_half_rad < center_half_rad - SAME_RAD else "whole-cone"
    return Contact(bearing, mouth_diameter, gap, at_mouth)
