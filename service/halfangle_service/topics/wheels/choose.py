"""Choosing a way to grind a cone: four of them side by side."""

from collections.abc import Iterator
from typing import Annotated, get_args

from pydantic import Field

from halfangle_service.cautions import WHEEL_SAFETY
from halfangle_service.fields import (
    Angle,
    Arcsec,
    Count,
    CountOut,
    Minutes,
    MinutesOut,
    ResultModel,
    angle_from_radians,
)
from halfangle_service.fields.advisories import Advisory, caution, note, stop
from halfangle_service.fields.choice import at_least_one_of
from halfangle_service.fields.estimate import ArcsecEstimate, estimate
from halfangle_service.fields.wheel.grinder import WayName
from halfangle_service.fields.wheel.ways import Way
from halfangle_service.operation import Outcome, Source, operation
from halfangle_service.topics.wheels.cone import WheelConeFields, cone_of
from halfangle_service.topics.wheels.sizes import unusual_sizes
from halfangle_service.topics.wheels.ways import ChooseWays, ways_of
from halfangle_service.trade.planning.times import MINUTES_PER_PIECE
from halfangle_service.trade.uncertainty import Forecast, forecast_of
from halfangle_service.trade.wording import arcsec, plain

#: Better before worse: what nothing was stated of comes before what cannot be.
_RANK: tuple[Forecast, ...] = ("holds", "may-not-hold", "not-stated", "does-not-hold")


class WheelChooseRequest(WheelConeFields):
    """One cone with its tolerance, and the ways that the shop has."""

    included_angle_tolerance_arcsec: Arcsec = Field(
        description="Tolerance ± on the included angle, in arc-seconds.", examples=[60.0]
    )
    pieces: Annotated[int, Count(ge=1, le=1_000_000)] = Field(1, description="Pieces to grind.")
    minutes_per_piece: Minutes = Field(
        MINUTES_PER_PIECE,
        description="Time to grind one piece, in minutes (common practice, no source).",
    )
    ways: ChooseWays = Field(description="The ways that the shop has; at least one.")


class GrindingWay(ResultModel):
    """One way: what it reaches, what it takes, and why it is ruled out."""

    way: WayName = Field(description="Which way.")
    forecast: Forecast = Field(
        description="Whether the included angle keeps its tolerance: `holds` with a probability "
        "of 95 % at least, and only where every error of the way was stated; `does-not-hold` with "
        "one of 5 % at most, or where the way is ruled out."
    )
    included_angle_error_arcsec: ArcsecEstimate = Field(
        description="Error of the included angle to expect, in arc-seconds; its contributions are "
        "named by the fields of the way."
    )
    first_piece_minutes: MinutesOut = Field(
        description="Time to the first good piece: set-up, dressing, grinding, inspection."
    )
    total_minutes: MinutesOut = Field(description="Time for all pieces.")
    inspect: list[str] = Field(description="What to inspect, in order.")
    ruled_out_by: list[str] = Field(description="Why it is ruled out; empty where it is not.")


class WheelChooseResult(ResultModel):
    """The ways side by side."""

    half_angle: Angle = Field(description="Half angle of the cone.")
    best: WayName | None = Field(
        description="Of the ways that hold, the quickest; else of those that may not hold, the one "
        "with the least expanded uncertainty; null where there is neither."
    )
    ways: list[GrindingWay] = Field(description="The ways described, best first.")
    not_described: list[WayName] = Field(description="Ways that the request does not describe.")
    considered: CountOut = Field(description="How many were considered.")


@operation(
    "wheels.choose",
    relations=(
        "each error is ± on the included angle, twice its effect on the half angle",
        "stack: 2 × error limit / (L cos θ); scale: its graduation; wear: 2 × wear / slant",
        "diamond height, axis offset and yaw act by their square: mean = limit / 3",
        "time = set-up + dressing passes + inspection + pieces × grinding",
    ),
    sources=(
        Source(
            citation="Derived here from the errors of dressing and of the set-up; combined after "
            "JCGM 100:2008, 5.1.2, each error rectangular within its limits.",
            standing="derived",
        ),
        Source(
            citation="JCGM 106:2012, 7: probability of conformance, of which a forecast asks 95 %.",
            standing="from-memory",
        ),
        Source(
            citation="Times where the request names none, and what to inspect.",
            standing="common-practice-no-source",
        ),
    ),
    example={
        "units": "in",
        "included_angle": 60,
        "large_diameter": 0.75,
        "small_diameter": 0.05,
        "wheel_diameter": 7,
        "included_angle_tolerance_arcsec": 70,
        "pieces": 5,
        "ways": {
            "sine_plate": {
                "center_distance": 5,
                "stack_error_limit": 0.00002,
                "plate_error_limit_arcsec": 2,
                "axis_pitch_error_limit_arcsec": 5,
                "axis_yaw_error_limit_arcsec": 600,
                "wheel_breakdown": 0.00005,
            },
            "dressed_wheel": {
                "wheel_width": 0.75,
                "dresser": {"kind": "sine-base", "center_distance": 2},
                "stack_error_limit": 0.00005,
                "diamond_height_error_limit": 0.02,
                "flank_wear": 0.0001,
                "depth_per_pass": 0.001,
            },
            "wheel_side": {"usable_width": 1, "swivel_error_limit_arcsec": 60},
            "swivelled_workhead": {
                "grinder": "cylindrical",
                "graduation": "0 05",
                "axis_offset_error_limit": 0.02,
            },
        },
    },
    heavy=True,
)
def choose(request: WheelChooseRequest) -> Outcome[WheelChooseResult]:
    """Four ways to grind a cone, side by side.

    Sine plate, dressed wheel, wheel's side and swivelled workhead for one cone: the angle error
    that each reaches, its time, what to inspect, and why one is ruled out. Ask `wheels.speed` with
    the wheel's marks before any of them.
    """
    cone = cone_of(request, request.wheel_diameter)
    at_least_one_of(request.ways, *ChooseWays.model_fields, path="ways/")
    ways = list(ways_of(request.ways, cone, request.units))
    rows = sorted((_row(request, way) for way in ways), key=_order)
    described = {way.name for way in ways}
    result = WheelChooseResult(
        half_angle=angle_from_radians(cone.angle_rad),
        best=rows[0].way if rows[0].forecast in {"holds", "may-not-hold"} else None,
        ways=rows,
        not_described=[name for name in get_args(WayName) if name not in described],
        considered=len(rows),
    )
    cautions = (caution for way in ways for caution in way.cautions)
    return Outcome(result, (*_advisories(request, result), *cautions, WHEEL_SAFETY))


def _row(request: WheelChooseRequest, way: Way) -> GrindingWay:
    tolerance = request.included_angle_tolerance_arcsec
    error = estimate(ArcsecEstimate, way.budget)
    by_error = forecast_of(way.budget, -tolerance, tolerance)
    reasons = [reason.words for reason in way.reasons]
    if by_error == "does-not-hold":
        reasons.append(
            f"The error to expect is {arcsec(error.value or 0.0)} ± "
            f"{arcsec(error.expanded_uncertainty or 0.0)}, the tolerance ±{plain(tolerance)}″."
        )
    ahead = way.setup_minutes + way.inspection_minutes
    return GrindingWay(
        way=way.name,
        forecast="does-not-hold" if reasons else by_error,
        included_angle_error_arcsec=error,
        first_piece_minutes=ahead + request.minutes_per_piece,
        total_minutes=ahead + request.pieces * request.minutes_per_piece,
        inspect=list(way.inspect),
        ruled_out_by=reasons,
    )


def _order(row: GrindingWay) -> tuple[int, float, float, str]:
    """Best first; where nothing is sure the least uncertain first, else the quickest."""
    doubt = row.included_angle_error_arcsec.expanded_uncertainty or 0.0
    return (
        _RANK.index(row.forecast),
        doubt if row.forecast == "may-not-hold" else 0.0,
        row.total_minutes,
        row.way,
    )


def _advisories(request: WheelChooseRequest, result: WheelChooseResult) -> Iterator[Advisory]:
    best = result.ways[0]
    if best.forecast == "does-not-hold":
        yield stop(
            "no-way-fits",
            "Every way described is ruled out; the reasons stand beside each. Do not grind this "
            "cone by any of them as it stands.",
        )
    elif best.forecast == "not-stated":
        yield caution(
            "no-way-known",
            "Nothing can be said for any way that is not ruled out: none of its errors was stated.",
        )
    elif best.forecast == "may-not-hold":
        error = best.included_angle_error_arcsec
        unknown = f" (not stated: {', '.join(error.not_stated)})" if error.not_stated else ""
        yield caution(
            "best-way-may-not-hold",
            f"The best way, {best.way}, may not hold the tolerance of "
            f"±{plain(request.included_angle_tolerance_arcsec)}″: its error to expect is "
            f"{arcsec(error.value or 0.0)} ± {arcsec(error.expanded_uncertainty or 0.0)}{unknown}. "
            "Measure the first piece.",
        )
    if request.ways.wheel_side is not None:
        yield note(
            "side-grinding-last",
            "The wheel's side heats the work and cannot be dressed as truly as its periphery: "
            "where another way fits, take that (common practice, no source).",
        )
    yield note(
        "check-the-ground-angle",
        "A dressed angle must be checked optically; a sine setting only against the wrong block "
        "(common practice, no source).",
    )
    yield from unusual_sizes(request, request.units)
