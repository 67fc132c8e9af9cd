"""The budget of a plate's angle: its set-up, the blocks that it stands on, the wheel."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from halfangle_service.fields import ARCSEC_PER_RADIAN
from halfangle_service.fields.set_up_errors import (
    SET_UP_TERMS,
    SetUpErrorFields,
    not_stated_of,
    stated_terms,
    temperature_offset,
)
from halfangle_service.fields.supply import graded
from halfangle_service.topics.jobs.plan.shop.errors import PlateErrorFields
from halfangle_service.topics.jobs.plan.ways.plate_on_stack import PlateOnStack
from halfangle_service.trade.sine.angle_model import SetUp
from halfangle_service.trade.sine.plate_on_blocks import budget_on_blocks, expansion_of_blocks
from halfangle_service.trade.stacks.supply import Piece
from halfangle_service.trade.tables.blocks.tolerances import find_grade
from halfangle_service.trade.tables.materials.expansion import MaterialName, materials
from halfangle_service.trade.uncertainty import Budget, Contribution


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
