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
distance is sought over φ alone: near the least of some turns, then by Newton's method on the
derivative, whose error counts by its square only.

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

#: Turns of the wheel looked at first, at so many stations, and Newton's steps from the best of them
#: on, at most so long.
_FIRST_TURNS = np.linspace(-1.2, 1.2, 61)
_FIRST_STATIONS = 11
_LONGEST_STEP = float(_FIRST_TURNS[1] - _FIRST_TURNS[0])
_STEPS = 8
#: A turn nearer than this to the one of the least distance does not change the distance.
_NEAR_ENOUGH = 1e-9
#: The direction x, square to the plane of setting, in (g, n, x).
_SQUARE = np.array([0.0, 0.0, 1.0])


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
    along = stations - np.mean(stations)
    half_angle = math.atan(float(np.sum(along * radii) / np.sum(along * along)))
    residual = radii * math.cos(half_angle) - along * math.sin(half_angle)
    straightness = float(np.max(residual) - np.min(residual))
    return Ground(half_angle, straightness, float(radii[0]), stations, radii)


def ground_radii(setup: Setup, errors: Errors, stations: Array) -> Array:
    """Radii of the work at stations along its axis, by least distance over the wheel's turn."""
    wheel = _Wheel(setup, errors)
    some = stations[
        np.linspace(0, len(stations) - 1, min(_FIRST_STATIONS, len(stations)), dtype=int)
    ]
    away, _, _ = wheel.away(some, np.repeat(_FIRST_TURNS[:, np.newaxis], len(some), axis=1))
    squares = np.sum(away * away, axis=0)
    nearest = _FIRST_TURNS[np.argmin(np.where(np.isnan(squares), np.inf, squares), axis=0)]
    turns = np.interp(stations, some, nearest)
    for _ in range(_STEPS):
        away, first_derivative, second_derivative = wheel.away(stations, turns)
        slope = np.sum(away * first_derivative, axis=0)
        bend = np.sum(first_derivative**2 + away * second_derivative, axis=0)
        with np.errstate(divide="ignore", invalid="ignore"):
            downhill = np.where(bend > 0.0, -slope / bend, -np.sign(slope) * _LONGEST_STEP)
        step = np.clip(downhill, -_LONGEST_STEP, _LONGEST_STEP)
        turns = turns + step
        if np.max(np.abs(step)) < _NEAR_ENOUGH:
            break
    away, _, _ = wheel.away(stations, turns)
    return np.asarray(np.hypot(*away))


class _Wheel:
    """The wheel as the work's axis sees it: two directions square to that axis, and along it."""

    def __init__(self, setup: Setup, errors: Errors) -> None:
        start, along = _work_axis(setup, errors)
        axis, outward = _wheel_axis(setup.wheel_angle)
        aside = np.cross(along, _SQUARE)
        aside /= np.linalg.norm(aside)
        seen = np.array([aside, np.cross(along, aside), along])
        self._radius = setup.wheel_radius
        self._cos, self._sin = math.cos(setup.wheel_angle), math.sin(setup.wheel_angle)
        self._start, self._axis, self._outward, self._square = (
            np.sum(seen * vector, axis=1) for vector in (start, axis, outward, _SQUARE)
        )

    def away(self, stations: Array, turns: Array) -> tuple[Array, Array, Array]:
        """Where the wheel's points at stations are, square to the axis, with two derivatives.

        By the turn of the wheel, in radians; NaN where it has no point there. A row a direction.
        """
        cos, sin, fallen = np.cos(turns), np.sin(turns), 2.0 * np.sin(turns / 2.0) ** 2
        along = np.multiply.outer
        arm = along(self._outward, cos) + along(self._square, sin)
        turned = along(self._square, cos) - along(self._outward, sin)
        moved = along(self._square, sin) - along(self._outward, fallen)
        start, axis = (
            along(self._start, np.ones_like(turns)),
            along(self._axis, np.ones_like(turns)),
        )
        # A point at slant t is at a + t b; the third row, along the work's axis, gives t.
        a, da, dda = self._radius * moved - start, self._radius * turned, -self._radius * arm
        b, db, ddb = self._cos * axis - self._sin * arm, -self._sin * turned, self._sin * arm
        progress = np.where(b[2] > 0.0, b[2], np.nan)
        t = (stations - a[2]) / progress
        dt = -(da[2] + t * db[2]) / progress
        ddt = -(dda[2] + 2.0 * dt * db[2] + t * ddb[2]) / progress
        away = a[:2] + t * b[:2]
        first = da[:2] + dt * b[:2] + t * db[:2]
        second = dda[:2] + ddt * b[:2] + 2.0 * dt * db[:2] + t * ddb[:2]
        return away, first, second


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
