"""How errors of the set-up turn a cone on a sine plate.

Angles in radians, lengths in any one unit. θ is the plate's angle, equal to the half angle α of the
cone when all is true: a flat wheel sweeps a plane, and the half angle is the angle between the
spin axis and that plane. The included angle has twice the half angle's error. Derived here.
"""

import math

from halfangle_service.trade.sine.geometry import (
    ARCSEC_PER_RADIAN,
    angle_at_yaw,
    arcsec_per_height,
)


def included_arcsec_per_height(center_distance: float, plate_angle_rad: float) -> float:
    """Change of the included angle for one unit of stack height: 2 / (L cos θ), in arc-seconds."""
    return 2.0 * arcsec_per_height(center_distance, plate_angle_rad)


def included_arcsec_per_center_distance(center_distance: float, plate_angle_rad: float) -> float:
    """Change of the included angle for one unit of center distance: 2 tan θ / L, arc-seconds."""
    return 2.0 * ARCSEC_PER_RADIAN * math.tan(plate_angle_rad) / center_distance


def included_arcsec_from_temperature(
    plate_angle_rad: float, expansion_difference: float, temperature_rise: float
) -> float:
    """Change of the included angle in arc-seconds: 2 tan θ (α_blocks - α_plate) ΔT.

    `expansion_difference` in 1/K, blocks less plate; `temperature_rise` over 20 °C in K.
    """
    return (
        2.0
        * ARCSEC_PER_RADIAN
        * math.tan(plate_angle_rad)
        * expansion_difference
        * temperature_rise
    )


def included_arcsec_from_yaw(plate_angle_rad: float, yaw_rad: float) -> float:
    """Change of the included angle in arc-seconds when the axis yaws out of the tilt plane.

    The cone always comes out too slender, whichever way the axis yaws.
    """
    half_angle = angle_at_yaw(plate_angle_rad, yaw_rad)
    return 2.0 * ARCSEC_PER_RADIAN * (half_angle - plate_angle_rad)
