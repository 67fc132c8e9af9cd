"""A flank dressed on the wheel, for a cone or a face, by the dresser's scale or by gauge blocks.

The budget is that of `wheels.choose`; where no limit was stated of the stack, the errors of its own
blocks count, and what it is known to be off. The blocks are those of `wheels.flank`.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from halfangle_service.errors import BeyondBound, refused_at
from halfangle_service.fields import ARCSEC_PER_RADIAN, Angle, to_tenth_nm
from halfangle_service.fields.plates import arcsec_per_step
from halfangle_service.fields.wheel.dresser import ScaleDresser, SineBaseDresser
from halfangle_service.fields.wheel.ways import Way as WheelWay
from halfangle_service.fields.wheel.ways import dressed_wheel_way
from halfangle_service.topics.jobs.plan.features import Wanted
from halfangle_service.topics.jobs.plan.result import PlanSetting, PlanStack
from halfangle_service.topics.jobs.plan.shop.equipment import PlanDressedWheel
from halfangle_service.topics.jobs.plan.ways.bounds import WorkShare
from halfangle_service.topics.jobs.plan.ways.by_wheel import (
    cone_of,
    not_into_a_socket,
    way_by_wheel,
)
from halfangle_service.topics.jobs.plan.ways.plate_budget import stack_of
from halfangle_service.topics.jobs.plan.ways.way import (
    RuledOut,
    ShopBox,
    Way,
    check_stack,
    plan_stack,
    stack_words,
    taken,
    work_of,
)
from halfangle_service.topics.jobs.plan.ways.wrong_blocks import SetByStacks, on_rolls
from halfangle_service.trade.sine.geometry import (
    angle_for_height,
    arcsec_per_height,
    height_for_angle,
)
from halfangle_service.trade.stacks.height_budget import blocks_budget
from halfangle_service.trade.stacks.supply import Piece
from halfangle_service.trade.uncertainty import Budget
from halfangle_service.trade.wheel.dresser import dresser_angle, stacks_for
from halfangle_service.trade.wheel.ways import HALF_TO_INCLUDED
from halfangle_service.trade.wording import arcsec, degrees, plain


@dataclass(frozen=True, slots=True)
class _Dress:
    """A flank for a feature on one wheel, whose path is its own in the request."""

    wanted: Wanted
    wheel: PlanDressedWheel
    path: str

    @property
    def angle_rad(self) -> float:
        """Angle of the dresser from its zero."""
        return dresser_angle(self.wanted.angle_rad, from_side=self.from_side)

    @property
    def from_side(self) -> bool:
        """True where the dresser's zero lies along the wheel's side."""
        return self.wheel.dresser.zero == "wheel-side"

    def way(self) -> WheelWay:
        """What `wheels.choose` says of it."""
        cone = cone_of(self.wanted, self.wheel.wheel_diameter)
        with refused_at("", wheel_diameter=f"{self.path}wheel_diameter"):
            return dressed_wheel_way(self.wheel, cone, self.wanted.units, self.path)

    def stating(self, name: str, value: float) -> WheelWay:
        """The same with one more error stated."""
        return replace(self, wheel=self.wheel.model_copy(update={name: value})).way()


def dressed_wheel_ways(
    wanted: Wanted,
    wheel: PlanDressedWheel,
    path: str,
    boxes: Sequence[ShopBox],
    max_blocks: int,
    share: WorkShare,
    of_socket: str | None = None,
) -> Iterator[Way | RuledOut]:
    """A flank dressed on one wheel, by its scale or by the blocks of each box.

    `of_socket` is what grinds a socket, None of any other work.
    """
    if of_socket is not None:
        yield not_into_a_socket(wanted, "dressed-wheel", wheel.name, path, of_socket)
        return
    dress = _Dress(wanted, wheel, path)
    made, dresser = dress.way(), wheel.dresser
    if made.reasons:
        yield way_by_wheel("dressed-wheel", (wheel.name,), wanted, made, (), path)
    elif isinstance(dresser, ScaleDresser):
        settings = (_by_scale(dress, dresser),)
        yield way_by_wheel(
            "dressed-wheel", (wheel.name,), wanted, made, settings, path, again=dress.stating
        )
    elif not boxes:
        reason = "The dresser is set by gauge blocks, and the shop names none."
        yield RuledOut("dressed-wheel", (wheel.name,), reason, "equipment/block_sets")
    else:
        for box in boxes:
            yield _by_blocks(dress, made, dresser, box, max_blocks, share)


def _by_scale(dress: _Dress, dresser: ScaleDresser) -> PlanSetting:
    angle = math.degrees(dress.angle_rad)
    return PlanSetting(
        part="dresser",
        angle=Angle.of(angle),
        height=None,
        deviation_arcsec=None,
        arcsec_per_step=None,
        action=f"Set the scale of the dresser on {dress.wheel.name} to {degrees(angle, 60.0)}, by "
        f"eye between its steps of {plain(dresser.graduation)}°.",
    )


@dataclass(frozen=True, slots=True)
class _Blocks:
    """Blocks under both rolls of a dresser's sine base, those left, and its angle on them.

    The raw ones are as they are in the box, without their grade.
    """

    high: tuple[Piece, ...]
    low: tuple[Piece, ...]
    spare: list[Piece]
    as_set_rad: float
    raw_high: tuple[Piece, ...]
    raw_low: tuple[Piece, ...]


def _blocks_for(
    dress: _Dress, dresser: SineBaseDresser, box: ShopBox, max_blocks: int, share: WorkShare
) -> _Blocks:
    unit, blocks = to_tenth_nm(1.0, dress.wanted.units), box.supply.box
    height = height_for_angle(dresser.center_distance, dress.angle_rad) * unit
    share.require_stacks(blocks.table(max_blocks), height)
    pair = stacks_for(height, blocks.sizes, max_blocks, share.require_differences)
    high, rest = taken(blocks.pieces, pair.high)
    low, spare = taken(rest, pair.low)
    rise = sum(piece.actual for piece in high) - sum(piece.actual for piece in low)
    as_set = angle_for_height(dresser.center_distance, rise / unit)
    graded = [stack_of(pieces, box.grade, box.material) for pieces in (high, low)]
    return _Blocks(graded[0], graded[1], spare, as_set, high, low)


def _by_blocks(
    dress: _Dress,
    made: WheelWay,
    dresser: SineBaseDresser,
    box: ShopBox,
    max_blocks: int,
    share: WorkShare,
) -> Way | RuledOut:
    """A flank dressed by the blocks of one box; `made` is what is known of it without them."""
    wanted, wheel = dress.wanted, dress.wheel
    equipment = (wheel.name, box.name)
    try:
        blocks = _blocks_for(dress, dresser, box, max_blocks, share)
    except BeyondBound as bound:
        return RuledOut("dressed-wheel", equipment, bound.detail, box.path)
    off_arcsec = (blocks.as_set_rad - dress.angle_rad) * ARCSEC_PER_RADIAN
    if not blocks.high or wanted.counted * abs(off_arcsec) > wanted.tolerance_arcsec:
        return RuledOut(
            "dressed-wheel",
            equipment,
            f"The nearest of up to {max_blocks} of these blocks miss the dresser's angle by "
            f"{arcsec(abs(off_arcsec))}.",
            box.path,
        )
    if wheel.stack_error_limit is None:
        made = replace(made, budget=_with_blocks(made.budget, dress, dresser, blocks))
    stacks = tuple(_stacks(blocks, box, max_blocks, wanted))
    way = way_by_wheel(
        "dressed-wheel",
        equipment,
        wanted,
        made,
        (_by_sine_base(dress, dresser, blocks, off_arcsec),),
        dress.path,
        -off_arcsec if dress.from_side else off_arcsec,
        stacks,
        dress.stating,
    )
    if isinstance(way, RuledOut):
        return way
    times = wanted.counted * (-1.0 if dress.from_side else 1.0)
    wrung = SetByStacks(
        wanted.units,
        dresser.center_distance,
        dress.angle_rad,
        times,
        box.supply.box,
        blocks.raw_high,
        blocks.raw_low,
    )
    return replace(way, wrong_blocks=on_rolls(wrung, stacks), work=work_of(stacks))


def _with_blocks(known: Budget, dress: _Dress, dresser: SineBaseDresser, blocks: _Blocks) -> Budget:
    """The budget with the blocks' own errors in place of a limit that was not stated of them."""
    stack_budget = blocks_budget((*blocks.high, *blocks.low), dress.wanted.units)
    slope = HALF_TO_INCLUDED * arcsec_per_height(dresser.center_distance, dress.angle_rad)
    own = (replace(p, sensitivity=slope, unit="length") for p in stack_budget.contributions)
    others = (name for name in known.not_stated if name != "stack_error_limit")
    return Budget((*own, *known.contributions), known.offset, (*stack_budget.not_stated, *others))


def _by_sine_base(
    dress: _Dress, dresser: SineBaseDresser, blocks: _Blocks, off_arcsec: float
) -> PlanSetting:
    wanted, angle = dress.wanted, math.degrees(dress.angle_rad)
    other = f" and {stack_words(blocks.low, wanted)} under the other" if blocks.low else ""
    return PlanSetting(
        part="dresser",
        angle=Angle.of(angle),
        height=height_for_angle(dresser.center_distance, dress.angle_rad),
        deviation_arcsec=off_arcsec,
        arcsec_per_step=arcsec_per_step(dresser.center_distance, dress.angle_rad, wanted.units),
        action=f"Set the dresser on {dress.wheel.name} to "
        f"{degrees(angle, wanted.tolerance_arcsec / wanted.counted)}, "
        f"{stack_words(blocks.high, wanted)} under its raised roll{other}.",
    )


def _stacks(blocks: _Blocks, box: ShopBox, max_blocks: int, wanted: Wanted) -> Iterator[PlanStack]:
    yield plan_stack("high", blocks.high, wanted.units)
    if blocks.low:
        yield plan_stack("low", blocks.low, wanted.units)
    yield from check_stack(blocks.high, blocks.spare, box, max_blocks, wanted.units)
