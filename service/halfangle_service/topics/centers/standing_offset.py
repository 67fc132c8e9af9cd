"""A center that stands off the line: towards the wheel it makes taper, across hardly any."""

from collections.abc import Iterator
from typing import Annotated

from pydantic import Field

from halfangle_service.errors import Disagreement, Impossible
from halfangle_service.fields import (
    ARCSEC_PER_RADIAN,
    ArcsecOut,
    Length,
    LengthOut,
    NonNegativeLength,
    RequestModel,
    ResultModel,
    SignedLength,
    UnitsField,
)
from halfangle_service.fields.advisories import Advisory, note
from halfangle_service.operation import Outcome, Source, operation
from halfangle_service.trade import elementary
from halfangle_service.trade.centers.standing import Ground, radius_change
from halfangle_service.trade.centers.standing_drawing import standing_offset_svg
from halfangle_service.trade.wording import of_any_unit, small_length

_OFFSET = Source(
    citation="Derived here: distance of the work's axis from the wheel's along the line of the "
    "centers; h²/2r is the first term of it for a point.",
    standing="derived",
)
#: Lean of the work's axis past which what it leaves out, the second order of it, counts.
_STEEPEST = 0.1


class StandingOffsetRequest(RequestModel):
    """Work between a true center and one that is off, and what grinds or indicates it."""

    units: UnitsField
    ground_by: Ground = Field(
        description="`round-wheel`: a cylindrical grinder's; `point`: a tool's or an indicator's "
        "tip; `plane`: a wheel that is traversed flat over the work, as on a surface grinder."
    )
    wheel_diameter: Length | None = Field(
        None, description="Diameter of the round wheel.", examples=[300.0]
    )
    work_diameter: Length = Field(
        description="Diameter that is ground where the axis is true.", examples=[20.0]
    )
    distance_between_centers: Length = Field(
        description="Distance between the two centers.", examples=[150.0]
    )
    offset_toward_wheel: SignedLength = Field(
        description="Offset of the second center from the line of the ways, towards the wheel or "
        "the point; negative away from it.",
        examples=[0.01],
    )
    offset_across: SignedLength = Field(
        description="Its offset square to that: up or down where the wheel stands beside the work.",
        examples=[0.1],
    )
    stations_from_first: Annotated[list[NonNegativeLength], Field(min_length=1, max_length=100)] = (
        Field(description="Distances from the first, true center.", examples=[[0.0, 75.0, 150.0]])
    )


class StandingOffsetStation(ResultModel):
    """The work at one station."""

    station_from_first: LengthOut = Field(description="Its distance from the true center.")
    diameter: LengthOut = Field(description="Diameter as ground.")
    diameter_error: LengthOut = Field(description="That less `work_diameter`.")
    by_offset_toward_wheel: LengthOut = Field(description="Of it, by that offset alone.")
    by_offset_across: LengthOut = Field(description="Of it, by the offset across alone.")


class StandingOffsetResult(ResultModel):
    """What the offset takes off along the work."""

    at_stations: list[StandingOffsetStation] = Field(description="The stations, in order.")
    taper_on_diameter: LengthOut = Field(
        description="Diameter at the last station less that at the first."
    )
    taper_by_offset_toward_wheel: LengthOut = Field(description="Of it, by that offset alone.")
    taper_by_offset_across: LengthOut = Field(description="Of it, by the offset across alone.")
    half_taper_arcsec: ArcsecOut = Field(
        description="Half angle of that taper; positive where the work grows towards the second "
        "center."
    )
    across_like_toward_wheel: LengthOut = Field(
        description="Offset towards the wheel that would make as much of a taper as the offset "
        "across does; negative: away from it."
    )


@operation(
    "centers.standing-offset",
    relations=(
        "r(z) = √((R + r − t z/L)² + (u z/L)²) − R; R = 0 for a point",
        "towards the wheel: Δd = −2 t z/L; across: Δd ≈ (u z/L)² / (R + r), for a point h²/r",
        "a plane: Δd = −2 t z/L, nothing by the offset across",
    ),
    sources=(_OFFSET,),
    drawing=standing_offset_svg(),
    example={
        "units": "mm",
        "ground_by": "round-wheel",
        "wheel_diameter": 300,
        "work_diameter": 20,
        "distance_between_centers": 150,
        "offset_toward_wheel": 0.01,
        "offset_across": 0.1,
        "stations_from_first": [0, 75, 150],
    },
    columns=True,
)
def standing_offset(request: StandingOffsetRequest) -> Outcome[StandingOffsetResult]:
    """Center that stands off the line.

    Taper of work between a true center and one that is off: towards the wheel by the offset, upward
    only by its square, exactly, station by station.
    """
    wheel = _wheel_radius(request)
    _require_reach(request, wheel)
    stations = [_station(request, z, wheel) for z in request.stations_from_first]
    first, last = stations[0], stations[-1]
    length = last.station_from_first - first.station_from_first
    if not length:
        raise Disagreement(
            "The first and the last station are one: there is no length for a taper.",
            fields={"stations_from_first": "should end at another station than it begins"},
        )
    taper = last.diameter_error - first.diameter_error
    across = last.by_offset_across - first.by_offset_across
    result = StandingOffsetResult(
        at_stations=stations,
        taper_on_diameter=taper,
        taper_by_offset_toward_wheel=last.by_offset_toward_wheel - first.by_offset_toward_wheel,
        taper_by_offset_across=across,
        half_taper_arcsec=elementary.atan(taper / 2.0 / length) * ARCSEC_PER_RADIAN,
        across_like_toward_wheel=-across / 2.0 * request.distance_between_centers / length + 0.0,
    )
    return Outcome(result, tuple(_advisories(request, result)))


def _wheel_radius(request: StandingOffsetRequest) -> float | None:
    """Radius of what grinds: 0 of a point, None of a plane."""
    if (request.wheel_diameter is not None) is not (request.ground_by == "round-wheel"):
        raise Disagreement(
            "A round wheel has a diameter here, a point and a plane have none.",
            fields={"wheel_diameter": "should be sent for ground_by round-wheel, and only there"},
        )
    if request.ground_by == "plane":
        return None
    return (request.wheel_diameter or 0.0) / 2.0


def _require_reach(request: StandingOffsetRequest, wheel: float | None) -> None:
    radius, length = request.work_diameter / 2.0, request.distance_between_centers
    for place, station in enumerate(request.stations_from_first):
        if station > length:
            raise Impossible(
                f"The station {of_any_unit(station)} lies past the second center, at "
                f"{of_any_unit(length)}.",
                fields={f"stations_from_first/{place}": "should be at most the distance"},
            )
    for name in ("offset_toward_wheel", "offset_across"):
        if abs(getattr(request, name)) > _STEEPEST * length:
            raise Impossible(
                f"An offset of {of_any_unit(abs(getattr(request, name)))} over "
                f"{of_any_unit(length)} is set over on purpose; its lean is not counted here.",
                fields={name: f"should be within {of_any_unit(_STEEPEST * length)} of 0"},
            )
    if abs(request.offset_toward_wheel) >= radius:
        raise Impossible(
            f"An offset of {of_any_unit(request.offset_toward_wheel)} is more than the work's "
            f"radius, {of_any_unit(radius)}: nothing would be left, or nothing ground.",
            fields={"offset_toward_wheel": f"should be within {of_any_unit(radius)} of 0"},
        )
    most = radius + (wheel or 0.0)
    if abs(request.offset_across) >= most:
        raise Impossible(
            f"With an offset of {of_any_unit(request.offset_across)} across, wheel and work pass "
            "one another by.",
            fields={"offset_across": f"should be within {of_any_unit(most)} of 0"},
        )


def _station(
    request: StandingOffsetRequest, station: float, wheel: float | None
) -> StandingOffsetStation:
    part = station / request.distance_between_centers
    towards, across = part * request.offset_toward_wheel, part * request.offset_across
    radius = request.work_diameter / 2.0
    change, by_towards, by_across = (
        2.0 * radius_change(radius, wheel, t, u) + 0.0
        for t, u in ((towards, across), (towards, 0.0), (0.0, across))
    )
    return StandingOffsetStation(
        station_from_first=station,
        diameter=request.work_diameter + change,
        diameter_error=change,
        by_offset_toward_wheel=by_towards,
        by_offset_across=by_across,
    )


def _advisories(request: StandingOffsetRequest, result: StandingOffsetResult) -> Iterator[Advisory]:
    along, across = result.taper_by_offset_toward_wheel, result.taper_by_offset_across
    if along and abs(along) > abs(across):
        yield note(
            "set-the-offset-out",
            "The taper is mostly by the offset towards the wheel: move the second center "
            f"{small_length(abs(request.offset_toward_wheel), request.units)} "
            f"{'away from' if request.offset_toward_wheel > 0.0 else 'towards'} it.",
        )
