"""Work beside a wheel without a plate: in a workhead, at a wheel's side, under a dressed flank."""

from collections.abc import Callable, Iterator
from dataclasses import replace

from halfangle_service.fields.clearance.set_up import turning_of
from halfangle_service.topics.jobs.plan.parts.clearance.answer import (
    Fouled,
    PlanClearance,
    Remedy,
    answered,
    not_known,
)
from halfangle_service.topics.jobs.plan.parts.clearance.faces import WORK, block_of, holder_of
from halfangle_service.topics.jobs.plan.parts.clearance.under import (
    FIXTURE,
    Asked,
    WheelAbout,
    turns_into,
)
from halfangle_service.topics.jobs.plan.shop.equipment import (
    PlanDressedWheel,
    PlanWheelSide,
    PlanWorkhead,
)
from halfangle_service.topics.jobs.plan.shop.standing import PlanWorkheadBody
from halfangle_service.trade.clearance.assembly import head_parts
from halfangle_service.trade.clearance.bodies import Body
from halfangle_service.trade.clearance.by_wheel import (
    Flank,
    Seen,
    beside_the_side,
    in_workhead,
    on_table,
    side_parts,
    swivelled_block,
)
from halfangle_service.trade.clearance.on_base import StandingWork
from halfangle_service.trade.clearance.stand import Stand, View, gaps_in
from halfangle_service.trade.clearance.turned import Cone, Fixture, Turned
from halfangle_service.trade.wording import figure


def wheel_of(owner: PlanDressedWheel | PlanWheelSide | PlanWorkhead, path: str) -> WheelAbout:
    """The wheel of a way by the wheel; `path` is that of what has it."""
    return WheelAbout(owner.wheel_diameter, owner.wheel_width, owner.head, path)


def workhead(asked: Asked, head: PlanWorkhead, path: str) -> PlanClearance | Fouled:
    """Work in a swivelled workhead beside a flat wheel, seen from above."""
    wheel, body = wheel_of(head, path), head.workhead_body
    heads = wheel.heads()
    own = () if body is not None else (f"{path}/workhead_body",)
    missing = [*own, *wheel.missing(), *asked.missing()]
    if missing or body is None or heads is None:
        return not_known(missing)
    fixture = _in_head(body)

    def stand(stick_out: float) -> Stand:
        turned = Turned(asked.cone, replace(fixture, stick_out=stick_out))
        bodies = tuple(in_workhead(turned, body.body_width / 2.0))
        parts = {
            state: head_parts(each, asked.stroke, asked.wanted.slant, "across-travel")
            for state, each in heads.items()
        }
        gaps = gaps_in(View(bodies, parts))
        return Stand(gaps, asked.margin, body.body_length, None, wheel.guarded)

    return _turned(asked, stand, fixture, f"{path}/workhead_body")


def _in_head(body: PlanWorkheadBody) -> Fixture:
    """A workhead as a fixture: nothing stands under its axis."""
    return Fixture(
        axis_height=0.0,
        body_length=body.body_length,
        body_height=0.0,
        nose_radius=body.nose_diameter / 2.0,
        nose_length=body.nose_length,
        stick_out=body.stick_out,
        shank_radius=body.shank_diameter / 2.0,
        front_to_high_end=0.0,
        turning=turning_of(body.turning_parts),
    )


def _turned(
    asked: Asked, stand: Callable[[float], Stand], fixture: Fixture, field: str
) -> PlanClearance | Fouled:
    """The answer for a cone in a fixture: more stick-out is what opens its gaps."""
    units, now = asked.wanted.units, fixture.stick_out
    most = fixture.body_length + fixture.nose_radius + asked.wanted.large_diameter
    stated = asked.fixture
    if field == FIXTURE and stated is not None and stated.limit_stick_out is not None:
        most = min(most, max(0.0, stated.limit_stick_out - now))
    remedy = Remedy(
        "stick-out",
        now,
        most,
        stand,
        lambda value: (
            f"Let the work stand out {figure(value, units)} instead of {figure(now, units)}."
        ),
    )
    return answered(stand(now), asked.room, units, field, (remedy,))


def side(asked: Asked, owner: PlanWheelSide, path: str) -> PlanClearance | Fouled:
    """Work swivelled to a wheel's side, seen from above and along the wheel's axis."""
    wheel, below, wanted = wheel_of(owner, path), owner.work_below_spindle, asked.wanted
    heads = wheel.heads()
    missing = list(_lacks_of_side(asked, owner, path, wheel))
    if missing or heads is None or below is None:
        return not_known(missing)
    off_side = _off_the_side(asked, owner, below, min(head.radius for head in heads.values()), path)
    if off_side is not None:
        return off_side

    def made(seen: list[Seen]) -> Stand:
        above, along = {}, {}
        for state, head in heads.items():
            above[state], along[state] = side_parts(head, asked.stroke, wanted.slant, below)
        gaps = gaps_in(
            View(tuple(one.body for one in seen), above),
            View(tuple(one.from_the_side(-below) for one in seen), along),
        )
        return Stand(gaps, asked.margin, heads["new"].radius, None, wheel.guarded)

    fixture = asked.turning()
    if fixture is not None and owner.body_width is not None and wanted.turned:
        half = owner.body_width / 2.0
        fouled = asked.past_its_limit() or turns_into(
            _under_flank(asked.cone, fixture), owner.usable_width, FIXTURE
        )
        if fouled is not None:
            return fouled

        def stand(stick_out: float) -> Stand:
            turned = Turned(asked.cone, replace(fixture, stick_out=stick_out))
            return made(beside_the_side(turned, half))

        return _turned(asked, stand, fixture, FIXTURE)
    block, work = block_of(wanted), wanted.work_body
    if block is None or work is None or work.base_width is None:
        return not_known([WORK])
    outline = list(StandingWork(block, wanted.angle_rad).work())
    return answered(made(swivelled_block(outline, work.base_width)), asked.room, wanted.units, WORK)


def _off_the_side(
    asked: Asked, owner: PlanWheelSide, below: float, radius: float, path: str
) -> Fouled | None:
    """Why the usable part of a side does not lie against the work; None where it does.

    `below` is from the spindle down to the work's axis, `radius` the wheel's when it is worn.
    """
    units, inner = asked.wanted.units, radius - owner.usable_width
    if inner <= below <= radius:
        return None
    least, most = figure(max(inner, 0.0), units), figure(radius, units)
    return Fouled(
        f"The work's axis lies {figure(below, units)} under the spindle, where the side does not "
        "grind.",
        f"{path}/work_below_spindle",
        f"From {least} to {most} under the spindle the side is usable.",
    )


def _lacks_of_side(
    asked: Asked, owner: PlanWheelSide, path: str, wheel: WheelAbout
) -> Iterator[str]:
    if asked.wanted.turned:
        if asked.fixture is None:
            yield FIXTURE
        if owner.body_width is None:
            yield f"{path}/body_width"
    elif asked.wanted.work_body is None:
        yield WORK
    elif asked.wanted.work_body.base_width is None:
        yield f"{WORK}/base_width"
    if owner.work_below_spindle is None:
        yield f"{path}/work_below_spindle"
    yield from wheel.missing()
    yield from asked.missing()


def dressed(asked: Asked, owner: PlanDressedWheel, path: str) -> PlanClearance | Fouled:
    """A flank dressed on a wheel, its axis along the work's axis or base, seen on edge."""
    wheel, wanted = wheel_of(owner, path), asked.wanted
    heads, holder = wheel.heads(), owner.work_holder
    missing = list(_lacks_of_flank(asked, owner, path, wheel))
    if missing or heads is None:
        return not_known(missing)
    block = None if wanted.turned else block_of(wanted)
    flank = Flank(wanted.angle_rad, wanted.slant)
    takes = flank.width(asked.stroke)
    if takes > owner.wheel_width * (1.0 + 1e-9):
        return Fouled(
            f"With both overruns the flank takes {figure(takes, wanted.units)} of the wheel, which "
            f"is {figure(owner.wheel_width, wanted.units)} wide: its edge would stand in the work.",
            f"{path}/wheel_width",
            "A wider wheel, or less overrun past the ends.",
        )
    parts = {state: flank.parts(head, asked.stroke) for state, head in heads.items()}

    def stand(bodies: list[Body]) -> Stand:
        gaps = gaps_in(View(tuple(bodies), parts))
        return Stand(gaps, asked.margin, owner.wheel_width, None, wheel.guarded)

    fixture = asked.turning()
    if block is None and fixture is not None:
        fouled = asked.past_its_limit() or turns_into(
            _under_flank(asked.cone, fixture), owner.wheel_width, FIXTURE
        )
        if fouled is not None:
            return fouled
        return _turned(
            asked,
            lambda out: stand(_under_flank(asked.cone, replace(fixture, stick_out=out))),
            fixture,
            FIXTURE,
        )
    if block is None or holder is None:
        return not_known([WORK])
    held, standing = holder_of(holder), StandingWork(block, 0.0)
    bodies = on_table([*standing.work(), *standing.held(held)], -block.height - held.seat)
    return answered(stand(bodies), asked.room, wanted.units, f"{path}/work_holder")


def _under_flank(cone: Cone, fixture: Fixture) -> list[Body]:
    """Cone, fixture and table along the work's axis."""
    turned = Turned(cone, fixture, lean=0.0)
    table = -cone.large_radius - fixture.axis_height
    return on_table([*turned.turning(), turned.body()], table)


def _lacks_of_flank(
    asked: Asked, owner: PlanDressedWheel, path: str, wheel: WheelAbout
) -> Iterator[str]:
    if asked.wanted.turned:
        if asked.fixture is None:
            yield FIXTURE
    else:
        if asked.wanted.work_body is None:
            yield WORK
        if owner.work_holder is None:
            yield f"{path}/work_holder"
    yield from wheel.missing()
    yield from asked.missing()
