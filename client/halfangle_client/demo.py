"""The built-in job (an invented one, of an invented shop), and a service of its own to plan it."""

import json
import os
import shlex
import signal
import socket
import subprocess
import sysconfig
import tempfile
import time
from collections.abc import Iterator
from contextlib import contextmanager
from importlib.resources import files
from pathlib import Path
from shutil import which
from typing import IO, Any

from halfangle_client.errors import HalfangleError
from halfangle_client.generated.client import Halfangle
from halfangle_client.retry import Retries

READY_SECONDS = 30.0
STOP_SECONDS = 15.0
#: Another program may take the free port between its finding and its use.
_TRIES = 3
#: How a server that was asked to stop may end: by returning, or by the signal once it is done.
_CLEAN_ENDS = frozenset({0, -signal.SIGTERM})


class ServiceFault(HalfangleError):
    """The service of the demo is not installed, did not start, or did not stop as it should."""


def built_in_job() -> dict[str, Any]:
    """Give the request of the built-in job."""
    text = files("halfangle_client").joinpath("demo_job.json").read_text("utf-8")
    job: dict[str, Any] = json.loads(text)
    return job


@contextmanager
def running_service(command: str | None = None) -> Iterator[Halfangle]:
    """Start the service on a free loopback port, give a client of it, and stop it at the end.

    `command` starts another service than the one installed. Raises ServiceFault.
    """
    parts = shlex.split(command) if command else [service_command()]
    with tempfile.TemporaryFile() as log:
        process, client = _started(parts, log)
        try:
            yield client
        finally:
            client.close()
            _stop(process, log)


def service_command() -> str:
    """Find the command: beside this Python, else on the PATH."""
    beside = Path(sysconfig.get_path("scripts"), "halfangle-service")
    found = which(beside) or which("halfangle-service")
    if found is None:
        raise ServiceFault(
            "The command halfangle-service is neither beside this Python nor on the PATH; install "
            "the distribution halfangle-service, or name a command by --service."
        )
    return found


def _started(parts: list[str], log: IO[bytes]) -> tuple["subprocess.Popen[bytes]", Halfangle]:
    """Start until it is ready."""
    for left in reversed(range(_TRIES)):
        port = _free_port()
        process = _start([*parts, "serve", "--host", "127.0.0.1", "--port", str(port)], log)
        client = Halfangle(f"http://127.0.0.1:{port}", retries=Retries(0))
        try:
            if _becomes_ready(process, client):
                return process, client
            if process.poll() is None or not left:
                raise ServiceFault(f"The service did not become ready.{_tail(log)}")
        except BaseException:
            process.kill()
            process.wait()
            raise
    raise AssertionError("unreachable: the last try returns or raises")


def _start(command: list[str], log: IO[bytes]) -> "subprocess.Popen[bytes]":
    # The caller's own settings must not lock the demo out of its service.
    environment = {k: v for k, v in os.environ.items() if not k.startswith("HALFANGLE_")}
    try:
        return subprocess.Popen(  # noqa: S603 -- the command installed, or the caller's own
            command,
            env=environment,
            stdin=subprocess.DEVNULL,
            stdout=log,
            stderr=log,
            # Ctrl-C is for the demo, which then stops the service itself.
            start_new_session=True,
        )
    except OSError as error:
        raise ServiceFault(f"{command[0]} could not be started: {error.strerror}.") from error


def _becomes_ready(process: "subprocess.Popen[bytes]", client: Halfangle) -> bool:
    """Wait until the service is ready, has ended, or has taken too long."""
    deadline = time.monotonic() + READY_SECONDS
    while process.poll() is None and time.monotonic() < deadline:
        if client.is_ready():
            return True
        time.sleep(0.05)
    return False


def _stop(process: "subprocess.Popen[bytes]", log: IO[bytes]) -> None:
    """Ask the service to stop; raises ServiceFault where it had ended by itself, or will not."""
    ended_before = process.poll()
    process.terminate()
    try:
        status = process.wait(STOP_SECONDS)
    except subprocess.TimeoutExpired:
        process.kill()
        process.wait()
        raise ServiceFault(f"The service did not stop in {STOP_SECONDS:g} s.{_tail(log)}") from None
    if ended_before is not None or (os.name == "posix" and status not in _CLEAN_ENDS):
        raise ServiceFault(f"The service ended with status {status}.{_tail(log)}")


def _free_port() -> int:
    with socket.create_server(("127.0.0.1", 0)) as listener:
        port: int = listener.getsockname()[1]
        return port


def _tail(log: IO[bytes]) -> str:
    """The last lines that the service wrote."""
    log.seek(0)
    lines = log.read().decode(errors="replace").splitlines()[-5:]
    return "".join(f"\n  {line}" for line in lines)
