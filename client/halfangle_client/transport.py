"""One exchange over HTTP, sync and async. The only module that knows httpx."""

from collections.abc import Mapping
from typing import Any

import httpx

from halfangle_client.conversation import Fault
from halfangle_client.endpoint import Message, Reply

HttpClient = httpx.Client
AsyncHttpClient = httpx.AsyncClient

_CONNECT_SECONDS = 3.0
#: A proxy of the environment is for the world outside, never for a service on this machine.
_NO_PROXY: Mapping[str, None] = {
    f"all://{host}": None for host in ("127.0.0.1", "localhost", "[::1]")
}
#: What keeps a reply from coming, an address that is none included.
_FAULTS = (httpx.RequestError, httpx.InvalidURL)
_WORTH_ANOTHER_TRY = (httpx.NetworkError, httpx.RemoteProtocolError, httpx.ConnectTimeout)


class Connection:
    """Exchanges messages with one service, over an httpx client of its own or one handed in."""

    def __init__(
        self, base_url: str, headers: Mapping[str, str], http_client: HttpClient | None
    ) -> None:
        self._base_url = base_url
        self._headers = headers
        self._http = http_client or httpx.Client(mounts=_NO_PROXY)
        self._is_own = http_client is None

    def exchange(self, message: Message, seconds: float) -> Reply | Fault:
        """Send a message; give the reply, or why there is none."""
        try:
            return _reply(
                self._http.request(**_options(self._base_url, self._headers, message, seconds))
            )
        except _FAULTS as error:
            return _fault(error)

    def close(self) -> None:
        """Close the connections that this client opened itself."""
        if self._is_own:
            self._http.close()


class AsyncConnection:
    """Exchanges messages with one service, over an httpx client of its own or one handed in."""

    def __init__(
        self, base_url: str, headers: Mapping[str, str], http_client: AsyncHttpClient | None
    ) -> None:
        self._base_url = base_url
        self._headers = headers
        self._http = http_client or httpx.AsyncClient(mounts=_NO_PROXY)
        self._is_own = http_client is None

    async def exchange(self, message: Message, seconds: float) -> Reply | Fault:
        """Send a message; give the reply, or why there is none."""
        try:
            return _reply(
                await self._http.request(
                    **_options(self._base_url, self._headers, message, seconds)
                )
            )
        except _FAULTS as error:
            return _fault(error)

    async def close(self) -> None:
        """Close the connections that this client opened itself."""
        if self._is_own:
            await self._http.aclose()


def _options(
    base_url: str, headers: Mapping[str, str], message: Message, seconds: float
) -> dict[str, Any]:
    """Arguments of httpx's own `request`."""
    return {
        "method": message.method,
        "url": base_url + message.path,
        "params": dict(message.query) or None,
        "headers": {**headers, **message.headers},
        "content": message.body,
        "timeout": httpx.Timeout(seconds, connect=min(seconds, _CONNECT_SECONDS)),
    }


def _reply(response: httpx.Response) -> Reply:
    return Reply(response.status_code, response.headers, response.content)


def _fault(error: Exception) -> Fault:
    return Fault(
        error,
        late=isinstance(error, httpx.TimeoutException),
        worth_another_try=isinstance(error, _WORTH_ANOTHER_TRY),
    )
