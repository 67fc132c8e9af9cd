"""Delimited text, `.csv` (RFC 4180): every field that is not filled stays as it was written."""

import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import BinaryIO

from halfangle_client.fill.books.cells import Cell, Value
from halfangle_client.fill.books.form import Rows, Written
from halfangle_client.fill.errors import FileRefused

DELIMITERS = {",": ",", ";": ";", "\t": "tab"}
DECIMALS = (".", ",")
_BOM = b"\xef\xbb\xbf"


@dataclass(slots=True)
class _Record:
    """One row: its fields as they are written, how it ends, and on which line it begins."""

    fields: list[str]
    end: str
    line: int


class DelimitedBook:
    """An open file; it is its own and only sheet."""

    is_text = True

    def __init__(
        self, name: str, content: bytes, *, delimiter: str | None, decimal: str | None
    ) -> None:
        self._file = name
        self.name = ""
        if delimiter not in DELIMITERS or decimal not in DECIMALS:
            raise FileRefused(
                f"{name}: declare its delimiter (--delimiter ',' or ';' or tab) and its decimal "
                "sign (--decimal . or ,); they are not guessed."
            )
        if delimiter == decimal:
            raise FileRefused(f"{name}: {delimiter!r} cannot be both delimiter and decimal sign.")
        self._delimiter, self._decimal = delimiter, decimal
        self._bare = re.compile(rf"[^{delimiter}\r\n]*")
        self._bom = content[: len(_BOM)] == _BOM
        self._records = self._parsed(self._decoded(content))
        width = len(self._records[0].fields) if self._records else 0
        for record in self._records:
            if len(record.fields) > width:
                raise FileRefused(
                    f"{name}, line {record.line}: {len(record.fields)} fields, where the first row "
                    f"has {width}."
                )

    def _decoded(self, content: bytes) -> str:
        try:
            return content[len(_BOM) :].decode() if self._bom else content.decode()
        except UnicodeDecodeError as error:
            line = content.count(b"\n", 0, error.start) + 1
            raise FileRefused(
                f"{self._file}, line {line}: no UTF-8; save it as UTF-8 first."
            ) from error

    def _parsed(self, text: str) -> list[_Record]:
        """Records of a text. A quoted field holds delimiters, ends of lines and doubled quotes."""
        records: list[_Record] = []
        fields: list[str] = []
        place, line, begun = 0, 1, 1
        while place < len(text):
            end = self._end_of_field(text, place, line)
            field = text[place:end]
            fields.append(field)
            line += field.count("\n")
            after = text[end : end + 2]
            if after[:1] == self._delimiter:
                place = end + 1
                if place == len(text):
                    fields.append("")
                    records.append(_Record(fields, "", begun))
                    fields = []
                continue
            ending = after if after == "\r\n" else after[:1]
            records.append(_Record(fields, ending, begun))
            fields = []
            line += 1
            begun = line
            place = end + len(ending)
        return records

    def _end_of_field(self, text: str, place: int, line: int) -> int:
        if text[place] == '"':
            place += 1
            while True:
                place = text.find('"', place)
                if place < 0:
                    raise FileRefused(f"{self._file}, line {line}: a quotation mark is not closed.")
                if text[place + 1 : place + 2] != '"':
                    place += 1
                    break
                place += 2
            if place < len(text) and text[place] not in {self._delimiter, "\r", "\n"}:
                raise FileRefused(
                    f"{self._file}, line {line}: text follows a closing quotation mark."
                )
            return place
        found = self._bare.match(text, place)
        return found.end() if found else place

    def sheets(self) -> list[str]:
        """One, without a name."""
        return [self.name]

    def sheet(self, name: str) -> "DelimitedBook":  # noqa: ARG002
        """The file itself."""
        return self

    def rows(self) -> Rows:
        """What stands in it; all of it is text."""
        found = {}
        for number, record in enumerate(self._records, 1):
            texts = [_unquoted(field) for field in record.fields]
            cells = {column: Cell(text) for column, text in enumerate(texts) if text.strip()}
            if cells:
                found[number] = cells
        width = len(self._records[0].fields) if self._records else 0
        return Rows(found, width)

    def merged(self) -> Iterable[str]:
        """None."""
        return ()

    def not_kept(self, written: Sequence[Written], header_row: int) -> list[str]:  # noqa: ARG002
        """Everything is kept."""
        return []

    def put(
        self,
        written: Sequence[Written],
        header_row: int,
        values: Mapping[int, Sequence[Value]],
    ) -> None:
        """Write headers and values."""
        width = len(self._records[0].fields) if self._records else 0
        for number, record in enumerate(self._records, 1):
            if number < header_row or record.fields == [""]:
                continue
            row_values = values.get(number)
            record.fields += [""] * (width - len(record.fields))
            for place, one in enumerate(written):
                record.fields += [""] * (one.column + 1 - len(record.fields))
                if number == header_row:
                    if one.is_new:
                        record.fields[one.column] = self._written(one.header)
                elif row_values is not None:
                    record.fields[one.column] = self._written(row_values[place])

    def _written(self, value: Value) -> str:
        if value is None:
            return ""
        if isinstance(value, bool):
            return str(value).lower()
        if not isinstance(value, str):
            return repr(value).replace(".", self._decimal)
        if any(sign in value for sign in (self._delimiter, '"', "\r", "\n")):
            doubled = value.replace('"', '""')
            return f'"{doubled}"'
        return value

    def save(self, target: BinaryIO) -> None:
        """Write the whole file."""
        if self._bom:
            target.write(_BOM)
        for record in self._records:
            target.write((self._delimiter.join(record.fields) + record.end).encode())


def _unquoted(field: str) -> str:
    return field[1:-1].replace('""', '"') if field[:1] == '"' else field
