"""Many rows sent by tasks of one event loop."""

import asyncio
import time
from collections.abc import AsyncIterator, Iterable, Iterator, Sequence
from types import TracebackType
from typing import Any, Generic, Protocol, Self

from halfangle_client.endpoint import AnswerT, AsyncSender, Endpoint
from halfangle_client.errors import HalfangleError
from halfangle_client.rows.asked import Asked, Endpoints, Row, asked_alike, asked_of_batch, ref_of
from halfangle_client.rows.chunk import Answered, Ended
from halfangle_client.rows.keeping import Keeping, Progress
from halfangle_client.rows.outcomes import BatchOutcomes, Outcomes
from halfangle_client.rows.work import ROWS_AHEAD, InOrder, Job, Work


class AsyncRowsSender(AsyncSender, Protocol):
    """Whatever sends calls, and rows of one batch, to be awaited."""

    async def send_rows(
        self, asked: Sequence[Asked[AnswerT]], *, timeout_seconds: float | None = None
    ) -> Answered[AnswerT]:
        """Send rows as one batch; give what came of each."""
        ...


class Tasks(Generic[AnswerT]):
    """Jobs of some work, a task each, so many at once; what ends is given as it ends."""

    def __init__(
        self,
        sender: AsyncRowsSender,
        work: Work[AnswerT],
        calls_at_once: int,
        timeout_seconds: float | None,
    ) -> None:
        self._sender = sender
        self._work = work
        self._most = calls_at_once
        self._timeout_seconds = timeout_seconds
        self._done: asyncio.Queue[tuple[Job[AnswerT], Answered[AnswerT] | Exception]]
        self._done = asyncio.Queue()
        self._under_way: set[asyncio.Task[None]] = set()
        self._handed_out = 0

    async def __aenter__(self) -> Self:
        return self

    async def __aexit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        traceback: TracebackType | None,
    ) -> None:
        for task in self._under_way:
            task.cancel()
        await asyncio.gather(*self._under_way, return_exceptions=True)

    async def __aiter__(self) -> AsyncIterator[Sequence[Ended[AnswerT]]]:
        """Give what came of rows, some at a time; a mistake in the calls themselves is raised."""
        while True:
            while self._handed_out < self._most and (job := self._work.next_job()):
                task = asyncio.create_task(self._send(job))
                self._handed_out += 1
                self._under_way.add(task)
                task.add_done_callback(self._under_way.discard)
            if not self._handed_out:
                return
            job, answered = await self._done.get()
            self._handed_out -= 1
            if isinstance(answered, Exception):
                raise answered
            yield self._work.ended(job, answered)

    def rest(self) -> Iterator[Sequence[Ended[AnswerT]]]:
        """Give what had ended when the work was stopped."""
        while not self._done.empty():
            _, answered = self._done.get_nowait()
            if not isinstance(answered, Exception):
                yield answered.ended

    async def _send(self, job: Job[AnswerT]) -> None:
        try:
            answered: Answered[AnswerT] | Exception = await self._answered(job)
        except Exception as error:
            answered = error
        self._done.put_nowait((job, answered))

    async def _answered(self, job: Job[AnswerT]) -> Answered[AnswerT]:
        if len(job) > 1:
            return await self._sender.send_rows(job, timeout_seconds=self._timeout_seconds)
        (asked,) = job
        if asked.error is not None:
            return Answered([(asked.number, asked.error)])
        began = time.monotonic()
        outcome: AnswerT | HalfangleError
        try:
            outcome = await self._sender.send(
                asked.endpoint, asked.fields, timeout_seconds=self._timeout_seconds
            )
        except HalfangleError as error:
            outcome = error
        return Answered([(asked.number, outcome)], seconds=time.monotonic() - began)


async def map_async(
    sender: AsyncRowsSender,
    endpoint: Endpoint[AnswerT],
    rows: Iterable[Row],
    *,
    calls_at_once: int,
    progress: Progress | None,
    into: Outcomes[AnswerT] | None,
    timeout_seconds: float | None,
) -> Outcomes[AnswerT]:
    """Give what came of each row of one call."""
    todo = list(rows)
    outcomes = Outcomes[AnswerT]() if into is None else into
    outcomes.begin(len(todo))
    work = Work(asked_alike(endpoint, todo))
    tasks = Tasks(sender, work, calls_at_once, timeout_seconds)
    await _keep_all(tasks, Keeping(outcomes, progress))
    return outcomes


async def batch_async(
    sender: AsyncRowsSender,
    endpoints: Endpoints,
    rows: Iterable[Row],
    *,
    calls_at_once: int,
    progress: Progress | None,
    into: BatchOutcomes | None,
    timeout_seconds: float | None,
) -> BatchOutcomes:
    """Give what came of each row of a batch."""
    todo = list(rows)
    outcomes = BatchOutcomes() if into is None else into
    outcomes.begin_batch(map(ref_of, todo))
    work: Work[Any] = Work(asked_of_batch(todo, endpoints))
    tasks = Tasks(sender, work, calls_at_once, timeout_seconds)
    await _keep_all(tasks, Keeping(outcomes, progress))
    return outcomes


async def stream_async(
    sender: AsyncRowsSender,
    endpoint: Endpoint[AnswerT],
    rows: Iterable[Row],
    *,
    calls_at_once: int,
    timeout_seconds: float | None,
) -> AsyncIterator[AnswerT | HalfangleError]:
    """Give the outcome of each row in order; of any number of rows few are held."""
    work = Work(asked_alike(endpoint, rows), ROWS_AHEAD)
    order = InOrder[AnswerT]()
    async with Tasks(sender, work, calls_at_once, timeout_seconds) as tasks:
        async for ended in tasks:
            found = order.of(ended)
            work.handed_on = order.handed_on
            for outcome in found:
                yield outcome


async def _keep_all(tasks: Tasks[AnswerT], keeping: Keeping[AnswerT]) -> None:
    try:
        async with tasks:
            async for ended in tasks:
                keeping.keep(ended)
    finally:
        for ended in tasks.rest():
            keeping.keep_unsaid(ended)
