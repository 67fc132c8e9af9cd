"""A center's plan written for a person at the machine, in 80 columns of plain text."""

import textwrap
from collections.abc import Iterable, Sequence

from halfangle_client.generated import models

WIDTH = 80
LENGTHS = {"in": "inches", "mm": "millimetres"}
_NAME_WIDTH = 32
_BY_WEIGHT = {"stop": "STOP", "caution": "CAUTION", "note": "Note"}
_DECIMALS = {"in": 5, "mm": 4}
#: What is set and read at the bench.
_BENCH_STEP = {"in": "0.0001 in", "mm": "0.001 mm"}
#: Names of contributions as a plan says them; others are said as they come.
_CONTRIBUTIONS = {
    "block_calibration": "calibration of {of}",
    "block_grade_limit": "grade limit of {of}",
    "center_distance_error_limit": "center distance of the plate",
    "roll_difference": "difference of the rolls",
    "roll_parallelism": "parallelism of the rolls",
    "face_parallelism": "parallelism of the face",
    "face_flatness": "flatness of the face",
    "table_flatness": "flatness of the table",
    "particle": "dirt under a roll",
    "temperature_error_limit_celsius": "temperature",
    "temperature_difference_celsius": "blocks warmer than plate",
    "axis_pitch_error_limit_arcsec": "pitch of the fixture's axis",
    "axis_yaw_error_limit_arcsec": "yaw of the fixture's axis",
    "wheel_face_error_limit_arcsec": "breakdown of the wheel's face",
    "block_expansion": "expansion of {of} blocks",
    "plate_expansion": "expansion of the plate",
    "adapter_tir": "adapter or collet",
    "fixture_tir": "spin fixture",
    "indicating_tir": "indicating",
}
#: Named by every runout, since no request of a plan states directions.
_DIRECTIONS = "high_spots"
_NOT_STATED = "not stated"

#: Of angle and runout together.
_FORECASTS = {
    "holds": "Forecast: angle and runout hold.",
    "may-not-hold": "Forecast: angle or runout may not hold.",
    "does-not-hold": "Forecast: angle or runout does not hold.",
    "not-stated": "Forecast: none, for no error was stated.",
}
#: Whether a check would show the least wrong block that matters.
_CATCHES = {
    True: "Catches a wrong block",
    False: "Misses a wrong block",
    None: "No wrong block to catch",
}

Rows = Sequence[tuple[str, str]]


def plan_text(answer: models.CenterJobAnswer, units: str) -> str:
    """Give the whole plan; `units` are those of the request."""
    plan = answer.result
    sections = [
        _heading(plan, units),
        _section("Cautions and notes", _advisories(answer.advisories)),
        _section("Setting", _table(_setting(plan, units))),
        _section("Error of the included angle", _table(_angle_budget(plan))),
        _section("Runout, full indicator movement", _table(_runout(plan.runout_budget, units))),
        _section("Feed", _table(_feed(plan.downfeed, units))),
        _section("Steps", _steps(plan)),
        _section("Checks", _checks(plan)),
        _section("What this stands on", _sources(answer.basis)),
    ]
    return "\n".join(line for section in sections for line in section)


def _heading(plan: models.CenterJobResult, units: str) -> list[str]:
    cone, shank = plan.cone, plan.shank
    kind = f"shank {shank.designation}" if shank.designation else "straight shank"
    return [
        *_wrapped(plan.job),
        "=" * min(len(plan.job), WIDTH),
        *_wrapped(
            f"{_angle(cone.included_angle, _tolerance(plan))} included, {cone.length:.4f} {units} "
            f"long; {kind}, held in {shank.held_in}. All lengths in {LENGTHS[units]}."
        ),
        *_wrapped(_FORECASTS.get(plan.forecast, _said(plan.forecast))),
        "",
    ]


def _advisories(advisories: Sequence[models.Advisory]) -> list[str]:
    """The heaviest first: who reads one line reads the one that stops the job."""
    return [
        line
        for severity, mark in _BY_WEIGHT.items()
        for advisory in advisories
        if advisory.severity == severity
        for line in _wrapped(f"{mark}: {advisory.message}", "", "  ")
    ]


def _setting(plan: models.CenterJobResult, units: str) -> Rows:
    setting, tolerance = plan.plate_setting, _tolerance(plan)
    fewest = ", the fewest there are" if setting.proved else ""
    rows = [
        ("plate angle", _angle(setting.plate_angle, tolerance / 2.0)),
        ("exact height", f"{setting.height:.{_DECIMALS.get(units, 5) + 1}f} {units}"),
        ("stack", f"{_stack(setting.blocks)} = {setting.total:.10g} {units}{fewest}"),
        ("included angle that it gives", _angle(setting.included_angle_from_stack, tolerance)),
        (
            f"{_BENCH_STEP.get(units, units)} more of stack",
            f"turns the included angle by {setting.included_angle_arcsec_per_step:.1f}″",
        ),
    ]
    if setting.actual_deviation != setting.deviation:
        rows.append(("its actual height", f"{setting.actual_height.value:.7f} {units}"))
    if plan.second_stack:
        rows.append(("second stack, to check it by", _stack(plan.second_stack)))
    mistake = plan.smallest_mistake_past_tolerance
    name = "least wrong block that matters"
    if mistake is None:
        rows.append((name, "none: no single one takes the angle out of its tolerance"))
    else:
        error = mistake.included_angle_error_arcsec
        effect = (
            "the plate cannot stand so" if error is None else f"{error:+.0f}″ of included angle"
        )
        rows.append((name, f"{mistake.wrung:.10g} for {mistake.meant:.10g}: {effect}"))
    return rows


def _angle_budget(plan: models.CenterJobResult) -> Rows:
    angle, setting = plan.angle_budget, plan.plate_setting
    error = angle.included_angle_error_arcsec
    used = angle.tolerance_used_percent
    judged = (
        _said(angle.forecast)
        if used is None
        else f"{used:.0f} % of it used: {_said(angle.forecast)}"
    )
    rows = [
        (
            _contribution(part.name, part.of),
            f"{_seconds(part.worst_case)}  {part.share_percent:5.1f} % of the spread",
        )
        for part in error.contributions
    ]
    if setting.actual_deviation:
        known = setting.included_angle_from_stack.degrees - plan.cone.included_angle.degrees
        rows.append(("known: the stack is not exact", _seconds(3_600.0 * known, " ")))
    rows += [
        ("expected error", _seconds(error.value, " ")),
        ("worst case", _seconds(error.worst_case)),
        (_covered(error), _seconds(error.expanded_uncertainty)),
        ("tolerance", f"{_seconds(angle.included_angle_tolerance_arcsec)}  {judged}"),
    ]
    return [*rows, *_not_counted(error.not_stated)]


def _runout(runout: models.PlannedRunout, units: str) -> Rows:
    def size(length: float | None) -> str:
        return _NOT_STATED if length is None else _small(length, units)

    tir = runout.tir
    rows = [
        *((_contribution(part.name), size(part.input_value)) for part in tir.contributions),
        ("worst case, all in line", size(tir.worst_case)),
        ("not passed in 95 of 100", size(tir.expanded_uncertainty)),
        ("limit", f"{size(runout.limit_tir)}  {_said(runout.forecast)}"),
        ("the same as eccentricity", size(runout.limit_eccentricity)),
        ("the same as zone diameter", size(runout.limit_zone_diameter)),
        ("the same read on the cone", size(runout.limit_tir_on_cone)),
    ]
    if runout.mend_first:
        rows.append(("the most comes from", _contribution(runout.mend_first)))
    return [*rows, *_not_counted(name for name in tir.not_stated if name != _DIRECTIONS)]


def _contribution(name: str, of: str | None = None) -> str:
    """A contribution in the words of the shop; `of` says which block or material."""
    which = "" if of is None else _said(of)
    return _CONTRIBUTIONS.get(name, name).format(of=which)


def _covered(error: models.ArcsecEstimate) -> str:
    """What the expanded uncertainty covers."""
    if error.coverage_probability is None:
        return "expanded uncertainty"
    return f"not passed in {100.0 * error.coverage_probability:.0f} of 100"


def _tolerance(plan: models.CenterJobResult) -> float:
    return plan.angle_budget.included_angle_tolerance_arcsec


def _angle(angle: models.Angle, tolerance_arcsec: float) -> str:
    """An angle to the second that its tolerance asks for: rounded by 1 % of it at most."""
    decimals = 0 if tolerance_arcsec >= 50.0 else 1 if tolerance_arcsec >= 5.0 else 2
    scale = 10**decimals
    minutes, rest = divmod(round(abs(angle.degrees) * 3_600 * scale), 60 * scale)
    seconds = f"{rest / scale:.{decimals}f}".zfill(decimals + 3 if decimals else 2)
    return f"{minutes // 60}°{minutes % 60:02d}'{seconds}\""


def _said(option: str) -> str:
    """An option as a sentence has it."""
    return option.replace("-no-source", ", no source").replace("-", " ")


def _seconds(angle_arcsec: float | None, sign: str = "±") -> str:
    """A small angle in its column; one that rounds to nothing has no sign of its own."""
    if angle_arcsec is None:
        return f" {_NOT_STATED}"
    return f"{sign}{round(angle_arcsec, 1) + 0.0:7.1f}″"


def _not_counted(names: Iterable[str]) -> Rows:
    listed = ", ".join(names)
    return [("not stated, so not counted", listed)] if listed else []


def _feed(feed: models.PlannedFeed, units: str) -> Rows:
    rows = [
        ("one pass of downfeed", _small(feed.downfeed_step, units)),
        ("takes off the diameter", _small(feed.off_diameter, units)),
        ("moves the point by", _small(feed.off_point, units)),
    ]
    if feed.steps_for_allowance is not None:
        rows.append(("passes for the whole allowance", str(feed.steps_for_allowance)))
    if feed.allowance_off_diameter is not None:
        rows.append(("which take off the diameter", _small(feed.allowance_off_diameter, units)))
    if feed.allowance_off_point is not None:
        rows.append(("and move the point by", _small(feed.allowance_off_point, units)))
    return rows


def _steps(plan: models.CenterJobResult) -> list[str]:
    lines: list[str] = []
    for step in plan.steps:
        lines += _wrapped(step.action, f"{step.number:2}. ", "    ")
        for caution in step.cautions:
            lines += _wrapped(caution, "    ! ", "      ")
    return lines


def _checks(plan: models.CenterJobResult) -> list[str]:
    lines: list[str] = []
    for check in plan.checks:
        lines += _wrapped(f"{check.check}.", "- ", "  ")
        lines += _wrapped(f"{check.how} Expect {check.expected}.", "  ", "  ")
        lines += _wrapped(f"{_CATCHES[check.catches_wrong_block]}: {check.reason}", "  * ", "    ")
        proves = "Can" if check.proves_tolerance else "Cannot"
        lines += _wrapped(f"{proves} prove the tolerance: {check.proof}", "  * ", "    ")
    return lines


def _sources(basis: models.Basis) -> list[str]:
    lines: list[str] = []
    for source in basis.sources:
        lines += _wrapped(f"{source.citation} ({_said(source.standing)})", "- ", "  ")
    return [*lines, f"- Halfangle, release {basis.release}"]


def _section(title: str, lines: Sequence[str]) -> list[str]:
    return [title, "-" * len(title), *lines, ""] if lines else []


def _table(rows: Rows) -> list[str]:
    return [
        line
        for name, value in rows
        for line in _wrapped(value, f"{name:<{_NAME_WIDTH}}", " " * _NAME_WIDTH)
    ]


def _wrapped(text: str, first: str = "", rest: str = "") -> list[str]:
    wrapped = textwrap.wrap(
        text, WIDTH, initial_indent=first, subsequent_indent=rest, break_on_hyphens=False
    )
    return wrapped or [first.rstrip()]


def _stack(blocks: Sequence[float]) -> str:
    return " + ".join(f"{block:.10g}" for block in blocks)


def _small(length: float, units: str) -> str:
    """A small length, to a tenth of what the bench reads."""
    return f"{length:.{_DECIMALS.get(units, 5)}f} {units}"
