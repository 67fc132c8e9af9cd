"""The service as its user starts it, for the tests that need a real process and a real socket."""

import http.client
import json
import os
import socket
import subprocess
import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

SERVICE = Path(__file__).parents[1] / "service"


def environment() -> dict[str, str]:
    """This environment, without settings of the service, with its sources on the path."""
    kept = {k: v for k, v in os.environ.items() if not k.startswith("HALFANGLE_")}
    return {**kept, "PYTHONPATH": str(SERVICE)}


def free_port() -> int:
    """A port of loopback that nobody listens on."""
    with socket.create_server(("127.0.0.1", 0)) as listener:
        port: int = listener.getsockname()[1]
        return port


@contextmanager
def serving(command: list[str], port: int) -> Iterator[subprocess.Popen[str]]:
    """A running service that is ready; stopped in the end if it still runs."""
    process = subprocess.Popen(
        [sys.executable, *command],
        env=environment(),
        stderr=subprocess.PIPE,
        stdout=subprocess.PIPE,
        text=True,
    )
    try:
        for _ in range(6000):
            if process.poll() is not None or listens(port):
                break
            time.sleep(0.01)
        assert process.poll() is None, process.communicate()
        yield process
    finally:
        if process.poll() is None:
            process.terminate()
            process.communicate(timeout=30)


def listens(port: int) -> bool:
    """True where a port of loopback takes connections."""
    with socket.socket() as probe:
        return probe.connect_ex(("127.0.0.1", port)) == 0


def ask(port: int, method: str, path: str, body: Any = None, **headers: str) -> tuple[int, Any]:
    """One request over a connection of its own; gives status and body, read as JSON."""
    connection = http.client.HTTPConnection("127.0.0.1", port, timeout=30)
    try:
        connection.request(
            method,
            path,
            body,
            {"Content-Type": "application/json", **headers},
            encode_chunked=not isinstance(body, bytes | None),
        )
        response = connection.getresponse()
        return response.status, json.loads(response.read() or b"null")
    finally:
        connection.close()
