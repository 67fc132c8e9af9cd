"""How a plan is proved: steps, checks with what to read, the wrong blocks that they would show."""

from collections.abc import Iterator

from halfangle_client.generated import models
from halfangle_client.plan import words
from halfangle_client.plan.sheet import Sheet


def put_steps(sheet: Sheet, plan: models.JobPlanResult) -> None:
    """The steps in order, each with what to be careful of."""
    sheet.section("Steps")
    for step in plan.steps:
        sheet.say(step.action, f"{step.number:2}. ")
        for caution in step.cautions:
            sheet.say(caution, "    ! ")


def put_checks(sheet: Sheet, checks: models.PlanChecks, units: str) -> None:
    """The checks of the set-up and of the ground feature, with the readings to expect."""
    sheet.section("Checks of the set-up")
    sheet.points(f"{check.how}{_sees(check, units)}" for check in checks.set_up_checks)
    if checks.seat_readings:
        sheet.say("The runout in three seats tells spindle, fixture and adapter apart:", "- ")
    for place, seat in enumerate(checks.seat_readings, start=1):
        most = seat.largest_tir
        limit = "" if most is None else f" No more than {words.at_most(most, units)} TIR."
        sheet.say(f"{seat.how}{limit}", f"  {place}. ")
    sheet.section("Proof of the ground feature")
    if not checks.inspections:
        sheet.say("No means at hand measures it.")
    for means in checks.inspections:
        view = "" if means.of is None else f" for the {words.said(means.of)}"
        finest = ", the finest that proves it" if means.means == checks.best else ""
        sheet.say(f"{words.said(means.means).capitalize()}{view}{finest}. {means.how}", "- ")
        sheet.table(
            (("", *row) for row in _readings(means, units)),
            "llrrr",
            ("", "", "expect", "within tolerance", "proved"),
        )
        sheet.points(_proof(means), "  ")
    for out in checks.ruled_out:
        sheet.say(f"Not by {words.said(out.means)}: {out.reason}", "- ")
    for lacks in checks.not_at_hand:
        sheet.say(f"Not at hand: {words.said(lacks.means)}. {lacks.action}", "- ")


def put_mistakes(sheet: Sheet, way: models.PlannedWay) -> None:
    """The smallest wrong block of each stack that matters, and which check shows it."""
    if not way.stacks:
        return
    sheet.section("Smallest wrong block that leaves the tolerance")
    if not way.mistakes:
        sheet.say("No single wrong block takes the angle out of its tolerance.")
    sheet.table(
        (
            (
                f"{words.said(mistake.role)} stack",
                f"{mistake.wrung:.10g} for {mistake.meant:.10g}",
                words.large_angle(mistake.angle_error_arcsec),
                f"seen by: {', '.join(map(words.said, mistake.seen_by)) or 'no check at hand'}",
            )
            for mistake in way.mistakes
        ),
        "llrl",
    )


def _sees(check: models.PlanSetUpCheck, units: str) -> str:
    """What a check tells apart, and what it proves."""
    least, most = check.told_apart, check.acceptance_tir
    told = "" if least is None else f" Tells {words.small(least, units)} apart."
    proves = "" if most is None else f" Up to {words.at_most(most, units)} TIR proves the runout."
    return f"{told}{proves}"


def _readings(means: models.PlannedMeans, units: str) -> Iterator[tuple[str, str, str, str]]:
    """What a means is set up with and what is read by it."""
    for setting in means.settings:
        figure = words.reading(setting.set_to, units, setting.unit)
        yield f"set {words.field_words(setting.name)}", figure, "", ""
    for each in means.readings:
        tolerated = each.smallest_reading, each.largest_reading
        proved = each.smallest_accepted_reading, each.largest_accepted_reading
        yield (
            f"read {words.field_words(each.name)}",
            words.reading(each.expected_reading, units, each.unit),
            words.within(*tolerated, units, each.unit),
            words.within(*proved, units, each.unit),
        )


def _proof(means: models.PlannedMeans) -> Iterator[str]:
    """What a means proves of the angle, and what it cannot see."""
    proof = means.angle_proof
    if proof is not None:
        own = proof.angle_error_arcsec
        missing = words.not_stated(own.not_stated)
        lacks = f", not counting what was not stated: {missing}" if missing else ""
        known = words.arcsec(own.expanded_uncertainty, "± ")
        yield f"Its own uncertainty is {known}{lacks}; {_proves(proof)}."
    if means.cannot_see:
        yield f"It cannot see: {', '.join(map(words.said, means.cannot_see))}."


def _proves(proof: models.InspectionAngleProof) -> str:
    least, most = proof.smallest_accepted_error_arcsec, proof.largest_accepted_error_arcsec
    if least is not None and most is not None:
        read = f"{words.arcsec(least)} to {words.arcsec(most)}"
        return f"an error read from {read} proves the tolerance"
    if proof.proves_tolerance is None:
        return "what it proves cannot be said"
    return "it cannot prove the tolerance"
