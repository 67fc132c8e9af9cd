"""Reads the request schemas of a contract: which fields there are, of what kind, within what."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any, Literal

from releases.paths import Json, Place, general

Kind = Literal["number", "integer", "angle", "option", "boolean", "text", "list", "object"]
Schema = Mapping[str, Any]


#: What may stand beside a union, or a reference, for the numbers in it.
OF_A_NUMBER = frozenset(
    {"x-unit", "minimum", "maximum", "exclusiveMinimum", "exclusiveMaximum", "multipleOf"}
)


@dataclass(frozen=True)
class FieldAt:
    """A field of a request: its place, its schema, and whether it must be sent."""

    place: Place
    value: Json
    schema: "Node"
    required: bool


@dataclass(frozen=True)
class Node:
    """A schema with its references resolved and `null` set aside."""

    contract: Mapping[str, Any]
    raw: Schema

    @property
    def alternatives(self) -> list[Schema]:
        """The forms that a value may take, `null` left out."""
        return list(self._alternatives(self.raw))

    def _alternatives(self, schema: Schema) -> Iterator[Schema]:
        several = schema.get("anyOf") or schema.get("oneOf")
        if "$ref" in schema:
            name = schema["$ref"].rpartition("/")[2]
            several = [self.contract["components"]["schemas"][name]]
        if several is None:
            if schema.get("type") != "null":
                yield schema
            return
        beside = {key: part for key, part in schema.items() if key in OF_A_NUMBER}
        for one in several:
            for form in self._alternatives(one):
                yield {**form, **beside} if form.get("type") in {"number", "integer"} else form

    @property
    def kind(self) -> Kind:
        """What the value is."""
        forms = self.alternatives
        types = {form.get("type") for form in forms}
        if types == {"number", "string"} or (types == {"string"} and "pattern" in forms[0]):
            return "angle"
        first = forms[0]
        if "enum" in first or "const" in first:
            return "option"
        kinds: dict[str, Kind] = {
            "number": "number",
            "integer": "integer",
            "boolean": "boolean",
            "array": "list",
            "object": "object",
        }
        return kinds.get(first.get("type", ""), "text")

    @property
    def unit(self) -> str:
        """Unit of a number; empty where it has none."""
        return next((str(form["x-unit"]) for form in self.alternatives if "x-unit" in form), "")

    @property
    def options(self) -> list[Json]:
        """The options of a field, `null` left out."""
        return [o for form in self.alternatives for o in form.get("enum", [form.get("const")])]

    @property
    def bounds(self) -> tuple[float, float]:
        """Least and greatest number."""
        form = next(f for f in self.alternatives if f.get("type") in {"number", "integer"})
        low = form.get("minimum", form.get("exclusiveMinimum", -1e9))
        high = form.get("maximum", form.get("exclusiveMaximum", 1e9))
        return float(low), float(high)

    @property
    def exclusive(self) -> tuple[float, ...]:
        """Bounds that are themselves refused."""
        names = ("exclusiveMinimum", "exclusiveMaximum")
        return tuple(f[name] for f in self.alternatives for name in names if name in f)

    @property
    def items(self) -> "Node":
        """Schema of a list's entries."""
        return Node(self.contract, self.alternatives[0]["items"])

    @property
    def lengths(self) -> tuple[int, int]:
        """Fewest and most entries of a list."""
        form = self.alternatives[0]
        return int(form.get("minItems", 0)), int(form.get("maxItems", 1000))

    def form_of(self, value: Json) -> Schema:
        """Give the form that this object has, by the fields that are constant in one of them."""
        forms = [form for form in self.alternatives if form.get("type") == "object"]
        if not isinstance(value, dict) or len(forms) == 1:
            return forms[0]
        # A constant may stand in a schema of its own; a form may take several of the kinds.
        kinds = [
            {
                name: field.options
                for name, part in form["properties"].items()
                if (field := Node(self.contract, part)).kind == "option"
            }
            for form in forms
        ]
        tags = {name for kind in kinds for name, options in kind.items() if len(options) == 1}
        for form, kind in zip(forms, kinds, strict=True):
            if all(value.get(tag) in kind[tag] for tag in tags & kind.keys()):
                return form
        return forms[0]

    def fields(self, value: Json) -> dict[str, tuple["Node", bool]]:
        """Give the fields that an object may have, and whether each must be sent."""
        form = self.form_of(value)
        required = set(form.get("required", ()))
        return {
            name: (Node(self.contract, part), name in required)
            for name, part in form.get("properties", {}).items()
        }

    def sent(self, value: Json, at: Place = ()) -> Iterator[FieldAt]:
        """Give every field that a request sends, nested ones and entries of lists included."""
        if isinstance(value, dict) and self.kind == "object":
            fields = self.fields(value)
            for name, inside in value.items():
                if name not in fields or inside is None:
                    continue
                node, required = fields[name]
                yield FieldAt((*at, name), inside, node, required)
                yield from node.sent(inside, (*at, name))
        elif isinstance(value, list) and self.kind == "list":
            for position, inside in enumerate(value):
                yield FieldAt((*at, position), inside, self.items, True)
                yield from self.items.sent(inside, (*at, position))

    def absent(self, value: Json, at: Place = ()) -> Iterator[tuple[Place, "Node"]]:
        """Give every optional field that a request could send and does not."""
        if isinstance(value, dict) and self.kind == "object":
            for name, (node, _) in self.fields(value).items():
                if value.get(name) is None:
                    yield (*at, name), node
                else:
                    yield from node.absent(value[name], (*at, name))
        elif isinstance(value, list) and self.kind == "list":
            for position, inside in enumerate(value):
                yield from self.items.absent(inside, (*at, position))

    def all_fields(self, at: Place = (), depth: int = 0) -> Iterator[tuple[str, "Node", bool]]:
        """Give every field of every form, as `plate.length` and `box[].size`."""
        if self.kind == "list":
            yield from self.items.all_fields((*at, 0), depth + 1)
        if self.kind != "object" or depth > 6:
            return
        for form in self.alternatives:
            required = set(form.get("required", ()))
            for name, part in form.get("properties", {}).items():
                node = Node(self.contract, part)
                yield general((*at, name)), node, name in required
                yield from node.all_fields((*at, name), depth + 1)


def calculations(contract: Mapping[str, Any]) -> Iterator[tuple[str, Json]]:
    """Paths and items of the operations: what is posted to, but no batch nor form of an answer."""
    for path, item in contract["paths"].items():
        forms = ("/sheet", "/csv", "/batches", "/{operation}")
        if "post" in item and not path.endswith(forms):
            yield path, item


def request_schemas(contract: Mapping[str, Any]) -> dict[str, tuple[Node, Json]]:
    """Give request schema and example of every operation, by its dotted name."""
    made = {}
    for path, item in calculations(contract):
        content = item["post"]["requestBody"]["content"]["application/json"]
        made[operation_of(path)] = (Node(contract, content["schema"]), content["example"])
    return made


def operation_of(path: str) -> str:
    """Give the dotted name of an operation.

    >>> operation_of("/v1/sine/setting")
    'sine.setting'
    """
    return path.removeprefix("/v1/").replace("/", ".")


def path_of(operation: str) -> str:
    """Give the path of an operation."""
    return "/v1/" + operation.replace(".", "/")
