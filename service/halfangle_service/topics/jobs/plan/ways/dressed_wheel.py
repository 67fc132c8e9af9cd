"""A flank dressed on the wheel, for a cone or a face, by the dresser's scale or by gauge blocks.

The budget is that of `wheels.choose`; where no limit was stated of the stack, the errors of its own
blocks count, and what it is known to be off. The blocks are those of `wheels.flank`.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from halfangle_service.cautions import DRESSED_ANGLE_UNPROVED, DRESSING_SAFETY
from halfangle_service.errors import refused_at
from halfangle_service.fields import ARCSEC_PER_RADIAN, Angle, to_tenth_nm
from halfangle_service.fields.plates import arcsec_per_step
from halfangle_service.fields.wheel.dresser import ScaleDresser, SineBaseDresser
from halfangle_service.fields.wheel.ways import Way as WheelWay
from halfangle_service.fields.wheel.ways import dressed_wheel_way
from halfangle_service.topics.jobs.center.angle_budget import stack_of
from halfangle_service.topics.jobs.plan.equipment import PlanDressedWheel
from halfangle_service.topics.jobs.plan.features import Wanted
from halfangle_service.topics.jobs.plan.result import PlanSetting, PlanStack
from halfangle_service.topics.jobs.plan.ways.by_wheel import (
    cone_of,
    not_into_a_socket,
    way_by_wheel,
)
from halfangle_service.topics.jobs.plan.ways.way import (
    RuledOut,
    ShopBox,
    Way,
    check_stack,
    plan_stack,
    stack_words,
    taken,
)
from halfangle_service.trade.sine.geometry import (
    angle_for_height,
    arcsec_per_height,
    height_for_angle,
)
from halfangle_service.trade.stacks.height_budget import blocks_budget
from halfangle_service.trade.stacks.supply import Piece
from halfangle_service.trade.unit_slips import require_center_distance, require_wheel_diameter
from halfangle_service.trade.wheel.dresser import dresser_angle, stacks_for
from halfangle_service.trade.wheel.ways import HALF_TO_INCLUDED, Stated
from halfangle_service.trade.wording import arcsec, degrees, plain

_SAFETY = (DRESSED_ANGLE_UNPROVED, DRESSING_SAFETY)


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

    def way(self, setting: Sequence[Stated] = ()) -> WheelWay:
        """What `wheels.choose` says of it, the dresser's setting known better where given."""
        cone = cone_of(self.wanted, self.wheel.wheel_diameter)
        with refused_at("", wheel_diameter=f"{self.path}wheel_diameter"):
            way = dressed_wheel_way(self.wheel, cone, self.wanted.units, self.path, setting)
        return replace(way, cautions=(*way.cautions, *_SAFETY))


def dressed_wheel_ways(
    wanted: Wanted,
    wheel: PlanDressedWheel,
    path: str,
    boxes: Sequence[ShopBox],
    max_blocks: int,
) -> Iterator[Way | RuledOut]:
    """A flank dressed on one wheel, by its scale or by the blocks of each box."""
    if wanted.internal:
        yield not_into_a_socket("dressed-wheel", wheel.name, path)
        return
    require_wheel_diameter(wheel.wheel_diameter, wanted.units, f"{path}wheel_diameter")
    dress = _Dress(wanted, wheel, path)
    made, dresser = dress.way(), wheel.dresser
    if made.reasons:
        yield way_by_wheel("dressed-wheel", (wheel.name,), wanted, made, (), path)
    elif isinstance(dresser, ScaleDresser):
        settings = (_by_scale(dress, dresser),)
        yield way_by_wheel("dressed-wheel", (wheel.name,), wanted, made, settings, path)
    elif not boxes:
        reason = "The dresser is set by gauge blocks, and the shop names none."
        yield RuledOut("dressed-wheel", (wheel.name,), reason, "equipment/block_sets")
    else:
        require_center_distance(
            dresser.center_distance, wanted.units, f"{path}dresser/center_distance"
        )
        for box in boxes:
            yield _by_blocks(dress, dresser, box, max_blocks)


def _by_scale(dress: _Dress, dresser: ScaleDresser) -> PlanSetting:
    angle = math.degrees(dress.angle_rad)
    return PlanSetting(
        part="dresser",
        angle=Angle.of(angle),
        height=None,
        deviation_arcsec=None,
        arcsec_per_step=None,
        action=f"Set the scale of the dresser on {dress.wheel.name} to {degrees(angle, 60.0)}, by "
        f"eye between its steps of {plain(dresser.graduation)}°, and dress the flank.",
    )


@dataclass(frozen=True, slots=True)
class _Blocks:
    """Blocks under both rolls of a dresser's sine base, those left, and its angle on them."""

    high: tuple[Piece, ...]
    low: tuple[Piece, ...]
    spare: list[Piece]
    as_set_rad: float


def _blocks_for(dress: _Dress, dresser: SineBaseDresser, box: ShopBox, max_blocks: int) -> _Blocks:
    unit, blocks = to_tenth_nm(1.0, dress.wanted.units), box.supply.box
    height = height_for_angle(dresser.center_distance, dress.angle_rad) * unit
    pair = stacks_for(height, blocks.sizes, max_blocks)
    high, rest = taken(blocks.pieces, pair.high)
    low, spare = taken(rest, pair.low)
    rise = sum(piece.actual for piece in high) - sum(piece.actual for piece in low)
    as_set = angle_for_height(dresser.center_distance, rise / unit)
    high, low = (stack_of(pieces, box.grade, box.material) for pieces in (high, low))
    return _Blocks(high, low, spare, as_set)


def _by_blocks(
    dress: _Dress, dresser: SineBaseDresser, box: ShopBox, max_blocks: int
) -> Way | RuledOut:
    """A flank dressed by the blocks of one box."""
    wanted, wheel = dress.wanted, dress.wheel
    blocks, equipment = _blocks_for(dress, dresser, box, max_blocks), (wheel.name, box.name)
    off_arcsec = (blocks.as_set_rad - dress.angle_rad) * ARCSEC_PER_RADIAN
    if not blocks.high or wanted.counted * abs(off_arcsec) > wanted.tolerance_arcsec:
        return RuledOut(
            "dressed-wheel",
            equipment,
            f"The nearest of up to {max_blocks} of these blocks miss the dresser's angle by "
            f"{arcsec(abs(off_arcsec))}.",
            box.path,
        )
    own = () if wheel.stack_error_limit is not None else tuple(_of_blocks(dress, dresser, blocks))
    return way_by_wheel(
        "dressed-wheel",
        equipment,
        wanted,
        dress.way(own),
        (_by_sine_base(dress, dresser, blocks, off_arcsec),),
        dress.path,
        -off_arcsec if dress.from_side else off_arcsec,
        tuple(_stacks(blocks, box, max_blocks, wanted)),
    )


def _of_blocks(dress: _Dress, dresser: SineBaseDresser, blocks: _Blocks) -> Iterator[Stated]:
    """What the blocks' own errors do to an included angle, in arc-seconds."""
    budget = blocks_budget((*blocks.high, *blocks.low), dress.wanted.units)
    slope = HALF_TO_INCLUDED * arcsec_per_height(dresser.center_distance, dress.angle_rad)
    for part in budget.contributions:
        yield replace(part, sensitivity=slope, unit="length")
    yield from budget.not_stated


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
        f"{stack_words(blocks.high, wanted)} under its raised roll{other}, and dress the flank.",
    )


def _stacks(blocks: _Blocks, box: ShopBox, max_blocks: int, wanted: Wanted) -> Iterator[PlanStack]:
    yield plan_stack("high", blocks.high, wanted.units)
    if blocks.low:
        yield plan_stack("low", blocks.low, wanted.units)
    yield from check_stack(blocks.high, blocks.spare, box, max_blocks, wanted.units)
