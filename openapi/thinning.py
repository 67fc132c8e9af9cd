"""The contract as the generator of models sees it.

The service alone judges a request, so that there is one authority and one kind of error: bounds and
patterns leave the models and stay as words in their descriptions. It also keeps the generator from
inventing a numbered class for each bounded alternative, names that would shift with every topic.

What a caller passes is checked by its type: no other field, no other word. What comes back is read
by clients older than the service: a new field is passed over and a new word taken as it is, but a
number is a number, and finite.
"""

import textwrap
from collections.abc import Iterable
from typing import Any

from signatures import is_of_any_request
from wording import Schema, branches, described, references

_WIDTH = 88
#: Bases of the models: of part of a request, a whole answer, part of one, a part with more to say.
_REQUEST = "halfangle_client.answer.RequestModel"
_ANSWER = "halfangle_client.answer.Answer"
_OPEN = "halfangle_client.answer.OpenModel"
_PART = "halfangle_client.answer.AnswerModel"
_OF_AN_ANSWER = frozenset({"result", "advisories", "basis"})
_JUDGED_BY_SERVICE = frozenset(
    {
        "minimum", "maximum", "exclusiveMinimum", "exclusiveMaximum", "multipleOf",
        "minLength", "maxLength", "pattern", "format", "minItems", "maxItems", "uniqueItems",
        "minProperties", "maxProperties", "title", "example", "examples", "x-unit", "x-rules",
        "dependentRequired",
    }
)  # fmt: skip


def thinned(contract: dict[str, Any], arguments: Iterable[Schema]) -> dict[str, Any]:
    """Give the contract with schemas as models need them, and nothing but schemas.

    Kept is what can come back from a call and what an argument of one names as its type. The body
    of a request is neither: its fields are the arguments themselves.
    """
    schemas: dict[str, Schema] = contract["components"]["schemas"]
    asked = reachable(schemas, list(arguments))
    called = {
        path: {method: o for method, o in item.items() if not is_of_any_request(o)}
        for path, item in contract["paths"].items()
    }
    kept = asked | reachable(schemas, responses({**contract, "paths": called}))
    thin = {name: _whole(schemas[name], name in asked) for name in schemas if name in kept}
    return {
        "openapi": contract["openapi"],
        "info": contract["info"],
        "paths": {},
        "components": {"schemas": thin},
    }


def _whole(schema: Schema, is_request: bool) -> Schema:
    """A named schema. An answer may grow a field or a word in a later release, a request not."""
    thin = _thin(schema if is_request else _opened(schema))
    thin["description"] = _wrapped(str(schema.get("description", "")))
    if "properties" in thin:
        thin["customBasePath"] = _REQUEST if is_request else _base_of(thin)
        thin.pop("additionalProperties", None)
    return {k: v for k, v in thin.items() if v != ""}


def _base_of(schema: Schema) -> str:
    """The base of something that comes back."""
    if schema.get("additionalProperties") is True:
        return _OPEN
    return _ANSWER if set(schema["properties"]) >= _OF_AN_ANSWER else _PART


def _opened(schema: Any) -> Any:
    """The same with every closed choice open: its words stay as a hint to who reads the types."""
    if isinstance(schema, list):
        return [_opened(part) for part in schema]
    if not isinstance(schema, dict):
        return schema
    if "properties" in schema:
        opened = {name: _opened(part) for name, part in schema["properties"].items()}
        return {**schema, "properties": opened}
    if "enum" not in schema and "const" not in schema:
        return {word: _opened(part) for word, part in schema.items()}
    kind = {"type": schema.get("type", "string")}
    about = {k: v for k, v in schema.items() if k not in {"enum", "const", "type"}}
    if kind["type"] != "string":
        return {**about, **kind}
    words = {"enum": schema.get("enum") or [schema["const"]], **kind}
    return {**about, "anyOf": [words, kind]}


def _thin(schema: Schema) -> Schema:
    thin = {k: v for k, v in schema.items() if k not in _JUDGED_BY_SERVICE}
    for word in ("items", "additionalProperties"):
        if isinstance(thin.get(word), dict):
            thin[word] = _thin(thin[word])
    for word in ("allOf", "prefixItems"):
        if word in thin:
            thin[word] = [_thin(part) for part in thin[word]]
    for word in ("anyOf", "oneOf"):
        if word in thin:
            thin[word] = _alternatives(schema)
    if "properties" in thin:
        thin["properties"] = {k: _property(v) for k, v in thin["properties"].items()}
    return thin


def _alternatives(schema: Schema) -> list[Schema]:
    """Alternatives without their bounds, so that equal ones fall together; null stays last."""
    kept: list[Schema] = []
    for part in branches(schema):
        thin = _thin(part)
        if thin not in kept:
            kept.append(thin)
    return [*kept, {"type": "null"}] if _takes_null(schema) else kept


def _takes_null(schema: Schema) -> bool:
    parts = schema.get("anyOf") or schema.get("oneOf") or []
    return schema.get("type") == "null" or any(_takes_null(part) for part in parts)


def _property(schema: Schema) -> Schema:
    thin = _thin(schema)
    thin["description"] = _wrapped(described(schema))
    if isinstance(thin.get("default"), dict | list):
        thin = _left_to_service(thin)
    return {k: v for k, v in thin.items() if v != ""}


def _left_to_service(schema: Schema) -> Schema:
    """An optional object or list: left out of the request, the service fills in its default."""
    alike = {k: v for k, v in schema.items() if k not in {"default", "description"}}
    description = schema["description"]
    return {"anyOf": [alike, {"type": "null"}], "default": None, "description": description}


def _wrapped(text: str) -> str:
    paragraphs = text.split("\n\n")
    return "\n\n".join(textwrap.fill(p, _WIDTH, break_on_hyphens=False) for p in paragraphs)


def responses(contract: dict[str, Any]) -> list[Any]:
    """Whatever may come back: answers of the operations, and the problems that they share."""
    operations = [
        operation["responses"]
        for item in contract["paths"].values()
        for operation in item.values()
        if isinstance(operation, dict)
    ]
    return [*operations, contract["components"].get("responses", {})]


def reachable(schemas: dict[str, Schema], start: Any) -> set[str]:
    """Names of the schemas that a value names, and that these name in turn."""
    found: set[str] = set()
    waiting = list(references(start))
    while waiting:
        name = waiting.pop()
        if name not in found:
            found.add(name)
            waiting += references(schemas[name])
    return found
