"""What the set-ups of all ways share: what is asked, the wheel's head, the stroke, the room."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from halfangle_service.fields.clearance.findings import stands_out_too_far
from halfangle_service.fields.clearance.set_up import ClearanceFixture, fixture_of, heads_of
from halfangle_service.topics.jobs.plan.features import Wanted
from halfangle_service.topics.jobs.plan.parts.clearance.answer import Fouled, PlanRoom
from halfangle_service.topics.jobs.plan.parts.feed import PlanFeeding
from halfangle_service.topics.jobs.plan.shop.wheel import PlanWheelHead
from halfangle_service.trade.clearance.assembly import Head, Stroke
from halfangle_service.trade.clearance.bodies import Body
from halfangle_service.trade.clearance.stand import WheelState, turned_into
from halfangle_service.trade.clearance.turned import Cone, Fixture
from halfangle_service.trade.wording import figure

EQUIPMENT = "equipment/"
FIXTURE = f"{EQUIPMENT}spin_fixture"
WHEEL = f"{EQUIPMENT}wheel"


@dataclass(frozen=True, slots=True)
class WheelAbout:
    """A wheel by its size and what is about it, each None where not stated, and its path."""

    diameter: float | None
    width: float | None
    head: PlanWheelHead | None
    path: str
    #: What the request calls its diameter and its width.
    diameter_field: str = "wheel_diameter"
    width_field: str = "wheel_width"
    #: True where there is none of it.
    whole: bool = False

    def missing(self) -> Iterator[str]:
        """What was not stated of it."""
        if self.whole:
            yield self.path
            return
        stated = {self.diameter_field: self.diameter, self.width_field: self.width}
        for name, value in {**stated, "head": self.head}.items():
            if value is None:
                yield f"{self.path}/{name}"

    def heads(self) -> dict[WheelState, Head] | None:
        """The head new and worn; None where something of it lacks. It was read before."""
        if self.head is None or self.diameter is None or self.width is None:
            return None
        return heads_of(self.head, self.diameter, self.width)

    @property
    def guarded(self) -> bool:
        """True where the guard was given."""
        return self.head is not None and self.head.guard is not None


@dataclass(frozen=True, slots=True)
class Asked:
    """What a job asks of every set-up."""

    wanted: Wanted
    feeding: PlanFeeding
    room: PlanRoom
    fixture: ClearanceFixture | None

    def missing(self) -> Iterator[str]:
        """What was not stated of stroke and room, by its path in the request."""
        for name in ("past_large_end", "past_small_end"):
            if getattr(self.feeding, name) is None:
                yield f"feeding/{name}"
        if self.room.gap_wanted is None:
            yield "room/gap_wanted"

    @property
    def stroke(self) -> Stroke:
        """The stroke; nothing counts for what was not stated, which is asked first."""
        return Stroke(self.feeding.past_large_end or 0.0, self.feeding.past_small_end or 0.0)

    @property
    def margin(self) -> float:
        """The gap wanted."""
        return self.room.gap_wanted or 0.0

    @property
    def cone(self) -> Cone:
        """The cone, or the bore."""
        wanted = self.wanted
        return Cone(wanted.angle_rad, wanted.large_diameter / 2.0, wanted.small_diameter / 2.0)

    def turning(self) -> Fixture | None:
        """The fixture as the maths knows it; None where it was not stated. It was read before."""
        return None if self.fixture is None else fixture_of(self.fixture)

    def past_its_limit(self) -> Fouled | None:
        """Why the work may not stand out so far; None where it may."""
        fixture = self.fixture
        if fixture is None or fixture.limit_stick_out is None:
            return None
        if fixture.stick_out <= fixture.limit_stick_out:
            return None
        units = self.wanted.units
        said = stands_out_too_far(fixture.stick_out, fixture.limit_stick_out, units)
        least = figure(fixture.limit_stick_out, units)
        return Fouled(said, f"{FIXTURE}/stick_out", f"A stick-out of at most {least}.")


def turns_into(bodies: Sequence[Body], size: float, field: str) -> Fouled | None:
    """Why the work does not turn a full turn among these bodies; None where it does."""
    names = turned_into(bodies, size)
    if not names:
        return None
    return Fouled(
        f"In a turn of the work its {names[0]} would meet what it stands on. Do not turn the work "
        "with this set-up.",
        field,
        "Raise the work's axis, or take the part off.",
    )
