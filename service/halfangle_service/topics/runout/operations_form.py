"""V-blocks and an indicator off the crest: models to maths and back."""

import math

from halfangle_service.errors import Disagreement, Impossible
from halfangle_service.fields import ARCSEC_PER_RADIAN, Angle
from halfangle_service.fields.advisories import Advisory, caution, note
from halfangle_service.operation import Operation, Outcome, Source
from halfangle_service.topics.runout.models_form import (
    RunoutOffCrestRequest,
    RunoutOffCrestResult,
    RunoutVBlockFactor,
    RunoutVBlockRequest,
    RunoutVBlockResult,
)
from halfangle_service.trade.runout import crest, vblock
from halfangle_service.trade.wording import plain

V_ANGLES_DEG = (60.0, 72.0, 90.0, 108.0, 120.0)
_V = Source(
    citation="Derived here: both contacts of a lobed part stay on their flanks.",
    standing="derived",
)
_V_TABLE = Source(
    citation="ISO 4292:1985, two- and three-point measurement of roundness: its factors for 60°, "
    "90° and 120° agree.",
    standing="from-memory",
)
_CREST = Source(
    citation="Derived here: a ball tip against a cone, in a plane beside the axis.",
    standing="derived",
)


def v_block(request: RunoutVBlockRequest) -> Outcome[RunoutVBlockResult]:
    """What a V-block shows and hides."""
    v_rad, at_rad = math.radians(request.v_angle), math.radians(request.indicator_angle)
    hidden = vblock.hidden_lobes(v_rad, at_rad, request.most_lobes)
    better = _better(request.lobes)
    result = RunoutVBlockResult(
        factors=[_factor(n, v_rad, at_rad) for n in range(2, request.most_lobes + 1)],
        hidden_lobes=hidden,
        hidden_from_both=[n for n in hidden if vblock.two_point_response(n) == 0.0],
        out_of_roundness=_out_of_roundness(request, v_rad, at_rad),
        better_v_angle=None if better is None else Angle.of(better),
        better_factor=None
        if better is None or request.lobes is None
        else vblock.response(request.lobes, math.radians(better), 0.0),
    )
    return Outcome(result, _v_advice(hidden))


def _factor(lobes: int, v_rad: float, at_rad: float) -> RunoutVBlockFactor:
    shown = vblock.response(lobes, v_rad, at_rad)
    return RunoutVBlockFactor(
        lobes=lobes,
        factor=shown,
        hidden=shown < vblock.HIDDEN,
        two_point_factor=vblock.two_point_response(lobes),
    )


def _better(lobes: int | None) -> float | None:
    if lobes is None:
        return None
    return max(V_ANGLES_DEG, key=lambda v: round(vblock.response(lobes, math.radians(v), 0.0), 9))


def _out_of_roundness(request: RunoutVBlockRequest, v_rad: float, at_rad: float) -> float | None:
    """Reading over factor; refuses a reading without lobes, or of hidden ones."""
    if request.reading is None:
        return None
    if request.lobes is None:
        raise Disagreement(
            "What a reading in a V means depends on the number of lobes.",
            fields={"lobes": "should be sent with reading"},
        )
    shown = vblock.response(request.lobes, v_rad, at_rad)
    if shown < vblock.HIDDEN:
        raise Impossible(
            f"This setting hides {request.lobes} lobes: it shows {plain(shown, 2)} of their "
            "height, so "
            "that the reading says nothing of them.",
            fields={"v_angle": f"should not hide {request.lobes} lobes", "lobes": "are hidden"},
            more={"better_v_angle_degrees": _better(request.lobes)},
        )
    return request.reading / shown


def _v_advice(hidden: list[int]) -> tuple[Advisory, ...]:
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


def off_crest(request: RunoutOffCrestRequest) -> Outcome[RunoutOffCrestResult]:
    """False taper of an indicator beside the crest."""
    if request.large_diameter <= request.small_diameter:
        raise Disagreement(
            "The large diameter is not larger than the small one.",
            fields={"large_diameter": "should be greater than small_diameter"},
        )
    half_rad = math.radians(request.included_angle) / 2.0
    radii = (request.small_diameter / 2.0, request.large_diameter / 2.0)
    small, large = (crest.crest_drop(request.miss, r, half_rad, request.tip_radius) for r in radii)
    false = crest.false_half_angle(request.miss, radii, half_rad, request.tip_radius)
    allowed = request.angle_error_allowed_arcsec
    result = RunoutOffCrestResult(
        drop_at_small_end=small,
        drop_at_large_end=large,
        false_reading=small - large,
        false_half_angle_arcsec=false * ARCSEC_PER_RADIAN,
        false_included_angle_arcsec=2.0 * false * ARCSEC_PER_RADIAN,
        seems="steeper" if false > 0.0 else "true",
        ground_by_this="shallower" if false > 0.0 else "true",
        miss_allowed=None
        if allowed is None
        else crest.miss_for(allowed / ARCSEC_PER_RADIAN, radii, half_rad, request.tip_radius),
    )
    if allowed is None or result.false_half_angle_arcsec <= allowed:
        return Outcome(result)
    message = "Find the crest first: swing the indicator across and set it at the highest reading."
    return Outcome(result, (caution("find-the-crest", message),))


V_BLOCK = Operation(
    topic="runout",
    verb="v-block",
    title="Lobes that a V-block hides",
    summary="What an indicator shows of each number of lobes while the part turns in a V, which "
    "lobes it hides, and what a reading means.",
    request=RunoutVBlockRequest,
    result=RunoutVBlockResult,
    calculate=v_block,
    relations=(
        "opposite the V: factor = |cos(nγ)/sin(V/2) + (-1)^n|, γ = 90° - V/2",
        "out of roundness = reading / factor",
    ),
    sources=(_V, _V_TABLE),
    example={"units": "in", "v_angle": 90, "lobes": 3, "reading": 0.0004},
)

OFF_CREST = Operation(
    topic="runout",
    verb="off-crest",
    title="False taper of an indicator off the crest",
    summary="An indicator run along a cone beside its crest drops more at the small end: the false "
    "taper, and the miss that a wanted angle allows.",
    request=RunoutOffCrestRequest,
    result=RunoutOffCrestResult,
    calculate=off_crest,
    relations=(
        "drop = y²/(M + √(M² - (1 - tan² α) y²)), M = r/cos α + ρ; nearly y²/(2M)",
        "false half angle = atan((drop small - drop large) sin α/(r large - r small))",
    ),
    sources=(_CREST,),
    example={
        "units": "in",
        "included_angle": 60,
        "small_diameter": 0.1,
        "large_diameter": 0.5,
        "miss": 0.01,
        "tip_radius": 0.04,
        "angle_error_allowed_arcsec": 10,
    },
)
