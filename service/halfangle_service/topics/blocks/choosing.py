"""Which stack to wring: the fewest blocks, then what the shop prefers, and the next best ones.

Integers of 0.1 nm. Stacks are ordered by count, then by how near they come, then by preference.
"""

from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import islice
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from halfangle_service.errors import BeyondBound
from halfangle_service.topics.blocks.layers import Layers, Positions
from halfangle_service.topics.blocks.measured import (
    MOST_CANDIDATES,
    MeasuredBlocks,
    measured_blocks,
)
from halfangle_service.topics.blocks.stacking import StackTable, stack_table
from halfangle_service.topics.blocks.supply import Box
from halfangle_service.topics.blocks.work import Work

Preference = Literal["large blocks", "fewer small blocks", "least wear", "least uncertainty"]

#: Most stacks looked at for the nearest below and above, where a height is refused.
_MOST_AROUND = 20_000
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
    if wanted == 1 and tolerance == 0 and preference == "large blocks":
        return first_only(stack_table(box.sizes, max_blocks), height)
    layers = box.layers(max_blocks)
    heights = _heights(layers, height, tolerance)
    stacks = tuple(islice(_ordered(box, layers, heights, preference, work), wanted))
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
            fields={"tolerance": f"should be at most {MOST_HEIGHTS // 2} steps of the blocks"},
        )
    found = list(table.within(height - tolerance, height + tolerance))
    return sorted(found, key=lambda entry: (abs(entry[0] - height), entry[0]))


def _ordered(
    box: Box,
    layers: Layers,
    heights: Sequence[tuple[int, int]],
    preference: Preference,
    work: Work,
) -> Iterator[tuple[int, ...]]:
    """Give stacks by count, then nearness, then preference, until the work is exhausted."""
    key = _KEYS[preference]
    for count in range(1, layers.table.max_blocks + 1):
        for height, fewest in heights:
            if fewest > count:
                continue
            parts = list(layers.stacks(height, count, work))
            if parts:
                rows = np.concatenate(parts)
                for row in key(box, rows):  # row by row: most often the first few are enough
                    yield tuple(rows[row].tolist())
            if work.exhausted:
                return


def _as_listed(box: Box, rows: Positions) -> NDArray[np.intp]:  # noqa: ARG001
    """Order with the largest blocks first, as the layers list them."""
    return np.arange(len(rows))


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
    "large blocks": _as_listed,
    "fewer small blocks": _thick_first,
    "least wear": _least_wrung,
    "least uncertainty": _least_uncertain,
}


def choose_measured(
    box: Box,
    height: int,
    tolerance: int | None,
    max_blocks: int,
    wanted: int,
) -> Choice:
    """Give the `wanted` stacks whose actual height is nearest; of equals the one of fewer blocks.

    With a tolerance, the fewest blocks that come within it, nearest first; no stack where none do.
    """
    blocks = _measured(box)
    most = min(max_blocks, len(box.pieces))
    exact = min(most, blocks.most_exact)
    if tolerance is None:
        choice = _nearest_measured(box, height, None, exact, wanted)
        return choice if exact == most else _judged(box, height, choice)
    for count in range(1, exact + 1):
        choice = _nearest_measured(box, height, tolerance, count, wanted)
        if choice.stacks or not choice.complete:
            return choice
    return Choice((), exact == most, exact == most, exact)


def _judged(box: Box, height: int, choice: Choice) -> Choice:
    """Judge a choice made among fewer blocks than are allowed: the nearest only if spot on."""
    if not choice.stacks:
        return choice
    spot_on = sum(piece.actual for piece in box.pick(choice.stacks[0])) == height
    only = len(choice.stacks) == 1
    return replace(choice, complete=choice.complete and spot_on and only, fewest_proved=spot_on)


def _nearest_measured(
    box: Box, height: int, tolerance: int | None, most_blocks: int, wanted: int
) -> Choice:
    """Give the nearest stacks of up to so many blocks, within the tolerance if there is one."""
    work = Work(MOST_CANDIDATES)
    found: list[tuple[int, int, int, tuple[int, ...]]] = []
    for error, stack in _measured(box).nearest(height, most_blocks, work):
        if tolerance is not None and abs(error) > tolerance:
            break
        if len(found) >= wanted and abs(error) > found[-1][0]:
            break
        found.append((abs(error), len(stack), error, stack))
    found.sort()
    done = not work.exhausted
    stacks = tuple(_positions_of_kinds(box, entry[3]) for entry in found[:wanted])
    return Choice(stacks, done, done, most_blocks)


def _measured(box: Box) -> MeasuredBlocks:
    """The lists of a box by its kinds of blocks."""
    counts = Counter(box.kinds)
    lengths = {kind: p.actual for kind, p in zip(box.kinds, box.pieces, strict=True)}
    return measured_blocks(tuple(lengths.values()), tuple(counts.values()))


def _positions_of_kinds(box: Box, kinds: Sequence[int]) -> tuple[int, ...]:
    """Give positions in the box for kinds in ascending order, each used once."""
    positions: list[int] = []
    for kind in kinds:
        first = box.kinds.index(kind)
        positions.append(max(first, positions[-1] + 1) if positions else first)
    return tuple(positions)


def completing_sizes(
    layers: Layers, height: int, candidates: Sequence[int]
) -> list[tuple[int, tuple[int, ...]]]:
    """Give blocks that would make a height possible, each with the stack from the box beside it.

    Of the candidates those are given with which the fewest blocks do it, in all at most the
    table's own limit; fewest first, then the candidates' order.
    """
    table = layers.table
    found = []
    for candidate in dict.fromkeys(candidates):
        rest = height - candidate
        if rest == 0:
            found.append((0, candidate))
        elif rest > 0 and table.count(rest) <= table.max_blocks - 1:
            found.append((table.count(rest), candidate))
    found.sort(key=lambda entry: entry[0])
    return [(candidate, table.stack(height - candidate) or ()) for _, candidate in found]


def nearest_around(box: Box, height: int, max_blocks: int) -> dict[str, tuple[int, ...]]:
    """Give the stacks whose actual height is nearest `below` and `above`, as positions in the box.

    One is missing where there is none, or none was found within the bound on the work.
    """
    blocks = _measured(box)
    found: dict[str, tuple[int, ...]] = {}
    most = min(max_blocks, len(box.pieces), blocks.most_exact)
    for error, stack in blocks.nearest(height, most, Work(_MOST_AROUND)):
        found.setdefault("below" if error <= 0 else "above", _positions_of_kinds(box, stack))
        if len(found) == 2:
            break
    return found
