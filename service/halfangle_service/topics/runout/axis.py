"""The line of an axis from two sections, and the two corrections in the order to make them."""

import math
from typing import Literal

from pydantic import Field

from halfangle_service.errors import Disagreement
from halfangle_service.fields import (
    ARCSEC_PER_RADIAN,
    Angle,
    ArcsecOut,
    LengthOut,
    NonNegativeLength,
    RequestModel,
    ResultModel,
    SignedLength,
    UnitsField,
)
from halfangle_service.fields.estimate import LengthEstimate, estimate
from halfangle_service.fields.runout import RunoutVector
from halfangle_service.operation import Outcome, operation
from halfangle_service.topics.runout.sources import VECTORS
from halfangle_service.trade.runout.vectors import along, high_spot, weight
from halfangle_service.trade.uncertainty import Budget, Contribution

#: Sections closer than this, in either unit, stand at one station.
SAME_STATION = 1e-6


class RunoutSection(RunoutVector):
    """Runout found at one section."""

    station: SignedLength = Field(description="Distance along the axis, in `units`.")
    eccentricity_standard_uncertainty: NonNegativeLength | None = Field(
        None,
        description="Standard uncertainty of its eccentricity, in `units`, as runout/indicate "
        "gives it; not stated where absent.",
    )


class RunoutAxisRequest(RequestModel):
    """Two sections, and where else the runout is wanted."""

    units: UnitsField
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
        "past them."
    )
    high_spot: Angle = Field(description="Angle of its high spot.")


class RunoutCorrection(ResultModel):
    """One correction, as a move of the axis."""

    kind: Literal["swing", "slide"] = Field(description="Swing about the pivot, or slide whole.")
    near_move: LengthOut = Field(description="How far the axis moves at the near section.")
    far_move: LengthOut = Field(description="How far the axis moves at the far section.")
    tap_from: Angle = Field(
        description="Side to tap from at the far section (at any section, for a slide)."
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
    ),
    sources=(VECTORS,),
    example={
        "units": "in",
        "near": {"station": 1, "tir": 0.0006, "high_spot": 20},
        "far": {"station": 4, "tir": 0.001, "high_spot": 140},
        "stations": [5.5],
        "pivot_station": 0,
    },
)
def axis(request: RunoutAxisRequest) -> Outcome[RunoutAxisResult]:
    """Line of an axis from two sections.

    Runout at two sections: tilt, runout at other stations, and the two corrections in the order in
    which to make them.
    """
    near, far = request.near, request.far
    if abs(far.station - near.station) < SAME_STATION:
        raise Disagreement(
            "Both sections stand at the same station: no tilt can be told.",
            fields={"far/station": "should differ from near/station"},
        )
    e_1, e_2 = near.eccentricity_vector, far.eccentricity_vector
    slope = (e_2 - e_1) / (far.station - near.station)
    at_pivot = along(e_1, near.station, e_2, far.station, request.pivot_station)
    swing = [slope * (section.station - request.pivot_station) for section in (near, far)]
    return Outcome(
        RunoutAxisResult(
            tilt_arcsec=math.atan(abs(slope)) * ARCSEC_PER_RADIAN,
            at_stations=[_at_station(near, far, z) for z in request.stations],
            corrections=[
                _correction("swing", swing[0], swing[1]),
                _correction("slide", at_pivot, at_pivot),
            ],
        )
    )


def _at_station(near: RunoutSection, far: RunoutSection, station: float) -> RunoutAtStation:
    e = along(near.eccentricity_vector, near.station, far.eccentricity_vector, far.station, station)
    return RunoutAtStation(
        station=station,
        tir=estimate(LengthEstimate, _tir_budget(near, far, station), 2.0 * abs(e)),
        high_spot=Angle.of(high_spot(e)),
    )


def _tir_budget(near: RunoutSection, far: RunoutSection, station: float) -> Budget:
    """Budget of the TIR at a station, both sections independent: the line weighs them."""
    of_far = weight(near.station, far.station, station)
    sections = {
        "near": (near.eccentricity_standard_uncertainty, 1.0 - of_far),
        "far": (far.eccentricity_standard_uncertainty, of_far),
    }
    return Budget(
        tuple(
            Contribution(name, stated, "normal", 2.0 * weighs)
            for name, (stated, weighs) in sections.items()
            if stated is not None
        ),
        not_stated=tuple(
            f"{name}/eccentricity_standard_uncertainty"
            for name, (stated, _) in sections.items()
            if stated is None
        ),
    )


def _correction(kind: Literal["swing", "slide"], near: complex, far: complex) -> RunoutCorrection:
    return RunoutCorrection(
        kind=kind, near_move=abs(near), far_move=abs(far), tap_from=Angle.of(high_spot(far))
    )
