"""No answer judges and stops against itself, over seeded requests to every operation."""

import copy
import json
import random
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any

import pytest
from pydantic import ValidationError

from halfangle_service.app import contract_bytes
from halfangle_service.errors import Refusal
from halfangle_service.registry import load_registry
from releases.changelog import load_changelog
from releases.mutations import Mutator, Pools
from releases.paths import Json
from releases.schemas import request_schemas
from releases.translation import translated_request
from seeded_requests import STARTING
from source_support import advisory_codes

OPERATIONS = load_registry().operations
CHANGELOG = Path(__file__).parents[2] / "openapi" / "changelog" / "0.2"
#: Requests of each operation made by chance, beside the known ones.
CHANGED = 40
#: Judgements that say yes.
YES = frozenset({"holds", "conforming"})
#: Changes of an operation's example that bring about a stop which chance seldom does.
STOPPED: dict[str, list[dict[str, Json]]] = {
    "clearance.tilted-plate": [
        {"room_under_wheel": 6},
        {"past_large_end": 0.6},
    ],
    "jobs.center": [
        {"included_angle_tolerance_arcsec": 1},
        {"limit_tir": 0.00001},
    ],
}


def known_requests() -> dict[str, list[Json]]:
    """Requests of each operation as this release takes them: its example, and those of tests."""
    made: dict[str, list[Json]] = {
        name: [dict(operation.example)] for name, operation in OPERATIONS.items()
    }
    rows = [json.loads(line) for line in STARTING.read_text(encoding="utf-8").splitlines()]
    changelog = load_changelog(CHANGELOG, sorted({row["operation"] for row in rows}))
    names = {entry.name: entry.to for entry in changelog.operation}
    for row in rows:
        name = names.get(row["operation"], row["operation"])
        if name is not None and "request" in row:
            made[name].append(translated_request(row["request"], changelog.of(row["operation"])))
    for name, changes in STOPPED.items():
        made[name] += [{**OPERATIONS[name].example, **change} for change in changes]
    return made


def requests() -> Iterator[tuple[str, Json]]:
    """The known requests, and others made of them by chance, from a fixed seed."""
    nodes = {n: node for n, (node, _) in request_schemas(json.loads(contract_bytes())).items()}
    known, pools = known_requests(), Pools()
    for name, node in nodes.items():
        for request in known[name]:
            pools.learn(name, node, request)
    for name, node in nodes.items():
        chance = random.Random(name)  # noqa: S311  reproducible, not secret
        mutator = Mutator(name, node, pools, chance)
        yield from ((name, request) for request in known[name])
        for _ in range(CHANGED):
            request = copy.deepcopy(chance.choice(known[name]))
            for _ in range(chance.choice((1, 1, 2, 3))):
                request = mutator.changed(request)
            yield name, request


@pytest.fixture(scope="module")
def answers() -> list[tuple[str, Json, dict[str, Any]]]:
    """What is answered, with the operation and the request; refusals are left out."""
    given = []
    for name, request in requests():
        operation = OPERATIONS[name]
        try:
            body = operation.request.model_validate_json(json.dumps(request))
            given.append((name, request, json.loads(operation.answer_json(body))))
        except (Refusal, ValidationError, ArithmeticError):
            continue
    return given


def stops(answer: Mapping[str, Any]) -> list[str]:
    """Codes of the stops in an answer."""
    return [a["code"] for a in answer["advisories"] if a["severity"] == "stop"]


def judgements(value: Json, name: str = "") -> Iterator[str]:
    """Every forecast and verdict in a result, at any depth."""
    if isinstance(value, dict):
        for field, inner in value.items():
            yield from judgements(inner, field)
    elif isinstance(value, list):
        for inner in value:
            yield from judgements(inner, name)
    elif isinstance(value, str) and name.endswith(("forecast", "verdict")):
        yield value


def contradicts(answer: Mapping[str, Any]) -> bool:
    """True where an answer has a stop, and what it judges as a whole says yes.

    That is its result's own forecast or verdict; of a result without one, all those inside it.
    """
    result = answer["result"]
    own = [result[name] for name in ("forecast", "verdict") if result.get(name) is not None]
    judged = own or list(judgements(result))
    says_yes = any(word in YES for word in own) if own else bool(judged) and set(judged) <= YES
    return bool(stops(answer)) and says_yes


def test_a_contradiction_would_be_seen() -> None:
    """The check sees a stop beside a forecast that holds, and beside parts that all conform."""
    stop = [{"code": "fouling", "severity": "stop", "message": "-"}]
    for result in ({"forecast": "holds"}, {"ways": [{"verdict": "conforming"}]}):
        assert contradicts({"result": result, "advisories": stop})
        assert not contradicts({"result": result, "advisories": []})
    for result in ({"forecast": "does-not-hold", "side_forecast": "holds"}, {"height": 1}):
        assert not contradicts({"result": result, "advisories": stop})


def test_a_stop_never_stands_beside_a_yes(answers: list[tuple[str, Json, dict[str, Any]]]) -> None:
    """Whatever must not be run is not said to hold, nor to conform, in the same answer."""
    assert [(n, stops(a), json.dumps(r)) for n, r, a in answers if contradicts(a)] == []


@pytest.mark.parametrize("name", ["clearance.tilted-plate", "jobs.center"])
def test_a_plan_that_does_not_hold_is_a_stop(
    answers: list[tuple[str, Json, dict[str, Any]]], name: str
) -> None:
    """Of a plan of the work: it does not hold exactly where an advisory stops it."""
    plans = [(r, a) for n, r, a in answers if n == name]
    assert len(plans) > CHANGED / 2
    wrong = [
        (a["result"]["forecast"], stops(a), json.dumps(r))
        for r, a in plans
        if (a["result"]["forecast"] == "does-not-hold") != bool(stops(a))
    ]
    assert wrong == []


def test_every_stop_was_met(answers: list[tuple[str, Json, dict[str, Any]]]) -> None:
    """The requests above bring about each stop that is written in the service."""
    written = {code for code, kind in advisory_codes() if kind == "stop"}
    assert len(written) >= 10
    assert written - {code for _, _, answer in answers for code in stops(answer)} == set()
