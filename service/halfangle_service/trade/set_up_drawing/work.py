"""The work on a plate as it is drawn, in the plate's frame; lengths in any one unit, radians."""

import math
from dataclasses import dataclass

from halfangle_service.trade.drawing.marks import Point


@dataclass(frozen=True, slots=True)
class ConeOnPlate:
    """A cone that turns about its axis: along the plate, or (`quarter`) its axis square to it.

    `mark`: how it lies by its marked hand, in words; it stands under the cone's name.
    """

    half_angle_rad: float
    large_diameter: float
    small_diameter: float
    quarter: bool = False
    mark: str | None = None
    name: str = "work"

    @property
    def length(self) -> float:
        """Length along the axis."""
        radii = (self.large_diameter - self.small_diameter) / 2.0
        return radii / math.tan(self.half_angle_rad)


@dataclass(frozen=True, slots=True)
class FaceOnPlate:
    """A plane face, level under the wheel; `quarter`: the work's base stands square to the plate.

    `length`: of the work along the plate, None where it was not stated.
    """

    length: float | None = None
    quarter: bool = False
    mark: str | None = None
    name: str = "work"


Work = ConeOnPlate | FaceOnPlate


@dataclass(frozen=True, slots=True)
class Piece:
    """The work drawn: its outline, the ground line on it, its axis, and what holds it."""

    outline: list[Point]
    ground: tuple[Point, Point]
    axis: tuple[Point, Point] | None
    holding: list[Point]


def placed(work: Work, turn: float, distance: float) -> Piece:
    """The work's outlines in the plate's frame: along from the low roll, over the plate's top."""
    if isinstance(work, ConeOnPlate):
        return _upright(work, distance) if work.quarter else _along(work, distance)
    return _face(work, turn, distance)


def _along(cone: ConeOnPlate, distance: float) -> Piece:
    """A cone whose axis lies along the plate, its small end up the slope; held behind."""
    large, small, length = cone.large_diameter / 2.0, cone.small_diameter / 2.0, cone.length
    axis = max(0.3 * distance, 1.5 * large)
    end = min(0.92 * distance, 0.6 * distance + length)
    start, shank = end - length, min(large, 0.12 * distance)
    behind = start - 0.12 * distance
    back = min(behind - 0.4 * distance, 0.05 * distance)
    outline = [
        (behind, axis - shank),
        (start, axis - shank),
        (start, axis - large),
        (end, axis - small),
        (end, axis + small),
        (start, axis + large),
        (start, axis + shank),
        (behind, axis + shank),
    ]
    holding = [(back, 0.0), (behind, 0.0), (behind, 1.6 * axis), (back, 1.6 * axis)]
    line = ((back - 0.05 * distance, axis), (end + 0.08 * distance, axis))
    return Piece(outline, ((start, axis + large), (end, axis + small)), line, holding)


def _upright(cone: ConeOnPlate, distance: float) -> Piece:
    """A cone whose axis stands square to the plate, its small end up."""
    large, small, length = cone.large_diameter / 2.0, cone.small_diameter / 2.0, cone.length
    middle, foot = 0.5 * distance, 0.3 * distance
    shank = min(large, 0.12 * distance)
    top = foot + 0.12 * distance
    outline = [
        (middle - shank, foot),
        (middle + shank, foot),
        (middle + shank, top),
        (middle + large, top),
        (middle + small, top + length),
        (middle - small, top + length),
        (middle - large, top),
        (middle - shank, top),
    ]
    half = max(0.22 * distance, 1.2 * shank)
    holding = [
        (middle - half, 0.0),
        (middle + half, 0.0),
        (middle + half, foot),
        (middle - half, foot),
    ]
    ground = ((middle + large, top), (middle + small, top + length))
    return Piece(
        outline,
        ground,
        ((middle, -0.02 * distance), (middle, top + length + 0.1 * distance)),
        holding,
    )


def _face(work: FaceOnPlate, turn: float, distance: float) -> Piece:
    """A block whose upper face is level: it falls along the plate as the plate rises."""
    most = 0.7 * distance
    length = min(work.length or 0.5 * distance, most, most / max(math.tan(turn), 1e-9))
    low = 0.12 * distance
    start = 0.5 * distance - length / 2.0
    end, high = start + length, low + length * math.tan(turn)
    outline = [(start, 0.0), (end, 0.0), (end, low), (start, high)]
    plate = 0.1 * distance
    holding = [(end, 0.0), (end + plate, 0.0), (end + plate, 0.3 * distance), (end, 0.3 * distance)]
    return Piece(outline, ((start, high), (end, low)), None, holding if work.quarter else [])
