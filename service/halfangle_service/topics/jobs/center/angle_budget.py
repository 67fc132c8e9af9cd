"""The error of the included angle to expect from the set-up, against its tolerance."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import Annotated

from pydantic import Field

from halfangle_service.fields import (
    ARCSEC_PER_RADIAN,
    ArcsecOut,
    NonNegativeArcsec,
    ResultModel,
    Unit,
)
from halfangle_service.fields.estimate import ArcsecEstimate, estimate
from halfangle_service.fields.set_up_errors import (
    SET_UP_TERMS,
    SetUpErrorFields,
    not_stated_of,
    stated_terms,
    temperature_offset,
)
from halfangle_service.fields.supply import graded
from halfangle_service.topics.jobs.center.setting import PlateOnStack
from halfangle_service.trade.sine.angle_error import (
    of_included_angle,
)
from halfangle_service.trade.sine.angle_model import SetUp
from halfangle_service.trade.sine.plate_on_blocks import budget_on_blocks, expansion_of_blocks
from halfangle_service.trade.stacks.supply import Piece
from halfangle_service.trade.tables.blocks.tolerances import find_grade
from halfangle_service.trade.tables.materials.expansion import MaterialName, materials
from halfangle_service.trade.uncertainty import (
    Budget,
    Contribution,
    DecisionRule,
    Forecast,
    forecast_of,
)

WheelFaceError = Annotated[
    NonNegativeArcsec | None,
    Field(
        description="Largest slope ± of the wheel's face along the slant, from breakdown "
        "since dressing.",
        examples=[20.0],
    ),
]


class PlateErrorFields(SetUpErrorFields):
    """Errors of a set-up on a plate under a flat wheel, each as ± a limit.

    A limit that is not sent is not stated: nothing counts for it, and the plan names it. 0 says
    that there is no such error. The blocks' own errors come with `grade` or `box`, and the stack's
    deviation from the height is known.
    """

    wheel_face_error_limit_arcsec: WheelFaceError = None


class AngleContributions(PlateErrorFields):
    """Errors of the set-up that turn the cone's half angle, each as ± a limit.

    A limit that is not sent is not stated: nothing counts for it, and the plan names it. 0 says
    that there is no such error. The blocks' own errors come with `grade` or `box`, and the stack's
    deviation from the height is known.
    """

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
        description="Whether this set-up will hold the tolerance, by `decision_rule`; never "
        "`holds` with something not stated."
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
    rule: DecisionRule,
) -> PlannedAngle:
    """Give the angle's budget, on a stack of these blocks, against its tolerance."""
    whole = of_included_angle(plate_errors(plate, pieces, errors))
    error = estimate(ArcsecEstimate, whole, per_unit=ARCSEC_PER_RADIAN)
    worst, limit = error.worst_case, tolerance_arcsec / ARCSEC_PER_RADIAN
    return PlannedAngle(
        included_angle_error_arcsec=error,
        included_angle_tolerance_arcsec=tolerance_arcsec,
        tolerance_used_percent=None if worst is None else 100.0 * worst / tolerance_arcsec,
        forecast=forecast_of(whole, -limit, limit, rule),
    )


def plate_errors(
    plate: PlateOnStack,
    pieces: Sequence[Piece],
    errors: PlateErrorFields,
    low: Sequence[Piece] = (),
) -> Budget:
    """The budget of the plate's angle in radians: that of the plate, blocks and wheel added.

    `pieces` stand under the high roll, `low` under the other.
    """
    whole = set_up_errors(plate, pieces, errors, low, own=("wheel_face_error_limit_arcsec",))
    return replace(whole, contributions=(*whole.contributions, *_of_wheel_face(errors)))


def set_up_errors(
    plate: PlateOnStack,
    pieces: Sequence[Piece],
    errors: SetUpErrorFields,
    low: Sequence[Piece] = (),
    own: Sequence[str] = (),
) -> Budget:
    """The budget of the plate's angle in radians: that of the plate, its blocks added.

    `own` are fields of the errors beside those of a set-up, of which it says what was not stated.
    """
    known = materials()
    set_up = SetUp(
        plate.center_distance,
        plate.angle_rad,
        face_length=errors.face_length or plate.center_distance,
        temperature_offset=temperature_offset(errors),
        block_expansion=expansion_of_blocks(pieces, low),
        plate_expansion=known[errors.plate_material].coefficient,
        parallelism_on_rolls=errors.face_parallelism_on_rolls,
        stack_offset=plate.offset,
    )
    values = stated_terms(errors, SET_UP_TERMS)
    values["plate_expansion"] = known[errors.plate_material].spread
    missing = not_stated_of(errors, SET_UP_TERMS, set_up, own)
    whole = budget_on_blocks(set_up, values, missing, pieces, plate.units, low)
    return replace(whole, offset=whole.offset + plate.off_rad)


def _of_wheel_face(errors: PlateErrorFields) -> Iterator[Contribution]:
    if errors.wheel_face_error_limit_arcsec is not None:
        slope = 1.0 / ARCSEC_PER_RADIAN
        yield Contribution(
            "wheel_face_error_limit_arcsec",
            errors.wheel_face_error_limit_arcsec,
            sensitivity=slope,
            unit="arcsecond",
        )
