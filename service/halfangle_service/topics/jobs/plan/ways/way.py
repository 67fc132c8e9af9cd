"""What a way is, before it is written as an answer."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from halfangle_service.errors import Refusal
from halfangle_service.fields import ARCSEC_PER_RADIAN, Units, from_tenth_nm
from halfangle_service.fields.advisories import Advisory
from halfangle_service.fields.glossary import option_labels
from halfangle_service.fields.stacks import stack_facts
from halfangle_service.fields.supply import Supply
from halfangle_service.topics.jobs.plan.features import Wanted
from halfangle_service.topics.jobs.plan.result import (
    AngleOf,
    PlanSetting,
    PlanStack,
    PlanWayName,
    StackRole,
)
from halfangle_service.topics.jobs.plan.ways.plate_budget import stack_of
from halfangle_service.trade.inspection.mistakes import PlannedStack
from halfangle_service.trade.planning.times import NO_WORK, SetupWork
from halfangle_service.trade.sine.compound_layings import Laid
from halfangle_service.trade.stacks.supply import Piece
from halfangle_service.trade.tables.materials.expansion import MaterialName
from halfangle_service.trade.uncertainty import Budget, Contribution
from halfangle_service.trade.wording import stack

#: What no face is turned by.
YAW = "axis_yaw_error_limit_arcsec"


@dataclass(frozen=True, slots=True)
class ShopBox:
    """A set of the shop's, read: its name, its place in the request, its blocks."""

    name: str
    path: str
    supply: Supply
    grade: str | None
    material: MaterialName | None


@dataclass(frozen=True, slots=True)
class ToleratedAngle:
    """An angle that has a tolerance: the budget of its error, and ± how much it may be off.

    `per_unit` are the arc-seconds of the budget's unit.
    """

    of: AngleOf
    budget: Budget
    tolerance_arcsec: float
    per_unit: float = ARCSEC_PER_RADIAN


#: What an error that was not stated would add to the budget of a way's angle, by its name and its
#: value; None of what adds nothing by itself.
Adds = Callable[[str, float], Contribution | None]


def adds_to(budget_with: Callable[[str, float], Budget]) -> Adds:
    """What one more error adds, by the budget with it; None where nothing can stand so."""

    def adds(name: str, value: float) -> Contribution | None:
        try:
            parts = budget_with(name, value).contributions
        except Refusal:
            return None
        return next((part for part in parts if part.name == name), None)

    return adds


@dataclass(frozen=True, slots=True)
class Way:
    """A way that can make the feature: what it is set to, its stacks, and what is to expect.

    `wrong_blocks` are the same stacks as a wrong block may be wrung into them, `work` what its
    set-up asks for beside what the equipment takes by itself, and `variant` what tells it from
    another way of its name by the same equipment; `laid` is how the work lies on a compound plate.
    """

    name: PlanWayName
    equipment: tuple[str, ...]
    angles: tuple[ToleratedAngle, ...]
    settings: tuple[PlanSetting, ...]
    stacks: tuple[PlanStack, ...]
    setup_minutes: float
    inspection_minutes: float
    cautions: tuple[Advisory, ...] = ()
    adds: Adds | None = None
    wrong_blocks: tuple[PlannedStack, ...] = ()
    laid: Laid | None = None
    work: SetupWork = NO_WORK
    variant: str = ""

    @property
    def in_words(self) -> str:
        """The way as no other way of a plan is called: the shop calls no two things alike."""
        label = option_labels()[self.name]
        told = "; ".join(filter(None, (", ".join(self.equipment), self.variant)))
        return f"{label[0].lower()}{label[1:]} ({told})"


@dataclass(frozen=True, slots=True)
class RuledOut:
    """A way that cannot, why, and the field that stands in its way; `more` are further facts."""

    name: PlanWayName
    equipment: tuple[str, ...]
    reason: str
    field: str
    instead: str | None = None
    more: Mapping[str, object] | None = None


def taken(pieces: Sequence[Piece], sizes: Sequence[int]) -> tuple[tuple[Piece, ...], list[Piece]]:
    """The first blocks of these sizes (0.1 nm) in a box, and those that are left."""
    left = list(pieces)
    found = []
    for size in sizes:
        place = next(place for place, piece in enumerate(left) if piece.size == size)
        found.append(left.pop(place))
    return tuple(found), left


def stack_words(pieces: Sequence[Piece], wanted: Wanted) -> str:
    """A stack as a sentence has it."""
    sizes = tuple(from_tenth_nm(piece.size, wanted.units) for piece in pieces)
    return stack(sizes, wanted.units)


def plan_stack(role: StackRole, pieces: Sequence[Piece], units: Units) -> PlanStack:
    """A stack that is as high as its blocks."""
    asked = sum(piece.size for piece in pieces)
    return PlanStack(role=role, **stack_facts(pieces, asked, units))


def work_of(stacks: Sequence[PlanStack], work: SetupWork = NO_WORK) -> SetupWork:
    """The work of a set-up with that of its stacks; of those to check it by none is needed."""
    set_by = [made for made in stacks if made.role != "check"]
    return replace(work, blocks=sum(made.count for made in set_by), stacks=len(set_by))


def check_stack(
    pieces: Sequence[Piece], spare: Sequence[Piece], box: ShopBox, max_blocks: int, units: Units
) -> Iterator[PlanStack]:
    """Another stack of the same height, of the blocks that are left, where there is one."""
    height = sum(piece.size for piece in pieces)
    left = [piece.size for piece in spare]
    second = box.supply.box.table(max_blocks).stack_of(left, height)
    if second is not None:
        found, _ = taken(spare, second)
        yield plan_stack("check", stack_of(found, box.grade, box.material), units)


def angle_of(wanted: Wanted) -> AngleOf:
    """Which angle of a feature has the tolerance."""
    return "included-angle" if wanted.turned else "face-angle"


def without(budget: Budget, name: str) -> Budget:
    """The same budget without what does not act."""
    return replace(
        budget,
        contributions=tuple(c for c in budget.contributions if c.name != name),
        not_stated=tuple(n for n in budget.not_stated if n != name),
    )
