"""The shop of a job: its equipment read, and refused where it contradicts itself."""

from collections.abc import Iterator, Sequence
from typing import TypeVar

from halfangle_service.errors import Disagreement, Unreachable, refused_at
from halfangle_service.fields.compound.plates import plates_of
from halfangle_service.fields.compound.raised_sides import sides_of
from halfangle_service.fields.supply import read_supply
from halfangle_service.fields.wheel.dresser import SineBaseDresser
from halfangle_service.topics.jobs.center.runout_budget import RunoutContributions
from halfangle_service.topics.jobs.center.shank import Shank, StraightShank
from halfangle_service.topics.jobs.plan.shop.equipment import (
    NAMED,
    PlanAdapter,
    PlanBlockSet,
    PlanEquipment,
    supply_fields,
)
from halfangle_service.topics.jobs.plan.ways.way import ShopBox
from halfangle_service.trade.tables.blocks.tolerances import find_grade
from halfangle_service.trade.tables.tapers.designations import find_standard
from halfangle_service.trade.unit_slips import require_center_distance, require_wheel_diameter
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
    for path, head in placed("swivelled_workheads", equipment.swivelled_workheads):
        require_wheel_diameter(head.wheel_diameter, units, f"{path}/wheel_diameter")
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
            first = seen.setdefault(entry.name, path)
            if first != path:
                raise Disagreement(
                    f"Two things in the shop are called {entry.name!r}.",
                    fields={f"{path}/name": f"repeats {first}/name"},
                )


def read_boxes(equipment: PlanEquipment, units: Units) -> list[ShopBox]:
    """The sets of blocks, read; refuses what each contradicts."""
    return [
        _box(path, blocks, units) for path, blocks in placed("block_sets", equipment.block_sets)
    ]


def _box(path: str, blocks: PlanBlockSet, units: Units) -> ShopBox:
    """A set, read; refuses a material of it that its box says otherwise."""
    with refused_at(f"{path}/"):
        supply = read_supply(supply_fields(blocks, units))
        if blocks.grade is not None:
            find_grade(blocks.grade)
    material = blocks.block_material
    if blocks.box and material and supply.box.materials != {material}:
        raise Disagreement(
            f"The box says the material of each block, and not always {material}.",
            fields={f"{path}/block_material": "should be left out where a box is sent"},
        )
    return ShopBox(blocks.name, path, supply, blocks.grade, material)


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
