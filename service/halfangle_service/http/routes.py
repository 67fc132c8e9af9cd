"""Routes made from operations and collections, once, at start."""

import hashlib
from collections.abc import Awaitable, Callable, Iterable, Mapping
from typing import Any

from anyio import CapacityLimiter, to_thread
from litestar import HttpMethod, Request, Response
from litestar.handlers import HTTPRouteHandler
from pydantic import ValidationError

from halfangle_service.http.problems import ProblemError, problem_of_validation
from halfangle_service.http.query import QueryField, pick_value, query_fields, read_query
from halfangle_service.operation import Collection, Operation
from halfangle_service.settings import Settings

JSON = "application/json"
TEXT = "text/plain"

AnyOperation = Operation[Any, Any]
AnyRequest = Request[Any, Any, Any]
Calculate = Callable[[AnyOperation, bytes], Awaitable[bytes]]


def answer(operation: AnyOperation, body: bytes) -> bytes:
    """Validate a JSON body and calculate.

    Raises ProblemError for a body that is wrong, Refusal for one that cannot be fulfilled.
    """
    try:
        request = operation.request.model_validate_json(body)
    except ValidationError as error:
        raise problem_of_validation(error, body) from None
    try:
        return operation.answer_json(request)
    except (ArithmeticError, ValidationError) as error:
        # A result that is not finite: the request's numbers are each within bounds, yet together
        # they leave the range of floating point.
        raise ProblemError(
            "not-finite",
            "These values together lead out of the range of floating-point arithmetic.",
        ) from error


class HeavyWork:
    """Runs heavy operations in worker threads, a bounded number at once, a bounded queue before."""

    def __init__(self, workers: int, queue: int) -> None:
        self._limiter = CapacityLimiter(workers)
        self._most = workers + queue
        self._inside = 0

    async def run(self, operation: AnyOperation, body: bytes) -> bytes:
        """Answer in a worker thread; raises ProblemError (`overloaded`) where the queue is full."""
        if self._inside >= self._most:
            raise ProblemError(
                "overloaded",
                f"{self._most} heavy requests are already accepted; try again shortly.",
                headers={"Retry-After": "1"},
            )
        self._inside += 1
        try:
            return await to_thread.run_sync(answer, operation, body, limiter=self._limiter)
        finally:
            self._inside -= 1


def operation_routes(
    operations: Mapping[str, AnyOperation], settings: Settings
) -> list[HTTPRouteHandler]:
    """Make the routes of all operations: POST each, GET where the request is flat."""
    heavy = HeavyWork(settings.heavy_workers, settings.heavy_queue)
    routes: list[HTTPRouteHandler] = []
    for operation in operations.values():
        routes.append(_post_route(operation, heavy))
        fields = query_fields(operation.request)
        if fields is not None:
            routes.append(_query_route(operation, fields, heavy, settings))
    return routes


def _post_route(operation: AnyOperation, heavy: HeavyWork) -> HTTPRouteHandler:
    """Make the POST route of an operation."""

    async def calculate(request: AnyRequest) -> Response[bytes]:
        require_json_body(request)
        require_accepts(request, JSON)
        body = await request.body()
        if operation.heavy:
            return Response(await heavy.run(operation, body), media_type=JSON)
        return Response(answer(operation, body), media_type=JSON)

    return HTTPRouteHandler(operation.path, http_method=HttpMethod.POST, status_code=200)(calculate)


def _query_route(
    operation: AnyOperation, fields: Mapping[str, QueryField], heavy: HeavyWork, settings: Settings
) -> HTTPRouteHandler:
    """Make the GET route of an operation whose request is flat."""

    async def calculate(request: AnyRequest) -> Response[bytes]:
        body, pick = read_query(request.scope["query_string"], fields)
        require_accepts(request, JSON if pick is None else "text/plain")
        if operation.heavy:
            content = await heavy.run(operation, body)
        else:
            content = answer(operation, body)
        if pick is None:
            return cached(request, content, JSON, settings)
        return cached(request, pick_value(content, pick), TEXT, settings)

    return _get(operation.path, calculate)


def collection_routes(collection: Collection[Any], settings: Settings) -> list[HTTPRouteHandler]:
    """Make the routes of a published table: the listing, and one row by its key."""

    async def listing(request: AnyRequest) -> Response[bytes]:
        require_accepts(request, JSON)
        return cached(request, collection.answer_json(collection.rows()), JSON, settings)

    async def item(request: AnyRequest) -> Response[bytes]:
        require_accepts(request, JSON)
        key = str(request.path_params["key"])
        row = collection.get(key)
        if row is None:
            raise ProblemError(
                "not-found",
                f"{collection.title} knows no {collection.key} {key[:60]!r}.",
                more={"known": list(collection.keys())},
            )
        return cached(request, collection.answer_json(row), JSON, settings)

    return [_get(collection.path, listing), _get(collection.path + "/{key:str}", item)]


def document_route(
    path: str, content: bytes, media_type: str, settings: Settings
) -> HTTPRouteHandler:
    """Make the route of a document that never changes at this release."""

    async def document(request: AnyRequest) -> Response[bytes]:
        return cached(request, content, media_type, settings)

    return _get(path, document)


def _get(
    path: str, handler: Callable[[AnyRequest], Awaitable[Response[bytes]]]
) -> HTTPRouteHandler:
    methods = [HttpMethod.GET, HttpMethod.HEAD]
    return HTTPRouteHandler(path, http_method=methods, status_code=200)(handler)


def options_routes(routes: Iterable[HTTPRouteHandler]) -> list[HTTPRouteHandler]:
    """Make the OPTIONS route of each path: its Allow header names every method of the path.

    The framework's own names those of one handler alone, where GET and POST are two.
    """
    methods: dict[str, set[str]] = {}
    for route in routes:
        for path in route.paths:
            methods.setdefault(path, {"OPTIONS"}).update(route.http_methods)
    return [_options(path, ", ".join(sorted(allowed))) for path, allowed in methods.items()]


def _options(path: str, allowed: str) -> HTTPRouteHandler:
    async def options() -> Response[None]:
        return Response(None, status_code=204, headers={"Allow": allowed})

    return HTTPRouteHandler(path, http_method=HttpMethod.OPTIONS, status_code=204)(options)


def cached(
    request: AnyRequest, content: bytes, media_type: str, settings: Settings
) -> Response[bytes]:
    """Answer with a strong ETag, or with 304 where the caller has these bytes already."""
    tag = f'"{hashlib.sha256(content).hexdigest()[:32]}"'
    scope = "private" if settings.api_keys else "public"
    headers = {"ETag": tag, "Cache-Control": f"{scope}, max-age={settings.cache_seconds}"}
    known = request.headers.get("if-none-match", "")
    if known == "*" or tag in {entry.strip().removeprefix("W/") for entry in known.split(",")}:
        return Response(b"", status_code=304, media_type=media_type, headers=headers)
    return Response(content, media_type=media_type, headers=headers)


def require_json_body(request: AnyRequest) -> None:
    """Refuse a body that is not declared as JSON in UTF-8 (RFC 8259, 8.1)."""
    declared = request.headers.get("content-type", "")
    media_type, _, parameters = declared.partition(";")
    charset = parameters.strip().lower().removeprefix("charset=").strip('"')
    if media_type.strip().lower() != JSON or charset not in {"", "utf-8"}:
        raise ProblemError(
            "unsupported-media-type",
            f"Send the body as Content-Type: application/json; got {declared[:80] or 'none'}.",
            headers={"Accept": JSON},
        )


def require_accepts(request: AnyRequest, media_type: str) -> None:
    """Refuse a request whose Accept header rules this media type out (RFC 9110, 12.5.1)."""
    accepted = request.headers.get("accept", "*/*")
    if accepted == "*/*":
        return
    kind = media_type.partition("/")[0] + "/*"
    for entry in accepted.split(","):
        name, _, parameters = entry.partition(";")
        refused = parameters.replace(" ", "").lower() in {"q=0", "q=0.0", "q=0.00", "q=0.000"}
        if name.strip().lower() in {media_type, kind, "*/*", ""} and not refused:
            return
    raise ProblemError(
        "not-acceptable", f"The answer is {media_type}; the request accepts {accepted[:80]}."
    )
