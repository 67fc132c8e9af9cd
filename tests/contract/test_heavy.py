"""What may take long is declared heavy, or it is said why it does not take long.

No test of time runs here: machines differ. `tests/load/find_slow_requests.py` searches the slowest
requests; this test holds that whoever adds an operation with much in its request has to answer.
"""

from collections.abc import Iterator, Mapping
from typing import Any

import pytest
from pydantic import BaseModel

from halfangle_service.fields.schemas import schema_of
from halfangle_service.http.guards.bounds import largest
from halfangle_service.registry import load_registry

OPERATIONS = load_registry().operations
#: Values of a request, objects and lists included, from which the work may take long.
MANY_VALUES = 100
#: A count from which the work may take long; counts of blocks and of turns stay below it.
LARGE_COUNT = 30

#: Light though one of these says that it may take long: why, with processor time as the search of
#: largest requests found it.
LIGHT_ALL_THE_SAME: Mapping[str, str] = {
    "blocks.budget": "one estimate of at most twenty blocks: 2.3 ms",
    "centers.out-of-round": "lobes up to fifty are one array of directions: 0.1 ms",
    "centers.standing-offset": "a hundred stations of one square root each: 0.8 ms",
    "inspection.drift": "sixty readings in one fit: 0.4 ms",
    "runout.v-block": "lobes up to fifty are gone through in one array: 0.4 ms",
    "tapers.clean-up": "passes are divided, not gone through: 0.3 ms",
    "tapers.identify": "fifty candidates of a table of some hundred rows: 2.1 ms",
    "tapers.infeed": "passes are divided, not gone through: 0.2 ms",
    "wheels.dressing": "passes are multiplied, not gone through: 0.4 ms",
}


def _counts(schema: Mapping[str, Any], definitions: Mapping[str, Any]) -> Iterator[float]:
    """Bounds of the whole numbers in a request."""
    if "$ref" in schema:
        yield from _counts(definitions[schema["$ref"].rsplit("/", 1)[-1]], definitions)
    nested = [*schema.get("anyOf", ()), *schema.get("oneOf", ())]
    nested += [*schema.get("properties", {}).values()]
    nested += [schema["items"]] if "items" in schema else []
    for part in nested:
        yield from _counts(part, definitions)
    if schema.get("type") == "integer":
        yield schema.get("maximum", schema.get("exclusiveMaximum", float("inf")))


def may_take_long(name: str) -> bool:
    """True where a request may hold much, or a large count."""
    request: type[BaseModel] = OPERATIONS[name].request
    schema = schema_of(request)
    most = max(_counts(schema, schema.get("$defs", {})), default=0)
    return largest(request).values >= MANY_VALUES or most >= LARGE_COUNT


@pytest.mark.parametrize("name", OPERATIONS)
def test_what_may_take_long_is_heavy_or_says_why_not(name: str) -> None:
    """A light operation with much in its request stands in the list above, with its reason."""
    excused = name in LIGHT_ALL_THE_SAME
    if OPERATIONS[name].heavy is not False:
        assert not excused, "it is heavy: take it out of the list"
        return
    assert may_take_long(name) == excused, (
        "run tests/load/find_slow_requests.py for it; declare it heavy where it can pass 5 ms, "
        "else say in LIGHT_ALL_THE_SAME why it cannot"
    )
