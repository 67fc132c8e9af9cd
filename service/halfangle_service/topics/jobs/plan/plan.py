"""A job planned: every way of the shop for a feature, proved and ranked."""

from collections.abc import Sequence
from types import MappingProxyType
from typing import Annotated

from pydantic import Field

from halfangle_service.errors import Disagreement, Refusal, Unreachable, refused_at
from halfangle_service.fields import Count, Minutes, RequestModel, UnitsField
from halfangle_service.fields.base import Rule
from halfangle_service.fields.choice import one_of
from halfangle_service.fields.estimate import DECISION_RULE, DecisionRuleField
from halfangle_service.operation import Outcome, Profiles, Source, operation
from halfangle_service.topics.jobs.plan import advice, safety
from halfangle_service.topics.jobs.plan.checks import plan_mistakes, planned_checks_of
from halfangle_service.topics.jobs.plan.features import (
    PlanFeature,
    Wanted,
    planned_feature,
    wanted_of,
)
from halfangle_service.topics.jobs.plan.parts import advice as parts_advice
from halfangle_service.topics.jobs.plan.parts.batch import ObservedPieces, batch_of
from halfangle_service.topics.jobs.plan.parts.clearance.answer import PlanRoom
from halfangle_service.topics.jobs.plan.parts.every import Job
from halfangle_service.topics.jobs.plan.parts.feed import Feeding, PlanFeeding
from halfangle_service.topics.jobs.plan.parts.runout import PlannedRunout, planned_runout
from halfangle_service.topics.jobs.plan.parts.statements import decisions
from halfangle_service.topics.jobs.plan.parts.times import PlanTimes
from halfangle_service.topics.jobs.plan.ranking import (
    RANKING,
    place_of_way,
    ranked_way,
    ruled_out_way,
)
from halfangle_service.topics.jobs.plan.result import JobPlanResult
from halfangle_service.topics.jobs.plan.shank import planned_shank
from halfangle_service.topics.jobs.plan.shop.equipment import EquipmentName, PlanEquipment
from halfangle_service.topics.jobs.plan.shop.errors import RunoutContributions
from halfangle_service.topics.jobs.plan.shop.profiles import ShopProfile, in_profile
from halfangle_service.topics.jobs.plan.shop.reading import (
    EQUIPMENT,
    holding_of,
    read_boxes,
    require_consistent,
)
from halfangle_service.topics.jobs.plan.steps import steps_of
from halfangle_service.topics.jobs.plan.ways.every import every_way
from halfangle_service.topics.jobs.plan.ways.way import RuledOut, Way

#: What states the equipment, of which one is sent.
SHOP = ("equipment", "shop_profile")


class JobPlanRequest(RequestModel):
    """A feature with its tolerances, and what the shop has to make it."""

    rules = (Rule("one-of", SHOP),)

    units: UnitsField
    job: Annotated[str, Field(min_length=1, max_length=60)] = Field(
        description="Name of the job, for the heading of the plan.",
        examples=["HL-0412 machine center"],
    )
    feature: PlanFeature
    equipment: PlanEquipment | None = Field(
        None, description="What the shop has. Either this or `shop_profile`."
    )
    shop_profile: EquipmentName | None = Field(
        None, description="A profile of equipment with which the service was started, by its name."
    )
    pieces: Annotated[int, Count(ge=1, le=1_000_000)] = Field(1, description="Pieces to grind.")
    observed_pieces: ObservedPieces = Field([])
    minutes_per_piece: Minutes | None = Field(
        None,
        description="Time to grind one piece, in minutes. Absent: by the feed, where it is known "
        "of every way, else 10 minutes (common practice, no source).",
    )
    times: PlanTimes = Field(PlanTimes(), description="What the shop takes in time.")
    feeding: PlanFeeding = Field(PlanFeeding(), description="How the shop feeds.")
    room: PlanRoom = Field(PlanRoom(), description="The gap and the room that are wanted.")
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
        "a layer h: 2 h / cos α on the diameter, h / sin α along the axis; a slide square to the "
        "surface feeds h, one square to the work's axis h / cos α",
        "advance in a turn that leaves cusps s: 2 √(s (2 R − s))",
        "after k pieces on a dress: included angle + 2 atan(k × breakdown / slant)",
        "socket: a quill sideways by y opens the bore by √(h² + y²) − h, h = its radius less the "
        "wheel's",
        "wrong block: the angle by the sine of the wrong stack, less the one wanted",
        "cone turned half round in its adapter: 2 (fixture + adapter), adapter and work together: "
        "2 fixture, as vectors",
    ),
    sources=(
        Source(
            citation="Derived here: a flat wheel sweeps a plane; the half angle is the angle "
            "between the spin axis and that plane, a face's angle that of the plate to it.",
            standing="derived",
        ),
        Source(
            citation="Derived here: bodies seen in the plane of the ground line, of a compound "
            "face and a wheel's side in two planes; distances from the GEOS library.",
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
            citation="Feeds, speeds and times where the request names none, what a micrometer "
            "tells apart, and the order of ranking.",
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
                        "roll_parallelism": 0.00005,
                        "face_parallelism": 0.0001,
                        "face_flatness": 0.00005,
                        "table_flatness": 0.00005,
                        "particle": 0.00002,
                        "temperature_error_limit_celsius": 1,
                        "temperature_difference_celsius": 0.5,
                        "axis_pitch_error_limit_arcsec": 5,
                        "axis_yaw_error_limit_arcsec": 300,
                        "wheel_face_error_limit_arcsec": 20,
                        "temperature_celsius": 22,
                    },
                    "plate_body": {
                        "length": 6,
                        "thickness": 0.75,
                        "closed_height": 2.2,
                        "roll_diameter": 0.5,
                    },
                }
            ],
            "block_sets": [{"name": "toolroom set", "set": "inch-81", "grade": "asme-0"}],
            "wheel": {
                "diameter": 7,
                "width": 0.5,
                "rpm": 3450,
                "head": {
                    "flange_diameter": 3,
                    "flange_width": 1.25,
                    "guard": {"length": 8, "width": 2.5, "lower_edge_below_spindle": 1},
                },
                "breakdown_per_piece": 0.000005,
            },
            "spin_fixture": {
                "axis_height": 1.5,
                "body_length": 3,
                "body_height": 2.6,
                "nose_diameter": 1.25,
                "nose_length": 0.75,
                "stick_out": 0.75,
                "shank_diameter": 0.75,
                "front_to_high_end": 1,
            },
            "runout_errors": {
                "adapter_tir": 0.0001,
                "fixture_tir": 0.00005,
                "indicating_tir": 0.00005,
            },
            "measuring": {
                "rolls": {
                    "roll_diameters": [0.0625, 0.125, 0.25],
                    "measure_error_limit": 0.0001,
                    "stack_rise_error_limit": 0.00002,
                },
                "comparator": {"instrument_angle_error_limit_arcsec": 60},
                "stack_reading_error_limit": 0.0001,
                "comparison_error_limit": 0.00005,
                "tir_error_limit": 0.00005,
            },
        },
        "pieces": 5,
        "feeding": {"grinding_allowance": 0.004, "past_large_end": 0.1, "past_small_end": 0.25},
        "room": {"gap_wanted": 0.1, "room_under_wheel": 12},
    },
    largest_request="4 plates with 4 sets each, stacks of up to 8 blocks from up to 500",
    heavy=True,
)
def plan(
    request: JobPlanRequest, profiles: Profiles = MappingProxyType({})
) -> Outcome[JobPlanResult]:
    """Plan of a whole job.

    Every way that the shop has to make a cone, a center, a taper or a face, each with its settings,
    its stacks of one box and the errors to expect against the tolerances, ranked by one rule; and
    every way that cannot, with the reason and the nearest that works.
    """
    return planned(request, profiles)


def planned(request: JobPlanRequest, profiles: Profiles, shown: str = "") -> Outcome[JobPlanResult]:
    """The plan, with the steps and the advice of the way that is to be shown.

    `shown` is its name or its place from 1, empty the first; raises UnknownWay.
    """
    profile = _profile(request, profiles)
    try:
        return _planned(request, profile, shown)
    except Refusal as refusal:
        if profile is None:
            raise
        raise in_profile(refusal, profile.name) from None


def shop_of(request: JobPlanRequest, profiles: Profiles) -> PlanEquipment:
    """The equipment that is planned with: of a profile, or the request's own."""
    return _equipment(request, _profile(request, profiles))


def _equipment(request: JobPlanRequest, profile: ShopProfile | None) -> PlanEquipment:
    return profile.equipment if profile else request.equipment or PlanEquipment()


def _planned(
    request: JobPlanRequest, profile: ShopProfile | None, shown: str
) -> Outcome[JobPlanResult]:
    """The plan with the equipment of a profile, or the request's own."""
    shop = _equipment(request, profile)
    wanted = wanted_of(request.feature, request.units)
    require_consistent(shop, request.units)
    adapter, holding = holding_of(shop, wanted.shank, request.units)
    boxes = read_boxes(shop, request.units)
    found = list(every_way(wanted, shop, boxes, request.max_blocks))
    ways = [way for way in found if isinstance(way, Way)]
    ruled_out = [way for way in found if isinstance(way, RuledOut)]
    job = _job(request, wanted, shop)
    ways, fouled = job.sort_out(ways)
    if not ways:
        # What only fouls comes nearer than what does not reach.
        raise _nothing_reaches([*fouled, *ruled_out])
    ruled_out += fouled
    runout = _runout(holding, wanted)
    rule = request.decision_rule
    checks, sight = planned_checks_of(wanted, shop.measuring, rule, path=f"{EQUIPMENT}/measuring/")
    entries = [
        ranked_way(
            way,
            runout,
            rule,
            parts,
            plan_mistakes(way.wrong_blocks, wanted.tolerance_arcsec, wanted.units, sight),
            sight.finest_arcsec,
        )
        for way, parts in zip(ways, job.parts(ways), strict=True)
    ]
    entries.sort(key=lambda entry: entry.rank)
    rows = [entry.row for entry in entries]
    place = place_of_way([row.way for row in rows], shown)
    way = entries[place].way
    with refused_at("feature/"):
        shank = None if wanted.shank is None else planned_shank(wanted.shank, request.units)
    result = JobPlanResult(
        job=request.job,
        shop_profile=None if profile is None else profile.name,
        shop_profile_digest=None if profile is None else profile.digest,
        feature=planned_feature(wanted),
        shank=shank,
        adapter=adapter,
        best=rows[0].way if rows[0].forecast in {"holds", "may-not-hold"} else None,
        ranking=RANKING,
        ways=rows,
        told_apart_by=decisions(job, entries, rule, sight.finest_arcsec),
        steps=steps_of(way, wanted, shank, rows[place].feed_plan, rows[place].size_plan),
        checks=checks,
        ruled_out=[ruled_out_way(way) for way in ruled_out],
    )
    noted = (advisory for box in boxes for advisory in box.supply.advisories)
    of_parts = (
        *parts_advice.of_parts(
            job.feeding, rows[place].feed_plan, rows[place].clearance, request.room
        ),
        *parts_advice.of_fouled(fouled),
        *parts_advice.of_observed(job.batch.growth, bool(request.observed_pieces)),
    )
    of_plan = advice.of_plan(result, place, way, ways, rule, request.units)
    return Outcome(
        result,
        (*noted, *safety.of_ways(wanted, shop, ways), *of_plan, *of_parts),
        stands_on=() if profile is None else (profile.digest,),
    )


def _job(request: JobPlanRequest, wanted: Wanted, shop: PlanEquipment) -> Job:
    """What is the same for the parts of all ways."""
    return Job(
        wanted,
        shop,
        Feeding(wanted, request.feeding, shop.wheel),
        request.room,
        batch_of(
            wanted, shop.wheel, request.observed_pieces, request.pieces, request.decision_rule
        ),
        request.minutes_per_piece,
        request.times,
    )


def _profile(request: JobPlanRequest, profiles: Profiles) -> ShopProfile | None:
    """The profile that a request names; None where it states its own equipment."""
    one_of(request, *SHOP)
    if request.shop_profile is None:
        return None
    profile: ShopProfile | None = profiles.get(request.shop_profile)
    if profile is None:
        known = ", ".join(profiles) or "none"
        raise Unreachable(
            f"The service knows no profile {request.shop_profile!r}; it knows: {known}.",
            fields={"shop_profile": "should be one that the service was started with"},
        )
    if profile.units != request.units:
        raise Disagreement(
            f"The units of the profile {profile.name!r} are {profile.units!r}, not "
            f"{request.units!r}.",
            fields={"units": f"should be {profile.units}"},
        )
    return profile


def _runout(holding: RunoutContributions, wanted: Wanted) -> PlannedRunout | None:
    if wanted.limit_tir is None:
        return None
    return planned_runout(holding, wanted.limit_tir, wanted.angle_rad)


def _nothing_reaches(ways: Sequence[RuledOut]) -> Unreachable:
    """The refusal where no way can: each with its reason, its field and the nearest that works."""
    if not ways:
        return Unreachable(
            "The shop has nothing that sets an angle.",
            fields={f"{EQUIPMENT}/sine_plates": "should name a plate, or another way be named"},
        )
    nearest = next((way for way in ways if way.instead), ways[0])
    return Unreachable(
        f"No way of the shop makes this feature. {nearest.reason} {nearest.instead or ''}".rstrip(),
        fields=_every_reason(ways),
        more={"ruled_out": [ruled_out_way(way).model_dump() for way in ways]},
    )


def _every_reason(ways: Sequence[RuledOut]) -> dict[str, str]:
    """All that stands in the way at each field, by its path; what is said twice is told once."""
    found: dict[str, dict[str, None]] = {}
    for way in ways:
        found.setdefault(way.field, {})[way.reason] = None
    return {field: " ".join(reasons) for field, reasons in found.items()}
