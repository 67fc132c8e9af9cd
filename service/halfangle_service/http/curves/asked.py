"""Reads what a curve asks; whatever is wrong of all its points is refused before any is tried."""

import json
import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from difflib import get_close_matches
from typing import Any

import numpy as np
from pydantic import ValidationError
from pydantic_core import to_json

from halfangle_service.columns import FlatField, flat_fields
from halfangle_service.columns.asked import number_fields
from halfangle_service.http.curves.model import (
    MOST_POINTS,
    MOST_SEARCHED,
    MOST_TURNS,
    CurveRange,
    CurveRequest,
)
from halfangle_service.http.guards.bounds import refuse_too_many_parts
from halfangle_service.http.problems import ProblemError, pointer_to, problem_of_validation
from halfangle_service.http.repeated import named_twice, noting_repetition, repetition
from halfangle_service.http.tables.flat import DOCUMENTS
from halfangle_service.operation import Operation
from halfangle_service.trade.columns import Floats

AnyOperation = Operation[Any, Any]
_OVER, _COLUMNS, _REQUEST = "over", "columns", "request"
_MOST_NAMED = 12
#: What an estimate has that is found by a search, and what asks for drawings.
_SEARCHED, _DRAWN = "expanded_uncertainty", "formats"


@dataclass(frozen=True, slots=True)
class Curve:
    """What is worked out: the numbers of each axis, the rest of the request, the values wanted.

    `turns`: for how many requests it counts in its key's pace.
    """

    axes: Mapping[str, Floats]
    request: Mapping[str, Any]
    wanted: tuple[FlatField, ...]
    turns: int

    @property
    def shape(self) -> tuple[int, ...]:
        """Numbers on each axis."""
        return tuple(len(values) for values in self.axes.values())

    def points(self) -> dict[str, Floats]:
        """The numbers of every point, the last axis running fastest."""
        grid = np.meshgrid(*self.axes.values(), indexing="ij")
        return {name: values.ravel() for name, values in zip(self.axes, grid, strict=True)}


def read_curve(operation: AnyOperation, body: bytes) -> Curve:
    """Read a body; raises ProblemError, whose pointers lead into it."""
    refuse_too_many_parts(CurveRequest, body)
    try:
        asked = CurveRequest.model_validate_json(body)
    except ValidationError as error:
        raise problem_of_validation(error, body, CurveRequest.model_fields) from None
    place = repetition(json.loads(body, object_pairs_hook=noting_repetition), ())
    if place is not None:
        raise named_twice(place)
    _require_numbers(operation, asked)
    axes = {name: _numbers(name, over) for name, over in asked.over.items()}
    points = int(np.prod([len(values) for values in axes.values()]))
    most = _most_points(operation)
    if points > most:
        raise _wrong("beyond-bound", f"should be at most {most} points; got {points}", _OVER)
    wanted = tuple(_wanted(operation, asked.columns))
    curve = Curve(axes, asked.request, wanted, math.ceil(points * MOST_TURNS / most))
    _require_rest(operation, curve)
    return curve


def _most_points(operation: AnyOperation) -> int:
    """Points that are worked out in one request: what bounds its work."""
    searched = any(field.path[-1] == _SEARCHED for field in flat_fields(operation.result).values())
    return MOST_SEARCHED if searched else MOST_POINTS


def _require_numbers(operation: AnyOperation, asked: CurveRequest) -> None:
    """Refuse what cannot run: no field, no number, or stated in the request too."""
    known = number_fields(operation.request)
    for name in asked.over:
        if name in known and name in asked.request:
            message = "is stated in the request too: what runs has no one value"
            raise _wrong("disagreement", message, _OVER, name)
        if name not in known:
            is_field = name in operation.request.model_fields
            what = "is no number" if is_field else f"is not a field of {operation.name}"
            raise _wrong("invalid-request", f"{what}; {_meant(name, known)}", _OVER, name)


def _wanted(operation: AnyOperation, names: Iterable[str]) -> Iterable[FlatField]:
    known = {n: f for n, f in flat_fields(operation.result).items() if f.path[-1] not in DOCUMENTS}
    for place, name in enumerate(names):
        if name not in known:
            message = f"{name[:60]!r} is no single value of the result; {_meant(name, known)}"
            raise _wrong("no-such-value", message, _COLUMNS, place)
        yield known[name]


def _numbers(name: str, over: CurveRange | list[float]) -> Floats:
    """The numbers of an axis: tenths of a range are tenths, as they would be typed."""
    if isinstance(over, list):
        return np.array(over, dtype=np.float64)
    if not over.from_ < over.to:
        message = f"should be greater than `from`, {over.from_}; got {over.to}"
        raise _wrong("invalid-request", message, _OVER, name, "to")
    with np.errstate(over="ignore", invalid="ignore"):
        steps = np.linspace(over.from_, over.to, over.count)
    if not np.isfinite(steps).all():
        raise _wrong("invalid-request", "is too far from `from`", _OVER, name, "to")
    return np.array([float(format(step, ".12g")) for step in steps.tolist()])


def _require_rest(operation: AnyOperation, curve: Curve) -> None:
    """Refuse what is wrong of the request whatever runs: it would be refused at every point."""
    if curve.request.get(_DRAWN):
        raise _wrong("invalid-request", "is not for curves: no point is drawn", _REQUEST, _DRAWN)
    first = {name: float(values[0]) for name, values in curve.axes.items()}
    body = to_json({**curve.request, **first})
    refuse_too_many_parts(operation.request, body)
    try:
        operation.request.model_validate_json(body)
    except ValidationError as error:
        problem = problem_of_validation(error, body, operation.request.model_fields)
    else:
        return
    named = [e for e in problem.errors if e["pointer"][1:] not in curve.axes]
    if named:
        moved = [{**e, "pointer": f"/{_REQUEST}{e['pointer']}"} for e in named]
        detail = "; ".join(f"{e['pointer']}: {e['message']}" for e in moved[:3])
        raise ProblemError(problem.name, f"{detail}.", errors=moved)


def _meant(name: str, known: Iterable[str]) -> str:
    """Names near to one that is not known, else those that there are."""
    names = list(known)
    near = [one for one in names if name and name in one][:3] or get_close_matches(name, names, 3)
    if near:
        return f"did you mean {' or '.join(near)}?"
    rest = " …" if len(names) > _MOST_NAMED else ""
    return f"there is: {', '.join(names[:_MOST_NAMED])}{rest}"


def _wrong(kind: str, message: str, *place: str | int) -> ProblemError:
    pointer = pointer_to(*place)
    stop = "" if message.endswith("?") else "."
    return ProblemError(
        kind, f"{pointer}: {message}{stop}", errors=[{"pointer": pointer, "message": message}]
    )
