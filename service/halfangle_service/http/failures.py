"""Whatever is raised, by us or by the framework, becomes a problem document here, once."""

from typing import Any

import structlog
from litestar import Response
from litestar.exceptions import HTTPException
from litestar.types import ExceptionHandlersMap

from halfangle_service.errors import Refusal
from halfangle_service.http.answers import AnyRequest
from halfangle_service.http.guards.bodies import too_large
from halfangle_service.http.problems import (
    PROBLEM_MEDIA_TYPE,
    CallerGone,
    ProblemError,
    problem_body,
    problem_of_refusal,
)
from halfangle_service.http.watch.hook import PROBLEM, request_id

#: Status in logs and metrics where the caller went away before there was an answer.
CALLER_GONE = 499
#: How the framework says so; it has no type of its own for it.
_CALLER_GONE_DETAIL = "client disconnected prematurely"


def _problem(request: AnyRequest, error: ProblemError) -> Response[bytes]:
    """Answer with the problem document of an error."""
    status, body = problem_body(error, request.scope["path"])
    state: Any = request.scope["state"]
    state[PROBLEM] = error.name
    return Response(
        body, status_code=status, media_type=PROBLEM_MEDIA_TYPE, headers=dict(error.headers)
    )


def _refused(request: AnyRequest, refusal: Refusal) -> Response[bytes]:
    """Answer with what the trade refuses."""
    return _problem(request, problem_of_refusal(refusal))


def _gone(_: AnyRequest, __: CallerGone) -> Response[bytes]:
    """Answer nobody; the status is for logs and metrics."""
    return Response(b"", status_code=CALLER_GONE)


def _of_framework(request: AnyRequest, error: HTTPException) -> Response[bytes]:
    """Answer with what the framework refuses."""
    if error.detail == _CALLER_GONE_DETAIL:
        return _gone(request, CallerGone())
    path = request.scope["path"]
    if error.status_code == 404:
        return _problem(request, ProblemError("not-found", f"No resource at {path[:200]}."))
    if error.status_code == 405:
        # The framework names the methods in the order of a set.
        allow = ", ".join(sorted((error.headers or {})["allow"].split(", ")))
        detail = f"{request.method[:20]} is not taken at this address; {allow} are."
        return _problem(
            request, ProblemError("method-not-allowed", detail, headers={"Allow": allow})
        )
    if error.status_code == 413:
        limit = request.route_handler.resolve_request_max_body_size()
        return _problem(request, too_large(limit or 0))
    if error.status_code < 500:
        return _problem(request, ProblemError("bad-request", f"{error.detail[:200]}."))
    return _unforeseen(request, error)


def _unforeseen(request: AnyRequest, error: Exception) -> Response[bytes]:
    """Answer what nobody foresaw: log it whole, tell the caller only that it is ours to mend."""
    structlog.get_logger("halfangle.error").error(
        "unforeseen",
        path=request.scope["path"][:300],
        request_id=request_id(request.scope),
        exc_info=error,
    )
    return _problem(
        request, ProblemError("internal-error", "The service failed; the fault is logged.")
    )


EXCEPTION_HANDLERS: ExceptionHandlersMap = {
    ProblemError: _problem,
    Refusal: _refused,
    CallerGone: _gone,
    HTTPException: _of_framework,
    Exception: _unforeseen,
}
