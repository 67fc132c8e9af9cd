"""One exchange over HTTP, sync and async, within its time. The only module that knows httpx."""

import asyncio
import time
from collections.abc import Awaitable, Callable, Mapping
from dataclasses import replace
from threading import Thread
from typing import Any, TypeAlias

import httpx

from halfangle_client.bounded import require_room, too_late, within
from halfangle_client.conversation import Fault, Manners
from halfangle_client.endpoint import Message, Reply
from halfangle_client.errors import AnswerTooLarge

HttpClient: TypeAlias = httpx.Client
#: An ASGI application. What its arguments are called differs between frameworks' types.
AsgiApp: TypeAlias = Callable[[Any, Any, Any], Awaitable[None]]
AsyncHttpClient: TypeAlias = httpx.AsyncClient

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


class _InProcess(httpx.BaseTransport):
    """Calls an ASGI application from sync code: on an event loop in a thread of its own."""

    def __init__(self, app: AsgiApp) -> None:
        self._transport = _asgi(app)
        self._loop = asyncio.new_event_loop()
        self._thread = Thread(target=self._loop.run_forever, daemon=True)
        self._thread.start()

    def handle_request(self, request: httpx.Request) -> httpx.Response:
        """Give the application's answer."""
        return asyncio.run_coroutine_threadsafe(self._answer(request), self._loop).result()

    async def _answer(self, request: httpx.Request) -> httpx.Response:
        response = await self._transport.handle_async_request(request)
        # As it travels: what is compressed is not to be taken for that once it is read.
        body = b"".join([part async for part in response.aiter_raw()])
        return httpx.Response(response.status_code, headers=response.headers, content=body)

    async def _cancel_all(self) -> None:
        under_way = asyncio.all_tasks() - {asyncio.current_task()}
        for task in under_way:
            task.cancel()
        await asyncio.gather(*under_way, return_exceptions=True)

    def close(self) -> None:
        """Cancel what is under way, and end the thread."""
        asyncio.run_coroutine_threadsafe(self._cancel_all(), self._loop).result()
        self._loop.call_soon_threadsafe(self._loop.stop)
        self._thread.join()
        self._loop.close()


def http_in_process(app: AsgiApp) -> HttpClient:
    """Make an httpx client of an ASGI application."""
    return httpx.Client(transport=_InProcess(app), trust_env=False)


def async_http_in_process(app: AsgiApp) -> AsyncHttpClient:
    """Make an httpx client of an ASGI application, to be awaited."""
    return httpx.AsyncClient(transport=_asgi(app), trust_env=False)


def _asgi(app: AsgiApp) -> httpx.ASGITransport:
    # As over a network: a failure in the application is an answer with status 500.
    return httpx.ASGITransport(app, raise_app_exceptions=False)


class Connection:
    """Exchanges messages with one service, over an httpx client of its own or one handed in.

    How many are under way at once is the client's to bound, not that of httpx's pool: the pool
    would count the wait for a place as part of a call's time.
    """

    def __init__(self, manners: Manners, http_client: HttpClient | None) -> None:
        self._manners = manners
        self._http = http_client or httpx.Client(mounts=_NO_PROXY, limits=_limits(manners))
        self.is_own: bool = http_client is None

    def exchange(self, address: str, message: Message, seconds: float) -> Reply | Fault:
        """Send a message there; give the reply, or why none is whole, after the seconds at most."""
        deadline = time.monotonic() + seconds
        return within(deadline, lambda: self._exchanged(address, message, deadline))

    def _exchanged(self, address: str, message: Message, deadline: float) -> Reply | Fault:
        seconds = max(_LEAST_SECONDS, deadline - time.monotonic())
        options = _options(self._manners, address, message, seconds)
        coming: Coming | None = None
        try:
            with self._http.stream(**options) as response:
                coming = Coming(response, self._manners.largest_answer)
                for part in response.iter_bytes():
                    coming.add(part)
                    if time.monotonic() > deadline:
                        return replace(too_late("the answer was not whole"), part=coming.reply)
                return coming.reply
        except _FAULTS as error:
            return _fault(error, coming)

    def close(self) -> None:
        """Close the httpx client, where it is this one's own."""
        if self.is_own:
            self._http.close()


class AsyncConnection:
    """The same, to be awaited."""

    def __init__(self, manners: Manners, http_client: AsyncHttpClient | None) -> None:
        self._manners = manners
        self._http = http_client or httpx.AsyncClient(mounts=_NO_PROXY, limits=_limits(manners))
        self.is_own: bool = http_client is None

    async def exchange(self, address: str, message: Message, seconds: float) -> Reply | Fault:
        """Send a message there; give the reply, or why none is whole, after the seconds at most."""
        try:
            async with asyncio.timeout(seconds):
                return await self._exchanged(address, message, seconds)
        except TimeoutError:
            return too_late("the answer was not whole")

    async def _exchanged(self, address: str, message: Message, seconds: float) -> Reply | Fault:
        options = _options(self._manners, address, message, seconds)
        coming: Coming | None = None
        try:
            async with self._http.stream(**options) as response:
                coming = Coming(response, self._manners.largest_answer)
                async for part in response.aiter_bytes():
                    coming.add(part)
                return coming.reply
        except _FAULTS as error:
            return _fault(error, coming)

    async def close(self) -> None:
        """Close the httpx client, where it is this one's own."""
        if self.is_own:
            await self._http.aclose()


def _limits(manners: Manners) -> httpx.Limits:
    # A call that timed out may hold its socket a little longer; no other call waits for that.
    return httpx.Limits(max_connections=None, max_keepalive_connections=manners.calls_at_once)


def _options(manners: Manners, address: str, message: Message, seconds: float) -> dict[str, Any]:
    """Arguments of httpx's own `stream`."""
    return {
        "method": message.method,
        "url": address + message.path,
        "params": dict(message.query) or None,
        "headers": {**manners.headers, **message.headers},
        "content": message.body,
        "timeout": httpx.Timeout(seconds, connect=min(seconds, _CONNECT_SECONDS)),
    }


class Coming:
    """A reply as it comes: what is there of it, within the room that it may take."""

    def __init__(self, response: httpx.Response, most_bytes: int) -> None:
        self._response = response
        self._most = most_bytes
        self._body = bytearray()

    def add(self, part: bytes) -> None:
        """Add what came. Raises AnswerTooLarge."""
        self._body += part
        require_room(len(self._body), self._most)

    @property
    def reply(self) -> Reply:
        """What is there, and has room."""
        body = bytes(self._body[: self._most])
        return Reply(self._response.status_code, self._response.headers, body)


def _fault(error: Exception, coming: Coming | None) -> Fault:
    return Fault(
        error,
        late=isinstance(error, httpx.TimeoutException),
        worth_another_try=isinstance(error, _WORTH_ANOTHER_TRY),
        part=coming.reply if coming is not None else None,
    )
