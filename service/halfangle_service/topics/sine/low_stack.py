"""Stacks under both rolls of a sine bar or plate, from one set, with the fewest blocks."""

import math
from collections.abc import Iterator, Sequence
from typing import Annotated, Literal

from pydantic import Field

from halfangle_service.cautions import STEEP_DEGREES, stack_far_off, steep_angle, unusual_stack
from halfangle_service.errors import Unreachable
from halfangle_service.fields import (
    ARCSEC_PER_RADIAN,
    Angle,
    AngleInput,
    Arcsec,
    ArcsecOut,
    Count,
    CountOut,
    LengthOut,
    NonNegativeLength,
    ResultModel,
    Units,
    angle_from_radians,
    from_tenth_nm,
    to_tenth_nm,
)
from halfangle_service.fields.advisories import Advisory, note
from halfangle_service.fields.blocks import BlockSupplyFields
from halfangle_service.fields.plates import (
    PlateFields,
    ReachField,
    arcsec_per_step,
    heights_within,
    offset_of,
)
from halfangle_service.fields.supply import read_supply
from halfangle_service.operation import Outcome, operation
from halfangle_service.topics.sine.complement import require_reach_or_complement
from halfangle_service.topics.sine.sources import LARGEST_SEARCH, SIGNED_SUMS, SINE_RELATION
from halfangle_service.trade.sine.geometry import (
    angle_for_height,
    height_for_angle,
)
from halfangle_service.trade.sine.low_stack import (
    Conditions,
    DifferenceTable,
    LowStackUse,
    Pair,
    Preference,
    difference_table,
)
from halfangle_service.trade.wording import plain


class SineLowStackRequest(PlateFields, BlockSupplyFields):
    """An angle, a plate, and one set for the stacks under both of its rolls."""

    angle: Annotated[float, AngleInput(ge=0, lt=90)] = Field(
        description="Angle wanted, in degrees.", examples=[0.5]
    )
    low_stack_use: LowStackUse = Field(
        "if-needed",
        description="`if-needed`: a stack under the low roll only where no single stack of up to "
        "`max_single_blocks` does it; `fewest-blocks`: wherever it saves a block; `always`; "
        "`never`, as for a plate that pivots on its low roll.",
    )
    max_single_blocks: Annotated[int, Count(ge=1, le=8)] = Field(
        4, description="Most blocks that a single stack may have before two stacks are preferred."
    )
    max_blocks: Annotated[int, Count(ge=1, le=8)] = Field(
        6, description="Most blocks in both stacks together."
    )
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
    height_as_set: LengthOut = Field(description="Difference of the stacks as built.")
    deviation: LengthOut = Field(description="`height_as_set` less `height`.")
    angle_as_set: Angle = Field(description="The angle that these stacks give.")
    deviation_arcsec: ArcsecOut = Field(description="`angle_as_set` less the angle wanted.")
    set_step: LengthOut = Field(description="Smallest step of height that the set has.")
    proved: Literal[True] = Field(
        description="No fewer blocks do it under the conditions stated: every combination of one "
        "set's blocks under either roll was considered."
    )
    action: str = Field(description="What to do, in plain words.")


@operation(
    "sine.low-stack",
    relations=(
        "Σ high − Σ low = center_distance × sin(angle) + offset, to the tolerance",
        "offset = base_step − (high_roll_diameter − low_roll_diameter) / 2",
    ),
    sources=(SIGNED_SUMS, SINE_RELATION),
    example={"units": "in", "center_distance": 5, "angle": 0.5, "set": "inch-81"},
    largest_request=LARGEST_SEARCH,
    heavy=True,
)
def low_stack(request: SineLowStackRequest) -> Outcome[SineLowStackResult]:
    """Stacks under both rolls.

    The blocks for an angle from one set: a single stack where it can be built, else stacks under
    both rolls, with the fewest blocks, proved.
    """
    require_reach_or_complement(request, request.angle, request.largest_angle)
    angle_rad = math.radians(request.angle)
    height = height_for_angle(request.center_distance, angle_rad, offset_of(request))
    supply = read_supply(request)
    table = difference_table(supply.box.sizes, request.max_blocks)
    result = _result(request, table, _choose(request, table, height), height)
    return Outcome(result, (*supply.advisories, *_advisories(request, result)))


def _choose(request: SineLowStackRequest, table: DifferenceTable, height: float) -> Pair:
    """Give the pair that the request prefers; refuses where there is none."""
    unit = to_tenth_nm(1.0, request.units)
    within = None
    if request.tolerance_arcsec is not None:
        angle_rad = math.radians(request.angle)
        low, high = heights_within(request, request.tolerance_arcsec, angle_rad)
        within = low * unit, high * unit
    differences = table.candidates(height * unit, within)
    preference = Preference(
        request.low_stack_use,
        request.max_single_blocks,
        Conditions(
            to_tenth_nm(request.smallest_high_stack, request.units),
            to_tenth_nm(request.smallest_low_stack, request.units),
            request.low_stack_use == "always",
        ),
    )
    pair = preference.choose(table, differences)
    if pair is None:
        raise _unbuildable(request, preference.nearest(table, height * unit), height)
    return pair


def _unbuildable(
    request: SineLowStackRequest, nearest: Sequence[int], height: float
) -> Unreachable:
    """The refusal for a difference that these blocks do not build, with the nearest they do."""
    units = request.units
    what = "single stack" if request.low_stack_use == "never" else "pair of stacks"
    heights = [from_tenth_nm(difference, units) for difference in nearest]
    words = " and ".join(plain(value, 10) for value in heights)
    wanted = from_tenth_nm(to_tenth_nm(height, units), units)
    return Unreachable(
        f"No {what} of up to {request.max_blocks} of these blocks makes a difference of "
        f"{plain(wanted, 10)} {units} under these conditions. Conditions aside, what "
        f"comes nearest is {words} {units}.",
        fields={"angle": "should ask for a difference that these blocks build"},
        more={"nearest_differences": heights},
    )


def _result(
    request: SineLowStackRequest, table: DifferenceTable, pair: Pair, height: float
) -> SineLowStackResult:
    units = request.units
    built = from_tenth_nm(pair.difference, units)
    as_set = angle_for_height(request.center_distance, built, offset_of(request), "angle")
    high, low = _stack(pair.high, units), _stack(pair.low, units)
    return SineLowStackResult(
        high=high,
        low=low,
        count=pair.count,
        height=height,
        height_as_set=built,
        deviation=built - height,
        angle_as_set=angle_from_radians(as_set),
        deviation_arcsec=(as_set - math.radians(request.angle)) * ARCSEC_PER_RADIAN,
        set_step=from_tenth_nm(table.step, units),
        proved=True,
        action=_action(high, low, units),
    )


def _stack(blocks: Sequence[int], units: Units) -> SineStack:
    return SineStack(
        blocks=[from_tenth_nm(size, units) for size in blocks],
        total=from_tenth_nm(sum(blocks), units),
    )


def _action(high: SineStack, low: SineStack, units: Units) -> str:
    words = f"Under the high roll {_words(high, units)}"
    if not low.blocks:
        return f"{words}; nothing under the low roll."
    return f"{words}; under the low roll {_words(low, units)}."


def _words(stack: SineStack, units: Units) -> str:
    if not stack.blocks:
        return "nothing"
    blocks = " + ".join(plain(size, 10) for size in stack.blocks)
    if len(stack.blocks) == 1:
        return f"{blocks} {units}"
    return f"{blocks} = {plain(stack.total, 10)} {units}"


def _advisories(request: SineLowStackRequest, result: SineLowStackResult) -> Iterator[Advisory]:
    angle_rad = math.radians(request.angle)
    per_step = arcsec_per_step(request.center_distance, angle_rad, request.units)
    yield from steep_angle(request.angle, per_step, STEEP_DEGREES)
    if max(result.high.total, result.low.total) > request.center_distance:
        yield from unusual_stack(
            max(result.high.total, result.low.total), request.center_distance, request.units
        )
    if request.tolerance_arcsec is None:
        yield from stack_far_off(result.deviation_arcsec)
    if request.angle and result.height_as_set == 0.0:
        yield from unusual_stack(result.height, request.center_distance, request.units, 0.0)
    if result.low.blocks and result.high.blocks:
        yield note(
            "two-stacks",
            "Both stacks stand on the same surface: a common height under both rolls changes "
            "nothing, the difference sets the angle.",
        )
