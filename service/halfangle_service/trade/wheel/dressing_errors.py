"""What errors of dressing do to the flank and so to the cone. Radians, one unit of length.

Wheel and work axes are parallel and in one plane with the contact, so that at each station the
radius of the cone and that of the wheel make up a constant: whatever the flank is out, the cone is.

Diamond at a distance e from the wheel's axial plane (above or below). Its path is straight in its
own plane, at β to the axis, so that the wheel's radius is r = √(q² + e²) where q falls by tan β per
length: a hyperbola. Its slope is tan β · q / r = tan β · √(1 − (e/r)²). Derived here.
"""

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from halfangle_service.errors import Impossible
from halfangle_service.trade.wording import plain

Array = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class DressedCone:
    """The cone wanted and the wheel that grinds it with a flank that begins at its periphery.

    `angle_rad` is the half angle; the wheel's radius is greatest where the cone is smallest.
    """

    angle_rad: float
    small_radius: float
    large_radius: float
    wheel_radius: float

    @property
    def rise(self) -> float:
        """Radial depth of the flank."""
        return self.large_radius - self.small_radius

    @property
    def slant(self) -> float:
        """Length of the flank along its slope."""
        return self.rise / math.sin(self.angle_rad)

    @property
    def length(self) -> float:
        """Length of the flank along the axis."""
        return self.rise / math.tan(self.angle_rad)

    def require_room(self, diamond_height: float) -> None:
        """Refuse a wheel that the flank or the diamond's height uses up. Raises Impossible."""
        smallest = self.wheel_radius - self.rise
        if smallest <= 0.0:
            raise Impossible(
                f"The flank is {plain(self.rise)} deep and the wheel's radius "
                f"{plain(self.wheel_radius)}.",
                fields={"wheel_diameter": f"should be more than {plain(2.0 * self.rise)}"},
            )
        if abs(diamond_height) >= smallest:
            raise Impossible(
                f"A diamond {plain(abs(diamond_height))} off the wheel's axis never reaches the "
                f"flank's root, at a radius of {plain(smallest)}.",
                fields={"diamond_height": f"should be between ±{plain(smallest)}"},
            )


def local_half_angle(angle_rad: float, diamond_height: float, wheel_radius: float) -> float:
    """Half angle that the flank grinds where the wheel has this radius."""
    share = diamond_height / wheel_radius
    return math.atan(math.tan(angle_rad) * math.sqrt(1.0 - share * share))


def hyperbolic_radii(cone: DressedCone, diamond_height: float, stations: Array) -> Array:
    """Wheel radius at stations along the axis from the periphery's edge of the flank."""
    start = math.sqrt(cone.wheel_radius**2 - diamond_height**2)
    return np.sqrt((start - stations * math.tan(cone.angle_rad)) ** 2 + diamond_height**2)


@dataclass(frozen=True, slots=True)
class Hyperbola:
    """A hyperbolic flank over the cone's length.

    `mean_angle_error_rad`: slope of the chord from end to end less the half angle. `departure`:
    greatest distance from that chord, square to it; since the curve bends one way only, it is also
    the least distance of two parallel lines that hold it (its straightness). `at_radius`: the
    wheel's radius there.
    """

    mean_angle_error_rad: float
    departure: float
    at_radius: float


def hyperbola(cone: DressedCone, diamond_height: float) -> Hyperbola:
    """Angle error and departure from straight of the flank that an off-height diamond dresses."""
    r1, r2 = hyperbolic_radii(cone, diamond_height, np.array([0.0, cone.length])).tolist()
    q1, q2 = (math.sqrt(r * r - diamond_height**2) for r in (r1, r2))
    # Slope of the chord against q; r² − q² is the same at both ends, so this does not cancel.
    slope = (q1 + q2) / (r1 + r2)
    # The tangent has that slope where q / r = slope; 1 − slope² is written out for the same reason.
    spread = 2.0 + 2.0 * (q1 * q1 + q2 * q2 + diamond_height**2) / (r1 * r2 + q1 * q2)
    q = slope * (r1 + r2) / math.sqrt(spread)
    radius = math.hypot(q, diamond_height)
    chord = math.atan(slope * math.tan(cone.angle_rad))
    departure = max(r1 - slope * (q1 - q) - radius, 0.0) * math.cos(chord)
    return Hyperbola(chord - cone.angle_rad, departure, radius)


def nose_displacement(angle_rad: float, nose_radius: float) -> float:
    """How much deeper than a sharp diamond's the flank lies, square to it.

    The round nose is set by touching the periphery and then led along the angle: its center lies
    ρ cos β from the line of a sharp point, and the flank ρ from the center.
    """
    return nose_radius * (1.0 - math.cos(angle_rad))


def angle_from_wear(slant: float, at_small_end: float, at_large_end: float) -> float:
    """Change of the half angle where the flank wears (square to it) unequally at its ends.

    Where the wheel has lost more at the small end, the cone is left larger there and its half angle
    smaller.
    """
    # Adding 0.0 turns a negative zero into a plain one.
    return math.atan((at_large_end - at_small_end) / slant) + 0.0


def small_end_diameter_change(angle_rad: float, normal: float) -> float:
    """Change of the cone's diameter at a station for stock left on, square to the surface."""
    return 2.0 * normal / math.cos(angle_rad)
