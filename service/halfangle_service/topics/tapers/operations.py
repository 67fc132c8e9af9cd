"""The tapers topic's operations: models to maths and back."""

import math

from halfangle_service.fields import angle_from_radians, bench_step
from halfangle_service.operation import Operation, Outcome, Source, published_table
from halfangle_service.topics.tapers.models import (
    StandardShankDimensions,
    StandardTaperEntry,
    TaperSolveRequest,
    TaperSolveResult,
)
from halfangle_service.topics.tapers.operations_contact import (
    ONE_BALL,
    OVER_BALLS,
    OVER_BALLS_NOMINAL,
    OVER_ROLLS,
    OVER_ROLLS_NOMINAL,
)
from halfangle_service.topics.tapers.operations_feed import CLEAN_UP, INFEED, STANDOFF
from halfangle_service.topics.tapers.operations_grooves import (
    DOVETAIL_OVER_ROLLS,
    VEE_OVER_ROLLS,
    VEE_OVER_ROLLS_NOMINAL,
)
from halfangle_service.topics.tapers.operations_more import (
    ANGLE,
    IDENTIFY,
    TOLERANCE,
)
from halfangle_service.topics.tapers.operations_plugs import PLUG_DEPTH, PLUG_DEPTH_NOMINAL
from halfangle_service.topics.tapers.operations_setting import SET_OVER
from halfangle_service.trade.cone import (
    INCHES_PER_FOOT,
    rate_from_half_angle,
    rate_from_taper_per_foot,
)
from halfangle_service.trade.tables.tapers.shanks import SHANK_COLUMNS, shank_dimensions
from halfangle_service.trade.tables.tapers.standard import StandardTaper, standard_tapers
from halfangle_service.trade.tapers.solve import solve_taper

_ISO_1119 = Source(
    citation="ISO 1119:1998, definition of the rate of taper: C = (D - d) / L = 2 tan(α/2), α the "
    "cone angle.",
    standing="published",
)
_TABLES = Source(
    citation="ASME B5.10, ISO 296, ISO 297; each row names its own source and standing.",
    standing="published",
)


def solve(request: TaperSolveRequest) -> Outcome[TaperSolveResult]:
    """Whole taper from three of its four quantities."""
    taper = solve_taper(
        large_diameter=request.large_diameter,
        small_diameter=request.small_diameter,
        length=request.length,
        rates=given_rates(request),
        agree_within=request.agree_within or bench_step(request.units),
    )
    return Outcome(
        TaperSolveResult(
            large_diameter=taper.large_diameter,
            small_diameter=taper.small_diameter,
            length=taper.length,
            slant_length=taper.slant_length,
            included_angle=angle_from_radians(2.0 * taper.half_angle_rad),
            half_angle=angle_from_radians(taper.half_angle_rad),
            taper_per_foot=taper.rate * INCHES_PER_FOOT,
            one_in_x=1.0 / taper.rate,
            rate_of_taper=taper.rate,
        )
    )


def given_rates(request: TaperSolveRequest) -> dict[str, float]:
    """Every slope that was given, as a rate of taper, by its field's name."""
    rates: dict[str, float] = {}
    if request.included_angle is not None:
        rates["included_angle"] = rate_from_half_angle(math.radians(request.included_angle) / 2.0)
    if request.half_angle is not None:
        rates["half_angle"] = rate_from_half_angle(math.radians(request.half_angle))
    if request.taper_per_foot is not None:
        rates["taper_per_foot"] = rate_from_taper_per_foot(request.taper_per_foot)
    if request.one_in_x is not None:
        rates["one_in_x"] = 1.0 / request.one_in_x
    return rates


def _entry(taper: StandardTaper) -> StandardTaperEntry:
    return StandardTaperEntry(
        designation=taper.designation,
        name=taper.name,
        series=taper.series,
        units=taper.units,
        gauge_diameter=taper.gauge_diameter,
        small_diameter=taper.small_diameter,
        depth=taper.depth,
        included_angle=angle_from_radians(2.0 * math.atan(taper.rate / 2.0)),
        taper_per_foot=taper.rate * INCHES_PER_FOOT,
        one_in_x=1.0 / taper.rate,
        source=taper.source,
        dimensions=_dimensions(taper.designation),
        standing=taper.standing,
    )


def _dimensions(designation: str) -> StandardShankDimensions | None:
    row = shank_dimensions().get(designation)
    if row is None:
        return None
    lengths = {column: row[column] for column in SHANK_COLUMNS}
    return StandardShankDimensions(
        units="mm",
        published=row["published"],
        source=row["source"],
        standing=row["standing"],
        **lengths,
    )


@published_table("tapers.standard", singular="standard", key="designation", sources=(_TABLES,))
def standard() -> dict[str, StandardTaperEntry]:
    """Standard tapers.

    Standard tapers from published tables, each row with its source.
    """
    return {designation: _entry(taper) for designation, taper in standard_tapers().items()}


OPERATIONS = (
    Operation(
        topic="tapers",
        verb="solve",
        title="Taper from three of its quantities",
        summary="Large diameter, small diameter, length and slope from any three of them; more "
        "than three must agree.",
        request=TaperSolveRequest,
        result=TaperSolveResult,
        calculate=solve,
        relations=("C = (D - d) / l = 2 tan α", "taper per foot = 12 C", "1:x with x = 1 / C"),
        sources=(_ISO_1119,),
        example={
            "units": "in",
            "large_diameter": 0.7,
            "length": 2.5625,
            "taper_per_foot": 0.59941,
        },
    ),
    INFEED,
    CLEAN_UP,
    STANDOFF,
    OVER_ROLLS,
    OVER_ROLLS_NOMINAL,
    OVER_BALLS,
    OVER_BALLS_NOMINAL,
    ONE_BALL,
    VEE_OVER_ROLLS,
    VEE_OVER_ROLLS_NOMINAL,
    DOVETAIL_OVER_ROLLS,
    PLUG_DEPTH,
    PLUG_DEPTH_NOMINAL,
    IDENTIFY,
    TOLERANCE,
    ANGLE,
    SET_OVER,
)
