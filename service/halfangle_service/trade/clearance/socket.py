"""A taper socket on a tilted plate, a wheel on a quill going into it; one unit of length.

The mouth points up the slope, so that the lower wall lies level and the wheel, its axis level too,
grinds it from above. Frames: u along the bore's axis from the mouth, the small end at −length; x
along the lower wall from the mouth, the small end at −slant; z upward from that wall.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from halfangle_service.trade.clearance.assembly import Stroke
from halfangle_service.trade.clearance.bodies import Body, BodyKind, HeadPart, Point, box
from halfangle_service.trade.clearance.plate import Plate, TiltedPlate
from halfangle_service.trade.clearance.turned import Cone, Fixture


@dataclass(frozen=True, slots=True)
class Quill:
    """A wheel on its quill, and the spindle that carries it.

    `reach` is from the wheel's front to the spindle's face.
    """

    wheel_radius: float
    wheel_width: float
    quill_radius: float
    reach: float
    spindle_radius: float

    def parts(self, stroke: Stroke, slant: float) -> tuple[HeadPart, ...]:
        """Wheel, quill and spindle over the whole stroke, the wheel's lowest line at z = 0.

        Its front goes from past the small end to where its rear is past the mouth.
        """
        deep, out = -slant - stroke.past_small_end, stroke.past_large_end
        drawn = max(out - self.wheel_width, deep)
        axis = self.wheel_radius
        rear, face = deep + self.wheel_width, deep + self.reach
        far = drawn + self.reach
        low, high = axis - self.quill_radius, axis + self.quill_radius
        body = axis - self.spindle_radius, axis + self.spindle_radius
        return (
            HeadPart("wheel", box(deep, 0.0, max(out, rear), 2.0 * axis)),
            HeadPart("quill", box(rear, low, far, high)),
            HeadPart("spindle", box(face, body[0], far + self.reach, body[1])),
        )


@dataclass(frozen=True, slots=True)
class Socket:
    """A bore in work of an outer radius, and how far it is open past its small end.

    `relief` is 0 where the bore ends at its small end.
    """

    bore: Cone
    relief: float
    fixture: Fixture

    def level(self, point: Point) -> Point:
        """From the bore's frame to the level one."""
        u, v = point
        sin, cos = math.sin(self.bore.half_angle), math.cos(self.bore.half_angle)
        v += self.bore.large_radius
        return (u * cos - v * sin, u * sin + v * cos)

    @property
    def outer_radius(self) -> float:
        """Radius of the work about the bore."""
        return self.fixture.shank_radius

    @property
    def front(self) -> float:
        """U of the fixture body's front face."""
        return -(self.fixture.stick_out + self.fixture.nose_length)

    def on(self, plate: Plate, low_stack: float) -> tuple[list[Body], TiltedPlate]:
        """All bodies with the fixture along a plate, and that plate."""
        high_end = self.front + self.fixture.front_to_high_end
        at = self.level((high_end, -self.fixture.axis_height))
        tilted = TiltedPlate(plate, at, self.bore.half_angle, low_stack=low_stack)
        return [*self.bodies(), *tilted.bodies()], tilted

    def bodies(self) -> Iterator[Body]:
        """Walls and bottom of the bore, fixture and what turns with the work."""
        bore, fixture, outer = self.bore, self.fixture, self.outer_radius
        small, end = bore.small_radius, -bore.length
        bottom = end - self.relief
        wall = ((0.0, bore.large_radius), (end, small), (end, outer), (0.0, outer))
        yield self._body("bore", "bore", [(u, -v) for u, v in wall], ground=True)
        yield self._body("opposite wall", "bore", wall)
        if self.relief > 0.0:
            yield self._body("relief", "bore", box(bottom, small, end, outer))
        back = min(bottom - outer, -fixture.stick_out)
        yield self._body("bottom of the bore", "bore", box(back, -outer, bottom, outer))
        nose, foot = fixture.nose_radius, -fixture.axis_height
        front = box(self.front, -nose, -fixture.stick_out, nose)
        yield self._body("nose", "nose", front)
        for part in fixture.turning:
            at = -fixture.stick_out - part.behind
            turned = box(at - part.length, -part.radius, at, part.radius)
            yield self._body(part.name, "turning-part", turned)
        there = box(self.front - fixture.body_length, foot, self.front, foot + fixture.body_height)
        yield self._body("fixture body", "fixture-body", there)

    def _body(
        self, name: str, kind: BodyKind, corners: Sequence[Point], *, ground: bool = False
    ) -> Body:
        return Body(name, kind, tuple(self.level(corner) for corner in corners), ground)
