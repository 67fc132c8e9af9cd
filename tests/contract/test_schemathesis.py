"""Generated requests against the contract, with every check that Schemathesis has switched on."""

import json
from typing import Annotated, Any

import schemathesis
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from pydantic import TypeAdapter
from schemathesis.config import SchemathesisConfig

from generated.angles import SPELLINGS, AngleBounds, spelled, with_formats_by_bounds
from generated.checking import REFUSALS_OF_THE_TRADE
from generated.nulls import with_null_as_left_out
from halfangle_service.app import contract_bytes, create_app
from halfangle_service.fields.angles import AngleInput
from halfangle_service.http.batches.model import BATCHES_PATH, LINES
from halfangle_service.http.cells import VALUE_PATH
from halfangle_service.http.curves.model import CURVES_PATH
from halfangle_service.registry import load_registry
from halfangle_service.settings import Settings

#: Sheets have the requests of their operations, and tests of their own.
#: 404 below is for rows of tables, whose keys no schema lists. No schema has the fields that the
#: address of single values takes, since they are those of any operation.

#: The systematic phase sends hundreds of requests to each address. It is left out where it would
#: say little for its time: a query string has the fields and bounds of the body, which goes through
#: it, and a heavy operation has its own tests of them. Generated examples and all checks stay on.
WITHOUT_SYSTEMATIC_PHASE = [
    f"{method} {operation.path}"
    for operation in load_registry().operations.values()
    for method in (("GET", "POST") if operation.heavy else ("GET",))
]

_config = SchemathesisConfig.from_dict(
    {
        "seed": 20,
        "generation": {"deterministic": True},
        "checks": {"positive_data_acceptance": {"expected-statuses": ["2xx", "404", "422"]}},
        "operations": [
            {"include-name": name, "phases": {"coverage": {"enabled": False}}}
            for name in WITHOUT_SYSTEMATIC_PHASE
        ]
        # A wrong row is answered by its problem beside the others' answers, with 200; what a cell
        # is refused comes with 200 where it asks for that.
        + [
            {"include-path": path, "generation": {"mode": "positive"}}
            for path in (BATCHES_PATH, VALUE_PATH)
        ],
    }
)

_contract, BOUNDS = with_formats_by_bounds(with_null_as_left_out(json.loads(contract_bytes())))


def angle_texts(bounds: AngleBounds) -> st.SearchStrategy[str]:
    """Angles as text, in every spelling, whose value lies within the bounds."""
    tenths = st.integers(*bounds.tenths)
    return st.builds(spelled, tenths, st.sampled_from(SPELLINGS)).filter(bounds.holds)


for _bounds in BOUNDS:
    schemathesis.openapi.format(_bounds.format, angle_texts(_bounds))


@schemathesis.serializer(LINES)  # type: ignore[untyped-decorator]
def one_line(_: schemathesis.SerializationContext, row: Any) -> bytes:
    """A row as the only line of a batch."""
    return json.dumps(row).encode() + b"\n"


schema = schemathesis.openapi.from_dict(_contract, config=_config)
schema.app = create_app(Settings(log_level="error"))


def refused_only_by_the_trade(context: Any, response: Any, case: Any) -> None:
    """A request that fits its schema is answered, or refused for a reason of the trade."""
    # Of objects stated part by part the contract types none.
    stated_in_parts = "within" in str(case.operation.definition.raw.get("parameters"))
    # Of a curve's operation the contract knows no more than its name.
    any_request = case.operation.path in {VALUE_PATH, CURVES_PATH} or stated_in_parts
    if any_request or case.meta is None or not case.meta.generation.mode.is_positive:
        return
    if response.status_code == 422:
        problem = response.json()
        assert problem["type"] in REFUSALS_OF_THE_TRADE, problem["detail"]


@given(st.sampled_from(sorted(BOUNDS, key=str)), st.data())
def test_an_angle_of_the_format_is_within_the_bounds(
    bounds: AngleBounds, data: st.DataObject
) -> None:
    """What is generated as an angle string is taken by a field of these bounds, and read within."""
    number: dict[str, Any] = {
        "gt" if bounds.without_low else "ge": bounds.low,
        "lt" if bounds.without_high else "le": bounds.high,
    }
    field: TypeAdapter[float] = TypeAdapter(Annotated[float, AngleInput(**number)])
    assert bounds.low <= field.validate_python(data.draw(angle_texts(bounds))) <= bounds.high


@schema.exclude(path_regex="/(sheet|csv)$").parametrize()  # type: ignore[untyped-decorator]
@settings(
    max_examples=10,
    derandomize=True,
    deadline=None,
    database=None,
    suppress_health_check=list(HealthCheck),
)
def test_every_operation_keeps_the_contract(case: schemathesis.Case) -> None:
    """Every generated request meets an answer that the contract allows."""
    case.call_and_validate(additional_checks=[refused_only_by_the_trade])
