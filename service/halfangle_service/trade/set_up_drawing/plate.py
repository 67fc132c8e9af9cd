"""A sine plate on its stacks, as it is drawn; lengths in any one unit, angles in radians.

The plane of the tilt: x to the right, up the slope; y up from the seat of the high roll's stack;
x = 0 at the low roll's center.
"""

import math
from dataclasses import dataclass

from halfangle_service.trade.drawing.marks import Point

#: What a plate's body usually measures, as parts of the center distance, where it was not stated.
_ROLL, _THICK, _BEFORE, _BEYOND = 0.14, 0.14, 0.1, 0.1


@dataclass(frozen=True, slots=True)
class PlateOnStacks:
    """A plate (bar, or one plate of a compound plate) on its stacks.

    `high` and `low`: the blocks under each roll from the bottom up, empty where none stands there.
    `base_step`: the low roll's seat over the high roll's. `angle_rad`: the plate's, as wanted.
    Sizes of rolls and body are None where they were not stated: then they are drawn as usual, and
    the drawing says so. `raised`: the side that is raised, in words (`right`); `hinged`: the low
    roll is a hinge.
    """

    center_distance: float
    angle_rad: float
    high: tuple[float, ...]
    low: tuple[float, ...] = ()
    base_step: float = 0.0
    high_roll_diameter: float | None = None
    low_roll_diameter: float | None = None
    length: float | None = None
    thickness: float | None = None
    low_roll_from_end: float | None = None
    raised: str | None = None
    hinged: bool = False

    @property
    def sizes_stated(self) -> bool:
        """True where nothing of the plate is drawn by a usual proportion."""
        sizes = (self.high_roll_diameter, self.low_roll_diameter, self.length, self.thickness)
        return None not in (*sizes, self.low_roll_from_end)


@dataclass(frozen=True, slots=True)
class Standing:
    """Where a plate on its stacks stands: rolls, and its frame along and square to its top."""

    low_roll: Point
    high_roll: Point
    low_radius: float
    high_radius: float
    turn: float
    thickness: float
    before: float
    length: float

    def at(self, along: float, over: float) -> Point:
        """A point so far up the slope from the low roll's center, and over the plate's top."""
        cos, sin = math.cos(self.turn), math.sin(self.turn)
        v = self.thickness + over
        return self.low_roll[0] + along * cos - v * sin, self.low_roll[1] + along * sin + v * cos

    @property
    def body(self) -> list[Point]:
        """Outline of the plate: the rolls' centers lie in its underside."""
        ends = (-self.before, self.length - self.before)
        low, high = ends
        under = -self.thickness
        return [self.at(low, under), self.at(high, under), self.at(high, 0.0), self.at(low, 0.0)]


def standing(plate: PlateOnStacks) -> Standing:
    """Stand a plate on its stacks."""
    distance = plate.center_distance
    usual = _ROLL * distance / 2.0
    low = usual if plate.low_roll_diameter is None else plate.low_roll_diameter / 2.0
    high = usual if plate.high_roll_diameter is None else plate.high_roll_diameter / 2.0
    low_center = (0.0, plate.base_step + sum(plate.low) + low)
    rise = sum(plate.high) + high - low_center[1]
    turn = math.asin(max(-1.0, min(1.0, rise / distance)))
    high_center = (distance * math.cos(turn), low_center[1] + rise)
    before = _BEFORE * distance if plate.low_roll_from_end is None else plate.low_roll_from_end
    length = before + (1.0 + _BEYOND) * distance if plate.length is None else plate.length
    thickness = _THICK * distance if plate.thickness is None else plate.thickness
    return Standing(low_center, high_center, low, high, turn, thickness, before, length)
