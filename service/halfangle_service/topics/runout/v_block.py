"""What a V-block shows of a lobed part, and what it hides."""

from typing import Annotated

from pydantic import Field

from halfangle_service.errors import Impossible
from halfangle_service.fields import (
    Angle,
    AngleInput,
    Count,
    CountOut,
    LengthOut,
    NonNegativeLength,
    NumberOut,
    RequestModel,
    ResultModel,
    UnitsField,
    VeeAngle,
)
from halfangle_service.fields.advisories import Advisory, caution, note
from halfangle_service.fields.choice import needs
from halfangle_service.operation import Outcome, Source, operation
from halfangle_service.trade import elementary
from halfangle_service.trade.runout import vblock
from halfangle_service.trade.wording import plain

_V = Source(
    citation="Derived here: both contacts of a lobed part stay on their flanks.",
    standing="derived",
)
_V_TABLE = Source(
    citation="ISO 4292:1985, two- and three-point measurement of roundness: its factors for 60°, "
    "90° and 120° agree.",
    standing="from-memory",
)


class RunoutVBlockRequest(RequestModel):
    """A part turned in a V-block under an indicator."""

    units: UnitsField
    vee_angle: VeeAngle = Field(
        90.0, description="Included angle of the V, in degrees.", examples=[90]
    )
    indicator_angle: Annotated[float, AngleInput(ge=-90, le=90, measured=True)] = Field(
        0.0,
        description="Angle of the indicator from the V's bisector, in degrees; 0 opposite the V.",
    )
    max_lobes: Annotated[int, Count(ge=2, le=50)] = Field(
        15, description="Largest number of lobes to list."
    )
    lobes: Annotated[int, Count(ge=2, le=50)] | None = Field(
        None, description="Lobes that the part has, such as 3 from a three-jaw chuck."
    )
    tir: NonNegativeLength | None = Field(
        None, description="Full indicator movement in the V, in `units`; needs `lobes`."
    )


class RunoutVBlockFactor(ResultModel):
    """What is shown of one number of lobes."""

    lobes: CountOut = Field(description="Lobes a turn.")
    factor: NumberOut = Field(description="Full movement for a departure from roundness of 1.")
    hidden: bool = Field(description="True where less than a twentieth is shown.")
    two_point_factor: NumberOut = Field(
        description="The same for a two-point check, as with a micrometer: odd lobes read 0."
    )


class RunoutVBlockResult(ResultModel):
    """What the V shows, hides, and what a reading means."""

    factors: list[RunoutVBlockFactor] = Field(description="From 2 lobes up.")
    hidden_lobes: list[CountOut] = Field(description="Numbers of lobes that the setting hides.")
    hidden_from_both: list[CountOut] = Field(
        description="Of these, what a two-point check hides as well."
    )
    out_of_roundness: LengthOut | None = Field(
        description="Departure from roundness, peak to valley: TIR / factor. Null without a TIR."
    )
    better_vee_angle: Angle | None = Field(
        description="Of 60°, 72°, 90°, 108° and 120°, indicator opposite the V, the one that "
        "shows most of `lobes`; null without `lobes`."
    )
    better_factor: NumberOut | None = Field(description="Its factor.")


@operation(
    "runout.v-block",
    relations=(
        "opposite the V: factor = |cos(nγ)/sin(V/2) + (-1)^n|, γ = 90° - V/2",
        "out of roundness = TIR / factor",
    ),
    sources=(_V, _V_TABLE),
    example={"units": "in", "vee_angle": 90, "lobes": 3, "tir": 0.0004},
)
def v_block(request: RunoutVBlockRequest) -> Outcome[RunoutVBlockResult]:
    """Lobes that a V-block hides.

    What an indicator shows of each number of lobes while the part turns in a V, which lobes it
    hides, and what a reading means.
    """
    v_rad, at_rad = (
        elementary.radians(request.vee_angle),
        elementary.radians(request.indicator_angle),
    )
    hidden = vblock.hidden_lobes(v_rad, at_rad, request.max_lobes)
    better = better_factor = None
    if request.lobes is not None:
        better = vblock.best_vee_angle(request.lobes)
        better_factor = vblock.response(request.lobes, elementary.radians(better), 0.0)
    result = RunoutVBlockResult(
        factors=[_factor(n, v_rad, at_rad) for n in range(2, request.max_lobes + 1)],
        hidden_lobes=hidden,
        hidden_from_both=[n for n in hidden if vblock.two_point_response(n) == 0.0],
        out_of_roundness=_out_of_roundness(request, v_rad, at_rad),
        better_vee_angle=None if better is None else Angle.of(better),
        better_factor=better_factor,
    )
    return Outcome(result, _advice(hidden))


def _factor(lobes: int, v_rad: float, at_rad: float) -> RunoutVBlockFactor:
    shown = vblock.response(lobes, v_rad, at_rad)
    return RunoutVBlockFactor(
        lobes=lobes,
        factor=shown,
        hidden=shown < vblock.HIDDEN,
        two_point_factor=vblock.two_point_response(lobes),
    )


def _out_of_roundness(request: RunoutVBlockRequest, v_rad: float, at_rad: float) -> float | None:
    """TIR over factor; refuses a TIR without lobes, or of hidden ones."""
    why = "What a reading in a V means depends on the number of lobes."
    needs(request, "tir", "lobes", why=why)
    if request.tir is None or request.lobes is None:
        return None
    shown = vblock.response(request.lobes, v_rad, at_rad)
    if shown < vblock.HIDDEN:
        better = vblock.best_vee_angle(request.lobes)
        shows = vblock.response(request.lobes, elementary.radians(better), 0.0)
        raise Impossible(
            f"This setting hides {request.lobes} lobes: it shows {plain(round(shown, 3))} of their "
            f"height, so that the reading says nothing of them. A V of {plain(better)}°, the "
            f"indicator opposite to it, shows {plain(round(shows, 2))} of it.",
            fields={"vee_angle": f"should not hide {request.lobes} lobes", "lobes": "are hidden"},
            more={"better_vee_angle_degrees": better},
        )
    return request.tir / shown


def _advice(hidden: list[int]) -> tuple[Advisory, ...]:
    given = [
        note(
            "v-hides-eccentricity",
            "A V-block finds the part's own surface: it shows form, and nothing of an "
            "eccentricity to another diameter.",
        )
    ]
    if hidden:
        names = ", ".join(str(n) for n in hidden)
        given.append(caution("lobes-hidden", f"A part with {names} lobes reads as round here."))
    return tuple(given)
