"""A socket by two balls: as measured, and what to expect of a nominal one.

Depths run from the face of the mouth, down which the socket narrows; negative above it.
"""

from functools import partial

from pydantic import Field

from halfangle_service.cautions import odd_sizes
from halfangle_service.fields import (
    Angle,
    Length,
    LengthOut,
    SignedLength,
    UnitsField,
)
from halfangle_service.fields.drawings.asked import DrawnFields, DrawnResult, is_drawn
from halfangle_service.fields.gauging.measured import (
    MeasuredTaper,
    MeasureErrorLimit,
    RollErrorLimit,
    measured_angle,
    measured_length,
    reading_slack,
)
from halfangle_service.fields.slopes import SlopeFields, slope_forms, slope_of
from halfangle_service.operation import Outcome, operation
from halfangle_service.topics.tapers.sources import TANGENT_CIRCLES
from halfangle_service.trade.cone import require_before_point
from halfangle_service.trade.tapers.contact import (
    ball_contact,
    ball_depth,
    diameter_over_balls,
    half_angle_of_balls,
    require_contact,
    require_larger,
)
from halfangle_service.trade.tapers.drawing import OverBalls, over_balls_svg
from halfangle_service.trade.uncertainty import LargestError, Measured


class TaperOverBallsRequest(DrawnFields):
    """What was measured with two balls in a socket that narrows downward."""

    units: UnitsField
    large_ball_diameter: Length = Field(description="Diameter of the larger ball.", examples=[40.0])
    small_ball_diameter: Length = Field(
        description="Diameter of the smaller ball.", examples=[32.0]
    )
    large_ball_depth: SignedLength = Field(
        description="Depth of the larger ball's top below the mouth; negative where it stands out.",
        examples=[-8.0],
    )
    small_ball_depth: SignedLength = Field(
        description="Depth of the smaller ball's top below the mouth.", examples=[76.0]
    )
    length: Length = Field(description="Depth of the cone from the mouth.", examples=[120.0])
    measure_error_limit: MeasureErrorLimit = None
    roll_error_limit: RollErrorLimit = None


class TaperOverBallsResult(MeasuredTaper, DrawnResult):
    """A socket as measured with two balls, with its uncertainty; its large end is the mouth."""

    large_ball_contact_depth: LengthOut = Field(
        description="Depth below the mouth at which the larger ball touches."
    )
    small_ball_contact_depth: LengthOut = Field(
        description="Depth below the mouth at which the smaller ball touches."
    )


@operation(
    "tapers.over-balls",
    relations=("sin α = (R1 − R2) / c", "D = d / cos α + 2 c1 tan α, c1 the center's depth"),
    sources=(TANGENT_CIRCLES,),
    heavy=is_drawn,
    example={
        "units": "mm",
        "large_ball_diameter": 40,
        "small_ball_diameter": 32,
        "large_ball_depth": -8,
        "small_ball_depth": 76,
        "length": 120,
        "measure_error_limit": 0.005,
        "roll_error_limit": 0.0005,
        "formats": ["svg"],
    },
)
def measured_over_balls(request: TaperOverBallsRequest) -> Outcome[TaperOverBallsResult]:
    """Socket measured with two balls.

    Half angle, diameters and their uncertainty from the depths of two balls.
    """
    balls = LargestError("roll_error_limit", request.roll_error_limit)
    depths = LargestError("measure_error_limit", request.measure_error_limit)
    inputs = (
        Measured("large_ball_diameter", request.large_ball_diameter, balls, above=0.0),
        Measured("small_ball_diameter", request.small_ball_diameter, balls, above=0.0),
        Measured("large_ball_depth", request.large_ball_depth, depths),
        Measured("small_ball_depth", request.small_ball_depth, depths),
    )
    values = [i.value for i in inputs]
    half = half_angle_of_balls(*values)
    depths_read = (request.large_ball_depth, request.small_ball_depth)
    contacts = _contacts(request, depths_read, half)
    large, small = (
        measured_length(partial(diameter_over_balls, depth), *inputs)
        for depth in (0.0, request.length)
    )
    slack = reading_slack(request.units, small)
    require_before_point(large.value or 0.0, request.length, half, slack=slack)
    return Outcome(
        TaperOverBallsResult(
            half_angle=measured_angle(half_angle_of_balls, *inputs),
            large_diameter=large,
            small_diameter=small,
            large_ball_contact_depth=contacts[0],
            small_ball_contact_depth=contacts[1],
            svg=_drawing(request, half, large.value or 0.0, depths_read),
            **slope_forms(half),
        ),
        odd_sizes(request.units, "balls", request.large_ball_diameter, request.small_ball_diameter),
    )


class TaperOverBallsNominalRequest(SlopeFields, DrawnFields):
    """A nominal socket that is to be measured with balls."""

    units: UnitsField
    large_diameter: Length = Field(
        description="Diameter at the large end, the mouth.", examples=[0.7]
    )
    length: Length = Field(description="Depth of the cone from the mouth.", examples=[2.5])
    large_ball_diameter: Length = Field(
        description="Diameter of the larger ball.", examples=[0.6875]
    )
    small_ball_diameter: Length = Field(
        description="Diameter of the smaller ball.", examples=[0.625]
    )


class TaperOverBallsNominalResult(DrawnResult):
    """What to expect with balls in a socket."""

    large_ball_depth: LengthOut = Field(
        description="Depth of the larger ball's top below the mouth; negative where it stands out."
    )
    small_ball_depth: LengthOut = Field(
        description="Depth of the smaller ball's top below the mouth."
    )
    large_ball_contact_depth: LengthOut = Field(
        description="Depth below the mouth at which the larger ball touches."
    )
    small_ball_contact_depth: LengthOut = Field(
        description="Depth below the mouth at which the smaller ball touches."
    )
    half_angle: Angle = Field(description="Half angle.")


@operation(
    "tapers.over-balls-nominal",
    relations=("c = (D − d / cos α) / (2 tan α), the center's depth",),
    sources=(TANGENT_CIRCLES,),
    heavy=is_drawn,
    example={
        "units": "in",
        "taper_per_foot": 0.59941,
        "large_diameter": 0.7,
        "length": 2.5,
        "large_ball_diameter": 0.6875,
        "small_ball_diameter": 0.625,
        "formats": ["svg"],
    },
    columns=True,
)
def expected_over_balls(
    request: TaperOverBallsNominalRequest,
) -> Outcome[TaperOverBallsNominalResult]:
    """What to expect with balls.

    Depths of two balls in a nominal socket, and where they touch.
    """
    slope = slope_of(request)
    half = slope.half_angle_rad
    require_larger(request.large_ball_diameter - request.small_ball_diameter, "ball")
    large, small = (
        ball_depth(ball, request.large_diameter, half)
        for ball in (request.large_ball_diameter, request.small_ball_diameter)
    )
    contacts = _contacts(request, (large, small), half)
    require_before_point(request.large_diameter, request.length, half)
    return Outcome(
        TaperOverBallsNominalResult(
            large_ball_depth=large,
            small_ball_depth=small,
            large_ball_contact_depth=contacts[0],
            small_ball_contact_depth=contacts[1],
            half_angle=Angle.of(slope.half_angle_degrees),
            svg=_drawing(request, half, request.large_diameter, (large, small)),
        ),
        odd_sizes(request.units, "balls", request.large_ball_diameter, request.small_ball_diameter),
    )


def _drawing(
    request: TaperOverBallsRequest | TaperOverBallsNominalRequest,
    half: float,
    mouth: float,
    depths: tuple[float, float],
) -> str | None:
    """The socket with its balls, where it is asked for."""
    if not is_drawn(request):
        return None
    balls = (request.large_ball_diameter, request.small_ball_diameter)
    return over_balls_svg(OverBalls(half, mouth, request.length, balls, depths), request.units)


def _contacts(
    request: TaperOverBallsRequest | TaperOverBallsNominalRequest,
    depths: tuple[float, float],
    half: float,
) -> tuple[float, float]:
    """Depths at which the larger and the smaller ball touch; refuses those off the cone."""
    large = ball_contact(request.large_ball_diameter, depths[0], half)
    small = ball_contact(request.small_ball_diameter, depths[1], half)
    require_contact(large, request.length, "ball", "large_ball_diameter")
    require_contact(small, request.length, "ball", "small_ball_diameter")
    return large, small
