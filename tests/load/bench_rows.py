"""What rows by the thousand cost: the service's batches, and the client's `map`. Not collected.

    .venv/bin/python tests/load/bench_rows.py                  some minutes
    .venv/bin/python tests/load/bench_rows.py --rows 1000000   memory over a million rows

Processor time is the process's own, so that what else the machine does matters less; ratios are
taken within one run. A row is one of `blocks.stack` (inch-81, another height each); `map` asks
`sine.setting`, 5,000 rows, beside bare httpx with as many calls at once.
"""

import argparse
import asyncio
import http.client
import json
import socket
import statistics
import subprocess
import sys
import time
from collections.abc import Callable, Iterator
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path
from threading import Thread
from typing import Any

from bench_http import BODY, PATH, SERVICE, Server, environment, serving

ROOT = Path(__file__).parents[2]
sys.path[:0] = [str(ROOT / "service"), str(ROOT / "client")]

HEIGHTS = 20_000
CALLS_AT_ONCE = 8
MAPPED = 5_000


def rows(count: int) -> Iterator[bytes]:
    """Rows of a batch, each a line, with the heights that a set builds over and over."""
    for ref in range(count):
        height = 1 + (ref * 7 % HEIGHTS) / 10_000
        yield (
            b'{"ref":%d,"operation":"blocks.stack",'
            b'"request":{"units":"in","set":"inch-81","height":%.4f}}\n' % (ref, height)
        )


def sent(port: int, count: int) -> dict[str, Any]:
    """Send rows as one batch while its answers are read; give its last line."""
    with socket.create_connection(("127.0.0.1", port)) as connection:
        head = (
            "POST /v1/batches HTTP/1.1\r\nHost: bench\r\nContent-Type: application/x-ndjson\r\n"
            "Transfer-Encoding: chunked\r\nConnection: close\r\n\r\n"
        )
        connection.sendall(head.encode())
        Thread(target=_send, args=(connection, count), daemon=True).start()
        last = b""
        while part := connection.recv(1 << 20):
            last = (last + part)[-4096:]
    found: dict[str, Any] = json.loads(last[last.rindex(b'{"counts"') : last.rindex(b"}") + 1])
    return found


def _send(connection: socket.socket, count: int) -> None:
    kept = bytearray()
    for row in rows(count):
        kept += row
        if len(kept) >= 1 << 16:
            connection.sendall(b"%x\r\n%b\r\n" % (len(kept), bytes(kept)))
            kept.clear()
    connection.sendall(b"%x\r\n%b\r\n0\r\n\r\n" % (len(kept), bytes(kept)))


def batches(server: Server, rounds: int) -> None:
    """What a row costs: its operation called, a batch in process, and a batch over loopback."""
    from halfangle_service.http.batches.lines import Lines  # noqa: PLC0415 -- not for `--send`
    from halfangle_service.http.batches.run import Batch  # noqa: PLC0415
    from halfangle_service.http.routes import answer  # noqa: PLC0415
    from halfangle_service.registry import load_registry  # noqa: PLC0415

    operations = load_registry().operations
    body = b"".join(rows(HEIGHTS))
    requests = [line[line.rindex(b"{") : -1] for line in body.splitlines()]
    stack = operations["blocks.stack"]

    def called() -> None:
        for request in requests:
            answer(stack, request)

    async def calculate(operation: Any, request: bytes) -> bytes:
        return answer(operation, request)

    async def batched() -> None:
        batch = Batch(operations, calculate)
        for line in Lines(1 << 20).of(body):
            await batch.answer_line(line)
        assert batch.counts.ok + batch.counts.refused == HEIGHTS

    ways: dict[str, Callable[[], object]] = {
        "the operation": called,
        "a batch in process": lambda: asyncio.run(batched()),
        "a batch over loopback": lambda: sent(server.port, HEIGHTS),
    }
    used: dict[str, list[float]] = {name: [] for name in ways}
    for turn in range(rounds + 1):
        for name, way in ways.items():
            clock = server.processor_seconds if "loopback" in name else time.process_time
            before = clock()
            way()
            if turn:  # the first round warms up
                used[name].append((clock() - before) / HEIGHTS * 1e6)
    whole = statistics.median(used["the operation"])
    print("blocks.stack, processor time a row:")
    for name, found in used.items():
        cost = statistics.median(found)
        print(f"{name:>24} {cost:6.1f} µs, {1e6 / cost:6.0f} a second, {cost / whole:.2f} times")


def mapped(server: Server, rounds: int) -> None:
    """`map` of 5,000 rows beside bare httpx."""
    import httpx  # noqa: PLC0415

    from halfangle_client import Halfangle  # noqa: PLC0415

    url = f"http://127.0.0.1:{server.port}"
    asked = [{"units": "mm", "center_distance": 100 + n / 10, "angle": 30} for n in range(MAPPED)]

    def bare() -> int:
        limits = httpx.Limits(max_connections=CALLS_AT_ONCE)
        with httpx.Client(limits=limits) as client, ThreadPoolExecutor(CALLS_AT_ONCE) as pool:
            answers = pool.map(lambda row: client.post(url + PATH, json=row).json(), asked)
            return len(list(answers))

    def by_map() -> int:
        with Halfangle(url, calls_at_once=CALLS_AT_ONCE) as client:
            return len(client.map("sine.setting", asked).answers)

    def by_stream() -> int:
        with Halfangle(url, calls_at_once=CALLS_AT_ONCE) as client:
            return len(list(client.stream("sine.setting", asked)))

    ways = {"bare httpx": bare, "map": by_map, "stream": by_stream}
    used: dict[str, list[tuple[float, float, float]]] = {name: [] for name in ways}
    for turn in range(rounds + 1):
        for name, way in ways.items():
            before = time.process_time(), server.processor_seconds(), time.perf_counter()
            assert way() == MAPPED
            after = time.process_time(), server.processor_seconds(), time.perf_counter()
            if turn:
                own, its, wall = (b - a for a, b in zip(before, after, strict=True))
                used[name].append((own, its, wall))
    floor = [statistics.median(column) for column in zip(*used["bare httpx"], strict=True)]
    print(f"{MAPPED} rows of sine.setting, {CALLS_AT_ONCE} calls at once (times bare httpx):")
    for name, found in used.items():
        own, its, wall = (statistics.median(column) for column in zip(*found, strict=True))
        print(
            f"{name:>12} caller {own:.2f} s ({own / floor[0]:.2f}), service {its:.2f} s "
            f"({its / floor[1]:.2f}), by the clock {wall:.2f} s ({wall / floor[2]:.2f})"
        )


def beside(server: Server, count: int) -> None:
    """How long a light request takes while nothing else is done, and beside a running batch."""
    idle = latencies(server.port, count)
    sender = subprocess.Popen(
        [sys.executable, __file__, "--send", str(server.port), "--rows", str(10**9)],
        env=environment(),
    )
    time.sleep(2.0)
    busy = latencies(server.port, count)
    sender.kill()
    sender.wait()
    print(f"{count} light requests, ms (median; 99th percentile):")
    for name, found in (("alone", idle), ("beside a batch", busy)):
        print(f"{name:>16} {statistics.median(found):.2f}; {percentile(found):.2f}")
    print(f"    99th percentile: {percentile(busy) / percentile(idle):.1f} times")


def percentile(found: list[float]) -> float:
    """The 99th percentile."""
    return statistics.quantiles(found, n=100)[-1]


def latencies(port: int, count: int) -> list[float]:
    """Milliseconds of requests made one after another, a pause between them."""
    connection = http.client.HTTPConnection("127.0.0.1", port)
    found = []
    for _ in range(count):
        time.sleep(0.002)
        began = time.perf_counter()
        connection.request("POST", PATH, BODY, {"Content-Type": "application/json"})
        connection.getresponse().read()
        found.append((time.perf_counter() - began) * 1e3)
    connection.close()
    return found


def memory(server: Server, count: int) -> None:
    """The service's memory over a batch of so many rows."""
    sent(server.port, HEIGHTS)
    before, clock = server.resident_megabytes(), server.processor_seconds()
    most = [before]
    sending = Thread(target=sent, args=(server.port, count))
    sending.start()
    while sending.is_alive():
        most.append(server.resident_megabytes())
        time.sleep(0.2)
    cost = (server.processor_seconds() - clock) / count * 1e6
    print(f"{count} rows in one batch, {cost:.1f} µs each; resident memory {before:.0f} MB before,")
    print(f"    {max(most):.0f} at most, {server.resident_megabytes():.0f} after")


def main() -> None:
    """Read the arguments, run the comparison, print it."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--rounds", type=int, default=5)
    parser.add_argument("--rows", type=int, default=0, help="only memory, over so many rows")
    parser.add_argument("--send", type=int, default=0, help="only send rows, to this port")
    arguments = parser.parse_args()
    if arguments.send:
        sent(arguments.send, arguments.rows)
        return
    with serving(SERVICE) as server:
        if arguments.rows:
            memory(server, arguments.rows)
            return
        batches(server, arguments.rounds)
        mapped(server, arguments.rounds)
        beside(server, 2_000)


if __name__ == "__main__":
    main()
