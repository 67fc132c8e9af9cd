"""Requests and results of stacks of angle gauge blocks."""

from typing import Annotated, Literal

from pydantic import Field

from halfangle_service.fields import (
    Angle,
    AngleInput,
    ArcsecOut,
    Count,
    CountOut,
    NonNegativeArcsec,
    RequestModel,
    ResultModel,
    SignedArcsec,
)
from halfangle_service.fields.blocks import SetName


class BlockAngleOwned(RequestModel):
    """An angle block that the shop owns."""

    angle: Annotated[float, AngleInput(gt=0, le=180)] = Field(
        description="Nominal angle, in degrees.", examples=["0 30 00"]
    )
    count: Annotated[int, Count(ge=1, le=4)] = Field(1, description="How many of them.")
    deviation_arcsec: SignedArcsec = Field(
        0.0, description="Measured deviation, actual less nominal; at most 60″ either way."
    )
    expanded_uncertainty_arcsec: NonNegativeArcsec | None = Field(
        None, description="Expanded uncertainty (k = 2) of that deviation; absent: not calibrated."
    )


class BlockAngleStackRequest(RequestModel):
    """An angle, and the angle blocks to build it from."""

    angle: Annotated[float, AngleInput(gt=0, le=360)] = Field(
        description="Angle to build, in degrees; taken to the nearest 0.001″.",
        examples=["37 24 18"],
    )
    set: SetName | None = Field(
        None,
        description="Built-in set, as `GET /v1/blocks/angle-sets` lists it. Either this or "
        "`pieces`.",
        examples=["angle-16"],
    )
    pieces: Annotated[list[BlockAngleOwned], Field(min_length=1, max_length=22)] | None = Field(
        None, description="The shop's own angle blocks; at most 22, counts included."
    )
    with_square: bool = Field(
        False, description="True to have a square block of 90° too, added or subtracted."
    )
    max_pieces: Annotated[int, Count(ge=1, le=22)] = Field(
        22, description="Most blocks to wring together."
    )
    tolerance_arcsec: NonNegativeArcsec = Field(
        0.0,
        description="Angles within ± this will do: the fewest blocks that come within it, and of "
        "these the nearest.",
    )
    alternatives: Annotated[int, Count(ge=0, le=20)] = Field(
        0, description="How many further stacks to give, the next best ones, all different."
    )
    grade: SetName | None = Field(
        None,
        description="Grade of blocks without a calibration, as `GET /v1/blocks/angle-sets` lists "
        "it, for the angle's uncertainty.",
        examples=["toolroom"],
    )


class BlockAnglePiece(ResultModel):
    """A block in a stack of angle blocks."""

    angle: Angle = Field(description="Nominal angle of the block.")
    way: Literal["add", "subtract"] = Field(
        description="`add`: wide end to that of the others; `subtract`: turned end for end."
    )


class BlockAngleAlternative(ResultModel):
    """A stack of angle blocks."""

    pieces: list[BlockAnglePiece] = Field(description="The blocks, largest first.")
    count: CountOut = Field(description="How many blocks.")
    total: Angle = Field(description="Angle that the nominal angles make.")
    deviation_arcsec: ArcsecOut = Field(description="That angle less the wanted one.")
    actual_deviation_arcsec: ArcsecOut = Field(
        description="The same with measured deviations; a subtracted block's counts the other way."
    )
    standard_uncertainty_arcsec: ArcsecOut | None = Field(
        description="Standard uncertainty of the angle; null where neither calibration nor grade "
        "is known of some block."
    )
    worst_case_arcsec: ArcsecOut | None = Field(
        description="Sum of the blocks' limits; null where they are not known."
    )
    words: str = Field(description="The stack as a sum.")


class BlockAngleStackResult(BlockAngleAlternative):
    """The stack of the fewest angle blocks."""

    proved: bool = Field(
        description="No stack of fewer blocks comes within the tolerance, and of as many blocks "
        "none comes nearer: every way to add, subtract and leave out blocks was considered. False "
        "where the bound on the work was reached first."
    )
    order_proved: bool = Field(
        description="Alternatives are proved: every stack that could come before the last one "
        "given was considered."
    )
    bound: str | None = Field(
        description="What bounded the search, and what holds in spite of it; null where nothing "
        "did."
    )
    alternatives: list[BlockAngleAlternative] = Field(
        description="The next best, all different: fewest blocks first, then the nearest, then "
        "those that subtract fewer blocks, then those that add larger ones."
    )
