"""What a way is, before it is written as an answer."""

from collections.abc import Sequence
from dataclasses import dataclass

from halfangle_service.fields.supply import Supply
from halfangle_service.topics.jobs.plan.result import (
    AngleOf,
    PlanSetting,
    PlanStack,
    PlanWayName,
)
from halfangle_service.trade.stacks.supply import Piece
from halfangle_service.trade.tables.materials.expansion import MaterialName
from halfangle_service.trade.uncertainty import Budget


@dataclass(frozen=True, slots=True)
class ShopBox:
    """A set of the shop's, read: its name, its path in the request, its blocks."""

    name: str
    path: str
    supply: Supply
    grade: str | None
    material: MaterialName | None


@dataclass(frozen=True, slots=True)
class ToleratedAngle:
    """An angle that has a tolerance: the budget of its error, in radians, and ± how much it may."""

    of: AngleOf
    budget: Budget
    tolerance_arcsec: float


@dataclass(frozen=True, slots=True)
class Way:
    """A way that can make the feature: what it is set to, its stacks, and what is to expect."""

    name: PlanWayName
    equipment: tuple[str, ...]
    angles: tuple[ToleratedAngle, ...]
    settings: tuple[PlanSetting, ...]
    stacks: tuple[PlanStack, ...]
    setup_minutes: float
    inspection_minutes: float


@dataclass(frozen=True, slots=True)
class RuledOut:
    """A way that cannot, why, and the field that stands in its way."""

    name: PlanWayName
    equipment: tuple[str, ...]
    reason: str
    field: str
    instead: str | None = None


def taken(pieces: Sequence[Piece], sizes: Sequence[int]) -> tuple[tuple[Piece, ...], list[Piece]]:
    """The first blocks of these sizes (0.1 nm) in a box, and those that are left."""
    left = list(pieces)
    found = []
    for size in sizes:
        piece = next(piece for piece in left if piece.size == size)
        left.remove(piece)
        found.append(piece)
    return tuple(found), left
