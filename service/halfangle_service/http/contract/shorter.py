"""The same contract in fewer bytes: nothing of it is left out, and no reader has to know.

What is written here in JSON Schema's shorter way is put back into the longer one by
`openapi/inlining.py`, for the generator of the client and for tests.
"""

from collections.abc import Mapping
from typing import Any

from halfangle_service.http.contract.shared import REFERENCE

Json = dict[str, Any]

#: What every answer has besides its own result.
ANSWER = "Answer"
_OWN = "result"
_BOUNDS = ("minimum", "maximum", "exclusiveMinimum", "exclusiveMaximum")


def with_nulls_in_types(schema: Any) -> Any:
    """The same, with a plain value that may be null as one type with two names, and no union."""
    if isinstance(schema, list):
        return [with_nulls_in_types(part) for part in schema]
    if not isinstance(schema, dict):
        return schema
    made = {key: with_nulls_in_types(part) for key, part in schema.items()}
    match made.get("anyOf"):
        case [{"type": str(kind), **more}, {"type": "null"}] if not more.keys() & {"enum", "const"}:
            beside = {key: part for key, part in made.items() if key != "anyOf"}
            return {**beside, **more, "type": [kind, "null"]}
    return made


def with_whole_bounds(schema: Any) -> Any:
    """The same, with `10000` for a bound of `10000.0`."""
    if isinstance(schema, list):
        return [with_whole_bounds(part) for part in schema]
    if not isinstance(schema, dict):
        return schema
    return {key: _whole(key, part) for key, part in schema.items()}


def _whole(key: str, part: Any) -> Any:
    if key in _BOUNDS and isinstance(part, float) and part.is_integer():
        return int(part)
    return with_whole_bounds(part)


def with_answers_alike(schemas: Mapping[str, Json]) -> dict[str, Json]:
    """The schemas with each answer as what all answers have, and its own result."""
    made: dict[str, Json] = {}
    for name, schema in schemas.items():
        fields = schema.get("properties", {})
        if _is_answer(schema):
            own = {"properties": {_OWN: fields[_OWN]}, "required": [_OWN]}
            made[name] = {"allOf": [{"$ref": REFERENCE.format(model=ANSWER)}, own]}
            made[ANSWER] = _of_all(schema)
        else:
            made[name] = schema
    return made


def _is_answer(schema: Json) -> bool:
    return set(schema.get("properties", ())) == {_OWN, "advisories", "basis"}


def _of_all(answer: Json) -> Json:
    """An answer without what is its own."""
    fields = {name: part for name, part in answer["properties"].items() if name != _OWN}
    return {
        "description": "An answer: its result, advisories, and what it stands on.",
        "properties": fields,
        "required": list(fields),
        "type": "object",
    }
