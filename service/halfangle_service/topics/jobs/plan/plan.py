"""A job planned: every way of the shop for a feature, proved and ranked."""

from collections.abc import Iterator, Sequence
from typing import Annotated, TypeVar

from pydantic import Field

from halfangle_service.cautions import WHEEL_SAFETY
from halfangle_service.errors import Disagreement, Unreachable, refused_at
from halfangle_service.fields import Count, RequestModel, UnitsField
from halfangle_service.fields.advisories import Advisory, caution, stop
from halfangle_service.fields.estimate import DECISION_RULE, DecisionRuleField
from halfangle_service.fields.numbers import Minutes
from halfangle_service.fields.supply import read_supply
from halfangle_service.operation import Outcome, Source, operation
from halfangle_service.topics.jobs.center.runout_budget import PlannedRunout, planned_runout
from halfangle_service.topics.jobs.center.shank import planned_shank
from halfangle_service.topics.jobs.plan.equipment import (
    PlanBlockSet,
    PlanEquipment,
    PlanSinePlate,
    require_names,
    supply_fields,
)
from halfangle_service.topics.jobs.plan.features import (
    PlanFeature,
    Wanted,
    planned_feature,
    wanted_of,
)
from halfangle_service.topics.jobs.plan.ranking import (
    RANKING,
    best_first,
    planned_way,
    ruled_out_way,
)
from halfangle_service.topics.jobs.plan.result import JobPlanResult
from halfangle_service.topics.jobs.plan.ways.against import (
    against_internal,
    no_blocks,
    one_angle_only,
)
from halfangle_service.topics.jobs.plan.ways.by_wheel import swivelled_workhead, wheel_side
from halfangle_service.topics.jobs.plan.ways.compound_plate import compound_ways
from halfangle_service.topics.jobs.plan.ways.dressed_wheel import dressed_wheel_ways
from halfangle_service.topics.jobs.plan.ways.sine_plate import sine_plate_ways
from halfangle_service.topics.jobs.plan.ways.way import RuledOut, ShopBox, Way
from halfangle_service.trade.unit_slips import require_center_distance

Entry = TypeVar("Entry")

_EQUIPMENT = "equipment/"


class JobPlanRequest(RequestModel):
    """A feature with its tolerances, and what the shop has to make it."""

    units: UnitsField
    job: Annotated[str, Field(min_length=1, max_length=60)] = Field(
        description="Name of the job, for the heading of the plan.",
        examples=["HL-0412 machine center"],
    )
    feature: PlanFeature
    equipment: PlanEquipment = Field(description="What the shop has.")
    pieces: Annotated[int, Count(ge=1, le=1_000_000)] = Field(1, description="Pieces to grind.")
    minutes_per_piece: Minutes = Field(
        10.0, description="Time to grind one piece, in minutes (common practice, no source)."
    )
    decision_rule: DecisionRuleField = DECISION_RULE
    max_blocks: Annotated[int, Count(ge=1, le=8)] = Field(
        5, description="Most blocks that set one plate, under both rolls together."
    )


@operation(
    "jobs.plan",
    relations=(
        "under a flat wheel: plate angle = half angle of a cone, or the face's angle; turned a "
        "quarter, 90° less that",
        "height = center_distance × sin(plate angle) + base_step",
        "included angle error = 2 × plate angle error, as jobs.center has it",
    ),
    sources=(
        Source(
            citation="Derived here: a flat wheel sweeps a plane; the half angle is the angle "
            "between the spin axis and that plane, a face's angle that of the plate to it.",
            standing="derived",
        ),
        Source(
            citation="JCGM 100:2008, 4.3.7 and 5.1.2: rectangular limits, combination.",
            standing="published",
        ),
        Source(
            citation="ISO 14253-1:2017, decision rules: a limit is kept with 95 % probability; "
            "2013: acceptance within the limits less the expanded uncertainty.",
            standing="from-memory",
        ),
        Source(
            citation="Times where the request names none, and the order of ranking.",
            standing="common-practice-no-source",
        ),
    ),
    example={
        "job": "HL-0412 machine center",
        "units": "in",
        "feature": {
            "kind": "center",
            "included_angle": 60,
            "included_angle_tolerance_arcsec": 120,
            "large_diameter": 0.75,
            "shank": {"kind": "taper", "designation": "morse-2"},
            "limit_tir": 0.0003,
        },
        "equipment": {
            "sine_plates": [
                {
                    "name": "5 in plate",
                    "center_distance": 5,
                    "largest_angle": 60,
                    "angle_errors": {
                        "center_distance_error_limit": 0.0001,
                        "roll_difference": 0.00005,
                        "axis_pitch_error_limit_arcsec": 5,
                        "axis_yaw_error_limit_arcsec": 300,
                        "wheel_face_error_limit_arcsec": 20,
                        "temperature_celsius": 22,
                    },
                }
            ],
            "block_sets": [{"name": "toolroom set", "set": "inch-81", "grade": "asme-0"}],
            "runout_errors": {
                "adapter_tir": 0.0001,
                "fixture_tir": 0.00005,
                "indicating_tir": 0.00005,
            },
        },
        "pieces": 5,
    },
    largest_request="4 plates with 4 sets each, stacks of up to 8 blocks from up to 500",
    heavy=True,
)
def plan(request: JobPlanRequest) -> Outcome[JobPlanResult]:
    """Plan of a whole job.

    Every way that the shop has to make a cone, a center, a taper or an angled face, each with its
    settings, its stacks of one box and the errors to expect against the tolerances, ranked by one
    rule; and every way that cannot, with the reason and the nearest that works.
    """
    wanted = wanted_of(request.feature, request.units)
    require_names(request.equipment, _EQUIPMENT)
    found = list(_ways(request, wanted))
    ways = [way for way in found if isinstance(way, Way)]
    ruled_out = [way for way in found if isinstance(way, RuledOut)]
    if not ways:
        raise _nothing_reaches(ruled_out)
    runout = _runout(request.equipment, wanted)
    rows = sorted(
        (
            planned_way(
                way, runout, request.decision_rule, request.pieces, request.minutes_per_piece
            )
            for way in ways
        ),
        key=best_first,
    )
    result = JobPlanResult(
        job=request.job,
        feature=planned_feature(wanted),
        shank=None if wanted.shank is None else planned_shank(wanted.shank, request.units),
        best=rows[0].way if rows[0].forecast in {"holds", "may-not-hold"} else None,
        ranking=RANKING,
        ways=rows,
        ruled_out=[ruled_out_way(way) for way in ruled_out],
    )
    cautions = dict.fromkeys(caution for way in ways for caution in way.cautions)
    return Outcome(result, (*_advisories(result), *cautions))


def _ways(request: JobPlanRequest, wanted: Wanted) -> Iterator[Way | RuledOut]:
    """Every way of the shop, those that can and those that cannot."""
    shop = request.equipment
    boxes = [_box(place, blocks, request) for place, blocks in enumerate(shop.block_sets or ())]
    for path, plate in _placed("sine_plates", shop.sine_plates):
        require_center_distance(plate.center_distance, request.units, f"{path}/center_distance")
        yield from _on_plate(request, wanted, plate, path, boxes)
    for path, compound in _placed("compound_plates", shop.compound_plates):
        if not boxes:
            yield no_blocks("compound-sine-plate", compound.name)
        for box in boxes:
            yield from compound_ways(wanted, compound, f"{path}/", box, request.max_blocks)
    for path, wheel in _placed("dressed_wheels", shop.dressed_wheels):
        if wanted.normal is not None:
            yield one_angle_only(wanted, "dressed-wheel", wheel.name, path)
        else:
            yield from dressed_wheel_ways(wanted, wheel, f"{path}/", boxes, request.max_blocks)
    for path, side in _placed("wheel_sides", shop.wheel_sides):
        if wanted.normal is not None:
            yield one_angle_only(wanted, "wheel-side", side.name, path)
        else:
            yield wheel_side(wanted, side, f"{path}/")
    for path, head in _placed("swivelled_workheads", shop.swivelled_workheads):
        yield swivelled_workhead(wanted, head, f"{path}/")


def _placed(field: str, entries: Sequence[Entry] | None) -> Iterator[tuple[str, Entry]]:
    """Things of one kind, each with its place in the request."""
    for place, entry in enumerate(entries or ()):
        yield f"{_EQUIPMENT}{field}/{place}", entry


def _on_plate(
    request: JobPlanRequest,
    wanted: Wanted,
    plate: PlanSinePlate,
    path: str,
    boxes: Sequence[ShopBox],
) -> Iterator[Way | RuledOut]:
    """The ways on one sine plate, with each set of blocks."""
    why = against_internal(wanted, request.equipment.internal_spindle)
    if why is not None:
        yield RuledOut("sine-plate", (plate.name,), *why)
    elif wanted.normal is not None:
        yield one_angle_only(wanted, "sine-plate", plate.name, path)
    elif not boxes:
        yield no_blocks("sine-plate", plate.name)
    else:
        for box in boxes:
            yield from sine_plate_ways(wanted, plate, f"{path}/", box, request.max_blocks)


def _box(place: int, blocks: PlanBlockSet, request: JobPlanRequest) -> ShopBox:
    """A set, read; refuses a material of it that its box says otherwise."""
    path = f"{_EQUIPMENT}block_sets/{place}"
    with refused_at(f"{path}/"):
        supply = read_supply(supply_fields(blocks, request.units))
    material = blocks.block_material
    if blocks.box and material and supply.box.materials != {material}:
        raise Disagreement(
            f"The box says the material of each block, and not always {material}.",
            fields={f"{path}/block_material": "should be left out where a box is sent"},
        )
    return ShopBox(blocks.name, path, supply, blocks.grade, material)


def _runout(equipment: PlanEquipment, wanted: Wanted) -> PlannedRunout | None:
    if wanted.limit_tir is None:
        return None
    return planned_runout(equipment.runout_errors, wanted.limit_tir, wanted.angle_rad)


def _nothing_reaches(ways: Sequence[RuledOut]) -> Unreachable:
    """The refusal where no way can: each with its reason, its field and the nearest that works."""
    if not ways:
        return Unreachable(
            "The shop has nothing that sets an angle.",
            fields={f"{_EQUIPMENT}sine_plates": "should name a plate, or another way be named"},
        )
    nearest = next((way.instead for way in ways if way.instead), None)
    return Unreachable(
        f"No way of the shop makes this feature. {ways[0].reason} {nearest or ''}".rstrip(),
        fields={way.field: way.reason for way in ways},
        more={"ruled_out": [ruled_out_way(way).model_dump() for way in ways]},
    )


def _advisories(result: JobPlanResult) -> Iterator[Advisory]:
    yield WHEEL_SAFETY
    best = result.ways[0]
    if best.forecast == "does-not-hold":
        yield stop(
            "no-way-fits",
            "No way of the shop keeps every limit; the errors to expect stand beside each. Do not "
            "grind this feature by any of them as it stands.",
        )
    elif best.forecast == "not-stated":
        yield caution(
            "no-way-known",
            "Nothing can be said for any way that is not ruled out: none of its errors was stated.",
        )
