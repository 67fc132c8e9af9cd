"""A table, answered row by row between the requests of others while it arrives."""

import asyncio
from collections.abc import AsyncGenerator, AsyncIterator, Iterable, Sequence

from halfangle_service.http.problems import CallerGone, ProblemError, stopping
from halfangle_service.http.streams.arriving import Pieces
from halfangle_service.http.streams.rows import AnyOperation, answer_of_row
from halfangle_service.http.streams.sender import Sender
from halfangle_service.http.streams.sending import CutShort, together
from halfangle_service.http.streams.turns import Turn
from halfangle_service.http.tables.asked import request_fields
from halfangle_service.http.tables.cells import has_words
from halfangle_service.http.tables.declared import Declared
from halfangle_service.http.tables.fast import Answered, ColumnRows
from halfangle_service.http.tables.flat import ResultColumn
from halfangle_service.http.tables.header import BOM, Header, read_header
from halfangle_service.http.tables.records import Record, Records, Rows, TooLong
from halfangle_service.http.tables.rows import ResultCells, RowReader, WrongRow, problem_in_words

#: Rows that are answered as columns at once, and so few of them that no thread is worth its while.
_AT_ONCE, _FEW = 8_000, 250
_NO_TEXT = "\N{REPLACEMENT CHARACTER}"


class Table:
    """Answers the rows of one table, each in the place where it came."""

    def __init__(
        self,
        operation: AnyOperation,
        declared: Declared,
        header: Header,
        columns: Sequence[ResultColumn],
        sender: Sender,
    ) -> None:
        self._operation = operation
        self._header = header
        self._sender = sender
        self._rows = RowReader(declared.form, header, declared.alike)
        self._cells = ResultCells(declared.form, header, columns)
        self._columns = ColumnRows(
            operation, declared.form, header, declared.alike.value(), columns
        )
        self._turn = Turn()

    def head(self) -> bytes:
        """The header: as it came, and the columns that are added."""
        line = f"{self._header.text}{self._cells.heads()}{self._header.line_end}".encode()
        return BOM + line if self._header.has_bom else line

    async def answer(self, record: Record) -> bytes:
        """A row as it came with the cells of its answer, or of what is wrong with it."""
        await self._turn.give_way()
        if isinstance(record, TooLong):
            self._sender.note("content-too-large")
            return self._refused(self._rows.blank(), "the row is longer than one may be, left out")
        text, line_end, problem = _text(record)
        if not has_words(text):
            return record
        try:
            if problem:
                raise WrongRow(self._as_came(text), problem)
            request = self._rows.request(text)
            answer = await answer_of_row(self._operation, request, self._sender.calculate)
        except WrongRow as wrong:
            self._sender.note("invalid-request")
            return self._refused(wrong.shown, wrong.problem, line_end)
        except ProblemError as error:
            if error.name == "stopping":
                raise
            self._sender.note(error.name)
            return self._refused(text, problem_in_words(error), line_end)
        self._sender.note()
        return f"{text}{self._cells.answered(answer)}{line_end or self._header.line_end}".encode()

    def ended_early(self, error: ProblemError) -> bytes:
        """A last row that says why no further one was answered."""
        return self._refused(self._rows.blank(), f"the table ends here: {error.detail}")

    async def answer_all(self, rows: Rows, body: Pieces) -> AsyncIterator[bytes]:
        """Rows in order: as columns where that can be, the others one by one."""
        for part in rows.parts(_AT_ONCE):
            answered = await self._as_columns(part)
            if answered is None:
                for record in part.records():
                    yield await self.answer(record)
                    body.refuse_gone()
                continue
            found = answered.rows
            if self._sender.is_paced:
                async for row in self._at_pace(part, answered, body):
                    yield row
                continue
            count = len(found) - found.count(b"")
            self._sender.note_answered(count, answered.advice)
            if count < len(found):
                for place, record in enumerate(part.records()):
                    if not found[place]:
                        found[place] = await self.answer(record)
            yield b"".join(found)
            body.refuse_gone()
            await self._turn.give_way()

    async def _at_pace(self, part: Rows, answered: Answered, body: Pieces) -> AsyncIterator[bytes]:
        """Rows answered as columns, each when its turn comes: who waits for them sees them come."""
        self._sender.note_answered(0, answered.advice)
        for record, row in zip(part.records(), answered.rows, strict=True):
            if row:
                await self._sender.may_send()
                self._sender.note()
            yield row or await self.answer(record)
            body.refuse_gone()
            await self._turn.give_way()

    async def _as_columns(self, rows: Rows) -> Answered | None:
        """What can be answered as columns: many rows by a thread, as heavy work is done."""
        if not self._columns.serves or rows.count() < _FEW:
            return self._columns.answered(rows)
        return await self._sender.aside(self._columns.answered, rows)

    def is_too_wide(self, record: Record) -> bool:
        """True where a row has more cells than the header."""
        return not isinstance(record, TooLong) and self._rows.is_too_wide(_text(record)[0])

    def _as_came(self, text: str) -> str:
        try:
            self._rows.request(text)
        except WrongRow as wrong:
            return wrong.shown
        return text

    def _refused(self, shown: str, problem: str, line_end: str = "") -> bytes:
        end = line_end or self._header.line_end
        return f"{shown}{self._cells.refused(problem)}{end}".encode()


def _text(record: bytes) -> tuple[str, str, str]:
    """A record as text, its line end, and why it is none if it is not; signs are put in place."""
    problem = ""
    try:
        text = record.decode()
    except UnicodeDecodeError as error:
        problem = f"the row is not UTF-8: its byte {error.start + 1} cannot be read"
        text = record.decode(errors="replace")
    if "\0" in text:
        problem = problem or "the row holds a NUL"
        text = text.replace("\0", _NO_TEXT)
    line = text.removesuffix("\n").rstrip("\r")
    return line, text[len(line) :], problem


class Answering:
    """A table under way: its header first, then its rows while they arrive."""

    def __init__(
        self,
        operation: AnyOperation,
        declared: Declared,
        columns: Sequence[ResultColumn],
        sender: Sender,
        longest_record: int,
    ) -> None:
        self._operation = operation
        self._declared = declared
        self._columns = columns
        self._sender = sender
        self._records = Records(declared.form.between_cells, longest_record)

    async def pieces(self, body: Pieces) -> AsyncGenerator[bytes, None]:
        """The answered table in pieces.

        Raises ProblemError before the first of them where the header is refused; CutShort where the
        table ends before its last row.
        """
        arriving = self._arriving(body)
        header, *rows = await self._first(arriving)
        table = self._table(header)
        if self._declared.form.is_ambiguous:
            rows = rows or await anext(arriving, [])
            _refuse_ambiguous(table, rows)
        yield table.head()
        try:
            async for piece in together(_each(table, rows, body)):
                yield piece
            async for rows in arriving:
                async for piece in together(_each(table, rows, body)):
                    yield piece
            return
        except ProblemError as error:
            ended = error
        except CallerGone:
            return
        except asyncio.CancelledError:
            ended = stopping()
        yield table.ended_early(ended)
        raise CutShort

    async def _arriving(self, body: Pieces) -> AsyncIterator[list[Rows]]:
        async for chunk in body.chunks():
            rows = self._records.of(chunk) if chunk is not None else self._records.end()
            if rows:
                yield rows

    async def _first(self, arriving: AsyncIterator[list[Rows]]) -> tuple[Record, *tuple[Rows, ...]]:
        """The header, and the rows that came with it."""
        async for first, *rest in arriving:
            header, others = first.without_first()
            return header, *others, *rest
        raise ProblemError("invalid-request", "The table is empty: its first line names columns.")

    def _table(self, record: Record) -> Table:
        fields = request_fields(self._operation.request)
        header = read_header(record, self._declared, fields)
        return Table(self._operation, self._declared, header, self._columns, self._sender)


def _refuse_ambiguous(table: Table, rows: Sequence[Rows]) -> None:
    """Refuse a table whose decimal commas part its cells, as its first row shows."""
    if rows and table.is_too_wide(rows[0].records()[0]):
        message = (
            "is the decimal sign and stands between cells too, and the first row has more cells "
            "than the header: put its numbers in quotes, or declare `delimiter=;`"
        )
        errors = [{"pointer": "/delimiter", "message": message}]
        raise ProblemError("invalid-request", f"The comma {message}.", errors=errors)


async def _each(table: Table, rows: Iterable[Rows], body: Pieces) -> AsyncIterator[bytes]:
    """Answers of rows that are there."""
    for some in rows:
        async for answered in table.answer_all(some, body):
            yield answered
