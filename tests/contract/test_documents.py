"""What the contract tells besides schemas: headers, keys, problem types, advisories, answers."""

import json
import math
import re
from pathlib import Path
from typing import Any

import pytest

from halfangle_service.app import contract_bytes
from halfangle_service.fields.glossary import advisory_meanings
from halfangle_service.http.problems import PROBLEM_TYPES
from http_support import OPERATIONS, SINE_QUERY, Service, assert_problem, service_with
from http_support import post as post_example

DOCUMENT: dict[str, Any] = json.loads(contract_bytes())
EXAMPLES = Path(__file__).parents[2] / "openapi" / "examples"


def response(status: str) -> dict[str, Any]:
    """A shared response of the contract."""
    found: dict[str, Any] = DOCUMENT["components"]["responses"][status]
    return found


# Answers stored -------------------------------------------------------------------------------
@pytest.mark.parametrize("name", OPERATIONS)
def test_a_stored_answer_is_that_of_the_service(service: Service, name: str) -> None:
    """Each operation's answer to its example is stored, served where the contract says, and true.

    Numbers are held to nine digits: the last ones of a least-squares fit depend on the processor.
    """
    stored = json.loads((EXAMPLES / f"{name}.json").read_text("utf-8"))
    topic, verb = name.split(".")
    served = service.get(DOCUMENT["x-stored-answers"].format(topic=topic, verb=verb))
    assert served.status_code == 200
    assert differing(stored, served.json()) == [], "run `python openapi/examples.py`"
    assert served.content == post_example(service, OPERATIONS[name]).content


def test_no_stored_answer_is_left_over() -> None:
    """Each file is an operation's."""
    assert {path.stem for path in EXAMPLES.iterdir()} == set(OPERATIONS)


def differing(stored: Any, now: Any, at: str = "") -> list[str]:
    """Places where two answers differ by more than the last digits of a number."""
    if isinstance(stored, dict) and isinstance(now, dict) and list(stored) == list(now):
        return [p for name in stored for p in differing(stored[name], now[name], f"{at}/{name}")]
    if isinstance(stored, list) and isinstance(now, list) and len(stored) == len(now):
        pairs = enumerate(zip(stored, now, strict=True))
        return [p for i, (was, is_now) in pairs for p in differing(was, is_now, f"{at}/{i}")]
    if isinstance(stored, float) and isinstance(now, float):
        return [] if math.isclose(stored, now, rel_tol=1e-9, abs_tol=1e-12) else [at]
    return [] if stored == now and type(stored) is type(now) else [at]


def test_a_difference_of_stored_answers_would_be_seen() -> None:
    """Another digit, word, length or field is seen; a digit past the ninth is not."""
    stored = {"height": 2.5, "blocks": [1.0, 1.5], "text": "a"}
    other = {"height": 2.6, "blocks": [1.0, 1.5], "text": "b"}
    assert differing(stored, {**stored, "height": 2.5 + 1e-12}) == []
    assert differing(stored, other) == ["/height", "/text"]
    assert differing(stored, {**stored, "blocks": [1.0]}) == ["/blocks"]
    assert differing(stored, {"height": 2.5}) == [""]


# Headers and the key --------------------------------------------------------------------------
def test_headers_are_declared() -> None:
    """Each answer has its request's name, what may be kept has its tag, a refusal what helps."""
    for path, item in DOCUMENT["paths"].items():
        for method, operation in item.items():
            if path.endswith("/sheet"):
                assert operation["responses"]["200"]["$ref"] == "#/components/responses/Sheet"
                continue
            headers = set(operation["responses"]["200"]["headers"])
            assert "X-Request-ID" in headers
            assert ("ETag" in headers) == (method == "get")
    assert set(response("Sheet")["headers"]) == {"X-Request-ID", "ETag", "Advisories"}
    assert set(response("401")["headers"]) == {"X-Request-ID", "WWW-Authenticate"}
    assert set(response("default")["headers"]) == {"X-Request-ID", "Allow", "Retry-After"}


def test_headers_declared_are_sent(service: Service) -> None:
    """What the contract declares of an answer to GET comes with it."""
    answer = service.get(SINE_QUERY)
    declared = DOCUMENT["paths"]["/v1/sine/setting"]["get"]["responses"]["200"]["headers"]
    sent = {name.lower() for name in answer.headers}
    assert {name.lower() for name in declared} - {"advisories"} <= sent
    refused = service.delete("/v1/sine/setting")
    assert refused.headers["allow"]
    assert refused.headers["x-request-id"]


def test_the_key_is_declared_as_it_is_asked_for() -> None:
    """Each scheme is one that a service with keys takes; without a key it answers 401."""
    schemes = DOCUMENT["components"]["securitySchemes"]
    scheme, basic = schemes["ApiKey"], schemes["Basic"]
    assert (scheme["type"], scheme["in"]) == ("apiKey", "header")
    assert (basic["type"], basic["scheme"]) == ("http", "basic")
    assert DOCUMENT["security"] == [{}, {"ApiKey": []}, {"Basic": []}]
    for item in DOCUMENT["paths"].values():
        assert all("401" in operation["responses"] for operation in item.values())
    key = "a-key-of-a-test"
    with service_with(api_keys=[key]) as locked:
        refused = locked.get(SINE_QUERY)
        assert_problem(refused, "unauthorized")
        assert refused.headers["www-authenticate"]
        answered = locked.get(SINE_QUERY, headers={scheme["name"]: key})
        assert answered.status_code == 200
        assert locked.get(SINE_QUERY, auth=("environment", key)).status_code == 200


# Lists ----------------------------------------------------------------------------------------
def test_every_problem_type_and_advisory_is_listed(service: Service) -> None:
    """The contract lists each with its meaning, and the page has an anchor for each."""
    assert listed("x-problem-types") == {
        name: (str(status), title) for name, (status, title) in PROBLEM_TYPES.items()
    }
    assert listed("x-advisories") == advisory_meanings()
    page = service.get("/docs").text
    for name in PROBLEM_TYPES:
        assert f'id="problem-{name}"' in page
    for code in advisory_meanings():
        assert f'id="advisory-{code}"' in page


def listed(word: str) -> dict[str, tuple[str, str]]:
    """Group and meaning of each name of a list of the contract."""
    groups: dict[str, dict[str, str]] = DOCUMENT[word]
    return {
        name: (group, meaning) for group, names in groups.items() for name, meaning in names.items()
    }


def test_each_status_lists_its_problem_types() -> None:
    """A problem type stands behind its status, that of a key by itself, the others together."""
    for name, (status, _) in PROBLEM_TYPES.items():
        told = response("401" if status == 401 else "default")["description"]
        (of_status,) = (part for part in told.split("; ") if part.startswith(f"{status}: "))
        assert f"`/problems/{name}`" in of_status


def test_who_serves_and_what_is_where_is_said() -> None:
    """Tags, server, contact and licence are filled in, and each tag has its words."""
    assert DOCUMENT["servers"][0]["url"] == "/"
    assert DOCUMENT["info"]["contact"]["name"]
    assert DOCUMENT["info"]["license"]["name"]
    tags = {tag["name"]: tag["description"] for tag in DOCUMENT["tags"]}
    used = {tag for item in DOCUMENT["paths"].values() for o in item.values() for tag in o["tags"]}
    assert set(tags) == used
    assert all(re.fullmatch(r"[A-Z].{20,}\.", text) for text in tags.values())
