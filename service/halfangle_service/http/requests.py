"""Requests by JSON body."""

import json
import re
from typing import Any

from pydantic import ValidationError

from halfangle_service.fields import RequestModel
from halfangle_service.http.guards.bounds import refuse_too_many_parts
from halfangle_service.http.problems import ProblemError, problem_of_validation
from halfangle_service.http.repeated import named_twice, noting_repetition, repetition
from halfangle_service.operation import Operation

AnyOperation = Operation[Any, Any]

_TOO_MANY_DIGITS = re.compile(rb"[0-9]{4000,}")


def read_request(operation: AnyOperation, body: bytes) -> RequestModel:
    """Validate a JSON body; raises ProblemError where it is wrong."""
    refuse_too_many_parts(operation.request, body)
    try:
        request: RequestModel = operation.request.model_validate_json(body)
    except ValidationError as error:
        raise _problem_of(error, operation, body) from None
    refuse_repeated_names(request, body)
    return request


def _problem_of(error: ValidationError, operation: AnyOperation, body: bytes) -> ProblemError:
    """Map what is wrong with a body.

    The parser gives up at an integer of too many digits without naming its field; with infinity in
    its place the field is found, and refused all the same.
    """
    if "number out of range" in error.errors(include_url=False)[0]["msg"]:
        shorter = _TOO_MANY_DIGITS.sub(b"1e999", body)
        try:
            operation.request.model_validate_json(shorter)
        except ValidationError as found:
            return problem_of_validation(found, shorter, operation.request.model_fields)
    return problem_of_validation(error, body, operation.request.model_fields)


def refuse_repeated_names(request: RequestModel, body: bytes) -> None:
    """Refuse an object that names a field twice: which of the two was meant cannot be known.

    Pydantic keeps the last one silently. A body with no more colons than it has distinct fields
    cannot repeat one, which spares most requests the second reading.
    """
    if body.count(b":") == len(request.model_fields_set):
        return
    try:
        sent = json.loads(body, object_pairs_hook=noting_repetition)
    except (ValueError, RecursionError):
        raise ProblemError(
            "not-json", "The body nests too deeply, or holds too long a number."
        ) from None
    place = repetition(sent, ())
    if place is not None:
        raise named_twice(place)
