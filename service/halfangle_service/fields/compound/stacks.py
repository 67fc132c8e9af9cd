"""The stacks of both plates of a compound sine plate from one set of blocks."""

from collections.abc import Callable, Sequence

from pydantic import Field

from halfangle_service.errors import BeyondBound, Unreachable
from halfangle_service.fields import (
    ArcsecOut,
    CountOut,
    LengthOut,
    ResultModel,
    Units,
    from_tenth_nm,
    to_tenth_nm,
)
from halfangle_service.fields.compound.hinges import WHICH
from halfangle_service.trade.sine.compound_stacks import (
    MOST_STEPS_OFF,
    BothStacks,
    both_stacks,
    can_be_built,
)
from halfangle_service.trade.sine.low_stack import (
    Conditions,
    DifferenceTable,
    Pair,
    difference_table,
    fewest_pair,
)
from halfangle_service.trade.stacks.search.work import Left
from halfangle_service.trade.wording import figure, stack

#: Most blocks that a request may allow in a stack.
MOST_BLOCKS = 8


class SineCompoundStacks(ResultModel):
    """The stacks of both plates from one set: they stand at once, so no block is in both."""

    base_blocks: list[LengthOut] = Field(
        description="Nominal sizes of the blocks under the base plate's roll, largest first; empty "
        "where it stays at zero."
    )
    upper_blocks: list[LengthOut] = Field(description="The same under the upper plate's roll.")
    base_height: LengthOut = Field(description="Height of the base plate's stack.")
    upper_height: LengthOut = Field(description="Height of the upper plate's stack.")
    count: CountOut = Field(description="Blocks in both.")
    proved: bool = Field(
        description="No two stacks of these heights that stand at once have fewer blocks."
    )
    as_built_arcsec: ArcsecOut = Field(
        description="Angle between the surface wanted and the one that these stacks give."
    )


def require_stacks(
    sizes: Sequence[int],
    heights: tuple[float, float],
    max_blocks: int,
    units: Units,
    left: Left | None = None,
    require: Callable[[DifferenceTable], None] = lambda _: None,
) -> BothStacks:
    """The stacks of both plates for these heights in `units`, sizes in 0.1 nm.

    Refuses where there are none, and says what would do it. `left` is that of `both_stacks`;
    `require` raises BeyondBound for a table that would take too much work.
    """
    unit = to_tenth_nm(1.0, units)
    wanted = [height * unit for height in heights]
    found = both_stacks(sizes, wanted, max_blocks, left)
    if found is not None:
        return found
    for place, height in enumerate(wanted):
        if height and not can_be_built(sizes, height, MOST_BLOCKS):
            raise _no_single_stack(sizes, wanted, place, max_blocks, units, require)
    asked = f"{figure(heights[0], units)} and {figure(heights[1], units)}"
    larger = None
    if max_blocks < MOST_BLOCKS:
        larger = both_stacks(sizes, wanted, MOST_BLOCKS, left)
    if larger is not None:
        most = max(map(len, larger.stacks))
        raise Unreachable(
            f"No two stacks of up to {max_blocks} of these blocks stand at once within "
            f"{MOST_STEPS_OFF} steps of {asked}; with {most} blocks in one of them they do.",
            fields={"max_blocks": f"should be {most}"},
            more={"blocks_needed": most},
        )
    raise Unreachable(
        f"No two stacks of up to {MOST_BLOCKS} of these blocks stand at once within "
        f"{MOST_STEPS_OFF} steps of {asked}, though each alone can be built: take the second one "
        "from another set, or another set for both.",
        fields={"max_blocks": "does not help; the blocks should be others"},
    )


def _no_single_stack(
    sizes: Sequence[int],
    wanted: Sequence[float],
    place: int,
    max_blocks: int,
    units: Units,
    require: Callable[[DifferenceTable], None],
) -> Unreachable:
    """The refusal where the set builds no single stack for one plate, however many blocks."""
    which, height = WHICH[place], from_tenth_nm(round(wanted[place]), units)
    pair = _pair_beside_the_other(sizes, wanted, place, max_blocks, require)
    problem = (
        f"These blocks build no single stack within {MOST_STEPS_OFF} steps of the {which} plate's "
        f"{figure(height, units)}, however many they are"
    )
    if pair is None:
        return Unreachable(
            f"{problem}.", fields={"max_blocks": "does not help; the blocks should be others"}
        )
    high, low = (
        tuple(from_tenth_nm(size, units) for size in blocks) for blocks in (pair.high, pair.low)
    )
    return Unreachable(
        f"{problem}. Where both rolls of that plate can stand on blocks, {stack(high, units)} "
        f"under the one to raise and {stack(low, units)} under the other set it by their "
        "difference; sine.low-stack gives such stacks. Where it is hinged there, a plate with a "
        f"step ({which}_step) does it.",
        fields={"max_blocks": "does not help; see stacks_under_both_rolls"},
        more={
            "stacks_under_both_rolls": {
                "plate": which,
                "high_blocks": list(high),
                "low_blocks": list(low),
            }
        },
    )


def _pair_beside_the_other(
    sizes: Sequence[int],
    wanted: Sequence[float],
    place: int,
    max_blocks: int,
    require: Callable[[DifferenceTable], None],
) -> Pair | None:
    """Stacks under both rolls of one plate, of the blocks that the other plate's stack leaves."""
    others = [0.0 if other == place else height for other, height in enumerate(wanted)]
    beside = both_stacks(sizes, others, max_blocks)
    left = list(sizes)
    for block in (size for blocks in beside.stacks for size in blocks) if beside else ():
        left.remove(block)
    if not left:
        return None
    try:
        table = difference_table(left, MOST_BLOCKS)
        require(table)
        differences = [d for d in table.candidates(wanted[place]) if d > 0]
        return fewest_pair(table, differences, Conditions(low_needed=True))[0]
    except BeyondBound:  # too fine a set to search: the refusal stands without this help
        return None
