"""The dressed profile of a wheel: a chain of straight segments with radii blended at its corners.

x runs along the wheel's axis from one side of the wheel to the other; y is 0 at the periphery
before dressing and negative below it; lengths in any one unit. Derived here: a circle of radius r
that touches both segments of a corner touches them at r / tan(half the angle between them) from the
corner.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from halfangle_service.errors import Impossible
from halfangle_service.trade.wheel.flank import Flank
from halfangle_service.trade.wording import of_any_unit, plain

#: Arcs are drawn, and listed as coordinates, in steps of no more than this.
ARC_STEP_RAD = math.radians(3.0)
_GAUSS_NODES, _GAUSS_WEIGHTS = np.polynomial.legendre.leggauss(24)

Point = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Corner:
    """A corner of the chain: its place, its name, and the radius to blend it with (0: sharp)."""

    at: Point
    name: str
    radius: float = 0.0


@dataclass(frozen=True, slots=True)
class Blend:
    """A blended corner: tangent points before and after it, center and radius of the arc."""

    name: str
    before: Point
    after: Point
    center: Point
    radius: float

    @property
    def start_rad(self) -> float:
        """Direction from the center to the first tangent point."""
        return math.atan2(self.before[1] - self.center[1], self.before[0] - self.center[0])

    @property
    def sweep_rad(self) -> float:
        """Angle from the first tangent point to the second, signed, less than half a turn."""
        end = math.atan2(self.after[1] - self.center[1], self.after[0] - self.center[0])
        return (end - self.start_rad + math.pi) % (2.0 * math.pi) - math.pi

    def point(self, share: float) -> Point:
        """Point at a share (0 to 1) of the arc."""
        angle = self.start_rad + share * self.sweep_rad
        return (
            self.center[0] + self.radius * math.cos(angle),
            self.center[1] + self.radius * math.sin(angle),
        )


@dataclass(frozen=True, slots=True)
class Profile:
    """The profile: corners as given, and for each inner corner its blend, or None where sharp."""

    corners: tuple[Corner, ...]
    blends: tuple[Blend | None, ...]

    def straights(self) -> Iterator[tuple[Point, Point]]:
        """Ends of the straight parts that are left between the blends, in order."""
        starts = [self.corners[0].at, *self._after()]
        ends = [*self._before(), self.corners[-1].at]
        yield from zip(starts, ends, strict=True)

    def segments(self) -> Iterator[tuple[tuple[Corner, Corner], tuple[Point, Point]]]:
        """Each pair of neighbouring corners, with the ends of what stays straight between them."""
        return zip(pairwise(self.corners), self.straights(), strict=True)

    def flanks(self) -> list[tuple[Point, Point]]:
        """Ends of the straight part of each flank, in order; one point where radii take it all."""
        return [straight for (a, b), straight in self.segments() if a.at[1] != b.at[1]]

    def points(self) -> list[Point]:
        """Coordinates along the profile; arcs in steps of at most 3 degrees."""
        found = [self.corners[0].at]
        for corner, blend in zip(self.corners[1:-1], self.blends, strict=True):
            found.extend([corner.at] if blend is None else _arc_points(blend))
        return [*found, self.corners[-1].at]

    def volume_removed(self, wheel_radius: float) -> float:
        """Volume between the profile and the periphery of a wheel of this radius, π ∫ (R² − r²) dx.

        Exact: Simpson's rule on straight parts, where r² is a square of x; Gauss-Legendre on arcs.
        """
        straight = sum(_straight_volume(a, b, wheel_radius) for a, b in self.straights())
        return straight + sum(_arc_volume(b, wheel_radius) for b in self.blends if b is not None)

    def _before(self) -> list[Point]:
        pairs = zip(self.corners[1:-1], self.blends, strict=True)
        return [corner.at if blend is None else blend.before for corner, blend in pairs]

    def _after(self) -> list[Point]:
        pairs = zip(self.corners[1:-1], self.blends, strict=True)
        return [corner.at if blend is None else blend.after for corner, blend in pairs]


def blend_corners(corners: Sequence[Corner]) -> Profile:
    """Blend the inner corners of a chain with their radii.

    Raises Impossible where a radius reaches past the segment that it should blend into.
    """
    blends = tuple(
        _blend(corners[i - 1].at, corners[i], corners[i + 1].at) for i in range(1, len(corners) - 1)
    )
    profile = Profile(tuple(corners), blends)
    _require_room(profile)
    return profile


def _blend(before: Point, sharp: Corner, after: Point) -> Blend | None:
    """Arc that touches both segments of a corner; None for a sharp corner."""
    corner, radius = sharp.at, sharp.radius
    if radius == 0.0:
        return None
    back, onward = _unit(corner, before), _unit(corner, after)
    half = math.acos(max(-1.0, min(1.0, back[0] * onward[0] + back[1] * onward[1]))) / 2.0
    reach, to_center = radius / math.tan(half), radius / math.sin(half)
    bisector = _unit((0.0, 0.0), (back[0] + onward[0], back[1] + onward[1]))
    return Blend(
        name=sharp.name,
        before=(corner[0] + reach * back[0], corner[1] + reach * back[1]),
        after=(corner[0] + reach * onward[0], corner[1] + reach * onward[1]),
        center=(corner[0] + to_center * bisector[0], corner[1] + to_center * bisector[1]),
        radius=radius,
    )


def _unit(start: Point, end: Point) -> Point:
    length = math.dist(start, end)
    return ((end[0] - start[0]) / length, (end[1] - start[1]) / length)


def _require_room(profile: Profile) -> None:
    """Refuse radii that leave a segment no length: tangent points in the wrong order."""
    taken = [_taken(*ends, *left) for ends, left in profile.segments()]
    # What radii take of their straights grows in proportion to them.
    fitting = min((length / need for need, length in taken if need > length), default=1.0)
    for (need, length), ((first, last), _) in zip(taken, profile.segments(), strict=True):
        if need > length * (1.0 + 1e-12):
            rounded = [corner for corner in (first, last) if corner.radius > 0.0]
            raise Impossible(
                f"The radius at the {' and '.join(c.name for c in rounded)} reaches "
                f"{of_any_unit(need)} "
                f"along the straight between {first.name} and {last.name}, which is only "
                f"{of_any_unit(length)} long.",
                fields={
                    _FIELD[c.name]: f"should be at most {_rounded_down(c.radius * fitting)}"
                    for c in rounded
                },
            )


def _taken(first: Corner, last: Corner, start: Point, end: Point) -> tuple[float, float]:
    """What the radii take of the segment between two corners, and its length."""
    along, length = _unit(first.at, last.at), math.dist(first.at, last.at)
    left = along[0] * (end[0] - start[0]) + along[1] * (end[1] - start[1])
    return length - left, length


def _rounded_down(radius: float) -> str:
    """Write a largest radius to four digits, the last of them never rounded up."""
    step = 10.0 ** (math.floor(math.log10(radius)) - 3)
    return plain(math.floor(radius / step) * step, 4)


_FIELD = {"edge": "edge_radius", "other edge": "edge_radius", "apex": "edge_radius"} | {
    "root": "root_radius",
    "other root": "root_radius",
}


def _arc_points(blend: Blend) -> list[Point]:
    steps = max(1, math.ceil(abs(blend.sweep_rad) / ARC_STEP_RAD - 1e-9))
    inner = [blend.point(step / steps) for step in range(1, steps)]
    return [blend.before, *inner, blend.after]


def _straight_volume(start: Point, end: Point, wheel_radius: float) -> float:
    radii = (wheel_radius + start[1], wheel_radius + end[1])
    middle = sum(radii) / 2.0
    mean_square = (radii[0] ** 2 + 4.0 * middle**2 + radii[1] ** 2) / 6.0
    return math.pi * (wheel_radius**2 - mean_square) * (end[0] - start[0])


def _arc_volume(blend: Blend, wheel_radius: float) -> float:
    angles = blend.start_rad + blend.sweep_rad * (_GAUSS_NODES + 1.0) / 2.0
    radii = wheel_radius + blend.center[1] + blend.radius * np.sin(angles)
    integrand = (wheel_radius**2 - radii**2) * -blend.radius * np.sin(angles)
    return float(math.pi * blend.sweep_rad / 2.0 * np.sum(_GAUSS_WEIGHTS * integrand))


def dressed_corners(
    flanks: Sequence[Flank],
    lands: Sequence[float],
    flat: float,
    edge_radius: float,
    root_radius: float,
) -> list[Corner]:
    """Corners of a wheel dressed on one side (one flank, one land) or on both.

    From the wheel's side: a land below the flank (may be 0 wide), the flank, the flat that is left
    of the periphery, and for two flanks the mirror of it. A flat of 0 between two flanks makes an
    apex.
    """
    corners = _side(flanks[0], lands[0], root_radius, "")
    edge = lands[0] + flanks[0].width
    width = edge + flat
    if len(flanks) == 1:
        edges = [Corner((edge, 0.0), "edge", edge_radius)] if flat > 0.0 else []
        return [*corners, *edges, Corner((width, 0.0), "side")]
    if flat > 0.0:
        corners.append(Corner((edge, 0.0), "edge", edge_radius))
        corners.append(Corner((width, 0.0), "other edge", edge_radius))
    else:
        corners.append(Corner((edge, 0.0), "apex", edge_radius))
    far = width + flanks[1].width + lands[1]
    mirrored = _side(flanks[1], lands[1], root_radius, "other ")
    return [*corners, *(Corner((far - c.at[0], c.at[1]), c.name, c.radius) for c in mirrored[::-1])]


def _side(flank: Flank, land: float, root_radius: float, prefix: str) -> list[Corner]:
    if land == 0.0:
        return [Corner((0.0, -flank.depth), f"{prefix}side")]
    side = Corner((0.0, -flank.depth), f"{prefix}side")
    return [side, Corner((land, -flank.depth), f"{prefix}root", root_radius)]
