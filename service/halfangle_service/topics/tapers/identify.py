"""Which standard taper this is: the published ones ranked by their misfit to what was measured."""

from collections.abc import Iterator
from typing import Annotated

from pydantic import Field

from halfangle_service.fields import (
    ARCSEC_PER_RADIAN,
    ArcsecOut,
    Count,
    Length,
    LengthOut,
    NonNegativeLength,
    RequestModel,
    ResultModel,
    UnitsField,
    to_mm,
)
from halfangle_service.fields.advisories import Advisory, caution, note
from halfangle_service.fields.estimate import AngleEstimate
from halfangle_service.fields.slopes import SlopeForms, TaperPerFootOut, slope_forms
from halfangle_service.operation import Outcome, operation
from halfangle_service.topics.tapers.gauging.measured import measured_angle
from halfangle_service.topics.tapers.sources import TABLES
from halfangle_service.trade.cone import INCHES_PER_FOOT, half_angle_from_rate, require_smaller
from halfangle_service.trade.tables.tapers.rates import Rate, standard_rates
from halfangle_service.trade.tables.tapers.standard import (
    RowStanding,
    StandardTaper,
    standard_tapers,
)
from halfangle_service.trade.tapers.identify import Cut
from halfangle_service.trade.uncertainty import LargestError, Measured


class TaperIdentifyRequest(RequestModel):
    """Two diameters of an unknown taper and the length between them."""

    units: UnitsField
    large_diameter: Length = Field(description="Larger diameter measured.", examples=[0.699])
    small_diameter: Length = Field(description="Smaller diameter measured.", examples=[0.599])
    length: Length = Field(
        description="Distance between the two diameters along the axis.", examples=[2.0]
    )
    diameter_tolerance: NonNegativeLength | None = Field(
        None, description="Largest error of each diameter as measured, plus or minus."
    )
    length_tolerance: NonNegativeLength | None = Field(
        None, description="Largest error of the length as measured, plus or minus."
    )
    max_candidates: Annotated[int, Count(ge=1, le=50)] = Field(
        5, description="How many candidates to list at most."
    )


class TaperCandidate(ResultModel):
    """A standard taper, and how well it fits."""

    designation: str = Field(description="Designation of the taper or of the rate.")
    name: str = Field(description="Its name or purpose.")
    taper_per_foot: TaperPerFootOut
    misfit_on_diameter: LengthOut = Field(
        description="Measured difference of the diameters less the one that this taper has over "
        "the same length: the error of measured diameters that would explain it."
    )
    length_error_to_explain: LengthOut = Field(
        description="Error of the length that would explain the same misfit."
    )
    misfit_arcsec: ArcsecOut = Field(description="Measured less standard included angle.")
    explained_by_errors: bool | None = Field(
        description="Whether the measuring errors stated explain the misfit; null where they do "
        "not and others were not stated."
    )
    sizes_fit: bool = Field(
        description="Whether both diameters lie within the table's, to 5 %; true for a mere rate."
    )
    source: str = Field(description="Where the row comes from.")
    standing: RowStanding = Field(description="How the row is had.")


class TaperIdentifyResult(SlopeForms):
    """The taper as measured, and standard ones: those of fitting size first, best fit first."""

    half_angle: AngleEstimate = Field(description="Half angle as measured, with its uncertainty.")
    candidates: list[TaperCandidate] = Field(description="Candidates, best first.")


@operation(
    "tapers.identify",
    relations=("misfit = (D − d) − C × length",),
    sources=(TABLES,),
    example={
        "units": "in",
        "large_diameter": 0.699,
        "small_diameter": 0.599,
        "length": 2,
        "diameter_tolerance": 0.0005,
        "length_tolerance": 0.005,
    },
)
def identify(request: TaperIdentifyRequest) -> Outcome[TaperIdentifyResult]:
    """Which standard taper this is.

    Standard tapers ranked by their misfit to two measured diameters and a length, with the
    measuring error that would explain each.
    """
    require_smaller(request.small_diameter, request.large_diameter)
    cut = _cut(request)
    found = [_taper(request, cut, taper) for taper in standard_tapers().values()]
    found += [_rate(cut, row) for row in standard_rates().values()]
    found.sort(key=lambda c: (not c.sizes_fit, abs(c.misfit_on_diameter), c.designation))
    diameters = LargestError("diameter_tolerance", request.diameter_tolerance)
    lengths = LargestError("length_tolerance", request.length_tolerance)
    result = TaperIdentifyResult(
        half_angle=measured_angle(
            lambda large, small, length: half_angle_from_rate((large - small) / length),
            Measured("large_diameter", request.large_diameter, diameters),
            Measured("small_diameter", request.small_diameter, diameters),
            Measured("length", request.length, lengths, above=0.0),
        ),
        candidates=found[: request.max_candidates],
        **slope_forms(half_angle_from_rate(cut.rate)),
    )
    return Outcome(result, tuple(_advisories(cut, found)))


def _cut(request: TaperIdentifyRequest) -> Cut:
    """What was measured, and what the errors stated make on the difference of the diameters."""
    by_diameters, by_length = request.diameter_tolerance, request.length_tolerance
    difference = request.large_diameter - request.small_diameter
    return Cut(
        request.large_diameter,
        request.small_diameter,
        request.length,
        slack=2.0 * (by_diameters or 0.0) + difference / request.length * (by_length or 0.0),
        complete=by_diameters is not None and by_length is not None,
    )


def _taper(request: TaperIdentifyRequest, cut: Cut, taper: StandardTaper) -> TaperCandidate:
    scale = to_mm(1.0, taper.units) / to_mm(1.0, request.units)
    smallest = taper.small_diameter or taper.gauge_diameter / 2.0
    fits = cut.fits_sizes(smallest * scale, taper.gauge_diameter * scale)
    return _candidate(cut, taper, taper.name, sizes_fit=fits)


def _rate(cut: Cut, row: Rate) -> TaperCandidate:
    return _candidate(cut, row, row.purpose, sizes_fit=True)


def _candidate(
    cut: Cut, row: StandardTaper | Rate, name: str, *, sizes_fit: bool
) -> TaperCandidate:
    misfit = cut.misfit(row.rate)
    return TaperCandidate(
        designation=row.designation,
        name=name,
        taper_per_foot=INCHES_PER_FOOT * row.rate,
        misfit_on_diameter=misfit,
        length_error_to_explain=misfit / row.rate,
        misfit_arcsec=cut.included_misfit_rad(row.rate) * ARCSEC_PER_RADIAN,
        explained_by_errors=cut.explained(row.rate),
        sizes_fit=sizes_fit,
        source=row.source,
        standing=row.standing,
    )


def _advisories(cut: Cut, found: list[TaperCandidate]) -> Iterator[Advisory]:
    explained = [c for c in found if c.explained_by_errors and c.sizes_fit]
    if len(explained) > 1:
        yield caution(
            "taper-not-told-apart",
            f"{len(explained)} standard tapers fit within the measuring errors stated. Measure "
            "finer or over a longer distance.",
        )
    if cut.slack and cut.complete and not explained:
        yield note("no-standard-taper", "No standard taper fits within the errors stated.")
