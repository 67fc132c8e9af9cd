"""A tapered shank in a socket; angles in radians, tapers on the diameter, lengths in one unit.

The nose is the socket's mouth. Distances are measured from it, positive outward.
"""

from dataclasses import dataclass
from typing import Literal

from halfangle_service.trade import elementary
from halfangle_service.trade.cone import Slope
from halfangle_service.trade.decimals import tidy
from halfangle_service.trade.tapers.bearing import Pair

SeatBearing = Literal["whole-seat", "large-end", "small-end"]
#: Tapers closer than this, on the diameter, bear along the whole seat: 0.1 in a million.
SAME_TAPER = 1e-7
#: Included angle up to which a steel taper is commonly taken to hold by itself.
SELF_HOLDING_INCLUDED_DEG = 7.0


@dataclass(frozen=True)
class Seat:
    """How a shank bears: the end, the radial gap at the other, and the tilt that the gap allows."""

    bearing: SeatBearing
    gap: float
    rock_rad: float
    pivot: float


def seat(shank_taper: float, socket_taper: float, engagement: float) -> Seat:
    """Seat of a shank over `engagement`, an axial length in from the mouth.

    A steeper shank bears at the large end, at the mouth; a slower one at the small end. Derived
    here: the free end has the radial gap l |taper difference|/2 and may rock until it touches.
    `pivot` is the distance of the circle it rocks about, 0 at the mouth, else -engagement.
    """
    difference = shank_taper - socket_taper
    if abs(difference) <= SAME_TAPER:
        return Seat("whole-seat", 0.0, 0.0, 0.0)
    gap = engagement * abs(difference) / 2.0
    rock = elementary.atan(gap / engagement)
    if difference > 0.0:
        return Seat("large-end", gap, rock, 0.0)
    return Seat("small-end", gap, rock, -engagement)


def rock_tir(found: Seat, distance: float) -> float:
    """Most TIR at a distance from the nose by rocking in the seat: 2 × tilt × lever."""
    lever = abs(distance - found.pivot)
    # The difference of two tapers is noisy in more digits than either.
    return tidy(2.0 * elementary.tan(found.rock_rad) * lever, lever)


def standoff_from_diameter(diameter_difference: float, shank: Slope, socket: Slope) -> float:
    """How far a shank stands out for the diameter by which it is larger at the gauge plane.

    In the unit of the difference. It seats where it bears, whose slope says how far.
    """
    pair = Pair(socket.half_angle_rad, shank.half_angle_rad, 1.0)
    return diameter_difference * pair.standoff_per_diameter


def standoff_from_angle(engagement: float, shank: Slope, socket: Slope) -> float:
    """How far a shank stands out for its angle, its diameter right at the socket's mouth.

    In the unit of the engagement.
    """
    return Pair(socket.half_angle_rad, shank.half_angle_rad, engagement).standoff_of_angles()
