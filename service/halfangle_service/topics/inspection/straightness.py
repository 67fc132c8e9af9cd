"""Straightness of a surface line, from an indicator's readings along it."""

import math
from collections.abc import Iterator
from typing import Annotated, Literal

from pydantic import Field

from halfangle_service.errors import Disagreement
from halfangle_service.fields import (
    ARCSEC_PER_RADIAN,
    ArcsecOut,
    LengthOut,
    NonNegativeLength,
    ResultModel,
    SignedLength,
    UnitsField,
)
from halfangle_service.fields.advisories import Advisory, note
from halfangle_service.fields.drawings.asked import DrawnFields, DrawnResult, is_drawn
from halfangle_service.fields.estimate import LengthEstimate, estimate
from halfangle_service.operation import Outcome, Source, operation
from halfangle_service.trade.decimals import tidy
from halfangle_service.trade.inspection.straightness import Zone, least_squares, minimum_zone
from halfangle_service.trade.inspection.straightness_drawing import straightness_svg
from halfangle_service.trade.uncertainty import Budget, Contribution
from halfangle_service.trade.wording import of_any_unit

_ZONE = Source(
    citation="ISO 12780-1:2011, least-squares and minimum-zone reference lines; ISO 1101:2017, "
    "straightness.",
    standing="from-memory",
)
_HULL = Source(
    citation="Derived here: the narrowest zone lies along an edge of the readings' convex hull, "
    "and rests on three of them.",
    standing="derived",
)
#: More readings than this take more than some milliseconds.
_MANY = 200
Shape = Literal["crowned", "hollow", "straight"]


class StraightnessRequest(DrawnFields):
    """Readings along a surface line."""

    units: UnitsField
    stations: Annotated[list[SignedLength], Field(min_length=3, max_length=500)] = Field(
        description="Places along the line, each once.", examples=[[0, 10, 20, 30, 40]]
    )
    readings_in_order: Annotated[list[SignedLength], Field(min_length=3, max_length=500)] = Field(
        description="Reading of the indicator at each; more is metal nearer to it.",
        examples=[[0.0, 0.003, 0.005, 0.004, 0.001]],
    )
    indicator_error_limit: NonNegativeLength | None = Field(
        None, description="Largest error ± of each reading."
    )
    datum_straightness: NonNegativeLength | None = Field(
        None,
        description="Straightness of the table or way along which the indicator or the part is "
        "moved: what it adds at most.",
    )


class StraightnessContact(ResultModel):
    """A reading that the narrowest zone rests on."""

    station: LengthOut = Field(description="Its place along the line.")
    reading: LengthOut = Field(description="The reading.")


class StraightnessResult(DrawnResult):
    """The straight lines under the readings, and what they leave."""

    straightness: LengthEstimate = Field(
        description="Width of the narrowest zone between two parallel lines that holds all "
        "readings: the straightness of ISO 1101."
    )
    fitted_straightness: LengthOut = Field(
        description="Highest less lowest residual of the least-squares line: never less."
    )
    zone_slope_arcsec: ArcsecOut = Field(description="Slope of the narrowest zone.")
    fitted_slope_arcsec: ArcsecOut = Field(description="Slope of the least-squares line.")
    rests_on: list[StraightnessContact] = Field(
        description="The three readings that the zone rests on: two on one side, then the one on "
        "the other."
    )
    shape: Shape = Field(
        description="`crowned` where the one between the two stands above them, `hollow` where it "
        "stands below; `straight` where nothing is left."
    )
    residuals: list[LengthOut] = Field(description="Each reading less the least-squares line.")


@operation(
    "inspection.straightness",
    relations=(
        "least squares: Σ (reading − a − b x)² least",
        "minimum zone: max − min of (reading − b x) least over b; an edge of the convex hull",
        "width = |y_k − (1 − λ) y_i − λ y_j|, λ = (x_k − x_i) / (x_j − x_i)",
    ),
    sources=(_ZONE, _HULL),
    example={
        "units": "mm",
        "stations": [0, 10, 20, 30, 40],
        "readings_in_order": [0.0, 0.003, 0.005, 0.004, 0.001],
        "indicator_error_limit": 0.0005,
        "datum_straightness": 0.001,
        "formats": ["svg"],
    },
    largest_request="500 readings",
    heavy=lambda request: len(request.stations) > _MANY or is_drawn(request),
)
def straightness(request: StraightnessRequest) -> Outcome[StraightnessResult]:
    """Straightness of a surface line.

    The straight line under an indicator's readings along a surface, by least squares and by the
    narrowest zone, its slope, and how straight the surface is with its uncertainty.
    """
    places, readings = request.stations, request.readings_in_order
    _require_pairs(request)
    line, zone = least_squares(places, readings), minimum_zone(places, readings)
    width = tidy(zone.width, max(map(abs, readings)))
    result = StraightnessResult(
        straightness=estimate(LengthEstimate, _budget(request, zone), width),
        fitted_straightness=line.straightness,
        zone_slope_arcsec=math.atan(zone.slope) * ARCSEC_PER_RADIAN + 0.0,
        fitted_slope_arcsec=math.atan(line.slope) * ARCSEC_PER_RADIAN,
        rests_on=[
            StraightnessContact(station=places[place], reading=readings[place])
            for place in (*zone.ends, zone.opposite)
        ],
        shape=_shape(zone, width),
        residuals=list(line.residuals),
        svg=straightness_svg(places, readings, zone, line, request.units)
        if is_drawn(request)
        else None,
    )
    return Outcome(result, tuple(_advisories(request)))


def _require_pairs(request: StraightnessRequest) -> None:
    places, readings = request.stations, request.readings_in_order
    if len(places) != len(readings):
        raise Disagreement(
            f"{len(places)} stations and {len(readings)} readings were sent.",
            fields={"readings_in_order": f"should be {len(places)} readings"},
        )
    seen: set[float] = set()
    for place, station in enumerate(places):
        if station in seen:
            raise Disagreement(
                f"The station {of_any_unit(station)} was sent twice.",
                fields={f"stations/{place}": "should be another than those before"},
            )
        seen.add(station)


def _budget(request: StraightnessRequest, zone: Zone) -> Budget:
    """The three readings that the zone rests on, each by its share, and the datum's own form."""
    limit, parts, missing = request.indicator_error_limit, [], []
    if limit is None:
        missing.append("indicator_error_limit")
    else:
        first, second = zone.weights(request.stations)
        shares = (first, second, -1.0)
        parts = [
            Contribution("indicator_error_limit", limit, sensitivity=share, of=f"stations/{place}")
            for share, place in zip(shares, (*zone.ends, zone.opposite), strict=True)
        ]
    if request.datum_straightness is None:
        missing.append("datum_straightness")
    else:
        parts.append(Contribution("datum_straightness", request.datum_straightness))
    return Budget(tuple(parts), not_stated=tuple(missing))


def _shape(zone: Zone, width: float) -> Shape:
    if not width:
        return "straight"
    return "crowned" if zone.above else "hollow"


def _advisories(request: StraightnessRequest) -> Iterator[Advisory]:
    if request.datum_straightness is None:
        yield note(
            "datum-in-the-reading",
            "The table or way that guides the indicator reads as part of the surface: reverse the "
            "part, or state `datum_straightness`.",
        )
