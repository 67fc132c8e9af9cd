"""The change of a stack that mends a measured angle, and which blocks to swap for it."""

import math
from collections import Counter
from collections.abc import Iterator, Sequence
from typing import Annotated

from pydantic import Field

from halfangle_service.errors import Disagreement, Impossible, Unreachable
from halfangle_service.fields import (
    ARCSEC_PER_RADIAN,
    AngleInput,
    Arcsec,
    ArcsecOut,
    Count,
    Length,
    LengthOut,
    NonNegativeLength,
    ResultModel,
    SignedArcsec,
    from_tenth_nm,
    to_tenth_nm,
)
from halfangle_service.fields.advisories import Advisory, caution, note
from halfangle_service.fields.blocks import BlockSupplyFields
from halfangle_service.fields.choice import one_of
from halfangle_service.fields.plates import PlateFields, height_of_arcsec, offset_of
from halfangle_service.fields.supply import read_supply
from halfangle_service.operation import Outcome, operation
from halfangle_service.topics.sine.sources import LARGEST_SEARCH, SIGNED_SUMS, SINE_RELATION
from halfangle_service.trade.sine.block_swap import Swap, fewest_swaps
from halfangle_service.trade.sine.geometry import (
    arcsec_per_height,
    effective_center_distance,
    height_change,
    height_for_angle,
)
from halfangle_service.trade.sine.low_stack import difference_table
from halfangle_service.trade.wording import arcsec, plain

#: An error past this is rarely the plate's.
WRONG_BLOCK_ARCSEC = 60.0


class SineCorrectionRequest(PlateFields, BlockSupplyFields):
    """A plate whose angle was measured, and, to say which blocks to swap, its stack and set."""

    angle: Annotated[float, AngleInput(gt=0, lt=90)] = Field(
        description="Angle wanted, in degrees.", examples=[30.0]
    )
    measured_angle: Annotated[float, AngleInput(gt=0, lt=90)] | None = Field(
        None,
        description="Angle measured, in degrees. Either this or `measured_error_arcsec`.",
        examples=["30°00'10\""],
    )
    measured_error_arcsec: SignedArcsec | None = Field(
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
    max_blocks: Annotated[int, Count(ge=1, le=8)] = Field(
        6, description="Most blocks in the new stack."
    )
    tolerance_arcsec: Arcsec | None = Field(
        None,
        description="Angles within ± this of the wanted one will do; of them, the one with the "
        "fewest blocks to handle is taken. Absent: the nearest height that the set's step has.",
    )


class SineSwap(ResultModel):
    """Blocks to change."""

    remove: list[LengthOut] = Field(description="Blocks to take out, largest first.")
    add: list[LengthOut] = Field(description="Blocks to put in, largest first.")
    blocks: list[LengthOut] = Field(description="The new stack, largest first.")
    total: LengthOut = Field(description="Its height.")
    remaining_error_arcsec: ArcsecOut = Field(
        description="Angle to expect less the angle wanted, from the set's step alone."
    )


class SineCorrectionResult(ResultModel):
    """The change of stack that mends a measured angle."""

    measured_error_arcsec: ArcsecOut = Field(description="Angle measured less angle wanted.")
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
        description="Which blocks to swap; null where no blocks were given."
    )


@operation(
    "sine.correction",
    relations=(
        "Δh = center_distance × (sin(angle) − sin(measured_angle))",
        "effective center distance = (height − offset) / sin(measured_angle)",
    ),
    sources=(SIGNED_SUMS, SINE_RELATION),
    example={
        "units": "in",
        "center_distance": 5,
        "angle": 30,
        "measured_error_arcsec": 10,
        "blocks": [2.0, 0.5],
        "set": "inch-81",
    },
    largest_request=LARGEST_SEARCH,
    heavy=True,
)
def correction(request: SineCorrectionRequest) -> Outcome[SineCorrectionResult]:
    """Correction of a measured angle.

    From a measured angle error to the change of the stack, and which blocks to swap, as few as can
    be.
    """
    wanted, measured = math.radians(request.angle), _measured(request)
    offset = offset_of(request)
    change = height_change(request.center_distance, wanted, measured)
    now = _height_now(request, offset)
    result = SineCorrectionResult(
        measured_error_arcsec=(measured - wanted) * ARCSEC_PER_RADIAN,
        height_change=change,
        height_now=now,
        new_height=now + change,
        effective_center_distance=effective_center_distance(now - offset, measured),
        swap=_swap(request, now + change),
    )
    return Outcome(result, tuple(_advisories(result)))


def _measured(request: SineCorrectionRequest) -> float:
    """Measured angle in radians, from itself or from its error."""
    one_of(request, "measured_angle", "measured_error_arcsec")
    if request.measured_angle is not None:
        return math.radians(request.measured_angle)
    degrees = request.angle + (request.measured_error_arcsec or 0.0) / 3600.0
    if not 0.0 < degrees < 90.0:
        raise Impossible(
            f"The error would make the measured angle {plain(degrees)}°.",
            fields={"measured_error_arcsec": "should leave the measured angle between 0° and 90°"},
        )
    return math.radians(degrees)


def _height_now(request: SineCorrectionRequest, offset: float) -> float:
    """Difference of the stacks as they stand; refuses one that holds no angle at all."""
    if request.blocks is None:
        return height_for_angle(request.center_distance, math.radians(request.angle), offset)
    total = sum(to_tenth_nm(block, request.units) for block in request.blocks)
    now = from_tenth_nm(total, request.units) - request.low_stack
    if not 0.0 < now - offset < request.center_distance:
        raise Impossible(
            f"These stacks lift the high roll's center {plain(now - offset, 10)} {request.units} "
            "over the low one's; a setting lifts it by more than 0 and less than the center "
            "distance.",
            fields={"blocks": "should be the stack under the high roll"},
        )
    return now


def _swap(request: SineCorrectionRequest, new_height: float) -> SineSwap | None:
    """Which blocks to swap, where the request names its blocks."""
    if request.blocks is None:
        return None
    units = request.units
    swap = _fewest_swaps(request, new_height)
    total = from_tenth_nm(sum(swap.stack), units)
    missed = total - request.low_stack - new_height
    per_unit = arcsec_per_height(request.center_distance, math.radians(request.angle))
    return SineSwap(
        remove=[from_tenth_nm(size, units) for size in swap.remove],
        add=[from_tenth_nm(size, units) for size in swap.add],
        blocks=[from_tenth_nm(size, units) for size in swap.stack],
        total=total,
        remaining_error_arcsec=missed * per_unit,
    )


def _fewest_swaps(request: SineCorrectionRequest, new_height: float) -> Swap:
    """The swap of the fewest blocks for a difference of the stacks; refuses where there is none."""
    units, unit = request.units, to_tenth_nm(1.0, request.units)
    sizes = read_supply(request).box.sizes
    current = _blocks_now(request, sizes)
    tolerance = None
    if request.tolerance_arcsec is not None:
        tolerance = height_of_arcsec(request, request.tolerance_arcsec, new_height) * unit
    target = (new_height + request.low_stack) * unit
    table = difference_table(sizes, request.max_blocks)
    heights = [height for height in table.candidates(target, tolerance) if height]
    swap = fewest_swaps(current, sizes, heights, request.max_blocks)
    if swap is None:
        raise Unreachable(
            f"No stack of up to {request.max_blocks} of these blocks is "
            f"{plain(from_tenth_nm(round(target), units), 10)} {units} high to half a step of the "
            "set.",
            fields={"max_blocks": "should be larger, or tolerance_arcsec wider"},
        )
    return swap


def _blocks_now(request: SineCorrectionRequest, sizes: Sequence[int]) -> tuple[int, ...]:
    """Blocks under the high roll in 0.1 nm; refuses one that the set does not hold (any more)."""
    left = Counter(sizes)
    blocks = tuple(to_tenth_nm(block, request.units) for block in request.blocks or ())
    for position, block in enumerate(blocks):
        if left[block] == 0:
            raise Disagreement(
                f"A block of {plain(from_tenth_nm(block, request.units), 10)} {request.units} "
                "stands in the stack, but the set has none, or no more of that size.",
                fields={f"blocks/{position}": "should be a block of the set, as often as it is in"},
            )
        left[block] -= 1
    return blocks


def _advisories(result: SineCorrectionResult) -> Iterator[Advisory]:
    error = abs(result.measured_error_arcsec)
    if error > WRONG_BLOCK_ARCSEC:
        yield caution(
            "look-for-a-wrong-block",
            f"An error of {arcsec(error, 0)} is rarely the plate's own: look for a "
            "wrong, forgotten or doubled block, or dirt, before correcting by blocks.",
        )
    yield note(
        "correct-the-cause",
        "A correction by blocks holds for this angle only; where the center distance is the cause "
        "another angle needs another change.",
    )
