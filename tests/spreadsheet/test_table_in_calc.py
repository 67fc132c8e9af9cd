"""An answered table opened by LibreOffice, as a German locale reads decimal commas."""

import shutil
import subprocess
from pathlib import Path

import pytest
from python_calamine import CalamineWorkbook

from csv_support import answered
from http_support import Service
from support import need_program

pytestmark = pytest.mark.program

ANGLES = [8.3, 22.75, 30.0, 61.51]
#: Semicolon, quote, UTF-8, from the first row, German, no cell forced to text, numbers looked for.
GERMAN = "CSV:59,34,76,1,,1031,false,true"


def test_numbers_are_numbers_in_a_german_locale(service: Service, tmp_path: Path) -> None:
    """Heights with decimal commas are numbers, angles in minutes and refusals are texts."""
    need_program(shutil.which("soffice"), "LibreOffice is absent")
    lines = [f"=1+{n};{angle}".replace(".", ",") for n, angle in enumerate(ANGLES)]
    table = "\ufeffTeil;angle\r\n" + "".join(f"{line}\r\n" for line in [*lines, "x;-3"])
    content = answered(
        service, "sine.setting", table.encode(), units="mm", center_distance=100,
        delimiter=";", decimal=",", keep="Teil", columns="height,angle.dms",
    )  # fmt: skip
    source = tmp_path / "answered.csv"
    source.write_bytes(content)
    profile = (tmp_path / "profile").as_uri()
    command = [
        "soffice", f"-env:UserInstallation={profile}", "--headless", f"--infilter={GERMAN}",
        "--convert-to", "xlsx", "--outdir", str(tmp_path), str(source),
    ]  # fmt: skip
    subprocess.run(command, check=True, capture_output=True, timeout=120)
    book = CalamineWorkbook.from_path(tmp_path / "answered.xlsx")
    head, *rows, refused = book.get_sheet_by_index(0).to_python()
    assert head == ["Teil", "angle", "height [mm]", "angle.dms", "advisories", "problem"]
    for angle, row in zip(ANGLES, rows, strict=True):
        own = service.post(
            "/v1/sine/setting", json={"units": "mm", "center_distance": 100, "angle": angle}
        ).json()["result"]
        assert row[2] == pytest.approx(own["height"], rel=1e-14)
        assert row[3] == own["angle"]["dms"]
    assert refused[1:4] == [-3, "", ""]
    assert refused[5] == "angle: should be greater than 0°; got -3"
