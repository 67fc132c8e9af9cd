"""A compound face on one sine plate: its work turned in plan, so that one tilt brings it level.

Derived here: a face that rises at the tilt τ toward φ is level on a plate at τ whose hinge is
square to φ. That is a compound plate whose upper plate stands at zero, and so are its errors in
both views: the plate's act as the base hinge's, one of the turn in plan as a yaw of the work.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

import numpy as np

from halfangle_service.fields import ARCSEC_PER_RADIAN, Angle
from halfangle_service.topics.jobs.plan.features import Wanted
from halfangle_service.topics.jobs.plan.result import AngleOf, PlanSetting, PlanWayName
from halfangle_service.topics.jobs.plan.shop.equipment import PlanSinePlate, PlanSwivelBase
from halfangle_service.topics.jobs.plan.ways.bounds import WorkShare
from halfangle_service.topics.jobs.plan.ways.sine_plate import ways_along
from halfangle_service.topics.jobs.plan.ways.way import RuledOut, ShopBox, ToleratedAngle, Way
from halfangle_service.trade.inspection.mistakes import ErrorOfHeight, PlannedStack
from halfangle_service.trade.sine.compound import BaseAxis, Vector, tilt_of_normal
from halfangle_service.trade.sine.compound_errors import CompoundSet, ViewSlopes
from halfangle_service.trade.uncertainty import Budget, Contribution
from halfangle_service.trade.wording import arcsec, degrees

_NAME: PlanWayName = "sine-plate-turned-in-plan"
_SWIVEL, _WHEEL = "swivel_base/swivel_error_limit_arcsec", "wheel_face_error_limit_arcsec"
_VIEWS: tuple[AngleOf, AngleOf] = ("x-angle", "y-angle")
#: What tells two ways by the same plate and blocks apart.
_VARIANTS = {"sine-plate": "one stack", "stacks-under-both-rolls": "stacks under both rolls"}


@dataclass(frozen=True, slots=True)
class _Turned:
    """A face on a plate with its work turned in plan; `path` is the plate's in the request."""

    wanted: Wanted
    normal: Vector
    plate: PlanSinePlate
    base: PlanSwivelBase
    path: str

    @property
    def rises_toward(self) -> float:
        """Direction in plan in which the face rises, in radians from right toward back."""
        return tilt_of_normal(self.normal)[1]

    @property
    def laid(self) -> CompoundSet:
        """The plate as a compound plate's base plate, with the work turned to its hinge.

        The table goes along X: a plate that tilts along it raises its right end.
        """
        along: dict[str, tuple[BaseAxis, float]] = {
            "along-travel": ("y", math.pi),
            "across-travel": ("x", 1.5 * math.pi),
        }
        axis, uphill = along[self.plate.tilt_direction]
        turn = uphill - self.rises_toward
        c, s = math.cos(turn), math.sin(turn)
        rotation = np.array([[c, -s, 0.0], [s, c, 0.0], [0.0, 0.0, 1.0]])
        return CompoundSet(self.wanted.angle_rad, 0.0, axis, rotation)


def turned_in_plan_ways(
    wanted: Wanted,
    normal: Vector,
    plate: PlanSinePlate,
    base: PlanSwivelBase,
    path: str,
    boxes: Sequence[ShopBox],
    max_blocks: int,
    share: WorkShare,
) -> Iterator[Way | RuledOut]:
    """Each way on one plate with a swivelling base, with the blocks of each box."""
    turned = _Turned(wanted, normal, plate, base, path)
    for way in ways_along(wanted, plate, path, boxes, max_blocks, share):
        if isinstance(way, RuledOut):
            yield replace(way, name=_NAME, instead=None)
        else:
            yield _of_views(turned, way)


def _of_views(turned: _Turned, way: Way) -> Way | RuledOut:
    """A way to set the tilt as one that sets both views, or why it misses one of them."""
    laid, tolerance = turned.laid, turned.wanted.tolerance_arcsec
    tilt, nominal = way.angles[0].budget, turned.laid.views()
    off = laid.views(tilt.offset)
    angles = tuple(
        ToleratedAngle(view, _budget(turned, tilt, slopes, as_set - angle), tolerance)
        for view, slopes, angle, as_set in zip(_VIEWS, laid.slopes(), nominal, off, strict=True)
    )
    missed = max(abs(angle.budget.offset) for angle in angles) * ARCSEC_PER_RADIAN
    if missed > tolerance:
        reason = f"The nearest stacks miss an angle by {arcsec(missed)}."
        return RuledOut(_NAME, way.equipment, reason, f"{turned.path}center_distance")
    return replace(
        way,
        name=_NAME,
        angles=angles,
        settings=(_turn(turned), *way.settings),
        adds=None,
        wrong_blocks=tuple(_wrong(stack, laid) for stack in way.wrong_blocks),
        work=replace(way.work, turns_in_plan=1),
        variant=_VARIANTS[way.name],
    )


def _budget(turned: _Turned, tilt: Budget, slopes: ViewSlopes, offset: float) -> Budget:
    """The budget of one view's angle, in radians, from that of the tilt."""
    parts = [
        part.times(slopes.wheel if part.name == _WHEEL else slopes.base)
        for part in tilt.contributions
    ]
    missing, limit = list(tilt.not_stated), turned.base.swivel_error_limit_arcsec
    if limit is None:
        missing.append(_SWIVEL)
    else:
        slope = slopes.upper_yaw / ARCSEC_PER_RADIAN
        parts.append(Contribution(_SWIVEL, limit, sensitivity=slope, unit="arcsecond"))
    return Budget(tuple(parts), offset, tuple(missing))


def _wrong(stack: PlannedStack, laid: CompoundSet) -> PlannedStack:
    """A stack as a wrong block may be wrung into it: the view that is furthest off counts."""
    nominal, of_tilt = laid.views(), stack.error_of

    def error(height: int) -> float | None:
        tilt = of_tilt(height)
        if tilt is None:
            return None
        views = zip(laid.views(tilt / ARCSEC_PER_RADIAN), nominal, strict=True)
        return max((as_set - wanted for as_set, wanted in views), key=abs) * ARCSEC_PER_RADIAN

    of_views: ErrorOfHeight = error
    return replace(stack, error_of=of_views)


def _turn(turned: _Turned) -> PlanSetting:
    toward = math.degrees(turned.rises_toward)
    return PlanSetting(
        part="work",
        angle=Angle.of(toward),
        height=None,
        deviation_arcsec=None,
        arcsec_per_step=None,
        action="Turn the work in plan on the swivelling base, so that what lies at "
        f"{degrees(toward, turned.wanted.tolerance_arcsec)} from right toward back, to where the "
        f"face rises, points square to the hinge of {turned.plate.name} and toward it.",
    )
