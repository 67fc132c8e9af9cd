"""The plate that levels the part: its stack of the blocks there are, its angle's budget."""

import math
from dataclasses import replace

from pydantic import Field

from halfangle_service.errors import Disagreement, Impossible
from halfangle_service.fields import Length, Units, VeeAngle, from_tenth_nm, to_tenth_nm
from halfangle_service.fields.plates import (
    BaseStep,
    CenterDistance,
    ReachField,
    ResolutionField,
    to_set,
)
from halfangle_service.fields.set_up_errors import (
    SET_UP_TERMS,
    Limit,
    SetUpErrorFields,
    not_stated_of,
    stated_terms,
    temperature_offset,
)
from halfangle_service.fields.supply import Supply, graded
from halfangle_service.trade.inspection.means import Inspected, InspectedCone, OutOfReach
from halfangle_service.trade.inspection.sine_plate import (
    InspectedFace,
    Levelled,
    PlateSet,
    inspected_on_plate,
    level_cone,
    level_face,
)
from halfangle_service.trade.sine.angle_error import ErrorInputs, budget
from halfangle_service.trade.sine.angle_model import SetUp, Term
from halfangle_service.trade.sine.geometry import angle_for_height, height_for_angle
from halfangle_service.trade.sine.plate_on_blocks import budget_on_blocks, expansion_of_blocks
from halfangle_service.trade.sine.taper_holding import Holding
from halfangle_service.trade.stacks.setting import choose_setting
from halfangle_service.trade.stacks.supply import Piece
from halfangle_service.trade.tables.blocks.tolerances import find_grade
from halfangle_service.trade.tables.materials.expansion import MaterialName, materials
from halfangle_service.trade.uncertainty import Budget, DecisionRule
from halfangle_service.trade.wording import figure

_PATH = "plate/"


class InspectionPlate(SetUpErrorFields):
    """A sine bar or plate with an indicator; its stack is of the blocks sent, else of any."""

    center_distance: CenterDistance
    base_step: BaseStep = 0.0
    largest_angle: ReachField = None
    holding: Holding | None = Field(
        None,
        description="How a cone is held on the plate. Absent: between centers. Does not count for "
        "a face.",
    )
    vee_angle: VeeAngle = Field(
        90.0, description="Included angle of the vee, in degrees; counts for `in-a-vee` only."
    )
    resolution: ResolutionField = None
    stack_error_limit: Limit = Field(
        None,
        description="Largest error ± of the stack's height, in `units`, where no blocks were sent; "
        "those bring their own.",
    )
    block_material: MaterialName | None = Field(
        None, description="Material of the blocks. Absent: steel. A `box` says it of each block."
    )
    indicator_travel: Length | None = Field(
        None,
        description="Travel of the indicator along the surface, in `units`. Absent: four fifths of "
        "the surface's length.",
    )
    indicating_error_limit: Limit = Field(
        None,
        description="Largest error ± of the rise that the indicator reads over its travel, in "
        "`units`: its own, and that of what it runs on.",
    )


def levelled(part: InspectedCone | InspectedFace, plate: InspectionPlate) -> Levelled | OutOfReach:
    """How the plate levels the part, or why it does not."""
    if isinstance(part, InspectedFace):
        return level_face(part, plate.largest_angle)
    vee = math.radians(plate.vee_angle) / 2.0
    return level_cone(part, plate.holding or "between-centers", vee, plate.largest_angle)


def plate_set(
    level: Levelled,
    plate: InspectionPlate,
    pieces: tuple[Piece, ...] | None,
    units: Units,
) -> PlateSet | OutOfReach:
    """The plate on its stack: of these blocks, else rounded to what can be built."""
    offset = plate.base_step
    wanted = height_for_angle(plate.center_distance, level.plate_rad, offset)
    if pieces is None:
        height = to_set(wanted, units, plate.resolution)
    else:
        height = from_tenth_nm(sum(piece.actual for piece in pieces), units)
    if abs(height - offset) >= plate.center_distance:
        return OutOfReach(
            "sine-plate",
            f"The nearest stack, {figure(height, units)}, would stand the plate upright.",
            f"{_PATH}center_distance",
            None,
        )
    off = angle_for_height(plate.center_distance, height, offset) - level.plate_rad
    errors = _budget(level, plate, pieces, units)
    known = replace(errors, offset=errors.offset + (0.0 if height == wanted else off))
    return PlateSet(height, known, plate.indicator_travel, plate.indicating_error_limit)


def part_on_plate(
    part: InspectedCone | InspectedFace,
    plate: InspectionPlate,
    pieces: tuple[Piece, ...] | None,
    units: Units,
    rule: DecisionRule,
) -> Inspected | OutOfReach:
    """What a part comes to on the plate, its stack of these blocks, or of any where None."""
    level = levelled_or_not(part, plate)
    if isinstance(level, OutOfReach):
        return level
    made = plate_set(level, plate, pieces, units)
    if isinstance(made, OutOfReach):
        return made
    return inspected_on_plate(level, made, part.angle, units, rule)


def levelled_or_not(
    part: InspectedCone | InspectedFace, plate: InspectionPlate
) -> Levelled | OutOfReach:
    """How the plate levels the part; out of reach too where a cone lies in no such vee."""
    try:
        return levelled(part, plate)
    except Impossible as lies_not:
        field = f"{_PATH}{next(iter(lies_not.fields))}"
        return OutOfReach("sine-plate", lies_not.detail, field, "Held between centers.")


def _budget(
    level: Levelled, plate: InspectionPlate, pieces: tuple[Piece, ...] | None, units: Units
) -> Budget:
    """Budget of the plate's angle without its stack's own deviation."""
    known = materials()
    of_blocks = known[plate.block_material or "steel"].coefficient
    set_up = SetUp(
        plate.center_distance,
        level.plate_rad,
        face_length=plate.face_length or plate.center_distance,
        temperature_offset=temperature_offset(plate),
        block_expansion=expansion_of_blocks(pieces) if pieces else of_blocks,
        plate_expansion=known[plate.plate_material].coefficient,
        parallelism_on_rolls=plate.face_parallelism_on_rolls,
        stack_offset=plate.base_step,
    )
    values = stated_terms(plate, SET_UP_TERMS)
    values["plate_expansion"] = known[plate.plate_material].spread
    if pieces:
        missing = not_stated_of(plate, SET_UP_TERMS, set_up)
        return budget_on_blocks(set_up, values, missing, pieces, units)
    terms: tuple[Term, ...] = (*SET_UP_TERMS, "stack_error_limit")
    values |= stated_terms(plate, ("stack_error_limit",))
    missing = not_stated_of(plate, terms, set_up)
    shares: dict[str, float] = {plate.block_material or "steel": 1.0}
    return budget(ErrorInputs(set_up, values, not_stated=missing, block_materials=shares))


def stack_of(
    level: Levelled,
    plate: InspectionPlate,
    supply: Supply,
    grade: str | None,
    max_blocks: int,
    units: Units,
) -> tuple[Piece, ...]:
    """The stack of the blocks there are that is nearest to the plate's height."""
    if supply.box.materials != {plate.block_material or "steel"} and plate.block_material:
        raise Disagreement(
            f"The box says the material of each block, and not always {plate.block_material}.",
            fields={f"{_PATH}block_material": "should be left out where a box is sent"},
        )
    wanted = height_for_angle(plate.center_distance, level.plate_rad, plate.base_step)
    pieces = choose_setting(wanted * to_tenth_nm(1.0, units), supply.box, max_blocks).pieces
    if grade is None:
        return pieces
    limits = find_grade(grade)
    return tuple(graded(piece, limits) for piece in pieces)
