"""Requests and results of one stack."""

from typing import Annotated, Literal

from pydantic import Field

from halfangle_service.fields import (
    Count,
    Length,
    NonNegativeLength,
)
from halfangle_service.fields.blocks import BlockFinishFields
from halfangle_service.fields.stacks import BlockAlternative, BlockBuilt
from halfangle_service.trade.stacks.choosing import Preference


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
