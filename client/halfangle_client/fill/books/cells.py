"""A cell as it is read, and how columns and ranges are named."""

import re
from bisect import bisect_left, bisect_right
from collections.abc import Sequence
from dataclasses import dataclass
from typing import TypeAlias

#: What a cell may hold, and what is written into one; None clears it.
Value: TypeAlias = float | int | str | bool | None

_REFERENCE = re.compile(r"\$?([A-Za-z]{1,3})\$?([0-9]{1,7})")
_LETTERS = re.compile(r"[A-Za-z]{1,3}")
#: The last column of a sheet, XFD, from 0.
LAST_COLUMN = 16_383
LAST_ROW = 1_048_576


@dataclass(frozen=True, slots=True)
class Cell:
    """A cell that is not blank.

    `problem` says why its value cannot be sent, as of a date or an error; `is_percent` that it is
    shown as a percentage, a hundred times what it holds; `has_formula` that a formula makes it.
    """

    value: Value
    problem: str = ""
    is_percent: bool = False
    has_formula: bool = False

    @property
    def is_blank(self) -> bool:
        """Whether it shows nothing, as a formula may."""
        return not self.problem and isinstance(self.value, str) and not self.value.strip()


@dataclass(frozen=True, slots=True)
class Range:
    """Cells from one corner to the other, rows from 1, columns from 0."""

    top: int
    left: int
    bottom: int
    right: int

    def rows_among(self, rows: Sequence[int]) -> Sequence[int]:
        """Those of some rows, in order, that it reaches over."""
        return rows[bisect_left(rows, self.top) : bisect_right(rows, self.bottom)]

    def meets(self, other: "Range") -> bool:
        """Whether the two share a cell."""
        down = self.top <= other.bottom and other.top <= self.bottom
        return down and self.left <= other.right and other.left <= self.right

    def __str__(self) -> str:
        return f"{reference(self.top, self.left)}:{reference(self.bottom, self.right)}"


def no_stored_value() -> Cell:
    """A formula of which nobody worked out the value."""
    why = (
        "is a formula whose value is not stored: open the file in its spreadsheet program and save "
        "it there first"
    )
    return Cell(None, why, has_formula=True)


def time_problem(shown: str) -> str:
    """What to say of a time of day where an angle or a number is wanted."""
    return (
        f"holds a time of day ({shown}), as a spreadsheet makes of 8:18: type an angle as 8°18' or "
        "8 18, into a cell formatted as text"
    )


def letters(column: int) -> str:
    """The letters of a column.

    >>> letters(0), letters(25), letters(26), letters(16383)
    ('A', 'Z', 'AA', 'XFD')
    """
    name = ""
    column += 1
    while column:
        column, rest = divmod(column - 1, 26)
        name = chr(ord("A") + rest) + name
    return name


def column_of(name: str) -> int | None:
    """The column that letters name; None where they name none.

    >>> column_of("A"), column_of("aa"), column_of("XFE"), column_of("A1")
    (0, 26, None, None)
    """
    if not _LETTERS.fullmatch(name):
        return None
    column = 0
    for letter in name.upper():
        column = 26 * column + ord(letter) - ord("A") + 1
    return column - 1 if column - 1 <= LAST_COLUMN else None


def reference(row: int, column: int) -> str:
    """A cell's name: `reference(2, 0)` is A2."""
    return f"{letters(column)}{row}"


def place_of(name: str) -> tuple[int, int] | None:
    """Row and column of a cell's name; None where it is none.

    >>> place_of("B3"), place_of("$B$3"), place_of("3B")
    ((3, 1), (3, 1), None)
    """
    found = _REFERENCE.fullmatch(name)
    column = column_of(found[1]) if found else None
    if found is None or column is None or not 1 <= int(found[2]) <= LAST_ROW:
        return None
    return int(found[2]), column


def range_of(name: str) -> Range | None:
    """The cells of a range's name, a single cell's too.

    >>> str(range_of("A1:B3")), range_of("Sheet")
    ('A1:B3', None)
    """
    first, _, last = name.partition(":")
    one, other = place_of(first), place_of(last or first)
    return Range(*one, *other) if one and other else None
