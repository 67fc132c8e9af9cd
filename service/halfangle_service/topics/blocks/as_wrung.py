"""A stack as wrung, read from a request: its blocks, those beside it, and what it should be."""

import math
from collections.abc import Sequence
from dataclasses import replace
from typing import Annotated

from pydantic import Field

from halfangle_service.errors import Disagreement, Impossible
from halfangle_service.fields import (
    ARCSEC_PER_RADIAN,
    AngleInput,
    Arcsec,
    Count,
    Length,
    NonNegativeLength,
    SignedLength,
    Units,
    from_tenth_nm,
    to_tenth_nm,
)
from halfangle_service.fields.base import Rule
from halfangle_service.fields.blocks import SOURCES, BlockSupplyFields, SetName
from halfangle_service.fields.choice import at_most_one_of, needs
from halfangle_service.fields.supply import Supply, graded, graded_supply, read_supply
from halfangle_service.trade.stacks.supply import Piece
from halfangle_service.trade.stacks.wrung import Plate, Wrung
from halfangle_service.trade.tables.blocks.sets import find_set, foreign_places
from halfangle_service.trade.tables.blocks.tolerances import find_grade
from halfangle_service.trade.unit_slips import require_center_distance
from halfangle_service.trade.wording import of_any_unit, option, plain

#: What is wanted, measured, and known of the low stack: of each pair one at most is sent.
WANTED = ("height", "angle")

MEASURED = ("measured_height", "measured_angle")

ERROR_LIMITS = ("measurement_error_limit", "measurement_error_limit_arcsec")

LOW_STACKS = ("low_stack", "low_blocks")
#: What says nothing without a plate.
OF_A_PLATE = ("angle", "measured_angle", "measurement_error_limit_arcsec", "low_blocks")


class BlockCheckRequest(BlockSupplyFields):
    """A stack as wrung, what it is for, and what was measured on it."""

    rules = (
        Rule("one-of", SOURCES),
        Rule("at-most-one-of", WANTED),
        Rule("at-most-one-of", MEASURED),
        Rule("at-most-one-of", ERROR_LIMITS),
        Rule("at-most-one-of", LOW_STACKS),
        Rule("needs", OF_A_PLATE, "center_distance"),
    )

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
        "0.0005 mm do not count. `measurement_error_limit` sent without a measurement takes the "
        "place of that.",
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
    low_stack: NonNegativeLength | None = Field(
        None,
        description="Height of the stack under the low roll, in `units`. Either this or "
        "`low_blocks`; absent both: no stack stands there.",
    )
    low_blocks: Annotated[list[Length], Field(min_length=1, max_length=20)] | None = Field(
        None,
        description="Nominal sizes of the blocks under the low roll as read from them, wear blocks "
        "included, in `units`. They are of the same box, so that a wrong block there is looked for "
        "too, where an angle is wanted or measured; needs `center_distance`.",
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
    measured_angle: Annotated[float, AngleInput(gt=0, lt=90, measured=True)] | None = Field(
        None, description="Angle measured on the plate, in degrees; needs `center_distance`."
    )
    measurement_error_limit: Length | None = Field(
        None,
        description="Largest error ± of the measured height, in `units`: within it, and at it, the "
        "measurement agrees with the stack as read, measured deviations included, and a mistake "
        "explains the measurement. Either this or `measurement_error_limit_arcsec`; absent both: "
        "half of 0.0001 in or 0.001 mm. It does not widen what passes against the wanted height, "
        "unless nothing was measured: then the actual height is to come within it of the wanted "
        "one.",
    )
    measurement_error_limit_arcsec: Arcsec | None = Field(
        None,
        description="The same limit in arc-seconds at the angle of the stack as read; needs "
        "`center_distance`.",
    )
    grade: SetName | None = Field(
        None,
        description="Tolerance grade of blocks without a calibration, as `GET /v1/blocks/grades` "
        "lists it.",
    )
    max_explanations: Annotated[int, Count(ge=0, le=50)] = Field(
        5, description="How many mistakes to list, the likeliest first."
    )


def read_wrung(request: BlockCheckRequest) -> tuple[Supply, Wrung]:
    """Read a request; refuses blocks that are not there, contradictions, heights past the plate."""
    wanted = at_most_one_of(request, *WANTED)
    measured = at_most_one_of(request, *MEASURED)
    at_most_one_of(request, *ERROR_LIMITS)
    at_most_one_of(request, *LOW_STACKS)
    for name in OF_A_PLATE:
        needs(request, name, "center_distance", why="What turns a plate needs the plate.")
    supply = read_supply(request)
    if request.grade is not None:
        supply = graded_supply(supply, request.grade)
    wear, spare_wear = _wear(request, supply)
    inner, spare = _in_stack(request, supply)
    low, spare, low_wear, spare_wear = _in_low_stack(request, supply, spare, spare_wear)
    plate = _plate(request, sum(piece.actual for piece in (*low, *low_wear)))
    bench = Wrung(
        units=request.units,
        box=supply.box,
        any_wear=supply.wear,
        inner=inner,
        spare=spare,
        wear=wear,
        spare_wear=spare_wear,
        low=low,
        low_wear=low_wear,
        plate=plate,
        wanted=_height(plate, request.units, request.height, request.angle),
        angle_wanted=wanted == "angle",
        measured=_height(plate, request.units, request.measured_height, request.measured_angle),
        angle_measured=measured == "measured_angle",
        limit=None,
    )
    if plate is not None:
        _require_on_plate(plate, "The stack as read", "blocks", bench.actual)
        _require_on_plate(plate, "What is wanted", wanted, bench.wanted)
        _require_on_plate(plate, "What was measured", measured, bench.measured)
    return supply, replace(bench, limit=_limit(request, bench))


def _plate(request: BlockCheckRequest, low: int) -> Plate | None:
    """The plate, on the blocks under its low roll (0.1 nm) or the height stated of them."""
    if request.center_distance is None:
        return None
    require_center_distance(request.center_distance, request.units)
    low_stack = from_tenth_nm(low, request.units) if request.low_blocks else request.low_stack
    return Plate(request.units, request.center_distance, low_stack or 0.0, request.offset)


def _height(
    plate: Plate | None, units: Units, height: float | None, angle: float | None
) -> float | None:
    """Height in 0.1 nm from itself, or from an angle on the plate; None where neither is known."""
    if height is not None:
        return float(to_tenth_nm(height, units))
    return None if angle is None or plate is None else plate.height(math.radians(angle))


def _limit(request: BlockCheckRequest, bench: Wrung) -> float | None:
    """The limit sent, in 0.1 nm."""
    if request.measurement_error_limit is not None:
        return request.measurement_error_limit * bench.unit
    if request.measurement_error_limit_arcsec is None:
        return None
    length = (request.center_distance or 0.0) * bench.unit
    at = math.cos(bench.angle_rad(bench.actual) or 0.0)
    return length * at * request.measurement_error_limit_arcsec / ARCSEC_PER_RADIAN


def _require_on_plate(plate: Plate, what: str, field: str | None, height: float | None) -> None:
    if field is None or height is None or plate.angle_rad(height) is not None:
        return
    raise Impossible(
        f"{what} lifts the high roll by {of_any_unit(plate.rise(height))} {plate.units}, "
        f"which is not below the center distance {of_any_unit(plate.center_distance)}.",
        fields={field: "should lift the plate by less than its center distance"},
    )


def _in_stack(
    request: BlockCheckRequest, supply: Supply
) -> tuple[tuple[Piece, ...], tuple[Piece, ...]]:
    """The blocks of the stack, and those left then; refuses one that the box does not hold."""
    left, pieces = list(supply.box.pieces), []
    for place, length in enumerate(request.blocks):
        size = to_tenth_nm(length, request.units)
        piece = _taken(left, size)
        if piece is None:
            raise _not_in_box(request, supply, f"blocks/{place}", length)
        pieces.append(piece)
    return tuple(pieces), tuple(left)


def _in_low_stack(
    request: BlockCheckRequest,
    supply: Supply,
    spare: Sequence[Piece],
    spare_wear: Sequence[Piece],
) -> tuple[tuple[Piece, ...], ...]:
    """The blocks under the low roll and those left then, and the same of the wear blocks."""
    left, left_wear = list(spare), list(spare_wear)
    low, low_wear = [], []
    for place, length in enumerate(request.low_blocks or ()):
        size = to_tenth_nm(length, request.units)
        if piece := _taken(left, size):
            low.append(piece)
        elif piece := _taken(left_wear, size):
            low_wear.append(piece)
        else:
            raise _not_in_box(request, supply, f"low_blocks/{place}", length)
    return tuple(low), tuple(left), tuple(low_wear), tuple(left_wear)


def _taken(left: list[Piece], size: int) -> Piece | None:
    """Take a block of a size out of those left; None where there is none."""
    piece = next((entry for entry in left if entry.size == size), None)
    if piece is not None:
        left.remove(piece)
    return piece


def _not_in_box(
    request: BlockCheckRequest, supply: Supply, path: str, length: float
) -> Disagreement:
    units = request.units
    size = to_tenth_nm(length, units)
    there = sum(piece.size == size for piece in supply.box.pieces)
    away = next((state for piece, state in supply.away if piece.size == size), None)
    wear = any(piece.size == size for piece in supply.wear)
    reasons = []
    if there:
        stacks = "both stacks name it" if request.low_blocks else "the stack names it"
        reasons.append(f"the box holds {there} of it, and {stacks} more often")
    if away:
        reasons.append(f"{'another one' if there else 'it'} is said to be {option(away)}")
    if wear:
        reasons.append("the box has it as a wear block, which goes into `wear_blocks`")
    if not reasons and foreign_places([size], units):
        reasons.append(f"it is a size of {'metric' if units == 'in' else 'inch'} sets")
    return Disagreement(
        f"{plain(length, 10)} {units} is not a block of this box: "
        f"{'; '.join(reasons) or 'the box has no such block'}.",
        fields={path: "should be a block of the box, as often as it is there"},
    )


def _wear(
    request: BlockCheckRequest, supply: Supply
) -> tuple[tuple[Piece, ...], tuple[Piece, ...]]:
    """The wear blocks on the stack, and those left beside it.

    A size of which set or box have wear blocks is one of these; another is taken as a pair that the
    shop keeps beside them.
    """
    left, taken = list(supply.wear), []
    owned = _own_wear(request)
    for place, length in enumerate(request.wear_blocks or ()):
        size = to_tenth_nm(length, request.units)
        piece = _taken(left, size)
        if piece is None and size in owned:
            raise _no_such_wear(request, supply, place, owned.count(size))
        taken.append(piece or _beside(request, size))
    return tuple(taken), tuple(left)


def _own_wear(request: BlockCheckRequest) -> list[int]:
    """Sizes of the wear blocks that the set or the box has, those away included."""
    if request.set is not None:
        return list(find_set(request.set).wear)
    return [
        to_tenth_nm(entry.size, request.units)
        for entry in request.box or ()
        if entry.wear_block
        for _ in range(entry.count)
    ]


def _no_such_wear(
    request: BlockCheckRequest, supply: Supply, place: int, owned: int
) -> Disagreement:
    length = (request.wear_blocks or [])[place]
    size = to_tenth_nm(length, request.units)
    away = owned - sum(piece.size == size for piece in supply.wear)
    gone = f", {away} of them missing or in use" if away else ""
    return Disagreement(
        f"There is no wear block of {plain(length, 10)} {request.units} left for the stack: the "
        f"box has {owned} in all{gone}.",
        fields={
            f"wear_blocks/{place}": "should be a wear block of the box, as often as it is there"
        },
    )


def _beside(request: BlockCheckRequest, size: int) -> Piece:
    """A wear block that the shop keeps beside its set."""
    piece = Piece(size)
    return piece if request.grade is None else graded(piece, find_grade(request.grade))
