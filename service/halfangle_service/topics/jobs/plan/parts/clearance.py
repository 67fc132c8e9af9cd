"""Clearance of a way through the whole stroke and a full turn, as `clearance.tilted-plate` has it.

Worked out for a cone that turns in a fixture along a sine plate. What was not stated is named, and
then nothing is said to clear.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from pydantic import Field

from halfangle_service.errors import Impossible, Refusal
from halfangle_service.fields import (
    Length,
    LengthOut,
    NonNegativeLength,
    RequestModel,
    ResultModel,
)
from halfangle_service.fields.clearance.findings import SetUpUnderWheel
from halfangle_service.fields.clearance.gaps import (
    ClearanceChange,
    ClearanceGap,
    change_of,
    gap_of,
)
from halfangle_service.fields.clearance.set_up import (
    ClearanceFixture,
    fixture_of,
    heads_of,
    plate_of,
)
from halfangle_service.fields.estimate import NotStated
from halfangle_service.topics.jobs.plan.features import Wanted
from halfangle_service.topics.jobs.plan.parts.feed import PlanFeeding
from halfangle_service.topics.jobs.plan.shop.equipment import PlanSinePlate
from halfangle_service.topics.jobs.plan.shop.wheel import PlanWheel
from halfangle_service.trade.clearance.assembly import Assembly, Stroke
from halfangle_service.trade.clearance.case import Case, helpful_changes, require_assembly
from halfangle_service.trade.clearance.turned import Cone
from halfangle_service.trade.uncertainty import Forecast
from halfangle_service.trade.wording import said_in

_EQUIPMENT = "equipment/"


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
        description="Room under the raised wheel less the set-up's height; null without the room."
    )
    findings: list[str] = Field(description="What is wrong, in plain words; empty where nothing.")
    changes: list[ClearanceChange] = Field(description="Changes that would open the gaps.")
    not_stated: NotStated


@dataclass(frozen=True, slots=True)
class Standing:
    """What stands under the wheel: a plate with its path in the request, fixture and wheel."""

    wanted: Wanted
    path: str
    plate: PlanSinePlate
    fixture: ClearanceFixture | None
    wheel: PlanWheel | None
    feeding: PlanFeeding
    room: PlanRoom

    def missing(self) -> Iterator[str]:
        """What was not stated, by its path in the request."""
        if self.plate.plate_body is None:
            yield f"{self.path}plate_body"
        if self.fixture is None:
            yield f"{_EQUIPMENT}spin_fixture"
        if self.wheel is None:
            yield f"{_EQUIPMENT}wheel"
        else:
            if self.wheel.width is None:
                yield f"{_EQUIPMENT}wheel/width"
            if self.wheel.head is None:
                yield f"{_EQUIPMENT}wheel/head"
        for name in ("past_large_end", "past_small_end"):
            if getattr(self.feeding, name) is None:
                yield f"feeding/{name}"
        if self.room.gap_wanted is None:
            yield "room/gap_wanted"

    def case(self) -> Case | None:
        """The set-up as the maths knows it; None where something of it was not stated.

        Raises Impossible where bodies cannot stand so at this tilt, and where they are none.
        """
        body, fixture, wheel, feeding = (
            self.plate.plate_body,
            self.fixture,
            self.wheel,
            self.feeding,
        )
        gap, large, small = self.room.gap_wanted, feeding.past_large_end, feeding.past_small_end
        if body is None or fixture is None or wheel is None or wheel.head is None:
            return None
        if wheel.width is None or gap is None or large is None or small is None:
            return None
        wanted = self.wanted
        cone = Cone(wanted.angle_rad, wanted.large_diameter / 2.0, wanted.small_diameter / 2.0)
        try:
            assembly = Assembly(
                cone, fixture_of(fixture), plate_of(body, self.plate.center_distance)
            )
            heads = heads_of(wheel.head, wheel.diameter, wheel.width)
        except Refusal as refusal:
            raise refusal.renamed(self.place) from None
        return Case(assembly, heads, Stroke(large, small), self.plate.tilt_direction, gap)

    def place(self, field: str) -> str:
        """Where in this request a field stands that the maths names by its own path."""
        part, _, name = field.partition("/")
        if field in {"plate/center_distance", "wheel/diameter"}:
            return f"{self.path if part == 'plate' else f'{_EQUIPMENT}wheel/'}{name}"
        within = {"plate": f"{self.path}plate_body/", "wheel": f"{_EQUIPMENT}wheel/head/"}
        within["fixture"] = f"{_EQUIPMENT}spin_fixture/"
        return f"{within[part]}{name}" if part in within else f"feature/{field}"


@dataclass(frozen=True, slots=True)
class Fouled:
    """Why a set-up cannot stand or run, the field that stands in its way, and what would help."""

    reason: str
    field: str
    instead: str | None


def planned_clearance(standing: Standing, low_stack: float = 0.0) -> PlanClearance | Fouled:
    """Clearance of a set-up, or why it cannot be used; `low_stack` lifts all of it."""
    case = standing.case()
    if case is None:
        return PlanClearance(
            forecast="not-stated",
            smallest_gap=None,
            stick_out_needed=None,
            room_left=None,
            findings=[],
            changes=[],
            not_stated=list(standing.missing()),
        )
    body, fixture, units = standing.plate.plate_body, standing.fixture, standing.wanted.units
    try:
        require_assembly(case.assembly, body is not None and body.low_roll_from_end is not None)
    except Impossible as refusal:
        field, wanted = next(iter(refusal.renamed(standing.place).fields.items()))
        detail, wanted = said_in(refusal.detail, units), said_in(wanted, units)
        return Fouled(detail, field, f"`{field}` {wanted}.")
    least = case.gaps()[0]
    kept = case.keeps(least[1].gap)
    stick_out = None if kept else case.stick_out()
    limit = None if fixture is None else fixture.limit_stick_out
    room = standing.room.room_under_wheel
    left = None if room is None else room - case.assembly.height_over_all - low_stack
    under = SetUpUnderWheel(case, least, stick_out, limit, left, units)
    found = tuple(under.findings())
    within = stick_out if stick_out is None or limit is None or stick_out <= limit else None
    changes = []
    if not kept:
        changes = [
            change_of(case, change, units) for change in helpful_changes(case, least[1].gap, within)
        ]
    stops = [each for each in found if each.severity == "stop"]
    if stops:
        best = next((change.action for change in changes if change.keeps_gap_wanted), None)
        return Fouled(stops[0].message, f"{_EQUIPMENT}spin_fixture", best)
    return PlanClearance(
        forecast=under.forecast(found),
        smallest_gap=gap_of(*least),
        stick_out_needed=stick_out,
        room_left=left,
        findings=[*(each.message for each in found), *_left_out(standing)],
        changes=changes,
        not_stated=[],
    )


def _left_out(standing: Standing) -> Iterator[str]:
    """What of the wheel's head was not looked at."""
    wheel = standing.wheel
    if wheel is not None and wheel.head is not None and wheel.head.guard is None:
        yield "No guard was given, so nothing is said of it: a wheel is not run without its guard."
