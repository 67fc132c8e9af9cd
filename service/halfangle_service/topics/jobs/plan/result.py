"""How a plan answers: the ways that can, ranked, each in full, and those that cannot."""

from typing import Literal

from pydantic import Field

from halfangle_service.fields import (
    Angle,
    ArcsecOut,
    LengthOut,
    ResultModel,
    SharePercent,
)
from halfangle_service.fields.estimate import ArcsecEstimate
from halfangle_service.fields.numbers import MinutesOut
from halfangle_service.fields.stacks import BlockAlternative
from halfangle_service.topics.jobs.plan.checks import PlanChecks, PlanMistake
from halfangle_service.topics.jobs.plan.features import PlannedFeature
from halfangle_service.topics.jobs.plan.parts.batch import PlanBatch
from halfangle_service.topics.jobs.plan.parts.clearance.answer import PlanClearance
from halfangle_service.topics.jobs.plan.parts.decision import PlanDecision
from halfangle_service.topics.jobs.plan.parts.feed import PlanFeed
from halfangle_service.topics.jobs.plan.parts.runout import PlannedRunout
from halfangle_service.topics.jobs.plan.parts.size import PlanSize
from halfangle_service.topics.jobs.plan.parts.times import PlanTime
from halfangle_service.topics.jobs.plan.shank import PlannedShank
from halfangle_service.topics.jobs.plan.usual_steps import PlanStep
from halfangle_service.trade.uncertainty import Forecast

PlanWayName = Literal[
    "sine-plate",
    "stacks-under-both-rolls",
    "quarter-turn",
    "sine-plate-turned-in-plan",
    "compound-sine-plate",
    "dressed-wheel",
    "wheel-side",
    "swivelled-workhead",
]
SetPart = Literal["plate", "base", "upper", "dresser", "work", "workhead"]
AngleOf = Literal["included-angle", "face-angle", "x-angle", "y-angle"]
StackRole = Literal["high", "low", "base", "upper", "check"]


class PlanSetting(ResultModel):
    """What is set to which angle."""

    part: SetPart = Field(description="What is set.")
    angle: Angle = Field(description="Angle to set.")
    height: LengthOut | None = Field(
        description="Difference of the stacks that sets it, not rounded; null of a scale."
    )
    deviation_arcsec: ArcsecOut | None = Field(
        description="What is set less the angle wanted, by the stacks as they are; null of a scale."
    )
    arcsec_per_step: ArcsecOut | None = Field(
        description="Change of angle for one bench step of height; null of a scale."
    )
    action: str = Field(description="What to do, in plain words.")


class PlanStack(BlockAlternative):
    """A stack of a way; all of them come from one box, no block twice."""

    role: StackRole = Field(description="Where it stands; `check`: to compare another one with.")


class PlanAngle(ResultModel):
    """The error of one angle of the feature to expect, against its tolerance."""

    of: AngleOf = Field(description="Which angle.")
    error_arcsec: ArcsecEstimate = Field(
        description="Its error: known deviations, temperature and the mean of a yaw as its value, "
        "the rest as its uncertainty."
    )
    tolerance_arcsec: ArcsecOut = Field(description="± tolerance asked for.")
    tolerance_used_percent: SharePercent | None = Field(
        description="Worst case over tolerance; null where no contribution was stated."
    )
    forecast: Forecast = Field(
        description="Whether it will keep the tolerance, by `decision_rule`; never `holds` with "
        "something not stated."
    )


class PlannedWay(ResultModel):
    """One way to make the feature, in full."""

    way: PlanWayName = Field(description="Which way.")
    equipment: list[str] = Field(description="What it takes of the shop, by name.")
    in_words: str = Field(
        description="It in plain words, with its equipment, as no other of `ways` is called."
    )
    forecast: Forecast = Field(
        description="Whether every limit will be kept, by the first piece on a dress at least."
    )
    angles: list[PlanAngle] = Field(description="The angle, or both of a compound face.")
    room_to_prove_arcsec: ArcsecOut | None = Field(
        description="Tolerance less the error to expect and the uncertainty of the finest "
        "inspection at hand: above 0 the angle can be proved. Null where either is not known."
    )
    runout_budget: PlannedRunout | None = Field(
        description="The runout to expect; null where no limit was stated."
    )
    settings: list[PlanSetting] = Field(description="What is set, in order.")
    stacks: list[PlanStack] = Field(description="The stacks, all from one box.")
    first_piece_minutes: MinutesOut = Field(
        description="Time to the first good piece: set-up, grinding, inspection."
    )
    total_minutes: MinutesOut = Field(description="Time for all pieces.")
    time: PlanTime = Field(description="That time by its parts.")
    feed_plan: PlanFeed = Field(description="How the allowance is ground off, and when to stop.")
    size_plan: PlanSize | None = Field(
        description="When to stop so that the size comes inside its tolerance; null where none was "
        "stated."
    )
    batch: PlanBatch = Field(description="When to dress, and which pieces to measure.")
    mistakes: list[PlanMistake] = Field(
        description="For each stack the smallest wrong block that leaves the angle's tolerance; a "
        "stack in which no single block does is not there."
    )
    clearance: PlanClearance = Field(description="Clearance under the wheel, or beside it.")


class RuledOutWay(ResultModel):
    """A way that cannot make the feature."""

    way: PlanWayName = Field(description="Which way.")
    equipment: list[str] = Field(description="What it would take of the shop, by name.")
    reason: str = Field(description="Why it cannot.")
    field: str = Field(description="The field of the request that stands in its way, as a path.")
    instead: str | None = Field(
        description="The nearest that works, in plain words; null where nothing is near."
    )


class JobPlanResult(ResultModel):
    """The plan."""

    job: str = Field(description="Name of the job.")
    shop_profile: str | None = Field(
        description="The profile of equipment that was used; null where the request stated its own."
    )
    shop_profile_digest: str | None = Field(
        description="Digest of what that profile holds: another one is another shop."
    )
    feature: PlannedFeature = Field(description="The feature as it was read.")
    shank: PlannedShank | None = Field(
        description="The shank and how it is held; null where none was stated."
    )
    adapter: str | None = Field(
        description="The adapter that takes the shank, by name; null where the shop names none."
    )
    best: PlanWayName | None = Field(
        description="The first of `ways`; null where it neither holds nor may hold."
    )
    ranking: str = Field(description="The one rule by which the ways are ranked.")
    ways: list[PlannedWay] = Field(description="Every way that can make the feature, best first.")
    told_apart_by: list[PlanDecision] = Field(
        description="What was not stated and would change which way is best; of the first eight "
        "ways."
    )
    steps: list[PlanStep] = Field(
        description="The steps of the first of them, in order, with the cautions of the trade."
    )
    checks: PlanChecks = Field(
        description="What checks the set-up and proves the ground feature, whatever the way."
    )
    ruled_out: list[RuledOutWay] = Field(description="Every way that cannot, with the reason.")
