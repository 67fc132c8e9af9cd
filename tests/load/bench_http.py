"""Requests per second of operations, side by side with a route that does nothing. Not collected.

    .venv/bin/python tests/load/bench_http.py

Starts the service as a user would, and beside it a bare application of the same framework on the
same server whose one POST route reads its body and gives back fixed bytes of the same size. Each
round asks both in turn over loopback, a counted number of requests on a few kept-alive connections,
and the ratio is the median over the rounds. On a busy machine the processor time that each server
used is the steadier measure: it is what a request costs, however long it waited.
"""

import argparse
import asyncio
import json
import os
import re
import socket
import statistics
import subprocess
import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import Any
from urllib.error import HTTPError
from urllib.request import urlopen

ROOT = Path(__file__).parents[2]
CONNECTIONS = 8

NOTHING = """
import os, sys, uvicorn
from litestar import Litestar, Request, Response
from litestar.handlers import HTTPRouteHandler

ANSWER = bytes(int(sys.argv[2]))

async def nothing(request: Request) -> Response[bytes]:
    await request.body()
    return Response(ANSWER, media_type="application/json")

route = HTTPRouteHandler("/nothing", http_method="POST", status_code=200)(nothing)
app = Litestar(route_handlers=[route], openapi_config=None, logging_config=None)
uvicorn.run(app, port=int(sys.argv[1]), access_log=False, log_level="error", server_header=False)
"""


class Caller(asyncio.Protocol):
    """One kept-alive connection that sends the same request again and again, and counts answers."""

    def __init__(self, request: bytes, answer_bytes: int, count: int, done: asyncio.Future[None]):
        self._request = request
        self._answer_bytes = answer_bytes
        self._left = count
        self._received = 0
        self._done = done

    def connection_made(self, transport: asyncio.BaseTransport) -> None:
        """Send the first request."""
        assert isinstance(transport, asyncio.Transport)
        self._transport = transport
        transport.write(self._request)

    def data_received(self, data: bytes) -> None:
        """Send the next request once the whole answer is here."""
        self._received += len(data)
        if self._received < self._answer_bytes:
            return
        self._received = 0
        self._left -= 1
        if self._left:
            self._transport.write(self._request)
        else:
            self._transport.close()
            self._done.set_result(None)


def http_request(path: str, body: bytes) -> bytes:
    """A POST of a JSON body as bytes on the wire, with an id so that every answer is as long."""
    head = (
        f"POST {path} HTTP/1.1\r\nHost: bench\r\nContent-Type: application/json\r\n"
        f"X-Request-ID: bench\r\nContent-Length: {len(body)}\r\n\r\n"
    )
    return head.encode() + body


def answer_of(port: int, request: bytes) -> bytes:
    """The whole answer to one request, asked with a connection of its own."""
    with socket.create_connection(("127.0.0.1", port)) as connection:
        connection.sendall(request)
        received = b""
        while b"\r\n\r\n" not in received:
            received += connection.recv(65536)
        head, _, body = received.partition(b"\r\n\r\n")
        assert head.startswith(b"HTTP/1.1 200"), received
        found = re.search(rb"content-length: (\d+)", head, re.IGNORECASE)
        assert found, head
        while len(body) < int(found[1]):
            body += connection.recv(65536)
        return head + b"\r\n\r\n" + body


async def requests_per_second(port: int, request: bytes, answer_bytes: int, count: int) -> float:
    """Ask `count` times over a few connections at once."""
    loop = asyncio.get_running_loop()
    each = count // CONNECTIONS
    finished: list[asyncio.Future[None]] = [loop.create_future() for _ in range(CONNECTIONS)]
    started = time.perf_counter()
    for done in finished:
        await loop.create_connection(
            lambda done=done: Caller(request, answer_bytes, each, done),  # type: ignore[misc]
            "127.0.0.1",
            port,
        )
    await asyncio.gather(*finished)
    return each * CONNECTIONS / (time.perf_counter() - started)


@dataclass
class Server:
    """A running server: its process, its port, and the seconds from start to its first answer."""

    process: subprocess.Popen[bytes]
    port: int
    ready_seconds: float

    def resident_megabytes(self) -> float:
        """Resident memory now, where the system tells it (/proc)."""
        status = Path(f"/proc/{self.process.pid}/status").read_text()
        found = re.search(r"VmRSS:\s+(\d+) kB", status)
        assert found, status
        return int(found[1]) / 1024

    def processor_seconds(self) -> float:
        """Processor time that the process has used so far (/proc)."""
        fields = Path(f"/proc/{self.process.pid}/stat").read_text().rpartition(") ")[2].split()
        return (int(fields[11]) + int(fields[12])) / os.sysconf("SC_CLK_TCK")


@contextmanager
def running(arguments: list[str], port: int, path: str) -> Iterator[Server]:
    """Run a server with this Python; stop it in the end."""
    environment = {**os.environ, "PYTHONPATH": str(ROOT / "service"), "OMP_NUM_THREADS": "1"}
    started = time.perf_counter()
    process = subprocess.Popen(
        [sys.executable, *arguments], env=environment, stderr=subprocess.DEVNULL
    )
    try:
        wait_for_answer(port, path)
        yield Server(process, port, time.perf_counter() - started)
    finally:
        process.terminate()
        process.wait(timeout=30)


def wait_for_answer(port: int, path: str) -> None:
    """Wait until a server answers at all, whatever it says."""
    for _ in range(3000):
        try:
            urlopen(f"http://127.0.0.1:{port}{path}", timeout=1).close()
        except HTTPError:
            return
        except OSError:
            time.sleep(0.01)
        else:
            return
    raise TimeoutError(f"nothing answers on port {port}")


def free_port() -> int:
    """A port of loopback that nobody listens on."""
    with socket.create_server(("127.0.0.1", 0)) as listener:
        port: int = listener.getsockname()[1]
        return port


def compare(service: Server, name: str, example: dict[str, Any], count: int, rounds: int) -> None:
    """Print the rates of one operation and of doing nothing, and their ratio."""
    path = f"/v1/{name.replace('.', '/', 1)}"
    request = http_request(path, json.dumps(example, ensure_ascii=False).encode())
    answer = answer_of(service.port, request)
    body_bytes = len(answer.partition(b"\r\n\r\n")[2])
    port = free_port()
    with running(["-c", NOTHING, str(port), str(body_bytes)], port, "/nothing") as bare:
        idle = request.replace(path.encode(), b"/nothing", 1)
        idle_bytes = len(answer_of(port, idle))
        rounds_of = {
            bare.port: (bare, idle, idle_bytes),
            service.port: (service, request, len(answer)),
        }
        rates: dict[int, list[float]] = {port: [] for port in rounds_of}
        used = {port: -server.processor_seconds() for port, (server, _, _) in rounds_of.items()}
        for _ in range(rounds):
            for port, (_, asked, expected) in rounds_of.items():
                rates[port].append(asyncio.run(requests_per_second(port, asked, expected, count)))
        for port, (server, _, _) in rounds_of.items():
            used[port] += server.processor_seconds()
    nothing, asked_rates = rates[bare.port], rates[service.port]
    ratio = statistics.median(a / n for a, n in zip(asked_rates, nothing, strict=True))
    each = {port: seconds / (count * rounds) * 1e6 for port, seconds in used.items()}
    print(f"{name}: {len(request)} bytes in, {len(answer)} bytes out")
    print(
        f"  requests per second   {statistics.median(asked_rates):8.0f}"
        f"   doing nothing {statistics.median(nothing):8.0f}   ratio {ratio:6.1%}"
    )
    print(
        f"  processor µs each     {each[service.port]:8.0f}"
        f"   doing nothing {each[bare.port]:8.0f}"
        f"   ratio {each[bare.port] / each[service.port]:6.1%}"
    )


def main() -> None:
    """Run the benchmark."""
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    parser.add_argument("operations", nargs="*", default=["sine.setting", "blocks.stack"])
    parser.add_argument("--count", type=int, default=4000, help="requests a round")
    parser.add_argument("--rounds", type=int, default=7)
    options = parser.parse_args()
    port = free_port()
    serve = ["-m", "halfangle_service.cli", "serve", "--port", str(port)]
    with running(serve, port, "/health/ready") as service:
        print(f"ready after {service.ready_seconds:.2f} s, {service.resident_megabytes():.0f} MB")
        with urlopen(f"http://127.0.0.1:{port}/v1/operations") as listing:
            known = {entry["name"] for entry in json.load(listing)["result"]["operations"]}
        for name in options.operations:
            if name not in known:
                print(f"{name}: no such operation here")
                continue
            with urlopen(f"http://127.0.0.1:{port}/v1/operations/{name}") as page:
                example = json.load(page)["result"]["example"]
            compare(service, name, example, options.count, options.rounds)
        print(f"after all requests {service.resident_megabytes():.0f} MB")


if __name__ == "__main__":
    main()
