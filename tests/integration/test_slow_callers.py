"""Callers that hold back, hold out or leave: bounded in time and bytes, and no harm to others."""

import json
import os
import re
import select
import signal
import socket
import subprocess
import sys
import threading
import time
from collections.abc import Callable, Iterator
from contextlib import ExitStack, contextmanager
from pathlib import Path
from typing import Any

import pytest

from halfangle_service.logs import LogWriter
from serving_support import ask, environment, free_port, listens, serving

SINE = "/v1/sine/setting"
GOOD = b'{"units": "in", "center_distance": 5, "angle": 30}'
HEAD = f"POST {SINE} HTTP/1.1\r\nHost: shop\r\nContent-Type: application/json\r\n"
#: Times of a service that waits for nobody long, bounds of one with little room.
IMPATIENT = ("--header-seconds=0.5", "--body-seconds=0.5", "--answer-seconds=0.5")
NARROW = ("--connection-limit=20", "--bodies-limit-bytes=1000000")
SERVE = ("-m", "halfangle_service.cli", "serve", "--port")
#: How long a test waits for what must come: never so long, unless it does not come.
AT_MOST_SECONDS = 30.0

#: The service with a heavy operation that notes each call, and takes until a file appears.
SLOW_SERVICE = """
import sys, time
from dataclasses import replace
from pathlib import Path
from halfangle_service import cli, registry

known = registry.load_registry()
sine = known.operations["sine.setting"]
place = Path(sys.argv[2])

def wait(request):
    with (place / "calls").open("a") as calls:
        print(request.angle, file=calls)
    while not (place / "go").exists():
        time.sleep(0.005)
    return sine.calculate(request)

known.operations["sine.setting"] = replace(sine, calculate=wait, heavy=True)
raise SystemExit(cli.main(["serve", "--port", sys.argv[1], *sys.argv[3:]]))
"""


@pytest.fixture(scope="module")
def port() -> Iterator[int]:
    """Port of a service that waits for nobody long."""
    chosen = free_port()
    with serving([*SERVE, str(chosen), *IMPATIENT], chosen):
        yield chosen


@pytest.fixture(scope="module")
def narrow() -> Iterator[int]:
    """Port of a service that has little room."""
    chosen = free_port()
    with serving([*SERVE, str(chosen), *NARROW], chosen):
        yield chosen


@contextmanager
def connected(port: int, sent: bytes = b"") -> Iterator[socket.socket]:
    """A connection on which this has been sent."""
    with socket.create_connection(("127.0.0.1", port), timeout=AT_MOST_SECONDS) as connection:
        connection.sendall(sent)
        yield connection


def everything(connection: socket.socket) -> bytes:
    """All that comes until the service closes the connection."""
    received = b""
    try:
        while part := connection.recv(1_048_576):
            received += part
    except ConnectionResetError:
        pass
    return received


def one_answer(connection: socket.socket) -> bytes:
    """One answer of a connection that stays open."""
    received = b""
    while b"\r\n\r\n" not in received:
        received += connection.recv(65_536)
    head, _, body = received.partition(b"\r\n\r\n")
    found = re.search(rb"content-length: (\d+)", head)
    assert found
    while len(body) < int(found[1]):
        body += connection.recv(65_536)
    return head + b"\r\n\r\n" + body


def problem_in(received: bytes) -> tuple[bytes, dict[str, Any]]:
    """Head and problem document of one answer."""
    head, _, body = received.partition(b"\r\n\r\n")
    assert b"content-type: application/problem+json" in head
    problem: dict[str, Any] = json.loads(body)
    return head, problem


def wait_until(true: Callable[[], bool]) -> None:
    """Wait for what must become true."""
    deadline = time.monotonic() + AT_MOST_SECONDS
    while not true():
        assert time.monotonic() < deadline
        time.sleep(0.01)


# Time -----------------------------------------------------------------------------------------
def test_a_head_that_is_held_back_is_given_up(port: int) -> None:
    """A head that does not arrive in time is answered 408, and the connection ends."""
    with connected(port, HEAD.encode()) as connection:
        head, problem = problem_in(everything(connection))
    assert head.startswith(b"HTTP/1.1 408 ")
    assert b"connection: close" in head
    assert problem["type"] == "/problems/too-slow"


@pytest.mark.parametrize("sent", [b"", b"\r\n"])
def test_a_connection_on_which_nothing_is_asked_ends(port: int, sent: bytes) -> None:
    """Neither silence nor stray line ends keep a connection."""
    with connected(port, sent) as connection:
        assert everything(connection) == b""


def test_stray_line_ends_keep_no_connection_after_an_answer(port: int) -> None:
    """They end the time for an idle connection, and have a time of their own."""
    with connected(port, b"GET /health/live HTTP/1.1\r\nHost: shop\r\n\r\n") as connection:
        assert one_answer(connection).startswith(b"HTTP/1.1 200 ")
        connection.sendall(b"\r\n")
        assert everything(connection) == b""


def test_a_body_that_is_held_back_is_given_up(port: int) -> None:
    """A body that does not arrive in time is answered 408 with its id, and the connection ends."""
    sent = f"{HEAD}X-Request-ID: bench-7\r\nContent-Length: 50\r\n\r\n{{".encode()
    with connected(port, sent) as connection:
        head, problem = problem_in(everything(connection))
    assert head.startswith(b"HTTP/1.1 408 ")
    assert b"x-request-id: bench-7" in head
    assert problem["type"] == "/problems/too-slow"
    assert problem["instance"] == SINE


def test_a_body_that_nobody_reads_is_given_up(port: int) -> None:
    """The rest of a body whose request is answered already must come in time too."""
    sent = b"GET /health/live HTTP/1.1\r\nHost: shop\r\nContent-Length: 50\r\n\r\n{"
    with connected(port, sent) as connection:
        assert everything(connection).count(b"HTTP/1.1 200 ") == 1


def test_an_answer_that_is_not_taken_is_given_up() -> None:
    """A caller that asks for much and reads none of it is cut off, and nothing fails for it."""
    path = "/docs/files/swagger-ui-bundle.js"
    asked = f"GET {path} HTTP/1.1\r\nHost: shop\r\n\r\n".encode()
    chosen = free_port()
    with serving([*SERVE, str(chosen), *IMPATIENT], chosen) as process:
        page = everything_of(chosen, path)
        assert len(page) > 1_000_000
        with connected(chosen, asked * 40) as connection:
            time.sleep(2.0)
            assert len(everything(connection)) < 40 * len(page)
        process.terminate()
        _, log = process.communicate(timeout=AT_MOST_SECONDS)
    assert {json.loads(line)["level"] for line in log.splitlines()} <= {"info", "warning"}


def everything_of(port: int, path: str) -> bytes:
    """A whole answer, its connection closed after it."""
    asked = f"GET {path} HTTP/1.1\r\nHost: shop\r\nConnection: close\r\n\r\n"
    with connected(port, asked.encode()) as connection:
        return everything(connection)


def test_what_is_no_http_is_refused_as_everything_is(port: int) -> None:
    """Noise gets a problem document too."""
    with connected(port, b"\x16\x03\x01\x02\x00\r\n\r\n") as connection:
        head, problem = problem_in(everything(connection))
    assert head.startswith(b"HTTP/1.1 400 ")
    assert problem["type"] == "/problems/bad-request"


def test_what_came_before_noise_is_answered_first(port: int) -> None:
    """A whole request is answered though noise follows it at once, and nothing fails for it."""
    asked = b"GET /health/live HTTP/1.1\r\nHost: shop\r\n\r\n"
    with connected(port, asked + b"\x00\x01\r\n\r\n") as connection:
        received = everything(connection)
    assert received.startswith(b"HTTP/1.1 200 ")
    assert received.count(b"HTTP/1.1 ") == 1
    chunks = f"{HEAD}Transfer-Encoding: chunked\r\n\r\n5\r\n12345\r\nno size\r\n".encode()
    with connected(port, chunks) as connection:
        head, problem = problem_in(everything(connection))
    assert head.startswith(b"HTTP/1.1 400 ")
    assert problem["type"] == "/problems/bad-request"


# Number and bytes -----------------------------------------------------------------------------
def test_connections_are_bounded_in_number(narrow: int) -> None:
    """Past the limit a connection is refused as a problem; when others end, all is well again."""
    with ExitStack() as stack:
        for _ in range(20):
            stack.enter_context(connected(narrow))
        with connected(narrow) as connection:
            head, problem = problem_in(everything(connection))
        assert head.startswith(b"HTTP/1.1 503 ")
        assert problem["type"] == "/problems/overloaded"
    wait_until(lambda: everything_of(narrow, "/health/live").startswith(b"HTTP/1.1 200 "))


def test_bodies_are_bounded_together(narrow: int) -> None:
    """While large bodies are held back, further ones are refused and small ones answered."""
    large = f"{HEAD}Content-Length: 1000000\r\n\r\n".encode() + b" " * 900_000
    with connected(narrow, large):
        with connected(narrow, large) as second:
            head, problem = problem_in(one_answer(second))
        assert head.startswith(b"HTTP/1.1 503 ")
        assert b"retry-after: 1" in head
        assert problem["type"] == "/problems/overloaded"
        assert ask(narrow, "POST", SINE, GOOD)[0] == 200
    padded = GOOD + b" " * 900_000
    wait_until(lambda: ask(narrow, "POST", SINE, padded)[0] == 200)


# Callers that leave, and a service that stops ---------------------------------------------------
def calls(place: Path) -> list[str]:
    """The angles for which the slow operation has been called."""
    file = place / "calls"
    return file.read_text().split() if file.exists() else []


def test_work_that_nobody_waits_for_is_not_begun(tmp_path: Path) -> None:
    """Who leaves while waiting gives its place up, and nothing is worked out for it."""
    port = free_port()
    bounds = ["--heavy-workers=1", "--heavy-queue=1"]
    answers: list[int] = []

    def asked(angle: int) -> threading.Thread:
        body = GOOD.replace(b"30", b"%d" % angle)
        thread = threading.Thread(
            target=lambda: answers.append(ask(port, "POST", SINE, body)[0]), daemon=True
        )
        thread.start()
        return thread

    with serving(["-c", SLOW_SERVICE, str(port), str(tmp_path), *bounds], port):
        first = asked(10)
        wait_until(lambda: len(calls(tmp_path)) == 1)
        waiting = GOOD.replace(b"30", b"20")
        head = f"{HEAD}Content-Length: {len(waiting)}\r\n\r\n".encode()
        with connected(port, head + waiting):
            wait_until(lambda: ask(port, "POST", SINE, GOOD)[0] == 503)
        third = None
        for _ in range(20):
            third = asked(40)
            third.join(timeout=3.0)
            if third.is_alive():
                break
        (tmp_path / "go").touch()
        first.join(AT_MOST_SECONDS)
        assert third is not None
        third.join(AT_MOST_SECONDS)
    assert calls(tmp_path) == ["10.0", "40.0"]
    assert answers.count(200) == 2


def test_what_takes_past_the_stop_is_answered_as_a_problem(tmp_path: Path) -> None:
    """When the time for a stop is over, who still waits reads why, in the form of every error."""
    port = free_port()
    answers: list[tuple[int, Any]] = []
    command = ["-c", SLOW_SERVICE, str(port), str(tmp_path), "--stop-seconds=1"]
    with serving(command, port) as process:
        caller = threading.Thread(target=lambda: answers.append(ask(port, "POST", SINE, GOOD)))
        caller.start()
        wait_until(lambda: len(calls(tmp_path)) == 1)
        process.send_signal(signal.SIGTERM)
        caller.join(AT_MOST_SECONDS)
        (tmp_path / "go").touch()
        _, log = process.communicate(timeout=AT_MOST_SECONDS)
    [(status, problem)] = answers
    assert (status, problem["type"]) == (503, "/problems/stopping")
    lines = [json.loads(line) for line in log.splitlines()]
    assert [line["status"] for line in lines if line["event"] == "answered"] == [503]
    assert "Traceback" not in log


# Logs -----------------------------------------------------------------------------------------
def test_a_log_that_nobody_reads_stops_nobody() -> None:
    """Answers go on when the log's reader stalls; once it reads again, no line is torn."""
    port = free_port()
    process = subprocess.Popen(
        [sys.executable, *SERVE, str(port)], env=environment(), stderr=subprocess.PIPE
    )
    try:
        wait_until(lambda: listens(port))
        asked = f"GET /health/live?{'x' * 100} HTTP/1.1\r\nHost: shop\r\n\r\n".encode() * 1_000
        last = b"GET /nowhere HTTP/1.1\r\nHost: shop\r\nConnection: close\r\n\r\n"
        with connected(port, asked + last) as connection:
            assert everything(connection).count(b"HTTP/1.1 200 ") == 1_000
        process.terminate()
        _, log = process.communicate(timeout=AT_MOST_SECONDS)
    finally:
        process.kill()
    events = [json.loads(line)["event"] for line in log.splitlines()]
    assert events.count("answered") == 1_001
    assert len(log) > 100_000, "more than a pipe holds"


def test_lines_without_room_are_dropped_and_counted() -> None:
    """What waits for a reader is bounded; a line says how many were dropped."""
    reader, writer = os.pipe()
    filled = 0
    while select.select([], [writer], [], 0)[1]:
        filled += os.write(writer, b"x" * 4_096)
    line = b'{"event": "answered"}\n'
    with LogWriter(writer, most_bytes=len(line) * 10) as log:
        log.write(line)
        wait_until(lambda: not log._lines)  # the writing thread has it, and waits
        for _ in range(100):
            log.write(line)
        with os.fdopen(reader, "rb") as read:
            assert read.read(filled) == b"x" * filled
            lines = [json.loads(read.readline()) for _ in range(12)]
    os.close(writer)
    assert [entry["event"] for entry in lines] == ["answered"] * 11 + ["lines dropped"]
    assert lines[-1]["count"] == 90


# Processors -----------------------------------------------------------------------------------
@pytest.mark.skipif(not Path("/proc/self/task").exists(), reason="threads are counted in /proc")
def test_linear_algebra_takes_one_thread() -> None:
    """A request's linear algebra takes no processor from another request."""
    code = (
        "import os, halfangle_service.cli, numpy, scipy.linalg\n"
        "square = numpy.random.rand(600, 600)\n"
        "scipy.linalg.inv(square @ square)\n"
        "print(len(os.listdir('/proc/self/task')))\n"
    )
    kept = {k: v for k, v in environment().items() if not k.endswith("_NUM_THREADS")}
    ran = subprocess.run(
        [sys.executable, "-c", code], env=kept, capture_output=True, text=True, check=True
    )
    assert ran.stdout.strip() == "1"
