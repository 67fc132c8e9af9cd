"""Socket told from part: the same station read twice, the part turned half a turn between."""

from pydantic import Field

from halfangle_service.fields import Angle, LengthOut, RequestModel, ResultModel, UnitsField
from halfangle_service.fields.runout import RunoutVector
from halfangle_service.operation import Outcome, operation
from halfangle_service.topics.runout.sources import VECTORS
from halfangle_service.trade.runout import vectors


class RunoutReversalRequest(RequestModel):
    """The same station read twice, the part turned half a turn in its socket between."""

    units: UnitsField
    at_0: RunoutVector = Field(description="Part at its first clocking; angles on the spindle.")
    at_180: RunoutVector = Field(description="Part turned by 180; angles on the spindle.")


class RunoutReversalResult(ResultModel):
    """Socket and part told apart."""

    socket_tir: LengthOut = Field(description="TIR that the socket makes.")
    socket_high_spot: Angle = Field(description="Its high spot on the spindle.")
    part_tir: LengthOut = Field(description="TIR that the part makes by itself.")
    part_high_spot: Angle = Field(description="Its high spot with the part at its first clocking.")
    best_clocking: Angle = Field(description="Turn the part by so much from its first clocking.")
    best_clocking_tir: LengthOut = Field(description="TIR at the best clocking: 2·||S| − |C||.")
    worst_clocking_tir: LengthOut = Field(description="TIR at the worst clocking: 2(|S| + |C|).")


@operation(
    "runout.reversal",
    relations=("socket = (m_0 + m_180)/2", "part = (m_0 - m_180)/2"),
    sources=(VECTORS,),
    example={
        "units": "mm",
        "at_0": {"tir": 0.01, "high_spot": 30},
        "at_180": {"tir": 0.004, "high_spot": 200},
    },
)
def reversal(request: RunoutReversalRequest) -> Outcome[RunoutReversalResult]:
    """Socket's error or the part's.

    Two readings with the part turned half a turn in its socket: the runout of each, the best and
    the worst clocking.
    """
    socket, part = vectors.split(
        request.at_0.eccentricity_vector, request.at_180.eccentricity_vector
    )
    return Outcome(
        RunoutReversalResult(
            socket_tir=2.0 * abs(socket),
            socket_high_spot=Angle.of(vectors.high_spot(socket)),
            part_tir=2.0 * abs(part),
            part_high_spot=Angle.of(vectors.high_spot(part)),
            best_clocking=Angle.of(vectors.best_clocking(socket, part)),
            best_clocking_tir=2.0 * abs(abs(socket) - abs(part)),
            worst_clocking_tir=2.0 * (abs(socket) + abs(part)),
        )
    )
