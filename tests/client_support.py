"""A server of faults, for tests of retries and timeouts; the command, run in process."""

import json
import signal
import time
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager, suppress
from dataclasses import dataclass, field
from http.client import HTTPConnection
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from threading import Lock, Thread
from types import TracebackType
from typing import Any, Literal, Self
from urllib.parse import urlsplit

import pytest

from halfangle_client import cli

#: An answer of blocks.list_sets, made up: what matters here is that it can be read.
ANSWER: dict[str, Any] = {
    "result": {"sets": []},
    "advisories": [],
    "basis": {"relations": [], "sources": [], "release": "0", "fingerprint": "0"},
}
BATCHES = "/v1/batches"


@dataclass(frozen=True)
class Act:
    """What to do with one request: wait, then cut the connection, or answer.

    `drips` names what comes a byte at a time, `drip_seconds` apart: the head, or the body. An
    `endless` body is the one given, over and over; of one that is `cut_after` so many bytes no more
    comes.
    """

    status: int = 200
    headers: Mapping[str, str] = field(default_factory=dict)
    body: bytes = json.dumps(ANSWER).encode()
    wait_seconds: float = 0.0
    cut: bool = False
    drips: Literal["", "head", "body"] = ""
    drip_seconds: float = 0.05
    endless: bool = False
    cut_after: int | None = None

    def send(self, write: Callable[[bytes], object]) -> None:
        """Write the answer whole, by drips, or until the caller has had enough."""
        length = {} if self.endless else {"Content-Length": str(len(self.body))}
        lines = [f"HTTP/1.1 {self.status} Made by the test", "Connection: close"]
        lines += [f"{name}: {value}" for name, value in {**self.headers, **length}.items()]
        head = "".join(f"{line}\r\n" for line in (*lines, "")).encode()
        body = self.body[: self.cut_after]
        for part, drips in ((head, self.drips == "head"), (body, self.drips == "body")):
            for byte in part if drips else ():
                write(bytes([byte]))
                time.sleep(self.drip_seconds)
            if not drips:
                write(part)
        while self.endless:
            write(self.body)


def refusal(status: int, **headers: str) -> Act:
    """An answer that is a problem document."""
    problem = {
        "type": "about:blank",
        "title": "A fault",
        "status": status,
        "detail": "made by the test",
        "instance": "/v1/blocks/sets",
        "errors": [],
    }
    named = {name.replace("_", "-"): value for name, value in headers.items()}
    return Act(status, named, json.dumps(problem).encode())


class FaultServer:
    """Answers request n by act n, and keeps the headers of every request."""

    def __init__(self) -> None:
        self.acts: list[Act] = []
        self.seen: list[dict[str, str]] = []
        self._server = ThreadingHTTPServer(("127.0.0.1", 0), self._handler())
        self._server.daemon_threads = True
        # As many callers may come at once as a client has; five would be kept waiting a second.
        self._server.socket.listen(64)

    def act(self, path: str, body: bytes) -> Act:  # noqa: ARG002 -- for who answers by them
        """What to do with the request that was seen last."""
        return self.acts[len(self.seen) - 1]

    @property
    def url(self) -> str:
        """Where it listens."""
        return f"http://127.0.0.1:{self._server.server_port}"

    def _handler(self) -> type[BaseHTTPRequestHandler]:
        faults = self

        class Handler(BaseHTTPRequestHandler):
            def do_GET(self, body: bytes = b"") -> None:
                faults.seen.append({k.lower(): v for k, v in self.headers.items()})
                act = faults.act(self.path, body)
                time.sleep(act.wait_seconds)
                if act.cut:
                    self.close_connection = True
                    return
                self.close_connection = True
                with suppress(ConnectionError):
                    act.send(self.wfile.write)

            def do_POST(self) -> None:
                self.do_GET(self.rfile.read(int(self.headers["Content-Length"])))

            def log_message(self, format: str, *args: Any) -> None:  # noqa: A002
                """Say nothing: the test knows what it asked for."""

        return Handler

    def __enter__(self) -> Self:
        self._thread = Thread(target=self._server.serve_forever, kwargs={"poll_interval": 0.01})
        self._thread.start()
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        traceback: TracebackType | None,
    ) -> None:
        self._server.shutdown()
        self._thread.join()
        self._server.server_close()


class Relay(FaultServer):
    """Hands requests on to a service, and breaks the answers to batches as a test tells it.

    `breaks` holds what becomes of the first answers to batches, `always` of all later ones; `asked`
    what each request asked: its path and its body.
    """

    def __init__(self, service_url: str) -> None:
        super().__init__()
        self.breaks: list[Callable[[Act], Act]] = []
        self.always: Callable[[Act], Act] = lambda act: act
        self.asked: list[tuple[str, bytes]] = []
        self._service = urlsplit(service_url).netloc
        self._lock = Lock()

    def act(self, path: str, body: bytes) -> Act:
        """The service's answer, broken where that is wanted."""
        connection = HTTPConnection(self._service)
        headers = {"Content-Type": f"application/{'x-nd' if path == BATCHES else ''}json"}
        connection.request("POST", path, body, headers)
        response = connection.getresponse()
        act = Act(response.status, {"X-Request-ID": "relayed"}, response.read())
        connection.close()
        with self._lock:
            self.asked.append((path, body))
            if path != BATCHES:
                return act
            return self.breaks.pop(0)(act) if self.breaks else self.always(act)

    @property
    def refs(self) -> list[list[int]]:
        """The references in each batch."""
        batches = [body for path, body in self.asked if path == BATCHES]
        return [[json.loads(line)["ref"] for line in body.splitlines()] for body in batches]


@contextmanager
def interruptible() -> Iterator[None]:
    """SIGINT interrupts, as in a terminal: what a shell starts in the background ignores it."""
    before = signal.signal(signal.SIGINT, signal.default_int_handler)
    try:
        yield
    finally:
        signal.signal(signal.SIGINT, before)


def run(capsys: pytest.CaptureFixture[str], *arguments: str) -> tuple[int, str, str]:
    """Run the command; give status, output and complaints."""
    status = cli.main(arguments)
    captured = capsys.readouterr()
    return status, captured.out, captured.err
