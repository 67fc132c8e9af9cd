"""Other ways to set a taper than a sine setting, with their errors side by side."""

from collections.abc import Iterator
from typing import Annotated, Literal

from pydantic import Field

from halfangle_service.fields import (
    ARCSEC_PER_RADIAN,
    Angle,
    AngleInput,
    ArcsecOut,
    Length,
    LengthOut,
    NonNegativeLength,
    ResultModel,
    Units,
    UnitsField,
)
from halfangle_service.fields.advisories import Advisory, caution, stop
from halfangle_service.fields.estimate import ArcsecEstimate, LengthEstimate, estimate
from halfangle_service.fields.slopes import SlopeFields, slope_of
from halfangle_service.operation import Outcome, Source, operation
from halfangle_service.trade import elementary
from halfangle_service.trade.cone import half_angle_from_rate, rate_from_taper_per_foot
from halfangle_service.trade.tapers import set_over as trade
from halfangle_service.trade.uncertainty import Budget, Contribution, Forecast
from halfangle_service.trade.wording import length as show_length

WayName = Literal["swivel", "tailstock-set-over", "taper-attachment"]
_SET_OVER = Source(
    citation="Jones, Turning and Boring: set-over = taper per foot × length / 24; the exact L sin α"
    " derived here for ball centers.",
    standing="published",
)
_STEEPEST = Source(
    citation="Machine Shop Work (reprinted at chestofbooks.com), Compound slide: a taper "
    "attachment is usually limited to about three inches per foot.",
    standing="published",
)
_STEEPEST_SET_OVER = Source(
    citation="The same limit taken for a tailstock set over, for which none is published.",
    standing="common-practice-no-source",
)
#: Half angle of a taper of 3 in per foot, past which only a swivel is offered without a doubt.
_STEEPEST_RAD = half_angle_from_rate(rate_from_taper_per_foot(3.0))


class TaperSetOverRequest(SlopeFields):
    """A taper to be set, and how finely each way can be set."""

    units: UnitsField
    work_length: Length = Field(
        description="Length of the work between its center holes.", examples=[9.0]
    )
    scale_radius: Length = Field(
        description="Radius of the swivel's scale, or of an indicator from its pivot.",
        examples=[6.0],
    )
    scale_reading_error_limit: NonNegativeLength = Field(
        description="Largest error of setting along that scale, plus or minus.", examples=[0.005]
    )
    set_over_error_limit: NonNegativeLength = Field(
        description="Largest error of setting the tailstock over, plus or minus.", examples=[0.002]
    )
    work_length_error_limit: NonNegativeLength | None = Field(
        None, description="Largest error of the length between the center holes, plus or minus."
    )
    attachment_length: Length = Field(
        description="Length of the taper attachment's bar between its pointers.", examples=[12.0]
    )
    attachment_error_limit: NonNegativeLength = Field(
        description="Largest error of setting the bar at that length, plus or minus.",
        examples=[0.005],
    )
    largest_angle: Annotated[float, AngleInput(gt=0, le=90)] | None = Field(
        None, description="Furthest that workhead or table swivels, in degrees."
    )
    largest_set_over: Length | None = Field(
        None, description="Furthest that the tailstock can be set over."
    )
    largest_attachment_offset: Length | None = Field(
        None, description="Furthest that the attachment's bar can be offset at its length."
    )


#: Of a limit: what rounding leaves of a setting just at it.
_ROUNDING = 1e-12
#: What each way sets, in a sentence.
_SETTINGS: dict[WayName, str] = {
    "swivel": "An arc on the swivel's scale",
    "tailstock-set-over": "A set-over of the tailstock",
    "taper-attachment": "An offset of the taper attachment",
}


class TaperWayToSet(ResultModel):
    """One way to set a taper and its error."""

    way: WayName = Field(description="The way.")
    setting: LengthOut = Field(
        description="Arc on the scale, set-over, or offset of the bar at its length."
    )
    half_angle_error_arcsec: ArcsecEstimate = Field(description="Error of the half angle.")
    error_on_diameter: LengthEstimate = Field(
        description="What it makes over the work's length on the diameter."
    )
    forecast: Forecast = Field(
        description="Whether the machine reaches this setting: by the limit stated; without one "
        "`not-stated`, or `may-not-hold` where the taper is steeper than is commonly set this way."
    )


class TaperSetOverResult(ResultModel):
    """Ways to set the taper: those that the machine reaches first, of these the surest."""

    half_angle: Angle = Field(description="Half angle to swivel the workhead or table.")
    scale_arc: LengthOut = Field(description="Arc along the scale.")
    scale_chord: LengthOut = Field(description="Chord across the scale: 2 r sin(α / 2).")
    set_over: LengthOut = Field(description="Set-over on ball centers: L sin α.")
    set_over_by_rule: LengthOut = Field(description="Set-over by the shop rule: L tan α.")
    rule_error_arcsec: ArcsecOut | None = Field(
        description="Error of the half angle that the rule's set-over makes; null past 45°, "
        "where that would be the work's whole length or more."
    )
    ways: list[TaperWayToSet] = Field(
        description="Each way with its error: first what the machine reaches as far as is known, "
        "then what it may not reach, last what it does not; of these the surest first, and last "
        "those of which some error was not stated."
    )


@operation(
    "tapers.set-over",
    relations=(
        "arc = r α; chord = 2 r sin(α / 2)",
        "set-over = L sin α; by rule taper × L / 2 = L tan α",
        "δα = δs / r; δS / (L cos α) − tan α · δL / L; cos² α · δb / l",
    ),
    sources=(_SET_OVER, _STEEPEST, _STEEPEST_SET_OVER),
    example={
        "units": "in",
        "taper_per_foot": 1,
        "work_length": 9,
        "scale_radius": 6,
        "scale_reading_error_limit": 0.005,
        "set_over_error_limit": 0.002,
        "work_length_error_limit": 0.01,
        "attachment_length": 12,
        "attachment_error_limit": 0.005,
        "largest_set_over": 1,
    },
    columns=True,
)
def set_over(request: TaperSetOverRequest) -> Outcome[TaperSetOverResult]:
    """Other ways to set a taper.

    Swivel, tailstock set-over and taper attachment for one taper, with their errors side by side.
    """
    slope = slope_of(request)
    half = slope.half_angle_rad
    length = request.work_length
    rule = trade.set_over_rule(length, half)
    by_rule = elementary.asin(rule / length) - half if rule < length else None
    ways = sorted(_ways(request, half), key=_order)
    result = TaperSetOverResult(
        half_angle=Angle.of(slope.half_angle_degrees),
        scale_arc=trade.scale_arc(request.scale_radius, half),
        scale_chord=trade.scale_chord(request.scale_radius, half),
        set_over=trade.set_over(length, half),
        set_over_by_rule=rule,
        rule_error_arcsec=None if by_rule is None else by_rule * ARCSEC_PER_RADIAN,
        ways=ways,
    )
    return Outcome(result, tuple(_advisories(ways, request.units)))


def _ways(request: TaperSetOverRequest, half: float) -> Iterator[TaperWayToSet]:
    length, radius, bar = request.work_length, request.scale_radius, request.attachment_length
    per_radian = trade.diameter_per_radian(length, half)
    reading = ("scale_reading_error_limit", request.scale_reading_error_limit, 1.0 / radius)
    swivel = request.largest_angle
    yield _way(
        "swivel",
        trade.scale_arc(radius, half),
        _budget(reading),
        per_radian,
        _reach(elementary.degrees(half), swivel, commonly=True),
    )
    over = ("set_over_error_limit", request.set_over_error_limit, trade.per_set_over(length, half))
    work = (
        "work_length_error_limit",
        request.work_length_error_limit,
        trade.per_work_length(length, half),
    )
    setting = trade.set_over(length, half)
    yield _way(
        "tailstock-set-over",
        setting,
        _budget(over, work),
        per_radian,
        _reach(setting, request.largest_set_over, commonly=half <= _STEEPEST_RAD),
    )
    offset = ("attachment_error_limit", request.attachment_error_limit, trade.per_offset(bar, half))
    setting = trade.offset(bar, half)
    yield _way(
        "taper-attachment",
        setting,
        _budget(offset),
        per_radian,
        _reach(setting, request.largest_attachment_offset, commonly=half <= _STEEPEST_RAD),
    )


def _reach(setting: float, largest: float | None, *, commonly: bool) -> Forecast:
    """Whether the machine reaches a setting; without its limit, whether such ways commonly do."""
    if largest is None:
        return "not-stated" if commonly else "may-not-hold"
    return "holds" if setting <= largest * (1.0 + _ROUNDING) else "does-not-hold"


def _budget(*errors: tuple[str, float | None, float]) -> Budget:
    """Budget of the half angle in radians from errors by name and their sensitivities."""
    return Budget(
        tuple(
            Contribution(name, error, sensitivity=sensitivity, unit="length")
            for name, error, sensitivity in errors
            if error is not None
        ),
        not_stated=tuple(name for name, error, _ in errors if error is None),
    )


def _way(
    way: WayName, setting: float, budget: Budget, diameter_per_radian: float, reach: Forecast
) -> TaperWayToSet:
    return TaperWayToSet(
        way=way,
        setting=setting,
        half_angle_error_arcsec=estimate(ArcsecEstimate, budget, per_unit=ARCSEC_PER_RADIAN),
        error_on_diameter=estimate(LengthEstimate, budget, per_unit=diameter_per_radian),
        forecast=reach,
    )


#: What is reached as far as is known, what may not be, what is not.
_RANK: dict[Forecast, int] = {"holds": 0, "not-stated": 0, "may-not-hold": 1, "does-not-hold": 2}


def _order(way: TaperWayToSet) -> tuple[int, bool, float]:
    error = way.half_angle_error_arcsec
    return _RANK[way.forecast], bool(error.not_stated), error.worst_case or 0.0


def _advisories(ways: list[TaperWayToSet], units: Units) -> Iterator[Advisory]:
    beyond = [way for way in ways if way.forecast == "does-not-hold"]
    if len(beyond) == len(ways):
        yield stop(
            "no-way-reaches",
            "No way reaches this taper within the limits stated: set it on a sine plate.",
        )
    for way in beyond:
        yield caution(
            "way-out-of-reach",
            f"{_shown(way, units)} is past the machine's limit as stated.",
        )
    for way in ways:
        if way.forecast == "may-not-hold":
            yield caution(
                "steep-for-this-way",
                f"{_shown(way, units)} is for a taper steeper than 3 in per foot, which is seldom "
                "within the machine's reach: swivel the work, or state how far the machine goes.",
            )
    if any(way.way == "tailstock-set-over" and way not in beyond for way in ways):
        yield caution(
            "set-over-wears-centers",
            "Set over, plain centers bear on an edge and wear; use ball centers, and hold every "
            "piece to one length, since the taper changes with it (common practice, no source).",
        )


def _shown(way: TaperWayToSet, units: Units) -> str:
    return f"{_SETTINGS[way.way]} of {show_length(way.setting, units)}"
