"""Sheets in the contract: a sub-address of each operation that has one."""

import re
from collections.abc import Mapping
from typing import Any

from pydantic import BaseModel

from halfangle_service.fields.schemas import schema_of
from halfangle_service.http.contract.common import responses
from halfangle_service.http.contract.shared import REFERENCE
from halfangle_service.http.query import query_fields
from halfangle_service.http.sheets import HTML, PDF, SHEET_PATH, choice_of
from halfangle_service.operation import Operation
from halfangle_service.sheets.made import WITH_SHEET

AnyOperation = Operation[Any, Any]
Json = dict[str, Any]

#: The response that all sheets share.
SHEET_RESPONSE = "Sheet"
#: The tag comes with GET alone, as with any answer.
_HEADERS = ("X-Request-ID", "ETag", "Advisories")
_OF_A_PLAN = "plan"


def sheet_items(operations: Mapping[str, AnyOperation]) -> Json:
    """Path items of all sheets."""
    found = (operations[name] for name in WITH_SHEET if name in operations)
    return {SHEET_PATH.format(path=o.path): _sheet_item(o) for o in found}


def sheet_response() -> Json:
    """The answer of all of them: a page, or the same as PDF."""
    return {
        "description": "The sheet. What the answer says of severity `stop` stands on top of it, "
        "and in the header.",
        "headers": {name: {"$ref": f"#/components/headers/{name}"} for name in _HEADERS},
        "content": {
            HTML.partition(";")[0]: {"schema": {"type": "string"}},
            PDF: {"schema": {"type": "string", "contentMediaType": PDF}},
        },
    }


def sheet_id(operation: AnyOperation) -> str:
    """Operation id of a sheet: of a plan its topic's own, `jobs_sheet`."""
    parts = [operation.topic, *([] if operation.verb == _OF_A_PLAN else [operation.verb]), "sheet"]
    return re.sub(r"\W", "_", "_".join(parts))


def _sheet_item(operation: AnyOperation) -> Json:
    identifier = sheet_id(operation)
    chosen = parameters_of(choice_of(operation))
    common = {
        "tags": [operation.topic],
        "summary": f"{operation.title}: sheet",
        "operationId": identifier,
        "x-heavy": True,
        "parameters": chosen,
    }
    refusals = {status: r for status, r in responses(None).items() if status != "200"}
    answers = {"200": {"$ref": f"#/components/responses/{SHEET_RESPONSE}"}, **refusals}
    body = {"schema": {"$ref": REFERENCE.format(model=operation.request.__name__)}}
    post = {
        **common,
        "description": f"What `{operation.name}` answers, on a page for the machine.",
        "requestBody": {"required": True, "content": {"application/json": body}},
        "responses": answers,
    }
    if query_fields(operation.request) is None:
        return {"post": post}
    asked = {
        "name": "request",
        "in": "query",
        "style": "form",
        "explode": True,
        "description": "The fields of the operation's request, each a parameter of its own as in "
        "its own GET.",
        "schema": {"type": "object", "additionalProperties": True},
    }
    by_query = {
        **common,
        "operationId": f"{identifier}_by_query",
        "parameters": [*chosen, asked],
        "responses": answers,
    }
    return {"post": post, "get": by_query}


def parameters_of(choice: type[BaseModel]) -> list[Json]:
    """What may be chosen of a sheet, as parameters of the query string."""
    made = []
    for name, schema in schema_of(choice)["properties"].items():
        part = {k: v for k, v in schema.items() if k not in {"title", "description", "examples"}}
        if "anyOf" in part:
            (part,) = (one for one in part.pop("anyOf") if one.get("type") != "null")
        if part.get("default", "") in {None, ""}:
            part.pop("default", None)
        made.append(
            {"name": name, "in": "query", "description": schema["description"], "schema": part}
        )
    return made
