"""Compound (two-axis) sine plates. Angles in radians, vectors (x, y, z) as numpy arrays.

Frame: X to the operator's right, Y away to the back, Z up. The base plate's hinge lies along one
axis of the machine; the upper plate, hinged square to it, rides on the base plate. A hinge angle is
positive where it raises the right end (hinge along Y) or the back end (hinge along X). Slopes are
positive where the surface rises to the right (`x`) or to the back (`y`).

Derived here, for the base hinge along X at A and the upper one along Y at B; R = Rx(A)·Ry(−B):
- part's frame: the surface with outward normal n shall come level, R n = z, so
  n = Rᵀ z = (cos A sin B, sin A, cos A cos B): tan B = n_x/n_z, sin A = n_y.
- machine's frame: the upper plate's face shall stand with the normal m = R z
  = (−sin B, −sin A cos B, cos A cos B): sin B = −m_x, tan A = −m_y/m_z.
With the base hinge along Y, X and Y change places.
"""

import math
from dataclasses import dataclass
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from halfangle_service.errors import Impossible
from halfangle_service.trade import elementary
from halfangle_service.trade.sine.geometry import angle_for_height, height_for_angle
from halfangle_service.trade.wording import plain

Vector = NDArray[np.float64]
Matrix = NDArray[np.float64]
Frame = Literal["part", "machine"]
BaseAxis = Literal["x", "y"]
Side = Literal["right", "left", "back", "front", "neither"]

#: Sides that a hinge along each axis raises, at positive and at negative angles.
SIDES_OF_HINGE: dict[BaseAxis, tuple[Side, Side]] = {"x": ("back", "front"), "y": ("right", "left")}
UP: Vector = np.array([0.0, 0.0, 1.0])
#: Component upward of a unit normal below which a surface stands upright: 0.2″ from it.
_LEAST_UPWARD = 1e-6


@dataclass(frozen=True, slots=True)
class HingedPlate:
    """One of the two plates: the axis along which its hinge lies, and its lengths in one unit.

    `step` is the stack under its roll at which it stands at zero.
    """

    hinge_axis: BaseAxis
    center_distance: float
    step: float

    def height(self, angle_rad: float) -> float:
        """Stack under the raised roll for a hinge angle, whatever its sign."""
        return height_for_angle(self.center_distance, abs(angle_rad), self.step)

    def angle(self, height: float, like: float, field: str) -> float:
        """Hinge angle that a stack gives on the side that the sign of `like` names.

        Raises Impossible, naming `field`, where the stack is too high for the plate.
        """
        return elementary.copysign(1.0, like) * angle_for_height(
            self.center_distance, height, self.step, field
        )


def normal_from_slopes(x_rad: float, y_rad: float) -> Vector:
    """Unit normal of a surface that rises by `x_rad` to the right and by `y_rad` to the back.

    Both are projected angles, each as its own view (from the front, from the side) shows it.
    Raises Impossible where the surface stands upright.
    """
    normal = _unit(np.array([-elementary.tan(x_rad), -elementary.tan(y_rad), 1.0]))
    steeper = "x_angle" if abs(x_rad) >= abs(y_rad) else "y_angle"
    _require_upward(normal, "This surface", {f"orientation/{steeper}": "should be less steep"})
    return normal


def normal_from_tilt(tilt_rad: float, direction_rad: float) -> Vector:
    """Unit normal of a surface with its true (steepest) tilt; it rises toward `direction_rad`,
    counted in plan from +X (right) toward +Y (back).

    Raises Impossible where the surface stands upright.
    """  # noqa: D205
    horizontal = -elementary.sin(tilt_rad)
    normal = np.array(
        [
            horizontal * elementary.cos(direction_rad),
            horizontal * elementary.sin(direction_rad),
            elementary.cos(tilt_rad),
        ]
    )
    _require_upward(normal, "This surface", {"orientation/tilt": "should be less steep"})
    return normal


def normal_from_vector(x: float, y: float, z: float) -> Vector:
    """Unit vector along an outward normal of any length.

    Raises Impossible where it does not point up: such a surface cannot be worked from above.
    """
    normal = np.array([x, y, z]) / (elementary.hypot(x, y, z) or 1.0)
    _require_upward(
        normal,
        f"The normal ({plain(x)}, {plain(y)}, {plain(z)})",
        {
            "orientation/normal_z": "should be greater than 0, and not vanish beside normal_x and "
            "normal_y"
        },
    )
    return normal


def _require_upward(normal: Vector, what: str, fields: dict[str, str]) -> None:
    if normal[2] < _LEAST_UPWARD:
        raise Impossible(
            f"{what} does not point up out of the work: a surface that stands upright or looks "
            "down is beyond both hinges.",
            fields=fields,
        )


def slopes_of_normal(normal: Vector) -> tuple[float, float]:
    """Projected angles of the surface: rise to the right in the front view, to the back in the
    side view.
    """  # noqa: D205
    x, y, z = normal
    return elementary.atan2(-x, z), elementary.atan2(-y, z)


def tilt_of_normal(normal: Vector) -> tuple[float, float]:
    """True tilt, and the direction in which the surface rises, from +X toward +Y, 0 to 2π.

    A level surface rises nowhere; its direction is given as 0.
    """
    x, y, z = normal
    horizontal = elementary.hypot(x, y)
    if horizontal == 0.0:
        return 0.0, 0.0
    return elementary.atan2(horizontal, z), elementary.atan2(-y, -x) % math.tau


def hinge_angles(normal: Vector, frame: Frame, base_axis: BaseAxis) -> tuple[float, float]:
    """Signed angles of base and upper hinge for a surface's normal in the frame stated."""
    x, y, z = normal
    along, across = (y, x) if base_axis == "x" else (x, y)
    if frame == "part":
        return elementary.asin(_within(along)), elementary.atan2(across, z)
    return elementary.atan2(-along, z), elementary.asin(_within(-across))


def plate_rotation(base_rad: float, upper_rad: float, base_axis: BaseAxis) -> Matrix:
    """Rotation that carries the part's frame into the machine's: R = R_base · R_upper."""
    if base_axis == "x":
        return _raise_back(base_rad) @ _raise_right(upper_rad)
    return _raise_right(base_rad) @ _raise_back(upper_rad)


def normal_from_hinges(
    base_rad: float, upper_rad: float, frame: Frame, base_axis: BaseAxis
) -> Vector:
    """Normal that two hinge angles stand for; the way back of `hinge_angles`.

    In the part's frame: of the surface that is level now. In the machine's: of the upper plate.
    """
    rotation = plate_rotation(base_rad, upper_rad, base_axis)
    return np.asarray((rotation.T if frame == "part" else rotation) @ UP)


def edge_turns(rotation: Matrix) -> tuple[float, float]:
    """Angles in plan by which the part's X and Y edges turn, positive from +X toward +Y.

    With the base hinge along X the part's X edge turns by atan(sin A · tan B), the Y edge not.
    """
    x_edge, y_edge = rotation[:, 0], rotation[:, 1]
    # 0.0 is added so that an edge that does not turn reads 0, not −0.
    return elementary.atan2(x_edge[1], x_edge[0]) + 0.0, elementary.atan2(
        -y_edge[0], y_edge[1]
    ) + 0.0


def angle_between(first: Vector, second: Vector) -> float:
    """Angle between two unit vectors, accurate for small ones too."""
    cross = np.cross(first, second)
    return elementary.atan2(float(np.linalg.norm(cross)), float(np.dot(first, second)))


def raised_side(hinge: BaseAxis, angle_rad: float) -> Side:
    """Side of a plate whose roll is raised, by the sign of the angle of the hinge along `hinge`."""
    if abs(angle_rad) < 1e-12:
        return "neither"
    return SIDES_OF_HINGE[hinge][0 if angle_rad > 0 else 1]


def surface_error(
    normal: Vector, hinges: tuple[float, float], frame: Frame, base_axis: BaseAxis
) -> float:
    """Angle between a wanted surface and the one that base and upper hinge angle give."""
    rotation = plate_rotation(*hinges, base_axis)
    if frame == "part":
        return angle_between(rotation @ normal, UP)
    return angle_between(rotation @ UP, normal)


def wrong_frame_hinges(normal: Vector, frame: Frame, base_axis: BaseAxis) -> tuple[float, float]:
    """Hinge angles that the other frame gives, raised on the sides that this frame asks for."""
    base, upper = hinge_angles(normal, "machine" if frame == "part" else "part", base_axis)
    return -base, -upper


def uncorrected_hinges(normal: Vector, frame: Frame, base_axis: BaseAxis) -> tuple[float, float]:
    """Hinge angles where both views' angles are set as they stand."""
    x_rad, y_rad = slopes_of_normal(normal)
    along_base, along_upper = (y_rad, x_rad) if base_axis == "x" else (x_rad, y_rad)
    sign = -1.0 if frame == "part" else 1.0
    return sign * along_base, sign * along_upper


def other_axis(axis: BaseAxis) -> BaseAxis:
    """The axis of the upper hinge, square to the base hinge's."""
    return "y" if axis == "x" else "x"


def _raise_back(angle_rad: float) -> Matrix:
    """Rotation about X that raises the back (+Y) end."""
    c, s = elementary.cos(angle_rad), elementary.sin(angle_rad)
    return np.array([[1.0, 0.0, 0.0], [0.0, c, -s], [0.0, s, c]])


def _raise_right(angle_rad: float) -> Matrix:
    """Rotation about Y that raises the right (+X) end."""
    c, s = elementary.cos(angle_rad), elementary.sin(angle_rad)
    return np.array([[c, 0.0, -s], [0.0, 1.0, 0.0], [s, 0.0, c]])


def _unit(vector: Vector) -> Vector:
    return vector / np.linalg.norm(vector)


def _within(sine: float) -> float:
    """Clip the last bit of rounding off a sine."""
    return max(-1.0, min(1.0, float(sine)))
