"""A center ground on a sine plate, planned end to end."""

import math
from collections.abc import Iterator
from typing import Annotated

from pydantic import Field

from halfangle_service.cautions import STEEP_DEGREES, WHEEL_SAFETY, steep_angle
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
from halfangle_service.fields.advisories import Advisory, caution, note
from halfangle_service.fields.blocks import BlockGradeFields
from halfangle_service.fields.plates import CenterDistance, arcsec_per_step
from halfangle_service.fields.runout import PHASES_NOT_STATED
from halfangle_service.fields.slopes import SlopeFields, slope_of
from halfangle_service.fields.supply import SOURCES, Supply, read_supply
from halfangle_service.operation import Outcome, Source, operation
from halfangle_service.topics.jobs.center.angle_budget import (
    AngleContributions,
    PlannedAngle,
    planned_angle,
    stack_of,
)
from halfangle_service.topics.jobs.center.checks import CheckFacts, PlanCheck, planned_checks
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
    planned_setting,
    second_stack,
    smallest_mistake,
)
from halfangle_service.topics.jobs.center.shank import PlannedShank, Shank, planned_shank
from halfangle_service.topics.jobs.center.steps import PlanStep, StepFacts, planned_steps
from halfangle_service.trade.cone import cone_length, slant_length
from halfangle_service.trade.sine.geometry import height_for_angle
from halfangle_service.trade.stacks.setting import choose_setting
from halfangle_service.trade.wording import (
    arcsec,
    degrees,
    length,
    option,
    plain,
    small_length,
    stack,
)


class CenterJobRequest(SlopeFields, BlockGradeFields):
    """A center to be ground on a sine plate with a spin fixture and a flat wheel.

    Give the slope of the cone in one of six ways, or in several that agree; the blocks as `set` (a
    built-in set), as `sizes` (what the shop has), or as the shop's own `box`.
    """

    job: Annotated[str, Field(min_length=1, max_length=60)] = Field(
        description="Name of the job, for the heading of the plan.",
        examples=["HL-0412 machine center"],
    )
    included_angle_tolerance_arcsec: Arcsec = Field(
        description="± tolerance of the included angle.", examples=[120.0]
    )
    body_diameter: Length = Field(
        description="Diameter where the cone meets the body, in `units`.", examples=[0.75]
    )
    shank: Shank = Field(description="The shank that the cone must run true to.")
    limit_tir: Length = Field(
        description="Runout of the cone to its shank that the drawing allows, as full indicator "
        "movement square to the axis, in `units`.",
        examples=[0.0003],
    )
    center_distance: CenterDistance
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
        "yaw: sin α = sin θ cos ψ; for ψ anywhere within ±a: mean of 2 dα −tan θ a²/3, at its "
        "limit −tan θ a²",
        "temperature: 2 tan θ (α_blocks − α_plate) ΔT",
        "runout: √Σ TIR² of vectors of unknown phase, worst case Σ TIR; on the cone TIR cos α",
        "off the diameter 2 h / cos α, off the point h / sin α",
        "over rolls: ΔM = 2 H tan α",
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
            citation="ISO 14253-1, decision rules: acceptance within the limits less the "
            "expanded uncertainty.",
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
        "body_diameter": 0.75,
        "shank": {"kind": "taper", "designation": "morse-2"},
        "limit_tir": 0.0003,
        "center_distance": 5,
        "set": "inch-81",
        "grade": "ASME 0",
        "runout_errors": {
            "adapter_tir": 0.0001,
            "fixture_tir": 0.00005,
            "indicating_tir": 0.00005,
        },
        "angle_errors": {
            "center_distance_tolerance": 0.0001,
            "axis_pitch_arcsec": 5,
            "axis_yaw_arcsec": 300,
            "wheel_face_arcsec": 20,
            "temperature_celsius": 22,
        },
        "grinding_allowance": 0.004,
    },
    largest_request="one stack of up to 8 blocks from up to 500; 100,000 trials of three runouts",
    heavy=True,
)
def center(request: CenterJobRequest) -> Outcome[CenterJobResult]:
    """Plan of a center ground on a sine plate.

    A center planned end to end: the plate's setting and its stack, the angle error and the runout
    to expect against their limits, what a step of downfeed takes off, the steps in order, and the
    checks, with which of them would catch a wrong block.
    """
    supply = _supply(request)
    plate = _plate(request, supply)
    errors = request.angle_errors
    pieces = stack_of(plate.setting.pieces, request.grade, errors.block_material)
    half_angle = plate.angle_rad
    shank = planned_shank(request.shank, request.units)
    runout = planned_runout(request.runout_errors, request.limit_tir, request.shank, half_angle)
    step = request.downfeed_step or bench_step(request.units)
    feed = planned_feed(step, request.grinding_allowance, half_angle)
    cone = PlannedCone(
        included_angle=Angle.of(2.0 * plate.half_angle_degrees),
        half_angle=Angle.of(plate.half_angle_degrees),
        length=cone_length(request.body_diameter, half_angle),
        slant_length=slant_length(request.body_diameter, half_angle),
    )
    mistake = smallest_mistake(plate)
    result = CenterJobResult(
        job=request.job,
        cone=cone,
        shank=shank,
        plate_setting=planned_setting(plate, pieces),
        angle_budget=planned_angle(plate, pieces, errors, request.included_angle_tolerance_arcsec),
        runout_budget=runout,
        downfeed=feed,
        smallest_mistake=mistake,
        second_stack=second_stack(plate),
        steps=planned_steps(_step_facts(plate, cone, shank, runout, feed)),
        checks=planned_checks(_check_facts(plate, cone, runout, mistake)),
    )
    return Outcome(result, (*supply.advisories, *_advisories(plate, result)))


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
    if abs(plate.included_off_arcsec) > tolerance:
        source = next(name for name in SOURCES if getattr(request, name) is not None)
        raise Unreachable(
            f"The nearest stack of up to {request.max_blocks} of these blocks, "
            f"{stack(plate.blocks, units)}, misses the included angle by "
            f"{arcsec(abs(plate.included_off_arcsec))}; the tolerance is ±{plain(tolerance)}″. "
            "Stacks under both rolls, or other blocks, may reach it.",
            fields={source: "should reach the angle"},
            more={"height": height, "nearest_stack": list(plate.blocks)},
        )
    return plate


def _step_facts(
    plate: PlateOnStack,
    cone: PlannedCone,
    shank: PlannedShank,
    runout: PlannedRunout,
    feed: PlannedFeed,
) -> StepFacts:
    units, rounds = plate.units, feed.steps_for_allowance
    return StepFacts(
        stack=stack(plate.blocks, units),
        plate_angle=degrees(plate.half_angle_degrees),
        stack_height=length(plate.total, units),
        holding=f"Seat the shank in {shank.held_in}, both wiped clean.",
        cone_limit=small_length(runout.limit_tir_on_cone, units),
        slant=length(cone.slant_length, units),
        step=small_length(feed.downfeed_step, units),
        off_diameter=small_length(feed.off_diameter, units),
        rounds="" if rounds is None else f"{rounds} steps remove the allowance.",
    )


def _check_facts(
    plate: PlateOnStack, cone: PlannedCone, runout: PlannedRunout, mistake: WrongBlock | None
) -> CheckFacts:
    second = second_stack(plate)
    return CheckFacts(
        units=plate.units,
        stack_height=plate.total,
        second_stack=None if second is None else stack(tuple(second), plate.units),
        half_angle_rad=plate.angle_rad,
        cone_length=cone.length,
        cone_limit_tir=runout.limit_tir_on_cone,
        mistake_height=None if mistake is None else mistake.wrung - mistake.meant,
        mistake_arcsec=None if mistake is None else mistake.included_angle_error_arcsec,
    )


def _advisories(plate: PlateOnStack, result: CenterJobResult) -> Iterator[Advisory]:
    """What an experienced hand would add to this plan."""
    yield WHEEL_SAFETY
    if not plate.setting.exact:
        yield note(
            "stack-not-exact",
            f"The height {plain(plate.height, 7)} {plate.units} is not one that these blocks "
            f"build; the nearest stack is off by {arcsec(abs(plate.included_off_arcsec))} of "
            "included angle, which the budget counts as a known offset.",
        )
    per_step = arcsec_per_step(plate.center_distance, plate.angle_rad, plate.units)
    yield from steep_angle(plate.half_angle_degrees, per_step, STEEP_DEGREES)
    yield from _unstated(result)
    yield from _not_held(result)
    if not any(check.catches_wrong_block for check in result.checks):
        yield caution(
            "wrong-block-unseen",
            "No check of this plan would show the smallest wrong-block mistake: have a second "
            "person read the blocks.",
        )


def _unstated(result: CenterJobResult) -> Iterator[Advisory]:
    angle, tir = result.angle_budget.included_angle_error_arcsec, result.runout_budget.tir
    missing = [*angle.not_stated, *(name for name in tir.not_stated if name != PHASES_NOT_STATED)]
    if missing:
        yield caution(
            "unstated-contributions",
            "Not stated and not counted, so that the budget that lacks them is not said to hold: "
            f"{', '.join(missing)}.",
        )


def _not_held(result: CenterJobResult) -> Iterator[Advisory]:
    """Say which budget is past its limit, or may be, by what was stated of it."""
    angle, runout = result.angle_budget, result.runout_budget
    error, tir = angle.included_angle_error_arcsec, runout.tir
    reach = abs(error.value or 0.0) + (error.expanded_uncertainty or 0.0)
    if angle.forecast != "holds" and reach > angle.included_angle_tolerance_arcsec:
        parts = error.contributions
        largest = max(parts, key=lambda part: part.share_percent).name if parts else "the stack"
        yield caution(
            "angle-not-held",
            f"This set-up {option(angle.forecast)} the angle. The largest share comes from "
            f"{option(largest)}; mend that first.",
        )
    if runout.forecast != "holds" and (tir.expanded_uncertainty or 0.0) > runout.limit_tir:
        yield caution(
            "runout-not-sure",
            f"This set-up {option(runout.forecast)} the runout: {runout.mend_first} is the first "
            "to mend.",
        )
