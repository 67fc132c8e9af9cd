"""Other ways to set a taper: models to maths."""

import math
from collections.abc import Iterator

from halfangle_service.errors import Impossible
from halfangle_service.fields import ARCSEC_PER_RADIAN, angle_from_radians
from halfangle_service.fields.advisories import caution
from halfangle_service.operation import Operation, Outcome, Source
from halfangle_service.topics.tapers.models_more import (
    TaperSetOverRequest,
    TaperSetOverResult,
    TaperWayToSet,
    WayName,
)
from halfangle_service.topics.tapers.models_slope import half_angle_rad_of
from halfangle_service.trade.tables.tapers.rates import set_over, set_over_rule

_SET_OVER = Source(
    citation="Jones, Turning and Boring: set-over = taper per foot × length / 24; the exact L sin α"
    " derived here for ball centers.",
    standing="published",
)


def set_over_ways(request: TaperSetOverRequest) -> Outcome[TaperSetOverResult]:
    """Other ways to set a taper, their errors side by side."""
    half = half_angle_rad_of(request)
    rule = set_over_rule(request.work_length, half)
    if rule >= request.work_length:
        raise Impossible(
            "No set-over makes a half angle of 45° and beyond by the shop rule; swivel the work.",
            fields={"half_angle": "should be below 45°"},
        )
    ways = sorted(_ways(request, half), key=lambda way: way.half_angle_error_arcsec)
    rule_half = math.asin(rule / request.work_length)
    result = TaperSetOverResult(
        half_angle=angle_from_radians(half),
        scale_arc=request.scale_radius * half,
        scale_chord=2.0 * request.scale_radius * math.sin(half / 2.0),
        set_over=set_over(request.work_length, half),
        set_over_by_rule=rule,
        rule_error_arcsec=(rule_half - half) * ARCSEC_PER_RADIAN,
        ways=ways,
    )
    advice = caution(
        "set-over-wears-centers",
        "Set over, plain centers bear on an edge and wear; use ball centers, and hold every piece "
        "to one length, since the taper changes with it (common practice, no source).",
    )
    return Outcome(result, (advice,))


def _ways(request: TaperSetOverRequest, half: float) -> Iterator[TaperWayToSet]:
    tangent, cosine = math.tan(half), math.cos(half)
    length, bar = request.work_length, request.attachment_length
    over = request.set_over_error / (length * cosine) + tangent * request.work_length_error / length
    yield _way("swivel", request, request.scale_radius * half, half, _swivel_error(request))
    yield _way("tailstock set-over", request, set_over(length, half), half, over)
    bar_error = cosine**2 * request.attachment_error / bar
    yield _way("taper attachment", request, bar * tangent, half, bar_error)


def _swivel_error(request: TaperSetOverRequest) -> float:
    return request.scale_reading_error / request.scale_radius


def _way(
    name: WayName, request: TaperSetOverRequest, setting: float, half: float, error_rad: float
) -> TaperWayToSet:
    on_diameter = 2.0 * request.work_length * error_rad / math.cos(half) ** 2
    return TaperWayToSet(
        way=name,
        setting=setting,
        half_angle_error_arcsec=error_rad * ARCSEC_PER_RADIAN,
        error_on_diameter=on_diameter,
    )


SET_OVER = Operation(
    topic="tapers",
    verb="set-over",
    title="Other ways to set a taper",
    summary="Swivel, tailstock set-over and taper attachment for one taper, with their errors side "
    "by side.",
    request=TaperSetOverRequest,
    result=TaperSetOverResult,
    calculate=set_over_ways,
    relations=(
        "arc = r α; chord = 2 r sin(α / 2)",
        "set-over = L sin α; by rule taper × L / 2 = L tan α",
        "δα = δs / r; δS / (L cos α) + tan α · δL / L; cos² α · δb / l",
    ),
    sources=(_SET_OVER,),
    example={
        "units": "in",
        "taper_per_foot": 1,
        "work_length": 9,
        "scale_radius": 6,
        "scale_reading_error": 0.005,
        "set_over_error": 0.002,
        "attachment_length": 12,
        "attachment_error": 0.005,
    },
)
