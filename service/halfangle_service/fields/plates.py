"""A sine bar or plate, as every request that sets one states it."""

import math
from dataclasses import dataclass
from typing import Annotated, ClassVar

from pydantic import Field

from halfangle_service.errors import Impossible
from halfangle_service.fields.angles import AngleInput
from halfangle_service.fields.base import PLATE, RequestModel, Rule
from halfangle_service.fields.choice import all_or_none
from halfangle_service.fields.numbers import ArcsecOut, Length, SignedLength, UnitsField
from halfangle_service.trade.angles import ARCSEC_PER_RADIAN
from halfangle_service.trade.sine.geometry import (
    angle_for_height,
    arcsec_per_height,
    height_for_angle,
    round_to_step,
    stack_offset,
)
from halfangle_service.trade.unit_slips import require_center_distance, require_resolution
from halfangle_service.trade.units import Units, bench_step
from halfangle_service.trade.wording import plain

CenterDistance = Annotated[
    Length,
    Field(description="Distance between the centers of the two rolls, in `units`.", examples=[5.0]),
]
BaseStep = Annotated[
    SignedLength,
    Field(
        description="Height of the low roll's seat over the high roll's, in `units`: the stack at "
        "which a plate with equal rolls stands at zero.",
        examples=[0.1],
    ),
]
ReachField = Annotated[
    Annotated[float, AngleInput(gt=0, lt=90)] | None,
    Field(
        description="Largest angle that the plate reaches, in degrees; past it a setting is "
        "refused. Absent: anything below 90°."
    ),
]
ResolutionField = Annotated[
    Length | None,
    Field(
        description="Step to which a stack can be built, in `units`. Absent: 0.0001 in or 0.001 mm."
    ),
]
ArcsecPerStep = Annotated[
    ArcsecOut,
    Field(
        description="Change of angle in arc-seconds for one bench step of height (0.0001 in or "
        "0.001 mm)."
    ),
]


#: Diameters of the rolls where they differ, sent together.
ROLLS = ("high_roll_diameter", "low_roll_diameter")


class PlateFields(RequestModel):
    """What a sine bar or plate is."""

    rules: ClassVar[tuple[Rule, ...]] = (Rule("all-or-none", ROLLS),)
    group = PLATE

    units: UnitsField
    center_distance: CenterDistance
    high_roll_diameter: Length | None = Field(
        None,
        description="Diameter of the roll that is raised, in `units`; only where the rolls differ, "
        "together with `low_roll_diameter`.",
    )
    low_roll_diameter: Length | None = Field(
        None, description="Diameter of the other roll, in `units`."
    )
    base_step: BaseStep = 0.0


def offset_of(plate: PlateFields) -> float:
    """Difference of the stacks at zero, in `units`.

    Refuses one roll's diameter without the other's, and a plate of a size that none has.
    """
    require_center_distance(plate.center_distance, plate.units)
    all_or_none(
        plate,
        *ROLLS,
        why="One roll's diameter alone says nothing of their difference.",
    )
    high, low = plate.high_roll_diameter, plate.low_roll_diameter
    return stack_offset(plate.base_step, high or 0.0, low or 0.0)


@dataclass(frozen=True, slots=True)
class PlateSetting:
    """A plate's setting as computed and as it can be built: heights in `units`, angles in radians.

    A height is that of the high roll's stack over the low roll's.
    """

    angle_rad: float
    height: float
    height_to_set: float
    angle_as_set_rad: float

    @property
    def deviation_arcsec(self) -> float:
        """Angle at `height_to_set` less the angle wanted."""
        return (self.angle_as_set_rad - self.angle_rad) * ARCSEC_PER_RADIAN


def plate_setting(
    plate: PlateFields, angle_rad: float, resolution: float | None = None, *, field: str = "angle"
) -> PlateSetting:
    """Set a plate to an angle; a refusal names `field`, the one that asked for the angle."""
    offset = offset_of(plate)
    height = height_for_angle(plate.center_distance, angle_rad, offset)
    built = to_set(height, plate.units, resolution)
    as_set = angle_for_height(plate.center_distance, built, offset, field)
    return PlateSetting(angle_rad, height, built, as_set)


def to_set(height: float, units: Units, resolution: float | None = None) -> float:
    """Round a height to what can be built: the resolution, or the bench step."""
    require_resolution(resolution, units)
    return round_to_step(height, bench_step(units) if resolution is None else resolution)


def require_lift(lift: float, center_distance: float, units: Units, field: str) -> None:
    """Refuse stacks, stated in `field`, that lift the high roll's center to no setting at all."""
    if not 0.0 < lift < center_distance:
        raise Impossible(
            f"These stacks lift the high roll's center {plain(lift, 10)} {units} over the low "
            "one's; a setting lifts it by more than 0 and less than the center distance.",
            fields={field: "should be the stack under the high roll"},
        )


def arcsec_per_step(center_distance: float, angle_rad: float, units: Units) -> float:
    """Change of angle in arc-seconds for one bench step of height."""
    return arcsec_per_height(center_distance, angle_rad) * bench_step(units)


def height_of_arcsec(plate: PlateFields, arcsec: float, height: float) -> float:
    """Change of height, in `units`, that turns a plate set to `height` by so many arc-seconds."""
    angle_rad = angle_for_height(plate.center_distance, height, offset_of(plate), "angle")
    return arcsec / arcsec_per_height(plate.center_distance, angle_rad)


def heights_within(plate: PlateFields, arcsec: float, angle_rad: float) -> tuple[float, float]:
    """Least and greatest height, in `units`, within ± so many arc-seconds of an angle.

    Exact, since near upright the height falls off faster downward; no lower than hanging and no
    higher than upright.
    """
    turned = (angle_rad + sign * arcsec / ARCSEC_PER_RADIAN for sign in (-1.0, 1.0))
    low, high = (min(max(angle, -math.pi / 2.0), math.pi / 2.0) for angle in turned)
    offset = offset_of(plate)
    return (
        height_for_angle(plate.center_distance, low, offset),
        height_for_angle(plate.center_distance, high, offset),
    )
