"""Cells: what one says, in the signs that the table is declared to be written in."""

import csv
import re
from collections.abc import Callable, Iterable
from typing import Any

from pydantic_core import to_json

from halfangle_service.columns import advised_in_words, text_of
from halfangle_service.http.tables.model import TableForm

#: A number as people write it, `.375`, `5.` and `+5` too.
_NUMBER = re.compile(r"[+-]?(?:[0-9]+\.?[0-9]*|\.[0-9]+)(?:[eE][+-]?[0-9]+)?")
_LONGEST_NUMBER = 400
_NUMBERS = frozenset({"number", "integer"})
_NAMES = {",": "comma", ".": "point"}
#: What a spreadsheet takes for the beginning of a formula.
_FORMULA = ("=", "+", "-", "@", "\t", "\r")
#: Signed all the same: a number or an angle, which can call nothing.
_SIGNED = re.compile(r"""[+-][0-9.,°'" ]*""")


class WrongCell(Exception):
    """A cell that cannot be read, and why."""


class WrongRecord(Exception):
    """A record whose cells cannot be told apart, and why."""


def reader(form: TableForm) -> Callable[[str], list[str]]:
    """Make what parts a record, without its line end, into its cells; it raises WrongRecord."""
    delimiter = form.between_cells

    def cells_of(record: str) -> list[str]:
        if '"' not in record and "\r" not in record:
            return record.split(delimiter)
        try:
            (cells,) = csv.reader((record,), delimiter=delimiter, strict=True)
        except (csv.Error, ValueError) as error:
            raise WrongRecord(_what_is_wrong(str(error))) from None
        return cells

    return cells_of


def has_words(line: str | bytes) -> bool:
    """True but for a blank line, which is no row."""
    return bool(line.strip(" ") if isinstance(line, str) else line.strip(b" "))


def _what_is_wrong(said: str) -> str:
    """The csv module's words in those of who wrote the table."""
    if "unexpected end" in said:
        return "a quote opens a cell and none closes it"
    if "expected after" in said:
        return "text stands after the quote that closes a cell; a quote within one is doubled"
    if "field larger" in said:
        return f"a cell is longer than {csv.field_size_limit()} characters"
    return "a carriage return stands within a cell that is not quoted"


def value_of(text: str, types: frozenset[str], form: TableForm) -> Any:
    """Read a cell as one of these JSON types; what does not fit stays a text, to be refused.

    Raises WrongCell where it is written in another decimal sign than the table is declared to be.
    """
    text = text.strip()
    if not types & _NUMBERS:
        if "boolean" in types and text.lower() in {"true", "false"}:
            return text.lower() == "true"
        return text
    sign = form.decimal
    other = "." if sign == "," else ","
    if other in text:
        raise WrongCell(
            f"{text[:40]!r} has a {_NAMES[other]}, and the decimal sign is a {_NAMES[sign]}; "
            f"`decimal={other}` declares the other, and nothing parts thousands"
        )
    plain = text.replace(sign, ".")
    if len(plain) <= _LONGEST_NUMBER and _NUMBER.fullmatch(plain):
        return float(plain) if set(plain) & set(".eE") else int(plain)
    return plain


def values_of(text: str, types: frozenset[str], form: TableForm) -> list[Any]:
    """Read a cell that holds a list; raises WrongCell."""
    return [value_of(entry, types, form) for entry in text.split(form.list_separator)]


class Writer:
    """Writes values as the cells of a table."""

    def __init__(self, form: TableForm) -> None:
        self._form = form
        self._marks = re.compile(f'["\r\n{re.escape(form.between_cells)}]')

    def value(self, value: Any, name: str) -> str:
        """A cell for a value of this name of an answer: nothing for null, a list as one text.

        >>> Writer(TableForm(delimiter=";", decimal=",")).value([0.5, 0.121], "blocks")
        '0,5 + 0,121'
        """
        if value is None:
            return ""
        if isinstance(value, str | list):
            return self.text(text_of(value, name, written=self._plain))
        return self.quoted(self._plain(value))

    def text(self, text: str) -> str:
        """A cell for a text of ours, which no spreadsheet is to run as a formula."""
        if text.startswith(_FORMULA) and not _SIGNED.fullmatch(text):
            text = f"'{text}"
        return self.quoted(text)

    def advisories(self, advised: Iterable[tuple[str, str, str]]) -> str:
        """A cell for advisories, each by its severity, code and message."""
        return self.text(advised_in_words(advised) or "")

    def quoted(self, text: str) -> str:
        """A text as it is, within quotes where it needs them."""
        if self._marks.search(text) is None:
            return text
        return '"' + text.replace('"', '""') + '"'

    def _plain(self, value: Any) -> str:
        return self.in_sign(to_json(value).decode())

    def in_sign(self, number: str) -> str:
        """A number, or several, in the decimal sign of the table."""
        return number.replace(".", ",") if self._form.decimal == "," else number
