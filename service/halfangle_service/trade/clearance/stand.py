"""What stands under a wheel whatever holds it: its gaps, seen in one plane or two.

Lengths in one unit. In one plane every body is taken to straddle it, so that a gap is that in
space, or less. Where two views are given a gap is the larger of both: seen from any side two bodies
are never farther apart than they are in space.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

from halfangle_service.trade.clearance.assembly import ROUNDING
from halfangle_service.trade.clearance.bodies import (
    Body,
    BodyKind,
    Gap,
    HeadPart,
    gaps_between,
    overlap,
)

WheelState = Literal["new", "worn"]


@dataclass(frozen=True, slots=True)
class View:
    """Bodies and the head's parts, by the wheel's state, as they are seen in one plane."""

    bodies: tuple[Body, ...]
    parts: Mapping[WheelState, tuple[HeadPart, ...]]

    def pairs(self) -> list[tuple[WheelState, HeadPart, Body]]:
        """Each part with each body, the wheel with what it grinds left out."""
        return [
            (state, part, body)
            for state, parts in self.parts.items()
            for part in parts
            for body in self.bodies
            if not (body.ground and part.name == "wheel")
        ]


Found = list[tuple[WheelState, Gap]]


def gaps_in(*views: View) -> Found:
    """Every gap with the wheel that it belongs to; of two views the larger, body by body."""
    seen = [gaps_between([(part, body) for _, part, body in view.pairs()]) for view in views]
    states = [state for state, _, _ in views[0].pairs()]
    return [
        (state, max(gaps, key=lambda gap: gap.gap))
        for state, *gaps in zip(states, *seen, strict=True)
    ]


@dataclass(frozen=True, slots=True)
class Stand:
    """A set-up with all its gaps.

    `margin` is the gap wanted, `size` a length by which rounding is measured, `height` that over
    all from the table, None where nothing stands under the wheel's head. `guarded`: the guard, or
    what has none, was given.
    """

    gaps: Found
    margin: float
    size: float
    height: float | None
    guarded: bool

    @property
    def least(self) -> tuple[WheelState, Gap]:
        """The smallest gap of all."""
        return min(self.gaps, key=lambda entry: entry[1].gap)

    def keeps(self, gap: float) -> bool:
        """True where a gap is at least the one wanted."""
        return gap >= self.margin - ROUNDING * self.size


def height_over(bodies: Sequence[Body], table: float) -> float:
    """From the table to the highest point of the set-up and the ground line."""
    return max(0.0, *(z for body in bodies for _, z in body.corners)) - table


#: What turns with the work, and what it may not meet in a turn.
_TURNING: frozenset[BodyKind] = frozenset({"cone", "shank", "nose", "turning-part"})
_STILL: frozenset[BodyKind] = frozenset({"plate", "stack", "base", "angle-plate", "table"})


def turned_into(bodies: Sequence[Body], size: float) -> list[str]:
    """Names of what would meet plate, stack, base, upright or table in a turn of the work."""
    still = [body for body in bodies if body.kind in _STILL]
    return [
        body.name
        for body in bodies
        if body.kind in _TURNING
        and any(overlap(body.corners, other.corners) > ROUNDING * size for other in still)
    ]
