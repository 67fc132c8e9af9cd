"""What a schema admits, its references and unions followed: how requests and results are walked."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from halfangle_service.fields.schemas import DEFINITIONS

Schema = Mapping[str, Any]
_SCALARS = frozenset({"number", "integer", "string", "boolean"})
_UNIT = "x-unit"


@dataclass(frozen=True, slots=True)
class Shape:
    """The alternatives of one value: each a schema without references, and the unit beside it."""

    alternatives: tuple[tuple[Schema, str], ...]
    definitions: Schema

    @classmethod
    def of_whole(cls, schema: Schema) -> "Shape":
        """The shape of a whole model."""
        return cls._of([(schema, "")], schema.get("$defs", {}))

    @classmethod
    def _of(cls, schemas: Iterable[tuple[Schema, str]], definitions: Schema) -> "Shape":
        found = [one for schema, unit in schemas for one in _followed(schema, unit, definitions)]
        return cls(tuple(found), definitions)

    @property
    def fields(self) -> "dict[str, Shape]":
        """The fields of the objects among the alternatives: of each what any of them admits."""
        gathered: dict[str, list[tuple[Schema, str]]] = {}
        for schema, _ in self.alternatives:
            for name, part in schema.get("properties", {}).items():
                gathered.setdefault(name, []).append((part, ""))
        return {name: self._of(parts, self.definitions) for name, parts in gathered.items()}

    @property
    def entries(self) -> "Shape":
        """What the lists among the alternatives hold."""
        lists = [(s["items"], unit) for s, unit in self.alternatives if s.get("type") == "array"]
        return self._of(lists, self.definitions)

    @property
    def most_entries(self) -> int:
        """So many entries the longest of these lists may have."""
        found = [s.get("maxItems", 0) for s, _ in self.alternatives if s.get("type") == "array"]
        return max(found, default=0)

    @property
    def required(self) -> frozenset[str]:
        """Fields that every object here must have."""
        needed = [frozenset(s.get("required", ())) for s, _ in self.alternatives if _is_object(s)]
        return frozenset.intersection(*needed) if needed else frozenset()

    @property
    def scalars(self) -> frozenset[str]:
        """JSON types of the single values among the alternatives."""
        types = (_type_of(schema) for schema, _ in self.alternatives)
        return frozenset(types) & _SCALARS

    @property
    def units(self) -> frozenset[str]:
        """Tokens of the units that its numbers are in."""
        return frozenset(unit for _, unit in self.alternatives if unit)

    @property
    def is_object(self) -> bool:
        """True where it may be an object."""
        return any(_is_object(schema) for schema, _ in self.alternatives)


def _is_object(schema: Schema) -> bool:
    return "properties" in schema


def _type_of(schema: Schema) -> str:
    """JSON type; a choice of tokens is a text though it may not say so."""
    return str(schema.get("type") or ("string" if {"enum", "const"} & schema.keys() else ""))


def _followed(schema: Schema, unit: str, definitions: Schema) -> Iterator[tuple[Schema, str]]:
    unit = schema.get(_UNIT, unit)
    if "$ref" in schema:
        name = schema["$ref"].removeprefix(DEFINITIONS.format(model=""))
        yield from _followed(definitions[name], unit, definitions)
        return
    options = schema.get("anyOf") or schema.get("oneOf")
    if options is None:
        yield schema, unit
        return
    for option in options:
        yield from _followed(option, unit, definitions)
