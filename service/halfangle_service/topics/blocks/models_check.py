"""Requests and results of checking a stack as wrung."""

from typing import Annotated, Literal

from pydantic import Field

from halfangle_service.quantities import (
    Angle,
    AngleInput,
    Arcsec,
    ArcsecOut,
    Count,
    Length,
    LengthOut,
    NonNegativeLength,
    ResultModel,
    SignedLength,
)
from halfangle_service.topics.blocks.mistakes import Kind, Likeness
from halfangle_service.topics.blocks.models import BlockSupplyFields, SetName

CheckVerdict = Literal["as wanted", "not as wanted", "nothing to compare with"]


class BlockCheckRequest(BlockSupplyFields):
    """A stack as wrung, what it is for, and what was measured on it."""

    blocks: Annotated[list[Length], Field(min_length=1, max_length=20)] = Field(
        description="Nominal sizes of the blocks in the stack as read from them, wear blocks left "
        "out, in `units`.",
        examples=[[2.0, 0.5]],
    )
    wear_blocks: Annotated[list[Length], Field(max_length=2)] | None = Field(
        None, description="Sizes of the wear blocks that belong on its ends, in `units`."
    )
    height: Length | None = Field(
        None, description="Height wanted, in `units`. Either this or `angle`, or neither."
    )
    angle: Annotated[float, AngleInput(gt=0, lt=90)] | None = Field(
        None,
        description="Angle wanted on the sine plate, in degrees; needs `center_distance`.",
        examples=[30.0],
    )
    center_distance: Length | None = Field(
        None,
        description="Distance between the centers of the plate's rolls, in `units`. With it every "
        "height is given as an angle too.",
        examples=[5.0],
    )
    low_stack: NonNegativeLength = Field(
        0.0, description="Height of the stack under the low roll, in `units`."
    )
    offset: SignedLength = Field(
        0.0,
        description="Difference of the stacks at which the plate stands at zero, in `units`: the "
        "step of its seats less half the difference of its rolls' diameters.",
    )
    measured_height: Length | None = Field(
        None,
        description="Height measured on the stack, in `units`. Either this or `measured_angle`.",
    )
    measured_angle: Annotated[float, AngleInput(gt=0, lt=90)] | None = Field(
        None, description="Angle measured on the plate, in degrees; needs `center_distance`."
    )
    measurement_limit: Length | None = Field(
        None,
        description="Limit ± of the measured height, in `units`; a mistake within it explains the "
        "measurement. Absent: half of 0.0001 in or 0.001 mm, or `measurement_limit_arcsec`.",
    )
    measurement_limit_arcsec: Arcsec | None = Field(
        None, description="Limit ± of the measured angle, in arc-seconds."
    )
    grade: SetName | None = Field(
        None,
        description="Tolerance grade of blocks without a calibration, as `GET /v1/blocks/grades` "
        "lists it.",
    )
    explanations: Annotated[int, Count(ge=0, le=50)] = Field(
        5, description="How many mistakes to list, the likeliest first."
    )


class BlockMistake(ResultModel):
    """One mistake, what it does, and how well it explains what was found."""

    kind: Kind = Field(description="What went wrong.")
    meant: LengthOut | None = Field(description="Block that was meant; null where none was.")
    wrung: LengthOut | None = Field(description="Block that was wrung; null where none was.")
    likeness: Likeness = Field(
        description="How the one is taken for the other: `same digits`, .1003 for .103; "
        "`neighbours in the box`; `digits swapped`; `one digit`; `none`."
    )
    height: LengthOut = Field(description="Height of the stack with this mistake.")
    angle: Angle | None = Field(description="Angle that it gives; null without a plate.")
    angle_error_arcsec: ArcsecOut | None = Field(
        description="That angle less the wanted one; null where none is wanted."
    )
    unexplained: LengthOut = Field(
        description="Height to be explained less the height with this mistake."
    )
    explains: bool = Field(description="True where that is within the limit.")
    words: str = Field(description="The mistake in plain words.")


class BlockCheckResult(ResultModel):
    """What a stack is, and what may be wrong with it."""

    total: LengthOut = Field(description="Sum of the nominal sizes, wear blocks included.")
    actual_height: LengthOut = Field(
        description="With measured deviations; the total where none are known."
    )
    standard_uncertainty: LengthOut | None = Field(
        description="Standard uncertainty of the height from calibrations and grade limits; null "
        "where neither is known of some block."
    )
    worst_case: LengthOut | None = Field(
        description="Sum of the blocks' limits; null where they are not known."
    )
    wanted_height: LengthOut | None = Field(description="Height wanted; null where none is.")
    deviation: LengthOut | None = Field(description="Actual height less the wanted one.")
    angle: Angle | None = Field(description="Angle that the stack gives; null without a plate.")
    angle_error_arcsec: ArcsecOut | None = Field(
        description="That angle less the wanted one; null where none is wanted."
    )
    measured_deviation: LengthOut | None = Field(
        description="Measured height, or that of the measured angle, less the actual height of "
        "the stack as read; null where nothing was measured."
    )
    measured_error_arcsec: ArcsecOut | None = Field(
        description="Measured angle less the angle of the stack as read; null without either."
    )
    verdict: CheckVerdict = Field(
        description="`as wanted`: the stack as read, and what was measured on it, agree with what "
        "is wanted within the limit."
    )
    mistakes: list[BlockMistake] = Field(
        description="Single mistakes that could explain the difference, the likeliest first: of a "
        "measurement from the stack as read, else of the stack from what is wanted. Where there is "
        "no difference, none."
    )
    explained: bool = Field(description="True where some single mistake explains it.")
