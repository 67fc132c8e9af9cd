"""Several workers on one port: both serve, one that is killed is begun again, counts stand."""

import http.client
import json
import os
import re
import signal
import socket
import subprocess
import sys
import time
from collections.abc import Callable, Iterator
from contextlib import suppress
from pathlib import Path

import pytest

from halfangle_service.http.guards.key_file import entry_for, new_key
from halfangle_service.serving import listening
from serving_support import ask, environment, free_port, listens

SINE = "/v1/sine/setting"
GOOD = b'{"units": "in", "center_distance": 5, "angle": 30}'
KEY, PACED = new_key(), new_key()
ROW = {"operation": "sine.setting", "request": json.loads(GOOD)}
#: Bodies of 300 rows, each with its address, its type and what an answered row of it holds.
MANY_ROWS = {
    "a table": (
        "/v1/tables/sine.setting?units=in&center_distance=5&columns=height",
        "text/csv",
        "angle\n" + "30\n" * 300,
        b"30,2.5,,",
    ),
    "lines": (
        "/v1/batches",
        "application/x-ndjson",
        "\n".join(json.dumps({"ref": ref, **ROW}) for ref in range(300)),
        b'"status":"ok"',
    ),
    "a document": (
        "/v1/batches",
        "application/json",
        json.dumps({"rows": [{"ref": ref, **ROW} for ref in range(300)]}),
        b'"status":"ok"',
    ),
}

pytestmark = pytest.mark.skipif(not hasattr(os, "fork"), reason="no processes by copy")


def numbers(port: int, pattern: str) -> list[str]:
    """What the metrics say at a pattern."""
    connection = http.client.HTTPConnection("127.0.0.1", port, timeout=30)
    connection.request("GET", "/metrics")
    text = connection.getresponse().read().decode()
    connection.close()
    return re.findall(pattern, text, re.MULTILINE)


def answered(port: int) -> float:
    """Requests for a setting answered by all workers together."""
    return sum(map(float, numbers(port, rf'^halfangle_requests_total{{.*"{SINE}",.*}} (\S+)')))


def until(true: Callable[[], bool]) -> None:
    """Wait for something, not for ever."""
    for _ in range(600):
        if true():
            return
        time.sleep(0.05)
    pytest.fail("it did not come")


def children(process: int) -> list[int]:
    """Processes begun by a process."""
    return [*map(int, Path(f"/proc/{process}/task/{process}/children").read_text().split())]


@pytest.fixture(scope="module")
def pair(tmp_path_factory: pytest.TempPathFactory) -> Iterator[tuple[int, int, Path]]:
    """A service of two workers: its port, its process, its log."""
    folder = tmp_path_factory.mktemp("pair")
    keys = folder / "keys.toml"
    slow = entry_for("slow", KEY) + "rate_per_minute = 1\nrate_burst = 4\n"
    paced = entry_for("paced", PACED) + "rate_per_minute = 600\nrate_burst = 2\n"
    keys.write_text(slow + paced)
    keys.chmod(0o640)
    port = free_port()
    variables = {"HALFANGLE_KEYS_FILE": str(keys), "HALFANGLE_API_KEYS": '["k"]'}
    with (folder / "log").open("wb") as log:
        process = subprocess.Popen(
            [sys.executable, "-m", "halfangle_service.cli", "serve", "--port", str(port),
             "--workers", "2"],
            env={**environment(), **variables}, stderr=log,
        )  # fmt: skip
        until(lambda: process.poll() is not None or listens(port))
        yield port, process.pid, folder / "log"
        process.terminate()
        process.wait(timeout=60)


def events(log: Path) -> list[str]:
    """What the log tells of; each line is JSON, whichever process wrote it."""
    return [json.loads(line)["event"] for line in log.read_text().splitlines()]


def test_both_serve_and_one_that_is_killed_is_begun_again(pair: tuple[int, int, Path]) -> None:
    """Counts of a killed worker stand, its place is filled, and callers are answered meanwhile."""
    port, process, log = pair
    for _ in range(40):
        assert ask(port, "POST", SINE, GOOD, **{"X-API-Key": "k"})[0] == 200
    assert answered(port) == 40
    first, second = children(process)
    used = [int(Path(f"/proc/{p}/stat").read_text().rpartition(")")[2].split()[11]) for p in
            (first, second)]  # fmt: skip
    assert min(used) > 0, "the system shares connections out"
    os.kill(first, signal.SIGKILL)
    for _ in range(40):
        assert ask(port, "POST", SINE, GOOD, **{"X-API-Key": "k"})[0] == 200
    until(lambda: len(children(process)) == 2)
    assert first not in children(process)
    until(lambda: events(log).count("worker begun") == 3)
    assert answered(port) == 80
    assert numbers(port, r"^halfangle_worker_starts_total (\S+)") == ["3.0"]
    assert len(numbers(port, r"^process_resident_memory_bytes")) == 2
    # The one that asks; the last answer may be here before its worker has noted it.
    until(lambda: numbers(port, r"^halfangle_requests_in_flight (\S+)") == ["1.0"])
    assert "worker ended" in events(log)


def test_a_pace_is_that_of_all_workers_together(pair: tuple[int, int, Path]) -> None:
    """Whichever worker is asked: a key's burst is spent once, not once a worker."""
    port, _, _ = pair
    statuses = [ask(port, "POST", SINE, GOOD, **{"X-API-Key": KEY})[0] for _ in range(16)]
    assert statuses == [200] * 4 + [429] * 12


@pytest.mark.parametrize("form", MANY_ROWS)
def test_rows_come_at_their_pace_and_end_with_their_caller(
    pair: tuple[int, int, Path], form: str
) -> None:
    """A row is sent when it had its turn, not when all had; who left takes no turn any more."""
    port, _, _ = pair
    path, media_type, body, row = MANY_ROWS[form]
    counted = r'^halfangle_key_rows_total{key="paced"} (\S+)'
    before = sum(map(float, numbers(port, counted)))
    head = f"POST {path} HTTP/1.1\r\nHost: shop\r\nX-API-Key: {PACED}\r\n"
    told = f"Content-Type: {media_type}\r\nContent-Length: {len(body)}\r\n\r\n"
    until(lambda: ask(port, "POST", SINE, GOOD, **{"X-API-Key": PACED})[0] == 200)
    time.sleep(0.2)
    with socket.create_connection(("127.0.0.1", port), timeout=5) as connection:
        connection.sendall(f"{head}{told}{body}".encode())
        came = b""
        while row not in came:
            came += connection.recv(65_536)
    time.sleep(1.5)
    [left] = map(float, numbers(port, counted))
    assert 0 < left - before < 100
    time.sleep(0.5)
    assert [*map(float, numbers(port, counted))] == [left]


def test_a_port_that_is_served_is_not_served_twice(pair: tuple[int, int, Path]) -> None:
    """Sockets that share a port would give a second service half of the callers."""
    with pytest.raises(OSError, match="in use"):
        listening("127.0.0.1", pair[0], workers=2)
    with pytest.raises(OSError, match="in use"):
        listening("127.0.0.1", pair[0], workers=1)


def test_a_stalled_reader_of_the_log_holds_nothing_up() -> None:
    """The line that a worker ended finds no room, and its place is filled all the same."""
    reading, writing = os.pipe()
    os.set_blocking(writing, False)
    with suppress(BlockingIOError):
        while True:
            os.write(writing, b" " * 4096)
    os.set_blocking(writing, True)
    code = (
        "import sys, time\n"
        "from halfangle_service.settings import Settings\n"
        "from halfangle_service.workers import Workers\n"
        "raise SystemExit(Workers(lambda place: time.sleep(600) or 0, [],"
        " Settings(workers=2)).run())\n"
    )
    process = subprocess.Popen([sys.executable, "-c", code], env=environment(), stderr=writing)
    try:
        until(lambda: len(children(process.pid)) == 2)
        killed = children(process.pid)[0]
        os.kill(killed, signal.SIGKILL)
        until(lambda: len(children(process.pid)) == 2 and killed not in children(process.pid))
    finally:
        process.terminate()
        assert process.wait(timeout=30) == 0
        os.close(reading)
        os.close(writing)


def test_workers_end_with_the_process_that_began_them(pair: tuple[int, int, Path]) -> None:
    """Killed, it leaves none behind that goes on serving the port with nobody to stop it."""
    port, process, log = pair
    workers = children(process)
    assert len(workers) == 2
    os.kill(process, signal.SIGKILL)
    until(lambda: events(log).count("Shutting down") == 2 and not listens(port))
    until(lambda: not any(Path(f"/proc/{worker}/fd").exists() for worker in workers))
