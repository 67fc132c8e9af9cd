"""What errors of the set-up do to the cone. Angles in radians, lengths in one unit. Derived here.

The plane of setting holds, in a perfect set-up, the wheel's axis, the work's axis and the line of
contact g. n is square to g in that plane, from the wheel into the work; x is square to the plane.
The wheel's generator makes β with the wheel's axis: 0 for the periphery, the half angle for a
dressed flank, 90° for the side. A point of the wheel at slant t and turn φ is, from where the small
end is ground at wheel radius ρ,

    P = O + t cos β w + (ρ − t sin β) e(φ),    e = cos φ ρ̂ + sin φ x,

w the wheel's axis, ρ̂ the way from it to the contact, O the axis' point. The radius ground at a
station of the work is the least distance of all such P at that station from the work's axis. For a
given φ, P moves in a straight line with t, so that the station gives t at once, and the least
distance is sought over φ alone.

A traversed wheel sweeps a plane instead: the cone is true, and its half angle is the angle between
work axis and plane.
"""

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from halfangle_service.errors import Impossible
from halfangle_service.trade.sine.geometry import angle_at_yaw
from halfangle_service.trade.wording import of_any_unit

Array = NDArray[np.float64]

#: Turns of the wheel looked at first, and how often the search closes in on the least distance.
_FIRST_TURNS = np.linspace(-1.2, 1.2, 481)
_CLOSER = np.linspace(-2.0, 2.0, 81)
_ROUNDS = 4


@dataclass(frozen=True, slots=True)
class Setup:
    """A cone and the wheel that grinds it.

    `half_angle` and `wheel_angle` (β) in radians, `small_radius` of the work, `length` along its
    axis, `wheel_radius` where the small end is ground.
    """

    half_angle: float
    wheel_angle: float
    small_radius: float
    length: float
    wheel_radius: float

    def require_wheel(self, axis_offset: float) -> None:
        """Refuse a wheel that ends before the cone does, or that the axis misses."""
        slant = self.length / math.cos(self.half_angle)
        used = slant * math.sin(self.wheel_angle)
        if used >= self.wheel_radius:
            raise Impossible(
                f"The surface takes {of_any_unit(used)} of the wheel's radius, which is "
                f"{of_any_unit(self.wheel_radius)} where its small end is ground.",
                fields={"wheel_diameter": f"should be more than {of_any_unit(2.0 * used)}"},
            )
        if abs(axis_offset) >= self.wheel_radius - used:
            raise Impossible(
                f"An axis {of_any_unit(abs(axis_offset))} out of the wheel's plane misses the "
                "wheel, "
                f"whose radius there is {of_any_unit(self.wheel_radius - used)}.",
                fields={
                    "axis_offset": f"should be between ±{of_any_unit(self.wheel_radius - used)}"
                },
            )


@dataclass(frozen=True, slots=True)
class Errors:
    """Set-up errors: offset of the axis at the small end, pitch in the plane, yaw out of it."""

    axis_offset: float = 0.0
    pitch_rad: float = 0.0
    yaw_rad: float = 0.0


@dataclass(frozen=True, slots=True)
class Ground:
    """The surface as ground: half angle of the fitted line, straightness, radius at the start.

    `straightness` is the surface's peak to valley about that line, square to it.
    """

    half_angle: float
    straightness: float
    small_radius: float
    stations: Array
    radii: Array


def ground_by_traverse(setup: Setup, errors: Errors, stations: Array) -> Ground:
    """The true cone under a wheel that sweeps a plane: sin α′ = sin(α + pitch) cos(yaw)."""
    set_angle = setup.half_angle + errors.pitch_rad
    half_angle = angle_at_yaw(set_angle, errors.yaw_rad)
    height = setup.small_radius * math.cos(set_angle)
    radii = (height + stations * math.sin(half_angle)) / math.cos(half_angle)
    return Ground(half_angle, 0.0, float(radii[0]), stations, radii)


def ground_by_plunge(setup: Setup, errors: Errors, stations: Array) -> Ground:
    """The surface under a wheel that stands still, with the line that fits it best."""
    radii = ground_radii(setup, errors, stations)
    slope, start = np.polyfit(stations, radii, 1)
    residual = (radii - (start + slope * stations)) * math.cos(math.atan(slope))
    straightness = float(np.max(residual) - np.min(residual))
    return Ground(math.atan(float(slope)), straightness, float(radii[0]), stations, radii)


def ground_radii(setup: Setup, errors: Errors, stations: Array) -> Array:
    """Radii of the work at stations along its axis, by least distance over the wheel's turn."""
    turns = np.broadcast_to(_FIRST_TURNS, (len(stations), len(_FIRST_TURNS)))
    step = float(_FIRST_TURNS[1] - _FIRST_TURNS[0])
    for _ in range(_ROUNDS):
        squares = _squared_distances(setup, errors, stations, turns)
        nearest = np.argmin(squares, axis=1)[:, np.newaxis]
        turns = np.take_along_axis(turns, nearest, axis=1) + step * _CLOSER
        step *= float(_CLOSER[1] - _CLOSER[0])
    least: Array = np.min(_squared_distances(setup, errors, stations, turns), axis=1)
    return np.sqrt(least)


def _squared_distances(setup: Setup, errors: Errors, stations: Array, turns: Array) -> Array:
    """Squared distances from the work's axis of wheel points: a row a station, a column a turn."""
    start, along = _work_axis(setup, errors)
    axis, outward = _wheel_axis(setup.wheel_angle)
    arm = _arms(outward, turns)
    first = setup.wheel_radius * (arm - outward) - start
    onward = math.cos(setup.wheel_angle) * axis - math.sin(setup.wheel_angle) * arm
    progress = onward @ along
    slant = (stations[:, np.newaxis] - first @ along) / np.where(progress > 0.0, progress, np.nan)
    points = first + slant[..., np.newaxis] * onward
    squares = np.sum(points * points, axis=-1) - stations[:, np.newaxis] ** 2
    return np.where(np.isnan(squares), np.inf, np.maximum(squares, 0.0))


def _arms(outward: Array, turns: Array) -> Array:
    """Directions from the wheel's axis at each turn; φ = 0 is `outward`, the plane's normal x."""
    square = np.array([0.0, 0.0, 1.0])
    arms: Array = np.multiply.outer(np.cos(turns), outward)
    arms += np.multiply.outer(np.sin(turns), square)
    return arms


def _wheel_axis(wheel_angle: float) -> tuple[Array, Array]:
    """Direction of the wheel's axis, and from it to the contact, in (g, n, x)."""
    cos, sin = math.cos(wheel_angle), math.sin(wheel_angle)
    return np.array([cos, sin, 0.0]), np.array([-sin, cos, 0.0])


def _work_axis(setup: Setup, errors: Errors) -> tuple[Array, Array]:
    """Point of the work's axis at the small end, and its direction to the large one."""
    angle = setup.half_angle + errors.pitch_rad
    cos, sin = math.cos(angle), math.sin(angle)
    start = np.array([-sin, cos, 0.0]) * setup.small_radius
    start[2] = errors.axis_offset
    yaw = errors.yaw_rad
    return start, np.array([cos * math.cos(yaw), sin * math.cos(yaw), math.sin(yaw)])
