"""A compound face on a compound sine plate, in either order of its hinges.

The surface comes level under a flat wheel. Settings and stacks are those of `sine.compound`, each
hinge's errors those of a sine plate; what they do to the angles that the drawing's views show is
`trade.sine.compound_errors`. Work turned a quarter in plan has the order of its hinges changed.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from halfangle_service.errors import BeyondBound, Unreachable
from halfangle_service.fields import ARCSEC_PER_RADIAN, Angle, to_tenth_nm
from halfangle_service.fields.compound.hinges import (
    WHICH,
    CompoundPlate,
    Which,
    in_words,
)
from halfangle_service.fields.compound.plates import plates_of
from halfangle_service.fields.compound.raised_sides import sides_of
from halfangle_service.fields.compound.stacks import require_stacks
from halfangle_service.fields.estimate import OWN_CAUSES
from halfangle_service.fields.plates import arcsec_per_step
from halfangle_service.fields.set_up_errors import SetUpErrorFields
from halfangle_service.topics.jobs.plan.features import Wanted
from halfangle_service.topics.jobs.plan.result import AngleOf, PlanSetting, PlanStack, PlanWayName
from halfangle_service.topics.jobs.plan.shop.equipment import PlanCompoundPlate
from halfangle_service.topics.jobs.plan.ways.bounds import WorkShare
from halfangle_service.topics.jobs.plan.ways.plate_budget import set_up_errors, stack_of
from halfangle_service.topics.jobs.plan.ways.plate_on_stack import PlateOnStack
from halfangle_service.topics.jobs.plan.ways.way import (
    YAW,
    RuledOut,
    ShopBox,
    ToleratedAngle,
    Way,
    check_stack,
    plan_stack,
    stack_words,
    taken,
    work_of,
)
from halfangle_service.topics.jobs.plan.ways.wrong_blocks import HingeOnStack, on_hinges
from halfangle_service.trade.planning.times import SetupWork
from halfangle_service.trade.sine.compound import Vector, raised_side
from halfangle_service.trade.sine.compound_errors import CompoundSet, ViewSlopes
from halfangle_service.trade.sine.compound_layings import Laid, Laying, as_drawn, other_layings
from halfangle_service.trade.sine.geometry import beyond_reach
from halfangle_service.trade.stacks.setting import Setting
from halfangle_service.trade.stacks.supply import Piece
from halfangle_service.trade.uncertainty import Budget, Contribution
from halfangle_service.trade.wording import arcsec, degrees, plain

_NAME: PlanWayName = "compound-sine-plate"
_WHEEL = "wheel_face_error_limit_arcsec"
_VIEWS: tuple[AngleOf, AngleOf] = ("x-angle", "y-angle")


@dataclass(frozen=True, slots=True)
class CompoundJob:
    """A face on one plate, with one box; `path` is the plate's in the request."""

    wanted: Wanted
    normal: Vector
    plate: PlanCompoundPlate
    plates: CompoundPlate
    path: str
    box: ShopBox
    max_blocks: int
    share: WorkShare

    @property
    def equipment(self) -> tuple[str, ...]:
        """What the way takes of the shop."""
        return self.plate.name, self.box.name

    def errors(self, which: Which) -> SetUpErrorFields:
        """What was stated of one hinge."""
        return self.plate.base_errors if which == "base" else self.plate.upper_errors

    def past_reach(self, way: Laid) -> tuple[Which, float, float] | None:
        """The first hinge past its reach, its angle and that reach in degrees."""
        reaches = (self.plate.base_largest_angle, self.plate.upper_largest_angle)
        for which, hinge, reach in zip(WHICH, way.hinges, reaches, strict=True):
            angle = math.degrees(abs(hinge))
            if reach is not None and beyond_reach(angle, reach):
                return which, angle, reach
        return None


def job_on(
    wanted: Wanted,
    normal: Vector,
    plate: PlanCompoundPlate,
    path: str,
    box: ShopBox,
    max_blocks: int,
    share: WorkShare,
) -> CompoundJob:
    """A face on one plate with the blocks of one box."""
    plates = CompoundPlate(plates_of(plate, wanted.units), wanted.units, None)
    return CompoundJob(wanted, normal, plate, plates, path, box, max_blocks, share)


def compound_ways(job: CompoundJob) -> Iterator[Way | RuledOut]:
    """Each way to lay the work: as drawn, a quarter turned; where neither does, tipped."""
    normal, plate, sides = job.normal, job.plate, sides_of(job.plate)
    first = as_drawn(normal, "part", plate.base_axis, sides)
    taken_first = Laying() if first is None else first.laying
    others = other_layings(normal, "part", plate.base_axis, sides, taken_first)
    upright = [way for way in (first, *others) if way and way.laying.side_up == "top"]
    tipped = [way for way in others if way.laying.side_up != "top"]
    found = [_laid(job, way) for way in upright]
    if not any(isinstance(way, Way) for way in found):
        found += [_laid(job, way) for way in tipped]
    yield from found
    if not found:
        yield RuledOut(
            _NAME,
            job.equipment,
            "No turn of the work lets these plates raise the sides that the face asks for.",
            f"{job.path}base_raised_side",
        )


def _laid(job: CompoundJob, way: Laid) -> Way | RuledOut:
    """The way with the work laid so."""
    past = job.past_reach(way)
    if past is not None:
        which, angle, reach = past
        return RuledOut(
            _NAME,
            job.equipment,
            f"With the work {in_words(way.laying)} the {which} plate, which reaches "
            f"{plain(reach)}°, is asked for {plain(angle)}°.",
            f"{job.path}{which}_largest_angle",
        )
    heights = tuple(
        plate.height(angle) for plate, angle in zip(job.plates.plates, way.hinges, strict=True)
    )
    if min(heights) < 0.0:
        which = WHICH[heights.index(min(heights))]
        return RuledOut(
            _NAME,
            job.equipment,
            f"With the work {in_words(way.laying)} the {which} plate stands higher without a stack "
            "than it should with one.",
            f"{job.path}{which}_step",
        )
    blocks, units, share = job.box.supply.box, job.wanted.units, job.share
    try:
        share.require_stacks(blocks.table(job.max_blocks), to_tenth_nm(max(heights), units))
        found = require_stacks(
            blocks.sizes,
            (heights[0], heights[1]),
            job.max_blocks,
            units,
            share.searches,
            share.require_differences_of_a_way,
        )
    except (Unreachable, BeyondBound) as refusal:
        return RuledOut(_NAME, job.equipment, refusal.detail, job.box.path)
    return _built(job, way, found.stacks)


@dataclass(frozen=True, slots=True)
class _Hinge:
    """One plate on its stack: how far it may be off toward a steeper angle, in radians."""

    which: Which
    on_stack: PlateOnStack
    pieces: tuple[Piece, ...]
    budget: Budget


def _built(job: CompoundJob, way: Laid, stacks: Sequence[tuple[int, ...]]) -> Way | RuledOut:
    """The way on stacks of these sizes; ruled out where they miss a view's tolerance."""
    left: list[Piece] = list(job.box.supply.box.pieces)
    hinges, raw = [], []
    for which, place in zip(WHICH, (0, 1), strict=True):
        pieces, left = taken(left, stacks[place])
        hinges.append(_hinge(job, way, which, pieces))
        raw.append(pieces)
    base, upper = hinges
    laid = CompoundSet(*way.hinges, job.plate.base_axis, way.laying.rotation)
    angles = tuple(_angles(job, laid, base, upper))
    known = [abs(angle.budget.offset) * ARCSEC_PER_RADIAN for angle in angles]
    if max(known) > job.wanted.tolerance_arcsec:
        return RuledOut(
            _NAME,
            job.equipment,
            f"With the work {in_words(way.laying)} the nearest stacks miss an angle by "
            f"{arcsec(max(known))}.",
            job.box.path,
            "Another set may reach it.",
        )
    built = tuple(_stacks(job, hinges, left))
    on_stacks = [_on_stack(hinge, pieces) for hinge, pieces in zip(hinges, raw, strict=True)]
    return Way(
        _NAME,
        job.equipment,
        angles,
        (_setting(job, way, base), _setting(job, way, upper)),
        built,
        job.plate.setup_minutes,
        job.plate.inspection_minutes,
        wrong_blocks=on_hinges(laid, on_stacks, job.box.supply.box, built, job.wanted.units),
        work=work_of(built, _seating(hinges)),
        variant=f"work {in_words(way.laying)}",
        laid=way,
    )


def _seating(hinges: Sequence[_Hinge]) -> SetupWork:
    """An edge trued along the plate, and each plate that is set beside the first."""
    raised = sum(1 for hinge in hinges if hinge.pieces)
    return SetupWork(edge_trueings=1, further_tilts=max(0, raised - 1))


def _on_stack(hinge: _Hinge, pieces: tuple[Piece, ...]) -> HingeOnStack:
    """A hinge on its stack as the box has the blocks."""
    plate = hinge.on_stack
    return HingeOnStack(
        hinge.which, plate.center_distance, plate.angle_rad, plate.offset, pieces, plate.off_rad
    )


def _hinge(job: CompoundJob, way: Laid, which: Which, pieces: tuple[Piece, ...]) -> _Hinge:
    place = WHICH.index(which)
    plate, angle_rad = job.plates.plates[place], abs(way.hinges[place])
    graded = stack_of(pieces, job.box.grade, job.box.material)
    on_stack = PlateOnStack(
        job.wanted.units,
        plate.center_distance,
        math.degrees(angle_rad),
        plate.height(angle_rad),
        Setting(graded, ()),
        offset=plate.step,
    )
    budget = set_up_errors(on_stack, graded, job.errors(which))
    return _Hinge(which, on_stack, graded, budget)


def _angles(
    job: CompoundJob, laid: CompoundSet, base: _Hinge, upper: _Hinge
) -> Iterator[ToleratedAngle]:
    """The budget of the angle in each view."""
    exact, off = laid.views(), laid.views(base.budget.offset, upper.budget.offset)
    for view, slopes, nominal, as_set in zip(_VIEWS, laid.slopes(), exact, off, strict=True):
        parts = (
            *_of_hinge(base, slopes.base, slopes.base_yaw),
            *_of_hinge(upper, slopes.upper, slopes.upper_yaw),
            *_of_wheel(job.plate, slopes),
        )
        missing = (*_missing(base), *_missing(upper), *_wheel_missing(job.plate))
        budget = Budget(parts, as_set - nominal, tuple(dict.fromkeys(missing)))
        yield ToleratedAngle(view, budget, job.wanted.tolerance_arcsec)


def _of_hinge(hinge: _Hinge, slope: float, yaw_slope: float) -> Iterator[Contribution]:
    """A hinge's contributions to a view's angle, each named by the hinge that states it."""
    for part in hinge.budget.contributions:
        if part.name in OWN_CAUSES:
            which = hinge.which if part.of is None else f"{hinge.which}, {part.of}"
            yield replace(part.times(slope), of=which)
        elif part.name == YAW:
            yield Contribution(
                f"{hinge.which}_errors/{YAW}",
                part.value,
                sensitivity=yaw_slope / ARCSEC_PER_RADIAN,
                unit="arcsecond",
            )
        else:
            name = f"{hinge.which}_errors/{part.name}"
            yield replace(part.times(slope), name=name)


def _of_wheel(plate: PlanCompoundPlate, slopes: ViewSlopes) -> Iterator[Contribution]:
    limit = plate.wheel_face_error_limit_arcsec
    if limit is not None:
        slope = slopes.wheel / ARCSEC_PER_RADIAN
        yield Contribution(_WHEEL, limit, sensitivity=slope, unit="arcsecond")


def _missing(hinge: _Hinge) -> Iterator[str]:
    """What was not stated of a hinge; a yaw acts here where it would not on one plate."""
    for name in hinge.budget.not_stated:
        yield name if name == "grade" else f"{hinge.which}_errors/{name}"


def _wheel_missing(plate: PlanCompoundPlate) -> tuple[str, ...]:
    return (_WHEEL,) if plate.wheel_face_error_limit_arcsec is None else ()


def _setting(job: CompoundJob, way: Laid, hinge: _Hinge) -> PlanSetting:
    place, plate = WHICH.index(hinge.which), hinge.on_stack
    side = raised_side(job.plates.plates[place].hinge_axis, way.hinges[place])
    angle = degrees(plate.angle_degrees, job.wanted.tolerance_arcsec)
    action = f"Leave the {hinge.which} plate of {job.plate.name} at zero."
    if hinge.pieces:
        roll = "its" if side == "neither" else f"the {side}"
        action = (
            f"Set the {hinge.which} plate of {job.plate.name} to {angle}: "
            f"{stack_words(hinge.pieces, job.wanted)} under {roll} roll."
        )
    if hinge.which == "base":
        action = f"Lay the work {in_words(way.laying)}. {action}"
    return PlanSetting(
        part=hinge.which,
        angle=Angle.of(plate.angle_degrees),
        height=plate.height,
        deviation_arcsec=plate.off_rad * ARCSEC_PER_RADIAN,
        arcsec_per_step=arcsec_per_step(plate.center_distance, plate.angle_rad, plate.units),
        action=action,
    )


def _stacks(
    job: CompoundJob, hinges: Sequence[_Hinge], left: Sequence[Piece]
) -> Iterator[PlanStack]:
    """Both stacks, and of what is left a second one of each that it builds."""
    raised = [hinge for hinge in hinges if hinge.pieces]
    for hinge in raised:
        yield plan_stack(hinge.which, hinge.pieces, job.wanted.units)
    for hinge in raised:
        for second in check_stack(hinge.pieces, left, job.box, job.max_blocks, job.wanted.units):
            unit = job.wanted.units
            _, left = taken(left, [to_tenth_nm(size, unit) for size in second.blocks])
            yield second
