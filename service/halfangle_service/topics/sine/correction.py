"""The change of a stack that mends a measured angle, and which blocks to swap for it."""

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import Annotated

from pydantic import Field

from halfangle_service.cautions import (
    correct_the_cause,
    stack_far_off,
    unusual_stack,
    wrong_block_first,
)
from halfangle_service.errors import Impossible, Unreachable
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
from halfangle_service.fields.advisories import Advisory
from halfangle_service.fields.base import Rule
from halfangle_service.fields.blocks import BlockSupplyFields
from halfangle_service.fields.choice import one_of
from halfangle_service.fields.plates import (
    PlateFields,
    height_of_arcsec,
    offset_of,
    require_lift,
)
from halfangle_service.fields.supply import Supply, read_supply, take_stack_out
from halfangle_service.operation import Outcome, operation
from halfangle_service.topics.sine.sources import LARGEST_SEARCH, SIGNED_SUMS, SINE_RELATION
from halfangle_service.trade import elementary
from halfangle_service.trade.decimals import tidy
from halfangle_service.trade.sine.block_swap import Swap
from halfangle_service.trade.sine.correction import HeightCorrection, swap_for
from halfangle_service.trade.sine.geometry import (
    arcsec_per_height,
    effective_center_distance,
    height_for_angle,
)
from halfangle_service.trade.wording import plain

#: Ways to state what was measured, of which one is needed.
MEASURED = (
    "measured_angle",
    "measured_error_arcsec",
    "measured_included_angle",
    "measured_included_angle_error_arcsec",
)
_PlateAngle = AngleInput(gt=0, lt=90)
_IncludedAngle = AngleInput(gt=0, lt=180)


#: What states the angle wanted, of which one is sent.
WANTED = ("angle", "included_angle")


class SineCorrectionRequest(PlateFields, BlockSupplyFields):
    """A plate whose angle was measured, and, to say which blocks to swap, its stack and set.

    The angle is the plate's, or the included angle of the cone ground on it, held between centers:
    twice the plate's, and what a comparator reads.
    """

    rules = (
        Rule("one-of", WANTED),
        Rule("one-of", MEASURED),
    )

    angle: Annotated[float, _PlateAngle] | None = Field(
        None,
        description="Angle wanted of the plate, in degrees. Either this or `included_angle`.",
        examples=[30.0],
    )
    included_angle: Annotated[float, _IncludedAngle] | None = Field(
        None, description="Included angle wanted of the cone, in degrees; the plate has half of it."
    )
    measured_angle: Annotated[float, replace(_PlateAngle, measured=True)] | None = Field(
        None,
        description="Angle of the plate as measured, in degrees. One of this, "
        "`measured_error_arcsec`, `measured_included_angle` and "
        "`measured_included_angle_error_arcsec` is needed.",
        examples=["30°00'10\""],
    )
    measured_error_arcsec: SignedArcsec | None = Field(
        None, description="Angle of the plate as measured less the one wanted, in arc-seconds."
    )
    measured_included_angle: Annotated[float, replace(_IncludedAngle, measured=True)] | None = (
        Field(None, description="Included angle of the cone as measured, in degrees.")
    )
    measured_included_angle_error_arcsec: SignedArcsec | None = Field(
        None, description="Included angle as measured less the one wanted, in arc-seconds."
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
        description="Angles of the plate within ± this of the wanted one will do; of them, the one "
        "with the fewest blocks to handle is taken. Absent: the nearest height that the set's step "
        "has.",
    )


class SineSwap(ResultModel):
    """Blocks to change."""

    remove: list[LengthOut] = Field(description="Blocks to take out, largest first.")
    add: list[LengthOut] = Field(description="Blocks to put in, largest first.")
    blocks: list[LengthOut] = Field(description="The new stack, largest first.")
    total: LengthOut = Field(description="Its height.")
    remaining_error_arcsec: ArcsecOut = Field(
        description="Angle of the plate to expect less the one wanted, from the set's step alone."
    )


class SineCorrectionResult(ResultModel):
    """The change of stack that mends a measured angle."""

    measured_error_arcsec: ArcsecOut = Field(
        description="Angle of the plate as measured less the one wanted: half of an included "
        "angle's error."
    )
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


def is_swapped(request: SineCorrectionRequest) -> bool:
    """True for a request that asks which blocks to swap: that may take some milliseconds."""
    return request.blocks is not None


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
    heavy=is_swapped,
)
def correction(request: SineCorrectionRequest) -> Outcome[SineCorrectionResult]:
    """Correction of a measured angle.

    From a measured angle error to the change of the stack, and which blocks to swap, as few as can
    be.
    """
    offset = offset_of(request)
    wanted = _wanted_degrees(request)
    measured_degrees, error_arcsec = _measured(request, wanted)
    measured = elementary.radians(measured_degrees)
    now = _height_now(request, wanted, offset)
    mended = HeightCorrection(request.center_distance, elementary.radians(wanted), measured, now)
    new = mended.new
    supply = _supply(request)
    result = SineCorrectionResult(
        measured_error_arcsec=error_arcsec,
        height_change=mended.change,
        height_now=now,
        new_height=new,
        effective_center_distance=effective_center_distance(now - offset, measured),
        swap=None if supply is None else _swap(request, supply, new, wanted),
    )
    advisories = () if supply is None else supply.advisories
    return Outcome(result, (*advisories, *_advisories(request, result)))


def _wanted_degrees(request: SineCorrectionRequest) -> float:
    """Plate's angle wanted, in degrees."""
    one_of(request, *WANTED)
    return (request.included_angle or 0.0) / 2.0 if request.angle is None else request.angle


def _measured(request: SineCorrectionRequest, wanted: float) -> tuple[float, float]:
    """Plate's angle as measured, in degrees, and less the one wanted (degrees), in arc-seconds.

    Refuses an error that leaves no angle.
    """
    field = one_of(request, *MEASURED)
    counted = 2.0 if "included" in field else 1.0
    sent: float = getattr(request, field)
    value = sent / counted
    if not field.endswith("_arcsec"):
        return value, (elementary.radians(value) - elementary.radians(wanted)) * ARCSEC_PER_RADIAN
    degrees = wanted + value / 3600.0
    if not 0.0 < degrees < 90.0:
        most = plain(90.0 * counted)
        raise Impossible(
            f"The error would make the measured angle {plain(counted * degrees)}°.",
            fields={field: f"should leave the measured angle between 0° and {most}°"},
        )
    return degrees, value


def _height_now(request: SineCorrectionRequest, wanted: float, offset: float) -> float:
    """Difference of the stacks as they stand; refuses one that holds no angle at all."""
    if request.blocks is None:
        return height_for_angle(request.center_distance, elementary.radians(wanted), offset)
    total = sum(to_tenth_nm(block, request.units) for block in request.blocks)
    high = from_tenth_nm(total, request.units)
    now = tidy(high - request.low_stack, high)
    require_lift(now - offset, request.center_distance, request.units, "blocks")
    return now


def _supply(request: SineCorrectionRequest) -> Supply | None:
    """The blocks to swap with, where the request names those of its stack."""
    return None if request.blocks is None else read_supply(request)


def _swap(
    request: SineCorrectionRequest, supply: Supply, new_height: float, wanted: float
) -> SineSwap:
    """Which blocks to swap for a difference of the stacks; `wanted` is the angle in degrees."""
    units = request.units
    swap = _fewest_swaps(request, supply.box.sizes, new_height)
    total = from_tenth_nm(sum(swap.stack), units)
    missed = total - request.low_stack - new_height
    per_unit = arcsec_per_height(request.center_distance, elementary.radians(wanted))
    return SineSwap(
        remove=[from_tenth_nm(size, units) for size in swap.remove],
        add=[from_tenth_nm(size, units) for size in swap.add],
        blocks=[from_tenth_nm(size, units) for size in swap.stack],
        total=total,
        remaining_error_arcsec=missed * per_unit,
    )


def _fewest_swaps(request: SineCorrectionRequest, sizes: Sequence[int], new_height: float) -> Swap:
    """The swap of the fewest blocks for a difference of the stacks; refuses where there is none."""
    units, unit = request.units, to_tenth_nm(1.0, request.units)
    current = _blocks_now(request, sizes)
    target, within = (new_height + request.low_stack) * unit, None
    if request.tolerance_arcsec is not None:
        tolerance = height_of_arcsec(request, request.tolerance_arcsec, new_height) * unit
        within = target - tolerance, target + tolerance
    swap = swap_for(current, sizes, target, request.max_blocks, within)
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
    blocks = tuple(to_tenth_nm(block, request.units) for block in request.blocks or ())
    take_stack_out(Counter(sizes), blocks, request.units, "blocks")
    return blocks


def _advisories(request: SineCorrectionRequest, result: SineCorrectionResult) -> Iterator[Advisory]:
    yield from unusual_stack(result.new_height, request.center_distance, request.units)
    if result.swap is not None and request.tolerance_arcsec is None:
        yield from stack_far_off(result.swap.remaining_error_arcsec)
    yield from wrong_block_first(result.measured_error_arcsec)
    yield correct_the_cause()
