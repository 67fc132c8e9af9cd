"""What is settled before the first row is asked: sheet, header row, which column is which."""

from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from halfangle_client.cli.contract import Operation, dotted_names, hint, hyphens, named
from halfangle_client.fill._books.cells import (
    LAST_COLUMN,
    Cell,
    Range,
    letters,
    range_of,
    reference,
)
from halfangle_client.fill._books.form import Book, Rows, Sheet, Written
from halfangle_client.fill.asked import Asker, Unreadable
from halfangle_client.fill.errors import FileRefused, MapRefused
from halfangle_client.fill.headers import (
    Header,
    Input,
    Labels,
    column_named,
    inputs_by_header,
    inputs_by_map,
    length_unit,
    near_misses,
    plain,
)
from halfangle_client.fill.mapping import FillMap
from halfangle_client.fill.results import ADVISORIES, PROBLEM, Wanted, wanted_results

_ROWS_LOOKED_AT = 30
_FEW = 6


@dataclass(frozen=True, slots=True)
class Settled:
    """Everything that filling needs; `requests` and `unreadable` are by row."""

    operation: Operation
    sheet: Sheet
    header_row: int
    inputs: Sequence[Input]
    fixed: Mapping[str, Any]
    wanted: Sequence[Wanted]
    written: Sequence[Written]
    requests: Mapping[int, dict[str, Any]]
    unreadable: Mapping[int, str]
    notes: Sequence[str]

    @property
    def count(self) -> int:
        """How many rows are filled."""
        return len(self.requests) + len(self.unreadable)

    def described(self) -> list[str]:
        """The map in words, a line a column."""
        lines = [f"{self.operation.name}: {self.operation.title}"]
        where = f"sheet {self.sheet.name!r}, " if self.sheet.name else ""
        rows = sorted({*self.requests, *self.unreadable})
        span = f"rows {rows[0]} to {rows[-1]}" if rows else "no rows"
        lines.append(f"{where}headers in row {self.header_row}, {span}: {self.count} to fill")
        for one in self.inputs:
            columns = ", ".join(letters(column) for column in one.columns)
            lines.append(f"  {columns} {one.header!r} -> {one.field.name}")
        lines += [f"  {name} = {value!r}" for name, value in self.fixed.items()]
        for place, each in enumerate(self.written):
            path = f" <- {self.wanted[place].path}" if place < len(self.wanted) else ""
            state = "new" if each.is_new else "there already"
            lines.append(f"  {letters(each.column)} {each.header!r}{path} ({state})")
        return lines


def operation_of(said: FillMap) -> Operation:
    """The operation of a map. Raises MapRefused."""
    if not said.operation:
        raise MapRefused("say which operation fills it: --operation sine.setting.", "operation")
    found = named(said.operation)
    if found is None:
        known = dotted_names()
        raise MapRefused(
            f"no operation {said.operation!r}{hint(said.operation.replace('_', '-'), known)}"
        )
    if not found.sends:
        raise MapRefused(f"{found.name} is looked up, not worked out: it takes no request.")
    if not found.has_result:
        raise MapRefused(
            f"{hyphens(found.name)} ({found.title}) is no answer to a row: name the operation."
        )
    return found


def sheet_named(book: Book, said: FillMap, file: str) -> str:
    """The sheet to be filled. Raises MapRefused where it is not said, or not there."""
    sheets = book.sheets()
    if said.sheet is None:
        if len(sheets) == 1:
            return sheets[0]
        names = ", ".join(map(repr, sheets[:20]))
        raise MapRefused(
            f"{file} has {len(sheets)} sheets ({names}): say which by --sheet.", "sheet"
        )
    if book.is_text:
        raise MapRefused(f"{file} has no sheets: leave --sheet out.")
    if said.sheet not in sheets:
        raise MapRefused(f"{file} has no sheet {said.sheet!r}{hint(said.sheet, sheets)}.")
    return said.sheet


def settle(file: str, book: Book, said: FillMap, labels: Labels) -> Settled:
    """Settle all of it, or say what is in the way. Raises MapRefused or FileRefused."""
    operation = operation_of(said)
    sheet = book.sheet(sheet_named(book, said, file))
    where = f"{file}, sheet {sheet.name!r}" if sheet.name else file
    rows = sheet.rows()
    merged = [span for span in map(range_of, sheet.merged()) if span is not None]
    header_row = _header_row(where, rows, merged, said, operation)
    headers = _headers(rows, header_row)
    inputs, fixed = _inputs(where, headers, operation, said, labels)
    given = {*fixed, *(one.field.name.partition(".")[0] for one in inputs)}
    wanted = wanted_results(operation, said.results, given, str(fixed.get("units", "")))
    written = _written(headers, rows.width, wanted, inputs)
    first, last = said.row_bounds()
    filled = {n: c for n, c in rows.cells.items() if n > header_row and first <= n <= last}
    read = {column for one in inputs for column in one.columns}
    hidden = _hidden(merged, sorted(filled), read)
    asker = Asker(inputs, fixed, labels, hidden, said.decimal)
    requests, unreadable = _requests(asker, filled)
    if not requests and not unreadable:
        raise FileRefused(f"{where}: no row below row {header_row} has a value in these columns.")
    if not requests:
        row, why = next(iter(unreadable.items()))
        raise FileRefused(f"{where}: no row can be sent; row {row}: {why}")
    touched = {row: filled[row] for row in (*requests, *unreadable)}
    notes = sheet.not_kept(written, header_row)
    notes += _replaced(where, touched, written, merged)
    notes += _unused(headers, operation, inputs, written, labels)
    return Settled(
        operation, sheet, header_row, inputs, fixed, wanted, written, requests, unreadable, notes
    )  # fmt: skip


def _hidden(
    merged: Sequence[Range], rows: Sequence[int], columns: Collection[int]
) -> dict[tuple[int, int], Range]:
    """Cells that merged cells stand over, apart from the first, which holds their value."""
    return {
        (row, column): span
        for span in merged
        for column in columns
        if span.left <= column <= span.right
        for row in span.rows_among(rows)
        if (row, column) != (span.top, span.left)
    }


def _header_row(
    where: str, rows: Rows, merged: Sequence[Range], said: FillMap, operation: Operation
) -> int:
    if not rows.cells:
        raise FileRefused(f"{where}: it is empty.")
    row = said.header_row if said.header_row is not None else min(rows.cells)
    if row not in rows.cells:
        raise MapRefused(f"{where}: row {row} is blank: it holds no headers.")
    span = next((each for each in merged if each.top <= row <= each.bottom), None)
    if span is not None:
        raise FileRefused(
            f"{where}, row {row}: {span} are merged cells, which are no headers of single columns"
            f"{_better_row(rows, row, operation)}."
        )
    return row


def _better_row(rows: Rows, row: int, operation: Operation) -> str:
    """A row that looks like one of headers, as the end of a sentence; nothing where none does."""
    names = {plain(field.name) for field in operation.fields}
    found = {
        n: sum(header.words in names for header in _headers(rows, n))
        for n in sorted(rows.cells)[:_ROWS_LOOKED_AT]
        if n != row
    }
    best = max(found, key=lambda n: found[n], default=row)
    return f"; row {best} looks like headers: --header-row {best}" if found.get(best) else ""


def _headers(rows: Rows, row: int) -> list[Header]:
    return [
        Header(column, str(cell.value).strip())
        for column, cell in rows.cells[row].items()
        if cell.value is not None
    ]


def _inputs(
    where: str, headers: Sequence[Header], operation: Operation, said: FillMap, labels: Labels
) -> tuple[list[Input], dict[str, Any]]:
    """Columns and fixed values of the request. Raises MapRefused."""
    fields = operation.fields
    fixed = dict(said.fixed)
    known = [field.name for field in fields]
    for name in fixed:
        if name not in known:
            raise MapRefused(f"{operation.name} has no field {name!r}{hint(name, known)}.")
    units = str(fixed.get("units", ""))
    inputs = inputs_by_map(headers, fields, said.columns, labels, units)
    named = {column for one in inputs for column in one.columns}
    named |= {column_named(word, headers) for word in said.ignored}
    free = [field for field in fields if field.name not in said.columns]
    inputs += inputs_by_header([h for h in headers if h.column not in named], free, labels, units)
    given = [one.field.name for one in inputs]
    if "units" in known and "units" not in given and not units:
        columns = {column for one in inputs for column in one.columns}
        stated = length_unit([h for h in headers if h.column in columns])
        if stated:
            fixed["units"] = stated
    _require_no_clash(given, list(fixed))
    taken = [*given, *fixed]
    lacking = [
        field.name
        for field in fields
        if field.required
        and "." not in field.name
        and not any(name == field.name or name.startswith(f"{field.name}.") for name in taken)
    ]
    if lacking or not inputs:
        said_so = _lacking(where, headers, operation, lacking, labels)
        raise MapRefused(said_so, "columns", lacking)
    return inputs, fixed


def _require_no_clash(given: Sequence[str], fixed: Sequence[str]) -> None:
    every = [*given, *fixed]
    for name in given:
        if name in fixed:
            raise MapRefused(f"{name} is both a column and fixed: say one of them.")
        outer = next((other for other in every if name.startswith(f"{other}.")), None)
        if outer is not None:
            raise MapRefused(f"{name} is part of {outer}, which is given as a whole: say one.")


def _lacking(
    where: str,
    headers: Sequence[Header],
    operation: Operation,
    lacking: Sequence[str],
    labels: Labels,
) -> str:
    what = f"no column for {', '.join(lacking)}" if lacking else "no header is that of a field"
    lines = [f"{where}: {what} of {operation.name}."]
    wanted = [field for field in operation.fields if field.name in lacking] or operation.fields
    for header, name in near_misses(headers, wanted, labels):
        lines.append(f"{header}: did you mean {name}?")
    there = ", ".join(f"{letters(h.column)} {h.text!r}" for h in headers[:20])
    lines.append(f"Headers there: {there}. A map names them: columns.{(lacking or ['angle'])[0]}")
    return " ".join(lines) + ' = "B", or --fixed gives a value for all rows.'


def _written(
    headers: Sequence[Header], width: int, wanted: Sequence[Wanted], inputs: Sequence[Input]
) -> list[Written]:
    """Columns to be filled: those that are there under the header, new ones right of all others."""
    read = {column: one.field.name for one in inputs for column in one.columns}
    found = []
    for name in [*(one.header for one in wanted), ADVISORIES, PROBLEM]:
        is_wide = name in {ADVISORIES, PROBLEM}
        alike = [h for h in headers if _is_header(h, name)]
        if len(alike) > 1:
            raise MapRefused(f"{' and '.join(map(str, alike))} are alike: rename one.")
        if alike and alike[0].column in read:
            raise MapRefused(
                f"{alike[0]} is read as {read[alike[0].column]}, and would be filled: give the "
                "result another header (--result 'HEADER=PATH')."
            )
        if alike:
            found.append(Written(alike[0].column, alike[0].text, is_new=False, is_wide=is_wide))
            continue
        if width > LAST_COLUMN:
            raise FileRefused(f"there is no room for a column {name!r}: the sheet ends at XFD.")
        found.append(Written(width, name, is_new=True, is_wide=is_wide))
        width += 1
    return found


def _is_header(header: Header, name: str) -> bool:
    wanted = Header(0, name)
    same_name = header.words == wanted.words
    return plain(header.text) == plain(name) or (same_name and header.unit in {"", wanted.unit})


def _requests(
    asker: Asker, rows: Mapping[int, Mapping[int, Cell]]
) -> tuple[dict[int, dict[str, Any]], dict[int, str]]:
    requests: dict[int, dict[str, Any]] = {}
    unreadable: dict[int, str] = {}
    for row, cells in rows.items():
        try:
            request = asker.request(row, cells)
        except Unreadable as error:
            unreadable[row] = str(error)
        else:
            if request is not None:
                requests[row] = request
    return requests, unreadable


def _replaced(
    where: str,
    rows: Mapping[int, Mapping[int, Cell]],
    written: Sequence[Written],
    merged: Sequence[Range],
) -> Iterator[str]:
    """What stands in columns that are filled anew. Raises FileRefused for formulas."""
    for one in written:
        if one.is_new:
            continue
        said = f"column {letters(one.column)} {one.header!r}"
        there = {row: cells[one.column] for row, cells in rows.items() if one.column in cells}
        formula = next((row for row, cell in there.items() if cell.has_formula), None)
        if formula is not None:
            name = reference(formula, one.column)
            raise FileRefused(f"{where}, {said}: {name} is a formula, which is not written over.")
        for span in merged:
            if span.left <= one.column <= span.right and span.rows_among(sorted(rows)):
                raise FileRefused(f"{where}, {said}: {span} are merged cells.")
        if there:
            yield f"{said} is filled anew: {len(there)} cells are replaced."


def _unused(
    headers: Sequence[Header],
    operation: Operation,
    inputs: Sequence[Input],
    written: Sequence[Written],
    labels: Labels,
) -> Iterator[str]:
    """Columns that are neither read nor filled, and what they may have been meant for."""
    used = {column for one in inputs for column in one.columns} | {w.column for w in written}
    left = [header for header in headers if header.column not in used]
    given = {one.field.name for one in inputs}
    free = [field for field in operation.fields if field.name not in given]
    near = dict(near_misses(left, free, labels))
    for header, name in near.items():
        yield f"{header} is not read: did you mean {name}?"
    others = [str(header) for header in left if header not in near]
    if others:
        more = f" and {len(others) - _FEW} more" if len(others) > _FEW else ""
        yield f"not read: {', '.join(others[:_FEW])}{more}."
