"""A center's plan written for a person at the machine, in 80 columns of plain text."""

import textwrap
from collections.abc import Iterator

from halfangle_client.generated import models

WIDTH = 80
_MARKS = {"note": "note", "caution": "CAUTION", "stop": "STOP"}


def plan_text(answer: models.CenterJobAnswer, units: str) -> str:
    """Give the whole plan; `units` are those of the request."""
    plan = answer.result
    parts = [
        _heading(plan),
        _setting(plan, units),
        _angle(plan),
        _runout(plan, units),
        _feed(plan, units),
        _steps(plan),
        _checks(plan),
        _advisories(answer),
        [*_wrapped(f"Halfangle release {answer.basis.release}")],
    ]
    return "\n".join("\n".join(part) for part in parts if part) + "\n"


def _heading(plan: models.CenterJobResult) -> list[str]:
    cone, shank = plan.cone, plan.shank
    held = shank.designation or "straight shank"
    return [
        plan.job,
        "=" * min(len(plan.job), WIDTH),
        *_wrapped(f"{cone.included_angle.dms} included; {held}, held in {shank.held_in}."),
        "",
    ]


def _setting(plan: models.CenterJobResult, units: str) -> list[str]:
    setting = plan.setting
    stack = " + ".join(f"{block:.10g}" for block in setting.blocks)
    rows = [
        ("Plate angle", setting.plate_angle.dms),
        ("Stack", f"{stack} = {setting.total:.10g} {units}"),
        ("Exact height", f"{setting.height:.7f} {units}"),
        ("One bench step", f"{setting.arcsec_per_step:.1f}″ of included angle"),
    ]
    if plan.second_stack:
        second = " + ".join(f"{block:.10g}" for block in plan.second_stack)
        rows.append(("To check it by", f"{second} {units}"))
    return _section("Setting", _table(rows))


def _angle(plan: models.CenterJobResult) -> list[str]:
    angle = plan.angle
    rows = [
        (line.name, f"±{line.worst_case_arcsec:7.1f}″   {line.share_percent:5.1f} % of variance")
        for line in angle.lines
    ]
    rows += [
        ("known offset", f" {angle.offset_arcsec + 0.0:7.1f}″"),
        ("worst case", f"±{angle.worst_case_arcsec:7.1f}″"),
        ("expanded (k = 2)", f"±{angle.expanded_uncertainty_arcsec:7.1f}″"),
        ("tolerance", f"±{angle.tolerance_arcsec:7.1f}″   {angle.verdict}"),
    ]
    return _section("Error of the included angle", _table(rows))


def _runout(plan: models.CenterJobResult, units: str) -> list[str]:
    runout = plan.runout
    rows = [(line.name, f"{line.tir:.5f} {units}") for line in runout.lines]
    rows += [
        ("worst case", f"{runout.worst_case_tir:.5f} {units}"),
        ("root sum of squares", f"{runout.root_sum_square_tir:.5f} {units}"),
        ("limit", f"{runout.limit_tir:.5f} {units}   {runout.verdict}"),
        ("limit read on the cone", f"{runout.read_on_cone_limit_tir:.5f} {units}"),
        ("mend first", runout.mend_first),
    ]
    return _section("Runout, full indicator movement", _table(rows))


def _feed(plan: models.CenterJobResult, units: str) -> list[str]:
    feed = plan.feed
    rows = [
        ("each step of", f"{feed.step:.5f} {units} downfeed takes"),
        ("off the diameter", f"{feed.off_diameter:.5f} {units}"),
        ("off the point", f"{feed.off_point:.5f} {units}"),
    ]
    if feed.steps_for_allowance is not None:
        rows.append(("for the allowance", f"{feed.steps_for_allowance} steps"))
    return _section("Feed", _table(rows))


def _steps(plan: models.CenterJobResult) -> list[str]:
    lines: list[str] = []
    for step in plan.steps:
        lines += _wrapped(step.action, first=f"{step.number:2}. ", rest="    ")
        for caution in step.cautions:
            lines += _wrapped(caution, first="    ! ", rest="      ")
    return _section("Steps", lines)


def _checks(plan: models.CenterJobResult) -> list[str]:
    lines: list[str] = []
    for check in plan.checks:
        mark = "catches a wrong block" if check.catches_wrong_block else "misses a wrong block"
        lines += _wrapped(f"{check.check} ({mark}).", first="- ", rest="  ")
        lines += _wrapped(f"{check.how} Expect {check.expected}. {check.why}", "  ", "  ")
    return _section("Checks", lines)


def _advisories(answer: models.CenterJobAnswer) -> list[str]:
    lines: list[str] = []
    for advisory in answer.advisories:
        lines += _wrapped(f"{_MARKS[advisory.severity]}: {advisory.message}", "", "  ")
    return _section("Mind", lines) if lines else []


def _section(title: str, lines: list[str]) -> list[str]:
    return [title, "-" * len(title), *lines, ""]


def _table(rows: list[tuple[str, str]]) -> list[str]:
    return [line for name, value in rows for line in _wrapped(value, f"{name:31} ", " " * 32)]


def _wrapped(text: str, first: str = "", rest: str = "") -> Iterator[str]:
    yield from textwrap.wrap(
        text, WIDTH, initial_indent=first, subsequent_indent=rest, break_long_words=True
    ) or [first.rstrip()]
