"""A center, or its hole, that is out of round: what of its lobes reaches the work."""

import math
from collections.abc import Iterator
from typing import Annotated, Literal

import numpy as np
from pydantic import Field

from halfangle_service.errors import Impossible
from halfangle_service.fields import (
    FINITE,
    AngleInput,
    Count,
    LengthOut,
    NonNegativeLength,
    NumberOut,
    ResultModel,
    Unit,
    UnitsField,
)
from halfangle_service.fields.advisories import Advisory, caution, note
from halfangle_service.fields.choice import not_sent
from halfangle_service.fields.estimate import NotStated
from halfangle_service.fields.slopes import SlopeFields, slope_if_stated
from halfangle_service.operation import Outcome, Source, operation
from halfangle_service.trade.centers.out_of_round import (
    OVAL,
    axis_movement,
    largest_movement,
    side_over_seat,
    steady_share,
)
from halfangle_service.trade.cone import Slope
from halfangle_service.trade.wording import plain, small_length

_SEAT = Source(
    citation="Derived here: a lobed seat, rigid and without friction, under an axial and a side "
    "force; checked by linear programming.",
    standing="derived",
)
_USUAL = Slope(30.0)
Newtons = Annotated[float, FINITE, Field(ge=0, le=1e6), Unit("newton")]


class CenterOutOfRoundRequest(SlopeFields):
    """What is out of round, and how the work is held; 60° included where no slope is stated."""

    units: UnitsField
    out_of_round: Literal["hole", "center"] = Field(
        description="What is out of round; the other one is taken as round."
    )
    center_turns: bool = Field(
        description="True for a live center, which turns with the work; false for a dead one."
    )
    lobes: Annotated[int, Count(ge=2, le=50)] = Field(
        description="Lobes a turn: 2 oval, 3 from a three-jaw chuck.", examples=[3]
    )
    out_of_roundness: NonNegativeLength = Field(
        description="Out-of-roundness of the cone, square to its axis, peak to valley.",
        examples=[0.002],
    )
    axial_force: Newtons | None = Field(
        None, description="Force along the axis at this center, in newtons.", examples=[300.0]
    )
    side_force: Newtons | None = Field(
        None,
        description="Force square to the axis at this center, grinding and weight together, in "
        "newtons.",
        examples=[60.0],
    )
    wheel_from_force: Annotated[float, AngleInput(ge=-180, le=180)] = Field(
        0.0,
        description="Angle round the work from the side force to the place that is ground or "
        "indicated, in degrees.",
    )


class CenterOutOfRoundResult(ResultModel):
    """What reaches the work at this center; a station sees its share, see centers.limits."""

    work_out_of_roundness: LengthOut | None = Field(
        description="Out-of-roundness that the work gets, peak to valley, without friction; null "
        "where forces were not stated and it depends on them."
    )
    axis_offset_standing: LengthOut | None = Field(
        description="Offset at which the work's axis stands still, at most; null as above."
    )
    reaches_percent: Annotated[float, Unit("percent")] | None = Field(
        description="Work's out-of-roundness over the seat's; null as above, and of a round seat."
    )
    steady_side_force_ratio: NumberOut = Field(
        description="Side force over axial force up to which the seat rests on all lobes and "
        "nothing reaches the work; 0 of an oval."
    )
    lifts_side_force_ratio: NumberOut = Field(
        description="The ratio at which the work is lifted out of its seat: 1 / tan α."
    )
    work_lobes: Annotated[int, Unit("count")] = Field(
        description="Lobes of the work; 0 where nothing can reach it."
    )
    not_stated: NotStated


@operation(
    "centers.out-of-round",
    relations=(
        "p = (side force / axial force) tan α; steady up to p = cos(π / n), 0 for n = 2",
        "past that δ = (Δ / 2) n U_{n-1}(p cos φ) towards the valley at φ from the force",
        "n = 2: the work gets 2 p Δ, Δ the out-of-roundness of the seat",
        "dead center out of round in a round hole: the axis stands still",
    ),
    sources=(_SEAT,),
    example={
        "units": "mm",
        "out_of_round": "hole",
        "center_turns": False,
        "lobes": 2,
        "out_of_roundness": 0.002,
        "axial_force": 300,
        "side_force": 60,
    },
)
def out_of_round(request: CenterOutOfRoundRequest) -> Outcome[CenterOutOfRoundResult]:
    """Center or hole out of round.

    What of the lobes of a center or a center hole reaches the work, on a dead and on a live center,
    by the forces on the seat.
    """
    half = (slope_if_stated(request) or _USUAL).half_angle_rad
    share = _share(request, half)
    still = request.out_of_round == "center" and not request.center_turns
    form, standing = _reaching(request, share, still=still)
    result = CenterOutOfRoundResult(
        work_out_of_roundness=form,
        axis_offset_standing=standing,
        reaches_percent=None
        if form is None or not request.out_of_roundness
        else 100.0 * form / request.out_of_roundness,
        steady_side_force_ratio=steady_share(request.lobes) / math.tan(half),
        lifts_side_force_ratio=1.0 / math.tan(half),
        work_lobes=0 if still else request.lobes,
        not_stated=not_sent(request, "axial_force", "side_force"),
    )
    return Outcome(result, tuple(_advisories(request, result, share)))


def _share(request: CenterOutOfRoundRequest, half: float) -> float | None:
    """Side force over what the seat takes; None where forces were not stated. Refuses a lift."""
    axial, side = request.axial_force, request.side_force
    if axial is None or side is None:
        return None
    most = axial / math.tan(half)
    if side >= most:
        raise Impossible(
            f"A side force of {plain(side)} N lifts the work out of a seat pressed with "
            f"{plain(axial)} N: it takes {plain(most, 4)} N at most, without friction.",
            fields={"side_force": f"should be below {plain(most, 4)} N"},
        )
    return side_over_seat(side / axial, half) if side else 0.0


def _reaching(
    request: CenterOutOfRoundRequest, share: float | None, *, still: bool
) -> tuple[float | None, float | None]:
    """Out-of-roundness of the work, and the offset at which its axis stands."""
    half_form = request.out_of_roundness / 2.0
    if still:
        stands = None if share is None else largest_movement(half_form, request.lobes, share)
        return 0.0, stands
    if share is None:
        return None, None
    moved = axis_movement(half_form, request.lobes, share, math.radians(request.wheel_from_force))
    return float(np.ptp(moved)), float(abs(np.max(moved) + np.min(moved)) / 2.0)


def _advisories(
    request: CenterOutOfRoundRequest, result: CenterOutOfRoundResult, share: float | None
) -> Iterator[Advisory]:
    if request.out_of_round == "center" and not request.center_turns:
        yield note(
            "dead-center-form-stands",
            "A dead center does not turn: its lobes move the work's axis once and for all, and "
            "none of them reaches the work. Do not turn it between parts.",
        )
        return
    if request.center_turns:
        yield note(
            "live-seat-sticks",
            "On a live center seat and hole turn together and friction holds them: less than this "
            "reaches the work. What the center itself runs out reaches it whole.",
        )
    if share is None:
        return
    if result.work_out_of_roundness and request.lobes == OVAL:
        yield caution(
            "oval-seat-moves",
            "An oval seat gives way under any side force, in the direction of its long axis: "
            f"{small_length(result.work_out_of_roundness, request.units)} of it reaches the work. "
            "Lap the hole round, or press harder along the axis.",
        )
    elif result.work_out_of_roundness:
        yield caution(
            "lobed-seat-moves",
            "The side force presses the work past its lobes: press harder along the axis, or feed "
            "less, until side over axial force is below "
            f"{plain(result.steady_side_force_ratio, 3)} to 1.",
        )
