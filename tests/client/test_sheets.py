"""Sheets by the client and by the command: kept, shown, and what a stop does."""

import json
from pathlib import Path

import pytest

from client_support import run
from halfangle_client import Halfangle, Sheet, errors
from halfangle_client.sheet import advisories_in
from sheets_support import center_job

_SETTING = {"units": "in", "center_distance": 5, "angle": 30}
_TOO_FAST = {"units": "in", "wheel_diameter": 7, "rpm": 7200, "marked_rpm": 3600}


def test_a_sheet_is_kept_and_shown(live: Halfangle, tmp_path: Path) -> None:
    """It has its text, goes into a file as it came, and a notebook frames it."""
    sheet = live.sine.setting_sheet(units="in", center_distance=5, angle=30, paper="letter")
    assert isinstance(sheet, Sheet)
    assert "<!doctype html>" in sheet.text
    assert "size: letter" in sheet.text
    assert not sheet.is_pdf
    assert sheet.save(tmp_path / "sheet.html").read_bytes() == sheet.content
    assert sheet._repr_html_().startswith("<iframe sandbox")
    assert sheet.stops == ()
    assert live.call("sine.setting_sheet", _SETTING | {"paper": "letter"}) == sheet.content


def test_a_plan_has_the_sheet_of_its_topic(live: Halfangle) -> None:
    """`client.jobs.sheet` takes what the plan takes, and what may be chosen of a sheet."""
    sheet = live.jobs.sheet(**center_job(), way="2", kind="inspection")
    assert "Inspection sheet" in sheet.text
    assert ("prove-by-hand", "note") in sheet.advisories


def test_a_pdf_is_no_text() -> None:
    """Asked for the text of a PDF, a sheet says what to ask for instead."""
    sheet = Sheet(b"%PDF-1.7", "application/pdf")
    assert sheet.is_pdf
    assert "application/pdf;base64," in sheet._repr_html_()
    with pytest.raises(ValueError, match='ask for format="html"'):
        _ = sheet.text


def test_a_refusal_is_the_operation_s_own(live: Halfangle) -> None:
    """What cannot be set has no sheet."""
    with pytest.raises(errors.InvalidRequest, match="less than 90"):
        live.sine.setting_sheet(units="in", center_distance=5, angle=95)


def test_advisories_are_read_from_the_header() -> None:
    """Nothing advised is nothing."""
    assert advisories_in("") == ()
    assert advisories_in("a;severity=stop") == (("a", "stop"),)


@pytest.mark.usefixtures("at_live")
def test_the_command_writes_a_sheet(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Into a file whose ending says the form; nothing half done is left beside it."""
    job, out = tmp_path / "job.json", tmp_path / "sheet.html"
    job.write_text(json.dumps(center_job()), "utf-8")
    status, said, told = run(capsys, "sheet", str(job), "-o", str(out), "--way", "quarter-turn")
    assert (status, said) == (0, "")
    assert str(out) in told
    assert "turned a quarter" in out.read_text("utf-8")
    assert sorted(path.name for path in tmp_path.iterdir()) == ["job.json", "sheet.html"]


@pytest.mark.usefixtures("at_live")
def test_a_stop_ends_the_command_with_its_status(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """The sheet is written, says stop, and so does the command: status 4."""
    job, out = tmp_path / "job.json", tmp_path / "sheet.html"
    job.write_text(json.dumps(_TOO_FAST), "utf-8")
    words = ("sheet", str(job), "-o", str(out), "--operation", "wheels.speed")
    status, _, told = run(capsys, *words)
    assert status == 4
    assert "stop: over-marked-speed" in told
    assert "Stop: do not run this" in out.read_text("utf-8")


@pytest.mark.usefixtures("at_live")
@pytest.mark.parametrize(
    ("words", "status", "message"),
    [
        (("-o", "sheet.txt"), 2, "ends in neither .pdf nor .html"),
        (("-o", "s.html", "--operation", "sine.setin"), 2, "did you mean sine.setting"),
        (("-o", "s.html", "--operation", "sine.setting", "--way", "1"), 2, "takes no --way"),
        (("-o", "s.html"), 1, "/job: is required"),
        (("-o", "no/such/folder/s.html", "--operation", "sine.setting"), 2, "No such file"),
    ],
)
def test_what_cannot_be_written_is_said(
    tmp_path: Path,
    capsys: pytest.CaptureFixture[str],
    words: tuple[str, ...],
    status: int,
    message: str,
) -> None:
    """Wrong usage, a refusal, a folder that is not there: each with its status and its reason."""
    job = tmp_path / "job.json"
    job.write_text(json.dumps(_SETTING), "utf-8")
    places = [str(tmp_path / word) if "html" in word or "txt" in word else word for word in words]
    found, _, told = run(capsys, "sheet", str(job), *places)
    assert (found, message in told) == (status, True), told
    assert [path.name for path in tmp_path.iterdir()] == ["job.json"]
