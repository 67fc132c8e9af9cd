"""Runs tests in processes of their own, forked from one that has the libraries loaded already.

What is forked has loaded nothing of the project, so that each process loads it as it then stands.
"""

import importlib
import multiprocessing
import os
import pkgutil
import resource
import signal
import sys
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from multiprocessing.connection import Connection, wait
from multiprocessing.process import BaseProcess
from typing import Any

_LIBRARIES = (
    "coverage httpx hypothesis litestar.testing mpmath numpy pydantic pydantic_settings pytest "
    "scipy.optimize scipy.stats shapely structlog uncertainties uvicorn"
)
_FORK = multiprocessing.get_context("fork")
#: How many times slower than alone a process may be on a busy machine.
_BUSY = 10.0
#: Libraries loaded before pytest rewrites their assertions are no fault here.
PYTEST_ARGUMENTS = (
    "-n0",
    "-q",
    "--no-header",
    "-p",
    "no:cacheprovider",
    "-W",
    "ignore::pytest.PytestAssertRewriteWarning",
)


def load_libraries() -> None:
    """Load once what every run of tests needs."""
    for name in _LIBRARIES.split():
        importlib.import_module(name)
    own = [name for name in sys.modules if name.startswith("halfangle")]
    if own:
        raise RuntimeError(f"the project itself is loaded: {', '.join(own)}")


def load_service() -> None:
    """Load every module of the service, those too that it would load at the first request."""
    package = importlib.import_module("halfangle_service")
    for entry in pkgutil.walk_packages(package.__path__, "halfangle_service."):
        importlib.import_module(entry.name)


@dataclass
class Running:
    """A process at work on one thing, until when it may be."""

    process: BaseProcess
    answers: Connection
    ends: float

    def answer(self) -> Any:
        """What the process gave; None where it ran out of time or died."""
        given = None
        if self.answers.poll():
            try:
                given = self.answers.recv()
            except EOFError:
                given = None
        self.stop()
        return given

    def stop(self) -> None:
        """End the process and what it started."""
        if self.process.is_alive():
            os.killpg(self.process.pid or 0, signal.SIGKILL)
        self.process.join()
        self.answers.close()


def start(work: Callable[..., Any], *arguments: Any, seconds: float) -> Running:
    """Start work in a forked process that is given so many seconds of the processor.

    A clock would find mutants out of time whenever the machine is busy with something else; it
    only ends what waits for nothing.
    """
    receiving, sending = _FORK.Pipe(duplex=False)
    process = _FORK.Process(target=_answering, args=(sending, seconds, work, *arguments))
    process.start()
    sending.close()
    return Running(process, receiving, time.monotonic() + seconds * _BUSY)


def await_any(running: list[Running]) -> list[Running]:
    """Wait until some have answered or run out of time; give these."""
    first = min(entry.ends for entry in running) - time.monotonic()
    wait([entry.answers for entry in running], timeout=max(0.0, first))
    now = time.monotonic()
    return [entry for entry in running if entry.answers.poll() or entry.ends <= now]


def _answering(
    sending: Connection, seconds: float, work: Callable[..., Any], *arguments: Any
) -> None:
    os.setpgrp()
    _, most = resource.getrlimit(resource.RLIMIT_CPU)
    resource.setrlimit(resource.RLIMIT_CPU, (int(time.process_time() + seconds) + 1, most))
    with _silence():
        sending.send(work(*arguments))
    sending.close()
    sys.stdout.flush()
    os._exit(0)  # threads of the service must not hold the process


@contextmanager
def _silence() -> Iterator[None]:
    """Let nothing be printed, by subprocesses either."""
    nowhere = os.open(os.devnull, os.O_WRONLY)
    for stream in (1, 2):
        os.dup2(nowhere, stream)
    yield
