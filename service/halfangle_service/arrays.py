"""An operation's answers to a table of any size, where it lies: arrays in, arrays out.

    from halfangle_service.arrays import answer_arrays

    answer_arrays("sine.setting", {"units": "in", "center_distance": 5, "angle": frame["angle"]})

No service is asked: the same functions run here, on the engine that holds the table, a part of it
at a time (`client/examples/polars_settings.py`, `dask_settings.py`). What comes back is what
`POST /v1/tables/{operation}` writes beside each row: values by their dotted names, `advisories` and
`problem`.
"""

from collections.abc import Collection, Mapping
from typing import Any

import numpy as np
from numpy.typing import NDArray
from pydantic_core import from_json, to_json

from halfangle_service.columns import (
    AskedColumns,
    FlatField,
    advised_in_words,
    columns_of,
    flat_answer,
    flat_fields,
)
from halfangle_service.errors import Refusal
from halfangle_service.http.calculating import answer
from halfangle_service.http.picks import stands_at_stop
from halfangle_service.http.problems import ProblemError, problem_of_refusal
from halfangle_service.http.tables.flat import DOCUMENTS
from halfangle_service.http.tables.model import ADVISORIES, PROBLEM
from halfangle_service.http.tables.rows import problem_in_words
from halfangle_service.registry import AnyOperation, load_registry

Arrays = dict[str, NDArray[Any]]
_STOP = "stop"


def answer_arrays(
    operation: str, fields: Mapping[str, Any], wanted: Collection[str] | None = None
) -> Arrays:
    """Answer every row of a table by an operation's name; what it says of row n stands at n.

    A field is an array, or whatever has a length and entries, such as a column of a data frame; or
    one value that all rows have alike. NaN and None leave an optional field out of their rows.
    `wanted` are names of the result, all of them if it is None, and `advisories`: without these an
    operation that works out columns takes half the time, since some words differ from row to row.
    Numbers come as float64, NaN where there is none, all else as objects, None where there is
    none.

    A refused row has its reason in `problem`, and so has one whose answer says stop; its values are
    left out, but for a judgement that does not say yes. Operations without a column form work too,
    row by row.

    Raises KeyError for an operation, or a name, that there is not; ValueError for fields that are
    columns of unlike lengths, or none of which is a column.
    """
    found = load_registry().operations[operation]
    known = flat_fields(found.result)
    usual = [name for name, field in known.items() if field.path[-1] not in DOCUMENTS]
    names = [name for name in wanted or usual if name != ADVISORIES]
    chosen = {name: known[name] for name in names}
    asked = AskedColumns(found.request, fields)
    arrays: Arrays = {name: _empty(field, asked.rows) for name, field in chosen.items()}
    arrays |= {name: np.full(asked.rows, None, dtype=object) for name in (ADVISORIES, PROBLEM)}
    left = np.ones(asked.rows, dtype=np.bool_)
    if found.columns:
        in_words = wanted is None or ADVISORIES in wanted
        answered = columns_of(found, asked, names, in_words=in_words)
        arrays |= answered.columns
        if answered.words is not None:
            arrays[ADVISORIES] = answered.words
        left = answered.left | answered.stopped
    for row in np.flatnonzero(left).tolist():
        values = _by_row(found, asked.request_of(row), chosen)
        for name, array in arrays.items():
            value = values.get(name)
            array[row] = np.nan if value is None and array.dtype != object else value
    if wanted is not None and ADVISORIES not in wanted:
        del arrays[ADVISORIES]
    return arrays


def _empty(field: FlatField, rows: int) -> NDArray[Any]:
    """A column of which nothing is known yet."""
    if field.kind == "number":
        return np.full(rows, np.nan)
    return np.full(rows, None, dtype=object)


def _by_row(
    operation: AnyOperation, request: Mapping[str, Any], chosen: Mapping[str, FlatField]
) -> dict[str, Any]:
    """What the row form says to one row, by the names of the columns."""
    try:
        whole = from_json(answer(operation, to_json(request)))
    except Refusal as refusal:
        return {PROBLEM: problem_in_words(problem_of_refusal(refusal))}
    except ProblemError as error:
        return {PROBLEM: problem_in_words(error)}
    said = [(one["severity"], one["code"], one["message"]) for one in whole["advisories"]]
    stops = [one for one in said if one[0] == _STOP]
    values = flat_answer(whole["result"], chosen)
    if stops:
        values = {n: v if stands_at_stop(n, v) else None for n, v in values.items()}
    others = [one for one in said if one[0] != _STOP]
    return {**values, ADVISORIES: advised_in_words(others), PROBLEM: advised_in_words(stops)}
