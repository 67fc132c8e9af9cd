"""A center ground on a sine plate, planned end to end: a plan of one way, by one plate and box."""

from typing import Annotated

from pydantic import Field

from halfangle_service.errors import Unreachable
from halfangle_service.fields import Angle, Count, Length, bench_step
from halfangle_service.fields.base import Rule
from halfangle_service.fields.blocks import SOURCES, BlockGradeFields
from halfangle_service.fields.estimate import DECISION_RULE, DecisionRuleField
from halfangle_service.fields.plates import CenterDistance
from halfangle_service.operation import Outcome, Source, operation
from halfangle_service.topics.jobs.center import advice
from halfangle_service.topics.jobs.center.result import (
    CenterJobResult,
    PlannedAngle,
    PlannedCone,
    PlannedFeed,
    PlannedSetting,
    WrongBlock,
    checks_out,
    second_stack_of,
)
from halfangle_service.topics.jobs.plan.features import (
    PlanCenterFields,
    Wanted,
    wanted_center,
)
from halfangle_service.topics.jobs.plan.parts.advice import of_feed
from halfangle_service.topics.jobs.plan.parts.feed import (
    Feeding,
    PlanFeed,
    PlanFeeding,
    cutting_passes,
    planned_feed_of,
)
from halfangle_service.topics.jobs.plan.parts.runout import planned_runout
from halfangle_service.topics.jobs.plan.ranking import planned_angle
from halfangle_service.topics.jobs.plan.shank import Shank, planned_shank
from halfangle_service.topics.jobs.plan.shop.equipment import PlanSinePlate
from halfangle_service.topics.jobs.plan.shop.errors import PlateErrorFields, RunoutContributions
from halfangle_service.topics.jobs.plan.shop.reading import box_of
from halfangle_service.topics.jobs.plan.steps import steps_of
from halfangle_service.topics.jobs.plan.ways.sine_plate import on_one_stack
from halfangle_service.topics.jobs.plan.ways.way import RuledOut, Way
from halfangle_service.trade.inspection.checks import CheckFacts, checks_of_a_cone
from halfangle_service.trade.inspection.mistakes import WrongBlocks
from halfangle_service.trade.tables.materials.expansion import MaterialName
from halfangle_service.trade.uncertainty import together
from halfangle_service.trade.unit_slips import require_center_distance
from halfangle_service.trade.wording import stack

_PLATE, _BLOCKS = "the plate", "the blocks"


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


class CenterJobRequest(PlanCenterFields, BlockGradeFields):
    """A center to be ground on a sine plate with a spin fixture and a flat wheel.

    Give the slope of the cone in one of six ways, or in several that agree; the blocks as `set` (a
    built-in set), as `sizes` (what the shop has), or as the shop's own `box`.
    """

    rules = (Rule("one-of", SOURCES),)

    job: Annotated[str, Field(min_length=1, max_length=60)] = Field(
        description="Name of the job, for the heading of the plan.",
        examples=["HL-0412 machine center"],
    )
    shank: Shank = Field(description="The shank that the cone must run true to.")
    limit_tir: Length = Field(
        description="Runout of the cone to its shank that the drawing allows, as full indicator "
        "movement square to the axis, in `units`.",
        examples=[0.0003],
    )
    center_distance: CenterDistance
    decision_rule: DecisionRuleField = DECISION_RULE
    max_blocks: Annotated[int, Count(ge=1, le=8)] = Field(
        5, description="Most blocks to wring in one stack."
    )
    runout_errors: RunoutContributions = Field(
        RunoutContributions(), description="Runout that the holding adds."
    )
    angle_errors: AngleContributions = Field(
        AngleContributions(), description="Errors of the set-up that turn the angle."
    )
    downfeed_step: Length | None = Field(
        None,
        description="One step of downfeed, in `units`; 0.0001 in or 0.001 mm where left out.",
    )
    grinding_allowance: Length | None = Field(
        None,
        description="Stock left on the cone, measured square to its surface, in `units`.",
        examples=[0.004],
    )


@operation(
    "jobs.center",
    relations=(
        "plate angle = half angle; height = L sin θ",
        "included angle error = 2 × (dh / (L cos θ) − tan θ dL / L + pitch + wheel face)",
        "yaw: sin α = sin θ cos ψ; for ψ anywhere within ±a: at its limit "
        "y = 2 (asin(sin θ cos a) − θ), mean y/3",
        "temperature: 2 tan θ (α_blocks − α_plate) ΔT",
        "runout: √Σ TIR² of vectors of unknown phase, worst case Σ TIR; on the cone TIR cos α",
        "off the diameter 2 h / cos α, off the point h / sin α",
        "wrong block: 2 (asin(h_wrong / L) − θ)",
        "over rolls: ΔM = 2 H tan α; d(2α) = cos²α dM / H",
        "turned half round in its seat the cone shows twice its runout to the shank",
    ),
    sources=(
        Source(
            citation="Derived here: a flat wheel sweeps a plane; the half angle is the angle "
            "between the spin axis and that plane.",
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
            citation="Tolerances of gauge blocks by grade: ISO 3650:1998, ASME B89.1.9-2002.",
            standing="from-memory",
        ),
        Source(
            citation="Expansion: ISO 3650:1998 for steel blocks; NIST Monograph 180 for the other "
            "materials.",
            standing="from-memory",
        ),
        Source(
            citation="Derived here: of runouts of unknown, independent phases the mean square of "
            "the sum is the sum of their squares.",
            standing="derived",
        ),
        Source(
            citation="29 CFR 1910.215(d)(1): inspection, ring test, marked speed.",
            standing="published",
        ),
        Source(
            citation="Order of the steps, and what each means of measuring can tell apart.",
            standing="common-practice-no-source",
        ),
    ),
    example={
        "job": "HL-0412 machine center",
        "units": "in",
        "included_angle": 60,
        "included_angle_tolerance_arcsec": 120,
        "large_diameter": 0.75,
        "shank": {"kind": "taper", "designation": "morse-2"},
        "limit_tir": 0.0003,
        "center_distance": 5,
        "set": "inch-81",
        "grade": "asme-0",
        "runout_errors": {
            "adapter_tir": 0.0001,
            "fixture_tir": 0.00005,
            "indicating_tir": 0.00005,
        },
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
        "grinding_allowance": 0.004,
    },
    largest_request="one stack of up to 8 blocks from up to 500",
    heavy=True,
)
def center(request: CenterJobRequest) -> Outcome[CenterJobResult]:
    """Plan of a center ground on a sine plate.

    A center planned end to end: the plate's setting and its stack, the angle error and the runout
    to expect against their limits, what a step of downfeed takes off, the steps in order, and the
    checks, with which of them would catch a wrong block. It is a plan of one way (`jobs.plan`).
    """
    units = request.units
    require_center_distance(request.center_distance, units)
    box = box_of(
        _BLOCKS, request, request.angle_errors.block_material, "angle_errors/block_material"
    )
    wanted = wanted_center(request, units)
    plate = PlanSinePlate(
        name=_PLATE, center_distance=request.center_distance, angle_errors=request.angle_errors
    )
    way = on_one_stack(wanted, plate, "", box, request.max_blocks)
    if isinstance(way, RuledOut):
        raise _missed(way)
    shank = planned_shank(request.shank, units)
    angle = PlannedAngle.of(planned_angle(way.angles[0], request.decision_rule))
    runout = planned_runout(request.runout_errors, request.limit_tir, wanted.angle_rad)
    step = request.downfeed_step or bench_step(units)
    feed = _feed(wanted, way, step, request.grinding_allowance)
    wrong = WrongBlocks(way.wrong_blocks[0])
    facts = _check_facts(wanted, way, shank.gauge_diameter, runout.limit_tir_on_cone, wrong)
    checks = checks_out(checks_of_a_cone(facts))
    result = CenterJobResult(
        job=request.job,
        forecast=together((angle.forecast, runout.forecast)),
        cone=PlannedCone(
            included_angle=Angle.of(2.0 * wanted.angle_degrees),
            half_angle=Angle.of(wanted.angle_degrees),
            length=wanted.length,
            slant_length=wanted.slant,
        ),
        shank=shank,
        plate_setting=PlannedSetting.of(way.settings[0], way.stacks[0]),
        angle_budget=angle,
        runout_budget=runout,
        downfeed=PlannedFeed.of(feed, step, request.grinding_allowance),
        smallest_mistake=WrongBlock.of(facts.smallest, units),
        smallest_mistake_past_tolerance=WrongBlock.of(next(iter(facts.mistakes), None), units),
        second_stack=second_stack_of(way.stacks),
        steps=steps_of(way, wanted, shank, feed, None),
        checks=checks,
    )
    advisories = (
        *box.supply.advisories,
        *advice.of_setting(way, units),
        *of_feed(step, request.grinding_allowance, cutting_passes(feed), units),
        *advice.of_budgets(angle, runout, request.shank),
        *advice.of_checks(checks, facts),
    )
    return Outcome(result, advisories)


def _missed(way: RuledOut) -> Unreachable:
    """The refusal of blocks that miss the angle's tolerance."""
    return Unreachable(
        f"{way.reason} Stacks under both rolls (`sine.low-stack`), or other blocks, may reach it.",
        fields={way.field: "should reach the angle"},
        more=way.more,
    )


def _feed(wanted: Wanted, way: Way, step: float, allowance: float | None) -> PlanFeed:
    """The feed by steps of one size, from the first touch to size."""
    stated = PlanFeeding(
        grinding_allowance=allowance,
        rough_downfeed_per_pass=step,
        finish_downfeed_per_pass=step,
        finish_allowance=0.0,
    )
    feeding = Feeding(wanted, stated, None)
    return planned_feed_of(feeding, way.name, "along-travel", driven=False, wheel=None).plan


def _check_facts(
    wanted: Wanted, way: Way, shank_diameter: float, cone_limit_tir: float, wrong: WrongBlocks
) -> CheckFacts:
    second, tolerance = second_stack_of(way.stacks), wanted.tolerance_arcsec
    return CheckFacts(
        units=wanted.units,
        stack_height=way.stacks[0].total,
        second_stack=None if second is None else stack(tuple(second), wanted.units),
        half_angle_degrees=wanted.angle_degrees,
        half_angle_rad=wanted.angle_rad,
        large_diameter=wanted.large_diameter,
        cone_length=wanted.length,
        shank_diameter=shank_diameter,
        tolerance_arcsec=tolerance,
        cone_limit_tir=cone_limit_tir,
        mistakes=tuple(wrong.past(-tolerance, tolerance)),
        smallest=wrong.smallest(),
    )
