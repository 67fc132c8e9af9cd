"""Works out a curve: columns where the operation gives them, else point by point."""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field
from typing import Any

import numpy as np
from pydantic_core import from_json, to_json

from halfangle_service.columns import AskedColumns, FlatField, columns_of, flat_answer
from halfangle_service.errors import Refusal
from halfangle_service.fields.schemas import schema_of
from halfangle_service.http.calculating import AnyOperation, answer_request
from halfangle_service.http.curves.asked import Curve, read_curve
from halfangle_service.http.picks import stands_at_stop
from halfangle_service.http.problems import ProblemError, problem_body, problem_of_refusal
from halfangle_service.http.requests import read_request

Json = dict[str, Any]
_STOP = "stop"


@dataclass
class Found:
    """What is gathered of the points: values by name, what is refused, what is advised."""

    values: dict[str, list[Any]]
    refused: dict[tuple[Any, ...], list[int]] = field(default_factory=dict)
    problems: dict[tuple[Any, ...], ProblemError] = field(default_factory=dict)
    advised: dict[tuple[str, str], list[int]] = field(default_factory=dict)


def curve_json(
    operation: AnyOperation, body: bytes, take_turns: Callable[[int], object] = lambda _: None
) -> bytes:
    """Answer a curve as JSON; raises ProblemError where it is wrong as a whole.

    `take_turns` is told for how many requests it counts, before it is worked out.
    """
    curve = read_curve(operation, body)
    take_turns(curve.turns)
    points = curve.points()
    asked = AskedColumns(operation.request, {**curve.request, **points})
    found = _by_columns(operation, asked, curve.wanted)
    stopped = _silence_stops(found)
    refused = sum(map(len, found.refused.values()))
    return to_json(
        {
            "operation": operation.name,
            "shape": list(curve.shape),
            "axes": _axes(operation, curve),
            "columns": [
                {"name": f.name, "unit": f.unit, "values": found.values[f.name]}
                for f in curve.wanted
            ],
            "counts": {
                "points": asked.rows,
                "ok": asked.rows - refused - len(stopped),
                "refused": refused,
                "with_stop": len(stopped),
            },
            "refusals": [
                {
                    "count": len(rows),
                    "points": _runs(rows),
                    "problem": from_json(problem_body(found.problems[key], operation.path)[1]),
                }
                for key, rows in found.refused.items()
            ],
            "advisories": [
                {
                    **_said(operation, asked, rows[0], *key),
                    "count": len(rows),
                    "points": _runs(rows),
                }
                for key, rows in found.advised.items()
            ],
            "basis": from_json(operation.grounds),
        }
    )


def _by_columns(operation: AnyOperation, asked: AskedColumns, wanted: Iterable[FlatField]) -> Found:
    """Values of all points: by columns, and of those that these leave by the row form."""
    fields = {f.name: f for f in wanted}
    answered = columns_of(operation, asked, fields, in_words=False)
    found = Found({name: _plain(column) for name, column in answered.columns.items()})
    for which, advised in enumerate(answered.advised):
        rows = np.flatnonzero((answered.advised_of == which) & ~answered.left).tolist()
        for severity, code in advised if rows else ():
            found.advised.setdefault((severity, code), []).extend(rows)
    for row in np.flatnonzero(answered.left).tolist():
        try:
            answer = _answer(operation, asked, row)
        except ProblemError as error:
            key = (error.name, *sorted(e["pointer"] for e in error.errors))
            found.refused.setdefault(key, []).append(row)
            found.problems.setdefault(key, error)
            continue
        for name, value in flat_answer(answer["result"], fields).items():
            found.values[name][row] = value
        for a in answer["advisories"]:
            found.advised.setdefault((a["severity"], a["code"]), []).append(row)
    for rows in found.advised.values():
        rows.sort()
    return found


def _answer(operation: AnyOperation, asked: AskedColumns, row: int) -> Json:
    """The row form's answer at a point; raises ProblemError where it is refused."""
    request = read_request(operation, to_json(asked.request_of(row)))
    try:
        answer: Json = from_json(answer_request(operation, request))
    except Refusal as refusal:
        raise problem_of_refusal(refusal) from None
    return answer


def _plain(column: Any) -> list[Any]:
    """Values of a column, None for what is null."""
    return [None if value != value else value for value in column.tolist()]  # noqa: PLR0124  NaN


def _silence_stops(found: Found) -> set[int]:
    """Take back the values of points whose answer says stop, but judgements that do not say yes."""
    stopped = {
        row for (severity, _), rows in found.advised.items() if severity == _STOP for row in rows
    }
    for name, values in found.values.items():
        for row in stopped:
            if not stands_at_stop(name, values[row]):
                values[row] = None
    return stopped


def _axes(operation: AnyOperation, curve: Curve) -> list[Json]:
    properties = schema_of(operation.request)["properties"]
    return [
        {"field": name, "unit": properties[name].get("x-unit"), "values": values.tolist()}
        for name, values in curve.axes.items()
    ]


def _said(
    operation: AnyOperation, asked: AskedColumns, row: int, severity: str, code: str
) -> Mapping[str, str]:
    """An advisory in the words of one point."""
    advisories: list[dict[str, str]] = _answer(operation, asked, row)["advisories"]
    return next(a for a in advisories if (a["severity"], a["code"]) == (severity, code))


def _runs(rows: list[int]) -> list[list[int]]:
    """First and last of each unbroken run of ascending numbers.

    >>> _runs([0, 1, 2, 5, 7, 8])
    [[0, 2], [5, 5], [7, 8]]
    """
    places = np.array(rows)
    ends = np.flatnonzero(np.diff(places) > 1)
    firsts = places[np.concatenate([[0], ends + 1])]
    lasts = places[np.concatenate([ends, [len(rows) - 1]])]
    return [list(run) for run in zip(firsts.tolist(), lasts.tolist(), strict=True)]
