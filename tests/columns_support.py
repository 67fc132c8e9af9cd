"""Rows of requests about an example, and the answers of the row form to hold columns against."""

import json
import random
from collections.abc import Mapping
from typing import Any

from pydantic import ValidationError

from halfangle_service.columns.asked import number_fields
from halfangle_service.columns.flat import flat_answer, flat_fields
from halfangle_service.errors import Refusal
from halfangle_service.operation import Operation
from halfangle_service.trade.angles import format_dms, parse_dms

AnyOperation = Operation[Any, Any]
#: What a row's answer says: its values, and severity, code and message of its advisories; None:
#: refused.
Said = tuple[dict[str, Any], tuple[tuple[str, str, str], ...]] | None

#: Other values of a row are the example's times these, and those that the shop knows.
_TIMES = (1.0, 1.0, 0.9, 1.1, 0.5, 2.0, 0.01, 30.0, -1.0, 1e-6, 1e6)
_ROUND = (0.0, 0.5, 1.0, 8.18, 30.0, 45.0, 60.0, 89.99, 90.0, 2.5, 1e-9, 1e5)


def some_rows(operation: AnyOperation, count: int, seed: int) -> dict[str, list[Any]]:
    """Columns of requests: some as the example, some far from it, out of bounds or with gaps."""
    draw = random.Random(f"{operation.name} {seed}")  # noqa: S311  not for secrets
    known = number_fields(operation.request)
    example = {name: value for name, value in operation.example.items() if name in known}
    columns: dict[str, list[Any]] = {name: [] for name in example}
    for _ in range(count):
        wild = draw.random() < 0.15
        for name, value in example.items():
            columns[name].append(_drawn(draw, _degrees(value), wild, known[name].is_angle))
    return columns


def same_for_all(operation: AnyOperation) -> dict[str, Any]:
    """What the example states that is no column of numbers."""
    known = number_fields(operation.request)
    # Drawings are made one by one.
    left_out = {*known, "formats"}
    return {name: value for name, value in operation.example.items() if name not in left_out}


def _degrees(value: Any) -> float:
    return parse_dms(value) if isinstance(value, str) else value


def _drawn(draw: random.Random, value: float, wild: bool, is_angle: bool) -> Any:
    if wild and draw.random() < 0.3:
        return draw.choice((None, draw.choice(_ROUND), value * draw.choice(_TIMES)))
    near = value * draw.uniform(0.8, 1.2)
    drawn = draw.choice((value, near, round(near, 2), round(near, 4)))
    if is_angle and draw.random() < 0.2:
        return format_dms(drawn)
    return drawn


def said_by_row(operation: AnyOperation, request: Mapping[str, Any]) -> Said:
    """What the row form answers to one request."""
    try:
        read = operation.request.model_validate_json(json.dumps(request))
        answer = json.loads(operation.answer_json(read))
    except (Refusal, ValidationError, ArithmeticError, ValueError):
        return None
    advised = tuple((a["severity"], a["code"], a["message"]) for a in answer["advisories"])
    return flat_answer(answer["result"], flat_fields(operation.result)), advised
