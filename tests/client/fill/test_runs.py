"""A run that breaks off goes on, and nothing is written half."""

import os
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest

from halfangle_client import Halfangle, errors
from halfangle_client.fill import (
    FileRefused,
    FillError,
    FillInterrupted,
    FillMap,
    NotFinished,
    NotWritten,
    fill,
    filling,
)
from halfangle_client.fill.journal import Journal

ROWS = 12
SETTING = FillMap(
    "sine.setting", fixed={"units": "in"}, results={"height": "height"}, delimiter=",", decimal="."
)


class Counting:
    """A client that counts the rows it is asked for, and fails in what way it is told."""

    def __init__(self, client: Halfangle) -> None:
        self.client = client
        self.asked: list[float] = []
        self.failing: dict[float, errors.HalfangleError] = {}

    def __getattr__(self, name: str) -> Any:
        return getattr(self.client, name)

    def map(self, call: str, rows: list[dict[str, Any]], **options: Any) -> Any:
        """As the client's own, some outcomes replaced."""
        self.asked += [row["angle"] for row in rows]
        outcomes = self.client.map(call, rows, **options)
        for number, row in enumerate(rows):
            if row["angle"] in self.failing:
                outcomes.put(number, self.failing[row["angle"]])
        return outcomes


@pytest.fixture
def counting(shop: Halfangle, monkeypatch: pytest.MonkeyPatch) -> Any:
    """Such a client; four rows are asked for between two writings of the side file."""
    monkeypatch.setattr(filling, "_PART", 4)
    return Counting(shop)


@pytest.fixture
def source(tmp_path: Path) -> Path:
    """Twelve rows."""
    lines = ["center_distance,angle", *(f"5,{10 + row}" for row in range(ROWS))]
    path = tmp_path / "in.csv"
    path.write_text("\n".join(lines) + "\n")
    return path


def side(folder: Path) -> Path:
    """The side file."""
    return folder / "out.csv.part.ndjson"


def interrupted(counting: Any, source: Path, after: int = 6) -> None:
    """Break a run off once so many rows are done."""

    def stop(done: int, _: int) -> None:
        if done >= after:
            raise KeyboardInterrupt

    with pytest.raises(FillInterrupted, match=r"of 12 rows are done and stand in out\.csv\.part"):
        fill(counting, source, source.with_name("out.csv"), SETTING, progress=stop)


def test_a_run_that_was_interrupted_goes_on(counting: Any, source: Path, tmp_path: Path) -> None:
    """The second run asks only for rows that were not done, and writes what one run writes."""
    fill(counting, source, tmp_path / "whole.csv", SETTING)
    counting.asked.clear()
    interrupted(counting, source)
    assert not (tmp_path / "out.csv").exists()
    assert len(side(tmp_path).read_text().splitlines()) >= 1 + 6
    counting.asked.clear()
    seen: list[tuple[int, int]] = []
    done = fill(
        counting, source, tmp_path / "out.csv", SETTING, progress=lambda *at: seen.append(at)
    )
    assert done.resumed + len(counting.asked) == ROWS
    assert done.resumed >= 6
    assert seen[0][0] == done.resumed + 1
    assert seen[-1] == (ROWS, ROWS)
    assert (tmp_path / "out.csv").read_bytes() == (tmp_path / "whole.csv").read_bytes()
    assert sorted(path.name for path in tmp_path.iterdir()) == ["in.csv", "out.csv", "whole.csv"]


def test_a_torn_side_file_is_read_as_far_as_it_is_whole(
    counting: Any, source: Path, tmp_path: Path
) -> None:
    """Of a line that broke off, or is none, the row is asked again, and all after it."""
    interrupted(counting, source)
    whole = side(tmp_path).read_bytes()
    kept = whole.splitlines(keepends=True)
    for torn in (whole[:-5], b"".join(kept[:3]) + b'{"row":"x"}\n', b"".join(kept[:3]) + b"\xff\n"):
        side(tmp_path).write_bytes(torn)
        counting.asked.clear()
        done = fill(counting, source, tmp_path / "out.csv", SETTING, overwrite=True)
        assert done.resumed + len(counting.asked) == ROWS
        assert 2 <= done.resumed < ROWS
    side(tmp_path).write_bytes(kept[0][:20])
    assert fill(counting, source, tmp_path / "out.csv", SETTING, overwrite=True).resumed == 0


def test_a_side_file_of_other_rows_is_begun_anew(
    counting: Any, source: Path, tmp_path: Path
) -> None:
    """What was kept for another input, map or release is not taken for this one's."""
    interrupted(counting, source)
    source.write_text(source.read_text().replace("5,10\n", "5,9\n"))
    said = fill(counting, source, tmp_path / "out.csv", SETTING)
    assert said.resumed == 0
    assert "of another input, map or release" in said.notes[-1]
    interrupted_again = SETTING.with_more(results={"h": "height_to_set"})
    (tmp_path / "out.csv").unlink()
    interrupted(counting, source)
    assert fill(counting, source, tmp_path / "out.csv", interrupted_again).resumed == 0


def test_a_file_that_is_no_side_file_is_left_alone(
    counting: Any, source: Path, tmp_path: Path
) -> None:
    """A file of another's that has the side file's name is neither read nor written."""
    side(tmp_path).write_text("my notes\n")
    with pytest.raises(NotWritten, match="no side file of this command"):
        fill(counting, source, tmp_path / "out.csv", SETTING)
    assert side(tmp_path).read_text() == "my notes\n"


def test_one_run_at_a_time(counting: Any, source: Path, tmp_path: Path) -> None:
    """While a run fills an output another is refused."""
    journal = Journal(side(tmp_path), "k")
    journal.open()
    with pytest.raises(NotWritten, match="another run is filling this output"):
        fill(counting, source, tmp_path / "out.csv", SETTING)
    journal.close()


def test_rows_without_an_answer_are_not_filled(counting: Any, source: Path, tmp_path: Path) -> None:
    """A row whose call failed is no refused row: nothing is written, and the next run asks it."""
    counting.failing = {15: errors.ConnectionFailed("http://x: no answer.")}
    with pytest.raises(NotFinished, match=r"1 rows got no answer, as row 7: http://x: no answer\."):
        fill(counting, source, tmp_path / "out.csv", SETTING)
    assert not (tmp_path / "out.csv").exists()
    counting.failing, counting.asked = {21: errors.TimedOut("late.")}, []
    with pytest.raises(NotFinished, match=r"as row 13: late\. 11 of 12"):
        fill(counting, source, tmp_path / "out.csv", SETTING.with_more(rows="2-13"))
    assert 15 in counting.asked
    counting.failing, counting.asked = {}, []
    done = fill(counting, source, tmp_path / "out.csv", SETTING)
    assert counting.asked == [21]
    assert done.answered == ROWS


def test_answers_of_two_releases_are_not_mixed(
    counting: Any, source: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A service of another release than it said is refused: one file is of one release."""
    said = {"basis": {"release": "9.9.9"}}
    given = filling._document
    monkeypatch.setattr(
        filling, "_document", lambda c, path: given(c, path) if "gloss" in path else said
    )
    with pytest.raises(FillError, match=r"answers are of release .* and of 9\.9\.9"):
        fill(counting, source, tmp_path / "out.csv", SETTING)


@pytest.mark.parametrize("link", [os.link, os.symlink])
def test_the_input_is_never_written(
    shop: Halfangle, source: Path, tmp_path: Path, link: Any
) -> None:
    """The output may not be the input by its own name, a hard link or a symbolic one."""
    link(source, tmp_path / "other.csv")
    before = source.read_bytes()
    for target in (source, tmp_path / "other.csv", tmp_path / "." / "in.csv"):
        with pytest.raises(FileRefused, match="is the input itself"):
            fill(shop, source, target, SETTING, overwrite=True)
    assert source.read_bytes() == before


def test_an_output_that_is_there(shop: Halfangle, source: Path, tmp_path: Path) -> None:
    """What is there is not replaced unasked, and where it came in the meantime neither."""
    target = tmp_path / "out.csv"
    target.write_text("mine")
    with pytest.raises(FileRefused, match="--overwrite replaces it"):
        fill(shop, source, target, SETTING)
    target.unlink()

    def made_meanwhile(done: int, _: int) -> None:
        if done == ROWS:
            target.write_text("mine")

    with pytest.raises(NotWritten, match="File exists"):
        fill(shop, source, target, SETTING, progress=made_meanwhile)
    assert target.read_text() == "mine"
    assert fill(shop, source, target, SETTING, overwrite=True).resumed == ROWS
    for other, why in ((tmp_path / "no" / "out.csv", "no folder"), (tmp_path / "out.ods", "kind")):
        with pytest.raises(FileRefused, match=why):
            fill(shop, source, other, SETTING)


FULL = """
import resource, signal, sys
from halfangle_client.cli import main
signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
resource.setrlimit(resource.RLIMIT_FSIZE, (int(sys.argv[1]),) * 2)
sys.exit(main(sys.argv[2:]))
"""


@pytest.mark.parametrize("room", [300, 2500])
def test_a_disk_that_fills(live: Halfangle, tmp_path: Path, room: int) -> None:
    """Without room the reason is said, no broken output stands, and what is done stays."""
    lines = ["center_distance,angle", *(f"5,{10 + row}" for row in range(20))]
    source = tmp_path / "in.csv"
    source.write_text("\n".join(lines) + "\n" + " " * 2600 + "\n")
    command = [
        "fill", str(source), str(tmp_path / "out.csv"), "--operation", "sine.setting",
        "--fixed", "units=in", "--result", "height", "--delimiter", ",", "--decimal", ".",
    ]  # fmt: skip
    root = Path(__file__).resolve().parents[3]
    environment = {
        "PYTHONPATH": str(root / "client"),
        "HALFANGLE_URL": live._manners.addresses.first,
        "PYTHONDONTWRITEBYTECODE": "1",
    }
    done = subprocess.run(
        [sys.executable, "-c", FULL, str(room), *command],
        check=False,
        capture_output=True,
        text=True,
        env=environment,
    )
    assert done.returncode == 3, done.stderr
    assert "File too large" in done.stderr
    assert sorted(path.name for path in tmp_path.iterdir()) == ["in.csv", "out.csv.part.ndjson"]
    again = fill(live, source, tmp_path / "out.csv", SETTING)
    assert again.answered == 20
    assert again.resumed == (20 if room == 2500 else again.resumed)
