"""Stacks under both rolls, and corrections: models to maths and back."""

import math
from collections import Counter
from collections.abc import Iterator, Sequence

from halfangle_service.cautions import STEEP_DEGREES, steep_angle
from halfangle_service.errors import BeyondBound, Disagreement, Impossible, Unreachable
from halfangle_service.fields import (
    ARCSEC_PER_RADIAN,
    Units,
    angle_from_radians,
    from_tenth_nm,
    to_tenth_nm,
)
from halfangle_service.fields.advisories import Advisory, caution, note
from halfangle_service.fields.plates import arcsec_per_step, offset_of
from halfangle_service.fields.supply import read_supply
from halfangle_service.operation import Operation, Outcome, Source
from halfangle_service.topics.sine.models_stacks import (
    SineCorrectionRequest,
    SineCorrectionResult,
    SineLowStackRequest,
    SineLowStackResult,
    SineStack,
    SineSwap,
)
from halfangle_service.topics.sine.plate import SINE_RELATION, bulk
from halfangle_service.trade.sine.block_swap import fewest_swaps
from halfangle_service.trade.sine.geometry import (
    angle_for_height,
    arcsec_per_height,
    effective_center_distance,
    height_change,
    height_for_angle,
    require_reach,
)
from halfangle_service.trade.sine.low_stack import (
    MOST_ENTRIES,
    Conditions,
    DifferenceTable,
    Pair,
    difference_table,
    fewest_pair,
)
from halfangle_service.trade.stacks.search.stacking import StackTable, stack_table
from halfangle_service.trade.wording import plain

#: An error past this is rarely the plate's.
WRONG_BLOCK_ARCSEC = 60.0

_METHOD = Source(
    citation="Derived here: dynamic programming over signed sums considers every block under "
    "either roll or in the box; checked against an independent exact solver.",
    standing="derived",
)
_LARGEST = (
    f"500 blocks of which the largest {8} make at most {MOST_ENTRIES // 2} steps of the sizes' "
    "common step"
)


def low_stack(request: SineLowStackRequest) -> Outcome[SineLowStackResult]:
    """Stacks under both rolls, the fewest blocks from one set."""
    require_reach(request.angle, request.largest_angle, "angle")
    offset = offset_of(request)
    angle_rad = math.radians(request.angle)
    height = height_for_angle(request.center_distance, angle_rad, offset)
    supply = read_supply(request)
    table = difference_table(supply.box.sizes, request.max_blocks)
    pair = _choose(request, table, height)
    result = _low_stack_result(request, table, pair, height, offset)
    return Outcome(result, (*supply.advisories, *_low_stack_advisories(request, result)))


def _choose(request: SineLowStackRequest, table: DifferenceTable, height: float) -> Pair:
    """Give the pair that the request prefers; refuses where there is none."""
    target = height * to_tenth_nm(1.0, request.units)
    differences = table.candidates(target, _window(request, table.step, height))
    conditions = Conditions(
        to_tenth_nm(request.smallest_high_stack, request.units),
        to_tenth_nm(request.smallest_low_stack, request.units),
        request.low_stack == "always",
    )
    if request.low_stack in {"if needed", "never"}:
        single = _single(request, table, differences, conditions)
        if single is not None:
            return single
    if request.low_stack == "never":
        raise _unbuildable(request, table, target)
    pair, finished = fewest_pair(table, differences, conditions)
    if pair is None and not finished:
        raise BeyondBound(
            "The search for two stacks under these conditions reached its bound on the work.",
            fields={"smallest_low_stack": "should be lower, or max_blocks smaller"},
        )
    if pair is None:
        raise _unbuildable(request, table, target)
    return pair


def _window(
    request: SineLowStackRequest | SineCorrectionRequest, step: int, height: float
) -> float:
    """Half of the heights that will do, in 0.1 nm: half a step of the set, or the tolerance."""
    if request.tolerance_arcsec is None:
        return step / 2.0
    angle_rad = angle_for_height(request.center_distance, height, offset_of(request), "angle")
    per_unit = arcsec_per_height(request.center_distance, angle_rad)
    return request.tolerance_arcsec / per_unit * to_tenth_nm(1.0, request.units)


def _singles(request: SineLowStackRequest, table: DifferenceTable) -> StackTable:
    """Table of the single stacks that the request takes."""
    most = request.max_blocks if request.low_stack == "never" else request.single_blocks
    return stack_table(table.sizes, min(most, request.max_blocks))


def _single(
    request: SineLowStackRequest,
    table: DifferenceTable,
    differences: Sequence[int],
    conditions: Conditions,
) -> Pair | None:
    """Give the single stack of the fewest blocks for any of the differences, or None."""
    singles = _singles(request, table)
    stacks = [singles.stack(d) for d in differences if d >= max(conditions.smallest_high, 1)]
    found = [stack for stack in stacks if stack is not None]
    return Pair(min(found, key=len), ()) if found else None


def _unbuildable(
    request: SineLowStackRequest, table: DifferenceTable, target: float
) -> Unreachable:
    """The refusal for a difference that these blocks do not build, with the nearest they do."""
    units = request.units
    if request.low_stack == "never":
        what = "single stack"
        stacks = _singles(request, table).nearest(round(target))
        nearest = sorted({sum(stack) for stack in stacks if stack})
    else:
        what, nearest = "pair of stacks", table.nearest(target)
    heights = [from_tenth_nm(difference, units) for difference in nearest]
    words = " and ".join(f"{plain(value, 10)}" for value in heights)
    return Unreachable(
        f"No {what} of up to {request.max_blocks} of these blocks makes a difference of "
        f"{plain(from_tenth_nm(round(target), units), 10)} {units} under these conditions; the "
        f"nearest differences of a {what}, conditions aside, are {words} {units}.",
        fields={"angle": "should ask for a difference that these blocks build"},
        more={"nearest_differences": heights},
    )


def _low_stack_result(
    request: SineLowStackRequest,
    table: DifferenceTable,
    pair: Pair,
    height: float,
    offset: float,
) -> SineLowStackResult:
    units = request.units
    difference = from_tenth_nm(pair.difference, units)
    as_set = angle_for_height(request.center_distance, difference, offset, "angle")
    high, low = _stack(pair.high, units), _stack(pair.low, units)
    return SineLowStackResult(
        high=high,
        low=low,
        count=pair.count,
        height=height,
        difference=difference,
        deviation=difference - height,
        angle_as_set=angle_from_radians(as_set),
        angle_error_arcsec=(as_set - math.radians(request.angle)) * ARCSEC_PER_RADIAN,
        set_step=from_tenth_nm(table.step, units),
        proved=True,
        instruction=_instruction(high, low, units),
    )


def _stack(blocks: Sequence[int], units: Units) -> SineStack:
    return SineStack(
        blocks=[from_tenth_nm(size, units) for size in blocks],
        total=from_tenth_nm(sum(blocks), units),
    )


def _instruction(high: SineStack, low: SineStack, units: Units) -> str:
    words = f"Under the high roll {_words(high, units)}"
    if not low.blocks:
        return f"{words}; nothing under the low roll."
    return f"{words}; under the low roll {_words(low, units)}."


def _words(stack: SineStack, units: Units) -> str:
    if not stack.blocks:
        return "nothing"
    blocks = " + ".join(f"{plain(size, 10)}" for size in stack.blocks)
    return (
        f"{blocks} = {plain(stack.total, 10)} {units}"
        if len(stack.blocks) > 1
        else f"{blocks} {units}"
    )


def _low_stack_advisories(
    request: SineLowStackRequest, result: SineLowStackResult
) -> Iterator[Advisory]:
    angle_rad = math.radians(request.angle)
    per_step = arcsec_per_step(request.center_distance, angle_rad, request.units)
    yield from steep_angle(request.angle, per_step, STEEP_DEGREES)
    yield from bulk(max(result.high.total, result.low.total), request.center_distance)
    if result.low.blocks and result.high.blocks:
        yield note(
            "two-stacks",
            "Both stacks stand on the same surface: a common height under both rolls changes "
            "nothing, the difference sets the angle.",
        )


def correction(request: SineCorrectionRequest) -> Outcome[SineCorrectionResult]:
    """Change of stack from a measured angle error."""
    wanted = math.radians(request.angle)
    measured = _measured(request)
    offset = offset_of(request)
    change = height_change(request.center_distance, wanted, measured)
    now = _height_now(request, offset)
    result = SineCorrectionResult(
        error_arcsec=(measured - wanted) * ARCSEC_PER_RADIAN,
        height_change=change,
        height_now=now,
        new_height=now + change,
        effective_center_distance=effective_center_distance(now - offset, measured),
        swap=_swap(request, now + change),
    )
    return Outcome(result, tuple(_correction_advisories(result)))


def _measured(request: SineCorrectionRequest) -> float:
    """Measured angle in radians, from itself or from its error."""
    if (request.measured_angle is None) == (request.error_arcsec is None):
        both = "were both sent" if request.measured_angle is not None else "are both missing"
        raise Disagreement(
            f"`measured_angle` and `error_arcsec` {both}; one of them is needed.",
            fields={"measured_angle": "send either this or error_arcsec"},
        )
    if request.measured_angle is not None:
        return math.radians(request.measured_angle)
    degrees = request.angle + (request.error_arcsec or 0.0) / 3600.0
    if not 0.0 < degrees < 90.0:
        raise Impossible(
            f"The error would make the measured angle {plain(degrees)}°.",
            fields={"error_arcsec": "should leave the measured angle between 0° and 90°"},
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
    sizes = read_supply(request).box.sizes
    current = _blocks_now(request, sizes)
    table = difference_table(sizes, request.max_blocks)
    target = (new_height + request.low_stack) * to_tenth_nm(1.0, units)
    heights = [h for h in table.candidates(target, _window(request, table.step, new_height)) if h]
    swap = fewest_swaps(current, sizes, heights, request.max_blocks)
    if swap is None:
        raise Unreachable(
            f"No stack of up to {request.max_blocks} of these blocks is "
            f"{plain(from_tenth_nm(round(target), units), 10)} {units} high to half a step of the "
            "set.",
            fields={"max_blocks": "should be larger, or tolerance_arcsec wider"},
        )
    total = from_tenth_nm(sum(swap.stack), units)
    missed = total - request.low_stack - new_height
    per_unit = arcsec_per_height(request.center_distance, math.radians(request.angle))
    return SineSwap(
        remove=[from_tenth_nm(size, units) for size in swap.remove],
        add=[from_tenth_nm(size, units) for size in swap.add],
        stack=[from_tenth_nm(size, units) for size in swap.stack],
        total=total,
        remaining_error_arcsec=missed * per_unit,
    )


def _blocks_now(request: SineCorrectionRequest, sizes: Sequence[int]) -> tuple[int, ...]:
    """Blocks under the high roll in 0.1 nm; refuses one that the set does not hold (any more)."""
    left = Counter(sizes)
    blocks = tuple(to_tenth_nm(block, request.units) for block in request.blocks or ())
    for position, block in enumerate(blocks):
        if left[block] == 0:
            raise Disagreement(
                f"A block of {plain(from_tenth_nm(block, request.units), 10)} {request.units} "
                "stands in "
                "the stack, but the set has none, or no more of that size.",
                fields={f"blocks/{position}": "should be a block of the set, as often as it is in"},
            )
        left[block] -= 1
    return blocks


def _correction_advisories(result: SineCorrectionResult) -> Iterator[Advisory]:
    if abs(result.error_arcsec) > WRONG_BLOCK_ARCSEC:
        yield caution(
            "look-for-a-wrong-block",
            f"An error of {abs(result.error_arcsec):.0f}″ is rarely the plate's own: look for a "
            "wrong, forgotten or doubled block, or dirt, before correcting by blocks.",
        )
    yield note(
        "correct-the-cause",
        "A correction by blocks holds for this angle only; where the center distance is the cause "
        "another angle needs another change.",
    )


LOW_STACK = Operation(
    topic="sine",
    verb="low-stack",
    title="Stacks under both rolls",
    summary="The blocks for an angle from one set: a single stack where it can be built, else "
    "stacks under both rolls, with the fewest blocks, proved.",
    request=SineLowStackRequest,
    result=SineLowStackResult,
    calculate=low_stack,
    relations=(
        "Σ high − Σ low = center_distance × sin(angle) + offset, to the tolerance",
        "offset = base_step − (high_roll_diameter − low_roll_diameter) / 2",
    ),
    sources=(_METHOD, SINE_RELATION),
    example={"units": "in", "center_distance": 5, "angle": 0.5, "set": "inch-81"},
    largest_request=_LARGEST,
    heavy=True,
)
CORRECTION = Operation(
    topic="sine",
    verb="correction",
    title="Correction of a measured angle",
    summary="From a measured angle error to the change of the stack, and which blocks to swap, as "
    "few as can be.",
    request=SineCorrectionRequest,
    result=SineCorrectionResult,
    calculate=correction,
    relations=(
        "Δh = center_distance × (sin(angle) − sin(measured_angle))",
        "effective center distance = (height − offset) / sin(measured_angle)",
    ),
    sources=(_METHOD, SINE_RELATION),
    example={
        "units": "in",
        "center_distance": 5,
        "angle": 30,
        "error_arcsec": 10,
        "blocks": [2.0, 0.5],
        "set": "inch-81",
    },
    largest_request=_LARGEST,
    heavy=True,
)
