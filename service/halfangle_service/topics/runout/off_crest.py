"""The false taper that an indicator shows when it runs along a cone beside its crest."""

from typing import Literal

from pydantic import Field

from halfangle_service.fields import (
    ARCSEC_PER_RADIAN,
    Arcsec,
    ArcsecOut,
    Length,
    LengthOut,
    NonNegativeLength,
    ResultModel,
    UnitsField,
)
from halfangle_service.fields.advisories import caution
from halfangle_service.fields.slopes import SlopeFields, slope_of
from halfangle_service.operation import Outcome, Source, operation
from halfangle_service.trade.cone import require_smaller
from halfangle_service.trade.runout import crest

_CREST = Source(
    citation="Derived here: a ball tip against a cone, in a plane beside the axis.",
    standing="derived",
)


class RunoutOffCrestRequest(SlopeFields):
    """An indicator run along a cone beside its crest."""

    units: UnitsField
    small_diameter: NonNegativeLength = Field(
        description="Diameter at the small end of the run; 0 for a true point."
    )
    large_diameter: Length = Field(description="Diameter at its large end.")
    miss: NonNegativeLength = Field(
        description="How far beside the crest the tip runs, in `units`.", examples=[0.01]
    )
    tip_radius: NonNegativeLength = Field(
        0.0, description="Radius of the indicator's tip, in `units`.", examples=[0.04]
    )
    half_angle_tolerance_arcsec: Arcsec | None = Field(
        None,
        description="False half angle to allow, ± in arc-seconds on the half angle; gives the miss "
        "allowed.",
        examples=[10],
    )


class RunoutOffCrestResult(ResultModel):
    """The false taper."""

    drop_at_small_end: LengthOut = Field(description="How much lower it reads at the small end.")
    drop_at_large_end: LengthOut = Field(description="How much lower it reads at the large end.")
    false_reading: LengthOut = Field(description="Their difference over the run.")
    false_half_angle_arcsec: ArcsecOut = Field(
        description="By how much the half angle seems larger than it is."
    )
    false_included_angle_arcsec: ArcsecOut = Field(description="Twice that.")
    seems: Literal["true", "steeper"] = Field(description="How the cone seems.")
    ground_by_this: Literal["true", "shallower"] = Field(
        description="What the cone becomes when it is adjusted until the indicator stands still."
    )
    limit_miss: LengthOut | None = Field(
        description="Largest miss for `half_angle_tolerance_arcsec`; null where that was not sent."
    )


@operation(
    "runout.off-crest",
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
        "half_angle_tolerance_arcsec": 10,
    },
)
def off_crest(request: RunoutOffCrestRequest) -> Outcome[RunoutOffCrestResult]:
    """False taper of an indicator off the crest.

    An indicator run along a cone beside its crest drops more at the small end: the false taper,
    and the miss that a wanted angle allows.
    """
    require_smaller(request.small_diameter, request.large_diameter)
    half_rad, tip = slope_of(request).half_angle_rad, request.tip_radius
    radii = (request.small_diameter / 2.0, request.large_diameter / 2.0)
    small, large = (crest.crest_drop(request.miss, r, half_rad, tip) for r in radii)
    false = crest.false_half_angle(request.miss, radii, half_rad, tip)
    allowed = request.half_angle_tolerance_arcsec
    result = RunoutOffCrestResult(
        drop_at_small_end=small,
        drop_at_large_end=large,
        false_reading=small - large,
        false_half_angle_arcsec=false * ARCSEC_PER_RADIAN,
        false_included_angle_arcsec=2.0 * false * ARCSEC_PER_RADIAN,
        seems="steeper" if false > 0.0 else "true",
        ground_by_this="shallower" if false > 0.0 else "true",
        limit_miss=None
        if allowed is None
        else crest.miss_for(allowed / ARCSEC_PER_RADIAN, radii, half_rad, tip),
    )
    if allowed is None or result.false_half_angle_arcsec <= allowed:
        return Outcome(result)
    message = "Find the crest first: swing the indicator across and set it at the highest reading."
    return Outcome(result, (caution("find-the-crest", message),))
