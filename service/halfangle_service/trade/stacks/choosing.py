"""Which stack to wring: the fewest blocks, then what the shop prefers, and the next best ones.

Integers of 0.1 nm. Stacks are ordered by count, then by how near they come, then by preference.
"""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import groupby, islice
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from halfangle_service.errors import BeyondBound
from halfangle_service.trade.stacks.search.layers import Layers, Positions
from halfangle_service.trade.stacks.search.stacking import StackTable
from halfangle_service.trade.stacks.search.work import Work
from halfangle_service.trade.stacks.supply import Box
from halfangle_service.trade.wording import plain

Preference = Literal["large-blocks", "fewer-small-blocks", "least-wear", "least-uncertainty"]

#: Most heights that a tolerance may span.
MOST_HEIGHTS = 20_000


@dataclass(frozen=True, slots=True)
class Choice:
    """Stacks in order of preference, as positions in the box.

    `complete`: every stack that comes before the last one given was considered, so that the order
    is proved. `fewest_proved`: the first is the best by count, or by nearness, in any case.
    `searched`: the search went up to so many blocks.
    """

    stacks: tuple[tuple[int, ...], ...]
    complete: bool
    fewest_proved: bool = True
    searched: int = 0


def choose(
    box: Box,
    height: int,
    tolerance: int,
    max_blocks: int,
    preference: Preference,
    wanted: int,
    work: Work,
) -> Choice:
    """Give the `wanted` best stacks of nominal blocks within a tolerance of a height."""
    if wanted == 1 and tolerance == 0 and preference == "large-blocks":
        return first_only(box.table(max_blocks), height)
    layers = box.layers(max_blocks)
    heights = _heights(layers, height, tolerance)
    stacks = tuple(islice(_ordered(box, layers, height, heights, preference, work), wanted))
    if not stacks and heights:  # the work ended within the first layer: its stacks still exist
        fewest = min(heights, key=lambda entry: entry[1])
        return replace(first_only(layers.table, fewest[0]), complete=False)
    return Choice(stacks, not work.exhausted)


def first_only(table: StackTable, height: int) -> Choice:
    """Give the one stack that the table of a box names for a height."""
    sizes = table.stack(height)
    return Choice((table.positions(sizes),) if sizes else (), True)


def _heights(layers: Layers, height: int, tolerance: int) -> list[tuple[int, int]]:
    """Give the heights within a tolerance and their fewest blocks, nearest first.

    Raises BeyondBound where the tolerance spans too many heights.
    """
    table = layers.table
    if tolerance // table.step > MOST_HEIGHTS // 2:
        raise BeyondBound(
            f"The tolerance spans {2 * tolerance // table.step} steps of these blocks; at most "
            f"{MOST_HEIGHTS} are taken.",
            fields={
                "tolerance": f"should be at most {MOST_HEIGHTS // 2} steps of the blocks, "
                f"{plain(MOST_HEIGHTS // 2 * table.step / 1e7)} mm"
            },
        )
    found = list(table.within(height - tolerance, height + tolerance))
    return sorted(found, key=lambda entry: (abs(entry[0] - height), entry[0]))


def _ordered(
    box: Box,
    layers: Layers,
    height: int,
    heights: Sequence[tuple[int, int]],
    preference: Preference,
    work: Work,
) -> Iterator[tuple[int, ...]]:
    """Give stacks by count, then nearness, then preference, until the work is exhausted."""
    key = _KEYS[preference]
    for count in range(1, layers.table.max_blocks + 1):
        for _, group in groupby(heights, lambda entry: abs(entry[0] - height)):
            # As near below as above: preference decides.
            reached = [reach for reach, fewest in group if fewest <= count]
            parts = list(layers.stacks(reached, count, work))
            if parts:
                rows = np.concatenate(parts)
                for row in key(box, rows):  # row by row: most often the first few are enough
                    yield tuple(rows[row].tolist())
            if work.exhausted:
                return


def _large_first(box: Box, rows: Positions) -> NDArray[np.intp]:  # noqa: ARG001
    """Order with the largest block as large as can be, then the next largest, and so on."""
    return np.lexsort(rows.T[::-1])


def _thick_first(box: Box, rows: Positions) -> NDArray[np.intp]:
    """Order with the thinnest block as thick as can be, then the next thinnest, and so on."""
    return np.lexsort(-np.array(box.sizes)[rows].T)


def _least_wrung(box: Box, rows: Positions) -> NDArray[np.intp]:
    """Order by how often the blocks were wrung, all together."""
    wrung = np.array([piece.wrung for piece in box.pieces], np.int64)
    return np.argsort(wrung[rows].sum(axis=1), kind="stable")


def _least_uncertain(box: Box, rows: Positions) -> NDArray[np.intp]:
    """Order by the blocks' combined standard uncertainty."""
    variance = np.array([piece.standard_uncertainty**2 for piece in box.pieces])
    # Rounded, so that sums of the same terms in another order count as equal.
    return np.argsort(np.round(variance[rows].sum(axis=1), 6), kind="stable")


_KEYS: dict[Preference, Callable[[Box, Positions], NDArray[np.intp]]] = {
    "large-blocks": _large_first,
    "fewer-small-blocks": _thick_first,
    "least-wear": _least_wrung,
    "least-uncertainty": _least_uncertain,
}


def completing_sizes(
    table: StackTable, height: int, tolerance: int, max_blocks: int, candidates: Sequence[int]
) -> list[tuple[int, tuple[int, ...]]]:
    """Give blocks that would make a height possible, each with the stack from the box beside it.

    Fewest blocks first, at most `max_blocks` in all; then the nearest, then the candidates' order.
    """
    found: list[tuple[int, int, int, tuple[int, ...]]] = []
    for candidate in dict.fromkeys(candidates):
        rest = height - candidate
        if abs(rest) <= tolerance:
            found.append((0, abs(rest), candidate, ()))
            continue
        best = table.best_within(rest, tolerance)
        if best is not None and best[0] < max_blocks:
            count, reach = best
            found.append((count, abs(reach - rest), candidate, table.stack(reach) or ()))
    found.sort(key=lambda entry: entry[:2])
    return [(candidate, beside) for _, _, candidate, beside in found]
