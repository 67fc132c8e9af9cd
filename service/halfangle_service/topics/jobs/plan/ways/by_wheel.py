"""By the wheel itself: what its ways have alike, its side, and work in a swivelled workhead.

The budgets are those of `wheels.choose`, of the included angle in arc-seconds. A face has one side
where a cone has two, so that its angle is out by half as much, and no yaw of the work turns it.
"""

import math
from collections.abc import Callable
from dataclasses import replace

from halfangle_service.errors import refused_at
from halfangle_service.fields import Angle
from halfangle_service.fields.wheel.ways import Way as WheelWay
from halfangle_service.fields.wheel.ways import wheel_side_way, workhead_way
from halfangle_service.topics.jobs.plan.features import Wanted
from halfangle_service.topics.jobs.plan.result import PlanSetting, PlanStack, PlanWayName, SetPart
from halfangle_service.topics.jobs.plan.shop.equipment import PlanWheelSide, PlanWorkhead
from halfangle_service.topics.jobs.plan.ways.way import (
    YAW,
    RuledOut,
    ToleratedAngle,
    Way,
    adds_to,
    angle_of,
    without,
)
from halfangle_service.trade.uncertainty import Budget
from halfangle_service.trade.wheel.dressing_errors import DressedCone
from halfangle_service.trade.wheel.ways import HALF_TO_INCLUDED
from halfangle_service.trade.wording import degrees, figure

#: The wheel of each way that grinds from outside.
_WHEELS: dict[PlanWayName, str] = {
    "dressed-wheel": "The dressed flank of",
    "wheel-side": "The side of",
    "swivelled-workhead": "The flat wheel beside the swivelled",
}


def cone_of(wanted: Wanted, wheel_diameter: float) -> DressedCone:
    """The feature as the wheel's errors take it: a face as the side of a cone from its point."""
    large = wanted.large_diameter / 2.0 if wanted.turned else wanted.rise
    small = wanted.small_diameter / 2.0 if wanted.turned else 0.0
    return DressedCone(wanted.angle_rad, small, large, wheel_diameter / 2.0)


def not_into_a_socket(
    wanted: Wanted, name: PlanWayName, equipment: str, path: str, instead: str
) -> RuledOut:
    """A way by a wheel that grinds from outside; `instead` is what grinds a socket."""
    small = figure(wanted.small_diameter, wanted.units)
    reason = f"{_WHEELS[name]} {equipment} does not go into a bore of {small}: it grinds outside."
    return RuledOut(name, (equipment,), reason, path.rstrip("/"), instead)


def way_by_wheel(
    name: PlanWayName,
    equipment: tuple[str, ...],
    wanted: Wanted,
    made: WheelWay,
    settings: tuple[PlanSetting, ...],
    path: str,
    off_arcsec: float = 0.0,
    stacks: tuple[PlanStack, ...] = (),
    again: Callable[[str, float], WheelWay] | None = None,
) -> Way | RuledOut:
    """A way by the wheel as the plan has it, or why it is ruled out.

    `off_arcsec` is what the flank's angle is known to be off, `path` the wheel's in the request;
    `again` makes the way with one more error stated.
    """
    if made.reasons:
        first, words = made.reasons[0], " ".join(reason.words for reason in made.reasons)
        return RuledOut(name, equipment, words, f"{path}{first.field}", first.instead)

    def of_feature(budget: Budget) -> Budget:
        return budget if wanted.turned else _of_one_side(without(budget, YAW))

    budget = of_feature(replace(made.budget, offset=HALF_TO_INCLUDED * off_arcsec))
    angle = ToleratedAngle(angle_of(wanted), budget, wanted.tolerance_arcsec, per_unit=1.0)
    adds = None
    if again is not None:
        adds = adds_to(lambda name, value: of_feature(again(name, value).budget))
    return Way(
        name,
        equipment,
        (angle,),
        settings,
        stacks,
        made.setup_minutes,
        made.inspection_minutes,
        made.cautions,
        adds,
    )


def _of_one_side(budget: Budget) -> Budget:
    """The budget of the angle of one side, from that of both."""
    halved = tuple(
        replace(part, sensitivity=part.sensitivity / HALF_TO_INCLUDED)
        for part in budget.contributions
    )
    return replace(budget, contributions=halved, offset=budget.offset / HALF_TO_INCLUDED)


def wheel_side(
    wanted: Wanted, side: PlanWheelSide, path: str, of_socket: str | None = None
) -> Way | RuledOut:
    """The wheel's side, the work swivelled to it about the vertical.

    `of_socket` is what grinds a socket, None of any other work.
    """
    if of_socket is not None:
        return not_into_a_socket(wanted, "wheel-side", side.name, path, of_socket)
    cone = cone_of(wanted, math.inf)
    made = wheel_side_way(side, cone, wanted.units)
    words = f"Swivel the work to {{}} against the side of {side.name}."
    return way_by_wheel(
        "wheel-side",
        (side.name,),
        wanted,
        made,
        (_swivelled("work", words, wanted),),
        path,
        again=lambda name, value: wheel_side_way(
            side.model_copy(update={name: value}), cone, wanted.units
        ),
    )


def swivelled_workhead(
    wanted: Wanted, head: PlanWorkhead, path: str, of_socket: str | None = None
) -> Way | RuledOut:
    """Work turned in a swivelled workhead, a flat wheel beside it; `of_socket` as above."""
    name: PlanWayName = "swivelled-workhead"
    if not wanted.turned:
        return RuledOut(
            name,
            (head.name,),
            "A workhead turns the work: it grinds a cone, no face.",
            path.rstrip("/"),
        )
    if of_socket is not None:
        return not_into_a_socket(wanted, name, head.name, f"{path}wheel_diameter", of_socket)
    cone = cone_of(wanted, head.wheel_diameter)
    with refused_at("", wheel_diameter=f"{path}wheel_diameter"):
        made = workhead_way(head, cone, path)
    words = f"Swivel {head.name} to {{}} by its scale."
    return way_by_wheel(
        name,
        (head.name,),
        wanted,
        made,
        (_swivelled("workhead", words, wanted),),
        path,
        again=lambda error, value: workhead_way(head.model_copy(update={error: value}), cone, path),
    )


def _swivelled(part: SetPart, words: str, wanted: Wanted) -> PlanSetting:
    return PlanSetting(
        part=part,
        angle=Angle.of(wanted.angle_degrees),
        height=None,
        deviation_arcsec=None,
        arcsec_per_step=None,
        action=words.format(degrees(wanted.angle_degrees, 60.0)),
    )
