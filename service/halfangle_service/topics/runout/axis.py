"""The line of an axis from two sections, and the two corrections in the order to make them."""

import math
from typing import Literal, NamedTuple

from pydantic import Field

from halfangle_service.errors import Disagreement
from halfangle_service.fields import (
    ARCSEC_PER_RADIAN,
    ArcsecOut,
    Direction,
    LengthOut,
    RequestModel,
    ResultModel,
    SignedLength,
    UnitsField,
)
from halfangle_service.fields.estimate import DirectionEstimate, LengthEstimate
from halfangle_service.fields.runout import (
    RunoutFound,
    SurfaceField,
    budget_of_found,
    direction_estimate,
    length_estimate,
)
from halfangle_service.operation import Outcome, operation
from halfangle_service.topics.runout.sources import VECTORS
from halfangle_service.trade.runout.vectors import along, difference, direction, weight
from halfangle_service.trade.uncertainty import Budget

#: Sections closer than this, in either unit, stand at one station.
SAME_STATION = 1e-6
#: More stations than this take more than some milliseconds.
MANY_STATIONS = 20


class RunoutSection(RunoutFound):
    """Runout found at one section."""

    station: SignedLength = Field(description="Distance along the axis, in `units`.")


class RunoutAxisRequest(RequestModel):
    """Two sections, and where else the runout is wanted."""

    units: UnitsField
    surface: SurfaceField
    near: RunoutSection = Field(description="Section near the holding.")
    far: RunoutSection = Field(description="Section far from the holding.")
    stations: list[SignedLength] = Field(
        min_length=1, max_length=100, description="Stations wanted, such as the point."
    )
    pivot_station: SignedLength = Field(description="Station about which the work swings.")


class RunoutAtStation(ResultModel):
    """Runout of the axis at one station."""

    station: LengthOut = Field(description="The station.")
    tir: LengthEstimate = Field(
        description="TIR by eccentricity there. Its uncertainty, by those of both sections, grows "
        "past them; near zero it reaches down to none."
    )
    high_spot: DirectionEstimate | None = Field(
        description="Angle at which the same surface would read highest; null where nothing runs "
        "out."
    )


class RunoutCorrection(ResultModel):
    """One correction, as a move of the axis."""

    kind: Literal["swing", "slide"] = Field(description="Swing about the pivot, or slide whole.")
    near_move: LengthOut = Field(description="How far the axis moves at the near section.")
    far_move: LengthOut = Field(description="How far the axis moves at the far section.")
    tap_from: Direction | None = Field(
        description="Side to tap from at the far section (at the near one where the far one does "
        "not move; at any, for a slide), toward the axis: where the center lies, in a bore "
        "opposite to the high spot. Null where nothing has to move."
    )


class RunoutAxisResult(ResultModel):
    """Line of the axis, and two corrections in order."""

    tilt_arcsec: ArcsecOut = Field(description="Angle between the work's axis and the spindle's.")
    at_stations: list[RunoutAtStation] = Field(description="In the order sent.")
    corrections: list[RunoutCorrection] = Field(
        description="Swing first, since it moves both sections; then the slide takes both to zero."
    )


@operation(
    "runout.axis",
    relations=(
        "e(z) = e1 + (e2 - e1)(z - z1)/(z2 - z1)",
        "tan(tilt) = |e2 - e1|/|z2 - z1|",
        "u(e) = √(((1 - t) u1)² + (t u2)²), t = (z - z1)/(z2 - z1)",
        "in a bore the center lies opposite to the high spot",
    ),
    sources=(VECTORS,),
    largest_request="100 stations",
    heavy=lambda request: len(request.stations) > MANY_STATIONS,
    example={
        "units": "in",
        "surface": "external",
        "near": {"station": 1, "tir": 0.0006, "high_spot": 20},
        "far": {"station": 4, "tir": 0.001, "high_spot": 140},
        "stations": [5.5],
        "pivot_station": 0,
    },
)
def axis(request: RunoutAxisRequest) -> Outcome[RunoutAxisResult]:
    """Line of an axis from two sections.

    Runout of a shaft or a bore at two sections: tilt, runout at other stations, and the two
    corrections in the order in which to make them.
    """
    near, far = request.near, request.far
    if abs(far.station - near.station) < SAME_STATION:
        raise Disagreement(
            "Both sections stand at the same station: no tilt can be told.",
            fields={"far/station": "should differ from near/station"},
        )
    e_1 = near.center(request.surface, path="near/")
    e_2 = far.center(request.surface, path="far/")
    line = _Line(request, e_1, e_2)
    at_pivot = line.at(request.pivot_station)
    slope = difference(e_2, e_1) / (far.station - near.station)
    swing = [slope * (section.station - request.pivot_station) for section in (near, far)]
    return Outcome(
        RunoutAxisResult(
            tilt_arcsec=math.atan(abs(slope)) * ARCSEC_PER_RADIAN,
            at_stations=[_at_station(line, z) for z in request.stations],
            corrections=[
                _correction("swing", swing[0], swing[1]),
                _correction("slide", at_pivot, at_pivot),
            ],
        )
    )


class _Line(NamedTuple):
    """The axis through both sections: where its center lies at a station, and how far off."""

    request: RunoutAxisRequest
    near: complex
    far: complex

    def at(self, station: float) -> complex:
        """Offset of the axis at a station, a vector."""
        stations = self.request.near.station, self.request.far.station
        return along(self.near, stations[0], self.far, stations[1], station)

    def budget(self, station: float) -> Budget:
        """Budget of that offset, in any direction."""
        near, far = self.request.near, self.request.far
        of_far = weight(near.station, far.station, station)
        return budget_of_found({"near": (near, 1.0 - of_far), "far": (far, of_far)})


def _at_station(line: _Line, station: float) -> RunoutAtStation:
    offset, budget = line.at(station), line.budget(station)
    return RunoutAtStation(
        station=station,
        tir=length_estimate(offset, budget, per_eccentricity=2.0),
        high_spot=direction_estimate(offset, budget, line.request.surface),
    )


def _correction(kind: Literal["swing", "slide"], near: complex, far: complex) -> RunoutCorrection:
    return RunoutCorrection(
        kind=kind,
        near_move=abs(near),
        far_move=abs(far),
        tap_from=Direction.of(direction(far or near)),
    )
