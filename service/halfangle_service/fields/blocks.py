"""The blocks there are, as every request that builds with blocks states them."""

from typing import Annotated, ClassVar, Literal

from pydantic import Field

from halfangle_service.fields import (
    Count,
    Length,
    NonNegativeLength,
    RequestModel,
    SignedLength,
    UnitsField,
)
from halfangle_service.fields.base import BLOCKS, Rule
from halfangle_service.trade.tables.materials.expansion import MaterialName

SetName = Annotated[str, Field(min_length=1, max_length=60)]
#: Most blocks in one request, counts included.
MOST_BLOCKS = 500
Sizes = Annotated[list[Length], Field(min_length=1, max_length=MOST_BLOCKS)]
Away = Literal["missing", "in-use"]
State = Literal["in-the-box", Away]
WearEnds = Literal["none", "one-end", "both-ends"]


GradeField = Annotated[
    SetName | None,
    Field(
        description="Tolerance grade of blocks without a calibration, as `GET /v1/blocks/grades` "
        "lists it, for the height's uncertainty.",
        examples=["asme-as-1"],
    ),
]


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
        "in-the-box",
        description="`missing` or `in-use` blocks are not built with; a refusal says when one of "
        "them would have done it.",
    )
    times_wrung: Annotated[int, Count(ge=0, le=1_000_000)] = Field(
        0, description="How often it was wrung, for `least-wear`."
    )
    wear_block: bool = Field(
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


#: Fields of a request one of which says which blocks there are.
SOURCES = ("set", "sizes", "box")


class BlockBoxFields(RequestModel):
    """Blocks there are, in the unit of the request that holds them."""

    rules: ClassVar[tuple[Rule, ...]] = (Rule("at-most-one-of", SOURCES),)
    group = BLOCKS

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


class BlockSupplyFields(BlockBoxFields):
    """The blocks to build from: a built-in `set`, plain `sizes`, or the shop's own `box`."""

    units: UnitsField


class BlockGradeFields(BlockSupplyFields):
    """The blocks to build from, and the grade of what has no calibration."""

    group = BLOCKS

    grade: GradeField = None


class BlockFinishFields(BlockGradeFields):
    """The blocks to build from, their grade, and wear blocks at the ends."""

    group = BLOCKS

    wear_ends: WearEnds = Field("none", description="At which ends of every stack wear blocks go.")
    wear_block_size: Length | None = Field(
        None,
        description="Nominal size of a wear block, in `units`. Absent: that of the set's or box's "
        "own wear blocks; of several sizes the one of which there are most, of equally many the "
        "largest, and no other is tried.",
    )
