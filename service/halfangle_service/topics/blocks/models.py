"""The blocks there are, and requests and results of one stack."""

from typing import Annotated, Literal

from pydantic import Field

from halfangle_service.fields import (
    Count,
    CountOut,
    Length,
    LengthOut,
    NonNegativeLength,
    RequestModel,
    ResultModel,
    SignedLength,
    Units,
)
from halfangle_service.trade.stacks.choosing import Preference
from halfangle_service.trade.tables.materials.expansion import MaterialName

SetName = Annotated[str, Field(min_length=1, max_length=60)]
UnitsField = Annotated[Units, Field(description="Unit of every length here and in the answer.")]
#: Most blocks in one request, counts included.
MOST_BLOCKS = 500
Sizes = Annotated[list[Length], Field(min_length=1, max_length=MOST_BLOCKS)]
State = Literal["in the box", "missing", "in use"]
WearEnds = Literal["none", "one end", "both ends"]


class BlockOwned(RequestModel):
    """A block that the shop owns, or several alike, as box and certificate tell."""

    size: Length = Field(description="Nominal size, in `units`.", examples=[0.1003])
    count: Annotated[int, Count(ge=1, le=20)] = Field(
        1, description="How many blocks of this size and these data."
    )
    deviation: SignedLength = Field(
        0.0,
        description="Measured deviation, actual less nominal, in `units`, as the certificate "
        "states it at 20 °C; at most 0.001 in or 0.02 mm either way.",
        examples=[0.000003],
    )
    expanded_uncertainty: NonNegativeLength | None = Field(
        None,
        description="Expanded uncertainty (k = 2) of that deviation, in `units`. Absent: the block "
        "is not calibrated, and its grade, if one is given, limits its error.",
        examples=[0.000002],
    )
    material: MaterialName = Field("steel", description="Material of the block.")
    state: State = Field(
        "in the box",
        description="`missing` or `in use` blocks are not built with; a refusal says when one of "
        "them would have done it.",
    )
    times_wrung: Annotated[int, Count(ge=0, le=1_000_000)] = Field(
        0, description="How often it was wrung, for `least wear`."
    )
    wear: bool = Field(
        False, description="True for a wear block: it goes to an end of a stack or nowhere."
    )
    mark: Annotated[str, Field(min_length=1, max_length=30)] | None = Field(
        None,
        description="Identification mark of the block, as on it or on its certificate: answers "
        "then say which block they mean. With a count of 1 only.",
        examples=["B17"],
    )
    special: bool = Field(
        False,
        description="True for an odd size that is meant as it stands: it is then not questioned as "
        "a size of the other unit system.",
    )


class BlockSupplyFields(RequestModel):
    """The blocks to build from: a built-in `set`, plain `sizes`, or the shop's own `box`."""

    units: UnitsField
    set: SetName | None = Field(
        None,
        description="Built-in set, as `GET /v1/blocks/sets` lists it. One of `set`, `sizes`, "
        "`box` is needed.",
        examples=["inch-81"],
    )
    sizes: Sizes | None = Field(
        None,
        description="Nominal sizes of the blocks that the shop has, each once, in `units`. Where "
        "there are several of a size, send `box` with its `count`.",
    )
    box: Annotated[list[BlockOwned], Field(min_length=1, max_length=MOST_BLOCKS)] | None = Field(
        None, description="The shop's own blocks with what is known of them."
    )
    missing: Annotated[list[Length], Field(max_length=MOST_BLOCKS)] | None = Field(
        None, description="Sizes that are missing from the set, one entry a block, in `units`."
    )
    in_use: Annotated[list[Length], Field(max_length=MOST_BLOCKS)] | None = Field(
        None, description="Sizes that are in use elsewhere, one entry a block, in `units`."
    )


class BlockFinishFields(BlockSupplyFields):
    """The blocks to build from, wear blocks at the ends, the grade of what has no calibration."""

    wear_blocks: WearEnds = Field(
        "none", description="At which ends of every stack wear blocks go."
    )
    wear_block_size: Length | None = Field(
        None,
        description="Nominal size of a wear block, in `units`. Absent: that of the set's or box's "
        "own wear blocks.",
    )
    grade: SetName | None = Field(
        None,
        description="Tolerance grade of blocks without a calibration, as `GET /v1/blocks/grades` "
        "lists it, for the height's uncertainty.",
        examples=["ASME AS-1"],
    )


class BlockStackRequest(BlockFinishFields):
    """A height, the blocks to build it from, and what kind of stack is preferred."""

    height: Length = Field(
        description="Height to build, in `units`; it is taken to the nearest 0.1 nm.",
        examples=[2.5],
    )
    max_blocks: Annotated[int, Count(ge=1, le=8)] = Field(
        6, description="Most blocks to wring in one stack, wear blocks included."
    )
    tolerance: NonNegativeLength | None = Field(
        None,
        description="Heights within ± this will do, in `units`: the fewest blocks that come within "
        "it, and of these the nearest. Absent: the height itself by nominal sizes, or the nearest "
        "by measured ones.",
    )
    aim: Literal["nominal", "actual"] = Field(
        "nominal",
        description="`nominal`: the nominal sizes sum up to the height. `actual`: the stack whose "
        "actual height, measured deviations included, comes nearest; exact for up to 6 blocks out "
        "of 200 (8 out of 30), and for up to 4 out of more.",
    )
    prefer: Preference = Field(
        "large blocks",
        description="Which of several stacks of as few blocks: `large blocks`, the largest block "
        "as large as can be, then the next; `fewer small blocks`, the thinnest block as thick as "
        "can be, then the next; `least wear`, blocks wrung least often; `least uncertainty`. With "
        "`aim` `actual` the nearest comes first, whatever is preferred.",
    )
    alternatives: Annotated[int, Count(ge=0, le=20)] = Field(
        0, description="How many further stacks to give, the next best ones, all different."
    )


class BlockAlternative(ResultModel):
    """Another stack."""

    blocks: list[LengthOut] = Field(description="Nominal sizes of the blocks, largest first.")
    marks: list[str | None] = Field(
        description="Identification marks of the same blocks, null where one has none; empty where "
        "none of them has one."
    )
    count: CountOut = Field(description="How many blocks.")
    total: LengthOut = Field(description="Sum of the nominal sizes.")
    deviation: LengthOut = Field(description="Total less the height asked for.")
    actual_height: LengthOut = Field(
        description="Sum of nominal sizes and measured deviations; the total where none are known."
    )
    actual_deviation: LengthOut = Field(description="Actual height less the height asked for.")
    standard_uncertainty: LengthOut | None = Field(
        description="Standard uncertainty of the height from calibrations and grade limits "
        "(rectangular); null where neither is known of some block."
    )
    worst_case: LengthOut | None = Field(
        description="Sum of the blocks' grade limits, or of their expanded uncertainties (k = 2) "
        "where calibrated; null where neither is known of some block. `blocks/budget` takes in "
        "films and temperature, and three standard deviations of what is normally distributed."
    )


class BlockBuilt(BlockAlternative):
    """A stack to wring."""

    wear_blocks: list[LengthOut] = Field(
        description="Which of the blocks are wear blocks at the ends; empty without them."
    )
    wringing_order: list[LengthOut] = Field(
        description="The blocks from the bottom up: a wear block first and last where they are "
        "used, the others from the largest up."
    )


class BlockStackResult(BlockBuilt):
    """The stack of the fewest blocks, or the one whose actual height is nearest."""

    proved: bool = Field(
        description="`aim` `nominal`: no stack of fewer blocks exists. `actual`: no stack of up to "
        "`max_blocks` comes nearer. False where the bound on the work was reached first."
    )
    order_proved: bool = Field(
        description="Preference and alternatives are proved: every stack that could come before "
        "the last one given was considered."
    )
    bound: str | None = Field(
        description="What bounded the search, and what holds in spite of it; null where nothing "
        "did."
    )
    alternatives: list[BlockAlternative] = Field(description="The next best stacks, in order.")
