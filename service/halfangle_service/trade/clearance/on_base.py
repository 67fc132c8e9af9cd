"""Block-like work that stands on its base, one sloping face of it to grind; one unit of length.

Two frames in the plane of the slope. On the base: u along it, down the slope of the face, v square
to it, from the foot of the face's high edge. Level: x and z from that edge, the face level along x
from 0 to the slant. Tilted, the work's u points up the plate's slope.
"""

import math
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

from halfangle_service.trade.clearance.bodies import Body, Point, box
from halfangle_service.trade.clearance.plate import Plate, TiltedPlate

#: What is left of the work past its face by no more than this share of its length is none.
_NOTHING = 1e-9


@dataclass(frozen=True, slots=True)
class Block:
    """Work with a face at an angle in radians to its base.

    `height` is from the base to the face's high edge, `before` what of the top lies before it,
    `length` all of the base along the slope.
    """

    angle_rad: float
    slant: float
    length: float
    height: float
    before: float

    @property
    def run(self) -> float:
        """Length of the face along the base."""
        return self.slant * math.cos(self.angle_rad)

    @property
    def end(self) -> float:
        """U of the work's low end."""
        return self.length - self.before

    @property
    def low_edge(self) -> float:
        """Height of the face's low edge over the base."""
        return self.height - self.slant * math.sin(self.angle_rad)


@dataclass(frozen=True, slots=True)
class Holder:
    """What holds work on a plate or table: a box about its foot, whatever it is.

    `seat` is the base's height over what it stands on, `height` that of the holder's top; it
    reaches past the work's ends.
    """

    seat: float
    height: float
    past_tall_end: float
    past_short_end: float


@dataclass(frozen=True, slots=True)
class AnglePlate:
    """An upright square to a plate's top, which work turned a quarter stands against.

    `seat` is the work's foot over the plate; the upright's face to the plate's high end is measured
    up the slope.
    """

    height: float
    thickness: float
    face_to_high_end: float
    seat: float

    def on(
        self,
        plate: Plate,
        level: Callable[[Point], Point],
        foot: float,
        face: float,
        lean: float,
        low_stack: float,
    ) -> tuple[Body, TiltedPlate]:
        """The upright and the plate under it, in a frame whose u leans by an angle to the level.

        `foot` is u of what stands on the plate, or `seat` over it, `face` v of the upright's face.
        """
        floor = foot - self.seat
        high_end = level((floor, face + self.face_to_high_end))
        tilted = TiltedPlate(plate, high_end, math.pi / 2.0 - lean, -1.0, low_stack)
        corners = box(floor, face - self.thickness, floor + self.height, face)
        upright = Body("angle plate", "angle-plate", tuple(level(corner) for corner in corners))
        return upright, tilted


@dataclass(frozen=True, slots=True)
class StandingWork:
    """Work in a frame that leans by an angle in radians: 0 where its base lies level."""

    block: Block
    lean: float

    def level(self, point: Point) -> Point:
        """From the base's frame to the level one."""
        u, v = point
        sin, cos = math.sin(self.lean), math.cos(self.lean)
        v -= self.block.height
        return (u * cos - v * sin, u * sin + v * cos)

    def outline(self, corners: Sequence[Point]) -> tuple[Point, ...]:
        """Corners in the level frame."""
        return tuple(self.level(corner) for corner in corners)

    def work(self) -> Iterator[Body]:
        """The work under its face, which the wheel touches, and what of it stands past the face."""
        block = self.block
        corners = [
            (-block.before, 0.0),
            (block.run, 0.0),
            (block.run, block.low_edge),
            (0.0, block.height),
            (-block.before, block.height),
        ]
        yield Body("work", "work", self.outline(corners[: 5 if block.before else 4]), True)
        if block.end - block.run > _NOTHING * block.length:
            rest = box(block.run, 0.0, block.end, block.low_edge)
            yield Body("work past the face", "work", self.outline(rest))

    def held(self, holder: Holder) -> Iterator[Body]:
        """What holds it."""
        if holder.height > 0.0:
            left = -self.block.before - holder.past_tall_end
            right = self.block.end + holder.past_short_end
            there = box(left, -holder.seat, right, holder.height - holder.seat)
            yield Body("holder", "holder", self.outline(there))


def along(
    block: Block, holder: Holder, plate: Plate, to_high_end: float, low_stack: float
) -> tuple[list[Body], TiltedPlate]:
    """Work on a plate that is tilted by the face's angle, and that plate.

    `to_high_end` is from the work's low end up the slope to the plate's high end.
    """
    stands = StandingWork(block, block.angle_rad)
    high_end = stands.level((block.end + to_high_end, -holder.seat))
    tilted = TiltedPlate(plate, high_end, block.angle_rad, low_stack=low_stack)
    return [*stands.work(), *stands.held(holder), *tilted.bodies()], tilted


def turned_a_quarter(
    block: Block, upright: AnglePlate, plate: Plate, low_stack: float
) -> tuple[list[Body], TiltedPlate]:
    """Work on its tall end, its base against an upright on the low side, and the plate under it."""
    stands = StandingWork(block, block.angle_rad)
    leans, tilted = upright.on(plate, stands.level, -block.before, 0.0, block.angle_rad, low_stack)
    return [*stands.work(), leans, *tilted.bodies()], tilted
