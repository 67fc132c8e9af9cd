"""The outermost layer: request ids, API keys, CORS, logs and metrics, for every answer."""

import hmac
import logging
import os
import re
import sys
import time
from collections.abc import Iterable

import structlog
from prometheus_client import CollectorRegistry, Counter, Histogram
from pydantic_core import to_json

from halfangle_service.http.exchange import (
    ASGIApp,
    Headers,
    Message,
    Receive,
    Reply,
    Scope,
    Send,
    problem_reply,
    send_reply,
)
from halfangle_service.http.problems import ProblemError

_REQUEST_ID = re.compile(rb"[A-Za-z0-9._-]{1,64}")
#: Answered without a key: whoever watches the service is not its user.
_OPEN_PATHS = frozenset({"/health/live", "/health/ready", "/metrics"})
_KNOWN_METHODS = frozenset({"GET", "HEAD", "POST", "OPTIONS"})
#: Status in logs and metrics where the caller went away before there was an answer.
_CALLER_GONE = 499


class Metrics:
    """Counters and times by route; unknown paths count as one, so that labels stay bounded."""

    def __init__(self, paths: Iterable[str]) -> None:
        self.registry = CollectorRegistry()
        self._routes = frozenset(paths)
        labels = ["method", "route", "status"]
        self._requests = Counter(
            "halfangle_requests", "Requests answered.", labels, registry=self.registry
        )
        self._seconds = Histogram(
            "halfangle_request_seconds", "Time to answer.", ["route"], registry=self.registry
        )
        # Looking a labelled counter up costs more than counting.
        self._counters: dict[tuple[str, str, int], tuple[Counter, Histogram]] = {}

    def observe(self, method: str, path: str, status: int, seconds: float) -> None:
        """Count one answered request."""
        known = method if method in _KNOWN_METHODS else "other"
        key = (known, self._route(path), status)
        found = self._counters.get(key)
        if found is None:
            counter = self._requests.labels(known, key[1], str(status))
            found = self._counters[key] = (counter, self._seconds.labels(key[1]))
        found[0].inc()
        found[1].observe(seconds)

    def _route(self, path: str) -> str:
        if path in self._routes:
            return path
        keyed = path.rpartition("/")[0] + "/{key}"
        return keyed if keyed in self._routes else "other"


class AccessLog:
    """One line of JSON for each answered request, on standard error, as the other logs are.

    It is written by hand: through the logger it took half as long as a calculation.
    """

    def __init__(self) -> None:
        self._used: bool = structlog.get_logger("halfangle.access").is_enabled_for(logging.INFO)
        self._stream = sys.stderr.buffer
        self._second = 0
        self._second_text = b""

    def write(self, scope: Scope, status: int, seconds: float, request_id: bytes) -> None:
        """Write what was answered, how, and in what time."""
        if not self._used:
            return
        now = time.time()
        second = int(now)
        if second != self._second:
            self._second = second
            self._second_text = time.strftime("%Y-%m-%dT%H:%M:%S", time.gmtime(now)).encode()
        self._stream.write(
            b'{"event":"answered","method":%b,"path":%b,"status":%d,"milliseconds":%.3f,'
            b'"request_id":"%b","level":"info","timestamp":"%b.%06dZ"}\n'
            % (
                to_json(scope["method"][:20]),
                to_json(scope["path"][:300]),
                status,
                seconds * 1000.0,
                request_id,
                self._second_text,
                (now - second) * 1e6,
            )
        )
        self._stream.flush()


class Cors:
    """Lets the pages of the named origins call the service (WHATWG Fetch, 3.2)."""

    def __init__(self, origins: Iterable[str]) -> None:
        self._origins = frozenset(origin.encode() for origin in origins)
        self.used = bool(self._origins)

    def headers(self, origin: bytes | None) -> Headers:
        """Headers of any answer; without an allowed origin, only that it depends on it."""
        if not self._allows(origin):
            return ((b"vary", b"Origin"),)
        return (
            (b"vary", b"Origin"),
            (b"access-control-allow-origin", origin or b"*"),
            (b"access-control-expose-headers", b"etag, x-request-id, retry-after"),
        )

    def preflight(self, method: str, headers: dict[bytes, bytes]) -> Reply | None:
        """Answer to a browser that asks first, or None where this is no such question.

        A page of another origin gets an answer without leave, and its browser goes no further.
        """
        asked = method == "OPTIONS" and b"access-control-request-method" in headers
        if not (asked and b"origin" in headers):
            return None
        if not self._allows(headers[b"origin"]):
            return Reply(b"", status=204)
        allowed = b"content-type, x-request-id, x-api-key, if-none-match"
        return Reply(
            b"",
            status=204,
            headers=(
                (b"access-control-allow-methods", b"GET, HEAD, POST, OPTIONS"),
                (b"access-control-allow-headers", allowed),
                (b"access-control-max-age", b"600"),
            ),
        )

    def _allows(self, origin: bytes | None) -> bool:
        return origin in self._origins or b"*" in self._origins


class Edge:
    """ASGI application around the service's own."""

    def __init__(
        self,
        app: ASGIApp,
        metrics: Metrics,
        api_keys: frozenset[str] = frozenset(),
        cors_origins: Iterable[str] = (),
    ) -> None:
        self._app = app
        self._metrics = metrics
        self._keys = [key.encode() for key in sorted(api_keys)]
        self._cors = Cors(cors_origins)
        self._log = AccessLog()

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Answer one request, and put its id on the answer whoever makes it."""
        if scope["type"] != "http":
            await _live(receive, send)
            return
        started = time.perf_counter()
        headers = dict(scope["headers"])
        request_id = _request_id(headers.get(b"x-request-id"))
        extra: Headers = ((b"x-request-id", request_id),)
        if self._cors.used:
            extra += self._cors.headers(headers.get(b"origin"))
        status = _CALLER_GONE

        async def send_with_extra(message: Message) -> None:
            nonlocal status
            if message["type"] == "http.response.start":
                status = message["status"]
                message["headers"] = [*message["headers"], *extra]
            await send(message)

        try:
            reply = self._own_reply(scope, headers)
            if reply is None:
                await self._app(scope, receive, send_with_extra)
            else:
                await send_reply(reply, send_with_extra, head=scope["method"] == "HEAD")
        finally:
            seconds = time.perf_counter() - started
            self._metrics.observe(scope["method"], scope["path"], status, seconds)
            self._log.write(scope, status, seconds, request_id)

    def _own_reply(self, scope: Scope, headers: dict[bytes, bytes]) -> Reply | None:
        """What is answered here: a browser that asks first, and a request without a key."""
        if self._cors.used:
            # A browser asks first without any key, so this comes before it.
            reply = self._cors.preflight(scope["method"], headers)
            if reply is not None:
                return reply
        if not self._keys or scope["path"] in _OPEN_PATHS or self._has_key(headers):
            return None
        return problem_reply(
            ProblemError(
                "unauthorized",
                "Send a valid key in the header X-API-Key.",
                headers={"WWW-Authenticate": 'ApiKey header="X-API-Key"'},
            ),
            scope["path"],
        )

    def _has_key(self, headers: dict[bytes, bytes]) -> bool:
        sent = headers.get(b"x-api-key", b"")
        # No early exit: the time must not tell which key came close.
        return sum(hmac.compare_digest(sent, key) for key in self._keys) > 0


async def _live(receive: Receive, send: Send) -> None:
    """Say yes to start and stop: there is nothing to open or to close."""
    for moment in ("startup", "shutdown"):
        await receive()
        await send({"type": f"lifespan.{moment}.complete"})


def _request_id(sent: bytes | None) -> bytes:
    """Honour the caller's id where it is short and plain, else make one."""
    if sent is not None and _REQUEST_ID.fullmatch(sent):
        return sent
    return os.urandom(16).hex().encode()
