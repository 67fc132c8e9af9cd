"""What the contract says in many places, written once among its components.

A reference may have words beside it (JSON Schema 2020-12): a field names the component of all
angles, and its own bounds, unit and words stand beside that. A field that several models have
alike, or a body and a query string, is a component of its own, named after what declares it.
"""

import json
import re
from collections import defaultdict
from collections.abc import Iterable, Mapping
from inspect import get_annotations
from typing import Any, get_args

from pydantic import BaseModel

from halfangle_service.fields.angles import ANGLE_FORMS

Json = dict[str, Any]

REFERENCE = "#/components/schemas/{model}"
PARAMETER = "#/components/parameters/{model}"
ANGLE_COMPONENT = "AngleIn"
#: What the name of a class says besides its subject: its topic, and its kind.
_TOPIC_AND_KIND = re.compile("^[A-Z][a-z]{3,}(?=[A-Z][a-z]+[A-Z])|(Request|Result|Fields|Row)$")
_OF_A_CHOICE = ("type", "enum", "const", "x-labels")
#: Where a field stands: name of the model, and its own.
Place = tuple[str, str]


def with_angles_named(schema: Any) -> Any:
    """The same, with each angle of a request as a reference to the one component."""
    if isinstance(schema, list):
        return [with_angles_named(part) for part in schema]
    if not isinstance(schema, dict):
        return schema
    if schema.get("anyOf") == ANGLE_FORMS["anyOf"]:
        beside = {key: part for key, part in schema.items() if key not in ANGLE_FORMS}
        return {"$ref": REFERENCE.format(model=ANGLE_COMPONENT), **beside}
    return {key: with_angles_named(part) for key, part in schema.items()}


def with_options_shared(schemas: Mapping[str, Json]) -> dict[str, Json]:
    """The same, with each choice that several fields offer alike, labels too, said once."""
    alike: dict[str, list[Place]] = defaultdict(list)
    choices: dict[str, Json] = {}
    for model, schema in sorted(schemas.items()):
        # A shared field is a schema of its own, and has its name.
        for field, part in schema.get("properties", {model: schema}).items():
            for choice in _choices(part):
                alike[_written(choice)].append((model, field))
                choices[_written(choice)] = choice
    names: dict[str, str] = {}
    for written, places in alike.items():
        name = f"Options_{places[0][1]}"
        if _is_shorter(len(places), len(written), REFERENCE, name):
            taken = name in names.values()
            names[written] = "_".join(["Options", *places[0]]) if taken else name
    made = {model: _with_choices_named(schema, names) for model, schema in schemas.items()}
    return {**made, **{name: choices[written] for written, name in names.items()}}


def _choices(schema: Any) -> Iterable[Json]:
    """Every choice with labels within a schema."""
    if isinstance(schema, list):
        for part in schema:
            yield from _choices(part)
    elif isinstance(schema, dict):
        if "x-labels" in schema:
            yield _choice(schema)
        for part in schema.values():
            yield from _choices(part)


def _choice(schema: Json) -> Json:
    return {key: part for key, part in schema.items() if key in _OF_A_CHOICE}


def _with_choices_named(schema: Any, names: Mapping[str, str]) -> Any:
    if isinstance(schema, list):
        return [_with_choices_named(part, names) for part in schema]
    if not isinstance(schema, dict):
        return schema
    name = names.get(_written(_choice(schema))) if "x-labels" in schema else None
    if name is None:
        return {key: _with_choices_named(part, names) for key, part in schema.items()}
    beside = {key: part for key, part in schema.items() if key not in _OF_A_CHOICE}
    return {"$ref": REFERENCE.format(model=name), **beside}


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
    alike: dict[tuple[str, str], list[Place]] = defaultdict(list)
    for model, schema in schemas.items():
        for field, part in schema.get("properties", {}).items():
            alike[field, _written(part)].append((model, field))
    again = set(also)
    shared = {
        (field, written): places
        for (field, written), places in alike.items()
        if _is_shorter(len(places) + bool(again & {*places}), len(written), REFERENCE, field)
    }
    names: dict[Place, str] = {}
    taken: set[str] = set()
    # The form of a field that stands in most places has its name to itself.
    for (field, _), places in sorted(shared.items(), key=lambda item: (-len(item[1]), item[0])):
        name = _component(places, models, taken) if field in taken else field
        taken.add(name)
        names.update(dict.fromkeys(places, name))
    return names


def _written(value: Any) -> str:
    return json.dumps(value, sort_keys=True, ensure_ascii=False, separators=(",", ":"))


def _is_shorter(times: int, length: int, reference: str, name: str) -> bool:
    """True where what stands in so many places is written in fewer bytes as references to it."""
    referring = times * len(reference.format(model=name) + '{"$ref":""}')
    return referring + length + len(f'"{name}":,') < times * length


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
                alike[_written(parameter)].append(operation)
    made: Json = {}
    names: dict[str, str] = {}
    for written, operations in alike.items():
        parameter = json.loads(written)
        reference = parameter["schema"].get("$ref", "")
        name = reference.rpartition("/")[2] or parameter["name"]
        if name not in made and _is_shorter(len(operations), len(written), PARAMETER, name):
            made[name] = parameter
            names[written] = name
    for item in document["paths"].values():
        for operation in item.values():
            if "parameters" in operation:
                operation["parameters"] = [
                    {"$ref": PARAMETER.format(model=names[written])} if written in names else one
                    for one in operation["parameters"]
                    for written in (_written(one),)
                ]
    document["components"]["parameters"] = dict(sorted(made.items()))
    return document


def _component(places: list[Place], models: Mapping[str, type[BaseModel]], taken: set[str]) -> str:
    """Name of a further form of a shared field: after the class that declares this one.

    Of a class for several units the field differs by unit, and is named after a model that has it.
    """
    field = places[0][1]
    declaring = sorted({_declaring(models[model], field) for model, _ in places})
    owner = declaring[0] if len(declaring) == 1 else "Every"
    owners = (*(_TOPIC_AND_KIND.sub("", name) for name in (owner, declaring[0])), min(places)[0])
    return next(name for owner in owners if (name := f"{owner}_{field}") not in taken)


def _declaring(model: type[BaseModel], field: str) -> str:
    """Name of the class that declares a field of a model."""
    return next(c.__name__ for c in model.__mro__ if field in get_annotations(c))
