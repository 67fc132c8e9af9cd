"""A body that is answered while it arrives, and the caller that may leave meanwhile."""

import asyncio
from collections.abc import AsyncIterator, Callable
from contextlib import asynccontextmanager, suppress
from typing import Any, Protocol

from litestar.exceptions import HTTPException

from halfangle_service.http.answers import AnyRequest
from halfangle_service.http.guards.connections import CALLER_LEFT
from halfangle_service.http.problems import CallerGone, ProblemError
from halfangle_service.trade.wording import plain


class Pieces(Protocol):
    """A body in pieces, and the caller that it comes from."""

    def chunks(self) -> AsyncIterator[bytes | None]:
        """Give each piece, and None at the end of the body."""
        ...

    def refuse_gone(self) -> None:
        """Raise CallerGone where the caller has left: nobody would read what comes."""
        ...


def left_by(request: AnyRequest) -> Callable[[], bool]:
    """What tells whether the caller has left, where the server can."""
    told: Any = request.scope.get("extensions") or {}
    return told.get(CALLER_LEFT, lambda: False)  # type: ignore[no-any-return]


class Whole:
    """A body that has arrived."""

    def __init__(self, request: AnyRequest, body: bytes) -> None:
        self._body = body
        self._has_left = left_by(request)

    async def chunks(self) -> AsyncIterator[bytes | None]:
        """Give the body, then None."""
        yield self._body
        yield None

    def refuse_gone(self) -> None:
        """Raise CallerGone where the caller has left."""
        if self._has_left():
            raise CallerGone


class Arriving:
    """Pieces of a body, one ahead of the work; what is not taken holds the caller back."""

    def __init__(self, request: AnyRequest, seconds: float) -> None:
        self._request = request
        self._seconds = seconds
        self._pieces: asyncio.Queue[bytes | ProblemError | None] = asyncio.Queue(maxsize=1)
        self._gone = False
        self._has_left = left_by(request)

    async def chunks(self) -> AsyncIterator[bytes | None]:
        """Give each piece, and None at the end of the body.

        Raises ProblemError (`too-slow`) where the next does not arrive in time, CallerGone.
        """
        piece: bytes | ProblemError | None = b""
        while piece is not None:
            piece = await self._pieces.get()
            self.refuse_gone()
            if isinstance(piece, ProblemError):
                raise piece
            yield piece

    def refuse_gone(self) -> None:
        """Raise CallerGone where the caller has left: nobody would read what comes."""
        if self._gone or self._has_left():
            raise CallerGone

    async def take_in(self) -> None:
        """Take pieces as they arrive, then wait for the caller to leave."""
        try:
            await self._take_pieces()
            await self._pieces.put(None)
            while (await self._request.receive())["type"] != "http.disconnect":
                pass
        except TimeoutError:
            late = f"No more of the body arrived within {plain(self._seconds)} s."
            await self._pieces.put(ProblemError("too-slow", late))
            return
        except HTTPException:
            pass  # the framework's way to say that the caller left
        self._gone = True
        with suppress(asyncio.QueueFull):
            self._pieces.put_nowait(None)

    async def _take_pieces(self) -> None:
        stream = aiter(self._request.stream())
        while True:
            async with asyncio.timeout(self._seconds):
                piece = await anext(stream, None)
            if piece is None:
                return
            await self._pieces.put(piece)


@asynccontextmanager
async def arriving(request: AnyRequest, seconds: float) -> AsyncIterator[Arriving]:
    """Take in a body while its pieces are answered; `seconds` is the time for the next piece."""
    body = Arriving(request, seconds)
    taking = asyncio.create_task(body.take_in())
    try:
        yield body
    finally:
        taking.cancel()
