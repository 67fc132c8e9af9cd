"""The built-in job, and a service of its own to plan it: invented data, invented shop."""

import json
import os
import socket
import subprocess
import sys
import sysconfig
import time
from collections.abc import Iterator
from contextlib import contextmanager
from importlib.resources import files
from pathlib import Path
from shutil import which
from typing import Any
from urllib.request import urlopen

from halfangle_client.errors import ConnectionFailed

READY_SECONDS = 30.0


def built_in_job() -> dict[str, Any]:
    """Give the request of the built-in job."""
    text = files("halfangle_client").joinpath("demo_job.json").read_text("utf-8")
    job: dict[str, Any] = json.loads(text)
    return job


@contextmanager
def running_service() -> Iterator[str]:
    """Start the service on a free loopback port, give its address, and stop it at the end.

    Raises ConnectionFailed where the command is not installed or does not become ready.
    """
    port = _free_port()
    address = f"http://127.0.0.1:{port}"
    command = [_service_command(), "serve", "--port", str(port), "--log-level", "error"]
    # Settings of the caller's shell must not lock the demo out of its own service.
    environment = {k: v for k, v in os.environ.items() if not k.startswith("HALFANGLE_")}
    with subprocess.Popen(command, env=environment) as process:  # noqa: S603  our own command
        try:
            _wait_until_ready(process, address)
            yield address
        finally:
            process.terminate()
            process.wait(timeout=READY_SECONDS)


def _service_command() -> str:
    """Find the command: beside this Python, else on the PATH."""
    beside = Path(sysconfig.get_path("scripts"), "halfangle-service")
    found = which(beside) or which("halfangle-service")
    if found is None:
        raise ConnectionFailed(
            f"The command halfangle-service is not installed beside {sys.executable}."
        )
    return found


def _free_port() -> int:
    with socket.create_server(("127.0.0.1", 0)) as listener:
        port: int = listener.getsockname()[1]
        return port


def _wait_until_ready(process: "subprocess.Popen[bytes]", address: str) -> None:
    deadline = time.monotonic() + READY_SECONDS
    while time.monotonic() < deadline:
        if process.poll() is not None:
            raise ConnectionFailed(f"The service ended at once, with status {process.returncode}.")
        try:
            urlopen(f"{address}/health/ready", timeout=1.0).close()  # noqa: S310  loopback http
        except OSError:
            time.sleep(0.05)
        else:
            return
    raise ConnectionFailed(f"The service was not ready within {READY_SECONDS:g} s.")
