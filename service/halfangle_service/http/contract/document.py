"""The OpenAPI 3.1 contract. Paths come from the registry, every schema from pydantic itself."""

import json
import re
from collections.abc import Iterable, Mapping
from dataclasses import asdict
from typing import Any

from pydantic import BaseModel
from pydantic.json_schema import JsonSchemaMode, models_json_schema

from halfangle_service.fields.angles import ANGLE_FORMAT, ANGLE_FORMAT_MEANING, ANGLE_FORMS
from halfangle_service.fields.glossary import Term, glossary, title_of
from halfangle_service.fields.schemas import DEFINITIONS, LabelledSchema, schema_of
from halfangle_service.http.batches.model import BATCHES_PATH, BatchAnswer, BatchRequest
from halfangle_service.http.cells import (
    AS_TEXT,
    ERROR_WORD,
    FIELD,
    KEY,
    LONGEST_SEPARATOR,
    ON_ERROR,
    PICK,
    SEPARATOR,
    STOP_WORD,
    VALUE_PATH,
)
from halfangle_service.http.contract.batches import BATCHES, batch_operation
from halfangle_service.http.contract.common import (
    API_KEY,
    BASIC,
    EXAMPLE_PATH,
    HEADERS,
    SECURITY_SCHEMES,
    advisories,
    described_tags,
    information,
    problem_responses,
    problem_types,
    responses,
)
from halfangle_service.http.contract.curves import CURVES, curve_operation
from halfangle_service.http.contract.forms import form_hints
from halfangle_service.http.contract.routings import csv_items
from halfangle_service.http.contract.shared import (
    ANGLE_COMPONENT,
    REFERENCE,
    Place,
    models_within,
    parameters_shared,
    shared_fields,
    with_angles_named,
    with_fields_shared,
    with_options_shared,
)
from halfangle_service.http.contract.sheets import SHEET_RESPONSE, sheet_items, sheet_response
from halfangle_service.http.contract.shorter import (
    with_answers_alike,
    with_nulls_in_types,
    with_whole_bounds,
)
from halfangle_service.http.contract.tables import TABLES, table_operation
from halfangle_service.http.curves.model import CURVES_PATH, CurveAnswer, CurveRequest
from halfangle_service.http.picks import BETWEEN_VALUES
from halfangle_service.http.problems import Problem
from halfangle_service.http.query import INTO, QueryField, query_fields
from halfangle_service.http.tables.model import TABLES_PATH
from halfangle_service.operation import FIXED_SIZE, Operation, PublishedTable

AnyOperation = Operation[Any, Any]
AnyTable = PublishedTable[Any]
Json = dict[str, Any]

#: Tag of the catalogue of operations, which belongs to no topic.
CATALOGUE = "catalogue"
#: Tag of single values of answers.
VALUES = "values"
#: Where the meaning of each field's name is served.
GLOSSARY_PATH = "/glossary.json"
TAGS = [
    {"name": CATALOGUE, "description": "Every operation, and how it is asked."},
    {"name": BATCHES, "description": "Rows of any operations in one request."},
    {"name": CURVES, "description": "An operation over a range of its numbers, as arrays."},
    {"name": TABLES, "description": "Rows of one operation as CSV."},
    {"name": VALUES, "description": "Single values of answers, for spreadsheets."},
]
#: States what lies within objects; its own name is not sent.
_WITHIN: Json = {
    "name": "within",
    "in": "query",
    "style": "form",
    "explode": True,
    "description": "Fields of objects by dotted names, each a parameter of its own.",
    "schema": {"type": "object", "additionalProperties": True},
}
_INTRODUCTION = (
    "Toolroom calculations: sine settings, gauge blocks, wheels, tapers, centers, and the plan "
    "that composes them. Every answer carries its formulas, its sources and the release that made "
    "it; on one installation the same request at the same release gives the same bytes. Every "
    "error is a problem document (RFC 9457). Lengths are in the request's `units`; angles go in as "
    "decimal degrees or as a string in degrees, minutes and seconds (`format: angle`, described by "
    "`x-formats`). A field that is not stated is left out; a `null` is read as left out, too. "
    "Which fields go together is under `x-rules` of a request. For forms `x-forms` says which "
    "fields stand together (those of no group are the operation's own), and how many decimals of "
    "each `x-unit` are worth showing; advanced are fields with a default and those of a group "
    "marked so, unless they are required. "
    "In a query string a list is a parameter repeated, or its entries parted by `;`; a dot "
    "reaches once into an object (`shank.kind=taper`), and of a list of objects each field is the "
    "list of its values (`settings.angle=10;20`). "
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
    paths[BATCHES_PATH] = {"post": batch_operation()}
    paths[CURVES_PATH] = {"post": curve_operation(operations)}
    paths[TABLES_PATH] = {"post": table_operation()}
    paths[VALUE_PATH] = {"get": _value_operation(operations, tables)}
    paths.update(sheet_items(operations))
    paths.update(csv_items(operations))
    topics = sorted({operation.topic for operation in operations.values()})
    document: Json = {
        "openapi": "3.1.0",
        "info": information(_INTRODUCTION),
        "servers": [{"url": "/", "description": "The installation that serves this document."}],
        "security": [{}, {API_KEY: []}, {BASIC: []}],
        "tags": described_tags(topics) + TAGS,
        "paths": paths,
        "components": {
            "schemas": schemas,
            "responses": {**problem_responses(), SHEET_RESPONSE: sheet_response()},
            "headers": HEADERS,
            "securitySchemes": SECURITY_SCHEMES,
        },
        "x-formats": {ANGLE_FORMAT: ANGLE_FORMAT_MEANING},
        "x-glossary": GLOSSARY_PATH,
        "x-stored-answers": EXAMPLE_PATH.format(operation="{topic}.{verb}"),
        "x-forms": form_hints(operation.request for operation in operations.values()),
        "x-problem-types": problem_types(),
        "x-advisories": advisories(),
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


def operation_id(operation: AnyOperation) -> str:
    """Operation id of a calculation asked by POST."""
    return _identifier(operation.topic, operation.verb)


def method_name(operation: AnyOperation) -> str:
    """The client's method: the operation id less its topic."""
    return _identifier(operation.verb)


def _tag(topic: str) -> str:
    return topic or CATALOGUE


def _schemas(operations: Iterable[AnyOperation], tables: Iterable[AnyTable]) -> Json:
    """Schemas of all requests, answers and problems, from one call so that names cannot clash.

    What several fields have alike is a schema of its own.
    """
    models: list[tuple[type[BaseModel], JsonSchemaMode]] = [
        (Problem, "serialization"),
        (BatchRequest, "validation"),
        (BatchAnswer, "serialization"),
        (CurveRequest, "validation"),
        (CurveAnswer, "serialization"),
    ]
    asked: list[Place] = []
    for operation in operations:
        models += [(operation.request, "validation"), (operation.answer, "serialization")]
        fields = query_fields(operation.request) or {}
        asked += [(operation.request.__name__, f) for f, form in fields.items() if not form.column]
    for table in tables:
        models.append((table.listing_answer, "serialization"))
        models.append((table.item_answer, "serialization"))
    _, definitions = models_json_schema(
        models, ref_template=REFERENCE, schema_generator=LabelledSchema
    )
    written = with_whole_bounds(with_nulls_in_types(definitions["$defs"]))
    named = with_answers_alike(with_angles_named(written))
    shared = shared_fields(named, models_within(model for model, _ in models), asked)
    schemas = with_options_shared(with_fields_shared(named, shared))
    return dict(sorted({ANGLE_COMPONENT: ANGLE_FORMS, **schemas}.items()))


def _operation_item(operation: AnyOperation, schemas: Json) -> Json:
    """Path item of an operation: POST, and GET where the request is flat."""
    identifier = operation_id(operation)
    common = {
        "tags": [operation.topic],
        "summary": operation.title,
        "description": _description(operation),
        **({"x-heavy": True} if operation.heavy else {}),
        **({"x-columns": True} if operation.columns else {}),
    }
    content = {
        "schema": {"$ref": REFERENCE.format(model=operation.request.__name__)},
        "example": dict(operation.example),
    }
    post = {
        **common,
        "operationId": identifier,
        "requestBody": {"required": True, "content": {"application/json": content}},
        "responses": responses(operation.answer),
    }
    query = _query_operation(operation, identifier, schemas[operation.request.__name__])
    return {"post": post, **({"get": query} if query else {})}


def _description(operation: AnyOperation) -> str:
    """The summary, and what bounds the work where a request may ask for more or less of it."""
    if operation.largest_request == FIXED_SIZE:
        return operation.summary
    return f"{operation.summary}\n\nLargest request: {operation.largest_request}."


def _query_operation(operation: AnyOperation, identifier: str, schema: Json) -> Json | None:
    """GET form of an operation, or None where its request lies deeper than a query reaches."""
    fields = query_fields(operation.request)
    if fields is None:
        return None
    parameters = list(_parameters(schema, fields, schema_of(operation.request)))
    if any(INTO in name for name in fields):
        parameters.append(_WITHIN)
    return {
        "tags": [operation.topic],
        "summary": f"{operation.title}, by query string",
        **({"x-heavy": True} if operation.heavy else {}),
        "operationId": f"{identifier}_by_query",
        "parameters": parameters,
        "responses": responses(operation.answer, cached=True),
    }


def _parameters(schema: Json, fields: Mapping[str, QueryField], whole: Json) -> Iterable[Json]:
    """Parameters of a query string that state a field, typed as it is in the body.

    Where a list of objects is stated by their one scalar, it is typed as a list of that. What is
    required but only stated in parts is not among them.
    """
    required = set(schema.get("required", ()))
    for name, part in schema["properties"].items():
        if name not in fields:
            continue
        form = fields[name]
        yield {
            "name": name,
            "in": "query",
            **({"required": True} if name in required and not form.column else {}),
            "schema": _list_of_scalars(whole, form) if form.column else part,
        }


def _list_of_scalars(whole: Json, form: QueryField) -> Json:
    """Schema of a list of objects that is stated by one scalar of each."""
    outer, inner = form.path
    listed = whole["properties"][outer]
    model = listed["items"]["$ref"].removeprefix(DEFINITIONS.format(model=""))
    of_each = whole["$defs"][model]["properties"][inner]
    told = {"title", "description", "examples"}
    return {
        "type": "array",
        **{key: listed[key] for key in ("minItems", "maxItems") if key in listed},
        "items": with_angles_named({key: of_each[key] for key in of_each if key not in told}),
        "description": f"`{inner}` of each.",
    }


def _value_operation(operations: Mapping[str, AnyOperation], tables: Iterable[AnyTable]) -> Json:
    """Values of any answer or row as text: the operation or table by name, the rest free."""
    asked_of = [name for name, o in operations.items() if query_fields(o.request) is not None]
    named = [*asked_of, *(table.dotted_name for table in tables if table.topic)]
    asked = {"in": "path", "required": True}
    parameters = [
        {"name": "operation", **asked, "schema": {"type": "string", "enum": named}},
        {
            "name": FIELD,
            **asked,
            "description": "Path of a value in the result, or several parted by commas: `height`, "
            "`angle.dms`, `blocks.0`, `ways.*.name` of every entry; `advisories` gives what the "
            "answer advises, one a line, or `none`.",
            "schema": {"type": "string", "minLength": 1},
            "example": "height",
        },
        {
            "name": SEPARATOR,
            "in": "query",
            "description": "Between several values, or between the entries of the one list picked. "
            "It holds a sign that no number has.",
            "schema": {
                "type": "string",
                "minLength": 1,
                "maxLength": LONGEST_SEPARATOR,
                "default": BETWEEN_VALUES,
            },
        },
        {
            "name": ON_ERROR,
            "in": "query",
            "description": f"`{AS_TEXT}`: what is refused comes with status 200 as a text that "
            f"begins with `{ERROR_WORD}`, or with `{STOP_WORD}` where the answer says stop.",
            "schema": {"type": "string", "enum": [AS_TEXT]},
        },
        {
            "name": "request",
            "in": "query",
            "style": "form",
            "explode": True,
            "description": "The fields of the operation's request, each a parameter of its own "
            f"as in its own GET; of a table the `{KEY}` of the row.",
            "schema": {"type": "object", "additionalProperties": True},
        },
    ]
    return {
        "tags": [VALUES],
        "summary": "Values of an answer, as text",
        "description": "For a spreadsheet's web function, which reads no JSON: the value alone, in "
        "full precision, with a decimal point; `null` where it is not stated. Of a list the blocks "
        "of a stack are joined by ` + `, other entries by `; `. It is refused where the answer "
        "says stop, unless it is a judgement (`forecast`, `verdict`) that does not say yes. An "
        f"operation's or a row's own GET with the parameter `{PICK}` in place of the field answers "
        "the same.",
        "operationId": _identifier(VALUES, "get", "one"),
        "parameters": parameters,
        "responses": responses(None, cached=True),
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
                "responses": responses(table.listing_answer, cached=True),
            }
        },
        table.path + "/{key}": {
            "get": {
                **common,
                "summary": f"{table.title}: one {table.singular}",
                "operationId": _identifier(tag, "get", table.singular),
                "parameters": [key],
                "responses": responses(table.item_answer, cached=True),
            }
        },
    }
