"""A tilted sine plate on its stacks, wherever its high end lies; one unit of length.

Level frame: x along the ground line, z upward from it.
"""

import math
from collections.abc import Iterator
from dataclasses import dataclass

from halfangle_service.trade.clearance.bodies import Body, Point, box


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
class TiltedPlate:
    """A plate at a tilt in radians, the high end of its top at a point.

    `uphill` is 1 where it rises toward +x, −1 where toward −x; `low_stack` is under its low roll.
    """

    plate: Plate
    high_end: Point
    tilt: float
    uphill: float = 1.0
    low_stack: float = 0.0

    def at(self, along: float, above: float) -> Point:
        """A point by its way up the slope from the high end, and square from the top."""
        sin, cos = math.sin(self.tilt), math.cos(self.tilt)
        x, z = self.high_end
        return (x + self.uphill * (along * cos - above * sin), z + along * sin + above * cos)

    @property
    def rolls(self) -> tuple[Point, Point]:
        """Centers of the low and the high roll."""
        plate = self.plate
        low = plate.low_roll_from_end - plate.length
        return (
            self.at(low, -plate.thickness),
            self.at(low + plate.center_distance, -plate.thickness),
        )

    @property
    def table(self) -> float:
        """Z of the table on which the plate stands."""
        low, _ = self.rolls
        return low[1] + self.plate.thickness - self.plate.closed_height - self.low_stack

    @property
    def base_top(self) -> float:
        """Z on which the stacks stand."""
        return self.rolls[0][1] - self.plate.roll_diameter / 2.0 - self.low_stack

    @property
    def into_base(self) -> float:
        """How far the low end, tilted, would go into what its low roll stands on; 0 at least."""
        dip = self.plate.low_roll_from_end * math.sin(self.tilt)
        return max(0.0, dip - self.plate.roll_diameter / 2.0 - self.low_stack)

    def bodies(self) -> Iterator[Body]:
        """The plate, its stacks, and the base that carries them."""
        plate, (low, high) = self.plate, self.rolls
        corners = ((-plate.length, -plate.thickness), (0.0, -plate.thickness))
        outline = (*corners, (0.0, 0.0), (-plate.length, 0.0))
        yield Body("plate", "plate", tuple(self.at(*corner) for corner in outline))
        half, foot = plate.roll_diameter / 2.0, self.base_top
        for name, roll in (("stack", high), ("low stack", low)):
            if roll[1] - half > foot:
                yield Body(name, "stack", box(roll[0] - half, foot, roll[0] + half, roll[1] - half))
        if foot > self.table:
            ends = [low[0] - self.uphill * plate.low_roll_from_end]
            ends.append(ends[0] + self.uphill * plate.length)
            yield Body("base", "base", box(min(ends), self.table, max(ends), foot))
