"""The one rule by which ways are ranked, and what a way is written as.

Time and room are weighed share for share: that needs no limit of a class and no rate between
minutes and arc-seconds, both of which somebody would have to choose. What is no worse in each of
forecast, room, doubt and time is ranked no lower (held by a test).
"""

import math
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
    "Ways that are not safe, do not reach or foul are ruled out; of the others what holds every "
    "limit comes before what may not, that before what nothing was stated of, what does not hold "
    "last. Of ways that hold those come first whose angle the finest inspection at hand can prove, "
    "which leave room of the tolerance beside the error to expect and both uncertainties; then the "
    "one of the least time for its room, minutes for all pieces over arc-seconds, so that a way "
    "that takes a tenth longer must leave a tenth more. Of ways that do not surely hold those of "
    "which all was stated come first, then the one whose angle may be off least; of ways alike the "
    "quickest, then that of the fewest blocks."
)
#: How many times as far off, or as dear in time for its room, a way may be and is no worse for it.
_ALIKE = 1.1
_ORDER: tuple[Forecast, ...] = ("holds", "may-not-hold", "not-stated", "does-not-hold")


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
    either is not known, and `left` the same without an inspection; `lacks`: something of its angle
    was not stated; `doubt` is how far the angle may be off: what is known of it and its
    uncertainty.
    """

    room: float | None
    left: float
    lacks: bool
    doubt: float


#: Place of a way in the order; the less the better.
Rank = tuple[int, bool, bool, float, float, float, int, str]


@dataclass(frozen=True, slots=True)
class Ranked:
    """A way with its parts, as it is answered, how it stands, and its place in the order."""

    way: Way
    parts: WayParts
    row: PlannedWay
    standing: Standing
    rank: Rank


def ranked_way(
    way: Way,
    runout: PlannedRunout | None,
    rule: DecisionRule,
    parts: WayParts,
    mistakes: Iterable[PlanMistake],
    finest_arcsec: float | None,
) -> Ranked:
    """Write a way, with the judgement of all its limits, its smallest wrong blocks and its rank.

    `finest_arcsec` is the expanded uncertainty of the finest inspection at hand.
    """
    angles = [planned_angle(angle, rule) for angle in way.angles]
    standing = standing_of(angles, finest_arcsec)
    forecasts = [angle.forecast for angle in angles]
    if runout is not None:
        forecasts.append(runout.forecast)
    if parts.size is not None:
        forecasts.append(parts.size.forecast)
    row = PlannedWay(
        way=way.name,
        equipment=list(way.equipment),
        in_words=way.in_words,
        forecast=forecast_on_a_dress(
            forecasts, parts.batch.pieces_per_dress, fails=parts.first_fails
        ),
        angles=angles,
        room_to_prove_arcsec=standing.room,
        runout_budget=runout,
        settings=list(way.settings),
        stacks=list(way.stacks),
        first_piece_minutes=parts.whole.first_piece,
        total_minutes=parts.whole.total,
        time=parts.time,
        feed_plan=parts.feed,
        size_plan=parts.size,
        batch=parts.batch,
        mistakes=list(mistakes),
        clearance=parts.clearance,
    )
    rank = rank_of(way, row.forecast, standing, row.total_minutes)
    return Ranked(way, parts, row, standing, rank)


def forecast_on_a_dress(
    forecasts: Sequence[Forecast], pieces: int | None, *, fails: bool
) -> Forecast:
    """The forecast of all limits by a wheel that keeps so many pieces on one dress.

    Where not even the first surely keeps its tolerance they may not hold; where it surely does not
    (`fails`), neither do they.
    """
    if fails:
        return "does-not-hold"
    whole = together(forecasts)
    return "may-not-hold" if pieces == 0 and whole == "holds" else whole


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
    left = min(angle.tolerance - doubt for angle, doubt in zip(angles, doubts, strict=True))
    known = not lacks and all(angle.uncertainty is not None for angle in angles)
    room = left - finest_arcsec if known and finest_arcsec is not None else None
    return Standing(room, left, lacks, max(doubts))


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


def rank_of(way: Way, forecast: Forecast, standing: Standing, total_minutes: float) -> Rank:
    """The rank of a way with this forecast, standing and time, by the rule.

    Where no inspection at hand proves it, a way is weighed by the room that a finer one would find.
    """
    holds, doubtful = forecast == "holds", forecast in {"may-not-hold", "does-not-hold"}
    proved = (standing.room or 0.0) > 0.0
    room = standing.room if proved and standing.room is not None else standing.left
    time_for_room = total_minutes / room if room > 0.0 else math.inf
    return (
        _ORDER.index(forecast),
        not proved,
        doubtful and standing.lacks,
        standing.doubt if doubtful else 0.0,
        time_for_room if holds else 0.0,
        total_minutes,
        way.work.blocks,
        way.in_words,
    )


class UnknownWay(Exception):
    """The plan has no such way; `known` are those that it has, by place and name."""

    def __init__(self, known: Sequence[str]) -> None:
        super().__init__(", ".join(known))
        self.known = list(known)


def place_of_way(ways: Sequence[str], wanted: str) -> int:
    """Place from 0 of a way among the ranked ones, by its name or its place from 1; first: empty.

    Raises UnknownWay where there is no such way.
    """
    if not wanted:
        return 0
    if wanted in ways:
        return ways.index(wanted)
    if wanted.isascii() and wanted.isdigit() and 1 <= int(wanted[:9]) <= len(ways):
        return int(wanted[:9]) - 1
    raise UnknownWay([f"{place} {name}" for place, name in enumerate(ways, start=1)])


def as_good(rank: Rank, first: Rank) -> bool:
    """True where a way of this rank is as good as the first, or worse by a tenth at most."""
    *classes, doubt, time = rank[:5]
    *of_first, least, shortest = first[:5]
    alike = doubt <= _ALIKE * least and time <= _ALIKE * shortest
    return rank == first or (classes == of_first and doubt + time > 0.0 and alike)


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
