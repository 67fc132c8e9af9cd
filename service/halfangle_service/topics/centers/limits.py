"""How true a center must be, for what the work may see at a station."""

from typing import Annotated

from pydantic import Field

from halfangle_service.errors import Disagreement
from halfangle_service.fields import (
    FINITE,
    Length,
    LengthOut,
    NonNegativeLength,
    ResultModel,
    SharePercent,
    Unit,
    UnitsField,
)
from halfangle_service.fields.advisories import note
from halfangle_service.fields.base import Rule
from halfangle_service.fields.choice import at_least_one_of
from halfangle_service.fields.slopes import SlopeFields, slope_if_stated
from halfangle_service.operation import Outcome, Source, operation
from halfangle_service.topics.centers.sources import STRAIGHT_AXIS
from halfangle_service.trade import elementary
from halfangle_service.trade.centers.limits import (
    center_weight,
    eccentricity_limit,
    tir_on_cone,
)

#: Half angle of a center where no slope is stated, in degrees.
USUAL_HALF_ANGLE = 30.0
_ZONE = Source(
    citation="ISO 1101:2017, coaxiality: the zone is a cylinder whose diameter is the tolerance.",
    standing="published",
)


#: What is allowed on the work, of which one is sent, or both.
LIMITS = ("limit_tir", "limit_position")


class CenterLimitsRequest(SlopeFields):
    """What the work may see at a station between two centers: its runout, its position, or both.

    The slope is that of the center's cone, for the reading square to its surface; 60° included
    where none is stated.
    """

    rules = (Rule("at-least-one-of", LIMITS),)

    units: UnitsField
    limit_tir: Length | None = Field(
        None,
        description="Runout that the work may show at the station, as full indicator movement, in "
        "`units`.",
        examples=[0.0005],
    )
    limit_position: Length | None = Field(
        None,
        description="How far the work's axis may be off its place at the station, in `units`.",
        examples=[0.0002],
    )
    share_percent: Annotated[float, FINITE, Field(gt=0, le=100), Unit("percent")] = Field(
        100.0,
        description="Share of what is allowed that the center may take, in percent, such as 10 or "
        "25.",
        examples=[25],
    )
    distance_between_centers: Length = Field(
        description="Distance between the two centers, in `units`.", examples=[6.0]
    )
    station_from_center: NonNegativeLength = Field(
        description="Distance of the station from this center, in `units`.", examples=[1.0]
    )
    other_eccentricity: NonNegativeLength | None = Field(
        None,
        description="Eccentricity of the other center, in `units`, 0 for a true one; it counts in "
        "the worst way. Needed unless `both_alike` is true.",
        examples=[0.0001],
    )
    both_alike: bool = Field(
        False,
        description="Hold both centers to one limit, in place of `other_eccentricity`.",
    )


class CenterLimit(ResultModel):
    """One limit in every form, all of one meaning for a round cone that is only off center."""

    eccentricity: LengthOut = Field(description="Offset of the cone's axis from the shank's.")
    tir: LengthOut = Field(
        description="Full indicator movement square to the axis: twice the eccentricity."
    )
    zone_diameter: LengthOut = Field(
        description="Diameter of the coaxiality zone: twice the eccentricity."
    )
    tir_on_cone: LengthOut = Field(
        description="Full indicator movement square to the cone's surface: 2 e cos α."
    )


class CenterLimitsResult(ResultModel):
    """The limits of this center, for each way of using it."""

    seen_percent: SharePercent = Field(
        description="Share of this center's eccentricity that the work sees at the station: "
        "100 (1 - z/L)."
    )
    live: CenterLimit = Field(
        description="For a live center, which turns with the work: its eccentricity is runout of "
        "the work, and moves its axis."
    )
    dead: CenterLimit | None = Field(
        description="For a dead center, which stands still: its eccentricity only moves the work's "
        "axis. Null where no position is given, since it makes no runout."
    )
    dead_reseated: CenterLimit | None = Field(
        description="For a dead center that may be put back at any clocking between parts: from "
        "part to part the axis may then move by twice as much."
    )


@operation(
    "centers.limits",
    relations=(
        "e(z) = e1 (1 - z/L) + e2 z/L",
        "TIR = 2 e, zone diameter = 2 e",
        "TIR square to the cone's surface = 2 e cos α",
    ),
    sources=(STRAIGHT_AXIS, _ZONE),
    example={
        "units": "in",
        "limit_tir": 0.0005,
        "limit_position": 0.0002,
        "share_percent": 25,
        "distance_between_centers": 6,
        "station_from_center": 1,
        "both_alike": True,
    },
    columns=True,
)
def limits(request: CenterLimitsRequest) -> Outcome[CenterLimitsResult]:
    """How true a center must be.

    From the runout or the position error that the work may see at a station between two centers:
    the limit of the center as eccentricity, as TIR and as a coaxiality zone.
    """
    at_least_one_of(request, *LIMITS)
    _require_other(request)
    weight = center_weight(
        request.distance_between_centers, request.station_from_center, request.units
    )
    # A live center's eccentricity is seen as runout of twice its size, and as position.
    as_runout = None if request.limit_tir is None else request.limit_tir / 2.0
    position = request.limit_position
    either = min(offset for offset in (as_runout, position) if offset is not None)
    result = CenterLimitsResult(
        seen_percent=100.0 * weight,
        live=_limit(request, either, weight),
        dead=None if position is None else _limit(request, position, weight),
        dead_reseated=None if position is None else _limit(request, position / 2.0, weight),
    )
    if position is not None:
        return Outcome(result)
    message = (
        "A dead center makes no runout: its eccentricity moves the work's axis and shows as taper "
        "or position. Send limit_position for its limit."
    )
    return Outcome(result, (note("dead-center-no-runout", message),))


def _require_other(request: CenterLimitsRequest) -> None:
    """Refuse what says nothing of the other center, or two things."""
    if (request.other_eccentricity is None) is request.both_alike:
        return
    how = "both were sent" if request.both_alike else "neither was sent"
    raise Disagreement(
        "What this center may take depends on the other one: send `other_eccentricity`, 0 for a "
        f"true one, or `both_alike` as true; {how}.",
        fields={
            "other_eccentricity": "should be sent unless both_alike is true",
            "both_alike": "should be true unless other_eccentricity is sent",
        },
    )


def _limit(request: CenterLimitsRequest, allowed_offset: float, weight: float) -> CenterLimit:
    """One limit in every form."""
    eccentricity = eccentricity_limit(
        allowed_offset * (request.share_percent / 100.0),
        weight,
        request.other_eccentricity or 0.0,
        request.units,
        both_alike=request.both_alike,
    )
    slope = slope_if_stated(request)
    half_rad = elementary.radians(USUAL_HALF_ANGLE) if slope is None else slope.half_angle_rad
    return CenterLimit(
        eccentricity=eccentricity,
        tir=2.0 * eccentricity,
        zone_diameter=2.0 * eccentricity,
        tir_on_cone=tir_on_cone(eccentricity, half_rad),
    )
