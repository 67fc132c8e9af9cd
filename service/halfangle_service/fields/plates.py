"""A sine bar or plate, as every request that sets one states it."""

from typing import Annotated

from pydantic import Field

from halfangle_service.fields.angles import AngleInput
from halfangle_service.fields.base import RequestModel
from halfangle_service.fields.choice import all_or_none
from halfangle_service.fields.numbers import ArcsecOut, Length, SignedLength, UnitsField
from halfangle_service.trade.sine.geometry import arcsec_per_height, round_to_step, stack_offset
from halfangle_service.trade.units import Units, bench_step

CenterDistance = Annotated[
    Length,
    Field(description="Distance between the centers of the two rolls, in `units`.", examples=[5.0]),
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


class PlateFields(RequestModel):
    """What a sine bar or plate is."""

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
    base_step: SignedLength = Field(
        0.0,
        description="Height of the low roll's seat over the high roll's, in `units`: the stack at "
        "which a plate with equal rolls stands at zero.",
        examples=[0.1],
    )


def offset_of(plate: PlateFields) -> float:
    """Difference of the stacks at zero; refuses one roll's diameter without the other's."""
    all_or_none(
        plate,
        "high_roll_diameter",
        "low_roll_diameter",
        why="One roll's diameter alone says nothing of their difference.",
    )
    high, low = plate.high_roll_diameter, plate.low_roll_diameter
    return stack_offset(plate.base_step, high or 0.0, low or 0.0)


def to_set(height: float, units: Units, resolution: float | None = None) -> float:
    """Round a height to what can be built: the resolution, or the bench step."""
    return round_to_step(height, bench_step(units) if resolution is None else resolution)


def arcsec_per_step(center_distance: float, angle_rad: float, units: Units) -> float:
    """Change of angle in arc-seconds for one bench step of height."""
    return arcsec_per_height(center_distance, angle_rad) * bench_step(units)
