"""Requests made from the contract's schemas, a few of each operation, and the checks of answers.

`tests/load/generated_requests.py` sends many more.
"""

import json
from typing import Any

import pytest
from litestar.testing import TestClient

from generated.checking import Answered, Checks
from generated_requests import tallies
from halfangle_service.app import contract_bytes
from halfangle_service.registry import load_registry
from releases.paths import Json
from releases.schemas import request_schemas

OPERATIONS = load_registry().operations
#: Requests of each operation that fit its schema.
EACH = 12
NAN = float("nan")
CONTRACT = json.loads(contract_bytes())
NODES = {name: node for name, (node, _) in request_schemas(CONTRACT).items()}
SETTING = {"units": "in", "center_distance": 5, "angle": 30}


def test_generated_requests_are_answered_or_refused_by_the_trade() -> None:
    """Nothing comes that must not, and of each operation requests are answered."""
    made = tallies(EACH * len(OPERATIONS), seed=3)
    assert [(name, one.failures) for name, one in made.items() if one.failed] == []
    assert {name for name, one in made.items() if one.sent >= EACH and one.answered} == set(made)
    assert set(made) == set(OPERATIONS)


@pytest.fixture(scope="module")
def checks() -> Checks:
    """The checks against this contract."""
    return Checks(CONTRACT)


@pytest.mark.parametrize(
    ("angle", "fits"),
    [
        (30, True),
        (90, False),
        ("30 15 20", True),
        ("89°59'59.9\"", True),
        ("90°", False),
        ("0 00", False),
        ("-1°", False),
        ("3/4 per foot", False),
        ("1:20", True),
    ],
)
def test_an_angle_string_fits_within_the_bounds_of_its_field(
    checks: Checks, service: TestClient[Any], angle: Json, fits: bool
) -> None:
    """A string is held to the bounds of the number, by the schema's format as by the service."""
    body = {**SETTING, "angle": angle}
    assert checks.fits("sine.setting", body) == fits
    answer = service.post("/v1/sine/setting", json=body).json()
    assert (answer.get("type") == "/problems/invalid-request") == (not fits)


def answer_to(body: Json) -> dict[str, Any]:
    """The answer of `sine.setting`."""
    operation = OPERATIONS["sine.setting"]
    request = operation.request.model_validate_json(json.dumps(body))
    made: dict[str, Any] = json.loads(operation.answer_json(request))
    return made


def refusal(**changed: Json) -> dict[str, Any]:
    """A refusal of the trade that is as it should be, but for what is changed."""
    return {
        "type": "/problems/impossible",
        "title": "-",
        "status": 422,
        "detail": "-",
        "instance": "/v1/sine/setting",
        "errors": [{"pointer": "/angle", "message": "should be less than 60"}],
        **changed,
    }


def told(checks: Checks, status: int, document: Json, *, fits: bool = True) -> str:
    """What the checks say of an answer to `sine.setting`."""
    answered = Answered(status, json.dumps(document).encode())
    return checks.wrong("sine.setting", NODES["sine.setting"], SETTING, answered, fits=fits)


@pytest.mark.parametrize(
    ("document", "words"),
    [
        (refusal(), ""),
        (refusal(type="/problems/odd"), "no problem type"),
        (refusal(type="/problems/invalid-request"), "of a request that fits"),
        (refusal(errors=[]), "no field is named"),
        (refusal(errors=[{"pointer": "/height_", "message": "-"}]), "names no field"),
        (refusal(errors=[{"pointer": "/angle/0", "message": "-"}]), "names no field"),
        (refusal(detail="misses by 5e-07"), "an exponent"),
        (refusal(errors=[{"pointer": "/angle", "message": "1.2E+9"}]), "an exponent"),
        (refusal(status="422"), "does not fit its schema"),
    ],
)
def test_a_wrong_refusal_would_be_seen(checks: Checks, document: Json, words: str) -> None:
    """The checks say what is wrong with a refusal, and nothing of one that is right."""
    assert words in told(checks, 422, document)
    assert bool(words) == bool(told(checks, 422, document))


def test_a_wrong_answer_would_be_seen(checks: Checks) -> None:
    """The checks see a 500, NaN, a result that is none, an exponent, and a misfit answered."""
    answer = answer_to(SETTING)
    result, advisory = answer["result"], {"code": "wheel-safety", "severity": "stop"}
    said = [{**advisory, "message": "off by 1e-7"}]
    assert told(checks, 200, answer) == ""
    assert told(checks, 500, answer) == "status 500"
    assert "NaN is no JSON" in told(checks, 200, {**answer, "result": {**result, "height": NAN}})
    assert "does not fit" in told(checks, 200, {**answer, "result": {}})
    assert "an exponent" in told(checks, 200, {**answer, "advisories": said})
    assert "answered, though" in told(checks, 200, answer, fits=False)
