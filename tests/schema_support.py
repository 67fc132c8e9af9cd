"""The contract's schemas as the contract tests read them."""

import json
import re
from collections.abc import Iterator
from functools import cache
from typing import Any

from halfangle_service.app import contract_bytes
from halfangle_service.http.batches.model import BatchRequest, BatchRow
from halfangle_service.http.curves.model import CurveRange, CurveRequest
from halfangle_service.registry import load_registry
from inlining import inlined
from wording import OF_A_NUMBER

Schema = dict[str, Any]

#: A batch as it is sent: rows hold requests of any operation, and no form shows them.
ROWS_SENT = frozenset(m.__name__ for m in (BatchRequest, BatchRow, CurveRequest, CurveRange))
#: Of HTTP and of the catalogue, not of the trade.
NO_QUANTITIES = frozenset(
    {
        "Problem",
        "FieldProblem",
        *ROWS_SENT,
        "BatchAnswer",
        "BatchRowAnswer",
        "BatchCounts",
        "CurveAnswer",
        "CurveAxis",
        "CurveColumn",
        "CurveRefusal",
        "CurveAdvisory",
        "CurveCounts",
        "CurveRange",
        "CurveRequest",
    }
)


@cache
def components() -> dict[str, Schema]:
    """Every model of the contract, its fields whole where they stand."""
    schemas: dict[str, Schema] = inlined(json.loads(contract_bytes()))["components"]["schemas"]
    return schemas


SCHEMAS = [name for name in components() if name not in NO_QUANTITIES]


@cache
def request_schemas() -> frozenset[str]:
    """Names of all schemas that requests are made of."""
    reached: set[str] = set()
    waiting = [operation.request.__name__ for operation in load_registry().operations.values()]
    while waiting:
        name = waiting.pop()
        if name not in reached:
            reached.add(name)
            waiting += re.findall(r'#/components/schemas/(\w+)"', json.dumps(components()[name]))
    return frozenset(reached)


def options_of(schema: Schema) -> Iterator[Schema]:
    """A schema and all that it is a union or a list of; unit and bounds beside stand for those."""
    yield schema
    unit = {"x-unit": schema["x-unit"]} if "x-unit" in schema else {}
    beside = {key: part for key, part in schema.items() if key in OF_A_NUMBER}
    for option in (*schema.get("anyOf", ()), *schema.get("oneOf", ())):
        yield from options_of({**beside, **option})
    for items in (schema.get("items"), schema.get("additionalProperties")):
        if isinstance(items, dict):
            yield from options_of({**unit, **items})


def tokens_of(schema: Schema) -> Iterator[str]:
    """Every option, as text, that a field's schema names."""
    for option in options_of(schema):
        values = [*option.get("enum", ()), *([option["const"]] if "const" in option else [])]
        yield from (value for value in values if isinstance(value, str))
