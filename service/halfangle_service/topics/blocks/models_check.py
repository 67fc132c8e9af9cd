"""Requests and results of checking a stack as wrung."""

from typing import Annotated, Literal

from pydantic import Field

from halfangle_service.fields import (
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
from halfangle_service.fields.blocks import BlockSupplyFields, SetName
from halfangle_service.trade.stacks.mistakes import Kind, Likeness

CheckVerdict = Literal["as wanted", "not as wanted", "nothing to compare with"]
MistakesExplain = Literal["what was measured", "the stack as read"]


class BlockCheckRequest(BlockSupplyFields):
    """A stack as wrung, what it is for, and what was measured on it."""

    blocks: Annotated[list[Length], Field(min_length=1, max_length=20)] = Field(
        description="Nominal sizes of the blocks in the stack as read from them, wear blocks left "
        "out, in `units`.",
        examples=[[2.0, 0.5]],
    )
    wear_blocks: Annotated[list[Length], Field(max_length=2)] | None = Field(
        None,
        description="Sizes of the wear blocks on its ends, in `units`: of the set's or box's own "
        "where it has some of that size, else of a pair kept beside it.",
    )
    height: Length | None = Field(
        None,
        description="Height wanted, in `units`. Either this or `angle`, or neither. The sum of the "
        "nominal sizes, wear blocks included, is as wanted below half of the smallest difference "
        "of two sizes of the set, and of 0.0001 in or 0.001 mm; differences below 0.00005 in or "
        "0.0005 mm do not count. `measurement_limit` sent without a measurement takes the place "
        "of that.",
    )
    angle: Annotated[float, AngleInput(gt=0, lt=90)] | None = Field(
        None,
        description="Angle wanted on the sine plate, in degrees; needs `center_distance`. Its "
        "height is compared as `height` is; a stack for it rounded to 0.0001 in or 0.001 mm is as "
        "wanted too.",
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
        description="Limit ± of the measured height, in `units`: within it, and at it, the "
        "measurement agrees with the stack as read, measured deviations included, and a mistake "
        "explains the measurement. Either this or `measurement_limit_arcsec`; absent both: half of "
        "0.0001 in or 0.001 mm. It does not widen what passes against the wanted height, unless "
        "nothing was measured: then the actual height is to come within it of the wanted one.",
    )
    measurement_limit_arcsec: Arcsec | None = Field(
        None,
        description="The same limit in arc-seconds at the angle of the stack as read; needs "
        "`center_distance`.",
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
    """One mistake with the stack that was meant, what it does, and how well that explains.

    `mistakes_explain` tells which case it is. `what was measured`: the stack as read was meant, and
    the mistake gives the measured one. `the stack as read`: a stack of the wanted height was meant,
    and the mistake gives the stack as read, which is right to its blocks.
    """

    kind: Kind = Field(description="What went wrong.")
    meant: LengthOut | None = Field(description="Block that was meant; null where none was.")
    meant_mark: str | None = Field(
        description="Mark of the block that was meant; null where it has none, or where any of "
        "several of its size may be it."
    )
    wrung: LengthOut | None = Field(description="Block that was wrung; null where none was.")
    wrung_mark: str | None = Field(description="Mark of the block that was wrung, likewise.")
    likeness: Likeness = Field(
        description="How the one is taken for the other: `same size`, another block of the box "
        "with another measured deviation; `same digits`, .1003 for .103; "
        "`neighbours in the box`; `digits swapped`; `one digit`; `none`."
    )
    height: LengthOut = Field(
        description="Height of the stack that was meant, with this mistake: of the actual height "
        "of the stack as read, or of the wanted height, as `mistakes_explain` tells."
    )
    angle: Angle | None = Field(
        description="Angle that it gives; null without a plate, and where it lifts the plate by "
        "its center distance or more."
    )
    angle_error_arcsec: ArcsecOut | None = Field(
        description="That angle less the wanted one; null where there is none of them."
    )
    unexplained: LengthOut = Field(
        description="Height to be explained, the measured one or that of the stack as read, less "
        "the height with this mistake."
    )
    explains: bool = Field(
        description="True where that is within the limit; with a wanted angle also where it is "
        "within it of the height rounded to 0.0001 in or 0.001 mm."
    )
    words: str = Field(description="The mistake in plain words.")


class BlockCheckResult(ResultModel):
    """What a stack is, and what may be wrong with it."""

    total: LengthOut = Field(description="Sum of the nominal sizes, wear blocks included.")
    marks: list[str | None] = Field(
        description="Identification marks of the blocks taken for the stack, in the order of "
        "`blocks` and `wear_blocks`, null where one has none; empty where none of them has one."
    )
    actual_height: LengthOut = Field(
        description="With measured deviations; the total where none are known."
    )
    standard_uncertainty: LengthOut | None = Field(
        description="Standard uncertainty of the height from calibrations and grade limits; null "
        "where neither is known of some block."
    )
    worst_case: LengthOut | None = Field(
        description="Sum of the blocks' grade limits, or of their expanded uncertainties (k = 2) "
        "where calibrated; null where neither is known of some block. `blocks/budget` counts a "
        "calibrated block with 3 standard uncertainties instead."
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
        description="`as wanted`: the stack as read agrees with what is wanted, and what was "
        "measured on it with the stack as read; `height` and `measurement_limit` tell how nearly."
    )
    mistakes_explain: MistakesExplain | None = Field(
        description="What the mistakes are to explain. `what was measured`: it differs from the "
        "stack as read. `the stack as read`: it differs from what is wanted, and nothing measured "
        "speaks against it. Null where nothing differs."
    )
    mistakes: list[BlockMistake] = Field(
        description="Single mistakes that could explain the difference, the likeliest first. Where "
        "there is no difference, none."
    )
    explained: bool = Field(
        description="True where some single mistake explains it, be it listed or not."
    )
