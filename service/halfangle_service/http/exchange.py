"""One request and its reply: what every route of the service is made of.

Routes are plain ASGI inside the framework, which keeps routing and the life of the application.
Its handler machinery (signature models, dependency injection, response encoding) has nothing to do
here, costs more than most calculations, and answers OPTIONS for one method of two.
"""

from collections.abc import Awaitable, Callable, Mapping
from dataclasses import dataclass

import structlog
from litestar.handlers import ASGIRouteHandler
from litestar.types import HTTPScope, Receive, Scope, Send

from halfangle_service.errors import Refusal
from halfangle_service.http.problems import (
    PROBLEM_MEDIA_TYPE,
    ProblemError,
    problem_body,
    problem_of_refusal,
)

JSON = "application/json"
TEXT = "text/plain; charset=utf-8"

Headers = tuple[tuple[bytes, bytes], ...]


class CallerGoneError(Exception):
    """The caller went away before the whole request was here."""


@dataclass(frozen=True, slots=True)
class Reply:
    """What goes back: a whole body in memory, its media type, and further headers."""

    body: bytes
    media_type: str = JSON
    status: int = 200
    headers: Headers = ()


class Call:
    """One request; the body is read only when its handler asks for it."""

    __slots__ = ("_body_limit", "_receive", "_scope", "method", "path")

    def __init__(self, scope: HTTPScope, receive: Receive, body_limit: int) -> None:
        self.method: str = scope["method"]
        self.path: str = scope["path"]
        self._scope = scope
        self._receive = receive
        self._body_limit = body_limit

    @property
    def query(self) -> bytes:
        """Query string as it came."""
        return self._scope["query_string"]

    def path_parameter(self, name: str) -> str:
        """Part of the path that stands for a parameter."""
        return str(self._scope["path_params"][name])

    def header(self, name: bytes) -> str:
        """Value of a header, its repetitions joined by commas (RFC 9110, 5.2); empty if absent."""
        return b", ".join(v for k, v in self._scope["headers"] if k == name).decode("latin-1")

    async def body(self) -> bytes:
        """The whole body; raises ProblemError (`content-too-large`) past the limit.

        A body that declares its length too large is refused before any of it is read.
        """
        declared = self.header(b"content-length")
        if declared.isdigit() and int(declared[:19]) > self._body_limit:
            raise self._too_large()
        chunks: list[bytes] = []
        size = 0
        while True:
            message = await self._receive()
            if message["type"] != "http.request":
                raise CallerGoneError
            chunks.append(message.get("body", b""))
            size += len(chunks[-1])
            if size > self._body_limit:
                raise self._too_large()
            if not message.get("more_body", False):
                return b"".join(chunks)

    def _too_large(self) -> ProblemError:
        return ProblemError(
            "content-too-large",
            f"The body is larger than the limit of this service, {self._body_limit} bytes.",
            more={"limit_bytes": self._body_limit},
        )


Handler = Callable[[Call], Awaitable[Reply]]


def route(path: str, handlers: Mapping[str, Handler], body_limit: int) -> ASGIRouteHandler:
    """Make a route from its handlers by method; HEAD follows GET, and OPTIONS lists what there is.

    Whatever a handler raises becomes a problem document.
    """
    by_method = dict(handlers)
    if "GET" in by_method:
        by_method["HEAD"] = by_method["GET"]
    allow = ", ".join(sorted({*by_method, "OPTIONS"}))

    async def endpoint(scope: Scope, receive: Receive, send: Send) -> None:
        assert scope["type"] == "http"
        call = Call(scope, receive, body_limit)
        try:
            reply = await _reply(call, by_method.get(call.method), allow)
        except CallerGoneError:
            return
        await send_reply(reply, send, head=call.method == "HEAD")

    return ASGIRouteHandler(path, copy_scope=False)(endpoint)


async def _reply(call: Call, handler: Handler | None, allow: str) -> Reply:
    """Run the handler; give its reply or the problem document of what it raised."""
    try:
        if handler is not None:
            return await handler(call)
        if call.method == "OPTIONS":
            return Reply(b"", status=204, headers=((b"allow", allow.encode()),))
        raise ProblemError(
            "method-not-allowed",
            f"{call.method[:20]} is not taken at this address; {allow} are.",
            headers={"Allow": allow},
        )
    except ProblemError as error:
        return problem_reply(error, call.path)
    except Refusal as refusal:
        return problem_reply(problem_of_refusal(refusal), call.path)
    except CallerGoneError:
        raise
    except Exception as error:
        return unforeseen_reply(error, call.path)


def problem_reply(error: ProblemError, path: str) -> Reply:
    """Give the problem document of an error at a path."""
    status, body = problem_body(error, path)
    headers = tuple((k.lower().encode(), v.encode("latin-1")) for k, v in error.headers.items())
    return Reply(body, PROBLEM_MEDIA_TYPE, status, headers)


def unforeseen_reply(error: Exception, path: str) -> Reply:
    """Answer what nobody foresaw: log it whole, tell the caller only that it is ours to mend."""
    structlog.get_logger("halfangle.error").error("unforeseen", path=path[:300], exc_info=error)
    return problem_reply(
        ProblemError("internal-error", "The service failed; the fault is logged."), path
    )


async def send_reply(reply: Reply, send: Send, *, head: bool = False) -> None:
    """Send a reply; to HEAD the same headers without the body."""
    headers = [*reply.headers]
    if reply.status not in {204, 304}:
        headers.append((b"content-type", reply.media_type.encode()))
        headers.append((b"content-length", b"%d" % len(reply.body)))
    await send({"type": "http.response.start", "status": reply.status, "headers": headers})
    body = b"" if head else reply.body
    await send({"type": "http.response.body", "body": body, "more_body": False})
