"""The contract with what it says once put in each place that refers to it.

The contract keeps repeated fields, parameters and answers among its components. The generator, and
tests that go through the schemas, want each field whole where it stands, and want it written in one
way (`http/contract/shorter.py` has the other). Models stay components.
"""

from typing import Any

from wording import Schema

_COMPONENTS = "#/components/"
#: What stands beside a field's forms, not within one.
_OF_A_FIELD = frozenset({"description", "title", "default", "examples", "x-unit"})


def inlined(contract: dict[str, Any]) -> dict[str, Any]:
    """Give the contract with every shared part resolved; models stay by their names."""
    components: dict[str, dict[str, Schema]] = contract["components"]
    made: dict[str, Any] = _resolved(contract, components)
    schemas = made["components"]["schemas"]
    kept = {name: schema for name, schema in schemas.items() if not is_shared(name)}
    return {**made, "components": {**made["components"], "schemas": kept}}


def is_shared(name: str) -> bool:
    """True for a schema that several places share, such as `high_roll_diameter` or `Every_units`.

    Names of models begin with a capital and have no underscore.
    """
    return name in {"AngleIn", "Answer"} or "_" in name or name[0].islower()


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
    return _spelled_out({key: _resolved(part, components) for key, part in value.items()})


def _spelled_out(schema: Schema) -> Schema:
    """A schema in JSON Schema's longer way: null as a form of its own, an object in one piece."""
    match schema:
        case {"type": [str(kind), "null"], **more}:
            beside = {key: part for key, part in more.items() if key in _OF_A_FIELD}
            form = {key: part for key, part in more.items() if key not in _OF_A_FIELD}
            return {"anyOf": [{"type": kind, **form}, {"type": "null"}], **beside}
        case {"allOf": [{"properties": dict()} as every, {"properties": dict()} as own]}:
            fields = {**own["properties"], **every["properties"]}
            required = [*own.get("required", ()), *every.get("required", ())]
            return {**every, "properties": fields, "required": required}
    return schema
