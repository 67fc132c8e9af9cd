"""A server of faults, for tests of retries and timeouts; the command, run in process."""

import json
import time
from collections.abc import Callable, Mapping
from contextlib import suppress
from dataclasses import dataclass, field
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from threading import Thread
from types import TracebackType
from typing import Any, Literal, Self

import pytest

from halfangle_client import cli

#: An answer of blocks.list_sets, made up: what matters here is that it can be read.
ANSWER: dict[str, Any] = {
    "result": {"sets": []},
    "advisories": [],
    "basis": {"relations": [], "sources": [], "release": "0", "fingerprint": "0"},
}


@dataclass(frozen=True)
class Act:
    """What to do with one request: wait, then cut the connection, or answer.

    `drips` names what comes a byte at a time, `drip_seconds` apart: the head, or the body. An
    `endless` body is the one given, over and over.
    """

    status: int = 200
    headers: Mapping[str, str] = field(default_factory=dict)
    body: bytes = json.dumps(ANSWER).encode()
    wait_seconds: float = 0.0
    cut: bool = False
    drips: Literal["", "head", "body"] = ""
    drip_seconds: float = 0.05
    endless: bool = False

    def send(self, write: Callable[[bytes], object]) -> None:
        """Write the answer whole, by drips, or until the caller has had enough."""
        length = {} if self.endless else {"Content-Length": str(len(self.body))}
        lines = [f"HTTP/1.1 {self.status} Made by the test", "Connection: close"]
        lines += [f"{name}: {value}" for name, value in {**self.headers, **length}.items()]
        head = "".join(f"{line}\r\n" for line in (*lines, "")).encode()
        for part, drips in ((head, self.drips == "head"), (self.body, self.drips == "body")):
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

    @property
    def url(self) -> str:
        """Where it listens."""
        return f"http://127.0.0.1:{self._server.server_port}"

    def _handler(self) -> type[BaseHTTPRequestHandler]:
        faults = self

        class Handler(BaseHTTPRequestHandler):
            def do_GET(self) -> None:
                faults.seen.append({k.lower(): v for k, v in self.headers.items()})
                act = faults.acts[len(faults.seen) - 1]
                time.sleep(act.wait_seconds)
                if act.cut:
                    self.close_connection = True
                    return
                self.close_connection = True
                with suppress(ConnectionError):
                    act.send(self.wfile.write)

            def do_POST(self) -> None:
                self.rfile.read(int(self.headers["Content-Length"]))
                self.do_GET()

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


def run(capsys: pytest.CaptureFixture[str], *arguments: str) -> tuple[int, str, str]:
    """Run the command; give status, output and complaints."""
    status = cli.main(arguments)
    captured = capsys.readouterr()
    return status, captured.out, captured.err
