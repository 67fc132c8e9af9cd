"""What clearance, feed and batch of a plan ask of the flat wheel and of a plate's body."""

from typing import Literal

from pydantic import Field

from halfangle_service.fields import Length, NonNegativeLength, RequestModel, Rpm
from halfangle_service.fields.clearance.set_up import PlateBodyFields, WheelHeadFields


class PlanPlateBody(PlateBodyFields):
    """Body of a sine plate; clearance is worked out with it."""


class PlanWheelHead(WheelHeadFields):
    """Flanges and guard, and how far the wheel wears."""


class PlanWheel(RequestModel):
    """A flat wheel; what is not stated of it leaves null what follows from it."""

    diameter: Length = Field(description="Diameter of the wheel, in `units`.", examples=[7.0])
    width: Length | None = Field(
        None, description="Width of the wheel, in `units`.", examples=[0.5]
    )
    rpm: Rpm | None = Field(None, description="Spindle speed.", examples=[3450])
    marked_rpm: Rpm | None = Field(
        None,
        description="Highest speed marked on the wheel, per minute.",
        examples=[3600.0],
    )
    head: PlanWheelHead | None = Field(
        None, description="What is about the wheel; clearance is worked out with it."
    )
    breakdown_per_piece: NonNegativeLength | None = Field(
        None,
        description="Breakdown of the wheel in one piece, over the length of the surface and "
        "square to it, in `units`; 0 where the traverse evens it out.",
        examples=[0.000005],
    )
    breakdown_makes: Literal["blunter", "sharper"] | None = Field(
        None,
        description="Which way the angle grows as the wheel breaks down. Absent: either way, and "
        "the worse counts.",
    )
