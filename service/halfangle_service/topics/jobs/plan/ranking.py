"""The one rule by which ways are ranked, and what a way is written as."""

from collections.abc import Iterable

from halfangle_service.fields.estimate import ArcsecEstimate, estimate
from halfangle_service.topics.jobs.center.runout_budget import PlannedRunout
from halfangle_service.topics.jobs.plan.checks import PlanMistake
from halfangle_service.topics.jobs.plan.parts.every import WayParts
from halfangle_service.topics.jobs.plan.result import PlanAngle, PlannedWay, RuledOutWay
from halfangle_service.topics.jobs.plan.ways.way import RuledOut, ToleratedAngle, Way
from halfangle_service.trade.uncertainty import DecisionRule, Forecast, forecast_of, together

RANKING = (
    "Ways that are not safe or do not reach are ruled out. Of the others: what holds every limit "
    "before what may not, that before what nothing was stated of, what does not hold last; of ways "
    "that may not hold those of which all was stated first, then the one with the least expanded "
    "uncertainty of its angle; then the quickest for all pieces."
)
_ORDER: tuple[Forecast, ...] = ("holds", "may-not-hold", "not-stated", "does-not-hold")


def planned_way(
    way: Way,
    runout: PlannedRunout | None,
    rule: DecisionRule,
    parts: WayParts,
    mistakes: Iterable[PlanMistake],
) -> PlannedWay:
    """Write a way, with the judgement of all its limits, and its smallest wrong blocks."""
    angles = [_angle(angle, rule) for angle in way.angles]
    forecasts = [angle.forecast for angle in angles]
    if runout is not None:
        forecasts.append(runout.forecast)
    return PlannedWay(
        way=way.name,
        equipment=list(way.equipment),
        forecast=together(forecasts),
        angles=angles,
        runout_budget=runout,
        settings=list(way.settings),
        stacks=list(way.stacks),
        first_piece_minutes=parts.whole.first_piece,
        total_minutes=parts.whole.total,
        time=parts.time,
        feed_plan=parts.feed,
        batch=parts.batch,
        mistakes=list(mistakes),
        clearance=parts.clearance,
    )


def _angle(angle: ToleratedAngle, rule: DecisionRule) -> PlanAngle:
    error = estimate(ArcsecEstimate, angle.budget, per_unit=angle.per_unit)
    tolerance, worst = angle.tolerance_arcsec, error.worst_case
    limit = tolerance / angle.per_unit
    return PlanAngle(
        of=angle.of,
        error_arcsec=error,
        tolerance_arcsec=tolerance,
        tolerance_used_percent=None if worst is None else 100.0 * worst / tolerance,
        forecast=forecast_of(angle.budget, -limit, limit, rule),
    )


#: Place of a way in the order; the less the better.
Rank = tuple[int, bool, float, float, int, str]


def best_first(way: PlannedWay) -> Rank:
    """The order of ways, by the rule; alike, that of the fewest blocks, then of the name."""
    doubts = [angle.error_arcsec.expanded_uncertainty or 0.0 for angle in way.angles]
    lacks = any(angle.error_arcsec.not_stated for angle in way.angles)
    return rank_of(way, way.forecast, max(doubts), way.total_minutes, lacks=lacks)


def rank_of(
    way: PlannedWay,
    forecast: Forecast,
    doubt_arcsec: float,
    total_minutes: float,
    *,
    lacks: bool,
) -> Rank:
    """The rank that a way would have with this forecast, uncertainty and time.

    `lacks`: something of its angle was not stated, which is no less doubt.
    """
    doubtful = forecast == "may-not-hold"
    return (
        _ORDER.index(forecast),
        doubtful and lacks,
        doubt_arcsec if doubtful else 0.0,
        total_minutes,
        sum(stack.count for stack in way.stacks if stack.role != "check"),
        way.way,
    )


def is_fit(rank: Rank) -> bool:
    """True where a way of this rank holds, or may hold."""
    return rank[0] <= _ORDER.index("may-not-hold")


def ruled_out_way(way: RuledOut) -> RuledOutWay:
    """Write a way that cannot."""
    return RuledOutWay(
        way=way.name,
        equipment=list(way.equipment),
        reason=way.reason,
        field=way.field,
        instead=way.instead,
    )
