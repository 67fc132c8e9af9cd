"""The sine plate against the part: what it comes to, or why it does not reach."""

from dataclasses import dataclass

from halfangle_service.cautions import STEEP_DEGREES, steep_angle
from halfangle_service.fields import from_tenth_nm
from halfangle_service.fields.advisories import Advisory
from halfangle_service.fields.blocks import SOURCES
from halfangle_service.fields.choice import sent_of
from halfangle_service.fields.inspection.plate import (
    InspectionPlate,
    levelled_or_not,
    part_on_plate,
    stack_of,
)
from halfangle_service.fields.plates import arcsec_per_step
from halfangle_service.fields.supply import read_supply
from halfangle_service.topics.inspection.plan.request import InspectionPlanRequest
from halfangle_service.trade.inspection.means import Inspected, InspectedCone, OutOfReach
from halfangle_service.trade.inspection.sine_plate import InspectedFace
from halfangle_service.trade.stacks.supply import Piece
from halfangle_service.trade.unit_slips import require_center_distance, require_resolution


@dataclass(frozen=True, slots=True)
class Found:
    """What a means comes to, the blocks of its plate's stack, and what a hand would add."""

    outcome: Inspected | OutOfReach
    blocks: tuple[float, ...] = ()
    advisories: tuple[Advisory, ...] = ()


def on_plate(
    request: InspectionPlanRequest, plate: InspectionPlate, part: InspectedCone | InspectedFace
) -> Found:
    """The part on the sine plate, its stack of the blocks sent, where some were."""
    units = request.units
    require_center_distance(plate.center_distance, units, "plate/center_distance")
    require_resolution(plate.resolution, units, "plate/resolution")
    level = levelled_or_not(part, plate)
    if isinstance(level, OutOfReach):
        return Found(level)
    pieces: tuple[Piece, ...] | None = None
    said: tuple[Advisory, ...] = ()
    if sent_of(request, *SOURCES):
        supply = read_supply(request)
        pieces = stack_of(level, plate, supply, request.grade, request.max_blocks, units)
        said = supply.advisories
    found = part_on_plate(part, plate, pieces, units, request.decision_rule)
    if isinstance(found, OutOfReach):
        return Found(found, advisories=said)
    blocks = tuple(from_tenth_nm(piece.size, units) for piece in pieces or ())
    per_step = arcsec_per_step(plate.center_distance, level.plate_rad, units)
    steep = steep_angle(level.plate_degrees, per_step, STEEP_DEGREES)
    return Found(found, blocks, (*said, *steep))
