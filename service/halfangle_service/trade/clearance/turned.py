"""A cone that turns in a fixture: its bodies, whatever the fixture stands on; one unit of length.

Two frames in the plane of the work's axis. On the fixture: u along the axis, v square to it, from
where the cone's large end is. Level: x and z from the same end of the ground line, which lies along
x from 0 to the slant, the wheel above it.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from halfangle_service.trade.clearance.bodies import Body, Point, box

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
class Turned:
    """The cone in its fixture, the point up the slope.

    `lean` is of its axis to the x axis: by the half angle where None, so that the ground line lies
    along x.
    """

    cone: Cone
    fixture: Fixture
    lean: float | None = None

    def level(self, point: Point) -> Point:
        """From the fixture's frame to the level one."""
        u, v = point
        lean = self.cone.half_angle if self.lean is None else self.lean
        sin, cos = math.sin(lean), math.cos(lean)
        v -= self.cone.large_radius
        return (u * cos - v * sin, u * sin + v * cos)

    @property
    def front(self) -> float:
        """U of the fixture body's front face."""
        return -(self.fixture.stick_out + self.fixture.nose_length)

    def turning(self) -> Iterator[Body]:
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
            self.outline(corners[: 4 if cone.small_radius > SHARP * cone.large_radius else 3]),
            True,
        )
        # A shank no thicker than the cone falls away under the ground line: the wheel may touch it.
        thin = fixture.shank_radius <= cone.large_radius
        if fixture.stick_out > 0.0:
            shank = box(-fixture.stick_out, -fixture.shank_radius, 0.0, fixture.shank_radius)
            yield Body("shank", "shank", self.outline(shank), thin)
        nose = box(self.front, -fixture.nose_radius, -fixture.stick_out, fixture.nose_radius)
        yield Body("nose", "nose", self.outline(nose))
        for part in fixture.turning:
            end = -fixture.stick_out - part.behind
            turned = box(end - part.length, -part.radius, end, part.radius)
            yield Body(part.name, "turning-part", self.outline(turned))

    def body(self) -> Body:
        """The fixture's body."""
        fixture, foot = self.fixture, -self.fixture.axis_height
        there = box(self.front - fixture.body_length, foot, self.front, foot + fixture.body_height)
        return Body("fixture body", "fixture-body", self.outline(there))

    def outline(self, corners: Sequence[Point]) -> tuple[Point, ...]:
        """Corners in the level frame."""
        return tuple(self.level(corner) for corner in corners)
