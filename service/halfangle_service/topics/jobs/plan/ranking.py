"""The one rule by which ways are ranked, and what a way is written as."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from halfangle_service.fields.estimate import ArcsecEstimate, estimate
from halfangle_service.topics.jobs.plan.checks import PlanMistake
from halfangle_service.topics.jobs.plan.parts.every import WayParts
from halfangle_service.topics.jobs.plan.parts.runout import PlannedRunout
from halfangle_service.topics.jobs.plan.result import PlanAngle, PlannedWay, RuledOutWay
from halfangle_service.topics.jobs.plan.ways.way import RuledOut, ToleratedAngle, Way
from halfangle_service.trade.uncertainty import DecisionRule, Forecast, forecast_of, together

RANKING = (
    "Ways that are not safe or do not reach are ruled out. Of the others: what holds every limit "
    "before what may not, that before what nothing was stated of, what does not hold last; what "
    "leaves room to prove it before what does not; of ways that may not hold those of which all "
    "was stated first, then the one whose angle may be off least, what it is known to be off and "
    "its expanded uncertainty together; then the quickest for all pieces."
)
#: How many times as far off another way may be and is no worse for it.
_ALIKE = 1.1
_ORDER: tuple[Forecast, ...] = ("holds", "may-not-hold", "not-stated", "does-not-hold")


def planned_way(
    way: Way,
    runout: PlannedRunout | None,
    rule: DecisionRule,
    parts: WayParts,
    mistakes: Iterable[PlanMistake],
    finest_arcsec: float | None,
) -> PlannedWay:
    """Write a way, with the judgement of all its limits, and its smallest wrong blocks.

    `finest_arcsec` is the expanded uncertainty of the finest inspection at hand.
    """
    angles = [planned_angle(angle, rule) for angle in way.angles]
    forecasts = [angle.forecast for angle in angles]
    if runout is not None:
        forecasts.append(runout.forecast)
    return PlannedWay(
        way=way.name,
        equipment=list(way.equipment),
        forecast=together(forecasts),
        angles=angles,
        room_to_prove_arcsec=standing_of(angles, finest_arcsec).room,
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


@dataclass(frozen=True, slots=True)
class KnownAngle:
    """What is known of an angle's error, in arc-seconds: its value, and ± its uncertainty."""

    tolerance: float
    value: float
    uncertainty: float | None
    lacks: bool


@dataclass(frozen=True, slots=True)
class Standing:
    """How a way stands beside its forecast, in arc-seconds.

    `room` is what the error to expect and the finest inspection leave of the tolerance, None where
    either is not known; `lacks`: something of its angle was not stated; `doubt` is how far the
    angle may be off: what is known of it and its uncertainty.
    """

    room: float | None
    lacks: bool
    doubt: float


def standing_of(angles: Sequence[PlanAngle], finest_arcsec: float | None) -> Standing:
    """How a way stands, by its angles as they are answered."""
    known = [
        KnownAngle(
            angle.tolerance_arcsec,
            angle.error_arcsec.value or 0.0,
            angle.error_arcsec.expanded_uncertainty,
            lacks=bool(angle.error_arcsec.not_stated),
        )
        for angle in angles
    ]
    return standing_by(known, finest_arcsec)


def standing_by(angles: Sequence[KnownAngle], finest_arcsec: float | None) -> Standing:
    """How a way stands; `finest_arcsec` is the uncertainty of the finest inspection at hand."""
    lacks = any(angle.lacks for angle in angles)
    doubts = [abs(angle.value) + (angle.uncertainty or 0.0) for angle in angles]
    room = None
    known = all(angle.uncertainty is not None for angle in angles)
    if finest_arcsec is not None and known and not lacks:
        room = min(
            angle.tolerance - doubt - finest_arcsec
            for angle, doubt in zip(angles, doubts, strict=True)
        )
    return Standing(room, lacks, max(doubts, default=0.0))


def planned_angle(angle: ToleratedAngle, rule: DecisionRule) -> PlanAngle:
    """Write the error of an angle to expect, against its tolerance."""
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
Rank = tuple[int, bool, bool, float, float, int, str]


def best_first(way: PlannedWay, finest_arcsec: float | None) -> Rank:
    """The order of ways, by the rule; alike, that of the fewest blocks, then of the name."""
    standing = standing_of(way.angles, finest_arcsec)
    return rank_of(way, way.forecast, standing, way.total_minutes)


def rank_of(way: PlannedWay, forecast: Forecast, standing: Standing, total_minutes: float) -> Rank:
    """The rank that a way would have with this forecast, standing and time."""
    doubtful = forecast == "may-not-hold"
    return (
        _ORDER.index(forecast),
        (standing.room or 0.0) <= 0.0,
        doubtful and standing.lacks,
        standing.doubt if doubtful else 0.0,
        total_minutes,
        sum(stack.count for stack in way.stacks if stack.role != "check"),
        way.way,
    )


def as_good(rank: Rank, first: Rank) -> bool:
    """True where a way of this rank is as good as the first, or may be off by a tenth more."""
    *classes, doubt = rank[:4]
    *of_first, least = first[:4]
    return rank == first or (classes == of_first and 0.0 < doubt <= _ALIKE * least)


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
