"""Many rows sent by threads."""

import contextvars
import time
from collections.abc import Iterable, Iterator, Sequence
from queue import SimpleQueue
from threading import Event, Thread
from types import TracebackType
from typing import Any, Generic, Protocol, Self

from halfangle_client.endpoint import AnswerT, Endpoint, Sender
from halfangle_client.errors import HalfangleError
from halfangle_client.rows.asked import Asked, Endpoints, Row, asked_alike, asked_of_batch, ref_of
from halfangle_client.rows.chunk import Answered, Ended
from halfangle_client.rows.keeping import Keeping, Progress
from halfangle_client.rows.outcomes import BatchOutcomes, Interrupted, Outcomes
from halfangle_client.rows.work import ROWS_AHEAD, InOrder, Job, Work


class RowsSender(Sender, Protocol):
    """Whatever sends calls, and rows of one batch."""

    def send_rows(
        self, asked: Sequence[Asked[AnswerT]], *, timeout_seconds: float | None = None
    ) -> Answered[AnswerT]:
        """Send rows as one batch; give what came of each."""
        ...


class Threads(Generic[AnswerT]):
    """Jobs of some work sent by threads, so many at once; what ends is given as it ends."""

    def __init__(
        self,
        sender: RowsSender,
        work: Work[AnswerT],
        calls_at_once: int,
        timeout_seconds: float | None,
    ) -> None:
        self._sender = sender
        self._work = work
        self._calls_at_once = calls_at_once
        self._timeout_seconds = timeout_seconds
        self._todo: SimpleQueue[Job[AnswerT] | None] = SimpleQueue()
        self._done: SimpleQueue[tuple[Job[AnswerT], Answered[AnswerT] | BaseException]]
        self._done = SimpleQueue()
        self._stopped = Event()
        self._threads = 0
        self._under_way = 0

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        traceback: TracebackType | None,
    ) -> None:
        self._stopped.set()
        for _ in range(self._threads):
            self._todo.put(None)

    def __iter__(self) -> Iterator[Sequence[Ended[AnswerT]]]:
        """Give what came of rows, some at a time; a mistake in the calls themselves is raised."""
        while True:
            self._hand_out()
            if not self._under_way:
                return
            job, answered = self._done.get()
            self._under_way -= 1
            if isinstance(answered, BaseException):
                raise answered
            yield self._work.ended(job, answered)

    def rest(self) -> Iterator[Sequence[Ended[AnswerT]]]:
        """Give what had ended when the work was stopped."""
        while not self._done.empty():
            _, answered = self._done.get_nowait()
            if not isinstance(answered, BaseException):
                yield answered.ended

    def _hand_out(self) -> None:
        """Hand out jobs; one more for each thread than it has, so that none waits for this one."""
        while self._under_way < 2 * self._calls_at_once and (job := self._work.next_job()):
            self._todo.put(job)
            self._under_way += 1
            if self._threads < min(self._calls_at_once, self._under_way):
                run = contextvars.copy_context().run
                Thread(target=run, args=(self._send_all,), daemon=True).start()
                self._threads += 1

    def _send_all(self) -> None:
        while (job := self._todo.get()) is not None and not self._stopped.is_set():
            try:
                answered: Answered[AnswerT] | BaseException = self._answered(job)
            except BaseException as error:
                answered = error
            self._done.put((job, answered))

    def _answered(self, job: Job[AnswerT]) -> Answered[AnswerT]:
        if len(job) > 1:
            return self._sender.send_rows(job, timeout_seconds=self._timeout_seconds)
        (asked,) = job
        began = time.monotonic()
        outcome: AnswerT | HalfangleError
        try:
            if asked.error is not None:
                return Answered([(asked.number, asked.error)])
            outcome = self._sender.send(
                asked.endpoint, asked.fields, timeout_seconds=self._timeout_seconds
            )
        except HalfangleError as error:
            outcome = error
        return Answered([(asked.number, outcome)], seconds=time.monotonic() - began)


def map_rows(
    sender: RowsSender,
    endpoint: Endpoint[AnswerT],
    rows: Iterable[Row],
    *,
    calls_at_once: int,
    progress: Progress | None,
    into: Outcomes[AnswerT] | None,
    timeout_seconds: float | None,
) -> Outcomes[AnswerT]:
    """Give what came of each row of one call. Raises Interrupted."""
    todo = list(rows)
    outcomes = Outcomes[AnswerT]() if into is None else into
    outcomes.begin(len(todo))
    work = Work(asked_alike(endpoint, todo))
    threads = Threads(sender, work, calls_at_once, timeout_seconds)
    _keep_all(threads, Keeping(outcomes, progress))
    return outcomes


def batch(
    sender: RowsSender,
    endpoints: Endpoints,
    rows: Iterable[Row],
    *,
    calls_at_once: int,
    progress: Progress | None,
    into: BatchOutcomes | None,
    timeout_seconds: float | None,
) -> BatchOutcomes:
    """Give what came of each row of a batch. Raises Interrupted."""
    todo = list(rows)
    outcomes = BatchOutcomes() if into is None else into
    outcomes.begin_batch(map(ref_of, todo))
    work: Work[Any] = Work(asked_of_batch(todo, endpoints))
    threads = Threads(sender, work, calls_at_once, timeout_seconds)
    _keep_all(threads, Keeping(outcomes, progress))
    return outcomes


def stream(
    sender: RowsSender,
    endpoint: Endpoint[AnswerT],
    rows: Iterable[Row],
    *,
    calls_at_once: int,
    timeout_seconds: float | None,
) -> Iterator[AnswerT | HalfangleError]:
    """Give the outcome of each row in order; of any number of rows few are held."""
    work = Work(asked_alike(endpoint, rows), ROWS_AHEAD)
    order = InOrder[AnswerT]()
    with Threads(sender, work, calls_at_once, timeout_seconds) as threads:
        for ended in threads:
            found = order.of(ended)
            work.handed_on = order.handed_on
            yield from found


def _keep_all(threads: Threads[AnswerT], keeping: Keeping[AnswerT]) -> None:
    try:
        with threads:
            for ended in threads:
                keeping.keep(ended)
    except KeyboardInterrupt as interrupt:
        raise Interrupted(keeping.outcomes) from interrupt
    finally:
        for ended in threads.rest():
            keeping.keep_unsaid(ended)
