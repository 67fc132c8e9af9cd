"""The contract with what it says once put in each place that refers to it.

The contract keeps repeated fields, parameters and answers among its components. The generator, and
tests that go through the schemas, want each field whole where it stands. Models stay components.
"""

from typing import Any

from wording import Schema

_COMPONENTS = "#/components/"


def inlined(contract: dict[str, Any]) -> dict[str, Any]:
    """Give the contract with every shared part resolved; models stay by their names."""
    components: dict[str, dict[str, Schema]] = contract["components"]
    made: dict[str, Any] = _resolved(contract, components)
    schemas = made["components"]["schemas"]
    kept = {name: schema for name, schema in schemas.items() if not is_shared(name)}
    return {**made, "components": {**made["components"], "schemas": kept}}


def is_shared(name: str) -> bool:
    """True for a schema that several fields share, such as `PlateFields_center_distance`.

    Names of models have no underscore.
    """
    return name == "AngleIn" or "_" in name


def _resolved(value: Any, components: dict[str, dict[str, Schema]]) -> Any:
    if isinstance(value, list):
        return [_resolved(part, components) for part in value]
    if not isinstance(value, dict):
        return value
    reference = value.get("$ref")
    if isinstance(reference, str) and reference.startswith(_COMPONENTS):
        kind, name = reference.removeprefix(_COMPONENTS).split("/")
        if kind != "schemas" or is_shared(name):
            beside = {key: part for key, part in value.items() if key != "$ref"}
            return {
                **_resolved(components[kind][name], components),
                **_resolved(beside, components),
            }
    return {key: _resolved(part, components) for key, part in value.items()}
