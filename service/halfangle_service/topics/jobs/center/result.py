"""How a center's plan is answered: the figures of its one way, under the names of a center."""

import math
from collections.abc import Iterable, Sequence
from typing import Annotated, Self

from pydantic import Field

from halfangle_service.fields import (
    ARCSEC_PER_RADIAN,
    Angle,
    ArcsecOut,
    CountOut,
    LengthOut,
    ResultModel,
    Unit,
    Units,
    angle_from_radians,
    from_tenth_nm,
)
from halfangle_service.fields.estimate import ArcsecEstimate
from halfangle_service.fields.stacks import BlockAlternative
from halfangle_service.topics.jobs.plan.parts.feed import PlanFeed, cutting_passes
from halfangle_service.topics.jobs.plan.parts.runout import PlannedRunout
from halfangle_service.topics.jobs.plan.result import PlanAngle, PlanSetting, PlanStack
from halfangle_service.topics.jobs.plan.shank import PlannedShank
from halfangle_service.topics.jobs.plan.usual_steps import PlanStep
from halfangle_service.trade.inspection.checks import Check
from halfangle_service.trade.inspection.mistakes import StackMistake
from halfangle_service.trade.uncertainty import Forecast


class PlannedCone(ResultModel):
    """The cone itself."""

    included_angle: Angle = Field(description="Included angle wanted.")
    half_angle: Angle = Field(description="Half angle wanted.")
    length: LengthOut = Field(description="Length along the axis, from body to sharp point.")
    slant_length: LengthOut = Field(
        description="Length along the surface: the least travel of the wheel across the cone."
    )


class PlannedSetting(BlockAlternative):
    """The sine plate's setting and the stack that gives it; the height asked for is `height`."""

    plate_angle: Angle = Field(description="Angle of the plate: the half angle of the cone.")
    height: LengthOut = Field(description="Exact height for that angle.")
    included_angle_from_stack: Angle = Field(
        description="Included angle that the stack gives by its actual height."
    )
    included_angle_arcsec_per_step: ArcsecOut = Field(
        description="Change of the *included* angle for one bench step of stack height (0.0001 in "
        "or 0.001 mm)."
    )
    proved: bool = Field(
        description="True where no smaller stack gives this height; that is proved, not searched."
    )

    @classmethod
    def of(cls, setting: PlanSetting, stack: PlanStack) -> Self:
        """A plate's setting on its stack."""
        angle = math.radians(setting.angle.degrees)
        off = (setting.deviation_arcsec or 0.0) / ARCSEC_PER_RADIAN
        return cls(
            **{name: getattr(stack, name) for name in BlockAlternative.model_fields},
            plate_angle=setting.angle,
            height=setting.height or 0.0,
            included_angle_from_stack=angle_from_radians(2.0 * (angle + off)),
            included_angle_arcsec_per_step=2.0 * (setting.arcsec_per_step or 0.0),
            proved=True,
        )


class PlannedAngle(ResultModel):
    """The angle error to expect, against its tolerance. The half angle's error counts twice."""

    included_angle_error_arcsec: ArcsecEstimate = Field(
        description="Error of the included angle: the stack's deviation, temperature and the mean "
        "of a yaw as its value, the rest as its uncertainty."
    )
    included_angle_tolerance_arcsec: ArcsecOut = Field(description="± tolerance asked for.")
    tolerance_used_percent: Annotated[float, Unit("percent")] | None = Field(
        description="Worst case over tolerance; null where no contribution was stated."
    )
    forecast: Forecast = Field(
        description="Whether this set-up will hold the tolerance, by `decision_rule`; never "
        "`holds` with something not stated."
    )

    @classmethod
    def of(cls, angle: PlanAngle) -> Self:
        """The angle of a plan's way."""
        return cls(
            included_angle_error_arcsec=angle.error_arcsec,
            included_angle_tolerance_arcsec=angle.tolerance_arcsec,
            tolerance_used_percent=angle.tolerance_used_percent,
            forecast=angle.forecast,
        )


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

    @classmethod
    def of(cls, feed: PlanFeed, step: float, allowance: float | None) -> Self:
        """A feed by one step from the first touch to size."""
        per = {reading.read_off: reading.per_downfeed for reading in feed.stop_readings}
        return cls(
            downfeed_step=step,
            off_diameter=step * per["diameter"],
            off_point=step * per["axial-position"],
            steps_for_allowance=cutting_passes(feed) or None,
            allowance_off_diameter=None if allowance is None else allowance * per["diameter"],
            allowance_off_point=None if allowance is None else allowance * per["axial-position"],
        )


class WrongBlock(ResultModel):
    """One mistake with this stack: a block taken for another one of the box."""

    meant: LengthOut = Field(description="Block that belongs in the stack.")
    wrung: LengthOut = Field(description="Block taken in its place.")
    included_angle_error_arcsec: ArcsecOut | None = Field(
        description="Included angle that the wrong stack gives, less the wanted one; null where it "
        "lifts the plate by its center distance or more."
    )

    @classmethod
    def of(cls, mistake: StackMistake | None, units: Units) -> Self | None:
        """A mistake with the way's stack; None of none."""
        if mistake is None:
            return None
        return cls(
            meant=from_tenth_nm(mistake.meant.size, units),
            wrung=from_tenth_nm(mistake.wrung.size, units),
            included_angle_error_arcsec=mistake.error_arcsec,
        )


class PlanCheck(ResultModel):
    """One check: whether it would catch a wrong block, and whether it can prove a tolerance."""

    check: str = Field(description="What to check.")
    how: str = Field(description="How the check is made.")
    expected: str = Field(description="What to expect.")
    catches_wrong_block: bool | None = Field(
        description="Whether it would show the smallest mistake that takes the angle out of its "
        "tolerance; null where no single wrong block does."
    )
    reason: str = Field(description="Why it would, or would not.")
    proves_tolerance: bool = Field(
        description="Whether a reading of it can prove that the ground cone keeps the tolerance of "
        "its angle, or the limit of its runout."
    )
    proof: str = Field(description="What it can prove, in plain words.")
    acceptance_arcsec: ArcsecOut | None = Field(
        description="± error of the included angle, as read, within which it proves the angle's "
        "tolerance; null where it proves none."
    )
    acceptance_tir: LengthOut | None = Field(
        description="Reading up to which it proves the limit of the runout; null where it proves "
        "none."
    )


class CenterJobResult(ResultModel):
    """The plan."""

    job: str = Field(description="Name of the job.")
    forecast: Forecast = Field(
        description="Whether angle and runout will both keep their limits; it holds only where "
        "both hold, and does not where either does not."
    )
    cone: PlannedCone = Field(description="The cone.")
    shank: PlannedShank = Field(description="The shank and how it is held.")
    plate_setting: PlannedSetting = Field(description="The plate's setting and its stack.")
    angle_budget: PlannedAngle = Field(description="The angle error to expect.")
    runout_budget: PlannedRunout = Field(description="The runout to expect.")
    downfeed: PlannedFeed = Field(description="What a step of downfeed takes off.")
    smallest_mistake: WrongBlock | None = Field(
        description="The wrong block that would be hardest to notice; null where no other block "
        "could be taken."
    )
    smallest_mistake_past_tolerance: WrongBlock | None = Field(
        description="The hardest to notice of those that take the angle out of its tolerance, "
        "which is what the checks are judged by; null where no single wrong block does."
    )
    second_stack: list[LengthOut] | None = Field(
        description="The same height from other blocks of the set, to check the first stack; null "
        "where the set has no such stack."
    )
    steps: list[PlanStep] = Field(
        description="The steps, in order, with the cautions of the trade."
    )
    checks: list[PlanCheck] = Field(description="The checks to make.")


def checks_out(checks: Iterable[Check]) -> list[PlanCheck]:
    """The checks as the answer gives them, in their order."""
    return [
        PlanCheck(**{name: getattr(check, name) for name in PlanCheck.model_fields})
        for check in checks
    ]


def second_stack_of(stacks: Sequence[PlanStack]) -> list[float] | None:
    """The stack of a way that another one is compared with, where there is one."""
    return next((stack.blocks for stack in stacks if stack.role == "check"), None)
