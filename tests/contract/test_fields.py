"""The guard of numbers counts what a test names, and a whole run fails without it."""

import os
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from fields_support import (
    READING,
    Field,
    findings,
    load_not_held,
    numeric_fields,
    watched_answer,
    written_not_held,
)
from source_support import ROOT

ANSWER = {
    "result": {
        "height": 2.5,
        "blocks": [2.0, 0.5],
        "angle": {"degrees": 30.0, "dms": "30°00'00\""},
        "stations": [{"position": 1.0, "diameter": None}, {"position": 2.0, "diameter": 4.0}],
        "proved": True,
    }
}


@pytest.fixture
def result(monkeypatch: pytest.MonkeyPatch) -> Iterator[dict[str, Any]]:
    """A result of a made-up operation, read by a made-up test of values."""
    monkeypatch.setattr(READING, "test", "a test of values")
    yield watched_answer("made.up", ANSWER)["result"]
    for field in _read():
        del READING.tests_of["made.up", field]


def _read() -> set[str]:
    return {path for operation, path in READING.tests_of if operation == "made.up"}


def test_a_number_fetched_by_its_name_is_read(result: dict[str, Any]) -> None:
    """By index or `get`, in an object, a list of objects or a list of numbers."""
    assert result["height"] == result.get("height") == 2.5
    assert result["blocks"][1] == 0.5
    assert result["angle"]["degrees"] == 30.0
    assert [row["position"] for row in result["stations"]] == [1.0, 2.0]
    assert _read() == {"height", "blocks[]", "angle.degrees", "stations[].position"}


def test_what_is_compared_whole_is_read(result: dict[str, Any]) -> None:
    """An object compared with a test's own values names each of them."""
    assert result["stations"][1] == {"position": 2.0, "diameter": 4.0}
    assert result["angle"] == {"degrees": 30.0, "dms": "30°00'00\""}
    assert _read() == {"stations[].position", "stations[].diameter", "angle.degrees"}


def test_what_names_no_number_reads_none(result: dict[str, Any]) -> None:
    """Not going over all values, nor a null, a flag, a text, nor two answers held together."""
    assert next(iter(result.values())) == 2.5
    assert dict(result.items())["proved"] is result["proved"] is True
    assert result["stations"][0]["diameter"] is None
    assert result["angle"]["dms"].startswith("30")
    assert result["angle"] == watched_answer("made.up", ANSWER)["result"]["angle"]
    assert _read() == set()


def test_one_field_is_given_wrong(monkeypatch: pytest.MonkeyPatch) -> None:
    """Every number of the field named is off, in every row, and no other is."""
    monkeypatch.setattr(READING, "wrong", ("made.up", "stations[].position"))
    result = watched_answer("made.up", ANSWER)["result"]
    assert [row["position"] for row in result["stations"]] == pytest.approx([1.05, 2.1])
    assert result["stations"][1]["diameter"] == 4.0
    assert watched_answer("made.other", ANSWER)["result"]["stations"][0]["position"] == 1.0


def test_every_kind_of_number_is_a_field() -> None:
    """Nested ones, those of one form of several, entries of lists, lists of numbers."""
    assert numeric_fields() > {
        ("sine.setting", "height"),
        ("sine.setting", "angle.degrees"),
        ("blocks.stack", "blocks[]"),
        ("centers.effect", "at_stations[].station_from_first"),
    }


def test_the_list_may_only_get_shorter() -> None:
    """A field that lacks its test is named, and so is one that the list names for nothing."""
    fields: list[Field] = [("a.b", "x"), ("a.b", "y"), ("a.b", "z")]
    listed: list[Field] = [("a.b", "y"), ("a.b", "z"), ("a.b", "gone")]
    assert findings(fields, [("a.b", "x"), ("a.b", "y")], listed, "read by no test") == [
        "a.b gone is listed, but no operation answers it",
        "a.b x is read by no test",
        "a.b z is no longer read by no test: take it off the list",
    ]
    assert findings(fields, listed[:2], listed[:2], "read by no test") == []


def test_the_list_is_in_order(tmp_path: Path) -> None:
    """It is read as it is written; out of order it is refused."""
    listed = {
        "unread": frozenset({("a.b", "x"), ("a.b", "y[].z")}),
        "unheld": frozenset({("c.d", "x")}),
        "null": frozenset[Field](),
    }
    path = tmp_path / "fields_not_held.toml"
    path.write_text(written_not_held(listed), encoding="utf-8")
    assert load_not_held(path) == listed
    path.write_text('[unread]\n"a.b" = ["y", "x"]\n[unheld]\n[null]\n', encoding="utf-8")
    with pytest.raises(ValueError, match="not sorted"):
        load_not_held(path)


def test_a_whole_run_fails_on_a_number_that_no_test_reads(tmp_path: Path) -> None:
    """A suite of which no test reads a number is red at its end; a selection of it is not."""
    (tmp_path / "pytest.ini").write_text(
        "[pytest]\ntestpaths = .\naddopts = -p fields_plugin -p no:cacheprovider\n"
    )
    (tmp_path / "test_nothing.py").write_text("def test_nothing():\n    assert True\n")

    def run(*selection: str) -> subprocess.CompletedProcess[str]:
        places = ("service", "tests", "tests/load", "openapi")
        paths = os.pathsep.join(str(ROOT / place) for place in places)
        return subprocess.run(
            [sys.executable, "-m", "pytest", *selection],
            cwd=tmp_path,
            env={**os.environ, "PYTHONPATH": paths},
            capture_output=True,
            text=True,
            check=False,
        )

    whole = run()
    assert whole.returncode == pytest.ExitCode.TESTS_FAILED, whole.stdout
    assert "sine.setting height is read by no test" in whole.stdout
    assert run("-k", "nothing").returncode == pytest.ExitCode.OK
