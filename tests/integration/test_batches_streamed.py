"""Batches over a real socket: both ways at once, as fast as they are read, while one reads."""

import json
import os
import signal
import socket
import threading
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

import pytest

from halfangle_service.http.batches.model import BATCHES_PATH
from http_support import OPERATIONS
from serving_support import ask, free_port, serving

SERVE = ("-m", "halfangle_service.cli", "serve", "--log-level=error", "--port")
HEAD = (
    f"POST {BATCHES_PATH} HTTP/1.1\r\nHost: shop\r\nContent-Type: application/x-ndjson\r\n"
    "Transfer-Encoding: chunked\r\n\r\n"
).encode()
SETTING = b'{"units":"in","center_distance":5,"angle":30}'
#: How long a test waits for what must come.
AT_MOST_SECONDS = 60.0
#: The most that a service of its own may hold more while it streams.
GROWTH_KB = 9_000


@pytest.fixture(scope="module")
def port() -> Iterator[int]:
    """Port of a service that waits half a second for the next piece of a body."""
    chosen = free_port()
    with serving([*SERVE, str(chosen), "--body-seconds=0.5"], chosen):
        yield chosen


def row(ref: int) -> bytes:
    """A line that asks for a setting."""
    return b'{"ref":%d,"operation":"sine.setting","request":%b}\n' % (ref, SETTING)


def chunk(content: bytes) -> bytes:
    """A piece of a body whose length was not told."""
    return b"%x\r\n%b\r\n" % (len(content), content)


class Stream:
    """A batch under way on a connection of its own."""

    def __init__(self, connection: socket.socket) -> None:
        self._connection = connection
        self._file = connection.makefile("rb")
        self._rest = b""
        self.send(HEAD)

    def send(self, content: bytes) -> None:
        """Send bytes as they are."""
        self._connection.sendall(content)

    def send_rows(self, rows: list[bytes]) -> None:
        """Send rows, a hundred a piece of the body, to its end."""
        for first in range(0, len(rows), 100):
            self.send(chunk(b"".join(rows[first : first + 100])))
        self.send(chunk(b""))

    def head(self) -> bytes:
        """The head of the answer."""
        lines = []
        while (line := self._file.readline()).strip():
            lines.append(line)
        return b"".join(lines)

    def close(self) -> None:
        """Leave: the file holds the connection open, too."""
        self._file.close()
        self._connection.close()

    def lines(self) -> Iterator[dict[str, Any]]:
        """Lines of the answer, each read, until its end."""
        while size := int(self._file.readline() or b"0", 16):
            self._rest += self._file.read(size)
            self._file.readline()
            *whole, self._rest = self._rest.split(b"\n")
            yield from map(json.loads, whole)


@contextmanager
def streaming(port: int, receive_bytes: int = 65_536) -> Iterator[Stream]:
    """A batch that has begun; so much of its answer waits at this end to be read."""
    with socket.socket() as connection:
        connection.setsockopt(socket.SOL_SOCKET, socket.SO_RCVBUF, receive_bytes)
        connection.settimeout(AT_MOST_SECONDS)
        connection.connect(("127.0.0.1", port))
        stream = Stream(connection)
        try:
            yield stream
        finally:
            stream.close()


def test_a_row_is_answered_before_the_next_is_sent(port: int) -> None:
    """Each answer comes while the body is still open; the last line holds the counts."""
    with streaming(port) as stream:
        stream.send(chunk(row(1)))
        assert stream.head().startswith(b"HTTP/1.1 200")
        lines = stream.lines()
        assert next(lines)["ref"] == 1
        stream.send(chunk(row(2)[:30]))
        stream.send(chunk(row(2)[30:] + row(3).rstrip()))
        assert next(lines)["ref"] == 2
        stream.send(chunk(b""))
        assert [next(lines)["ref"], next(lines)["counts"]["ok"]] == [3, 3]
        assert next(lines, None) is None


def test_a_body_longer_than_its_time_goes_on_while_it_arrives(port: int) -> None:
    """The time is that for the next piece: four times as long in all is no fault."""
    with streaming(port) as stream:
        for ref in range(8):
            stream.send(chunk(row(ref)))
            time.sleep(0.25)
        stream.send(chunk(b""))
        stream.head()
        assert [line.get("ref") for line in stream.lines()] == [*range(8), None]


def test_a_body_that_stays_away_ends_with_why(port: int) -> None:
    """What was sent is answered; the last line says that no more came in time."""
    with streaming(port) as stream:
        stream.send(chunk(row(1)))
        stream.head()
        first, last = stream.lines()
        assert first["status"] == "ok"
        assert last["counts"]["ok"] == 1
        assert last["problem"]["type"] == "/problems/too-slow"


def resident_kb(process_id: int, what: str) -> int:
    """Memory of a process: `VmRSS` now, `VmHWM` the most so far."""
    status = Path(f"/proc/{process_id}/status").read_text("utf-8")
    return int(status.split(f"{what}:")[1].split()[0])


@pytest.mark.skipif(not Path("/proc/self/status").exists(), reason="memory is read from /proc")
def test_who_does_not_read_is_held_back_and_memory_stays() -> None:
    """Answers that nobody reads are not made; read on, all come, and memory is as before."""
    choice = json.dumps(dict(OPERATIONS["wheels.choose"].example)).encode()
    asked = b'{"ref":%d,"operation":"wheels.choose","request":%b}\n'
    rows = [asked % (ref, choice) for ref in range(1_500)]
    own = free_port()
    with serving([*SERVE, str(own), "--stop-seconds=1"], own) as process:
        with streaming(own, receive_bytes=16_384) as stream:
            stream.send(chunk(rows[0]))
            stream.head()
            lines = stream.lines()
            assert next(lines)["status"] == "ok"
            before = resident_kb(process.pid, "VmRSS")
            sender = threading.Thread(target=stream.send_rows, args=(rows[1:],), daemon=True)
            sender.start()
            spent = [-1.0, processor_seconds(process.pid)]
            while spent[-1] - spent[-2] > 0.02:
                time.sleep(0.5)
                spent.append(processor_seconds(process.pid))
            assert ask(own, "GET", "/health/ready")[0] == 200
            *answered, last = lines
        assert [line["ref"] for line in answered] == [*range(1, len(rows))]
        assert last["counts"]["ok"] == len(rows)
        assert processor_seconds(process.pid) > spent[-1] + 0.2, "all was done before it was read"
        assert resident_kb(process.pid, "VmHWM") - before < GROWTH_KB


def test_a_stop_ends_a_batch_with_why() -> None:
    """At SIGTERM a batch that would go on is ended by a line that says so, and the service ends."""
    own = free_port()
    with serving([*SERVE, str(own), "--stop-seconds=1"], own) as process:
        with streaming(own) as stream:
            stream.send(chunk(row(1)))
            stream.head()
            lines = stream.lines()
            assert next(lines)["status"] == "ok"
            process.send_signal(signal.SIGTERM)
            last = next(lines)
            assert last["problem"]["type"] == "/problems/stopping"
            assert last["counts"]["ok"] == 1
        process.communicate(timeout=AT_MOST_SECONDS)
        assert process.returncode == 0


def test_a_batch_ends_with_its_caller() -> None:
    """Once the caller is gone no further row is begun: the service has nothing left to do."""
    asked = b'{"ref":%d,"operation":"sine.uncertainty","request":%b}\n'
    request = json.dumps(dict(OPERATIONS["sine.uncertainty"].example)).encode()
    own = free_port()
    with serving([*SERVE, str(own)], own) as process:
        with streaming(own) as stream:
            stream.send(chunk(b"".join(asked % (ref, request) for ref in range(2_000))))
            stream.head()
            assert next(stream.lines())["status"] == "ok"
        begun = processor_seconds(process.pid)
        time.sleep(1.0)
        ended = processor_seconds(process.pid)
        time.sleep(0.5)
        assert processor_seconds(process.pid) - ended < 0.1
        assert ended - begun < 1.0


def processor_seconds(process_id: int) -> float:
    """Processor time that a process has used."""
    fields = Path(f"/proc/{process_id}/stat").read_text("utf-8").rsplit(")", 1)[1].split()
    return (int(fields[11]) + int(fields[12])) / os.sysconf("SC_CLK_TCK")
