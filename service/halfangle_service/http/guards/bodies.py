"""Reading bodies: within a time, and no more bytes of all of them together than a bound."""

import asyncio

from halfangle_service.http.answers import AnyRequest
from halfangle_service.http.guards.memory import give_back
from halfangle_service.http.problems import ProblemError, stopping
from halfangle_service.trade.wording import plain

#: The first bytes of each body are not counted against the bound: callers of ordinary requests are
#: served while others hold large bodies back. The number of connections bounds these.
UNCOUNTED_BYTES = 65_536
#: After so many bytes were held at once, memory is given back soon after none is held any more.
_MUCH_BYTES, _SOON_SECONDS = 8_000_000, 1.0


class Bodies:
    """Reads bodies and knows how much of them is held until their answers are made."""

    def __init__(self, seconds: float, most_bytes: int) -> None:
        self._seconds = seconds
        self._most = most_bytes
        self._held = 0
        self._most_held = 0

    async def read(self, request: AnyRequest, most_bytes: int | None = None) -> bytes:
        """Give the body of a request, which counts as held until it is released.

        `most_bytes` bounds it where the route's own limit does not.

        Raises ProblemError: `content-too-large`, `too-slow` where it does not arrive in time,
        `overloaded` where all bodies together are too large, `stopping` where the service waits
        no longer.
        """
        body = bytearray()
        try:
            async with asyncio.timeout(self._seconds):
                async for chunk in request.stream():
                    if most_bytes is not None and len(body) + len(chunk) > most_bytes:
                        raise too_large(most_bytes)
                    self._hold(_counted(len(body) + len(chunk)) - _counted(len(body)))
                    body += chunk
        except BaseException as error:
            self.release(body)
            if isinstance(error, TimeoutError):
                raise ProblemError(
                    "too-slow",
                    f"The body did not arrive within {plain(self._seconds)} s.",
                    headers={"Connection": "close"},
                ) from None
            if isinstance(error, asyncio.CancelledError):
                raise stopping() from None
            raise
        return bytes(body)

    def release(self, body: bytes | bytearray) -> None:
        """Count a body as held no longer."""
        self._held -= _counted(len(body))
        if not self._held and self._most_held > _MUCH_BYTES:
            self._most_held = 0
            asyncio.get_running_loop().call_later(_SOON_SECONDS, give_back)

    def _hold(self, more: int) -> None:
        """Count bytes as held; raises ProblemError (`overloaded`) where there is no room."""
        if more and self._held + more > self._most:
            raise ProblemError(
                "overloaded",
                f"Bodies of {self._most} bytes together are being read; try again shortly.",
                headers={"Retry-After": "1"},
            )
        self._held += more
        self._most_held = max(self._most_held, self._held)


def _counted(size: int) -> int:
    """Bytes of a body of this size that count against the bound."""
    return max(0, size - UNCOUNTED_BYTES)


def too_large(limit_bytes: int) -> ProblemError:
    """What is said of a body that is larger than the service takes."""
    detail = f"The body is larger than the limit of this service, {limit_bytes} bytes."
    return ProblemError("content-too-large", detail, more={"limit_bytes": limit_bytes})
