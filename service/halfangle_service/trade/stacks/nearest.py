"""Which measured stack to wring: the nearest, or the fewest blocks within a tolerance. 0.1 nm."""

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import Literal

from halfangle_service.trade.stacks.choosing import Choice
from halfangle_service.trade.stacks.search.measured import MeasuredBlocks, measured_blocks
from halfangle_service.trade.stacks.search.work import Work
from halfangle_service.trade.stacks.supply import Box, Piece

#: Most stacks looked at for the nearest below and above, and for the blocks that would help.
_MOST_AROUND = 20_000
_MOST_HELPING = 50_000
#: Which side of a height a stack comes out on; spot on counts as below.
Side = Literal["below", "above"]
#: A stack found: its error, and its kinds of blocks.
Found = tuple[int, tuple[int, ...]]


def choose_measured(
    box: Box, height: int, tolerance: int | None, max_blocks: int, wanted: int, work: Work
) -> Choice:
    """Give the `wanted` stacks whose actual height is nearest; of equals the one of fewer blocks.

    With a tolerance, the fewest blocks that come within it, nearest first; no stack where none do.
    """
    blocks = _measured(box)
    most = min(max_blocks, len(box.pieces))
    exact = min(most, blocks.most_exact)
    if tolerance is None and wanted == 1 and height >= blocks.highest(most):
        # Nothing is nearer than the highest stack of all.
        highest = sorted(range(len(box.pieces)), key=lambda p: -box.pieces[p].actual)[:most]
        return Choice((tuple(sorted(highest)),), True, True, most)
    if tolerance is None:
        found = _nearest_first(blocks, height, exact, wanted, work)
    else:
        found = _fewest_first(blocks, height, tolerance, exact, wanted, work)
    stacks = tuple(positions_of_kinds(box, kinds) for _, kinds in found)
    done = not work.exhausted
    choice = Choice(stacks, done, done, exact)
    if exact == most:
        return choice
    # Stacks of more blocks were not looked at: they come after those of fewer within a tolerance,
    # and after those that are spot on.
    sure = [tolerance is not None or error == 0 for error, _ in found]
    return replace(
        choice,
        complete=done and len(found) == wanted and all(sure),
        fewest_proved=done and any(sure[:1]),
    )


def _nearest_first(
    blocks: MeasuredBlocks, height: int, most: int, wanted: int, work: Work
) -> list[Found]:
    """Give the nearest stacks, of those as near the ones of fewer blocks.

    The first few of up to one block, of up to two and so on: where very many are as near, those of
    few blocks are found without going through all of them.
    """
    found = {
        kinds: error
        for count in range(1, most + 1)
        for error, kinds in _first(blocks, height, count, wanted, work)
    }
    ordered = sorted((abs(error), len(kinds), error, kinds) for kinds, error in found.items())
    return [(error, kinds) for _, _, error, kinds in ordered[:wanted]]


def _first(
    blocks: MeasuredBlocks, height: int, count: int, wanted: int, work: Work
) -> Iterator[Found]:
    """Give the first nearest stacks of up to so many blocks."""
    left = wanted
    for error, kinds in blocks.nearest(height, count, work):
        yield error, kinds
        left -= 1
        if left == 0:
            return


def _fewest_first(
    blocks: MeasuredBlocks, height: int, tolerance: int, most: int, wanted: int, work: Work
) -> list[Found]:
    """Give stacks within the tolerance, those of fewer blocks first, then the nearest."""
    found: list[Found] = []
    for count in range(1, most + 1):
        if height - tolerance > blocks.highest(count):
            continue
        for error, kinds in blocks.nearest(height, count, work, tolerance):
            if len(found) == wanted or work.exhausted:
                break
            if len(kinds) == count:
                found.append((error, kinds))
    return found


def nearest_around(box: Box, height: int, max_blocks: int) -> dict[Side, tuple[int, ...]]:
    """Give the stacks whose actual height is nearest `below` and `above`, as positions in the box.

    One is missing where there is none, or none was found within the bound on the work.
    """
    blocks = _measured(box)
    found: dict[Side, tuple[int, ...]] = {}
    most = min(max_blocks, len(box.pieces), blocks.most_exact)
    for error, kinds in blocks.nearest(height, most, Work(_MOST_AROUND)):
        found.setdefault("below" if error <= 0 else "above", positions_of_kinds(box, kinds))
        if len(found) == 2:
            break
    return found


def completing_pieces(
    box: Box, height: int, tolerance: int, max_blocks: int, candidates: Sequence[Piece]
) -> list[tuple[Piece, tuple[int, ...]]]:
    """Give blocks with which an actual height is reached, each with the positions beside it.

    Fewest blocks first, then the nearest, then the candidates' order.
    """
    blocks = _measured(box)
    most = min(max_blocks - 1, len(box.pieces), blocks.most_exact)
    highest = blocks.highest(most)
    work = Work(_MOST_HELPING)
    found: list[tuple[int, int, Piece, tuple[int, ...]]] = []
    for candidate in candidates:
        rest = height - candidate.actual
        if abs(rest) <= tolerance:
            found.append((0, abs(rest), candidate, ()))
        elif 0 < rest <= highest + tolerance and most > 0:
            # Any stack at all first: most candidates help in no way.
            some = next(blocks.nearest(rest, most, work, tolerance), None)
            beside = some and _fewest_first(blocks, rest, tolerance, most, 1, work)
            if beside:
                error, kinds = beside[0]
                positions = positions_of_kinds(box, kinds)
                found.append((len(positions), abs(error), candidate, positions))
    found.sort(key=lambda entry: entry[:2])
    return [(candidate, positions) for _, _, candidate, positions in found]


def positions_of_kinds(box: Box, kinds: Sequence[int]) -> tuple[int, ...]:
    """Give positions in the box for kinds in ascending order, each used once."""
    positions: list[int] = []
    for kind in kinds:
        first = box.kinds.index(kind)
        positions.append(max(first, positions[-1] + 1) if positions else first)
    return tuple(positions)


def _measured(box: Box) -> MeasuredBlocks:
    """The lists of a box by its kinds of blocks."""
    counts = Counter(box.kinds)
    lengths = {kind: p.actual for kind, p in zip(box.kinds, box.pieces, strict=True)}
    return measured_blocks(tuple(lengths.values()), tuple(counts.values()))
