"""Every way of a shop for a feature: those that can, and those that cannot."""

from collections.abc import Iterator, Sequence

from halfangle_service.topics.jobs.plan.features import Wanted
from halfangle_service.topics.jobs.plan.shop.equipment import (
    PlanCompoundPlate,
    PlanEquipment,
    PlanSinePlate,
)
from halfangle_service.topics.jobs.plan.shop.reading import placed
from halfangle_service.topics.jobs.plan.ways.against import (
    against_internal,
    grinds_a_socket,
    no_blocks,
    one_angle_only,
    one_view_only,
)
from halfangle_service.topics.jobs.plan.ways.bounds import WorkShare
from halfangle_service.topics.jobs.plan.ways.by_wheel import swivelled_workhead, wheel_side
from halfangle_service.topics.jobs.plan.ways.compound_plate import compound_ways, job_on
from halfangle_service.topics.jobs.plan.ways.dressed_wheel import dressed_wheel_ways
from halfangle_service.topics.jobs.plan.ways.sine_plate import sine_plate_ways
from halfangle_service.topics.jobs.plan.ways.turned_in_plan import turned_in_plan_ways
from halfangle_service.topics.jobs.plan.ways.way import RuledOut, ShopBox, Way


def every_way(
    wanted: Wanted, shop: PlanEquipment, boxes: Sequence[ShopBox], max_blocks: int
) -> Iterator[Way | RuledOut]:
    """Every way of the shop, those that can and those that cannot."""
    of_socket = grinds_a_socket(wanted, shop.internal_spindle)
    share = _share(shop, boxes, max_blocks)
    for path, plate in placed("sine_plates", shop.sine_plates):
        yield from _on_plate(wanted, shop, plate, path, boxes, max_blocks, share)
    for path, compound in placed("compound_plates", shop.compound_plates):
        yield from _on_compound(wanted, shop, compound, path, boxes, max_blocks, share)
    for path, wheel in placed("dressed_wheels", shop.dressed_wheels):
        if wanted.normal is not None:
            yield one_angle_only(wanted, "dressed-wheel", wheel.name, path)
        else:
            yield from dressed_wheel_ways(
                wanted, wheel, f"{path}/", boxes, max_blocks, share, of_socket
            )
    for path, side in placed("wheel_sides", shop.wheel_sides):
        if wanted.normal is not None:
            yield one_angle_only(wanted, "wheel-side", side.name, path)
        else:
            yield wheel_side(wanted, side, f"{path}/", of_socket)
    for path, head in placed("swivelled_workheads", shop.swivelled_workheads):
        yield swivelled_workhead(wanted, head, f"{path}/", of_socket)


def _share(shop: PlanEquipment, boxes: Sequence[ShopBox], max_blocks: int) -> WorkShare:
    """The part of the work for each of the ways that blocks set."""
    set_by_blocks = (shop.sine_plates, shop.compound_plates, shop.dressed_wheels)
    plates = sum(len(entries or ()) for entries in set_by_blocks)
    return WorkShare.of(boxes, max_blocks, plates * len(boxes))


def _on_compound(
    wanted: Wanted,
    shop: PlanEquipment,
    compound: PlanCompoundPlate,
    path: str,
    boxes: Sequence[ShopBox],
    max_blocks: int,
    share: WorkShare,
) -> Iterator[Way | RuledOut]:
    """The ways on one compound plate, with each set of blocks."""
    if wanted.normal is None:
        yield one_view_only(compound.name, path, base_alone=not shop.sine_plates)
    elif not boxes:
        yield no_blocks("compound-sine-plate", compound.name)
    else:
        for box in boxes:
            job = job_on(wanted, wanted.normal, compound, f"{path}/", box, max_blocks, share)
            yield from compound_ways(job)


def _on_plate(
    wanted: Wanted,
    shop: PlanEquipment,
    plate: PlanSinePlate,
    path: str,
    boxes: Sequence[ShopBox],
    max_blocks: int,
    share: WorkShare,
) -> Iterator[Way | RuledOut]:
    """The ways on one sine plate, with each set of blocks."""
    why = against_internal(wanted, shop.internal_spindle)
    if why is not None:
        yield RuledOut("sine-plate", (plate.name,), *why)
    elif wanted.normal is not None and plate.swivel_base is None:
        yield one_angle_only(wanted, "sine-plate", plate.name, f"{path}/swivel_base")
    elif not boxes:
        yield no_blocks("sine-plate", plate.name)
    elif wanted.normal is not None and plate.swivel_base is not None:
        turning = (wanted.normal, plate, plate.swivel_base, f"{path}/")
        yield from turned_in_plan_ways(wanted, *turning, boxes, max_blocks, share)
    else:
        yield from sine_plate_ways(
            wanted, plate, f"{path}/", boxes, max_blocks, share, shop.internal_spindle
        )
