"""A storm of hostile requests against a service of its own on loopback. Not collected.

    .venv/bin/python tests/load/hostile.py --count 63000 --seconds 900

Starts the service, sends so many requests from a seed, and stops it: bodies broken byte by byte,
numbers at the edge of arithmetic, megabytes of what no request holds, heads and headers that are
none, callers that hold back, leave, or never read. Meanwhile an honest caller asks one request
again and again. Reported: answers by status, what must not come (a 5xx other than 503, no answer at
all, a fault in the log), the honest caller's times, and the memory of the service before, at its
most and after. Ends by itself, with status 1 where anything came that must not.
"""

import argparse
import asyncio
import json
import random
import statistics
import subprocess
import sys
import tempfile
import time
from collections import Counter
from contextlib import suppress
from dataclasses import dataclass, field
from typing import IO

from bench_http import Server, environment, free_port, wait_for_answer
from halfangle_service.registry import load_registry
from sent.hostile import PATHS, Storm, wire

#: Requests that are under way at once, and connections that hold back beside them.
AT_ONCE, HELD_AT_ONCE = 24, 200
#: An answer that takes longer is none. Heavy work waits its turn behind other heavy work.
HANG_SECONDS = 60.0
#: Times of the service here: shorter than its own, so that a storm sees them run out.
IMPATIENT = ("--header-seconds=4", "--body-seconds=4", "--answer-seconds=4")
HONEST = b'{"units": "in", "center_distance": 5, "angle": 30}'


@dataclass
class Tally:
    """What came back."""

    statuses: Counter[int] = field(default_factory=Counter)
    kinds: Counter[str] = field(default_factory=Counter)
    unanswered: int = 0
    bad: list[str] = field(default_factory=list)
    honest: list[float] = field(default_factory=list)
    resident: list[float] = field(default_factory=list)

    def note(self, kind: str, status: int | None, sent: bytes) -> None:
        """Count an answer; None is a connection closed without one."""
        self.kinds[kind] += 1
        if status is None:
            self.unanswered += 1
            return
        self.statuses[status] += 1
        if status >= 500 and status != 503:
            self.bad.append(f"{status} to {kind}: {sent[:1500]!r}")


async def exchange(port: int, sent: bytes) -> int | None:
    """Send bytes, read to the end; give the status of the first answer, None where none came."""
    reader, writer = await asyncio.open_connection("127.0.0.1", port)
    received = b""
    try:
        writer.write(sent)
        # The service may answer, and close, before it has read all.
        sending = asyncio.ensure_future(_drained(writer))
        while part := await reader.read(65_536):
            received = received if len(received) > 100 else received + part
        await sending
    except ConnectionError:
        pass
    finally:
        writer.close()
    received = received.removeprefix(b"HTTP/1.1 100 Continue\r\n\r\n")
    return int(received[9:12]) if received.startswith(b"HTTP/1.1 ") else None


async def _drained(writer: asyncio.StreamWriter) -> None:
    with suppress(ConnectionError):
        await writer.drain()


async def hold_back(port: int, sent: bytes, chance: random.Random) -> None:
    """Send a part of a request and wait, or leave, or send one and never read."""
    reader, writer = await asyncio.open_connection("127.0.0.1", port, limit=4_096)
    try:
        way = chance.randrange(4)
        if way == 3:
            writer.write(wire("GET", "/docs", b"").replace(b"Connection: close\r\n", b"") * 20)
            await asyncio.sleep(6.0)
            return
        writer.write(sent[: chance.randrange(1, max(2, len(sent)))])
        if way == 0:
            return
        while await asyncio.wait_for(reader.read(65_536), HANG_SECONDS):
            pass
    except ConnectionError:
        pass
    finally:
        writer.close()


async def storm(port: int, server: Server, count: int, seconds: float, seed: int) -> Tally:
    """Send everything; give what came back."""
    tally, made, chance = Tally(), Storm(seed), random.Random(seed)  # noqa: S311
    ends = time.monotonic() + seconds
    left = count
    held: set[asyncio.Task[None]] = set()

    async def worker() -> None:
        nonlocal left
        while left > 0 and time.monotonic() < ends:
            left -= 1
            kind, sent = made.request()
            if chance.random() < 0.02 and len(held) < HELD_AT_ONCE:
                task = asyncio.ensure_future(hold_back(port, sent, chance))
                held.add(task)
                task.add_done_callback(held.discard)
                tally.kinds["hold_back"] += 1
                continue
            try:
                status = await asyncio.wait_for(exchange(port, sent), HANG_SECONDS)
            except TimeoutError:
                tally.bad.append(f"no end of {kind} in {HANG_SECONDS:g} s: {sent[:1500]!r}")
                continue
            tally.note(kind, status, sent)

    async def honest() -> None:
        request = wire("POST", "/v1/sine/setting", HONEST)
        while left > 0 and time.monotonic() < ends:
            started = time.perf_counter()
            status = await exchange(port, request)
            tally.honest.append((time.perf_counter() - started) * 1e3)
            if status != 200:
                tally.bad.append(f"the honest caller got {status}")
            tally.resident.append(server.resident_megabytes())
            await asyncio.sleep(0.05)

    await asyncio.gather(honest(), *(worker() for _ in range(AT_ONCE)))
    while held:
        _, late = await asyncio.wait(held, timeout=HANG_SECONDS)
        if late:
            tally.bad.append(f"{len(late)} held connections were never ended")
            break
    return tally


def faults(log: IO[bytes]) -> list[str]:
    """What the log says that must not be said."""
    log.seek(0)
    lines = [json.loads(line) for line in log if line.startswith(b"{")]
    return [str(line)[:2_000] for line in lines if line.get("level") in {"error", "critical"}]


def main() -> int:
    """Run the storm; give the exit status."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").partition("\n")[0])
    parser.add_argument("--count", type=int, default=63_000)
    parser.add_argument("--seconds", type=float, default=900.0, help="ends then at the latest")
    parser.add_argument("--seed", type=int, default=24)
    options = parser.parse_args()
    port = free_port()
    command = ["-m", "halfangle_service.cli", "serve", "--port", str(port), *IMPATIENT]
    with tempfile.TemporaryFile() as log:
        process = subprocess.Popen([sys.executable, *command], env=environment(), stderr=log)
        try:
            wait_for_answer(port, "/health/live")
            server = Server(process, port, 0.0)
            asyncio.run(warm_up(port))
            before = server.resident_megabytes()
            started = time.monotonic()
            tally = asyncio.run(storm(port, server, options.count, options.seconds, options.seed))
            took = time.monotonic() - started
            time.sleep(3.0)
            after = server.resident_megabytes()
            used = server.processor_seconds()
        finally:
            process.terminate()
            process.wait(timeout=60)
        tally.bad += faults(log)
    report(tally, took, used, before, after)
    return int(bool(tally.bad))


async def warm_up(port: int) -> None:
    """Ask for every page and each known path once: what is made once is no growth."""
    for path in PATHS[:16]:
        await exchange(port, wire("GET", path, b""))
    for operation in load_registry().operations.values():
        await exchange(
            port, wire("POST", operation.path, json.dumps(dict(operation.example)).encode())
        )


def report(tally: Tally, took: float, used: float, before: float, after: float) -> None:
    """Print what came of it."""
    total = sum(tally.kinds.values())
    print(f"{total} requests in {took:.0f} s, {used:.0f} s of processor time of the service")
    print("by kind: " + ", ".join(f"{kind} {n}" for kind, n in tally.kinds.most_common()))
    print("by status: " + ", ".join(f"{s}: {n}" for s, n in sorted(tally.statuses.items())))
    print(f"closed without an answer: {tally.unanswered}")
    times = sorted(tally.honest)
    p99 = times[int(len(times) * 0.99)]
    print(
        f"the honest caller: {len(times)} times, median {statistics.median(times):.1f} ms, "
        f"p99 {p99:.1f} ms, most {times[-1]:.1f} ms"
    )
    quarters = [tally.resident[len(tally.resident) * n // 4] for n in (1, 2, 3)]
    print(
        f"resident memory: {before:.0f} MB before, after each quarter "
        f"{', '.join(f'{q:.0f}' for q in quarters)} MB, {max(tally.resident):.0f} MB at most, "
        f"{after:.0f} MB after"
    )
    print(f"what must not come: {len(tally.bad)}")
    for line in tally.bad[:20]:
        print(f"  {line}")


if __name__ == "__main__":
    raise SystemExit(main())
