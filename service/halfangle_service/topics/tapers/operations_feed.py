"""Feed on a cone, its clean-up, gauges that stand off: models to maths and back."""

import math
from collections.abc import Iterator

from halfangle_service.errors import Disagreement, Impossible
from halfangle_service.fields import ARCSEC_PER_RADIAN, angle_from_radians, from_mm
from halfangle_service.fields.advisories import Advisory, caution, note, stop
from halfangle_service.operation import Operation, Outcome, Source
from halfangle_service.topics.tapers.models_feed import (
    CleanUpVerdict,
    TaperCleanUpRequest,
    TaperCleanUpResult,
    TaperInfeedRequest,
    TaperInfeedResult,
    TaperStandoffRequest,
    TaperStandoffResult,
)
from halfangle_service.topics.tapers.models_slope import half_angle_rad_of
from halfangle_service.trade.tapers.feed import (
    angle_standoff,
    axial_shift,
    bearing_end,
    clean_up,
    gauge_shift,
    normal_of,
    off_diameter,
    passes,
    stock_at_other_end,
)
from halfangle_service.trade.wording import plain

DERIVED = Source(
    citation="Derived here: a layer h square to a cone's surface is 2 h / cos α on the diameter "
    "and h / sin α along the axis; checked against cut geometry.",
    standing="derived",
)
_WHEEL_CAUTION = caution(
    "grinding-safety",
    "Never run above the speed marked on the wheel; guards closed, eye protection on. The wheel's "
    "and the machine's markings, local codes and qualified people come first.",
)
#: Included angle below which a gauge line runs away: 10 units of shift for one of diameter.
_SLOW_TAPER_SHIFT = 5.0


def wrong_half_angle(half_rad: float, error_arcsec: float) -> float:
    """Half angle as it stands, in radians; raises Impossible where that is no cone."""
    as_is = half_rad + error_arcsec / ARCSEC_PER_RADIAN
    if not 0.0 < as_is < math.pi / 2:
        raise Impossible(
            f"With this error the half angle would be {plain(math.degrees(as_is))}°; a cone's lies "
            "between 0° and 90°.",
            fields={"half_angle_error_arcsec": "should leave the half angle between 0° and 90°"},
        )
    return as_is


def require_before_point(
    large: float, length: float, half_rad: float, field: str = "length"
) -> None:
    """Refuse a cone that comes to a point within its length."""
    to_point = large / (2.0 * math.tan(half_rad))
    if length > to_point * (1.0 + 1e-9):
        raise Impossible(
            f"This cone comes to its point {plain(to_point)} from the large end, before the length "
            f"{plain(length)}.",
            fields={field: f"should be at most {plain(to_point)}"},
        )


def infeed(request: TaperInfeedRequest) -> Outcome[TaperInfeedResult]:
    """One layer in every measure, and its passes."""
    half = half_angle_rad_of(request)
    normal = normal_of(request.amount, request.amount_is, half)
    error = request.half_angle_error_arcsec
    extra = _wedge(request, half)
    total = normal + extra
    cuts = passes(total, request.downfeed_per_pass) if request.downfeed_per_pass else None
    result = TaperInfeedResult(
        half_angle=angle_from_radians(half),
        normal=normal,
        off_radius=off_diameter(normal, half) / 2.0,
        off_diameter=off_diameter(normal, half),
        axial_shift=axial_shift(normal, half),
        diameter_per_downfeed=off_diameter(1.0, half),
        axial_per_downfeed=axial_shift(1.0, half),
        touches_first=bearing_end(outer_minus_inner_rad=-error),
        stock_at_large_end=extra if error < 0 else 0.0,
        stock_at_small_end=extra if error > 0 else 0.0,
        total_downfeed=total,
        cutting_passes=cuts[0] if cuts else None,
        last_pass=cuts[1] if cuts else None,
        total_passes=cuts[0] + request.spark_out_passes if cuts else None,
    )
    return Outcome(result, (*_infeed_advisories(request, result), _WHEEL_CAUTION))


def _wedge(request: TaperInfeedRequest, half: float) -> float:
    """Stock that an angle error leaves at one end, square to the surface."""
    if not request.half_angle_error_arcsec:
        return 0.0
    if request.length is None:
        raise Disagreement(
            "An angle error leaves stock only over a length.",
            fields={"length": "should be sent together with half_angle_error_arcsec"},
        )
    as_is = wrong_half_angle(half, request.half_angle_error_arcsec)
    slant = request.length / math.cos(as_is)
    return stock_at_other_end(slant, as_is - half)


def _infeed_advisories(
    request: TaperInfeedRequest, result: TaperInfeedResult
) -> Iterator[Advisory]:
    if result.axial_per_downfeed > _SLOW_TAPER_SHIFT:
        yield caution(
            "gauge-line-runs",
            f"On this slow taper the gauge line moves {plain(result.axial_per_downfeed, 4)} times "
            "the downfeed: gauge before the last passes.",
        )
    if request.spark_out_passes == 0 and request.downfeed_per_pass:
        yield note("no-spark-out", "Without spark-out the last feed is not fully ground away.")


def clean_up_part(request: TaperCleanUpRequest) -> Outcome[TaperCleanUpResult]:
    """Stock needed against stock there is: can this part be saved."""
    half = half_angle_rad_of(request)
    as_is = wrong_half_angle(half, request.half_angle_error_arcsec)
    require_before_point(request.large_diameter, request.length, as_is)
    slant = request.length / math.cos(as_is)
    swings = [_swing(tir, request, half) for tir in (request.tir_large_end, request.tir_small_end)]
    deep = request.wear + request.allowance
    stock = clean_up(slant, as_is - half, swings[0], swings[1], deep)
    lost = off_diameter(stock.below_large_end, half)
    final = request.large_diameter - lost
    if final <= 0:
        raise Impossible(
            f"Cleaning up would take {plain(lost)} off a diameter of "
            f"{plain(request.large_diameter)}.",
            fields={"large_diameter": "should exceed what cleaning up takes off it"},
        )
    point_loss = request.large_diameter / (2 * math.tan(as_is)) - final / (2 * math.tan(half))
    available = _available(request, half)
    margin = None if available is None else available - stock.below_large_end
    point_margin = (
        None if request.largest_point_loss is None else request.largest_point_loss - point_loss
    )
    down = stock.from_first_touch
    count = passes(down, request.downfeed_per_pass)[0] if request.downfeed_per_pass else None
    result = TaperCleanUpResult(
        verdict=_verdict(margin, point_margin),
        needed_normal=stock.below_large_end,
        needed_at_small_end=stock.below_small_end,
        downfeed_from_first_touch=down,
        off_diameter=lost,
        final_large_diameter=final,
        point_loss=point_loss,
        from_runout=max(swings),
        from_angle=stock_at_other_end(slant, as_is - half),
        available_normal=available,
        margin_normal=margin,
        point_margin=point_margin,
        cutting_passes=count,
        total_passes=None if count is None else count + request.spark_out_passes,
    )
    return Outcome(result, (*_clean_up_advisories(result), _WHEEL_CAUTION))


def _swing(tir: float, request: TaperCleanUpRequest, half: float) -> float:
    """Half the indicator's movement, square to the surface."""
    across = 1.0 if request.tir_indicated == "square to the surface" else math.cos(half)
    return tir / 2.0 * across


def _available(request: TaperCleanUpRequest, half: float) -> float | None:
    if request.least_large_diameter is None:
        return None
    spare = request.large_diameter - request.least_large_diameter
    return normal_of(spare, "diameter", half)


def _verdict(margin: float | None, point_margin: float | None) -> CleanUpVerdict:
    known = [m for m in (margin, point_margin) if m is not None]
    if not known:
        return "no limit given"
    return "can be saved" if min(known) >= 0 else "cannot be saved"


def _clean_up_advisories(result: TaperCleanUpResult) -> Iterator[Advisory]:
    if result.verdict == "cannot be saved":
        yield stop(
            "does-not-clean-up",
            "The part does not clean up within its limits: do not start grinding it as it is held.",
        )
    if result.from_runout > result.needed_normal / 2.0:
        yield note(
            "runout-takes-the-stock",
            "Runout asks for most of the stock: truing the part in its fixture saves it.",
        )


def standoff(request: TaperStandoffRequest) -> Outcome[TaperStandoffResult]:
    """Where a gauge stands on its cone, and where both bear."""
    gauge = half_angle_rad_of(request)
    part = gauge + request.included_angle_error_arcsec / 2.0 / ARCSEC_PER_RADIAN
    if not 0.0 < part < math.pi / 2:
        raise Impossible(
            "With this error the part would be no cone.",
            fields={"included_angle_error_arcsec": "should leave a half angle of 0° to 90°"},
        )
    outer, inner = (gauge, part) if request.part == "external" else (part, gauge)
    sign = 1.0 if request.part == "external" else -1.0
    from_diameter = sign * gauge_shift(request.diameter_error, outer)
    from_angle = angle_standoff(request.contact_length, outer, inner)
    film = request.blue_film or from_mm(0.002, request.units)
    slant = request.contact_length / math.cos(gauge)
    gap = stock_at_other_end(slant, part - gauge)
    share = 1.0 if gap <= film else film / gap
    bears = bearing_end(outer_minus_inner_rad=outer - inner)
    other = {"large end": "small end", "small end": "large end", "both ends": None}
    result = TaperStandoffResult(
        standoff=from_diameter + from_angle,
        standoff_from_diameter=from_diameter,
        standoff_from_angle=from_angle,
        standoff_per_diameter=gauge_shift(1.0, outer),
        bears_at=bears,
        open_at=other[bears],
        gap_normal=gap,
        gap_on_diameter=off_diameter(gap, gauge),
        marked_share=100.0 * share,
        marked_length=share * request.contact_length,
        bluing_verdict="marks all over" if share == 1.0 else f"marks at the {bears} only",
        smallest_error_shown_arcsec=2.0 * math.asin(min(1.0, film / slant)) * ARCSEC_PER_RADIAN,
    )
    return Outcome(result, tuple(_standoff_advisories(result)))


def _standoff_advisories(result: TaperStandoffResult) -> Iterator[Advisory]:
    if result.bears_at == "small end" and result.bluing_verdict != "marks all over":
        yield caution(
            "bears-at-small-end",
            "Bearing at the small end lets the large end rock and run out; a taper should rather "
            "bear at the large end (common practice, no source).",
        )
    if result.bluing_verdict == "marks all over":
        yield note(
            "bluing-blind",
            "Marking all over proves the angle only to within the film over the length: "
            f"{plain(result.smallest_error_shown_arcsec, 3)}″ of included angle.",
        )


INFEED = Operation(
    topic="tapers",
    verb="infeed",
    title="Feed on a cone",
    summary="What a downfeed square to the surface takes off diameter and radius, how far gauge "
    "line and point move, stock left at either end by an angle error, and the passes.",
    request=TaperInfeedRequest,
    result=TaperInfeedResult,
    calculate=infeed,
    relations=("ΔD = 2 h / cos α", "axial shift = h / sin α", "wedge = slant × sin δα"),
    sources=(DERIVED,),
    example={
        "units": "in",
        "included_angle": 60,
        "amount": 0.001,
        "downfeed_per_pass": 0.0002,
    },
)
CLEAN_UP = Operation(
    topic="tapers",
    verb="clean-up",
    title="Can this part be saved?",
    summary="Stock needed to clean up runout, angle error and wear of a cone against what is "
    "there, and how much its point shortens.",
    request=TaperCleanUpRequest,
    result=TaperCleanUpResult,
    calculate=clean_up_part,
    relations=(
        "u = mean surface of the part less the right cone, square to the surface, at each end",
        "needed = −min(u − swing) + wear; from first touch = max(u + swing) − min(u − swing) + "
        "wear",
        "point loss = D / (2 tan α_part) − D_final / (2 tan α)",
    ),
    sources=(DERIVED,),
    example={
        "units": "in",
        "included_angle": 60,
        "large_diameter": 0.75,
        "length": 0.6,
        "tir_large_end": 0.001,
        "tir_small_end": 0.002,
        "half_angle_error_arcsec": 120,
        "wear": 0.002,
        "least_large_diameter": 0.74,
        "downfeed_per_pass": 0.0002,
    },
)
STANDOFF = Operation(
    topic="tapers",
    verb="standoff",
    title="Stand-off of a taper gauge",
    summary="How far a gauge stands off for an error of diameter, where cones of different angles "
    "bear and by how much they gape, and what bluing will show.",
    request=TaperStandoffRequest,
    result=TaperStandoffResult,
    calculate=standoff,
    relations=("ΔZ = ΔD / (2 tan α)", "gap = slant × sin(δα)", "marked share = film / gap"),
    sources=(DERIVED,),
    example={
        "units": "in",
        "taper_per_foot": 3.5,
        "part": "external",
        "contact_length": 2.5,
        "diameter_error": 0.0005,
        "included_angle_error_arcsec": 20,
    },
)
