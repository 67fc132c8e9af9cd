"""A cone that turns in its fixture along a sine plate, as `clearance.tilted-plate` has it."""

from collections.abc import Iterator
from dataclasses import dataclass

from halfangle_service.errors import Impossible
from halfangle_service.fields.clearance.findings import SetUpUnderWheel
from halfangle_service.fields.clearance.gaps import change_of, gap_of
from halfangle_service.fields.clearance.set_up import fixture_of, plate_of
from halfangle_service.topics.jobs.plan.parts.clearance.answer import (
    NO_GUARD,
    Fouled,
    PlanClearance,
    not_known,
)
from halfangle_service.topics.jobs.plan.parts.clearance.under import (
    EQUIPMENT,
    FIXTURE,
    Asked,
    WheelAbout,
)
from halfangle_service.topics.jobs.plan.shop.equipment import PlanSinePlate
from halfangle_service.trade.clearance.assembly import Assembly
from halfangle_service.trade.clearance.case import Case, helpful_changes, require_assembly
from halfangle_service.trade.wording import said_in


@dataclass(frozen=True, slots=True)
class AlongPlate:
    """A cone along a plate with its path in the request; `low_stack` lifts all of it."""

    asked: Asked
    wheel: WheelAbout
    path: str
    plate: PlanSinePlate
    low_stack: float

    def missing(self) -> Iterator[str]:
        """What was not stated, by its path in the request."""
        if self.plate.plate_body is None:
            yield f"{self.path}plate_body"
        if self.asked.fixture is None:
            yield FIXTURE
        yield from self.wheel.missing()
        yield from self.asked.missing()

    def case(self) -> Case | None:
        """The set-up as the maths knows it; None where something of it was not stated."""
        body, fixture, asked = self.plate.plate_body, self.asked.fixture, self.asked
        heads = self.wheel.heads()
        if body is None or fixture is None or heads is None or next(asked.missing(), None):
            return None
        under = plate_of(body, self.plate.center_distance)
        assembly = Assembly(asked.cone, fixture_of(fixture), under, self.low_stack)
        return Case(assembly, heads, asked.stroke, self.plate.tilt_direction, asked.margin)

    def place(self, field: str) -> str:
        """Where in this request a field stands that the maths names by its own path."""
        part, _, name = field.partition("/")
        if field == "plate/center_distance":
            return f"{self.path}{name}"
        within = {"plate": f"{self.path}plate_body/", "fixture": f"{EQUIPMENT}spin_fixture/"}
        return f"{within[part]}{name}" if part in within else f"feature/{field}"


def cone_along(
    asked: Asked, wheel: WheelAbout, plate: PlanSinePlate, path: str, low_stack: float
) -> PlanClearance | Fouled:
    """Clearance of the cone along a plate, or why it cannot be used."""
    standing = AlongPlate(asked, wheel, path, plate, low_stack)
    case, units = standing.case(), asked.wanted.units
    if case is None:
        return not_known(standing.missing())
    body, fixture = plate.plate_body, asked.fixture
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
    room = asked.room.room_under_wheel
    left = None if room is None else room - case.assembly.height_over_all
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
        return Fouled(stops[0].message, FIXTURE, best)
    return PlanClearance(
        forecast=under.forecast(found),
        smallest_gap=gap_of(*least),
        stick_out_needed=stick_out,
        room_left=left,
        findings=[
            *(each.message for each in found),
            *([] if wheel.guarded else [NO_GUARD]),
        ],
        changes=changes,
        not_stated=[],
    )
