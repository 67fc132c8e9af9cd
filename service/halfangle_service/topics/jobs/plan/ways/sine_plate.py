"""On a sine plate under a flat wheel: one stack, two, or the work turned a quarter.

A flat wheel sweeps a level plane. A cone turned about its axis under it has the plate's angle as
its half angle, a face that of the plate as its own. Where the work is turned a quarter on the plate
(its axis, or its base, square to the plate's top) it has 90° less the plate's angle. A yaw of the
work turns a cone's angle and leaves a face's angle to its base as it is. Derived here.
"""

from collections.abc import Iterator, Sequence
from dataclasses import replace

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
from halfangle_service.topics.jobs.plan.ways.bounds import WorkShare
from halfangle_service.topics.jobs.plan.ways.plate_budget import plate_errors, stack_of
from halfangle_service.topics.jobs.plan.ways.plate_on_stack import PlateOnStack
from halfangle_service.topics.jobs.plan.ways.seat import Seat, budget_of_feature, stating
from halfangle_service.topics.jobs.plan.ways.way import (
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
    work_of,
)
from halfangle_service.topics.jobs.plan.ways.wrong_blocks import SetByStacks, on_rolls
from halfangle_service.trade.planning.times import SetupWork
from halfangle_service.trade.sine.geometry import (
    beyond_reach,
)
from halfangle_service.trade.sine.low_stack import (
    Conditions,
    Pair,
    Preference,
    difference_table,
)
from halfangle_service.trade.stacks.setting import Setting, choose_setting
from halfangle_service.trade.stacks.supply import Piece
from halfangle_service.trade.uncertainty import Budget
from halfangle_service.trade.wording import arcsec, degrees, figure, option, plain, stack

#: What tells quarter turns by the same blocks apart: one stack, or two.
_VARIANTS = ("one stack", "stacks under both rolls")


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
    along = [Seat(wanted, plate, path, box, max_blocks, False, share, spindle) for box in boxes]
    found = list(_each_seat(along))
    works = any(isinstance(way, Way) for way in found)
    yield from (
        way if works or isinstance(way, Way) else replace(way, instead=None) for way in found
    )


def ways_along(
    wanted: Wanted,
    plate: PlanSinePlate,
    path: str,
    boxes: Sequence[ShopBox],
    max_blocks: int,
    share: WorkShare,
) -> Iterator[Way | RuledOut]:
    """Each way on one plate with the work along it, and not turned a quarter."""
    return _each_seat(
        [Seat(wanted, plate, path, box, max_blocks, False, share) for box in boxes], (False,)
    )


def on_one_stack(
    wanted: Wanted, plate: PlanSinePlate, path: str, box: ShopBox, max_blocks: int
) -> Way | RuledOut:
    """The one way with the work along a plate on one stack of a box.

    Raises BeyondBound where the box takes more work than one request may ask for.
    """
    share = WorkShare.of_one_way()
    seat = Seat(wanted, plate, path, box, max_blocks, quarter=False, share=share)
    return _against(seat) or _by_one_stack(seat, _single(seat), None)


def _each_seat(
    along: Sequence[Seat], quarters: tuple[bool, ...] = (False, True)
) -> Iterator[Way | RuledOut]:
    """The ways with the work along the plate and turned a quarter on it.

    Why it is not turned is not said of work that stands along the plate.
    """
    stands = False
    for quarter in quarters:
        seats = [replace(seat, quarter=quarter) for seat in along]
        against = _against(seats[0])
        if against is None:
            for seat in seats:
                found = list(_on_stacks(seat))
                stands = stands or any(isinstance(way, Way) for way in found)
                yield from found
        elif not (quarter and stands):
            yield against


def _against(seat: Seat) -> RuledOut | None:
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


def _on_stacks(seat: Seat) -> Iterator[Way | RuledOut]:
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


def _single(seat: Seat) -> PlateOnStack:
    """The plate on the stack of the box that comes nearest to its height."""
    unit, blocks = to_tenth_nm(1.0, seat.wanted.units), seat.box.supply.box
    height = seat.height * unit
    seat.share.require_stacks(blocks.table(seat.max_blocks), height)
    return seat.on(choose_setting(height, blocks, seat.max_blocks))


def _by_one_stack(seat: Seat, single: PlateOnStack, pair: Pair | None) -> Way | RuledOut:
    """The way by one stack; where that misses, what stacks under both rolls would do."""
    missed = _missed(seat, single)
    if missed is None:
        return _way(seat, seat.name, single)
    both = None if pair is None else _pair_words(pair, seat.wanted)
    nearest = {"height": seat.height, "nearest_stack": list(single.blocks)}
    return replace(seat.ruled_out(seat.name, missed, seat.box.path, both), more=nearest)


def _other_seat(seat: Seat) -> str | None:
    """The plate's angle with the work seated the other way, where the plate reaches it."""
    other = replace(seat, quarter=not seat.quarter)
    if beyond_reach(other.angle_degrees, seat.plate.largest_angle) or other.height <= 0.0:
        return None
    turned = "As it stands" if seat.quarter else "Turned a quarter on the plate"
    height = figure(other.height, seat.wanted.units)
    return f"{turned} the work asks for {plain(other.angle_degrees)}°: {height}."


def _missed(seat: Seat, plate: PlateOnStack) -> str | None:
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


def _pair(seat: Seat, single: PlateOnStack) -> Pair | None:
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


def _on_pair(seat: Seat, pair: Pair) -> PlateOnStack:
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


def _way(seat: Seat, name: PlanWayName, plate: PlateOnStack) -> Way:
    """A way that can: its budget, its setting, its stacks."""
    box, wanted = seat.box, seat.wanted
    high, low = (
        stack_of(pieces, box.grade, box.material) for pieces in (plate.setting.pieces, plate.low)
    )

    def budget_of(stated: Seat) -> Budget:
        errors = plate_errors(plate, high, stated.plate.angle_errors, low)
        return budget_of_feature(stated, errors)

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
        adds=adds_to(lambda name, value: budget_of(stating(seat, name, value))),
        wrong_blocks=on_rolls(_set_by_stacks(seat, plate), stacks),
        work=work_of(stacks, _seating(seat)),
        variant=_VARIANTS[bool(plate.low)] if seat.quarter else "",
    )


def _seating(seat: Seat) -> SetupWork:
    """What seating the work so asks for: an edge trued along the plate, an angle plate squared."""
    return SetupWork(squarings=int(seat.quarter), edge_trueings=int(not seat.wanted.turned))


def _set_by_stacks(seat: Seat, plate: PlateOnStack) -> SetByStacks:
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


def _setting(seat: Seat, plate: PlateOnStack) -> PlanSetting:
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
    seat: Seat, plate: PlateOnStack, high: Sequence[Piece], low: Sequence[Piece]
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
