"""Answers of a service newer than the client: what it adds is passed over."""

import json
from typing import Any

import pytest

from client_support import Act, FaultServer
from halfangle_client import Halfangle
from halfangle_client.endpoint import Reply, answer_of
from halfangle_client.generated.calls import ENDPOINTS
from halfangle_service.operation import Operation
from halfangle_service.registry import load_registry

OPERATIONS = load_registry().operations
NEW = "of-a-later-release"
#: Words of enumerations that a later release may add to.
WORDS = frozenset({"severity", "standing", "forecast", "verdict"})


def answer_to_the_example(operation: Operation[Any, Any]) -> Any:
    """The answer of this release to an operation's example."""
    request = operation.request.model_validate_json(json.dumps(dict(operation.example)))
    return json.loads(operation.answer_json(request))


def made_newer(value: Any) -> Any:
    """An answer with a field more in each object, and another word in place of known ones."""
    if isinstance(value, list):
        return [made_newer(part) for part in value]
    if not isinstance(value, dict):
        return value
    newer = {name: NEW if name in WORDS else made_newer(part) for name, part in value.items()}
    return {**newer, "brought_later": {"value": 1.5}}


@pytest.mark.parametrize("name", OPERATIONS)
def test_an_answer_of_a_newer_service_is_read(name: str) -> None:
    """Of each operation an answer with unknown fields and words gives the values that are known."""
    endpoint = ENDPOINTS[name.replace("-", "_")]
    plain = answer_to_the_example(OPERATIONS[name])
    plain["advisories"].append({"code": "new-code", "severity": "caution", "message": "Mind."})
    newer = json.dumps(made_newer(plain)).encode()
    answer = answer_of(endpoint, Reply(200, {}, newer), "id")
    assert answer.advisories[-1].severity == NEW
    known = answer_of(endpoint, Reply(200, {}, json.dumps(plain).encode()), "id")
    assert answer.basis.relations == known.basis.relations
    assert set(type(answer.result).model_fields) == set(type(known.result).model_fields)


def test_a_call_to_a_newer_service_gives_its_answer(faults: FaultServer) -> None:
    """The client as it is used does not fail on it either."""
    plain = answer_to_the_example(OPERATIONS["sine.setting"])
    faults.acts = [Act(body=json.dumps(made_newer(plain)).encode())]
    with Halfangle(faults.url) as client:
        answer = client.sine.setting(units="in", center_distance=5, angle=30)
    assert answer.result.height == plain["result"]["height"]
