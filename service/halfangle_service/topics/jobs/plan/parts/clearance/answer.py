"""Clearance of a way as the plan answers it; what was not stated is named, and nothing said."""

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass

from pydantic import Field

from halfangle_service.fields import (
    Length,
    LengthOut,
    NonNegativeLength,
    RequestModel,
    ResultModel,
    Units,
)
from halfangle_service.fields.clearance.findings import StandUnderWheel
from halfangle_service.fields.clearance.gaps import ClearanceChange, ClearanceGap, gap_of
from halfangle_service.fields.estimate import NotStated
from halfangle_service.trade.clearance.case import ChangeKind
from halfangle_service.trade.clearance.search import smallest
from halfangle_service.trade.clearance.stand import Stand
from halfangle_service.trade.uncertainty import Forecast

NO_GUARD = "No guard was given, so nothing is said of it: a wheel is not run without its guard."


class PlanRoom(RequestModel):
    """Gap and room to keep under the wheel."""

    gap_wanted: NonNegativeLength | None = Field(
        None, description="Least gap wanted everywhere, in `units`.", examples=[0.1]
    )
    room_under_wheel: Length | None = Field(
        None,
        description="Greatest height from the table to the wheel's lowest line with the head "
        "raised, in `units`. Absent: the height is not judged.",
        examples=[12.0],
    )


class PlanClearance(ResultModel):
    """Clearance of wheel, flanges and guard through the whole stroke and a full turn."""

    forecast: Forecast = Field(
        description="Whether everything clears: `not-stated` where `not_stated` names what lacks; "
        "`may-not-hold` where a gap is less than the one wanted, or the guard was left out. A way "
        "that fouls is ruled out."
    )
    smallest_gap: ClearanceGap | None = Field(
        description="The smallest gap of all; null where something was not stated."
    )
    stick_out_needed: LengthOut | None = Field(
        description="Smallest stick-out with which fixture and turning parts keep the gap wanted; "
        "null where none does, where it is kept already, and where something was not stated."
    )
    room_left: LengthOut | None = Field(
        description="Room under the raised wheel less the set-up's height; null without the room, "
        "and where nothing stands under the wheel."
    )
    findings: list[str] = Field(description="What is wrong, in plain words; empty where nothing.")
    changes: list[ClearanceChange] = Field(description="Changes that would open the gaps.")
    not_stated: NotStated


@dataclass(frozen=True, slots=True)
class Fouled:
    """Why a set-up cannot stand or run, the field that stands in its way, and what would help."""

    reason: str
    field: str
    instead: str | None


def not_known(missing: Iterable[str]) -> PlanClearance:
    """Nothing is said where something was not stated."""
    return PlanClearance(
        forecast="not-stated",
        smallest_gap=None,
        stick_out_needed=None,
        room_left=None,
        findings=[],
        changes=[],
        not_stated=list(missing),
    )


@dataclass(frozen=True, slots=True)
class Remedy:
    """A size of a set-up that opens its gaps as it grows: what it is now, and the most to try.

    `stand` is the set-up with another value of it; `action` says what to do with the value found.
    """

    kind: ChangeKind
    now: float
    most: float
    stand: Callable[[float], Stand]
    action: Callable[[float], str]

    def change(self) -> ClearanceChange | None:
        """The smallest value that keeps the gap wanted; None where even the most does not."""

        def spare(more: float) -> float:
            stand = self.stand(self.now + more)
            return stand.least[1].gap - stand.margin

        more = smallest(spare, 0.0, self.most)
        if not more:
            return None
        value = self.now + more
        made = self.stand(value)
        return ClearanceChange(
            kind=self.kind,
            change_to=value,
            keeps_gap_wanted=made.keeps(made.least[1].gap),
            action=self.action(value),
        )


def answered(
    stand: Stand,
    room: PlanRoom,
    units: Units,
    field: str,
    remedies: Sequence[Remedy] = (),
    instead: str | None = None,
) -> PlanClearance | Fouled:
    """A set-up with its gaps as the plan has it, or why it fouls.

    `field` holds what stands in the way; `instead` is said where no remedy clears it.
    """
    over = stand.height
    left = None
    if room.room_under_wheel is not None and over is not None:
        left = room.room_under_wheel - over
    under = StandUnderWheel(stand, left, units)
    found = tuple(under.findings())
    changes: list[ClearanceChange] = []
    if not stand.keeps(stand.least[1].gap):
        changes = [made for remedy in remedies if (made := remedy.change()) is not None]
    stops = [each for each in found if each.severity == "stop"]
    if stops:
        best = next((change.action for change in changes if change.keeps_gap_wanted), instead)
        return Fouled(stops[0].message, field, best)
    needed = next((each.change_to for each in changes if each.kind == "stick-out"), None)
    return PlanClearance(
        forecast=under.forecast(found),
        smallest_gap=gap_of(*stand.least),
        stick_out_needed=needed,
        room_left=left,
        findings=[*(each.message for each in found), *([] if stand.guarded else [NO_GUARD])],
        changes=changes,
        not_stated=[],
    )
