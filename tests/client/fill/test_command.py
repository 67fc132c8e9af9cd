"""The command `halfangle fill`, against a service really started."""

import io
from pathlib import Path
from typing import Any

import pytest

from client_support import run
from fill_support import cells_of
from halfangle_client.cli.files import filling as command
from halfangle_client.fill import FillInterrupted, filling

pytestmark = pytest.mark.usefixtures("at_live")
OPTIONS = ["--operation", "sine.setting", "--sheet", "Plates", "--header-row", "3"]
RESULT = ["--result", "Height=height"]


def test_a_workbook(capsys: pytest.CaptureFixture[str], rich: Path, tmp_path: Path) -> None:
    """It names what is not kept, fills the rows, counts them; 1 where one is refused."""
    target = tmp_path / "out.xlsx"
    status, out, err = run(capsys, "fill", str(rich), str(target), *OPTIONS, *RESULT)
    assert (status, out) == (1, "")
    assert "stored values of formulas are dropped" in err
    assert err.splitlines()[-1].endswith(
        "12 rows filled: 11 answered (1 with a caution, 0 say stop), 1 refused"
    )
    assert cells_of(target, "Plates")[3][4] == pytest.approx(2.5)
    status, _, err = run(capsys, "fill", str(rich), str(target), *OPTIONS)
    assert (status, "exists already; --overwrite replaces it" in err) == (2, True)
    good = [*OPTIONS, *RESULT, "--rows", "4-5", "--overwrite"]
    assert run(capsys, "fill", str(rich), str(target), *good)[0] == 0


def test_a_try(capsys: pytest.CaptureFixture[str], rich: Path, tmp_path: Path) -> None:
    """A dry run shows the map and the first rows, and writes nothing."""
    target = tmp_path / "out.xlsx"
    words = ["fill", str(rich), str(target), *OPTIONS, *RESULT, "--dry-run"]
    status, out, _ = run(capsys, *words)
    assert status == 0
    assert "C 'Angle [°]' -> angle" in out
    assert "E 'Height [in]' <- height (new)" in out
    assert "row 8:\n  problem: /angle: should be less than 90°; got 95." in out
    assert list(tmp_path.iterdir()) == []


def test_stops(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    """Where a row says stop it ends with 4, and says so last."""
    source = tmp_path / "in.csv"
    source.write_text("wheel_diameter [in];rpm;marked_rpm\n7;3700;3600\n")
    words = ["--operation", "wheels.speed", "--delimiter", ";", "--decimal", "."]
    status, _, err = run(capsys, "fill", str(source), str(tmp_path / "out.csv"), *words)
    assert status == 4
    assert "stop: 1 rows: do not run these" in err.splitlines()[-1]


def test_a_map_beside_the_file(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    """The map beside the file is read; an option wins over it."""
    source = tmp_path / "in.csv"
    source.write_text("Winkel;L\n22,5;5\n", "utf-8")
    (tmp_path / "in.fill.toml").write_text(
        'operation = "sine.setting"\ncolumns = {angle = "Winkel", center_distance = "L"}\n'
        'fixed.units = "mm"\nresults = {H = "height"}\ndecimal = ","\ndelimiter = ";"\n'
    )
    target = tmp_path / "out.csv"
    words = ["fill", str(source), str(target), "--fixed", "units=in"]
    assert run(capsys, *words) == (0, "", f"{target}: 1 rows filled: 1 answered (0 with a caution, "
                                   "0 say stop), 0 refused\n")  # fmt: skip
    assert target.read_text("utf-8").splitlines()[0] == "Winkel;L;H [in];advisories;problem"
    (tmp_path / "in.fill.toml").write_text("operation = 7")
    assert run(capsys, *words)[0] == 2


@pytest.mark.parametrize(
    ("words", "why"),
    [
        (["--operation", "sine.seting"], "did you mean sine.setting"),
        (["--fixed", "units"], "not of the form FIELD="),
        (["--operation", "sine.setting", "--fixed", "unit=in"], "did you mean units"),
        (["--operation", "sine.setting", "--fixed", "units=ft"], "no choice here"),
        (["--operation", "sine.setting", "--header-row", "0"], "0 is not in the range"),
        (["--operation", "sine.setting", "--sheet", "Plates", "--map", "no.toml"], "No such file"),
        (["--result", "a=height", "--result", "a=angle"], "--result says 'a' twice"),
        ([], "say which operation"),
        (["--operation", "curves.of"], "no answer to a row: name the operation"),
        (["--operation", "jobs.routing-csv"], "no answer to a row: name the operation"),
    ],
)
def test_wrong_usage(
    capsys: pytest.CaptureFixture[str], rich: Path, tmp_path: Path, words: list[str], why: str
) -> None:
    """What is said wrong is named, with the nearest that is right; no terminal, no question."""
    status, out, err = run(capsys, "fill", str(rich), str(tmp_path / "out.xlsx"), *words)
    assert (status, out) == (2, "")
    assert why in err


@pytest.mark.parametrize(("source", "shown"), [(".", "."), ("", "."), ("/", "/")])
def test_a_folder_is_no_file(capsys: pytest.CaptureFixture[str], source: str, shown: str) -> None:
    """A folder, or no name at all, is refused as any other input that cannot be filled."""
    status, out, err = run(capsys, "fill", source, "out.xlsx", "--operation", "sine.setting")
    assert (status, out) == (2, "")
    assert f"{shown}: no ending: what is filled ends in .xlsx" in err


def test_it_asks_on_a_terminal(
    capsys: pytest.CaptureFixture[str], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """On a terminal it asks for what is not said, and keeps the answers where that is wanted."""

    class Terminal(io.StringIO):
        def isatty(self) -> bool:
            return True

    source = tmp_path / "in.csv"
    source.write_text("Winkel;L\n30;5\n")
    answers = "sine.setting\n=in\nL\nA\ny\n"
    monkeypatch.setattr("sys.stdin", Terminal(answers))
    words = ["--delimiter", ";", "--decimal", ".", "--result", "height"]
    status, _, err = run(capsys, "fill", str(source), str(tmp_path / "out.csv"), *words)
    assert status == 0, err
    assert "Keep these answers in in.fill.toml?" in err
    kept = (tmp_path / "in.fill.toml").read_text()
    for line in ('operation = "sine.setting"', 'columns.angle = "A"', 'fixed.units = "in"'):
        assert line in kept
    monkeypatch.setattr("sys.stdin", io.StringIO())
    assert run(capsys, "fill", str(source), str(tmp_path / "again.csv"))[0] == 0


def test_it_is_interrupted(
    capsys: pytest.CaptureFixture[str],
    rich: Path,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """Ctrl-C ends with 130 and says how to go on."""

    def stopped(*_: Any) -> None:
        raise FillInterrupted("stopped: 3 of 12 rows are done")

    monkeypatch.setattr(filling.Filling, "run", stopped)
    words = ["fill", str(rich), str(tmp_path / "out.xlsx"), *OPTIONS]
    status, _, err = run(capsys, *words)
    assert (status, err.splitlines()[-1]) == (130, "halfangle: stopped: 3 of 12 rows are done")


def test_it_loads_late() -> None:
    """The command's file names no module of workbooks at its top."""
    text = Path(command.__file__).read_text("utf-8")
    top = [line for line in text.splitlines() if line.startswith(("import", "from"))]
    assert not [line for line in top if "fill" in line or "rich" in line]
