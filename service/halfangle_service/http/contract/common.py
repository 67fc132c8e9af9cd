"""What all operations of the contract have in common: answers, refusals, headers, the key."""

from collections import defaultdict
from collections.abc import Iterable, Mapping
from importlib import import_module
from typing import Any

from pydantic import BaseModel

from halfangle_service import __version__
from halfangle_service.fields.glossary import advisory_meanings
from halfangle_service.http.contract.shared import REFERENCE
from halfangle_service.http.problems import PROBLEM_MEDIA_TYPE, PROBLEM_TYPES

Json = dict[str, Any]

API_KEY, BASIC = "ApiKey", "Basic"
SECURITY_SCHEMES: Json = {
    API_KEY: {
        "type": "apiKey",
        "in": "header",
        "name": "X-API-Key",
        "description": "Asked for only where the installation has keys.",
    },
    BASIC: {
        "type": "http",
        "scheme": "basic",
        "description": "The same key as password, with its name as user.",
    },
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
        "description": "The ways in which a key is taken.",
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
_OF_STATUS = {401: "WWW-Authenticate", 405: "Allow", 429: "Retry-After", 503: "Retry-After"}
#: The response of its own is that of a key, which programs look for; all other refusals stand
#: together, since they are one kind of document.
_NAMED = frozenset({401})
_TOGETHER = "default"


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


def described_tags(topics: Iterable[str]) -> list[Json]:
    """Each topic in the words of its package."""
    packages = ((topic, import_module(f"halfangle_service.topics.{topic}")) for topic in topics)
    return [{"name": t, "description": (p.__doc__ or "").strip()} for t, p in packages]


def problem_types() -> Json:
    """Meaning of each problem type by the name that ends its `type`, below its status."""
    return _grouped((str(status), n, title) for n, (status, title) in PROBLEM_TYPES.items())


def advisories() -> Json:
    """Meaning of each advisory by its code, below its severity."""
    return _grouped((severity, c, m) for c, (severity, m) in advisory_meanings().items())


def _grouped(entries: Iterable[tuple[str, str, str]]) -> Json:
    """Meanings by their names, below the group that each belongs to."""
    groups: dict[str, dict[str, str]] = defaultdict(dict)
    for group, name, meaning in entries:
        groups[group][name] = meaning
    return dict(groups)


def responses(answer: type[BaseModel] | None, *, cached: bool = False) -> Json:
    """Responses of one operation: the answer, or one value of it, and the problems it can meet."""
    if answer is None:
        content: Json = {"text/plain": {"schema": {"type": "string"}}}
    else:
        reference = REFERENCE.format(model=answer.__name__)
        content = {"application/json": {"schema": {"$ref": reference}}}
    headers = ("X-Request-ID", *(["ETag"] if cached else []), *([] if answer else ["Advisories"]))
    answered = {"description": "The answer.", "headers": _headers(*headers), "content": content}
    refusals = [*map(str, _NAMED), _TOGETHER]
    return {"200": answered, **{s: {"$ref": f"#/components/responses/{s}"} for s in refusals}}


def problem_responses() -> Json:
    """A named response for the status that operations name, one for the others together.

    Each names the problem types that come with it; what they mean is said once, by their names.
    """
    types: dict[str, dict[int, list[str]]] = defaultdict(lambda: defaultdict(list))
    for name, (status, _) in PROBLEM_TYPES.items():
        types[_response_of(status)][status].append(f"`/problems/{name}`")
    return {response: _refusal(listed) for response, listed in sorted(types.items())}


def _response_of(status: int) -> str:
    return str(status) if status in _NAMED else _TOGETHER


def _refusal(types: Mapping[int, list[str]]) -> Json:
    """Response of these statuses, with the types that come with each."""
    listed = "; ".join(f"{status}: {', '.join(names)}" for status, names in types.items())
    headers = [_OF_STATUS[status] for status in types if status in _OF_STATUS]
    problem = {"schema": {"$ref": REFERENCE.format(model="Problem")}}
    return {
        "description": f"{listed}. Their meanings stand under `x-problem-types`.",
        "headers": _headers("X-Request-ID", *headers),
        "content": {PROBLEM_MEDIA_TYPE: problem},
    }


def _headers(*names: str) -> Json:
    return {name: {"$ref": f"#/components/headers/{name}"} for name in names}
