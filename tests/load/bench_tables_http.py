"""Tables over HTTP: processor time beside the floor, memory of a long one, others beside it.

    python tests/load/bench_tables_http.py --rows 100000 --long 1000000

The floor is what a columnar CSV library and NumPy take for the same columns in this process, on one
thread. The service's time is its own processor time; that of the caller here is not counted.
"""

import argparse
import http.client
import math
import os
import socket
import statistics
import sys
import threading
import time
from collections.abc import Iterator
from pathlib import Path

os.environ.setdefault("POLARS_MAX_THREADS", "1")

import numpy as np
import polars as pl

# Run by itself it finds the tests' own support no other way.
sys.path.append(str(Path(__file__).parents[1]))

from serving_support import free_port, serving

QUERY = "units=in&keep=*&columns=height"
SERVE = ("-m", "halfangle_service.cli", "serve", "--log-level=error", "--port")
LIGHT = "/v1/sine/setting?units=in&center_distance=5&angle=30"
PIECE_BYTES = 65_536


def main() -> None:
    """Run the benchmark."""
    parser = argparse.ArgumentParser(description="What tables cost over HTTP.")
    parser.add_argument("--rows", type=int, default=100_000, help="rows of the table measured")
    parser.add_argument("--steepest", type=float, default=40.0, help="angles from 2° to this")
    parser.add_argument("--long", type=int, default=1_000_000, help="rows of the long one")
    told = parser.parse_args()
    body = table(told.rows, told.steepest)
    floor = min(floor_ms(body) for _ in range(7))
    port = free_port()
    with serving([*SERVE, str(port)], port) as process:
        answer_of(port, [body])
        costs = []
        for _ in range(5):
            before = processor_ms(process.pid)
            content = b"".join(answer_of(port, pieces_of(body)))
            costs.append(processor_ms(process.pid) - before)
        assert content.count(b"\n") == told.rows + 1
        print(f"{told.rows} rows, {len(body) / 1e6:.1f} MB in, {len(content) / 1e6:.1f} MB out")
        print(f"floor {floor:.0f} ms; table over HTTP {min(costs):.0f} ms, ", end="")
        print(f"{min(costs) / floor:.1f} times the floor")
        idle = p99_ms(port, 400, None)
        before_mb = resident_mb(process.pid, "VmRSS")
        long = threading.Thread(target=run_long, args=(port, body, told.long // told.rows))
        long.start()
        beside = p99_ms(port, 400, long)
        long.join()
        peak = resident_mb(process.pid, "VmHWM")
        print(f"light requests: p99 {idle:.1f} ms idle, {beside:.1f} beside a table", end="")
        print(f" ({beside / idle:.1f} times)")
        print(f"{told.long} rows: {before_mb:.0f} MB before, {peak:.0f} MB at most")


def table(rows: int, steepest: float) -> bytes:
    """A table of settings from a seed: a part, two numbers, a lot and a note."""
    dice = np.random.default_rng(1)
    angles = dice.uniform(2, steepest, rows).tolist()
    distances = dice.uniform(5, 5.001, rows).tolist()
    lines = (
        b"P%06d,%.4f,%.5f,%d,as ground\n" % (n, angle, distance, n % 50)
        for n, (angle, distance) in enumerate(zip(angles, distances, strict=True))
    )
    return b"part,angle,center_distance,lot,note\n" + b"".join(lines)


def floor_ms(body: bytes) -> float:
    """Processor time to parse the table, work its heights out, and write it."""
    begun = time.process_time()
    frame = pl.read_csv(body)
    heights = frame["center_distance"].to_numpy() * np.sin(np.radians(frame["angle"].to_numpy()))
    frame.with_columns(pl.Series("height [in]", heights)).write_csv()
    return (time.process_time() - begun) * 1e3


def pieces_of(body: bytes) -> Iterator[bytes]:
    """A body in pieces."""
    for at in range(0, len(body), PIECE_BYTES):
        yield body[at : at + PIECE_BYTES]


def run_long(port: int, body: bytes, times: int) -> None:
    """Send the rows of a table so many times as one, and read what comes."""
    rows = body.partition(b"\n")[2]
    pieces = (piece for _ in range(times) for piece in pieces_of(rows))
    for _ in answer_of(port, [body[: len(body) - len(rows)], *pieces]):
        pass


def answer_of(port: int, pieces: Iterator[bytes] | list[bytes]) -> list[bytes]:
    """Send a table of no told length by a thread while its answer is read; give that in pieces."""
    with socket.create_connection(("127.0.0.1", port), timeout=600) as connection:
        head = (
            f"POST /v1/tables/sine.setting?{QUERY} HTTP/1.1\r\nHost: shop\r\n"
            "Content-Type: text/csv\r\nTransfer-Encoding: chunked\r\n\r\n"
        )
        connection.sendall(head.encode())
        sender = threading.Thread(target=_send, args=(connection, pieces))
        sender.start()
        response = http.client.HTTPResponse(connection)
        response.begin()
        assert response.status == 200
        found = []
        while piece := response.read1(1 << 20):
            found.append(piece)
        sender.join()
        return found


def _send(connection: socket.socket, pieces: Iterator[bytes] | list[bytes]) -> None:
    for piece in pieces:
        connection.sendall(b"%x\r\n%b\r\n" % (len(piece), piece))
    connection.sendall(b"0\r\n\r\n")


def p99_ms(port: int, count: int, until: threading.Thread | None) -> float:
    """99th percentile of light requests, one after another; as long as a thread runs, if any."""
    connection = http.client.HTTPConnection("127.0.0.1", port, timeout=60)
    times: list[float] = []
    while len(times) < count or (until is not None and until.is_alive()):
        begun = time.perf_counter()
        connection.request("GET", LIGHT)
        connection.getresponse().read()
        times.append((time.perf_counter() - begun) * 1e3)
        time.sleep(0.002)
    connection.close()
    return statistics.quantiles(times, n=100, method="inclusive")[98]


def resident_mb(process_id: int, what: str) -> float:
    """Memory of a process: `VmRSS` now, `VmHWM` the most so far."""
    status = Path(f"/proc/{process_id}/status").read_text("utf-8")
    return int(status.split(f"{what}:")[1].split()[0]) / 1024


def processor_ms(process_id: int) -> float:
    """Processor time that a process has used."""
    fields = Path(f"/proc/{process_id}/stat").read_text("utf-8").rsplit(")", 1)[1].split()
    return math.fsum(map(int, fields[11:13])) / os.sysconf("SC_CLK_TCK") * 1e3


if __name__ == "__main__":
    main()
