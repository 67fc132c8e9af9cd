"""The set-up on a tilted plate: outlines of plate, fixture, work and stack, and the wheel's head.

Lengths in any one unit, angles in radians.

Two frames in the plane of the tilt. On the plate: u along it, up the slope, v square to it, from
the work's axis where the cone's large end is. Level: x and z from the same end of the ground line,
which lies level along x from 0 to the slant, the wheel above it. The cone points up the slope.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Literal

from halfangle_service.trade.clearance.bodies import Body, BodyKind, HeadPart, Point, box, overlap

Direction = Literal["along-travel", "across-travel"]
#: Rounding of the arithmetic, as a part of the plate's length.
ROUNDING = 1e-9
#: A point whose radius is less than this share of the base is sharp.
SHARP = 1e-6


@dataclass(frozen=True, slots=True)
class Cone:
    """The cone to grind; lengths in any one unit, the half angle in radians."""

    half_angle: float
    large_radius: float
    small_radius: float

    @property
    def length(self) -> float:
        """Length along the axis."""
        return (self.large_radius - self.small_radius) / math.tan(self.half_angle)

    @property
    def slant(self) -> float:
        """Length of the ground line."""
        return (self.large_radius - self.small_radius) / math.sin(self.half_angle)


@dataclass(frozen=True, slots=True)
class TurningPart:
    """A part that turns with the work: a cylinder `behind` the nose's face (negative: before)."""

    name: str
    radius: float
    length: float
    behind: float


@dataclass(frozen=True, slots=True)
class Fixture:
    """Spindle fixture: axis over the plate, body behind the nose, turning parts, the work's shank.

    `front_to_high_end`: from the body's front, up the slope, to the plate's high end.
    """

    axis_height: float
    body_length: float
    body_height: float
    nose_radius: float
    nose_length: float
    stick_out: float
    shank_radius: float
    front_to_high_end: float
    turning: tuple[TurningPart, ...] = ()


@dataclass(frozen=True, slots=True)
class Plate:
    """Sine plate. `closed_height` is its top over the table at zero tilt.

    The rolls' centers lie in the plate's underside; `low_roll_from_end` from its low end.
    """

    length: float
    thickness: float
    closed_height: float
    center_distance: float
    roll_diameter: float
    low_roll_from_end: float


@dataclass(frozen=True, slots=True)
class Head:
    """Wheel, flange and guard. `guard` is (length, width, lower edge below the spindle) or None."""

    radius: float
    width: float
    flange_radius: float
    flange_width: float
    guard: tuple[float, float, float] | None


@dataclass(frozen=True, slots=True)
class Stroke:
    """How far the wheel goes past the large and the small end of the ground line."""

    past_large_end: float
    past_small_end: float


@dataclass(frozen=True, slots=True)
class Assembly:
    """Cone, fixture and plate, and where they stand once tilted."""

    cone: Cone
    fixture: Fixture
    plate: Plate

    def level(self, point: Point) -> Point:
        """From the plate's frame to the level one."""
        u, v = point
        sin, cos = math.sin(self.cone.half_angle), math.cos(self.cone.half_angle)
        v -= self.cone.large_radius
        return (u * cos - v * sin, u * sin + v * cos)

    @property
    def front(self) -> float:
        """U of the fixture body's front face."""
        return -(self.fixture.stick_out + self.fixture.nose_length)

    @property
    def high_end(self) -> float:
        """U of the plate's high end."""
        return self.front + self.fixture.front_to_high_end

    @property
    def rolls(self) -> tuple[Point, Point]:
        """Centers of the low and the high roll, level frame."""
        low = self.high_end - self.plate.length + self.plate.low_roll_from_end
        v = -self.fixture.axis_height - self.plate.thickness
        return self.level((low, v)), self.level((low + self.plate.center_distance, v))

    @property
    def table(self) -> float:
        """Z of the table on which the plate stands."""
        low, _ = self.rolls
        return low[1] + self.plate.thickness - self.plate.closed_height

    @property
    def base_top(self) -> float:
        """Z on which the low roll and the stack stand."""
        return self.rolls[0][1] - self.plate.roll_diameter / 2.0

    @property
    def height_over_all(self) -> float:
        """From the table to the highest point of set-up and ground line."""
        highest = max(z for body in self.bodies() for _, z in body.corners)
        return max(highest, 0.0) - self.table

    @property
    def plate_into_base(self) -> float:
        """How far the plate's low end, tilted, would go into what its low roll stands on."""
        dip = self.plate.low_roll_from_end * math.sin(self.cone.half_angle)
        depth = dip - self.plate.roll_diameter / 2.0
        return depth if depth > self._touching else 0.0

    def standing_in(self, kinds: frozenset[BodyKind], others: frozenset[BodyKind]) -> list[Body]:
        """Bodies of these kinds that overlap one of the others."""
        bodies = self.bodies()
        there = [body for body in bodies if body.kind in others]
        return [
            body
            for body in bodies
            if body.kind in kinds
            and any(overlap(body.corners, other.corners) > self._touching for other in there)
        ]

    def below_table(self, kinds: frozenset[BodyKind]) -> list[Body]:
        """Bodies of these kinds that reach below the table."""
        lowest = self.table - self._touching
        return [
            body
            for body in self.bodies()
            if body.kind in kinds and min(z for _, z in body.corners) < lowest
        ]

    @property
    def _touching(self) -> float:
        """Bodies that overlap by no more than this only touch."""
        return ROUNDING * self.plate.length

    def bodies(self) -> list[Body]:
        """Every body that the wheel's head might meet, level frame."""
        return [*self._turning(), *self._standing()]

    def _turning(self) -> Iterator[Body]:
        """Bodies of revolution: their section holds through a full turn of the work."""
        cone, fixture = self.cone, self.fixture
        corners = [
            (0.0, cone.large_radius),
            (0.0, -cone.large_radius),
            (cone.length, -cone.small_radius),
            (cone.length, cone.small_radius),
        ]
        yield Body(
            "cone",
            "cone",
            self._outline(corners[: 4 if cone.small_radius > SHARP * cone.large_radius else 3]),
            True,
        )
        # A shank no thicker than the cone falls away under the ground line: the wheel may touch it.
        thin = fixture.shank_radius <= cone.large_radius
        if fixture.stick_out > 0.0:
            shank = box(-fixture.stick_out, -fixture.shank_radius, 0.0, fixture.shank_radius)
            yield Body("shank", "shank", self._outline(shank), thin)
        nose = box(self.front, -fixture.nose_radius, -fixture.stick_out, fixture.nose_radius)
        yield Body("nose", "nose", self._outline(nose))
        for part in fixture.turning:
            end = -fixture.stick_out - part.behind
            turned = box(end - part.length, -part.radius, end, part.radius)
            yield Body(part.name, "turning-part", self._outline(turned))

    def _standing(self) -> Iterator[Body]:
        fixture, plate = self.fixture, self.plate
        top, low_end = -fixture.axis_height, self.high_end - plate.length
        body = box(self.front - fixture.body_length, top, self.front, top + fixture.body_height)
        yield Body("fixture body", "fixture-body", self._outline(body))
        outline = box(low_end, top - plate.thickness, self.high_end, top)
        yield Body("plate", "plate", self._outline(outline))
        low, high = self.rolls
        half = plate.roll_diameter / 2.0
        if high[1] - half > self.base_top:
            stack = box(high[0] - half, self.base_top, high[0] + half, high[1] - half)
            yield Body("stack", "stack", stack)
        if self.base_top > self.table:
            left = low[0] - plate.low_roll_from_end
            base = box(left, self.table, left + plate.length, self.base_top)
            yield Body("base", "base", base)

    def _outline(self, corners: Sequence[Point]) -> tuple[Point, ...]:
        return tuple(self.level(corner) for corner in corners)


def head_parts(
    head: Head, stroke: Stroke, slant: float, direction: Direction
) -> tuple[HeadPart, ...]:
    """Wheel, flange and guard over the whole stroke, the wheel's lowest line at z = 0.

    Along the travel the wheel is seen as a circle whose center passes over the ground line. Across
    it the wheel is seen on edge, fed sideways until it has covered the line and both overruns.
    """
    first, last = -stroke.past_large_end, slant + stroke.past_small_end
    if direction == "along-travel":
        path = ((first, head.radius), (last, head.radius))
        parts = [
            HeadPart("wheel", path, head.radius),
            HeadPart("flange", path, head.flange_radius),
        ]
        overhang = head.guard[0] / 2.0 if head.guard else 0.0
    else:
        last = max(last, first + head.width)
        parts = [
            HeadPart("wheel", box(first, 0.0, last, 2.0 * head.radius)),
            HeadPart("flange", _flange_box(head, first, last)),
        ]
        overhang = (head.guard[1] - head.width) / 2.0 if head.guard else 0.0
    if head.guard is not None:
        bottom = head.radius - head.guard[2]
        top = 2.0 * head.radius + abs(head.guard[2])
        parts.append(HeadPart("guard", box(first - overhang, bottom, last + overhang, top)))
    return tuple(parts)


def _flange_box(head: Head, first: float, last: float) -> tuple[Point, ...]:
    overhang = (head.flange_width - head.width) / 2.0
    low, high = head.radius - head.flange_radius, head.radius + head.flange_radius
    return box(first - overhang, low, last + overhang, high)
