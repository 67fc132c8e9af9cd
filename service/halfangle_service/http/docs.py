"""The reference page: one HTML document made from the operations at start, nothing fetched."""

import json
import re
from collections.abc import Iterable, Mapping
from typing import Any

from jinja2 import Environment, PackageLoader, StrictUndefined
from markupsafe import Markup, escape

from halfangle_service import __version__
from halfangle_service.fields.glossary import advisory_meanings, glossary
from halfangle_service.fields.schemas import schema_of
from halfangle_service.http.problems import PROBLEM_TYPES
from halfangle_service.http.query import query_fields
from halfangle_service.operation import Operation, PublishedTable
from halfangle_service.trade.wording import plain

AnyOperation = Operation[Any, Any]
Schema = Mapping[str, Any]

#: The model of an angle in an answer.
_ANGLE = "Angle"
_BOUNDS = {
    "minimum": "≥",
    "exclusiveMinimum": ">",
    "maximum": "≤",
    "exclusiveMaximum": "<",
    "minItems": "items ≥",
    "maxItems": "items ≤",
}


def reference_page(
    operations: Mapping[str, AnyOperation], tables: Iterable[PublishedTable[Any]]
) -> bytes:
    """Give the page as UTF-8 HTML."""
    environment = Environment(
        loader=PackageLoader("halfangle_service.http", "."),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )
    environment.filters["code"] = _code
    topics: dict[str, list[dict[str, Any]]] = {}
    for operation in operations.values():
        topics.setdefault(operation.topic, []).append(_entry(operation))
    page = environment.get_template("docs.html.jinja").render(
        release=__version__,
        topics=topics,
        tables=tuple(tables),
        glossary=glossary().values(),
        problems=PROBLEM_TYPES,
        advisories=advisory_meanings(),
    )
    return page.encode()


def _code(text: str) -> Markup:
    """Escape a text and set what stands between backticks as code.

    As plain text in between: `Markup` would escape the marks that are put in.
    """
    escaped = str(escape(text))
    return Markup(re.sub(r"`([^`]+)`", r"<code>\1</code>", escaped))  # noqa: S704  escaped


def _entry(operation: AnyOperation) -> dict[str, Any]:
    """What the page shows of one operation."""
    return {
        "operation": operation,
        "query": query_fields(operation.request) is not None,
        "example": json.dumps(dict(operation.example), ensure_ascii=False, indent=2),
        "request": _rows(schema_of(operation.request)),
        "result": _rows(schema_of(operation.result, "serialization")),
    }


def _rows(schema: Schema) -> list[dict[str, str]]:
    """One row a field, those of nested objects under a dotted path."""
    rows: list[dict[str, str]] = []
    _collect(schema, schema.get("$defs", {}), "", rows, depth=0)
    return rows


def _collect(
    schema: Schema, definitions: Schema, prefix: str, rows: list[dict[str, str]], depth: int
) -> None:
    required = set(schema.get("required", ()))
    for name, field in schema.get("properties", {}).items():
        path = prefix + name
        rows.append(
            {
                "path": path,
                "form": _form(field, definitions),
                "need": "" if name in required else "optional",
                "description": field.get("description", ""),
            }
        )
        for suffix, nested in _objects(field, definitions):
            # Angle stands in nearly every answer and is explained once, at the top of the page.
            if depth < 3 and nested is not definitions.get(_ANGLE):
                _collect(nested, definitions, f"{path}{suffix}.", rows, depth + 1)


def _objects(field: Schema, definitions: Schema) -> Iterable[tuple[str, Schema]]:
    """The object schemas that a field leads to, with the suffix its path takes (`[]`: a list)."""
    if "$ref" in field:
        yield "", definitions[field["$ref"].rsplit("/", 1)[-1]]
    for option in (*field.get("anyOf", ()), *field.get("oneOf", ())):
        yield from _objects(option, definitions)
    if "items" in field:
        for suffix, nested in _objects(field["items"], definitions):
            yield "[]" + suffix, nested


def _form(field: Schema, definitions: Schema) -> str:
    """Type, unit and bounds of a field in a few words."""
    if "$ref" in field:
        return "angle" if field["$ref"].endswith(f"/{_ANGLE}") else "object"
    if "enum" in field:
        return " | ".join(json.dumps(value, ensure_ascii=False) for value in field["enum"])
    if "const" in field:
        return json.dumps(field["const"], ensure_ascii=False)
    options = [*field.get("anyOf", ()), *field.get("oneOf", ())]
    if options:
        words = [_form(option, definitions) for option in options]
        kind = " or ".join(dict.fromkeys(w for w in words if w != "null"))
    elif "items" in field:
        kind = f"list of {_form(field['items'], definitions)}"
    else:
        kind = str(field.get("type", "value"))
    bounds = [f"{sign} {plain(field[key], 10)}" for key, sign in _BOUNDS.items() if key in field]
    return ", ".join([kind, *bounds, *([field["x-unit"]] if "x-unit" in field else [])])
