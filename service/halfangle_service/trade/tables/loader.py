"""The published tables, each a TOML file beside the module that reads it, and what each row owes.

A row states where it comes from itself or by the head of its file. One that lacks any of that is
refused here, once for all tables. This module imports nothing of the project, so that the maths may
read its tables with it.
"""

import tomllib
from collections.abc import Mapping
from importlib.resources import files
from typing import Any, Literal, cast, get_args

Standing = Literal["published", "derived", "common-practice-no-source", "from-memory"]
#: What every row states. Where a clause or an edition is not known, the file says 'not known'.
OWED = ("source", "clause", "edition", "unit", "standing")
NOT_KNOWN = "not known"


def read_toml(module: str, name: str) -> dict[str, Any]:
    """Read the file of this name beside a module, which gives its own `__name__`."""
    package, _, _ = module.rpartition(".")
    return tomllib.loads(files(package).joinpath(name).read_text("utf-8"))


def read_rows(module: str, name: str, kind: str) -> list[dict[str, Any]]:
    """Rows `[[kind]]` of the table of this file name, each with what the file's head says of all.

    Raises ValueError at a row that does not say where it comes from. Nothing is kept: the module
    keeps what it makes of the rows.
    """
    return rows_of(read_toml(module, name), kind, name)


def rows_of(table: Mapping[str, Any], kind: str, name: str) -> list[dict[str, Any]]:
    """Rows `[[kind]]` of a table as read; `name` is the file's, for what is refused."""
    head = {key: value for key, value in table.items() if not _holds_rows(value)}
    rows = [{**head, **row} for row in table[kind]]
    for place, row in enumerate(rows, start=1):
        _require_owed(row, f"{name}, {kind} {place}")
    return rows


def citation(row: Mapping[str, Any]) -> str:
    """Where a row comes from, as an answer cites it: source, then clause where one is known."""
    known = [row[key] for key in ("source", "clause") if row[key] != NOT_KNOWN]
    return ", ".join(known)


def standing(row: Mapping[str, Any]) -> Standing:
    """How a row is had."""
    return cast("Standing", row["standing"])


def _require_owed(row: Mapping[str, Any], where: str) -> None:
    missing = [key for key in OWED if not (isinstance(row.get(key), str) and row[key].strip())]
    if missing:
        raise ValueError(f"{where} lacks {', '.join(missing)}")
    if row["standing"] not in get_args(Standing):
        raise ValueError(f"{where}: {row['standing']!r} is no standing")


def _holds_rows(value: object) -> bool:
    return isinstance(value, list) and bool(value) and all(isinstance(v, dict) for v in value)
