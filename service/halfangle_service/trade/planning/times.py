"""What a way takes: set-up, grinding and inspection, for all pieces of a job.

The usual times are common practice, no source: a shop states its own.
"""

from collections.abc import Sequence
from dataclasses import dataclass

#: Time to grind one piece where neither it nor a feed plan says, in minutes.
MINUTES_PER_PIECE = 10.0
#: Time of one pass of the dressing diamond with its return, in seconds.
DRESSING_PASS_SECONDS = 10.0
#: Time to put a piece in and take it out again, and to dress a flat wheel again, in minutes.
LOADING_MINUTES = 1.0
DRESSING_MINUTES = 3.0


@dataclass(frozen=True, slots=True)
class UsualTimes:
    """Minutes to set a way up and to inspect one piece, where nothing is stated."""

    setup: float
    inspection: float


#: Of a sine plate, a dressed flank (dressing apart), the wheel's side, a swivelled workhead. A sine
#: setting is proved by its stack, the others by the angle as ground.
PLATE = UsualTimes(30.0, 5.0)
FLANK = UsualTimes(40.0, 20.0)
SIDE = UsualTimes(20.0, 20.0)
HEAD = UsualTimes(15.0, 20.0)


@dataclass(frozen=True, slots=True)
class JobTime:
    """Times of a way in one unit: once, for each piece, for each inspection, for each dress.

    `dressings` are those between the first piece and the last; the first dress is of the set-up.
    """

    setup: float
    loading: float
    grinding: float
    inspection: float
    dressing: float
    pieces: int
    inspected: int
    dressings: int

    @property
    def first_piece(self) -> float:
        """Time to the first good piece."""
        return self.setup + self.loading + self.grinding + self.inspection

    @property
    def total(self) -> float:
        """Time for all pieces."""
        run = self.pieces * (self.loading + self.grinding)
        return self.setup + run + self.inspected * self.inspection + self.dressings * self.dressing


def grinding_time(phases: Sequence[float | None]) -> float | None:
    """Time to grind one piece, from that of each phase of its feed; None where one is unknown."""
    known = [time for time in phases if time is not None]
    return sum(known) if phases and len(known) == len(phases) else None
