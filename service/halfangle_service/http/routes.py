"""Route handlers of the framework, made from operations and tables, once, at start."""

import json
import re
from collections.abc import Awaitable, Callable, Mapping
from typing import Any

from anyio import CapacityLimiter, to_thread
from litestar import HttpMethod
from litestar.handlers import HTTPRouteHandler
from litestar.types import ASGIApp
from pydantic import ValidationError

from halfangle_service.fields import RequestModel
from halfangle_service.http.answers import (
    JSON,
    TEXT,
    AnyRequest,
    answer_of,
    cached,
    require_accepts,
    require_json_body,
)
from halfangle_service.http.problems import ProblemError, pointer_to, problem_of_validation
from halfangle_service.http.query import QueryField, pick_value, query_fields, read_query
from halfangle_service.operation import Operation, PublishedTable
from halfangle_service.settings import Settings

AnyOperation = Operation[Any, Any]

_TOO_MANY_DIGITS = re.compile(rb"[0-9]{4000,}")


def answer(operation: AnyOperation, body: bytes) -> bytes:
    """Validate a JSON body and calculate.

    Raises ProblemError for a body that is wrong, Refusal for one that cannot be fulfilled.
    """
    return answer_request(operation, read_request(operation, body))


def read_request(operation: AnyOperation, body: bytes) -> RequestModel:
    """Validate a JSON body; raises ProblemError where it is wrong."""
    try:
        request: RequestModel = operation.request.model_validate_json(body)
    except ValidationError as error:
        raise _problem_of(error, operation, body) from None
    refuse_repeated_names(request, body)
    return request


def answer_request(operation: AnyOperation, request: RequestModel) -> bytes:
    """Calculate; raises Refusal for a request that cannot be fulfilled."""
    try:
        return operation.answer_json(request)
    except (ArithmeticError, ValidationError) as error:
        # A result that is not finite: the request's numbers are each within bounds, yet together
        # they leave the range of floating point.
        raise ProblemError(
            "not-finite",
            "These values together lead out of the range of floating-point arithmetic.",
        ) from error


def _problem_of(error: ValidationError, operation: AnyOperation, body: bytes) -> ProblemError:
    """Map what is wrong with a body.

    The parser gives up at an integer of too many digits without naming its field; with infinity in
    its place the field is found, and refused all the same.
    """
    if "number out of range" in error.errors(include_url=False)[0]["msg"]:
        shorter = _TOO_MANY_DIGITS.sub(b"1e999", body)
        try:
            operation.request.model_validate_json(shorter)
        except ValidationError as found:
            return problem_of_validation(found, shorter, operation.request.model_fields)
    return problem_of_validation(error, body, operation.request.model_fields)


def refuse_repeated_names(request: RequestModel, body: bytes) -> None:
    """Refuse an object that names a field twice: which of the two was meant cannot be known.

    Pydantic keeps the last one silently. A body with no more colons than it has distinct fields
    cannot repeat one, which spares most requests the second reading.
    """
    if body.count(b":") == len(request.model_fields_set):
        return
    try:
        json.loads(body, object_pairs_hook=_distinct)
    except (ValueError, RecursionError):
        raise ProblemError(
            "not-json", "The body nests too deeply, or holds too long a number."
        ) from None


def _distinct(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    """Make an object of its pairs; raises ProblemError where a name comes twice."""
    made = dict(pairs)
    if len(made) == len(pairs):
        return made
    names = [name for name, _ in pairs]
    twice = next(name for name in names if names.count(name) > 1)[:60]
    raise ProblemError(
        "invalid-request",
        f"{twice} is given twice in one object.",
        errors=[{"pointer": pointer_to(twice), "message": "should be given once"}],
    )


class HeavyWork:
    """Runs heavy operations in worker threads, a bounded number at once, a bounded queue before."""

    def __init__(self, workers: int, queue: int) -> None:
        self._limiter = CapacityLimiter(workers)
        self._most = workers + queue
        self._inside = 0

    async def answer(self, operation: AnyOperation, body: bytes) -> bytes:
        """Answer here where the work is light, in a worker thread where it is heavy."""
        if operation.heavy is True:
            return await self._run(answer, operation, body)
        if operation.heavy is False:
            return answer(operation, body)
        request = read_request(operation, body)
        if operation.heavy(request):
            return await self._run(answer_request, operation, request)
        return answer_request(operation, request)

    async def _run(self, work: Callable[..., bytes], *arguments: object) -> bytes:
        """Work in a thread; raises ProblemError (`overloaded`) where the queue is full."""
        if self._inside >= self._most:
            raise ProblemError(
                "overloaded",
                f"{self._most} heavy requests are already accepted; try again shortly.",
                headers={"Retry-After": "1"},
            )
        self._inside += 1
        try:
            return await to_thread.run_sync(work, *arguments, limiter=self._limiter)
        finally:
            self._inside -= 1


Handler = Callable[[AnyRequest], Awaitable[ASGIApp]]


def reading(
    path: str,
    handler: Callable[..., Awaitable[ASGIApp]],
    opt: Mapping[str, Any] | None = None,
) -> HTTPRouteHandler:
    """Make the route of what is only read; HEAD follows GET."""
    return HTTPRouteHandler(path, http_method=[HttpMethod.GET, HttpMethod.HEAD], opt=opt)(handler)


def operation_routes(
    operations: Mapping[str, AnyOperation], settings: Settings
) -> list[HTTPRouteHandler]:
    """Make the routes of all operations: POST each, GET where the request is flat."""
    heavy = HeavyWork(settings.heavy_workers, settings.heavy_queue)
    return [_operation_route(operation, heavy, settings) for operation in operations.values()]


def _operation_route(
    operation: AnyOperation, heavy: HeavyWork, settings: Settings
) -> HTTPRouteHandler:
    """Make the one route of an operation: of two on one path, OPTIONS would name the first's."""
    by_body = _by_body(operation, heavy)
    fields = query_fields(operation.request)
    if fields is None:
        methods, handler = [HttpMethod.POST], by_body
    else:
        by_query = _by_query(operation, fields, heavy, settings)

        async def handler(request: AnyRequest) -> ASGIApp:
            return await (by_body if request.method == "POST" else by_query)(request)

        methods = [HttpMethod.GET, HttpMethod.HEAD, HttpMethod.POST]
    return HTTPRouteHandler(
        operation.path, http_method=methods, name=operation.name, status_code=200
    )(handler)


def _by_body(operation: AnyOperation, heavy: HeavyWork) -> Handler:
    """Make the handler of POST."""

    async def calculate(request: AnyRequest) -> ASGIApp:
        require_json_body(request)
        require_accepts(request, JSON)
        return answer_of(await heavy.answer(operation, await request.body()))

    return calculate


def _by_query(
    operation: AnyOperation, fields: Mapping[str, QueryField], heavy: HeavyWork, settings: Settings
) -> Handler:
    """Make the handler of GET for an operation whose request is flat."""

    async def calculate(request: AnyRequest) -> ASGIApp:
        body, pick = read_query(request.scope["query_string"], fields)
        require_accepts(request, JSON if pick is None else TEXT)
        content = await heavy.answer(operation, body)
        if pick is None:
            return cached(request, content, JSON, settings)
        return cached(request, pick_value(content, pick), TEXT, settings)

    return calculate


def table_routes(table: PublishedTable[Any], settings: Settings) -> list[HTTPRouteHandler]:
    """Make the routes of a published table: the listing, and one row by its key."""

    async def listing(request: AnyRequest) -> ASGIApp:
        require_accepts(request, JSON)
        return cached(request, table.answer_json(table.list_rows()), JSON, settings)

    async def item(request: AnyRequest) -> ASGIApp:
        require_accepts(request, JSON)
        key: str = request.path_params["key"]
        row = table.get(key)
        if row is None:
            raise ProblemError(
                "not-found",
                f"{table.title} knows no {table.key} {key[:60]!r}.",
                more={"known": list(table.keys())},
            )
        return cached(request, table.answer_json(row), JSON, settings)

    return [reading(table.path, listing), reading(table.path + "/{key:str}", item)]


def document_route(
    path: str, write: Callable[[], bytes], media_type: str, settings: Settings
) -> HTTPRouteHandler:
    """Make the route of a document that never changes at this release.

    It is written when it is first asked for, in a worker thread: writing all of them at start
    would keep the service from being ready.
    """
    written: list[bytes] = []

    async def document(request: AnyRequest) -> ASGIApp:
        if not written:
            written.append(await to_thread.run_sync(write))
        return cached(request, written[0], media_type, settings)

    return reading(path, document)
