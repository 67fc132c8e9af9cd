"""Workbooks that are refused, each with its reason."""

import zipfile
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
import xlsxwriter

from halfangle_client import Halfangle
from halfangle_client.fill import FileRefused, FillMap, MapRefused, fill
from halfangle_client.fill._books import archive

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


def _bomb(path: Path) -> None:
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as packed:
        packed.writestr("_rels/.rels", RELS)
        packed.writestr("xl/workbook.xml", b" " * (3 * 1024 * 1024))


def _twice(path: Path) -> None:
    with zipfile.ZipFile(path, "w") as packed:
        packed.writestr("a.xml", b"1")
        packed.writestr("A.xml", b"2")


COMPOUND = bytes.fromhex("d0cf11e0a1b11ae1")
RELS = (
    b'<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">'
    b'<Relationship Id="r1" Type="x/officeDocument" Target="xl/workbook.xml"/></Relationships>'
)


def _of(workbook: bytes) -> Callable[[Path], None]:
    def make(path: Path) -> None:
        with zipfile.ZipFile(path, "w") as packed:
            packed.writestr("_rels/.rels", RELS)
            packed.writestr("xl/workbook.xml", workbook)

    return make


@pytest.mark.parametrize(
    ("make", "why"),
    [
        (lambda p: p.write_bytes(b""), "no workbook, or a broken one"),
        (lambda p: p.write_bytes(b"PK\3\4 broken"), "no workbook, or a broken one"),
        (
            lambda p: p.write_bytes(bytes.fromhex("d0cf11e0a1b11ae1") + b"x" * 900),
            "old binary form",
        ),
        (
            lambda p: p.write_bytes(
                bytes.fromhex("d0cf11e0a1b11ae1") + "EncryptedPackage".encode("utf-16-le")
            ),
            "it is encrypted",
        ),
        (_bomb, "unpacks to more than 2 MB"),
        (_twice, "a part stands in it twice"),
        (_of(b"<workbook"), "is no XML"),
        (_of(b'<!DOCTYPE a [<!ENTITY b "c">]><a>&b;</a>'), "defines entities"),
        (_of(b"<workbook/>"), "the workbook is none"),
        (
            _of(b'<workbook xmlns="http://purl.oclc.org/ooxml/spreadsheetml/main"/>'),
            "of the strict form",
        ),
    ],
    ids=[
        "empty",
        "broken",
        "xls",
        "encrypted",
        "bomb",
        "twice",
        "cut",
        "entities",
        "none",
        "strict",
    ],
)
def test_files_that_are_none(
    shop: Halfangle,
    tmp_path: Path,
    make: Callable[[Path], object],
    why: str,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """What is no workbook, or no sound one, is refused with the reason, and nothing is written."""
    monkeypatch.setattr(archive, "_LARGEST_PART", 2 * 1024 * 1024)
    make(tmp_path / "in.xlsx")
    with pytest.raises(FileRefused, match=why):
        fill(shop, tmp_path / "in.xlsx", tmp_path / "out.xlsx", SETTING)
    assert [path.name for path in tmp_path.iterdir()] == ["in.xlsx"]


@pytest.mark.parametrize("name", ["a.xls", "a.xlsb", "a.pdf", "a", "a.fods"])
def test_kinds_that_are_not_filled(shop: Halfangle, tmp_path: Path, name: str) -> None:
    """Another kind of file is refused by its name, with what to save it as."""
    (tmp_path / name).write_bytes(b"x")
    with pytest.raises(FileRefused, match=r"save it as|what is filled ends in"):
        fill(shop, tmp_path / name, tmp_path / "out.xlsx", SETTING)


def test_locked_and_missing_sheets(shop: Halfangle, tmp_path: Path, rich: Path) -> None:
    """A protected sheet is refused, a name that is none with the nearest, none with the names."""
    with pytest.raises(FileRefused, match=r"plates\.xlsx, sheet 'Locked': it is protected"):
        fill(shop, rich, tmp_path / "o.xlsx", SETTING.with_more(sheet="Locked"))
    with pytest.raises(MapRefused, match=r"no sheet 'Plate'; did you mean Plates"):
        fill(shop, rich, tmp_path / "o.xlsx", SETTING.with_more(sheet="Plate"))
    with pytest.raises(MapRefused, match=r"has 4 sheets \('Plates', 'Charts', 'Table', 'Locked'\)"):
        fill(shop, rich, tmp_path / "o.xlsx", SETTING)
