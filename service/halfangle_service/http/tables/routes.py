"""The route of tables: CSV in, the same rows out while they arrive."""

from collections.abc import AsyncGenerator, Mapping, Sequence
from contextlib import aclosing

from litestar import HttpMethod
from litestar.handlers import HTTPRouteHandler
from litestar.types import ASGIApp

from halfangle_service.http.answers import AnyRequest, header, require_accepts, require_body_of
from halfangle_service.http.calculating import AnyOperation, Calculator
from halfangle_service.http.guards.bodies import Bodies
from halfangle_service.http.problems import ProblemError
from halfangle_service.http.streams.arriving import Whole, arriving
from halfangle_service.http.streams.rows import names_no_operation
from halfangle_service.http.streams.sender import Sender
from halfangle_service.http.streams.sending import streamed
from halfangle_service.http.tables.asked import request_fields
from halfangle_service.http.tables.declared import Declared, read_declared
from halfangle_service.http.tables.flat import (
    NoColumn,
    ResultColumn,
    chosen_columns,
    columns_of,
)
from halfangle_service.http.tables.model import CSV, CSV_ANSWERED, TABLES_PATH
from halfangle_service.http.tables.run import Answering
from halfangle_service.http.watch.metrics import Metrics
from halfangle_service.settings import Settings


def table_route(
    operations: Mapping[str, AnyOperation],
    calculator: Calculator,
    metrics: Metrics,
    settings: Settings,
) -> HTTPRouteHandler:
    """Make the route that answers tables of any operation."""
    bodies = calculator.bodies

    async def answer(request: AnyRequest) -> ASGIApp:
        operation = _operation(operations, request.path_params["operation"])
        require_body_of(request, CSV, parameters={"header": "present"})
        require_accepts(request, CSV)
        declared = read_declared(request.scope["query_string"], request_fields(operation.request))
        columns = _columns(operation, declared)
        sender = Sender(calculator, metrics, request)
        table = Answering(operation, declared, columns, sender, settings.body_limit_bytes)
        pieces = _pieces(request, table, bodies, settings)
        # Its header is read before anything is sent: what is wrong with it is said by a status.
        first = await anext(pieces)
        return streamed(CSV_ANSWERED, _begun(first, pieces))

    # What bounds a body bounds a row of it here.
    return HTTPRouteHandler(
        TABLES_PATH.format(operation="{operation:str}"),
        http_method=[HttpMethod.POST],
        name="tables",
        status_code=200,
        request_max_body_size=None,
    )(answer)


def _operation(operations: Mapping[str, AnyOperation], name: str) -> AnyOperation:
    if name not in operations:
        said = names_no_operation(name, operations)
        raise ProblemError("not-found", f"{name[:80]!r} {said}.")
    return operations[name]


def _columns(operation: AnyOperation, declared: Declared) -> Sequence[ResultColumn]:
    """The result columns that are wanted; raises ProblemError."""
    named = [
        name.strip() for text in declared.form.columns for name in text.split(",") if name.strip()
    ]
    if not named:
        return columns_of(operation.result)
    try:
        return chosen_columns(operation.result, named)
    except NoColumn as error:
        errors = [{"pointer": "/columns", "message": str(error)}]
        said = f"columns: {str(error).rstrip('?')}."
        raise ProblemError("invalid-request", said, errors=errors) from None


async def _pieces(
    request: AnyRequest, table: Answering, bodies: Bodies, settings: Settings
) -> AsyncGenerator[bytes, None]:
    """The answered table: of a body whose length is told and small, once it is here.

    Most programs send all of a body before they read. Where the answer grows meanwhile, both ends
    would wait for each other once what lies between them is full.
    """
    if _is_small(request, settings.body_limit_bytes):
        body = await bodies.read(request, settings.body_limit_bytes)
        try:
            async with aclosing(table.pieces(Whole(request, body))) as pieces:
                async for piece in pieces:
                    yield piece
        finally:
            bodies.release(body)
        return
    async with (
        arriving(request, settings.body_seconds) as coming,
        aclosing(table.pieces(coming)) as pieces,
    ):
        async for piece in pieces:
            yield piece


def _is_small(request: AnyRequest, most_bytes: int) -> bool:
    length = header(request, b"content-length")
    return length.isdigit() and int(length[:20]) <= most_bytes


async def _begun(first: bytes, rest: AsyncGenerator[bytes, None]) -> AsyncGenerator[bytes, None]:
    """Pieces of which the first was made already."""
    async with aclosing(rest):
        yield first
        async for piece in rest:
            yield piece
