"""The routing's lines in the contract: a sub-address of the operation's own."""

from collections.abc import Mapping
from typing import Any

from halfangle_service.http.contract.common import responses
from halfangle_service.http.contract.shared import REFERENCE
from halfangle_service.http.contract.sheets import parameters_of
from halfangle_service.http.routings import CSV, CSV_PATH, ROUTING, CsvChoice
from halfangle_service.operation import Operation
from halfangle_service.sheets.routing import COLUMNS

AnyOperation = Operation[Any, Any]
Json = dict[str, Any]

_HEADERS = ("X-Request-ID", "Advisories")


def csv_items(operations: Mapping[str, AnyOperation]) -> Json:
    """Path item of the routing's lines, where the routing is served."""
    if ROUTING not in operations:
        return {}
    operation = operations[ROUTING]
    body = {"schema": {"$ref": REFERENCE.format(model=operation.request.__name__)}}
    lines = {
        "description": f"A header, then a line an operation, by RFC 4180: {', '.join(COLUMNS)}.",
        "headers": {name: {"$ref": f"#/components/headers/{name}"} for name in _HEADERS},
        "content": {CSV.partition(";")[0]: {"schema": {"type": "string"}}},
    }
    refusals = {status: r for status, r in responses(None).items() if status != "200"}
    item = {
        "tags": [operation.topic],
        "summary": f"{operation.title}: CSV",
        "operationId": "jobs_routing_csv",
        "x-heavy": True,
        "description": f"What `{ROUTING}` answers, a line an operation; a stop stands in each.",
        "parameters": parameters_of(CsvChoice),
        "requestBody": {"required": True, "content": {"application/json": body}},
        "responses": {"200": lines, **refusals},
    }
    return {CSV_PATH.format(path=operation.path): {"post": item}}
