"""A cone on a tilted plate under the wheel: what clears, what fouls, and what would mend it."""

from collections.abc import Iterator

from pydantic import Field

from halfangle_service.cautions import MAGNETIC_HOLDING, PROVE_BY_HAND, WHEEL_SAFETY
from halfangle_service.fields import (
    Angle,
    Length,
    LengthOut,
    NonNegativeLength,
    ResultModel,
    UnitsField,
    angle_from_radians,
)
from halfangle_service.fields.advisories import Advisory, caution, note
from halfangle_service.fields.clearance.findings import SetUpUnderWheel
from halfangle_service.fields.clearance.gaps import (
    ClearanceChange,
    ClearanceGap,
    change_of,
    gap_of,
)
from halfangle_service.fields.clearance.set_up import (
    ClearanceFixture,
    ClearancePlate,
    ClearanceWheel,
    fixture_of,
    heads_of,
    plate_of,
)
from halfangle_service.fields.slopes import ConeFields, cone_slope
from halfangle_service.operation import Outcome, Source, operation
from halfangle_service.trade.clearance.assembly import Assembly, Direction, Stroke
from halfangle_service.trade.clearance.case import (
    Case,
    helpful_changes,
    require_assembly,
)
from halfangle_service.trade.clearance.search import stick_out_to_pass_under
from halfangle_service.trade.clearance.turned import Cone
from halfangle_service.trade.set_up_drawing.under_wheel import UnderWheel, under_wheel_svg
from halfangle_service.trade.sine.geometry import height_for_angle
from halfangle_service.trade.uncertainty import Forecast
from halfangle_service.trade.unit_slips import require_center_distance, require_wheel_diameter


class TiltedPlateRequest(ConeFields):
    """A cone on a tilted plate, so that its upper generator lies level under the wheel.

    The plate is tilted by the cone's half angle.
    """

    units: UnitsField
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


class TiltedPlateResult(ResultModel):
    """Whether everything clears, where it is closest, and what would clear it."""

    forecast: Forecast = Field(
        description="Whether this set-up holds: every gap at least the one wanted, the stick-out "
        "and the room under the wheel within their limits where sent. `may-not-hold`: nothing "
        "fouls, but a gap is less than the one wanted, or the guard was left out. `does-not-hold`: "
        "an advisory `stop` says why."
    )
    plate_angle: Angle = Field(description="Tilt of the plate: the half angle of the cone.")
    slant_length: LengthOut = Field(description="Length of the level line to grind.")
    smallest_gap: ClearanceGap = Field(description="The smallest gap of all.")
    gaps: list[ClearanceGap] = Field(description="Every gap, smallest first.")
    stick_out_needed: LengthOut | None = Field(
        description="Smallest stick-out with which fixture and turning parts keep the gap wanted; "
        "null where none does, since the shank itself is in the way."
    )
    stick_out_to_pass_under: LengthOut = Field(
        description="Stick-out with which the nose lies wholly under the ground line, so that the "
        "wheel may run on over it."
    )
    ruled_out_by: list[str] = Field(
        description="Why the set-up does not hold: something fouls, the room is too low, or the "
        "work stands out too far; empty where nothing stops it."
    )
    changes: list[ClearanceChange] = Field(description="Changes that would help.")
    high_stack: LengthOut = Field(description="Stack under the high roll.")
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
    cone, limit = case.assembly.cone, request.fixture.limit_stick_out
    gaps = case.gaps()
    closest = gaps[0][1]
    stick_out = case.stick_out()
    within = stick_out if stick_out is None or limit is None or stick_out <= limit else None
    changes = () if case.keeps(closest.gap) else helpful_changes(case, closest.gap, within)
    over_all = case.assembly.height_over_all + request.loading_height
    room = request.room_under_wheel
    room_left = None if room is None else room - over_all
    set_up = SetUpUnderWheel(case, gaps[0], stick_out, limit, room_left, request.units)
    found = tuple(set_up.findings())
    stops = [advisory for advisory in found if advisory.severity == "stop"]
    result = TiltedPlateResult(
        forecast=set_up.forecast(found),
        plate_angle=angle_from_radians(cone.half_angle),
        slant_length=cone.slant,
        smallest_gap=gap_of(*gaps[0]),
        gaps=[gap_of(*entry) for entry in gaps],
        stick_out_needed=stick_out,
        stick_out_to_pass_under=stick_out_to_pass_under(
            cone, case.assembly.fixture.nose_radius, case.margin
        ),
        ruled_out_by=[reason.message for reason in stops],
        changes=[change_of(case, change, request.units) for change in changes],
        high_stack=height_for_angle(case.assembly.plate.center_distance, cone.half_angle),
        height_to_wheel=-case.assembly.table,
        height_over_all=over_all,
        room_left=room_left,
        svg=under_wheel_svg(UnderWheel(case, closest), request.units),
    )
    return Outcome(result, (*found, *_advisories(request)))


def _case(request: TiltedPlateRequest) -> Case:
    half_angle = cone_slope(request).half_angle_rad
    cone = Cone(half_angle, request.large_diameter / 2.0, request.small_diameter / 2.0)
    plate, wheel = request.plate, request.wheel
    fixture = fixture_of(request.fixture)
    require_center_distance(plate.center_distance, request.units, "plate/center_distance")
    assembly = Assembly(cone, fixture, plate_of(plate, plate.center_distance))
    require_assembly(assembly, request.plate.low_roll_from_end is not None)
    require_wheel_diameter(wheel.diameter, request.units, "wheel/diameter")
    return Case(
        assembly,
        heads_of(wheel, wheel.diameter, wheel.width),
        Stroke(request.past_large_end, request.past_small_end),
        request.tilt_direction,
        request.gap_wanted,
    )


def _advisories(request: TiltedPlateRequest) -> Iterator[Advisory]:
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
    yield PROVE_BY_HAND
    yield MAGNETIC_HOLDING
    yield WHEEL_SAFETY
