"""Request and result of the clearance over a tilted plate."""

from typing import Annotated, Literal

from pydantic import Field

from halfangle_service.fields import (
    Angle,
    AngleInput,
    Length,
    LengthOut,
    NonNegativeLength,
    RequestModel,
    ResultModel,
    SignedLength,
    Units,
)

TiltDirection = Literal["along travel", "across travel"]


class ClearanceTurningPart(RequestModel):
    """A part that turns with the work: a collet nut, a dog by the circle that it sweeps."""

    name: Annotated[str, Field(min_length=1, max_length=40)] = Field(
        description="What it is called in the answer.", examples=["dog"]
    )
    diameter: Length = Field(
        description="Largest diameter that it sweeps in a full turn, in `units`.", examples=[1.8]
    )
    length: Length = Field(description="Length along the axis, in `units`.", examples=[0.3])
    behind_face: SignedLength = Field(
        0.0,
        description="From the nose's face back to the part's front end, in `units`; negative where "
        "it stands before the face.",
    )


class ClearanceFixture(RequestModel):
    """The spindle fixture on the plate, and how the work stands out of it."""

    axis_height: Length = Field(
        description="Work axis over the plate's top, in `units`.", examples=[1.5]
    )
    body_length: Length = Field(
        description="Length of the body along the axis, in `units`.", examples=[3.0]
    )
    body_height: Length = Field(
        description="Top of the body over the plate, in `units`.", examples=[2.6]
    )
    nose_diameter: Length = Field(
        description="Diameter of the nose that carries the work, in `units`.", examples=[1.25]
    )
    nose_length: NonNegativeLength = Field(
        description="How far the nose stands before the body, in `units`.", examples=[0.75]
    )
    stick_out: NonNegativeLength = Field(
        description="From the nose's face to the large end of the cone, in `units`.",
        examples=[0.75],
    )
    shank_diameter: NonNegativeLength = Field(
        description="Largest diameter of the work between nose and cone, in `units`.",
        examples=[0.75],
    )
    front_to_high_end: SignedLength = Field(
        description="From the body's front face up the slope to the plate's high end, in `units`; "
        "negative where the body overhangs it.",
        examples=[1.0],
    )
    turning_parts: Annotated[list[ClearanceTurningPart], Field(max_length=8)] = Field(
        [], description="Further parts that turn with the work."
    )
    stick_out_limit: Length | None = Field(
        None,
        description="Most that the work may stand out, in `units`, for its length or its rigidity. "
        "Absent: no limit is known.",
    )


class ClearancePlate(RequestModel):
    """The sine plate. Its rolls are taken to be centered in its underside."""

    length: Length = Field(description="Length up the slope, in `units`.", examples=[6.0])
    thickness: Length = Field(
        description="From its top to the centers of its rolls, in `units`.", examples=[0.75]
    )
    closed_height: Length = Field(
        description="Its top over the table at zero tilt, in `units`.", examples=[2.2]
    )
    center_distance: Length = Field(
        description="Distance between the centers of the rolls, in `units`.", examples=[5.0]
    )
    roll_diameter: Length = Field(description="Diameter of the rolls, in `units`.", examples=[0.5])
    low_roll_from_end: NonNegativeLength | None = Field(
        None,
        description="From the plate's low end to the center of the low roll, in `units`. Absent: "
        "the rolls lie in the middle of the plate's length.",
    )


class ClearanceGuard(RequestModel):
    """The wheel's guard, or whatever of the head hangs lowest, as the box about it."""

    length: Length = Field(
        description="Over all, in the plane of the wheel, centered on the spindle, in `units`.",
        examples=[8.0],
    )
    width: Length = Field(
        description="Over all, along the spindle, centered on the wheel, in `units`.",
        examples=[2.5],
    )
    lower_edge_below_spindle: SignedLength = Field(
        description="From the spindle's center down to its lower edge, in `units`; negative where "
        "the edge is above.",
        examples=[1.0],
    )


class ClearanceWheel(RequestModel):
    """Wheel, flanges and guard."""

    diameter: Length = Field(description="Diameter of the wheel, in `units`.", examples=[7.0])
    width: Length = Field(description="Width of the wheel, in `units`.", examples=[0.5])
    worn_diameter: Length | None = Field(
        None, description="Diameter that it will wear to, in `units`.", examples=[5.5]
    )
    flange_diameter: Length = Field(
        description="Diameter of the flanges, in `units`.", examples=[3.0]
    )
    flange_width: Length = Field(
        description="Width over both flanges, in `units`; at least the wheel's.", examples=[1.25]
    )
    guard: ClearanceGuard | None = Field(
        None, description="The guard. Absent: it is left out, and the answer says so."
    )


class TiltedPlateRequest(RequestModel):
    """A cone on a tilted plate, so that its upper generator lies level under the wheel."""

    units: Units = Field(description="Unit of every length here and in the answer.")
    included_angle: Annotated[float, AngleInput(gt=0, lt=180)] | None = Field(
        None,
        description="Included angle of the cone, in degrees. Either this or `half_angle`, or both "
        "agreeing. The plate is tilted by the half angle.",
        examples=[60.0],
    )
    half_angle: Annotated[float, AngleInput(gt=0, lt=90)] | None = Field(
        None, description="Half angle of the cone and tilt of the plate, in degrees."
    )
    large_diameter: Length = Field(
        description="Larger diameter to grind, in `units`.", examples=[0.75]
    )
    small_diameter: NonNegativeLength = Field(
        description="Smaller diameter to grind, in `units`; 0 for a sharp point.", examples=[0.05]
    )
    tilt_direction: TiltDirection = Field(
        description="Whether the plate tilts along the table's travel (the wheel is seen as a "
        "circle) or across it (the wheel is seen on edge).",
        examples=["along travel"],
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
    least_gap: NonNegativeLength = Field(
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

    wheel: Literal["new", "worn"] = Field(description="With which wheel.")
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

    kind: Literal["stick-out", "riser", "wheel diameter", "tilt direction"] = Field(
        description="What to change."
    )
    value: LengthOut | None = Field(
        description="Its new value: stick-out, height of riser, or diameter; absent for the "
        "direction."
    )
    clears_everything: bool = Field(
        description="True where this change alone gives the gap wanted everywhere."
    )
    message: str = Field(description="What to do, in plain words.")


class TiltedPlateResult(ResultModel):
    """Whether everything clears, where it is closest, and what would clear it."""

    verdict: Literal["clears", "too close", "fouls"] = Field(
        description="`too close`: nothing fouls, but a gap is less than the one wanted."
    )
    tilt: Angle = Field(description="Tilt of the plate.")
    ground_line: LengthOut = Field(description="Length of the level line to grind.")
    least_gap: ClearanceGap = Field(description="The smallest gap of all.")
    gaps: list[ClearanceGap] = Field(description="Every gap, smallest first.")
    stick_out_needed: LengthOut | None = Field(
        description="Smallest stick-out with which fixture and turning parts keep the gap wanted; "
        "absent where none does, since the shank itself is in the way."
    )
    stick_out_to_pass_under: LengthOut = Field(
        description="Stick-out with which the nose lies wholly under the ground line, so that the "
        "wheel may run on over it."
    )
    way_possible: bool = Field(
        description="False where no stick-out within the limit clears, or the room is too low."
    )
    why_not: str | None = Field(description="Why the way is impossible; absent where it is not.")
    changes: list[ClearanceChange] = Field(description="Changes that would help.")
    stack_height: LengthOut = Field(description="Stack under the high roll.")
    height_to_wheel: LengthOut = Field(
        description="From the table to the wheel's lowest line while it grinds."
    )
    height_over_all: LengthOut = Field(
        description="From the table to the highest point of the set-up, and the room to load."
    )
    room_left: LengthOut | None = Field(
        description="Room under the raised wheel less `height_over_all`; absent without the room."
    )
    svg: str = Field(description="The set-up drawn to scale in the plane of the tilt, as SVG.")
