"""What HTTP promises of every route: caching, methods, ids, keys, CORS, heavy work in its turn."""

import json
import re
from concurrent.futures import ThreadPoolExecutor
from threading import Event
from typing import Any

import pytest
from litestar.types import ASGIApp

from halfangle_service.http.calculating import Calculator
from halfangle_service.http.routes import document_route, operation_routes, reading
from halfangle_service.http.watch.metrics import Metrics
from halfangle_service.logs import configure_logging
from halfangle_service.operation import Operation
from halfangle_service.settings import Settings
from http_support import (
    FLAT,
    OPERATIONS,
    SINE,
    SINE_QUERY,
    TABLES,
    Service,
    assert_problem,
    bare_service,
    post,
    service_with,
)

# HTTP -----------------------------------------------------------------------------------------
CACHED = [
    SINE_QUERY,
    f"{SINE_QUERY}&pick=height",
    "/openapi.json",
    "/v1/operations",
    "/v1/operations/sine.setting",
    "/problems/impossible",
    *(collection.path for collection in TABLES),
]


@pytest.mark.parametrize("path", CACHED)
def test_known_bytes_are_not_sent_again(service: Service, path: str) -> None:
    """A GET carries a strong ETag, and is answered 304 without a body to who has it."""
    first = service.get(path)
    tag = first.headers["etag"]
    assert re.fullmatch(r'"[0-9a-f]{32}"', tag)
    assert first.headers["cache-control"] == "public, max-age=60, must-revalidate"
    for known in (tag, f'"other", {tag}', f"W/{tag}", "*"):
        again = service.get(path, headers={"If-None-Match": known})
        assert again.status_code == 304
        assert again.content == b""
        assert again.headers["etag"] == tag
    assert service.get(path, headers={"If-None-Match": '"other"'}).content == first.content


@pytest.mark.parametrize("path", [*CACHED, "/health/live", "/metrics", "/nowhere"])
def test_head_is_get_without_the_body(service: Service, path: str) -> None:
    """HEAD has the status and the headers of GET, and no body."""
    got, head = service.get(path), service.head(path)
    assert head.status_code == got.status_code
    assert head.content == b""
    for name in ("content-type", "etag", "cache-control"):
        assert head.headers.get(name) == got.headers.get(name)


@pytest.mark.parametrize("name", OPERATIONS)
def test_allow_names_the_methods_that_there_are(service: Service, name: str) -> None:
    """OPTIONS and 405 name every method of an operation's address, and no other."""
    path = OPERATIONS[name].path
    expected = "GET, HEAD, OPTIONS, POST" if name in FLAT else "OPTIONS, POST"
    options = service.options(path)
    assert (options.status_code, options.headers["allow"]) == (204, expected)
    for method in ("PUT", "DELETE", "PATCH", "TRACE", "BREW"):
        refused = service.request(method, path)
        assert_problem(refused, "method-not-allowed")
        assert refused.headers["allow"] == expected


@pytest.mark.parametrize("method", ["PUT", "POST", "TRACE"])
@pytest.mark.parametrize("path", ["/v1/operations", "/v1/operations/sine.setting", "/metrics"])
def test_what_is_only_read_refuses_other_methods(service: Service, method: str, path: str) -> None:
    """Tables, documents and measurements are only read."""
    refused = service.request(method, path)
    assert_problem(refused, "method-not-allowed")
    assert refused.headers["allow"] == "GET, HEAD, OPTIONS"


REFUSED: list[tuple[str, dict[str, Any], str]] = [
    ("nowhere", {"method": "GET", "url": "/nowhere"}, "not-found"),
    ("root", {"method": "GET", "url": "/v1"}, "not-found"),
    ("other version", {"method": "POST", "url": "/v2/sine/setting", "json": {}}, "not-found"),
    ("a part too many", {"method": "GET", "url": "/v1/operations/sine.setting/x"}, "not-found"),
    ("no such host", {"method": "GET", "url": "/health/live", "headers": {"Host": "a b"}},
     "bad-request"),
    ("no length", {"method": "POST", "url": SINE, "content": b"{}",
                   "headers": {"Content-Type": "application/json", "Content-Length": "ten"}},
     "bad-request"),
    ("method", {"method": "DELETE", "url": SINE}, "method-not-allowed"),
    ("not accepted", {"method": "GET", "url": SINE_QUERY, "headers": {"Accept": "text/html"}},
     "not-acceptable"),
    ("accepts all but", {"method": "GET", "url": SINE_QUERY,
                         "headers": {"Accept": "application/json;q=0"}}, "not-acceptable"),
    ("too large", {"method": "POST", "url": SINE, "content": b" " * 1_048_577,
                   "headers": {"Content-Type": "application/json"}}, "content-too-large"),
    ("form", {"method": "POST", "url": SINE, "data": {"units": "in"}}, "unsupported-media-type"),
    ("invalid", {"method": "POST", "url": SINE, "json": {}}, "invalid-request"),
    ("not json", {"method": "POST", "url": SINE, "content": b"<a/>",
                  "headers": {"Content-Type": "application/json"}}, "not-json"),
]  # fmt: skip


@pytest.mark.parametrize(("asked", "name"), [r[1:] for r in REFUSED], ids=[r[0] for r in REFUSED])
def test_every_refusal_is_a_problem_document_with_an_id(
    service: Service, asked: dict[str, Any], name: str
) -> None:
    """Whoever refuses, and why: a problem document that carries the caller's request id."""
    headers = {**asked.get("headers", {}), "X-Request-ID": "bench-7"}
    response = service.request(**{**asked, "headers": headers})
    problem = assert_problem(response, name)
    assert problem["instance"] == asked["url"].partition("?")[0]
    assert response.headers["x-request-id"] == "bench-7"


@pytest.mark.parametrize("accept", ["application/json", "application/*", "*/*", "text/html, */*"])
def test_an_accept_header_that_admits_json_is_answered(service: Service, accept: str) -> None:
    """Any media range that admits JSON is taken."""
    assert service.get(SINE_QUERY, headers={"Accept": accept}).status_code == 200


def test_request_id_is_made_where_none_came_or_it_is_no_plain_word(service: Service) -> None:
    """An id is honoured if short and plain; else a new one is made, so that logs stay clean."""
    assert service.get("/health/live", headers={"X-Request-ID": "a.b-C_9"}).headers[
        "x-request-id"
    ] == ("a.b-C_9")
    made = {service.get("/health/live").headers["x-request-id"] for _ in range(2)}
    made.add(service.get("/health/live", headers={"X-Request-ID": "a b"}).headers["x-request-id"])
    made.add(service.get("/nowhere", headers={"X-Request-ID": "x" * 65}).headers["x-request-id"])
    assert len(made) == 4
    assert all(re.fullmatch("[0-9a-f]{32}", word) for word in made)


def test_health_and_metrics(service: Service) -> None:
    """Whoever watches sees that the service lives, is ready, and what it has answered."""
    assert service.get("/health/live").json() == {"status": "live"}
    assert service.get("/health/ready").json() == {"status": "ready"}
    service.get("/v1/operations/sine.setting")
    service.get("/somewhere/else")
    text = service.get("/metrics").text
    for route in ("/v1/operations/{key}", "other", "/health/live"):
        assert re.search(
            rf'halfangle_requests_total{{method="GET",route="{re.escape(route)}",status="\d+"}} \d',
            text,
        )
    assert "halfangle_request_seconds_bucket" in text
    assert "/somewhere/else" not in text


# Keys and CORS --------------------------------------------------------------------------------
def test_keys_are_asked_for_where_they_are_set() -> None:
    """With keys set, each calculation and table asks for one; caches must keep answers private.

    Health, metrics and what tells how to call are answered without.
    """
    with service_with(api_keys=frozenset({"one", "two"})) as service:
        for headers in ({}, {"X-API-Key": "three"}, {"X-API-Key": ""}):
            refused = service.get(SINE_QUERY, headers=headers)
            assert_problem(refused, "unauthorized")
            assert refused.headers["www-authenticate"]
            assert refused.headers["x-request-id"]
        for key in ("one", "two"):
            answered = service.get(SINE_QUERY, headers={"X-API-Key": key})
            assert answered.status_code == 200
            assert answered.headers["cache-control"].startswith("private")
        assert service.get("/health/ready").status_code == 200
        assert service.get("/metrics").status_code == 200


def test_pages_of_named_origins_may_call() -> None:
    """The browser's question is answered before any key, and every answer says whom it is for."""
    origin = "https://forms.example"
    with service_with(cors_origins=(origin,), api_keys=frozenset({"one"})) as service:
        asked = {"Origin": origin, "Access-Control-Request-Method": "POST"}
        leave = service.options(SINE, headers=asked)
        assert leave.status_code == 204
        assert leave.headers["access-control-allow-origin"] == origin
        assert "POST" in leave.headers["access-control-allow-methods"]
        assert "x-api-key" in leave.headers["access-control-allow-headers"]
        refused = service.get(SINE_QUERY, headers={"Origin": origin})
        assert_problem(refused, "unauthorized")
        assert refused.headers["access-control-allow-origin"] == origin
        answered = service.get(SINE_QUERY, headers={"Origin": origin, "X-API-Key": "one"})
        assert answered.headers["access-control-allow-origin"] == origin
        assert answered.headers["vary"] == "Origin"
        other = service.options(SINE, headers={**asked, "Origin": "https://other.example"})
        assert "access-control-allow-origin" not in other.headers


def test_nothing_is_said_of_origins_where_none_is_set(service: Service) -> None:
    """Without the setting no page of another origin may call."""
    answered = service.get(SINE_QUERY, headers={"Origin": "https://forms.example"})
    assert not [name for name in answered.headers if name.startswith("access-control")]


# Heavy work -----------------------------------------------------------------------------------
def test_too_many_heavy_requests_are_refused_and_the_rest_is_answered() -> None:
    """Past workers and queue the answer is 503 with Retry-After; what was accepted is answered."""
    sine = OPERATIONS["sine.setting"]
    begun, go = Event(), Event()

    def slow(request: Any) -> Any:
        begun.set()
        assert go.wait(timeout=30)
        return sine.calculate(request)

    heavy = Operation(
        **{
            **{name: getattr(sine, name) for name in sine.__dataclass_fields__},
            "calculate": slow,
            "heavy": True,
        }
    )
    settings = Settings(log_level="error", heavy_workers=1, heavy_queue=0)
    calculator = Calculator.within(settings, Metrics())
    routes = operation_routes({"sine.setting": heavy}, calculator, settings)
    with bare_service(routes, settings) as service, ThreadPoolExecutor(1) as pool:
        accepted = pool.submit(post, service, heavy)
        assert begun.wait(timeout=30)
        refused = post(service, heavy)
        go.set()
        assert_problem(refused, "overloaded")
        assert refused.headers["retry-after"] == "1"
        assert accepted.result(timeout=30).status_code == 200


def test_what_many_ask_for_at_once_is_made_once(service: Service) -> None:
    """A page that eight callers ask for first is written by one of them; the others wait for it."""
    begun, go = Event(), Event()
    written: list[int] = []

    def write() -> bytes:
        written.append(1)
        begun.set()
        assert go.wait(timeout=30)
        return b"a page"

    settings = Settings(log_level="error")
    route = document_route("/page", write, "text/plain", settings)
    with bare_service([route], settings) as pages, ThreadPoolExecutor(8) as pool:
        asked = [pool.submit(pages.get, "/page") for _ in range(8)]
        assert begun.wait(timeout=30)
        assert pages.get("/health/live").status_code == 200
        go.set()
        assert [a.result(timeout=30).text for a in asked] == ["a page"] * 8
    assert len(written) == 1


def test_a_failure_nobody_foresaw_tells_nothing(capsys: pytest.CaptureFixture[str]) -> None:
    """A fault of ours is logged whole, with the request's id, and answered without any of it."""

    async def fail() -> ASGIApp:
        raise LookupError("secret of the house")

    configure_logging("error")
    with bare_service([reading("/fail", fail)], Settings(log_level="error")) as service:
        answered = service.get("/fail", headers={"X-Request-ID": "bench-7"})
    assert_problem(answered, "internal-error")
    assert "secret" not in answered.text
    [logged] = [json.loads(line) for line in capsys.readouterr().err.splitlines()]
    assert (logged["event"], logged["path"], logged["request_id"]) == (
        "unforeseen",
        "/fail",
        "bench-7",
    )
    assert "secret of the house" in logged["exception"]
