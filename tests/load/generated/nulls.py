"""The contract as the service reads it: `null` for what is not stated, which no schema offers."""

import copy
from typing import Any

_NULL = {"type": "null"}


def with_null_as_left_out(contract: dict[str, Any]) -> dict[str, Any]:
    """Give a contract that takes null in each field of a request that may be left out.

    A field with a default is none of them: left out it is not the same as unknown.
    """
    made = copy.deepcopy(contract)
    schemas = made["components"]["schemas"]
    for schema in schemas.values():
        if schema.get("additionalProperties") is not False:
            continue
        # A field that is null needs nothing beside it, which JSON Schema cannot say.
        schema.pop("dependentRequired", None)
        required = set(schema.get("required", ()))
        for name, part in schema["properties"].items():
            whole = schemas[part["$ref"].rpartition("/")[2]] if "$ref" in part else part
            if name not in required and "default" not in {**whole, **part}:
                schema["properties"][name] = {"anyOf": [part, _NULL]}
    return made
