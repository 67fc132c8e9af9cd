"""What an experienced hand would add to a center's plan."""

from collections.abc import Iterator

from halfangle_service.cautions import STEEP_DEGREES, WHEEL_SAFETY, steep_angle
from halfangle_service.fields.advisories import Advisory, caution, note, stop
from halfangle_service.fields.estimate import contribution_words
from halfangle_service.fields.runout import PHASES_NOT_STATED
from halfangle_service.topics.jobs.center.result import PlanCheck, PlannedAngle
from halfangle_service.topics.jobs.plan.parts.runout import PlannedRunout, part_words
from halfangle_service.topics.jobs.plan.shank import Shank
from halfangle_service.topics.jobs.plan.ways.way import Way
from halfangle_service.trade.inspection.checks import CheckFacts
from halfangle_service.trade.units import Units, to_tenth_nm
from halfangle_service.trade.wording import arcsec, figure


def of_setting(way: Way, units: Units) -> Iterator[Advisory]:
    """Of the wheel, the stack and the plate's angle."""
    yield WHEEL_SAFETY
    setting, made = way.settings[0], way.stacks[0]
    height, off = setting.height or 0.0, setting.deviation_arcsec or 0.0
    if to_tenth_nm(height, units) != to_tenth_nm(made.total, units):
        yield note(
            "stack-not-exact",
            f"The height {figure(height, units)} is not one that these blocks build; the nearest "
            f"stack is off by {arcsec(2.0 * abs(off))} of included angle, which the budget counts "
            "as a known offset.",
        )
    yield from steep_angle(setting.angle.degrees, setting.arcsec_per_step or 0.0, STEEP_DEGREES)


def of_budgets(angle: PlannedAngle, runout: PlannedRunout, shank: Shank) -> Iterator[Advisory]:
    """Of what was not stated, and of a budget that is past its limit or may be."""
    error, tir = angle.included_angle_error_arcsec, runout.tir
    missing = [*error.not_stated, *(name for name in tir.not_stated if name != PHASES_NOT_STATED)]
    if missing:
        yield caution(
            "unstated-contributions",
            "Not stated and not counted, so that the budget that lacks them is not said to hold: "
            f"{', '.join(missing)}.",
        )
    yield from _of_angle(angle)
    yield from _of_runout(runout, shank)


def _of_angle(angle: PlannedAngle) -> Iterator[Advisory]:
    error = angle.included_angle_error_arcsec
    parts = error.contributions
    largest = max(parts, key=lambda part: part.share_percent, default=None)
    first = "the stack" if largest is None else contribution_words(largest)
    where = f"The largest share comes from {first}; mend that first."
    if angle.forecast == "does-not-hold":
        yield stop(
            "angle-not-held",
            f"This set-up does not hold the angle: do not grind on it. {where}",
        )
        return
    reach = abs(error.value or 0.0) + (error.expanded_uncertainty or 0.0)
    if angle.forecast == "may-not-hold" and reach > angle.included_angle_tolerance_arcsec:
        yield caution("angle-not-sure", f"This set-up may not hold the angle. {where}")


def _of_runout(runout: PlannedRunout, shank: Shank) -> Iterator[Advisory]:
    first = None if runout.mend_first is None else part_words(runout.mend_first, shank)
    where = f"the {first} is the first to mend."
    if runout.forecast == "does-not-hold":
        yield stop(
            "runout-not-held",
            f"This holding does not keep the runout: do not grind in it; {where}",
        )
    elif runout.forecast == "may-not-hold" and (
        (runout.tir.expanded_uncertainty or 0.0) > runout.limit_tir
    ):
        yield caution("runout-not-sure", f"This holding may not keep the runout: {where}")


def of_checks(checks: list[PlanCheck], facts: CheckFacts) -> Iterator[Advisory]:
    """Of what no check would show, and what none can prove."""
    if not any(check.catches_wrong_block for check in checks) and facts.mistakes:
        yield caution(
            "wrong-block-unseen",
            "No check of this plan would show the smallest wrong block that takes the angle out of "
            "its tolerance: have a second person read the blocks.",
        )
    if not any(check.acceptance_arcsec for check in checks):
        yield caution(
            "tolerance-unproved",
            f"No check of this plan can prove ±{arcsec(facts.tolerance_arcsec)} of included angle: "
            "measure the cone by finer means before it is accepted.",
        )
    if facts.rolls is None:
        yield note(
            "no-room-for-rolls",
            "Rolls find no place beside this cone: it is too short, or the shank's shoulder stands "
            "in their way. Its angle is checked by other means.",
        )
