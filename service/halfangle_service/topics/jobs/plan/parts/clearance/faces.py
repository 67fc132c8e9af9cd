"""Block-like work with one sloping face: along a plate, turned a quarter on it, on the table."""

from collections.abc import Callable, Iterator
from dataclasses import replace

from halfangle_service.errors import Impossible
from halfangle_service.fields.clearance.set_up import plate_of
from halfangle_service.topics.jobs.plan.features import PlanBlockWork, PlanSlopedWork, Wanted
from halfangle_service.topics.jobs.plan.parts.clearance.answer import (
    Fouled,
    PlanClearance,
    Remedy,
    answered,
    not_known,
)
from halfangle_service.topics.jobs.plan.parts.clearance.under import (
    FIXTURE,
    Asked,
    WheelAbout,
    turns_into,
)
from halfangle_service.topics.jobs.plan.shop.equipment import PlanSinePlate
from halfangle_service.topics.jobs.plan.shop.standing import PlanAnglePlate, PlanWorkHolder
from halfangle_service.trade.clearance import on_base, on_end
from halfangle_service.trade.clearance.assembly import Direction, Head, head_parts
from halfangle_service.trade.clearance.bodies import Body
from halfangle_service.trade.clearance.on_base import AnglePlate, Block, Holder
from halfangle_service.trade.clearance.plate import Plate, TiltedPlate
from halfangle_service.trade.clearance.stand import Stand, View, WheelState, gaps_in, height_over
from halfangle_service.trade.clearance.turned import Turned
from halfangle_service.trade.wording import figure, of_any_unit

WORK = "feature/work_body"


def block_of(wanted: Wanted) -> Block | None:
    """The work as a block; None where it was not stated. Refuses one that the face does not fit."""
    work = wanted.work_body
    if work is None:
        return None
    before = work.before_face if isinstance(work, PlanSlopedWork) else 0.0
    block = Block(wanted.angle_rad, wanted.slant, work.base_length, work.face_height, before)
    require_face(work, wanted, before + block.run)
    return block


def require_face(work: PlanBlockWork, wanted: Wanted, reach: float) -> None:
    """Refuse work shorter than its face reaches along its base, or lower than it rises."""
    if work.base_length < reach * (1.0 - 1e-9):
        raise Impossible(
            f"The face ends {of_any_unit(reach)} along a base {of_any_unit(work.base_length)} "
            "long.",
            fields={f"{WORK}/base_length": f"should be at least {figure(reach, wanted.units)}"},
        )
    if work.face_height < wanted.rise:
        raise Impossible(
            f"A face that rises {of_any_unit(wanted.rise)} does not begin "
            f"{of_any_unit(work.face_height)} over its base.",
            fields={
                f"{WORK}/face_height": f"should be at least {figure(wanted.rise, wanted.units)}"
            },
        )


def holder_of(holder: PlanWorkHolder) -> Holder:
    """What holds the work, as the maths knows it."""
    return Holder(
        holder.seat_height, holder.holder_height, holder.past_tall_end, holder.past_short_end
    )


def upright_of(upright: PlanAnglePlate) -> AnglePlate:
    """The angle plate, as the maths knows it."""
    return AnglePlate(
        upright.upright_height,
        upright.upright_thickness,
        upright.face_to_high_end,
        upright.seat_height,
    )


def plate_under(plate: PlanSinePlate) -> Plate | None:
    """The plate as the maths knows it; None where its body was not stated. It was read before."""
    body = plate.plate_body
    return None if body is None else plate_of(body, plate.center_distance)


def stand_on(
    asked: Asked,
    heads: dict[WheelState, Head],
    wheel: WheelAbout,
    direction: Direction,
    stands: tuple[list[Body], TiltedPlate],
) -> Stand:
    """Bodies on a tilted plate under the flat wheel."""
    bodies, tilted = stands
    parts = {
        state: head_parts(head, asked.stroke, asked.wanted.slant, direction)
        for state, head in heads.items()
    }
    return Stand(
        gaps_in(View(tuple(bodies), parts)),
        asked.margin,
        tilted.plate.length,
        height_over(bodies, tilted.table),
        wheel.guarded,
    )


def _dips(tilted: TiltedPlate, plate: PlanSinePlate, path: str, asked: Asked) -> Fouled | None:
    """Why a plate does not tilt so far on its base; None where it does."""
    depth = tilted.into_base
    if depth <= 1e-9 * tilted.plate.length:
        return None
    stated = plate.plate_body is not None and plate.plate_body.low_roll_from_end is not None
    assumed = "" if stated else " The rolls were taken to lie in the middle of it."
    return Fouled(
        f"Tilted so far, the plate's low end would go {figure(depth, asked.wanted.units)} into "
        f"its base.{assumed}",
        f"{path}plate_body/low_roll_from_end",
        None if stated else "State where the low roll lies.",
    )


def face_along(
    asked: Asked, wheel: WheelAbout, plate: PlanSinePlate, path: str, low_stack: float
) -> PlanClearance | Fouled:
    """A face with its work along the plate."""
    block, under, heads = block_of(asked.wanted), plate_under(plate), wheel.heads()
    holder, to_end = plate.work_holder, plate.work_to_high_end
    if block is None or under is None or heads is None or holder is None or to_end is None:
        return not_known(_lacks(asked, wheel, plate, path, "work_holder", "work_to_high_end"))
    if missing := list(asked.missing()):
        return not_known(missing)
    held = holder_of(holder)

    def stands(holder: Holder) -> tuple[list[Body], TiltedPlate]:
        return on_base.along(block, holder, under, to_end, low_stack)

    if (dips := _dips(stands(held)[1], plate, path, asked)) is not None:
        return dips

    def raised(seat: float) -> Stand:
        at = stands(replace(held, seat=seat))
        return stand_on(asked, heads, wheel, plate.tilt_direction, at)

    words = "Put the work {} over the plate, on parallels: plate or holder is too near."
    remedy = Remedy(
        "riser",
        held.seat,
        under.length + held.height,
        raised,
        lambda seat: words.format(figure(seat, asked.wanted.units)),
    )
    return answered(
        raised(held.seat),
        asked.room,
        asked.wanted.units,
        f"{path}work_holder",
        (remedy,),
        _less_stroke(asked),
    )


def face_quarter(
    asked: Asked, wheel: WheelAbout, plate: PlanSinePlate, path: str, low_stack: float
) -> PlanClearance | Fouled:
    """A face with its work turned a quarter, its base against an angle plate."""
    block, under, heads = block_of(asked.wanted), plate_under(plate), wheel.heads()
    upright = plate.angle_plate
    if block is None or under is None or heads is None or upright is None:
        return not_known(_lacks(asked, wheel, plate, path, "angle_plate"))
    if missing := list(asked.missing()):
        return not_known(missing)
    leans = upright_of(upright)
    stands = on_base.turned_a_quarter(block, leans, under, low_stack)
    if (dips := _dips(stands[1], plate, path, asked)) is not None:
        return dips

    def raised(seat: float) -> Stand:
        at = on_base.turned_a_quarter(block, replace(leans, seat=seat), under, low_stack)
        return stand_on(asked, heads, wheel, plate.tilt_direction, at)

    return _on_upright(asked, raised, leans, path)


def cone_quarter(
    asked: Asked, wheel: WheelAbout, plate: PlanSinePlate, path: str, low_stack: float
) -> PlanClearance | Fouled:
    """A cone with its axis square to the plate, its fixture on an angle plate."""
    fixture, under, heads = asked.turning(), plate_under(plate), wheel.heads()
    upright = plate.angle_plate
    if fixture is None or under is None or heads is None or upright is None:
        return not_known(_lacks(asked, wheel, plate, path, "angle_plate"))
    if missing := list(asked.missing()):
        return not_known(missing)
    leans, turned = upright_of(upright), Turned(asked.cone, fixture)
    stands = on_end.standing(turned, leans, under, low_stack)
    fouled = (
        asked.past_its_limit()
        or _dips(stands[1], plate, path, asked)
        or turns_into(stands[0], under.length, FIXTURE)
    )
    if fouled is not None:
        return fouled

    def raised(seat: float) -> Stand:
        at = on_end.standing(turned, replace(leans, seat=seat), under, low_stack)
        return stand_on(asked, heads, wheel, plate.tilt_direction, at)

    return _on_upright(asked, raised, leans, path)


def _on_upright(
    asked: Asked, raised: Callable[[float], Stand], leans: AnglePlate, path: str
) -> PlanClearance | Fouled:
    units = asked.wanted.units
    remedy = Remedy(
        "riser",
        leans.seat,
        leans.height + asked.wanted.slant,
        raised,
        lambda seat: f"Let it stand {figure(seat, units)} over the plate: the plate is too near.",
    )
    return answered(
        raised(leans.seat),
        asked.room,
        units,
        f"{path}angle_plate",
        (remedy,),
        _less_stroke(asked),
    )


def _less_stroke(asked: Asked) -> str | None:
    """What else would help: a shorter stroke, where there is any overrun."""
    stroke = asked.stroke
    if stroke.past_large_end or stroke.past_small_end:
        return "Let the wheel go less far past the ends of the surface, or take a smaller wheel."
    return None


def _lacks(
    asked: Asked, wheel: WheelAbout, plate: PlanSinePlate, path: str, *own: str
) -> Iterator[str]:
    """What was not stated, by its path in the request; `own` are fields of the plate."""
    if asked.wanted.turned and asked.fixture is None:
        yield FIXTURE
    if not asked.wanted.turned and asked.wanted.work_body is None:
        yield WORK
    for name in ("plate_body", *own):
        if getattr(plate, name) is None:
            yield f"{path}{name}"
    yield from wheel.missing()
    yield from asked.missing()
