"""Reading transcriptions, and what a table differs in from one."""

import csv
import math
from collections.abc import Iterator, Mapping
from decimal import Decimal
from fractions import Fraction
from functools import cache
from pathlib import Path
from typing import Any

from halfangle_service.trade.tables.loader import read_rows

TABLES = Path(__file__).parents[1] / "published/tables"

#: A row's cells by column.
Cells = Mapping[str, object]


@cache
def printed(name: str) -> list[dict[str, str]]:
    """Rows of a transcription; lines that begin with # are its head."""
    with (TABLES / name).open(encoding="utf-8") as file:
        return list(csv.DictReader(line for line in file if not line.startswith("#")))


@cache
def value(text: str) -> float | None:
    """A number as a table prints it: 0.25, .25, 1/4 or 2 11/32; None where the cell is empty.

    >>> value("2 11/32"), value(".10"), value("")
    (2.34375, 0.1, None)
    """
    if not text:
        return None
    return float(sum(Fraction(part) for part in text.split()))


def number(text: str) -> float:
    """A number that the transcription must have."""
    found = value(text)
    assert found is not None, "an empty cell"
    return found


def written(module: Any, kind: str) -> dict[str, dict[str, Any]]:
    """Rows of the service's tables of tapers as they are written, digits and all."""
    rows = [row for name in module._TABLES for row in read_rows(module.__name__, name, kind)]
    assert len({row["designation"] for row in rows}) == len(rows)
    return {row["designation"]: row for row in rows}


def half_unit(text: str) -> float:
    """Half of one in the last digit printed."""
    exponent = Decimal(text).as_tuple().exponent
    assert isinstance(exponent, int)
    return 0.5 * 10.0**exponent


#: One decade of the preferred numbers R10 (ISO 3:1973, from memory), 10 to the tenth rounded.
R10 = (1.0, 1.25, 1.6, 2.0, 2.5, 3.15, 4.0, 5.0, 6.3, 8.0)


def preferred(step: int) -> float:
    """The preferred number of the series R10 so many steps above 1.

    >>> preferred(-1), preferred(5), preferred(17)
    (0.8, 3.15, 50.0)
    """
    decade, place = divmod(step, 10)
    return round(R10[place] * 10.0**decade, 6)


def differences(found: Mapping[str, Cells], listed: Mapping[str, Cells]) -> list[str]:
    """Where a table differs from its transcription: rows that only one has, cells that differ.

    Every column that is loaded must be listed.
    """
    lines = [f"{key} is not transcribed" for key in found if key not in listed]
    lines += [f"{key} is missing" for key in listed if key not in found]
    return lines + [line for key in listed if key in found for line in _row(key, found, listed)]


def _row(key: str, found: Mapping[str, Cells], listed: Mapping[str, Cells]) -> Iterator[str]:
    if found[key].keys() != listed[key].keys():
        yield f"{key} has the columns {sorted(found[key].keys() ^ listed[key].keys())} on one side"
        return
    for column, ours in found[key].items():
        theirs = listed[key][column]
        if not _same(ours, theirs):
            yield f"{key}, {column}: {ours!r}, transcribed {theirs!r}"


def _same(ours: object, theirs: object) -> bool:
    if isinstance(ours, tuple) and isinstance(theirs, tuple):
        return len(ours) == len(theirs) and all(map(_same, ours, theirs))
    if isinstance(ours, float) and isinstance(theirs, float):
        return math.isclose(ours, theirs, rel_tol=1e-12)
    return ours == theirs
