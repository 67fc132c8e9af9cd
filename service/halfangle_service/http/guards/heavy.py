"""Heavy work: in worker threads, a bounded number at once, a bounded number that wait."""

import asyncio
import time
from collections.abc import Callable
from typing import Any, TypeVar

from anyio import CapacityLimiter, to_thread
from litestar.types import Receive

from halfangle_service.http.problems import CallerGone, ProblemError, stopping
from halfangle_service.http.watch.metrics import (
    HEAVY_RUNNING,
    HEAVY_WAIT,
    HEAVY_WAITING,
    Metrics,
)

MadeT = TypeVar("MadeT")


class HeavyWork:
    """Runs heavy work in worker threads for callers that are still there when its turn comes."""

    def __init__(self, workers: int, queue: int, metrics: Metrics) -> None:
        self._metrics = metrics
        self._turns = asyncio.Semaphore(workers)
        self._threads = CapacityLimiter(workers)
        self._most = workers + queue
        self._inside = 0

    async def run(
        self, receive: Receive | None, work: Callable[..., MadeT], *arguments: object
    ) -> MadeT:
        """Work in a thread. `receive` tells when the caller leaves; its body has been read.

        None is for a row of a batch, which waits for its turn as long as it takes: a batch has one
        row waiting at most, so that the others come to their turn between its rows.

        Raises ProblemError (`overloaded`) where the queue is full, CallerGone where the caller
        left before the work was begun, ProblemError (`stopping`) where the service waits no longer.
        """
        if receive is not None and self._inside >= self._most:
            raise ProblemError(
                "overloaded",
                f"{self._most} heavy requests are already accepted; try again shortly.",
                headers={"Retry-After": "1"},
            )
        self._inside += 1
        try:
            await self._wait_and_count(receive)
            self._metrics.add(HEAVY_RUNNING)
            try:
                return await to_thread.run_sync(work, *arguments, limiter=self._threads)
            finally:
                self._turns.release()
                self._metrics.add(HEAVY_RUNNING, amount=-1.0)
        except asyncio.CancelledError:
            raise stopping() from None
        finally:
            self._inside -= 1

    async def _wait_and_count(self, receive: Receive | None) -> None:
        """Take a turn, seen while it is waited for; raises CallerGone."""
        started = time.perf_counter()
        self._metrics.add(HEAVY_WAITING)
        try:
            await self._wait_for_turn(receive)
        finally:
            self._metrics.add(HEAVY_WAITING, amount=-1.0)
        self._metrics.time(HEAVY_WAIT, time.perf_counter() - started)

    async def _wait_for_turn(self, receive: Receive | None) -> None:
        """Take a turn; raises CallerGone where the caller leaves first."""
        if receive is None or not self._turns.locked():
            await self._turns.acquire()
            return
        turn = asyncio.ensure_future(self._turns.acquire())
        gone = asyncio.ensure_future(_left(receive))
        try:
            await asyncio.wait({turn, gone}, return_when=asyncio.FIRST_COMPLETED)
        except asyncio.CancelledError:
            self._give_back(turn)
            raise
        finally:
            gone.cancel()
        if gone.done() and not gone.cancelled():
            self._give_back(turn)
            raise CallerGone

    def _give_back(self, turn: "asyncio.Future[Any]") -> None:
        """Wait for a turn no longer; one that has come meanwhile is the next one's."""
        if not turn.cancel():
            self._turns.release()


async def _left(receive: Receive) -> None:
    """Return when the caller has gone."""
    while (await receive())["type"] != "http.disconnect":
        pass
