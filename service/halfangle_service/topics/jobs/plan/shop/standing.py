"""What stands under a wheel beside a sine plate's body, each stated for the clearance alone."""

from typing import Annotated

from pydantic import Field

from halfangle_service.fields import Length, NonNegativeLength, RequestModel
from halfangle_service.fields.clearance.set_up import (
    BodyLength,
    NoseDiameter,
    NoseLength,
    PlateBodyFields,
    ShankDiameter,
    StickOut,
    TurningParts,
)

BodyWidth = Annotated[
    Length,
    Field(description="Width of the body, the axis in its middle, in `units`.", examples=[2.5]),
]


class PlanWorkHolder(RequestModel):
    """What holds block-like work by its foot: a vice, an angle plate, rails of a magnet."""

    seat_height: NonNegativeLength = Field(
        description="Height of the work's base; 0 on a magnet.",
        examples=[0.0],
    )
    holder_height: NonNegativeLength = Field(
        description="Height of its highest place; 0 where nothing stands beside the work.",
        examples=[0.5],
    )
    magnet_holds: bool | None = Field(
        None,
        strict=True,
        description="Whether a magnet holds the work's material, as it does no carbide, aluminium, "
        "brass or most stainless steel.",
    )
    past_tall_end: NonNegativeLength = Field(
        0.0, description="How far it reaches past the work's tall end."
    )
    past_short_end: NonNegativeLength = Field(
        0.0, description="How far it reaches past the short end."
    )


class PlanAnglePlate(RequestModel):
    """What work turned a quarter stands against, on its low side."""

    upright_height: Length = Field(description="Height over the plate, in `units`.", examples=[4.0])
    upright_thickness: Length = Field(description="Thickness, in `units`.", examples=[0.75])
    face_to_high_end: NonNegativeLength = Field(
        description="From the upright's face up the slope to the plate's high end.",
        examples=[3.0],
    )
    seat_height: NonNegativeLength = Field(
        0.0,
        description="From the plate up to the fixture's rear, or the work's foot.",
    )


class PlanHingedBody(PlateBodyFields):
    """Body of one plate of a compound plate, closed in the middle of what it stands on."""

    plate_width: Length = Field(description="Width along its hinge, in `units`.", examples=[6.0])


class PlanWorkheadBody(RequestModel):
    """A workhead and how the work stands out of it."""

    body_length: BodyLength
    body_width: BodyWidth
    nose_diameter: NoseDiameter
    nose_length: NoseLength
    stick_out: StickOut
    shank_diameter: ShankDiameter
    turning_parts: TurningParts = Field([])
