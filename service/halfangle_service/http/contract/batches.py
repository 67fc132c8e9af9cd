"""The contract of batches."""

from halfangle_service.http.answers import JSON
from halfangle_service.http.batches.model import (
    LINES,
    BatchAnswer,
    BatchRequest,
    BatchRow,
    BatchRowAnswer,
)
from halfangle_service.http.contract.common import Json, responses
from halfangle_service.http.contract.shared import REFERENCE

BATCHES = "batches"
_ROW_EXAMPLE = {"units": "in", "center_distance": 5, "angle": 30}
_BATCH = (
    "Each row is answered as its operation's own address would, in the order of the rows, each "
    "once; one bad row spoils no other. `application/json` holds few rows, within the limit of a "
    "body. `application/x-ndjson` holds any number, a row a line: each is answered by a line, "
    "while further lines arrive, and the last line holds the `counts` (and a `problem` where it "
    "ended early); an answer without that line was cut off. Read while you send: who does not "
    "take the answers is held back. A `ref` that came before (of many rows: among the last "
    "100,000) is refused."
)


def batch_operation() -> Json:
    """Rows of any operations: as one document, or as lines that are answered as they arrive."""
    example = {"ref": "T-0001", "operation": "sine.setting", "request": _ROW_EXAMPLE}
    line = {"schema": {"$ref": REFERENCE.format(model=BatchRow.__name__)}}
    answered = responses(BatchAnswer)
    answered["200"]["content"][LINES] = {
        "schema": {"$ref": REFERENCE.format(model=BatchRowAnswer.__name__)}
    }
    return {
        "tags": [BATCHES],
        "summary": "Rows of any operations",
        "description": _BATCH,
        "operationId": f"{BATCHES}_answer",
        "requestBody": {
            "required": True,
            "content": {
                JSON: {
                    "schema": {"$ref": REFERENCE.format(model=BatchRequest.__name__)},
                    "example": {"rows": [example]},
                },
                LINES: line,
            },
        },
        "responses": answered,
    }
