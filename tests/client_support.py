"""A server of faults, for tests of retries and timeouts."""

import json
import time
from collections.abc import Mapping
from dataclasses import dataclass, field
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from threading import Thread
from types import TracebackType
from typing import Any, Self

#: An answer of blocks.list_sets, made up: what matters here is that it can be read.
ANSWER: dict[str, Any] = {
    "result": {"sets": []},
    "advisories": [],
    "basis": {"relations": [], "sources": [], "release": "0"},
}


@dataclass(frozen=True)
class Act:
    """What to do with one request: wait, then cut the connection, or answer."""

    status: int = 200
    headers: Mapping[str, str] = field(default_factory=dict)
    body: bytes = json.dumps(ANSWER).encode()
    wait_seconds: float = 0.0
    cut: bool = False


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
                self.send_response(act.status)
                for name, value in {**act.headers, "Content-Length": str(len(act.body))}.items():
                    self.send_header(name, value)
                self.end_headers()
                self.wfile.write(act.body)

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
