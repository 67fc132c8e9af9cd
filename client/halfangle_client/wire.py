"""One exchange over plain HTTP by the standard library alone, for the command.

The command is started anew for every call, and loading httpx takes longer than the call. What plain
HTTP does not cover (TLS, a proxy of the environment) `connection` leaves to httpx.
"""

import http.client
import time
from typing import Protocol
from urllib.parse import urlencode, urlsplit

from halfangle_client.bounded import require_room, too_late, within
from halfangle_client.conversation import Fault, Manners
from halfangle_client.endpoint import Message, Reply
from halfangle_client.errors import AnswerTooLarge

_CONNECT_SECONDS = 3.0
_LEAST_SECONDS = 0.001
_PART_BYTES = 64 * 1024
_LOOPBACK = frozenset({"127.0.0.1", "localhost", "::1"})
#: What keeps a reply from coming, an address that is none included.
_FAULTS = (OSError, http.client.HTTPException, ValueError, AnswerTooLarge)


class Exchanger(Protocol):
    """Whatever exchanges messages with one service."""

    def exchange(self, address: str, message: Message, seconds: float) -> Reply | Fault:
        """Send a message there; give the reply, or why none is whole, after the seconds at most."""
        ...

    def close(self) -> None:
        """Close what was opened."""
        ...


def connection(manners: Manners) -> Exchanger:
    """Give the lightest connection that can reach the service."""
    try:
        parts = urlsplit(manners.base_url)
    except ValueError:
        return PlainConnection(manners)  # it says what is wrong with the address
    if parts.scheme == "https" or (parts.hostname not in _LOOPBACK and _has_proxy()):
        from halfangle_client.transport import Connection  # noqa: PLC0415 -- loads httpx

        return Connection(manners, None)
    return PlainConnection(manners)


def _has_proxy() -> bool:
    from urllib.request import getproxies  # noqa: PLC0415 -- not for a service on this machine

    return bool(getproxies())


class PlainConnection:
    """Exchanges messages over plain HTTP, each by a connection of its own."""

    def __init__(self, manners: Manners) -> None:
        self._manners = manners

    def exchange(self, address: str, message: Message, seconds: float) -> Reply | Fault:
        """Send a message there; give the reply, or why none is whole, after the seconds at most."""
        deadline = time.monotonic() + seconds
        return within(deadline, lambda: self._exchanged(address, message, deadline))

    def _exchanged(self, address: str, message: Message, deadline: float) -> Reply | Fault:
        try:
            parts = urlsplit(address)
            if not parts.hostname:
                raise ValueError("the address names no host")
            seconds = max(_LEAST_SECONDS, deadline - time.monotonic())
            host = http.client.HTTPConnection(
                parts.hostname, parts.port, timeout=min(seconds, _CONNECT_SECONDS)
            )
            try:
                return _spoken(host, parts.path, self._manners, message, deadline)
            finally:
                host.close()
        except _FAULTS as error:
            late = isinstance(error, TimeoutError)
            # As httpx has it: a wait that was too long once is not begun again, save to connect.
            return Fault(error, late=late, worth_another_try=_is_passing(error))

    def close(self) -> None:
        """Nothing is kept open."""


def _spoken(
    host: http.client.HTTPConnection, base: str, manners: Manners, message: Message, deadline: float
) -> Reply | Fault:
    host.connect()
    host.sock.settimeout(max(_LEAST_SECONDS, deadline - time.monotonic()))
    query = f"?{urlencode(message.query)}" if message.query else ""
    headers = {**manners.headers, **message.headers, "Connection": "close"}
    host.request(message.method, f"{base}{message.path}{query}", message.body, headers)
    response = host.getresponse()
    body = bytearray()
    while part := response.read1(_PART_BYTES):
        body += part
        require_room(len(body), manners.largest_answer)
        if time.monotonic() > deadline:
            return too_late("the answer was not whole")
    length = response.length
    if length:
        raise http.client.IncompleteRead(bytes(body), length)
    named = {name.lower(): value for name, value in response.getheaders()}
    return Reply(response.status, named, bytes(body))


def _is_passing(error: Exception) -> bool:
    """Whether another try may fare better: not where the address is wrong or the time is over."""
    if isinstance(error, (TimeoutError, AnswerTooLarge, http.client.InvalidURL)):
        return False
    return isinstance(error, (OSError, http.client.HTTPException))
