"""Generated requests against the contract, with every check that Schemathesis has switched on."""

from typing import Any

import schemathesis
from hypothesis import HealthCheck, settings
from schemathesis.config import ChecksConfig, PositiveDataAcceptanceConfig, SchemathesisConfig

from halfangle_service.app import create_app
from halfangle_service.settings import Settings

#: A request can be well formed, as the schema promises, and still ask for what no geometry, no box
#: of blocks or no bounded amount of work can give. JSON Schema cannot say so; these problem types do.
REFUSALS_OF_THE_TRADE = frozenset(
    f"/problems/{name}"
    for name in ("impossible", "disagreement", "unreachable", "beyond-bound", "not-finite")
)

_config = SchemathesisConfig(seed=20)
_config.projects.default.checks = ChecksConfig(
    positive_data_acceptance=PositiveDataAcceptanceConfig(
        expected_statuses=["2xx", "3xx", "401", "403", "404", "409", "422"]
    )
)
_config.projects.default.generation.deterministic = True

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
    assert problem["type"] in REFUSALS_OF_THE_TRADE, problem["detail"]


@schema.parametrize()
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
