"""The outermost layer: request ids, API keys, logs and metrics, for every answer of every route."""

import hmac
import re
import time
import uuid
from collections.abc import Iterable

import structlog
from litestar.enums import ScopeType
from litestar.types import ASGIApp, Message, Receive, Scope, Send
from prometheus_client import CollectorRegistry, Counter, Histogram

from halfangle_service.http.problems import PROBLEM_MEDIA_TYPE, ProblemError, problem_body

_REQUEST_ID = re.compile(rb"[A-Za-z0-9._-]{1,64}")
#: Answered without a key: whoever watches the service is not its user.
_OPEN_PATHS = frozenset({"/health/live", "/health/ready", "/metrics"})

_log = structlog.get_logger("halfangle.access")


class Metrics:
    """Counters and times by route; unknown paths count as one, so that labels stay bounded."""

    def __init__(self, paths: Iterable[str]) -> None:
        self.registry = CollectorRegistry()
        self._paths = frozenset(paths)
        labels = ["method", "route", "status"]
        self._requests = Counter(
            "halfangle_requests", "Requests answered.", labels, registry=self.registry
        )
        self._seconds = Histogram(
            "halfangle_request_seconds", "Time to answer.", ["route"], registry=self.registry
        )

    def observe(self, method: str, path: str, status: int, seconds: float) -> None:
        """Count one answered request."""
        route = self._route(path)
        known = method if method in {"GET", "HEAD", "POST", "OPTIONS"} else "other"
        self._requests.labels(known, route, str(status)).inc()
        self._seconds.labels(route).observe(seconds)

    def _route(self, path: str) -> str:
        if path in self._paths:
            return path
        parent = path.rpartition("/")[0]
        return parent + "/{key}" if parent in self._paths else "other"


class Edge:
    """ASGI application around the service's own."""

    def __init__(self, app: ASGIApp, metrics: Metrics, api_keys: frozenset[str]) -> None:
        self._app = app
        self._metrics = metrics
        self._keys = [key.encode() for key in sorted(api_keys)]

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Answer one request, and put its id on the answer whoever makes it."""
        if scope["type"] != ScopeType.HTTP:
            await self._app(scope, receive, send)
            return
        started = time.perf_counter()
        headers = dict(scope["headers"])
        request_id = _request_id(headers.get(b"x-request-id"))
        status = 500

        async def send_with_id(message: Message) -> None:
            nonlocal status
            if message["type"] == "http.response.start":
                status = message["status"]
                message["headers"] = [*message["headers"], (b"x-request-id", request_id)]
            await send(message)

        try:
            if self._admitted(scope["path"], headers):
                await self._app(scope, receive, send_with_id)
            else:
                await _send_unauthorized(scope["path"], send_with_id)
        finally:
            seconds = time.perf_counter() - started
            self._metrics.observe(scope["method"], scope["path"], status, seconds)
            _log.info(
                "answered",
                method=scope["method"],
                path=scope["path"],
                status=status,
                milliseconds=round(seconds * 1000, 3),
                request_id=request_id.decode(),
            )

    def _admitted(self, path: str, headers: dict[bytes, bytes]) -> bool:
        if not self._keys or path in _OPEN_PATHS:
            return True
        sent = headers.get(b"x-api-key", b"")
        # No early exit: the time must not tell which key came close.
        return sum(hmac.compare_digest(sent, key) for key in self._keys) > 0


def _request_id(sent: bytes | None) -> bytes:
    """Honour the caller's id where it is short and plain, else make one."""
    if sent is not None and _REQUEST_ID.fullmatch(sent):
        return sent
    return uuid.uuid4().hex.encode()


async def _send_unauthorized(path: str, send: Send) -> None:
    status, body = problem_body(
        ProblemError("unauthorized", "Send a valid key in the header X-API-Key."), path
    )
    headers = [
        (b"content-type", PROBLEM_MEDIA_TYPE.encode()),
        (b"content-length", str(len(body)).encode()),
        (b"www-authenticate", b'ApiKey header="X-API-Key"'),
    ]
    await send({"type": "http.response.start", "status": status, "headers": headers})
    await send({"type": "http.response.body", "body": body, "more_body": False})
