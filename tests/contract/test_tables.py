"""What every published table promises: where each row comes from, its unit, and how it is had."""

import tomllib
from pathlib import Path
from typing import Any

import pytest

from halfangle_service.trade.tables.loader import OWED, citation, rows_of
from source_support import TRADE, relative

TABLES = sorted((TRADE / "tables").rglob("*.toml"))
ROW = {
    "name": "a row",
    "source": "ISO 296:1991",
    "clause": "table 2",
    "edition": "1991",
    "unit": "mm",
    "standing": "published",
}


@pytest.mark.parametrize("path", TABLES, ids=relative)
def test_every_published_table_says_where_its_rows_come_from(path: Path) -> None:
    """The loader takes each table as it is: each row, or the head of its file, says all it owes."""
    table = tomllib.loads(path.read_text("utf-8"))
    kinds = _kinds(table)
    assert kinds
    for kind in kinds:
        rows = rows_of(table, kind, path.name)
        assert all(len(row["source"]) > 5 for row in rows)
        assert all(citation(row).startswith(row["source"]) for row in rows)


def _kinds(table: dict[str, Any]) -> set[str]:
    """Names of the lists of tables in a file."""
    return {
        key
        for key, value in table.items()
        if isinstance(value, list) and value and isinstance(value[0], dict)
    }


@pytest.mark.parametrize("member", OWED)
@pytest.mark.parametrize("spoiled", ["missing", "empty", "blank"])
def test_a_row_that_does_not_say_it_is_refused(member: str, spoiled: str) -> None:
    """A row without source, clause, edition, unit or standing is refused, and named."""
    lacking = {key: value for key, value in ROW.items() if key != member}
    row = lacking if spoiled == "missing" else {**ROW, member: "" if spoiled == "empty" else "  "}
    with pytest.raises(ValueError, match=rf"t\.toml, taper 2 lacks {member}"):
        rows_of({"taper": [ROW, row]}, "taper", "t.toml")


def test_a_row_with_a_standing_of_its_own_making_is_refused() -> None:
    """A standing that is none of the four is refused."""
    with pytest.raises(ValueError, match="'hearsay' is no standing"):
        rows_of({"taper": [{**ROW, "standing": "hearsay"}]}, "taper", "t.toml")


def test_the_head_of_a_file_speaks_for_its_rows() -> None:
    """What the head says holds for every row that does not say otherwise itself."""
    head = {key: value for key, value in ROW.items() if key != "name"}
    rows = rows_of({**head, "taper": [{"name": "a"}, {"name": "b", "unit": "in"}]}, "taper", "t")
    assert [row["unit"] for row in rows] == ["mm", "in"]
    assert {row["standing"] for row in rows} == {"published"}


def test_a_clause_that_is_not_known_is_not_cited() -> None:
    """A citation is source and clause; where the clause is not known, the source alone."""
    assert citation(ROW) == "ISO 296:1991, table 2"
    assert citation({**ROW, "clause": "not known"}) == "ISO 296:1991"
