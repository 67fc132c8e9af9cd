"""Asks for the rows, a part at a time, and writes the file once all of them are done."""

import json
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any

from halfangle_client.endpoint import Endpoint
from halfangle_client.errors import HalfangleError, NotCalled, ProblemError, TimedOut, Unsendable
from halfangle_client.fill.books import content_of, kind_of, open_book
from halfangle_client.fill.books.cells import Value
from halfangle_client.fill.books.form import Book
from halfangle_client.fill.errors import FileRefused, FillError, FillInterrupted, NotFinished
from halfangle_client.fill.headers import Labels
from halfangle_client.fill.journal import Done, Journal, key_of
from halfangle_client.fill.mapping import FillMap
from halfangle_client.fill.results import outcome_of
from halfangle_client.fill.saving import require_apart, save_whole, side_file_of
from halfangle_client.fill.settled import Settled, operation_of, settle
from halfangle_client.rows import Outcomes
from halfangle_client.rows.keeping import Progress

if TYPE_CHECKING:
    from halfangle_client import Halfangle

ANSWERED, CAUTIONED, STOPPED, REFUSED = "answered", "cautioned", "stopped", "refused"
#: Rows asked for between two writings of the side file.
_PART, _HEAVY_PART = 4000, 100
_STALE = "a side file that stood there was of another input, map or release: all rows were asked."
#: Refusals that are of the request itself, and would come again.
_OF_THE_ROW = frozenset({400, 413, 422})


@dataclass(frozen=True, slots=True)
class Filled:
    """What came of a file: how many rows of each kind, and what could not be kept.

    `answered` rows include those that say `stopped` or `cautioned`; `refused` rows have no values,
    their problem says why; `resumed` rows stood in the side file of a run that broke off.
    """

    path: Path
    rows: int
    answered: int
    cautioned: int
    stopped: int
    refused: int
    resumed: int
    notes: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Tried:
    """One row of a try: its number, and what would be written."""

    row: int
    outcome: Done


class Filling:
    """A file ready to be filled: all that can be settled without asking for a row is.

    Raises FileRefused, MapRefused, or the errors of a call that got no answer.
    """

    def __init__(
        self,
        client: "Halfangle",
        source: Path,
        target: Path,
        said: FillMap,
        *,
        overwrite: bool = False,
    ) -> None:
        self._client, self._source, self._target = client, source, target
        self._overwrite = overwrite
        require_kinds(source, target)
        require_apart(source, target, overwrite=overwrite)
        self._content = content_of(source)
        operation = operation_of(said)
        self._book: Book = open_book(
            source, self._content, delimiter=said.delimiter, decimal=said.decimal
        )
        self.settled: Settled = settle(
            source.name, self._book, said, Labels(_document(client, "/glossary.json"))
        )
        found = _document(client, f"/v1/operations/{operation.name.replace('-', '_')}")
        self._release: str = found["basis"]["release"]

    @property
    def notes(self) -> list[str]:
        """What filling cannot keep, and what is worth knowing before."""
        return list(self.settled.notes)

    def tried(self, count: int) -> list[Tried]:
        """The outcomes of the first rows; nothing is written."""
        rows = sorted({*self.settled.requests, *self.settled.unreadable})[:count]
        unread = {row: why for row, why in self.settled.unreadable.items() if row in rows}
        asked = [row for row in rows if row in self.settled.requests]
        done, left = self._kept(asked, self._called(asked, None))
        if left:
            raise next(iter(left.values()))
        done |= {row: self._unreadable(why) for row, why in unread.items()}
        return [Tried(row, done[row]) for row in rows]

    def run(self, progress: Progress | None = None) -> Filled:
        """Ask for every row that is not done yet, then write the file.

        Raises:
            NotFinished: some rows got no answer; the next run asks for these alone.
            NotWritten: a file could not be written.
            FillInterrupted: by Ctrl-C.
        """
        journal = Journal(side_file_of(self._target), self._key())
        journal.open()
        try:
            resumed = len(journal.done)
            self._ask(journal, progress)
            self._write(journal)
        except KeyboardInterrupt as interrupt:
            raise FillInterrupted(
                f"stopped: {self._so_far(journal)}; the same command goes on from there."
            ) from interrupt
        finally:
            journal.close()
        journal.remove()
        return self._filled(journal, resumed)

    def _ask(self, journal: Journal, progress: Progress | None) -> None:
        todo = [row for row in self.settled.requests if row not in journal.done]
        total = len(self.settled.requests)
        late: dict[int, HalfangleError] = {}
        for part in _parts(todo, _HEAVY_PART if self.settled.operation.heavy else _PART):
            before = len(journal.done)
            outcomes: Outcomes[Any] = Outcomes()
            try:
                self._called(part, outcomes, _shifted(progress, before, total))
            finally:
                done, left = self._kept(part, outcomes)
                journal.keep(done)
            late |= {row: error for row, error in left.items() if isinstance(error, TimedOut)}
            failed = {row: error for row, error in left.items() if row not in late}
            if failed:
                raise self._unfinished(failed, journal)
        if late:
            raise self._unfinished(late, journal)

    def _called(
        self, rows: Sequence[int], into: Outcomes[Any] | None, progress: Progress | None = None
    ) -> Outcomes[Any]:
        requests = [self.settled.requests[row] for row in rows]
        name = self.settled.operation.name
        return self._client.map(name, requests, progress=progress, into=into)

    def _kept(
        self, rows: Sequence[int], outcomes: Iterable[Any]
    ) -> tuple[dict[int, Done], dict[int, HalfangleError]]:
        """What came of rows, and those that got no answer with the reason."""
        done: dict[int, Done] = {}
        left: dict[int, HalfangleError] = {}
        for row, outcome in zip(rows, outcomes, strict=False):
            if not isinstance(outcome, HalfangleError):
                done[row] = self._answered(outcome)
            elif isinstance(outcome, ProblemError) and outcome.status in _OF_THE_ROW:
                done[row] = self._unreadable(outcome.detail)
            elif isinstance(outcome, Unsendable):
                done[row] = self._unreadable(str(outcome))
            else:
                left[row] = outcome
        return done, left

    def _answered(self, answer: Any) -> Done:
        if answer.basis.release != self._release:
            raise FillError(
                f"answers are of release {answer.basis.release} and of {self._release}: let all "
                "services be of one release, and run the same command again."
            )
        values, advised, problem = outcome_of(answer, self.settled.wanted)
        severities = {advisory.severity for advisory in answer.advisories}
        kind = CAUTIONED if "caution" in severities else ANSWERED
        return Done(tuple(values), advised, problem, STOPPED if problem else kind)

    def _unreadable(self, why: str) -> Done:
        return Done((None,) * len(self.settled.wanted), "", why, REFUSED)

    def _unfinished(self, left: Mapping[int, HalfangleError], journal: Journal) -> NotFinished:
        told = {row: error for row, error in left.items() if not isinstance(error, NotCalled)}
        row, error = next(iter((told or left).items()))
        return NotFinished(
            f"{len(left)} rows got no answer, as row {row}: {error} {self._so_far(journal)}; the "
            "same command goes on from there."
        )

    def _so_far(self, journal: Journal) -> str:
        return (
            f"{len(journal.done)} of {len(self.settled.requests)} rows are done and stand in "
            f"{journal.path.name}"
        )

    def _write(self, journal: Journal) -> None:
        done = {row: journal.done[row] for row in self.settled.requests}
        done |= {row: self._unreadable(why) for row, why in self.settled.unreadable.items()}
        values = {row: _cells_of(done[row]) for row in sorted(done)}
        self.settled.sheet.put(self.settled.written, self.settled.header_row, values)
        save_whole(self._source, self._target, self._book.save, overwrite=self._overwrite)

    def _key(self) -> str:
        settled = self.settled
        of = {
            "operation": settled.operation.name,
            "requests": settled.requests,
            "results": [one.path for one in settled.wanted],
        }
        return key_of(self._content, json.dumps(of, sort_keys=True), self._release)

    def _filled(self, journal: Journal, resumed: int) -> Filled:
        kinds = [done.kind for row, done in journal.done.items() if row in self.settled.requests]
        unread = len(self.settled.unreadable)
        return Filled(
            path=self._target,
            rows=self.settled.count,
            answered=len(kinds) - kinds.count(REFUSED),
            cautioned=kinds.count(CAUTIONED),
            stopped=kinds.count(STOPPED),
            refused=kinds.count(REFUSED) + unread,
            resumed=resumed,
            notes=(*self.settled.notes, *([_STALE] if journal.was_stale else [])),
        )


def require_kinds(source: Path, target: Path) -> None:
    """Refuse an output of another kind than the input. Raises FileRefused."""
    if kind_of(source) != kind_of(target):
        raise FileRefused(
            f"{target.name}: the output is of the input's kind, {kind_of(source)}: nothing is "
            "converted."
        )


def _document(client: "Halfangle", path: str) -> Any:
    """A document of the service, as JSON data; asked by its path, as it has no model."""
    return json.loads(client.send(Endpoint("document", "GET", path, bytes), {}))


def _cells_of(done: Done) -> list[Value]:
    return [*done.values, done.advisories or None, done.problem or None]


def _parts(rows: Sequence[int], size: int) -> Iterator[Sequence[int]]:
    return (rows[first : first + size] for first in range(0, len(rows), size))


def _shifted(progress: Progress | None, before: int, total: int) -> Progress | None:
    """Progress of a part as that of the whole."""
    return None if progress is None else lambda done, _: progress(before + done, total)
