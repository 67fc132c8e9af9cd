"""Work whose one center stands off the line: what that takes off along it. Lengths in one unit.

Derived here: at a station z of L the work's axis is off by z/L of the offsets, t towards the wheel
and u square to that. A round wheel of radius R set to grind the radius r at the true center leaves
√((R + r − t')² + u'²) − R; a point, a tool or an indicator's tip, is a wheel of radius 0; a plane,
swept by a wheel along a flat table, leaves r − t'. The axis' lean itself, of the second order of
the offset over L, is left out.
"""

from typing import Literal

from halfangle_service.trade import elementary

Ground = Literal["round-wheel", "point", "plane"]


def radius_change(
    radius: float, wheel_radius: float | None, towards: float, across: float
) -> float:
    """Radius that is ground where the axis is off by so much, less that at the true center.

    In one unit, without the noise of a difference; a wheel radius of None is a plane.
    """
    if wheel_radius is None:
        return -towards
    whole = wheel_radius + radius
    squares = -towards * (2.0 * whole - towards) + across**2
    return squares / (whole + elementary.hypot(whole - towards, across))
