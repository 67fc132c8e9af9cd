"""Gaps and changes of a set-up, as the answer gives them; `tilted_plate` asks for them."""

from typing import Literal

from pydantic import Field

from halfangle_service.fields import LengthOut, ResultModel, Units
from halfangle_service.trade.clearance.bodies import Gap
from halfangle_service.trade.clearance.case import Case, Change, ChangeKind
from halfangle_service.trade.clearance.stand import WheelState
from halfangle_service.trade.wording import length, option


class ClearancePoint(ResultModel):
    """A point in the plane of the ground line, or in the one of two views that decides."""

    x: LengthOut = Field(description="Along the ground line, from its large or high end.")
    z: LengthOut = Field(description="From the ground line into the wheel.")


class ClearanceGap(ResultModel):
    """A gap between a part of the wheel's head and a body of the set-up."""

    wheel_state: WheelState = Field(description="With which wheel.")
    part: Literal["wheel", "flange", "guard", "quill", "spindle"] = Field(
        description="Part of the head."
    )
    body: str = Field(description="Body of the set-up.")
    gap: LengthOut = Field(
        description="Least distance over the whole stroke and a full turn of the work; negative "
        "where they foul, by the least way that would part them."
    )
    on_part: ClearancePoint = Field(description="Nearest point of the part.")
    on_body: ClearancePoint = Field(description="Nearest point of the body.")


class ClearanceChange(ResultModel):
    """A change that opens the gaps, by the least that will do."""

    kind: ChangeKind = Field(description="What to change.")
    change_to: LengthOut | None = Field(
        description="Its new value: stick-out, height of riser, or diameter; null for the "
        "direction."
    )
    keeps_gap_wanted: bool = Field(
        description="True where this change alone gives the gap wanted everywhere."
    )
    action: str = Field(description="What to do, in plain words.")


def gap_of(wheel_state: WheelState, gap: Gap) -> ClearanceGap:
    """A gap with the wheel that it belongs to."""
    return ClearanceGap(
        wheel_state=wheel_state,
        part=gap.part,
        body=gap.body,
        gap=gap.gap,
        on_part=ClearancePoint(x=gap.on_part[0], z=gap.on_part[1]),
        on_body=ClearancePoint(x=gap.on_body[0], z=gap.on_body[1]),
    )


def change_of(case: Case, change: Change, units: Units) -> ClearanceChange:
    """A change of a case, with what to do in words."""
    smallest_gap = change.case.smallest_gap()
    size = length(smallest_gap if change.value is None else change.value, units)
    now = length(case.assembly.fixture.stick_out, units)
    actions: dict[ChangeKind, str] = {
        "stick-out": f"Let the work stand out {size} instead of {now}, the fixture going back down "
        "the plate.",
        "riser": f"Put {size} under the fixture, or move it toward the plate's high end: the plate "
        "itself is too near.",
        "wheel-diameter": f"A wheel of no more than {size} clears the fixture; hold its speed "
        "against its own mark.",
        "tilt-direction": f"Turn the plate to tilt {option(change.case.direction)}: the least gap "
        f"becomes {size}.",
    }
    return ClearanceChange(
        kind=change.kind,
        change_to=change.value,
        keeps_gap_wanted=case.keeps(smallest_gap),
        action=actions[change.kind],
    )
