"""Every stop of the service where JSON is not read: the value picked, and the header beside it."""

from typing import Any

import pytest
from litestar.testing import TestClient

from advisories.every import ROWS
from advisories.places import answer
from advisories.row import Request, Row
from halfangle_service.http.query import query_fields
from halfangle_service.registry import load_registry
from halfangle_service.trade.uncertainty.decision import YES
from http_support import query_text
from support import single_values

Service = TestClient[Any]

STOPS = [row for row in ROWS if row.severity == "stop"]
FLAT = [row for row in STOPS if query_fields(load_registry().operations[row.operation].request)]


def _named(row: Row) -> str:
    return str(row)


def _url(operation: str, request: Request) -> str:
    """A request by query string."""
    return f"/v1/{operation.replace('.', '/')}?{query_text(request)}"


def _values(operation: str, request: Request, path: str) -> tuple[str, str]:
    """The two addresses of one value: with `pick`, and its own."""
    own = f"/v1/values/{operation}/{path}?{query_text(request)}"
    return f"{_url(operation, request)}&pick={path}", own


def _judges(path: str) -> bool:
    return path.endswith(("forecast", "verdict"))


def test_stops_of_flat_and_of_nested_requests_are_in_the_table() -> None:
    """Both kinds are there; a request that lies deeper than a dot reaches has none by query."""
    assert len({row.code for row in FLAT}) >= 6
    assert {row.operation for row in STOPS} - {row.operation for row in FLAT} == {
        "clearance.tilted-plate",
        "jobs.plan",
        "jobs.routing",
        "wheels.choose",
    }


@pytest.mark.parametrize("row", FLAT, ids=_named)
def test_no_plain_value_is_picked_beside_a_stop(service: Service, row: Row) -> None:
    """Whichever value is picked, the stop's own text stands in its place, judgements aside.

    A judgement that says yes is of a part only, and no leave to run: it is refused too.
    """
    whole = answer(row.operation, row.raising)
    said = " ".join(a["message"] for a in whole["advisories"] if a["severity"] == "stop")
    found = single_values(whole["result"])
    values = [path for path in found if not _judges(path)]
    yes = [path for path in found if _judges(path) and found[path] in YES]
    paths = (values[0], values[len(values) // 2], values[-1], *yes)
    for url in (url for path in paths for url in _values(row.operation, row.raising, path)):
        refused = service.get(url)
        problem = refused.json()
        assert (refused.status_code, problem["type"]) == (422, "/problems/stopped"), url
        assert problem["detail"] == said
        assert row.code in {a["code"] for a in problem["advisories"]}


@pytest.mark.parametrize("row", FLAT, ids=_named)
def test_judgements_and_advisories_are_picked_beside_a_stop(service: Service, row: Row) -> None:
    """They are given where they say no yes; the header `Advisories` names the stop beside them."""
    whole = answer(row.operation, row.raising)
    values = single_values(whole["result"])
    judged = {path: value for path, value in values.items() if _judges(path) and value not in YES}
    asked = [*judged, "advisories"]
    for path, url in ((p, url) for p in asked for url in _values(row.operation, row.raising, p)):
        picked = service.get(url)
        assert picked.status_code == 200, url
        assert f"{row.code};severity=stop" in picked.headers["advisories"].split(", ")
        if path == "advisories":
            assert f"\nstop {row.code}: " in "\n" + picked.text
        elif values[path] is not None:
            assert picked.text == judged[path]


@pytest.mark.parametrize("row", FLAT, ids=_named)
def test_just_short_of_a_stop_it_is_in_no_flat_form(service: Service, row: Row) -> None:
    """The value is given where no other stop stands, and no header or text names this one."""
    whole = answer(row.operation, row.falling_short)
    left = [a["code"] for a in whole["advisories"] if a["severity"] == "stop"]
    path = next(path for path in single_values(whole["result"]) if not _judges(path))
    for url in _values(row.operation, row.falling_short, path):
        assert service.get(url).status_code == (422 if left else 200)
    for url in _values(row.operation, row.falling_short, "advisories"):
        told = service.get(url)
        assert f"stop {row.code}: " not in told.text
        assert f"{row.code};severity=stop" not in told.headers.get("advisories", "")


@pytest.mark.parametrize("row", FLAT, ids=_named)
def test_a_whole_answer_by_query_string_carries_the_stop(service: Service, row: Row) -> None:
    """JSON is given as it is by POST, with the stop in it."""
    answered = service.get(_url(row.operation, row.raising))
    assert answered.status_code == 200
    assert answered.json() == answer(row.operation, row.raising)
