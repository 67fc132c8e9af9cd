"""The jobs topic's operation: a center planned end to end, composed of the other topics."""

import math
from dataclasses import dataclass

from halfangle_service.errors import Disagreement, Unreachable
from halfangle_service.operation import Advisory, Operation, Outcome, Source, caution, note
from halfangle_service.quantities import (
    Angle,
    angle_from_radians,
    bench_step,
    from_mm,
    from_tenth_nm,
    to_tenth_nm,
)
from halfangle_service.quantities.cones import half_angle_degrees
from halfangle_service.quantities.expansion import REFERENCE_CELSIUS, expansion_per_kelvin
from halfangle_service.topics.blocks.sets import find_set
from halfangle_service.topics.blocks.tolerances import find_grade
from halfangle_service.topics.centers.limits import tir_on_cone
from halfangle_service.topics.jobs.angle_budget import (
    NAMES,
    SetupErrors,
    included_angle_budget,
    joined_lines,
)
from halfangle_service.topics.jobs.checks import CheckFacts, planned_checks
from halfangle_service.topics.jobs.cone import (
    ARCSEC_PER_RADIAN,
    cone_length,
    included_arcsec_from_temperature,
    included_arcsec_per_height,
    removal,
    slant_length,
)
from halfangle_service.topics.jobs.models import (
    AngleErrorLine,
    CenterJobRequest,
    CenterJobResult,
    PlanCheck,
    PlannedAngle,
    PlannedCone,
    PlannedFeed,
    PlannedRunout,
    PlannedSetting,
    PlannedShank,
    PlanStep,
    RunoutLine,
    StraightShank,
    WrongBlock,
)
from halfangle_service.topics.jobs.setting import Setting, choose_setting
from halfangle_service.topics.jobs.wording import Wording
from halfangle_service.topics.jobs.work_steps import StepFacts, ordered_steps
from halfangle_service.topics.sine.geometry import angle_for_height, height_for_angle
from halfangle_service.topics.tapers.standard import find_standard
from halfangle_service.uncertainty import decide

COVERAGE = 2.0
STEEP_DEGREES = 45.0


@dataclass(frozen=True)
class _Job:
    """A request with what follows from it at once: the plate angle, the stack, the wording."""

    request: CenterJobRequest
    degrees: float
    height: float
    setting: Setting
    words: Wording

    @property
    def angle_rad(self) -> float:
        """Half angle of the cone, equal to the plate's angle, in radians."""
        return math.radians(self.degrees)

    @property
    def blocks(self) -> tuple[float, ...]:
        """Blocks of the stack, in the request's units, largest first."""
        return self.in_units(self.setting.blocks)

    @property
    def total(self) -> float:
        """Height of the stack, in the request's units."""
        return from_tenth_nm(self.setting.total, self.request.units)

    @property
    def arcsec_per_height(self) -> float:
        """Change of the included angle for one unit of height."""
        return included_arcsec_per_height(self.request.center_distance, self.angle_rad)

    @property
    def deviation_arcsec(self) -> float:
        """Error of the included angle from the stack's deviation, without any approximation."""
        from_stack = angle_for_height(self.request.center_distance, self.total)
        return 2.0 * ARCSEC_PER_RADIAN * (from_stack - self.angle_rad)

    def in_units(self, sizes: tuple[int, ...]) -> tuple[float, ...]:
        """Sizes in 0.1 nm in the request's units."""
        return tuple(from_tenth_nm(size, self.request.units) for size in sizes)


def center(request: CenterJobRequest) -> Outcome[CenterJobResult]:
    """Plan a center for grinding on a sine plate."""
    job = _prepare(request)
    angle = _angle(job)
    runout = _runout(request, job.angle_rad)
    feed = _feed(request, job.angle_rad)
    shank = _shank(request)
    result = CenterJobResult(
        job=request.job,
        cone=_cone(job),
        shank=shank,
        setting=_setting(job),
        angle=angle,
        runout=runout,
        feed=feed,
        smallest_mistake=_mistake(job),
        second_stack=_second_stack(job),
        steps=_steps(job, shank, runout, feed),
        checks=_checks(job, runout),
    )
    return Outcome(result, _advisories(job, result))


def _prepare(request: CenterJobRequest) -> _Job:
    """Find the plate's angle and its stack."""
    degrees = half_angle_degrees(request.included_angle, request.half_angle)
    height = height_for_angle(request.center_distance, math.radians(degrees))
    sizes = _sizes(request)
    in_tenth_nm = height * to_tenth_nm(1.0, request.units)
    setting = choose_setting(in_tenth_nm, sizes, request.max_blocks)
    job = _Job(request, degrees, height, setting, Wording(request.units))
    if abs(job.deviation_arcsec) > request.included_angle_tolerance_arcsec:
        raise Unreachable(
            f"The nearest stack of up to {request.max_blocks} of these blocks, "
            f"{job.words.stack(job.blocks)}, misses the included angle by "
            f"{job.words.arcsec(job.deviation_arcsec)}; the tolerance is "
            f"±{request.included_angle_tolerance_arcsec:g}″. Stacks under both rolls, or other "
            "blocks, may reach it.",
            fields={
                "block_sizes" if request.block_sizes else "block_set": "should reach the angle"
            },
            more={"height": height, "nearest_stack": list(job.blocks)},
        )
    return job


def _sizes(request: CenterJobRequest) -> tuple[int, ...]:
    """Sizes in 0.1 nm of the blocks there are; refuses both sources, or neither."""
    if (request.block_set is None) == (request.block_sizes is None):
        raise Disagreement(
            "The blocks come from block_set or from block_sizes: send one of the two.",
            fields={
                "block_set": "send either this or block_sizes",
                "block_sizes": "send either this or block_set",
            },
        )
    if request.block_set is not None:
        return find_set(request.block_set, field="block_set").sizes
    return tuple(to_tenth_nm(size, request.units) for size in request.block_sizes or ())


def _cone(job: _Job) -> PlannedCone:
    return PlannedCone(
        included_angle=Angle.of(2.0 * job.degrees),
        half_angle=Angle.of(job.degrees),
        length=cone_length(job.request.body_diameter, job.angle_rad),
        slant_length=slant_length(job.request.body_diameter, job.angle_rad),
    )


def _shank(request: CenterJobRequest) -> PlannedShank:
    """Give the shank, and what holds it."""
    shank = request.shank
    if isinstance(shank, StraightShank):
        return PlannedShank(
            kind="straight",
            designation=None,
            gauge_diameter=shank.diameter,
            included_angle=None,
            held_in="a collet or bushing of the spin fixture",
        )
    taper = find_standard(shank.designation, field="shank/designation")
    to_mm = 25.4 if taper.units == "in" else 1.0
    return PlannedShank(
        kind="taper",
        designation=taper.designation,
        gauge_diameter=from_mm(taper.gauge_diameter * to_mm, request.units),
        included_angle=angle_from_radians(2.0 * math.atan(taper.rate / 2.0)),
        held_in=f"an adapter with a {taper.name} socket",
    )


def _setting(job: _Job) -> PlannedSetting:
    from_stack = angle_for_height(job.request.center_distance, job.total)
    return PlannedSetting(
        plate_angle=Angle.of(job.degrees),
        height=job.height,
        blocks=list(job.blocks),
        total=job.total,
        deviation=job.total - job.height,
        included_angle_from_stack=angle_from_radians(2.0 * from_stack),
        arcsec_per_step=job.arcsec_per_height * bench_step(job.request.units),
        fewest=True,
    )


def _angle(job: _Job) -> PlannedAngle:
    """Give the angle's error budget against its tolerance."""
    request = job.request
    stated = request.angle_errors
    budget = included_angle_budget(
        job.angle_rad,
        request.center_distance,
        _block_tolerances(job),
        SetupErrors(
            stated.center_distance_tolerance,
            stated.axis_pitch_arcsec,
            _radians(stated.axis_yaw_arcsec),
            stated.wheel_face_arcsec,
        ),
    )
    offset = job.deviation_arcsec + _thermal_arcsec(job)
    worst = abs(offset) + budget.worst_case
    tolerance = request.included_angle_tolerance_arcsec
    expanded = budget.expanded(COVERAGE)
    return PlannedAngle(
        offset_arcsec=offset,
        lines=[
            AngleErrorLine(
                name=name,
                worst_case_arcsec=line.worst_case,
                standard_uncertainty_arcsec=line.standard_uncertainty,
                share_percent=line.share_percent,
            )
            for name, line in joined_lines(budget).items()
        ],
        worst_case_arcsec=worst,
        expanded_uncertainty_arcsec=expanded,
        tolerance_arcsec=tolerance,
        tolerance_used_percent=100.0 * worst / tolerance,
        verdict=decide(offset, -tolerance, tolerance, expanded),
        not_stated=_not_stated(request),
    )


def _block_tolerances(job: _Job) -> tuple[float, ...]:
    """Limit deviation of each block of the stack, in the request's units."""
    grade = find_grade(job.request.block_grade, field="block_grade")
    return tuple(
        from_mm(grade.limit_deviation(size), job.request.units) for size in job.setting.blocks
    )


def _thermal_arcsec(job: _Job) -> float:
    """Error of the included angle from the temperature; none where it was not stated."""
    stated = job.request.angle_errors
    if stated.temperature_celsius is None:
        return 0.0
    difference = expansion_per_kelvin(stated.block_material) - expansion_per_kelvin(
        stated.plate_material
    )
    rise = stated.temperature_celsius - REFERENCE_CELSIUS
    return included_arcsec_from_temperature(job.angle_rad, difference, rise)


def _not_stated(request: CenterJobRequest) -> list[str]:
    """Contributions that the request left out, by the names that the plan shows."""
    stated = request.angle_errors
    missing = [name for field, name in NAMES.items() if getattr(stated, field) is None]
    return missing + (["temperature"] if stated.temperature_celsius is None else [])


def _radians(arcsec: float | None) -> float | None:
    return None if arcsec is None else arcsec / ARCSEC_PER_RADIAN


def _runout(request: CenterJobRequest, angle_rad: float) -> PlannedRunout:
    """Give the runout budget of the cone against the limit."""
    holder = "collet or bushing" if request.shank.kind == "straight" else "adapter"
    parts = {
        holder: request.runout.adapter_tir,
        "spin fixture": request.runout.fixture_tir,
        "indicating": request.runout.indicating_tir,
    }
    worst = math.fsum(parts.values())
    root_sum_square = math.hypot(*parts.values())
    limit = request.runout_allowed_tir
    if worst <= limit:
        verdict = "holds in the worst case"
    elif root_sum_square <= limit:
        verdict = "holds by root sum of squares"
    else:
        verdict = "does not hold"
    squares = root_sum_square**2
    return PlannedRunout(
        lines=[
            RunoutLine(
                name=name, tir=tir, share_percent=100.0 * tir**2 / squares if squares else 0.0
            )
            for name, tir in parts.items()
        ],
        worst_case_tir=worst,
        root_sum_square_tir=root_sum_square,
        limit_tir=limit,
        limit_eccentricity=limit / 2.0,
        limit_zone_diameter=limit,
        read_on_cone_limit_tir=tir_on_cone(limit / 2.0, angle_rad),
        verdict=verdict,
        mend_first=max(parts, key=lambda name: parts[name]),
    )


def _feed(request: CenterJobRequest, angle_rad: float) -> PlannedFeed:
    """Give what a step of downfeed takes off, and the whole allowance."""
    step = request.downfeed_step or bench_step(request.units)
    each = removal(step, angle_rad)
    allowance = request.grinding_allowance
    whole = None if allowance is None else removal(allowance, angle_rad)
    return PlannedFeed(
        step=step,
        off_diameter=each.diameter,
        off_point=each.point,
        # A whole number of steps must not gain one by rounding.
        steps_for_allowance=None if allowance is None else math.ceil(allowance / step - 1e-9),
        allowance_off_diameter=None if whole is None else whole.diameter,
        allowance_off_point=None if whole is None else whole.point,
    )


def _mistake(job: _Job) -> WrongBlock | None:
    mistake = job.setting.mistake
    if mistake is None:
        return None
    units = job.request.units
    return WrongBlock(
        wanted=from_tenth_nm(mistake.wanted, units),
        taken=from_tenth_nm(mistake.taken, units),
        included_angle_error_arcsec=from_tenth_nm(mistake.height_error, units)
        * job.arcsec_per_height,
    )


def _second_stack(job: _Job) -> list[float] | None:
    second = job.setting.second_stack
    return None if second is None else list(job.in_units(second))


def _steps(
    job: _Job, shank: PlannedShank, runout: PlannedRunout, feed: PlannedFeed
) -> list[PlanStep]:
    words = job.words
    rounds = "" if feed.steps_for_allowance is None else f"{feed.steps_for_allowance} steps remove "
    facts = StepFacts(
        stack=words.stack(job.blocks),
        plate_angle=words.degrees(job.degrees),
        stack_height=words.length(job.total),
        holding=f"Seat the shank in {shank.held_in}, both wiped clean.",
        cone_limit=words.small_length(runout.read_on_cone_limit_tir),
        slant=words.length(slant_length(job.request.body_diameter, job.angle_rad)),
        step=words.small_length(feed.step),
        off_diameter=words.small_length(feed.off_diameter),
        rounds=rounds and f"{rounds}the allowance.",
    )
    return [
        PlanStep(number=number, action=step.action, cautions=list(step.cautions))
        for number, step in enumerate(ordered_steps(facts), start=1)
    ]


def _checks(job: _Job, runout: PlannedRunout) -> list[PlanCheck]:
    second = job.setting.second_stack
    mistake = _mistake(job)
    facts = CheckFacts(
        bench_step=bench_step(job.request.units),
        stack_height=job.total,
        second_stack=None if second is None else job.words.stack(job.in_units(second)),
        half_angle_rad=job.angle_rad,
        cone_length=cone_length(job.request.body_diameter, job.angle_rad),
        cone_limit_tir=runout.read_on_cone_limit_tir,
        mistake_height=None if mistake is None else mistake.taken - mistake.wanted,
        mistake_arcsec=None if mistake is None else mistake.included_angle_error_arcsec,
    )
    return [
        PlanCheck(
            check=check.check,
            how=check.how,
            expected=check.expected,
            catches_wrong_block=check.catches_wrong_block,
            why=check.why,
        )
        for check in planned_checks(facts, job.words)
    ]


def _advisories(job: _Job, result: CenterJobResult) -> tuple[Advisory, ...]:
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
                f"The height {job.height:.7g} {job.request.units} is not one that these blocks "
                f"build; the nearest stack is off by {job.words.arcsec(job.deviation_arcsec)} of "
                "included angle, which the budget counts as a known offset.",
            )
        )
    if job.degrees > STEEP_DEGREES:
        found.append(
            caution(
                "steep-angle",
                f"Past {STEEP_DEGREES:g}° a sine setting loses its edge: one bench step of height "
                f"turns the included angle by {job.words.arcsec(result.setting.arcsec_per_step)}.",
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
                standing="from memory",
            ),
            Source(
                citation="Tolerances of gauge blocks by grade: ISO 3650:1998, ASME B89.1.9-2002.",
                standing="from memory",
            ),
            Source(
                citation="29 CFR 1910.215(d)(1): inspection, ring test, marked speed.",
                standing="published",
            ),
            Source(
                citation="Order of the steps, and what each means of measuring can tell apart.",
                standing="common practice, no source",
            ),
        ),
        example=_EXAMPLE,
        largest_request="one stack of up to 8 blocks from up to 200",
    ),
)
