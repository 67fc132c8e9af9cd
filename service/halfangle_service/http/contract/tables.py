"""The contract of tables."""

from halfangle_service.http.contract.common import Json, responses
from halfangle_service.http.contract.sheets import parameters_of
from halfangle_service.http.tables.model import CSV, TableForm

TABLES = "tables"
_EXAMPLE = "part,angle [°]\r\nT-0001,30\r\nT-0002,8°18'\r\n"
_TABLE = (
    "The first line names the columns: fields of the operation's request by path (`angle`, "
    "`shank.kind`, `box.0.size`), a unit in brackets after it if you like. The same rows come "
    "back, in order, cells as they came, with columns for the results (`height [in]`; names as "
    "`pick` has them, and a list as `pick` writes it), `advisories` and `problem`. A refused row "
    "has its reason in `problem`, a row whose answer says stop that text, and both no value "
    "but a judgement that does not say yes. Texts that a spreadsheet would run as a formula have "
    "an apostrophe before them. A body of told length within a body's limit is answered once it is "
    "here; any other while it arrives: read while you send. A table that is cut short ends with a "
    "row that says why, and without the end of its body."
)


def table_operation() -> Json:
    """A table of one operation's requests, which comes back with their results."""
    asked = {
        "name": "request",
        "in": "query",
        "style": "form",
        "explode": True,
        "description": "Fields of the request that all rows have alike, by path.",
        "schema": {"type": "object", "additionalProperties": True},
    }
    name = {
        "name": "operation",
        "in": "path",
        "required": True,
        "description": "Name of an operation.",
        "schema": {"type": "string", "minLength": 1},
        "example": "sine.setting",
    }
    text = {"schema": {"type": "string"}}
    answered = responses(None)
    answered["200"] = {
        "description": "The table.",
        "headers": {"X-Request-ID": answered["200"]["headers"]["X-Request-ID"]},
        "content": {CSV: text},
    }
    return {
        "tags": [TABLES],
        "summary": "A table of one operation, as CSV",
        "description": _TABLE,
        "operationId": f"{TABLES}_answer",
        "parameters": [name, *parameters_of(TableForm), asked],
        "requestBody": {"required": True, "content": {CSV: {**text, "example": _EXAMPLE}}},
        "responses": answered,
    }
