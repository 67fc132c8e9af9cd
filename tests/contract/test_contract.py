"""What every route promises: the contract, examples, caching, ids, methods, keys, CORS."""

import json
import re
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from contextlib import contextmanager
from html import unescape
from threading import Event
from typing import Any
from urllib.parse import urlencode

import pytest
from litestar.handlers import HTTPRouteHandler
from litestar.testing import TestClient
from litestar.types import ASGIApp
from openapi_spec_validator import OpenAPIV31SpecValidator

from halfangle_service import __version__
from halfangle_service.app import (
    all_tables,
    application,
    contract_bytes,
    create_app,
)
from halfangle_service.http.problems import PROBLEM_TYPES
from halfangle_service.http.query import query_fields
from halfangle_service.http.routes import document_route, operation_routes, reading
from halfangle_service.logs import configure_logging
from halfangle_service.operation import Operation
from halfangle_service.registry import load_registry
from halfangle_service.settings import Settings

Service = TestClient[Any]

OPERATIONS = load_registry().operations
FLAT = {name: o for name, o in OPERATIONS.items() if query_fields(o.request) is not None}
TABLES = all_tables()
SINE = "/v1/sine/setting"
SINE_QUERY = f"{SINE}?units=in&center_distance=5&angle=30"


def post(service: Service, operation: Operation[Any, Any]) -> Any:
    """POST an operation's example."""
    return service.post(operation.path, json=dict(operation.example))


def query_of(operation: Operation[Any, Any]) -> str:
    """An operation's example as a path with a query string."""
    plain = {
        name: [_text(v) for v in value] if isinstance(value, list | tuple) else _text(value)
        for name, value in operation.example.items()
    }
    return f"{operation.path}?{urlencode(plain, doseq=True)}"


def _text(value: Any) -> str:
    return value if isinstance(value, str) else json.dumps(value)


@contextmanager
def service_with(**settings: Any) -> Iterator[Service]:
    """A service of its own settings."""
    app = create_app(Settings(log_level="error", **settings))
    with TestClient(app, raise_server_exceptions=False) as client:
        yield client


@contextmanager
def bare_service(routes: list[HTTPRouteHandler], settings: Settings) -> Iterator[Service]:
    """A service of these routes alone."""
    with TestClient(application(routes, settings), raise_server_exceptions=False) as client:
        yield client


def assert_problem(response: Any, name: str) -> dict[str, Any]:
    """Check that a response is the problem document of this type; give it."""
    status, title = PROBLEM_TYPES[name]
    assert response.status_code == status, response.text[:500]
    assert response.headers["content-type"] == "application/problem+json"
    problem: dict[str, Any] = response.json()
    assert (problem["type"], problem["title"], problem["status"]) == (
        f"/problems/{name}",
        title,
        status,
    )
    assert problem["detail"]
    assert isinstance(problem["errors"], list)
    return problem


# The document ---------------------------------------------------------------------------------
def test_contract_is_valid_openapi() -> None:
    """The contract is an OpenAPI 3.1 document."""
    errors = list(OpenAPIV31SpecValidator(json.loads(contract_bytes())).iter_errors())
    assert not errors


def test_contract_is_served_as_it_is_written(service: Service) -> None:
    """The service serves the very bytes that are committed, and makes them alike each time."""
    assert service.get("/openapi.json").content == contract_bytes() == contract_bytes()


def test_contract_names_every_operation_and_table(service: Service) -> None:
    """Every operation and every table has its path in the contract, and nothing else has."""
    expected = {o.path for o in OPERATIONS.values()}
    expected |= {path for c in TABLES for path in (c.path, c.path + "/{key}")}
    assert set(service.get("/openapi.json").json()["paths"]) == expected


def test_operation_identifiers_are_unique(service: Service) -> None:
    """Each identifier becomes one method of the client, so it is a name and comes once."""
    items = service.get("/openapi.json").json()["paths"].values()
    identifiers = [method["operationId"] for item in items for method in item.values()]
    assert len(identifiers) == len(set(identifiers))
    assert [name for name in identifiers if not name.isidentifier()] == []


@pytest.mark.parametrize("name", PROBLEM_TYPES)
def test_every_problem_type_has_a_page(service: Service, name: str) -> None:
    """The `type` of a problem leads to a page that says what it means."""
    page = service.get(f"/problems/{name}")
    assert page.status_code == 200
    assert PROBLEM_TYPES[name][1] in page.text


def test_reference_page_fetches_nothing(service: Service) -> None:
    """The page works with no internet: it refers to no other host."""
    page = service.get("/docs")
    assert page.headers["content-type"] == "text/html; charset=utf-8"
    assert not re.findall(r"(?:src|href)=[\"']?(?:https?:)?//", page.text)
    assert all(operation.title in unescape(page.text) for operation in OPERATIONS.values())


# Examples -------------------------------------------------------------------------------------
@pytest.mark.parametrize("name", OPERATIONS)
def test_example_runs(service: Service, name: str) -> None:
    """Every example is answered, with formulas, sources and release, the same bytes each time."""
    first, second = (post(service, OPERATIONS[name]) for _ in range(2))
    assert first.status_code == 200, first.text
    assert first.content == second.content
    answer = first.json()
    assert answer["result"]
    assert answer["basis"]["release"] == __version__
    assert answer["basis"]["relations"]
    assert answer["basis"]["sources"]


@pytest.mark.parametrize("name", OPERATIONS)
def test_answer_fits_its_model(service: Service, name: str) -> None:
    """The answer, written piece by piece, is read back whole by the model of the contract."""
    operation = OPERATIONS[name]
    body = post(service, operation).content
    assert json.loads(operation.answer.model_validate_json(body).model_dump_json()) == json.loads(
        body
    )


@pytest.mark.parametrize("name", FLAT)
def test_query_gives_the_same_bytes(service: Service, name: str) -> None:
    """A flat request asked by query string gives the bytes that POST gives."""
    by_query = service.get(query_of(FLAT[name]))
    assert by_query.status_code == 200, by_query.text
    assert by_query.content == post(service, FLAT[name]).content


@pytest.mark.parametrize("name", FLAT)
def test_pick_gives_one_value_as_text(service: Service, name: str) -> None:
    """`pick` gives any single value of the result as plain text that reads back to it."""
    url = query_of(FLAT[name])
    answer = post(service, FLAT[name]).json()
    stopped = {"stop"} & {advisory["severity"] for advisory in answer["advisories"]}
    path, value = next(_leaves(answer["result"]))
    picked = service.get(f"{url}&pick={path}")
    if stopped and path not in {"forecast", "verdict"}:
        assert_problem(picked, "stopped")
        return
    assert picked.status_code == 200, picked.text
    assert picked.headers["content-type"] == "text/plain; charset=utf-8"
    assert picked.text == _text(value)


def _leaves(value: Any, path: str = "") -> Iterator[tuple[str, Any]]:
    """Every single value of a result with its dotted path, numbers first."""
    entries = enumerate(value) if isinstance(value, list) else value.items()
    nested = []
    for name, part in entries:
        if isinstance(part, dict | list):
            nested.append((f"{path}{name}.", part))
        else:
            yield f"{path}{name}", part
    for prefix, part in nested:
        yield from _leaves(part, prefix)


@pytest.mark.parametrize(
    ("path", "words"),
    [
        ("", "has no ''; there is: "),
        ("no_such_field", "has no 'no_such_field'; there is: "),
        ("angle", "names several values, not one"),
        ("angle.degrees.x", "has no 'x'; there is: a single value"),
        ("x" * 5000, "has no '" + "x" * 60 + "'"),
    ],
)
def test_pick_of_what_is_not_there_is_refused(service: Service, path: str, words: str) -> None:
    """A path that leads nowhere, or to several values, is refused with what there is."""
    problem = assert_problem(service.get(f"{SINE_QUERY}&pick={path}"), "no-such-value")
    assert words in problem["detail"]
    assert problem["errors"][0]["pointer"] == "/pick"
    assert len(problem["detail"]) < 1000


def test_pick_keeps_full_precision(service: Service) -> None:
    """The text reads back to the very number of the JSON answer."""
    url = f"{SINE}?units=in&center_distance=5&angle=8.3"
    picked = service.get(f"{url}&pick=height").text
    assert float(picked) == service.get(url).json()["result"]["height"]


# Catalogue and tables -------------------------------------------------------------------------
def test_catalogue_lists_every_operation(service: Service) -> None:
    """The catalogue has one line for each operation, in the registry's order."""
    listed = service.get("/v1/operations").json()["result"]["operations"]
    assert [entry["name"] for entry in listed] == list(OPERATIONS)
    assert [entry["query"] for entry in listed] == [name in FLAT for name in OPERATIONS]


@pytest.mark.parametrize("name", OPERATIONS)
def test_catalogue_is_enough_for_a_form(service: Service, name: str) -> None:
    """One entry holds schemas, formulas, sources and the example, as the operation declares."""
    entry = service.get(f"/v1/operations/{name}").json()["result"]
    operation = OPERATIONS[name]
    assert entry["path"] == operation.path
    assert entry["title"]
    assert entry["summary"]
    assert entry["largest_request"]
    assert entry["relations"] == list(operation.relations)
    assert len(entry["sources"]) == len(operation.sources)
    assert entry["example"] == json.loads(json.dumps(dict(operation.example)))
    assert set(entry["example"]) <= set(entry["request_schema"]["properties"])
    assert entry["result_schema"]["properties"]


@pytest.mark.parametrize("collection", TABLES, ids=lambda c: c.path)
def test_every_row_of_a_table_is_found_by_its_key(service: Service, collection: Any) -> None:
    """Each key that a table knows gives its row, with sources; another one is not found."""
    assert service.get(collection.path).status_code == 200
    assert collection.keys()
    for key in collection.keys():  # noqa: SIM118 - a method of a collection, not of a mapping
        answer = service.get(f"{collection.path}/{key}").json()
        assert answer["result"]
        assert answer["basis"]["release"] == __version__
    problem = assert_problem(service.get(f"{collection.path}/no-such-key"), "not-found")
    assert problem["known"] == list(collection.keys())


# HTTP -----------------------------------------------------------------------------------------
CACHED = [
    SINE_QUERY,
    f"{SINE_QUERY}&pick=height",
    "/openapi.json",
    "/docs",
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
    assert first.headers["cache-control"] == "public, max-age=3600"
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
    ("root", {"method": "GET", "url": "/"}, "not-found"),
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
    """With keys set, all but health and metrics asks for one; caches must keep answers private."""
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
    routes = operation_routes({"sine.setting": heavy}, settings)
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
