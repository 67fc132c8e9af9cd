"""The parts of a center's plan, each from the request and what follows from it at once."""

import math
from dataclasses import dataclass

from halfangle_service.fields import (
    Angle,
    angle_from_radians,
    bench_step,
    from_mm,
    from_tenth_nm,
    to_mm,
)
from halfangle_service.topics.jobs.checks import CheckFacts, planned_checks
from halfangle_service.topics.jobs.models import (
    AngleErrorLine,
    CenterJobRequest,
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
from halfangle_service.topics.jobs.setting import Setting
from halfangle_service.topics.jobs.wording import Wording
from halfangle_service.topics.jobs.work_steps import StepFacts, ordered_steps
from halfangle_service.trade.angles import ARCSEC_PER_RADIAN
from halfangle_service.trade.centers.limits import tir_on_cone
from halfangle_service.trade.cone import cone_length, slant_length
from halfangle_service.trade.runout.budget import root_sum_of_squares, worst_case
from halfangle_service.trade.sine.center_budget import (
    NAMES,
    SetupErrors,
    included_angle_budget,
    joined_lines,
)
from halfangle_service.trade.sine.cone_errors import (
    included_arcsec_from_temperature,
    included_arcsec_per_height,
)
from halfangle_service.trade.sine.geometry import angle_for_height
from halfangle_service.trade.tables.blocks.tolerances import find_grade
from halfangle_service.trade.tables.materials.expansion import (
    REFERENCE_CELSIUS,
    expansion_per_kelvin,
)
from halfangle_service.trade.tables.tapers.standard import find_standard
from halfangle_service.trade.tapers.feed import axial_shift, off_diameter, passes
from halfangle_service.trade.uncertainty import decide

COVERAGE = 2.0


@dataclass(frozen=True)
class Job:
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


def planned_cone(job: Job) -> PlannedCone:
    """The cone: its angles and its length."""
    return PlannedCone(
        included_angle=Angle.of(2.0 * job.degrees),
        half_angle=Angle.of(job.degrees),
        length=cone_length(job.request.body_diameter, job.angle_rad),
        slant_length=slant_length(job.request.body_diameter, job.angle_rad),
    )


def planned_shank(request: CenterJobRequest) -> PlannedShank:
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
    return PlannedShank(
        kind="taper",
        designation=taper.designation,
        gauge_diameter=from_mm(to_mm(taper.gauge_diameter, taper.units), request.units),
        included_angle=angle_from_radians(2.0 * math.atan(taper.rate / 2.0)),
        held_in=f"an adapter with a {taper.name} socket",
    )


def planned_setting(job: Job) -> PlannedSetting:
    """The plate's setting and the stack that makes it."""
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


def planned_angle(job: Job) -> PlannedAngle:
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


def _block_tolerances(job: Job) -> tuple[float, ...]:
    """Limit deviation of each block of the stack, in the request's units."""
    grade = find_grade(job.request.block_grade, field="block_grade")
    return tuple(
        from_mm(grade.limit_deviation(size), job.request.units) for size in job.setting.blocks
    )


def _thermal_arcsec(job: Job) -> float:
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


def planned_runout(request: CenterJobRequest, angle_rad: float) -> PlannedRunout:
    """Give the runout budget of the cone against the limit."""
    holder = "collet or bushing" if request.shank.kind == "straight" else "adapter"
    parts = {
        holder: request.runout.adapter_tir,
        "spin fixture": request.runout.fixture_tir,
        "indicating": request.runout.indicating_tir,
    }
    tirs = tuple(parts.values())
    worst = worst_case(tirs)
    root_sum_square = root_sum_of_squares(tirs)
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


def planned_feed(request: CenterJobRequest, angle_rad: float) -> PlannedFeed:
    """Give what a step of downfeed takes off, and the whole allowance."""
    step = request.downfeed_step or bench_step(request.units)
    allowance = request.grinding_allowance
    return PlannedFeed(
        step=step,
        off_diameter=off_diameter(step, angle_rad),
        off_point=axial_shift(step, angle_rad),
        steps_for_allowance=None if allowance is None else passes(allowance, step)[0],
        allowance_off_diameter=None if allowance is None else off_diameter(allowance, angle_rad),
        allowance_off_point=None if allowance is None else axial_shift(allowance, angle_rad),
    )


def smallest_mistake(job: Job) -> WrongBlock | None:
    """The wrong block that would show least, where one can be taken by mistake."""
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


def second_stack(job: Job) -> list[float] | None:
    """Another stack of the same height, in the request's units, where the box holds one."""
    second = job.setting.second_stack
    return None if second is None else list(job.in_units(second))


def planned_steps(
    job: Job, shank: PlannedShank, runout: PlannedRunout, feed: PlannedFeed
) -> list[PlanStep]:
    """The steps of the work in order, with the cautions of the trade."""
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


def made_checks(job: Job, runout: PlannedRunout) -> list[PlanCheck]:
    """The checks to make, and which of them would catch a wrong block."""
    second = job.setting.second_stack
    mistake = smallest_mistake(job)
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
