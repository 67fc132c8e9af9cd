"""What all operations of the contract have in common: answers, refusals, headers, the key."""

from collections import defaultdict
from collections.abc import Iterable
from importlib import import_module
from typing import Any

from pydantic import BaseModel

from halfangle_service import __version__
from halfangle_service.fields.glossary import advisory_meanings
from halfangle_service.http.contract.shared import REFERENCE
from halfangle_service.http.problems import PROBLEM_MEDIA_TYPE, PROBLEM_TYPES

Json = dict[str, Any]

API_KEY = "ApiKey"
SECURITY_SCHEMES: Json = {
    API_KEY: {
        "type": "apiKey",
        "in": "header",
        "name": "X-API-Key",
        "description": "Asked for only where the installation has keys.",
    }
}
#: Where the stored answer to an operation's example is served. It is a word of our own: generators
#: of types fetch an `externalValue` from the disk, and fail.
EXAMPLE_PATH = "/examples/{operation}"

HEADERS: Json = {
    "X-Request-ID": {
        "description": "Name of this exchange in the service's log: the one sent, or one made.",
        "schema": {"type": "string"},
    },
    "ETag": {
        "description": "Strong tag of these bytes; sent back as If-None-Match it is met by 304.",
        "schema": {"type": "string"},
    },
    "Retry-After": {
        "description": "Seconds after which to try again.",
        "schema": {"type": "integer", "minimum": 0},
    },
    "Allow": {"description": "Methods of this address.", "schema": {"type": "string"}},
    "WWW-Authenticate": {
        "description": "Which key is asked for, and in which header.",
        "schema": {"type": "string"},
    },
    "Advisories": {
        "description": "With a picked value: codes of the answer's advisories, each with its "
        "severity, as a list of tokens (RFC 9651); absent where there are none.",
        "schema": {"type": "string"},
        "example": "wheel-safety;severity=caution, steep-angle;severity=note",
    },
}
#: Headers that come with refusals of one status alone.
_OF_STATUS = {401: "WWW-Authenticate", 405: "Allow", 503: "Retry-After"}
#: Other statuses of refusals, of how a request came and of the service, stand together.
_OTHERS = {4: "4XX", 5: "5XX"}
_NAMED = frozenset({400, 401, 404, 422})


def information(description: str) -> Json:
    """Title and release; who to ask is whoever runs the installation, and no licence is given."""
    return {
        "title": "Halfangle",
        "version": __version__,
        "summary": "Toolroom calculations with their limits, error budget and source.",
        "description": description,
        "contact": {"name": "Whoever runs this installation"},
        "license": {"name": "All rights reserved"},
    }


def described_tags(topics: Iterable[str], catalogue: str) -> list[Json]:
    """Each topic in the words of its package, and the catalogue."""
    packages = ((topic, import_module(f"halfangle_service.topics.{topic}")) for topic in topics)
    described = [{"name": t, "description": (p.__doc__ or "").strip()} for t, p in packages]
    return [*described, {"name": catalogue, "description": "Every operation, and how it is asked."}]


def problem_types() -> Json:
    """Status and meaning of each problem type, by the name that ends its `type`."""
    return {name: {"status": s, "meaning": title} for name, (s, title) in PROBLEM_TYPES.items()}


def advisories() -> Json:
    """Severity and meaning of each advisory, by its code."""
    return {
        code: {"severity": severity, "meaning": meaning}
        for code, (severity, meaning) in advisory_meanings().items()
    }


def responses(
    answer: type[BaseModel],
    problems: Iterable[int],
    *,
    cached: bool = False,
    text: bool = False,
) -> Json:
    """Responses of one operation: the answer, and each problem it can meet."""
    content: Json = {"schema": {"$ref": REFERENCE.format(model=answer.__name__)}}
    answered: Json = {
        "description": "The answer.",
        "headers": _headers("X-Request-ID", *(["ETag"] if cached else [])),
        "content": {"application/json": content},
    }
    if text:
        answered["headers"] |= _headers("Advisories")
        answered["content"]["text/plain"] = {"schema": {"type": "string"}}
    refusals = [*map(str, problems), *_OTHERS.values()]
    return {"200": answered, **{s: {"$ref": f"#/components/responses/{s}"} for s in refusals}}


def problem_responses() -> Json:
    """A named response for each status that operations name, one for the others together.

    Each lists the problem types that come with it.
    """
    types: dict[str, list[str]] = defaultdict(list)
    headers: dict[str, list[str]] = defaultdict(list)
    for name, (status, title) in PROBLEM_TYPES.items():
        response = str(status) if status in _NAMED else _OTHERS[status // 100]
        said = "" if status in _NAMED else f"{status}: "
        types[response].append(f"{said}{title} (`/problems/{name}`)")
        if status in _OF_STATUS:
            headers[response].append(_OF_STATUS[status])
    made: Json = {}
    for response in sorted(types):
        made[response] = {
            "description": "; ".join(types[response]) + ".",
            "headers": _headers("X-Request-ID", *headers[response]),
            "content": {
                PROBLEM_MEDIA_TYPE: {"schema": {"$ref": REFERENCE.format(model="Problem")}}
            },
        }
    return made


def _headers(*names: str) -> Json:
    return {name: {"$ref": f"#/components/headers/{name}"} for name in names}
