"""One sheet of a workbook of OpenDocument."""

import copy
import math
from collections.abc import Iterable, Iterator, Mapping, Sequence

from lxml import etree

from halfangle_client.fill.books.cells import (
    LAST_COLUMN,
    LAST_ROW,
    Cell,
    Range,
    Value,
    no_stored_value,
    time_problem,
)
from halfangle_client.fill.books.form import Rows, Written
from halfangle_client.fill.books.markup import drop, local, printable
from halfangle_client.fill.errors import FileRefused

OFFICE = "urn:oasis:names:tc:opendocument:xmlns:office:1.0"
TABLE = "urn:oasis:names:tc:opendocument:xmlns:table:1.0"
_TEXT = "urn:oasis:names:tc:opendocument:xmlns:text:1.0"
_CALC = "urn:org:documentfoundation:names:experimental:calc:xmlns:calcext:1.0"
_ROW, _CELL, _COVERED = (
    f"{{{TABLE}}}{name}" for name in ("table-row", "table-cell", "covered-table-cell")
)
_FORMULA, _STYLE = f"{{{TABLE}}}formula", f"{{{TABLE}}}style-name"
_ROWS_REPEATED, _COLUMNS_REPEATED = (
    f"{{{TABLE}}}number-{name}-repeated" for name in ("rows", "columns")
)
_P = f"{{{_TEXT}}}p"
_VALUE_TYPE = f"{{{OFFICE}}}value-type"
#: Groups that rows stand in, as headers that are repeated on each page.
_GROUPS = frozenset({"table-row-group", "table-header-rows", "table-rows"})


class OdsSheet:
    """A sheet that may be filled; a protected one is refused when it is opened."""

    def __init__(self, name: str, table: etree._Element, file: str, notes: Sequence[str]) -> None:
        self.name = name
        self._said = f"{file}, sheet {name!r}"
        self._table = table
        self._notes = list(notes)
        self._merged: list[Range] = []
        if table.get(f"{{{TABLE}}}protected") == "true":
            raise FileRefused(f"{self._said}: it is protected; take its protection off first.")
        self.has_formulas = table.find(f".//*[@{_FORMULA}]") is not None

    def rows(self) -> Rows:
        """What stands in it."""
        found: dict[int, dict[int, Cell]] = {}
        width = 0
        for first, count, row in self._row_elements():
            cells = self._cells_of(row, first)
            if not cells:
                continue
            if first + count - 1 > LAST_ROW:
                raise FileRefused(f"{self._said}: cells stand below row {LAST_ROW}.")
            width = max(width, max(cells) + 1)
            found.update(dict.fromkeys(range(first, first + count), cells))
        return Rows(found, max([width, *(span.right + 1 for span in self._merged)]))

    def _row_elements(self) -> Iterator[tuple[int, int, etree._Element]]:
        """Number, count and element of each row."""
        number = 1
        for row in _rows_in(self._table):
            count = _repeated(row, _ROWS_REPEATED)
            yield number, count, row
            number += count

    def _cells_of(self, row: etree._Element, number: int) -> dict[int, Cell]:
        found = {}
        column = 0
        for cell in row:
            if cell.tag not in {_CELL, _COVERED}:
                continue
            count = _repeated(cell, _COLUMNS_REPEATED)
            self._note_merged(cell, number, column)
            read = _read(cell)
            if read is not None:
                if column + count - 1 > LAST_COLUMN:
                    raise FileRefused(f"{self._said}, row {number}: cells stand past column XFD.")
                found.update(dict.fromkeys(range(column, column + count), read))
            column += count
        return found

    def _note_merged(self, cell: etree._Element, row: int, column: int) -> None:
        rows = _repeated(cell, f"{{{TABLE}}}number-rows-spanned")
        columns = _repeated(cell, f"{{{TABLE}}}number-columns-spanned")
        if rows > 1 or columns > 1:
            bottom, right = min(row + rows - 1, LAST_ROW), min(column + columns - 1, LAST_COLUMN)
            self._merged.append(Range(row, column, bottom, right))

    def merged(self) -> Iterable[str]:
        """Ranges of merged cells, known once the rows were read."""
        return [str(span) for span in self._merged]

    def not_kept(self, written: Sequence[Written], header_row: int) -> list[str]:  # noqa: ARG002
        """What filling these columns cannot keep, a sentence each."""
        return self._notes

    def put(
        self,
        written: Sequence[Written],
        header_row: int,
        values: Mapping[int, Sequence[Value]],
    ) -> None:
        """Write headers and values."""
        new = [one for one in written if one.is_new]
        wanted = {header_row, *values}
        for number, row in self._single_rows(wanted):
            cells = _Cells(row)
            if number == header_row:
                styled_by = min((one.column for one in new), default=0) - 1
                style = cells.style_at(styled_by)
                for one in new:
                    cells.put(one.column, one.header, style)
            else:
                for one, value in zip(written, values[number], strict=True):
                    cells.put(one.column, value)
        self._grow(max((one.column + 1 for one in written), default=0))

    def _single_rows(self, wanted: set[int]) -> Iterator[tuple[int, etree._Element]]:
        """The element of each row wanted, parted from those it was repeated with."""
        for first, count, row in list(self._row_elements()):
            inside = sorted(n for n in wanted if first <= n < first + count) if count > 1 else []
            if count == 1:
                if first in wanted:
                    yield first, row
                continue
            number = first
            for place in inside:
                if place > number:
                    _put_before(row, place - number, _ROWS_REPEATED)
                yield place, _put_before(row, 1, _ROWS_REPEATED)
                number = place + 1
            left = first + count - number
            if inside and left:
                _set_repeated(row, left, _ROWS_REPEATED)
            elif inside:
                _take_out(row)

    def _grow(self, width: int) -> None:
        """Declare as many columns as are used: others are not shown."""
        columns = list(self._table.iter(f"{{{TABLE}}}table-column"))
        declared = sum(_repeated(column, _COLUMNS_REPEATED) for column in columns)
        if columns and declared < width:
            last = columns[-1]
            more = etree.Element(last.tag)
            _set_repeated(more, width - declared, _COLUMNS_REPEATED)
            last.addnext(more)


class _Cells:
    """The cells of one row, parted where they are written."""

    def __init__(self, row: etree._Element) -> None:
        self._row = row

    def _found(self, column: int) -> tuple[etree._Element | None, int, int]:
        """The element that holds a column, where it begins, and how many it stands for."""
        place = 0
        for cell in self._row:
            if cell.tag not in {_CELL, _COVERED}:
                continue
            count = _repeated(cell, _COLUMNS_REPEATED)
            if place <= column < place + count:
                return cell, place, count
            place += count
        return None, place, 0

    def style_at(self, column: int) -> str | None:
        """The style of a cell."""
        cell, _, _ = self._found(column)
        return None if cell is None else cell.get(_STYLE)

    def put(self, column: int, value: Value, style: str | None = None) -> None:
        """Write a value; None clears what stands there."""
        cell, place, count = self._found(column)
        if cell is None:
            if value is None:
                return
            if column > place:
                gap = etree.SubElement(self._row, _CELL)
                _set_repeated(gap, column - place, _COLUMNS_REPEATED)
            cell = etree.SubElement(self._row, _CELL)
        elif count > 1:
            if column > place:
                _put_before(cell, column - place, _COLUMNS_REPEATED)
            rest = place + count - column - 1
            single = _put_before(cell, 1, _COLUMNS_REPEATED)
            if rest:
                _set_repeated(cell, rest, _COLUMNS_REPEATED)
            else:
                _take_out(cell)
            cell = single
        _clear(cell)
        if style:
            cell.set(_STYLE, style)
        if value is not None:
            _fill(cell, value)


def forget_values(body: etree._Element) -> None:
    """Drop what formulas were worked out to: it may not hold any more."""
    for cell in body.iter(_CELL):
        if cell.get(_FORMULA) is not None:
            _clear(cell, keep_formula=True)


def _rows_in(parent: etree._Element) -> Iterator[etree._Element]:
    for child in parent:
        if child.tag == _ROW:
            yield child
        elif local(child) in _GROUPS:
            yield from _rows_in(child)


def _repeated(element: etree._Element, attribute: str) -> int:
    return max(1, _number(element.get(attribute)))


def _number(text: str | None) -> int:
    return int(text) if text and text.isascii() and text.isdigit() and len(text) < 10 else 0


def _set_repeated(element: etree._Element, count: int, attribute: str) -> None:
    if count > 1:
        element.set(attribute, str(count))
    else:
        drop(element, attribute)


def _put_before(element: etree._Element, count: int, attribute: str) -> etree._Element:
    """Put a copy before an element, which stands for so many."""
    made = copy.deepcopy(element)
    made.tail = None
    _set_repeated(made, count, attribute)
    element.addprevious(made)
    return made


def _take_out(element: etree._Element) -> None:
    parent = element.getparent()
    if parent is not None:
        parent.remove(element)


def _read(cell: etree._Element) -> Cell | None:
    """A cell; None where it is blank."""
    has_formula = cell.get(_FORMULA) is not None
    kind = cell.get(_VALUE_TYPE)
    text = _text_of(cell)
    if kind is None:
        if not has_formula:
            return Cell(text) if text.strip() else None
        return no_stored_value()
    is_error = cell.get(f"{{{_CALC}}}value-type") == "error"
    if is_error or (has_formula and text.startswith(("#", "Err:"))):
        return Cell(None, f"holds the error {text}", has_formula=has_formula)
    return _valued(cell, kind, text, has_formula)


def _valued(cell: etree._Element, kind: str, text: str, has_formula: bool) -> Cell | None:
    if kind == "string":
        text = cell.get(f"{{{OFFICE}}}string-value", text)
        return Cell(text, has_formula=has_formula) if text.strip() or has_formula else None
    if kind == "boolean":
        return Cell(cell.get(f"{{{OFFICE}}}boolean-value") == "true", has_formula=has_formula)
    if kind == "time":
        return Cell(None, time_problem(text), has_formula=has_formula)
    if kind == "date":
        return Cell(None, f"holds a date ({text})", has_formula=has_formula)
    try:
        number = float(cell.get(f"{{{OFFICE}}}value", "nan"))
    except ValueError:
        number = math.nan
    if not math.isfinite(number):
        return Cell(None, f"holds {text!r}, whose value is not stored", has_formula=has_formula)
    return Cell(number, is_percent=kind == "percentage", has_formula=has_formula)


def _text_of(cell: etree._Element) -> str:
    """The text of a cell, its paragraphs as lines; comments are none of it."""
    return "\n".join(_inline(paragraph) for paragraph in cell.iterchildren(_P))


def _inline(element: etree._Element) -> str:
    parts = [element.text or ""]
    for child in element:
        name = local(child)
        if name == "s":
            parts.append(" " * min(max(1, _number(child.get(f"{{{_TEXT}}}c"))), 1000))
        elif name in {"tab", "line-break"}:
            parts.append("\t" if name == "tab" else "\n")
        elif name in {"span", "a"}:
            parts.append(_inline(child))
        parts.append(child.tail or "")
    return "".join(parts)


def _clear(cell: etree._Element, *, keep_formula: bool = False) -> None:
    for attribute in list(cell.attrib):
        name = str(attribute)
        if name.startswith((f"{{{OFFICE}}}", f"{{{_CALC}}}")):
            del cell.attrib[attribute]
    if not keep_formula:
        drop(cell, _FORMULA)
    for child in cell.findall(_P):
        cell.remove(child)


def _fill(cell: etree._Element, value: str | float | bool) -> None:
    if isinstance(value, str):
        kind, lines = "string", printable(value).split("\n")
    elif isinstance(value, bool):
        kind, lines = "boolean", [str(value).upper()]
        cell.set(f"{{{OFFICE}}}boolean-value", str(value).lower())
    else:
        kind, lines = "float", [repr(value)]
        cell.set(f"{{{OFFICE}}}value", repr(value))
    cell.set(_VALUE_TYPE, kind)
    for place, line in enumerate(lines):
        paragraph = etree.Element(_P)
        paragraph.text = line
        cell.insert(place, paragraph)
