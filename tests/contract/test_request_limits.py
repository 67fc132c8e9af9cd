"""Bounds and defaults of every field of a request, written down a second time.

`request_limits.toml` lists them by value: the fields with these bounds, or with this default, by
name, and as `topic.verb: name` where an operation has its own for that name. A changed bound or
default changes what a caller may send or is taken to say, so it is changed in two places. One name
has the same bounds and the same default everywhere; where not, `reasons` says why.
"""

import tomllib
from collections import defaultdict
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from halfangle_service.registry import load_registry

OPERATIONS = load_registry().operations
#: What bounds a field in a JSON schema.
BOUNDS = (
    *("minimum", "exclusiveMinimum", "maximum", "exclusiveMaximum"),
    *("minLength", "maxLength", "minItems", "maxItems"),
)
Listed = dict[tuple[str, str], set[str]]
TABLE = tomllib.loads(Path(__file__).with_name("request_limits.toml").read_text("utf-8"))


def fields_of(operation: str) -> Iterator[tuple[str, dict[str, Any]]]:
    """Name and schema of each field of a request, and of what it holds, at any depth."""
    schema = OPERATIONS[operation].request.model_json_schema()
    seen: set[str] = set()

    def within(part: dict[str, Any], name: str) -> Iterator[tuple[str, dict[str, Any]]]:
        reference = part.get("$ref", "").rpartition("/")[2]
        if reference and reference not in seen:
            seen.add(reference)
            yield from within(schema["$defs"][reference], name)
        yield name, part
        for key, inner in part.get("properties", {}).items():
            yield from within(inner, key)
        for one in (*part.get("anyOf", ()), *part.get("oneOf", ())):
            yield from within(one, name)
        if "items" in part:
            yield from within(part["items"], name)

    return within(schema, "")


def written(entry: dict[str, Any]) -> str:
    """Bounds or a default as one text, 5 and 5.0 alike."""
    plain = {k: float(v) if type(v) is int else v for k, v in entry.items() if k != "fields"}
    return repr(sorted(plain.items()))


def listed(kind: str) -> Listed:
    """What the table says of each name: in one operation, or in all others ("")."""
    found: Listed = defaultdict(set)
    for entry in TABLE[kind]:
        for field in entry["fields"]:
            operation, _, name = field.rpartition(": ")
            found[operation, name].add(written(entry))
    return found


def held(kind: str) -> Iterator[tuple[str, str, set[str]]]:
    """What each operation's request holds, by name."""
    keys = BOUNDS if kind == "bounds" else ("default",)
    for operation in OPERATIONS:
        found: dict[str, set[str]] = defaultdict(set)
        for name, schema in fields_of(operation):
            values = {key: schema[key] for key in keys if schema.get(key) is not None}
            if values and not isinstance(values.get("default"), dict | list):
                found[name].add(written(values))
        for name, texts in found.items():
            yield operation, name, texts


def wrong(kind: str) -> list[str]:
    """Fields that are not as the table says, and entries of it that no request has."""
    table = listed(kind)
    used: set[tuple[str, str]] = set()
    found = []
    for operation, name, texts in held(kind):
        key = (operation, name) if (operation, name) in table else ("", name)
        used.add(key)
        if table.get(key) != texts:
            found.append(f"{operation}: {name}: {sorted(texts)}, listed {table.get(key)}")
    return found + [f"no request has {key}" for key in table if key not in used]


def test_bounds_are_as_listed() -> None:
    """Every bound of every field of a request is the one in the table."""
    assert wrong("bounds") == []


def test_defaults_are_as_listed() -> None:
    """Every default of a field is the one in the table, null and empty lists apart."""
    assert wrong("defaults") == []


def exceptions() -> set[str]:
    """What is bounded otherwise than its name elsewhere, or has another default, or none."""
    own = {
        f"{operation}: {name}"
        for kind in ("bounds", "defaults")
        for operation, name in listed(kind)
        if operation
    }
    defaults = listed("defaults")
    several = {name for (operation, name), texts in defaults.items() if len(texts) > 1}
    named = {name for _, name in defaults}
    having = {(operation, name) for operation, name, _ in held("defaults")}
    without = {
        f"{operation}: {name}"
        for operation in OPERATIONS
        for name, _ in fields_of(operation)
        if name in named and (operation, name) not in having
    }
    return own | several | without


def test_each_exception_has_its_reason() -> None:
    """Where one name has unequal bounds or defaults a reason says why; none is left over."""
    reasons: dict[str, str] = TABLE["reasons"]
    assert exceptions() == set(reasons)
    assert [name for name, reason in reasons.items() if len(reason.split()) < 4] == []
