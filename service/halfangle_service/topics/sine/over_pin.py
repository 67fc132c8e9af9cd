"""Height of a ground point over a pin on a sine bar or plate."""

from typing import Annotated, Literal

from pydantic import Field

from halfangle_service.cautions import odd_sizes
from halfangle_service.errors import Impossible
from halfangle_service.fields import (
    ARCSEC_PER_RADIAN,
    FINITE,
    AngleInput,
    Length,
    LengthOut,
    NonNegativeLength,
    Unit,
    UnitsField,
)
from halfangle_service.fields.drawings.asked import DrawnFields, DrawnResult, is_drawn
from halfangle_service.fields.estimate import LengthEstimate, estimate
from halfangle_service.fields.gauging.measured import MeasureErrorLimit, RollErrorLimit
from halfangle_service.operation import Outcome, Source, operation
from halfangle_service.trade import elementary
from halfangle_service.trade.measuring.drawing import PinOnPlate, over_pin_svg
from halfangle_service.trade.measuring.over_pin import pin_top_height, point_height
from halfangle_service.trade.uncertainty import LargestError, Measured, budget_of
from halfangle_service.trade.wording import of_any_unit

_PUBLISHED = Source(
    citation="sin 45° (70 − 42) − 5 (1 + cos 45°), a profile tip over a pin of 10 mm on a sine "
    "bar: dimcax.com/gdt_web/september-04.htm.",
    standing="published",
)
_DERIVED = Source(
    citation="Derived here: coordinates along and square to the face, turned by the plate's angle.",
    standing="derived",
)


class SineOverPinRequest(DrawnFields):
    """A plate at an angle, a pin on it, and the point whose height is to be known."""

    units: UnitsField
    angle: Annotated[float, AngleInput(gt=0, lt=90)] = Field(
        description="Angle of the plate, in degrees.", examples=[45.0]
    )
    pin_diameter: Length = Field(description="Diameter of the pin.", examples=[10.0])
    pin_from_stop: Length | None = Field(
        None,
        description="Stop to where the pin touches the face, along the face; not less than the "
        "pin's radius. Absent: the pin lies in the corner of face and stop.",
        examples=[42.0],
    )
    stop_at: Literal["low-end", "high-end"] = Field(
        "low-end", description="End of the plate at which the stop stands."
    )
    point_from_stop: NonNegativeLength = Field(
        description="Stop to the point, along the face.", examples=[70.0]
    )
    point_over_face: NonNegativeLength = Field(
        0.0, description="Height of the point over the face, square to it."
    )
    angle_error_limit_arcsec: (
        Annotated[float, FINITE, Field(ge=0, le=3600), Unit("arcsecond")] | None
    ) = Field(None, description="Largest error ± of the plate's angle, in arc-seconds.")
    roll_error_limit: RollErrorLimit = None
    measure_error_limit: MeasureErrorLimit = None


class SineOverPinResult(DrawnResult):
    """Heights over the corner of face and stop, square to the surface plate."""

    height_over_pin: LengthEstimate = Field(
        description="Point over the pin's top: what to grind to or to find; negative below it. "
        "`measure_error_limit` counts for `pin_from_stop`."
    )
    pin_top_height: LengthOut = Field(description="Pin's top over the corner.")
    point_height: LengthOut = Field(description="Point over the corner.")


@operation(
    "sine.over-pin",
    relations=(
        "point: ± a sin θ + b cos θ, − with the stop at the high end",
        "pin's top: ± p sin θ + r (1 + cos θ), p = r in the corner",
    ),
    sources=(_PUBLISHED, _DERIVED),
    example={
        "units": "mm",
        "angle": 45,
        "pin_diameter": 10,
        "pin_from_stop": 42,
        "point_from_stop": 70,
        "angle_error_limit_arcsec": 10,
        "roll_error_limit": 0.001,
        "measure_error_limit": 0.005,
        "formats": ["svg"],
    },
    heavy=is_drawn,
)
def over_pin(request: SineOverPinRequest) -> Outcome[SineOverPinResult]:
    """Height over a pin on a sine bar.

    Height of a point of the work over the top of a pin that lies on the tilted face: to grind a
    surface at an angle to its place, or to measure where it is.
    """
    radius, nested = request.pin_diameter / 2.0, request.pin_from_stop is None
    along = radius if request.pin_from_stop is None else request.pin_from_stop
    if along < radius:
        raise Impossible(
            f"A pin of {of_any_unit(request.pin_diameter)} cannot touch the face "
            f"{of_any_unit(along)} from the stop: the stop is in its way.",
            fields={"pin_from_stop": f"should be at least {of_any_unit(radius)}"},
        )
    up = 1.0 if request.stop_at == "low-end" else -1.0
    point = request.point_from_stop, request.point_over_face

    def over(angle_arcsec: float, pin: float, from_stop: float = along) -> float:
        angle_rad, place = angle_arcsec / ARCSEC_PER_RADIAN, pin / 2.0 if nested else from_stop
        return point_height(angle_rad, *point, up) - pin_top_height(angle_rad, place, pin, up)

    inputs = (
        Measured(
            "angle",
            request.angle * 3600.0,
            LargestError("angle_error_limit_arcsec", request.angle_error_limit_arcsec),
            unit="arcsecond",
        ),
        Measured(
            "pin_diameter",
            request.pin_diameter,
            LargestError("roll_error_limit", request.roll_error_limit),
            above=0.0,
        ),
        Measured(
            "pin_from_stop", along, LargestError("measure_error_limit", request.measure_error_limit)
        ),
    )
    # A pin in the corner lies where its own radius puts it.
    budget = budget_of(over, *(inputs[:2] if nested else inputs))
    angle_rad = elementary.radians(request.angle)
    pin_top = pin_top_height(angle_rad, along, request.pin_diameter, up)
    point_top = point_height(angle_rad, *point, up)
    return Outcome(
        SineOverPinResult(
            height_over_pin=estimate(LengthEstimate, budget, point_top - pin_top),
            pin_top_height=pin_top,
            point_height=point_top,
            svg=_drawing(request, PinOnPlate(angle_rad, request.pin_diameter, along, point, up)),
        ),
        odd_sizes(request.units, "pins", request.pin_diameter),
    )


def _drawing(request: SineOverPinRequest, plate: PinOnPlate) -> str | None:
    """The pin on the plate, where a drawing is asked for."""
    return over_pin_svg(plate, request.units) if is_drawn(request) else None
