"""The mouth of a socket of known slope from one ball in it."""

from pydantic import Field

from halfangle_service.cautions import odd_sizes
from halfangle_service.fields import (
    Length,
    LengthOut,
    ResultModel,
    SignedLength,
    UnitsField,
)
from halfangle_service.fields.estimate import LengthEstimate
from halfangle_service.fields.gauging.measured import (
    IncludedAngleErrorLimit,
    MeasureErrorLimit,
    RollErrorLimit,
    half_of,
    measured_length,
    reading_slack,
    stated_slope,
)
from halfangle_service.fields.slopes import RateOfTaperOut, SlopeFields, slope_of
from halfangle_service.operation import Outcome, operation
from halfangle_service.topics.tapers.sources import TANGENT_CIRCLES
from halfangle_service.trade import elementary
from halfangle_service.trade.cone import rate_from_half_angle, require_before_point
from halfangle_service.trade.tapers.contact import ball_contact, mouth_diameter, require_contact
from halfangle_service.trade.uncertainty import LargestError, Measured


class TaperOneBallRequest(SlopeFields):
    """One ball in a socket of known slope."""

    units: UnitsField
    ball_diameter: Length = Field(description="Diameter of the ball.", examples=[0.5])
    ball_depth: SignedLength = Field(
        description="Depth of the ball's top below the mouth; negative where it stands out.",
        examples=[-0.2],
    )
    length: Length = Field(description="Depth of the cone from the mouth.", examples=[0.4])
    measure_error_limit: MeasureErrorLimit = None
    roll_error_limit: RollErrorLimit = None
    included_angle_error_limit_arcsec: IncludedAngleErrorLimit = None


class TaperOneBallResult(ResultModel):
    """The socket's mouth from one ball."""

    large_diameter: LengthEstimate = Field(
        description="Diameter at the large end, the mouth, with its uncertainty."
    )
    contact_diameter: LengthOut = Field(description="Diameter of the circle of contact.")
    contact_depth: LengthOut = Field(description="Depth of the circle of contact below the mouth.")
    rate_of_taper: RateOfTaperOut


@operation(
    "tapers.one-ball",
    relations=("D = d (1 + sin α) / cos α − 2 P tan α, P the protrusion",),
    sources=(TANGENT_CIRCLES,),
    example={
        "units": "in",
        "included_angle": 60,
        "ball_diameter": 0.5,
        "ball_depth": -0.2,
        "length": 0.4,
        "measure_error_limit": 0.0001,
    },
    columns=True,
)
def one_ball(request: TaperOneBallRequest) -> Outcome[TaperOneBallResult]:
    """Socket's mouth from one ball.

    Mouth diameter of a socket of known slope from the depth of one ball.
    """
    half = slope_of(request).half_angle_rad
    contact = ball_contact(request.ball_diameter, request.ball_depth, half)
    require_contact(contact, request.length, "ball", "ball_depth")
    balls = LargestError("roll_error_limit", request.roll_error_limit)
    depths = LargestError("measure_error_limit", request.measure_error_limit)
    mouth = measured_length(
        lambda ball, depth, included: mouth_diameter(ball, depth, half_of(included)),
        Measured("ball_diameter", request.ball_diameter, balls, above=0.0),
        Measured("ball_depth", request.ball_depth, depths),
        stated_slope(half, request.included_angle_error_limit_arcsec),
    )
    slack = reading_slack(request.units, mouth)
    require_before_point(mouth.value or 0.0, request.length, half, slack=slack)
    return Outcome(
        TaperOneBallResult(
            large_diameter=mouth,
            contact_diameter=request.ball_diameter * elementary.cos(half),
            contact_depth=contact,
            rate_of_taper=rate_from_half_angle(half),
        ),
        odd_sizes(request.units, "balls", request.ball_diameter),
    )
