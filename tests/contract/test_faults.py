"""What the trial of faults must not pass over, and what it found in the service."""

import asyncio
import errno
import json
import os
import resource
import time
from collections.abc import AsyncIterator
from typing import Any

import pytest

from faulty.asking import Callers, setting, stack
from faulty.ending import BATCH, TABLE
from faulty.finding import Counts, Finding, Memory, report, status
from halfangle_service.descriptors import connections_that_fit
from halfangle_service.http.guards.bodies import Bodies
from halfangle_service.http.guards.memory import give_back
from halfangle_service.http.problems import ProblemError
from halfangle_service.http.streams.sending import together
from halfangle_service.logs import LogWriter

GOOD = Counts(answered=10)
HEIGHT = {"result": {"height": 0.4357787137382908}}  # five inches at five degrees


def found(**changes: Any) -> Finding:
    """A finding that will do, but for these."""
    return Finding("done", **{"counts": GOOD, "memory": Memory(100.0, 200.0, 119.0), **changes})


# The report -----------------------------------------------------------------------------------
def test_a_finding_that_will_do_passes() -> None:
    """All right and memory within a fifth: status 0, and the report says so."""
    assert status({"one": found()}) == 0
    assert [*report({"one": found()})][-1] == "Nothing accepted was lost or wrong."


@pytest.mark.parametrize(
    ("changes", "words"),
    [
        ({"counts": Counts(answered=10, wrong=1)}, "no answer was wrong"),
        ({"counts": Counts(answered=10, lost=1)}, "none was lost"),
        ({"counts": Counts(answered=10, broken=1)}, "no connection broke"),
        ({"counts": Counts(answered=10, refused=1)}, "none was refused"),
        ({"counts": Counts()}, "requests were answered"),
        ({"memory": Memory(100.0, 200.0, 121.0)}, "memory came back"),
        ({"must": {"the client lost nothing": False}}, "the client lost nothing"),
    ],
)
def test_what_is_lost_or_wrong_ends_with_status_1(changes: dict[str, Any], words: str) -> None:
    """Each single thing that is not as it must be is named, whatever else is well."""
    findings = {"well": found(), "bad": found(**changes)}
    assert status(findings) == 1
    assert [*report(findings)][-1] == f"bad: not so: {words}"


def test_what_was_not_tried_is_no_pass() -> None:
    """It is said; and where nothing was tried the status is 1."""
    findings = {"one": found(untried="haproxy is not installed")}
    assert status(findings) == 1
    assert "**not tried**: haproxy is not installed" in "\n".join(report(findings))


@pytest.mark.parametrize(
    ("code", "body", "expected"),
    [
        (200, HEIGHT, Counts(answered=1)),
        (200, {"result": {"height": 0.435778713738291 + 1e-9}}, Counts(wrong=1)),
        (200, {"result": {}}, Counts(wrong=1)),
        (503, {"type": "/problems/overloaded"}, Counts(refused=1)),
        (500, {"type": "/problems/internal-error"}, Counts(wrong=1)),
        (422, {"type": "/problems/invalid-request"}, Counts(wrong=1)),
    ],
)
def test_a_wrong_answer_is_counted_as_wrong(code: int, body: Any, expected: Counts) -> None:
    """Callers know the sine: a height that is off, a failure or a refusal without cause is seen."""
    callers = Callers(0)
    callers.note(code, json.dumps(body).encode(), setting(0))
    callers.counts.examples.clear()
    assert callers.counts == expected


def test_another_row_s_answer_is_seen() -> None:
    """Blocks of another height are wrong, and so is a row that comes twice or out of its turn."""
    assert stack(4).is_right({"result": {"total": 1.0004, "blocks": [0.1004, 0.9]}})
    assert not stack(4).is_right({"result": {"total": 1.0004, "blocks": [0.1004, 0.8]}})
    assert not stack(5).is_right({"result": {"total": 1.0004, "blocks": [0.1004, 0.9]}})
    line = b'{"ref":7,"status":"ok","answer":{"result":{"height":2.5}}}'
    assert [BATCH.is_right(line, number) for number in (6, 7, 8)] == [False, True, False]
    assert [TABLE.is_right(b"7,30,2.5,,", number) for number in (6, 7)] == [False, True]
    end = b'{"counts":{"ok":8},"problem":{"type":"/problems/stopping"}}'
    assert [BATCH.tells_stop(end, rows) for rows in (7, 8)] == [False, True]


# What it found --------------------------------------------------------------------------------
@pytest.mark.parametrize(
    "error", [ProblemError("stopping", "It stops."), asyncio.CancelledError("told")]
)
def test_rows_that_were_counted_are_sent_before_the_end(error: BaseException) -> None:
    """Answers kept back to be sent together come before the problem or the stop that ends them."""

    async def answers() -> AsyncIterator[bytes]:
        yield b"one"
        yield b"two"
        raise error

    sent = list[bytes]()

    async def send() -> None:
        async for piece in together(answers()):
            sent.append(piece)

    with pytest.raises(type(error), match=str(error)):
        asyncio.run(send())
    assert sent == [b"onetwo"]


def test_a_full_disk_ends_no_log(monkeypatch: pytest.MonkeyPatch) -> None:
    """Lines without room are dropped and counted; with room again they are written, none torn."""
    reading, writing = os.pipe()
    room, write = [12], os.write

    def bounded(descriptor: int, content: bytes) -> int:
        if descriptor != writing:
            return write(descriptor, content)
        if not room[0]:
            raise OSError(errno.ENOSPC, "No space left on device")
        count = write(descriptor, content[: room[0]])
        room[0] -= count
        return count

    monkeypatch.setattr("halfangle_service.logs._AGAIN_SECONDS", 0.0)
    monkeypatch.setattr(os, "write", bounded)
    counted: list[int] = []
    with LogWriter(writing, dropped=lambda: counted.append(1)) as log:
        for number in range(3):
            log.write(b'{"line":%d}\n' % number)
        wait(lambda: len(counted) == 3 - 1)
        log.write(b'{"line":3}\n')
        wait(lambda: len(counted) == 3)
        room[0] = 1_000_000
        log.write(b'{"line":4}\n')
    os.close(writing)
    with os.fdopen(reading, "rb") as file:
        first, torn, fourth, told = file.read().splitlines()
    assert (first, torn, fourth) == (b'{"line":0}', b"{", b'{"line":4}')
    assert json.loads(told) == {"event": "lines dropped", "count": 3, "level": "warning"}


def wait(true: Any) -> None:
    """Wait for what must come."""
    for _ in range(2_000):
        if true():
            return
        time.sleep(0.005)
    pytest.fail("it did not come")


@pytest.mark.parametrize(
    ("soft", "hard", "wanted", "fit", "raised"),
    [
        (1_024, 4_096, 1_000, 1_000, 1_064),
        (1_024, 4_096, 900, 900, 1_024),
        (256, 512, 1_000, 448, 512),
        (80, 80, 1_000, 40, 80),
        (1_024, resource.RLIM_INFINITY, 5_000, 5_000, 5_064),
        (resource.RLIM_INFINITY, resource.RLIM_INFINITY, 5_000, 5_000, resource.RLIM_INFINITY),
    ],
)
def test_no_more_connections_than_descriptors(
    monkeypatch: pytest.MonkeyPatch, soft: int, hard: int, wanted: int, fit: int, raised: int
) -> None:
    """The limit is raised as far as it may be; past it connections are refused, not dropped."""
    limits = [(soft, hard)]
    monkeypatch.setattr(resource, "getrlimit", lambda _: limits[-1])
    monkeypatch.setattr(resource, "setrlimit", lambda _, new: limits.append(new))
    assert connections_that_fit(wanted) == fit
    assert limits[-1] == (raised, hard)


def test_memory_of_much_that_was_held_is_given_back(monkeypatch: pytest.MonkeyPatch) -> None:
    """Once megabytes of bodies are all released the allocator is told; after a few bytes not."""
    told: list[int] = []
    monkeypatch.setattr("halfangle_service.http.guards.bodies._SOON_SECONDS", 0.0)

    def noted() -> None:
        told.append(1)
        give_back()

    monkeypatch.setattr("halfangle_service.http.guards.bodies.give_back", noted)

    class Sent:
        """A request with a body."""

        def __init__(self, size: int) -> None:
            self._size = size

        async def stream(self) -> AsyncIterator[bytes]:
            """The body."""
            yield b" " * self._size

    async def hold(sizes: list[int]) -> int:
        bodies = Bodies(30.0, 32_000_000)
        sent: list[Any] = [Sent(size) for size in sizes]
        held = [await bodies.read(one) for one in sent]
        for body in held:
            assert not told
            bodies.release(body)
        await asyncio.sleep(0.05)
        return len(told)

    assert asyncio.run(hold([1_000_000] * 5)) == 0
    assert asyncio.run(hold([1_000_000] * 10)) == 1
