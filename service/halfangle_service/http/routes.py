"""Route handlers of the framework, made from operations and tables, once, at start."""

import asyncio
from collections.abc import Awaitable, Callable, Mapping
from typing import Any, Generic, TypeVar

from anyio import to_thread
from litestar import HttpMethod
from litestar.handlers import HTTPRouteHandler
from litestar.types import ASGIApp

from halfangle_service.http.answers import (
    JSON,
    TEXT,
    AnyRequest,
    Document,
    Headers,
    answer_of,
    cached,
    require_accepts,
    require_json_body,
)
from halfangle_service.http.calculating import Calculator
from halfangle_service.http.guards.bodies import Bodies
from halfangle_service.http.picks import pick_value
from halfangle_service.http.problems import ProblemError
from halfangle_service.http.query import (
    FIELD,
    PICK,
    VALUE_PATH,
    QueryField,
    query_fields,
    read_query,
)
from halfangle_service.http.sheets import sheet_routes
from halfangle_service.operation import Operation, PublishedTable
from halfangle_service.settings import Settings

AnyOperation = Operation[Any, Any]
Made = TypeVar("Made")


Handler = Callable[[AnyRequest], Awaitable[ASGIApp]]
Writer = Callable[[], bytes]


def reading(
    path: str,
    handler: Callable[..., Awaitable[ASGIApp]],
    opt: Mapping[str, Any] | None = None,
) -> HTTPRouteHandler:
    """Make the route of what is only read; HEAD follows GET."""
    return HTTPRouteHandler(path, http_method=[HttpMethod.GET, HttpMethod.HEAD], opt=opt)(handler)


def operation_routes(
    operations: Mapping[str, AnyOperation], calculator: Calculator, settings: Settings
) -> list[HTTPRouteHandler]:
    """Make the routes of all operations: POST each, GET where the request is flat, one value.

    And of their sheets, which are made by the same workers.
    """
    bodies = Bodies(settings.body_seconds, settings.bodies_limit_bytes)
    routes = [_operation_route(o, calculator, bodies, settings) for o in operations.values()]
    sheets = sheet_routes(operations, calculator, bodies, settings)
    return [*routes, _value_route(operations, calculator, settings), *sheets]


def _operation_route(
    operation: AnyOperation, calculator: Calculator, bodies: Bodies, settings: Settings
) -> HTTPRouteHandler:
    """Make the one route of an operation: of two on one path, OPTIONS would name the first's."""
    by_body = _by_body(operation, calculator, bodies)
    fields = query_fields(operation.request)
    if fields is None:
        methods, handler = [HttpMethod.POST], by_body
    else:
        by_query = _by_query(operation, fields, calculator, settings)

        async def handler(request: AnyRequest) -> ASGIApp:
            return await (by_body if request.method == "POST" else by_query)(request)

        methods = [HttpMethod.GET, HttpMethod.HEAD, HttpMethod.POST]
    return HTTPRouteHandler(
        operation.path, http_method=methods, name=operation.name, status_code=200
    )(handler)


def _by_body(operation: AnyOperation, calculator: Calculator, bodies: Bodies) -> Handler:
    """Make the handler of POST."""

    async def calculate(request: AnyRequest) -> ASGIApp:
        require_json_body(request)
        require_accepts(request, JSON)
        body = await bodies.read(request)
        try:
            return answer_of(await calculator.answer(operation, body, request))
        finally:
            bodies.release(body)

    return calculate


def _by_query(
    operation: AnyOperation,
    fields: Mapping[str, QueryField],
    calculator: Calculator,
    settings: Settings,
) -> Handler:
    """Make the handler of GET for an operation whose request is flat."""

    async def calculate(request: AnyRequest) -> ASGIApp:
        body, pick = read_query(request.scope["query_string"], fields)
        require_accepts(request, JSON if pick is None else TEXT)
        content = await calculator.answer(operation, body, request)
        if pick is None:
            return cached(request, content, JSON, settings)
        return _picked(request, content, pick, PICK, settings)

    return calculate


def _value_route(
    operations: Mapping[str, AnyOperation], calculator: Calculator, settings: Settings
) -> HTTPRouteHandler:
    """Make the route of one value of any operation's answer; the answer's own route gives JSON."""
    flat = {name: o for name, o in operations.items() if query_fields(o.request) is not None}

    async def value(request: AnyRequest) -> ASGIApp:
        operation = flat.get(request.path_params["operation"])
        if operation is None:
            raise ProblemError(
                "not-found",
                "No operation of this name is asked by query string.",
                more={"known": list(flat)},
            )
        fields = query_fields(operation.request) or {}
        body, _ = read_query(request.scope["query_string"], fields, picks=False)
        require_accepts(request, TEXT)
        content = await calculator.answer(operation, body, request)
        return _picked(request, content, request.path_params[FIELD], FIELD, settings)

    return reading(VALUE_PATH.format(operation="{operation:str}", field="{field:str}"), value)


def _picked(
    request: AnyRequest, content: bytes, path: str, asked_as: str, settings: Settings
) -> ASGIApp:
    """Answer with one value of an answer."""
    text, headers = pick_value(content, path, asked_as)
    return cached(request, text, TEXT, settings, headers)


def table_routes(table: PublishedTable[Any], settings: Settings) -> list[HTTPRouteHandler]:
    """Make the routes of a published table: the listing, and one row by its key."""
    rows = OnceMade(lambda: {key: table.get(key) for key in table.keys()})  # noqa: SIM118
    listed = OnceMade(lambda: table.answer_json(table.list_rows()))

    async def listing(request: AnyRequest) -> ASGIApp:
        require_accepts(request, JSON)
        return cached(request, await listed.value(), JSON, settings)

    async def item(request: AnyRequest) -> ASGIApp:
        require_accepts(request, JSON)
        key: str = request.path_params["key"]
        row = (await rows.value()).get(key)
        if row is None:
            raise ProblemError(
                "not-found",
                f"{table.title} knows no {table.key} {key[:60]!r}.",
                more={"known": list(table.keys())},
            )
        return cached(request, table.answer_json(row), JSON, settings)

    return [reading(table.path, listing), reading(table.path + "/{key:str}", item)]


class OnceMade(Generic[Made]):
    """What never changes at this release: made when first asked for, once, in a worker thread.

    Making all of them at start would keep the service from being ready. Who asks meanwhile waits:
    forty that made the same page at once took twenty seconds.
    """

    def __init__(self, make: Callable[[], Made]) -> None:
        self._make = make
        self._made: list[Made] = []
        self._one_at_a_time = asyncio.Lock()

    async def value(self) -> Made:
        """Give it."""
        if not self._made:
            async with self._one_at_a_time:
                if not self._made:
                    self._made.append(await to_thread.run_sync(self._make))
        return self._made[0]


def document_route(
    path: str,
    write: Writer,
    media_type: str,
    settings: Settings,
    *,
    headers: Headers = (),
    asked_again: bool = False,
    opt: Mapping[str, Any] | None = None,
) -> HTTPRouteHandler:
    """Make the route of a document that never changes at this release."""
    written = OnceMade(lambda: Document(write(), media_type, headers, asked_again=asked_again))

    async def document(request: AnyRequest) -> ASGIApp:
        return (await written.value()).answer(request, settings)

    return reading(path, document, opt)
