"""Workbooks are filled, and everything else in them is kept."""

import re
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
import xlsxwriter

from fill_support import ANGLES, cells_of, parts_of, rewritten
from halfangle_client import Halfangle
from halfangle_client.fill import FileRefused, Filled, FillMap, fill

SHEET = "xl/worksheets/sheet1.xml"
FEET = "surface_speed_ft_per_min"
SETTING = FillMap("sine.setting", fixed={"units": "in"}, results={"height": "height"})
PLATES = SETTING.with_more(sheet="Plates", header_row=3)
Make = Callable[[xlsxwriter.Workbook, Any], object]


def made(path: Path, make: Make) -> Path:
    """A workbook of one sheet: headers of a setting in row 1, the rest as told."""
    book = xlsxwriter.Workbook(str(path))
    sheet = book.add_worksheet("Jobs")
    sheet.write_row("A1", ["center_distance", "angle"])
    make(book, sheet)
    book.close()
    return path


def filled(shop: Halfangle, tmp_path: Path, make: Make, said: FillMap = SETTING) -> list[list[Any]]:
    """The rows of such a workbook once it is filled, the headers first."""
    source = made(tmp_path / "in.xlsx", make)
    fill(shop, source, tmp_path / "out.xlsx", said)
    return cells_of(tmp_path / "out.xlsx")


@pytest.fixture(scope="module")
def rich_filled(
    shop: Halfangle, rich: Path, tmp_path_factory: pytest.TempPathFactory
) -> tuple[Path, Filled]:
    """The rich workbook, filled."""
    target = tmp_path_factory.mktemp("filled") / "plates.xlsx"
    said = PLATES.with_more(fixed={"units": "in"}, results={"Height": "height", "dms": "angle.dms"})
    return target, fill(shop, rich, target, said)


def test_every_other_part_is_kept(rich: Path, rich_filled: tuple[Path, Filled]) -> None:
    """Of all parts only the sheet filled, and sheets whose formulas are forgotten, are changed."""
    before, after = parts_of(rich), parts_of(rich_filled[0])
    changed = {name for name in before if before[name] != after[name]}
    assert list(before) == list(after)
    assert changed == {SHEET, "xl/worksheets/sheet2.xml"}
    kinds = ("chart", "drawing", "media", "comments", "styles", "table", "sharedStrings", "theme")
    assert all(any(kind in name for name in before) for kind in kinds)


def test_what_the_sheet_held_is_kept(rich: Path, rich_filled: tuple[Path, Filled]) -> None:
    """Formulas, formats, validations, panes, sparklines and merged cells stand as they did."""
    part = SHEET
    before, after = parts_of(rich)[part].decode(), parts_of(rich_filled[0])[part].decode()
    for piece in ("conditionalFormatting", "dataValidations", "sheetViews", "mergeCells", "extLst"):
        start, end = f"<{piece}", f"</{piece}>"
        kept = before[before.index(start) : before.rindex(end)]
        assert kept in after, piece
    formulas = [text.partition("</f>")[0] for text in before.split("<f")[1:] if "</f>" in text]
    assert [f for f in formulas if f"<f{f}</f></c>" not in after] == []


def test_values_are_those_of_the_service(shop: Halfangle, rich_filled: tuple[Path, Filled]) -> None:
    """Each row holds what the service answers to it, each refused one why, and nothing else."""
    path, said = rich_filled
    rows = cells_of(path, "Plates")
    assert rows[2][4:] == ["Height [in]", "dms", "advisories", "problem"]
    for row, angle in zip(rows[3:], ANGLES, strict=False):
        if angle == 95:
            assert row[4:6] == ["", ""]
            assert row[7] == "/angle: should be less than 90°; got 95."
            continue
        answer = shop.sine.setting(units="in", center_distance=5, angle=angle)
        assert row[4:6] == [answer.result.height, answer.result.angle.dms]
        assert (row[6] == "") == (not answer.advisories)
    assert (said.rows, said.answered, said.refused, said.cautioned) == (12, 11, 1, 1)


def test_new_columns_look_like_their_neighbour(
    rich: Path, rich_filled: tuple[Path, Filled]
) -> None:
    """Headers have the neighbour's style, values its frame, but not its two decimals."""
    part = SHEET
    text = parts_of(rich_filled[0])[part].decode()
    styles = {name: text.partition(f'<c r="{name}" s="')[2].partition('"')[0] for name in
              ("D3", "E3", "H3", "D4", "E4", "A4")}  # fmt: skip
    assert styles["E3"] == styles["H3"] == styles["D3"]
    assert styles["E4"] == styles["A4"] != styles["D4"]
    assert '<col min="5" max="5" width="16" customWidth="1"/>' in text


def test_what_is_not_kept_is_named(rich_filled: tuple[Path, Filled]) -> None:
    """Before anything is written it is said that stored values of formulas go, and of which."""
    assert any("('Plates', 'Charts')" in note for note in rich_filled[1].notes)


def test_a_table_and_a_filter_are_not_made_wider(shop: Halfangle, tmp_path: Path) -> None:
    """New columns beside a table or a filter are named, for sorting would not move them."""

    def with_table(book: xlsxwriter.Workbook, sheet: Any) -> None:
        columns = [{"header": "center_distance"}, {"header": "angle"}]
        sheet.add_table("A1:B3", {"name": "Jobs1", "data": [[5, 10], [5, 20]], "columns": columns})
        book.add_worksheet("Chart").write("A1", "x")

    source = made(tmp_path / "in.xlsx", with_table)
    said = fill(shop, source, tmp_path / "out.xlsx", SETTING.with_more(sheet="Jobs"))
    assert any("'Jobs1' (A1:B3) is not made wider" in note for note in said.notes)

    def with_filter(book: xlsxwriter.Workbook, sheet: Any) -> None:
        sheet.write_row("A2", [5, 10])
        sheet.autofilter("A1:B2")
        chart = book.add_chart({"type": "line"})
        chart.add_series({"values": "=Jobs!$A$2:$B$2"})
        sheet.insert_chart("D1", chart)

    source = made(tmp_path / "filter.xlsx", with_filter)
    notes = fill(shop, source, tmp_path / "filter_out.xlsx", SETTING).notes
    assert any("filter over A1:B2" in note for note in notes)
    assert any("a drawing or chart over D1:" in note for note in notes)


def test_a_column_that_is_there_is_filled(shop: Halfangle, tmp_path: Path) -> None:
    """A result column that stands there is filled anew, told before, and a row refused is cleared.

    Its cells keep their format; a column right of it is not touched.
    """

    def make(book: xlsxwriter.Workbook, sheet: Any) -> None:
        sheet.write_row("C1", ["height [in]", "note"])
        style = book.add_format({"num_format": "0.0000", "bold": True})
        for row, angle in enumerate((30, 95), 1):
            sheet.write_row(row, 0, [5, angle])
            sheet.write(row, 2, 9.9, style)
            sheet.write(row, 3, "keep")

    source = made(tmp_path / "in.xlsx", make)
    said = fill(shop, source, tmp_path / "out.xlsx", SETTING)
    rows = cells_of(tmp_path / "out.xlsx")
    assert rows[0] == ["center_distance", "angle", "height [in]", "note", "advisories", "problem"]
    assert [row[2:4] for row in rows[1:]] == [[2.5, "keep"], ["", "keep"]]
    assert "column C 'height [in]' is filled anew: 2 cells are replaced." in said.notes
    assert b'<c r="C2" s="1"><v>2.5</v></c><c' in parts_of(tmp_path / "out.xlsx")[SHEET].replace(
        b"<v>2.4999999999999996</v>", b"<v>2.5</v>"
    )
    again = fill(shop, tmp_path / "out.xlsx", tmp_path / "again.xlsx", SETTING)
    assert again.answered == 1
    assert cells_of(tmp_path / "again.xlsx") == rows


def test_a_formula_is_not_written_over(shop: Halfangle, tmp_path: Path) -> None:
    """A result column that holds formulas is refused with the cell's name."""

    def make(_: xlsxwriter.Workbook, sheet: Any) -> None:
        sheet.write("C1", "height")
        sheet.write_row("A2", [5, 30])
        sheet.write_formula("C2", "=A2/2", None, 2.5)

    source = made(tmp_path / "in.xlsx", make)
    with pytest.raises(FileRefused, match=r"sheet 'Jobs', column C 'height': C2 is a formula"):
        fill(shop, source, tmp_path / "out.xlsx", SETTING)
    assert not (tmp_path / "out.xlsx").exists()


def test_cells_that_are_no_numbers(shop: Halfangle, tmp_path: Path) -> None:
    """Dates, times, errors, texts and formulas without a value are refused by the cell's name.

    A formula with its value is read; a blank row is left alone; the format of a number is not.
    """

    def make(book: xlsxwriter.Workbook, sheet: Any) -> None:
        date = book.add_format({"num_format": "dd/mm/yyyy"})
        time = book.add_format({"num_format": "h:mm"})
        german = book.add_format({"num_format": "#.##0,0"})
        for row in range(1, 11):
            if row != 6:
                sheet.write(row, 0, 5)
        sheet.write_formula("B2", "=15*2", None, 30)
        sheet.write("B3", 45000, date)
        sheet.write("B4", 8.3 / 24, time)
        sheet.write_formula("B5", "=NA()", None, "#N/A")
        sheet.write_formula("B6", "=A1&1", None, "")
        sheet.write("B8", "8.3")
        sheet.write("B9", True)
        sheet.write("B10", 22.5, german)
        sheet.write("B11", "8°18'")

    source = made(tmp_path / "in.xlsx", make)
    part = parts_of(source)[SHEET]
    bare = re.sub(rb'(<c r="B6"[^>]*><f>[^<]*</f>)<v>[^<]*</v>', rb"\1", part)
    assert bare != part
    source = rewritten(source, tmp_path / "bare.xlsx", {SHEET: bare})
    said = fill(shop, source, tmp_path / "out.xlsx", SETTING)
    rows = cells_of(tmp_path / "out.xlsx")
    found = {number: (row[2], row[4]) for number, row in enumerate(rows, 1)}
    assert found[2] == (pytest.approx(2.5), "")
    assert found[10] == (pytest.approx(1.91341716), "")
    assert found[11] == (pytest.approx(0.7217810), "")
    assert found[7] == ("", "")
    problems = {3: "B3 holds a date (45000).", 5: "B5 holds the error #N/A.",
                6: "B6 is a formula whose value is not stored",
                4: "B4 holds a time of day (0.345833), as a spreadsheet makes of 8:18",
                8: "B8 holds the text '8.3', where an angle is wanted; declare the decimal sign",
                9: "B9 holds True, where an angle is wanted."}  # fmt: skip
    for row, problem in problems.items():
        assert found[row][0] == "", row
        assert found[row][1].startswith(problem), found[row]
    assert (said.rows, said.answered, said.refused) == (9, 3, 6)


def test_decimals_of_texts_are_declared(shop: Halfangle, tmp_path: Path) -> None:
    """A text with a comma is a number where that is declared; minutes and seconds may have one."""

    def make(_: xlsxwriter.Workbook, sheet: Any) -> None:
        for row, angle in enumerate(("22,5", "8°18'30,5\"", "1.5", 30), 1):
            sheet.write_row(row, 0, ["5,0", angle])

    rows = filled(shop, tmp_path, make, SETTING.with_more(decimal=","))
    expected = [
        shop.sine.setting(units="in", center_distance=5, angle=angle).result.height
        for angle in (22.5, "8°18'30.5\"")
    ]
    assert [row[2] for row in rows[1:3]] == expected
    assert rows[3][4] == "B4 holds '1.5'; the decimal sign declared is a comma."
    assert rows[4][2] == pytest.approx(2.5)


def test_a_share_shown_in_percent_is_not_taken_for_percent(shop: Halfangle, tmp_path: Path) -> None:
    """0.5 shown as 50 % is refused where the field is in percent: it would be 0.5 %."""
    book = xlsxwriter.Workbook(str(tmp_path / "in.xlsx"))
    sheet = book.add_worksheet()
    fields = {f.name for f in _percent_operation().fields}
    name = next(n for n in sorted(fields) if n.endswith("_percent") and "." not in n)
    sheet.write_row("A1", [name])
    sheet.write("A2", 0.5, book.add_format({"num_format": "0%"}))
    sheet.write("A3", "x")
    book.close()
    operation = _percent_operation()
    fixed = {k: v for k, v in operation.example.items() if k != name}
    with pytest.raises(FileRefused, match=r"A2 holds 0\.5, shown as a percentage"):
        fill(
            shop, tmp_path / "in.xlsx", tmp_path / "out.xlsx", FillMap(operation.name, fixed=fixed)
        )


def _percent_operation() -> Any:
    from halfangle_client.cli.contract import dotted_names, named  # noqa: PLC0415

    every = (named(name) for name in dotted_names())
    return next(
        one for one in every if one is not None and one.sends
        and any(f.name.endswith("_percent") and "." not in f.name for f in one.fields)
    )  # fmt: skip


def test_merged_cells(shop: Halfangle, tmp_path: Path, rich: Path) -> None:
    """Merged headers are refused with a better row; of merged values each row but the first."""
    with pytest.raises(FileRefused, match=r"row 1: A1:D1 are merged.*--header-row 3"):
        fill(shop, rich, tmp_path / "o.xlsx", SETTING.with_more(sheet="Plates"))

    def make(_: xlsxwriter.Workbook, sheet: Any) -> None:
        sheet.merge_range("A2:A3", 5)
        sheet.write("B2", 30)
        sheet.write("B3", 30)

    rows = filled(shop, tmp_path, make)
    assert rows[1][2] == pytest.approx(2.5)
    why = "A3 is part of the merged cells A2:A3, whose value stands in A2."
    assert rows[2][2:] == ["", "", why]


def test_shared_formulas_stay(shop: Halfangle, tmp_path: Path) -> None:
    """A formula that is written once for several cells is read by its values, and stays."""

    def make(_: xlsxwriter.Workbook, sheet: Any) -> None:
        for row in (1, 2):
            sheet.write_row(row, 0, [5, 0])

    source = made(tmp_path / "plain.xlsx", make)
    part = parts_of(source)[SHEET]
    shared = part.replace(
        b'<c r="B2"><v>0</v></c>',
        b'<c r="B2"><f t="shared" ref="B2:B3" si="0">A2*6</f><v>30</v></c>',
    ).replace(b'<c r="B3"><v>0</v></c>', b'<c r="B3"><f t="shared" si="0"/><v>45</v></c>')
    source = rewritten(source, tmp_path / "in.xlsx", {SHEET: shared})
    fill(shop, source, tmp_path / "out.xlsx", SETTING)
    after = parts_of(tmp_path / "out.xlsx")[SHEET]
    assert b'<c r="B2"><f t="shared" ref="B2:B3" si="0">A2*6</f></c>' in after
    assert b'<c r="B3"><f t="shared" si="0"/></c>' in after
    heights = [row[2] for row in cells_of(tmp_path / "out.xlsx")[1:]]
    assert heights == [pytest.approx(2.5), pytest.approx(3.5355339)]


def test_cells_without_places_are_counted(shop: Halfangle, tmp_path: Path) -> None:
    """A sheet that leaves places to be counted is read as its program does."""
    source = made(tmp_path / "plain.xlsx", lambda _, sheet: sheet.write_row("A2", [5, 30]))
    part = parts_of(source)[SHEET]
    for name in (b' r="A1"', b' r="B1"', b' r="A2"', b' r="B2"', b' r="1"', b' r="2"'):
        part = part.replace(name, b"")
    source = rewritten(source, tmp_path / "in.xlsx", {SHEET: part})
    fill(shop, source, tmp_path / "out.xlsx", SETTING)
    assert cells_of(tmp_path / "out.xlsx")[1][2] == pytest.approx(2.5)


def test_a_sheet_of_prefixed_names(shop: Halfangle, tmp_path: Path) -> None:
    """A sheet whose elements have a prefix is filled in that prefix."""
    source = made(tmp_path / "plain.xlsx", lambda _, sheet: sheet.write_row("A2", [5, 30]))
    part = re.sub(rb"<(/?)(\w)", rb"<\1x:\2", parts_of(source)[SHEET])
    part = part.replace(b"xmlns=", b"xmlns:x=")
    source = rewritten(source, tmp_path / "in.xlsx", {SHEET: part})
    fill(shop, source, tmp_path / "out.xlsx", SETTING)
    after = parts_of(tmp_path / "out.xlsx")[SHEET]
    assert b'<x:c r="C2"><x:v>2.5</x:v></x:c>' in after
    assert b"ns0" not in after


def test_without_what_edits_workbooks(
    shop: Halfangle, rich: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Where lxml is absent it is said which package to install."""
    monkeypatch.setitem(sys.modules, "lxml.etree", None)
    with pytest.raises(FileRefused, match=r"workbooks need the package lxml: pip install"):
        fill(shop, rich, tmp_path / "out.xlsx", PLATES)


def test_numbers_that_are_not_finite(shop: Halfangle, tmp_path: Path) -> None:
    """A number out of the range of arithmetic is refused by its cell's name."""
    source = made(tmp_path / "plain.xlsx", lambda _, sheet: sheet.write_row("A2", [5, 30, 1]))
    for stored in (b"1e999", b"NaN"):
        part = parts_of(source)[SHEET].replace(b"<v>30</v>", b"<v>" + stored + b"</v>")
        broken = rewritten(source, tmp_path / "in.xlsx", {SHEET: part})
        with pytest.raises(FileRefused, match=r"row 2: B2 holds \w+, which is no finite number"):
            fill(shop, broken, tmp_path / "out.xlsx", SETTING)


def test_macros_are_kept(shop: Halfangle, tmp_path: Path) -> None:
    """The macros of an .xlsm are copied byte for byte, their signature too."""
    source = made(tmp_path / "plain.xlsx", lambda _, sheet: sheet.write_row("A2", [5, 30]))
    macros = b"\xd0\xcf\x11\xe0 macros"
    packed = rewritten(source, tmp_path / "in.xlsm", {"xl/vbaProject.bin": macros})
    fill(shop, packed, tmp_path / "out.xlsm", SETTING)
    assert parts_of(tmp_path / "out.xlsm")["xl/vbaProject.bin"] == macros


def test_a_signature_is_named(shop: Halfangle, tmp_path: Path) -> None:
    """That a signature will not hold is said."""
    source = made(tmp_path / "plain.xlsx", lambda _, sheet: sheet.write_row("A2", [5, 30]))
    signed = rewritten(source, tmp_path / "in.xlsx", {"_xmlsignatures/sig1.xml": b"<s/>"})
    notes = fill(shop, signed, tmp_path / "out.xlsx", SETTING).notes
    assert any("signature" in note for note in notes)


def test_stops_leave_no_value(shop: Halfangle, tmp_path: Path) -> None:
    """Where the answer says stop no value stands that could be used, and the problem says STOP."""
    book = xlsxwriter.Workbook(str(tmp_path / "in.xlsx"))
    sheet = book.add_worksheet()
    sheet.write_row("A1", ["Wheel diameter [in]", "rpm", "marked_rpm"])
    sheet.write_row("A2", [7, 3450, 3600])
    sheet.write_row("A3", [7, 3700, 3600])
    book.close()
    said = FillMap("wheels.speed", results={"speed": "surface_speed_m_per_s", "ft": FEET})
    result = fill(shop, tmp_path / "in.xlsx", tmp_path / "out.xlsx", said)
    good, stopped = cells_of(tmp_path / "out.xlsx")[1:]
    assert good[3] > 0
    assert good[6] == ""
    assert stopped[3:5] == ["", ""]
    assert stopped[5].startswith("stop ")
    assert stopped[6].startswith("STOP: ")
    assert (result.stopped, result.answered, result.refused) == (1, 2, 0)
