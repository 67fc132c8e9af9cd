"""The jobs topic's operation: a center planned end to end, composed of the other topics."""

import math

from halfangle_service.cautions import STEEP_DEGREES
from halfangle_service.errors import Disagreement, Refusal, Unreachable
from halfangle_service.fields import to_tenth_nm
from halfangle_service.fields.advisories import Advisory, caution, note
from halfangle_service.fields.blocks import BlockSupplyFields
from halfangle_service.fields.cones import half_angle_degrees
from halfangle_service.fields.supply import Supply, read_supply
from halfangle_service.operation import Operation, Outcome, Source
from halfangle_service.topics.jobs.models import CenterJobRequest, CenterJobResult
from halfangle_service.topics.jobs.operations_parts import (
    Job,
    made_checks,
    planned_angle,
    planned_cone,
    planned_feed,
    planned_runout,
    planned_setting,
    planned_shank,
    planned_steps,
    second_stack,
    smallest_mistake,
)
from halfangle_service.topics.jobs.setting import choose_setting
from halfangle_service.topics.jobs.wording import Wording
from halfangle_service.trade.sine.geometry import height_for_angle
from halfangle_service.trade.wording import plain


def center(request: CenterJobRequest) -> Outcome[CenterJobResult]:
    """Plan a center for grinding on a sine plate."""
    supply = _supply(request)
    job = _prepare(request, tuple(sorted(supply.box.sizes)))
    angle = planned_angle(job)
    runout = planned_runout(request, job.angle_rad)
    feed = planned_feed(request, job.angle_rad)
    shank = planned_shank(request)
    result = CenterJobResult(
        job=request.job,
        cone=planned_cone(job),
        shank=shank,
        setting=planned_setting(job),
        angle=angle,
        runout=runout,
        feed=feed,
        smallest_mistake=smallest_mistake(job),
        second_stack=second_stack(job),
        steps=planned_steps(job, shank, runout, feed),
        checks=made_checks(job, runout),
    )
    return Outcome(result, (*supply.advisories, *_advisories(job, result)))


#: What the fields of blocks/stack are called in a job.
_FIELDS = {"set": "block_set", "sizes": "block_sizes", "missing": "blocks_away"}


def _prepare(request: CenterJobRequest, sizes: tuple[int, ...]) -> Job:
    """Find the plate's angle and its stack from blocks of these sizes in 0.1 nm."""
    degrees = half_angle_degrees(request.included_angle, request.half_angle)
    height = height_for_angle(request.center_distance, math.radians(degrees))
    in_tenth_nm = height * to_tenth_nm(1.0, request.units)
    setting = choose_setting(in_tenth_nm, sizes, request.max_blocks)
    job = Job(request, degrees, height, setting, Wording(request.units))
    if abs(job.deviation_arcsec) > request.included_angle_tolerance_arcsec:
        raise Unreachable(
            f"The nearest stack of up to {request.max_blocks} of these blocks, "
            f"{job.words.stack(job.blocks)}, misses the included angle by "
            f"{job.words.arcsec(job.deviation_arcsec)}; the tolerance is "
            f"±{plain(request.included_angle_tolerance_arcsec)}″. Stacks under both rolls, or "
            "other blocks, may reach it.",
            fields={
                "block_sizes" if request.block_sizes else "block_set": "should reach the angle"
            },
            more={"height": height, "nearest_stack": list(job.blocks)},
        )
    return job


def _supply(request: CenterJobRequest) -> Supply:
    """The blocks there are; refuses both sources, or neither."""
    if (request.block_set is None) == (request.block_sizes is None):
        raise Disagreement(
            "The blocks come from block_set or from block_sizes: send one of the two.",
            fields={
                "block_set": "send either this or block_sizes",
                "block_sizes": "send either this or block_set",
            },
        )
    blocks = BlockSupplyFields(
        units=request.units,
        set=request.block_set,
        sizes=request.block_sizes,
        missing=request.blocks_away,
    )
    try:
        return read_supply(blocks)
    except Refusal as refusal:
        raise _in_own_words(refusal) from refusal


def _in_own_words(refusal: Refusal) -> Refusal:
    """The same refusal, its fields called what they are in a job."""
    fields = {}
    for path, message in refusal.fields.items():
        name, slash, rest = path.partition("/")
        fields[f"{_FIELDS.get(name, name)}{slash}{rest}"] = message
    return type(refusal)(refusal.detail, fields=fields, more=refusal.more)


def _advisories(job: Job, result: CenterJobResult) -> tuple[Advisory, ...]:
    """What an experienced hand would add to this plan."""
    found: list[Advisory] = [
        caution(
            "wheel-marking",
            "Run the wheel at or below the speed marked on it, guard closed, after inspection and "
            "ring test (29 CFR 1910.215(d)(1)). The wheel's and the machine's markings, local "
            "codes and qualified people come before this plan.",
        )
    ]
    if not job.setting.exact:
        found.append(
            note(
                "stack-not-exact",
                f"The height {plain(job.height, 7)} {job.request.units} is not one that "
                "these blocks build; the nearest stack is off by "
                f"{job.words.arcsec(job.deviation_arcsec)} of included angle, which the budget "
                "counts as a known offset.",
            )
        )
    if job.degrees > STEEP_DEGREES:
        found.append(
            caution(
                "steep-angle",
                f"Past {plain(STEEP_DEGREES)}° a sine setting loses its edge: one bench step "
                "of height turns the included angle by "
                f"{job.words.arcsec(result.setting.arcsec_per_step)}.",
            )
        )
    if result.angle.not_stated:
        missing = ", ".join(result.angle.not_stated)
        found.append(
            caution("unstated-contributions", f"Left out of the angle's budget: {missing}.")
        )
    if result.angle.verdict != "conforming":
        found.append(
            caution(
                "angle-not-held",
                f"This set-up does not prove the angle: {result.angle.verdict}. The largest share "
                f"comes from {_largest(result)}; mend that first.",
            )
        )
    if result.runout.verdict != "holds in the worst case":
        found.append(
            caution(
                "runout-not-sure",
                f"Runout {result.runout.verdict}: {result.runout.mend_first} is the first to mend.",
            )
        )
    if not any(check.catches_wrong_block for check in result.checks):
        found.append(
            caution(
                "wrong-block-unseen",
                "No check of this plan would show the smallest wrong-block mistake: have a second "
                "person read the blocks.",
            )
        )
    return tuple(found)


def _largest(result: CenterJobResult) -> str:
    if not result.angle.lines:
        return "the stack's deviation"
    return max(result.angle.lines, key=lambda line: line.share_percent).name


_EXAMPLE = {
    "job": "HL-0412 machine center",
    "units": "in",
    "included_angle": 60,
    "included_angle_tolerance_arcsec": 120,
    "body_diameter": 0.75,
    "shank": {"kind": "taper", "designation": "morse-2"},
    "runout_allowed_tir": 0.0003,
    "center_distance": 5,
    "block_set": "inch-81",
    "block_grade": "ASME 0",
    "runout": {"adapter_tir": 0.0001, "fixture_tir": 0.00005, "indicating_tir": 0.00005},
    "angle_errors": {
        "center_distance_tolerance": 0.0001,
        "axis_pitch_arcsec": 5,
        "axis_yaw_arcsec": 300,
        "wheel_face_arcsec": 20,
        "temperature_celsius": 22,
    },
    "grinding_allowance": 0.004,
}

OPERATIONS = (
    Operation(
        topic="jobs",
        verb="center",
        title="Plan of a center ground on a sine plate",
        summary="A center planned end to end: the plate's setting and its stack, the angle error "
        "and the runout to expect against their limits, what a step of downfeed takes off, the "
        "steps in order, and the checks, with which of them would catch a wrong block.",
        request=CenterJobRequest,
        result=CenterJobResult,
        calculate=center,
        relations=(
            "plate angle = half angle; height = L sin θ",
            "included angle error = 2 × (dh / (L cos θ) + tan θ dL / L + pitch + wheel face)",
            "sin α = sin θ cos(yaw)",
            "temperature: 2 tan θ (α_blocks - α_plate) ΔT",
            "runout: worst case Σ TIR, likely √Σ TIR²; on the cone TIR cos α",
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
                citation="29 CFR 1910.215(d)(1): inspection, ring test, marked speed.",
                standing="published",
            ),
            Source(
                citation="Order of the steps, and what each means of measuring can tell apart.",
                standing="common-practice-no-source",
            ),
        ),
        example=_EXAMPLE,
        largest_request="one stack of up to 8 blocks from up to 200",
    ),
)
