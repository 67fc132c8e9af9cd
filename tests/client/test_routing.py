"""A routing by the client and by the command: typed, as lines, and what a stop does."""

import csv
import io
import json
from pathlib import Path

import pytest

from client_support import run
from halfangle_client import Halfangle
from halfangle_client.cli import main
from sheets_support import center_job


def test_the_client_has_operations_and_lines(live: Halfangle) -> None:
    """Typed operations, and the same as the text of a file."""
    answer = live.jobs.routing(**center_job(), way="1")
    codes = [each.code for each in answer.result.operations]
    assert "HA-SET-SINE-PLATE" in codes
    text = live.jobs.routing_csv(**center_job(), delimiter="semicolon")
    rows = csv.DictReader(io.StringIO(text, newline=""), delimiter=";")
    assert [row["code"] for row in rows] == codes


@pytest.mark.usefixtures("at_live")
def test_the_command_writes_lines(
    capfdbinary: pytest.CaptureFixture[bytes], tmp_path: Path
) -> None:
    """What is printed is the file to the byte; with a stop in it the command ends with status 4."""
    job = tmp_path / "job.json"
    job.write_text(json.dumps(center_job()))
    status = main(["jobs", "routing-csv", "--input", str(job)])
    printed, said = capfdbinary.readouterr()
    assert (status, said) == (0, b"")
    assert printed.startswith(b"job,pieces,sequence,code,")
    assert printed.endswith(b"\r\n")
    sent = center_job()
    sent["feature"]["included_angle_tolerance_arcsec"] = 1
    job.write_text(json.dumps(sent))
    status = main(["jobs", "routing-csv", "--input", str(job)])
    printed, said = capfdbinary.readouterr()
    assert status == 4
    assert said == b"halfangle: stop: no-way-fits: do not run this; its lines say why\n"
    assert b"Do not grind" in printed


@pytest.mark.usefixtures("at_live")
def test_the_command_shows_operations(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    """Without lines it is an answer as any other."""
    job = tmp_path / "job.json"
    job.write_text(json.dumps(center_job()))
    status, out, err = run(capsys, "jobs", "routing", "--input", str(job), "--way", "2")
    assert (status, err) == (0, "")
    assert "HA-SET-QUARTER-TURN" in out
    assert "1. Inspect the wheel" in out
    assert "text of" not in out
