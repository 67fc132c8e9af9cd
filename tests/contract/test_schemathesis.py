"""Generated requests against the contract, with every check that Schemathesis has switched on."""

import re
from typing import Any

import schemathesis
from hypothesis import HealthCheck, settings
from schemathesis.config import SchemathesisConfig

from halfangle_service.app import create_app
from halfangle_service.registry import load_registry
from halfangle_service.settings import Settings
from halfangle_service.trade.angles import DMS_PATTERN

#: A request can be well formed, as the schema promises, and still ask for what no geometry, no box
#: of blocks or no bounded amount of work can give. JSON Schema cannot say so; these types do.
REFUSALS_OF_THE_TRADE = frozenset(
    f"/problems/{name}"
    for name in (
        "impossible",
        "disagreement",
        "unreachable",
        "beyond-bound",
        "not-finite",
        "no-such-value",
    )
)

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
        "checks": {
            "positive_data_acceptance": {
                "expected-statuses": ["2xx", "3xx", "401", "403", "404", "409", "422"]
            }
        },
        "operations": [
            {"include-name": name, "phases": {"coverage": {"enabled": False}}}
            for name in WITHOUT_SYSTEMATIC_PHASE
        ],
    }
)

schema = schemathesis.openapi.from_asgi(
    "/openapi.json", create_app(Settings(log_level="error")), config=_config
)


def refused_only_by_the_trade(context: Any, response: Any, case: Any) -> None:
    """A request that fits its schema is answered, or refused for a reason of the trade."""
    if case.meta is None or not case.meta.generation.mode.is_positive:
        return
    if response.status_code != 422:
        return
    problem = response.json()
    sent = case.query if case.method == "GET" else case.body
    wrong = [e for e in problem["errors"] if not is_angle_text(value_at(sent, e["pointer"]))]
    assert problem["type"] in REFUSALS_OF_THE_TRADE or not wrong, problem["detail"]


def value_at(sent: Any, pointer: str) -> Any:
    """Value in a request at a JSON pointer, None where there is none."""
    value = sent
    for part in pointer.split("/")[1:]:
        value = value[int(part)] if isinstance(value, list) else dict(value).get(part)
    return value


def is_angle_text(value: Any) -> bool:
    """True for degrees, minutes and seconds: no pattern can hold the bounds of their value."""
    return isinstance(value, str) and re.match(DMS_PATTERN, value) is not None


@schema.parametrize()  # type: ignore[untyped-decorator]
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
