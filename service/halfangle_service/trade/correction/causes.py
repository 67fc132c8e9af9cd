"""Likely causes of an error found after grinding, ranked by what was seen.

What speaks for a cause ranks it first, what speaks against it last; what was not stated says
nothing. Between equal ones the order of the table decides: how often each is met in a toolroom,
which is common practice and has no source.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Literal

from halfangle_service.trade.sine.correction import WRONG_BLOCK_ARCSEC
from halfangle_service.trade.tables.correction.causes import (
    OBSERVATIONS,
    Cause,
    CauseName,
    SetUpKind,
    causes,
)

Evidence = Literal["for", "none", "against"]
_RANK: dict[Evidence, int] = {"for": 0, "none": 1, "against": 2}


@dataclass(frozen=True, slots=True)
class Seen:
    """What is known of the error: how it was ground, what was observed, its size and its sense.

    `set_up` is None where it was not stated; `error_arcsec`, of the half angle or the face, where
    only its sense is known. `sense` is 1 where the angle is larger than wanted for certain, −1
    where it is smaller, else 0.
    `found` is what readings say of single causes by themselves.
    """

    set_up: SetUpKind | None
    turned: bool
    observed: Mapping[str, str]
    error_arcsec: float | None = None
    sense: int = 0
    found: Mapping[CauseName, Evidence] | None = None


@dataclass(frozen=True, slots=True)
class Ranked:
    """A cause, with what was seen for it and against it."""

    cause: Cause
    evidence: Evidence
    for_it: tuple[str, ...]
    against_it: tuple[str, ...]


def ranked(seen: Seen) -> tuple[Ranked, ...]:
    """The causes that the way of grinding can have, the likeliest first."""
    judged = [_judged(cause, seen) for cause in causes() if _can_be(cause, seen)]
    return tuple(sorted(judged, key=lambda one: _key(one, seen)))


def telling(found: Iterable[Ranked]) -> tuple[str, ...]:
    """Observations that tell some of these causes apart, in a fixed order."""
    says = {name for one in found for name in one.cause.says}
    return tuple(name for name in OBSERVATIONS if name in says)


def _can_be(cause: Cause, seen: Seen) -> bool:
    """True where this way of grinding can have it; without one, where any way can."""
    ways = cause.set_ups - {"seat"} if seen.set_up is None else cause.set_ups & {seen.set_up}
    return bool(ways) and (seen.turned or not cause.turned_only)


def _judged(cause: Cause, seen: Seen) -> Ranked:
    """What was seen for a cause and against it."""
    for_it = [name for name, value in seen.observed.items() if cause.says.get(name) == value]
    against = [
        name for name, value in seen.observed.items() if cause.says.get(name, value) != value
    ]
    if cause.smaller_only and seen.sense > 0:
        against.append("sense")
    readings = (seen.found or {}).get(cause.name)
    if readings == "for":
        for_it.append(cause.observation)
    elif readings == "against":
        against.append(cause.observation)
    evidence: Evidence = "against" if against else "for" if for_it else "none"
    return Ranked(cause, evidence, tuple(for_it), tuple(against))


def _key(one: Ranked, seen: Seen) -> tuple[int, bool, int, int]:
    """Rank: evidence, whether its own check was made, how much speaks for it, how often met."""
    own = one.cause.observation in one.for_it
    order = one.cause.order
    if one.cause.name == "wrong-block" and abs(seen.error_arcsec or 0.0) > WRONG_BLOCK_ARCSEC:
        order = 0
    return _RANK[one.evidence], not own, -len(one.for_it), order
