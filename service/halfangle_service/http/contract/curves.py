"""The contract of curves."""

from collections.abc import Mapping
from typing import Any

from halfangle_service.http.answers import JSON
from halfangle_service.http.contract.common import Json, responses
from halfangle_service.http.contract.shared import REFERENCE
from halfangle_service.http.curves.model import CurveAnswer, CurveRequest
from halfangle_service.operation import Operation

CURVES = "curves"
_CURVE = (
    "For sliders, plots and heat maps: the operation at every number of a range or a list of one "
    "field, or at every pair of two, with the values asked for as arrays. Each is what the "
    "operation's own address answers. Where a point is refused its values are null and the problem "
    "says where; where its answer says stop they are null too, and the stop is among the "
    "advisories. What is wrong of the request whatever runs is refused as a whole. Operations that "
    "have curves are marked `x-columns`."
)
_EXAMPLE = {
    "request": {"units": "in", "center_distance": 5},
    "over": {"angle": {"from": 1, "to": 60, "count": 60}},
    "columns": ["height", "arcsec_per_step"],
}


def curve_operation(operations: Mapping[str, Operation[Any, Any]]) -> Json:
    """One operation over a range of its numbers; one address for all that have a closed form."""
    names = [name for name, operation in operations.items() if operation.columns]
    content = {
        "schema": {"$ref": REFERENCE.format(model=CurveRequest.__name__)},
        "example": _EXAMPLE,
    }
    return {
        "tags": [CURVES],
        "summary": "An operation over a range of its numbers",
        "description": _CURVE,
        "x-heavy": True,
        "operationId": f"{CURVES}_of",
        "parameters": [
            {
                "name": "operation",
                "in": "path",
                "required": True,
                "description": "Name of the operation.",
                "schema": {"type": "string", "enum": names},
                "example": "sine.setting",
            }
        ],
        "requestBody": {"required": True, "content": {JSON: content}},
        "responses": responses(CurveAnswer),
    }
