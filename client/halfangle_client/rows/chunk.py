"""Some rows sent as one batch: what to send, what came of each row, which rows to send again.

A chunk is a calculation and nothing is stored, so that its rows may be sent again, to another
address too: the rows alone of which no answer came.
"""

import uuid
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any, Generic

from halfangle_client.conversation import Fault, Manners, Tries, seconds_of
from halfangle_client.endpoint import AnswerT, Message, Reply
from halfangle_client.errors import HalfangleError, ProblemError, error_of
from halfangle_client.reading import problem_of
from halfangle_client.retry import is_overloaded
from halfangle_client.rows.asked import Asked

PATH = "/v1/batches"
_LINES = "application/x-ndjson"
#: What says that there are no batches there, whatever the rows.
_NO_BATCHES = frozenset({404, 405, 501})

Ended = tuple[int, AnswerT | HalfangleError]


@dataclass(frozen=True, slots=True)
class Answered(Generic[AnswerT]):
    """What came of some rows, and which of them are to be called each by itself."""

    ended: Sequence[Ended[AnswerT]]
    alone: Sequence[Asked[AnswerT]] = ()
    seconds: float = 0.0
    takes_batches: bool = True


class Chunk(Generic[AnswerT]):
    """Rows of one batch from the first try to the outcome that stands, without the sending itself.

    Its time runs from here, when its turn has come.
    """

    def __init__(
        self, manners: Manners, asked: Sequence[Asked[AnswerT]], timeout_seconds: float | None
    ) -> None:
        from halfangle_client.rows.lines import line_model_of  # noqa: PLC0415 -- slow to load

        # Before the time begins, as for a call.
        self._model_of = {one.endpoint.answer: line_model_of(one.endpoint) for one in asked}
        self._left = list(asked)
        self._ended: list[Ended[AnswerT]] = []
        self._alone: list[Asked[AnswerT]] = []
        self._takes_batches = True
        self._sent_as = uuid.uuid4().hex
        heavy = any(one.endpoint.heavy for one in asked)
        self._tries = Tries(manners, seconds_of(manners, timeout_seconds, heavy=heavy))

    @property
    def message(self) -> Message:
        """The rows of which nothing came yet, as a request."""
        headers = {
            "Accept": f"{_LINES}, application/problem+json",
            "Content-Type": _LINES,
            "X-Request-ID": self._sent_as,
        }
        body = b"".join(one.line for one in self._left)
        return Message("POST", PATH, {}, headers, body)

    @property
    def address(self) -> str:
        """Where the next try goes."""
        return self._tries.address

    @property
    def seconds_left(self) -> float:
        """How much of the chunk's time is left."""
        return self._tries.seconds_left

    def pause_after(self, outcome: Reply | Fault) -> float | None:
        """Seconds until what is left is sent again; None where nothing is, or it has no use."""
        left = len(self._left)
        outcome = self._read(outcome)
        if len(self._left) < left:
            self._tries.begin_anew()
        pause = self._tries.pause_after(outcome)
        if pause is None or not self._left:
            self._settle(outcome)
            return None
        return pause

    @property
    def answered(self) -> Answered[AnswerT]:
        """What came of the rows."""
        seconds = self._tries.seconds - self._tries.seconds_left
        return Answered(self._ended, self._alone, seconds, self._takes_batches)

    def _read(self, outcome: Reply | Fault) -> Reply | Fault:
        """Take the rows that came; a reply that ends before the last of them is a fault."""
        reply = outcome if isinstance(outcome, Reply) else outcome.part
        if reply is None or reply.status != 200:
            return outcome
        last = self._take(reply)
        if isinstance(outcome, Fault) or not self._left:
            return outcome
        error: Exception = ConnectionError("the answer was cut off")
        if last is not None and last.problem is not None:
            error = self._error(last.problem, reply, self._left[0])
        elif last is not None:
            # All was said, and of these rows nothing.
            return outcome
        return Fault(error, late=False, worth_another_try=True)

    def _take(self, reply: Reply) -> Any:
        """Take the rows of a reply, which come in order; give its last line, None without one."""
        rows = iter(self._left)
        *lines, _ = reply.body.split(b"\n")
        read = 0
        last = None
        for line in lines:
            asked = next(rows, self._left[-1])
            try:
                said = self._model_of[asked.endpoint.answer].model_validate_json(line)
            except ValueError:
                said = None
            if said is not None and said.counts is not None:
                last = said
                break
            if read < len(self._left):
                self._put(asked, said, reply)
            read += 1
        self._left = self._left[read:]
        return last

    def _put(self, asked: Asked[AnswerT], said: Any, reply: Reply) -> None:
        """Keep what is said of a row; what cannot be read, its call by itself will tell."""
        if said is None or said.ref != asked.number:
            self._alone.append(asked)
        elif said.answer is not None:
            self._ended.append((asked.number, said.answer))
        elif said.problem is not None and said.problem.instance != PATH:
            self._ended.append((asked.number, self._error(said.problem, reply, asked)))
        else:
            self._alone.append(asked)

    def _error(self, problem: Any, reply: Reply, asked: Asked[AnswerT]) -> ProblemError:
        """The error that a row's own call would have met."""
        if problem.instance == PATH:
            problem = problem.model_copy(update={"instance": asked.endpoint.path})
        return error_of(problem, request_id=reply.headers.get("x-request-id", self._sent_as))

    def _settle(self, outcome: Reply | Fault) -> None:
        """Say what is to be done with the rows of which nothing came."""
        left, self._left = self._left, []
        error: HalfangleError | None = None
        if isinstance(outcome, Fault) and outcome.worth_another_try:
            error = (
                outcome.error
                if isinstance(outcome.error, ProblemError)
                else self._tries.failure(outcome, "batch", self._sent_as)
            )
        for one in left:
            if error is not None:
                self._ended.append((one.number, error))
            elif isinstance(outcome, Reply) and is_overloaded(outcome.status):
                self._ended.append((one.number, self._refusal(outcome, one)))
            else:
                self._alone.append(one)
        if isinstance(outcome, Reply) and outcome.status in _NO_BATCHES:
            self._takes_batches = False

    def _refusal(self, reply: Reply, asked: Asked[AnswerT]) -> ProblemError:
        """The error of a row whose whole batch was refused."""
        problem = problem_of(reply, asked.endpoint.path, self._sent_as).problem
        return self._error(problem, reply, asked)
