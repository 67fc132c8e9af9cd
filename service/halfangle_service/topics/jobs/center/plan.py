"""A center ground on a sine plate, planned end to end."""

import math
from collections.abc import Sequence
from typing import Annotated

from pydantic import Field

from halfangle_service.errors import Disagreement, Unreachable
from halfangle_service.fields import (
    Angle,
    Arcsec,
    Count,
    Length,
    LengthOut,
    ResultModel,
    bench_step,
    to_tenth_nm,
)
from halfangle_service.fields.base import Rule
from halfangle_service.fields.blocks import SOURCES, BlockGradeFields
from halfangle_service.fields.estimate import DECISION_RULE, DecisionRuleField
from halfangle_service.fields.plates import CenterDistance
from halfangle_service.fields.slopes import SlopeFields, slope_of
from halfangle_service.fields.supply import Supply, read_supply
from halfangle_service.operation import Outcome, Source, operation
from halfangle_service.topics.jobs.center import advice
from halfangle_service.topics.jobs.center.angle_budget import (
    AngleContributions,
    PlannedAngle,
    planned_angle,
    stack_of,
)
from halfangle_service.topics.jobs.center.checks import PlanCheck, planned_checks
from halfangle_service.topics.jobs.center.downfeed import PlannedFeed, planned_feed
from halfangle_service.topics.jobs.center.runout_budget import (
    PlannedRunout,
    RunoutContributions,
    planned_runout,
)
from halfangle_service.topics.jobs.center.setting import (
    PlannedSetting,
    PlateOnStack,
    WrongBlock,
    mistakes,
    planned_setting,
    second_stack,
    smallest,
)
from halfangle_service.topics.jobs.center.shank import PlannedShank, Shank, planned_shank, true_up
from halfangle_service.topics.jobs.center.steps import PlanStep, StepFacts, planned_steps
from halfangle_service.trade.cone import cone_length, slant_length
from halfangle_service.trade.inspection.checks import CheckFacts, checks_of_a_cone
from halfangle_service.trade.inspection.mistakes import StackMistake, past_limits
from halfangle_service.trade.sine.geometry import height_for_angle
from halfangle_service.trade.stacks.setting import choose_setting
from halfangle_service.trade.uncertainty import Forecast, together
from halfangle_service.trade.unit_slips import require_center_distance
from halfangle_service.trade.wording import (
    arcsec,
    degrees,
    length,
    of_any_unit,
    plain,
    small_length,
    stack,
)


class CenterJobRequest(SlopeFields, BlockGradeFields):
    """A center to be ground on a sine plate with a spin fixture and a flat wheel.

    Give the slope of the cone in one of six ways, or in several that agree; the blocks as `set` (a
    built-in set), as `sizes` (what the shop has), or as the shop's own `box`.
    """

    rules = (Rule("one-of", SOURCES),)

    job: Annotated[str, Field(min_length=1, max_length=60)] = Field(
        description="Name of the job, for the heading of the plan.",
        examples=["HL-0412 machine center"],
    )
    included_angle_tolerance_arcsec: Arcsec = Field(
        description="± tolerance of the included angle.", examples=[120.0]
    )
    large_diameter: Length = Field(
        description="Larger diameter of the cone, where it meets the body, in `units`.",
        examples=[0.75],
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


class PlannedCone(ResultModel):
    """The cone itself."""

    included_angle: Angle = Field(description="Included angle wanted.")
    half_angle: Angle = Field(description="Half angle wanted.")
    length: LengthOut = Field(description="Length along the axis, from body to sharp point.")
    slant_length: LengthOut = Field(
        description="Length along the surface: the least travel of the wheel across the cone."
    )


class CenterJobResult(ResultModel):
    """The plan."""

    job: str = Field(description="Name of the job.")
    forecast: Forecast = Field(
        description="Whether angle and runout will both keep their limits; it holds only where "
        "both hold, and does not where either does not."
    )
    cone: PlannedCone = Field(description="The cone.")
    shank: PlannedShank = Field(description="The shank and how it is held.")
    plate_setting: PlannedSetting = Field(description="The plate's setting and its stack.")
    angle_budget: PlannedAngle = Field(description="The angle error to expect.")
    runout_budget: PlannedRunout = Field(description="The runout to expect.")
    downfeed: PlannedFeed = Field(description="What a step of downfeed takes off.")
    smallest_mistake: WrongBlock | None = Field(
        description="The wrong block that would be hardest to notice; null where no other block "
        "could be taken."
    )
    smallest_mistake_past_tolerance: WrongBlock | None = Field(
        description="The hardest to notice of those that take the angle out of its tolerance, "
        "which is what the checks are judged by; null where no single wrong block does."
    )
    second_stack: list[LengthOut] | None = Field(
        description="The same height from other blocks of the set, to check the first stack; null "
        "where the set has no such stack."
    )
    steps: list[PlanStep] = Field(
        description="The steps, in order, with the cautions of the trade."
    )
    checks: list[PlanCheck] = Field(description="The checks to make.")


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
    checks, with which of them would catch a wrong block.
    """
    require_center_distance(request.center_distance, request.units)
    supply = _supply(request)
    plate = _plate(request, supply)
    pieces = stack_of(plate.setting.pieces, request.grade, request.angle_errors.block_material)
    half_angle, tolerance = plate.angle_rad, request.included_angle_tolerance_arcsec
    shank = planned_shank(request.shank, request.units)
    angle = planned_angle(plate, pieces, request.angle_errors, tolerance, request.decision_rule)
    runout = planned_runout(request.runout_errors, request.limit_tir, half_angle)
    feed = planned_feed(
        request.downfeed_step or bench_step(request.units), request.grinding_allowance, half_angle
    )
    cone = PlannedCone(
        included_angle=Angle.of(2.0 * plate.angle_degrees),
        half_angle=Angle.of(plate.angle_degrees),
        length=cone_length(request.large_diameter, half_angle),
        slant_length=slant_length(request.large_diameter, half_angle),
    )
    wrong = mistakes(plate)
    facts = _check_facts(request, plate, cone, shank, runout, wrong)
    checks = planned_checks(checks_of_a_cone(facts))
    result = CenterJobResult(
        job=request.job,
        forecast=together((angle.forecast, runout.forecast)),
        cone=cone,
        shank=shank,
        plate_setting=planned_setting(plate, pieces),
        angle_budget=angle,
        runout_budget=runout,
        downfeed=feed,
        smallest_mistake=smallest(wrong, plate.units),
        smallest_mistake_past_tolerance=smallest(facts.mistakes, plate.units),
        second_stack=second_stack(plate),
        steps=planned_steps(_step_facts(request, plate, cone, shank, feed)),
        checks=checks,
    )
    advisories = (
        *supply.advisories,
        *advice.of_setting(plate),
        *advice.of_feed(
            feed.downfeed_step,
            request.grinding_allowance,
            feed.steps_for_allowance,
            request.units,
        ),
        *advice.of_budgets(angle, runout, request.shank),
        *advice.of_checks(checks, facts),
    )
    return Outcome(result, advisories)


def _supply(request: CenterJobRequest) -> Supply:
    """The blocks there are; refuses a material of theirs that the box says otherwise."""
    supply = read_supply(request)
    material = request.angle_errors.block_material
    if request.box and material and supply.box.materials != {material}:
        raise Disagreement(
            f"The box says the material of each block, and not always {material}.",
            fields={"angle_errors/block_material": "should be left out where a box is sent"},
        )
    return supply


def _plate(request: CenterJobRequest, supply: Supply) -> PlateOnStack:
    """Find the plate's angle and its stack; refuses blocks that miss the angle's tolerance."""
    half_angle = slope_of(request).half_angle_degrees
    units, tolerance = request.units, request.included_angle_tolerance_arcsec
    height = height_for_angle(request.center_distance, math.radians(half_angle))
    setting = choose_setting(height * to_tenth_nm(1.0, units), supply.box, request.max_blocks)
    plate = PlateOnStack(units, request.center_distance, half_angle, height, setting)
    off = plate.included_error_arcsec
    if off is not None and abs(off) <= tolerance:
        return plate
    missed = (
        f"is not below the center distance {of_any_unit(request.center_distance)}: the plate "
        "would stand "
        "upright"
        if off is None
        else f"misses the included angle by {arcsec(abs(off))}; the tolerance is "
        f"±{plain(tolerance)}″"
    )
    source = next(name for name in SOURCES if getattr(request, name) is not None)
    raise Unreachable(
        f"The nearest stack of up to {request.max_blocks} of these blocks, "
        f"{stack(plate.blocks, units)}, {missed}. "
        "Stacks under both rolls (`sine.low-stack`), or other blocks, may reach it.",
        fields={source: "should reach the angle"},
        more={"height": height, "nearest_stack": list(plate.blocks)},
    )


def _step_facts(
    request: CenterJobRequest,
    plate: PlateOnStack,
    cone: PlannedCone,
    shank: PlannedShank,
    feed: PlannedFeed,
) -> StepFacts:
    units, passes = plate.units, feed.steps_for_allowance
    # The plate's angle is half of the included one, and so is what may be off of it.
    plate_tolerance = request.included_angle_tolerance_arcsec / 2.0
    return StepFacts(
        stack=stack(plate.blocks, units),
        plate_angle=degrees(plate.angle_degrees, plate_tolerance),
        stack_height=length(plate.total, units),
        held_in=shank.held_in,
        test_bar=shank.test_bar,
        true_up=true_up(request.shank),
        limit=f"{small_length(request.limit_tir, units)} TIR",
        slant=length(cone.slant_length, units),
        step=small_length(feed.downfeed_step, units),
        off_diameter=small_length(feed.off_diameter, units),
        rounds="" if passes is None else f" {passes} passes remove the allowance.",
    )


def _check_facts(
    request: CenterJobRequest,
    plate: PlateOnStack,
    cone: PlannedCone,
    shank: PlannedShank,
    runout: PlannedRunout,
    wrong: Sequence[StackMistake],
) -> CheckFacts:
    second, tolerance = second_stack(plate), request.included_angle_tolerance_arcsec
    return CheckFacts(
        units=plate.units,
        stack_height=plate.total,
        second_stack=None if second is None else stack(tuple(second), plate.units),
        half_angle_degrees=plate.angle_degrees,
        half_angle_rad=plate.angle_rad,
        large_diameter=request.large_diameter,
        cone_length=cone.length,
        shank_diameter=shank.gauge_diameter,
        tolerance_arcsec=tolerance,
        cone_limit_tir=runout.limit_tir_on_cone,
        mistakes=past_limits(wrong, -tolerance, tolerance),
        blocks_to_spare=bool(wrong),
    )
