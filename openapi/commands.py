"""What the command line needs of the contract, as data: a file a topic, read when it is asked for.

Each holds its operations (where they are sent, their fields with unit, bounds, default and choices)
and the units of their answers' fields, so that the command loads no model.
"""

import json
import re
from collections.abc import Iterator
from typing import Any

from signatures import SHEET, Argument, Call, read_topics
from wording import REFERENCE, Schema, branches, described, items_of

#: Units of requests as metavars of help; whatever else is a number is one.
_METAVARS = {"length": "LENGTH", "degree": "ANGLE", "arcsecond": "ARCSEC", "count": "COUNT"}
_QUOTED = re.compile(r"`([^`]+)`")
_DEEPEST = 3


def command_files(contract: dict[str, Any], mark: str) -> dict[str, str]:
    """Give every data file of the command line by its name, from the contract `inlined`."""
    schemas: dict[str, Schema] = contract["components"]["schemas"]
    every = read_topics(contract)
    topics = {
        topic: [call for call in calls if call.answer != SHEET] for topic, calls in every.items()
    }
    sheets = [call for calls in every.values() for call in calls if call.answer == SHEET]
    documents = {"_topics": _index(topics), "_sheets": _sheets(sheets)}
    for topic, calls in topics.items():
        documents[topic] = {
            "operations": {_hyphens(call.method): _operation(contract, call) for call in calls},
            "shapes": _shapes(schemas, [_answer_of(contract, call) for call in calls]),
        }
    about = {"about": mark.removeprefix("# ")}
    return {
        f"{name}.json": json.dumps({**about, **document}, ensure_ascii=False, indent=1) + "\n"
        for name, document in documents.items()
    }


def _index(topics: dict[str, list[Call]]) -> dict[str, Any]:
    """Names and titles of everything, all that the help of the whole needs."""
    return {
        "topics": {
            topic: {_hyphens(call.method): call.summary for call in calls}
            for topic, calls in topics.items()
        }
    }


def _sheets(calls: list[Call]) -> dict[str, Any]:
    """Where the sheet of each operation is asked, and what may be chosen of it."""
    return {
        "sheets": {
            call.path.removeprefix("/v1/").removesuffix("/sheet").replace("/", "."): {
                "path": call.path,
                "accept": call.accept,
                "query": [argument.field for argument in call.placed("query")],
            }
            for call in calls
        }
    }


def _operation(contract: dict[str, Any], call: Call) -> dict[str, Any]:
    schemas: dict[str, Schema] = contract["components"]["schemas"]
    arguments = [*call.positional, *call.keyword_only]
    names = {a.field for a in arguments}
    answer = str(_answer_of(contract, call).get("$ref", "")).removeprefix(REFERENCE)
    return {
        "name": call.name,
        "title": call.summary,
        "description": _spoken(call.description, names),
        "method": call.http_method,
        "path": call.path,
        "accept": call.accept,
        "sends": call.sends,
        "heavy": call.heavy,
        "answer": answer,
        "example": _example(contract, call),
        "fields": [f for a in arguments for f in _fields_of(a, names, schemas)],
    }


def _fields_of(
    argument: Argument, names: set[str], schemas: dict[str, Schema]
) -> Iterator[dict[str, Any]]:
    """An argument, and where it is an object, the fields inside by dotted names."""
    top = field_of(argument.field, argument.schema, schemas, required=argument.required)
    if argument.place != "body":
        top["place"] = argument.place
    yield from _spoken_fields(
        [top, *fields_inside(argument.field, argument.schema, schemas)], names
    )


def _spoken_fields(fields: list[dict[str, Any]], names: set[str]) -> Iterator[dict[str, Any]]:
    for field in fields:
        yield {**field, "help": _spoken(field["help"], names)}


def fields_inside(
    path: str, schema: Schema, schemas: dict[str, Schema], depth: int = 1
) -> list[dict[str, Any]]:
    """Fields of an object by their paths; of several kinds of object each name once."""
    found: dict[str, dict[str, Any]] = {}
    kinds: dict[str, dict[str, str]] = {}
    for leaf in _leaves(schema, schemas):
        for name, part in leaf.get("properties", {}).items():
            inner = f"{path}.{name}"
            field = field_of(inner, part, schemas)
            kinds.setdefault(inner, {}).update(field.get("choices", {}))
            found.setdefault(inner, field)
            if kinds[inner] and "choices" in found[inner]:
                found[inner]["choices"] = kinds[inner]
            if depth < _DEEPEST:
                for deeper in fields_inside(inner, part, schemas, depth + 1):
                    found.setdefault(deeper["name"], deeper)
    return list(found.values())


def field_of(
    path: str, schema: Schema, schemas: dict[str, Schema], *, required: bool = False
) -> dict[str, Any]:
    """One field: how a word becomes its value, and what its help says."""
    leaves = _leaves(schema, schemas)
    many = any(leaf.get("type") == "array" for leaf in leaves)
    if many:
        items = next(leaf for leaf in leaves if leaf.get("type") == "array")
        leaves = _leaves(items_of(items), schemas)
    field: dict[str, Any] = {"name": path, "kind": _kind(leaves), "help": described(schema)}
    choices = _choices(schema, leaves)
    default = schema.get("default")
    facts = {
        "metavar": _metavar(leaves) or None,
        "many": many or None,
        "required": required or None,
        "choices": choices or None,
        "default": default if isinstance(default, bool | int | float | str) else None,
    }
    return {**field, **{name: fact for name, fact in facts.items() if fact is not None}}


def _kind(leaves: list[Schema]) -> str:
    """How a word of the command line becomes a value."""
    kinds = {str(leaf.get("type")) for leaf in leaves}
    if any("enum" in leaf or "const" in leaf for leaf in leaves):
        return "choice" if kinds <= {"string"} else "json"
    known = {
        frozenset({"number"}): "number",
        frozenset({"integer"}): "integer",
        frozenset({"number", "string"}): "angle",
        frozenset({"string"}): "text",
        frozenset({"boolean"}): "switch",
    }
    return known.get(frozenset(kinds), "json")


def _metavar(leaves: list[Schema]) -> str:
    units = (str(leaf["x-unit"]) for leaf in leaves if "x-unit" in leaf)
    return next((_METAVARS[unit] for unit in units if unit in _METAVARS), "")


def _choices(schema: Schema, leaves: list[Schema]) -> dict[str, str]:
    """Each option's token with its label."""
    labels = {k: v for part in (schema, *leaves) for k, v in part.get("x-labels", {}).items()}
    tokens = [t for leaf in leaves for t in leaf.get("enum", [leaf.get("const")]) if t is not None]
    return {token: str(labels.get(token, token)) for token in tokens if isinstance(token, str)}


def _leaves(schema: Schema, schemas: dict[str, Schema]) -> list[Schema]:
    """Alternatives of a schema, objects by what they hold."""
    return [schemas[_name_in(part)] if "$ref" in part else part for part in branches(schema)]


def _name_in(schema: Schema) -> str:
    return str(schema["$ref"]).removeprefix(REFERENCE)


def _answer_of(contract: dict[str, Any], call: Call) -> Schema:
    operation = contract["paths"][call.path][call.http_method.lower()]
    success = next(v for k, v in operation["responses"].items() if k.startswith("2"))
    schema: Schema = success.get("content", {}).get("application/json", {}).get("schema", {})
    return schema


def _shapes(schemas: dict[str, Schema], answers: list[Schema]) -> dict[str, dict[str, str]]:
    """Of each object that an answer holds, the unit of every field or the object inside it."""
    shapes: dict[str, dict[str, str]] = {}
    waiting = [name for answer in answers for name in _named(answer)]
    while waiting:
        name = waiting.pop(0)
        if name in shapes:
            continue
        shapes[name] = {}
        for field, part in schemas[name].get("properties", {}).items():
            inside = list(_named(part))
            waiting += inside
            unit = "@" + "|".join(inside) if inside else _unit(part, schemas)
            if unit:
                shapes[name][field] = unit
    return {name: shape for name, shape in sorted(shapes.items()) if shape}


def _named(schema: Schema) -> Iterator[str]:
    """Names of the objects that a field is, or lists."""
    for part in branches(schema):
        if "$ref" in part:
            yield _name_in(part)
        elif part.get("type") == "array":
            yield from _named(items_of(part))


def _unit(schema: Schema, schemas: dict[str, Schema]) -> str:
    for leaf in _leaves(schema, schemas):
        inner = _unit(items_of(leaf), schemas) if leaf.get("type") == "array" else ""
        unit = inner or str(leaf.get("x-unit", ""))
        if unit not in {"", "1"}:
            return unit
    return ""


def _example(contract: dict[str, Any], call: Call) -> dict[str, Any]:
    """The example's values by field, those of the path among them."""
    operation = contract["paths"][call.path][call.http_method.lower()]
    given = {p["name"]: p["example"] for p in operation.get("parameters", ()) if "example" in p}
    content = operation.get("requestBody", {}).get("content", {})
    body = content.get("application/json", {}).get("example")
    return {**given, **(body if isinstance(body, dict) else {})}


def _spoken(text: str, names: set[str]) -> str:
    """The contract's text for a terminal: a field by its option, other code as it is."""

    def word(match: re.Match[str]) -> str:
        name = match[1]
        return f"--{_hyphens(name)}" if name in names else name

    return _QUOTED.sub(word, text)


def _hyphens(name: str) -> str:
    return name.replace("_", "-")
