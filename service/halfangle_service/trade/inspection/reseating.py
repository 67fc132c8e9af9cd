"""Runout proved by seating again, turned by half a turn: which reading sees which error.

Derived here, by the reversal of `runout.vectors`, with the spindle's axis as the origin. The cone
is ground about the spindle's axis, so in the place where it was ground it runs true whatever the
holding does. The fixture's seat lies off the axis by F, the adapter's socket off the axis of its
own shank by A, both as vectors; the shank in the socket is off the spindle by F + A, and so the
cone is off its shank by −(F + A). Turned half round in its socket the work reads 2 (F + A), which
is twice the cone's runout to its shank; adapter and work turned half round together read 2 F. The
rest is the adapter's: A = (F + A) − F. Lengths in one unit.
"""

import math
from dataclasses import dataclass
from typing import Literal

from halfangle_service.trade.uncertainty import Budget, Contribution, DecisionRule
from halfangle_service.trade.uncertainty.zones import Case

#: What is turned by half a turn before it is seated again.
Turned = Literal["nothing", "work", "adapter-and-work"]
#: What a reading shows.
Shown = Literal["spindle-and-form", "fixture", "adapter"]


@dataclass(frozen=True, slots=True)
class Seat:
    """One seat in which the cone is indicated: what was turned before, and what the reading shows.

    `times` is how often the runout of what it shows is in the reading; 0 where the cone was ground
    so and runs true whatever the holding does.
    """

    turned: Turned
    shows: tuple[Shown, ...]
    times: int
    how: str


#: The seats in the order in which to read them; the last needs an adapter that can be turned.
SEATS = (
    Seat(
        "nothing",
        ("spindle-and-form",),
        0,
        "As it was ground, before anything is loosened: what it reads here is the spindle's own "
        "and the cone's form, and is taken from the others as a vector.",
    ),
    Seat(
        "work",
        ("fixture", "adapter"),
        2,
        "Work turned half round in its adapter, both seats wiped clean: twice what the cone runs "
        "out to its shank, which is what fixture and adapter were off together.",
    ),
    Seat(
        "adapter-and-work",
        ("fixture",),
        2,
        "Work put back to its mark, adapter and work turned half round together: twice what the "
        "fixture's seat is off. What is left of the reading before is the adapter's, as a vector.",
    ),
)


def largest_reading(limit_tir: float) -> float:
    """TIR that work within its limit reads at most, turned half round: twice the limit."""
    return 2.0 * limit_tir


def runout_proof(limit_tir: float, error: float | None, rule: DecisionRule) -> float | None:
    """Largest TIR read with the work turned half round that proves its limit; None where none does.

    The limit as the indicator reads it; `error` is the largest of a reading, plus or minus, None
    where it was not stated. The reading is twice the runout, so that its error counts half; it is
    judged as the verdict on a runout judges it, as the length of a vector.
    """
    if error is None:
        return None
    budget = Budget((Contribution("tir_error_limit", error, sensitivity=0.5),))
    zone = Case(-math.inf, limit_tir, budget, rule, of_a_vector=True).accepted()
    return None if zone is None or zone[1] < 0.0 else largest_reading(zone[1])
