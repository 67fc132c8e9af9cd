"""The angle that a stack gives on a sine bar or plate."""

from pydantic import Field

from halfangle_service.cautions import STEEP_DEGREES, steep_angle
from halfangle_service.fields import (
    Angle,
    Length,
    LengthOut,
    NonNegativeLength,
    ResultModel,
    angle_from_radians,
)
from halfangle_service.fields.base import Rule
from halfangle_service.fields.choice import one_of
from halfangle_service.fields.plates import (
    ArcsecPerStep,
    PlateFields,
    arcsec_per_step,
    offset_of,
)
from halfangle_service.operation import Outcome, operation
from halfangle_service.topics.sine.sources import SINE_RELATION, STEEP_PRACTICE
from halfangle_service.trade.decimals import tidy
from halfangle_service.trade.sine.geometry import angle_for_height

#: What states the height, of which one is sent.
HEIGHT = ("height", "high_stack")


class SineAngleRequest(PlateFields):
    """A sine bar or plate, and the stack under its high roll, or the stacks under both."""

    rules = (Rule("one-of", HEIGHT),)

    height: Length | None = Field(
        None,
        description="Height of the stack under the high roll over that under the low roll; less "
        "than the center distance. Either this or `high_stack`.",
        examples=[2.5],
    )
    high_stack: NonNegativeLength | None = Field(
        None, description="Stack under the high roll, as measured, in `units`."
    )
    low_stack: NonNegativeLength = Field(
        0.0, description="Stack under the low roll, as measured; counts with `high_stack` only."
    )


class SineAngleResult(ResultModel):
    """The angle that a stack gives."""

    angle: Angle = Field(
        description="Angle between the plate's top and the surface it stands on; negative where "
        "the roll called high stands lower."
    )
    height: LengthOut = Field(description="Difference of the stacks, high less low.")
    arcsec_per_step: ArcsecPerStep


@operation(
    "sine.angle",
    relations=(
        "angle = asin((height − offset) / center_distance)",
        "offset = base_step − (high_roll_diameter − low_roll_diameter) / 2",
    ),
    sources=(SINE_RELATION, STEEP_PRACTICE),
    example={"units": "in", "center_distance": 5, "height": 2.5},
    columns=True,
)
def angle(request: SineAngleRequest) -> Outcome[SineAngleResult]:
    """Angle of a stack.

    The angle that a stack, or the stacks under both rolls, gives on a sine bar or plate.
    """
    field = one_of(request, *HEIGHT)
    height = request.height
    if height is None:
        high = request.high_stack or 0.0
        height = tidy(high - request.low_stack, high)
    angle_rad = angle_for_height(request.center_distance, height, offset_of(request), field)
    result = SineAngleResult(
        angle=angle_from_radians(angle_rad),
        height=height,
        arcsec_per_step=arcsec_per_step(request.center_distance, angle_rad, request.units),
    )
    return Outcome(
        result, tuple(steep_angle(result.angle.degrees, result.arcsec_per_step, STEEP_DEGREES))
    )
