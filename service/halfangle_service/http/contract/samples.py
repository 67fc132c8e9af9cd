"""A sample answer of each operation: what its example is answered, at this release."""

import json
from typing import Any

from halfangle_service.operation import Operation


def sample_answer(operation: Operation[Any, Any]) -> bytes:
    """The answer to an operation's example."""
    body = json.dumps(dict(operation.example))
    return operation.answer_json(operation.request.model_validate_json(body))
