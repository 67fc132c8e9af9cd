"""Bodies, queries and addresses that are no request: what JSON refuses, and what only HTTP sees."""

from typing import Any

import pytest

from bad_input_support import (
    JSON_HEADER,
    OPERATIONS,
    SINE,
    Service,
    assert_names,
    every_operation,
    problem_for,
)
from halfangle_service.http.query import query_fields

# Bodies that are no request -------------------------------------------------------------------
NO_JSON: dict[str, bytes] = {
    "nothing": b"",
    "blanks": b"  \n",
    "cut short": b'{"units": "in", ',
    "trailing comma": b'{"units": "in",}',
    "two values": b"{} {}",
    "single quotes": b"{'units': 'in'}",
    "comment": b'{"units": "in"} // inches',
    "markup": b"<request/>",
    "form": b"units=in&angle=30",
    "byte order mark": b"\xef\xbb\xbf{}",
    "UTF-16": '{"units": "in"}'.encode("utf-16"),
    "invalid UTF-8": b'{"units": "\xff\xfe"}',
    "cut UTF-8": b'{"units": "in\xc2"}',
    "overlong UTF-8": b'{"units": "\xc0\xaf"}',
    "control character": b'{"units": "i\x00n"}',
    "lone surrogate": b'{"units": "\\ud800"}',
    "300 brackets": b"[" * 300,
    "300 pairs of brackets": b"[" * 300 + b"]" * 300,
    "300 objects": b'{"a":' * 300 + b"1" + b"}" * 300,
    "hexadecimal": b'{"angle": 0x1E}',
    "leading zero": b'{"angle": 030}',
    "plus sign": b'{"angle": +30}',
    "bare point": b'{"angle": .5}',
    "gzip": b"\x1f\x8b\x08\x00\x00\x00\x00\x00",
}


@every_operation
def test_what_is_no_json_is_refused_with_400(name: str) -> None:
    """A body that is no JSON text in UTF-8 is refused as such."""
    for what, body in NO_JSON.items():
        problem = problem_for(OPERATIONS[name], body)
        assert problem is not None, what
        assert (problem["type"], problem["status"]) == ("/problems/not-json", 400), what
        assert len(problem["detail"]) < 300, what


@every_operation
def test_json_that_is_no_object_is_refused(name: str) -> None:
    """The request is one object."""
    for body in (b"null", b"true", b"30", b'"in"', b"[]", b"[{}]"):
        assert_names(problem_for(OPERATIONS[name], body), "")


# What only HTTP tells apart -------------------------------------------------------------------
def post_body(service: Service, body: bytes, **headers: str) -> Any:
    """POST raw bytes to the sine setting."""
    return service.post(SINE, content=body, headers={**JSON_HEADER, **headers})


GOOD = b'{"units": "in", "center_distance": 5, "angle": 30}'


@pytest.mark.parametrize("what", NO_JSON)
def test_http_answers_400_to_what_is_no_json(service: Service, what: str) -> None:
    """The same through HTTP: a problem document, with an id."""
    response = post_body(service, NO_JSON[what])
    assert response.status_code == 400
    assert response.headers["content-type"] == "application/problem+json"
    assert response.headers["x-request-id"]


@pytest.mark.parametrize(
    "media_type",
    [
        "text/plain",
        "application/x-www-form-urlencoded",
        "multipart/form-data; boundary=x",
        "application/xml",
        "application/jsonp",
        "application/json; charset=latin-1",
        "application/json, text/plain",
        "x" * 5000,
        "",
    ],
)
def test_another_content_type_is_refused(service: Service, media_type: str) -> None:
    """Only JSON is taken, and the refusal says what to send."""
    response = service.post(SINE, content=GOOD, headers={"Content-Type": media_type})
    assert response.status_code == 415
    assert response.headers["accept"] == "application/json"
    assert "application/json" in response.json()["detail"]
    assert len(response.content) < 1000


@pytest.mark.parametrize(
    "media_type",
    [
        "application/json",
        "Application/JSON",
        "application/json; charset=UTF-8",
        'application/json;charset="utf-8"',
        "application/json; charset=utf8",
    ],
)
def test_json_is_taken_however_it_is_spelt(service: Service, media_type: str) -> None:
    """Media types are compared without regard to case (RFC 9110, 8.3.1)."""
    response = service.post(SINE, content=GOOD, headers={"Content-Type": media_type})
    assert response.status_code == 200


def test_a_missing_content_type_is_refused(service: Service) -> None:
    """A body of no declared type is not guessed at."""
    response = service.post(SINE, content=GOOD)
    assert response.status_code == 415
    assert "got none" in response.json()["detail"]


@pytest.mark.parametrize("chunked", [False, True])
def test_ten_megabytes_are_refused_with_the_limit(service: Service, chunked: bool) -> None:
    """A body past the limit is refused, whether its length is declared or it comes in chunks."""
    chunks = (b" " * 65_536 for _ in range(160))
    body: Any = chunks if chunked else b"".join(chunks)
    response = service.post(SINE, content=body, headers=JSON_HEADER)
    assert response.status_code == 413
    assert response.json()["type"] == "/problems/content-too-large"
    assert "1048576 bytes" in response.json()["detail"]


def test_a_body_just_within_the_limit_is_read(service: Service) -> None:
    """Blanks are JSON; the limit counts bytes, not meaning."""
    padded = GOOD + b" " * (1_048_576 - len(GOOD))
    assert post_body(service, padded).status_code == 200
    assert post_body(service, padded + b" ").status_code == 413


@pytest.mark.parametrize("length", ["-1", "ten", "9" * 40])
def test_a_declared_length_that_is_none_makes_no_failure(service: Service, length: str) -> None:
    """A Content-Length that is no length, or an absurd one, never makes a 500."""
    assert post_body(service, GOOD, **{"Content-Length": length}).status_code < 500


@pytest.mark.parametrize(
    ("query", "status", "pointer"),
    [
        ("", 422, "/units"),
        ("units=in&center_distance=5", 422, "/angle"),
        ("units=cm&center_distance=5&angle=30", 422, "/units"),
        ("units=in&center_distance=five&angle=30", 422, "/center_distance"),
        ("units=in&center_distance=NaN&angle=30", 422, "/center_distance"),
        ("units=in&center_distance=1e999&angle=30", 422, "/center_distance"),
        ("units=in&center_distance=" + "7" * 5000 + "&angle=30", 422, "/center_distance"),
        ("units=in&center_distance=-5&angle=30", 422, "/center_distance"),
        ("units=in&center_distance=5&center_distance=6&angle=30", 422, "/center_distance"),
        ("units=in&center_distance=5&angle=0", 422, "/angle"),
        ("units=in&center_distance=5&angle=90", 422, "/angle"),
        ("units=in&center_distance=5&angle=", 422, "/angle"),
        ("units=in&center_distance=5&angle=30&colour=red", 422, "/colour"),
        ("units=in&center_distance=5&angle=30&pick=height&pick=step", 422, "/pick"),
        ("units=in&center_distance=true&angle=30", 422, "/center_distance"),
        ("a/b~=1&a/b~=2", 422, "/a~1b~0"),
        ("units=in&a/b~=1", 422, "/a~1b~0"),
        ("&".join(["x" * 5000 + "=1"] * 2), 422, "/" + "x" * 299),
        ("units=in&center_distance=5&angle=%FF", 400, None),
        ("&".join(["units=in"] * 3000), 400, None),
        ("units=in&center_distance=+-5&angle=30", 422, "/center_distance"),
        ("units=in&center_distance=.&angle=30", 422, "/center_distance"),
        ("units=in&center_distance=5,5&angle=30", 422, "/center_distance"),
    ],
)
def test_a_wrong_query_string_is_refused(
    service: Service, query: str, status: int, pointer: str | None
) -> None:
    """A query string is held to the same fields and bounds as a body."""
    response = service.get(f"{SINE}?{query}")
    assert response.status_code == status, response.text[:300]
    assert response.headers["content-type"] == "application/problem+json"
    pointers = {error["pointer"] for error in response.json()["errors"]}
    assert pointer is None or pointer in pointers
    assert len(response.content) < 2000


@pytest.mark.parametrize(
    ("written", "number"),
    [(".375", 0.375), ("5.", 5), ("%2B5", 5), ("+5", 5), ("%2B.5e1", 5), ("05", 5), ("5E0", 5)],
)
def test_a_query_takes_numbers_as_people_write_them(
    service: Service, written: str, number: float
) -> None:
    """`.375`, `5.` and `+5` are numbers in a query string, though they are none in JSON."""
    request = {"units": "in", "included_angle": 60, "amount": number}
    asked = service.get(f"/v1/tapers/infeed?units=in&included_angle=60&amount={written}")
    assert asked.status_code == 200, asked.text
    assert asked.json() == service.post("/v1/tapers/infeed", json=request).json()


@pytest.mark.parametrize("name", [n for n, o in OPERATIONS.items() if query_fields(o.request)])
def test_every_query_refuses_an_unknown_field(service: Service, name: str) -> None:
    """A query string too takes no field that the request does not have."""
    response = service.get(f"{OPERATIONS[name].path}?no_such_field=1")
    assert response.status_code == 422
    assert "/no_such_field" in {error["pointer"] for error in response.json()["errors"]}


@pytest.mark.parametrize(
    "path",
    [
        "/" + "x" * 5000,
        "/v1/operations/" + "x" * 5000,
        "/v1/%00",
        "/%FF%FE",
        "/v1//sine",
        "/../etc",
    ],
)
def test_a_strange_path_is_not_found_and_not_sent_back_at_length(
    service: Service, path: str
) -> None:
    """Any path that leads nowhere is a 404 of bounded size."""
    response = service.get(path)
    assert response.status_code == 404
    assert len(response.content) < 3000
    assert response.json()["type"] == "/problems/not-found"
