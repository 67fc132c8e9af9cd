"""One sheet of a workbook of ECMA-376."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from lxml import etree

from halfangle_client.fill._books.archive import Archive
from halfangle_client.fill._books.cells import (
    LAST_COLUMN,
    Cell,
    Range,
    Value,
    letters,
    place_of,
    range_of,
    reference,
)
from halfangle_client.fill._books.form import Rows, Written
from halfangle_client.fill._books.markup import (
    drop,
    local,
    parsed,
    printable,
    relations,
)
from halfangle_client.fill._books.markup import (
    written as bytes_of,
)
from halfangle_client.fill._books.xlsx_cells import MAIN, YES, CellReader, whole
from halfangle_client.fill.errors import FileRefused

_DRAWING = "{http://schemas.openxmlformats.org/drawingml/2006/spreadsheetDrawing}"
_C, _ROW, _V, _F, _IS, _T = (f"{{{MAIN}}}{name}" for name in ("c", "row", "v", "f", "is", "t"))
_XML_SPACE = "{http://www.w3.org/XML/1998/namespace}space"
_LONGEST_TEXT = 32_767
_WIDE, _NARROW = "48", "16"


@dataclass(frozen=True, slots=True)
class Surroundings:
    """What a sheet's cells refer to: texts, kinds of format, styles that show all digits."""

    texts: Sequence[str]
    kinds: Sequence[str]
    plain_styles: Mapping[str, str]
    archive: Archive
    part: str


class XlsxSheet:
    """A sheet that may be filled; a protected one is refused when it is opened."""

    def __init__(
        self, name: str, root: etree._Element, around: Surroundings, notes: Sequence[str]
    ) -> None:
        self.name = name
        self._root = root
        self._around = around
        self._notes = list(notes)
        data = root.find(f"{{{MAIN}}}sheetData")
        if data is None:
            raise FileRefused(f"{self._said}: no sheet of cells.")
        self._data = data
        self._reader = CellReader(self._said, around.texts, around.kinds)
        protection = root.find(f"{{{MAIN}}}sheetProtection")
        if protection is not None and protection.get("sheet") in YES:
            raise FileRefused(f"{self._said}: it is protected; take its protection off first.")
        self._numbered = self._number_rows()
        self.has_formulas = False

    @property
    def _said(self) -> str:
        return f"{self._around.archive.name}, sheet {self.name!r}"

    def _number_rows(self) -> dict[int, etree._Element]:
        """Rows by number; what the file leaves to be counted is written into it."""
        rows: dict[int, etree._Element] = {}
        last = 0
        for row in self._data.iterchildren(_ROW):
            number = whole(row.get("r")) if row.get("r") else last + 1
            if number is None or number <= last:
                raise FileRefused(
                    f"{self._said}: after row {last} row {row.get('r')!r} is no place for cells."
                )
            row.set("r", str(number))
            self._number_cells(row, number)
            rows[number] = row
            last = number
        return rows

    def _number_cells(self, row: etree._Element, number: int) -> None:
        last = -1
        for cell in row.iterchildren(_C):
            name = cell.get("r")
            place = place_of(name) if name else (number, last + 1)
            if place is None or place[0] != number or not last < place[1] <= LAST_COLUMN:
                raise FileRefused(f"{self._said}, row {number}: {name!r} is no place for a cell.")
            last = place[1]
            if not name:
                cell.set("r", reference(number, last))

    def rows(self) -> Rows:
        """What stands in it."""
        found: dict[int, dict[int, Cell]] = {}
        width = 0
        for number, row in self._numbered.items():
            cells = {}
            for cell in row.iterchildren(_C):
                read = self._reader.read(cell)
                if read is not None:
                    place = place_of(cell.get("r", ""))
                    cells[place[1] if place else 0] = read
            if cells:
                found[number] = cells
                width = max(width, max(cells) + 1)
        self.has_formulas = any(c.has_formula for cells in found.values() for c in cells.values())
        merged = [range_of(name) for name in self.merged()]
        right = [span.right + 1 for span in merged if span]
        tables = [range_of(ref) for _, ref in self._tables()]
        right += [span.right + 1 for span in tables if span]
        return Rows(found, max([width, *right]))

    def merged(self) -> Iterable[str]:
        """Ranges of merged cells."""
        return [cell.get("ref", "") for cell in self._root.iter(f"{{{MAIN}}}mergeCell")]

    def _tables(self) -> Iterator[tuple[str, str]]:
        """Name and range of each table of the sheet."""
        for relation in relations(self._around.archive, self._around.part):
            part = self._around.archive.named(relation.target)
            if relation.kind.endswith("/table") and part:
                table = parsed(self._around.archive, part)
                yield table.get("displayName", table.get("name", "")), table.get("ref", "")

    def not_kept(self, written: Sequence[Written], header_row: int) -> list[str]:
        """What filling these columns cannot keep, a sentence each."""
        notes = []
        new = [one.column for one in written if one.is_new]
        if new:
            span = f"{letters(min(new))}:{letters(max(new))}"
            for name, ref in self._tables():
                notes.append(
                    f"the table {name!r} ({ref}) is not made wider: the new columns {span} stand "
                    "beside it, and sorting it does not move them."
                )
            sorted_by = self._root.find(f"{{{MAIN}}}autoFilter")
            if sorted_by is not None:
                notes.append(
                    f"the filter over {sorted_by.get('ref')} is not made wider: sorting by it does "
                    f"not move the new columns {span}."
                )
            notes += self._covered(new, header_row, span)
        return notes + self._notes

    def _covered(self, new: Sequence[int], header_row: int, span: str) -> Iterator[str]:
        """Drawings that stand over columns to be written."""
        archive = self._around.archive
        for relation in relations(archive, self._around.part):
            part = archive.named(relation.target)
            if not relation.kind.endswith("/drawing") or part is None:
                continue
            for anchor in parsed(archive, part):
                place = _anchored(anchor)
                last = max(self._numbered, default=1)
                filled = Range(header_row, min(new), last, max(new))
                if place is not None and place.meets(filled):
                    yield f"a drawing or chart over {place} covers part of the new columns {span}."
                    return

    def put(
        self,
        written: Sequence[Written],
        header_row: int,
        values: Mapping[int, Sequence[Value]],
    ) -> None:
        """Write headers and values; formulas' stored values go, since they may not hold now."""
        new = [one for one in written if one.is_new]
        styled_by = min((one.column for one in new), default=0) - 1
        header_style = self._style_at(header_row, styled_by)
        first = min(values, default=header_row)
        body_style = self._around.plain_styles.get(self._style_at(first, styled_by), "0")
        for one in new:
            self._write(header_row, one.column, one.header, header_style)
        for number, row_values in values.items():
            for one, value in zip(written, row_values, strict=True):
                self._write(number, one.column, value, body_style if one.is_new else None)
        self._widen(new)
        self._forget()

    def _style_at(self, row: int, column: int) -> str:
        element = self._numbered.get(row)
        for cell in () if element is None else element.iterchildren(_C):
            if cell.get("r") == reference(row, column):
                return cell.get("s", "0")
        return "0"

    def _write(self, number: int, column: int, value: Value, style: str | None) -> None:
        row = self._numbered[number] if number in self._numbered else self._new_row(number)
        cell = _cell_at(row, number, column, make=value is not None)
        if cell is None:
            return
        drop(cell, "t", "cm", "vm")
        for child in list(cell):
            cell.remove(child)
        if style not in {None, "0"}:
            cell.set("s", str(style))
        if isinstance(value, str):
            cell.set("t", "inlineStr")
            text = etree.SubElement(etree.SubElement(cell, _IS), _T)
            text.text = printable(value)[:_LONGEST_TEXT]
            text.set(_XML_SPACE, "preserve")
        elif value is not None:
            is_switch = isinstance(value, bool)
            if is_switch:
                cell.set("t", "b")
            etree.SubElement(cell, _V).text = repr(int(value) if is_switch else value)

    def _new_row(self, number: int) -> etree._Element:
        row = etree.Element(_ROW, {"r": str(number)})
        later = [n for n in self._numbered if n > number]
        if later:
            self._numbered[min(later)].addprevious(row)
        else:
            self._data.append(row)
        self._numbered[number] = row
        return row

    def _widen(self, new: Sequence[Written]) -> None:
        """Give new columns a width at which their numbers are seen whole, where none is set."""
        columns = self._root.find(f"{{{MAIN}}}cols")
        if columns is None:
            columns = etree.Element(f"{{{MAIN}}}cols")
        set_already = [
            (whole(c.get("min")) or 0, whole(c.get("max")) or 0) for c in columns if local(c)
        ]
        for one in sorted(new, key=lambda one: one.column):
            place = one.column + 1
            if any(low <= place <= high for low, high in set_already):
                continue
            width = _WIDE if one.is_wide else _NARROW
            made = etree.Element(f"{{{MAIN}}}col", min=str(place), max=str(place), width=width)
            made.set("customWidth", "1")
            before = [c for c in columns if local(c) and (whole(c.get("min")) or 0) < place]
            columns.insert(len(before), made)
        if len(columns) and columns.getparent() is None:
            self._data.addprevious(columns)

    def _forget(self) -> None:
        for row in self._numbered.values():
            drop(row, "spans")
        forget_values(self._data)
        for dimension in self._root.findall(f"{{{MAIN}}}dimension"):
            self._root.remove(dimension)

    def content(self) -> bytes:
        """The bytes of the sheet as it is now."""
        return bytes_of(self._root)


def forget_values(data: etree._Element) -> None:
    """Drop what formulas were worked out to: it may not hold any more."""
    for formula in data.iter(_F):
        cell = formula.getparent()
        if cell is not None and cell.tag == _C:
            drop(cell, "t")
            for stored in cell.findall(_V):
                cell.remove(stored)


def _cell_at(row: etree._Element, number: int, column: int, *, make: bool) -> etree._Element | None:
    """The cell of a row at a column; made in its place where it is wanted."""
    name = reference(number, column)
    after: etree._Element | None = None
    for cell in row.iterchildren(_C, reversed=True):
        place = place_of(cell.get("r", ""))
        if place is not None and place[1] == column:
            return cell
        if place is not None and place[1] < column:
            after = cell
            break
    if not make:
        return None
    made = etree.Element(_C, {"r": name})
    if after is None:
        row.insert(0, made)
    else:
        after.addnext(made)
    return made


def _anchored(anchor: etree._Element) -> Range | None:
    """The cells over which a drawing stands."""
    corners = []
    for name in ("from", "to"):
        corner = anchor.find(f"{_DRAWING}{name}")
        if corner is None:
            return None
        row, column = (whole(corner.findtext(f"{_DRAWING}{part}")) or 0 for part in ("row", "col"))
        corners.append((row + 1, column))
    return Range(*corners[0], *corners[1])
