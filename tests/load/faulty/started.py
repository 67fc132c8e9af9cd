"""A service of its own for each fault: its processes, memory, log; stopped in the end."""

import asyncio
import json
import re
import subprocess
import sys
import time
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from faulty.asking import Callers
from faulty.finding import Memory
from serving_support import environment, free_port, listens

_AT_MOST_SECONDS = 60.0
#: So long memory may take to come back.
_BACK_SECONDS = 3.0
SERVE = (sys.executable, "-m", "halfangle_service.cli", "serve", "--port")


@dataclass
class Service:
    """A running service."""

    process: subprocess.Popen[bytes]
    port: int
    log: Path
    samples: list[float] = field(default_factory=list)

    def workers(self) -> list[int]:
        """Processes that its first began; none where it serves itself."""
        first = self.process.pid
        try:
            found = Path(f"/proc/{first}/task/{first}/children").read_text()
        except OSError:
            return []
        return [*map(int, found.split())]

    def megabytes(self) -> float:
        """Memory of all its processes, what they share counted once."""
        kilobytes = 0
        for process in (self.process.pid, *self.workers()):
            try:
                text = Path(f"/proc/{process}/smaps_rollup").read_text()
            except OSError:
                continue
            kilobytes += int(re.findall(r"^Pss:\s+(\d+) kB", text, re.M)[0])
        self.samples.append(kilobytes / 1024)
        return self.samples[-1]

    def processor_seconds(self) -> float:
        """Processor time of all its processes so far."""
        ticks = 0
        for process in (self.process.pid, *self.workers()):
            fields = Path(f"/proc/{process}/stat").read_text().rpartition(") ")[2].split()
            ticks += int(fields[11]) + int(fields[12])
        return ticks / 100

    def descriptors(self) -> int:
        """Descriptors that its first process holds."""
        return len([*Path(f"/proc/{self.process.pid}/fd").iterdir()])

    def whose(self, port: int) -> str:
        """The process that holds the other end of a connection from a port of ours."""
        pattern = rf":{self.port:04X} 0100007F:{port:04X} .*"
        line = re.search(pattern, Path("/proc/net/tcp").read_text())
        inode = line[0].split()[8] if line else "0"
        wanted = f"socket:[{inode}]"
        for process in self.workers() or [self.process.pid]:
            try:
                held = {str(one.readlink()) for one in Path(f"/proc/{process}/fd").iterdir()}
            except OSError:
                continue
            if wanted in held:
                return str(process)
        return "not taken yet"

    def stop(self) -> int:
        """Stop it; gives the exit status."""
        self.process.terminate()
        return self.process.wait(timeout=_AT_MOST_SECONDS)

    def lines(self) -> list[dict[str, Any]]:
        """What it logged; each line must be JSON, whole."""
        return [json.loads(line) for line in self.log.read_bytes().splitlines() if line.strip()]

    def events(self, level: str = "") -> list[str]:
        """The events of its log; of one severity where it is told."""
        return [one["event"] for one in self.lines() if level in {"", one["level"]}]

    def faults(self) -> list[str]:
        """What its log says that only a fault says."""
        return [one["event"] for one in self.lines() if one["level"] in {"error", "critical"}]


@contextmanager
def service(
    folder: Path,
    *flags: str,
    before: tuple[str, ...] = (),
    variables: Mapping[str, str] | None = None,
    log: Any = None,
    **more: Any,
) -> Iterator[Service]:
    """A service that is ready, its log in the folder unless it goes elsewhere.

    `before`: the words of the command before its own. `more`: as of `subprocess.Popen`.
    """
    port, where = free_port(), folder / "log"
    with where.open("ab") as file:
        process = subprocess.Popen(
            [*before, *SERVE, str(port), *flags],
            env={**environment(), **(variables or {})},
            stderr=file if log is None else log,
            stdout=subprocess.DEVNULL,
            **more,
        )
    try:
        wait_until(lambda: listens(port) or process.poll() is not None)
        if process.poll() is not None:
            raise RuntimeError(f"the service ended: {where.read_text()}")
        yield Service(process, port, where)
    finally:
        if process.poll() is None:
            process.terminate()
            try:
                process.wait(timeout=_AT_MOST_SECONDS)
            except subprocess.TimeoutExpired:
                process.kill()
                process.wait()


def wait_until(true: Callable[[], bool], seconds: float = _AT_MOST_SECONDS) -> bool:
    """Wait for something, not for ever; whether it came."""
    ends = time.monotonic() + seconds
    while not true():
        if time.monotonic() > ends:
            return False
        time.sleep(0.05)
    return True


async def until(true: Callable[[], bool], seconds: float = _AT_MOST_SECONDS) -> bool:
    """The same beside other work of the event loop."""
    ends = time.monotonic() + seconds
    while not true():
        if time.monotonic() > ends:
            return False
        await asyncio.sleep(0.05)
    return True


async def warmed(served: Service, at_once: int = 8) -> float:
    """Memory at rest, once what is made at the first use is made."""
    await Callers(served.port, at_once, per_connection=10).ask_for(1.5)
    return served.megabytes()


async def watched(served: Service, callers: Callers) -> None:
    """Note the memory as long as callers ask."""
    while not callers.over:
        served.megabytes()
        await asyncio.sleep(0.3)


async def memory_of(served: Service, idle: float) -> Memory:
    """What the memory did: it is given some time to come back."""
    for _ in range(int(_BACK_SECONDS / 0.5)):
        await asyncio.sleep(0.5)
        if served.megabytes() <= idle * 1.05:
            break
    return Memory(idle, max(served.samples), served.samples[-1])
