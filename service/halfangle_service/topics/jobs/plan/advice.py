"""What an experienced hand would add to the plan of a job."""

from collections.abc import Iterator, Sequence

from halfangle_service.cautions import (
    STEEP_DEGREES,
    steep_angle,
)
from halfangle_service.fields.advisories import Advisory, caution, stop
from halfangle_service.topics.jobs.plan.result import JobPlanResult, PlannedWay
from halfangle_service.topics.jobs.plan.ways.way import Way
from halfangle_service.trade.uncertainty import DecisionRule, smallest_limit
from halfangle_service.trade.units import Units
from halfangle_service.trade.wording import arcsec, block, option, plain


def of_plan(
    result: JobPlanResult,
    place: int,
    way: Way,
    ways: Sequence[Way],
    rule: DecisionRule,
    units: Units,
) -> Iterator[Advisory]:
    """Of the forecast and the setting of the way at a place of the ranking, and of the checks."""
    shown = result.ways[place]
    yield from _of_chosen(shown, way, rule) if place else _of_best(shown, way, rule)
    for setting in way.settings:
        if setting.arcsec_per_step is not None and setting.part in {"plate", "base", "upper"}:
            yield from steep_angle(setting.angle.degrees, setting.arcsec_per_step, STEEP_DEGREES)
    yield from _of_checks(result, shown, units)
    yield from dict.fromkeys(advisory for way in ways for advisory in way.cautions)


def _of_checks(result: JobPlanResult, shown: PlannedWay, units: Units) -> Iterator[Advisory]:
    """Of a wrong block of the way that no check at hand shows, and an angle none can prove."""
    proofs = [one.angle_proof for one in result.checks.inspections if one.angle_proof is not None]
    known = [proof for proof in proofs if proof.angle_error_arcsec.contributions]
    reads = any(check.told_apart is not None for check in result.checks.set_up_checks)
    unseen = [mistake for mistake in shown.mistakes if not mistake.seen_by]
    if unseen and (known or reads):
        first, called = unseen[0], "best" if shown is result.ways[0] else "chosen"
        yield caution(
            "wrong-block-unseen",
            f"No check at hand would show a block of {block(first.wrung, units)} {units} wrung for "
            f"one of {block(first.meant, units)} {units} in the {called} way, which takes the "
            "angle out of its tolerance: have a second person read the blocks.",
        )
    if known and not any(proof.proves_tolerance is not False for proof in known):
        yield caution(
            "tolerance-unproved",
            "No means at hand can prove the angle within its tolerance: measure it by finer means "
            "before it is accepted.",
        )


def _of_best(best: PlannedWay, way: Way, rule: DecisionRule) -> Iterator[Advisory]:
    """Of a best way that does not hold, may not, or of which nothing is known."""
    if best.forecast == "not-stated":
        yield caution(
            "no-way-known",
            "Nothing can be said for any way that is not ruled out: none of its errors was stated.",
        )
    elif best.forecast == "does-not-hold":
        yield stop(
            "no-way-fits",
            f"No way of the shop keeps every limit. The best, {option(best.way)}, "
            f"{'; '.join(_kept(best, way, rule))}. Do not grind this feature by any of them as it "
            "stands.",
        )
    elif best.forecast == "may-not-hold":
        yield caution(
            "best-way-may-not-hold",
            f"The best way, {option(best.way)}, may not hold: {'; '.join(_doubts(best))}. Measure "
            "the first piece.",
        )


def _of_chosen(chosen: PlannedWay, way: Way, rule: DecisionRule) -> Iterator[Advisory]:
    """Of a way that was chosen in place of the best: nothing of the best one excuses it."""
    if chosen.forecast == "does-not-hold":
        yield stop(
            "chosen-way-does-not-hold",
            f"The way chosen, {option(chosen.way)}, does not keep every limit: it "
            f"{'; '.join(_kept(chosen, way, rule))}. Do not grind this feature by it as it stands.",
        )
    elif chosen.forecast != "holds":
        yield caution(
            "chosen-way-may-not-hold",
            f"The way chosen, {option(chosen.way)}, may not hold: {'; '.join(_doubts(chosen))}. "
            "Measure the first piece.",
        )


def _kept(best: PlannedWay, way: Way, rule: DecisionRule) -> Iterator[str]:
    """What a way that does not hold would hold, or why it does not."""
    yield from list(_limits_missed(best, way, rule)) or (
        "grinds by a wheel that breaks down so far in one piece that not even the first on a dress "
        "keeps its angle",
    )


def _limits_missed(best: PlannedWay, way: Way, rule: DecisionRule) -> Iterator[str]:
    """Each limit that it does not hold by itself, whatever the wheel does."""
    for found, angle in zip(best.angles, way.angles, strict=True):
        if found.forecast == "does-not-hold":
            least = arcsec(smallest_limit(angle.budget, rule) * angle.per_unit)
            yield f"keeps ±{least} of the {option(found.of)}, not ±{plain(found.tolerance_arcsec)}″"
    if best.runout_budget is not None and best.runout_budget.forecast == "does-not-hold":
        yield "is held so that it does not keep the runout"
    if best.size_plan is not None and best.size_plan.forecast == "does-not-hold":
        yield "is read and fed too coarsely to keep the size"


def _doubts(best: PlannedWay) -> Iterator[str]:
    """Why a way may not hold: what was not stated, or an error that may pass its limit."""
    for angle in best.angles:
        error = angle.error_arcsec
        if angle.forecast != "holds" and error.expanded_uncertainty is not None:
            unknown = f", not stated: {', '.join(error.not_stated)}" if error.not_stated else ""
            off, spread = arcsec(error.value or 0.0), arcsec(error.expanded_uncertainty)
            limit = f"±{plain(angle.tolerance_arcsec)}″"
            yield (
                f"the {option(angle.of)} is expected to be off by {off} ± {spread}, of {limit} "
                f"allowed{unknown}"
            )
        elif angle.forecast != "holds":
            yield f"of the {option(angle.of)} nothing was stated"
    if best.batch.pieces_per_dress == 0:
        yield "as the wheel breaks down not even the first piece on a dress surely keeps its angle"
    runout = best.runout_budget
    if runout is not None and runout.forecast != "holds":
        yield "the runout may pass its limit, or something of it was not stated"
    size = best.size_plan
    if size is not None and size.forecast != "holds":
        lacks = ", ".join(size.size_error.not_stated)
        why = f"not stated: {lacks}" if lacks else "it is read or fed too coarsely for that"
        yield f"the size may pass its tolerance ({why})"
