"""What errors of a compound set-up do to the angles of a face as its views show them. Radians.

As in `compound`: R = R_base · R_upper, and the part's normal that is level is n = Qᵀ Rᵀ z with the
work laid by the rotation Q. Derived here: for a hinge that turns about the unit vector a,
dRᵀ/dA z = −Rᵀ_upper (a × Rᵀ_base z), and so on for each rotation between the table and the part. A
yaw of the upper plate on the base plate, or of the work on the upper plate, acts in the first order
here: it turns the steepest direction out of the views.
"""

import math
from dataclasses import dataclass

import numpy as np

from halfangle_service.trade.sine.compound import (
    UP,
    BaseAxis,
    Matrix,
    Vector,
    other_axis,
    plate_rotation,
    slopes_of_normal,
)

#: Direction about which a hinge along each axis turns where it raises the back or the right.
_ABOUT: dict[BaseAxis, Vector] = {
    "x": np.array([1.0, 0.0, 0.0]),
    "y": np.array([0.0, -1.0, 0.0]),
}
#: Direction of the wheel's axis: a face of it that slopes tilts the ground plane along it.
_WHEEL_AXIS: Vector = np.array([0.0, 1.0, 0.0])


@dataclass(frozen=True, slots=True)
class ViewSlopes:
    """Change of one view's angle for one radian of each error."""

    base: float
    upper: float
    base_yaw: float
    upper_yaw: float
    wheel: float


@dataclass(frozen=True, slots=True)
class CompoundSet:
    """Both hinge angles, the base hinge's axis, and the rotation by which the work is laid."""

    base_rad: float
    upper_rad: float
    base_axis: BaseAxis
    laid: Matrix

    def views(self, base_off: float = 0.0, upper_off: float = 0.0) -> tuple[float, float]:
        """Angles of the level surface in the part's front and side view, the hinges off by so much.

        The hinges are off in their own sense: toward a steeper angle.
        """
        base = self.base_rad + math.copysign(1.0, self.base_rad) * base_off
        upper = self.upper_rad + math.copysign(1.0, self.upper_rad) * upper_off
        return slopes_of_normal(self.laid.T @ plate_rotation(base, upper, self.base_axis).T @ UP)

    def slopes(self) -> tuple[ViewSlopes, ViewSlopes]:
        """What each error does to the angle in the front view, and to that in the side view."""
        about_base, about_upper = _ABOUT[self.base_axis], _ABOUT[other_axis(self.base_axis)]
        on_base = plate_rotation(self.base_rad, 0.0, self.base_axis).T @ UP
        by_upper = plate_rotation(0.0, self.upper_rad, self.base_axis).T
        normal = by_upper @ on_base
        changes = (
            math.copysign(1.0, self.base_rad) * (by_upper @ np.cross(on_base, about_base)),
            math.copysign(1.0, self.upper_rad) * np.cross(normal, about_upper),
            by_upper @ np.cross(on_base, UP),
            np.cross(normal, UP),
            plate_rotation(self.base_rad, self.upper_rad, self.base_axis).T @ _WHEEL_AXIS,
        )
        drawn = self.laid.T @ normal
        both = [_of_views(drawn, self.laid.T @ change) for change in changes]
        return ViewSlopes(*(x for x, _ in both)), ViewSlopes(*(y for _, y in both))


def _of_views(normal: Vector, change: Vector) -> tuple[float, float]:
    """Change of both views' angles for a change of the normal."""
    x, y, z = (float(part) for part in normal)
    dx, dy, dz = (float(part) for part in change)
    return (x * dz - z * dx) / (x * x + z * z), (y * dz - z * dy) / (y * y + z * z)
