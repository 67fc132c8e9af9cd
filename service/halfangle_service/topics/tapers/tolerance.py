"""Tolerance of a cone: its angle's as a grade, an angle or on the diameter, and limits of size."""

from collections.abc import Iterator
from typing import Annotated

from pydantic import Field

from halfangle_service.cautions import by_grade
from halfangle_service.errors import Impossible
from halfangle_service.fields import (
    ARCSEC_PER_RADIAN,
    Angle,
    ArcsecOut,
    Length,
    LengthOut,
    NonNegativeLength,
    ResultModel,
    Unit,
    UnitsField,
    to_mm,
)
from halfangle_service.fields.advisories import Advisory
from halfangle_service.fields.base import Rule
from halfangle_service.fields.choice import not_sent, one_of
from halfangle_service.fields.estimate import NotStated
from halfangle_service.fields.slopes import (
    ConeAngleGrade,
    IncludedAngleBand,
    SlopeFields,
    slope_of,
)
from halfangle_service.operation import Outcome, Source, operation
from halfangle_service.topics.tapers.sources import ISO_1119
from halfangle_service.trade import elementary
from halfangle_service.trade.cone import Slope, rate_from_half_angle, require_before_point
from halfangle_service.trade.tables.tapers.grades import angle_band_of_grade
from halfangle_service.trade.tapers.tolerance import (
    Cone,
    Disposition,
    angle_band,
    diameter_band,
    diameter_band_by_standard,
    half_angle_limits,
    largest_angle_band,
    require_cones,
    require_size_left,
)
from halfangle_service.trade.wording import of_any_unit

_GRADES = Source(
    citation="ISO 1947:1973 (withdrawn): AT grades, rebuilt from the R10 rule and one row, not "
    "read row by row. Hold a drawing's own table above it.",
    standing="from-memory",
)


#: What states the tolerance, of which one is sent.
TOLERANCES = ("cone_angle_grade", "included_angle_band_arcsec", "diameter_band_over_length")


class TaperToleranceRequest(SlopeFields):
    """A cone, and the tolerance of its angle in one of three ways."""

    rules = (Rule("one-of", TOLERANCES),)

    units: UnitsField
    large_diameter: Length = Field(description="Diameter at the large end.", examples=[40.0])
    length: Length = Field(description="Length of the cone.", examples=[80.0])
    cone_angle_grade: ConeAngleGrade = None
    included_angle_band_arcsec: IncludedAngleBand = None
    diameter_band_over_length: Length | None = Field(
        None,
        description="Whole tolerance of the difference of the end diameters, from least to most.",
    )
    disposition: Disposition = Field(
        "symmetric",
        description="Where the tolerance lies to the nominal angle; `symmetric` has half of the "
        "angle to either side, however the tolerance is stated.",
    )
    large_diameter_tolerance: NonNegativeLength | None = Field(
        None, description="Tolerance of the large diameter, plus and minus."
    )
    stations_from_large_end: (
        Annotated[list[NonNegativeLength], Field(min_length=1, max_length=50)] | None
    ) = Field(None, description="Distances from the large end for limits of size; both ends else.")


class TaperStationLimits(ResultModel):
    """Limits of size at one station; null where the large diameter's tolerance was not stated."""

    station_from_large_end: LengthOut = Field(description="Distance from the large end.")
    nominal_diameter: LengthOut = Field(description="Nominal diameter.")
    smallest_diameter: LengthOut | None = Field(description="Smallest diameter.")
    largest_diameter: LengthOut | None = Field(description="Largest diameter.")


class TaperToleranceResult(ResultModel):
    """The tolerance in every form."""

    included_angle: Angle = Field(description="Nominal included angle.")
    included_angle_band_arcsec: ArcsecOut = Field(
        description="Whole tolerance of the included angle."
    )
    included_angle_band_microradians: Annotated[float, Unit("microradian")] = Field(
        description="The same in microradians."
    )
    diameter_band_over_length: LengthOut = Field(
        description="What its limits span on the difference of the end diameters, exactly."
    )
    diameter_band_by_standard: LengthOut = Field(
        description="AT_D = AT_α × length, as the standard states it for slopes up to 1:3."
    )
    smallest_included_angle: Angle = Field(description="Smallest included angle.")
    largest_included_angle: Angle = Field(description="Largest included angle.")
    at_stations: list[TaperStationLimits] = Field(description="Limits of size.")
    not_stated: NotStated


@operation(
    "tapers.tolerance",
    relations=(
        "AT_D = AT_α × L",
        "α_low = α − AT / 4, α_high = α + AT / 4; by the disposition α − AT / 2 or α + AT / 2, and "
        "the nominal",
        "ΔD = 2 l (tan α_high − tan α_low)",
    ),
    sources=(_GRADES, ISO_1119),
    example={
        "units": "mm",
        "one_in_x": 20,
        "large_diameter": 40,
        "length": 80,
        "cone_angle_grade": "AT5",
        "large_diameter_tolerance": 0.01,
    },
    columns=True,
)
def tolerance(request: TaperToleranceRequest) -> Outcome[TaperToleranceResult]:
    """Tolerance of a cone.

    A cone's angle tolerance as a grade, as arc-seconds and on the diameter, and limits of size at
    any station.
    """
    slope = slope_of(request)
    half = slope.half_angle_rad
    require_before_point(request.large_diameter, request.length, half)
    require_size_left(request.large_diameter, request.large_diameter_tolerance)
    stated, band = _band(request, half)
    _require_cones(request, stated, band, half)
    low, high = half_angle_limits(half, band, request.disposition)
    cone = Cone(request.large_diameter, half, low, high)
    result = TaperToleranceResult(
        included_angle=Angle.of(slope.included_angle_degrees),
        included_angle_band_arcsec=request.included_angle_band_arcsec or band * ARCSEC_PER_RADIAN,
        included_angle_band_microradians=band * 1e6,
        diameter_band_over_length=request.diameter_band_over_length
        or diameter_band(low, high, request.length),
        diameter_band_by_standard=diameter_band_by_standard(band, request.length),
        smallest_included_angle=_limit(slope, low),
        largest_included_angle=_limit(slope, high),
        at_stations=[
            _station(request, place, station, cone)
            for place, station in enumerate(
                request.stations_from_large_end or [0.0, request.length]
            )
        ],
        not_stated=not_sent(request, "large_diameter_tolerance"),
    )
    return Outcome(result, tuple(_advisories(request, half)))


def _band(request: TaperToleranceRequest, half: float) -> tuple[str, float]:
    """The one field that states the tolerance, and the included angle's band in radians."""
    stated = one_of(request, *TOLERANCES)
    spans = request.diameter_band_over_length or 0.0
    if request.cone_angle_grade:
        band = angle_band_of_grade(request.cone_angle_grade, to_mm(request.length, request.units))
    elif request.included_angle_band_arcsec is not None:
        band = request.included_angle_band_arcsec / ARCSEC_PER_RADIAN
    else:
        band = angle_band(half, spans, request.length, request.disposition)
    return stated, band


def _require_cones(request: TaperToleranceRequest, stated: str, band: float, half: float) -> None:
    """Refuse a tolerance at whose limit there is no cone, with the largest that leaves one."""
    most = largest_angle_band(half, request.disposition)
    limit = None
    if stated == "diameter_band_over_length" and band >= most:
        low, high = half_angle_limits(half, most, request.disposition)
        limit = of_any_unit(diameter_band(low, high, request.length))
    require_cones(half, band, request.disposition, field=stated, limit=limit)


def _limit(slope: Slope, half: float) -> Angle:
    """Included angle at a limit, from the one stated, so that it comes back as it was."""
    off = elementary.degrees(2.0 * (half - slope.half_angle_rad))
    return Angle.of(slope.included_angle_degrees + off)


def _station(
    request: TaperToleranceRequest, place: int, station: float, cone: Cone
) -> TaperStationLimits:
    if station > request.length:
        raise Impossible(
            f"The station {of_any_unit(station)} lies past the length "
            f"{of_any_unit(request.length)}.",
            fields={f"stations_from_large_end/{place}": "should be at most length"},
        )
    size = request.large_diameter_tolerance
    smallest, largest = (None, None) if size is None else cone.limits(station, size)
    return TaperStationLimits(
        station_from_large_end=station,
        nominal_diameter=cone.nominal(station),
        smallest_diameter=smallest,
        largest_diameter=largest,
    )


def _advisories(request: TaperToleranceRequest, half: float) -> Iterator[Advisory]:
    if request.cone_angle_grade:
        yield from by_grade(rate_from_half_angle(half))
