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
from halfangle_service.fields import Angle, ResultModel
from halfangle_service.fields.advisories import Severity
from halfangle_service.fields.angles import Direction
from halfangle_service.operation import Operation, Outcome
from halfangle_service.trade.angles import all_dm, all_dms
from halfangle_service.trade.columns import (
    SOME_FIGURE,
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
#: So often the function is run for one sort of rows; rows that are left then go one by one.
_MOST_RUNS = 400
_WRITTEN = {(Angle, "dms"): all_dms, (Direction, "dms"): all_dm}


@dataclass(frozen=True)
class AnsweredColumns:
    """Answers of many rows.

    `columns` by the flat names of the result (`flat_fields`): numbers as float64, NaN where the
    answer says null; all else as Python's own in an array of objects, None for null. `advised` are
    the lists of advisories that occur, the empty one first; `advised_of` says which of them is a
    row's, and `messages` holds their words, in which `SOME_FIGURE` stands for a figure of each
    row's own. `left` are rows of which nothing is said here: the row form answers or refuses them.
    """

    columns: Mapping[str, NDArray[Any]]
    advised: tuple[Advised, ...]
    messages: tuple[tuple[str, ...], ...]
    advised_of: Places
    left: Bools


def columns_of(
    operation: AnyOperation,
    asked: AskedColumns,
    wanted: Collection[str] | None = None,
) -> AnsweredColumns:
    """Answer many rows of an operation that works out columns; `wanted` names of the result only.

    Raises KeyError for a name that the result has not, or that is no column.
    """
    fields = flat_fields(operation.result)
    chosen = [fields[name] for name in (fields if wanted is None else wanted)]
    columns: dict[str, NDArray[Any]] = {f.name: _empty(f, asked.rows) for f in chosen}
    advised: dict[tuple[Advised, tuple[str, ...]], int] = {((), ()): 0}
    advised_of = np.zeros(asked.rows, dtype=np.intp)
    left = np.ones(asked.rows, dtype=np.bool_)
    for sort in asked.sorts():
        for rows, outcome in _paths(operation, sort):
            parts = _parts(outcome.result, chosen)
            fine = _finite(outcome.result, len(rows))
            if parts is None:
                continue
            for name, values in parts.items():
                columns[name][rows] = values
            said: Advised = tuple((a.severity, a.code) for a in outcome.advisories)
            words = tuple(a.message for a in outcome.advisories)
            advised_of[rows] = advised.setdefault((said, words), len(advised))
            left[rows] = ~fine
    said_of, words_of = zip(*advised, strict=True)
    return AnsweredColumns(columns, said_of, words_of, advised_of, left)


def _empty(field: FlatField, rows: int) -> NDArray[Any]:
    if field.kind == "number":
        return np.full(rows, np.nan)
    return np.full(rows, None, dtype=object)


def _paths(operation: AnyOperation, sort: Sort) -> Iterator[tuple[Places, Outcome[ResultModel]]]:
    """Rows that take the same path through the calculation, with their outcome in columns."""
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
            yield sort.rows[rows], outcome


def _parts(result: ResultModel, chosen: Collection[FlatField]) -> dict[str, NDArray[Any]] | None:
    """The columns of one path; None where a text holds a figure of each row's own."""
    parts = {}
    for field in chosen:
        *above, last = field.path
        holder: Any = result
        for name in above:
            holder = None if holder is None else getattr(holder, name)
        value = None if holder is None else getattr(holder, last, None)
        written = _WRITTEN.get((type(holder), last))
        if written is not None and isinstance(holder.degrees, Column):
            parts[field.name] = written(holder.degrees.values)
        elif isinstance(value, Column):
            parts[field.name] = _as_answered(value.values, field)
        elif isinstance(value, Mask):
            parts[field.name] = value.where.astype(object)
        elif isinstance(value, list | tuple):
            if any(
                isinstance(entry, Column | Mask) or SOME_FIGURE in str(entry) for entry in value
            ):
                return None
            cell = in_one_cell([*map(_as_written, value)], field.name)
            parts[field.name] = np.full(1, cell, dtype=object)
        elif isinstance(value, str) and SOME_FIGURE in value:
            return None
        elif field.kind == "number":
            parts[field.name] = _as_answered(np.full(1, np.nan if value is None else value), field)
        else:
            parts[field.name] = np.full(1, value, dtype=object)
    return parts


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
