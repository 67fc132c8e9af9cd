"""One exchange over HTTP, sync and async, within its time. The only module that knows httpx."""

import asyncio
import time
from collections.abc import Mapping
from threading import BoundedSemaphore
from typing import Any

import httpx

from halfangle_client.bounded import require_room, too_late, within
from halfangle_client.conversation import Fault, Manners
from halfangle_client.endpoint import Message, Reply
from halfangle_client.errors import AnswerTooLarge

HttpClient = httpx.Client
AsyncHttpClient = httpx.AsyncClient

_CONNECT_SECONDS = 3.0
#: A socket that is given no time at all does not wait, and says something else.
_LEAST_SECONDS = 0.001
#: A proxy of the environment is for the world outside, never for a service on this machine.
_NO_PROXY: Mapping[str, None] = {
    f"all://{host}": None for host in ("127.0.0.1", "localhost", "[::1]")
}
#: What keeps a reply from coming, an address that is none included.
_FAULTS = (httpx.RequestError, httpx.InvalidURL, AnswerTooLarge)
_WORTH_ANOTHER_TRY = (httpx.NetworkError, httpx.RemoteProtocolError, httpx.ConnectTimeout)


class Connection:
    """Exchanges messages with one service, over an httpx client of its own or one handed in.

    So many as the manners say are under way at once; the others wait here for their turn, each
    within its own time. (httpx's own pool looks at every connection for every request that waits.)
    """

    def __init__(self, manners: Manners, http_client: HttpClient | None) -> None:
        self._manners = manners
        self._http = http_client or httpx.Client(mounts=_NO_PROXY, limits=_limits(manners))
        self._is_own = http_client is None
        self._turns = BoundedSemaphore(manners.calls_at_once)

    def exchange(self, message: Message, seconds: float) -> Reply | Fault:
        """Send a message; give the reply, or why there is none, after so many seconds at most."""
        deadline = time.monotonic() + seconds
        if not self._turns.acquire(timeout=seconds):
            return too_late("no turn")

        def in_turn() -> Reply | Fault:
            try:
                return self._exchanged(message, deadline)
            finally:
                self._turns.release()

        return within(deadline, in_turn)

    def _exchanged(self, message: Message, deadline: float) -> Reply | Fault:
        seconds = max(_LEAST_SECONDS, deadline - time.monotonic())
        options = _options(self._manners, message, seconds)
        try:
            with self._http.stream(**options) as response:
                body = bytearray()
                for part in response.iter_bytes():
                    body += part
                    require_room(len(body), self._manners.largest_answer)
                    if time.monotonic() > deadline:
                        return too_late("the answer was not whole")
                return _reply(response, body)
        except _FAULTS as error:
            return _fault(error)

    def close(self) -> None:
        """Close the connections that this client opened itself."""
        if self._is_own:
            self._http.close()


class AsyncConnection:
    """The same, to be awaited."""

    def __init__(self, manners: Manners, http_client: AsyncHttpClient | None) -> None:
        self._manners = manners
        self._http = http_client or httpx.AsyncClient(mounts=_NO_PROXY, limits=_limits(manners))
        self._is_own = http_client is None
        self._turns = asyncio.Semaphore(manners.calls_at_once)

    async def exchange(self, message: Message, seconds: float) -> Reply | Fault:
        """Send a message; give the reply, or why there is none, after so many seconds at most."""
        try:
            async with asyncio.timeout(seconds), self._turns:
                return await self._exchanged(message, seconds)
        except TimeoutError:
            return too_late("the answer was not whole, or there was no turn")

    async def _exchanged(self, message: Message, seconds: float) -> Reply | Fault:
        options = _options(self._manners, message, seconds)
        try:
            async with self._http.stream(**options) as response:
                body = bytearray()
                async for part in response.aiter_bytes():
                    body += part
                    require_room(len(body), self._manners.largest_answer)
                return _reply(response, body)
        except _FAULTS as error:
            return _fault(error)

    async def close(self) -> None:
        """Close the connections that this client opened itself."""
        if self._is_own:
            await self._http.aclose()


def _limits(manners: Manners) -> httpx.Limits:
    most = manners.calls_at_once
    return httpx.Limits(max_connections=most, max_keepalive_connections=most)


def _options(manners: Manners, message: Message, seconds: float) -> dict[str, Any]:
    """Arguments of httpx's own `stream`."""
    return {
        "method": message.method,
        "url": manners.base_url + message.path,
        "params": dict(message.query) or None,
        "headers": {**manners.headers, **message.headers},
        "content": message.body,
        "timeout": httpx.Timeout(seconds, connect=min(seconds, _CONNECT_SECONDS)),
    }


def _reply(response: httpx.Response, body: bytearray) -> Reply:
    return Reply(response.status_code, response.headers, bytes(body))


def _fault(error: Exception) -> Fault:
    return Fault(
        error,
        late=isinstance(error, httpx.TimeoutException),
        worth_another_try=isinstance(error, _WORTH_ANOTHER_TRY),
    )
