"""Which numbers of a request lead out of the range of arithmetic, each within its own bounds."""

import math
from collections.abc import Iterator
from typing import Any

from pydantic import ValidationError
from pydantic_core import to_json

from halfangle_service.errors import Refusal
from halfangle_service.fields import RequestModel
from halfangle_service.http.problems import ProblemError, pointer_to
from halfangle_service.operation import Operation
from halfangle_service.trade.wording import plain

AnyOperation = Operation[Any, Any]
Place = tuple[str | int, ...]

#: Numbers tried, those farthest from 1 first: each try is a calculation.
_MOST_TRIED = 6
#: Numbers named where none by itself is the cause.
_MOST_NAMED = 3
#: Smaller numbers are zeros to a reader. No field takes one that is too large to be written out.
_LEAST_SHOWN = 1e-9


def not_finite(operation: AnyOperation, request: RequestModel) -> ProblemError:
    """Refuse a request whose result is no finite number, and name the fields that lead there.

    A field is named where the calculation stays in range with the example's value in its place.
    Where that can be said of none, or would take long, the numbers farthest from 1 are named.
    """
    sent = request.model_dump(mode="json", exclude_unset=True)
    farthest = sorted(_numbers(sent, ()), key=lambda found: -abs(math.log10(abs(found[1]))))
    errors = []
    if operation.heavy is False:
        for place, number in farthest[:_MOST_TRIED]:
            usual = _usual(operation, place)
            if _stays_in_range(operation, _with(sent, place, usual)):
                message = f"{_shown(number)} leads there; {_shown(usual)} does not"
                errors.append({"pointer": pointer_to(*place), "message": message})
    if not errors:
        for place, number in farthest[:_MOST_NAMED]:
            message = f"{_shown(number)} is among the farthest from 1"
            errors.append({"pointer": pointer_to(*place), "message": message})
    named = "; ".join(f"{error['pointer']}: {error['message']}" for error in errors)
    return ProblemError(
        "not-finite",
        "These values together lead out of the range of floating-point arithmetic"
        + (f": {named}." if named else "."),
        errors=errors,
    )


def _shown(number: float) -> str:
    """Write a number as a sentence has it: one that would need an exponent is named by its size."""
    return plain(number, 15) if abs(number) >= _LEAST_SHOWN else "a number so near 0"


def _numbers(value: Any, place: Place) -> Iterator[tuple[Place, float]]:
    """Numbers of a request other than 0, each with its place."""
    if isinstance(value, dict):
        for name, part in value.items():
            yield from _numbers(part, (*place, name))
    elif isinstance(value, list):
        for position, part in enumerate(value):
            yield from _numbers(part, (*place, position))
    elif isinstance(value, int | float) and not isinstance(value, bool) and value:
        yield place, value


def _usual(operation: AnyOperation, place: Place) -> float:
    """The example's number at a place, or 1 where it has none."""
    value: Any = operation.example
    try:
        for part in place:
            value = value[part]
    except (KeyError, IndexError, TypeError):
        return 1
    is_number = isinstance(value, int | float) and not isinstance(value, bool)
    return value if is_number else 1


def _with(value: Any, place: Place, number: float) -> Any:
    """A request with another number at one place."""
    if not place:
        return number
    first, rest = place[0], place[1:]
    if isinstance(value, dict):
        return {n: _with(p, rest, number) if n == first else p for n, p in value.items()}
    return [_with(p, rest, number) if n == first else p for n, p in enumerate(value)]


def _stays_in_range(operation: AnyOperation, sent: Any) -> bool:
    """True where a request is answered or refused in the words of the trade."""
    try:
        changed = operation.request.model_validate_json(to_json(sent))
        operation.calculate(changed)
    except Refusal:
        return True
    except (ArithmeticError, ValidationError):
        return False
    return True
