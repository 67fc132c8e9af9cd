"""The same call for many rows: one outcome a row, in the order of the rows."""

import asyncio
import contextvars
from collections.abc import Callable, Iterable, Mapping, Sequence
from queue import Empty, SimpleQueue
from threading import Event, Thread
from typing import Any, Generic, overload

from halfangle_client.endpoint import AnswerT, AsyncSender, Endpoint, Sender
from halfangle_client.errors import HalfangleError, NotCalled, Unsendable

Row = Mapping[str, Any]
Progress = Callable[[int, int], object]
_Ended = tuple[int, AnswerT | BaseException]


class Outcomes(Sequence[AnswerT | HalfangleError], Generic[AnswerT]):
    """What came of each row: its answer, or the error in place of it.

    `isinstance(outcome, HalfangleError)` tells the two apart. A row that was not called, or whose
    call had not ended when the work was stopped, holds NotCalled.
    """

    def __init__(self) -> None:
        self._outcomes: list[AnswerT | HalfangleError] = []

    @property
    def answers(self) -> list[AnswerT]:
        """The answers alone, in the order of their rows."""
        return [outcome for outcome in self if not isinstance(outcome, HalfangleError)]

    @property
    def errors(self) -> dict[int, HalfangleError]:
        """The errors by the number of their row, from 0."""
        return {n: one for n, one in enumerate(self) if isinstance(one, HalfangleError)}

    def begin(self, count: int) -> None:
        """Empty it, for so many rows."""
        self._outcomes[:] = [NotCalled("The call of this row was not made, or not ended.")] * count

    def put(self, number: int, outcome: AnswerT | HalfangleError) -> None:
        """Keep what came of a row."""
        self._outcomes[number] = outcome

    def __len__(self) -> int:
        return len(self._outcomes)

    @overload
    def __getitem__(self, index: int) -> AnswerT | HalfangleError: ...
    @overload
    def __getitem__(self, index: slice) -> list[AnswerT | HalfangleError]: ...
    def __getitem__(
        self, index: int | slice
    ) -> AnswerT | HalfangleError | list[AnswerT | HalfangleError]:
        return self._outcomes[index]

    def __repr__(self) -> str:
        return f"<{len(self)} rows: {len(self.answers)} answers, {len(self.errors)} errors>"


class Interrupted(KeyboardInterrupt):
    """Ctrl-C came between the first row and the last; `outcomes` hold what was done by then."""

    def __init__(self, outcomes: Outcomes[Any]) -> None:
        super().__init__(f"stopped by Ctrl-C: {outcomes!r}")
        self.outcomes = outcomes


def endpoint_of(call: object, endpoints: Mapping[str, Endpoint[Any]]) -> Endpoint[Any]:
    """Give the endpoint of a generated call, or of a dotted name. Raises KeyError."""
    if isinstance(call, str):
        name = call
    else:
        topic = str(getattr(call, "__module__", "")).rpartition(".")[2]
        name = f"{topic}.{getattr(call, '__name__', call)}"
    if name not in endpoints:
        raise KeyError(f"{name}: no call of the service that this release knows")
    return endpoints[name]


def call_rows(
    sender: Sender,
    endpoint: Endpoint[AnswerT],
    rows: Iterable[Row],
    *,
    calls_at_once: int,
    progress: Progress | None,
    into: Outcomes[AnswerT] | None,
    timeout_seconds: float | None,
) -> Outcomes[AnswerT]:
    """Call once for each row, some rows at a time, each in a thread. Raises Interrupted."""
    todo, outcomes = _begun(rows, into)
    numbers: SimpleQueue[int] = SimpleQueue()
    for number in range(len(todo)):
        numbers.put(number)
    ended: SimpleQueue[_Ended[AnswerT]] = SimpleQueue()
    stopped = Event()

    def work() -> None:
        while not stopped.is_set():
            try:
                number = numbers.get_nowait()
            except Empty:
                return
            try:
                fields = _fields(endpoint, todo[number])
                outcome: AnswerT | BaseException = sender.send(
                    endpoint, fields, timeout_seconds=timeout_seconds
                )
            except BaseException as error:
                outcome = error
            ended.put((number, outcome))

    for _ in range(min(calls_at_once, len(todo))):
        Thread(target=contextvars.copy_context().run, args=(work,), daemon=True).start()
    try:
        for done in range(1, len(todo) + 1):
            _keep(outcomes, *ended.get())
            if progress is not None:
                progress(done, len(todo))
    except KeyboardInterrupt as interrupt:
        raise Interrupted(outcomes) from interrupt
    finally:
        stopped.set()
        _keep_the_rest(outcomes, ended)
    return outcomes


async def call_rows_async(
    sender: AsyncSender,
    endpoint: Endpoint[AnswerT],
    rows: Iterable[Row],
    *,
    calls_at_once: int,
    progress: Progress | None,
    into: Outcomes[AnswerT] | None,
    timeout_seconds: float | None,
) -> Outcomes[AnswerT]:
    """Call once for each row, some rows at a time."""
    todo, outcomes = _begun(rows, into)
    numbers = iter(range(len(todo)))
    ended: asyncio.Queue[_Ended[AnswerT]] = asyncio.Queue()

    async def work() -> None:
        for number in numbers:
            try:
                fields = _fields(endpoint, todo[number])
                outcome: AnswerT | BaseException = await sender.send(
                    endpoint, fields, timeout_seconds=timeout_seconds
                )
            except Exception as error:
                outcome = error
            ended.put_nowait((number, outcome))

    workers = [asyncio.create_task(work()) for _ in range(min(calls_at_once, len(todo)))]
    try:
        for done in range(1, len(todo) + 1):
            _keep(outcomes, *await ended.get())
            if progress is not None:
                progress(done, len(todo))
    finally:
        for worker in workers:
            worker.cancel()
        await asyncio.gather(*workers, return_exceptions=True)
        _keep_the_rest(outcomes, ended)
    return outcomes


def _begun(
    rows: Iterable[Row], into: Outcomes[AnswerT] | None
) -> tuple[list[Row], Outcomes[AnswerT]]:
    todo = list(rows)
    outcomes = Outcomes[AnswerT]() if into is None else into
    outcomes.begin(len(todo))
    return todo, outcomes


def _fields(endpoint: Endpoint[Any], row: object) -> Row:
    if not isinstance(row, Mapping):
        raise Unsendable(f"{endpoint.name}: a row should be a mapping of fields, not {row!r:.60}")
    return row


def _keep(outcomes: Outcomes[AnswerT], number: int, outcome: AnswerT | BaseException) -> None:
    """Keep an outcome; what is none, a mistake in the call itself, is raised."""
    if isinstance(outcome, BaseException) and not isinstance(outcome, HalfangleError):
        raise outcome
    outcomes.put(number, outcome)


def _keep_the_rest(
    outcomes: Outcomes[AnswerT],
    ended: "SimpleQueue[_Ended[AnswerT]] | asyncio.Queue[_Ended[AnswerT]]",
) -> None:
    """Keep what had ended when the work was stopped."""
    while not ended.empty():
        number, outcome = ended.get_nowait()
        if isinstance(outcome, HalfangleError) or not isinstance(outcome, BaseException):
            outcomes.put(number, outcome)
