"""How often a caller may ask: a pace by name that all workers see, and that no clock's jump moves.

Of each caller one number is kept: when it would be level again (the generic cell rate algorithm,
which is a bucket of tokens written with one number). It lies in memory that the workers share, so
the pace is that of all together. Two workers that write it in the same microsecond lose one request
of the count, which needs no lock that a killed worker would keep.
"""

import asyncio
import hashlib
import mmap
import time
from collections.abc import Callable
from dataclasses import dataclass

_PLACES = 4_096
_BYTES = 8
#: Share of the burst that rows of batches and tables leave to single requests of the same caller.
_LEFT_BY_ROWS = 0.1
#: No turn is farther from the next: of numbers without end none could be told from another.
_LONGEST_SECONDS = 1e7
#: So long a row sleeps at most before it looks again.
_LONGEST_SLEEP_SECONDS = 1.0


class Paces:
    """When each caller is level again, by its name."""

    def __init__(self) -> None:
        self._memory = mmap.mmap(-1, 2 * _PLACES * _BYTES)
        whole = memoryview(self._memory)
        self._tags = whole[: _PLACES * _BYTES].cast("Q")
        self._level = whole[_PLACES * _BYTES :].cast("d")

    def take(self, name: str, per_minute: float, burst: float, now: float | None = None) -> float:
        """Take one turn; seconds to wait where there is none, and then nothing is taken.

        `now`: seconds of the clock that only goes forward, which is one for all processes.
        """
        now = time.monotonic() if now is None else now
        place = self._place(name)
        each = min(60.0 / per_minute, _LONGEST_SECONDS)
        level = max(self._level[place], now) + each
        wait = level - now - burst * each
        # A millionth of a turn: a sum of many is not exact.
        if wait > 1e-6 * each:
            return wait
        self._level[place] = level
        return 0.0

    def owe(self, name: str, per_minute: float, turns: float) -> None:
        """Take turns that need not be there: the caller's next ones come so much later."""
        place = self._place(name)
        each = min(60.0 / per_minute, _LONGEST_SECONDS)
        self._level[place] = max(self._level[place], time.monotonic()) + each * turns

    def _place(self, name: str) -> int:
        """The place of a name; the first of those that would be its own where none is free."""
        tag = int.from_bytes(hashlib.sha256(name.encode()).digest()[:_BYTES], "little") | 1
        first = tag % _PLACES
        for step in range(_PLACES):
            place = (first + step) % _PLACES
            if self._tags[place] in {0, tag}:
                self._tags[place] = tag
                return place
        return first


@dataclass(frozen=True, slots=True)
class Allowance:
    """How often one caller may ask."""

    paces: Paces
    name: str
    per_minute: float
    burst: int

    def wait(self) -> float:
        """Take a turn for a request; seconds to wait where there is none."""
        return self.paces.take(self.name, self.per_minute, self.burst)

    def owe(self, turns: int) -> None:
        """Take further turns for a request that is worth many; whoever comes next waits for them.

        It is answered at once: were it to wait for them all, nobody would know for how long.
        """
        self.paces.owe(self.name, self.per_minute, turns)

    async def row(self, refuse_gone: Callable[[], object]) -> None:
        """Take a turn for a row of a batch or of a table, when there is one.

        It goes on at the caller's pace rather than have rows refused; it leaves some turns of the
        burst to the caller's single requests. `refuse_gone` raises where nobody waits any more.
        """
        burst = max(1.0, self.burst * (1.0 - _LEFT_BY_ROWS))
        while wait := self.paces.take(self.name, self.per_minute, burst):
            refuse_gone()
            await asyncio.sleep(min(wait, _LONGEST_SLEEP_SECONDS))
