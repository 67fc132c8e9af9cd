"""What a step of downfeed, square to the cone's surface, takes off."""

from pydantic import Field

from halfangle_service.fields import CountOut, LengthOut, ResultModel
from halfangle_service.trade.tapers.feed import axial_shift, off_diameter, passes


class PlannedFeed(ResultModel):
    """What one step of downfeed, square to the cone's surface, takes off."""

    downfeed_step: LengthOut = Field(description="The step of downfeed.")
    off_diameter: LengthOut = Field(description="Taken off the diameter at a fixed station.")
    off_point: LengthOut = Field(description="How far the point moves along the axis.")
    steps_for_allowance: CountOut | None = Field(
        description="Steps to remove the grinding allowance, the last one perhaps a part of a step."
    )
    allowance_off_diameter: LengthOut | None = Field(
        description="What the whole allowance takes off the diameter."
    )
    allowance_off_point: LengthOut | None = Field(
        description="How far the whole allowance moves the point."
    )


def planned_feed(step: float, allowance: float | None, half_angle_rad: float) -> PlannedFeed:
    """Give what a step of downfeed takes off, and the whole allowance."""
    stated = allowance is not None
    whole = allowance or 0.0
    return PlannedFeed(
        downfeed_step=step,
        off_diameter=off_diameter(step, half_angle_rad),
        off_point=axial_shift(step, half_angle_rad),
        steps_for_allowance=passes(whole, step)[0] if stated else None,
        allowance_off_diameter=off_diameter(whole, half_angle_rad) if stated else None,
        allowance_off_point=axial_shift(whole, half_angle_rad) if stated else None,
    )
