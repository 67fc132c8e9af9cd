"""How requests travel: the one module that knows httpx.

Retries follow connection faults and the statuses 429 and 503 only, with backoff, honouring
Retry-After. Every call is a pure calculation, so that asking twice does no harm.
"""

import asyncio
import json
import random
import time
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any, TypeVar
from urllib.parse import quote

import httpx
from pydantic import BaseModel, ValidationError

from halfangle_client.errors import ConnectionFailed, UnexpectedAnswer, error_of
from halfangle_client.generated.models import Problem

AnswerT = TypeVar("AnswerT", bound=BaseModel)

_RETRIED = frozenset({429, 503})
_LONGEST_WAIT_SECONDS = 10.0


@dataclass(frozen=True)
class CallOptions:
    """What one call may override: seconds to wait for an answer, and an id for the logs."""

    timeout_seconds: float | None = None
    request_id: str | None = None


@dataclass(frozen=True)
class Connection:
    """Where the service is and how to ask it; times in seconds.

    `httpx_transport` stands in for the network, in tests and in-process use.
    """

    base_url: str
    api_key: str | None = None
    timeout_seconds: float = 10.0
    retries: int = 2
    backoff_seconds: float = 0.2
    headers: Mapping[str, str] = field(default_factory=dict)
    httpx_transport: Any = None

    def request_headers(self, options: CallOptions) -> dict[str, str]:
        """Headers of one request."""
        headers = {"Accept": "application/json", **self.headers}
        if self.api_key is not None:
            headers["X-API-Key"] = self.api_key
        if options.request_id is not None:
            headers["X-Request-ID"] = options.request_id
        return headers

    def wait_seconds(self, attempt: int, response: httpx.Response | None) -> float:
        """Time to wait before the next attempt: Retry-After where it is sent, else backoff."""
        after = response.headers.get("retry-after", "") if response is not None else ""
        if after.isdigit():
            return min(float(after), _LONGEST_WAIT_SECONDS)
        # Spread, so that many callers do not come back at the same moment.
        spread = 0.5 + random.random()  # noqa: S311  no secret depends on it
        return min(self.backoff_seconds * 2.0**attempt * spread, _LONGEST_WAIT_SECONDS)


def chosen(**arguments: Any) -> dict[str, Any]:
    """Give the arguments that were given, models as plain data."""
    return {name: _plain(value) for name, value in arguments.items() if value is not None}


def _plain(value: Any) -> Any:
    if isinstance(value, BaseModel):
        return value.model_dump(mode="json", exclude_unset=True)
    if isinstance(value, list | tuple):
        return [_plain(part) for part in value]
    return value


def path_of(template: str, key: str) -> str:
    """Give the path of one row of a published table."""
    return template.replace("{key}", quote(key, safe=""))


def read_answer(response: httpx.Response, answer: type[AnswerT]) -> AnswerT:
    """Read an answer, or raise the error that it is."""
    try:
        if response.is_success:
            return answer.model_validate_json(response.content)
        problem = Problem.model_validate_json(response.content)
    except ValidationError as error:
        raise UnexpectedAnswer(
            f"{response.request.url} answered {response.status_code} with what the contract does "
            f"not promise: {error.errors()[0]['msg']}"
        ) from error
    raise error_of(problem, response.headers.get("x-request-id"))


def _content(body: Mapping[str, Any] | None) -> tuple[bytes | None, dict[str, str]]:
    if body is None:
        return None, {}
    content = json.dumps(body, ensure_ascii=False, allow_nan=True).encode()
    return content, {"Content-Type": "application/json"}


class Transport:
    """Sends requests and waits for each answer."""

    def __init__(self, connection: Connection) -> None:
        self._connection = connection
        self._client = httpx.Client(
            base_url=connection.base_url,
            timeout=connection.timeout_seconds,
            transport=connection.httpx_transport,
        )

    def call(
        self,
        method: str,
        path: str,
        body: Mapping[str, Any] | None,
        answer: type[AnswerT],
        options: CallOptions | None,
    ) -> AnswerT:
        """Send one request; raises a HalfangleError."""
        options = options or CallOptions()
        content, content_type = _content(body)
        request = self._client.build_request(
            method,
            path,
            content=content,
            headers=self._connection.request_headers(options) | content_type,
            timeout=options.timeout_seconds or self._connection.timeout_seconds,
        )
        for attempt in range(self._connection.retries + 1):
            response: httpx.Response | None = None
            fault: httpx.TransportError | None = None
            try:
                response = self._client.send(request)
            except httpx.TransportError as error:
                fault = error
            if response is not None and response.status_code not in _RETRIED:
                break
            if attempt < self._connection.retries:
                time.sleep(self._connection.wait_seconds(attempt, response))
        return _settle(self._connection, response, fault, answer)

    def close(self) -> None:
        """Close the connections."""
        self._client.close()


class AsyncTransport:
    """Sends requests without blocking the event loop."""

    def __init__(self, connection: Connection) -> None:
        self._connection = connection
        self._client = httpx.AsyncClient(
            base_url=connection.base_url,
            timeout=connection.timeout_seconds,
            transport=connection.httpx_transport,
        )

    async def call(
        self,
        method: str,
        path: str,
        body: Mapping[str, Any] | None,
        answer: type[AnswerT],
        options: CallOptions | None,
    ) -> AnswerT:
        """Send one request; raises a HalfangleError."""
        options = options or CallOptions()
        content, content_type = _content(body)
        request = self._client.build_request(
            method,
            path,
            content=content,
            headers=self._connection.request_headers(options) | content_type,
            timeout=options.timeout_seconds or self._connection.timeout_seconds,
        )
        for attempt in range(self._connection.retries + 1):
            response: httpx.Response | None = None
            fault: httpx.TransportError | None = None
            try:
                response = await self._client.send(request)
            except httpx.TransportError as error:
                fault = error
            if response is not None and response.status_code not in _RETRIED:
                break
            if attempt < self._connection.retries:
                await asyncio.sleep(self._connection.wait_seconds(attempt, response))
        return _settle(self._connection, response, fault, answer)

    async def close(self) -> None:
        """Close the connections."""
        await self._client.aclose()


def _settle(
    connection: Connection,
    response: httpx.Response | None,
    fault: httpx.TransportError | None,
    answer: type[AnswerT],
) -> AnswerT:
    """Read the last response, or raise the fault that stood in its way."""
    if response is None:
        reason = str(fault) or type(fault).__name__
        raise ConnectionFailed(f"No answer from {connection.base_url}: {reason}") from fault
    return read_answer(response, answer)
