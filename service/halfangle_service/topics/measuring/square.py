"""A square proved by reversal: its own error told from that of what it is compared with."""

from collections.abc import Iterator

from pydantic import Field

from halfangle_service.errors import Impossible
from halfangle_service.fields import (
    ARCSEC_PER_RADIAN,
    Angle,
    Length,
    NonNegativeLength,
    RequestModel,
    ResultModel,
    SignedLength,
    UnitsField,
)
from halfangle_service.fields.advisories import Advisory, caution
from halfangle_service.fields.estimate import ArcsecEstimate, estimate
from halfangle_service.operation import Outcome, Source, operation
from halfangle_service.trade.measuring.square import reference_error, square_error
from halfangle_service.trade.uncertainty import LargestError, Measured, budget_of
from halfangle_service.trade.wording import arcsec, of_any_unit

#: A reading that rises more than a fiftieth of the height is of no square.
_STEEPEST = 0.02

_REVERSAL = Source(
    citation="Derived here: reversal; the square's lean adds to the column's on one side and is "
    "lessened by it on the other.",
    standing="derived",
)


class MeasuringSquareRequest(RequestModel):
    """Two readings of one face of a square, from one side of a column and from the other."""

    units: UnitsField
    first_rise: SignedLength = Field(
        description="Reading at the top less reading at the bottom, in `units`; more is metal "
        "nearer to the indicator.",
        examples=[0.0006],
    )
    second_rise: SignedLength = Field(
        description="The same of the same face, the square moved to the other side of the column "
        "and the indicator turned round.",
        examples=[-0.0002],
    )
    indicated_height: Length = Field(
        description="Height between the two readings, in `units`.", examples=[6.0]
    )
    indicating_error_limit: NonNegativeLength | None = Field(
        None, description="Largest error ± of each rise that the indicator reads, in `units`."
    )


class MeasuringSquareResult(ResultModel):
    """The square's error and the column's, told apart."""

    square_angle: Angle = Field(description="Angle of the square within its metal.")
    square_error_arcsec: ArcsecEstimate = Field(
        description="That angle less 90°; positive where the face leans out."
    )
    reference_error_arcsec: ArcsecEstimate = Field(
        description="Lean of the column, toward the square in its first place."
    )


@operation(
    "measuring.square",
    relations=(
        "square: tan s = (m1 + m2) / (2 h)",
        "column: tan c = (m1 − m2) / (2 h)",
    ),
    sources=(_REVERSAL,),
    example={
        "units": "in",
        "first_rise": 0.0006,
        "second_rise": -0.0002,
        "indicated_height": 6,
        "indicating_error_limit": 0.00005,
    },
    columns=True,
)
def square(request: MeasuringSquareRequest) -> Outcome[MeasuringSquareResult]:
    """Square by reversal.

    Errors of a square and of the column that it is compared with, from readings on either side of
    the column: no true square is needed.
    """
    height = request.indicated_height
    for name in ("first_rise", "second_rise"):
        if abs(getattr(request, name)) > _STEEPEST * height:
            raise Impossible(
                f"A face that rises {of_any_unit(abs(getattr(request, name)))} over "
                f"{of_any_unit(height)} is of no square.",
                fields={name: f"should be within ±{of_any_unit(_STEEPEST * height)}"},
            )
    error = LargestError("indicating_error_limit", request.indicating_error_limit)
    inputs = (
        Measured("first_rise", request.first_rise, error),
        Measured("second_rise", request.second_rise, error),
    )
    of_square, of_column = (
        estimate(
            ArcsecEstimate,
            budget_of(lambda a, b, f=lean: f(a, b, height), *inputs),
            lean(request.first_rise, request.second_rise, height) * ARCSEC_PER_RADIAN,
            per_unit=ARCSEC_PER_RADIAN,
        )
        for lean in (square_error, reference_error)
    )
    result = MeasuringSquareResult(
        square_angle=Angle.of(90.0 + (of_square.value or 0.0) / 3600.0),
        square_error_arcsec=of_square,
        reference_error_arcsec=of_column,
    )
    return Outcome(result, tuple(_advisories(result)))


def _advisories(result: MeasuringSquareResult) -> Iterator[Advisory]:
    found, known = result.square_error_arcsec, result.square_error_arcsec.expanded_uncertainty
    if known is not None and found.value is not None and abs(found.value) < known:
        yield caution(
            "error-within-uncertainty",
            f"The square's error, {arcsec(found.value)}, is less than what is known of it, "
            f"±{arcsec(known)}: it may be none, or the other way.",
        )
