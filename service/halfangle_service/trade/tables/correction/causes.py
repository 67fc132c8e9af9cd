"""What turns a ground angle or makes it run out, from the table beside this module."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from typing import Literal, get_args

from halfangle_service.trade.tables.loader import Standing, citation, read_rows, standing

#: Ways of grinding that a cause can be in; `seat`: what holds the work, whatever grinds it.
SetUpKind = Literal[
    "sine-plate", "compound-plate", "sine-dresser", "scale-dresser", "swivel", "seat"
]
CauseName = Literal[
    "wrong-block",
    "dirt-under-a-roll",
    "plate-error",
    "axis-not-parallel",
    "axis-yawed",
    "wheel-breakdown",
    "diamond-wear",
    "diamond-height",
    "axis-height",
    "dresser-error",
    "scale-error",
    "wrong-hinge-order",
    "wrong-hand",
    "half-for-included",
    "tangent-for-sine",
    "complement-set",
    "base-step-left-out",
    "seat-of-the-work",
    "temperature",
    "measurement",
    "runout-of-the-socket",
    "runout-of-the-part",
]
#: What may have been seen, as a request states it; `at_180` and `measured` are
#: readings, not observations.
Observation = Literal[
    "repeats_on_second_stack",
    "grows_along_batch",
    "surface_form",
    "changes_on_reseating",
    "follows_temperature",
    "repeats_when_measured_again",
]
OBSERVATIONS: tuple[Observation, ...] = get_args(Observation)


@dataclass(frozen=True, slots=True)
class Cause:
    """One cause, with what it looks like and the check that tells it apart.

    `order` is how often it is met, the oftenest first; `smaller_only` where it can only make the
    half angle of turned work smaller; `says` what is seen where this is the cause.
    """

    name: CauseName
    order: int
    set_ups: frozenset[str]
    turned_only: bool
    smaller_only: bool
    says: Mapping[str, str]
    observation: str
    check: str
    mend: str
    source: str
    standing: Standing


@cache
def causes() -> tuple[Cause, ...]:
    """Give the causes in the order of the table."""
    return tuple(
        Cause(
            name=row["cause"],
            order=row["order"],
            set_ups=frozenset(row["set_ups"]),
            turned_only=row.get("turned_only", False),
            smaller_only=row.get("sense") == "smaller",
            says=row["says"],
            observation=row["observation"],
            check=row["check"],
            mend=row["mend"],
            source=citation(row),
            standing=standing(row),
        )
        for row in read_rows(__name__, "causes.toml", "cause")
    )
