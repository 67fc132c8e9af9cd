"""Requests and results of the blocks topic."""

from typing import Annotated, Literal

from pydantic import Field

from halfangle_service.quantities import (
    Count,
    CountOut,
    Length,
    LengthOut,
    RequestModel,
    ResultModel,
    Units,
)

SetName = Annotated[str, Field(min_length=1, max_length=60)]


class BlockStackRequest(RequestModel):
    """A height, and the blocks to build it from: a built-in `set`, or the shop's own `sizes`."""

    units: Units = Field(description="Unit of every length here and in the answer.")
    height: Length = Field(
        description="Height to build, in `units`; it is taken to the nearest 0.1 nm.",
        examples=[2.5],
    )
    set: SetName | None = Field(
        None,
        description="Built-in set, as `GET /v1/blocks/sets` lists it. Either this or `sizes`.",
        examples=["inch-81"],
    )
    sizes: Annotated[list[Length], Field(min_length=1, max_length=500)] | None = Field(
        None,
        description="Nominal sizes of the blocks that the shop has, one entry a block, in `units`: "
        "a size is given as often as there are blocks of it. Either this or `set`.",
    )
    max_blocks: Annotated[int, Count(ge=1, le=8)] = Field(
        6, description="Most blocks to wring in one stack."
    )


class BlockStackResult(ResultModel):
    """The stack of the fewest blocks."""

    blocks: list[LengthOut] = Field(description="Nominal sizes of the blocks, largest first.")
    count: CountOut = Field(description="How many blocks.")
    total: LengthOut = Field(description="Sum of the nominal sizes.")
    deviation: LengthOut = Field(
        description="Total less the height asked for: less than 0.05 nm where the height can be "
        "built."
    )
    proved: Literal[True] = Field(
        description="No stack of fewer blocks exists: every combination was considered."
    )


class BlockSetEntry(ResultModel):
    """A built-in set in short."""

    name: str = Field(description="Name to use as `set`.", examples=["inch-81"])
    units: Units = Field(description="Unit of its nominal sizes.")
    pieces: CountOut = Field(description="How many blocks.")
    series: list[str] = Field(description="Its series: first to last by step (count).")
    source: str = Field(description="Where the composition comes from.")
    standing: Literal["published", "from memory"] = Field(description="How it is had.")
    note: str = Field(description="What to mind; empty where nothing.")


class BlockSetList(ResultModel):
    """The built-in sets. No standard fixes the composition of a set: check it against your box."""

    sets: list[BlockSetEntry] = Field(description="The sets.")


class BlockSetDetail(BlockSetEntry):
    """A built-in set with every block."""

    sizes: list[LengthOut] = Field(description="Every block, ascending, in the set's units.")
