"""What is seen of each answer: its request id, one line in the log, counters and times.

All of it hangs on the moment when an answer begins to be sent, since that moment comes for every
answer: the framework's middleware stands behind its routing and sees no 404, 405 or preflight.
"""

import os
import re
import time
from datetime import UTC, datetime
from typing import Any

from litestar import Request
from litestar.types import Message, Scope
from prometheus_client import CollectorRegistry, Counter, Histogram
from pydantic_core import to_json

from halfangle_service.logs import LogFile

_REQUEST_ID = re.compile(rb"[A-Za-z0-9._-]{1,64}")
#: Names under which a request's own state holds its id and the moment when its work began.
_ID, _STARTED = "request_id", "started"
_KNOWN_METHODS = frozenset({"GET", "HEAD", "POST", "OPTIONS"})


def request_id(scope: Scope) -> str:
    """Id of a request: the caller's where it is short and plain, else one made here."""
    found: str | None = scope["state"].get(_ID)
    if found is None:
        sent = dict(scope["headers"]).get(b"x-request-id", b"")
        found = sent.decode() if _REQUEST_ID.fullmatch(sent) else os.urandom(16).hex()
        scope["state"][_ID] = found
    return found


async def note_start(request: Request[Any, Any, Any]) -> None:
    """Note when the work for a request began."""
    request.scope["state"][_STARTED] = time.perf_counter()


class Metrics:
    """Counters and times by route; unknown paths count as one, so that labels stay bounded."""

    def __init__(self) -> None:
        self.registry = CollectorRegistry()
        labels = ["method", "route", "status"]
        self._requests = Counter(
            "halfangle_requests", "Requests answered.", labels, registry=self.registry
        )
        self._seconds = Histogram(
            "halfangle_request_seconds", "Time to answer.", ["route"], registry=self.registry
        )
        # Looking a labelled counter up costs more than counting.
        self._counters: dict[tuple[str, str, int], tuple[Counter, Histogram]] = {}

    def observe(self, method: str, route: str, status: int, seconds: float | None) -> None:
        """Count one answer, and its time where a route was asked at all."""
        known = method if method in _KNOWN_METHODS else "other"
        key = (known, route, status)
        found = self._counters.get(key)
        if found is None:
            counter = self._requests.labels(known, route, str(status))
            found = self._counters[key] = (counter, self._seconds.labels(route))
        found[0].inc()
        if seconds is not None:
            found[1].observe(seconds)


class Watch:
    """Hook of the framework for whatever is sent; it also completes headers that depend on it.

    `log`: where each answer is a line of JSON, as the other logs are; None: nowhere. The line is
    written by itself: through the logger's processors it took as long as a calculation.
    `vary`: whether answers depend on the origin that asks.
    """

    def __init__(self, metrics: Metrics, *, log: LogFile | None, vary: bool) -> None:
        self._metrics = metrics
        self._log = log
        self._vary = vary

    async def __call__(self, message: Message, scope: Any) -> None:
        """Complete what is being sent, and note it; what is no answer of HTTP passes as it is."""
        if message["type"] == "http.response.start":
            identity = request_id(scope)
            headers: Any = message["headers"]
            headers.append((b"x-request-id", identity.encode()))
            # The framework says so to allowed origins only, and a cache would keep the wrong one.
            if self._vary and (b"vary", b"Origin") not in headers:
                headers.append((b"vary", b"Origin"))
            self._note(scope, message["status"], identity)
        elif message["type"] == "http.response.body" and scope["method"] == "HEAD":
            # The framework would leave type and length out with the body.
            message["body"] = b""

    def _note(self, scope: Any, status: int, identity: str) -> None:
        """Count and log what is being answered, how, and in what time."""
        started = scope["state"].get(_STARTED)
        seconds = None if started is None else time.perf_counter() - started
        self._metrics.observe(scope["method"], scope.get("path_template", "other"), status, seconds)
        if self._log is None:
            return
        line = {
            "event": "answered",
            "method": scope["method"][:20],
            "path": scope["path"][:300],
            "status": status,
            "milliseconds": None if seconds is None else round(seconds * 1000.0, 3),
            "request_id": identity,
            "level": "info",
            "timestamp": datetime.now(UTC),
        }
        self._log.write(to_json(line) + b"\n")
        self._log.flush()
