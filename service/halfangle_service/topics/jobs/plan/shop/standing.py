"""What stands under a wheel beside a sine plate's body, each stated for the clearance alone."""

from typing import Annotated

from pydantic import Field

from halfangle_service.fields import Length, NonNegativeLength, RequestModel
from halfangle_service.fields.clearance.set_up import (
    ClearanceFixture,
    ClearanceTurningPart,
    PlateBodyFields,
)

BodyWidth = Annotated[
    Length,
    Field(
        description="Width of the body, the work's axis in its middle, in `units`.", examples=[2.5]
    ),
]


class PlanSpinFixture(ClearanceFixture):
    """The spindle fixture; of a socket `stick_out` is to its mouth, `shank_diameter` outside."""

    body_width: BodyWidth | None = Field(
        None, description="Counts where it stands beside a wheel's side."
    )


class PlanWorkHolder(RequestModel):
    """What holds block-like work by its foot: a vice, an angle plate, rails of a magnet."""

    seat_height: NonNegativeLength = Field(
        description="From what it stands on up to the work's base, in `units`; 0 on a magnet.",
        examples=[0.0],
    )
    holder_height: NonNegativeLength = Field(
        description="Its highest place over what it stands on, in `units`; 0 where nothing stands "
        "up beside the work.",
        examples=[0.5],
    )
    magnet_holds: bool | None = Field(
        None,
        strict=True,
        description="Whether a magnet holds the work's material; false of carbide, aluminium, "
        "brass, most stainless steel. Without `holder_height` such work is ruled out.",
    )
    past_tall_end: NonNegativeLength = Field(
        0.0, description="How far it reaches past the work's tall end, in `units`."
    )
    past_short_end: NonNegativeLength = Field(
        0.0, description="How far it reaches past the short end."
    )


class PlanAnglePlate(RequestModel):
    """What work turned a quarter stands against, on its low side."""

    upright_height: Length = Field(
        description="Height of the upright over the plate, in `units`.", examples=[4.0]
    )
    upright_thickness: Length = Field(
        description="Thickness of the upright, in `units`.", examples=[0.75]
    )
    face_to_high_end: NonNegativeLength = Field(
        description="From the upright's face, which carries fixture or work, up the slope to the "
        "plate's high end, in `units`.",
        examples=[3.0],
    )
    seat_height: NonNegativeLength = Field(
        0.0,
        description="From the plate up to the rear of the fixture, or the foot of the work, in "
        "`units`.",
    )


class PlanHingedBody(PlateBodyFields):
    """Body of one plate of a compound plate, closed in the middle of what it stands on."""

    plate_width: Length = Field(
        description="Width of the plate along its hinge, in `units`.", examples=[6.0]
    )


class PlanWorkheadBody(RequestModel):
    """A workhead and how the work stands out of it."""

    body_length: Length = Field(
        description="Length of the body along the axis, in `units`.", examples=[8.0]
    )
    body_width: BodyWidth
    nose_diameter: Length = Field(
        description="Diameter of the nose that carries the work, in `units`.", examples=[3.0]
    )
    nose_length: NonNegativeLength = Field(
        description="How far the nose stands before the body, in `units`.", examples=[1.0]
    )
    stick_out: NonNegativeLength = Field(
        description="From the nose's face to the large end of the cone, in `units`.",
        examples=[2.0],
    )
    shank_diameter: NonNegativeLength = Field(
        description="Largest diameter of the work between nose and cone, in `units`.",
        examples=[0.75],
    )
    turning_parts: Annotated[list[ClearanceTurningPart], Field(max_length=8)] = Field(
        [], description="Further parts that turn with the work."
    )
