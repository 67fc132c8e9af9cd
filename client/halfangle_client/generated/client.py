# Generated from openapi/openapi.json by openapi/generate.py. Do not edit.
"""The client, sync and async, written once."""

import asyncio
import time
from collections.abc import (
    AsyncIterator,
    Callable,
    Coroutine,
    Iterable,
    Iterator,
    Mapping,
    Sequence,
)
from threading import BoundedSemaphore
from types import TracebackType
from typing import Any, Self, overload

from halfangle_client.addresses import Addresses
from halfangle_client.conversation import READY, Conversation, Fault, Manners
from halfangle_client.endpoint import AnswerT, Endpoint, Reply
from halfangle_client.errors import ConnectionFailed, HalfangleError, ProblemError
from halfangle_client.generated.calls import ENDPOINTS
from halfangle_client.generated.calls import blocks as _blocks
from halfangle_client.generated.calls import catalogue as _catalogue
from halfangle_client.generated.calls import centers as _centers
from halfangle_client.generated.calls import clearance as _clearance
from halfangle_client.generated.calls import curves as _curves
from halfangle_client.generated.calls import inspection as _inspection
from halfangle_client.generated.calls import jobs as _jobs
from halfangle_client.generated.calls import measuring as _measuring
from halfangle_client.generated.calls import runout as _runout
from halfangle_client.generated.calls import sine as _sine
from halfangle_client.generated.calls import tapers as _tapers
from halfangle_client.generated.calls import wheels as _wheels
from halfangle_client.reading import data_of
from halfangle_client.retry import Retries
from halfangle_client.rows import (
    Answered,
    Asked,
    BatchOutcomes,
    Chunk,
    Outcomes,
    batch,
    batch_async,
    endpoint_of,
    map_async,
    map_rows,
    stream,
    stream_async,
)
from halfangle_client.table import (
    TableSource,
    table_endpoint,
    table_query,
    table_rows,
    table_rows_async,
)
from halfangle_client.transport import (
    AsgiApp,
    AsyncConnection,
    AsyncHttpClient,
    Connection,
    HttpClient,
    async_http_in_process,
    http_in_process,
)

_PATIENCE = Retries()
_LARGEST_ANSWER = 64 * 1024 * 1024


class Halfangle:
    """A client of the service; each topic is an attribute that holds its calls.

    `base_url` is the address of the service, or several addresses, each as good as another: calls
    go to them in turn, and what one of them does not answer is sent to the next.
    `timeout_seconds` is how long a call may take from first to last, tries and waits between them
    included, `heavy_timeout_seconds` the same for calls that may take longer; a call's own
    `timeout_seconds` overrides both. `calls_at_once` are under way at most, however many are made
    at once; the others wait here for their turn, as long as it takes, and a call's time begins
    with its turn. Faults of the connection, 429 and 503 are tried again as `retries` says. An
    answer of more than `largest_answer` bytes is refused. An `http_client` handed in (for a proxy,
    or certificates) is not closed here, and should allow as many connections as there are calls at
    once. One client may serve many threads.
    """

    def __init__(
        self,
        base_url: str | Iterable[str] = "http://127.0.0.1:8765",
        *,
        api_key: str | None = None,
        timeout_seconds: float = 10.0,
        heavy_timeout_seconds: float = 60.0,
        retries: Retries = _PATIENCE,
        calls_at_once: int = 8,
        largest_answer: int = _LARGEST_ANSWER,
        http_client: HttpClient | None = None,
    ) -> None:
        self._manners = Manners(
            Addresses(base_url),
            api_key,
            timeout_seconds,
            heavy_timeout_seconds,
            retries,
            calls_at_once,
            largest_answer,
        )
        self._connection = Connection(self._manners, http_client)
        self._turns = BoundedSemaphore(calls_at_once)
        self.blocks: _blocks.BlocksCalls = _blocks.BlocksCalls(self)
        self.catalogue: _catalogue.CatalogueCalls = _catalogue.CatalogueCalls(self)
        self.centers: _centers.CentersCalls = _centers.CentersCalls(self)
        self.clearance: _clearance.ClearanceCalls = _clearance.ClearanceCalls(self)
        self.curves: _curves.CurvesCalls = _curves.CurvesCalls(self)
        self.inspection: _inspection.InspectionCalls = _inspection.InspectionCalls(self)
        self.jobs: _jobs.JobsCalls = _jobs.JobsCalls(self)
        self.measuring: _measuring.MeasuringCalls = _measuring.MeasuringCalls(self)
        self.runout: _runout.RunoutCalls = _runout.RunoutCalls(self)
        self.sine: _sine.SineCalls = _sine.SineCalls(self)
        self.tapers: _tapers.TapersCalls = _tapers.TapersCalls(self)
        self.wheels: _wheels.WheelsCalls = _wheels.WheelsCalls(self)

    @classmethod
    def in_process(
        cls,
        app: AsgiApp,
        *,
        api_key: str | None = None,
        timeout_seconds: float = 10.0,
        heavy_timeout_seconds: float = 60.0,
        calls_at_once: int = 8,
    ) -> Self:
        """Make a client of an ASGI application in this process: no server, no socket.

        For tests of what calls the service: give it the service's own application. Its handlers of
        start and stop are not run, and an exception in it is an answer with status 500.
        """
        client = cls(
            "http://in-process",
            api_key=api_key,
            timeout_seconds=timeout_seconds,
            heavy_timeout_seconds=heavy_timeout_seconds,
            calls_at_once=calls_at_once,
            http_client=http_in_process(app),
        )
        client._connection.is_own = True
        return client

    def send(
        self,
        endpoint: Endpoint[AnswerT],
        fields: Mapping[str, Any],
        *,
        content: str | bytes | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> AnswerT:
        """Send a call, again where that may help; give its answer, or raise a HalfangleError.

        `timeout_seconds` bounds it from its turn on.
        """
        with self._turns:
            call = Conversation(
                self._manners, endpoint, fields, content, timeout_seconds, request_id
            )
            outcome = self._exchanged(call)
        return call.answer(outcome)

    def send_rows(
        self, asked: Sequence[Asked[AnswerT]], *, timeout_seconds: float | None = None
    ) -> Answered[AnswerT]:
        """Send rows as one batch, again where that may help; give what came of each.

        `timeout_seconds` bounds them all together from their turn on. `map` is the way to use it.
        """
        with self._turns:
            chunk = Chunk(self._manners, asked, timeout_seconds)
            self._exchanged(chunk)
        return chunk.answered

    def _exchanged(self, call: Conversation[Any] | Chunk[Any]) -> Reply | Fault:
        """Exchange a message, again as long as that may help; give the outcome that stands."""
        while True:
            outcome = self._connection.exchange(call.address, call.message, call.seconds_left)
            pause = call.pause_after(outcome)
            if pause is None:
                return outcome
            time.sleep(pause)

    def call(
        self,
        name: str,
        request: Mapping[str, Any],
        *,
        content: str | bytes | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> Any:
        """Make a call by its dotted name with JSON data (`"sine.setting", {"units": …}`).

        The answer is JSON data too. Raises KeyError for a name that this release does not know.
        """
        untyped = ENDPOINTS[name].untyped()
        body = self.send(
            untyped,
            request,
            content=content,
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )
        return data_of(ENDPOINTS[name], body)

    @overload
    def map(
        self,
        call: Callable[..., AnswerT],
        rows: Iterable[Mapping[str, Any]],
        *,
        progress: Callable[[int, int], object] | None = None,
        into: Outcomes[AnswerT] | None = None,
        timeout_seconds: float | None = None,
    ) -> Outcomes[AnswerT]: ...
    @overload
    def map(
        self,
        call: str,
        rows: Iterable[Mapping[str, Any]],
        *,
        progress: Callable[[int, int], object] | None = None,
        into: Outcomes[Any] | None = None,
        timeout_seconds: float | None = None,
    ) -> Outcomes[Any]: ...

    def map(
        self,
        call: Callable[..., AnswerT] | str,
        rows: Iterable[Mapping[str, Any]],
        *,
        progress: Callable[[int, int], object] | None = None,
        into: Outcomes[Any] | None = None,
        timeout_seconds: float | None = None,
    ) -> Outcomes[Any]:
        """Answer each row by one call; give one answer or one error a row, in order of the rows.

        `call` is a call of this client (`client.sine.setting`, which types the answers) or its
        dotted name (`"sine.setting"`); a row holds its request by the names of the fields. A row
        that is refused, or gets no answer, is a HalfangleError in its place; none is raised for a
        row. `progress` is called with the rows done and all rows after each.

        Where the service takes batches, many rows go in one request, as many as take it a quarter
        of a second; `calls_at_once` of the client are under way at most. `timeout_seconds` bounds
        each request from its turn on; what did not come within it is called row by row.

        Ctrl-C raises Interrupted, a KeyboardInterrupt whose `outcomes` hold what was done by then;
        so do outcomes given as `into`, whatever ends the work. Rows without an outcome hold
        NotCalled.

        Raises:
            KeyError: `call` is no call that this release knows.
            Interrupted: by Ctrl-C.
        """
        return map_rows(
            self,
            endpoint_of(call, ENDPOINTS),
            rows,
            calls_at_once=self._manners.calls_at_once,
            progress=progress,
            into=into,
            timeout_seconds=timeout_seconds,
        )

    def table(
        self,
        operation: Callable[..., object] | str,
        source: TableSource,
        *,
        columns: Sequence[str] = (),
        keep: Sequence[str] = (),
        delimiter: str = ",",
        decimal: str = ".",
        list_separator: str = ";",
        timeout_seconds: float | None = None,
        **fields: Any,
    ) -> Iterator[bytes]:
        """Answer a table: CSV in, the same rows with their results out, in pieces as they come.

        `operation` is a call of this client, or its dotted name. `source` is the table as bytes,
        the path of its file, an open file, or its bytes in pieces; its first line names the fields
        of the request, and `fields` are those that all rows have alike. `columns` are the results
        that are wanted (all: `()`), `keep` columns to carry along unread, `("*",)` all of them.
        `delimiter` (`","`, `";"`, `"tab"`) and `decimal` (`"."`, `","`) say how it is written. A
        row that is refused, or whose answer says stop, has the reason in its column `problem`.
        `timeout_seconds` bounds each piece of some thousand rows (fifty of what takes longer).

        Raises, as the first piece is asked for:
            KeyError: `operation` is no call that this release knows.
            HalfangleError: the table is refused, or a piece of it has no answer.
        """
        query = table_query(
            fields,
            columns=columns,
            keep=keep,
            delimiter=delimiter,
            decimal=decimal,
            list_separator=list_separator,
        )
        endpoint = table_endpoint(endpoint_of(operation, ENDPOINTS), query)
        return table_rows(self, endpoint, source, query, timeout_seconds)

    @overload
    def stream(
        self,
        call: Callable[..., AnswerT],
        rows: Iterable[Mapping[str, Any]],
        *,
        timeout_seconds: float | None = None,
    ) -> Iterator[AnswerT | HalfangleError]: ...
    @overload
    def stream(
        self,
        call: str,
        rows: Iterable[Mapping[str, Any]],
        *,
        timeout_seconds: float | None = None,
    ) -> Iterator[Any | HalfangleError]: ...

    def stream(
        self,
        call: Callable[..., AnswerT] | str,
        rows: Iterable[Mapping[str, Any]],
        *,
        timeout_seconds: float | None = None,
    ) -> Iterator[Any | HalfangleError]:
        """Give what came of each row as `map` does, one after another while the others are sent.

        For rows without end: they are taken as they are needed, in this thread, and some thousands
        are held at most. Closing the iterator ends the work.

        Raises:
            KeyError: `call` is no call that this release knows.
        """
        return stream(
            self,
            endpoint_of(call, ENDPOINTS),
            rows,
            calls_at_once=self._manners.calls_at_once,
            timeout_seconds=timeout_seconds,
        )

    def batch(
        self,
        rows: Iterable[Mapping[str, Any]],
        *,
        progress: Callable[[int, int], object] | None = None,
        into: BatchOutcomes | None = None,
        timeout_seconds: float | None = None,
    ) -> BatchOutcomes:
        """Answer rows of any operations, each `{"ref": …, "operation": …, "request": {…}}`.

        `ref` is the caller's name of the row, a text or a whole number, given once; `operation` a
        name such as `"sine.setting"`. All else is as for `map`; `outcomes.by_ref["T-0001"]` is what
        came of a row, `outcomes.counts` how the rows ended, `outcomes.stops` what must not be run.

        Raises:
            Interrupted: by Ctrl-C.
        """
        return batch(
            self,
            ENDPOINTS,
            rows,
            calls_at_once=self._manners.calls_at_once,
            progress=progress,
            into=into,
            timeout_seconds=timeout_seconds,
        )

    def is_ready(self) -> bool:
        """Whether the service is there and ready."""
        try:
            self.send(READY, {}, timeout_seconds=3.0)
        except (ConnectionFailed, ProblemError):
            return False
        return True

    def close(self) -> None:
        """Close the connections that this client opened."""
        self._connection.close()

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        traceback: TracebackType | None,
    ) -> None:
        self.close()


class AsyncHalfangle:
    """The same client, to be awaited.

    `base_url` is the address of the service, or several addresses, each as good as another: calls
    go to them in turn, and what one of them does not answer is sent to the next.
    `timeout_seconds` is how long a call may take from first to last, tries and waits between them
    included, `heavy_timeout_seconds` the same for calls that may take longer; a call's own
    `timeout_seconds` overrides both. `calls_at_once` are under way at most, however many are made
    at once; the others wait here for their turn, as long as it takes, and a call's time begins
    with its turn. Faults of the connection, 429 and 503 are tried again as `retries` says. An
    answer of more than `largest_answer` bytes is refused. An `http_client` handed in (for a proxy,
    or certificates) is not closed here, and should allow as many connections as there are calls at
    once.
    """

    def __init__(
        self,
        base_url: str | Iterable[str] = "http://127.0.0.1:8765",
        *,
        api_key: str | None = None,
        timeout_seconds: float = 10.0,
        heavy_timeout_seconds: float = 60.0,
        retries: Retries = _PATIENCE,
        calls_at_once: int = 8,
        largest_answer: int = _LARGEST_ANSWER,
        http_client: AsyncHttpClient | None = None,
    ) -> None:
        self._manners = Manners(
            Addresses(base_url),
            api_key,
            timeout_seconds,
            heavy_timeout_seconds,
            retries,
            calls_at_once,
            largest_answer,
        )
        self._connection = AsyncConnection(self._manners, http_client)
        self._turns = asyncio.Semaphore(calls_at_once)
        self.blocks: _blocks.AsyncBlocksCalls = _blocks.AsyncBlocksCalls(self)
        self.catalogue: _catalogue.AsyncCatalogueCalls = _catalogue.AsyncCatalogueCalls(self)
        self.centers: _centers.AsyncCentersCalls = _centers.AsyncCentersCalls(self)
        self.clearance: _clearance.AsyncClearanceCalls = _clearance.AsyncClearanceCalls(self)
        self.curves: _curves.AsyncCurvesCalls = _curves.AsyncCurvesCalls(self)
        self.inspection: _inspection.AsyncInspectionCalls = _inspection.AsyncInspectionCalls(self)
        self.jobs: _jobs.AsyncJobsCalls = _jobs.AsyncJobsCalls(self)
        self.measuring: _measuring.AsyncMeasuringCalls = _measuring.AsyncMeasuringCalls(self)
        self.runout: _runout.AsyncRunoutCalls = _runout.AsyncRunoutCalls(self)
        self.sine: _sine.AsyncSineCalls = _sine.AsyncSineCalls(self)
        self.tapers: _tapers.AsyncTapersCalls = _tapers.AsyncTapersCalls(self)
        self.wheels: _wheels.AsyncWheelsCalls = _wheels.AsyncWheelsCalls(self)

    @classmethod
    def in_process(
        cls,
        app: AsgiApp,
        *,
        api_key: str | None = None,
        timeout_seconds: float = 10.0,
        heavy_timeout_seconds: float = 60.0,
        calls_at_once: int = 8,
    ) -> Self:
        """Make a client of an ASGI application in this process: no server, no socket.

        For tests of what calls the service: give it the service's own application. Its handlers of
        start and stop are not run, and an exception in it is an answer with status 500.
        """
        client = cls(
            "http://in-process",
            api_key=api_key,
            timeout_seconds=timeout_seconds,
            heavy_timeout_seconds=heavy_timeout_seconds,
            calls_at_once=calls_at_once,
            http_client=async_http_in_process(app),
        )
        client._connection.is_own = True
        return client

    async def send(
        self,
        endpoint: Endpoint[AnswerT],
        fields: Mapping[str, Any],
        *,
        content: str | bytes | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> AnswerT:
        """Send a call, again where that may help; give its answer, or raise a HalfangleError.

        `timeout_seconds` bounds it from its turn on.
        """
        async with self._turns:
            call = Conversation(
                self._manners, endpoint, fields, content, timeout_seconds, request_id
            )
            outcome = await self._exchanged(call)
        return call.answer(outcome)

    async def send_rows(
        self, asked: Sequence[Asked[AnswerT]], *, timeout_seconds: float | None = None
    ) -> Answered[AnswerT]:
        """Send rows as one batch, again where that may help; give what came of each.

        `timeout_seconds` bounds them all together from their turn on. `map` is the way to use it.
        """
        async with self._turns:
            chunk = Chunk(self._manners, asked, timeout_seconds)
            await self._exchanged(chunk)
        return chunk.answered

    async def _exchanged(self, call: Conversation[Any] | Chunk[Any]) -> Reply | Fault:
        """Exchange a message, again as long as that may help; give the outcome that stands."""
        while True:
            outcome = await self._connection.exchange(call.address, call.message, call.seconds_left)
            pause = call.pause_after(outcome)
            if pause is None:
                return outcome
            await asyncio.sleep(pause)

    async def call(
        self,
        name: str,
        request: Mapping[str, Any],
        *,
        content: str | bytes | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> Any:
        """Make a call by its dotted name with JSON data (`"sine.setting", {"units": …}`).

        The answer is JSON data too. Raises KeyError for a name that this release does not know.
        """
        untyped = ENDPOINTS[name].untyped()
        body = await self.send(
            untyped,
            request,
            content=content,
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )
        return data_of(ENDPOINTS[name], body)

    @overload
    async def map(
        self,
        call: Callable[..., Coroutine[Any, Any, AnswerT]],
        rows: Iterable[Mapping[str, Any]],
        *,
        progress: Callable[[int, int], object] | None = None,
        into: Outcomes[AnswerT] | None = None,
        timeout_seconds: float | None = None,
    ) -> Outcomes[AnswerT]: ...
    @overload
    async def map(
        self,
        call: str,
        rows: Iterable[Mapping[str, Any]],
        *,
        progress: Callable[[int, int], object] | None = None,
        into: Outcomes[Any] | None = None,
        timeout_seconds: float | None = None,
    ) -> Outcomes[Any]: ...

    async def map(
        self,
        call: Callable[..., Coroutine[Any, Any, AnswerT]] | str,
        rows: Iterable[Mapping[str, Any]],
        *,
        progress: Callable[[int, int], object] | None = None,
        into: Outcomes[Any] | None = None,
        timeout_seconds: float | None = None,
    ) -> Outcomes[Any]:
        """Answer each row by one call; give one answer or one error a row, in order of the rows.

        `call` is a call of this client (`client.sine.setting`, which types the answers) or its
        dotted name (`"sine.setting"`); a row holds its request by the names of the fields. A row
        that is refused, or gets no answer, is a HalfangleError in its place; none is raised for a
        row. `progress` is called with the rows done and all rows after each.

        Where the service takes batches, many rows go in one request, as many as take it a quarter
        of a second; `calls_at_once` of the client are under way at most. `timeout_seconds` bounds
        each request from its turn on; what did not come within it is called row by row.

        Cancelled, it cancels what is under way. Outcomes given as `into` hold what was done by
        then; rows without an outcome hold NotCalled.

        Raises:
            KeyError: `call` is no call that this release knows.
            asyncio.CancelledError: it was cancelled.
        """
        return await map_async(
            self,
            endpoint_of(call, ENDPOINTS),
            rows,
            calls_at_once=self._manners.calls_at_once,
            progress=progress,
            into=into,
            timeout_seconds=timeout_seconds,
        )

    def table(
        self,
        operation: Callable[..., object] | str,
        source: TableSource,
        *,
        columns: Sequence[str] = (),
        keep: Sequence[str] = (),
        delimiter: str = ",",
        decimal: str = ".",
        list_separator: str = ";",
        timeout_seconds: float | None = None,
        **fields: Any,
    ) -> AsyncIterator[bytes]:
        """Answer a table: CSV in, the same rows with their results out, in pieces as they come.

        `operation` is a call of this client, or its dotted name. `source` is the table as bytes,
        the path of its file, an open file, or its bytes in pieces; its first line names the fields
        of the request, and `fields` are those that all rows have alike. `columns` are the results
        that are wanted (all: `()`), `keep` columns to carry along unread, `("*",)` all of them.
        `delimiter` (`","`, `";"`, `"tab"`) and `decimal` (`"."`, `","`) say how it is written. A
        row that is refused, or whose answer says stop, has the reason in its column `problem`.
        `timeout_seconds` bounds each piece of some thousand rows (fifty of what takes longer).

        Raises, as the first piece is asked for:
            KeyError: `operation` is no call that this release knows.
            HalfangleError: the table is refused, or a piece of it has no answer.
        """
        query = table_query(
            fields,
            columns=columns,
            keep=keep,
            delimiter=delimiter,
            decimal=decimal,
            list_separator=list_separator,
        )
        endpoint = table_endpoint(endpoint_of(operation, ENDPOINTS), query)
        return table_rows_async(self, endpoint, source, query, timeout_seconds)

    @overload
    def stream(
        self,
        call: Callable[..., Coroutine[Any, Any, AnswerT]],
        rows: Iterable[Mapping[str, Any]],
        *,
        timeout_seconds: float | None = None,
    ) -> AsyncIterator[AnswerT | HalfangleError]: ...
    @overload
    def stream(
        self,
        call: str,
        rows: Iterable[Mapping[str, Any]],
        *,
        timeout_seconds: float | None = None,
    ) -> AsyncIterator[Any | HalfangleError]: ...

    def stream(
        self,
        call: Callable[..., Coroutine[Any, Any, AnswerT]] | str,
        rows: Iterable[Mapping[str, Any]],
        *,
        timeout_seconds: float | None = None,
    ) -> AsyncIterator[Any | HalfangleError]:
        """Give what came of each row as `map` does, one after another while the others are sent.

        For rows without end: they are taken as they are needed, in this task, and some thousands
        are held at most. Closing the iterator ends the work.

        Raises:
            KeyError: `call` is no call that this release knows.
        """
        return stream_async(
            self,
            endpoint_of(call, ENDPOINTS),
            rows,
            calls_at_once=self._manners.calls_at_once,
            timeout_seconds=timeout_seconds,
        )

    async def batch(
        self,
        rows: Iterable[Mapping[str, Any]],
        *,
        progress: Callable[[int, int], object] | None = None,
        into: BatchOutcomes | None = None,
        timeout_seconds: float | None = None,
    ) -> BatchOutcomes:
        """Answer rows of any operations, each `{"ref": …, "operation": …, "request": {…}}`.

        `ref` is the caller's name of the row, a text or a whole number, given once; `operation` a
        name such as `"sine.setting"`. All else is as for `map`; `outcomes.by_ref["T-0001"]` is what
        came of a row, `outcomes.counts` how the rows ended, `outcomes.stops` what must not be run.
        """
        return await batch_async(
            self,
            ENDPOINTS,
            rows,
            calls_at_once=self._manners.calls_at_once,
            progress=progress,
            into=into,
            timeout_seconds=timeout_seconds,
        )

    async def is_ready(self) -> bool:
        """Whether the service is there and ready."""
        try:
            await self.send(READY, {}, timeout_seconds=3.0)
        except (ConnectionFailed, ProblemError):
            return False
        return True

    async def close(self) -> None:
        """Close the connections that this client opened."""
        await self._connection.close()

    async def __aenter__(self) -> Self:
        return self

    async def __aexit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        traceback: TracebackType | None,
    ) -> None:
        await self.close()
