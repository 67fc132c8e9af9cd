"""A height as the difference of two stacks, one block under the low roll. Integers of 0.1 nm.

What a refusal names where one stack does not build a height: not the fewest blocks of all, which
`trade.sine.low_stack` finds.
"""

from collections import Counter
from typing import NamedTuple

from halfangle_service.trade.stacks.search.stacking import StackTable


class TwoStacks(NamedTuple):
    """Nominal sizes under the high roll, largest first, and the one block under the low roll."""

    high: tuple[int, ...]
    low: int


def by_difference(table: StackTable, difference: int) -> TwoStacks | None:
    """Give two stacks of a table's blocks with this difference, the fewest blocks under the high.

    Of as few blocks the smallest one goes under the low roll. None where no single block there
    does it.
    """
    there = Counter(table.sizes)
    found: TwoStacks | None = None
    for low in sorted(there):
        if found is not None and table.count(difference + low) >= len(found.high):
            continue
        high = table.stack(difference + low)
        if high is not None and Counter(high)[low] < there[low]:
            found = TwoStacks(high, low)
    return found
