"""On a sine plate under a flat wheel: one stack, two, or the work turned a quarter.

A flat wheel sweeps a level plane. A cone turned about its axis under it has the plate's angle as
its half angle, a face that of the plate as its own. Where the work is turned a quarter on the plate
(its axis, or its base, square to the plate's top) it has 90° less the plate's angle. A yaw of the
work turns a cone's angle and leaves a face's angle to its base as it is. Derived here.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from halfangle_service.errors import BeyondBound
from halfangle_service.fields import (
    ARCSEC_PER_RADIAN,
    Angle,
    from_tenth_nm,
    to_tenth_nm,
)
from halfangle_service.fields.plates import arcsec_per_step
from halfangle_service.fields.stacks import stack_facts
from halfangle_service.topics.jobs.plan.features import Wanted
from halfangle_service.topics.jobs.plan.result import (
    PlanSetting,
    PlanStack,
    PlanWayName,
)
from halfangle_service.topics.jobs.plan.shop.equipment import PlanInternalSpindle, PlanSinePlate
from halfangle_service.topics.jobs.plan.shop.errors import PlateErrorFields
from halfangle_service.topics.jobs.plan.ways.bounds import WorkShare
from halfangle_service.topics.jobs.plan.ways.plate_budget import plate_errors, stack_of
from halfangle_service.topics.jobs.plan.ways.plate_on_stack import PlateOnStack
from halfangle_service.topics.jobs.plan.ways.way import (
    YAW,
    RuledOut,
    ShopBox,
    ToleratedAngle,
    Way,
    adds_to,
    angle_of,
    check_stack,
    plan_stack,
    stack_words,
    taken,
    without,
)
from halfangle_service.topics.jobs.plan.ways.wrong_blocks import SetByStacks, on_rolls
from halfangle_service.trade.clearance.turned import Cone
from halfangle_service.trade.decimals import tidy
from halfangle_service.trade.sine.angle_error import of_included_angle
from halfangle_service.trade.sine.geometry import (
    beyond_reach,
    height_for_angle,
    stack_offset,
    turned_by_yaw,
)
from halfangle_service.trade.sine.low_stack import (
    Conditions,
    Pair,
    Preference,
    difference_table,
)
from halfangle_service.trade.stacks.setting import Setting, choose_setting
from halfangle_service.trade.stacks.supply import Piece
from halfangle_service.trade.uncertainty import Budget, Contribution
from halfangle_service.trade.wheel.in_bore import OFFSET, by_quill_offset
from halfangle_service.trade.wording import arcsec, degrees, figure, option, plain, stack

_PITCH = "axis_pitch_error_limit_arcsec"
_SQUARE = "squareness_error_limit_arcsec"


@dataclass(frozen=True, slots=True)
class _Seat:
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


def sine_plate_ways(
    wanted: Wanted,
    plate: PlanSinePlate,
    path: str,
    boxes: Sequence[ShopBox],
    max_blocks: int,
    share: WorkShare,
    spindle: PlanInternalSpindle | None = None,
) -> Iterator[Way | RuledOut]:
    """Each way on one plate, with the blocks of each box; `path` is the plate's in the request.

    Where none works, none is named in place of another. `spindle` is what grinds a socket.
    """
    along = [_Seat(wanted, plate, path, box, max_blocks, False, share, spindle) for box in boxes]
    found = list(_each_seat(along))
    works = any(isinstance(way, Way) for way in found)
    yield from (
        way if works or isinstance(way, Way) else replace(way, instead=None) for way in found
    )


def on_one_stack(
    wanted: Wanted, plate: PlanSinePlate, path: str, box: ShopBox, max_blocks: int
) -> Way | RuledOut:
    """The one way with the work along a plate on one stack of a box.

    Raises BeyondBound where the box takes more work than one request may ask for.
    """
    share = WorkShare.of_one_way()
    seat = _Seat(wanted, plate, path, box, max_blocks, quarter=False, share=share)
    return _against(seat) or _by_one_stack(seat, _single(seat), None)


def _each_seat(along: Sequence[_Seat]) -> Iterator[Way | RuledOut]:
    """The ways with the work along the plate and turned a quarter on it."""
    for quarter in (False, True):
        seats = [replace(seat, quarter=quarter) for seat in along]
        against = _against(seats[0])
        if against is not None:
            yield against
            continue
        for seat in seats:
            yield from _on_stacks(seat)


def _against(seat: _Seat) -> RuledOut | None:
    """Why the plate does not stand at the angle, whatever the blocks; None where it does."""
    reach, angle = seat.plate.largest_angle, seat.angle_degrees
    if reach is not None and beyond_reach(angle, reach):
        reason = f"The plate reaches {plain(reach)}°; {plain(angle)}° is asked of it."
        field, instead = "largest_angle", _other_seat(seat)
    elif seat.height <= 0.0:
        reason = f"Without a stack the plate stands higher than {plain(angle)}°."
        field, instead = "base_step", None
    else:
        return None
    return RuledOut(seat.name, (seat.plate.name,), reason, f"{seat.path}{field}", instead)


def _on_stacks(seat: _Seat) -> Iterator[Way | RuledOut]:
    """The ways with the work seated so: by one stack, and where none is exact by two."""
    try:
        single = _single(seat)
    except BeyondBound as bound:
        yield seat.ruled_out(seat.name, bound.detail, seat.box.path)
        return
    try:
        pair = None if seat.plate.low_roll_hinged else _pair(seat, single)
    except BeyondBound as bound:
        yield seat.ruled_out("stacks-under-both-rolls", bound.detail, seat.box.path)
        pair = None
    yield _by_one_stack(seat, single, pair)
    if pair is not None:
        on_two = _on_pair(seat, pair)
        if _missed(seat, on_two) is None:
            yield _way(seat, "quarter-turn" if seat.quarter else "stacks-under-both-rolls", on_two)


def _single(seat: _Seat) -> PlateOnStack:
    """The plate on the stack of the box that comes nearest to its height."""
    unit, blocks = to_tenth_nm(1.0, seat.wanted.units), seat.box.supply.box
    height = seat.height * unit
    seat.share.require_stacks(blocks.table(seat.max_blocks), height)
    return seat.on(choose_setting(height, blocks, seat.max_blocks))


def _by_one_stack(seat: _Seat, single: PlateOnStack, pair: Pair | None) -> Way | RuledOut:
    """The way by one stack; where that misses, what stacks under both rolls would do."""
    missed = _missed(seat, single)
    if missed is None:
        return _way(seat, seat.name, single)
    both = None if pair is None else _pair_words(pair, seat.wanted)
    nearest = {"height": seat.height, "nearest_stack": list(single.blocks)}
    return replace(seat.ruled_out(seat.name, missed, seat.box.path, both), more=nearest)


def _other_seat(seat: _Seat) -> str | None:
    """The plate's angle with the work seated the other way, where the plate reaches it."""
    other = replace(seat, quarter=not seat.quarter)
    if beyond_reach(other.angle_degrees, seat.plate.largest_angle) or other.height <= 0.0:
        return None
    turned = "As it stands" if seat.quarter else "Turned a quarter on the plate"
    height = figure(other.height, seat.wanted.units)
    return f"{turned} the work asks for {plain(other.angle_degrees)}°: {height}."


def _missed(seat: _Seat, plate: PlateOnStack) -> str | None:
    """Why these stacks do not do; None where what they are off is within the tolerance."""
    wanted, counted = seat.wanted, seat.wanted.counted
    rise = plate.actual_height - plate.offset
    which = f"The nearest stack of up to {seat.max_blocks} of these blocks"
    if rise >= plate.center_distance:
        distance = figure(plate.center_distance, wanted.units)
        return (
            f"{which}, {stack(plate.blocks, wanted.units)}, is not below the center distance "
            f"{distance}: the plate would stand upright."
        )
    if rise <= 0.0:
        return f"{which}, {stack(plate.blocks, wanted.units)}, leaves the plate no angle."
    angle = option(angle_of(wanted))
    off = counted * abs(plate.off_rad) * ARCSEC_PER_RADIAN
    if off <= wanted.tolerance_arcsec:
        return None
    return (
        f"{which}, {stack(plate.blocks, wanted.units)}, misses the {angle} by {arcsec(off)}; "
        f"the tolerance is ±{plain(wanted.tolerance_arcsec)}″."
    )


def _pair(seat: _Seat, single: PlateOnStack) -> Pair | None:
    """Stacks under both rolls, nearest to the height, where no single stack is as near."""
    blocks = seat.box.supply.box
    table = difference_table(blocks.sizes, seat.max_blocks)
    height = seat.height * to_tenth_nm(1.0, seat.wanted.units)
    if abs(single.setting.total - height) <= table.step / 2.0:
        return None
    seat.share.require_differences(table)
    conditions = Conditions(low_needed=True)
    preference = Preference("always", seat.max_blocks, conditions, seat.share.tries)
    return preference.choose(table, table.candidates(height))


def _on_pair(seat: _Seat, pair: Pair) -> PlateOnStack:
    """The plate on both stacks, and a second high stack of the blocks that are left."""
    high, rest = taken(seat.box.supply.box.pieces, pair.high)
    low, spare = taken(rest, pair.low)
    setting = Setting(high, tuple(spare))
    return replace(seat.on(setting), low=low)


def _pair_words(pair: Pair, wanted: Wanted) -> str:
    high, low = (
        stack(tuple(from_tenth_nm(size, wanted.units) for size in sizes), wanted.units)
        for sizes in (pair.high, pair.low)
    )
    return f"Stacks under both rolls, {high} under the high and {low} under the low, set it."


def _way(seat: _Seat, name: PlanWayName, plate: PlateOnStack) -> Way:
    """A way that can: its budget, its setting, its stacks."""
    box, wanted = seat.box, seat.wanted
    high, low = (
        stack_of(pieces, box.grade, box.material) for pieces in (plate.setting.pieces, plate.low)
    )

    def budget_of(stated: _Seat) -> Budget:
        errors = plate_errors(plate, high, stated.plate.angle_errors, low)
        return _of_feature(stated, errors)

    budget = budget_of(seat)
    stacks = tuple(_stacks(seat, plate, high, low))
    return Way(
        name,
        seat.equipment,
        (ToleratedAngle(angle_of(wanted), budget, wanted.tolerance_arcsec),),
        (_setting(seat, plate),),
        stacks,
        seat.plate.setup_minutes,
        seat.plate.inspection_minutes,
        adds=adds_to(lambda name, value: budget_of(_stating(seat, name, value))),
        wrong_blocks=on_rolls(_set_by_stacks(seat, plate), stacks),
    )


def _set_by_stacks(seat: _Seat, plate: PlateOnStack) -> SetByStacks:
    """The plate on its stacks; turned a quarter, the work leans the other way."""
    return SetByStacks(
        plate.units,
        plate.center_distance,
        plate.angle_rad,
        seat.wanted.counted * (-1.0 if seat.quarter else 1.0),
        seat.box.supply.box,
        plate.setting.pieces,
        plate.low,
        plate.offset,
    )


def _stating(seat: _Seat, name: str, value: float) -> _Seat:
    """A plate, or the spindle beside it, with one more of its errors stated."""
    plate, spindle = seat.plate, seat.spindle
    if name == OFFSET and spindle is not None:
        return replace(seat, spindle=spindle.model_copy(update={name: value}))
    if name in PlateErrorFields.model_fields:
        errors = plate.angle_errors.model_copy(update={name: value})
        return replace(seat, plate=plate.model_copy(update={"angle_errors": errors}))
    return replace(seat, plate=plate.model_copy(update={name: value}))


def _of_feature(seat: _Seat, plate: Budget) -> Budget:
    """The budget of the angle that has the tolerance, from that of the plate's, in radians."""
    if not seat.wanted.turned or seat.wanted.internal:
        plate = without(plate, YAW)
    if seat.quarter:
        plate = _a_quarter_turned(seat, plate)
    included = of_included_angle(plate) if seat.wanted.turned else plate
    return _in_bore(seat, included) if seat.wanted.internal else included


def _in_bore(seat: _Seat, included: Budget) -> Budget:
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


def _a_quarter_turned(seat: _Seat, plate: Budget) -> Budget:
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


def _setting(seat: _Seat, plate: PlateOnStack) -> PlanSetting:
    units = seat.wanted.units
    per_step = arcsec_per_step(plate.center_distance, plate.angle_rad, units)
    # Half of an included angle's tolerance is the plate's.
    angle = degrees(plate.angle_degrees, seat.wanted.tolerance_arcsec / seat.wanted.counted)
    words = f"{stack(plate.blocks, units)} under the high roll"
    if plate.low:
        words = f"{words} and {stack_words(plate.low, seat.wanted)} under the low roll"
    turned = ""
    if seat.quarter:
        what = "its axis" if seat.wanted.turned else "its base"
        turned = f" Turn the work a quarter on the plate: {what} square to the plate's top."
    return PlanSetting(
        part="plate",
        angle=Angle.of(plate.angle_degrees),
        height=plate.height,
        deviation_arcsec=plate.off_rad * ARCSEC_PER_RADIAN,
        arcsec_per_step=per_step,
        action=f"Set {seat.plate.name} to {angle}: {words}.{turned}",
    )


def _stacks(
    seat: _Seat, plate: PlateOnStack, high: Sequence[Piece], low: Sequence[Piece]
) -> Iterator[PlanStack]:
    units = seat.wanted.units
    if plate.low:
        yield plan_stack("high", high, units)
        yield plan_stack("low", low, units)
    else:
        facts = stack_facts(high, to_tenth_nm(plate.height, units), units)
        # The height is not rounded to 0.1 nm.
        facts["deviation"] = plate.total - plate.height
        facts["actual_deviation"] = plate.actual_height - plate.height
        yield PlanStack(role="high", **facts)
    yield from check_stack(high, plate.setting.spare, seat.box, seat.max_blocks, units)
