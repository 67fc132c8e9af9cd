"""An answer that is sent piece by piece, as fast as it is taken."""

import asyncio
import contextlib
from collections.abc import AsyncGenerator, AsyncIterator, Callable
from typing import Any

from litestar.types import ASGIApp, Receive, Scope, Send

from halfangle_service.http.guards.connections import BREAK_OFF
from halfangle_service.http.problems import ProblemError

#: So many bytes of answers are put together before they are sent, where more rows are there.
TOGETHER_BYTES = 32_768


class CutShort(Exception):
    """The answer ends before its end: who reads it must see that by the connection."""


async def together(answers: AsyncIterator[bytes]) -> AsyncGenerator[bytes, None]:
    """Answers of rows that are there, so many together as are worth sending.

    Those that are kept when a problem or a stop ends the rest are sent before it: they are counted.
    """
    kept = bytearray()
    try:
        async for answer in answers:
            kept += answer
            if len(kept) >= TOGETHER_BYTES:
                yield bytes(kept)
                kept.clear()
    except (ProblemError, asyncio.CancelledError):
        if kept:
            yield bytes(kept)
        raise
    if kept:
        yield bytes(kept)


def streamed(media_type: str, pieces: AsyncGenerator[bytes, None]) -> ASGIApp:
    """Send an answer piece by piece; a caller that leaves ends it.

    Where the pieces raise CutShort the connection is closed without the mark that ends a body:
    every program of HTTP reports that as a transfer that failed.
    """

    async def answer(scope: Scope, _: Receive, send: Send) -> None:
        headers = [(b"content-type", media_type.encode()), (b"cache-control", b"no-store")]
        await send({"type": "http.response.start", "status": 200, "headers": headers})
        try:
            async with contextlib.aclosing(pieces):
                async for piece in pieces:
                    await send({"type": "http.response.body", "body": piece, "more_body": True})
        except CutShort:
            told: Any = scope.get("extensions") or {}
            break_off: Callable[[], None] | None = told.get(BREAK_OFF)
            if break_off is not None:
                break_off()
                return
        await send({"type": "http.response.body", "body": b"", "more_body": False})

    return answer
