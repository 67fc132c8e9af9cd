"""Works out columns: the function that answers one request, run on arrays, path by path."""

from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray
from pydantic import BaseModel
from pydantic_core import from_json, to_json

from halfangle_service.columns.asked import AskedColumns, Places, Sort
from halfangle_service.columns.flat import FlatField, flat_fields, in_one_cell
from halfangle_service.columns.words import words_of
from halfangle_service.fields import Angle, ResultModel
from halfangle_service.fields.advisories import Severity
from halfangle_service.fields.angles import Direction
from halfangle_service.operation import Operation, Outcome
from halfangle_service.trade.angles import all_dm, all_dms
from halfangle_service.trade.columns import (
    Bools,
    Column,
    Floats,
    Mask,
    Parting,
    Tape,
    TextColumn,
)
from halfangle_service.trade.decimals import all_without_noise, without_noise

AnyOperation = Operation[Any, Any]
#: What an answer advises: severity and code of each, in its order.
Advised = tuple[tuple[Severity, str], ...]
#: Fewer rows are answered one by one in less time than one path takes.
_FEWEST_ROWS = 8
_STOP = "stop"
#: So often the function is run for one sort of rows; rows that are left then go one by one.
_MOST_RUNS = 400
_WRITTEN = {(Angle, "dms"): all_dms, (Direction, "dms"): all_dm}


class _NoColumn(Exception):
    """A list holds numbers of each row's own."""


@dataclass(frozen=True, slots=True)
class _Path:
    """Rows that take the same path through the calculation, with their outcome in columns."""

    rows: Places
    outcome: Outcome[ResultModel]
    tape: Tape
    """Knows the texts of the figures in the outcome's sentences."""


@dataclass(frozen=True)
class AnsweredColumns:
    """Answers of many rows.

    `columns` by the flat names of the result (`flat_fields`): numbers as float64, NaN where the
    answer says null; all else as Python's own in an array of objects, None for null. `advised` are
    the lists of advisories that occur, the empty one first; `advised_of` says which of them is a
    row's, `words` what they say to it, in one text (`advised_in_words`), None where there are none;
    no array of words where none were asked for. `left` are rows of which nothing is said here: the
    row form answers or refuses them.
    """

    columns: Mapping[str, NDArray[Any]]
    advised: tuple[Advised, ...]
    advised_of: Places
    words: NDArray[Any] | None
    left: Bools

    @property
    def stopped(self) -> Bools:
        """The rows whose answer says stop."""
        stops = [any(severity == _STOP for severity, _ in about) for about in self.advised]
        return np.array(stops, dtype=np.bool_)[self.advised_of]


def columns_of(
    operation: AnyOperation,
    asked: AskedColumns,
    wanted: Collection[str] | None = None,
    *,
    in_words: bool = True,
) -> AnsweredColumns:
    """Answer many rows of an operation that works out columns; `wanted` names of the result only.

    `in_words`: what rows are advised is written out, too. Raises KeyError for a name that the
    result has not, or that is no column.
    """
    fields = flat_fields(operation.result)
    chosen = [fields[name] for name in (fields if wanted is None else wanted)]
    columns: dict[str, NDArray[Any]] = {f.name: _empty(f, asked.rows) for f in chosen}
    advised: dict[Advised, int] = {(): 0}
    advised_of = np.zeros(asked.rows, dtype=np.intp)
    words = np.full(asked.rows, None, dtype=object) if in_words else None
    left = np.ones(asked.rows, dtype=np.bool_)
    for path in (path for sort in asked.sorts() for path in _paths(operation, sort)):
        advisories = path.outcome.advisories
        own = np.flatnonzero(_finite(path.outcome.result, len(path.rows)))
        if not len(own):
            continue
        rows = path.rows[own]
        try:
            parts = {field.name: _part(path, field, own) for field in chosen}
            texts = words_of(advisories, path.tape, own) if in_words else []
        except (ArithmeticError, ValueError, _NoColumn):
            continue
        for name, values in parts.items():
            columns[name][rows] = values
        if words is not None:
            words[rows] = texts
        said: Advised = tuple((a.severity, a.code) for a in advisories)
        advised_of[rows] = advised.setdefault(said, len(advised))
        left[rows] = False
    return AnsweredColumns(columns, tuple(advised), advised_of, words, left)


def _empty(field: FlatField, rows: int) -> NDArray[Any]:
    if field.kind == "number":
        return np.full(rows, np.nan)
    return np.full(rows, None, dtype=object)


def _paths(operation: AnyOperation, sort: Sort) -> Iterator[_Path]:
    """The paths that rows take through the calculation."""
    try:
        request = operation.request.model_validate_json(to_json(sort.first))
    except ValueError:
        # What all rows have alike is refused: so each row's own answer says.
        return
    waiting = [(np.arange(len(sort.rows)), Tape([]))]
    for _ in range(_MOST_RUNS):
        if not waiting:
            return
        rows, tape = waiting.pop()
        if len(rows) < _FEWEST_ROWS:
            continue
        columns = {
            name: (TextColumn if as_text else Column)(values.take(rows), tape)
            for name, (values, as_text) in sort.numbers.items()
        }
        try:
            # What leaves the range of arithmetic is found in the result, as for one row.
            with np.errstate(all="ignore"):
                outcome = operation.outcome(request.model_copy(update=columns))
        except Parting as parting:
            # Not worked out twice: what was worked out before the rows parted.
            for part in (np.flatnonzero(parting.where), np.flatnonzero(~parting.where)):
                waiting.append((rows.take(part), tape.of(part)))
        except Exception:  # noqa: S112  refused, or not made for columns: by the row form
            continue
        else:
            yield _Path(sort.rows[rows], outcome, tape)


def _part(path: _Path, field: FlatField, own: Places) -> NDArray[Any]:
    """A column of some rows of a path, or the one value of them all; raises _NoColumn."""
    *above, last = field.path
    holder: Any = path.outcome.result
    for name in above:
        holder = None if holder is None else getattr(holder, name)
    value = None if holder is None else getattr(holder, last, None)
    written = _WRITTEN.get((type(holder), last))
    if written is not None and isinstance(holder.degrees, Column):
        part: NDArray[Any] = written(holder.degrees.values[own])
        return part
    if isinstance(value, Column):
        return _as_answered(value.values[own], field)
    if isinstance(value, Mask):
        return value.where[own].astype(object)
    if isinstance(value, list | tuple):
        if any(isinstance(entry, Column | Mask) for entry in value):
            raise _NoColumn
        value = in_one_cell([*map(_as_written, value)], field.name)
    if isinstance(value, str):
        return np.array(path.tape.sentences(value, own) or [value], dtype=object)
    if field.kind == "number":
        return _as_answered(np.full(1, np.nan if value is None else value), field)
    return np.full(1, value, dtype=object)


def _as_written(value: Any) -> Any:
    """An entry of a list, as the answer writes it."""
    return value if isinstance(value, str) else from_json(without_noise(to_json(value)))


def _as_answered(values: Floats, field: FlatField) -> NDArray[Any]:
    """Numbers as an answer writes them: without noise, whole where they count."""
    if field.kind == "count":
        return np.array([int(value) for value in values.tolist()], dtype=object)
    settled, doubtful = all_without_noise(values)
    if len(doubtful):
        settled = settled.copy()
        for place in doubtful.tolist():
            settled[place] = float(without_noise(to_json(float(values[place]))))
    return settled


def _finite(result: ResultModel, rows: int) -> Bools:
    """Rows all of whose numbers are finite, those that are not asked for too."""
    fine = np.ones(rows, dtype=np.bool_)
    for column in _columns_in(result):
        fine &= np.isfinite(column.values)
    return fine


def _columns_in(value: Any) -> Iterator[Column]:
    if isinstance(value, Column):
        yield value
    elif isinstance(value, BaseModel):
        for part in value.__dict__.values():
            yield from _columns_in(part)
    elif isinstance(value, list | tuple | dict):
        for part in value.values() if isinstance(value, dict) else value:
            yield from _columns_in(part)
