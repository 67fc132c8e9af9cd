"""What is left to do of many rows: cut into jobs, as long as was learnt of those before."""

from collections import deque
from collections.abc import Iterable, Iterator, Sequence
from typing import Generic

from halfangle_client.endpoint import AnswerT
from halfangle_client.errors import HalfangleError
from halfangle_client.rows.asked import Asked
from halfangle_client.rows.chunk import Answered, Ended

Job = Sequence[Asked[AnswerT]]

#: A chunk is to take so long, so that progress is seen and little is done twice where one breaks.
_CHUNK_SECONDS = 0.25
_MOST_ROWS = 256
#: Rows of the first chunks, before anything is known of them.
_FIRST_ROWS = 32
#: Of a body no longer than this all is taken before any of its answers is read, so that it may be
#: sent whole. A longer row goes by itself.
_CHUNK_BYTES = 64 * 1024
#: Rows taken beyond the oldest that has no outcome yet, where outcomes are handed on in order.
ROWS_AHEAD = 4096


class Work(Generic[AnswerT]):
    """Rows that are asked, a job at a time.

    A job of one row is a call by itself. No more than `ahead` rows are taken beyond those that
    were handed on (`handed_on`), so that of any number of rows few are held.
    """

    def __init__(self, asked: Iterator[Asked[AnswerT]], ahead: int | None = None) -> None:
        self._asked = asked
        self._ahead = ahead
        self._next: Asked[AnswerT] | None = next(asked, None)
        self._alone: deque[Asked[AnswerT]] = deque()
        self._row_seconds: float | None = None
        self._most_rows = _MOST_ROWS
        self._takes_batches = True
        self.handed_on: int = 0

    def next_job(self) -> Job[AnswerT]:
        """The next rows to send together; none where there are no more, or not yet."""
        if self._alone:
            return [self._alone.popleft()]
        job: list[Asked[AnswerT]] = []
        size = 0
        while self._next is not None and not self._is_far(self._next):
            size += len(self._next.line)
            if job and (size > _CHUNK_BYTES or not self._next.line):
                break
            job.append(self._next)
            self._next = next(self._asked, None)
            if len(job) >= self._rows_together(job[0]) or not job[0].line:
                break
        return job

    def ended(self, job: Job[AnswerT], answered: Answered[AnswerT]) -> Sequence[Ended[AnswerT]]:
        """Learn of a job that is done; give what came of its rows, but of those sent again."""
        self._takes_batches &= answered.takes_batches
        self._alone.extend(answered.alone)
        if answered.seconds > 0.0:
            self._row_seconds = answered.seconds / len(job)
        if len(answered.alone) * 2 > len(job):
            # Too long an answer, or rows that a batch does not take: many together are no gain.
            self._most_rows = max(1, len(job) // 2)
        else:
            self._most_rows = min(_MOST_ROWS, self._most_rows * 2)
        return answered.ended

    def _is_far(self, asked: Asked[AnswerT]) -> bool:
        return self._ahead is not None and asked.number >= self.handed_on + self._ahead

    def _rows_together(self, first: Asked[AnswerT]) -> int:
        if not self._takes_batches:
            return 1
        if self._row_seconds is None:
            return 1 if first.endpoint.heavy else min(_FIRST_ROWS, self._most_rows)
        return max(1, min(self._most_rows, int(_CHUNK_SECONDS / self._row_seconds)))


class InOrder(Generic[AnswerT]):
    """Outcomes put in the order of their rows.

    >>> order = InOrder()
    >>> [*order.of([(1, "b")])], [*order.of([(0, "a"), (2, "c")])], order.handed_on
    ([], ['a', 'b', 'c'], 3)
    """

    def __init__(self) -> None:
        self._held: dict[int, AnswerT | HalfangleError] = {}
        self.handed_on: int = 0

    def of(self, ended: Iterable[Ended[AnswerT]]) -> list[AnswerT | HalfangleError]:
        """Give the outcomes whose turn has come with these."""
        self._held.update(ended)
        found = []
        while self.handed_on in self._held:
            found.append(self._held.pop(self.handed_on))
            self.handed_on += 1
        return found
