"""Plate, fixture and wheel's head as a request states them, each turned into what the maths knows.

They stand apart from `tilted_plate`, which asks with them, for the length of their lists alone.
"""

from collections.abc import Iterable
from typing import Annotated

from pydantic import Field

from halfangle_service.fields import Length, NonNegativeLength, RequestModel, SignedLength
from halfangle_service.trade.clearance.assembly import Head
from halfangle_service.trade.clearance.case import require_fixture, require_head, require_plate
from halfangle_service.trade.clearance.plate import Plate
from halfangle_service.trade.clearance.stand import WheelState
from halfangle_service.trade.clearance.turned import Fixture, TurningPart

#: The least length that a request may hold where it must be more than nothing. One below it is
#: taken for none: the geometry would degenerate.
_LEAST = 1e-6


class ClearanceTurningPart(RequestModel):
    """A part that turns with the work, or stands about its axis.

    A collet nut, a dog by the circle that it sweeps, a tailstock's center before the nose.
    """

    name: Annotated[str, Field(min_length=1, max_length=60)] = Field(
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


#: How work stands out of what carries it: a fixture on a plate, a workhead by itself.
BodyLength = Annotated[
    Length,
    Field(description="Length of the body along the axis, in `units`.", examples=[3.0]),
]
NoseDiameter = Annotated[
    Length,
    Field(description="Diameter of the nose that carries the work, in `units`.", examples=[1.25]),
]
NoseLength = Annotated[
    NonNegativeLength,
    Field(description="How far the nose stands before the body, in `units`.", examples=[0.75]),
]
StickOut = Annotated[
    NonNegativeLength,
    Field(
        description="From the nose's face to the large end of the cone, in `units`.",
        examples=[0.75],
    ),
]
ShankDiameter = Annotated[
    NonNegativeLength,
    Field(
        description="Largest diameter of the work between nose and cone, in `units`.",
        examples=[0.75],
    ),
]
TurningParts = Annotated[
    list[ClearanceTurningPart],
    Field(max_length=8, description="Further parts that turn with the work."),
]


class ClearanceFixture(RequestModel):
    """The spindle fixture on the plate, and how the work stands out of it."""

    axis_height: Length = Field(
        description="Work axis over the plate's top, in `units`.", examples=[1.5]
    )
    body_length: BodyLength
    body_height: Length = Field(
        description="Top of the body over the plate, in `units`.", examples=[2.6]
    )
    nose_diameter: NoseDiameter
    nose_length: NoseLength
    stick_out: StickOut
    shank_diameter: ShankDiameter
    front_to_high_end: SignedLength = Field(
        description="From the body's front face up the slope to the plate's high end, in `units`; "
        "negative where the body overhangs it.",
        examples=[1.0],
    )
    turning_parts: TurningParts = Field([])
    limit_stick_out: Length | None = Field(
        None,
        description="Most that the work may stand out, in `units`, for its length or its rigidity. "
        "Absent: no limit is known.",
    )


class PlateBodyFields(RequestModel):
    """Body of a sine plate. Its rolls are taken to be centered in its underside."""

    length: Length = Field(description="Length up the slope, in `units`.", examples=[6.0])
    thickness: Length = Field(
        description="From its top to the centers of its rolls, in `units`.", examples=[0.75]
    )
    closed_height: Length = Field(
        description="Its top over the table at zero tilt, in `units`.", examples=[2.2]
    )
    roll_diameter: Length = Field(description="Diameter of the rolls, in `units`.", examples=[0.5])
    low_roll_from_end: NonNegativeLength | None = Field(
        None,
        description="From the plate's low end to the center of the low roll, in `units`. Absent: "
        "the rolls lie in the middle of the plate's length. A plate whose low end would tilt into "
        "its base is refused.",
    )


class ClearancePlate(PlateBodyFields):
    """The sine plate with the distance of its rolls."""

    center_distance: Length = Field(
        description="Distance between the centers of the rolls, in `units`.", examples=[5.0]
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


class WheelHeadFields(RequestModel):
    """What is about a wheel and turns or hangs with it, and how far it wears."""

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
        None,
        description="The guard. Absent: it is left out, the answer says so, and nothing is said to "
        "hold.",
    )


class ClearanceWheel(WheelHeadFields):
    """Wheel, flanges and guard."""

    diameter: Length = Field(description="Diameter of the wheel, in `units`.", examples=[7.0])
    width: Length = Field(description="Width of the wheel, in `units`.", examples=[0.5])


def fixture_of(fixture: ClearanceFixture) -> Fixture:
    """The fixture as the maths knows it; refuses what cannot be one."""
    found = Fixture(
        axis_height=fixture.axis_height,
        body_length=fixture.body_length,
        body_height=fixture.body_height,
        nose_radius=fixture.nose_diameter / 2.0,
        nose_length=_some(fixture.nose_length),
        stick_out=_some(fixture.stick_out),
        shank_radius=fixture.shank_diameter / 2.0,
        front_to_high_end=fixture.front_to_high_end,
        turning=turning_of(fixture.turning_parts),
    )
    require_fixture(found)
    return found


def turning_of(parts: Iterable[ClearanceTurningPart]) -> tuple[TurningPart, ...]:
    """Parts that turn with the work, as the maths knows them."""
    return tuple(TurningPart(p.name, p.diameter / 2.0, p.length, p.behind_face) for p in parts)


def plate_of(plate: PlateBodyFields, center_distance: float) -> Plate:
    """The plate as the maths knows it; refuses figures that cannot belong to one plate."""
    middle = (plate.length - center_distance) / 2.0
    found = Plate(
        plate.length,
        plate.thickness,
        plate.closed_height,
        center_distance,
        plate.roll_diameter,
        middle if plate.low_roll_from_end is None else plate.low_roll_from_end,
    )
    require_plate(found)
    return found


def heads_of(wheel: WheelHeadFields, new: float, width: float) -> dict[WheelState, Head]:
    """The head with the wheel new, of this diameter and width, and, where given, worn.

    Refuses what is no wheel's head.
    """
    guard = None
    if wheel.guard is not None:
        below = wheel.guard.lower_edge_below_spindle
        guard = (wheel.guard.length, wheel.guard.width, below)

    def head(diameter: float, field: str) -> Head:
        found = Head(diameter / 2.0, width, wheel.flange_diameter / 2.0, wheel.flange_width, guard)
        require_head(found, field, new / 2.0)
        return found

    heads: dict[WheelState, Head] = {"new": head(new, "diameter")}
    if wheel.worn_diameter is not None:
        heads["worn"] = head(wheel.worn_diameter, "worn_diameter")
    return heads


def _some(length: float) -> float:
    return length if length >= _LEAST else 0.0
