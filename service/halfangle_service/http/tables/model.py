"""How a table is written, as its caller declares it: nothing of it is guessed."""

from typing import Annotated, Literal

from pydantic import Field

from halfangle_service.fields import RequestModel

TABLES_PATH = "/v1/tables/{operation}"
#: Media type of a table; the parameter is that of RFC 4180: the first line names the columns.
CSV = "text/csv"
CSV_ANSWERED = f"{CSV}; charset=utf-8; header=present"
#: Columns that every answered table has beside its results.
ADVISORIES, PROBLEM = "advisories", "problem"
#: Carries along every column that is no field of the request.
EVERY_OTHER = "*"
#: A table of more columns is a mistake of the delimiter, or no work for a request.
MOST_COLUMNS = 1_000

_TAB = "tab"
Name = Annotated[str, Field(min_length=1, max_length=20_000)]


class TableForm(RequestModel):
    """How a table is written, and which of its columns and of the results are wanted."""

    delimiter: Literal[",", ";", "tab"] = Field(",", description="Stands between cells.")
    decimal: Literal[".", ","] = Field(
        ".", description="Decimal sign of the table's numbers, both ways."
    )
    list_separator: Literal[";", "|"] = Field(
        ";", description="Stands between the entries of a list within one cell of a request."
    )
    columns: Annotated[list[Name], Field(max_length=MOST_COLUMNS)] = Field(
        default_factory=list,
        description="Result columns by name (`height`, `angle.dms`; `checks.0.verdict` for one of "
        "a list; an object's name for all of it), comma-separated or repeated. Absent: all that "
        "are no part of a list of objects.",
    )
    keep: Annotated[list[Name], Field(max_length=MOST_COLUMNS)] = Field(
        default_factory=list,
        description="Columns to carry along unread (a part number, a note), comma-separated or "
        "repeated; `*`: all that are no field of the request.",
    )

    @property
    def between_cells(self) -> str:
        """The delimiter as it is written."""
        return _written(self.delimiter)

    @property
    def is_ambiguous(self) -> bool:
        """True where a decimal comma stands between quotes, or parts two cells."""
        return self.delimiter == self.decimal

    @property
    def other_delimiters(self) -> dict[str, str]:
        """The delimiters that were not declared: how each is written, by its name."""
        return {name: _written(name) for name in (",", ";", _TAB) if name != self.delimiter}


def _written(delimiter: str) -> str:
    return "\t" if delimiter == _TAB else delimiter
