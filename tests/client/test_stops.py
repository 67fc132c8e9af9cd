"""Every stop of the service ends the command `halfangle call` with a status of its own."""

import json
from pathlib import Path
from typing import Any

import pytest

from advisories.every import ROWS
from advisories.places import answer
from advisories.row import Request, Row
from halfangle_client import Halfangle, cli

STOPPED, DONE = 4, 0
STOPS = [row for row in ROWS if row.severity == "stop"]


def _named(row: Row) -> str:
    return str(row)


@pytest.fixture
def called(
    client: Halfangle,
    capsys: pytest.CaptureFixture[str],
    monkeypatch: pytest.MonkeyPatch,
    tmp_path: Path,
) -> Any:
    """Call an operation by the command, of the service in process: status, output, complaints."""
    monkeypatch.setattr(cli, "Halfangle", lambda *_, **__: client)

    def run(operation: str, request: Request) -> tuple[int, str, str]:
        file = tmp_path / "request.json"
        file.write_text(json.dumps(request), "utf-8")
        status = cli.main(["call", operation, "--json", str(file)])
        printed = capsys.readouterr()
        return status, printed.out, printed.err

    return run


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
