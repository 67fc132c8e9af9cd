"""The OpenAPI 3.1 contract. Paths come from the registry, every schema from pydantic itself."""

import json
import re
from collections.abc import Iterable, Mapping
from dataclasses import asdict
from typing import Any

from pydantic import BaseModel
from pydantic.json_schema import JsonSchemaMode, models_json_schema

from halfangle_service import __version__
from halfangle_service.fields.angles import ANGLE_FORMAT, ANGLE_FORMAT_MEANING
from halfangle_service.fields.glossary import Term, glossary, title_of
from halfangle_service.fields.schemas import LabelledSchema
from halfangle_service.http.contract.shared import (
    ANGLE_COMPONENT,
    ANGLE_SCHEMA,
    REFERENCE,
    Place,
    models_within,
    parameters_shared,
    shared_fields,
    with_angles_named,
    with_fields_shared,
)
from halfangle_service.http.problems import PROBLEM_MEDIA_TYPE, PROBLEM_TYPES, Problem
from halfangle_service.http.query import PICK, query_fields
from halfangle_service.operation import Operation, PublishedTable

AnyOperation = Operation[Any, Any]
AnyTable = PublishedTable[Any]
Json = dict[str, Any]

#: Where the meaning of each field's name is served.
GLOSSARY_PATH = "/glossary.json"
_INTRODUCTION = (
    "Toolroom calculations: sine settings, gauge blocks, wheels, tapers, centers, and the plan "
    "that composes them. Every answer carries its formulas, its sources and the release that made "
    "it; on one installation the same request at the same release gives the same bytes. Every "
    "error is a problem document (RFC 9457). Lengths are in the request's `units`; angles go in as "
    "decimal degrees or as a string in degrees, minutes and seconds (`format: angle`, described by "
    "`x-formats`). A field that is not stated is left out; a `null` is read as left out, too. "
    "Requests take no unknown field; answers may get further fields and words in later releases. "
    "Each field's name has one meaning over all operations: the document at `x-glossary` gives its "
    "title, symbol, unit and datum."
)


def contract(operations: Mapping[str, AnyOperation], tables: Iterable[AnyTable]) -> Json:
    """Give the whole contract as one document."""
    tables = tuple(tables)
    schemas = _schemas(operations.values(), tables)
    paths: Json = {o.path: _operation_item(o, schemas) for o in operations.values()}
    for table in tables:
        paths.update(_table_items(table))
    tags = sorted({_tag(topic) for topic in [o.topic for o in operations.values()]})
    document: Json = {
        "openapi": "3.1.0",
        "info": {
            "title": "Halfangle",
            "version": __version__,
            "summary": "Toolroom calculations with their limits, error budget and source.",
            "description": _INTRODUCTION,
        },
        "jsonSchemaDialect": "https://json-schema.org/draft/2020-12/schema",
        "tags": [{"name": tag} for tag in [*tags, _tag("")]],
        "paths": paths,
        "components": {
            "schemas": schemas,
            "responses": _problem_responses(),
        },
        "x-formats": {ANGLE_FORMAT: ANGLE_FORMAT_MEANING},
        "x-glossary": GLOSSARY_PATH,
    }
    return parameters_shared(document)


def glossary_json() -> bytes:
    """Every field's symbol, unit, datum, meaning and title by its name, less what it lacks."""
    return compact_json({term.name: _term(term) for term in glossary().values()})


def _term(term: Term) -> Json:
    """A term of the glossary without its name."""
    about = {**asdict(term), "title": title_of(term.name)}
    return {key: value for key, value in about.items() if value and key != "name"}


def compact_json(value: Any) -> bytes:
    """Write JSON without a blank between its values."""
    return json.dumps(value, ensure_ascii=False, separators=(",", ":")).encode()


def contract_json(document: Json) -> bytes:
    """The contract as it is committed: one line a value, for the sake of diffs."""
    return (json.dumps(document, indent=2, ensure_ascii=False) + "\n").encode()


def _identifier(*words: str) -> str:
    """Operation id of these words; it becomes a method's name, so it holds no hyphen or blank."""
    return re.sub(r"\W", "_", "_".join(words))


def _tag(topic: str) -> str:
    return topic or "catalogue"


def _schemas(operations: Iterable[AnyOperation], tables: Iterable[AnyTable]) -> Json:
    """Schemas of all requests, answers and problems, from one call so that names cannot clash.

    What several fields have alike is a schema of its own.
    """
    models: list[tuple[type[BaseModel], JsonSchemaMode]] = [(Problem, "serialization")]
    asked: list[Place] = []
    for operation in operations:
        models += [(operation.request, "validation"), (operation.answer, "serialization")]
        asked += [(operation.request.__name__, f) for f in query_fields(operation.request) or ()]
    for table in tables:
        models.append((table.listing_answer, "serialization"))
        models.append((table.item_answer, "serialization"))
    _, definitions = models_json_schema(
        models, ref_template=REFERENCE, schema_generator=LabelledSchema
    )
    named = with_angles_named(definitions["$defs"])
    shared = shared_fields(named, models_within(model for model, _ in models), asked)
    schemas: Json = {ANGLE_COMPONENT: ANGLE_SCHEMA, **with_fields_shared(named, shared)}
    return dict(sorted(schemas.items()))


def _operation_item(operation: AnyOperation, schemas: Json) -> Json:
    """Path item of an operation: POST, and GET where the request is flat."""
    identifier = _identifier(operation.topic, operation.verb)
    common = {
        "tags": [operation.topic],
        "summary": operation.title,
        "description": f"{operation.summary}\n\nLargest request: {operation.largest_request}.",
        **({"x-heavy": True} if operation.heavy else {}),
    }
    content = {
        "schema": {"$ref": REFERENCE.format(model=operation.request.__name__)},
        "example": dict(operation.example),
    }
    post = {
        **common,
        "operationId": identifier,
        "requestBody": {"required": True, "content": {"application/json": content}},
        "responses": _responses(operation.answer, (400, 406, 408, 413, 415, 422, 503)),
    }
    query = _query_operation(operation, identifier, schemas[operation.request.__name__])
    return {"post": post, **({"get": query} if query else {})}


def _query_operation(operation: AnyOperation, identifier: str, schema: Json) -> Json | None:
    """GET form of an operation, or None where its request is not flat."""
    fields = query_fields(operation.request)
    if fields is None:
        return None
    required = set(schema.get("required", ()))
    parameters: list[Json] = [
        {
            "name": name,
            "in": "query",
            **({"required": True} if name in required else {}),
            "schema": part,
        }
        for name, part in schema["properties"].items()
        if name in fields
    ]
    parameters.append(
        {
            "name": PICK,
            "in": "query",
            "required": False,
            "description": "Path of one value of the result (`height`, `angle.dms`): the answer is "
            "then that value as text/plain, for a spreadsheet's web function. It is refused where "
            "the answer says stop, unless it is a judgement (`forecast`, `verdict`) that does not "
            "say yes. `advisories` gives what the answer advises, one a line, or `none`.",
            "schema": {"type": "string"},
        }
    )
    return {
        "tags": [operation.topic],
        "summary": f"{operation.title}, by query string",
        "description": f"As `{identifier}`, for callers that can send nothing but an address.",
        **({"x-heavy": True} if operation.heavy else {}),
        "operationId": f"{identifier}_by_query",
        "parameters": parameters,
        "responses": _responses(operation.answer, (400, 406, 422, 503), text=True),
    }


def _table_items(table: AnyTable) -> Json:
    """Path items of a published table: its listing, and one row by its key."""
    tag = _tag(table.topic)
    common = {"tags": [tag], "description": table.summary}
    keys = table.keys()
    key = {
        "name": "key",
        "in": "path",
        "required": True,
        "description": f"The {table.key}, such as `{keys[0]}`.",
        "schema": {"type": "string", "minLength": 1},
        "example": keys[0],
    }
    return {
        table.path: {
            "get": {
                **common,
                "summary": table.title,
                "operationId": _identifier(tag, "list", table.name),
                "responses": _responses(table.listing_answer, (406, 503)),
            }
        },
        table.path + "/{key}": {
            "get": {
                **common,
                "summary": f"{table.title}: one {table.singular}",
                "operationId": _identifier(tag, "get", table.singular),
                "parameters": [key],
                "responses": _responses(table.item_answer, (404, 406, 503)),
            }
        },
    }


#: What comes with a picked value, which has no room for it.
_ADVISORIES_HEADER: Json = {
    "Advisories": {
        "description": "With a picked value: codes of the answer's advisories, each with its "
        "severity, as a list of tokens (RFC 9651); absent where there are none.",
        "schema": {"type": "string"},
        "example": "wheel-safety;severity=caution, steep-angle;severity=note",
    }
}


def _responses(answer: type[BaseModel], problems: Iterable[int], *, text: bool = False) -> Json:
    """Responses of one operation: the answer, and each problem it can meet."""
    answered: Json = {
        "description": "The answer.",
        "content": {
            "application/json": {"schema": {"$ref": REFERENCE.format(model=answer.__name__)}}
        },
    }
    if text:
        answered["headers"] = _ADVISORIES_HEADER
        answered["content"]["text/plain"] = {"schema": {"type": "string"}}
    refused = {str(s): {"$ref": f"#/components/responses/Problem{s}"} for s in problems}
    return {"200": answered, **refused}


def _problem_responses() -> Json:
    """One named response a status, listing the problem types that come with it."""
    responses: Json = {}
    for status in sorted({status for status, _ in PROBLEM_TYPES.values()}):
        types = [name for name, (code, _) in PROBLEM_TYPES.items() if code == status]
        responses[f"Problem{status}"] = {
            "description": "; ".join(
                f"{PROBLEM_TYPES[name][1]} (`/problems/{name}`)" for name in types
            )
            + ".",
            "content": {
                PROBLEM_MEDIA_TYPE: {"schema": {"$ref": REFERENCE.format(model="Problem")}}
            },
        }
    return responses
