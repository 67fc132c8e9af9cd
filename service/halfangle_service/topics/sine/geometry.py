"""The sine relation. Angles in radians, lengths in any one unit.

Derived here: the centers of the rolls are the ends of the hypotenuse L; the difference of their
heights is the side opposite to the plate's angle θ.
"""

import math

from halfangle_service.errors import Impossible

ARCSEC_PER_RADIAN = math.degrees(1.0) * 3600.0


def height_for_angle(center_distance: float, angle_rad: float) -> float:
    """Difference in height between two equal rolls: h = L sin θ."""
    return center_distance * math.sin(angle_rad)


def angle_for_height(center_distance: float, height: float) -> float:
    """Angle in radians from the difference in height: θ = asin(h / L).

    Raises Impossible where the height is not below the center distance.
    """
    if height >= center_distance:
        raise Impossible(
            f"The height {height:g} is not below the center distance {center_distance:g}: "
            "the plate would stand upright or beyond.",
            fields={"height": f"should be less than center_distance ({center_distance:g})"},
        )
    return math.asin(height / center_distance)


def arcsec_per_height(center_distance: float, angle_rad: float) -> float:
    """Change of angle in arc-seconds for one unit of height: dθ/dh = 1 / (L cos θ)."""
    return ARCSEC_PER_RADIAN / (center_distance * math.cos(angle_rad))
