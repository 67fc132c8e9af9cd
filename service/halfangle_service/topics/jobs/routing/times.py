"""Seconds of a routing's operations, out of the plan's minutes, and what in them is the usual."""

from collections.abc import Iterator

from halfangle_service.topics.jobs.plan.parts.feed import PlanAssumption
from halfangle_service.topics.jobs.plan.parts.times import PlanTimes
from halfangle_service.topics.jobs.plan.plan import JobPlanRequest
from halfangle_service.topics.jobs.plan.result import PlannedWay, PlanWayName
from halfangle_service.topics.jobs.plan.shop.equipment import NAMED, PlanEquipment
from halfangle_service.topics.jobs.plan.shop.reading import placed
from halfangle_service.trade.planning.times import (
    FLANK,
    HEAD,
    MINUTES_PER_PIECE,
    PLATE,
    SIDE,
    UsualTimes,
)

SECONDS_PER_MINUTE = 60.0
_USUAL = PlanTimes()
_USUAL_OF: dict[PlanWayName, UsualTimes] = {
    "dressed-wheel": FLANK,
    "wheel-side": SIDE,
    "swivelled-workhead": HEAD,
}


def equipment_path(way: PlannedWay, shop: PlanEquipment) -> str:
    """Where the request, or the profile, states what a way is set on: what it names first."""
    return next(
        path
        for kind in NAMED
        for path, one in placed(kind, getattr(shop, kind))
        if one.name == way.equipment[0]
    )


def of_setting_up(
    request: JobPlanRequest, way: PlannedWay, shop: PlanEquipment
) -> Iterator[PlanAssumption]:
    """What in the time of a set-up is the usual."""
    usual = _USUAL_OF.get(way.way, PLATE).setup
    for part in way.time.setup_parts:
        if part.setup_part == "equipment":
            if part.minutes_each == usual:
                yield _minutes(f"{equipment_path(way, shop)}/setup_minutes", usual)
        else:
            yield from _of_times(request, f"{part.setup_part.replace('-', '_')}_minutes")


def of_a_piece(request: JobPlanRequest, way: PlannedWay) -> Iterator[PlanAssumption]:
    """What in the time of a piece, or in how it is fed, is the usual."""
    yield from way.feed_plan.assumptions
    if way.time.by_feed:
        yield from _of_times(request, "loading_minutes")
    elif request.minutes_per_piece is None:
        yield _minutes("minutes_per_piece", MINUTES_PER_PIECE)


def of_dressing_again(request: JobPlanRequest) -> Iterator[PlanAssumption]:
    """What in the time of a dress between pieces is the usual."""
    return _of_times(request, "dressing_minutes")


def of_inspecting(way: PlannedWay, shop: PlanEquipment) -> Iterator[PlanAssumption]:
    """What in the time of an inspection is the usual."""
    usual = _USUAL_OF.get(way.way, PLATE).inspection
    if way.time.inspection_minutes == usual:
        yield _minutes(f"{equipment_path(way, shop)}/inspection_minutes", usual)


def _of_times(request: JobPlanRequest, name: str) -> Iterator[PlanAssumption]:
    """A time of the shop, where it is the usual one.

    Whether it was stated is not asked: the same request however it is written has one answer.
    """
    usual: float = getattr(_USUAL, name)
    if getattr(request.times, name) == usual:
        yield _minutes(f"times/{name}", usual)


def _minutes(path: str, minutes: float) -> PlanAssumption:
    return PlanAssumption(name=path, assumed_value=minutes, input_unit="minute")
