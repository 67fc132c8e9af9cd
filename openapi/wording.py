"""Reads a schema: what it names, its alternatives, and its unit and bounds in words."""

from collections.abc import Iterator
from typing import Any

Schema = dict[str, Any]
REFERENCE = "#/components/schemas/"
#: What may stand beside a union, for the numbers in it.
OF_A_NUMBER = frozenset(
    {"x-unit", "minimum", "maximum", "exclusiveMinimum", "exclusiveMaximum", "multipleOf"}
)


def described(schema: Schema) -> str:
    """Description of a field, followed by its unit and bounds in brackets where it has any."""
    text = str(schema.get("description", "")).strip()
    facts = "; ".join(_facts(schema))
    return f"{text} [{facts}]".strip() if facts else text


def branches(schema: Schema) -> list[Schema]:
    """The alternatives of a schema, nested ones laid flat, null left out; itself if it has none."""
    parts = schema.get("anyOf") or schema.get("oneOf") or schema.get("allOf")
    if not parts:
        return [] if schema.get("type") == "null" else [schema]
    inherited = {k: v for k, v in schema.items() if k in OF_A_NUMBER}
    return [leaf for part in parts for leaf in branches({**inherited, **part})]


def items_of(schema: Schema) -> Schema:
    """Schema of a list's entries; an empty one where it says nothing, or false: no more entries."""
    items = schema.get("items")
    return items if isinstance(items, dict) else {}


def references(value: Any) -> Iterator[str]:
    """Every schema named anywhere below a value."""
    if isinstance(value, dict):
        reference = value.get("$ref")
        if isinstance(reference, str) and reference.startswith(REFERENCE):
            yield reference.removeprefix(REFERENCE)
        for part in value.values():
            yield from references(part)
    elif isinstance(value, list):
        for part in value:
            yield from references(part)


def _facts(schema: Schema) -> list[str]:
    """Unit and bounds of each alternative, each said once."""
    facts: list[str] = []
    for part in branches(schema):
        facts += [fact for fact in (_number(part), _text(part), _entries(part)) if fact]
    return list(dict.fromkeys(facts))


def _number(schema: Schema) -> str:
    if schema.get("type") not in {"number", "integer"}:
        return ""
    unit = str(schema.get("x-unit", "1")).replace("_", " ").replace("celsius", "°C")
    bounds = _range(
        schema.get("minimum"),
        schema.get("maximum"),
        schema.get("exclusiveMinimum"),
        schema.get("exclusiveMaximum"),
    )
    return ", ".join(part for part in ("" if unit == "1" else unit, bounds) if part)


def _text(schema: Schema) -> str:
    if schema.get("type") != "string":
        return ""
    if schema.get("x-unit") == "degree":
        return "or text in degrees, minutes, seconds"
    length = _range(schema.get("minLength"), schema.get("maxLength"))
    return f"{length} characters" if length and length != "at least 1" else ""


def _entries(schema: Schema) -> str:
    if schema.get("type") != "array":
        return ""
    count = _range(schema.get("minItems"), schema.get("maxItems"))
    each = "; ".join(_facts(items_of(schema)))
    said = [f"{count} entries" if count else "", f"each {each}" if each else ""]
    return ", ".join(part for part in said if part)


def _range(
    least: float | None, most: float | None, over: float | None = None, under: float | None = None
) -> str:
    if least is not None and least == most:
        return _plain(least)
    if least is not None and most is not None:
        return f"{_plain(least)} to {_plain(most)}"
    said = [("at least", least), ("over", over), ("at most", most), ("under", under)]
    return ", ".join(f"{word} {_plain(bound)}" for word, bound in said if bound is not None)


def _plain(number: float) -> str:
    """Write a bound as a person does: 10000, 0.5, 1e-06."""
    return f"{number:.15g}"
