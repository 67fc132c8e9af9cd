"""What every kind of file offers to be filled."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import BinaryIO, Protocol

from halfangle_client.fill.books.cells import Cell, Value


@dataclass(frozen=True, slots=True)
class Written:
    """A column that is filled: `header` is written where the column is new."""

    column: int
    header: str
    is_new: bool
    is_wide: bool = False


@dataclass(frozen=True, slots=True)
class Rows:
    """The rows of a sheet that are not blank: by number from 1, cells by column from 0."""

    cells: Mapping[int, Mapping[int, Cell]]
    #: How many columns are used, from the first on.
    width: int


class Sheet(Protocol):
    """One sheet of a file."""

    name: str

    def rows(self) -> Rows:
        """What stands in it."""
        ...

    def merged(self) -> Iterable[str]:
        """Ranges of merged cells, `A1:C1`."""
        ...

    def not_kept(self, written: Sequence[Written], header_row: int) -> list[str]:
        """What filling these columns cannot keep, a sentence each."""
        ...

    def put(
        self,
        written: Sequence[Written],
        header_row: int,
        values: Mapping[int, Sequence[Value]],
    ) -> None:
        """Write the headers of new columns, and values by row in the order of `written`."""
        ...


class Book(Protocol):
    """A file that is open: nothing is written before `save`."""

    #: Whether the decimal sign of its numbers is that of its text.
    is_text: bool

    def sheets(self) -> list[str]:
        """Names of its sheets, those of charts left out."""
        ...

    def sheet(self, name: str) -> Sheet:
        """Open one. Raises FileRefused where it may not be changed."""
        ...

    def save(self, target: BinaryIO) -> None:
        """Write the whole file."""
        ...
