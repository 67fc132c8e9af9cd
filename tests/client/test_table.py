"""The client's tables: sent in pieces of whole rows, and put together as if sent at once."""

import asyncio
import io
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from csv_support import CSV, address
from halfangle_client import AsyncHalfangle, Halfangle, table
from halfangle_client.errors import InvalidRequest
from halfangle_service.app import create_app
from halfangle_service.settings import Settings

QUERY = {"columns": "height", "keep": "part", "units": "in", "center_distance": 5}
ASKED: dict[str, Any] = {
    "columns": ["height"], "keep": ["part"], "units": "in", "center_distance": 5,
}  # fmt: skip
TABLE = (
    b"\xef\xbb\xbf" + b'"part",angle\r\n'
    b'A,10\r\n"B, ""b""\r\n2nd line",20\r\nC,8\xc2\xb018\'20"\r\nD,95\r\n\r\nE,30\r\nF,40'
)


@pytest.fixture(scope="module")
def app() -> Any:
    """The service as an application in this process."""
    return create_app(Settings(log_level="error"))


@pytest.fixture(scope="module")
def client(app: Any) -> Iterator[Halfangle]:
    """A client of it."""
    with Halfangle.in_process(app) as calls:
        yield calls


@pytest.fixture(scope="module")
def whole(client: Halfangle) -> bytes:
    """The same table, answered in one request without the client's pieces."""
    http: Any = client._connection._http
    path = "http://in-process" + address("sine.setting", **QUERY)
    answer = http.post(path, content=TABLE, headers={"content-type": CSV})
    assert answer.status_code == 200
    found: bytes = answer.content
    return found


@pytest.mark.parametrize("rows", [1, 2, 5_000])
def test_pieces_are_answered_as_one_table(
    client: Halfangle, whole: bytes, rows: int, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    """Whatever the table comes from and however it is parted, the bytes are those of one answer."""
    monkeypatch.setattr(table, "_LIGHT_ROWS", rows)
    file = tmp_path / "in.csv"
    file.write_bytes(TABLE)
    by_letter = (TABLE[n : n + 1] for n in range(len(TABLE)))
    for source in (TABLE, str(file), file, io.BytesIO(TABLE), by_letter):
        pieces = list(client.table(client.sine.setting, source, **ASKED))
        assert b"".join(pieces) == whole
        assert (len(pieces) > 1) == (rows < 10)


def test_a_table_is_awaited_too(app: Any, whole: bytes) -> None:
    """The async client gives the same pieces."""

    async def answered() -> bytes:
        async with AsyncHalfangle.in_process(app) as calls:
            return b"".join([p async for p in calls.table("sine.setting", TABLE, **ASKED)])

    assert asyncio.run(answered()) == whole


def test_a_table_that_is_refused_raises(client: Halfangle) -> None:
    """What the service says of the header is the typed error of any call."""
    with pytest.raises(InvalidRequest, match="did you mean angle"):
        list(client.table("sine.setting", b"angel\n30\n", units="in", center_distance=5))


def test_fields_that_no_parameter_states_are_refused(client: Halfangle) -> None:
    """An object is stated by its parts; a name that is no call is a KeyError as anywhere."""
    with pytest.raises(ValueError, match="shank: state its parts by their paths"):
        client.table("jobs.center", b"", shank={"kind": "taper"})
    with pytest.raises(KeyError, match=r"sine\.seting: no call"):
        client.table("sine.seting", b"")


def test_lists_and_truths_are_written_as_cells_are(client: Halfangle) -> None:
    """A list that all rows have alike is joined by the separator, a truth said in a word."""
    asked: dict[str, Any] = {
        "units": "in",
        "set": "inch-81",
        "missing": [0.1001, 4.0],
        "grade": None,
    }
    (answer,) = client.table("blocks.stack", b"height\n0.2002\n", columns=["blocks"], **asked)
    assert b"0.1001" not in answer.splitlines()[1].partition(b",")[2]
    assert answer.splitlines()[1].endswith(b",,")
