"""What a way takes: set-up, grinding and inspection, for all pieces of a job.

The usual times are common practice, no source: a shop states its own.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Literal

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


#: What a set-up is made of beside what its equipment takes by itself.
SetupPart = Literal[
    "equipment", "block", "stack", "further-tilt", "squaring", "edge-trueing", "turn-in-plan"
]


@dataclass(frozen=True, slots=True)
class SetupTimes:
    """Minutes for what a set-up is made of; where nothing is stated common practice, no source.

    To wring a block; to measure a stack and put it under its roll; to set another plate than the
    first; to square an angle plate for work turned a quarter; to true the edge of a face's work
    along the plate; to turn work in plan by an angle.
    """

    block: float = 1.0
    stack: float = 2.0
    further_tilt: float = 10.0
    squaring: float = 15.0
    edge_trueing: float = 3.0
    turn_in_plan: float = 10.0


@dataclass(frozen=True, slots=True)
class SetupWork:
    """How often a way asks for each of them."""

    blocks: int = 0
    stacks: int = 0
    further_tilts: int = 0
    squarings: int = 0
    edge_trueings: int = 0
    turns_in_plan: int = 0

    def parts(self, equipment: float, times: SetupTimes) -> Iterator["TimedPart"]:
        """What a set-up is made of, what its equipment takes by itself first; no part at none."""
        yield TimedPart("equipment", 1, equipment)
        asked: tuple[tuple[SetupPart, int, float], ...] = (
            ("block", self.blocks, times.block),
            ("stack", self.stacks, times.stack),
            ("further-tilt", self.further_tilts, times.further_tilt),
            ("squaring", self.squarings, times.squaring),
            ("edge-trueing", self.edge_trueings, times.edge_trueing),
            ("turn-in-plan", self.turns_in_plan, times.turn_in_plan),
        )
        yield from (TimedPart(part, count, each) for part, count, each in asked if count)


#: A set-up that asks for nothing beside what its equipment takes.
NO_WORK = SetupWork()


@dataclass(frozen=True, slots=True)
class TimedPart:
    """A part of a set-up, how often, and the minutes of each."""

    part: SetupPart
    count: int
    each: float

    @property
    def minutes(self) -> float:
        """Minutes of all of them."""
        return self.count * self.each


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
