"""Services that the client's tests talk to: in process, started for real, and one that fails."""

import os
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from litestar.testing import TestClient

from client_support import FaultServer
from halfangle_client import Halfangle
from halfangle_client.demo import running_service

ROOT = Path(__file__).resolve().parents[2]


@pytest.fixture(scope="session")
def client(service: TestClient[Any]) -> Halfangle:
    """A sync client of the service in process."""
    return Halfangle("http://testserver.local", http_client=service)


@pytest.fixture(scope="session")
def service_command() -> Iterator[str]:
    """A command that starts the service of this working copy, installed or not."""
    before = os.environ.get("PYTHONPATH")
    os.environ["PYTHONPATH"] = str(ROOT / "service")
    yield f"{sys.executable} -m halfangle_service.cli"
    if before is None:
        del os.environ["PYTHONPATH"]
    else:
        os.environ["PYTHONPATH"] = before


@pytest.fixture(scope="session")
def live(service_command: str) -> Iterator[Halfangle]:
    """A client of a service that was really started, in a process of its own."""
    with running_service(service_command) as client:
        yield client


@pytest.fixture
def at_live(live: Halfangle, monkeypatch: pytest.MonkeyPatch) -> None:
    """Name the live service to the command by the environment."""
    monkeypatch.setenv("HALFANGLE_URL", live._manners.base_url)


@pytest.fixture
def faults() -> Iterator[FaultServer]:
    """A server that does what a test tells it, one instruction a request."""
    with FaultServer() as server:
        yield server
