"""Problem documents (RFC 9457) for every error of every route, the framework's own included."""

import json
import math
from collections.abc import Iterable, Mapping
from decimal import Decimal
from difflib import get_close_matches
from typing import Any, get_args
from urllib.parse import quote

from pydantic import BaseModel, ConfigDict, Field, ValidationError
from pydantic_core import ErrorDetails, from_json

from halfangle_service.errors import Refusal
from halfangle_service.fields.glossary import glossary
from halfangle_service.trade.units import Units
from halfangle_service.trade.wording import plain

PROBLEM_MEDIA_TYPE = "application/problem+json"
_LONGEST_INSTANCE = 200
_LONGEST_POINTER = 300
_LONGEST_MESSAGE = 400
_LONGEST_DETAIL = 2_000
_MOST_ERRORS = 50
_LONGEST_COMPARED = 60
_LONGEST_SHOWN = 40
#: Most bytes of all errors together: fifty pointers of signs that JSON escapes would be 90 kB.
_MOST_ERROR_BYTES = 10_000

#: Name, status and title of every problem type; its `type` is `/problems/<name>`.
PROBLEM_TYPES: dict[str, tuple[int, str]] = {
    "not-json": (400, "The body is not JSON"),
    "bad-request": (400, "The request could not be read"),
    "unauthorized": (401, "An API key is needed"),
    "not-found": (404, "There is nothing at this address"),
    "method-not-allowed": (405, "This address does not take this method"),
    "not-acceptable": (406, "The answer has no form that the request accepts"),
    "too-slow": (408, "The request did not arrive in time"),
    "content-too-large": (413, "The body is too large"),
    "unsupported-media-type": (415, "The body is not sent as application/json"),
    "unsupported-coding": (415, "The body is encoded on the way"),
    "invalid-request": (422, "A field of the request is wrong"),
    "impossible": (422, "No geometry or physics fulfils the request"),
    "disagreement": (422, "Values given together contradict one another"),
    "unreachable": (422, "The means given do not reach what is wanted"),
    "beyond-bound": (422, "The request asks for more work than one request may"),
    "no-such-value": (422, "The result holds no such single value"),
    "stopped": (422, "The answer says stop: do not run this"),
    "not-finite": (422, "The numbers lead out of the range of arithmetic"),
    "too-many-requests": (429, "The key asks too often"),
    "internal-error": (500, "The service failed"),
    "not-installed": (501, "This installation lacks what makes the form asked for"),
    "overloaded": (503, "The service has too much to do"),
    "stopping": (503, "The service is stopping"),
}


class FieldProblem(BaseModel):
    """One field that is wrong, and how."""

    pointer: str = Field(
        description="JSON pointer (RFC 6901) into the request.", examples=["/center_distance"]
    )
    message: str = Field(description="What was wanted and what came.")


class Problem(BaseModel):
    """A problem document (RFC 9457); further members hold facts that help to mend the request."""

    model_config = ConfigDict(extra="allow")

    type: str = Field(
        description="Which problem it is, as a relative URI.", examples=["/problems/impossible"]
    )
    title: str = Field(description="The problem type in words.")
    status: int = Field(description="HTTP status.", ge=400, le=599)
    detail: str = Field(description="What is wrong with this request.")
    instance: str = Field(description="Path of the request.")
    errors: list[FieldProblem] = Field(description="Fields concerned; empty where none is.")


class ProblemError(Exception):
    """An error of HTTP's own: the name of its problem type, the detail, and any headers."""

    def __init__(
        self,
        name: str,
        detail: str,
        *,
        errors: list[dict[str, str]] | None = None,
        headers: Mapping[str, str] | None = None,
        more: Mapping[str, object] | None = None,
    ) -> None:
        super().__init__(detail)
        self.name = name
        self.detail = detail
        self.errors = errors or []
        self.headers = dict(headers or {})
        self.more = dict(more or {})


def stopping() -> ProblemError:
    """What is said where the server cancels a request because the time for a stop is over.

    The server itself would send plain text.
    """
    return ProblemError(
        "stopping", "The service stops, and this took too long.", headers={"Retry-After": "5"}
    )


class CallerGone(Exception):
    """The caller went away before there was an answer; nobody is told."""


def problem_body(error: ProblemError, path: str) -> tuple[int, bytes]:
    """Give status and body of the problem document for an error at a path."""
    status, title = PROBLEM_TYPES[error.name]
    document = {
        "type": f"/problems/{error.name}",
        "title": title,
        "status": status,
        "detail": shortened(error.detail),
        "instance": quote(path[:_LONGEST_INSTANCE]),
        "errors": _within_bound(error.errors),
    }
    whole = {**document, **error.more, **document}
    return status, json.dumps(whole, ensure_ascii=False).encode(errors="replace")


def shortened(detail: str) -> str:
    """A detail as a problem document holds it."""
    return _cut(detail, _LONGEST_DETAIL)


def _cut(text: str, most: int) -> str:
    """A text, cut where it is longer: whatever a request holds, it is not sent back at length."""
    return text if len(text) <= most else text[: most - 1] + "…"


def _within_bound(errors: list[dict[str, str]]) -> list[dict[str, str]]:
    """The first errors, so many as stay short together."""
    kept: list[dict[str, str]] = []
    room = _MOST_ERROR_BYTES
    for error in errors[:_MOST_ERRORS]:
        short = {**error, "message": _cut(error["message"], _LONGEST_MESSAGE)}
        room -= len(json.dumps(short, ensure_ascii=False).encode(errors="replace"))
        if room < 0:
            break
        kept.append(short)
    return kept


def pointer_to(*parts: str | int) -> str:
    """JSON pointer (RFC 6901) to the value that these parts lead to, of bounded length.

    >>> pointer_to("a/b", 0, "~c")
    '/a~1b/0/~0c'
    """
    escaped = (str(part).replace("~", "~0").replace("/", "~1") for part in parts)
    return "".join("/" + part for part in escaped)[:_LONGEST_POINTER]


def problem_of_refusal(refusal: Refusal) -> ProblemError:
    """Map an error of the trade: one map for all of them, by its kind."""
    errors = [
        {"pointer": "/" + field.replace("~", "~0").lstrip("/"), "message": message}
        for field, message in refusal.fields.items()
    ]
    return ProblemError(refusal.kind, refusal.detail, errors=errors, more=refusal.more)


def problem_of_validation(
    error: ValidationError, body: bytes, known: Iterable[str] = ()
) -> ProblemError:
    """Map what pydantic found wrong: 400 where it is no JSON at all, else 422 with pointers.

    `known` are the request's own fields, to name those that an unknown one may have meant.
    """
    fields = tuple(known)
    details = error.errors(include_url=False)
    if details[0]["type"] == "json_invalid":
        return ProblemError("not-json", f"{details[0]['msg']}.")
    sent = from_json(body)
    errors = [
        {"pointer": _pointer(detail, sent), "message": _message(detail, fields, sent)}
        for detail in details[:_MOST_ERRORS]
    ]
    named = "; ".join(f"{e['pointer'] or 'the body'}: {e['message']}" for e in errors[:3])
    rest = f"; and {len(details) - 3} more" if len(details) > 3 else ""
    return ProblemError("invalid-request", f"{named}{rest}.", errors=errors)


def _pointer(detail: ErrorDetails, sent: Any) -> str:
    """Pointer to the field; parts of the location that name no field (unions) are left out."""
    parts: list[str | int] = []
    value = sent
    location = detail["loc"]
    for position, part in enumerate(location):
        missing = position == len(location) - 1 and detail["type"] == "missing"
        if isinstance(value, dict) and isinstance(part, str) and (part in value or missing):
            parts.append(part)
            value = value.get(part)
        elif isinstance(value, list) and isinstance(part, int) and part < len(value):
            parts.append(part)
            value = value[part]
    if detail["type"] in {"union_tag_invalid", "union_tag_not_found"}:
        # It is the field that chooses among the forms of an object which is wrong or missing.
        parts.append(detail["ctx"]["discriminator"].strip("'"))
    return pointer_to(*parts)


def _meant(location: tuple[str | int, ...], fields: tuple[str, ...]) -> str:
    """Name the fields that an unknown one at the top may have meant: a bare `angle`, a misspelling.

    >>> _meant(("angle",), ("units", "included_angle", "half_angle"))
    '; did you mean included_angle or half_angle?'
    """
    sent = location[0]
    if len(location) != 1 or not isinstance(sent, str) or not 3 <= len(sent) <= 60:
        return ""
    meant = [name for name in fields if sent in name] or get_close_matches(sent, fields, n=2)
    return f"; did you mean {' or '.join(meant[:3])}?" if meant else ""


def nearest(name: str, known: Iterable[str], most: int = 2) -> str:
    """Words that name what may have been meant, so many at most; none where nothing is near."""
    close = get_close_matches(name[:_LONGEST_COMPARED], known, n=most)
    return f"; did you mean {' or '.join(close)}" if close else ""


def _message(detail: ErrorDetails, fields: tuple[str, ...], sent: Any) -> str:
    """Say what was wanted and, where it is short, what came."""
    if detail["type"] == "missing":
        return "is required and was not sent"
    if detail["type"] == "extra_forbidden":
        return "is not a field of this request" + _meant(detail["loc"], fields)
    message = detail["msg"].replace("Input should be", "should be").removeprefix("Value error, ")
    came = detail["input"]
    if detail["type"] in _BOUND_OF:
        words = message[: message.rindex(" ")]
        message = f"{words} {_bound(detail, sent)}"
    elif detail["type"] == "union_tag_invalid":
        # Pydantic's own words repeat what came in full.
        message = f"should be one of {detail['ctx']['expected_tags']}"
        came = detail["ctx"]["tag"]
    elif detail["type"] in {"too_long", "too_short"}:
        return _entries(detail)
    elif detail["type"] == "union_tag_not_found":
        return "is required and was not sent"
    if isinstance(came, bool | int | float | str) or came is None:
        message += f"; got {_shown(came)}"
    return message


#: Where pydantic says which bound was passed.
_BOUND_OF = {
    "greater_than": "gt",
    "greater_than_equal": "ge",
    "less_than": "lt",
    "less_than_equal": "le",
}
_WRITTEN = {"degree": "°", "arcsecond": "″", "percent": " %", "celsius": " °C"}


def _bound(detail: ErrorDetails, sent: Any) -> str:
    """Write a bound with the unit of its field, to digits that a person reads."""
    names = [part for part in detail["loc"] if isinstance(part, str) and part in glossary()]
    unit = glossary()[names[-1]].unit if names else ""
    bound = plain(detail["ctx"][_BOUND_OF[detail["type"]]])
    units = sent.get("units") if isinstance(sent, dict) else None
    if unit == "length" and units in get_args(Units):
        return f"{bound} {units}"
    return bound + _WRITTEN.get(unit, "")


def _shown(came: float | str | None) -> str:
    """What came, where it is short; a number without an exponent, unless that takes a line.

    >>> _shown(-5e-05), _shown(1e308), _shown(30.0), _shown("3"), _shown(None)
    ('-0.00005', '1e+308', '30.0', '"3"', 'null')
    """
    shown = json.dumps(came, ensure_ascii=False)
    if isinstance(came, float) and math.isfinite(came):
        decimal = format(Decimal(shown), "f")
        return decimal if len(decimal) <= _LONGEST_SHOWN else shown
    return shown if len(shown) <= _LONGEST_SHOWN else shown[: _LONGEST_SHOWN - 3] + "…"


def _entries(detail: ErrorDetails) -> str:
    """Say how many entries a list should have, and how many came."""
    bounds = detail["ctx"]
    most = "max_length" in bounds
    bound = bounds["max_length" if most else "min_length"]
    came = bounds.get("actual_length")
    # A list that is far too long is not counted to its end.
    shown = f"; got {came}" if came is not None else ""
    entries = "entry" if bound == 1 else "entries"
    return f"should have at {'most' if most else 'least'} {bound} {entries}{shown}"
