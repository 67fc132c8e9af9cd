"""No answer judges and stops against itself, or advises what no table has, over seeded requests."""

import copy
import json
import random
from collections.abc import Iterable, Iterator
from typing import Any

import pytest
from pydantic import ValidationError

from advisories.every import ROWS
from advisories.row import Row
from generated.judging import contradicts, stops
from halfangle_service.errors import Refusal
from halfangle_service.registry import load_registry
from releases.mutations import Mutator
from releases.paths import Json
from sent.known import known
from source_support import advisory_codes

OPERATIONS = load_registry().operations
#: Requests of each operation made by chance, beside the known ones.
CHANGED = 40
#: How a request was read is said of every operation alike.
OF_READING = {"decimal-degrees-read", "designation-read"}
#: Whose advisories are those of another, whole: `published/jobs/routing` holds them alike.
OF_ANOTHER = {"jobs.routing": "jobs.plan"}
Answers = list[tuple[str, Json, dict[str, Any]]]


def requests() -> Iterator[tuple[str, Json]]:
    """The known requests, the table's stops, and others made by chance, from a fixed seed."""
    every = known()
    for name, requests_of in every.requests.items():
        chance = random.Random(name)  # noqa: S311  reproducible
        mutator = Mutator(name, every.nodes[name], every.pools, chance)
        stopped = [r.raising for r in ROWS if (r.operation, r.severity) == (name, "stop")]
        yield from ((name, request) for request in (*requests_of, *stopped))
        for _ in range(CHANGED):
            request = copy.deepcopy(chance.choice(requests_of))
            for _ in range(chance.choice((1, 1, 2, 3))):
                request = mutator.changed(request)
            yield name, request


@pytest.fixture(scope="module")
def answers() -> Answers:
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


def test_a_contradiction_would_be_seen() -> None:
    """The check sees a stop beside a forecast that holds, and beside parts that all conform."""
    stop = [{"code": "fouling", "severity": "stop", "message": "-"}]
    yes: list[Json] = [{"forecast": "holds"}, {"ways": [{"verdict": "conforming"}]}]
    other: list[Json] = [{"forecast": "does-not-hold", "side_forecast": "holds"}, {"height": 1}]
    for result in yes:
        assert contradicts({"result": result, "advisories": stop})
        assert not contradicts({"result": result, "advisories": []})
    for result in other:
        assert not contradicts({"result": result, "advisories": stop})


def test_a_stop_never_stands_beside_a_yes(answers: Answers) -> None:
    """Whatever must not be run is not said to hold, nor to conform, in the same answer."""
    assert [(n, stops(a), json.dumps(r)) for n, r, a in answers if contradicts(a)] == []


@pytest.mark.parametrize("name", ["clearance.tilted-plate", "jobs.center"])
def test_a_plan_that_does_not_hold_is_a_stop(answers: Answers, name: str) -> None:
    """Of a plan of the work: it does not hold exactly where an advisory stops it."""
    plans = [(r, a) for n, r, a in answers if n == name]
    assert len(plans) > CHANGED / 2
    wrong = [
        (a["result"]["forecast"], stops(a), json.dumps(r))
        for r, a in plans
        if (a["result"]["forecast"] == "does-not-hold") != bool(stops(a))
    ]
    assert wrong == []


def test_every_stop_was_met(answers: Answers) -> None:
    """The requests above bring about each stop that is written in the service."""
    written = {code for code, kind in advisory_codes() if kind == "stop"}
    assert len(written) >= 10
    assert written - {code for _, _, answer in answers for code in stops(answer)} == set()


def _unlisted(answers: Answers, rows: Iterable[Row]) -> set[tuple[str, str, str]]:
    """Operation, code and severity of what these answers advise and no row of the table does."""
    seen = {
        (name, a["code"], a["severity"]) for name, _, whole in answers for a in whole["advisories"]
    }
    listed = {row.name for row in rows}
    listed |= {
        (name, *row[1:]) for name, of in OF_ANOTHER.items() for row in listed if row[0] == of
    }
    return {s for s in seen if s[1] not in OF_READING} - listed


def test_what_answers_advise_is_in_the_table(answers: Answers) -> None:
    """No operation is met with an advisory for which the table of advisories has no row."""
    assert sorted(_unlisted(answers, ROWS)) == []


def test_a_row_missing_from_the_table_would_be_seen(answers: Answers) -> None:
    """Without the rows of an advisory, these answers tell of it."""
    for name in [
        ("wheels.flank", "long-dress", "caution"),
        ("blocks.check", "wrong-stack", "stop"),
    ]:
        assert _unlisted(answers, [row for row in ROWS if row.name != name]) == {name}
