"""The two clients: `Halfangle` waits for each answer, `AsyncHalfangle` does not block."""

from collections.abc import Mapping
from typing import Any, Self

from pydantic import RootModel

from halfangle_client.generated.calls import AsyncTopics, Topics
from halfangle_client.transport import AsyncTransport, Connection, Transport


class PlainAnswer(RootModel[dict[str, Any]]):
    """An answer as plain data."""


class Halfangle(Topics):
    """Client of a running service.

    >>> with Halfangle("http://127.0.0.1:8765") as client:  # doctest: +SKIP
    ...     client.sine.setting(units="in", center_distance=5, angle=30).result.height
    2.4999999999999996

    Further keyword arguments are those of `Connection`: `api_key`, `timeout_seconds`, `retries`,
    `backoff_seconds`, `headers`.
    """

    def __init__(self, base_url: str, **connection: Any) -> None:
        self._own = Transport(Connection(base_url, **connection))
        super().__init__(self._own)

    def call(self, operation: str, request: Mapping[str, Any]) -> dict[str, Any]:
        """Call an operation by its dotted name with a request as plain data; so is the answer.

        For batches and scripts; the methods of the topics are typed. Raises a HalfangleError.
        """
        path = f"/v1/{operation.replace('.', '/', 1)}"
        return self._own.call("POST", path, request, PlainAnswer, None).root

    def close(self) -> None:
        """Close the connections."""
        self._own.close()

    def __enter__(self) -> Self:
        return self

    def __exit__(self, *exception: object) -> None:
        self.close()


class AsyncHalfangle(AsyncTopics):
    """Client of a running service, for `async with`; arguments as for `Halfangle`."""

    def __init__(self, base_url: str, **connection: Any) -> None:
        self._own = AsyncTransport(Connection(base_url, **connection))
        super().__init__(self._own)

    async def call(self, operation: str, request: Mapping[str, Any]) -> dict[str, Any]:
        """Call an operation by its dotted name with a request as plain data; so is the answer."""
        path = f"/v1/{operation.replace('.', '/', 1)}"
        return (await self._own.call("POST", path, request, PlainAnswer, None)).root

    async def close(self) -> None:
        """Close the connections."""
        await self._own.close()

    async def __aenter__(self) -> Self:
        return self

    async def __aexit__(self, *exception: object) -> None:
        await self.close()
