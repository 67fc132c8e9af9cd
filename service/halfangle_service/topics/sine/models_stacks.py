"""Requests and results of two stacks, and of corrections by swapping blocks."""

from typing import Annotated, Literal

from pydantic import Field

from halfangle_service.fields import (
    Angle,
    AngleInput,
    Arcsec,
    ArcsecOut,
    Count,
    CountOut,
    Length,
    LengthOut,
    NonNegativeLength,
    ResultModel,
    SignedArcsec,
)
from halfangle_service.fields.blocks import BlockSupplyFields
from halfangle_service.fields.plates import PlateFields, ReachField

LowStackUse = Literal["if needed", "fewest blocks", "always", "never"]
MaxBlocks = Annotated[int, Count(ge=1, le=8)]


class SineLowStackRequest(PlateFields, BlockSupplyFields):
    """An angle, a plate, and one set for the stacks under both of its rolls."""

    angle: Annotated[float, AngleInput(ge=0, lt=90)] = Field(
        description="Angle wanted, in degrees.", examples=[0.5]
    )
    low_stack: LowStackUse = Field(
        "if needed",
        description="`if needed`: a stack under the low roll only where no single stack of up to "
        "`single_blocks` does it; `fewest blocks`: wherever it saves a block; `always`; `never`, "
        "as for a plate that pivots on its low roll.",
    )
    single_blocks: MaxBlocks = Field(
        4, description="Most blocks that a single stack may have before two stacks are preferred."
    )
    max_blocks: MaxBlocks = Field(6, description="Most blocks in both stacks together.")
    smallest_high_stack: NonNegativeLength = Field(
        0.0,
        description="Least height of the high roll's stack, in `units`: what lifts the plate off "
        "its rest.",
    )
    smallest_low_stack: NonNegativeLength = Field(
        0.0, description="Least height of the low roll's stack, where there is one, in `units`."
    )
    tolerance_arcsec: Arcsec | None = Field(
        None,
        description="Angles within ± this of the wanted one will do, in arc-seconds: of them, the "
        "one with the fewest blocks is taken. Absent: the nearest height that the set's step has.",
    )
    largest_angle: ReachField = None


class SineStack(ResultModel):
    """One stack."""

    blocks: list[LengthOut] = Field(description="Nominal sizes, largest first; may be empty.")
    total: LengthOut = Field(description="Sum of the nominal sizes.")


class SineLowStackResult(ResultModel):
    """The stacks under both rolls."""

    high: SineStack = Field(description="Stack under the high roll.")
    low: SineStack = Field(description="Stack under the low roll; empty where none is needed.")
    count: CountOut = Field(description="Blocks in both stacks.")
    height: LengthOut = Field(description="Difference of the stacks that the angle asks for.")
    difference: LengthOut = Field(description="Difference of the stacks as built.")
    deviation: LengthOut = Field(description="`difference` less `height`.")
    angle_as_set: Angle = Field(description="The angle that these stacks give.")
    angle_error_arcsec: ArcsecOut = Field(description="`angle_as_set` less the angle wanted.")
    set_step: LengthOut = Field(description="Smallest step of height that the set has.")
    proved: Literal[True] = Field(
        description="No fewer blocks do it under the conditions stated: every combination of one "
        "set's blocks under either roll was considered."
    )
    instruction: str = Field(description="What to do, in plain words.")


class SineCorrectionRequest(PlateFields, BlockSupplyFields):
    """A plate whose angle was measured, and, to say which blocks to swap, its stack and set."""

    angle: Annotated[float, AngleInput(gt=0, lt=90)] = Field(
        description="Angle wanted, in degrees.", examples=[30.0]
    )
    measured_angle: Annotated[float, AngleInput(gt=0, lt=90)] | None = Field(
        None,
        description="Angle measured, in degrees. Either this or `error_arcsec`.",
        examples=["30°00'10\""],
    )
    error_arcsec: SignedArcsec | None = Field(
        None,
        description="Angle measured less angle wanted, in arc-seconds. Either this or "
        "`measured_angle`.",
    )
    blocks: Annotated[list[Length], Field(min_length=1, max_length=8)] | None = Field(
        None,
        description="Blocks under the high roll now, in `units`; with `set` or `sizes`, which hold "
        "them too.",
        examples=[[2.0, 0.5]],
    )
    low_stack: NonNegativeLength = Field(
        0.0, description="Stack under the low roll, left as it is, in `units`."
    )
    max_blocks: MaxBlocks = Field(6, description="Most blocks in the new stack.")
    tolerance_arcsec: Arcsec | None = Field(
        None,
        description="Angles within ± this of the wanted one will do; of them, the one with the "
        "fewest blocks to handle is taken. Absent: the nearest height that the set's step has.",
    )


class SineSwap(ResultModel):
    """Blocks to change."""

    remove: list[LengthOut] = Field(description="Blocks to take out, largest first.")
    add: list[LengthOut] = Field(description="Blocks to put in, largest first.")
    stack: list[LengthOut] = Field(description="The new stack, largest first.")
    total: LengthOut = Field(description="Its height.")
    remaining_error_arcsec: ArcsecOut = Field(
        description="Angle to expect less the angle wanted, from the set's step alone."
    )


class SineCorrectionResult(ResultModel):
    """The change of stack that mends a measured angle."""

    error_arcsec: ArcsecOut = Field(description="Angle measured less angle wanted.")
    height_change: LengthOut = Field(
        description="Change of the high roll's stack: positive to add."
    )
    height_now: LengthOut = Field(
        description="Difference of the stacks now: as given, else what the wanted angle asks for."
    )
    new_height: LengthOut = Field(description="Difference of the stacks to build.")
    effective_center_distance: LengthOut = Field(
        description="Center distance that would explain the measured angle by itself."
    )
    swap: SineSwap | None = Field(
        description="Which blocks to swap; absent where no blocks were given."
    )
