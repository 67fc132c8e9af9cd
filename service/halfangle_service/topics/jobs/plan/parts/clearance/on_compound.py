"""A compound face: its work as a block on both plates, under the flat wheel."""

from collections.abc import Iterator

from halfangle_service.fields.clearance.set_up import plate_of
from halfangle_service.topics.jobs.plan.parts.clearance.answer import (
    Fouled,
    PlanClearance,
    answered,
    not_known,
)
from halfangle_service.topics.jobs.plan.parts.clearance.faces import (
    WORK,
    holder_of,
    require_face,
)
from halfangle_service.topics.jobs.plan.parts.clearance.under import Asked, WheelAbout
from halfangle_service.topics.jobs.plan.shop.equipment import PlanCompoundPlate
from halfangle_service.topics.jobs.plan.shop.standing import PlanHingedBody
from halfangle_service.trade.clearance.compound import (
    CompoundStand,
    HingedBody,
    SlopedBlock,
    compound_gaps,
)
from halfangle_service.trade.clearance.stand import Stand
from halfangle_service.trade.sine.compound_layings import Laid


def face_on_compound(
    asked: Asked, wheel: WheelAbout, plate: PlanCompoundPlate, path: str, laid: Laid
) -> PlanClearance | Fouled:
    """Clearance of work laid on a compound plate, or why it cannot be used."""
    wanted, heads = asked.wanted, wheel.heads()
    block, holder = _block(asked), plate.work_holder
    base, upper = plate.base_body, plate.upper_body
    missing = list(_lacks(asked, wheel, plate, path))
    if missing or heads is None or block is None or holder is None or not base or not upper:
        return not_known(missing)
    made = CompoundStand(
        block,
        holder_of(holder),
        _hinged(upper, plate.upper_center_distance),
        _hinged(base, plate.base_center_distance),
        laid.hinges,
        plate.base_axis,
        laid.laying.rotation,
    )
    solids, table, face = made.solids()
    past = max(asked.stroke.past_large_end, asked.stroke.past_small_end)
    highest = max(float(at[2]) for solid in solids for at in solid.corners)
    stand = Stand(
        compound_gaps(solids, face, heads, past),
        asked.margin,
        base.length,
        max(0.0, highest) - table,
        wheel.guarded,
    )
    return answered(
        stand,
        asked.room,
        wanted.units,
        f"{path}work_holder",
        instead="Put the work higher on parallels, or lay it the other way round.",
    )


def _block(asked: Asked) -> SlopedBlock | None:
    """The work; None where it was not stated. Refuses one that the face does not fit."""
    wanted = asked.wanted
    work, normal = wanted.work_body, wanted.normal
    if work is None or work.base_width is None or normal is None:
        return None
    require_face(work, wanted, 0.0)
    sizes = (work.base_length, work.base_width, work.face_height)
    return SlopedBlock(sizes, wanted.rise, normal)


def _hinged(body: PlanHingedBody, center_distance: float) -> HingedBody:
    return HingedBody(plate_of(body, center_distance), body.plate_width)


def _lacks(asked: Asked, wheel: WheelAbout, plate: PlanCompoundPlate, path: str) -> Iterator[str]:
    if asked.wanted.work_body is None:
        yield WORK
    elif asked.wanted.work_body.base_width is None:
        yield f"{WORK}/base_width"
    for name in ("base_body", "upper_body", "work_holder"):
        if getattr(plate, name) is None:
            yield f"{path}{name}"
    yield from wheel.missing()
    yield from asked.missing()
