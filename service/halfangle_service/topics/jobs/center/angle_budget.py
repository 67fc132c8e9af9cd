"""The error of the included angle to expect from the set-up, against its tolerance."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import Annotated

from pydantic import Field

from halfangle_service.fields import (
    ARCSEC_PER_RADIAN,
    ArcsecOut,
    Celsius,
    NonNegativeArcsec,
    NonNegativeLength,
    RequestModel,
    ResultModel,
    Unit,
)
from halfangle_service.fields.estimate import ArcsecEstimate, estimate
from halfangle_service.fields.numbers import FINITE
from halfangle_service.fields.supply import graded
from halfangle_service.topics.jobs.center.setting import PlateOnStack
from halfangle_service.trade.sine.angle_error import (
    LARGEST_YAW_ARCSEC,
    ErrorInputs,
    budget,
    of_included_angle,
)
from halfangle_service.trade.sine.angle_model import SetUp, Term, sensitivity, unit_of
from halfangle_service.trade.stacks.height_budget import blocks_budget
from halfangle_service.trade.stacks.supply import Piece
from halfangle_service.trade.tables.blocks.tolerances import find_grade
from halfangle_service.trade.tables.materials.expansion import (
    REFERENCE_CELSIUS,
    MaterialName,
    materials,
)
from halfangle_service.trade.uncertainty import Budget, Contribution, Forecast, forecast


class AngleContributions(RequestModel):
    """Errors of the set-up that turn the cone's half angle; each stands as ± its value.

    A contribution left out is not guessed: the plan says that it is missing from the budget.
    """

    center_distance_tolerance: NonNegativeLength | None = Field(
        None, description="± error of the plate's center distance, in `units`.", examples=[0.0001]
    )
    axis_pitch_arcsec: NonNegativeArcsec | None = Field(
        None,
        description="± angle between the fixture's axis and the plate's top, in the tilt plane.",
        examples=[5.0],
    )
    axis_yaw_arcsec: (
        Annotated[float, FINITE, Field(ge=0, le=LARGEST_YAW_ARCSEC), Unit("arcsecond")] | None
    ) = Field(
        None,
        description="± angle of the fixture's axis out of the tilt plane; at most 18000, which is "
        "5°. It acts by its square, always toward a smaller angle.",
        examples=[300.0],
    )
    wheel_face_arcsec: NonNegativeArcsec | None = Field(
        None,
        description="± slope of the wheel's face along the slant, from breakdown since dressing.",
        examples=[20.0],
    )
    temperature_celsius: Celsius | None = Field(
        None,
        description="Temperature of plate and blocks alike; 20 °C is the reference (ISO 1).",
        examples=[22.0],
    )
    plate_material: MaterialName = Field("steel", description="Material of the sine plate.")
    block_material: MaterialName | None = Field(
        None,
        description="Material of the gauge blocks of a set, or of sizes. Absent: steel. A `box` "
        "says it of each of its blocks.",
    )


class PlannedAngle(ResultModel):
    """The angle error to expect, against its tolerance. The half angle's error counts twice."""

    included_angle_error_arcsec: ArcsecEstimate = Field(
        description="Error of the included angle: the stack's deviation, temperature and the mean "
        "of a yaw as its value, the rest as its uncertainty."
    )
    included_angle_tolerance_arcsec: ArcsecOut = Field(description="± tolerance asked for.")
    tolerance_used_percent: Annotated[float, Unit("percent")] | None = Field(
        description="Worst case over tolerance; null where no contribution was stated."
    )
    forecast: Forecast = Field(
        description="Whether this set-up will hold the tolerance: the error to expect within it by "
        "the expanded uncertainty, as ISO 14253-1 guards a limit; never `holds` with something "
        "not stated."
    )


def stack_of(
    pieces: Sequence[Piece], grade: str | None, material: MaterialName | None
) -> tuple[Piece, ...]:
    """Blocks with their grade's limit where they have no calibration, of a material if stated."""
    if grade is not None:
        limits = find_grade(grade)
        pieces = [graded(piece, limits) for piece in pieces]
    if material is not None:
        pieces = [replace(piece, material=material) for piece in pieces]
    return tuple(pieces)


def planned_angle(
    plate: PlateOnStack,
    pieces: Sequence[Piece],
    errors: AngleContributions,
    tolerance_arcsec: float,
) -> PlannedAngle:
    """Give the angle's budget, on a stack of these blocks, against its tolerance."""
    error = estimate(ArcsecEstimate, _budget(plate, pieces, errors), per_unit=ARCSEC_PER_RADIAN)
    worst = error.worst_case
    return PlannedAngle(
        included_angle_error_arcsec=error,
        included_angle_tolerance_arcsec=tolerance_arcsec,
        tolerance_used_percent=None if worst is None else 100.0 * worst / tolerance_arcsec,
        forecast=forecast(
            error.value,
            -tolerance_arcsec,
            tolerance_arcsec,
            error.expanded_uncertainty,
            complete=not error.not_stated,
        ),
    )


def _budget(plate: PlateOnStack, pieces: Sequence[Piece], errors: AngleContributions) -> Budget:
    """The budget of the included angle in radians: that of the plate, blocks and wheel added."""
    known = materials()
    warm = errors.temperature_celsius
    shares = _material_shares(pieces)
    set_up = SetUp(
        plate.center_distance,
        plate.angle_rad,
        temperature_offset=0.0 if warm is None else warm - REFERENCE_CELSIUS,
        block_expansion=math.fsum(known[name].coefficient * part for name, part in shares.items()),
        plate_expansion=known[errors.plate_material].coefficient,
    )
    stated: dict[Term, float | None] = {
        "center-distance": errors.center_distance_tolerance,
        "plate-expansion": known[errors.plate_material].spread,
        "axis-yaw": errors.axis_yaw_arcsec,
        "axis-pitch": errors.axis_pitch_arcsec,
    }
    values = {term: value for term, value in stated.items() if value is not None}
    stack = blocks_budget(pieces, plate.units)
    not_stated = (*stack.not_stated, *_not_stated(errors))
    whole = budget(ErrorInputs(set_up, values, not_stated=not_stated))
    slope = sensitivity(set_up, "stack")
    contributions = (
        *(replace(part, sensitivity=slope, unit="length") for part in stack.contributions),
        *_of_expansion(set_up, shares),
        *whole.contributions,
        *_of_wheel_face(errors),
    )
    offset = whole.offset + plate.off_rad
    return of_included_angle(replace(whole, contributions=contributions, offset=offset))


def _of_expansion(set_up: SetUp, shares: dict[str, float]) -> Iterator[Contribution]:
    """What the blocks' coefficients may be off, off 20 °C: one contribution a material."""
    if not set_up.temperature_offset:
        return
    slope, unit = sensitivity(set_up, "block-expansion"), unit_of("block-expansion")
    for name, part in shares.items():
        spread = materials()[name].spread
        yield Contribution("block-expansion", spread, sensitivity=slope * part, unit=unit)


def _of_wheel_face(errors: AngleContributions) -> Iterator[Contribution]:
    if errors.wheel_face_arcsec is not None:
        slope = 1.0 / ARCSEC_PER_RADIAN
        yield Contribution(
            "wheel-face", errors.wheel_face_arcsec, sensitivity=slope, unit="arcsecond"
        )


def _material_shares(pieces: Sequence[Piece]) -> dict[str, float]:
    """Part of the stack's height that is of each material; the parts sum to 1."""
    height = sum(piece.size for piece in pieces)
    shares = dict.fromkeys((piece.material for piece in pieces), 0.0)
    for piece in pieces:
        shares[piece.material] += piece.size / height
    return shares


def _not_stated(errors: AngleContributions) -> tuple[str, ...]:
    """Errors of the set-up that were left out."""
    names = (
        "center_distance_tolerance",
        "axis_pitch_arcsec",
        "axis_yaw_arcsec",
        "wheel_face_arcsec",
        "temperature_celsius",
    )
    return tuple(name for name in names if getattr(errors, name) is None)
