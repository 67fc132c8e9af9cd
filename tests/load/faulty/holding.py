"""Callers that hold the service up, many at once, while an honest one asks."""

import asyncio
from collections import Counter
from collections.abc import Awaitable, Callable
from contextlib import suppress
from pathlib import Path

from faulty.asking import Callers
from faulty.finding import Finding
from faulty.started import Service, memory_of, service, warmed, watched

#: Seconds that the service waits here for heads, bodies and readers: soon seen to run out.
PATIENCE = 4
IMPATIENT = tuple(f"--{what}-seconds={PATIENCE}" for what in ("header", "body", "answer"))
_HEAD = b"POST /v1/sine/setting HTTP/1.1\r\nHost: shop\r\nContent-Type: application/json\r\n"
_LARGE = b"GET /docs/files/swagger-ui-bundle.js HTTP/1.1\r\nHost: shop\r\n\r\n"
#: How many times as long as at rest the honest caller may wait, and what is short anyway.
MOST_RATIO, SHORT_MILLISECONDS = 10.0, 100.0

Holding = Callable[[int], Awaitable[str]]


async def _rest(reader: asyncio.StreamReader) -> str:
    """How a connection ends: the status that it reads last, or that it is closed."""
    received = b""
    with suppress(OSError):
        received = await asyncio.wait_for(reader.read(100_000), PATIENCE * 8)
    return received[9:12].decode() if received.startswith(b"HTTP/1.1") else "closed"


async def _drip(port: int, first: bytes, drop: bytes) -> str:
    """Send the beginning of a request, then a little now and then, until that ends."""
    reader, writer = await asyncio.open_connection("127.0.0.1", port)
    ending = asyncio.ensure_future(_rest(reader))
    with suppress(OSError):
        writer.write(first)
        while not ending.done():
            writer.write(drop)
            await writer.drain()
            await asyncio.sleep(0.5)
    writer.close()
    return await ending


async def slow_head(port: int) -> str:
    """A head that comes a byte at a time."""
    return await _drip(port, _HEAD + b"X-Slow: ", b"x")


async def slow_body(port: int) -> str:
    """A body that comes a byte at a time."""
    return await _drip(port, _HEAD + b"Content-Length: 1000\r\n\r\n{", b" ")


async def held_body(port: int) -> str:
    """Nearly a megabyte of a body, whose end is held back."""
    reader, writer = await asyncio.open_connection("127.0.0.1", port)
    with suppress(OSError):
        writer.write(_HEAD + b"Content-Length: 1000000\r\n\r\n" + b" " * 900_000)
        await asyncio.wait_for(writer.drain(), PATIENCE * 4)
    ended = await _rest(reader)
    writer.close()
    return ended


async def slow_reader(port: int) -> str:
    """Asks for megabytes, and reads a little of them now and then."""
    reader, writer = await asyncio.open_connection("127.0.0.1", port, limit=2_048)
    writer.write(_LARGE * 20)
    taken, whole = 0, 20 * 1_000_000
    for _ in range(PATIENCE * 4):
        await asyncio.sleep(0.5)
        with suppress(OSError, TimeoutError):
            taken += len(await asyncio.wait_for(reader.read(1_000), 0.2))
    with suppress(OSError):
        while part := await asyncio.wait_for(reader.read(65_536), PATIENCE * 4):
            taken += len(part)
    writer.close()
    return "cut off" if taken < whole else "whole"


async def silent(port: int) -> str:
    """A connection on which nothing is asked."""
    reader, writer = await asyncio.open_connection("127.0.0.1", port)
    ended = await _rest(reader)
    writer.close()
    return ended


async def _honest_beside(
    served: Service, done: str, holding: dict[str, tuple[int, Callable[[int], Awaitable[str]]]]
) -> tuple[Finding, dict[str, Counter[str]]]:
    """Ask honestly at rest, then while so many of each kind hold on."""
    idle = await warmed(served)
    rest = Callers(served.port, 2, 0.01)
    await rest.ask_for(3.0)
    honest = Callers(served.port, 2, 0.01)
    asking = asyncio.ensure_future(honest.ask())
    watching = asyncio.ensure_future(watched(served, honest))
    tasks = {
        kind: [asyncio.ensure_future(hold(served.port)) for _ in range(count)]
        for kind, (count, hold) in holding.items()
    }
    ends = {
        kind: Counter(
            one if isinstance(one, str) else type(one).__name__
            for one in await asyncio.gather(*held, return_exceptions=True)
        )
        for kind, held in tasks.items()
    }
    honest.over = True
    await asyncio.gather(asking, watching)
    after = Callers(served.port, 2)
    await after.ask_for(1.0)
    at_rest, beside = rest.slow(), honest.slow()
    finding = Finding(
        done,
        honest.counts,
        must={
            "the honest caller waited little longer": beside
            <= max(SHORT_MILLISECONDS, MOST_RATIO * at_rest),
            "nobody honest met a closed door": honest.unreached == 0,
            "after it all is as before": after.counts.broken + after.counts.refused == 0
            and after.counts.answered > 0,
        },
        seen={
            "honest p99": f"{at_rest:.0f} → {beside:.0f} ms ({beside / at_rest:.1f} times)",
            **{
                kind: ", ".join(f"{count} × {how}" for how, count in found.most_common())
                for kind, found in ends.items()
            },
        },
        memory=await memory_of(served, idle),
    )
    return finding, ends


def slow_callers(folder: Path, seconds: float) -> Finding:
    """Heads and bodies that come a byte at a time, answers that are hardly read."""
    count = 100
    with service(folder, *IMPATIENT, "--log-level", "error") as served:
        finding, ends = asyncio.run(
            _honest_beside(
                served,
                f"{count} slow heads, {count} slow bodies, {count} slow readers at once",
                {
                    "heads": (count, slow_head),
                    "bodies": (count, slow_body),
                    "readers": (count, slow_reader),
                },
            )
        )
    finding.must["slow heads and bodies were told so"] = all(
        ends[kind]["408"] >= 0.9 * count for kind in ("heads", "bodies")
    )
    finding.must["slow readers were cut off"] = ends["readers"]["cut off"] == count
    finding.must["the log tells no fault"] = not served.faults()
    return finding


def bodies_held_back(folder: Path, seconds: float) -> Finding:
    """Hundreds of megabytes of bodies whose end is held back."""
    with service(folder, *IMPATIENT, "--log-level", "error") as served:
        finding, ends = asyncio.run(
            _honest_beside(
                served,
                "400 bodies of 1 MB, the last tenth of each held back",
                {"held": (400, held_body)},
            )
        )
    finding.must["all were refused or given up"] = set(ends["held"]) <= {"408", "503", "closed"}
    finding.must["most were told why"] = ends["held"]["closed"] <= 40
    finding.must["the log tells no fault"] = not served.faults()
    return finding


def idle_connections(folder: Path, seconds: float) -> Finding:
    """A thousand connections on which nothing is asked, and more than are taken."""
    more = 100
    with service(folder, *IMPATIENT, "--connection-limit=1040", "--log-level", "error") as served:
        finding, ends = asyncio.run(
            _honest_beside(served, "1,000 idle connections at once", {"idle": (1_000, silent)})
        )
        full = asyncio.run(_full(served.port, 1_040 + more))
    finding.must["idle ones were closed in time"] = ends["idle"]["closed"] == 1_000
    finding.must["past the limit they are refused as a problem"] = full["503"] >= more
    finding.must["the log tells no fault"] = not served.faults()
    finding.seen[f"of {1_040 + more} past a limit of 1,040"] = f"{full['503']} × 503"
    return finding


async def _full(port: int, count: int) -> Counter[str]:
    return Counter(await asyncio.gather(*(silent(port) for _ in range(count))))
