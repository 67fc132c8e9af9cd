"""Work on a sine plate, along it or turned a quarter: the plate's angle, and what its errors do."""

import math
from dataclasses import dataclass, replace

from halfangle_service.fields import ARCSEC_PER_RADIAN
from halfangle_service.topics.jobs.plan.features import Wanted
from halfangle_service.topics.jobs.plan.result import PlanWayName
from halfangle_service.topics.jobs.plan.shop.equipment import PlanInternalSpindle, PlanSinePlate
from halfangle_service.topics.jobs.plan.shop.errors import PlateErrorFields
from halfangle_service.topics.jobs.plan.ways.bounds import WorkShare
from halfangle_service.topics.jobs.plan.ways.plate_on_stack import PlateOnStack
from halfangle_service.topics.jobs.plan.ways.way import YAW, RuledOut, ShopBox, without
from halfangle_service.trade.clearance.turned import Cone
from halfangle_service.trade.decimals import tidy
from halfangle_service.trade.sine.angle_error import of_included_angle
from halfangle_service.trade.sine.geometry import height_for_angle, stack_offset, turned_by_yaw
from halfangle_service.trade.stacks.setting import Setting
from halfangle_service.trade.uncertainty import Budget, Contribution
from halfangle_service.trade.wheel.in_bore import OFFSET, by_quill_offset

_PITCH = "axis_pitch_error_limit_arcsec"
_SQUARE = "squareness_error_limit_arcsec"


@dataclass(frozen=True, slots=True)
class Seat:
    """A plate with the work on it, along it or turned a quarter, and a box for its stacks."""

    wanted: Wanted
    plate: PlanSinePlate
    path: str
    box: ShopBox
    max_blocks: int
    quarter: bool
    share: WorkShare
    spindle: PlanInternalSpindle | None = None

    @property
    def name(self) -> PlanWayName:
        """The way by one stack."""
        return "quarter-turn" if self.quarter else "sine-plate"

    @property
    def angle_degrees(self) -> float:
        """The plate's angle."""
        angle = self.wanted.angle_degrees
        return tidy(90.0 - angle, 90.0) if self.quarter else angle

    @property
    def offset(self) -> float:
        """Difference of the stacks at which the plate stands at zero."""
        return stack_offset(self.plate.base_step)

    @property
    def height(self) -> float:
        """Difference of the stacks for the plate's angle."""
        angle = math.radians(self.angle_degrees)
        return height_for_angle(self.plate.center_distance, angle, self.offset)

    @property
    def equipment(self) -> tuple[str, ...]:
        """What the way takes of the shop."""
        return self.plate.name, self.box.name

    def on(self, setting: Setting) -> PlateOnStack:
        """The plate on a stack under its high roll."""
        return PlateOnStack(
            self.wanted.units,
            self.plate.center_distance,
            self.angle_degrees,
            self.height,
            setting,
            offset=self.offset,
        )

    def ruled_out(
        self, name: PlanWayName, reason: str, field: str, instead: str | None = None
    ) -> RuledOut:
        """This way, which cannot."""
        return RuledOut(name, self.equipment, reason, field, instead)


def stating(seat: Seat, name: str, value: float) -> Seat:
    """A plate, or the spindle beside it, with one more of its errors stated."""
    plate, spindle = seat.plate, seat.spindle
    if name == OFFSET and spindle is not None:
        return replace(seat, spindle=spindle.model_copy(update={name: value}))
    if name in PlateErrorFields.model_fields:
        errors = plate.angle_errors.model_copy(update={name: value})
        return replace(seat, plate=plate.model_copy(update={"angle_errors": errors}))
    return replace(seat, plate=plate.model_copy(update={name: value}))


def budget_of_feature(seat: Seat, plate: Budget) -> Budget:
    """The budget of the angle that has the tolerance, from that of the plate's, in radians."""
    if not seat.wanted.turned or seat.wanted.internal:
        plate = without(plate, YAW)
    if seat.quarter:
        plate = _a_quarter_turned(seat, plate)
    included = of_included_angle(plate) if seat.wanted.turned else plate
    return _in_bore(seat, included) if seat.wanted.internal else included


def _in_bore(seat: Seat, included: Budget) -> Budget:
    """The budget of a socket's angle: what the quill does takes the place of a yaw under a plane.

    The plane that a flat wheel sweeps does not care where the work turns in it; a quill does.
    """
    wanted, spindle = seat.wanted, seat.spindle
    if spindle is None or spindle.axis_offset_error_limit is None:
        return replace(included, not_stated=(*included.not_stated, OFFSET))
    bore = Cone(wanted.angle_rad, wanted.large_diameter / 2.0, wanted.small_diameter / 2.0)
    offset, radius = spindle.axis_offset_error_limit, spindle.wheel_diameter / 2.0
    own = tuple(by_quill_offset(bore, radius, offset))
    return replace(included, contributions=(*included.contributions, *own))


def _a_quarter_turned(seat: Seat, plate: Budget) -> Budget:
    """The budget of 90° less the plate's angle: its errors turned about, yaw and pitch its own.

    The work's axis stands square to the plate's top, so that what turns it there is the error of
    that square, and a yaw acts on the angle itself.
    """
    parts, missing = [], [_SQUARE if name == _PITCH else name for name in plate.not_stated]
    for part in plate.contributions:
        if part.name == YAW and part.value:
            turned = turned_by_yaw(seat.wanted.angle_rad, part.value / ARCSEC_PER_RADIAN)
            parts.append(replace(part, sensitivity=turned / part.value))
        elif part.name != _PITCH:
            parts.append(part.times(-1.0))
    square = seat.plate.squareness_error_limit_arcsec
    if square is not None:
        slope = 1.0 / ARCSEC_PER_RADIAN
        parts.append(Contribution(_SQUARE, square, sensitivity=slope, unit="arcsecond"))
        missing = [name for name in missing if name != _SQUARE]
    elif _SQUARE not in missing:
        missing.append(_SQUARE)
    return Budget(tuple(parts), -plate.offset, tuple(missing))
