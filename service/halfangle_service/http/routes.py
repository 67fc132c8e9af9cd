"""Routes made from operations and collections, once, at start."""

import hashlib
import json
import re
from collections.abc import Callable, Mapping
from typing import Any

from anyio import CapacityLimiter, to_thread
from pydantic import ValidationError

from halfangle_service.fields import RequestModel
from halfangle_service.http.exchange import JSON, TEXT, Call, Handler, Headers, Reply, Route
from halfangle_service.http.problems import ProblemError, problem_of_validation
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
        errors=[{"pointer": f"/{twice}", "message": "should be given once"}],
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


def operation_routes(operations: Mapping[str, AnyOperation], settings: Settings) -> list[Route]:
    """Make the routes of all operations: POST each, GET where the request is flat."""
    heavy = HeavyWork(settings.heavy_workers, settings.heavy_queue)
    routes: list[Route] = []
    for operation in operations.values():
        handlers = {"POST": _by_body(operation, heavy)}
        fields = query_fields(operation.request)
        if fields is not None:
            handlers["GET"] = _by_query(operation, fields, heavy, settings)
        routes.append(Route(operation.path, handlers))
    return routes


def _by_body(operation: AnyOperation, heavy: HeavyWork) -> Handler:
    """Make the handler of POST."""

    async def calculate(call: Call) -> Reply:
        require_json_body(call)
        require_accepts(call, JSON)
        body = await call.body()
        return Reply(await heavy.answer(operation, body))

    return calculate


def _by_query(
    operation: AnyOperation, fields: Mapping[str, QueryField], heavy: HeavyWork, settings: Settings
) -> Handler:
    """Make the handler of GET for an operation whose request is flat."""

    async def calculate(call: Call) -> Reply:
        body, pick = read_query(call.query, fields)
        require_accepts(call, JSON if pick is None else TEXT)
        content = await heavy.answer(operation, body)
        if pick is None:
            return cached(call, content, JSON, settings)
        return cached(call, pick_value(content, pick), TEXT, settings)

    return calculate


def collection_routes(collection: PublishedTable[Any], settings: Settings) -> list[Route]:
    """Make the routes of a published table: the listing, and one row by its key."""

    async def listing(call: Call) -> Reply:
        require_accepts(call, JSON)
        return cached(call, collection.answer_json(collection.list_rows()), JSON, settings)

    async def item(call: Call) -> Reply:
        require_accepts(call, JSON)
        row = collection.get(call.key)
        if row is None:
            raise ProblemError(
                "not-found",
                f"{collection.title} knows no {collection.key} {call.key[:60]!r}.",
                more={"known": list(collection.keys())},
            )
        return cached(call, collection.answer_json(row), JSON, settings)

    return [
        Route(collection.path, {"GET": listing}),
        Route(collection.path + "/{key}", {"GET": item}),
    ]


def document_route(
    path: str, write: Callable[[], bytes], media_type: str, settings: Settings
) -> Route:
    """Make the route of a document that never changes at this release.

    It is written when it is first asked for, in a worker thread: writing all of them at start
    would keep the service from being ready.
    """
    written: list[bytes] = []

    async def document(call: Call) -> Reply:
        if not written:
            written.append(await to_thread.run_sync(write))
        return cached(call, written[0], media_type, settings)

    return Route(path, {"GET": document})


def cached(call: Call, content: bytes, media_type: str, settings: Settings) -> Reply:
    """Answer with a strong ETag, or with 304 where the caller has these bytes already."""
    tag = f'"{hashlib.sha256(content).hexdigest()[:32]}"'
    scope = "private" if settings.api_keys else "public"
    headers: Headers = (
        (b"etag", tag.encode()),
        (b"cache-control", f"{scope}, max-age={settings.cache_seconds}".encode()),
    )
    known = call.header(b"if-none-match")
    if known == "*" or tag in {entry.strip().removeprefix("W/") for entry in known.split(",")}:
        return Reply(b"", media_type, 304, headers)
    return Reply(content, media_type, 200, headers)


def require_json_body(call: Call) -> None:
    """Refuse a body that is not declared as JSON in UTF-8 (RFC 8259, 8.1)."""
    declared = call.header(b"content-type")
    if declared == JSON:
        return
    media_type, _, parameters = declared.partition(";")
    charset = parameters.strip().lower().removeprefix("charset=").strip('"')
    if media_type.strip().lower() != JSON or charset not in {"", "utf-8"}:
        raise ProblemError(
            "unsupported-media-type",
            f"Send the body as Content-Type: application/json; got {declared[:80] or 'none'}.",
            headers={"Accept": JSON},
        )


def require_accepts(call: Call, media_type: str) -> None:
    """Refuse a request whose Accept header rules this media type out (RFC 9110, 12.5.1)."""
    accepted = call.header(b"accept")
    if accepted in {"", "*/*"}:
        return
    name = media_type.partition(";")[0]
    ranges = {name, name.partition("/")[0] + "/*", "*/*", ""}
    for entry in accepted.split(","):
        wanted, _, parameters = entry.partition(";")
        refused = parameters.replace(" ", "").lower() in {"q=0", "q=0.0", "q=0.00", "q=0.000"}
        if wanted.strip().lower() in ranges and not refused:
            return
    raise ProblemError(
        "not-acceptable", f"The answer is {name}; the request accepts {accepted[:80]}."
    )
