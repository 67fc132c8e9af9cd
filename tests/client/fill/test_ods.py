"""Workbooks of OpenDocument are filled, and everything else in them is kept."""

from pathlib import Path

import pytest

from fill_support import cells_of, ods_cell, ods_row, ods_workbook, parts_of
from halfangle_client import Halfangle
from halfangle_client.fill import FileRefused, FillMap, fill

SETTING = FillMap("sine.setting", fixed={"units": "in"}, results={"height": "height"})
HEAD = ods_row(ods_cell("center_distance"), ods_cell("angle"), ods_cell(None, repeated="16382"))
BLANK = ods_row(ods_cell(None, repeated="16384"), repeated=1_048_570)
COLUMNS = '<table:table-column table:number-columns-repeated="2"/>'


def sheet(*rows: str, name: str = "Jobs", more: str = "") -> str:
    """A sheet of OpenDocument."""
    return f'<table:table table:name="{name}"{more}>{COLUMNS}{"".join(rows)}</table:table>'


def test_rows_and_cells_that_are_repeated(shop: Halfangle, tmp_path: Path) -> None:
    """Rows that stand for several are parted where they are filled; all else is kept."""
    rows = (
        HEAD,
        ods_row(ods_cell(5), ods_cell(30), ods_cell(None, repeated="16382"), repeated=3),
        ods_row(ods_cell(None, repeated="16384"), repeated=2),
        ods_row(ods_cell(7, repeated="2"), ods_cell(None, repeated="16382")),
        ods_row(ods_cell(5), ods_cell("8°18'")),
        BLANK,
    )
    source = ods_workbook(tmp_path / "in.ods", sheet(*rows))
    said = fill(shop, source, tmp_path / "out.ods", SETTING)
    found = cells_of(tmp_path / "out.ods")
    assert found[0] == ["center_distance", "angle", "height [in]", "advisories", "problem"]
    assert [row[2] for row in found[1:4]] == [pytest.approx(2.5)] * 3
    assert found[4] == found[5] == [""] * 5
    assert found[6][2] == pytest.approx(0.85308540)
    answer = shop.sine.setting(units="in", center_distance=5, angle="8°18'")
    assert found[7][2] == answer.result.height
    assert said.answered == 5
    before, after = parts_of(source), parts_of(tmp_path / "out.ods")
    assert next(iter(after)) == "mimetype"
    assert {n for n in before if before[n] != after[n]} == {"content.xml"}
    text = after["content.xml"].decode()
    assert 'number-rows-repeated="1048570"' in text
    assert '<table:table-column table:number-columns-repeated="3"/>' in text


def test_formulas_are_forgotten_in_all_sheets(shop: Halfangle, tmp_path: Path) -> None:
    """Stored values of formulas go, of other sheets too, and it is said; formulas stay."""
    formula = ods_cell(10, formula="of:=[.A2]*2")
    other = sheet(ods_row(ods_cell(99, formula="of:=SUM([Jobs.C2:.C9])")), name="Sum")
    rows = (HEAD, ods_row(ods_cell(5), ods_cell(30, formula="of:=15*2"), formula))
    source = ods_workbook(tmp_path / "in.ods", sheet(*rows) + other)
    said = fill(shop, source, tmp_path / "out.ods", SETTING.with_more(sheet="Jobs"))
    assert any("of all sheets, are dropped" in note for note in said.notes)
    text = parts_of(tmp_path / "out.ods")["content.xml"].decode()
    for kept in ("of:=[.A2]*2", "of:=SUM([Jobs.C2:.C9])", "of:=15*2"):
        assert f'table:formula="{kept}"/>' in text
    assert 'office:value="99"' not in text
    assert cells_of(tmp_path / "out.ods")[1][3] == pytest.approx(2.5)


def test_cells_that_are_no_numbers(shop: Halfangle, tmp_path: Path) -> None:
    """Times, dates, errors and formulas without a value are refused by the cell's name."""
    time = (
        '<table:table-cell office:value-type="time" office:time-value="PT08H18M00S">'
        "<text:p>08:18</text:p></table:table-cell>"
    )
    date = time.replace('"time"', '"date"').replace("08:18", "2026-01-02")
    error = ods_cell("#N/A", formula="of:=NA()")
    bare = '<table:table-cell table:formula="of:=1+1"/>'
    rows = [HEAD, *(ods_row(ods_cell(5), cell) for cell in (time, date, error, bare, ods_cell(30)))]
    source = ods_workbook(tmp_path / "in.ods", sheet(*rows))
    fill(shop, source, tmp_path / "out.ods", SETTING)
    problems = [row[4] for row in cells_of(tmp_path / "out.ods")[1:]]
    assert problems[0].startswith("B2 holds a time of day (08:18)")
    assert problems[1] == "B3 holds a date (2026-01-02)."
    assert problems[2] == "B4 holds the error #N/A."
    assert problems[3].startswith("B5 is a formula whose value is not stored")
    assert problems[4] == ""


def test_what_is_refused(shop: Halfangle, tmp_path: Path) -> None:
    """Protected sheets, encrypted files, merged headers and what is no workbook are refused."""
    row = ods_row(ods_cell(5), ods_cell(30))
    made = {
        "it is protected": (sheet(HEAD, row, more=' table:protected="true"'), ""),
        "it is encrypted": (sheet(HEAD, row), "<manifest:encryption-data/>"),
        r"A1:B1 are merged": (
            sheet(ods_row(ods_cell("angle", **{"number-columns-spanned": "2"})), row),
            "",
        ),
        "it is empty": (sheet(BLANK), ""),
    }
    for why, (body, manifest) in made.items():
        source = ods_workbook(tmp_path / "in.ods", body, manifest)
        with pytest.raises(FileRefused, match=why):
            fill(shop, source, tmp_path / "out.ods", SETTING)
    (tmp_path / "in.ods").write_bytes(b"PK")
    with pytest.raises(FileRefused, match="no workbook"):
        fill(shop, tmp_path / "in.ods", tmp_path / "out.ods", SETTING)
    assert [path.name for path in tmp_path.iterdir()] == ["in.ods"]
