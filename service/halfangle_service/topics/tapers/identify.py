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
from halfangle_service.fields.gauging.measured import measured_angle
from halfangle_service.fields.slopes import SlopeForms, TaperPerFootOut, slope_forms
from halfangle_service.operation import Outcome, operation
from halfangle_service.topics.tapers.sources import ISO_1119
from halfangle_service.trade.cone import INCHES_PER_FOOT, half_angle_from_rate, require_smaller
from halfangle_service.trade.tables.loader import Standing
from halfangle_service.trade.tables.tapers.designations import Row, all_rows
from halfangle_service.trade.tables.tapers.rates import Rate
from halfangle_service.trade.tables.tapers.shanks import shank_dimensions
from halfangle_service.trade.tables.tapers.standard import StandardTaper
from halfangle_service.trade.tapers.identify import Cut, of_one_slope
from halfangle_service.trade.uncertainty import LargestError, Measured


class TaperIdentifyRequest(RequestModel):
    """Two diameters of an unknown taper and the length between them."""

    units: UnitsField
    large_diameter: Length = Field(description="Larger diameter measured.", examples=[0.699])
    small_diameter: Length = Field(description="Smaller diameter measured.", examples=[0.599])
    length: Length = Field(
        description="Distance between the two diameters along the axis.", examples=[2.0]
    )
    diameter_error_limit: NonNegativeLength | None = Field(
        None, description="Largest error of each diameter as measured, plus or minus."
    )
    length_error_limit: NonNegativeLength | None = Field(
        None, description="Largest error of the length as measured, plus or minus."
    )
    max_candidates: Annotated[int, Count(ge=1, le=50)] = Field(
        5, description="How many candidates to list at most."
    )


class TaperCandidateName(ResultModel):
    """One name of a standard taper: a row of the tables."""

    designation: str = Field(description="Designation of the taper or of the rate.")
    name: str = Field(description="Its name or purpose.")
    source: str = Field(description="Where the row comes from.")
    standing: Standing = Field(description="How the row is had.")


class TaperCandidate(ResultModel):
    """A standard taper under every name that it has, and how well it fits."""

    names: list[TaperCandidateName] = Field(
        description="Its names, nearest first: no measuring of this cone tells them apart, since "
        "their slopes lie within 2″ of included angle and the same sizes fit or do not."
    )
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


class TaperIdentifyResult(SlopeForms):
    """The taper as measured, and standard ones: those of fitting size first, best fit first."""

    half_angle: AngleEstimate = Field(description="Half angle as measured, with its uncertainty.")
    candidates: list[TaperCandidate] = Field(description="Candidates, best first.")


@operation(
    "tapers.identify",
    relations=("misfit = (D − d) − C × length",),
    sources=(ISO_1119,),
    example={
        "units": "in",
        "large_diameter": 0.699,
        "small_diameter": 0.599,
        "length": 2,
        "diameter_error_limit": 0.0005,
        "length_error_limit": 0.005,
    },
)
def identify(request: TaperIdentifyRequest) -> Outcome[TaperIdentifyResult]:
    """Which standard taper this is.

    Standard tapers ranked by their misfit to two measured diameters and a length, with the
    measuring error that would explain each; names of one taper stand together.
    """
    require_smaller(request.small_diameter, request.large_diameter)
    cut = _cut(request)
    found = _candidates(request, cut)
    shown = found[: request.max_candidates]
    diameters = LargestError("diameter_error_limit", request.diameter_error_limit)
    lengths = LargestError("length_error_limit", request.length_error_limit)
    result = TaperIdentifyResult(
        half_angle=measured_angle(
            lambda large, small, length: half_angle_from_rate((large - small) / length),
            Measured("large_diameter", request.large_diameter, diameters),
            Measured("small_diameter", request.small_diameter, diameters),
            Measured("length", request.length, lengths, above=0.0),
        ),
        candidates=shown,
        **slope_forms(half_angle_from_rate(cut.rate)),
    )
    rows = [all_rows()[name.designation] for candidate in shown for name in candidate.names]
    return Outcome(result, tuple(_advisories(cut, found)), rows)


def _cut(request: TaperIdentifyRequest) -> Cut:
    """What was measured, and what the errors stated make on the difference of the diameters."""
    by_diameters, by_length = request.diameter_error_limit, request.length_error_limit
    difference = request.large_diameter - request.small_diameter
    return Cut(
        request.large_diameter,
        request.small_diameter,
        request.length,
        slack=2.0 * (by_diameters or 0.0) + difference / request.length * (by_length or 0.0),
        complete=by_diameters is not None and by_length is not None,
    )


def _candidates(request: TaperIdentifyRequest, cut: Cut) -> list[TaperCandidate]:
    """Every standard taper, those of fitting size first, then by their misfit."""
    found = []
    for sizes_fit in (True, False):
        rows = [r for r in all_rows().values() if _sizes_fit(request, cut, r) is sizes_fit]
        found += [_candidate(cut, group, sizes_fit=sizes_fit) for group in of_one_slope(rows)]
    return sorted(found, key=lambda c: (not c.sizes_fit, abs(c.misfit_on_diameter)))


def _sizes_fit(request: TaperIdentifyRequest, cut: Cut, row: Row) -> bool:
    if isinstance(row, Rate):
        return True
    scale = to_mm(1.0, row.units) / to_mm(1.0, request.units)
    smallest = _small_end(row) or row.gauge_diameter / 2.0
    return cut.fits_sizes(smallest * scale, row.gauge_diameter * scale)


def _small_end(row: StandardTaper) -> float | None:
    """Diameter at the small end, by the taper's own row or else by its shank's."""
    shank = shank_dimensions().get(row.designation)
    return row.small_diameter or (None if shank is None else shank.columns["small_end_diameter"])


def _candidate(cut: Cut, group: list[Row], *, sizes_fit: bool) -> TaperCandidate:
    """Rows of one slope as one candidate, under the rate that fits best."""
    rows = sorted(group, key=lambda row: (abs(cut.misfit(row.rate)), row.designation))
    rate = rows[0].rate
    misfit = cut.misfit(rate)
    return TaperCandidate(
        names=[
            TaperCandidateName(
                designation=row.designation,
                name=row.name,
                source=row.source,
                standing=row.standing,
            )
            for row in rows
        ],
        taper_per_foot=INCHES_PER_FOOT * rate,
        misfit_on_diameter=misfit,
        length_error_to_explain=misfit / rate,
        misfit_arcsec=cut.included_misfit_rad(rate) * ARCSEC_PER_RADIAN,
        explained_by_errors=cut.explained(rate),
        sizes_fit=sizes_fit,
    )


def _advisories(cut: Cut, found: list[TaperCandidate]) -> Iterator[Advisory]:
    explained = [c for c in found if c.explained_by_errors and c.sizes_fit]
    if len(explained) > 1:
        yield caution(
            "taper-not-told-apart",
            f"{len(explained)} standard tapers fit within the measuring errors stated. Measure "
            "finer or over a longer distance.",
        )
    if explained and len(explained[0].names) > 1:
        names = [name.designation for name in explained[0].names]
        yield note(
            "names-of-one-taper",
            f"{', '.join(names[:-1])} and {names[-1]} have one slope: no measuring of this cone "
            "tells them apart.",
        )
    if cut.complete and not explained:
        yield note("no-standard-taper", "No standard taper fits within the errors stated.")
