"""The plate's setting and the stack that makes it, and the wrong block that would show least."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from pydantic import Field

from halfangle_service.fields import (
    ARCSEC_PER_RADIAN,
    Angle,
    ArcsecOut,
    LengthOut,
    ResultModel,
    Units,
    angle_from_radians,
    bench_step,
    from_tenth_nm,
    to_tenth_nm,
)
from halfangle_service.fields.stacks import BlockAlternative, stack_facts
from halfangle_service.trade.inspection.mistakes import (
    ErrorOfHeight,
    PlannedStack,
    StackMistake,
    plate_error,
    stack_mistakes,
)
from halfangle_service.trade.sine.geometry import angle_for_height, arcsec_per_height
from halfangle_service.trade.stacks.setting import Setting
from halfangle_service.trade.stacks.supply import Piece


class PlannedSetting(BlockAlternative):
    """The sine plate's setting and the stack that gives it; the height asked for is `height`."""

    plate_angle: Angle = Field(description="Angle of the plate: the half angle of the cone.")
    height: LengthOut = Field(description="Exact height for that angle.")
    included_angle_from_stack: Angle = Field(
        description="Included angle that the stack gives by its actual height."
    )
    included_angle_arcsec_per_step: ArcsecOut = Field(
        description="Change of the *included* angle for one bench step of stack height (0.0001 in "
        "or 0.001 mm)."
    )
    proved: bool = Field(
        description="True where no smaller stack gives this height; that is proved, not searched."
    )


class WrongBlock(ResultModel):
    """One mistake with this stack: a block taken for another one of the box."""

    meant: LengthOut = Field(description="Block that belongs in the stack.")
    wrung: LengthOut = Field(description="Block taken in its place.")
    included_angle_error_arcsec: ArcsecOut | None = Field(
        description="Included angle that the wrong stack gives, less the wanted one; null where it "
        "lifts the plate by its center distance or more."
    )


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

    @property
    def included_off_arcsec(self) -> float:
        """The same on the included angle, in arc-seconds."""
        return 2.0 * ARCSEC_PER_RADIAN * self.off_rad

    @property
    def included_error_of(self) -> ErrorOfHeight:
        """Included angle that a stack of a height in 0.1 nm gives, less the wanted one."""
        per_unit = to_tenth_nm(1.0, self.units)
        return plate_error(self.center_distance, self.angle_rad, per_unit, times=2.0)

    @property
    def included_error_arcsec(self) -> float | None:
        """Included angle that the stack gives, less the wanted one; None where no plate stands."""
        return self.included_error_of(self.setting.actual)

    @property
    def included_arcsec_per_height(self) -> float:
        """Change of the included angle in arc-seconds for one unit of height: 2 / (L cos θ)."""
        return 2.0 * arcsec_per_height(self.center_distance, self.angle_rad)

    def in_units(self, sizes: tuple[int, ...]) -> tuple[float, ...]:
        """Sizes in 0.1 nm in the request's units."""
        return tuple(from_tenth_nm(size, self.units) for size in sizes)


def planned_setting(plate: PlateOnStack, pieces: Sequence[Piece]) -> PlannedSetting:
    """The sine plate's setting and the stack that makes it, of these blocks with their grade."""
    facts = stack_facts(pieces, to_tenth_nm(plate.height, plate.units), plate.units)
    # The height is not rounded to 0.1 nm.
    facts["deviation"] = plate.total - plate.height
    facts["actual_deviation"] = plate.actual_height - plate.height
    return PlannedSetting(
        **facts,
        plate_angle=Angle.of(plate.angle_degrees),
        height=plate.height,
        included_angle_from_stack=angle_from_radians(2.0 * plate.angle_from_stack_rad),
        included_angle_arcsec_per_step=plate.included_arcsec_per_height * bench_step(plate.units),
        proved=True,
    )


def mistakes(plate: PlateOnStack) -> tuple[StackMistake, ...]:
    """Every wrong block that can be taken for one of the stack, the least change first."""
    setting = plate.setting
    stack = PlannedStack("high", setting.pieces, setting.spare, plate.included_error_of)
    return stack_mistakes(stack)


def smallest(found: Sequence[StackMistake], units: Units) -> WrongBlock | None:
    """The first of the mistakes as the answer gives it; None where there is none."""
    if not found:
        return None
    return WrongBlock(
        meant=from_tenth_nm(found[0].meant.size, units),
        wrung=from_tenth_nm(found[0].wrung.size, units),
        included_angle_error_arcsec=found[0].error_arcsec,
    )


def second_stack(plate: PlateOnStack) -> list[float] | None:
    """Another stack of the same height, where the box holds one."""
    second = plate.setting.second_stack
    return None if second is None else list(plate.in_units(second))
