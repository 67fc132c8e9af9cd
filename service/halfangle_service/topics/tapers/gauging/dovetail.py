"""A dovetail with rolls in its corners: the measure from its width, or its width from the measure.

A male dovetail is measured over the rolls, a female one between them; θ is the flank's angle to the
base, at which the sharp corners lie.
"""

from typing import Annotated, Literal

from pydantic import Field

from halfangle_service.cautions import odd_sizes
from halfangle_service.errors import Disagreement, Impossible
from halfangle_service.fields import (
    ARCSEC_PER_RADIAN,
    FINITE,
    AngleInput,
    Length,
    LengthOut,
    RequestModel,
    ResultModel,
    Unit,
    UnitsField,
    bench_step,
)
from halfangle_service.fields.choice import at_least_one_of
from halfangle_service.fields.estimate import LengthEstimate, estimate
from halfangle_service.fields.gauging.measured import (
    MeasureErrorLimit,
    RollErrorLimit,
    measured_length,
)
from halfangle_service.operation import Outcome, Source, operation
from halfangle_service.topics.tapers.sources import TANGENT_CIRCLES
from halfangle_service.trade import elementary
from halfangle_service.trade.tapers.contact import (
    dovetail_constant,
    dovetail_contact,
    dovetail_spread,
    require_contact,
)
from halfangle_service.trade.uncertainty import Budget, LargestError, Measured
from halfangle_service.trade.wording import of_any_unit

_HANDBOOK = Source(
    citation="Machinery's Handbook, dovetail slides measured over rolls: D (1 + cot(θ/2)).",
    standing="published",
)


class DovetailOverRollsRequest(RequestModel):
    """A dovetail slide, and two equal rolls in its corners."""

    units: UnitsField
    kind: Literal["male", "female"] = Field(
        description="`male`: the measure is over the rolls; `female`: between them.",
        examples=["male"],
    )
    flank_angle: Annotated[float, AngleInput(ge=20, lt=90)] = Field(
        description="Angle of the flank to the base, in degrees.", examples=[60.0]
    )
    flank_height: Length = Field(description="Height of the flank.", examples=[10.0])
    roll_diameter: Length = Field(description="Diameter of the rolls.", examples=[8.0])
    corner_width: Length | None = Field(
        None, description="Width between the sharp corners at the base.", examples=[50.0]
    )
    measure: Length | None = Field(None, description="Measure over or between the rolls.")
    measure_error_limit: MeasureErrorLimit = None
    roll_error_limit: RollErrorLimit = None
    flank_angle_error_limit_arcsec: (
        Annotated[float, FINITE, Field(ge=0, le=3600), Unit("arcsecond")] | None
    ) = Field(None, description="Largest error of the flank's angle, plus or minus.")


class DovetailOverRollsResult(ResultModel):
    """Widths of a dovetail and its measure with rolls.

    From a measure follow the widths, each with its uncertainty; from a corner width alone, taken
    as exact, the measure to expect and the edge width.
    """

    measure: LengthEstimate = Field(description="Over the rolls (male) or between them (female).")
    corner_width: LengthEstimate = Field(description="Width between the sharp corners at the base.")
    edge_width: LengthEstimate = Field(
        description="Width between the sharp edges at the other face."
    )
    contact_height: LengthOut = Field(description="Height over the base where a roll touches.")
    rolls_constant: LengthOut = Field(description="d (1 + cot(θ / 2)): both rolls' share.")


@operation(
    "tapers.dovetail-over-rolls",
    relations=("M = corner width ± d (1 + cot(θ / 2))", "contact height = r (1 + cos θ)"),
    sources=(_HANDBOOK, TANGENT_CIRCLES),
    example={
        "units": "mm",
        "kind": "male",
        "flank_angle": 60,
        "flank_height": 10,
        "roll_diameter": 8,
        "corner_width": 50,
        "roll_error_limit": 0.0005,
        "flank_angle_error_limit_arcsec": 20,
    },
    columns=True,
)
def dovetail(request: DovetailOverRollsRequest) -> Outcome[DovetailOverRollsResult]:
    """Dovetail over rolls.

    Measure over or between two rolls in a dovetail's corners, or its widths from it.
    """
    angle = elementary.radians(request.flank_angle)
    share = dovetail_constant(angle, request.roll_diameter)
    contact = dovetail_contact(angle, request.roll_diameter)
    require_contact(contact, request.flank_height, "roll", "roll_diameter")
    sign = 1.0 if request.kind == "male" else -1.0
    corner = _corner_width(request, sign * share)
    edge = corner + sign * dovetail_spread(angle, request.flank_height)
    _require_room(request, corner, corner + sign * share, edge)
    return Outcome(
        DovetailOverRollsResult(
            contact_height=contact, rolls_constant=share, **_sizes(request, corner, sign)
        ),
        odd_sizes(request.units, "rolls", request.roll_diameter),
    )


def _corner_width(request: DovetailOverRollsRequest, share: float) -> float:
    """Corner width as given, or from the measure; both must agree to the bench step."""
    sent = at_least_one_of(request, "corner_width", "measure")
    given, measured_width = request.corner_width or 0.0, (request.measure or 0.0) - share
    if len(sent) > 1 and abs(measured_width - given) > bench_step(request.units):
        raise Disagreement(
            f"measure gives a corner width of {of_any_unit(measured_width)}, not "
            f"{of_any_unit(given)}.",
            fields={"measure": "should agree with corner_width, or be left out"},
        )
    return given if "corner_width" in sent else measured_width


def _require_room(
    request: DovetailOverRollsRequest, corner: float, measure: float, edge: float
) -> None:
    """Refuse flanks or rolls that leave a width nothing, by the width that was sent."""
    if min(corner, measure, edge) <= 0:
        raise Impossible(
            f"No such dovetail: corner width {of_any_unit(corner)}, edge width "
            f"{of_any_unit(edge)}, measure "
            f"{of_any_unit(measure)}; all must be above zero.",
            fields=dict.fromkeys(
                at_least_one_of(request, "corner_width", "measure"),
                "should leave room for flanks and rolls",
            ),
        )


def _sizes(
    request: DovetailOverRollsRequest, corner: float, sign: float
) -> dict[str, LengthEstimate]:
    """Measure and widths with their uncertainty: from the measure, or else from the corner width.

    `sign` is 1 for a male dovetail and -1 for a female one.
    """
    rolls = LargestError("roll_error_limit", request.roll_error_limit)
    roll = Measured("roll_diameter", request.roll_diameter, rolls, above=0.0)
    flanks = LargestError("flank_angle_error_limit_arcsec", request.flank_angle_error_limit_arcsec)
    flank = Measured("flank_angle", request.flank_angle * 3600.0, flanks, unit="arcsecond")

    def share(roll_diameter: float, angle_arcsec: float) -> float:
        return sign * dovetail_constant(angle_arcsec / ARCSEC_PER_RADIAN, roll_diameter)

    def spread(angle_arcsec: float) -> float:
        return sign * dovetail_spread(angle_arcsec / ARCSEC_PER_RADIAN, request.flank_height)

    if request.measure is None:
        return {
            "corner_width": estimate(LengthEstimate, Budget(()), corner),
            "measure": measured_length(lambda d, a: corner + share(d, a), roll, flank),
            "edge_width": measured_length(lambda a: corner + spread(a), flank),
        }
    measures = LargestError("measure_error_limit", request.measure_error_limit)
    over = Measured("measure", corner + share(roll.value, flank.value), measures)
    return {
        "measure": measured_length(lambda m: m, over),
        "corner_width": measured_length(lambda m, d, a: m - share(d, a), over, roll, flank),
        "edge_width": measured_length(
            lambda m, d, a: m - share(d, a) + spread(a), over, roll, flank
        ),
    }
