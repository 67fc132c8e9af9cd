"""Least gaps of a set-up, and the smallest change that would clear it; one unit of length.

Every change looked for (more stick-out, a riser, a smaller wheel) only ever opens the gaps that it
is meant for, so that the smallest that will do is where the least of them reaches the one wanted.
"""

import math
from collections.abc import Callable, Sequence
from dataclasses import replace

from halfangle_service.trade.clearance.assembly import Assembly, Direction, Head, Stroke, head_parts
from halfangle_service.trade.clearance.bodies import Body, BodyKind, Gap, gaps_between
from halfangle_service.trade.clearance.turned import Cone
from halfangle_service.trade.roots import crossing

#: Bodies that stand still on the plate; the others move back with the fixture.
PLATE_BODIES: frozenset[BodyKind] = frozenset({"plate", "stack", "base"})


def _any(_part: str, _body: Body) -> bool:
    return True


def all_gaps(
    assembly: Assembly,
    head: Head,
    stroke: Stroke,
    direction: Direction,
    wanted: Callable[[str, Body], bool] = _any,
) -> list[Gap]:
    """Gap of every part of the head from every body; the wheel's from what it grinds left out.

    `wanted` says, by the part's name and the body, which of them are looked at.
    """
    parts = head_parts(head, stroke, assembly.cone.slant, direction)
    return gaps_between(
        [
            (part, body)
            for body in assembly.bodies()
            for part in parts
            if not (body.ground and part.name == "wheel") and wanted(part.name, body)
        ]
    )


def smallest(spare: Callable[[float], float], low: float, high: float) -> float | None:
    """Smallest value from `low` to `high` that leaves 0 or more to spare, less before it.

    None where not even `high` does.
    """
    if spare(low) >= 0.0:
        return low
    if spare(high) < 0.0:
        return None
    # 0 will do.
    return crossing(lambda value: spare(value) or math.ulp(0.0), low, high)[1]


def _spare(gaps: Sequence[Gap], margin: float) -> float:
    return min(gap.gap for gap in gaps) - margin


def stick_out_to_pass_under(cone: Cone, radius: float, margin: float) -> float:
    """Stick-out with which a nose of this radius lies wholly `margin` under the ground line.

    (r_nose − r_large) / tan α + margin / sin α, or 0: then the wheel may run on over the nose.
    """
    rise = (radius - cone.large_radius) / math.tan(cone.half_angle)
    return max(0.0, rise + margin / math.sin(cone.half_angle))


def needed_stick_out(
    assembly: Assembly, head: Head, stroke: Stroke, direction: Direction, margin: float
) -> float | None:
    """Smallest stick-out with which fixture, turning parts and shank keep the margin.

    Bounded by where the highest of them lies wholly under the ground line. None where not even that
    does: the shank itself is in the way.
    """
    fixture = assembly.fixture
    tallest = max(
        fixture.nose_radius,
        fixture.body_height - fixture.axis_height,
        *(part.radius for part in fixture.turning),
        assembly.cone.large_radius,
    )
    # Turning parts may stand before the nose's face.
    ahead = max([0.0, *(-part.behind for part in fixture.turning)])
    upper = ahead + stick_out_to_pass_under(assembly.cone, tallest, margin) + margin

    def spare(stick_out: float) -> float:
        moved = replace(assembly, fixture=replace(fixture, stick_out=stick_out))
        return _spare(all_gaps(moved, head, stroke, direction, _of_fixture), margin)

    return smallest(spare, 0.0, upper * (1.0 + 1e-9) + 1e-9)


def _of_fixture(part: str, body: Body) -> bool:
    """True where more stick-out can open the gap.

    Not the plate's; nor flange and guard over the cone and its shank, which stay where they are.
    """
    if body.kind == "shank":
        return part == "wheel"
    return body.kind not in PLATE_BODIES and body.kind != "cone"


def _of_plate(_part: str, body: Body) -> bool:
    return body.kind in PLATE_BODIES


def _wheel_of_fixture(part: str, body: Body) -> bool:
    return part == "wheel" and _of_fixture(part, body)


def needed_riser(
    assembly: Assembly, head: Head, stroke: Stroke, direction: Direction, margin: float
) -> float | None:
    """Smallest riser under the fixture with which the plate keeps the margin."""

    def spare(riser: float) -> float:
        fixture = replace(
            assembly.fixture,
            axis_height=assembly.fixture.axis_height + riser,
            body_height=assembly.fixture.body_height + riser,
        )
        raised = replace(assembly, fixture=fixture)
        return _spare(all_gaps(raised, head, stroke, direction, _of_plate), margin)

    # The plate's highest corner, lifted off the ground line, goes down by cos α of the riser.
    corner = assembly.level((assembly.high_end, -assembly.fixture.axis_height))[1]
    upper = (max(corner, 0.0) + margin) / math.cos(assembly.cone.half_angle)
    return smallest(spare, 0.0, upper * (1.0 + 1e-9) + 1e-9)


def largest_wheel(
    assembly: Assembly, head: Head, stroke: Stroke, direction: Direction, margin: float
) -> float | None:
    """Largest wheel diameter up to the present one with which the wheel itself clears the fixture.

    None where not even a wheel of the flange's diameter does. The flange and the guard are not
    asked: they come down with the smaller wheel.
    """

    def spare(less: float) -> float:
        smaller = replace(head, radius=head.radius - less)
        return _spare(all_gaps(assembly, smaller, stroke, direction, _wheel_of_fixture), margin)

    less = smallest(spare, 0.0, head.radius - head.flange_radius)
    return None if less is None else 2.0 * (head.radius - less)
