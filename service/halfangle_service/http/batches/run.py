"""Rows of a batch, answered one after another between the requests of others."""

from collections.abc import Callable, Mapping
from dataclasses import asdict, dataclass
from functools import partial

from pydantic_core import to_json

from halfangle_service.http.answers import severities
from halfangle_service.http.batches.lines import Line
from halfangle_service.http.batches.model import BATCHES_PATH
from halfangle_service.http.batches.rows import (
    Ref,
    Refs,
    Row,
    WrongRow,
    row_of_line,
)
from halfangle_service.http.problems import ProblemError, problem_body
from halfangle_service.http.repeated import named_twice
from halfangle_service.http.streams.rows import (
    AnyOperation,
    answer_of_row,
    names_no_operation,
)
from halfangle_service.http.streams.sender import Sender
from halfangle_service.http.streams.turns import Turn

#: References of so many rows are kept to find one that comes twice.
REFS_KEPT = 100_000
_STOP, _CAUTION = "stop", "caution"


@dataclass(slots=True)
class Counts:
    """How the rows of a batch ended, and in how many an answer says stop or caution."""

    rows: int = 0
    ok: int = 0
    refused: int = 0
    with_stop: int = 0
    with_caution: int = 0

    def as_json(self) -> bytes:
        """The counts as JSON."""
        return to_json(asdict(self))


class Batch:
    """Answers rows in order, each with its answer or its problem; one bad row spoils no other."""

    def __init__(self, operations: Mapping[str, AnyOperation], sender: Sender) -> None:
        self._operations = operations
        self._sender = sender
        self._refs = Refs(REFS_KEPT)
        self._turn = Turn()
        self.counts = Counts()

    async def answer_line(self, line: Line) -> bytes:
        """Answer a row that came as a line."""
        return await self.answer_row(partial(row_of_line, line))

    async def answer_row(self, read: Callable[[], Row]) -> bytes:
        """Answer a row; `read` gives it, or raises WrongRow."""
        try:
            row = read()
            try:
                return await self._answered(row)
            except ProblemError as error:
                return self._refused(row.ref, self._path(row), error)
        except WrongRow as wrong:
            return self._refused(wrong.ref, BATCHES_PATH, wrong.problem)

    def _path(self, row: Row) -> str:
        return self._operations[row.operation].path

    async def _answered(self, row: Row) -> bytes:
        """Answer a row; raises ProblemError where its request is refused, else WrongRow."""
        await self._turn.give_way()
        operation = self._operations.get(row.operation)
        if operation is None:
            raise WrongRow(row.ref, _unknown(row.operation, self._operations))
        if row.ref in self._refs:
            raise WrongRow(row.ref, _repeated(row.ref))
        if row.repeated is not None:
            raise named_twice(row.repeated)
        answer = await answer_of_row(operation, row.request, self._sender.calculate)
        self._refs.note(row.ref)
        found = severities(answer)
        self.counts.rows += 1
        self.counts.ok += 1
        self._sender.note()
        self.counts.with_stop += _STOP in found
        self.counts.with_caution += _CAUTION in found
        return b'{"row":%d,"ref":%b,"status":"ok","stops":%d,"cautions":%d,"answer":%b}' % (
            self.counts.rows,
            to_json(row.ref),
            found.count(_STOP),
            found.count(_CAUTION),
            answer,
        )

    def _refused(self, ref: Ref | None, path: str, error: ProblemError) -> bytes:
        """Write a refusal; its pointers lead into what the path names: a request, or the row."""
        if error.name == "stopping":
            # No row after it would be answered either.
            raise error
        if ref is not None:
            self._refs.note(ref)
        self.counts.rows += 1
        self.counts.refused += 1
        self._sender.note(error.name)
        _, problem = problem_body(error, path)
        return b'{"row":%d,"ref":%b,"status":"refused","problem":%b}' % (
            self.counts.rows,
            to_json(ref),
            problem,
        )


def _unknown(name: str, operations: Mapping[str, AnyOperation]) -> ProblemError:
    message = names_no_operation(name, operations)
    return ProblemError(
        "not-found",
        f"/operation: {name[:80]!r} {message}",
        errors=[{"pointer": "/operation", "message": message}],
    )


def _repeated(ref: Ref) -> ProblemError:
    message = "came with an earlier row; which of the two is meant cannot be told"
    return ProblemError(
        "invalid-request",
        f"/ref: {str(ref)[:80]!r} {message}.",
        errors=[{"pointer": "/ref", "message": message}],
    )
