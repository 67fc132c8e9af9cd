"""Many rows at once, where the operation works out columns and the rows are written plainly."""

import csv
from collections import Counter
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from functools import partial
from typing import Any

import numpy as np
from numpy.typing import NDArray
from pydantic_core import from_json, to_json

from halfangle_service.columns import (
    EMPTY_LIST,
    AskedColumns,
    FlatField,
    columns_of,
    flat_fields,
    joint_of,
)
from halfangle_service.fields import ResultModel
from halfangle_service.http.streams.rows import AnyOperation
from halfangle_service.http.tables.asked import Asked
from halfangle_service.http.tables.cells import Writer, WrongCell, has_words, value_of
from halfangle_service.http.tables.flat import ResultColumn
from halfangle_service.http.tables.header import Header
from halfangle_service.http.tables.model import TableForm
from halfangle_service.http.tables.records import Block, Loose, Rows, TooLong

#: Fewer rows are answered one by one in less time.
_FEWEST_ROWS = 32
#: Stands for the value of a cell that cannot be read.
_WRONG = object()
_CAUTION = "caution"
Places = NDArray[np.intp]
_NUMBERS = frozenset({int, float})


@dataclass(frozen=True, slots=True)
class _Cells:
    """Rows with as many cells as the header, without their line ends, and which of all they are.

    `columns` are the cells of each column that is asked, with line feeds between.
    """

    places: Sequence[int]
    lines: Sequence[bytes]
    ends: Sequence[bytes]
    columns: Sequence[bytes]


@dataclass(frozen=True, slots=True)
class Answered:
    """Rows with their results, nothing for those that are left to the row form.

    `advice`: in how many of them each caution stands, by severity and code.
    """

    rows: list[bytes]
    advice: Mapping[tuple[str, str], int]


class ColumnRows:
    """Answers rows as columns; what it leaves is answered row by row."""

    def __init__(
        self,
        operation: AnyOperation,
        form: TableForm,
        header: Header,
        alike: Mapping[str, Any],
        columns: Sequence[ResultColumn],
    ) -> None:
        self._operation = operation
        self._form = form
        self._header = header
        self._alike = alike
        self._columns = columns
        result: type[ResultModel] = operation.result
        self._fields = flat_fields(result)
        self._names = [column.name for column in columns]
        self._writer = Writer(form)
        self._wide = len(header.names)
        self._between = form.between_cells.encode()
        self.serves = self._is_of_columns()

    def _is_of_columns(self) -> bool:
        """True where the operation, what is asked and what is wanted are of columns."""
        operation, asked = self._operation, self._header.asked
        single = all(len(field.path) == 1 and not field.is_list for _, field in asked)
        wanted = all(name in self._fields for name in self._names)
        return operation.columns and operation.heavy is False and bool(asked) and single and wanted

    def answered(self, rows: Rows) -> Answered | None:
        """The rows with their results; None where all are left to the row form."""
        cells = self._cells_of(rows) if self.serves else None
        if cells is None:
            return None
        written, fits, advice = self._results(cells)
        count = rows.count()
        if fits.all() and len(written) == count:
            return Answered(written, advice)
        found = [b""] * count
        for place, row, fit in zip(cells.places, written, fits.tolist(), strict=True):
            if fit:
                found[place] = row
        return Answered(found, advice)

    def _results(
        self, rows: _Cells
    ) -> tuple[list[bytes], NDArray[np.bool_], Mapping[tuple[str, str], int]]:
        """Each row with its results, which rows these fit, and what is advised in how many."""
        fits = np.ones(len(rows.lines), dtype=np.bool_)
        asked = {
            self._header.names[place]: self._column(rows.columns[at], field, fits)
            for at, (place, field) in enumerate(self._header.asked)
        }
        try:
            fields = AskedColumns(self._operation.request, {**self._alike, **asked})
        except ValueError:
            return [b""] * len(rows.lines), ~fits, {}
        answered = columns_of(self._operation, fields, self._names)
        fits &= ~answered.left & ~answered.stopped
        advised = _each_once(self._advice_cell, answered.words)
        results = [self._result_cells(name, answered.columns[name]) for name in self._names]
        cells = zip(rows.lines, *results, advised, rows.ends, strict=True)
        advice: Counter[tuple[str, str]] = Counter()
        counts = np.bincount(answered.advised_of[fits], minlength=len(answered.advised))
        for about, count in zip(answered.advised, counts.tolist(), strict=True):
            advice.update({one: count for one in about if one[0] == _CAUTION})
        return [*map(self._between.join, cells)], fits, advice

    def _cells_of(self, rows: Rows) -> _Cells | None:
        """Rows whose cells can be told apart at a glance; None where there are too few."""
        cells = self._of_block(rows.text) if isinstance(rows, Block) else self._of_loose(rows)
        return None if cells is None or len(cells.lines) < _FEWEST_ROWS else cells

    def _of_block(self, text: bytes) -> _Cells | None:
        """Rows without a quote; where one has other cells than the header, the others."""
        end = b"\r\n" if b"\r" in text else b"\n"
        if b"\0" in text or text.count(b"\r") != text.count(b"\r\n"):
            return None
        if not text.isascii() and not _is_utf_8(text):
            return None
        lines = text.split(end)
        if b"\n" in lines.pop() or (end != b"\n" and len(lines) != text.count(b"\n")):
            return None
        columns = self._even_columns(text, len(end))
        if columns is not None:
            return _Cells(range(len(lines)), lines, [end] * len(lines), columns)
        fit = [n for n, line in enumerate(lines) if self._has_cells(line)]
        cells = [lines[n].split(self._between) for n in fit]
        return self._fitting(fit, [lines[n] for n in fit], [end] * len(fit), cells)

    def _even_columns(self, text: bytes, end_size: int) -> list[bytes] | None:
        """The columns that are asked, where every line has as many cells as the header, and words.

        Cut out by their places: to make a text of each cell of a table takes twice as long.
        """
        if self._wide == 1 and (b"\n\n" in b"\n" + text or b"\n\r" in b"\n" + text):
            return None
        signs = np.frombuffer(text, dtype=np.uint8)
        marks = np.flatnonzero((signs == ord(b"\n")) | (signs == ord(self._between)))
        if len(marks) % self._wide:
            return None
        ends = marks.reshape(-1, self._wide)
        are_last = signs[ends] == ord(b"\n")
        if not are_last[:, -1].all() or are_last[:, :-1].any():
            return None
        starts = np.concatenate(([0], marks[:-1] + 1)).reshape(-1, self._wide)
        ends[:, -1] -= end_size - 1
        return [
            _cut_out(signs, starts[:, place], ends[:, place]) for place, _ in self._header.asked
        ]

    def _has_cells(self, line: bytes) -> bool:
        return line.count(self._between) == self._wide - 1 and has_words(line)

    def _of_loose(self, rows: Loose) -> _Cells | None:
        """Rows some of which are quoted, where all are well written."""
        whole = [record for record in rows.found if not isinstance(record, TooLong)]
        joined = b"".join(whole)
        if len(whole) < len(rows.found) or b"\0" in joined or not _is_utf_8(joined):
            return None
        lines = [record.removesuffix(b"\n").rstrip(b"\r") for record in whole]
        texts = [line.decode() for line in lines]
        try:
            read = [*csv.reader(texts, delimiter=self._form.between_cells, strict=True)]
        except (csv.Error, ValueError):
            return None
        if len(read) != len(texts):
            return None
        fit = [n for n, row in enumerate(read) if self._is_plain(row) and has_words(lines[n])]
        usual = self._header.line_end.encode()
        ends = [whole[n][len(lines[n]) :] or usual for n in fit]
        cells = [[cell.encode() for cell in read[n]] for n in fit]
        return self._fitting(fit, [lines[n] for n in fit], ends, cells)

    def _is_plain(self, cells: Sequence[str]) -> bool:
        asked = self._header.asked
        return len(cells) == self._wide and not any("\n" in cells[place] for place, _ in asked)

    def _fitting(
        self,
        places: Sequence[int],
        lines: Sequence[bytes],
        ends: Sequence[bytes],
        cells: Sequence[Sequence[bytes]],
    ) -> _Cells:
        asked = self._header.asked
        columns = [b"\n".join([row[place] for row in cells]) for place, _ in asked]
        return _Cells(places, lines, ends, columns)

    def _column(self, cells: bytes, field: Asked, fits: NDArray[np.bool_]) -> Any:
        """One column of the request; rows of which a cell cannot be read are noted in `fits`."""
        if "number" in field.types:
            numbers = self._numbers(cells, len(fits))
            if numbers is not None:
                return numbers
        known: dict[bytes, Any] = {}
        values = []
        for row, cell in enumerate(cells.split(b"\n")):
            if cell not in known:
                known[cell] = self._value(cell.decode(), field)
            value = known[cell]
            if value is _WRONG:
                fits[row] = False
            values.append(None if value is _WRONG else value)
        return values

    def _value(self, cell: str, field: Asked) -> Any:
        try:
            return value_of(cell, field.types, self._form) if cell.strip() else None
        except WrongCell:
            return _WRONG

    def _numbers(self, cells: bytes, count: int) -> NDArray[np.float64] | None:
        """Cells that are numbers, all of them, as JSON writes those; else None."""
        if self._form.decimal == ",":
            if b"." in cells:
                return None
            cells = cells.replace(b",", b".")
        try:
            values = from_json(b"[%b]" % cells.replace(b"\n", b","), allow_inf_nan=False)
            if len(values) != count or not set(map(type, values)) <= _NUMBERS:
                return None
            return np.array(values, dtype=np.float64)
        except (ValueError, OverflowError):
            return None

    def _result_cells(self, name: str, values: NDArray[Any]) -> list[bytes]:
        """The cells of one column of results."""
        field = self._fields[name]
        if field.kind in {"number", "count"}:
            return self._number_cells(values)
        return _each_once(partial(self._value_cell, field), values)

    def _value_cell(self, field: FlatField, value: Any) -> bytes:
        of_numbers = field.of_numbers and value is not None
        entries = _numbers_of(value, field.name) if of_numbers else value
        return self._writer.value(entries, field.name).encode()

    def _advice_cell(self, words: str | None) -> bytes:
        return b"" if words is None else self._writer.text(words).encode()

    def _number_cells(self, values: NDArray[Any]) -> list[bytes]:
        written = to_json(values.tolist(), inf_nan_mode="null")[1:-1].replace(b"null", b"")
        if self._form.decimal == ".":
            return written.split(b",")
        cells = written.replace(b",", b"\n").replace(b".", b",").split(b"\n")
        if self._form.delimiter == ",":
            return [b'"%b"' % cell if b"," in cell else cell for cell in cells]
        return cells


def _each_once(cell_of: Callable[[Any], bytes], values: NDArray[Any] | None) -> list[bytes]:
    """The cells of a column of texts and the like, many of which are the same."""
    known: dict[Any, bytes] = {}
    cells = []
    for value in () if values is None else values.tolist():
        cell = known.get(value)
        if cell is None:
            cell = known[value] = cell_of(value)
        cells.append(cell)
    return cells


def _numbers_of(joined: str, name: str) -> list[Any]:
    """The entries of a list of numbers that a column form has as one text."""
    if joined == EMPTY_LIST:
        return []
    return [from_json(entry) for entry in joined.split(joint_of(name))]


def _cut_out(signs: NDArray[np.uint8], starts: Places, ends: Places) -> bytes:
    """The cells between these places of a text, with line feeds between."""
    sizes = ends - starts + 1
    after = np.cumsum(sizes)
    cells = signs[np.arange(after[-1]) + np.repeat(starts - (after - sizes), sizes)]
    cells[after - 1] = ord(b"\n")
    cut: bytes = cells[:-1].tobytes()
    return cut


def _is_utf_8(text: bytes) -> bool:
    try:
        text.decode()
    except UnicodeDecodeError:
        return False
    return True
