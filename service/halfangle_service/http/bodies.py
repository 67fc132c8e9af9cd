"""Reading bodies: within a time, and no more bytes of all of them together than a bound."""

import asyncio
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager

from halfangle_service.http.answers import AnyRequest
from halfangle_service.http.problems import ProblemError

#: The first bytes of each body are not counted against the bound: callers of ordinary requests are
#: served while others hold large bodies back. The number of connections bounds these.
UNCOUNTED_BYTES = 65_536


class Bodies:
    """Reads bodies and knows how much of them is held until their answers are made."""

    def __init__(self, seconds: float, most_bytes: int) -> None:
        self._seconds = seconds
        self._most = most_bytes
        self._held = 0

    @asynccontextmanager
    async def reading(self, request: AnyRequest) -> AsyncIterator[bytes]:
        """Give the body of a request, counted as held until the caller of this is done.

        Raises ProblemError: `too-slow` where it does not arrive in time, `overloaded` where all
        bodies together are too large.
        """
        chunks: list[bytes] = []
        size = held = 0
        try:
            try:
                async with asyncio.timeout(self._seconds):
                    async for chunk in request.stream():
                        chunks.append(chunk)
                        size += len(chunk)
                        more = max(0, size - UNCOUNTED_BYTES) - held
                        self._hold(more)
                        held += more
            except TimeoutError:
                raise ProblemError(
                    "too-slow",
                    f"The body did not arrive within {self._seconds:g} s.",
                    headers={"Connection": "close"},
                ) from None
            body = b"".join(chunks)
            chunks.clear()
            yield body
        finally:
            self._held -= held

    def _hold(self, more: int) -> None:
        """Count bytes as held; raises ProblemError (`overloaded`) where there is no room."""
        if more and self._held + more > self._most:
            raise ProblemError(
                "overloaded",
                f"Bodies of {self._most} bytes together are being read; try again shortly.",
                headers={"Retry-After": "1"},
            )
        self._held += more
