"""What subjects that gauge share: errors of measuring, and what follows from measured inputs."""

import math
from collections.abc import Callable
from typing import Annotated

from pydantic import Field

from halfangle_service.fields import (
    ARCSEC_PER_RADIAN,
    FINITE,
    NonNegativeLength,
    Unit,
    Units,
    angle_from_radians,
    bench_step,
)
from halfangle_service.fields.estimate import AngleEstimate, LengthEstimate, estimate
from halfangle_service.fields.slopes import SlopeForms
from halfangle_service.trade.uncertainty import (
    Budget,
    Contribution,
    LargestError,
    Measured,
    budget_of,
)

MeasureErrorLimit = Annotated[
    NonNegativeLength | None,
    Field(description="Largest error of each measure, plus or minus."),
]
RollErrorLimit = Annotated[
    NonNegativeLength | None,
    Field(description="Largest error of a roll's or ball's diameter, plus or minus."),
]
IncludedAngleErrorLimit = Annotated[
    Annotated[float, FINITE, Field(ge=0, le=36_000), Unit("arcsecond")] | None,
    Field(description="Largest error of the included angle stated, plus or minus."),
]


class MeasuredTaper(SlopeForms):
    """A taper as measured; the included angle's errors are twice those of the half angle."""

    half_angle: AngleEstimate = Field(description="Half angle, with its uncertainty.")
    large_diameter: LengthEstimate = Field(
        description="Diameter at the large end, with its uncertainty."
    )
    small_diameter: LengthEstimate = Field(
        description="Diameter at the small end, with its uncertainty; 0 for a sharp point."
    )


def measured_angle(half_angle: Callable[..., float], *inputs: Measured) -> AngleEstimate:
    """Estimate of a half angle that this function gives, in radians, from measured inputs."""
    return estimate(
        AngleEstimate,
        budget_of(half_angle, *inputs),
        angle_from_radians(half_angle(*(i.value for i in inputs))),
        per_unit=ARCSEC_PER_RADIAN,
    )


def measured_length(length: Callable[..., float], *inputs: Measured) -> LengthEstimate:
    """Estimate of a size that this function gives from measured inputs.

    The small end of a cone that ends just at its point is 0, not what rounding leaves below it.
    """
    value = max(0.0, length(*(i.value for i in inputs)))
    return estimate(LengthEstimate, budget_of(length, *inputs), value)


def as_measured(measured: Measured) -> LengthEstimate:
    """Estimate of a size that was itself measured."""
    field, limit = measured.error
    if limit is None:
        return estimate(LengthEstimate, Budget((), not_stated=(field,)), measured.value)
    return estimate(LengthEstimate, Budget((Contribution(field, limit),)), measured.value)


def reading_slack(units: Units, diameter: LengthEstimate) -> float:
    """How far a measured diameter may be off: by what was stated, or else by one bench step."""
    return max(bench_step(units), diameter.worst_case or 0.0)


def stated_slope(half_angle_rad: float, error_limit_arcsec: float | None) -> Measured:
    """The slope stated as an input in arc-seconds of the included angle; see `half_of`."""
    return Measured(
        "included_angle",
        2.0 * half_angle_rad * ARCSEC_PER_RADIAN,
        LargestError("included_angle_error_limit_arcsec", error_limit_arcsec),
        unit="arcsecond",
        above=0.0,
        below=math.pi * ARCSEC_PER_RADIAN,
    )


def half_of(included_arcsec: float) -> float:
    """Half angle in radians of an included angle in arc-seconds."""
    return included_arcsec / 2.0 / ARCSEC_PER_RADIAN
