"""The shop of a job: its equipment read, and refused where it contradicts itself."""

from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import replace
from typing import TypeVar

from halfangle_service.errors import Disagreement, Refusal, Unreachable, refused_at
from halfangle_service.fields.blocks import SOURCES, BlockGradeFields
from halfangle_service.fields.choice import sent_of
from halfangle_service.fields.clearance.set_up import fixture_of, heads_of, plate_of
from halfangle_service.fields.compound.hinges import WHICH
from halfangle_service.fields.compound.plates import plates_of
from halfangle_service.fields.compound.raised_sides import sides_of
from halfangle_service.fields.inspection.against import require_film
from halfangle_service.fields.supply import read_supply
from halfangle_service.fields.wheel.dresser import SineBaseDresser
from halfangle_service.topics.jobs.plan.shank import Shank, StraightShank
from halfangle_service.topics.jobs.plan.shop.equipment import (
    NAMED,
    PlanAdapter,
    PlanBlockSet,
    PlanEquipment,
    supply_fields,
)
from halfangle_service.topics.jobs.plan.shop.errors import RunoutContributions
from halfangle_service.topics.jobs.plan.ways.way import ShopBox
from halfangle_service.trade.tables.blocks.tolerances import find_grade
from halfangle_service.trade.tables.materials.expansion import MaterialName
from halfangle_service.trade.tables.tapers.designations import find_standard
from halfangle_service.trade.unit_slips import (
    require_any_wheel_diameter,
    require_center_distance,
    require_resolution,
    require_wheel_diameter,
)
from halfangle_service.trade.units import Units
from halfangle_service.trade.wording import figure

EQUIPMENT = "equipment"
Entry = TypeVar("Entry")


def placed(field: str, entries: Sequence[Entry] | None) -> Iterator[tuple[str, Entry]]:
    """Things of one kind, each with its place in the request."""
    for place, entry in enumerate(entries or ()):
        yield f"{EQUIPMENT}/{field}/{place}", entry


def require_consistent(equipment: PlanEquipment, units: Units) -> None:
    """Refuse two things of one name, and things of a size or kind that there are not."""
    _require_names(equipment)
    for path, plate in placed("sine_plates", equipment.sine_plates):
        require_center_distance(plate.center_distance, units, f"{path}/center_distance")
    for path, compound in placed("compound_plates", equipment.compound_plates):
        with refused_at(f"{path}/"):
            plates_of(compound, units)
            sides_of(compound)
    for path, wheel in placed("dressed_wheels", equipment.dressed_wheels):
        require_wheel_diameter(wheel.wheel_diameter, units, f"{path}/wheel_diameter")
        if isinstance(wheel.dresser, SineBaseDresser):
            distance = wheel.dresser.center_distance
            require_center_distance(distance, units, f"{path}/dresser/center_distance")
        else:
            sent = sent_of(wheel, "stack_error_limit")
            wheel.dresser.refuse_blocks(f"{path}/{name}" for name in sent)
    for path, head in placed("swivelled_workheads", equipment.swivelled_workheads):
        require_wheel_diameter(head.wheel_diameter, units, f"{path}/wheel_diameter")
    measured_on = equipment.measuring.plate
    if measured_on is not None:
        path = f"{EQUIPMENT}/measuring/plate"
        require_center_distance(measured_on.center_distance, units, f"{path}/center_distance")
        require_resolution(measured_on.resolution, units, f"{path}/resolution")
    spindle = equipment.internal_spindle
    if spindle is not None:
        path = f"{EQUIPMENT}/internal_spindle/wheel_diameter"
        require_any_wheel_diameter(spindle.wheel_diameter, units, path)
    if equipment.measuring.bluing is not None:
        require_film(equipment.measuring.bluing, units, f"{EQUIPMENT}/measuring/bluing/")
    _require_bodies(equipment)
    _require_heads(equipment)
    if equipment.wheel is not None:
        require_wheel_diameter(equipment.wheel.diameter, units, f"{EQUIPMENT}/wheel/diameter")
    for path, adapter in placed("adapters", equipment.adapters):
        if isinstance(adapter.shank, StraightShank):
            continue
        find_standard(adapter.shank.designation, field=f"{path}/shank/designation")


def _require_names(equipment: PlanEquipment) -> None:
    """Refuse two things of one name: the plan could not say which it means."""
    seen: dict[str, str] = {}
    for field in NAMED:
        for path, entry in placed(field, getattr(equipment, field)):
            require_name(entry.name, f"{path}/name")
            first = seen.setdefault(plain_name(entry.name), path)
            if first != path:
                raise Disagreement(
                    f"Two things in the shop are called {entry.name!r}.",
                    fields={f"{path}/name": f"repeats {first}/name"},
                )


def plain_name(name: str) -> str:
    """A name as people tell it from others: without blanks about it, in small letters."""
    return " ".join(name.split()).casefold()


def require_name(name: str, field: str) -> None:
    """Refuse a name that nobody could read: of blanks, or with signs that are not printed."""
    if not name.strip() or not name.isprintable():
        raise Disagreement(
            "A name is there to be read.",
            fields={field: "should be printed signs, not blanks alone"},
        )


def _require_bodies(equipment: PlanEquipment) -> None:
    """Refuse what cannot stand under a wheel: its figures contradict one another."""
    for path, plate in placed("sine_plates", equipment.sine_plates):
        if plate.plate_body is not None:
            with _body_at(path, "plate_body"):
                plate_of(plate.plate_body, plate.center_distance)
    for path, compound in placed("compound_plates", equipment.compound_plates):
        for which in WHICH:
            body = getattr(compound, f"{which}_body")
            if body is not None:
                with _body_at(path, f"{which}_body", f"{which}_center_distance"):
                    plate_of(body, getattr(compound, f"{which}_center_distance"))
    if equipment.spin_fixture is not None:
        with refused_at(f"{EQUIPMENT}/spin_"):
            fixture_of(equipment.spin_fixture)


@contextmanager
def _body_at(path: str, body: str, center_distance: str = "center_distance") -> Iterator[None]:
    """Name the fields of a plate as the maths has them by their places in the request."""
    try:
        yield
    except Refusal as refusal:
        own = {"plate/center_distance": f"{path}/{center_distance}"}
        raise refusal.renamed(
            lambda field: own.get(field, f"{path}/{body}/{field.removeprefix('plate/')}")
        ) from None


def _require_heads(equipment: PlanEquipment) -> None:
    """Refuse wheels that are no wheels of their heads."""
    wheel = equipment.wheel
    if wheel is not None and wheel.head is not None and wheel.width is not None:
        with _head_at(f"{EQUIPMENT}/wheel", "diameter", "width"):
            heads_of(wheel.head, wheel.diameter, wheel.width)
    for field in ("dressed_wheels", "wheel_sides", "swivelled_workheads"):
        for path, owner in placed(field, getattr(equipment, field)):
            if owner.head is not None and owner.wheel_diameter and owner.wheel_width:
                with _head_at(path, "wheel_diameter", "wheel_width"):
                    heads_of(owner.head, owner.wheel_diameter, owner.wheel_width)


@contextmanager
def _head_at(path: str, diameter: str, width: str) -> Iterator[None]:
    """Name the fields of a wheel's head as the maths has them by their places in the request."""
    own = {"wheel/diameter": diameter, "wheel/width": width}
    try:
        yield
    except Refusal as refusal:
        raise refusal.renamed(
            lambda field: f"{path}/{own.get(field, 'head/' + field.removeprefix('wheel/'))}"
        ) from None


def read_boxes(equipment: PlanEquipment, units: Units) -> list[ShopBox]:
    """The sets of blocks, read; refuses what each contradicts."""
    return [
        _box(path, blocks, units) for path, blocks in placed("block_sets", equipment.block_sets)
    ]


def _box(path: str, blocks: PlanBlockSet, units: Units) -> ShopBox:
    """A set of the shop's, read."""
    with refused_at(f"{path}/"):
        box = box_of(blocks.name, supply_fields(blocks, units), blocks.block_material)
    if blocks.grade is not None:
        find_grade(blocks.grade, field=f"{path}/grade")
    return replace(box, path=path)


def box_of(
    name: str,
    stated: BlockGradeFields,
    material: MaterialName | None,
    field: str = "block_material",
) -> ShopBox:
    """Blocks, read; refuses a material of them, stated in `field`, that their box says otherwise.

    Their place in the request is the field that says which they are.
    """
    supply = read_supply(stated)
    if stated.box and material and supply.box.materials != {material}:
        raise Disagreement(
            f"The box says the material of each block, and not always {material}.",
            fields={field: "should be left out where a box is sent"},
        )
    source = next(name for name in SOURCES if getattr(stated, name) is not None)
    return ShopBox(name, source, supply, stated.grade, material)


def holding_of(
    equipment: PlanEquipment, shank: Shank | None, units: Units
) -> tuple[str | None, RunoutContributions]:
    """The adapter that takes a shank, by its name, and the runout that the holding adds.

    No adapter where the shop names none, or no shank is stated. Refuses a shank that none takes.
    """
    errors = equipment.runout_errors
    if shank is None or not equipment.adapters:
        return None, errors
    fitting = [adapter for adapter in equipment.adapters if _takes(adapter, shank)]
    if not fitting:
        there = ", ".join(
            f"{adapter.name} {_words(adapter.shank, units)}" for adapter in equipment.adapters
        )
        raise Unreachable(
            f"No adapter of the shop takes a shank of {_words(shank, units)}; there are: {there}.",
            fields={f"{EQUIPMENT}/adapters": "should hold one that takes the shank"},
        )
    # What is known to run truest is taken; what nothing is known of comes last.
    best = min(fitting, key=lambda adapter: (adapter.adapter_tir is None, adapter.adapter_tir or 0))
    if best.adapter_tir is None:
        return best.name, errors
    return best.name, errors.model_copy(update={"adapter_tir": best.adapter_tir})


def _takes(adapter: PlanAdapter, shank: Shank) -> bool:
    """True where an adapter's seat is that of the shank."""
    seat = adapter.shank
    if isinstance(seat, StraightShank) or isinstance(shank, StraightShank):
        return seat == shank
    return find_standard(seat.designation) == find_standard(
        shank.designation, field="feature/shank/designation"
    )


def _words(shank: Shank, units: Units) -> str:
    """A shank as a sentence has it."""
    if isinstance(shank, StraightShank):
        return figure(shank.diameter, units)
    return find_standard(shank.designation, field="feature/shank/designation").name
