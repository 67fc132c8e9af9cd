"""The first line of a table: which column states which field of the request."""

from collections.abc import Iterator
from dataclasses import dataclass
from difflib import get_close_matches

from halfangle_service.fields.base import UNITS
from halfangle_service.http.problems import ProblemError, pointer_to
from halfangle_service.http.tables.asked import Asked, NoField, RequestFields
from halfangle_service.http.tables.cells import WrongRecord, reader
from halfangle_service.http.tables.declared import Declared
from halfangle_service.http.tables.model import EVERY_OTHER, MOST_COLUMNS, TableForm
from halfangle_service.http.tables.records import Record, TooLong
from halfangle_service.http.tables.units import OF_THE_ROW, name_and_unit, spellings

BOM = b"\xef\xbb\xbf"
_OTHER_BOMS = {b"\xff\xfe": "UTF-16", b"\xfe\xff": "UTF-16"}
_MOST_NAMED = 8
#: So like a field's name is a slip of it, not a name of the caller's own.
_A_SLIP = 0.85


@dataclass(frozen=True, slots=True)
class Header:
    """The columns of a table: their names, and the place and field of each that is read.

    `text` is the line as it came, without its end; `lengths_in` the unit of lengths in headers.
    """

    text: str
    line_end: str
    names: tuple[str, ...]
    asked: tuple[tuple[int, Asked], ...]
    lengths_in: str
    has_bom: bool


class Wrong(Exception):
    """A column that cannot be taken, and why."""


def read_header(record: Record, declared: Declared, fields: RequestFields) -> Header:
    """Read the first line; raises ProblemError, which names every column that is wrong."""
    if isinstance(record, TooLong):
        raise _refused("is longer than a request's body may be")
    has_bom = record.startswith(BOM)
    text, line_end = _text(record.removeprefix(BOM))
    cells = _cells(text, declared.form)
    columns = _Columns(declared, fields, [name_and_unit(cell) for cell in cells])
    errors = [*columns.errors()]
    if errors:
        named = "; ".join(f"{e['pointer']}: {e['message']}" for e in errors[:3])
        more = f"; and {len(errors) - 3} more" if len(errors) > 3 else ""
        raise ProblemError("invalid-request", f"{named}{more}.", errors=errors)
    return Header(
        text,
        line_end or "\r\n",
        tuple(columns.names),
        tuple(columns.asked.items()),
        columns.lengths_in,
        has_bom,
    )


def _text(record: bytes) -> tuple[str, str]:
    """The line as text, and its end."""
    for mark, coding in _OTHER_BOMS.items():
        if record.startswith(mark):
            raise _refused(f"begins as {coding} does; write the table as UTF-8")
    try:
        text = record.decode()
    except UnicodeDecodeError as error:
        raise _refused(f"is not UTF-8: byte {error.start + 1} cannot be read") from None
    line = text.removesuffix("\n").rstrip("\r")
    if "\0" in line:
        raise _refused("holds a NUL: it is no text, or not UTF-8")
    if "\r" in line and "\n" not in text:
        raise _refused(
            "ends with a carriage return alone; lines end with a line feed, or with both"
        )
    return line, text[len(line) :]


def _cells(text: str, form: TableForm) -> list[str]:
    try:
        cells = reader(form)(text)
    except WrongRecord as error:
        raise _refused(f"cannot be read: {error}") from None
    if len(cells) > MOST_COLUMNS:
        raise _refused(f"has {len(cells)} columns; a table has at most {MOST_COLUMNS}")
    if not text.strip():
        raise _refused("is empty: the first line names the columns")
    if len(cells) == 1:
        for name, sign in form.other_delimiters.items():
            if sign in text:
                raise _refused(
                    f"has {name} between its names and no {form.delimiter}: "
                    f"`delimiter={name}` declares that"
                )
    return cells


class _Columns:
    """What each column states."""

    def __init__(
        self, declared: Declared, fields: RequestFields, headers: list[tuple[str, str | None]]
    ) -> None:
        self.names = [name for name, _ in headers]
        self.asked: dict[int, Asked] = {}
        self._declared = declared
        self._fields = fields
        self._headers = headers
        self._keep = set(_listed(declared.form.keep, self.names))
        self.lengths_in = OF_THE_ROW if UNITS in self.names else declared.units

    def errors(self) -> Iterator[dict[str, str]]:
        """Take each column in turn; give what is wrong with those that cannot be taken."""
        seen: set[str] = set()
        for place, (name, unit) in enumerate(self._headers):
            try:
                if name in seen:
                    raise Wrong("stands twice in the header")
                seen.add(name)
                self._take(place, name, unit)
            except Wrong as error:
                yield {"pointer": pointer_to("columns", name or place + 1), "message": str(error)}
        for name in sorted(self._keep - seen - {EVERY_OTHER}):
            near = get_close_matches(name, self.names, n=1)
            hint = f"; did you mean {near[0]}?" if near else ""
            yield {"pointer": "/keep", "message": f"{name[:60]!r} is no column{hint}"}

    def _take(self, place: int, name: str, unit: str | None) -> None:
        if name in self._keep:
            return
        try:
            field = self._fields.find(name)
        except NoField as error:
            if EVERY_OTHER not in self._keep:
                said = "has no name" if not name else str(error)
                raise Wrong(f"{said}; `keep` carries a column along unread") from None
            near = self._fields.near(name, _A_SLIP)
            if near:
                raise Wrong(
                    f"is nearly {near[0]}: write that, or carry it along by its own name in `keep`"
                ) from None
            return
        if name in self._declared.claims:
            raise Wrong("is stated in the address, too")
        try:
            self._declared.claims.claim(name, field)
        except NoField as error:
            raise Wrong(str(error)) from None
        self._check_unit(field, unit)
        self.asked[place] = field

    def _check_unit(self, field: Asked, unit: str | None) -> None:
        """Refuse a unit in the header that is not the field's own."""
        if unit is None:
            return
        right = spellings(field.units, self.lengths_in or OF_THE_ROW)
        if unit in right:
            return
        if not right:
            raise Wrong(f"has no unit of its own, so no [{unit[:20]}] in the header")
        if right[0] == OF_THE_ROW:
            raise Wrong(
                f"is in the `units` that each row states, not in {unit[:20]}: write no unit, "
                "or state `units` in the address"
            )
        raise Wrong(f"is in {right[0]}, not in {unit[:20]}")


def _listed(given: list[str], names: list[str]) -> Iterator[str]:
    """Names of columns: a text that is none itself holds several, with commas between."""
    for text in given:
        if text in names:
            yield text
        else:
            yield from (part.strip() for part in text.split(","))


def _refused(message: str) -> ProblemError:
    errors = [{"pointer": "/columns", "message": message}]
    return ProblemError("invalid-request", f"The first line {message}.", errors=errors)
