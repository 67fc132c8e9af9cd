"""Every cell of every published table is held by a transcription: a changed digit is noticed."""

import copy
import re
import tomllib
from collections.abc import Iterator
from typing import Any

import pytest

from halfangle_service.trade.tables import loader
from source_support import TRADE
from transcribed.every import CHECKS

TABLES = {
    path.relative_to(TRADE / "tables").as_posix(): tomllib.loads(path.read_text("utf-8"))
    for path in sorted((TRADE / "tables").rglob("*.toml"))
}
#: Where a row comes from, and what is said of it in words; whatever else has a digit is a cell.
WORDS = {*loader.OWED, "drill_standing", "note"}


def cells(
    part: Any, path: tuple[str | int, ...] = ()
) -> Iterator[tuple[tuple[str | int, ...], Any]]:
    """Every cell of a table, rows and lists within it too, with the path to it."""
    if isinstance(part, dict):
        for key, value in part.items():
            if key not in WORDS:
                yield from cells(value, (*path, key))
    elif isinstance(part, list):
        for place, value in enumerate(part):
            yield from cells(value, (*path, place))
    elif not isinstance(part, bool):
        yield path, part


def changed_digits(value: Any) -> Iterator[Any]:
    """A cell's value with the last digit of each number in it raised by one, 9 to 0.

    Of all its digits the last weighs least: a check that notices it notices the others.
    """
    text = str(value)
    for found in re.finditer("[0-9](?![0-9.])", text):
        digit = str((int(found[0]) + 1) % 10)
        yield type(value)(text[: found.start()] + digit + text[found.end() :])


@pytest.fixture
def tables(monkeypatch: pytest.MonkeyPatch) -> dict[str, dict[str, Any]]:
    """Every table as its loader reads it: a copy of it, which a test may change."""
    read = copy.deepcopy(TABLES)

    def read_toml(module: str, file: str) -> dict[str, Any]:
        return read[f"{module.split('.')[-2]}/{file}"]

    monkeypatch.setattr(loader, "read_toml", read_toml)
    return read


def noticed(name: str) -> bool:
    """True where the loader refuses the table, or its check finds it to differ."""
    try:
        return bool(CHECKS[name]())
    except (ValueError, LookupError, ArithmeticError):
        return True


def unnoticed(name: str, table: dict[str, Any]) -> list[str]:
    """Cells of a table, as it is read, of which a digit can be changed and nothing notices."""
    found = []
    for path, value in list(cells(table)):
        *folders, last = path
        place: Any = table
        for folder in folders:
            place = place[folder]
        for changed in changed_digits(value):
            place[last] = changed
            if not noticed(name):
                found.append(f"{'/'.join(map(str, path))}: {value} as {changed}")
        place[last] = value
    return found


def test_every_table_has_its_check() -> None:
    """No table stands without a transcription that holds it, and none is checked that is not."""
    assert set(CHECKS) == set(TABLES)


@pytest.mark.parametrize("name", CHECKS)
def test_a_changed_digit_in_any_cell_is_noticed(
    name: str, tables: dict[str, dict[str, Any]]
) -> None:
    """The last digit of any number in any cell, changed, is refused by the loader or found."""
    assert not noticed(name)
    assert not unnoticed(name, tables[name])


def test_a_column_that_nothing_reads_is_found(tables: dict[str, dict[str, Any]]) -> None:
    """A cell that is neither loaded nor held stands out: it can be changed unnoticed."""
    name = "tapers/shanks_steep_inch.toml"
    tables[name]["shank"][1]["spare"] = "7"
    assert unnoticed(name, tables[name]) == ["shank/1/spare: 7 as 8"]


def test_a_row_too_many_is_found(tables: dict[str, dict[str, Any]]) -> None:
    """A row that no transcription has is named."""
    name = "centers/holes_inch.toml"
    tables[name]["hole"].append({**tables[name]["hole"][0], "key": "plain-9"})
    assert CHECKS[name]() == ["plain-9 is not transcribed"]
