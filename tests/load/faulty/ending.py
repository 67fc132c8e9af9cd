"""Processes that end: one killed of two, each stopped in turn, one stopped amid rows."""

import asyncio
import json
import os
import signal
import threading
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path

from balancer_support import behind, haproxy
from faulty.asking import Answer, Callers
from faulty.finding import Counts, Finding
from faulty.started import Service, memory_of, service, until, warmed, watched
from halfangle_client import Halfangle, HalfangleError

#: An angle of thirty degrees on five inches.
HALF = 2.5


class Client:
    """The client, in a thread of its own: what it lost although it tries again."""

    def __init__(self, url: str) -> None:
        self.calls = 0
        self.errors: list[str] = []
        self._url = url
        self._over = threading.Event()
        self._thread = threading.Thread(target=self._ask, daemon=True)

    def __enter__(self) -> "Client":
        self._thread.start()
        return self

    def __exit__(self, *_: object) -> None:
        self._over.set()
        self._thread.join()

    def _ask(self) -> None:
        with Halfangle(self._url) as client:
            while not self._over.wait(0.01):
                self.calls += 1
                try:
                    answer = client.sine.setting(units="in", center_distance=5, angle=30)
                except HalfangleError as error:
                    self.errors.append(repr(error))
                    continue
                if abs(answer.result.height - HALF) > 1e-12:
                    self.errors.append(f"height {answer.result.height}")


def killed_worker(folder: Path, seconds: float) -> Finding:
    """One of two workers is killed amid requests, and later the other."""
    with service(folder, "--workers", "2", "--log-level", "warning") as served:
        finding = asyncio.run(_killed(served, seconds))
        finding.must["the service ended as told"] = served.stop() == 0
    begun = served.events().count("worker ended")
    finding.must["the log tells of both"] = begun == 2
    return finding


async def _killed(served: Service, seconds: float) -> Finding:
    idle = await warmed(served)
    callers = Callers(served.port, whose=served.whose)
    killed: list[int] = []
    came_back = True
    with Client(f"http://127.0.0.1:{served.port}") as client:
        asking = asyncio.ensure_future(callers.ask())
        watching = asyncio.ensure_future(watched(served, callers))
        for _ in range(2):
            await asyncio.sleep(seconds / 3)
            victim = next(one for one in served.workers() if one not in killed)
            os.kill(victim, signal.SIGKILL)
            killed.append(victim)
            came_back &= await until(
                lambda victim=victim: (  # type: ignore[misc]
                    len(served.workers()) == 2 and victim not in served.workers()
                )
            )
        await asyncio.sleep(seconds / 3)
        callers.over = True
        await asyncio.gather(asking, watching)
    shares = {who: count for who, count in callers.by_whom.items() if who.isdecimal()}
    new = [str(process) for process in served.workers()]
    return Finding(
        "two workers, kill −9 of one under load, then of the other",
        callers.counts,
        may_break=True,
        must={
            "both workers answered before": all(str(one) in shares for one in killed),
            "those begun in their place answered": all(one in shares for one in new),
            "killed workers were begun again": came_back,
            "nobody met a closed door": callers.unreached == 0,
            "connections of the killed alone broke": callers.counts.broken <= 2 * callers.at_once,
            "the client lost nothing": client.calls > 0 and not client.errors,
        },
        seen={
            "answered by each process": " + ".join(map(str, shares.values())),
            "the client": f"{client.calls} calls, {len(client.errors)} lost",
        },
        memory=await memory_of(served, idle),
    )


def rolling_restart(folder: Path, seconds: float) -> Finding:
    """Behind a load balancer each of two services is stopped and started in turn, then killed."""
    program = haproxy()
    done = "two services behind haproxy, SIGTERM and restart of each in turn, then kill −9 of one"
    if program is None:
        return Finding(done, untried="haproxy is not installed")
    with behind(program, folder) as balanced:
        callers = Callers(balanced.port)
        statuses: list[int] = []

        def roll() -> None:
            for replica in balanced.replicas:
                statuses.append(replica.stop())
                replica.start()
                # The balancer looks once a second whether one is back.
                threading.Event().wait(2.0)
            balanced.replicas[0].kill()

        async def under_load() -> None:
            asking = asyncio.ensure_future(callers.ask())
            await asyncio.sleep(seconds / 4)
            await asyncio.to_thread(roll)
            await asyncio.sleep(seconds / 4)
            callers.over = True
            await asking

        asyncio.run(under_load())
    return Finding(
        done,
        callers.counts,
        must={
            "the balancer took every connection": callers.unreached == 0,
            "each ended as told": statuses == [0, 0],
        },
        seen={
            "slowest": f"{callers.slow(1.0 - 1e-9) / 1e3:.1f} s",
            "p99": f"{callers.slow():.0f} ms",
        },
    )


@dataclass(frozen=True)
class Rows:
    """What rows are sent, what each comes back as, and what the last says of a stop."""

    head: str
    first: bytes
    row: bytes

    def is_right(self, line: bytes, number: int) -> bool:
        """Whether a line is the right answer to the row of this number."""
        raise NotImplementedError

    def tells_stop(self, line: bytes, rows: int) -> bool:
        """Whether a line says that so many rows were answered, and that the service stops."""
        raise NotImplementedError


class Batch(Rows):
    """Lines of JSON."""

    def is_right(self, line: bytes, number: int) -> bool:
        """The row's reference comes back, and the height."""
        found: Answer = json.loads(line)
        return bool(
            found.get("ref") == number
            and found.get("status") == "ok"
            and abs(found["answer"]["result"]["height"] - HALF) < 1e-12
        )

    def tells_stop(self, line: bytes, rows: int) -> bool:
        """The counts are of the lines that came."""
        found: Answer = json.loads(line)
        is_told = found.get("problem", {}).get("type") == "/problems/stopping"
        return bool(is_told and found["counts"]["ok"] == rows)


class Table(Rows):
    """Rows of CSV."""

    def is_right(self, line: bytes, number: int) -> bool:
        """The row's own column comes back, and the height."""
        return line == b"%d,30,2.5,," % number

    def tells_stop(self, line: bytes, rows: int) -> bool:  # noqa: ARG002
        """The last row says that it is the last; a table has no counts, its rows stand for it."""
        return b"the table ends here" in line


_CHUNKED = "Host: shop\r\nTransfer-Encoding: chunked\r\n"
BATCH = Batch(
    f"POST /v1/batches HTTP/1.1\r\n{_CHUNKED}Content-Type: application/x-ndjson\r\n\r\n",
    b"",
    b'{"ref":%d,"operation":"sine.setting","request":'
    b'{"units":"in","center_distance":5,"angle":30}}\n',
)
TABLE = Table(
    "POST /v1/tables/sine.setting?units=in&center_distance=5&keep=part&columns=height HTTP/1.1"
    f"\r\n{_CHUNKED}Content-Type: text/csv\r\n\r\n",
    b"part,angle\n",
    b"%d,30\n",
)


async def _lines(reader: asyncio.StreamReader) -> list[bytes]:
    """Lines of an answer of unknown length, to its end or to where it breaks off."""
    whole = b""
    await reader.readuntil(b"\r\n\r\n")
    with suppress(EOFError, OSError):
        while size := int(await reader.readline() or b"0", 16):
            whole += await reader.readexactly(size)
            await reader.readline()
    return whole.split(b"\n")


async def _stopped_amid(served: Service, rows: Rows, seconds: float, streams: int) -> Finding:
    idle = await warmed(served)
    stopping = asyncio.Event()

    async def stream(counts: Counts, ends: list[bool]) -> int:
        reader, writer = await asyncio.open_connection("127.0.0.1", served.port)
        writer.write(rows.head.encode())
        sent = 0
        reading = asyncio.ensure_future(_lines(reader))
        with suppress(OSError):
            while not reading.done():
                part = rows.first if not sent else b""
                part += b"".join(rows.row % number for number in range(sent, sent + 50))
                sent += 50
                writer.write(b"%x\r\n%b\r\n" % (len(part), part))
                await writer.drain()
                await asyncio.sleep(0.02)
        *lines, rest = await reading
        writer.close()
        if rows.first:
            lines = lines[1:]
        right = sum(rows.is_right(line, number) for number, line in enumerate(lines[:-1]))
        counts.answered += right
        counts.wrong += len(lines[:-1]) - right
        ends.append(bool(lines) and rest == b"" and rows.tells_stop(lines[-1], right))
        return sent - right

    counts, ends = Counts(), list[bool]()
    streaming = [asyncio.ensure_future(stream(counts, ends)) for _ in range(streams)]
    await asyncio.sleep(max(1.0, seconds / 4))
    busiest = served.megabytes()
    stopping.set()
    served.process.terminate()
    unanswered = sum(await asyncio.gather(*streaming))
    return Finding(
        f"{streams} at once without end, SIGTERM amid them",
        counts,
        must={"each said at its end where it was cut": len(ends) == streams and all(ends)},
        seen={
            "ends that say so": f"{sum(ends)} of {streams}",
            "rows sent past that": f"{unanswered:,}",
            "memory amid them": f"{busiest - idle:+.0f} MB",
        },
    )


def _amid(folder: Path, rows: Rows, seconds: float) -> Finding:
    with service(folder, "--stop-seconds=2", "--log-level", "warning") as served:
        finding = asyncio.run(_stopped_amid(served, rows, seconds, streams=6))
        finding.must["the service ended as told"] = served.process.wait(60) == 0
    told = [event for event in served.faults() if not event.startswith("Cancel ")]
    finding.must["the log tells no fault but that work was ended"] = not told
    return finding


def batch_at_stop(folder: Path, seconds: float) -> Finding:
    """Batches of lines are under way at SIGTERM."""
    return _amid(folder, BATCH, seconds)


def table_at_stop(folder: Path, seconds: float) -> Finding:
    """Tables of CSV are under way at SIGTERM."""
    return _amid(folder, TABLE, seconds)
