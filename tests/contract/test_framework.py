"""What the framework does by itself and would do otherwise: each thing once seen, held here."""

import asyncio
import json
import subprocess
import sys
import warnings
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from litestar import Litestar
from litestar.exceptions import WebSocketDisconnect
from litestar.testing import TestClient
from litestar.types import ASGIApp

from halfangle_service.app import application, create_app
from halfangle_service.http.routes import reading
from halfangle_service.logs import configure_logging
from halfangle_service.settings import Settings

Service = TestClient[Any]

SERVICE = Path(__file__).parents[2] / "service"
SINE = "/v1/sine/setting"
SINE_QUERY = f"{SINE}?units=in&center_distance=5&angle=30"
ORIGIN = "https://forms.example"
QUIET = Settings(log_level="error")


@pytest.fixture(scope="module")
def open_to_pages() -> Iterator[Service]:
    """A service that the pages of one origin may call."""
    settings = Settings(log_level="error", cors_origins=(ORIGIN,))
    with TestClient(create_app(settings), raise_server_exceptions=False) as client:
        yield client


def call(
    app: Litestar, method: str, target: str, received: list[dict[str, Any]] | None = None
) -> list[dict[str, Any]]:
    """Every message that the application sends for one request; no client tidies them."""
    path, _, query = target.partition("?")
    scope: Any = {
        "type": "http",
        "method": method,
        "path": path,
        "query_string": query.encode(),
        "headers": [(b"content-type", b"application/json")],
    }
    waiting = iter(received or [{"type": "http.request", "body": b"", "more_body": False}])
    sent: list[dict[str, Any]] = []

    async def receive() -> Any:
        return next(waiting)

    async def send(message: Any) -> None:
        sent.append(message)

    asyncio.run(app(scope, receive, send))
    return sent


# Methods --------------------------------------------------------------------------------------
@pytest.mark.parametrize("path", [SINE_QUERY, "/openapi.json", "/health/live", "/nowhere", SINE])
def test_head_describes_the_body_that_it_leaves_out(path: str) -> None:
    """HEAD sends GET's very headers, type and length included, and not one byte of the body."""
    app = create_app(QUIET)
    got, head = (call(app, method, path) for method in ("GET", "HEAD"))
    assert head[0]["status"] == got[0]["status"]
    described, known = (
        {k: v for k, v in messages[0]["headers"] if k != b"x-request-id"}
        for messages in (head, got)
    )
    assert described == known
    assert int(known[b"content-length"]) == len(got[1]["body"]) > 0
    assert [message["body"] for message in head[1:]] == [b""]


def test_methods_are_named_in_one_order() -> None:
    """Whatever order a set has in this process, 405 names the methods sorted."""
    code = (
        "from litestar.testing import TestClient\n"
        "from halfangle_service.app import create_app\n"
        "from halfangle_service.settings import Settings\n"
        "with TestClient(create_app(Settings(log_level='error'))) as service:\n"
        f"    print(service.put({SINE!r}).headers['allow'])\n"
    )
    for seed in ("1", "2", "3"):
        environment = {"PYTHONPATH": str(SERVICE), "PYTHONHASHSEED": seed}
        ran = subprocess.run(
            [sys.executable, "-c", code],
            capture_output=True,
            text=True,
            check=True,
            env=environment,
        )
        assert ran.stdout.strip() == "GET, HEAD, OPTIONS, POST"


# Paths and hosts ------------------------------------------------------------------------------
@pytest.mark.parametrize("path", ["/v1/operations/", "//v1//operations", "/v1/operations"])
def test_a_slash_too_many_is_the_same_address(service: Service, path: str) -> None:
    """A trailing or a doubled slash leads where the plain path leads."""
    plain = service.get("/v1/operations")
    assert plain.status_code == 200
    assert service.get(f"http://testserver.local{path}").content == plain.content


@pytest.mark.parametrize("host", ["a b", "a/b", "a{b"])
def test_a_host_that_is_none_is_refused(service: Service, host: str) -> None:
    """A Host header that names no host is a bad request, as a problem document."""
    answer = service.get("/health/live", headers={"Host": host})
    assert (answer.status_code, answer.json()["type"]) == (400, "/problems/bad-request")


# Types and encodings --------------------------------------------------------------------------
@pytest.mark.parametrize(
    ("path", "media_type"),
    [
        ("/docs", "text/html; charset=utf-8"),
        ("/problems/impossible", "text/plain; charset=utf-8"),
        (f"{SINE_QUERY}&pick=height", "text/plain; charset=utf-8"),
        ("/metrics", "text/plain; version=1.0.0; charset=utf-8"),
        ("/openapi.json", "application/json"),
        ("/nowhere", "application/problem+json"),
    ],
)
def test_a_charset_is_named_once(service: Service, path: str, media_type: str) -> None:
    """The media type is the one given, with no second charset."""
    assert service.get(path).headers["content-type"] == media_type


@pytest.mark.parametrize("path", [SINE_QUERY, "/v1/operations", "/v1/blocks/sets"])
def test_one_tag_stands_for_one_sequence_of_bytes(service: Service, path: str) -> None:
    """No answer is encoded on the way, so that a strong ETag has the same bytes behind it."""
    plain = service.get(path, headers={"Accept-Encoding": "identity"})
    for wanted in ("gzip", "br, gzip", "gzip;q=0"):
        answer = service.get(path, headers={"Accept-Encoding": wanted})
        assert "content-encoding" not in answer.headers
        assert answer.headers["etag"] == plain.headers["etag"]
        assert answer.content == plain.content


# Pages of other origins -----------------------------------------------------------------------
@pytest.mark.parametrize("origin", [None, ORIGIN, "https://other.example"])
@pytest.mark.parametrize("path", [SINE_QUERY, "/nowhere", SINE])
def test_every_answer_says_once_that_it_depends_on_the_origin(
    open_to_pages: Service, path: str, origin: str | None
) -> None:
    """A cache must not give one origin's answer to another, whoever happened to ask first."""
    answer = open_to_pages.get(path, headers={"Origin": origin} if origin else {})
    assert answer.headers.get_list("vary") == ["Origin"]
    allowed = answer.headers.get("access-control-allow-origin")
    assert allowed == (ORIGIN if origin == ORIGIN else None)


def test_not_modified_says_so_too(open_to_pages: Service) -> None:
    """The short answer to who has the bytes has the same Vary as the long one (RFC 9110)."""
    tag = open_to_pages.get(SINE_QUERY).headers["etag"]
    again = open_to_pages.get(SINE_QUERY, headers={"If-None-Match": tag})
    assert (again.status_code, again.headers.get_list("vary")) == (304, ["Origin"])


def test_the_one_answer_that_is_no_problem_document(open_to_pages: Service) -> None:
    """A browser that asks for a page of another origin, and no person, reads `Disallowed CORS`."""
    asked = {"Origin": "https://other.example", "Access-Control-Request-Method": "POST"}
    refused = open_to_pages.options(SINE, headers=asked)
    assert (refused.status_code, refused.text) == (400, "Disallowed CORS Origin")
    assert refused.headers["content-type"] == "text/plain; charset=utf-8"
    assert "access-control-allow-origin" not in refused.headers
    assert refused.headers["x-request-id"]


# Keys -----------------------------------------------------------------------------------------
def test_an_address_that_is_none_is_told_before_a_key_is_asked_for() -> None:
    """Routes are found before keys are checked: 404 and 405 come first, and nothing else does."""
    settings = Settings(log_level="error", api_keys=frozenset({"one"}))
    with TestClient(create_app(settings)) as service:
        assert service.get("/nowhere").status_code == 404
        assert service.put(SINE).status_code == 405
        assert service.options(SINE).status_code == 204
        for refused in (service.get(SINE_QUERY), service.post(SINE), service.get("/v1/operations")):
            assert refused.json()["type"] == "/problems/unauthorized"
        odd = service.get(SINE_QUERY, headers={b"X-API-Key": "ö".encode()})
        assert odd.json()["type"] == "/problems/unauthorized"


def test_an_empty_key_is_no_key() -> None:
    """A key that a caller without one would send is no setting, nor are blanks."""
    for keys in ({""}, {"one", " "}):
        with pytest.raises(ValueError, match="at least 1 character"):
            Settings(api_keys=frozenset(keys))
    assert Settings(api_keys=frozenset({" one "})).api_keys == {"one"}


# Callers that leave, and those that speak otherwise -------------------------------------------
def test_a_caller_that_left_is_no_fault_of_ours(capsys: pytest.CaptureFixture[str]) -> None:
    """A body that ends half way is status 499 in the log, and nothing unforeseen."""
    configure_logging("info")
    app = create_app(Settings(log_level="info"))
    half = {"type": "http.request", "body": b'{"units"', "more_body": True}
    [start, *_] = call(app, "POST", SINE, [half, {"type": "http.disconnect"}])
    assert start["status"] == 499
    [line] = [json.loads(text) for text in capsys.readouterr().err.splitlines()]
    assert (line["event"], line["status"], line["path"]) == ("answered", 499, SINE)


@pytest.mark.parametrize("path", [SINE, "/nowhere", "/v1/operations/sine.setting"])
def test_a_web_socket_is_closed_at_once(path: str) -> None:
    """A handshake in process is closed by the framework, before it is accepted."""
    with (
        TestClient(create_app(QUIET)) as service,
        pytest.raises(WebSocketDisconnect, match=r"^(Bad Request|Not Found)$") as caught,
        service.websocket_connect(path),
    ):
        pass
    assert caught.value.code == 4500


# Whatever the surroundings say ----------------------------------------------------------------
def test_no_variable_of_the_framework_decides(monkeypatch: pytest.MonkeyPatch) -> None:
    """The framework's own variables for debugging change nothing: no trace reaches a caller."""
    monkeypatch.setenv("LITESTAR_DEBUG", "1")
    monkeypatch.setenv("LITESTAR_PDB", "1")

    async def fail() -> ASGIApp:
        raise LookupError("secret of the house")

    app = application([reading("/fail", fail)], Settings(log_level="error"))
    assert not app.debug
    assert not app.pdb_on_exception
    configure_logging("error")
    with TestClient(app, raise_server_exceptions=False) as service:
        answer = service.get("/fail")
    assert answer.json()["type"] == "/problems/internal-error"
    assert "secret" not in answer.text


def test_nothing_that_the_framework_will_drop_is_used() -> None:
    """The service is put together and answers without one warning of what is deprecated."""
    with warnings.catch_warnings():
        warnings.simplefilter("error")
        with TestClient(create_app(QUIET)) as service:
            for path in (SINE_QUERY, "/v1/operations/sine.setting", "/nowhere", "/docs"):
                service.get(path)


def test_the_service_loads_no_maker_of_invented_data() -> None:
    """What the framework brings for tests, 14 MB of names and words, is never loaded to serve."""
    code = "import sys, halfangle_service.cli\nprint({'faker', 'polyfactory'} & set(sys.modules))"
    ran = subprocess.run(
        [sys.executable, "-c", code],
        capture_output=True,
        text=True,
        check=True,
        env={"PYTHONPATH": str(SERVICE)},
    )
    assert ran.stdout.strip() == "set()"
