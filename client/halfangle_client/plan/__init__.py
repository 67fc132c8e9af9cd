"""A job's plan written for a person at the machine: plain text in no more than 100 columns."""

from collections import Counter
from collections.abc import Mapping, Sequence
from typing import Any

from halfangle_client.generated import models
from halfangle_client.plan import chosen, proof, ranked, words
from halfangle_client.plan.sheet import WIDTH, Sheet, Shown

__all__ = ["WIDTH", "plan_text"]

_BY_WEIGHT = {"stop": "STOP", "caution": "CAUTION", "note": "Note"}


def plan_text(answer: models.JobPlanAnswer, request: Mapping[str, Any], shown: Shown = str) -> str:
    """Give the whole plan of a request; `shown` writes a text as the terminal will show it."""
    plan, units, pieces = answer.result, str(request["units"]), int(request.get("pieces", 1))
    sheet, best = Sheet(shown), plan.ways[0]
    _put_head(sheet, plan, units, pieces)
    _put_advisories(sheet, answer.advisories)
    ranked.put_ways(sheet, plan, pieces)
    ranked.put_decisions(sheet, plan)
    ranked.put_ruled_out(sheet, plan)
    chosen.put_settings(sheet, best, units)
    proof.put_steps(sheet, plan)
    chosen.put_feed(sheet, best.feed_plan, units)
    chosen.put_size(sheet, best.size_plan, units)
    chosen.put_clearance(sheet, best.clearance, units)
    proof.put_checks(sheet, plan.checks, units)
    proof.put_mistakes(sheet, best)
    chosen.put_forecast(sheet, best, units)
    chosen.put_batch(sheet, best, request)
    _put_sources(sheet, plan, answer.basis)
    return sheet.text()


def _put_head(sheet: Sheet, plan: models.JobPlanResult, units: str, pieces: int) -> None:
    """The job, what is wanted, and the way taken."""
    sheet.title(plan.job)
    feature, best = plan.feature, plan.ways[0]
    wanted = [_angle(feature, best)]
    if feature.large_diameter is not None:
        small = feature.small_diameter
        to = f" to {words.size(small, units)}" if small else " to its point"
        wanted.append(f"{words.size(feature.large_diameter, units)}{to}")
    wanted.append(f"slant {words.size(feature.slant_length, units)}")
    if plan.shank is not None:
        held = plan.shank.held_in if plan.adapter is None else f"the {plan.adapter}"
        wanted.append(f"shank {plan.shank.designation or 'straight'} in {held}")
    if best.runout_budget is not None:
        wanted.append(f"runout to it within {words.small(best.runout_budget.limit_tir, units)} TIR")
    many = "1 piece" if pieces == 1 else f"{pieces} pieces"
    sheet.say(
        f"{words.said(feature.kind).capitalize()}: {'; '.join(wanted)}. {many}. All lengths in "
        f"{words.LENGTHS.get(units, units)}."
    )
    taken = "The first of the ways, none of which is fit" if plan.best is None else "Way taken"
    sheet.say(f"{taken}: {best.in_words}. Forecast of all limits: {words.said(best.forecast)}.")


def _angle(feature: models.PlannedFeature, best: models.PlannedWay) -> str:
    """The angle wanted with its tolerance."""
    tolerance = best.angles[0].tolerance_arcsec
    allowed = f"± {tolerance:.10g}″"
    if feature.included_angle is not None:
        return f"{words.angle(feature.included_angle.degrees, tolerance)} {allowed} included"
    degrees = 0.0 if feature.face_angle is None else feature.face_angle.degrees
    each = " in each view" if len(best.angles) > 1 else ""
    return f"{words.angle(degrees, tolerance)} to its base, {allowed}{each}"


def _put_advisories(sheet: Sheet, advisories: Sequence[models.Advisory]) -> None:
    """The heaviest first: who reads one line reads the one that stops the job.

    A last sentence that several have in common stands once, below them.
    """
    if advisories:
        sheet.section("Mind first")
    lasts = Counter(_last(each.message) for each in advisories)
    shared = [last for last, count in lasts.items() if count > 1]
    for severity, mark in _BY_WEIGHT.items():
        for each in advisories:
            if each.severity == severity:
                own = each.message.removesuffix(_last(each.message)).rstrip()
                message = own if own and _last(each.message) in shared else each.message
                sheet.say(f"{mark}: {message}", "", "  ")
    for last in shared:
        sheet.say(f"Of all of these: {last}", "", "  ")


def _last(message: str) -> str:
    """The last sentence of a message."""
    return message.rpartition(". ")[2]


def _put_sources(sheet: Sheet, plan: models.JobPlanResult, basis: models.Basis) -> None:
    """The rule of ranking, and where formulas and values come from."""
    sheet.section("What this stands on")
    sheet.say(f"Order of the ways: {plan.ranking}", "- ")
    for source in basis.sources:
        sheet.say(f"{source.citation} ({words.said(source.standing)})", "- ")
    sheet.say(f"Halfangle, release {basis.release}", "- ")
