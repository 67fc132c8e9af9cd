"""Clearance over a tilted plate: models to maths and back."""

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace

from halfangle_service.cautions import DEFERENCE, MAGNETIC_HOLDING
from halfangle_service.errors import Impossible
from halfangle_service.fields import angle_from_radians
from halfangle_service.fields.advisories import Advisory, caution, note, stop
from halfangle_service.fields.cones import half_angle_degrees
from halfangle_service.operation import Operation, Outcome, Source
from halfangle_service.topics.clearance.models import (
    ClearanceChange,
    ClearanceGap,
    ClearancePoint,
    TiltedPlateRequest,
    TiltedPlateResult,
)
from halfangle_service.topics.clearance.reading import fixture_of, heads_of, plate_of
from halfangle_service.trade.clearance.assembly import (
    Assembly,
    Cone,
    Direction,
    Fixture,
    Head,
    Stroke,
    head_parts,
)
from halfangle_service.trade.clearance.bodies import Gap
from halfangle_service.trade.clearance.drawing import setup_svg
from halfangle_service.trade.clearance.search import (
    all_gaps,
    largest_wheel,
    needed_riser,
    needed_stick_out,
    stick_out_to_pass_under,
)
from halfangle_service.trade.wheel.flank import require_length
from halfangle_service.trade.wording import plain


@dataclass(frozen=True, slots=True)
class _Case:
    """One set-up under the wheel new and, where it is given, worn."""

    assembly: Assembly
    heads: dict[str, Head]
    stroke: Stroke
    direction: Direction
    margin: float

    def gaps(self) -> list[tuple[str, Gap]]:
        """Every gap with the wheel that it belongs to, smallest first."""
        found = [
            (name, gap)
            for name, head in self.heads.items()
            for gap in all_gaps(self.assembly, head, self.stroke, self.direction)
        ]
        return sorted(found, key=lambda entry: entry[1].gap)

    def clears(self) -> bool:
        """True where every gap is at least the one wanted."""
        return self.gaps()[0][1].gap >= self.margin - _ROUNDING * self.assembly.plate.length

    def with_fixture(self, fixture: Fixture) -> "_Case":
        """The same case with another fixture."""
        return replace(self, assembly=replace(self.assembly, fixture=fixture))


#: A gap found by halving may miss the one wanted by rounding, relative to the plate's length.
_ROUNDING = 1e-9


def tilted_plate(request: TiltedPlateRequest) -> Outcome[TiltedPlateResult]:
    """Gaps between the wheel's head and everything on a tilted plate."""
    case = _case(request)
    gaps = case.gaps()
    stick_out = _worst(
        [
            needed_stick_out(case.assembly, h, case.stroke, case.direction, case.margin)
            for h in case.heads.values()
        ]
    )
    height = -case.assembly.table
    highest = max(z for body in case.assembly.bodies() for _, z in body.corners)
    over_all = height + max(highest, 0.0) + request.loading_height
    room = request.room_under_wheel
    room_left = None if room is None else room - over_all
    why_not = _why_not(request, stick_out, room_left)
    closest = gaps[0][1]
    result = TiltedPlateResult(
        verdict="fouls" if closest.gap < 0.0 else "clears" if case.clears() else "too close",
        tilt=angle_from_radians(case.assembly.cone.half_angle),
        ground_line=case.assembly.cone.slant,
        least_gap=_gap(*gaps[0]),
        gaps=[_gap(*entry) for entry in gaps],
        stick_out_needed=stick_out,
        stick_out_to_pass_under=stick_out_to_pass_under(
            case.assembly.cone, case.assembly.fixture.nose_radius, case.margin
        ),
        way_possible=why_not is None,
        why_not=why_not,
        changes=list(_changes(case, gaps, stick_out)),
        stack_height=case.assembly.plate.center_distance * math.sin(case.assembly.cone.half_angle),
        height_to_wheel=height,
        height_over_all=over_all,
        room_left=room_left,
        svg=_svg(request, case, closest),
    )
    return Outcome(result, tuple(_advisories(request, result)))


def _case(request: TiltedPlateRequest) -> _Case:
    if request.small_diameter >= request.large_diameter:
        raise Impossible(
            f"The smaller diameter {plain(request.small_diameter)} is not below the larger one, "
            f"{plain(request.large_diameter)}.",
            fields={"small_diameter": "should be less than large_diameter"},
        )
    half = math.radians(half_angle_degrees(request.included_angle, request.half_angle))
    cone = Cone(half, request.large_diameter / 2.0, request.small_diameter / 2.0)
    angles = ("included_angle", "half_angle")
    require_length(cone.slant, [name for name in angles if getattr(request, name) is not None])
    return _Case(
        Assembly(cone, fixture_of(request.fixture), plate_of(request.plate)),
        heads_of(request.wheel),
        Stroke(request.past_large_end, request.past_small_end),
        request.tilt_direction,
        request.least_gap,
    )


def _worst(values: list[float | None]) -> float | None:
    """The largest, or None where any is None."""
    known = [value for value in values if value is not None]
    return max(known) if len(known) == len(values) else None


def _gap(wheel: str, gap: Gap) -> ClearanceGap:
    return ClearanceGap(
        wheel="new" if wheel == "new" else "worn",
        part=gap.part,
        body=gap.body,
        gap=gap.gap,
        on_part=ClearancePoint(x=gap.on_part[0], z=gap.on_part[1]),
        on_body=ClearancePoint(x=gap.on_body[0], z=gap.on_body[1]),
    )


def _why_not(
    request: TiltedPlateRequest, stick_out: float | None, room_left: float | None
) -> str | None:
    """Why this way of grinding is impossible, or None."""
    limit = request.fixture.stick_out_limit
    if stick_out is None:
        return (
            "The work's shank is thicker than the cone and stands in the way of the wheel "
            "whatever the stick-out."
        )
    if limit is not None and stick_out > limit:
        return (
            f"The fixture clears only with a stick-out of {plain(stick_out)}; the work may stand "
            f"out {plain(limit)}."
        )
    if room_left is not None and room_left < 0.0:
        return f"The set-up is {plain(-room_left)} too high for the room under the wheel."
    return None


def _changes(
    case: _Case,
    gaps: list[tuple[str, Gap]],
    stick_out: float | None,
) -> Iterator[ClearanceChange]:
    """Changes that would give the gap wanted, where it is not there already."""
    if case.clears():
        return
    args = (case.stroke, case.direction, case.margin)
    fixture = case.assembly.fixture
    if stick_out is not None and stick_out > fixture.stick_out:
        yield ClearanceChange(
            kind="stick-out",
            value=stick_out,
            clears_everything=case.with_fixture(replace(fixture, stick_out=stick_out)).clears(),
            message=f"Let the work stand out {plain(stick_out)} instead of "
            f"{plain(fixture.stick_out)}, the fixture going back down the plate.",
        )
    riser = _worst([needed_riser(case.assembly, head, *args) for head in case.heads.values()])
    if riser:
        raised = replace(
            fixture,
            axis_height=fixture.axis_height + riser,
            body_height=fixture.body_height + riser,
        )
        yield ClearanceChange(
            kind="riser",
            value=riser,
            clears_everything=case.with_fixture(raised).clears(),
            message=f"Put {plain(riser)} under the fixture, or move it toward the plate's high "
            "end: the plate itself is too near.",
        )
    diameter = largest_wheel(case.assembly, case.heads["new"], *args)
    if diameter is not None and diameter < 2.0 * case.heads["new"].radius:
        smaller = {"new": replace(case.heads["new"], radius=diameter / 2.0)}
        yield ClearanceChange(
            kind="wheel diameter",
            value=diameter,
            clears_everything=replace(case, heads=smaller).clears(),
            message=f"A wheel of no more than {plain(diameter)} clears the fixture; hold its speed "
            "against its own mark.",
        )
    other: Direction = "across travel" if case.direction == "along travel" else "along travel"
    turned = replace(case, direction=other)
    if turned.gaps()[0][1].gap > gaps[0][1].gap:
        yield ClearanceChange(
            kind="tilt direction",
            value=None,
            clears_everything=turned.clears(),
            message=f"Turn the plate to tilt {other}: the least gap becomes "
            f"{plain(turned.gaps()[0][1].gap)}.",
        )


def _svg(request: TiltedPlateRequest, case: _Case, closest: Gap) -> str:
    slant = case.assembly.cone.slant
    parts = {
        name: head_parts(head, case.stroke, slant, case.direction)
        for name, head in case.heads.items()
    }
    words = {"in": "inches", "mm": "millimetres"}[request.units]
    degrees = math.degrees(case.assembly.cone.half_angle)
    lines = [
        f"Tilt {plain(degrees)}°, {case.direction}; lengths in {words}; to scale.",
        "Wheel, flange and guard at the ends of the stroke. Red: the least gap, new or worn.",
    ]
    return setup_svg(case.assembly, parts["new"], parts.get("worn", ()), closest, lines)


def _advisories(request: TiltedPlateRequest, result: TiltedPlateResult) -> Iterator[Advisory]:
    closest = result.least_gap
    words = f"{closest.wheel} wheel: {closest.part} and {closest.body}"
    if result.verdict == "fouls":
        yield stop(
            "fouling",
            f"They foul by {plain(-closest.gap, 4)} ({words}). Do not start the table with this "
            "set-up.",
        )
    elif result.verdict == "too close":
        yield caution(
            "gap-too-small",
            f"The least gap is {plain(closest.gap, 4)} ({words}); {plain(request.least_gap)} is "
            "wanted.",
        )
    if result.room_left is not None and result.room_left < 0.0:
        yield stop(
            "no-room-under-the-wheel",
            f"The set-up is {plain(-result.room_left, 4)} too high for the room under the wheel.",
        )
    if request.wheel.guard is None:
        yield caution(
            "guard-left-out",
            "No guard was given, so nothing is said of it. A wheel is not run without its guard: "
            "measure it and ask again.",
        )
    if request.wheel.worn_diameter is None:
        yield note(
            "wear-left-out",
            "Only the wheel as it is was looked at: as it wears, flange and guard come nearer.",
        )
    yield note(
        "prove-by-hand",
        "Prove the clearance by hand with the wheel standing: the whole stroke, a full turn of the "
        "work, stops and dogs set.",
    )
    yield MAGNETIC_HOLDING
    yield caution("clearance-safety", f"This sees only the figures sent. {DEFERENCE}")


OPERATION = Operation(
    topic="clearance",
    verb="tilted-plate",
    title="Clearance over a tilted plate",
    summary="Least gaps of wheel, flange and guard from plate, fixture, work and stack through the "
    "whole stroke and a full turn of the work, new and worn; the stick-out that is needed; the "
    "height against the room under the wheel; the change that would clear it; drawn to scale.",
    request=TiltedPlateRequest,
    result=TiltedPlateResult,
    calculate=tilted_plate,
    relations=(
        "along the travel: gap = distance of a body from the path of the wheel's center, less R",
        "across the travel: gap = distance of a body from the box that the wheel sweeps",
        "stick-out to pass under = (r_nose − r_large) / tan α + gap / sin α",
        "a step s above the ground line stops the wheel's center √(s (2R − s)) before it",
    ),
    sources=(
        Source(
            citation="Derived here: every body straddles the plane of the tilt through the work's "
            "axis, so that distances in that plane are those in space; exact planar distances "
            "from the GEOS library through shapely.",
            standing="derived",
        ),
    ),
    example={
        "units": "in",
        "included_angle": 60,
        "large_diameter": 0.75,
        "small_diameter": 0.05,
        "tilt_direction": "along travel",
        "plate": {
            "length": 6,
            "thickness": 0.75,
            "closed_height": 2.2,
            "center_distance": 5,
            "roll_diameter": 0.5,
        },
        "fixture": {
            "axis_height": 1.5,
            "body_length": 3,
            "body_height": 2.6,
            "nose_diameter": 1.25,
            "nose_length": 0.75,
            "stick_out": 0.75,
            "shank_diameter": 0.75,
            "front_to_high_end": 1,
        },
        "wheel": {
            "diameter": 7,
            "width": 0.5,
            "worn_diameter": 5.5,
            "flange_diameter": 3,
            "flange_width": 1.25,
            "guard": {"length": 8, "width": 2.5, "lower_edge_below_spindle": 1},
        },
        "past_large_end": 0.1,
        "past_small_end": 0.25,
        "least_gap": 0.1,
        "room_under_wheel": 12,
    },
    largest_request="eight turning parts, two wheels",
    heavy=True,
)

OPERATIONS = (OPERATION,)
