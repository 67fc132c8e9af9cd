"""Every stop of the service ends the command `halfangle call` with a status of its own."""

import json
import re
from pathlib import Path
from typing import Any

import pytest

from advisories.every import ROWS
from advisories.places import answer
from advisories.row import Request, Row
from client_support import run
from halfangle_client.cli.picks import NoSuchValue, picked
from halfangle_service.http.picks import pick_values
from halfangle_service.http.problems import ProblemError
from support import single_values

STOPPED, DONE = 4, 0
STOPS = [row for row in ROWS if row.severity == "stop"]


def _named(row: Row) -> str:
    return str(row)


@pytest.fixture
def called(at_live: None, capsys: pytest.CaptureFixture[str], tmp_path: Path) -> Any:
    """Call an operation by the command, of a live service: status, output, complaints."""

    def call(operation: str, request: Request) -> tuple[int, str, str]:
        file = tmp_path / "request.json"
        file.write_text(json.dumps(request), "utf-8")
        return run(capsys, "call", operation, "--input", str(file))

    return call


@pytest.mark.parametrize("row", STOPS, ids=_named)
def test_a_stop_ends_with_its_status_and_its_text(called: Any, row: Row) -> None:
    """The answer is printed whole, each stop is repeated as a complaint, the status is 4."""
    status, out, err = called(row.operation, row.raising)
    given = answer(row.operation, row.raising)["advisories"]
    stops = [a["message"] for a in given if a["severity"] == "stop"]
    assert status == STOPPED
    assert json.loads(out)["advisories"] == given
    assert [line for line in err.splitlines() if line] == [f"halfangle: stop: {m}" for m in stops]


@pytest.mark.parametrize("row", STOPS, ids=_named)
def test_just_short_of_a_stop_the_command_ends_well(called: Any, row: Row) -> None:
    """Where no other stop stands, the status is 0 and there is no complaint."""
    status, out, err = called(row.operation, row.falling_short)
    left = [a["code"] for a in json.loads(out)["advisories"] if a["severity"] == "stop"]
    assert row.code not in left
    assert (status, bool(err)) == ((STOPPED, True) if left else (DONE, False))


@pytest.mark.parametrize("row", STOPS, ids=_named)
def test_picking_keeps_the_rule_of_the_service(row: Row) -> None:
    """Of each value beside a stop the command gives what the service's `pick` gives, or none."""
    whole = answer(row.operation, row.raising)
    written = json.dumps(whole).encode()
    values = [*single_values(whole["result"])]
    lists = [path.rpartition(".")[0] for path in values if path.endswith(".0")]
    parts = [re.sub(r"\.0(?=\.)", ".*", path) for path in values if ".0." in path]
    several = [f"{values[0]},{values[-1]}", "advisories,forecast", *parts[:20]]
    for path in [*values, *lists, *several, "advisories"]:
        assert _picked_by_the_command(whole, path) == _picked_by_the_service(written, path), path


def _picked_by_the_service(written: bytes, path: str) -> str | None:
    try:
        return pick_values(written, path, "pick")[0].decode()
    except ProblemError as error:
        return None if error.name == "stopped" else error.name


def _picked_by_the_command(whole: Any, path: str) -> str | None:
    try:
        return picked(whole, path)
    except NoSuchValue:
        return "no-such-value"
