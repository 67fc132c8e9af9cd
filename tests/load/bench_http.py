"""Processor time that a request costs, side by side with the same in other services. Not collected.

    .venv/bin/python tests/load/bench_http.py

Four services answer one request, `sine.setting`, with the same bytes: this one, and the three of
`rivals.py`. Each is asked over loopback on a few kept-alive connections, where the processor time
of its process is divided by the requests, and in process, where the application is called directly.
All take turns within one run, so that the pace of the machine is the same for all: ratios hold on
any machine, microseconds only on the one that they were measured on. The rate over loopback is
given too; it flattens, since the caller uses the same processors.
"""

import argparse
import asyncio
import os
import re
import socket
import statistics
import subprocess
import sys
import time
from collections.abc import Iterator
from contextlib import ExitStack, contextmanager
from dataclasses import dataclass
from pathlib import Path
from urllib.error import HTTPError
from urllib.request import urlopen

ROOT = Path(__file__).parents[2]
RIVALS = Path(__file__).with_name("rivals.py")
CONNECTIONS = 8

PATH = "/v1/sine/setting"
BODY = b'{"units": "in", "center_distance": 5, "angle": 22.5}'
SERVICE = "service"
#: The service, the same as ordinary services of two frameworks, and one that does nothing.
NAMES = (SERVICE, "ordinary", "fastapi", "nothing")


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


def environment() -> dict[str, str]:
    """This environment, with the sources of the service on the path."""
    return {**os.environ, "PYTHONPATH": str(ROOT / "service"), "OMP_NUM_THREADS": "1"}


@contextmanager
def running(arguments: list[str], port: int, path: str) -> Iterator[Server]:
    """Run a server with this Python; stop it in the end."""
    started = time.perf_counter()
    process = subprocess.Popen(
        [sys.executable, *arguments],
        env=environment(),
        stdout=subprocess.DEVNULL,
        stderr=subprocess.DEVNULL,
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


@contextmanager
def serving(name: str) -> Iterator[Server]:
    """Serve one of the rivals; the service itself is started as its user starts it."""
    port = free_port()
    serve = [str(RIVALS), "serve", name, str(port)]
    if name == SERVICE:
        serve = ["-m", "halfangle_service.cli", "serve", "--port", str(port)]
    with running(serve, port, PATH) as server:
        yield server


def over_loopback(count: int, rounds: int) -> dict[str, list[float]]:
    """Microseconds of processor time a request of each service, for each round."""
    request = http_request(PATH, BODY)
    with ExitStack() as stack:
        servers = {name: stack.enter_context(serving(name)) for name in NAMES}
        for name, server in servers.items():
            ready, held = server.ready_seconds, server.resident_megabytes()
            print(f"{name:>9} ready after {ready:.2f} s, {held:.0f} MB")
        answers = {name: answer_of(server.port, request) for name, server in servers.items()}
        assert len({answer.partition(b"\r\n\r\n")[2] for answer in answers.values()}) == 1
        used: dict[str, list[float]] = {name: [] for name in NAMES}
        rates: dict[str, list[float]] = {name: [] for name in NAMES}
        for turn in range(rounds + 1):
            for name, server in servers.items():
                before = server.processor_seconds()
                asked = requests_per_second(server.port, request, len(answers[name]), count)
                rate = asyncio.run(asked)
                if turn:  # the first round warms up
                    used[name].append((server.processor_seconds() - before) / count * 1e6)
                    rates[name].append(rate)
    told = ", ".join(f"{name} {statistics.median(rates[name]):.0f}" for name in NAMES)
    print(f"requests per second: {told}")
    return used


def in_process(rounds: int) -> dict[str, list[float]]:
    """Microseconds of processor time a call of each application, for each round."""
    with ExitStack() as stack:
        callers = {
            name: stack.enter_context(
                subprocess.Popen(
                    [sys.executable, str(RIVALS), "call", name],
                    env=environment(),
                    stdin=subprocess.PIPE,
                    stdout=subprocess.PIPE,
                    text=True,
                )
            )
            for name in NAMES
        }
        used: dict[str, list[float]] = {name: [] for name in NAMES}
        for _ in range(rounds):
            for name, caller in callers.items():
                assert caller.stdin is not None
                assert caller.stdout is not None
                print(file=caller.stdin, flush=True)
                used[name].append(float(caller.stdout.readline()))
    return used


def compare(where: str, used: dict[str, list[float]], aims: dict[str, float]) -> None:
    """Print what a request costs each service, and how many times the service's own that is."""
    print(f"{where}, processor time a request:")
    for name in NAMES:
        each = statistics.median(used[name])
        times = statistics.median(
            rival / own for rival, own in zip(used[name], used[SERVICE], strict=True)
        )
        aim = f" (aim {aims[name]:.1f})" if name in aims else ""
        print(f"  {name:>9} {each:6.1f} µs, least {min(used[name]):6.1f}   {times:5.2f} times{aim}")


def main() -> None:
    """Run the benchmark."""
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    parser.add_argument("--count", type=int, default=4000, help="requests a round over loopback")
    parser.add_argument("--rounds", type=int, default=9)
    options = parser.parse_args()
    print(f"{PATH}: {len(BODY)} bytes in")
    used = over_loopback(options.count, options.rounds)
    compare("over loopback", used, {"ordinary": 1.7, "fastapi": 1.1})
    compare("in process", in_process(options.rounds), {"ordinary": 2.5, "fastapi": 1.3})


if __name__ == "__main__":
    main()
