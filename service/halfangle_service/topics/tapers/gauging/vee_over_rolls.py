"""A vee over rolls: as measured with two of different size, and what to expect of a nominal one.

Heights and depths run from the vee's faces.
"""

from typing import Annotated

from pydantic import Field

from halfangle_service.cautions import odd_sizes
from halfangle_service.fields import (
    Angle,
    Length,
    LengthOut,
    NumberOut,
    RequestModel,
    ResultModel,
    SignedLength,
    UnitsField,
    VeeAngle,
    angle_from_radians,
)
from halfangle_service.fields.estimate import AngleEstimate, LengthEstimate
from halfangle_service.fields.gauging.measured import (
    MeasureErrorLimit,
    RollErrorLimit,
    measured_angle,
    measured_length,
)
from halfangle_service.operation import Outcome, operation
from halfangle_service.topics.tapers.sources import TANGENT_CIRCLES
from halfangle_service.trade import elementary
from halfangle_service.trade.tapers.contact import (
    require_contact,
    vee_apex_depth,
    vee_apex_over_rolls,
    vee_contact_depth,
    vee_half_angle,
    vee_roll_top,
    vee_width_over_rolls,
)
from halfangle_service.trade.uncertainty import LargestError, Measured


class VeeOverRollsRequest(RequestModel):
    """What was measured over two rolls of different size in a vee."""

    units: UnitsField
    large_roll_diameter: Length = Field(description="Diameter of the larger roll.", examples=[40.0])
    small_roll_diameter: Length = Field(
        description="Diameter of the smaller roll.", examples=[20.0]
    )
    large_roll_top: SignedLength = Field(
        description="Height of the larger roll's top over the vee's faces.", examples=[20.0]
    )
    small_roll_top: SignedLength = Field(
        description="Height of the smaller roll's top over the faces; negative below them.",
        examples=[-10.0],
    )
    measure_error_limit: MeasureErrorLimit = None
    roll_error_limit: RollErrorLimit = None


class VeeOverRollsResult(ResultModel):
    """A vee as measured; the errors of its whole angle are twice those of the half."""

    vee_half_angle: AngleEstimate = Field(
        description="Half of the vee's included angle, with its uncertainty."
    )
    vee_angle: Angle = Field(description="The vee's included angle.")
    face_width: LengthEstimate = Field(
        description="Width between the sides at the faces, with its uncertainty."
    )
    apex_depth: LengthEstimate = Field(
        description="Depth of the (virtual) apex below the faces, with its uncertainty."
    )
    large_roll_contact_depth: LengthOut = Field(
        description="Depth below the faces at which the larger roll touches."
    )
    small_roll_contact_depth: LengthOut = Field(
        description="Depth below the faces at which the smaller roll touches."
    )


@operation(
    "tapers.vee-over-rolls",
    relations=("sin ν = (R − r) / rise of the centers",),
    sources=(TANGENT_CIRCLES,),
    example={
        "units": "mm",
        "large_roll_diameter": 40,
        "small_roll_diameter": 20,
        "large_roll_top": 20,
        "small_roll_top": -10,
        "measure_error_limit": 0.002,
        "roll_error_limit": 0.0005,
    },
)
def measured_over_rolls(request: VeeOverRollsRequest) -> Outcome[VeeOverRollsResult]:
    """Vee over two rolls.

    Angle and width of a vee from the tops of two rolls of different size.
    """
    rolls = LargestError("roll_error_limit", request.roll_error_limit)
    tops = LargestError("measure_error_limit", request.measure_error_limit)
    inputs = (
        Measured("large_roll_diameter", request.large_roll_diameter, rolls, above=0.0),
        Measured("small_roll_diameter", request.small_roll_diameter, rolls, above=0.0),
        Measured("large_roll_top", request.large_roll_top, tops),
        Measured("small_roll_top", request.small_roll_top, tops),
    )
    values = [i.value for i in inputs]
    half = vee_half_angle(*values)
    apex = max(vee_apex_over_rolls(*values), 0.0)
    large = vee_contact_depth(request.large_roll_top, half, request.large_roll_diameter)
    small = vee_contact_depth(request.small_roll_top, half, request.small_roll_diameter)
    require_contact(large, apex, "roll", "large_roll_diameter")
    require_contact(small, apex, "roll", "small_roll_diameter")
    return Outcome(
        VeeOverRollsResult(
            vee_half_angle=measured_angle(vee_half_angle, *inputs),
            vee_angle=angle_from_radians(2.0 * half),
            face_width=measured_length(vee_width_over_rolls, *inputs),
            apex_depth=measured_length(vee_apex_over_rolls, *inputs),
            large_roll_contact_depth=large,
            small_roll_contact_depth=small,
        ),
        odd_sizes(request.units, "rolls", request.large_roll_diameter, request.small_roll_diameter),
    )


class VeeOverRollsNominalRequest(RequestModel):
    """A nominal vee, symmetric about the normal of its faces, and the rolls to measure it with."""

    units: UnitsField
    vee_angle: VeeAngle = Field(
        description="The vee's included angle, in degrees.", examples=[60.0]
    )
    face_width: Length = Field(
        description="Width between the sides at the faces.", examples=[46.188]
    )
    roll_diameters: Annotated[list[Length], Field(min_length=1, max_length=20)] = Field(
        description="Diameters of the rolls, laid in one at a time.", examples=[[40.0, 20.0]]
    )


class VeeRollExpected(ResultModel):
    """One roll in a nominal vee."""

    roll_diameter: LengthOut = Field(description="Diameter of the roll.")
    roll_top: LengthOut = Field(
        description="Height of the roll's top over the faces; negative below them."
    )
    contact_depth: LengthOut = Field(description="Depth below the faces at which it touches.")


class VeeOverRollsNominalResult(ResultModel):
    """What to expect over rolls in a nominal vee."""

    apex_depth: LengthOut = Field(description="Depth of the (virtual) apex below the faces.")
    largest_roll_diameter: LengthOut = Field(
        description="Largest roll that still touches the sides, at their upper edges."
    )
    rolls: list[VeeRollExpected] = Field(description="The rolls, in the order asked.")
    fall_per_width: NumberOut = Field(
        description="Fall of the roll's top for one unit more of width: 1 / (2 tan ν)."
    )


@operation(
    "tapers.vee-over-rolls-nominal",
    relations=("top = r (1 + 1 / sin ν) − W / (2 tan ν)", "largest roll = W / cos ν"),
    sources=(TANGENT_CIRCLES,),
    example={
        "units": "mm",
        "vee_angle": 60,
        "face_width": 46.188,
        "roll_diameters": [40, 20],
    },
    columns=True,
)
def expected_over_rolls(
    request: VeeOverRollsNominalRequest,
) -> Outcome[VeeOverRollsNominalResult]:
    """What to expect over rolls in a vee.

    Height of rolls over the faces of a nominal vee, and where they touch.
    """
    half = elementary.radians(request.vee_angle) / 2.0
    apex = vee_apex_depth(request.face_width, half)
    rolls = [_expected(roll, half, request.face_width) for roll in request.roll_diameters]
    for place, expected in enumerate(rolls):
        require_contact(expected.contact_depth, apex, "roll", f"roll_diameters/{place}")
    return Outcome(
        VeeOverRollsNominalResult(
            apex_depth=apex,
            largest_roll_diameter=request.face_width / elementary.cos(half),
            rolls=rolls,
            fall_per_width=vee_apex_depth(1.0, half),
        ),
        odd_sizes(request.units, "rolls", *request.roll_diameters),
    )


def _expected(roll: float, half: float, width: float) -> VeeRollExpected:
    top = vee_roll_top(width, half, roll)
    depth = vee_contact_depth(top, half, roll)
    return VeeRollExpected(roll_diameter=roll, roll_top=top, contact_depth=depth)
