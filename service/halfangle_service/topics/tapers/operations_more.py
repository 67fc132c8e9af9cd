"""Which taper is this, tolerances, notations, rates: models to maths."""

import math
from collections.abc import Iterator

from halfangle_service.errors import Disagreement, Impossible
from halfangle_service.fields import (
    ARCSEC_PER_RADIAN,
    angle_from_radians,
    to_mm,
)
from halfangle_service.fields.advisories import Advisory, caution, note
from halfangle_service.operation import Operation, Outcome, Source, published_table
from halfangle_service.topics.tapers.models_more import (
    TaperAngleRequest,
    TaperAngleResult,
    TaperCandidate,
    TaperIdentifyRequest,
    TaperIdentifyResult,
    TaperRateEntry,
    TaperStationLimits,
    TaperToleranceRequest,
    TaperToleranceResult,
)
from halfangle_service.topics.tapers.models_slope import half_angle_rad_of
from halfangle_service.topics.tapers.operations_feed import require_before_point
from halfangle_service.trade.tables.tapers.rates import (
    Rate,
    diameter_tolerance,
    exact_diameter_change,
    grade_tolerance_rad,
    half_angle_band,
    standard_rates,
)
from halfangle_service.trade.tables.tapers.standard import (
    RowStanding,
    StandardTaper,
    standard_tapers,
)
from halfangle_service.trade.tapers.notation import read_notation
from halfangle_service.trade.wording import plain

_TABLES = Source(
    citation="ASME B5.10, ISO 296, ISO 297, ISO 1119; each row names its own source and standing.",
    standing="published",
)
_GRADES = Source(
    citation="ISO 1947:1973 (withdrawn): AT grades, rebuilt from the R10 rule and one row, not "
    "read row by row. Hold a drawing's own table above it.",
    standing="from-memory",
)
_ISO_1119 = Source(citation="ISO 1119:1998: C = (D − d) / L = 2 tan(α / 2).", standing="published")
#: Largest rate of taper for which the standard takes AT_D = AT_α × L.
_STANDARD_RATE = 1.0 / 3.0


def identify(request: TaperIdentifyRequest) -> Outcome[TaperIdentifyResult]:
    """Standard tapers by how well they fit."""
    difference = request.large_diameter - request.small_diameter
    if difference <= 0:
        raise Impossible(
            "The larger diameter is not larger than the smaller one.",
            fields={"large_diameter": "should be more than small_diameter"},
        )
    rate = difference / request.distance
    slack = 2.0 * request.diameter_error + rate * request.distance_error
    found = [_candidate(request, t, rate, slack) for t in standard_tapers().values()]
    found += [_rate_candidate(request, r, rate, slack) for r in standard_rates().values()]
    found.sort(key=lambda c: (not c.sizes_fit, abs(c.misfit_on_diameter), c.designation))
    included = 2.0 * math.atan(rate / 2.0)
    reach = 2.0 * math.atan((rate + slack / request.distance) / 2.0) - included
    result = TaperIdentifyResult(
        measured_taper_per_foot=12.0 * rate,
        measured_included_angle=angle_from_radians(included),
        included_angle_error_arcsec=reach * ARCSEC_PER_RADIAN,
        candidates=found[: request.candidates],
    )
    return Outcome(result, tuple(_identify_advisories(found, slack)))


def _identify_advisories(found: list[TaperCandidate], slack: float) -> Iterator[Advisory]:
    explained = [c for c in found if c.explained and c.sizes_fit]
    if len(explained) > 1:
        yield caution(
            "taper-not-told-apart",
            f"{len(explained)} standard tapers fit within the measuring errors stated. Measure "
            "finer or over a longer distance.",
        )
    if slack and not explained:
        yield note("no-standard-taper", "No standard taper fits within the errors stated.")


def _candidate(
    request: TaperIdentifyRequest, taper: StandardTaper, rate: float, slack: float
) -> TaperCandidate:
    scale = to_mm(1.0, taper.units) / to_mm(1.0, request.units)
    largest = 1.05 * taper.gauge_diameter * scale
    smallest = 0.95 * (taper.small_diameter or taper.gauge_diameter / 2.0) * scale
    fits = request.large_diameter <= largest and request.small_diameter >= smallest
    name, how = taper.name, taper.standing
    source = taper.source
    return _fitted(request, (taper.designation, name, source, how), (taper.rate, rate, slack), fits)


def _rate_candidate(
    request: TaperIdentifyRequest, row: Rate, rate: float, slack: float
) -> TaperCandidate:
    texts = (row.designation, row.purpose, row.source, row.standing)
    return _fitted(request, texts, (1.0 / row.one_in_x, rate, slack), True)


def _fitted(
    request: TaperIdentifyRequest,
    texts: tuple[str, str, str, RowStanding],
    numbers: tuple[float, float, float],
    fits: bool,
) -> TaperCandidate:
    standard, rate, slack = numbers
    misfit = (rate - standard) * request.distance
    angle = 2.0 * (math.atan(rate / 2.0) - math.atan(standard / 2.0))
    return TaperCandidate(
        designation=texts[0],
        name=texts[1],
        taper_per_foot=12.0 * standard,
        misfit_on_diameter=misfit,
        distance_error_to_explain=misfit / standard,
        misfit_arcsec=angle * ARCSEC_PER_RADIAN,
        explained=abs(misfit) <= slack,
        sizes_fit=fits,
        source=texts[2],
        standing=texts[3],
    )


def tolerance(request: TaperToleranceRequest) -> Outcome[TaperToleranceResult]:
    """Tolerance of a cone in every form."""
    half = half_angle_rad_of(request)
    require_before_point(request.large_diameter, request.length, half)
    band = _band(request, half)
    low, high = _limits(request, half, band)
    stations = request.stations or [0.0, request.length]
    result = TaperToleranceResult(
        included_angle=angle_from_radians(2.0 * half),
        tolerance_arcsec=band * ARCSEC_PER_RADIAN,
        tolerance_microradians=band * 1e6,
        diameter_tolerance_over_length=exact_diameter_change(half, band, request.length),
        diameter_tolerance_by_standard=diameter_tolerance(band, request.length),
        smallest_included_angle=angle_from_radians(2.0 * low),
        largest_included_angle=angle_from_radians(2.0 * high),
        stations=[
            _station(request, index, z, (half, low, high)) for index, z in enumerate(stations)
        ],
    )
    return Outcome(result, tuple(_tolerance_advisories(request, half)))


def _tolerance_advisories(request: TaperToleranceRequest, half: float) -> Iterator[Advisory]:
    if request.grade and 2.0 * math.tan(half) > _STANDARD_RATE:
        yield caution(
            "steeper-than-the-grades",
            "The standard's AT_D = AT × length holds for tapers up to 1:3; this cone is steeper: "
            "hold the exact figure.",
        )
    if request.grade:
        yield note("grades-from-memory", "The table of grades is rebuilt from its rule.")


def _band(request: TaperToleranceRequest, half: float) -> float:
    """Whole tolerance of the included angle in radians, from the one statement given."""
    names = ("grade", "included_angle_tolerance_arcsec", "diameter_tolerance_over_length")
    given = [name for name in names if getattr(request, name) is not None]
    if len(given) != 1:
        raise Disagreement(
            f"One statement of the tolerance is needed; {len(given)} came.",
            fields=dict.fromkeys(given or names[:1], f"send exactly one of {', '.join(names)}"),
        )
    if request.grade:
        return grade_tolerance_rad(request.grade, to_mm(request.length, request.units))
    if request.included_angle_tolerance_arcsec is not None:
        return request.included_angle_tolerance_arcsec / ARCSEC_PER_RADIAN
    return half_angle_band(half, request.diameter_tolerance_over_length or 0.0, request.length)


def _limits(request: TaperToleranceRequest, half: float, band: float) -> tuple[float, float]:
    """Smallest and largest half angle in radians."""
    share = {"plus": (0.0, 0.5), "minus": (0.5, 0.0), "symmetric": (0.25, 0.25)}
    below, above = share[request.disposition]
    low, high = half - below * band, half + above * band
    if low <= 0 or high >= math.pi / 2 or half <= band / 4.0 or half + band / 4 >= math.pi / 2:
        raise Impossible(
            "This tolerance leaves no cone at its limit.",
            fields={"included_angle_tolerance_arcsec": "should be less than the cone's angle"},
        )
    return low, high


def _station(
    request: TaperToleranceRequest, index: int, z: float, halves: tuple[float, float, float]
) -> TaperStationLimits:
    if z > request.length:
        raise Impossible(
            f"The station {plain(z)} lies past the length {plain(request.length)}.",
            fields={f"stations/{index}": "should be at most length"},
        )
    nominal, blunt_low, blunt_high = (
        request.large_diameter - 2.0 * z * math.tan(half) for half in halves
    )
    size = request.large_diameter_tolerance
    return TaperStationLimits(
        distance=z,
        nominal=max(0.0, nominal),
        smallest=max(0.0, blunt_high - size),
        largest=max(0.0, blunt_low + size),
    )


def angle(request: TaperAngleRequest) -> Outcome[TaperAngleResult]:
    """One notation in every form."""
    reading = read_notation(request.text, request.bare_angle_is)
    half = reading.half_angle_rad
    rate = 2.0 * math.tan(half)
    return Outcome(
        TaperAngleResult(
            read_as=reading.read_as,
            included_angle=angle_from_radians(2.0 * half),
            half_angle=angle_from_radians(half),
            complement=angle_from_radians(math.pi / 2.0 - half),
            half_angle_radians=half,
            taper_per_foot=12.0 * rate,
            taper_per_length=rate,
            one_in_x=1.0 / rate,
            percent=100.0 * rate,
        )
    )


def _rate_entry(row: Rate) -> TaperRateEntry:
    return TaperRateEntry(
        designation=row.designation,
        purpose=row.purpose,
        included_angle=angle_from_radians(math.radians(row.cone_angle_degrees)),
        one_in_x=row.one_in_x,
        taper_per_foot=12.0 / row.one_in_x,
        source=row.source,
        standing=row.standing,
    )


@published_table("tapers.rates", singular="rate", key="designation", sources=(_TABLES,))
def rates() -> dict[str, TaperRateEntry]:
    """Standard rates of taper.

    Rates of taper and cone angles of ISO 1119, taper pins and pipe.
    """
    return {designation: _rate_entry(row) for designation, row in standard_rates().items()}


IDENTIFY = Operation(
    topic="tapers",
    verb="identify",
    title="Which standard taper is this?",
    summary="Standard tapers ranked by their misfit to two measured diameters and a distance, with "
    "the measuring error that would explain each.",
    request=TaperIdentifyRequest,
    result=TaperIdentifyResult,
    calculate=identify,
    relations=("misfit = (D − d) − C × distance",),
    sources=(_TABLES,),
    example={
        "units": "in",
        "large_diameter": 0.699,
        "small_diameter": 0.599,
        "distance": 2,
        "diameter_error": 0.0005,
        "distance_error": 0.005,
    },
)
TOLERANCE = Operation(
    topic="tapers",
    verb="tolerance",
    title="Tolerance of a cone",
    summary="A cone's angle tolerance as a grade, as arc-seconds and on the diameter, and limits "
    "of size at any station.",
    request=TaperToleranceRequest,
    result=TaperToleranceResult,
    calculate=tolerance,
    relations=("AT_D = AT_α × L", "ΔD = 2 l (tan α_high − tan α_low)"),
    sources=(_GRADES, _ISO_1119),
    example={
        "units": "mm",
        "one_in_x": 20,
        "large_diameter": 40,
        "length": 80,
        "grade": "AT5",
    },
)
ANGLE = Operation(
    topic="tapers",
    verb="angle",
    title="A taper's angle in every notation",
    summary="Reads an angle as a drawing writes it and gives it in every form.",
    request=TaperAngleRequest,
    result=TaperAngleResult,
    calculate=angle,
    relations=("C = 2 tan α", "1:x with x = 1 / C", "taper per foot = 12 C"),
    sources=(_ISO_1119,),
    example={"text": "3/4 per foot"},
)
