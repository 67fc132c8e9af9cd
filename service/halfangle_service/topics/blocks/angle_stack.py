"""Stacks of angle gauge blocks: the fewest, each added or subtracted, that build an angle."""

from collections.abc import Iterator, Sequence
from itertools import islice
from typing import Annotated, Literal

from pydantic import Field

from halfangle_service.errors import BeyondBound, Disagreement, Unreachable
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
    format_dms,
)
from halfangle_service.fields.advisories import Advisory, caution, note
from halfangle_service.fields.base import Rule
from halfangle_service.fields.blocks import SetName
from halfangle_service.fields.choice import one_of
from halfangle_service.fields.estimate import AngleEstimate, estimate
from halfangle_service.operation import Outcome, Source, operation
from halfangle_service.topics.blocks.sources import ANGLE_SETS
from halfangle_service.trade.stacks.angle_blocks import (
    MOST_COMPARED,
    MOST_PIECES,
    AngleChoice,
    fewest_within,
    nearest,
)
from halfangle_service.trade.stacks.angle_pieces import (
    AnglePiece,
    Used,
    angle_budget,
    as_sum,
    choices_of,
    deviation_of,
)
from halfangle_service.trade.stacks.search.work import Work
from halfangle_service.trade.tables.blocks.angle_sets import (
    SQUARE,
    THOUSANDTHS_PER_DEGREE,
    find_angle_grade,
    find_angle_set,
)
from halfangle_service.trade.wording import plain

_METHOD = Source(
    citation="Derived here: all signed sums of each half of the box are joined, fewest blocks "
    "first; checked against enumeration and an independent exact solver.",
    standing="derived",
)
_LARGEST_DEVIATION_ARCSEC = 60.0
_MANY_PIECES = 5


class BlockAngleOwned(RequestModel):
    """An angle block that the shop owns."""

    angle: Annotated[float, AngleInput(gt=0, le=180)] = Field(
        description="Nominal angle, in degrees.", examples=["0 30 00"]
    )
    count: Annotated[int, Count(ge=1, le=4)] = Field(1, description="How many of them.")
    deviation_arcsec: SignedArcsec = Field(
        0.0,
        description="Measured deviation, actual less nominal, as the certificate states it; at "
        "most 60″ either way.",
    )
    expanded_uncertainty_arcsec: NonNegativeArcsec | None = Field(
        None,
        description="Expanded uncertainty (k = 2) of that deviation. Absent: the block is not "
        "calibrated, and its grade, if one is given, limits its error.",
    )


#: What states the blocks, of which one is sent.
ANGLE_SOURCES = ("set", "box")


class BlockAngleStackRequest(RequestModel):
    """An angle, and the angle blocks to build it from."""

    rules = (Rule("one-of", ANGLE_SOURCES),)

    angle: Annotated[float, AngleInput(gt=0, le=360)] = Field(
        description="Angle to build, in degrees; taken to the nearest 0.001″.",
        examples=["37 24 18"],
    )
    set: SetName | None = Field(
        None,
        description="Built-in set, as `GET /v1/blocks/angle-sets` lists it. Either this or `box`.",
        examples=["angle-16"],
    )
    box: Annotated[list[BlockAngleOwned], Field(min_length=1, max_length=22)] | None = Field(
        None,
        description="The shop's own angle blocks with what is known of them; at most 22, counts "
        "included.",
    )
    with_square_block: bool = Field(
        False, description="True to have a square block of 90° too, added or subtracted."
    )
    max_blocks: Annotated[int, Count(ge=1, le=22)] = Field(
        22, description="Most blocks to wring together."
    )
    tolerance_arcsec: NonNegativeArcsec = Field(
        0.0,
        description="Angles within ± this will do: the fewest blocks that come within it, and of "
        "these the nearest.",
    )
    max_alternatives: Annotated[int, Count(ge=0, le=20)] = Field(
        0, description="How many further stacks to give, the next best ones, all different."
    )
    grade: SetName | None = Field(
        None,
        description="Tolerance grade of blocks without a calibration, as `GET "
        "/v1/blocks/angle-grades` lists it, for the angle's uncertainty.",
        examples=["toolroom"],
    )


class BlockAngleUsed(ResultModel):
    """A block in a stack of angle blocks."""

    angle: Angle = Field(description="Nominal angle of the block.")
    sense: Literal["add", "subtract"] = Field(
        description="`add`: wide end to that of the others; `subtract`: turned end for end."
    )


class BlockAngleAlternative(ResultModel):
    """A stack of angle blocks."""

    angle_blocks: list[BlockAngleUsed] = Field(description="The blocks, largest first.")
    count: CountOut = Field(description="How many blocks.")
    total: Angle = Field(description="Angle that the nominal angles make.")
    deviation_arcsec: ArcsecOut = Field(description="Total less the wanted angle.")
    actual_angle: AngleEstimate = Field(
        description="Angle with measured deviations, a subtracted block's counted the other way, "
        "and how far calibrations and grade leave it open. Nothing is said of that, and `grade` "
        "named as not stated, where neither is known of some block."
    )
    actual_deviation_arcsec: ArcsecOut = Field(description="Actual angle less the wanted one.")
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


@operation(
    "blocks.angle-stack",
    relations=(
        "angle = Σ ± nominal angle, each block once at most, blocks of one angle all the same way",
        "standard_uncertainty² = Σ u², u = accuracy / √3 by grade, or expanded uncertainty / 2",
    ),
    sources=(_METHOD, ANGLE_SETS),
    example={"angle": "37 24 18", "set": "angle-16", "grade": "toolroom"},
    largest_request="22 angle blocks; of more than a million stacks of as few blocks within "
    "the tolerance the best of the first million",
    heavy=True,
)
def angle_stack(request: BlockAngleStackRequest) -> Outcome[BlockAngleStackResult]:
    """Stack of angle gauge blocks.

    The fewest angle gauge blocks, each added or subtracted, that build an angle, proved; with the
    error that their grades or calibrations leave.
    """
    pieces = _pieces(request)
    angles = [piece.angle for piece in pieces]
    target = round(request.angle * THOUSANDTHS_PER_DEGREE)
    tolerance = round(request.tolerance_arcsec * 1000)
    wanted = 1 + request.max_alternatives
    choice = fewest_within(
        angles, target, tolerance, request.max_blocks, wanted, Work(MOST_COMPARED)
    )
    if not choice.stacks:
        raise _unbuildable(request, angles, target)
    built = islice(choices_of(pieces, choice.stacks, wanted), wanted)
    first, *others = [_facts(used, target) for used in built]
    result = BlockAngleStackResult(
        **dict(first),
        proved=choice.first_proved,
        order_proved=choice.complete,
        bound=None if choice.complete else _bound_words(choice),
        alternatives=others,
    )
    return Outcome(result, tuple(_advisories(result)))


def _bound_words(choice: AngleChoice) -> str:
    """What bounded the search, and what holds in spite of it."""
    first = "the first stack is proved" if choice.first_proved else "a nearer one may exist"
    return (
        f"More than {MOST_COMPARED} stacks of as few blocks come within the tolerance: no stack of "
        f"fewer blocks exists, {first}, and others may come before those that follow it."
    )


def _pieces(request: BlockAngleStackRequest) -> list[AnglePiece]:
    """The blocks, largest first; refuses both sources, or neither, and too many."""
    source = one_of(request, *ANGLE_SOURCES)
    if request.set is not None:
        pieces = [AnglePiece(angle) for angle in find_angle_set(request.set).angles]
    else:
        pieces = list(_owned(request.box or ()))
    if request.with_square_block:
        pieces.append(AnglePiece(SQUARE))
    if len(pieces) > MOST_PIECES:
        raise BeyondBound(
            f"{len(pieces)} angle blocks; at most {MOST_PIECES} are taken in one request.",
            fields={source: f"should hold at most {MOST_PIECES} blocks, counts included"},
        )
    if request.grade is not None:
        limit = find_angle_grade(request.grade).limit_deviation_arcsec
        pieces = [piece.graded(limit) for piece in pieces]
    return sorted(pieces, key=lambda piece: -piece.angle)


def _owned(entries: Sequence[BlockAngleOwned]) -> Iterator[AnglePiece]:
    for place, entry in enumerate(entries):
        angle = round(entry.angle * THOUSANDTHS_PER_DEGREE)
        if angle == 0:
            raise Disagreement(
                "An angle block of less than 0.0005″ is none.",
                fields={f"box/{place}/angle": "should be at least 0.001″"},
            )
        if abs(entry.deviation_arcsec) > _LARGEST_DEVIATION_ARCSEC:
            raise Disagreement(
                f"A deviation of {plain(entry.deviation_arcsec, 10)}″ is not one of an angle "
                "block.",
                fields={
                    f"box/{place}/deviation_arcsec": "should be at most "
                    f"{plain(_LARGEST_DEVIATION_ARCSEC)}″"
                },
            )
        expanded = entry.expanded_uncertainty_arcsec
        piece = AnglePiece(angle, entry.deviation_arcsec, expanded and expanded / 2.0)
        yield from [piece] * entry.count


def _unbuildable(
    request: BlockAngleStackRequest, angles: Sequence[int], target: int
) -> Unreachable:
    below, above = nearest(angles, target, request.max_blocks)
    facts = {
        name: {
            "angle": format_dms(stack.total / THOUSANDTHS_PER_DEGREE),
            "deviation_arcsec": (stack.total - target) / 1000,
            "sum": as_sum(stack.terms),
        }
        for name, stack in (("below", below), ("above", above))
        if stack is not None
    }
    words = " and ".join(f"{name} it is {entry['angle']}" for name, entry in facts.items())
    return Unreachable(
        f"No stack of up to {request.max_blocks} of these angle blocks is "
        f"{format_dms(request.angle)}; nearest {words}.",
        fields={"angle": "should be an angle that these blocks build"},
        more={"nearest": facts},
    )


def _facts(used: Sequence[Used], target: int) -> BlockAngleAlternative:
    total = sum(sign * piece.angle for piece, sign in used)
    off, deviation = (total - target) / 1000, deviation_of(used)
    actual = Angle.of(total / THOUSANDTHS_PER_DEGREE + deviation / 3600.0)
    return BlockAngleAlternative(
        angle_blocks=[
            BlockAngleUsed(
                angle=Angle.of(piece.angle / THOUSANDTHS_PER_DEGREE),
                sense="add" if sign > 0 else "subtract",
            )
            for piece, sign in used
        ],
        count=len(used),
        total=Angle.of(total / THOUSANDTHS_PER_DEGREE),
        deviation_arcsec=off,
        actual_angle=estimate(AngleEstimate, angle_budget(used), actual),
        actual_deviation_arcsec=off + deviation,
        words=as_sum([(piece.angle, sign) for piece, sign in used]),
    )


def _advisories(result: BlockAngleStackResult) -> Iterator[Advisory]:
    if result.count > _MANY_PIECES:
        yield caution(
            "many-angle-blocks",
            f"{result.count} angle blocks add up their errors; a nearby angle, or a sine plate, "
            "may be surer.",
        )
    if result.bound is not None:
        yield note("bound-reached", result.bound)
