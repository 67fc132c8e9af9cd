"""One request and its reply: what every route of the service is made of.

Routes are plain ASGI, without a web framework. Here there is one body type in, one out, and a
router of two kinds of path; a framework's handler machinery took twice the time of a calculation
and had to be corrected in most of what it answers by itself (see DEVELOPERS.md).
"""

from collections.abc import Awaitable, Callable, Iterable, Mapping, MutableMapping
from dataclasses import dataclass
from typing import Any

import structlog

from halfangle_service.errors import Refusal
from halfangle_service.http.problems import (
    PROBLEM_MEDIA_TYPE,
    ProblemError,
    problem_body,
    problem_of_refusal,
)

Scope = MutableMapping[str, Any]
Message = MutableMapping[str, Any]
Receive = Callable[[], Awaitable[Message]]
Send = Callable[[Message], Awaitable[None]]
ASGIApp = Callable[[Scope, Receive, Send], Awaitable[None]]

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
    """One request; `key` is the last part of the path where the route ends in `{key}`.

    The body is read only when its handler asks for it.
    """

    __slots__ = ("_body_limit", "_receive", "_scope", "key", "method", "path")

    def __init__(self, scope: Scope, receive: Receive, key: str, body_limit: int) -> None:
        self.method: str = scope["method"]
        self.path: str = scope["path"]
        self.key = key
        self._scope = scope
        self._receive = receive
        self._body_limit = body_limit

    @property
    def query(self) -> bytes:
        """Query string as it came."""
        query: bytes = self._scope["query_string"]
        return query

    def header(self, name: bytes) -> str:
        """Value of a header, its repetitions joined by commas (RFC 9110, 5.2); empty if absent."""
        sent: list[bytes] = [value for key, value in self._scope["headers"] if key == name]
        return b", ".join(sent).decode("latin-1")

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


@dataclass(frozen=True, slots=True)
class Route:
    """A path and its handlers by method; a path ending in `/{key}` takes any one part there."""

    path: str
    handlers: Mapping[str, Handler]


class Router:
    """ASGI application that finds the route of a request and sends its reply.

    HEAD follows GET, and OPTIONS lists what there is. Whatever a handler raises becomes a problem
    document.
    """

    def __init__(self, routes: Iterable[Route], body_limit: int) -> None:
        self._body_limit = body_limit
        self._routes: dict[str, tuple[Mapping[str, Handler], str]] = {}
        for route in routes:
            handlers = dict(route.handlers)
            if "GET" in handlers:
                handlers["HEAD"] = handlers["GET"]
            self._routes[route.path] = (handlers, ", ".join(sorted({*handlers, "OPTIONS"})))

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Answer one request."""
        path = scope["path"]
        found, key = self._routes.get(path), ""
        if found is None:
            parent, _, key = path.rpartition("/")
            found = self._routes.get(parent + "/{key}") if key else None
        call = Call(scope, receive, key, self._body_limit)
        if found is None:
            reply = problem_reply(ProblemError("not-found", f"No resource at {path[:200]}."), path)
        else:
            handlers, allow = found
            try:
                reply = await _reply(call, handlers.get(call.method), allow)
            except CallerGoneError:
                return
        await send_reply(reply, send, head=call.method == "HEAD")


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
