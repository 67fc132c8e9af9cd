"""Every way of a plan beside the others: ranked, ruled out, told apart by what was not stated."""

from collections.abc import Iterator

from halfangle_client.generated import models
from halfangle_client.plan import words
from halfangle_client.plan.sheet import Sheet


def put_ways(sheet: Sheet, plan: models.JobPlanResult, pieces: int) -> None:
    """The ways in their order, and why it is theirs."""
    sheet.section("Ways, the best first")
    sheet.table(
        (
            (
                str(place),
                words.said(way.forecast),
                *_angle_of(way),
                words.minutes(way.total_minutes),
                way.in_words,
            )
            for place, way in enumerate(plan.ways, start=1)
        ),
        "rlrrrl",
        ("", "forecast", "angle off by", "to prove", words.all_pieces(pieces), "way"),
    )
    sheet.points(_lacking(plan), "   ")
    sheet.say(
        "To prove: what the error to expect and the finest inspection at hand leave of the "
        "tolerance."
    )


def put_decisions(sheet: Sheet, plan: models.JobPlanResult) -> None:
    """What was not stated and would change which way is best."""
    if plan.told_apart_by:
        sheet.section("What would change the order")
        sheet.points(decision.sentence for decision in plan.told_apart_by)


def put_ruled_out(sheet: Sheet, plan: models.JobPlanResult) -> None:
    """The ways that cannot, and the nearest that works."""
    if plan.ruled_out:
        sheet.section("Ruled out")
        for way in plan.ruled_out:
            nearest = "" if way.instead is None else f" Nearest: {way.instead}"
            sheet.say(f"{words.way_words(way.way, way.equipment)}. {way.reason}{nearest}", "- ")


def _angle_of(way: models.PlannedWay) -> tuple[str, str]:
    """The angle that is furthest off, and what is left to prove it by."""
    worst = max(way.angles, key=_off, default=None)
    found = "–" if worst is None else words.error(worst.error_arcsec)
    return found, words.arcsec(way.room_to_prove_arcsec)


def _off(angle: models.PlanAngle) -> float:
    error = angle.error_arcsec
    return abs(error.value or 0.0) + (error.expanded_uncertainty or 0.0)


def _lacking(plan: models.JobPlanResult) -> Iterator[str]:
    """What was not stated of the other ways; of the first it stands with its error."""
    for place, way in enumerate(plan.ways[1:], start=2):
        names = [name for angle in way.angles for name in angle.error_arcsec.not_stated]
        if names:
            yield f"{place}: not stated, so not counted: {words.not_stated(names)}."
