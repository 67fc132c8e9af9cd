"""The set-up on a tilted plate: outlines of plate, fixture, work and stack, and the wheel's head.

Lengths in any one unit, angles in radians.

The frames are those of `turned`, u up the plate's slope. The cone points up the slope.
"""

from dataclasses import dataclass
from typing import Literal

from halfangle_service.trade.clearance.bodies import Body, BodyKind, HeadPart, Point, box, overlap
from halfangle_service.trade.clearance.plate import Plate, TiltedPlate
from halfangle_service.trade.clearance.turned import Cone, Fixture, Turned

Direction = Literal["along-travel", "across-travel"]
#: Rounding of the arithmetic, as a part of the plate's length.
ROUNDING = 1e-9


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
    """Cone, fixture and plate, and where they stand once tilted; `low_stack` lifts all of it."""

    cone: Cone
    fixture: Fixture
    plate: Plate
    low_stack: float = 0.0

    @property
    def turned(self) -> Turned:
        """The cone in its fixture."""
        return Turned(self.cone, self.fixture)

    @property
    def tilted(self) -> TiltedPlate:
        """The plate under them."""
        high_end = self.level((self.high_end, -self.fixture.axis_height))
        return TiltedPlate(self.plate, high_end, self.cone.half_angle, low_stack=self.low_stack)

    def level(self, point: Point) -> Point:
        """From the plate's frame to the level one."""
        return self.turned.level(point)

    @property
    def front(self) -> float:
        """U of the fixture body's front face."""
        return self.turned.front

    @property
    def high_end(self) -> float:
        """U of the plate's high end."""
        return self.front + self.fixture.front_to_high_end

    @property
    def rolls(self) -> tuple[Point, Point]:
        """Centers of the low and the high roll, level frame."""
        return self.tilted.rolls

    @property
    def table(self) -> float:
        """Z of the table on which the plate stands."""
        return self.tilted.table

    @property
    def base_top(self) -> float:
        """Z on which the stacks stand."""
        return self.tilted.base_top

    @property
    def height_over_all(self) -> float:
        """From the table to the highest point of set-up and ground line."""
        highest = max(z for body in self.bodies() for _, z in body.corners)
        return max(highest, 0.0) - self.table

    @property
    def plate_into_base(self) -> float:
        """How far the plate's low end, tilted, would go into what its low roll stands on."""
        depth = self.tilted.into_base
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
        turned = self.turned
        return [*turned.turning(), turned.body(), *self.tilted.bodies()]


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
