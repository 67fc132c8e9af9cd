"""Socket told from part: the same station read twice, the part turned half a turn between."""

from pydantic import Field

from halfangle_service.fields import (
    Direction,
    LengthOut,
    RequestModel,
    ResultModel,
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
from halfangle_service.trade.runout import vectors


class RunoutReversalRequest(RequestModel):
    """The same station read twice, the part turned half a turn in its socket between.

    The surface read is the part's, the same both times.
    """

    units: UnitsField
    surface: SurfaceField
    at_0: RunoutFound = Field(description="Part at its first clocking; angles on the spindle.")
    at_180: RunoutFound = Field(description="Part turned by 180; angles on the spindle.")


class RunoutReversalResult(ResultModel):
    """Socket and part told apart. Directions are null where nothing runs out."""

    socket_tir: LengthEstimate = Field(description="TIR that the socket makes.")
    socket_high_spot: DirectionEstimate | None = Field(
        description="Angle on the spindle at which the surface reads highest by the socket alone."
    )
    socket_off_toward: Direction | None = Field(
        description="Direction in which the socket's axis lies off: its high spot, opposite to it "
        "where a bore was read."
    )
    part_tir: LengthEstimate = Field(description="TIR that the part makes by itself.")
    part_high_spot: DirectionEstimate | None = Field(
        description="Angle at which it reads highest by the part alone, at its first clocking."
    )
    part_off_toward: Direction | None = Field(
        description="Direction in which the part's axis lies off, at its first clocking."
    )
    best_clocking: Direction | None = Field(
        description="Turn the part by so much from its first clocking; null where any clocking is "
        "as good."
    )
    best_clocking_tir: LengthOut = Field(description="TIR at the best clocking: 2·||S| − |C||.")
    worst_clocking_tir: LengthOut = Field(description="TIR at the worst clocking: 2(|S| + |C|).")


@operation(
    "runout.reversal",
    relations=(
        "socket = (m_0 + m_180)/2",
        "part = (m_0 - m_180)/2",
        "u(socket) = u(part) = √(u_0² + u_180²)/2",
        "in a bore the center lies opposite to the high spot",
    ),
    sources=(VECTORS,),
    example={
        "units": "mm",
        "surface": "external",
        "at_0": {"tir": 0.01, "high_spot": 30},
        "at_180": {"tir": 0.004, "high_spot": 200},
    },
)
def reversal(request: RunoutReversalRequest) -> Outcome[RunoutReversalResult]:
    """Socket's error or the part's.

    Two readings with the part turned half a turn in its socket: the runout of each, the best and
    the worst clocking.
    """
    surface, halves = (
        request.surface,
        {"at_0": (request.at_0, 0.5), "at_180": (request.at_180, 0.5)},
    )
    budget = budget_of_found(halves)
    socket, part = vectors.split(
        request.at_0.center(surface, path="at_0/"), request.at_180.center(surface, path="at_180/")
    )
    return Outcome(
        RunoutReversalResult(
            socket_tir=length_estimate(socket, budget, per_eccentricity=2.0),
            socket_high_spot=direction_estimate(socket, budget, surface),
            socket_off_toward=Direction.of(vectors.direction(socket)),
            part_tir=length_estimate(part, budget, per_eccentricity=2.0),
            part_high_spot=direction_estimate(part, budget, surface),
            part_off_toward=Direction.of(vectors.direction(part)),
            best_clocking=Direction.of(vectors.best_clocking(socket, part)),
            best_clocking_tir=2.0 * abs(vectors.difference(abs(socket), abs(part))),
            worst_clocking_tir=2.0 * (abs(socket) + abs(part)),
        )
    )
