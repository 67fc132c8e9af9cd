"""Filled workbooks opened by LibreOffice: formulas recalculated, values as the service's."""

import shutil
import subprocess
from pathlib import Path
from typing import Any

import pytest
import xlsxwriter

from fill_support import ANGLES, cells_of, rich_workbook
from halfangle_client import Halfangle
from halfangle_client.fill import FillMap, fill
from support import need_program

pytestmark = pytest.mark.program
RESULTS = {"Height": "height"}
PLATES = FillMap("sine.setting", sheet="Plates", header_row=3, results=RESULTS)
#: A profile's own setting of its language: the decimal sign of German is a comma.
GERMAN = """<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry"
 xmlns:xs="http://www.w3.org/2001/XMLSchema"
 xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance">
<item oor:path="/org.openoffice.Setup/L10N"><prop oor:name="ooSetupSystemLocale" oor:op="fuse">
<value>de-DE</value></prop></item></oor:items>"""


def converted(source: Path, target: str, folder: Path, profile: Path) -> Path:
    """A file as LibreOffice opens it and saves it anew, as `ods` or `csv:…`."""
    folder.mkdir(exist_ok=True)
    command = [
        "soffice", f"-env:UserInstallation={profile.as_uri()}", "--headless", "--convert-to",
        target, "--outdir", str(folder), str(source),
    ]  # fmt: skip
    subprocess.run(command, check=True, capture_output=True, timeout=120)
    return folder / f"{source.stem}.{target.partition(':')[0]}"


@pytest.fixture(scope="module")
def profiles(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Path]:
    """A profile of English and one of German."""
    need_program(shutil.which("soffice"), "LibreOffice is absent")
    folder = tmp_path_factory.mktemp("profiles")
    (folder / "de" / "user").mkdir(parents=True)
    (folder / "de" / "user" / "registrymodifications.xcu").write_text(GERMAN)
    return {"en": folder / "en", "de": folder / "de"}


def depending(path: Path) -> Path:
    """Plates whose other formulas, of another sheet too, depend on the column to be filled."""
    book = xlsxwriter.Workbook(str(path))
    sheet = book.add_worksheet("Plates")
    sheet.write_row("A3", ["center_distance [in]", "angle", "Height [in]", "twice"])
    for row, angle in enumerate(a for a in ANGLES if a != 95):
        sheet.write_row(3 + row, 0, [5, angle])
        sheet.write_formula(3 + row, 3, f"=C{4 + row}*2", None, -1)
    book.add_worksheet("Sum").write_formula("A1", "=SUM(Plates!C4:C8)", None, -1)
    book.close()
    return path


def heights(shop: Halfangle) -> list[float]:
    """The heights that the service answers."""
    angles = [angle for angle in ANGLES if angle != 95]
    rows = [{"units": "in", "center_distance": 5, "angle": angle} for angle in angles]
    return [answer.result.height for answer in shop.map("sine.setting", rows).answers]


@pytest.mark.parametrize("language", ["en", "de"])
def test_formulas_are_recalculated(
    shop: Halfangle, tmp_path: Path, profiles: dict[str, Path], language: str
) -> None:
    """In either language all formulas stand on what was filled, of .xlsx and of .ods."""
    profile = profiles[language]
    fill(shop, depending(tmp_path / "in.xlsx"), tmp_path / "out.xlsx", PLATES)
    opened = converted(tmp_path / "out.xlsx", "ods", tmp_path / "opened", profile)
    _require_whole(shop, opened)
    if language == "en":
        return
    # That file is of LibreOffice's own making: it is filled in its turn.
    fill(shop, opened, tmp_path / "again.ods", PLATES)
    again = converted(tmp_path / "again.ods", "xlsx", tmp_path / "opened", profile)
    _require_whole(shop, again)
    shown = converted(tmp_path / "again.ods", "csv", tmp_path / "shown", profile)
    assert b'"1,9134171' in shown.read_bytes()


def _require_whole(shop: Halfangle, path: Path) -> None:
    rows: list[list[Any]] = cells_of(path, "Plates")[3:]
    expected = heights(shop)
    assert [row[2] for row in rows] == pytest.approx(expected, rel=1e-14)
    assert [row[3] for row in rows] == pytest.approx([2 * h for h in expected], rel=1e-14)
    assert cells_of(path, "Sum")[0][0] == pytest.approx(sum(expected), rel=1e-14)


def test_the_rich_workbook_opens(
    shop: Halfangle, tmp_path: Path, profiles: dict[str, Path]
) -> None:
    """A workbook of all that workbooks hold opens, its sums right, its chart drawn."""
    source = rich_workbook(tmp_path / "in.xlsx", rows=20)
    fill(shop, source, tmp_path / "out.xlsx", PLATES)
    opened = converted(tmp_path / "out.xlsx", "ods", tmp_path / "opened", profiles["en"])
    assert cells_of(opened, "Charts")[0][0] == 20 * 10
    rows = cells_of(opened, "Plates")
    assert rows[3][4] == pytest.approx(2.5)
    assert rows[3][3] == 10
