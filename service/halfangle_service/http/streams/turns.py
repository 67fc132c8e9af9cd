"""Whose turn it is: rows are answered between the requests of others."""

import asyncio
import time

#: So long rows are answered before other requests get their turn: a light one takes a tenth of it.
_TURN_SECONDS = 0.001


class Turn:
    """The time of one caller's rows, until others have theirs."""

    def __init__(self) -> None:
        self._ends = time.perf_counter() + _TURN_SECONDS

    async def give_way(self) -> None:
        """Let other requests have their turn, where this one has had its own."""
        if time.perf_counter() >= self._ends:
            await asyncio.sleep(0)
            self._ends = time.perf_counter() + _TURN_SECONDS
