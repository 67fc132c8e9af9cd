"""Tables over a real socket: both ways at once, in bounded memory, and seen where cut short."""

import signal
import socket
import subprocess
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest

from serving_support import ask, free_port, serving

SERVE = ("-m", "halfangle_service.cli", "serve", "--log-level=error", "--port")
QUERY = "units=in&center_distance=5&keep=part&columns=height"
AT_MOST_SECONDS = 60.0
#: The most that a service of its own may hold more while it streams.
GROWTH_KB = 9_000
HEADER = b"part,angle\n"
HEAD = (
    f"POST /v1/tables/sine.setting?{QUERY} HTTP/1.1\r\nHost: shop\r\nContent-Type: text/csv\r\n"
    "Transfer-Encoding: chunked\r\n\r\n"
).encode()
ANSWERED_HEADER = b"part,angle,height [in],advisories,problem\n"


def chunk(content: bytes) -> bytes:
    """A piece of a body whose length was not told."""
    return b"%x\r\n%b\r\n" % (len(content), content)


class Stream:
    """A table under way on a connection of its own."""

    def __init__(self, connection: socket.socket) -> None:
        self._connection = connection
        self._file = connection.makefile("rb")
        self._rest = b""
        self.has_end = False

    def send(self, content: bytes) -> None:
        """Send bytes as they are."""
        self._connection.sendall(content)

    def head(self) -> bytes:
        """The head of the answer."""
        lines = []
        while (line := self._file.readline()).strip():
            lines.append(line)
        return b"".join(lines)

    def close(self) -> None:
        """Leave."""
        self._file.close()
        self._connection.close()

    def lines(self) -> Iterator[bytes]:
        """Lines of the answer until it ends; `has_end` tells whether that was its end."""
        while size := int(self._file.readline() or b"0", 16):
            self._rest += self._file.read(size)
            self._file.readline()
            *whole, self._rest = self._rest.split(b"\n")
            yield from whole
            self.has_end = False
        self.has_end = self._file.readline() == b"\r\n"


@contextmanager
def streaming(port: int) -> Iterator[Stream]:
    """A table that has begun."""
    with socket.create_connection(("127.0.0.1", port), timeout=AT_MOST_SECONDS) as connection:
        stream = Stream(connection)
        stream.send(HEAD)
        try:
            yield stream
        finally:
            stream.close()


@pytest.fixture(scope="module")
def port() -> Iterator[int]:
    """Port of a service that waits half a second for the next piece of a body."""
    chosen = free_port()
    with serving([*SERVE, str(chosen), "--body-seconds=0.5"], chosen):
        yield chosen


def test_a_row_is_answered_before_the_next_is_sent(port: int) -> None:
    """The header and each row come back while the table is still open; it ends with its body."""
    with streaming(port) as stream:
        stream.send(chunk(HEADER))
        assert b"200 OK" in stream.head()
        lines = stream.lines()
        assert next(lines) + b"\n" == ANSWERED_HEADER
        stream.send(chunk(b"A,30\n"))
        assert next(lines) == b"A,30,2.5,,"
        stream.send(chunk(b'"B '))
        stream.send(chunk(b'b",3'))
        stream.send(chunk(b"0\nC,95"))
        assert next(lines) == b'"B b",30,2.5,,'
        stream.send(chunk(b""))
        assert next(lines).startswith(b"C,95,,,angle: should be less than 90")
        assert [*lines] == []
        assert stream.has_end


def test_a_table_that_stays_away_ends_with_why(port: int) -> None:
    """What came is answered; a last row says why it ends, and the body has no end."""
    with streaming(port) as stream:
        stream.send(chunk(HEADER + b"A,30\nB,4"))
        stream.head()
        assert [*stream.lines()] == [
            ANSWERED_HEADER.rstrip(),
            b"A,30,2.5,,",
            b",,,,the table ends here: No more of the body arrived within 0.5 s.",
        ]
        assert not stream.has_end


def test_a_header_that_stays_away_is_refused_by_a_status(port: int) -> None:
    """Where not even the first line came in time nothing was answered yet."""
    with streaming(port) as stream:
        stream.send(chunk(b"part,ang"))
        assert stream.head().startswith(b"HTTP/1.1 408")


@pytest.mark.skipif(not Path("/proc/self/status").exists(), reason="memory is read from /proc")
def test_a_long_table_takes_no_memory_and_ends_with_caller_and_service() -> None:
    """A hundred thousand rows grow nothing, others are answered; who leaves ends it, and a stop."""
    own = free_port()
    # No angle that looks like minutes, about which each row would have its own words.
    piece = b"".join(b"P%04d,%d.75\n" % (n, 2 + n % 38) for n in range(5_000))
    with serving([*SERVE, str(own), "--stop-seconds=1"], own) as process:
        with streaming(own) as stream:
            stream.send(chunk(HEADER + piece))
            stream.head()
            lines = stream.lines()
            for _ in range(5_001):
                next(lines)
            before = resident_kb(process.pid, "VmRSS")
            for _ in range(20):
                stream.send(chunk(piece))
                for _ in range(5_000):
                    assert next(lines).endswith(b",,")
                assert ask(own, "GET", "/health/ready")[0] == 200
            assert resident_kb(process.pid, "VmHWM") - before < GROWTH_KB
            stream.send(chunk(piece * 12))
        time.sleep(0.5)
        spent = processor_seconds(process.pid)
        time.sleep(0.5)
        assert processor_seconds(process.pid) - spent < 0.1
        assert_stop_ends_a_table(process, own)


def assert_stop_ends_a_table(process: subprocess.Popen[str], port: int) -> None:
    """At SIGTERM a table that would go on ends with a row that says so, and the service ends."""
    with streaming(port) as stream:
        stream.send(chunk(HEADER + b"A,30\n"))
        stream.head()
        lines = stream.lines()
        assert [next(lines), next(lines)][1] == b"A,30,2.5,,"
        process.send_signal(signal.SIGTERM)
        assert b"the table ends here: The service stops" in next(lines)
        assert [*lines] == []
        assert not stream.has_end
    _, said = process.communicate(timeout=AT_MOST_SECONDS)
    assert process.returncode == 0
    assert "Traceback" not in said


def resident_kb(process_id: int, what: str) -> int:
    """Memory of a process: `VmRSS` now, `VmHWM` the most so far."""
    status = Path(f"/proc/{process_id}/status").read_text("utf-8")
    return int(status.split(f"{what}:")[1].split()[0])


def processor_seconds(process_id: int) -> float:
    """Processor time that a process has used."""
    fields = Path(f"/proc/{process_id}/stat").read_text("utf-8").rsplit(")", 1)[1].split()
    return (int(fields[11]) + int(fields[12])) / 100.0
