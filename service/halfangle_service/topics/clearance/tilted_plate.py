"""A cone on a tilted plate under the wheel: what clears, what fouls, and what would mend it."""

import math
from collections.abc import Iterator
from typing import Literal

from pydantic import Field

from halfangle_service.cautions import MAGNETIC_HOLDING, WHEEL_SAFETY
from halfangle_service.fields import (
    Angle,
    Length,
    LengthOut,
    NonNegativeLength,
    ResultModel,
    Units,
    UnitsField,
    angle_from_radians,
)
from halfangle_service.fields.advisories import Advisory, caution, note, stop
from halfangle_service.fields.slopes import SlopeFields, slope_of, stated_slopes
from halfangle_service.operation import Outcome, Source, operation
from halfangle_service.topics.clearance.set_up import (
    ClearanceFixture,
    ClearancePlate,
    ClearanceWheel,
    fixture_of,
    heads_of,
    plate_of,
)
from halfangle_service.trade.clearance.assembly import (
    Assembly,
    Cone,
    Direction,
    Stroke,
)
from halfangle_service.trade.clearance.bodies import Gap
from halfangle_service.trade.clearance.case import (
    Case,
    Change,
    ChangeKind,
    WheelState,
    helpful_changes,
)
from halfangle_service.trade.clearance.drawing import setup_svg
from halfangle_service.trade.clearance.search import stick_out_to_pass_under
from halfangle_service.trade.cone import require_smaller
from halfangle_service.trade.uncertainty import Forecast
from halfangle_service.trade.wheel.flank import require_length
from halfangle_service.trade.wording import length, option


class TiltedPlateRequest(SlopeFields):
    """A cone on a tilted plate, so that its upper generator lies level under the wheel.

    The plate is tilted by the cone's half angle.
    """

    units: UnitsField
    large_diameter: Length = Field(
        description="Larger diameter to grind, in `units`.", examples=[0.75]
    )
    small_diameter: NonNegativeLength = Field(
        description="Smaller diameter to grind, in `units`; 0 for a sharp point.", examples=[0.05]
    )
    tilt_direction: Direction = Field(
        description="Whether the plate tilts along the table's travel (the wheel is seen as a "
        "circle) or across it (the wheel is seen on edge).",
        examples=["along-travel"],
    )
    plate: ClearancePlate = Field(description="The sine plate.")
    fixture: ClearanceFixture = Field(description="The fixture.")
    wheel: ClearanceWheel = Field(description="The wheel's head.")
    past_large_end: NonNegativeLength = Field(
        description="How far the wheel goes past the large end of the ground line, in `units`.",
        examples=[0.1],
    )
    past_small_end: NonNegativeLength = Field(
        description="How far it goes past the small end.", examples=[0.25]
    )
    gap_wanted: NonNegativeLength = Field(
        description="Least gap wanted everywhere, in `units`.", examples=[0.1]
    )
    room_under_wheel: Length | None = Field(
        None,
        description="Greatest height from the table to the wheel's lowest line with the head "
        "raised, in `units`. Absent: the height is told, not judged.",
        examples=[12.0],
    )
    loading_height: NonNegativeLength = Field(
        0.0, description="Room wanted above the work to load it, in `units`."
    )


class ClearancePoint(ResultModel):
    """A point in the plane of the tilt."""

    x: LengthOut = Field(description="Level, up the slope, from the large end of the ground line.")
    z: LengthOut = Field(description="Upward from the wheel's lowest line.")


class ClearanceGap(ResultModel):
    """A gap between a part of the wheel's head and a body of the set-up."""

    wheel_state: WheelState = Field(description="With which wheel.")
    part: Literal["wheel", "flange", "guard"] = Field(description="Part of the head.")
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
    clears_everything: bool = Field(
        description="True where this change alone gives the gap wanted everywhere."
    )
    message: str = Field(description="What to do, in plain words.")


class TiltedPlateResult(ResultModel):
    """Whether everything clears, where it is closest, and what would clear it."""

    forecast: Forecast = Field(
        description="Whether this set-up holds: every gap at least the one wanted, the stick-out "
        "and the room under the wheel within their limits where sent. `may-not-hold`: nothing "
        "fouls, but a gap is less than the one wanted, or the guard was left out. `does-not-hold`: "
        "something fouls, or `why_not` says what else rules it out."
    )
    plate_angle: Angle = Field(description="Tilt of the plate: the half angle of the cone.")
    slant_length: LengthOut = Field(description="Length of the level line to grind.")
    least_gap: ClearanceGap = Field(description="The smallest gap of all.")
    gaps: list[ClearanceGap] = Field(description="Every gap, smallest first.")
    stick_out_needed: LengthOut | None = Field(
        description="Smallest stick-out with which fixture and turning parts keep the gap wanted; "
        "null where none does, since the shank itself is in the way."
    )
    stick_out_to_pass_under: LengthOut = Field(
        description="Stick-out with which the nose lies wholly under the ground line, so that the "
        "wheel may run on over it."
    )
    why_not: str | None = Field(
        description="What rules the set-up out beside its gaps: no stick-out clears, or none "
        "within the limit, or the room is too low; null where nothing does."
    )
    changes: list[ClearanceChange] = Field(description="Changes that would help.")
    stack_height: LengthOut = Field(description="Stack under the high roll.")
    height_to_wheel: LengthOut = Field(
        description="From the table to the wheel's lowest line while it grinds."
    )
    height_over_all: LengthOut = Field(
        description="From the table to the highest point of the set-up, and the room to load."
    )
    room_left: LengthOut | None = Field(
        description="Room under the raised wheel less `height_over_all`; null without the room."
    )
    svg: str = Field(description="The set-up drawn to scale in the plane of the tilt, as SVG.")


@operation(
    "clearance.tilted-plate",
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
        "tilt_direction": "along-travel",
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
        "gap_wanted": 0.1,
        "room_under_wheel": 12,
    },
    largest_request="eight turning parts, two wheels",
    heavy=True,
)
def tilted_plate(request: TiltedPlateRequest) -> Outcome[TiltedPlateResult]:
    """Clearance over a tilted plate.

    Least gaps of wheel, flange and guard from plate, fixture, work and stack through the whole
    stroke and a full turn of the work, new and worn; the stick-out that is needed; the height
    against the room under the wheel; the change that would clear it; drawn to scale.
    """
    case = _case(request)
    cone = case.assembly.cone
    gaps = case.gaps()
    closest = gaps[0][1]
    stick_out = case.stick_out()
    changes = () if case.keeps(closest.gap) else helpful_changes(case, closest.gap, stick_out)
    height = -case.assembly.table
    highest = max(z for body in case.assembly.bodies() for _, z in body.corners)
    over_all = height + max(highest, 0.0) + request.loading_height
    room = request.room_under_wheel
    room_left = None if room is None else room - over_all
    why_not = _why_not(request, stick_out, room_left)
    result = TiltedPlateResult(
        forecast=_forecast(case, closest.gap, why_not),
        plate_angle=angle_from_radians(cone.half_angle),
        slant_length=cone.slant,
        least_gap=_gap(*gaps[0]),
        gaps=[_gap(*entry) for entry in gaps],
        stick_out_needed=stick_out,
        stick_out_to_pass_under=stick_out_to_pass_under(
            cone, case.assembly.fixture.nose_radius, case.margin
        ),
        why_not=why_not,
        changes=[_change(case, change, request.units) for change in changes],
        stack_height=case.assembly.plate.center_distance * math.sin(cone.half_angle),
        height_to_wheel=height,
        height_over_all=over_all,
        room_left=room_left,
        svg=setup_svg(case, closest, request.units),
    )
    return Outcome(result, tuple(_advisories(request, case, result)))


def _case(request: TiltedPlateRequest) -> Case:
    require_smaller(request.small_diameter, request.large_diameter)
    half_angle = slope_of(request).half_angle_rad
    cone = Cone(half_angle, request.large_diameter / 2.0, request.small_diameter / 2.0)
    require_length(cone.slant, stated_slopes(request))
    return Case(
        Assembly(cone, fixture_of(request.fixture), plate_of(request.plate)),
        heads_of(request.wheel),
        Stroke(request.past_large_end, request.past_small_end),
        request.tilt_direction,
        request.gap_wanted,
    )


def _forecast(case: Case, least_gap: float, why_not: str | None) -> Forecast:
    if why_not is not None or _fouls(case, least_gap):
        return "does-not-hold"
    guarded = case.heads["new"].guard is not None
    return "holds" if guarded and case.keeps(least_gap) else "may-not-hold"


def _fouls(case: Case, least_gap: float) -> bool:
    return least_gap < 0.0 and not case.keeps(least_gap)


def _why_not(
    request: TiltedPlateRequest, stick_out: float | None, room_left: float | None
) -> str | None:
    """What rules the set-up out beside its gaps, or None."""
    units, limit = request.units, request.fixture.stick_out_limit
    if stick_out is None:
        return (
            "The work's shank is thicker than the cone and stands in the way of the wheel "
            "whatever the stick-out."
        )
    if limit is not None and stick_out > limit:
        return (
            f"The fixture clears only with a stick-out of {length(stick_out, units)}; the work may "
            f"stand out {length(limit, units)}."
        )
    if room_left is not None and room_left < 0.0:
        return f"The set-up is {length(-room_left, units)} too high for the room under the wheel."
    if limit is not None and request.fixture.stick_out > limit:
        return (
            f"The work stands out {length(request.fixture.stick_out, units)} and may stand out "
            f"{length(limit, units)}; {length(stick_out, units)} would do."
        )
    return None


def _gap(wheel_state: WheelState, gap: Gap) -> ClearanceGap:
    return ClearanceGap(
        wheel_state=wheel_state,
        part=gap.part,
        body=gap.body,
        gap=gap.gap,
        on_part=ClearancePoint(x=gap.on_part[0], z=gap.on_part[1]),
        on_body=ClearancePoint(x=gap.on_body[0], z=gap.on_body[1]),
    )


def _change(case: Case, change: Change, units: Units) -> ClearanceChange:
    least_gap = change.case.least_gap()
    size = length(least_gap if change.value is None else change.value, units)
    now = length(case.assembly.fixture.stick_out, units)
    messages: dict[ChangeKind, str] = {
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
        clears_everything=case.keeps(least_gap),
        message=messages[change.kind],
    )


def _advisories(
    request: TiltedPlateRequest, case: Case, result: TiltedPlateResult
) -> Iterator[Advisory]:
    units, closest = request.units, result.least_gap
    words = f"{closest.wheel_state} wheel: {closest.part} and {closest.body}"
    if _fouls(case, closest.gap):
        yield stop(
            "fouling",
            f"They foul by {length(-closest.gap, units)} ({words}). Do not start the table with "
            "this set-up.",
        )
    elif not case.keeps(closest.gap):
        yield caution(
            "gap-too-small",
            f"The least gap is {length(closest.gap, units)} ({words}); "
            f"{length(request.gap_wanted, units)} is wanted.",
        )
    if result.room_left is not None and result.room_left < 0.0:
        yield stop(
            "no-room-under-the-wheel",
            f"The set-up is {length(-result.room_left, units)} too high for the room under the "
            "wheel.",
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
    yield WHEEL_SAFETY
