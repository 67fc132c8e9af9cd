"""Requests and results of tapers gauged by depth."""

from typing import Annotated

from pydantic import Field

from halfangle_service.fields import (
    Angle,
    ArcsecOut,
    Length,
    LengthOut,
    NonNegativeLength,
    NumberOut,
    ResultModel,
    SignedLength,
    Unit,
)
from halfangle_service.topics.tapers.models_contact import TaperPerFootOut
from halfangle_service.topics.tapers.models_slope import TaperSlopeFields

_DEPTH = (
    "from the part's large end (a socket's mouth, a plug's large end) toward the small end to the "
    "gauge's line or sharp edge; negative where it stands out"
)


class TaperPlugDepthRequest(TaperSlopeFields):
    """A plug gauge in a socket, or a ring gauge over a plug, at a measured depth.

    State the slope, or a second gauge of another diameter that gives it; with both, the slope
    stated is compared.
    """

    gauge_diameter: Length = Field(
        description="The gauge's diameter at its line or sharp edge.", examples=[17.78]
    )
    depth: SignedLength = Field(description=f"Distance {_DEPTH}.", examples=[0.5])
    gauge_length: NonNegativeLength = Field(
        0.0,
        description="How far the gauge's cone runs from its line toward the small end; 0 for a "
        "sharp edge, such as a disc's or a straight ring's.",
    )
    second_gauge_diameter: Length | None = Field(
        None, description="Diameter of a second gauge, at a sharp edge."
    )
    second_depth: SignedLength | None = Field(None, description=f"Its distance {_DEPTH}.")
    length: Length = Field(description="Length of the part's cone.", examples=[64.0])
    gauge_line: NonNegativeLength = Field(
        0.0, description="Distance of the part's own gauge line from its large end."
    )
    depth_tolerance: NonNegativeLength = Field(0.0, description="Largest error of each depth.")
    gauge_tolerance: NonNegativeLength = Field(
        0.0, description="Largest error of each gauge's diameter."
    )
    included_angle_tolerance_arcsec: Annotated[
        float, Field(strict=True, allow_inf_nan=False, ge=0, le=36_000), Unit("arcsecond")
    ] = Field(0.0, description="Largest error of the included angle stated.")


class TaperPlugDepthResult(ResultModel):
    """The part as gauged by depth."""

    gauge_line_diameter: LengthOut = Field(description="Diameter at the part's gauge line.")
    gauge_line_diameter_expanded: LengthOut = Field(
        description="Expanded uncertainty of it, k = 2."
    )
    gauge_line_diameter_worst: LengthOut = Field(
        description="Largest error of it, all tolerances at their limits at once."
    )
    large_diameter: LengthOut = Field(description="Diameter at the large end.")
    small_diameter: LengthOut = Field(description="Diameter at the end of the length.")
    half_angle: Angle = Field(description="Half angle, as stated or as found by two gauges.")
    included_angle: Angle = Field(description="Included angle.")
    taper_per_foot: TaperPerFootOut
    half_angle_expanded_arcsec: ArcsecOut = Field(
        description="Expanded uncertainty of the half angle, k = 2."
    )
    included_angle_off_stated_arcsec: ArcsecOut | None = Field(
        description="Included angle found less the one stated; null without both."
    )
    engaged_length: LengthOut = Field(
        description="Length over which the first gauge touches; 0 for a sharp edge."
    )
    diameter_per_depth: NumberOut = Field(description="Diameter for one unit of depth: 2 tan α.")


class TaperPlugDepthNominalRequest(TaperSlopeFields):
    """A nominal taper that is to be gauged by depth."""

    large_diameter: Length = Field(description="Diameter at the large end.", examples=[17.8])
    length: Length = Field(description="Length of the part's cone.", examples=[64.0])
    gauge_diameter: Length = Field(
        description="The gauge's diameter at its line or sharp edge.", examples=[17.78]
    )
    gauge_length: NonNegativeLength = Field(
        0.0, description="How far the gauge's cone runs from its line toward the small end."
    )
    diameter_tolerance: NonNegativeLength = Field(
        0.0, description="Tolerance of the large diameter, plus and minus."
    )


class TaperPlugDepthNominalResult(ResultModel):
    """The depth to expect, and its limits."""

    depth: LengthOut = Field(description=f"Distance {_DEPTH}.")
    smallest_depth: LengthOut = Field(
        description="Depth at the smallest large diameter: the shallow limit."
    )
    largest_depth: LengthOut = Field(
        description="Depth at the largest large diameter: the deep limit."
    )
    depth_per_diameter: NumberOut = Field(
        description="Depth for one unit of diameter: 1 / (2 tan α)."
    )
    diameter_per_depth: NumberOut = Field(description="Diameter for one unit of depth: 2 tan α.")
    engaged_length: LengthOut = Field(
        description="Length over which the gauge touches; 0 for a sharp edge."
    )
    half_angle: Angle = Field(description="Half angle.")
