"""A routing as CSV by HTTP: its address, its header, its refusals, its stops."""

import csv
import io
from collections.abc import Iterator
from typing import Any

import pytest

from halfangle_service.sheets.routing import COLUMNS
from http_support import Service, service_with
from sheets_support import center_job

_CSV, _ROUTING = "/v1/jobs/routing/csv", "/v1/jobs/routing"


@pytest.fixture(scope="module")
def service() -> Iterator[Service]:
    """A service."""
    with service_with() as running:
        yield running


def lines(text: str, delimiter: str = ",") -> list[list[str]]:
    """The lines of a file as a reader of RFC 4180 has them."""
    return list(csv.reader(io.StringIO(text, newline=""), delimiter=delimiter, strict=True))


def test_the_lines_are_those_of_the_answer(service: Service) -> None:
    """Header and a line an operation, ended by CRLF, with the answer's fingerprint and release."""
    got = service.post(_CSV, json=center_job())
    assert got.status_code == 200
    assert got.headers["content-type"] == "text/csv; charset=utf-8; header=present"
    answer = service.post(_ROUTING, json=center_job()).json()
    head, *rows = lines(got.text)
    assert tuple(head) == COLUMNS
    column = dict(zip(head, zip(*rows, strict=True), strict=True))
    operations = answer["result"]["operations"]
    assert list(column["code"]) == [each["code"] for each in operations]
    assert set(column["fingerprint"]) == {answer["basis"]["fingerprint"]}
    assert set(column["plan_fingerprint"]) == {answer["result"]["plan_fingerprint"]}
    assert set(column["release"]) == {answer["basis"]["release"]}
    assert got.text.startswith(",".join(COLUMNS) + "\r\n")
    assert got.text.endswith("\r\n")
    assert "note prove-by-hand" in column["advisories"][0]


def test_the_page_of_the_operation_names_the_address(service: Service) -> None:
    """Who reads of routings finds their lines; of other operations there are none."""
    assert f"POST {_CSV}" in service.get("/docs/jobs.routing").text
    assert "/csv" not in service.get("/docs/jobs.plan").text


def test_columns_are_parted_as_asked(service: Service) -> None:
    """Semicolon and tab hold the same cells, and a name with either of them or a quote is whole."""
    odd = center_job(job='HL-0412 "center"; one,\ttwo')
    whole = lines(service.post(_CSV, json=odd).text)
    assert whole[1][0] == odd["job"]
    for name, sign in (("semicolon", ";"), ("tab", "\t")):
        assert lines(service.post(f"{_CSV}?delimiter={name}", json=odd).text, sign) == whole


def test_a_stop_stands_in_each_line_and_in_the_header(service: Service) -> None:
    """Whoever takes in one line, or reads the header alone, sees that the work must not be run."""
    sent = center_job()
    sent["feature"]["included_angle_tolerance_arcsec"] = 1
    got = service.post(_CSV, json=sent)
    assert got.headers["advisories"].startswith("no-way-fits;severity=stop")
    head, *rows = lines(got.text)
    place = head.index("stops")
    assert len(rows) > 4
    assert all("Do not grind" in row[place] for row in rows)
    assert all(row[head.index("text")].startswith("STOP: ") for row in rows)
    assert all(row[head.index("forecast")] == "does-not-hold" for row in rows)
    assert all("stop no-way-fits" in row[head.index("advisories")] for row in rows)


@pytest.mark.parametrize(
    ("query", "headers", "status", "pointer"),
    [
        ("?delimiter=pipe", {}, 422, "/delimiter"),
        ("?delimiter=tab&delimiter=comma", {}, 422, "/delimiter"),
        ("?delimeter=tab", {}, 422, "/delimeter"),
        ("?units=in", {}, 422, "/units"),
        (f"?{'x' * 400}=1", {}, 422, None),
        ("?delimiter=%ff%fe", {}, 400, None),
        ("", {"Accept": "application/json"}, 406, None),
        ("", {"Content-Type": "text/csv"}, 415, None),
        ("", {"Content-Encoding": "gzip"}, 415, None),
    ],
)
def test_what_is_asked_wrongly_is_named(
    service: Service, query: str, headers: dict[str, str], status: int, pointer: str | None
) -> None:
    """A delimiter, a name, a form that there is not is refused by its name."""
    refused = service.post(_CSV + query, json=center_job(), headers=headers)
    assert refused.status_code == status, refused.text
    if pointer is not None:
        assert [one["pointer"] for one in refused.json()["errors"]] == [pointer]


@pytest.mark.parametrize(
    "body", [b"", b"{", b"[]", b'{"job": "\xff"}', b'{"units": "in", "units": "mm"}']
)
def test_a_broken_request_is_refused_as_the_operation_refuses_it(
    service: Service, body: bytes
) -> None:
    """A body that is no request has the same problem at both addresses."""
    sent: dict[str, Any] = {"content": body, "headers": {"Content-Type": "application/json"}}
    refused, own = service.post(_CSV, **sent), service.post(_ROUTING, **sent)
    assert refused.status_code == own.status_code >= 400
    assert refused.json() | {"instance": ""} == own.json() | {"instance": ""}


def test_what_cannot_be_planned_has_no_lines(service: Service) -> None:
    """The refusal is the operation's own; only POST has lines."""
    sent = center_job(way="9")
    refused, own = service.post(_CSV, json=sent), service.post(_ROUTING, json=sent)
    assert refused.status_code == 422
    assert refused.json() | {"instance": ""} == own.json() | {"instance": ""}
    assert refused.json()["errors"][0]["pointer"] == "/way"
    assert service.get(_CSV).status_code == 405


def test_lines_need_a_key_where_the_service_has_keys() -> None:
    """They are an answer as any other."""
    with service_with(api_keys=frozenset({"k-0123456789abcdef"})) as guarded:
        assert guarded.post(_CSV, json=center_job()).status_code == 401
        key = {"X-API-Key": "k-0123456789abcdef"}
        assert guarded.post(_CSV, json=center_job(), headers=key).status_code == 200
