"""What the contract says in many places, written once among its components.

A reference may have words beside it (JSON Schema 2020-12): a field names the component of all
angles, and its own bounds, unit and words stand beside that. A field that several models have
alike, or a body and a query string, is a component of its own, named after what declares it.
"""

import json
from collections import defaultdict
from collections.abc import Iterable, Mapping
from inspect import get_annotations
from typing import Any, get_args

from pydantic import BaseModel

from halfangle_service.fields.angles import ANGLE_FORMS

Json = dict[str, Any]

REFERENCE = "#/components/schemas/{model}"
PARAMETER = "#/components/parameters/{name}"
ANGLE_COMPONENT = "AngleIn"
ANGLE_SCHEMA: Json = {
    "description": "An angle in a request: decimal degrees as a number, or degrees, minutes and "
    "seconds as text. The bounds of each field stand beside the reference to this.",
    **ANGLE_FORMS,
}
#: A schema as short as a reference to it stays where it is.
_SHORT = 60
#: Where a field stands: name of the model, and its own.
Place = tuple[str, str]


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


def models_within(models: Iterable[type[BaseModel]]) -> dict[str, type[BaseModel]]:
    """These models and those that they hold, however deep, by their names."""
    found: dict[str, type[BaseModel]] = {}
    waiting: list[Any] = [*models]
    while waiting:
        part = waiting.pop()
        if not (isinstance(part, type) and issubclass(part, BaseModel)):
            waiting += get_args(part)
        elif part.__name__ not in found:
            found[part.__name__] = part
            waiting += [field.annotation for field in part.model_fields.values()]
    return found


def shared_fields(
    schemas: Mapping[str, Json], models: Mapping[str, type[BaseModel]], also: Iterable[Place]
) -> dict[Place, str]:
    """Name of the component of each field that is said more than once.

    `also` are fields that a query string takes besides.
    """
    alike: dict[str, list[Place]] = defaultdict(list)
    for model, schema in schemas.items():
        for field, part in schema.get("properties", {}).items():
            alike[f"{field} {json.dumps(part, sort_keys=True)}"].append((model, field))
    again = set(also)
    names: dict[Place, str] = {}
    taken: set[str] = set()
    for written, places in alike.items():
        if (len(places) > 1 or again & {*places}) and len(written) > _SHORT:
            name = _component(places, models, taken)
            taken.add(name)
            names.update(dict.fromkeys(places, name))
    return names


def with_fields_shared(schemas: Mapping[str, Json], names: Mapping[Place, str]) -> dict[str, Json]:
    """The schemas with those fields as references, and the fields' own schemas beside them."""
    made: dict[str, Json] = {}
    for model, schema in schemas.items():
        fields = dict(schema.get("properties", {}))
        for field, part in fields.items():
            if (model, field) in names:
                name = names[model, field]
                made[name] = part
                fields[field] = {"$ref": REFERENCE.format(model=name)}
        made[model] = {**schema, "properties": fields} if fields else dict(schema)
    return made


def parameters_shared(document: Json) -> Json:
    """The document with each parameter that several operations have alike among its components."""
    alike: dict[str, list[Json]] = defaultdict(list)
    for item in document["paths"].values():
        for operation in item.values():
            for parameter in operation.get("parameters", ()):
                alike[json.dumps(parameter, sort_keys=True)].append(operation)
    made: Json = {}
    names: dict[str, str] = {}
    for written, operations in alike.items():
        parameter = json.loads(written)
        if len(operations) > 1:
            reference = parameter["schema"].get("$ref", "")
            name = reference.rpartition("/")[2] or parameter["name"]
            made[name] = parameter
            names[written] = name
    for item in document["paths"].values():
        for operation in item.values():
            if "parameters" in operation:
                operation["parameters"] = [
                    {"$ref": PARAMETER.format(name=names[written])} if written in names else one
                    for one in operation["parameters"]
                    for written in (json.dumps(one, sort_keys=True),)
                ]
    document["components"]["parameters"] = dict(sorted(made.items()))
    return document


def _component(places: list[Place], models: Mapping[str, type[BaseModel]], taken: set[str]) -> str:
    """Name of a shared field: after the class that declares it, where that is one.

    Of a class for several units the field differs by unit, and is named after a model that has it.
    """
    field = places[0][1]
    declaring = sorted({_declaring(models[model], field) for model, _ in places})
    owner = declaring[0] if len(declaring) == 1 else "Every"
    names = [f"{name}_{field}" for name in (owner, declaring[0], min(places)[0])]
    return next(name for name in names if name not in taken)


def _declaring(model: type[BaseModel], field: str) -> str:
    """Name of the class that declares a field of a model."""
    return next(c.__name__ for c in model.__mro__ if field in get_annotations(c))
