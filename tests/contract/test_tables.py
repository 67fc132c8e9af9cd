"""What every published table promises: its source, unit and standing, row by row."""

import tomllib
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from source_support import TRADE, relative

STANDINGS = frozenset({"published", "derived", "from-memory", "common-practice-no-source"})


def table_rows(path: Path) -> Iterator[dict[str, Any]]:
    """Each table of a TOML file with what the tables around it say."""
    yield from _rows(tomllib.loads(path.read_text("utf-8")), {})


def _rows(table: dict[str, Any], around: dict[str, Any]) -> Iterator[dict[str, Any]]:
    plain = {k: v for k, v in table.items() if not _holds_tables(v)}
    inner = [v for v in table.values() if _holds_tables(v)]
    here = {**around, **plain}
    if not inner:
        yield here
    for value in inner:
        for part in value if isinstance(value, list) else [value]:
            yield from _rows(part, here)


def _holds_tables(value: Any) -> bool:
    if isinstance(value, dict):
        return True
    return isinstance(value, list) and bool(value) and all(isinstance(v, dict) for v in value)


TABLES = sorted((TRADE / "tables").rglob("*.toml"))


@pytest.mark.parametrize("path", TABLES, ids=relative)
def test_every_published_table_names_its_source(path: Path) -> None:
    """Each row, or the table around it, names source and edition, its unit, and how it is had."""
    rows = list(table_rows(path))
    assert rows
    for row in rows:
        assert len(row.get("source", "")) > 5, row
        assert any("unit" in name for name in row), row
        assert row.get("standing") in STANDINGS, row
