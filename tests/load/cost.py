"""What the service costs, as ratios within one run, and what one machine carries. Not collected.

    python tests/load/cost.py                 every operation, rows, memory, start, two processes
    python tests/load/cost.py --markdown      the same as the page of DEVELOPERS.md has it

A request costs processor time: of the service's process alone, from /proc, over loopback on a few
kept-alive connections, logs on. Requests a second a core are what that leaves; who asks needs a
core of his own. The time of `sine.setting` is the measure of all others, since figures of one
machine are no other's. Operations are asked by their examples, rows by a batch of lines.
"""

import argparse
import asyncio
import json
import socket
import statistics
import time
from collections.abc import Iterator, Sequence
from contextlib import ExitStack, contextmanager, suppress
from dataclasses import dataclass

from bench_http import Server, answer_of, free_port, http_request, requests_per_second, running
from halfangle_service.registry import load_registry

MEASURE = "sine.setting"
READY = "/health/ready"
#: Processor time that a measurement takes at least: the clock of /proc ticks in hundredths.
LEAST_SECONDS = 0.4
ROWS = 20_000


@dataclass(frozen=True)
class Cost:
    """What one request of an operation costs: microseconds of processor time, bytes answered."""

    name: str
    microseconds: float
    answer_bytes: int

    def __str__(self) -> str:
        rate = 1e6 / self.microseconds
        return f"{self.name:<34} {self.microseconds:>9.0f} µs {rate:>9.0f} a second"


@contextmanager
def service(*flags: str) -> Iterator[Server]:
    """A service of its own, ready."""
    port = free_port()
    with running(
        ["-m", "halfangle_service.cli", "serve", "--port", str(port), *flags], port, READY
    ) as server:
        yield server


def cost_of(server: Server, name: str) -> Cost:
    """Ask an operation by its example until the clock can tell."""
    operation = load_registry().operations[name]
    body = json.dumps(dict(operation.example), ensure_ascii=False).encode()
    request = http_request(operation.path, body)
    answer = answer_of(server.port, request)
    count = 16
    while True:
        before = server.processor_seconds()
        asyncio.run(requests_per_second(server.port, request, len(answer), count))
        used = server.processor_seconds() - before
        if used >= LEAST_SECONDS:
            return Cost(name, used / (count // 8 * 8) * 1e6, len(answer))
        count = int(count * max(2.0, 1.2 * LEAST_SECONDS / max(used, 0.02)))


def row_cost(server: Server, name: str) -> float:
    """Microseconds of processor time a row of a batch of lines."""
    operation = load_registry().operations[name]
    request = json.dumps(dict(operation.example))
    lines = b"".join(
        b'{"ref":%d,"operation":"%b","request":%b}\n' % (number, name.encode(), request.encode())
        for number in range(ROWS)
    )
    head = (
        "POST /v1/batches HTTP/1.1\r\nHost: cost\r\nContent-Type: application/x-ndjson\r\n"
        f"Connection: close\r\nContent-Length: {len(lines)}\r\n\r\n"
    )
    before = server.processor_seconds()
    received = _exchange(server.port, head.encode(), lines)
    used = server.processor_seconds() - before
    assert b'"ok":%d,"refused":0' % ROWS in received[-400:], received[-400:]
    return used / ROWS * 1e6


def _exchange(port: int, head: bytes, body: bytes) -> bytes:
    """Send a body while its answer is read, so that neither holds the other up."""
    with socket.create_connection(("127.0.0.1", port)) as connection:
        connection.sendall(head)
        connection.setblocking(False)
        sent, end = 0, b""
        while True:
            if sent < len(body):
                with suppress(BlockingIOError):
                    sent += connection.send(body[sent : sent + 65_536])
            try:
                part = connection.recv(262_144)
            except BlockingIOError:
                time.sleep(0.0005)
                continue
            if not part:
                return end
            end = (end + part)[-1_000:]


def two_workers(seconds: float) -> float:
    """How much more two processes carry than one, each asked by as many callers, side by side."""
    operation = load_registry().operations[MEASURE]
    request = http_request(operation.path, json.dumps(dict(operation.example)).encode())
    with ExitStack() as stack:
        servers = [stack.enter_context(service()) for _ in range(2)]
        length = len(answer_of(servers[0].port, request))
        count = int(seconds * 2_000)
        alone = asyncio.run(requests_per_second(servers[0].port, request, length, count))

        async def both() -> Sequence[float]:
            rates = (requests_per_second(one.port, request, length, count) for one in servers)
            return await asyncio.gather(*rates)

        return sum(asyncio.run(both())) / alone


def main() -> None:
    """Measure, and print."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").partition(".")[0])
    parser.add_argument("--markdown", action="store_true", help="as tables of Markdown")
    parser.add_argument("operations", nargs="*", help="names; all where none is given")
    wanted = parser.parse_args()
    names = wanted.operations or list(load_registry().operations)
    with service() as server:
        at_rest = server.resident_megabytes()
        measures = [cost_of(server, MEASURE)]
        costs = []
        for number, name in enumerate(names):
            costs.append(cost_of(server, name))
            if number % 10 == 9:
                measures.append(cost_of(server, MEASURE))
        worked = server.resident_megabytes()
        rows = {name: row_cost(server, name) for name in (MEASURE, "blocks.stack")}
        after_rows = server.resident_megabytes()
        ready = server.ready_seconds
    one = statistics.median(cost.microseconds for cost in measures)
    _print_costs(costs, one, markdown=wanted.markdown)
    single = {cost.name: cost.microseconds for cost in costs}
    for name, cost in rows.items():
        alone = f", {cost / single[name]:.2f} of a request by itself" if name in single else ""
        print(f"a row of a batch, {name}: {cost:.0f} µs, {1e6 / cost:,.0f} a second{alone}")
    print(f"ready after {ready:.2f} s; memory {at_rest:.0f} MB at rest, {worked:.0f} after every")
    print(f"operation, {after_rows:.0f} after {2 * ROWS:,} rows")
    print(f"two processes carry {two_workers(2.0):.2f} times one, callers on the same cores")


def _print_costs(costs: list[Cost], one: float, *, markdown: bool) -> None:
    ordered = sorted(costs, key=lambda cost: cost.microseconds)
    if markdown:
        print(f"| operation | times `{MEASURE}` | a second a core | answer, kB |")
        print("|---|---|---|---|")
    for cost in ordered:
        times, rate = cost.microseconds / one, 1e6 / cost.microseconds
        if markdown:
            print(f"| `{cost.name}` | {times:.1f} | {rate:,.0f} | {cost.answer_bytes / 1e3:.1f} |")
        else:
            print(f"{cost}   {times:>6.1f} times {MEASURE}")
    print(f"{MEASURE}: {one:.0f} µs, the measure of the others")


if __name__ == "__main__":
    main()
