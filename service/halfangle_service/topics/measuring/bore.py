"""A straight bore measured over two touching balls."""

from collections.abc import Iterator

from pydantic import Field

from halfangle_service.cautions import odd_sizes
from halfangle_service.errors import Impossible
from halfangle_service.fields import (
    DegreesOut,
    Length,
    LengthOut,
    SignedLength,
    UnitsField,
)
from halfangle_service.fields.advisories import Advisory, caution
from halfangle_service.fields.drawings.asked import DrawnFields, DrawnResult, is_drawn
from halfangle_service.fields.estimate import LengthEstimate
from halfangle_service.fields.gauging.measured import (
    MeasureErrorLimit,
    RollErrorLimit,
    measured_length,
)
from halfangle_service.operation import Outcome, Source, operation
from halfangle_service.trade import elementary
from halfangle_service.trade.measuring.bore import (
    DEPTHS,
    bore_over_balls,
    center_rise,
    lean_of_centers,
)
from halfangle_service.trade.measuring.drawing import BallsInBore, bore_svg
from halfangle_service.trade.uncertainty import LargestError, Measured
from halfangle_service.trade.wording import of_any_unit, percent, plain

#: Below this lean of the balls' line an error of a depth counts 1.7 times or more.
_STEEP_DEGREES = 30.0

_PUBLISHED = Source(
    citation="D = (r1 + r2) + √((r1 + r2)² − dz²), recessed bore over two touching balls: "
    "what-when-how.com, To Measure the Diameter of a Recessed Hole (Metrology).",
    standing="published",
)


class MeasuringBoreRequest(DrawnFields):
    """Two balls of known size in a straight bore, one resting on the other."""

    units: UnitsField
    lower_ball_diameter: Length = Field(description="Diameter of the lower ball.", examples=[60.0])
    upper_ball_diameter: Length = Field(
        description="Diameter of the ball that rests on it.", examples=[40.0]
    )
    lower_ball_depth: SignedLength = Field(
        description="Depth of the lower ball's top below the face; negative above it.",
        examples=[35.55],
    )
    upper_ball_depth: SignedLength = Field(
        description="Depth of the upper ball's top below the face; negative above it.",
        examples=[20.55],
    )
    measure_error_limit: MeasureErrorLimit = None
    roll_error_limit: RollErrorLimit = None


class MeasuringBoreResult(DrawnResult):
    """The bore by two touching balls."""

    bore_diameter: LengthEstimate = Field(description="Diameter of the bore.")
    center_rise: LengthOut = Field(description="Upper ball's center over the lower one's.")
    lean_of_centers: DegreesOut = Field(
        description="Lean of the balls' line of centers to the bore's axis: 90 is surest."
    )
    lower_contact_depth: LengthOut = Field(
        description="Depth at which the lower ball touches the wall."
    )
    upper_contact_depth: LengthOut = Field(
        description="Depth at which the upper ball touches the wall, on the other side."
    )


@operation(
    "measuring.bore",
    relations=("D = r1 + r2 + √((r1 + r2)² − dz²), dz the rise of the centers",),
    sources=(_PUBLISHED,),
    example={
        "units": "mm",
        "lower_ball_diameter": 60,
        "upper_ball_diameter": 40,
        "lower_ball_depth": 35.55,
        "upper_ball_depth": 20.55,
        "measure_error_limit": 0.005,
        "roll_error_limit": 0.0005,
        "formats": ["svg"],
    },
    heavy=is_drawn,
)
def bore(request: MeasuringBoreRequest) -> Outcome[MeasuringBoreResult]:
    """Bore over two touching balls.

    Diameter of a straight or recessed bore, wider than what reaches it, from the depths of two
    balls that touch one another and opposite walls.
    """
    lower, upper = request.lower_ball_diameter, request.upper_ball_diameter
    balls = LargestError("roll_error_limit", request.roll_error_limit)
    depths = LargestError("measure_error_limit", request.measure_error_limit)
    inputs = (
        Measured("lower_ball_diameter", lower, balls, above=0.0),
        Measured("upper_ball_diameter", upper, balls, above=0.0),
        Measured("lower_ball_depth", request.lower_ball_depth, depths),
        Measured("upper_ball_depth", request.upper_ball_depth, depths),
    )
    values = [i.value for i in inputs]
    diameter = bore_over_balls(*values)
    contacts = request.lower_ball_depth + lower / 2.0, request.upper_ball_depth + upper / 2.0
    if contacts[1] <= 0.0:
        raise Impossible(
            f"The upper ball's center lies {of_any_unit(-contacts[1])} above the face, where there "
            "is no wall to touch.",
            fields={DEPTHS[1]: f"should be more than {of_any_unit(-upper / 2.0)}"},
        )
    rise = center_rise(*values)
    lean = elementary.degrees(lean_of_centers(lower, upper, rise))
    result = MeasuringBoreResult(
        bore_diameter=measured_length(bore_over_balls, *inputs),
        center_rise=rise,
        lean_of_centers=lean,
        lower_contact_depth=contacts[0],
        upper_contact_depth=contacts[1],
        svg=_drawing(request, diameter),
    )
    odd = odd_sizes(request.units, "balls", lower, upper)
    return Outcome(result, (*odd, *_steep(lean)))


def _drawing(request: MeasuringBoreRequest, diameter: float) -> str | None:
    """The balls in the bore, where a drawing is asked for."""
    if not is_drawn(request):
        return None
    balls = request.lower_ball_diameter, request.upper_ball_diameter
    depths = request.lower_ball_depth, request.upper_ball_depth
    return bore_svg(BallsInBore(diameter, balls, depths), request.units)


def _steep(lean_degrees: float) -> Iterator[Advisory]:
    if lean_degrees < _STEEP_DEGREES:
        per_depth = 100.0 / elementary.tan(elementary.radians(lean_degrees))
        yield caution(
            "ill-conditioned",
            f"The balls stand nearly above one another, {plain(lean_degrees, 4)}° off the axis: an "
            f"error of a depth counts by {percent(per_depth)} in the diameter. Take larger balls.",
        )
