"""Other ways to set a taper than a sine setting, with their errors side by side."""

import math
from collections.abc import Iterator
from typing import Literal

from pydantic import Field

from halfangle_service.errors import Impossible
from halfangle_service.fields import (
    ARCSEC_PER_RADIAN,
    Angle,
    ArcsecOut,
    Length,
    LengthOut,
    NonNegativeLength,
    ResultModel,
    UnitsField,
    angle_from_radians,
)
from halfangle_service.fields.advisories import caution
from halfangle_service.fields.estimate import ArcsecEstimate, LengthEstimate, estimate
from halfangle_service.fields.slopes import SlopeFields, slope_of
from halfangle_service.operation import Outcome, Source, operation
from halfangle_service.trade.tapers import set_over as trade
from halfangle_service.trade.uncertainty import Budget, Contribution

WayName = Literal["swivel", "tailstock-set-over", "taper-attachment"]
_SET_OVER = Source(
    citation="Jones, Turning and Boring: set-over = taper per foot × length / 24; the exact L sin α"
    " derived here for ball centers.",
    standing="published",
)


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
    scale_reading_error: NonNegativeLength = Field(
        description="Largest error of setting along that scale, plus or minus.", examples=[0.005]
    )
    set_over_error: NonNegativeLength = Field(
        description="Largest error of setting the tailstock over, plus or minus.", examples=[0.002]
    )
    work_length_error: NonNegativeLength | None = Field(
        None, description="Largest error of the length between the center holes, plus or minus."
    )
    attachment_length: Length = Field(
        description="Length of the taper attachment's bar between its pointers.", examples=[12.0]
    )
    attachment_error: NonNegativeLength = Field(
        description="Largest error of setting the bar at that length, plus or minus.",
        examples=[0.005],
    )


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


class TaperSetOverResult(ResultModel):
    """Ways to set the taper, the surest first."""

    half_angle: Angle = Field(description="Half angle to swivel the workhead or table.")
    scale_arc: LengthOut = Field(description="Arc along the scale.")
    scale_chord: LengthOut = Field(description="Chord across the scale: 2 r sin(α / 2).")
    set_over: LengthOut = Field(description="Set-over on ball centers: L sin α.")
    set_over_by_rule: LengthOut = Field(description="Set-over by the shop rule: L tan α.")
    rule_error_arcsec: ArcsecOut = Field(
        description="Error of the half angle that the rule's set-over makes."
    )
    ways: list[TaperWayToSet] = Field(
        description="Each way with its error, the surest first; those of which some error was not "
        "stated come last."
    )


@operation(
    "tapers.set-over",
    relations=(
        "arc = r α; chord = 2 r sin(α / 2)",
        "set-over = L sin α; by rule taper × L / 2 = L tan α",
        "δα = δs / r; δS / (L cos α) − tan α · δL / L; cos² α · δb / l",
    ),
    sources=(_SET_OVER,),
    example={
        "units": "in",
        "taper_per_foot": 1,
        "work_length": 9,
        "scale_radius": 6,
        "scale_reading_error": 0.005,
        "set_over_error": 0.002,
        "work_length_error": 0.01,
        "attachment_length": 12,
        "attachment_error": 0.005,
    },
)
def set_over(request: TaperSetOverRequest) -> Outcome[TaperSetOverResult]:
    """Other ways to set a taper.

    Swivel, tailstock set-over and taper attachment for one taper, with their errors side by side.
    """
    half = slope_of(request).half_angle_rad
    length = request.work_length
    rule = trade.set_over_rule(length, half)
    if rule >= length:
        raise Impossible(
            "No set-over makes a half angle of 45° and beyond by the shop rule; swivel the work.",
            fields={"half_angle": "should be below 45°"},
        )
    result = TaperSetOverResult(
        half_angle=angle_from_radians(half),
        scale_arc=trade.scale_arc(request.scale_radius, half),
        scale_chord=trade.scale_chord(request.scale_radius, half),
        set_over=trade.set_over(length, half),
        set_over_by_rule=rule,
        rule_error_arcsec=(math.asin(rule / length) - half) * ARCSEC_PER_RADIAN,
        ways=sorted(_ways(request, half), key=_least_sure_last),
    )
    advice = caution(
        "set-over-wears-centers",
        "Set over, plain centers bear on an edge and wear; use ball centers, and hold every piece "
        "to one length, since the taper changes with it (common practice, no source).",
    )
    return Outcome(result, (advice,))


def _ways(request: TaperSetOverRequest, half: float) -> Iterator[TaperWayToSet]:
    length, radius, bar = request.work_length, request.scale_radius, request.attachment_length
    per_radian = trade.diameter_per_radian(length, half)
    reading = ("scale_reading_error", request.scale_reading_error, 1.0 / radius)
    yield _way("swivel", trade.scale_arc(radius, half), _budget(reading), per_radian)
    over = ("set_over_error", request.set_over_error, trade.per_set_over(length, half))
    work = ("work_length_error", request.work_length_error, trade.per_work_length(length, half))
    tailstock = _budget(over, work)
    yield _way("tailstock-set-over", trade.set_over(length, half), tailstock, per_radian)
    offset = ("attachment_error", request.attachment_error, trade.per_offset(bar, half))
    yield _way("taper-attachment", trade.offset(bar, half), _budget(offset), per_radian)


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


def _way(way: WayName, setting: float, budget: Budget, diameter_per_radian: float) -> TaperWayToSet:
    return TaperWayToSet(
        way=way,
        setting=setting,
        half_angle_error_arcsec=estimate(ArcsecEstimate, budget, per_unit=ARCSEC_PER_RADIAN),
        error_on_diameter=estimate(LengthEstimate, budget, per_unit=diameter_per_radian),
    )


def _least_sure_last(way: TaperWayToSet) -> tuple[bool, float]:
    error = way.half_angle_error_arcsec
    return bool(error.not_stated), error.worst_case or 0.0
