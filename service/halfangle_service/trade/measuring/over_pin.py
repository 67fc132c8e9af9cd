"""Heights on a tilted plate, from a pin that lies on it. Angles in radians, lengths in one unit.

The plate's face and a stop square to it make a corner. A point lies a along the face from the stop
and b square to the face; a stop at the low end sends it up the slope, so that it stands
±a sin θ + b cos θ over the corner. The top of a pin of radius r on the face, which it touches p
from the stop, stands ±p sin θ + r cos θ + r over it: derived here.
"""

from halfangle_service.trade import elementary


def point_height(angle_rad: float, along: float, over_face: float, up: float) -> float:
    """Height of a point over the corner; `up` is 1 for a stop at the low end, −1 at the high."""
    return up * along * elementary.sin(angle_rad) + over_face * elementary.cos(angle_rad)


def pin_top_height(angle_rad: float, along: float, pin_diameter: float, up: float) -> float:
    """Height of the top of a pin on the face over the corner."""
    radius = pin_diameter / 2.0
    return point_height(angle_rad, along, radius, up) + radius
