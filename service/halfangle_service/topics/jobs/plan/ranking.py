"""The one rule by which ways are ranked, and what a way is written as."""

from halfangle_service.fields.estimate import ArcsecEstimate, estimate
from halfangle_service.topics.jobs.center.runout_budget import PlannedRunout
from halfangle_service.topics.jobs.plan.result import PlanAngle, PlannedWay, RuledOutWay
from halfangle_service.topics.jobs.plan.ways.way import RuledOut, ToleratedAngle, Way
from halfangle_service.trade.uncertainty import DecisionRule, Forecast, forecast_of, together

RANKING = (
    "Ways that are not safe or do not reach are ruled out. Of the others: what holds every limit "
    "before what may not, that before what nothing was stated of, what does not hold last; of ways "
    "that may not hold the one with the least expanded uncertainty of its angle first; then the "
    "quickest for all pieces."
)
_ORDER: tuple[Forecast, ...] = ("holds", "may-not-hold", "not-stated", "does-not-hold")


def planned_way(
    way: Way,
    runout: PlannedRunout | None,
    rule: DecisionRule,
    pieces: int,
    minutes_per_piece: float,
) -> PlannedWay:
    """Write a way, with the judgement of all its limits."""
    angles = [_angle(angle, rule) for angle in way.angles]
    forecasts = [angle.forecast for angle in angles]
    if runout is not None:
        forecasts.append(runout.forecast)
    ahead = way.setup_minutes + way.inspection_minutes
    return PlannedWay(
        way=way.name,
        equipment=list(way.equipment),
        forecast=together(forecasts),
        angles=angles,
        runout_budget=runout,
        settings=list(way.settings),
        stacks=list(way.stacks),
        first_piece_minutes=ahead + minutes_per_piece,
        total_minutes=ahead + pieces * minutes_per_piece,
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


def best_first(way: PlannedWay) -> tuple[int, float, float, int, str]:
    """The order of ways, by the rule; alike, that of the fewest blocks, then of the name."""
    doubts = [angle.error_arcsec.expanded_uncertainty or 0.0 for angle in way.angles]
    return (
        _ORDER.index(way.forecast),
        max(doubts) if way.forecast == "may-not-hold" else 0.0,
        way.total_minutes,
        sum(stack.count for stack in way.stacks if stack.role != "check"),
        way.way,
    )


def ruled_out_way(way: RuledOut) -> RuledOutWay:
    """Write a way that cannot."""
    return RuledOutWay(
        way=way.name,
        equipment=list(way.equipment),
        reason=way.reason,
        field=way.field,
        instead=way.instead,
    )
