"""Runout proved by seating again, turned by half a turn: which reading sees which error.

Derived here, by the reversal of `runout.vectors`, with the spindle's axis as the origin. The cone
is ground about the spindle's axis, so in the place where it was ground it runs true whatever the
holding does. The fixture's seat lies off the axis by F, the adapter's socket off the axis of its
own shank by A, both as vectors; the shank in the socket is off the spindle by F + A, and so the
cone is off its shank by −(F + A). Turned half round in its socket the work reads 2 (F + A), which
is twice the cone's runout to its shank; adapter and work turned half round together read 2 F. The
rest is the adapter's: A = (F + A) − F.
"""

from dataclasses import dataclass
from typing import Literal

from halfangle_service.trade.runout.vectors import difference, split

#: What is turned by half a turn before it is seated again.
Turned = Literal["nothing", "work", "adapter-and-work"]


@dataclass(frozen=True, slots=True)
class HoldingFound:
    """What the holding did, by the readings, as eccentricity vectors; the cone is off its shank.

    `adapter` is None where adapter and work were not turned together.
    """

    fixture: complex | None
    adapter: complex | None
    cone_to_shank: complex


def told_by_reseating(
    in_place: complex, work_turned: complex, both_turned: complex | None = None
) -> HoldingFound:
    """Tell fixture, adapter and work apart by what the cone reads in each seat, as vectors."""
    holding, cone = split(in_place, work_turned)
    if both_turned is None:
        return HoldingFound(None, None, cone)
    fixture, _ = split(in_place, both_turned)
    return HoldingFound(fixture, difference(holding, fixture), cone)


def largest_reading(limit_tir: float) -> float:
    """TIR that work within its limit reads at most, turned half round: twice the limit."""
    return 2.0 * limit_tir
