"""A sine plate as a stack sets it: its angle, and how far that is off."""

import math
from dataclasses import dataclass

from halfangle_service.fields import (
    Units,
    from_tenth_nm,
)
from halfangle_service.trade.sine.geometry import angle_for_height
from halfangle_service.trade.stacks.setting import Setting
from halfangle_service.trade.stacks.supply import Piece


@dataclass(frozen=True, slots=True)
class PlateOnStack:
    """A plate's angle in degrees, its exact height, and the stack chosen for it.

    Lengths in `units`. The height is that of the high roll's stack over the low roll's, which is
    `low`, most often nothing; `offset` that at which the plate stands at zero. The plate's angle is
    the half angle of a cone that is held along it.
    """

    units: Units
    center_distance: float
    angle_degrees: float
    height: float
    setting: Setting
    low: tuple[Piece, ...] = ()
    offset: float = 0.0

    @property
    def angle_rad(self) -> float:
        """The plate's angle in radians."""
        return math.radians(self.angle_degrees)

    @property
    def blocks(self) -> tuple[float, ...]:
        """Nominal sizes of the high roll's stack, largest first."""
        return self.in_units(self.setting.blocks)

    @property
    def total(self) -> float:
        """Nominal height of the stack over the low roll's."""
        low = sum(piece.size for piece in self.low)
        return from_tenth_nm(self.setting.total - low, self.units)

    @property
    def actual_height(self) -> float:
        """Height of the stack over the low roll's, measured deviations included."""
        low = sum(piece.actual for piece in self.low)
        return from_tenth_nm(self.setting.actual - low, self.units)

    @property
    def angle_from_stack_rad(self) -> float:
        """Angle that the plate has on the stack, in radians."""
        return angle_for_height(self.center_distance, self.actual_height, self.offset)

    @property
    def off_rad(self) -> float:
        """Plate's angle on the stack less the wanted one, without any approximation."""
        if self.actual_height == self.height:  # else rounding would stand for an error
            return 0.0
        return self.angle_from_stack_rad - self.angle_rad

    def in_units(self, sizes: tuple[int, ...]) -> tuple[float, ...]:
        """Sizes in 0.1 nm in the request's units."""
        return tuple(from_tenth_nm(size, self.units) for size in sizes)
