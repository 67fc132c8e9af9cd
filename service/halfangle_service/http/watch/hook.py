"""What is seen of each answer: its request id, one line in the log, counters and times.

Most of it hangs on the moment when an answer begins to be sent, since that moment comes for every
answer: the framework's middleware stands behind its routing and sees no 404, 405 or preflight, and
each takes some microseconds of every request.
"""

import os
import re
import time
from datetime import UTC, datetime
from typing import Any

from litestar import Request
from litestar.types import ASGIApp, Message, Receive, Scope, Send
from pydantic_core import to_json

from halfangle_service.http.watch.metrics import REFUSALS, Metrics
from halfangle_service.http.watch.traces import Tracing, span_id, trace_of
from halfangle_service.logs import LogFile

_REQUEST_ID = re.compile(rb"[A-Za-z0-9._-]{1,64}")
#: Names under which a request's own state holds its id, the moment when its work began, its status,
#: the type of its problem and the name of its key.
_ID, _STARTED, _STATUS, _SPAN = "request_id", "started", "status", "span"
#: There where a trace is named.
_TRACED = "traced"
PROBLEM, KEY = "problem", "key"
_NO_ANSWER = 499


def request_id(scope: Scope) -> str:
    """Id of a request: the caller's where it is short and plain, else one made here."""
    found: str | None = scope["state"].get(_ID)
    if found is None:
        headers = dict(scope["headers"])
        sent = headers.get(b"x-request-id", b"")
        found = sent.decode() if _REQUEST_ID.fullmatch(sent) else os.urandom(16).hex()
        scope["state"][_ID] = found
        if b"traceparent" in headers:
            scope["state"][_TRACED] = True
    return found


async def note_start(request: Request[Any, Any, Any]) -> None:
    """Note when the work for a request began."""
    request.scope["state"][_STARTED] = time.perf_counter()


class Watch:
    """Hook of the framework for whatever is sent; it also completes headers that depend on it.

    `log`: where each answer is a line of JSON, as the other logs are; None: nowhere. The line is
    written by itself: through the logger's processors it took as long as a calculation.
    `vary`: whether answers depend on the origin that asks.
    """

    def __init__(self, metrics: Metrics, *, log: LogFile | None, vary: bool) -> None:
        self.metrics = metrics
        self.tracing: Tracing | None = None
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
            self._note(scope, message["status"], identity, headers)
        elif message["type"] == "http.response.body":
            if scope["method"] == "HEAD":
                # The framework would leave type and length out with the body.
                message["body"] = b""
            self.metrics.cells.numbers[self.metrics.sent] += len(message.get("body", b""))

    def _note(self, scope: Any, status: int, identity: str, headers: Any) -> None:
        """Count and log what is being answered, how, and in what time."""
        state = scope["state"]
        started = state.get(_STARTED)
        seconds = None if started is None else time.perf_counter() - started
        route = scope.get("path_template", "other")
        self.metrics.observe(scope["method"], route, status, seconds)
        state[_STATUS] = status
        if status >= 400 and PROBLEM in state:
            self.metrics.add(REFUSALS, state[PROBLEM])
        trace = trace_of(scope["headers"]) if _TRACED in state else None
        span = "" if trace is None else span_id(state.get(_SPAN))
        if trace is not None:
            response = f"00-{trace.trace}-{span}-{trace.flags}"
            headers.append((b"traceresponse", response.encode()))
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
        if KEY in state:
            line["key"] = state[KEY]
        if trace is not None:
            line |= {"trace_id": trace.trace, "span_id": span}
        self._log.write(to_json(line) + b"\n")
        self._log.flush()


class Traced:
    """Middleware around the work for a request, where spans are wanted: it lasts as they do."""

    def __init__(self, app: ASGIApp, watch: Watch) -> None:
        self._app = app
        self._watch = watch

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Begin a span with the work, and end it with that, however it ends."""
        tracing = self._watch.tracing
        if tracing is None:
            await self._app(scope, receive, send)
            return
        state: Any = scope["state"]
        state[_SPAN] = tracing.begin(scope, trace_of(scope["headers"]))
        try:
            await self._app(scope, receive, send)
        finally:
            tracing.end(state[_SPAN], state.get(_STATUS, _NO_ANSWER), request_id(scope))
