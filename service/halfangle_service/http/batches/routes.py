"""The route of batches: JSON for few rows, lines of JSON streamed both ways for many."""

import asyncio
from collections.abc import AsyncGenerator, AsyncIterator, Awaitable, Iterable, Mapping
from functools import partial
from typing import Any

from litestar import HttpMethod
from litestar.handlers import HTTPRouteHandler
from litestar.types import ASGIApp

from halfangle_service.http.answers import JSON, AnyRequest, require_accepts, require_body_of
from halfangle_service.http.batches.lines import Lines
from halfangle_service.http.batches.model import BATCHES_PATH, LINES
from halfangle_service.http.batches.rows import row_of_value, rows_of_body
from halfangle_service.http.batches.run import Batch
from halfangle_service.http.calculating import AnyOperation, Calculator
from halfangle_service.http.guards.bodies import Bodies
from halfangle_service.http.problems import CallerGone, ProblemError, problem_body, stopping
from halfangle_service.http.streams.arriving import Arriving, arriving
from halfangle_service.http.streams.sender import Sender
from halfangle_service.http.streams.sending import streamed, together
from halfangle_service.http.watch.metrics import Metrics
from halfangle_service.settings import Settings


def batch_route(
    operations: Mapping[str, AnyOperation],
    calculator: Calculator,
    metrics: Metrics,
    settings: Settings,
) -> HTTPRouteHandler:
    """Make the route that answers rows of any operations."""
    bodies = calculator.bodies

    async def answer(request: AnyRequest) -> ASGIApp:
        media_type = require_body_of(request, JSON, LINES)
        require_accepts(request, media_type)
        sender = Sender(calculator, metrics, request)
        batch = Batch(operations, sender)
        if media_type == LINES:
            return streamed(LINES, _lines_answered(request, batch, settings))
        body = await bodies.read(request, settings.body_limit_bytes)
        try:
            rows = rows_of_body(body)
        except ProblemError:
            bodies.release(body)
            raise
        return streamed(JSON, _rows_answered(rows, batch, sender, body, bodies))

    # What bounds a body bounds a row of it here.
    return HTTPRouteHandler(
        BATCHES_PATH,
        http_method=[HttpMethod.POST],
        name="batches",
        status_code=200,
        request_max_body_size=None,
    )(answer)


async def _lines_answered(
    request: AnyRequest, batch: Batch, settings: Settings
) -> AsyncGenerator[bytes, None]:
    """Answer lines while they arrive; the last line holds the counts, and why it ended early."""
    lines = Lines(settings.body_limit_bytes)
    ended: ProblemError | None = None
    try:
        async with arriving(request, settings.body_seconds) as body:
            async for chunk in body.chunks():
                cut = lines.of(chunk) if chunk is not None else lines.end()
                async for piece in together(_each(map(batch.answer_line, cut), body)):
                    yield piece
    except ProblemError as error:
        ended = error
    except CallerGone:
        return
    except asyncio.CancelledError:
        ended = stopping()
    yield b"{%b}\n" % _end(batch, ended)


async def _each(answers: Iterable[Awaitable[bytes]], body: Arriving) -> AsyncIterator[bytes]:
    """Answers of rows that are there, each a line."""
    for answer in answers:
        line = await answer + b"\n"
        body.refuse_gone()
        yield line


async def _rows_answered(
    rows: list[Any], batch: Batch, sender: Sender, body: bytes, bodies: Bodies
) -> AsyncGenerator[bytes, None]:
    """Answer rows of a body that was read, as one document."""
    ended: ProblemError | None = None
    try:
        yield b'{"rows":['
        for number, row in enumerate(rows):
            comma = b"," if number else b""
            yield comma + await batch.answer_row(partial(row_of_value, row))
            sender.refuse_gone()
    except ProblemError as error:
        ended = error
    except CallerGone:
        return
    except asyncio.CancelledError:
        ended = stopping()
    finally:
        bodies.release(body)
    yield b"],%b}" % _end(batch, ended)


def _end(batch: Batch, ended: ProblemError | None) -> bytes:
    """Members that end an answer: the counts of its rows, and the problem that ended it early."""
    counts = b'"counts":' + batch.counts.as_json()
    return (
        counts if ended is None else counts + b',"problem":' + problem_body(ended, BATCHES_PATH)[1]
    )
