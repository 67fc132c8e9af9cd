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
import copy
import json
import random
import statistics
import subprocess
import sys
import tempfile
import time
from collections import Counter
from collections.abc import Callable
from contextlib import suppress
from dataclasses import dataclass, field
from typing import IO, Any
from urllib.parse import quote

from bench_http import Server, environment, free_port, wait_for_answer
from halfangle_service.registry import load_registry
from known_requests import Known

#: Requests that are under way at once, and connections that hold back beside them.
AT_ONCE, HELD_AT_ONCE = 24, 200
#: An answer that takes longer is none. Heavy work waits its turn behind other heavy work.
HANG_SECONDS = 60.0
#: Times of the service here: shorter than its own, so that a storm sees them run out.
IMPATIENT = ("--header-seconds=4", "--body-seconds=4", "--answer-seconds=4")
HONEST = b'{"units": "in", "center_distance": 5, "angle": 30}'
#: One body in so many goes to an operation that is worked out in threads.
HEAVY_SHARE = 0.06

EDGES = (
    *(
        "0",
        "-0.0",
        "1e-300",
        "5e-324",
        "1e308",
        "-1e308",
        "1e400",
        "NaN",
        "Infinity",
        "null",
        "true",
    ),
    *("89.99999999999999", "90", "179.99999999999997", "1e-6", "10000", "0.1e-5", "1" * 400),
    *("9" * 5_000, '""', '"x"', '"30 15 20"', "[]", "{}", "[[[[1]]]]", '"\\u0000"', '"\\ud800"'),
)
#: Signs of JSON, and what is none, for changes byte by byte.
MARKS = (b"{", b"}", b"[", b"]", b'"', b":", b",", b"\\", b"\x00", b"\xff", b"e", b"-", b".", b" ")
HEADERS = (
    "Content-Length: -1",
    "Content-Length: ten",
    "Content-Length: 99999999999999999999",
    "Transfer-Encoding: chunked",
    "Transfer-Encoding: gzip, chunked",
    "Content-Encoding: gzip",
    "Accept: application/json;q=0, */*",
    "Accept: " + "a/b," * 2_000,
    "If-None-Match: " + '"x",' * 2_000,
    "X-Request-ID: " + "é" * 100,
    "Origin: null",
    "Host: a b",
    "Expect: 100-continue",
    "Upgrade: websocket",
    "Connection: Upgrade",
    "Cookie: " + "c" * 30_000,
    "Range: bytes=0-1",
    "X-HTTP-Method-Override: DELETE",
    "Forwarded: for=127.0.0.1",
    ": empty",
    "Content-Type: application/json; charset=utf-7",
)
PATHS = ("/", "//", "/v1", "/docs", "/openapi.json", "/metrics", "/v1/operations", "/health/live",
         "/v1/blocks/sets/%00", "/v1/operations/../../etc", "/%FF", "/v1/sine/" + "x" * 3_000,
         "/problems/impossible", "/v1/tapers/standard", "*", "http://other/v1")  # fmt: skip
METHODS = ("GET", "POST", "HEAD", "PUT", "DELETE", "OPTIONS", "TRACE", "PATCH", "BREW", "x" * 300)


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


class Storm:
    """Makes hostile requests by chance from a seed."""

    def __init__(self, seed: int) -> None:
        self._chance = random.Random(seed)  # noqa: S311  reproducible, not secret
        known = Known()
        self._heavy, self._light = (
            [
                (operation.path, request)
                for name, operation in known.operations.items()
                for request in known.requests[name]
                if bool(operation.heavy) is heavy
            ]
            for heavy in (True, False)
        )
        self._ways: list[tuple[Callable[[], bytes], int]] = [
            (self.edges, 40),
            (self.broken_bytes, 20),
            (self.query, 12),
            (self.odd_headers, 10),
            (self.odd_path, 8),
            (self.much, 2),
            (self.noise, 3),
            (self.twice, 5),
        ]

    def request(self) -> tuple[str, bytes]:
        """Give a kind and the bytes on the wire."""
        way = self._chance.choices([w for w, _ in self._ways], [n for _, n in self._ways])[0]
        return way.__name__, way()

    def _known(self) -> tuple[str, dict[str, Any]]:
        pool = self._heavy if self._chance.random() < HEAVY_SHARE else self._light
        return self._chance.choice(pool)

    def edges(self) -> bytes:
        """A known request with some values at the edge of what there is."""
        path, request = self._known()
        made = copy.deepcopy(request)
        put = []
        for _ in range(self._chance.choice((1, 1, 1, 2, 3))):
            holder, name = self._place_in(made)
            if holder is not None:
                put.append(self._chance.choice(EDGES))
                holder[name] = f"\0{len(put) - 1}\0"
        text = json.dumps(made)
        for count, edge in enumerate(put):
            text = text.replace(f'"\\u0000{count}\\u0000"', edge)
        return wire("POST", path, text.encode(errors="replace"))

    def _place_in(self, value: Any) -> tuple[Any, Any]:
        """A place in a request, as what holds it and its name there."""
        holder, name = None, None
        while isinstance(value, dict | list) and value:
            holder = value
            name = self._chance.choice([*value] if isinstance(value, dict) else range(len(value)))
            value = value[name]
        return holder, name

    def broken_bytes(self) -> bytes:
        """A known request with bytes changed, cut out, put in, or its end cut off."""
        path, request = self._known()
        body = bytearray(json.dumps(request).encode())
        for _ in range(self._chance.choice((1, 1, 2, 5, 20))):
            at = self._chance.randrange(len(body) + 1)
            way = self._chance.randrange(4)
            if way == 0:
                body[at : at + 1] = self._chance.choice(MARKS)
            elif way == 1:
                del body[at : at + self._chance.randrange(8)]
            elif way == 2:
                body[at:at] = self._chance.choice(MARKS) * self._chance.choice((1, 1, 3, 300))
            else:
                del body[at:]
        return wire("POST", path, bytes(body))

    def twice(self) -> bytes:
        """A known request with one of its names given again, at the top or inside."""
        path, request = self._known()
        text = json.dumps(request)
        places = [at for at, sign in enumerate(text) if sign == "{"]
        at = self._chance.choice(places) if places else 0
        name = self._chance.choice([*request, "size"] if isinstance(request, dict) else ["size"])
        return wire("POST", path, f'{text[: at + 1]}"{name}": 1, {text[at + 1 :]}'.encode())

    def much(self) -> bytes:
        """Up to a megabyte, or more, of parts that no request holds."""
        path, _ = self._known()
        part = self._chance.choice(
            (b"[],", b"{},", b'"a":1,', b"1,", b'"x",', b"[", b'{"a":', b" ", b"9", b"\\u0041")
        )
        count = self._chance.choice((1_000, 30_000, 900_000, 1_100_000)) // len(part)
        opened = self._chance.choice((b'{"units":[', b'{"box":[', b"{", b"[", b'"', b"0."))
        return wire("POST", path, opened + part * count + self._chance.choice((b"1]}", b'"', b"")))

    def query(self) -> bytes:
        """A query string, known or odd, with an odd pick."""
        path, request = self._known()
        pairs = []
        for name, value in request.items() if isinstance(request, dict) else ():
            text = value if isinstance(value, str) else json.dumps(value)
            if self._chance.random() < 0.2:
                text = self._chance.choice(EDGES)
            pairs.append(f"{quote(name)}={quote(text, errors='replace')}")
        if self._chance.random() < 0.3:
            pairs.append(
                self._chance.choice(("a/b~=1", "%FF=1", "=", "&" * 50, "x" * 5_000 + "=1"))
            )
        if self._chance.random() < 0.6:
            picks = ("height", "advisories", "forecast", "a.b.c", "x" * 2_000, "%00", "0.0.0", "")
            pairs.append(f"pick={self._chance.choice(picks)}")
        return wire("GET", f"{path}?{'&'.join(pairs)}", b"")

    def odd_headers(self) -> bytes:
        """A known request with headers that are odd or false."""
        path, request = self._known()
        headers = self._chance.sample(HEADERS, self._chance.choice((1, 1, 2, 4)))
        return wire("POST", path, json.dumps(request).encode(), *headers)

    def odd_path(self) -> bytes:
        """An address and a method that may be none."""
        return wire(self._chance.choice(METHODS), self._chance.choice(PATHS), b"")

    def noise(self) -> bytes:
        """Bytes that are no HTTP."""
        made = self._chance.randbytes(self._chance.choice((1, 20, 500, 70_000)))
        return self._chance.choice((b"", b"GET / HTTP/1.1\r\n", b"POST ")) + made + b"\r\n\r\n"


def wire(method: str, path: str, body: bytes, *headers: str) -> bytes:
    """A request as bytes; headers given take the place of those that belong to it."""
    own = {
        "host": "Host: shop",
        "content-type": "Content-Type: application/json",
        "content-length": f"Content-Length: {len(body)}",
        "connection": "Connection: close",
    }
    for header in headers:
        own.pop(header.partition(":")[0].lower(), None)
    lines = [f"{method} {path} HTTP/1.1", *own.values(), *headers]
    return "\r\n".join(lines).encode("latin-1", errors="replace") + b"\r\n\r\n" + body


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
