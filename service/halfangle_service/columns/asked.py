"""What is asked of many rows: fields as arrays, or as one value that all rows have alike."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from typing import Any

import numpy as np
from numpy.typing import NDArray

from halfangle_service.fields import RequestModel
from halfangle_service.fields.schemas import schema_of
from halfangle_service.trade.angles import parse_dms
from halfangle_service.trade.columns import Bools, Floats

Places = NDArray[np.intp]
#: A number of a row: left out, sent as a number, or as text in degrees, minutes and seconds.
_ABSENT, _NUMBER, _TEXT = 0, 1, 2
#: So many sorts of rows are worked out as columns, the most frequent ones.
_MOST_SORTS = 64


@dataclass(frozen=True, slots=True)
class NumberField:
    """A field of a request that may be a column of numbers, and the bounds of its schema."""

    name: str
    is_angle: bool
    gt: float | None = None
    ge: float | None = None
    lt: float | None = None
    le: float | None = None

    def holds(self, values: Floats) -> Bools:
        """Where a number is finite and within the bounds."""
        within = np.isfinite(values)
        with np.errstate(invalid="ignore"):
            for bound, keeps in (
                (self.gt, np.greater),
                (self.ge, np.greater_equal),
                (self.lt, np.less),
                (self.le, np.less_equal),
            ):
                if bound is not None:
                    within &= keeps(values, bound)
        return within


@cache
def _properties(request: type[RequestModel]) -> Mapping[str, Any]:
    """Schemas of the fields of a request."""
    properties: Mapping[str, Any] = schema_of(request)["properties"]
    return properties


def number_fields(request: type[RequestModel]) -> Mapping[str, NumberField]:
    """The fields of a request that may be columns of numbers, with their bounds."""
    return _number_fields(request)


@cache
def _number_fields(request: type[RequestModel]) -> Mapping[str, NumberField]:
    properties = _properties(request)
    found = {}
    for name, schema in properties.items():
        forms = schema.get("anyOf", [schema])
        if any(form.get("type") == "number" for form in forms):
            found[name] = NumberField(
                name,
                any(form.get("type") == "string" for form in forms),
                schema.get("exclusiveMinimum"),
                schema.get("minimum"),
                schema.get("exclusiveMaximum"),
                schema.get("maximum"),
            )
    return found


@dataclass(frozen=True, slots=True)
class NumberColumn:
    """Numbers of all rows; of each whether it was left out, sent as a number, or as text."""

    values: Floats
    state: NDArray[np.int8]


@dataclass(frozen=True, slots=True)
class Sort:
    """Rows that state the same fields, and have alike whatever is no column of numbers."""

    rows: Places
    numbers: Mapping[str, tuple[Floats, bool]]
    """Numbers by field, of these rows only, and whether they came as text."""
    same: Mapping[str, Any]
    """What these rows have alike."""

    @property
    def first(self) -> dict[str, Any]:
        """The request of the first row."""
        return {**self.same, **{n: float(values[0]) for n, (values, _) in self.numbers.items()}}


class AskedColumns:
    """Requests of many rows by fields.

    A field is an array or a sequence, one entry a row, or one value for all rows. NaN and None say
    that a row leaves the field out. Angles may come as text; units and options may differ, too.
    """

    def __init__(self, request: type[RequestModel], fields: Mapping[str, Any]) -> None:
        """Read the fields; raises ValueError for columns of unlike lengths, or for none."""
        known = number_fields(request)
        schema = _properties(request)
        self.same: dict[str, Any] = {}
        self._given: dict[str, Sequence[Any] | NDArray[Any]] = {}
        for name, value in fields.items():
            if _is_column_of(value, schema.get(name, {})):
                self._given[name] = value
            else:
                self.same[name] = value
        lengths = {name: len(column) for name, column in self._given.items()}
        if len(set(lengths.values())) != 1:
            said = ", ".join(f"{name} {length}" for name, length in lengths.items())
            raise ValueError(
                f"columns of one length are needed, one at least; got {said or 'none'}"
            )
        self.rows: int = next(iter(lengths.values()))
        self.fits = np.ones(self.rows, dtype=np.bool_)
        self._numbers: dict[str, NumberColumn] = {}
        self._others: dict[str, list[Any]] = {}
        for name, column in self._given.items():
            if name in known:
                self._numbers[name] = read = _numbers_of(column, known[name])
                self.fits &= (read.state == _ABSENT) | known[name].holds(read.values)
            else:
                self._others[name] = np.asarray(column, dtype=object).tolist()

    def request_of(self, row: int) -> dict[str, Any]:
        """The request of one row, as it would be sent; what it leaves out is not in it."""
        own = {name: _plain(column[row]) for name, column in self._given.items()}
        return {**self.same, **{name: v for name, v in own.items() if v is not None}}

    def sorts(self) -> Iterator[Sort]:
        """Rows whose numbers are within bounds, by what they state; the most frequent sorts."""
        code = np.zeros(self.rows, dtype=np.intp)
        for column in self._numbers.values():
            code = code * 3 + column.state
        others: dict[str, list[Any]] = {}
        for name, values in self._others.items():
            others[name] = distinct = list(dict.fromkeys(map(_key, values)))
            place = {key: at for at, key in enumerate(distinct)}
            code = code * len(distinct) + np.array([place[_key(v)] for v in values], np.intp)
            code = np.unique(code, return_inverse=True)[1]
        fit = np.flatnonzero(self.fits)
        codes, sort_of = np.unique(code[fit], return_inverse=True)
        counts = np.bincount(sort_of, minlength=len(codes))
        for which in np.argsort(-counts, kind="stable")[:_MOST_SORTS]:
            yield self._sort(fit if len(codes) == 1 else fit[sort_of == which])

    def _sort(self, rows: Places) -> Sort:
        first = rows[0]
        stated = {n: c for n, c in self._numbers.items() if c.state[first] != _ABSENT}
        whole = len(rows) == self.rows
        numbers = {
            name: (c.values if whole else c.values[rows], bool(c.state[first] == _TEXT))
            for name, c in stated.items()
        }
        others = {name: _plain(values[first]) for name, values in self._others.items()}
        return Sort(
            rows, numbers, {**self.same, **{n: v for n, v in others.items() if v is not None}}
        )


def _is_column_of(value: Any, schema: Mapping[str, Any]) -> bool:
    """True where a field comes as one entry a row; a list of a field that takes lists does not."""
    if schema.get("type") == "array" or isinstance(value, str | bytes | Mapping):
        return False
    return hasattr(value, "__len__") and hasattr(value, "__getitem__")


def _numbers_of(column: Any, field: NumberField) -> NumberColumn:
    """Numbers of a column; what is neither number nor angle is as one that is out of bounds."""
    array = np.asarray(column)
    if array.dtype.kind in "fiu" and array.ndim == 1:
        values = array.astype(np.float64)
        return NumberColumn(values, (~np.isnan(values)).astype(np.int8))
    values = np.full(len(column), np.inf)
    state = np.full(len(column), _NUMBER, dtype=np.int8)
    for row, entry in enumerate(column):
        plain = _plain(entry)
        if plain is None:
            state[row] = _ABSENT
        elif isinstance(plain, str) and field.is_angle:
            state[row], values[row] = _TEXT, _angle_of(plain)
        elif isinstance(plain, int | float) and not isinstance(plain, bool):
            values[row] = plain
    return NumberColumn(values, state)


def _angle_of(text: str) -> float:
    try:
        return parse_dms(text)
    except ValueError:
        return np.inf


def _plain(entry: Any) -> Any:
    """An entry as Python's own; None for what says that a field is left out."""
    own = entry.item() if isinstance(entry, np.generic) else entry
    return None if isinstance(own, float) and own != own else own  # noqa: PLR0124  NaN


def _key(entry: Any) -> Any:
    """What tells entries apart: 1, 1.0 and true are not the same."""
    own = _plain(entry)
    return (type(own).__name__, own if isinstance(own, str | int | float) else repr(own))
