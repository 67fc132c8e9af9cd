"""Route handlers of the framework, made from operations and tables, once, at start."""

import asyncio
from collections.abc import Awaitable, Callable, Iterable, Mapping
from typing import Any, Generic, TypeVar

from anyio import to_thread
from litestar import HttpMethod
from litestar.handlers import HTTPRouteHandler
from litestar.types import ASGIApp

from halfangle_service.http.answers import (
    JSON,
    AnyRequest,
    Document,
    Headers,
    answer_of,
    cached,
    require_accepts,
    require_json_body,
    tag_of_request,
    tagged,
    unchanged,
)
from halfangle_service.http.calculating import AnyOperation, Calculator
from halfangle_service.http.cells import FIELD, KEY, VALUE_PATH, answer_to_cell, cell_at, cell_of
from halfangle_service.http.guards.bodies import Bodies
from halfangle_service.http.problems import ProblemError, nearest, pointer_to
from halfangle_service.http.query import (
    Pairs,
    QueryField,
    body_of,
    query_fields,
    read_pairs,
    refuse_more,
)
from halfangle_service.http.routings import csv_routes
from halfangle_service.http.sheets import sheet_routes
from halfangle_service.operation import PublishedTable
from halfangle_service.settings import Settings

AnyTable = PublishedTable[Any]
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
    """Make the routes of all operations: POST each, GET where the request is flat.

    And of their sheets, and of the routing's lines, which are made by the same workers.
    """
    bodies = calculator.bodies
    routes = [_operation_route(o, calculator, bodies, settings) for o in operations.values()]
    sheets = sheet_routes(operations, calculator, bodies, settings)
    lines = csv_routes(operations, calculator, bodies)
    return [*routes, *sheets, *lines]


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
        cell, asked = cell_of(read_pairs(request.scope["query_string"]), fields)

        async def content() -> bytes:
            return await calculator.answer(operation, body_of(asked, fields), request)

        if cell is not None:
            return await answer_to_cell(request, cell, content, settings)
        require_accepts(request, JSON)
        tag = tag_of_request(request, JSON)
        if (known := unchanged(request, tag, settings)) is not None:
            return known
        return tagged(request, await content(), tag, JSON, settings)

    return calculate


def value_route(
    operations: Mapping[str, AnyOperation],
    tables: Iterable[AnyTable],
    calculator: Calculator,
    settings: Settings,
) -> HTTPRouteHandler:
    """Make the route of values of any answer, or of any row; their own routes give JSON."""
    asked_of = {name: o for name, o in operations.items() if query_fields(o.request) is not None}
    rows = {table.dotted_name: Rows(table) for table in tables}

    async def value(request: AnyRequest) -> ASGIApp:
        name: str = request.path_params["operation"]
        operation = asked_of.get(name)
        fields = {} if operation is None else query_fields(operation.request) or {}
        pairs = read_pairs(request.scope["query_string"])
        cell, asked = cell_at(request.path_params[FIELD], pairs, fields)

        async def content() -> bytes:
            if operation is not None:
                return await calculator.answer(operation, body_of(asked, fields), request)
            if name in rows:
                return await rows[name].answer(_key_of(asked))
            raise ProblemError(
                "not-found",
                "No operation that is asked by query string, and no table, has this name"
                f"{nearest(name, (*asked_of, *rows))}.",
                more={"known": [*asked_of, *rows]},
            )

        return await answer_to_cell(request, cell, content, settings)

    return reading(VALUE_PATH.format(operation="{operation:str}", field="{field:str}"), value)


def _key_of(asked: Pairs) -> str:
    """The key of a row, the one parameter that a row is asked by."""
    keys = [text for name, text in asked if name == KEY]
    if len(keys) != 1:
        words = "should be given once" if keys else "is required: it says which row is meant"
        raise ProblemError(
            "invalid-request",
            f"{KEY} {words}.",
            errors=[{"pointer": pointer_to(KEY), "message": words}],
        )
    refuse_more(pair for pair in asked if pair[0] != KEY)
    return keys[0]


class Rows:
    """The rows of a published table as answers, each by its key; made as `OnceMade` makes."""

    def __init__(self, table: AnyTable) -> None:
        self._table = table
        self._made = OnceMade(lambda: {key: table.get(key) for key in table.keys()})  # noqa: SIM118

    async def answer(self, key: str) -> bytes:
        """Give a row; raises ProblemError where there is none of this key."""
        row = (await self._made.value()).get(key)
        if row is None:
            known = self._table.keys()
            raise ProblemError(
                "not-found",
                f"{self._table.title} knows no {self._table.key} {key[:60]!r}"
                f"{nearest(key, known)}.",
                more={"known": list(known)},
            )
        return self._table.answer_json(row)


def table_routes(table: AnyTable, settings: Settings) -> list[HTTPRouteHandler]:
    """Make the routes of a published table: the listing, and one row by its key."""
    rows = Rows(table)
    listed = OnceMade(lambda: table.answer_json(table.list_rows()))

    async def listing(request: AnyRequest) -> ASGIApp:
        refuse_more(read_pairs(request.scope["query_string"]))
        require_accepts(request, JSON)
        return cached(request, await listed.value(), JSON, settings)

    async def item(request: AnyRequest) -> ASGIApp:
        cell, more = cell_of(read_pairs(request.scope["query_string"]), {})

        async def content() -> bytes:
            refuse_more(more)
            return await rows.answer(request.path_params[KEY])

        if cell is not None:
            return await answer_to_cell(request, cell, content, settings)
        require_accepts(request, JSON)
        return cached(request, await content(), JSON, settings)

    return [reading(table.path, listing), reading(table.path + f"/{{{KEY}:str}}", item)]


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
