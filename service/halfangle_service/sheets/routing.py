"""A routing as CSV (RFC 4180): a line an operation, for systems that take in files."""

import csv
import io
from collections.abc import Iterable, Sequence
from typing import Literal

from halfangle_service.fields.advisories import Advisory
from halfangle_service.topics.jobs.plan.parts.feed import PlanAssumption
from halfangle_service.topics.jobs.routing.result import (
    JobRoutingResult,
    RoutingOperation,
    RoutingTool,
    RoutingValue,
)
from halfangle_service.trade.wording import plain

Delimiter = Literal["comma", "semicolon", "tab"]
_DELIMITERS: dict[Delimiter, str] = {"comma": ",", "semicolon": ";", "tab": "\t"}
#: Significant digits of a figure: all that a double holds without its noise.
_DIGITS = 12
#: Names of the columns, in order; a new one is added at the end.
COLUMNS = (
    "job",
    "pieces",
    "sequence",
    "code",
    "kind",
    "name",
    "text",
    "set_up_seconds",
    "run_seconds",
    "timed_by",
    "times_done",
    "timed_in",
    "tools",
    "values",
    "assumptions",
    "cautions",
    "stops",
    "advisories",
    "way",
    "forecast",
    "plan_fingerprint",
    "fingerprint",
    "release",
)


def routing_csv(
    routing: JobRoutingResult,
    advisories: Sequence[Advisory],
    fingerprint: str,
    release: str,
    delimiter: Delimiter = "comma",
) -> str:
    """The lines of a routing under their header; what repeats stands in each of them.

    Numbers have a decimal point; what is null is empty. A text keeps its line ends, quoted.
    """
    written = io.StringIO()
    writer = csv.DictWriter(written, COLUMNS, delimiter=_DELIMITERS[delimiter])
    writer.writeheader()
    alike = {
        "job": routing.job,
        "pieces": routing.pieces,
        "advisories": "; ".join(f"{one.severity} {one.code}" for one in advisories),
        "way": routing.way,
        "forecast": routing.forecast,
        "plan_fingerprint": routing.plan_fingerprint,
        "fingerprint": fingerprint,
        "release": release,
    }
    writer.writerows(alike | _line(operation) for operation in routing.operations)
    return written.getvalue()


def _line(operation: RoutingOperation) -> dict[str, str | int | None]:
    """The cells of an operation's own."""
    return {
        "sequence": operation.sequence,
        "code": operation.code,
        "kind": operation.kind,
        "name": operation.name,
        "text": operation.text,
        "set_up_seconds": _number(operation.set_up_seconds),
        "run_seconds": _number(operation.run_seconds),
        "timed_by": operation.timed_by,
        "times_done": operation.times_done,
        "timed_in": operation.timed_in,
        "tools": _joined(map(_tool, operation.tools)),
        "values": _joined(map(_value, operation.values)),
        "assumptions": _joined(map(_assumption, operation.assumptions)),
        "cautions": "\n".join(operation.cautions),
        "stops": "\n".join(operation.stops),
    }


def _number(value: float | None) -> str:
    return "" if value is None else plain(value, _DIGITS)


def _tool(tool: RoutingTool) -> str:
    told = (tool.tool, tool.name, tool.detail and f"({tool.detail})")
    return " ".join(part for part in told if part)


def _value(value: RoutingValue) -> str:
    return f"{value.name}={_number(value.value)} {value.unit}"


def _assumption(taken: PlanAssumption) -> str:
    return f"{taken.name}={_number(taken.assumed_value)} {taken.input_unit}"


def _joined(parts: Iterable[str]) -> str:
    return "; ".join(parts)
