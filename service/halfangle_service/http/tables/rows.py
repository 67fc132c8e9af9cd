"""One row of a table: its request, and the cells that its answer adds."""

from collections.abc import Iterable

from pydantic_core import from_json, to_json

from halfangle_service.http.picks import stands_at_stop
from halfangle_service.http.problems import ProblemError
from halfangle_service.http.tables.asked import Filling
from halfangle_service.http.tables.cells import (
    Writer,
    WrongCell,
    WrongRecord,
    reader,
    value_of,
    values_of,
)
from halfangle_service.http.tables.flat import ResultColumn
from halfangle_service.http.tables.header import Header
from halfangle_service.http.tables.model import ADVISORIES, PROBLEM, TableForm
from halfangle_service.http.tables.units import spellings

_STOP = "stop"
_MOST_ERRORS = 5
_LONGEST_SHOWN = 200


class WrongRow(Exception):
    """A row that asks for nothing that can be answered: how it is shown, and why."""

    def __init__(self, shown: str, problem: str) -> None:
        super().__init__(problem)
        self.shown = shown
        self.problem = problem


class RowReader:
    """Reads rows as requests of the operation."""

    def __init__(self, form: TableForm, header: Header, alike: Filling) -> None:
        self._form = form
        self._header = header
        self._alike = alike
        self._cells_of = reader(form)
        self._writer = Writer(form)
        self._wide = len(header.names)

    def request(self, text: str) -> bytes:
        """The request of a row as JSON; raises WrongRow."""
        cells = self._cells(text)
        filling = self._alike.copy()
        for place, field in self._header.asked:
            cell = cells[place]
            if not cell.strip():
                continue
            try:
                if field.is_list:
                    filling.put(field, values_of(cell, field.types, self._form))
                else:
                    filling.put(field, value_of(cell, field.types, self._form))
            except WrongCell as error:
                raise WrongRow(text, f"{self._header.names[place]}: {error}") from None
        return to_json(filling.value())

    def blank(self) -> str:
        """A row without a word in its cells."""
        return self._form.between_cells * (self._wide - 1)

    def _cells(self, text: str) -> list[str]:
        """Part a row into as many cells as the header has; raises WrongRow."""
        try:
            cells = self._cells_of(text)
        except WrongRecord as error:
            # Sent back as it came it would take the rows after it into its open quote.
            raise WrongRow(self.whole_in_one_cell(text), str(error)) from None
        if len(cells) == self._wide:
            return cells
        shown = self._form.between_cells.join(map(self._writer.quoted, cells[: self._wide]))
        shown += self._form.between_cells * (self._wide - len(cells))
        raise WrongRow(shown, self._ragged(cells))

    def is_too_wide(self, text: str) -> bool:
        """True where a row has more cells than the header."""
        try:
            return len(self._cells_of(text)) > self._wide
        except WrongRecord:
            return False

    def whole_in_one_cell(self, text: str) -> str:
        """A row whose cells cannot be told apart, in the first of its cells."""
        return self._writer.quoted(text) + self.blank()

    def _ragged(self, cells: list[str]) -> str:
        said = f"the row has {len(cells)} cells, the header {self._wide}"
        surplus = self._form.between_cells.join(cells[self._wide :])
        if surplus:
            said += f"; past them stands: {surplus[:_LONGEST_SHOWN]}"
        if surplus and self._form.is_ambiguous:
            said += (
                ". Where the comma is both, numbers that have one stand in quotes: "
                "`delimiter=;` declares another"
            )
        return said


class ResultCells:
    """The cells that a table has beyond its own: results, `advisories`, `problem`."""

    def __init__(self, form: TableForm, header: Header, columns: Iterable[ResultColumn]) -> None:
        self._header = header
        self._columns = tuple((column.name, column) for column in columns)
        self._writer = Writer(form)
        self._between = form.between_cells
        self._none = self._between * len(self._columns)

    def heads(self) -> str:
        """What the header has beyond its own cells: each name, and its unit in brackets."""
        taken = set(self._header.names)
        heads = []
        for name, column in self._columns:
            unit = next(iter(spellings(column.units, self._header.lengths_in)), "")
            heads.append(f"{_apart(name, taken)} [{unit}]" if unit else _apart(name, taken))
        heads += [_apart(name, taken) for name in (ADVISORIES, PROBLEM)]
        return self._joined(map(self._writer.quoted, heads))

    def answered(self, answer: bytes) -> str:
        """The cells of an answer; where it says stop none that would be read without that."""
        whole = from_json(answer)
        result = whole["result"]
        advisories = [(one["severity"], one["code"], one["message"]) for one in whole["advisories"]]
        values = [(name, column.value(result)) for name, column in self._columns]
        stops = [one for one in advisories if one[0] == _STOP]
        if stops:
            values = [(n, v if stands_at_stop(n, v) else None) for n, v in values]
        others = [one for one in advisories if one[0] != _STOP]
        cells = [self._writer.value(value, name) for name, value in values]
        return self._joined([*cells, *map(self._writer.advisories, (others, stops))])

    def refused(self, problem: str) -> str:
        """The cells of a row that has no answer."""
        return f"{self._none}{self._between}{self._between}{self._writer.text(problem)}"

    def _joined(self, cells: Iterable[str]) -> str:
        """Further cells of a row."""
        return self._between + self._between.join(cells)


def problem_in_words(error: ProblemError) -> str:
    """A refusal in one cell: each field at fault by its column's name, and why.

    What the trade refuses has one reason for all its fields, and in it what would do.
    """
    columns = [_column(one["pointer"]) for one in error.errors]
    if error.name != "invalid-request":
        return ": ".join([*filter(None, [", ".join(filter(None, columns))]), error.detail])
    named = [
        f"{column}: {one['message']}" if column else one["message"]
        for column, one in zip(columns, error.errors[:_MOST_ERRORS], strict=False)
    ]
    more = len(columns) - len(named)
    rest = [f"and {more} more"] if more > 0 else []
    return "; ".join([*named, *rest]) or error.detail


def _column(pointer: str) -> str:
    """Name of the column that a pointer leads to: `/shank/kind` is `shank.kind`."""
    parts = pointer.split("/")[1:]
    return ".".join(part.replace("~1", "/").replace("~0", "~") for part in parts)


def _apart(name: str, taken: set[str]) -> str:
    """A name that no column of the table has: `result.` before it where one has it."""
    while name in taken:
        name = f"result.{name}"
    taken.add(name)
    return name
