"""Two services behind the load balancer of `docker/haproxy.cfg`, each a process of its own."""

import re
import shutil
import subprocess
import sys
import time
from collections.abc import Iterator
from contextlib import AbstractContextManager, ExitStack, contextmanager
from dataclasses import dataclass
from pathlib import Path

from serving_support import environment, free_port, listens, serving
from support import need_program

CONFIGURATION = Path(__file__).parents[1] / "docker" / "haproxy.cfg"
#: A port that the configuration names: the one it listens on first, then those of the services.
_PORT = re.compile(r"127\.0\.0\.1:([0-9]+)")
_AT_MOST_SECONDS = 30.0


@dataclass
class Replica:
    """One of the services: its port and its process."""

    port: int
    process: subprocess.Popen[str]
    _starts: ExitStack

    @property
    def url(self) -> str:
        """Its address."""
        return f"http://127.0.0.1:{self.port}"

    def kill(self) -> None:
        """End it at once, as a machine does that loses its power."""
        self.process.kill()
        self.process.communicate(timeout=_AT_MOST_SECONDS)

    def stop(self) -> int:
        """Stop it as a machine does that is maintained; gives the exit status."""
        self.process.terminate()
        self.process.communicate(timeout=2 * _AT_MOST_SECONDS)
        return self.process.returncode

    def start(self) -> None:
        """Start it again, where it stood; it is ready then."""
        self.process = self._starts.enter_context(_serving(self.port))


@dataclass
class Balanced:
    """A load balancer and the services behind it."""

    port: int
    replicas: list[Replica]

    @property
    def url(self) -> str:
        """The load balancer's address."""
        return f"http://127.0.0.1:{self.port}"


@contextmanager
def replicas(count: int = 2) -> Iterator[list[Replica]]:
    """So many services that are ready, on ports of their own."""
    with ExitStack() as stack:
        found = []
        for port in [free_port() for _ in range(count)]:
            found.append(Replica(port, stack.enter_context(_serving(port)), stack))
        yield found


def _serving(port: int) -> AbstractContextManager[subprocess.Popen[str]]:
    command = ["-m", "halfangle_service.cli", "serve", "--log-level", "error", "--port"]
    return serving([*command, str(port)], port)


def haproxy() -> str | None:
    """Where the load balancer is, if it is."""
    return shutil.which("haproxy", path=f"{environment()['PATH']}:/usr/sbin")


@contextmanager
def balanced(folder: Path) -> Iterator[Balanced]:
    """Two services behind haproxy, with the configuration as it is but for the ports.

    `folder` takes the configuration. Skips the test where there is no haproxy.
    """
    program = haproxy()
    need_program(program, "haproxy is not installed")
    with behind(str(program), folder) as found:
        yield found


@contextmanager
def behind(program: str, folder: Path) -> Iterator[Balanced]:
    """The same, for whoever has found haproxy himself."""
    with replicas() as services:
        ports = iter([free_port(), *(replica.port for replica in services)])
        own, *_ = written = [str(port) for port in ports]
        ahead = iter(written)
        configuration = folder / "haproxy.cfg"
        configuration.write_text(
            _PORT.sub(lambda _: f"127.0.0.1:{next(ahead)}", CONFIGURATION.read_text("utf-8")),
            "utf-8",
        )
        with _running([program, "-f", str(configuration)], int(own)):
            yield Balanced(int(own), services)


@contextmanager
def _running(command: list[str], port: int) -> Iterator[None]:
    process = subprocess.Popen(command, stdout=sys.stderr, stderr=sys.stderr)
    try:
        until = time.monotonic() + _AT_MOST_SECONDS
        while not listens(port) and process.poll() is None and time.monotonic() < until:
            time.sleep(0.02)
        assert process.poll() is None, "haproxy ended; see what it says on standard error"
        yield
    finally:
        process.terminate()
        process.wait(timeout=_AT_MOST_SECONDS)
