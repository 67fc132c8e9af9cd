"""Request and result of a center planned for grinding on a sine plate."""

from typing import Annotated, Literal

from pydantic import Field

from halfangle_service.fields import (
    Angle,
    AngleInput,
    Arcsec,
    ArcsecOut,
    Celsius,
    Count,
    Length,
    LengthOut,
    NonNegativeArcsec,
    NonNegativeLength,
    RequestModel,
    ResultModel,
    Unit,
    Units,
)
from halfangle_service.trade.tables.materials.expansion import MaterialName
from halfangle_service.trade.uncertainty import Verdict

Name = Annotated[str, Field(min_length=1, max_length=60)]


# Request -------------------------------------------------------------------------------------
class StraightShank(RequestModel):
    """A cylindrical shank, held in a collet or bushing of the fixture."""

    kind: Literal["straight"]
    diameter: Length = Field(description="Diameter of the shank, in `units`.", examples=[0.5])


class TaperShank(RequestModel):
    """A tapered shank, held in an adapter that fits the fixture."""

    kind: Literal["taper"]
    designation: Name = Field(
        description="Designation of the taper, as `GET /v1/tapers/standard` lists it.",
        examples=["morse-2"],
    )


class RunoutContributions(RequestModel):
    """What each part of the holding adds to the runout of the cone, as full indicator movement.

    Each is the TIR that it causes where the cone is ground, all else being true.
    """

    adapter_tir: NonNegativeLength = Field(
        description="TIR of the adapter or collet at the cone, in `units`.", examples=[0.0001]
    )
    fixture_tir: NonNegativeLength = Field(
        description="TIR of the spin fixture's own axis at the cone, in `units`.",
        examples=[0.00005],
    )
    indicating_tir: NonNegativeLength = Field(
        description="TIR left after indicating true: resolution and reading, in `units`.",
        examples=[0.00005],
    )


class AngleContributions(RequestModel):
    """Errors of the set-up that turn the cone's half angle; each stands as ± its value.

    A contribution left out is not guessed: the plan says that it is missing from the budget.
    """

    center_distance_tolerance: NonNegativeLength | None = Field(
        None, description="± error of the plate's center distance, in `units`.", examples=[0.0001]
    )
    axis_pitch_arcsec: NonNegativeArcsec | None = Field(
        None,
        description="± angle between the fixture's axis and the plate's top, in the tilt plane.",
        examples=[5.0],
    )
    axis_yaw_arcsec: NonNegativeArcsec | None = Field(
        None,
        description="± angle of the fixture's axis out of the tilt plane.",
        examples=[300.0],
    )
    wheel_face_arcsec: NonNegativeArcsec | None = Field(
        None,
        description="± slope of the wheel's face along the slant, from breakdown since dressing.",
        examples=[20.0],
    )
    temperature_celsius: Celsius | None = Field(
        None,
        description="Temperature of plate and blocks alike; 20 °C is the reference (ISO 1).",
        examples=[22.0],
    )
    plate_material: MaterialName = Field("steel", description="Material of the sine plate.")
    block_material: MaterialName = Field("steel", description="Material of the gauge blocks.")


class CenterJobRequest(RequestModel):
    """A center to be ground on a sine plate with a spin fixture and a flat wheel.

    Give the angle as `included_angle` or as `half_angle`; both are taken only where they agree.
    Give the blocks as `block_set` (a built-in set) or as `block_sizes` (what the shop has).
    """

    job: Name = Field(
        description="Name of the job, for the heading of the plan.",
        examples=["HL-0412 machine center"],
    )
    units: Units = Field(description="Unit of every length here and in the answer.")
    included_angle: Annotated[float, AngleInput(ge=1, le=178)] | None = Field(
        None, description="Included angle of the cone, in degrees.", examples=[60.0]
    )
    half_angle: Annotated[float, AngleInput(ge=0.5, le=89)] | None = Field(
        None, description="Half angle of the cone: between axis and surface, in degrees."
    )
    included_angle_tolerance_arcsec: Arcsec = Field(
        description="± tolerance of the included angle.", examples=[120.0]
    )
    body_diameter: Length = Field(
        description="Diameter where the cone meets the body, in `units`.", examples=[0.75]
    )
    shank: Annotated[StraightShank | TaperShank, Field(discriminator="kind")] = Field(
        description="The shank that the cone must run true to."
    )
    runout_allowed_tir: Length = Field(
        description="Runout of the cone to its shank that the drawing allows, as full indicator "
        "movement square to the axis, in `units`.",
        examples=[0.0003],
    )
    center_distance: Length = Field(
        description="Distance between the centers of the sine plate's rolls, in `units`.",
        examples=[5.0],
    )
    block_set: Name | None = Field(
        None, description="Built-in set, as `GET /v1/blocks/sets` lists it.", examples=["inch-81"]
    )
    block_sizes: Annotated[list[Length], Field(min_length=1, max_length=200)] | None = Field(
        None, description="Sizes of the blocks that the shop has, each once, in `units`."
    )
    blocks_away: Annotated[list[Length], Field(max_length=200)] | None = Field(
        None,
        description="Sizes that are missing or in use elsewhere, one entry a block, in `units`: "
        "they are not built with.",
        examples=[[0.1003]],
    )
    block_grade: Name = Field(description="Tolerance grade of the blocks.", examples=["ASME 0"])
    max_blocks: Annotated[int, Count(ge=1, le=8)] = Field(
        5, description="Most blocks to wring in one stack."
    )
    runout: RunoutContributions = Field(description="Runout that the holding adds.")
    angle_errors: AngleContributions = Field(
        AngleContributions(), description="Errors of the set-up that turn the angle."
    )
    downfeed_step: Length | None = Field(
        None,
        description="One step of downfeed, in `units`; 0.0001 in or 0.001 mm where left out.",
    )
    grinding_allowance: Length | None = Field(
        None,
        description="Stock left on the cone, measured square to its surface, in `units`.",
        examples=[0.004],
    )


# Result --------------------------------------------------------------------------------------
class PlannedSetting(ResultModel):
    """The sine plate's setting and the stack that gives it."""

    plate_angle: Angle = Field(description="Angle of the plate: the half angle of the cone.")
    height: LengthOut = Field(description="Exact height for that angle.")
    blocks: list[LengthOut] = Field(description="Blocks to wring, largest first.")
    total: LengthOut = Field(description="Nominal height of the stack.")
    deviation: LengthOut = Field(description="Stack less exact height.")
    included_angle_from_stack: Angle = Field(
        description="Included angle that the nominal stack gives."
    )
    arcsec_per_step: Annotated[float, Unit("arcsecond")] = Field(
        description="Change of the *included* angle for one bench step of stack height (0.0001 in "
        "or 0.001 mm)."
    )
    fewest: bool = Field(
        description="True where no smaller stack gives this height; that is proved, not searched."
    )


class AngleErrorLine(ResultModel):
    """One line of the angle's error budget, on the included angle."""

    name: str = Field(description="What errs.")
    worst_case_arcsec: ArcsecOut = Field(description="Largest change of the included angle.")
    standard_uncertainty_arcsec: ArcsecOut = Field(
        description="Standard uncertainty that it adds (rectangular distribution, JCGM 100 4.3.7)."
    )
    share_percent: Annotated[float, Unit("percent")] = Field(
        description="Its share in the combined variance."
    )


class PlannedAngle(ResultModel):
    """The angle error to expect, against its tolerance. The half angle's error counts twice."""

    offset_arcsec: ArcsecOut = Field(
        description="Known error of the included angle, from the stack's deviation and temperature."
    )
    lines: list[AngleErrorLine] = Field(description="The contributions.")
    worst_case_arcsec: ArcsecOut = Field(
        description="|offset| plus every contribution at its limit."
    )
    expanded_uncertainty_arcsec: ArcsecOut = Field(
        description="Expanded uncertainty of the included angle, coverage factor 2."
    )
    tolerance_arcsec: ArcsecOut = Field(description="± tolerance asked for.")
    tolerance_used_percent: Annotated[float, Unit("percent")] = Field(
        description="Share of the tolerance that the worst case takes."
    )
    verdict: Verdict = Field(
        description="Whether this set-up holds the tolerance, by the decision rule of ISO 14253-1 "
        "with the expanded uncertainty as guard band."
    )
    not_stated: list[str] = Field(
        description="Contributions that were left out of the request, so of the budget."
    )


class RunoutLine(ResultModel):
    """One line of the runout budget."""

    name: str = Field(description="What runs out.")
    tir: LengthOut = Field(description="Its TIR at the cone.")
    share_percent: Annotated[float, Unit("percent")] = Field(
        description="Its share in the sum of squares."
    )


class PlannedRunout(ResultModel):
    """The runout budget of the cone against the limit. Square to the axis, at the cone."""

    lines: list[RunoutLine] = Field(description="The contributions.")
    worst_case_tir: LengthOut = Field(description="All contributions in one direction: their sum.")
    root_sum_square_tir: LengthOut = Field(
        description="Contributions in independent directions: root of the sum of squares."
    )
    limit_tir: LengthOut = Field(description="Limit as full indicator movement.")
    limit_eccentricity: LengthOut = Field(description="The same limit as eccentricity: half of it.")
    limit_zone_diameter: LengthOut = Field(
        description="The same limit as the diameter of a coaxiality zone."
    )
    read_on_cone_limit_tir: LengthOut = Field(
        description="The limit as an indicator square to the cone's surface reads it."
    )
    verdict: Literal["holds in the worst case", "holds by root sum of squares", "does not hold"] = (
        Field(description="What the budget says of the limit.")
    )
    mend_first: str = Field(description="The largest contribution: the first one to mend.")


class PlannedFeed(ResultModel):
    """What one step of downfeed, square to the cone's surface, takes off."""

    step: LengthOut = Field(description="The step of downfeed.")
    off_diameter: LengthOut = Field(description="Taken off the diameter at a fixed station.")
    off_point: LengthOut = Field(description="How far the point moves along the axis.")
    steps_for_allowance: Annotated[int, Unit("count")] | None = Field(
        description="Steps to remove the grinding allowance, the last one perhaps a part of a step."
    )
    allowance_off_diameter: LengthOut | None = Field(
        description="What the whole allowance takes off the diameter."
    )
    allowance_off_point: LengthOut | None = Field(
        description="How far the whole allowance moves the point."
    )


class PlannedCone(ResultModel):
    """The cone itself."""

    included_angle: Angle = Field(description="Included angle wanted.")
    half_angle: Angle = Field(description="Half angle wanted.")
    length: LengthOut = Field(description="Length along the axis, from body to sharp point.")
    slant_length: LengthOut = Field(
        description="Length along the surface: the least travel of the wheel across the cone."
    )


class PlannedShank(ResultModel):
    """The shank and how it is held."""

    kind: Literal["straight", "taper"] = Field(description="Kind of shank.")
    designation: str | None = Field(description="Designation of the taper, if it is one.")
    gauge_diameter: LengthOut = Field(
        description="Diameter at the gauge line of the taper, or of the straight shank."
    )
    included_angle: Angle | None = Field(description="Included angle of the taper, if it is one.")
    held_in: str = Field(description="What holds it.")


class PlanStep(ResultModel):
    """One step of the work, in order."""

    number: Annotated[int, Unit("count")] = Field(description="Its place in the order.")
    action: str = Field(description="What to do.")
    cautions: list[str] = Field(description="What to mind.")


class PlanCheck(ResultModel):
    """One check, and whether it would catch a wrong block in the stack."""

    check: str = Field(description="What to check.")
    how: str = Field(description="How the check is made.")
    expected: str = Field(description="What to expect.")
    catches_wrong_block: bool = Field(
        description="Whether it would show the smallest wrong-block mistake of this stack."
    )
    why: str = Field(description="Why it would, or would not.")


class WrongBlock(ResultModel):
    """The smallest mistake with this stack: one block taken for its nearest neighbour."""

    wanted: LengthOut = Field(description="Block that belongs in the stack.")
    taken: LengthOut = Field(description="Block taken in its place.")
    included_angle_error_arcsec: ArcsecOut = Field(
        description="Error of the included angle that it makes."
    )


class CenterJobResult(ResultModel):
    """The plan."""

    job: str = Field(description="Name of the job.")
    cone: PlannedCone = Field(description="The cone.")
    shank: PlannedShank = Field(description="The shank and how it is held.")
    setting: PlannedSetting = Field(description="The plate's setting and its stack.")
    angle: PlannedAngle = Field(description="The angle error to expect.")
    runout: PlannedRunout = Field(description="The runout budget.")
    feed: PlannedFeed = Field(description="What a step of downfeed takes off.")
    smallest_mistake: WrongBlock | None = Field(
        description="The wrong block that would be hardest to notice; none where no other block "
        "could be taken."
    )
    second_stack: list[LengthOut] | None = Field(
        description="The same height from other blocks of the set, to check the first stack; none "
        "where the set has no such stack."
    )
    steps: list[PlanStep] = Field(
        description="The steps, in order, with the cautions of the trade."
    )
    checks: list[PlanCheck] = Field(description="The checks to make.")
