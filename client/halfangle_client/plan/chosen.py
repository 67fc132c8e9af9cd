"""The chosen way of a plan: what to set, how to feed and when to stop, what to expect of it."""

from collections.abc import Iterable, Iterator, Mapping
from typing import Any

from halfangle_client.generated import models
from halfangle_client.plan import words
from halfangle_client.plan.sheet import Sheet

#: Contributions below this share of the spread, in percent, are named together.
_SMALL_SHARE = 1.0
_READINGS = {
    "axial-position": "gauge or point, off its place",
    "feed-dial": "feed dial, from the first touch",
}
_ROLES = {
    "high": "under the high roll",
    "low": "under the low roll",
    "base": "under the base plate",
    "upper": "under the upper plate",
    "check": "to compare with",
}


def put_settings(sheet: Sheet, way: models.PlannedWay, units: str) -> None:
    """What is set to which angle, and the stacks to tick off."""
    sheet.section("Set")
    tolerance = min((angle.tolerance_arcsec for angle in way.angles), default=60.0)
    for setting in way.settings:
        angle = words.angle(setting.angle.degrees, tolerance)
        sheet.say(f"The {words.said(setting.part)} to {angle}{_by_stack(setting, units)}.")
    sheet.table(
        (
            (
                _ROLES.get(stack.role, words.said(stack.role)),
                words.fine(stack.total, units),
                f"{words.blocks_to_tick(stack.blocks)}{_certificate(stack, units)}",
            )
            for stack in way.stacks
        ),
        "lrl",
    )


def _by_stack(setting: models.PlanSetting, units: str) -> str:
    """By which height it is set, and what a step of that does; nothing of a scale."""
    if setting.height is None:
        return ""
    off, per = setting.deviation_arcsec, setting.arcsec_per_step
    shown = off is not None and abs(off) >= 0.05
    misses = f", which the stacks miss by {words.arcsec(off)}" if shown else ""
    turns = "" if per is None else f"; {words.BENCH_STEP[units]} turns it {words.arcsec(per)}"
    return f" by {words.fine(setting.height, units)} of stack{misses}{turns}"


def _certificate(stack: models.PlanStack, units: str) -> str:
    """What a certificate says of a stack: its marks, and what its blocks are off in all."""
    known = [mark for mark in stack.marks if mark]
    marks = f"   marked {', '.join(known)}" if known else ""
    if stack.actual_deviation == stack.deviation:
        return marks
    return f"{marks}   by certificate {words.fine(stack.actual_height.value or 0.0, units)}"


def put_feed(sheet: Sheet, feed: models.PlanFeed, units: str) -> None:
    """The passes, and the reading to stop by."""
    sheet.section("Feed")
    sheet.table(
        (
            (
                name,
                str(phase.cutting_passes),
                words.small(phase.dial_per_pass, units),
                words.small(phase.last_pass, units),
                words.small(phase.stock, units),
                words.size(phase.advance, units),
                words.minutes(phase.minutes),
            )
            for name, phase in (("rough", feed.rough), ("finish", feed.finish))
            if phase is not None
        ),
        "lrrrrrr",
        ("", "passes", "dial a pass", "last pass", "takes off", "advance", "time"),
    )
    travel = f" Travel of a pass {words.size(feed.travel, units)}." if feed.travel else ""
    turns = "" if feed.work_rpm is None else f" Work at {feed.work_rpm:.3g} turns a minute."
    sheet.say(f"Then {feed.spark_out_passes} passes without feed, to spark out.{travel}{turns}")
    taken = [
        f"{words.field_words(each.name)} {words.stated(each.assumed_value, each.input_unit, units)}"
        for each in feed.assumptions
    ]
    if taken:
        listed = ", ".join(taken)
        sheet.say(f"Not stated, so taken as usual (common practice, no source): {listed}.")
    _put_missing(sheet, feed.not_stated)
    sheet.section("When to stop")
    sheet.table(
        (_stop_row(each, feed.stop_by, units) for each in feed.stop_readings),
        "lrrrr",
        ("  read", "finish from", "at size", f"{words.BENCH_STEP[units]} is", "sure to"),
    )
    sheet.say(
        f"> is the one to stop by. A feed of {words.BENCH_STEP[units]} square to the surface "
        "changes it so much; its error comes to a layer of what it is sure to."
    )


def _stop_row(each: models.PlanStopReading, stop_by: str | None, units: str) -> tuple[str, ...]:
    sure = each.layer_error_limit
    return (
        f"{'>' if each.read_off == stop_by else ' '} "
        f"{_READINGS.get(each.read_off, words.said(each.read_off))}",
        words.size(each.at_finish, units),
        words.size(each.at_size, units),
        words.small(each.per_downfeed * words.STEP[units], units),
        words.NOT_STATED if sure is None else words.small(sure, units),
    )


def put_size(sheet: Sheet, size: models.PlanSize | None, units: str) -> None:
    """Between which readings to stop, where the size has a tolerance."""
    if size is None:
        return
    sheet.section("Size")
    expected, stop = words.small(size.size_error.expanded_uncertainty, units), ""
    if size.aimed_stop is not None:
        zone = words.within(size.smallest_stop, size.largest_stop, units, "length")
        stop = f"; stop at {words.size(size.aimed_stop, units)}, from {zone}"
    sheet.say(
        f"{words.size(size.nominal_size, units)} ± {words.small(size.size_tolerance, units)}: "
        f"{words.said(size.forecast)}. Stopped by the {words.said(size.read_off)} its error to "
        f"expect is ± {expected}{stop}."
    )
    _put_missing(sheet, size.size_error.not_stated)


def put_clearance(sheet: Sheet, clearance: models.PlanClearance | None, units: str) -> None:
    """Whether everything clears."""
    sheet.section("Clearance")
    if clearance is None:
        sheet.say("It is not worked out for such a way: prove it by hand.")
        return
    sheet.say(" ".join(_clearance(clearance, units)))
    sheet.points((*clearance.findings, *(change.action for change in clearance.changes)))
    _put_missing(sheet, clearance.not_stated)


def _clearance(clearance: models.PlanClearance, units: str) -> Iterator[str]:
    yield f"Forecast: {words.said(clearance.forecast)}."
    gap = clearance.smallest_gap
    if gap is not None:
        part = f"the {gap.wheel_state} {words.said(gap.part)}"
        size = words.size(gap.gap, units)
        yield f"Smallest gap {size}, between {part} and the {words.said(gap.body)}."
    if clearance.room_left is not None:
        yield f"Room left under the raised wheel {words.size(clearance.room_left, units)}."
    if clearance.stick_out_needed is not None:
        yield f"Stick-out needed {words.size(clearance.stick_out_needed, units)}."


def put_forecast(sheet: Sheet, way: models.PlannedWay, units: str) -> None:
    """The error of each angle to expect, with what it comes from, and the runout."""
    for angle in way.angles:
        _put_angle(sheet, angle, units)
    if way.runout_budget is not None:
        _put_runout(sheet, way.runout_budget, units)


def _put_angle(sheet: Sheet, angle: models.PlanAngle, units: str) -> None:
    error = angle.error_arcsec
    sheet.section(f"Error of the {words.said(angle.of)} to expect")
    used = angle.tolerance_used_percent
    worst = (
        ""
        if used is None
        else (
            f" Worst case {words.arcsec(error.worst_case)}, {words.percent(used)} of the tolerance."
        )
    )
    known = "" if error.expanded_uncertainty is None else " in 95 of 100"
    sheet.say(
        f"{words.error(error)}{known}, ± {angle.tolerance_arcsec:.10g}″ allowed: "
        f"{words.said(angle.forecast)}.{worst}"
    )
    parts = sorted(error.contributions, key=lambda part: -part.share_percent)
    sheet.table(
        (
            (
                words.cause(part.name, part.of),
                f"± {words.stated(part.input_value, part.input_unit, units)}",
                words.arcsec(part.worst_case, "± "),
                words.percent(part.share_percent),
            )
            for part in parts
            if part.share_percent >= _SMALL_SHARE
        ),
        "lrrr",
        ("what", "stated", "turns the angle", "of the spread"),
    )
    small = [words.cause(p.name, p.of) for p in parts if p.share_percent < _SMALL_SHARE]
    if small:
        sheet.say(f"Below 1 % each: {', '.join(small)}.")
    _put_missing(sheet, error.not_stated)


def _put_runout(sheet: Sheet, runout: models.PlannedRunout, units: str) -> None:
    tir = runout.tir
    sheet.section("Runout to expect, full indicator movement square to the axis")
    expected, worst = (
        words.small(each, units) for each in (tir.expanded_uncertainty, tir.worst_case)
    )
    sheet.say(
        f"Not past {expected} in 95 of 100, {words.small(runout.limit_tir, units)} allowed: "
        f"{words.said(runout.forecast)}. All in line {worst}. The limit reads "
        f"{words.at_most(runout.limit_tir_on_cone, units)} square to the cone; as eccentricity it "
        f"is {words.small(runout.limit_eccentricity, units)}."
    )
    sheet.table(
        (
            (
                words.cause(part.name, part.of),
                words.small(part.input_value, units),
                words.percent(part.share_percent),
            )
            for part in tir.contributions
        ),
        "lrr",
        ("what", "TIR", "of the spread"),
    )
    if runout.mend_first is not None:
        sheet.say(f"The first to mend: {words.cause(runout.mend_first)}.")
    _put_missing(sheet, tir.not_stated)


def put_batch(sheet: Sheet, way: models.PlannedWay, request: Mapping[str, Any]) -> None:
    """When to dress, which pieces to measure, and the time that it takes."""
    batch, pieces = way.batch, int(request.get("pieces", 1))
    sheet.section("Batch and time")
    grows = batch.growth_per_piece_arcsec
    growth = "" if grows is None else f" A piece adds {words.arcsec(grows)}."
    measured = ", ".join(map(str, batch.pieces_to_measure))
    more = " and on" if len(batch.pieces_to_measure) < batch.pieces_inspected else ""
    sheet.say(f"{batch.reason}{growth} Of {pieces}, measure {measured}{more}.")
    _put_missing(sheet, batch.not_stated)
    sheet.table(_times(way.time, pieces, stated=request.get("minutes_per_piece")), "lrl")
    last = f", all {pieces} after {words.minutes(way.total_minutes)}" if pieces > 1 else ""
    sheet.say(f"First good piece after {words.minutes(way.first_piece_minutes)}{last}.")


def _times(
    time: models.PlanTime, pieces: int, *, stated: float | None
) -> Iterator[tuple[str, str, str]]:
    """What each part of the time is, and how often it is taken."""
    known = "by the feed" if time.by_feed else "as usual; by the feed it is not known of every way"
    known = known if stated is None else "as stated"
    parts = ", ".join(
        f"{words.said(part.setup_part)} {words.minutes(part.minutes_each * part.times_done)}"
        for part in time.setup_parts
    )
    yield "set up", words.minutes(time.setup_minutes), f"once, the first dress with it: {parts}"
    if time.loading_minutes:
        yield "load", words.minutes(time.loading_minutes), words.times(pieces)
    yield "grind", words.minutes(time.minutes_per_piece), f"{words.times(pieces)}, {known}"
    yield "inspect", words.minutes(time.inspection_minutes), words.times(time.pieces_inspected)
    if time.dressings:
        yield "dress again", words.minutes(time.dressing_minutes), words.times(time.dressings)


def _put_missing(sheet: Sheet, names: Iterable[str]) -> None:
    missing = words.not_stated(names)
    if missing:
        sheet.say(f"Not stated: {missing}.")
