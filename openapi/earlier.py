"""What a client may not count on where it calls a service of the release before its own.

Clients and services are upgraded at different times, so a client reads the answers of one release
before its own (and, for what later ones add, of any after it). A field that the earlier contract
does not have is one that such an answer lacks.
"""

import json
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from wording import Schema


def earlier_release(folder: Path, release: str) -> dict[str, Any] | None:
    """The newest kept contract of another release than this; None where there is none."""
    kept = {tuple(map(int, path.stem.split("."))): path for path in folder.glob("*.json")}
    others = [place for place in kept if place != tuple(map(int, release.split(".")))]
    if not others:
        return None
    document: dict[str, Any] = json.loads(kept[max(others)].read_text("utf-8"))
    return document


def readable(contract: dict[str, Any], earlier: dict[str, Any] | None) -> dict[str, Any]:
    """The contract with every field that the earlier one lacks one that may be absent."""
    if earlier is None:
        return contract
    known = earlier["components"]["schemas"]
    components = contract["components"]
    schemas = {
        name: _without_new(schema, known[name]) if name in known else schema
        for name, schema in components["schemas"].items()
    }
    return {**contract, "components": {**components, "schemas": schemas}}


def _without_new(schema: Schema, before: Schema) -> Schema:
    """An object whose new fields need not be there."""
    required = schema.get("required", [])
    new = {*schema.get("properties", {})} - {*_fields(before)}
    kept = [name for name in required if name not in new]
    return {**schema, "required": kept} if kept != required else schema


def _fields(schema: Schema) -> Iterator[str]:
    yield from schema.get("properties", {})
    for part in schema.get("allOf", []):
        yield from _fields(part)
