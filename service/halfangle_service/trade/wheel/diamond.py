"""A diamond at the wheel: its drag, its height, what a feed takes off. Radians, one unit of length.

The diamond touches the wheel of radius R at a distance e from the plane through the wheel's axis in
which it is fed, on the side to which the wheel's surface moves where e is positive. The surface is
square to the radius there, which leans by asin(e/R); the nib leans to that radius by as much and
by its own lean. Positive is a drag: the surface pulls the point away from the nib's foot. Fed by f
the wheel's radius there becomes √(e² + (q − f)²), q² = R² − e². Derived here.
"""

from halfangle_service.trade import elementary


def drag_angle(wheel_radius: float, diamond_height: float, nib_lean_rad: float) -> float:
    """Lean of the nib to the wheel's radius, positive where the wheel drags its point."""
    return nib_lean_rad + elementary.asin(diamond_height / wheel_radius)


def below_crest(wheel_radius: float, diamond_height: float) -> float:
    """How far the place of contact lies behind the wheel's foremost line: R − √(R² − e²)."""
    in_plane = elementary.sqrt((wheel_radius - diamond_height) * (wheel_radius + diamond_height))
    return diamond_height * diamond_height / (wheel_radius + in_plane)


def depth_of_feed(wheel_radius: float, diamond_height: float, feed: float) -> float:
    """Radial depth that a feed toward the wheel's axis dresses away."""
    in_plane = elementary.sqrt((wheel_radius - diamond_height) * (wheel_radius + diamond_height))
    after = elementary.hypot(in_plane - feed, diamond_height)
    return feed * (2.0 * in_plane - feed) / (wheel_radius + after)


def slope_ratio(wheel_radius: float, diamond_height: float) -> float:
    """What the tangent of a dressed angle is multiplied by: √(1 − (e/R)²)."""
    share = diamond_height / wheel_radius
    return elementary.sqrt((1.0 - share) * (1.0 + share))
