"""How much a body may hold, counted before it is read: reading what no request needs takes long.

A megabyte of unknown names is 100,000 errors to make, of empty lists a second to read. What the
largest request of an operation holds follows from its schema, where every list and every text has
a bound.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from typing import Any

from pydantic import BaseModel

from halfangle_service.fields.schemas import schema_of
from halfangle_service.http.problems import ProblemError

Schema = Mapping[str, Any]

#: A body of fewer bytes is read whatever it holds: that takes a few milliseconds at most.
_SHORT = 4_000
#: What is always counted on, so that a list somewhat too long is refused by its own name.
_LEAST_PARTS, _LEAST_ENTRIES = 1_000, 20_000


@dataclass(frozen=True, slots=True)
class Size:
    """Values that a request holds at most, objects and lists included, and characters of text."""

    values: int
    text: int


@cache
def largest(model: type[BaseModel]) -> Size:
    """Give the size of the largest request."""
    whole = schema_of(model)
    return _size(whole, whole.get("$defs", {}))


def _size(schema: Schema, definitions: Schema) -> Size:
    if "$ref" in schema:
        return _size(definitions[schema["$ref"].rsplit("/", 1)[-1]], definitions)
    options = [*schema.get("anyOf", ()), *schema.get("oneOf", ())]
    if options:
        sizes = [_size(option, definitions) for option in options]
        return Size(max(s.values for s in sizes), max(s.text for s in sizes))
    if "properties" in schema:
        sizes = [_size(field, definitions) for field in schema["properties"].values()]
        return Size(1 + sum(s.values for s in sizes), sum(s.text for s in sizes))
    if schema.get("type") == "array":
        entry = _size(schema["items"], definitions)
        return Size(1 + schema["maxItems"] * entry.values, schema["maxItems"] * entry.text)
    if schema.get("type") == "string" and not {"enum", "const"} & schema.keys():
        return Size(1, schema["maxLength"])
    return Size(1, 0)


def refuse_too_many_parts(model: type[BaseModel], body: bytes) -> None:
    """Refuse a body with more names, objects, lists or entries than any request of this model.

    The marks of JSON are counted, within texts too, for which there is room: no request that the
    schema admits is refused. Raises ProblemError (`beyond-bound`).
    """
    if len(body) < _SHORT:
        return
    size = largest(model)
    parts, entries = 2 * size.values + size.text, size.values + size.text
    for what, marks, most in (
        ("names, objects and lists", (b":", b"[", b"{"), max(parts, _LEAST_PARTS)),
        ("entries", (b",",), max(entries, _LEAST_ENTRIES)),
    ):
        if sum(map(body.count, marks)) > most:
            raise ProblemError(
                "beyond-bound",
                f"The body holds more than {most} {what}; no request of this operation does.",
            )
