"""What the contract says in many places, written once among its components.

A reference may have words beside it (JSON Schema 2020-12): a field names the component of all
angles, and its own bounds, unit and words stand beside that.
"""

from typing import Any

from halfangle_service.fields.angles import ANGLE_FORMS

Json = dict[str, Any]

REFERENCE = "#/components/schemas/{model}"
ANGLE_COMPONENT = "AngleIn"
ANGLE_SCHEMA: Json = {
    "description": "An angle in a request: decimal degrees as a number, or degrees, minutes and "
    "seconds as text. The bounds of each field stand beside the reference to this.",
    **ANGLE_FORMS,
}


def with_angles_named(schema: Any) -> Any:
    """The same, with each angle of a request as a reference to the one component."""
    if isinstance(schema, list):
        return [with_angles_named(part) for part in schema]
    if not isinstance(schema, dict):
        return schema
    if schema.get("anyOf") == ANGLE_FORMS["anyOf"]:
        beside = {key: part for key, part in schema.items() if key != "anyOf"}
        return {"$ref": REFERENCE.format(model=ANGLE_COMPONENT), **beside}
    return {key: with_angles_named(part) for key, part in schema.items()}
