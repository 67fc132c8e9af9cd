"""How much a body may hold, counted before it is read: reading what no request needs takes long.

A megabyte of unknown names is 100,000 errors to make, of empty lists a second to read. What the
largest request of an operation holds follows from its schema, where every list and every text has
a bound.
"""

from collections.abc import Iterable, Mapping
from dataclasses import astuple, dataclass
from functools import cache
from typing import Any

from pydantic import BaseModel

from halfangle_service.fields.schemas import schema_of
from halfangle_service.http.problems import ProblemError

Schema = Mapping[str, Any]

#: A body of fewer bytes is read whatever it holds: that takes a few milliseconds at most.
_SHORT = 4_000
#: Bytes looked through at once: few enough that their parts take little memory.
_AT_ONCE = 65_536
#: What is always counted on, so that a list somewhat too long is refused by its own name.
_LEAST_PARTS, _LEAST_ENTRIES = 1_000, 20_000


@dataclass(frozen=True, slots=True)
class Size:
    """What a request holds at most: names, objects and lists, values of all kinds, and characters.

    The characters are those of texts whose words are free.
    """

    names: int
    containers: int
    values: int
    text: int

    @classmethod
    def most(cls, sizes: Iterable["Size"]) -> "Size":
        """The most of each."""
        return cls(*map(max, zip(*map(astuple, sizes), strict=True)))

    @classmethod
    def together(cls, sizes: Iterable["Size"], names: int) -> "Size":
        """An object of these, under so many names."""
        own = cls(names, 1, 1, 0)
        return cls(*map(sum, zip(*map(astuple, (own, *sizes)), strict=True)))


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
        return Size.most(_size(option, definitions) for option in options)
    if "properties" in schema:
        fields = schema["properties"].values()
        return Size.together((_size(field, definitions) for field in fields), len(fields))
    if schema.get("type") == "array":
        entry, count = _size(schema["items"], definitions), schema["maxItems"]
        return Size(
            count * entry.names,
            1 + count * entry.containers,
            1 + count * entry.values,
            count * entry.text,
        )
    if schema.get("type") == "string" and not {"enum", "const"} & schema.keys():
        return Size(0, 0, 1, schema["maxLength"])
    return Size(0, 0, 1, 0)


def refuse_too_many_parts(model: type[BaseModel], body: bytes) -> None:
    """Refuse a body with more names, objects, lists or entries than any request of this model.

    The marks of JSON are counted, and where they are too many, though texts have room for them,
    those outside of texts: no request that the schema admits is refused. Raises ProblemError
    (`beyond-bound`).
    """
    if len(body) < _SHORT:
        return
    size = largest(model)
    for what, marks, most in (
        ("names", (b":",), max(size.names, _LEAST_PARTS)),
        ("objects and lists", (b"[", b"{"), max(size.containers, _LEAST_PARTS)),
        ("entries", (b",",), max(size.values, _LEAST_ENTRIES)),
    ):
        found = sum(map(body.count, marks))
        if most < found <= most + size.text:
            found = sum(map(_outside_texts(body).count, marks))
        if found > most:
            raise ProblemError(
                "beyond-bound",
                f"The body holds more than {most} {what}; no request of this operation does.",
            )


def _outside_texts(body: bytes) -> bytes:
    """What stands outside of the texts of JSON, as any reader takes it up to the first mistake."""
    plain = body.replace(rb"\\", b"").replace(rb"\"", b"")
    found, inside = bytearray(), False
    for start in range(0, len(plain), _AT_ONCE):
        pieces = plain[start : start + _AT_ONCE].split(b'"')
        found += b"".join(pieces[inside::2])
        inside ^= len(pieces) % 2 == 0
    return bytes(found)
