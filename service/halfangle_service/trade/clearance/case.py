"""One set-up under the wheel, new and worn: its gaps, and what would open them; one unit.

What cannot belong together (a shank that reaches the plate, rolls that lie off it, a wheel smaller
than its flanges) is refused here, by the request's own paths.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Literal, get_args

from halfangle_service.errors import Disagreement, Impossible
from halfangle_service.trade.clearance.assembly import ROUNDING, Assembly, Direction, Head, Stroke
from halfangle_service.trade.clearance.bodies import Body, BodyKind, Gap
from halfangle_service.trade.clearance.plate import Plate
from halfangle_service.trade.clearance.search import (
    PLATE_BODIES,
    all_gaps,
    largest_wheel,
    needed_riser,
    needed_stick_out,
)
from halfangle_service.trade.clearance.stand import WheelState
from halfangle_service.trade.clearance.turned import Fixture
from halfangle_service.trade.wording import of_any_unit, option

ChangeKind = Literal["stick-out", "riser", "wheel-diameter", "tilt-direction"]

#: What says how far a body reaches down.
_FIELD_OF_BODY: dict[str, BodyKind] = {
    "large_diameter": "cone",
    "fixture/nose_diameter": "nose",
    "fixture/body_length": "fixture-body",
}


@dataclass(frozen=True, slots=True)
class Case:
    """One set-up under the wheel new and, where it is given, worn. `margin`: the gap wanted."""

    assembly: Assembly
    heads: dict[WheelState, Head]
    stroke: Stroke
    direction: Direction
    margin: float

    def gaps(self) -> list[tuple[WheelState, Gap]]:
        """Every gap with the wheel that it belongs to, smallest first."""
        found = [
            (state, gap)
            for state, head in self.heads.items()
            for gap in all_gaps(self.assembly, head, self.stroke, self.direction)
        ]
        return sorted(found, key=lambda entry: entry[1].gap)

    def smallest_gap(self) -> float:
        """The smallest of all gaps."""
        return self.gaps()[0][1].gap

    def keeps(self, gap: float) -> bool:
        """True where a gap is at least the one wanted."""
        return gap >= self.margin - ROUNDING * self.assembly.plate.length

    def fouling_parts(self) -> list[Body]:
        """Turning parts that meet plate, stack or base in a turn of the work."""
        parts: frozenset[BodyKind] = frozenset({"turning-part"})
        return [
            *self.assembly.standing_in(parts, PLATE_BODIES),
            *self.assembly.below_table(parts),
        ]

    def stick_out(self) -> float | None:
        """Smallest stick-out with which the fixture clears either wheel; None where none does."""
        return _worst(
            [
                needed_stick_out(self.assembly, head, self.stroke, self.direction, self.margin)
                for head in self.heads.values()
            ]
        )

    def riser(self) -> float | None:
        """Smallest riser with which the plate clears either wheel; None where none does."""
        return _worst(
            [
                needed_riser(self.assembly, head, self.stroke, self.direction, self.margin)
                for head in self.heads.values()
            ]
        )

    def with_fixture(self, fixture: Fixture) -> "Case":
        """The same case with another fixture."""
        return replace(self, assembly=replace(self.assembly, fixture=fixture))

    def turned(self) -> "Case":
        """The same case, its plate tilted the other way to the table's travel."""
        other: Direction = "across-travel" if self.direction == "along-travel" else "along-travel"
        return replace(self, direction=other)


@dataclass(frozen=True, slots=True)
class Change:
    """A change by the least that will do, and the case with it made."""

    kind: ChangeKind
    value: float | None
    case: Case


def helpful_changes(case: Case, smallest_gap: float, stick_out: float | None) -> Iterator[Change]:
    """Changes that open the gaps; `stick_out` is the smallest that clears, if any does."""
    fixture = case.assembly.fixture
    if stick_out is not None and stick_out > fixture.stick_out:
        moved = case.with_fixture(replace(fixture, stick_out=stick_out))
        yield Change("stick-out", stick_out, moved)
    riser = case.riser()
    if riser:
        raised = replace(
            fixture,
            axis_height=fixture.axis_height + riser,
            body_height=fixture.body_height + riser,
        )
        yield Change("riser", riser, case.with_fixture(raised))
    new = case.heads["new"]
    diameter = largest_wheel(case.assembly, new, case.stroke, case.direction, case.margin)
    if diameter is not None and diameter < 2.0 * new.radius:
        smaller = replace(case, heads={"new": replace(new, radius=diameter / 2.0)})
        yield Change("wheel-diameter", diameter, smaller)
    turned = case.turned()
    if turned.smallest_gap() > smallest_gap:
        yield Change("tilt-direction", None, turned)


def _worst(values: Sequence[float | None]) -> float | None:
    """The largest, or None where any is None."""
    known = [value for value in values if value is not None]
    return max(known) if len(known) == len(values) else None


def require_fixture(fixture: Fixture) -> None:
    """Refuse a shank that reaches the plate, and names that leave open which body is meant."""
    if fixture.shank_radius >= fixture.axis_height:
        raise Impossible(
            f"A shank of {of_any_unit(2.0 * fixture.shank_radius)} reaches the plate, which is "
            f"{of_any_unit(fixture.axis_height)} under the axis.",
            fields={"fixture/shank_diameter": "should be less than twice axis_height"},
        )
    taken = {*(option(kind) for kind in get_args(BodyKind)), "low stack"}
    for place, part in enumerate(fixture.turning):
        name = option(part.name.strip().casefold())
        if name in taken:
            raise Disagreement(
                f"Two bodies would be called {part.name!r}, so that no gap would say which it is.",
                fields={
                    f"fixture/turning_parts/{place}/name": "should be a name that no other body "
                    "of the set-up has"
                },
            )
        taken.add(name)


def require_assembly(assembly: Assembly, rolls_stated: bool) -> None:
    """Refuse bodies that would stand in one another once the plate is tilted.

    `rolls_stated`: the request said where the rolls lie under the plate.
    """
    depth = assembly.plate_into_base
    if depth:
        most = assembly.plate.roll_diameter / 2.0 / math.sin(assembly.cone.half_angle)
        assumed = "" if rolls_stated else " The rolls were taken to lie in the middle of it."
        raise Impossible(
            f"Tilted so far, the plate's low end would go {of_any_unit(depth)} into its base: it "
            f"reaches {of_any_unit(assembly.plate.low_roll_from_end)} past the low roll.{assumed}",
            fields={
                "plate/low_roll_from_end": f"should be {'' if rolls_stated else 'sent, and '}no "
                f"more than {of_any_unit(most)} at this tilt"
            },
        )
    base: frozenset[BodyKind] = frozenset({"base"})
    for field, kind in _FIELD_OF_BODY.items():
        body = frozenset({kind})
        under = base if kind == "fixture-body" else PLATE_BODIES
        if assembly.standing_in(body, under) or assembly.below_table(body):
            raise Impossible(
                f"The {option(kind)} would stand in the plate or in what the plate stands on.",
                fields={field: "should leave room for the plate and its base"},
            )


def require_plate(plate: Plate) -> None:
    """Refuse figures that cannot belong to one plate."""
    if plate.center_distance > plate.length:
        raise Impossible(
            f"Rolls {of_any_unit(plate.center_distance)} apart do not lie under a plate "
            f"{of_any_unit(plate.length)} long.",
            fields={"plate/center_distance": "should be no more than the plate's length"},
        )
    if plate.closed_height < plate.thickness + plate.roll_diameter / 2.0:
        raise Impossible(
            f"A plate closed to {of_any_unit(plate.closed_height)} has no room for its rolls, "
            "whose "
            f"undersides lie {of_any_unit(plate.thickness + plate.roll_diameter / 2.0)} under its "
            "top.",
            fields={"plate/closed_height": "should be at least thickness + half a roll"},
        )
    spare = plate.length - plate.center_distance
    if plate.low_roll_from_end > spare:
        raise Impossible(
            f"With the low roll {of_any_unit(plate.low_roll_from_end)} from the end the high roll "
            "lies "
            "off the plate.",
            fields={"plate/low_roll_from_end": f"should be no more than {of_any_unit(spare)}"},
        )


def require_head(head: Head, field: str, new_radius: float) -> None:
    """Refuse a wheel no larger than its flanges, a grown one, and a guard that hangs below it.

    `field` of the request's wheel holds this head's diameter; `new_radius` is that of the wheel
    before it wore.
    """
    diameter = 2.0 * head.radius
    if head.radius > new_radius:
        raise Impossible(
            f"A wheel of {of_any_unit(2.0 * new_radius)} does not wear to {of_any_unit(diameter)}.",
            fields={f"wheel/{field}": "should be no more than diameter"},
        )
    if head.radius <= head.flange_radius:
        raise Impossible(
            f"A wheel of {of_any_unit(diameter)} does not reach past flanges of "
            f"{of_any_unit(2.0 * head.flange_radius)}.",
            fields={f"wheel/{field}": "should be more than flange_diameter"},
        )
    if head.flange_width < head.width:
        raise Impossible(
            f"Flanges {of_any_unit(head.flange_width)} over all do not hold a wheel "
            f"{of_any_unit(head.width)} wide.",
            fields={"wheel/flange_width": "should be at least the wheel's width"},
        )
    if head.guard and head.guard[2] >= head.radius:
        raise Impossible(
            "The guard's lower edge hangs below the wheel, which then reaches nothing.",
            fields={
                "wheel/guard/lower_edge_below_spindle": f"should be less than "
                f"{of_any_unit(head.radius)}"
            },
        )
