"""One stack asked for, wear blocks at its ends: which to wring, what comes near. 0.1 nm.

Nominal heights are looked up in a table of the box (`choosing`); actual ones, and nominal ones of
sizes that share too fine a step for a table, are joined by height (`nearest`).
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import combinations
from typing import Literal

from halfangle_service.errors import Unreachable
from halfangle_service.trade.stacks.choosing import Choice, Preference, choose, completing_sizes
from halfangle_service.trade.stacks.nearest import (
    Side,
    choose_measured,
    completing_pieces,
    nearest_around,
)
from halfangle_service.trade.stacks.search.layers import MOST_CELLS
from halfangle_service.trade.stacks.search.measured import MOST_CANDIDATES
from halfangle_service.trade.stacks.search.stacking import StackTable
from halfangle_service.trade.stacks.search.work import Work
from halfangle_service.trade.stacks.supply import Box, Piece
from halfangle_service.trade.units import Units, from_tenth_nm
from halfangle_service.trade.wording import plain

Aim = Literal["nominal", "actual"]

#: Most lengths of wear blocks of which every choice is tried where their deviations count.
MOST_WEAR = 4


@dataclass(frozen=True, slots=True)
class Task:
    """A stack asked for: what the blocks between the wear blocks are to make up.

    `wear` are the wear blocks on its ends, `any_wear` all those that could be. `most` blocks are
    allowed in it, wear blocks included. Without a `tolerance` the height itself is meant by nominal
    sizes, the nearest by actual ones.
    """

    box: Box
    any_wear: tuple[Piece, ...]
    wear: tuple[Piece, ...]
    height: int
    tolerance: int | None
    most: int
    aim: Aim
    prefer: Preference

    @property
    def wear_height(self) -> int:
        """Height of the wear blocks, actual or nominal as aimed at."""
        if not self.wear:
            return 0
        return sum(p.actual if self.aim == "actual" else p.size for p in self.wear)

    @property
    def inner(self) -> int:
        """Height that the other blocks are to make up."""
        return self.height - self.wear_height

    @property
    def max_blocks(self) -> int:
        """Most other blocks."""
        return self.most - len(self.wear)

    @property
    def highest(self) -> int:
        """Height of the highest stack, the wear blocks included."""
        return sum(map(self._length, self.highest_pieces)) + self.wear_height

    @property
    def highest_pieces(self) -> tuple[Piece, ...]:
        """The other blocks of the highest stack, the longest first."""
        pieces = self.joined.pieces if self.measured else self.box.pieces
        return tuple(reversed(sorted(pieces, key=self._length)[-self.max_blocks :]))

    def _length(self, piece: Piece) -> int:
        return piece.actual if self.measured else piece.size

    @property
    def measured(self) -> bool:
        """True where stacks are joined by height: by the actual one, or where no table can be.

        Where the sizes share too fine a step for a table, nominal sizes are joined as measured ones
        are.
        """
        return self.aim == "actual" or not self.table.bounded

    @property
    def joined(self) -> Box:
        """The blocks whose stacks are joined by height."""
        if self.aim == "actual":
            return self.box
        return Box(tuple(replace(piece, deviation=0) for piece in self.box.pieces))

    @property
    def table(self) -> StackTable:
        """Table of the other blocks."""
        return self.box.table(self.max_blocks)

    @property
    def wear_left_untried(self) -> bool:
        """True where not every choice of wear blocks is tried."""
        return self.aim == "actual" and len(_kinds_of_wear(self)) > MOST_WEAR


@dataclass(frozen=True, slots=True)
class Stacks:
    """Stacks in order, each with its wear blocks, and how sure the order is."""

    stacks: tuple[tuple[tuple[Piece, ...], tuple[Piece, ...]], ...]
    choice: Choice


def require_room(most: int, ends: int) -> None:
    """Refuse a stack of so many blocks that its wear blocks leave no other; raises Unreachable."""
    if most <= ends:
        raise Unreachable(
            "The wear blocks leave no block for the stack.",
            fields={"max_blocks": f"should be more than {ends}"},
        )


def nothing_left(wear: int, asked: float, units: Units) -> str:
    """Say that wear blocks (0.1 nm) are as high as the height asked for, in `units`, or higher."""
    return (
        f"The wear blocks alone are {plain(from_tenth_nm(wear, units), 10)} {units} high; "
        f"{plain(asked, 10)} {units} leaves nothing for the stack."
    )


def best_stacks(task: Task, wanted: int) -> Stacks:
    """Give the `wanted` best stacks, fewer where there are not as many."""
    if task.measured:
        return _best_joined(task, wanted)
    choice = Choice((), True)
    if task.inner > 0:
        tolerance, work = task.tolerance or 0, Work(MOST_CELLS)
        choice = choose(task.box, task.inner, tolerance, task.max_blocks, task.prefer, wanted, work)
    return Stacks(tuple((task.box.pick(stack), task.wear) for stack in choice.stacks), choice)


def _best_joined(task: Task, wanted: int) -> Stacks:
    """Choose by actual height: with every choice of wear blocks, since they differ as well."""
    work = Work(MOST_CANDIDATES)
    tolerance = task.tolerance if task.aim == "actual" else task.tolerance or 0
    found: list[tuple[tuple[int, int], Task, tuple[Piece, ...]]] = []
    choices = []
    for way in _ways_of_wear(task):
        if way.inner <= 0:
            continue
        box = way.joined
        choice = choose_measured(box, way.inner, tolerance, way.max_blocks, wanted, work)
        choices.append(choice)
        for positions in choice.stacks:
            off = abs(sum(piece.actual for piece in box.pick(positions)) - way.inner)
            order = (off, len(positions)) if tolerance is None else (len(positions), off)
            found.append((order, way, way.box.pick(positions)))
    found.sort(key=lambda entry: entry[0])
    # A table-less nominal stack is the first found of those as few and as near: none is preferred.
    preferred = task.aim == "actual"
    sure = Choice(
        (),
        complete=preferred and all(choice.complete for choice in choices),
        fewest_proved=all(choice.fewest_proved for choice in choices)
        and not task.wear_left_untried,
        searched=_searched(choices),
    )
    return Stacks(tuple((pieces, way.wear) for _, way, pieces in found[:wanted]), sure)


def _searched(choices: Sequence[Choice]) -> int:
    """Stacks of up to so many blocks were searched in each case; 0 where there was none."""
    return min((choice.searched for choice in choices), default=0)


def _ways_of_wear(task: Task) -> Iterator[Task]:
    """Give the task with each choice of wear blocks that makes another height.

    Of very many kinds of wear blocks the first few are looked at.
    """
    if task.aim == "nominal" or not task.wear:
        yield task
        return
    seen = set()
    tried = [piece for kind in _kinds_of_wear(task)[:MOST_WEAR] for piece in kind]
    for wear in combinations(tried, len(task.wear)):
        way = replace(task, wear=wear)
        if way.wear_height not in seen:
            seen.add(way.wear_height)
            yield way


def _kinds_of_wear(task: Task) -> list[list[Piece]]:
    """The wear blocks by their actual length, of each as many as a stack may take."""
    kinds: dict[int, list[Piece]] = {}
    for piece in task.any_wear:
        kinds.setdefault(piece.actual, []).append(piece)
    return [kind[: len(task.wear)] for kind in kinds.values()]


def nearest_stacks(task: Task) -> dict[Side, tuple[Piece, ...]]:
    """Give the nearest stacks below and above, wear blocks last; one is missing where none is."""
    if task.height > task.highest:
        return {"below": (*task.highest_pieces, *task.wear)}
    if task.measured:
        return _nearest_joined(task)
    below, above = task.table.nearest(task.inner)
    sides: dict[Side, tuple[int, ...] | None] = {"below": below, "above": above}
    return {
        side: (*task.box.pick(task.table.positions(sizes)), *task.wear)
        for side, sizes in sides.items()
        if sizes
    }


def _nearest_joined(task: Task) -> dict[Side, tuple[Piece, ...]]:
    """The nearest stacks by height with any choice of wear blocks, these among the pieces."""
    found: dict[Side, tuple[int, tuple[Piece, ...]]] = {}
    for way in _ways_of_wear(task):
        for side, positions in nearest_around(way.joined, way.inner, way.max_blocks).items():
            pieces = (*way.joined.pick(positions), *way.wear)
            off = abs(sum(piece.actual for piece in pieces) - task.height)
            if side not in found or off < found[side][0]:
                found[side] = off, pieces
    sides: tuple[Side, ...] = ("below", "above")
    return {side: found[side][1] for side in sides if side in found}


def completing_blocks(
    task: Task, sizes: Sequence[int], known: Mapping[int, Piece]
) -> list[tuple[int, tuple[int, ...]]]:
    """Give single blocks of these sizes that would make the height possible, fewest blocks first.

    Each with the sizes of the blocks from the box beside it. `known` are blocks of which the actual
    size is known; the others are taken at their nominal size.
    """
    tolerance, most = task.tolerance or 0, task.max_blocks
    if not task.measured:
        return completing_sizes(task.table, task.inner, tolerance, most, sizes)
    actual = task.aim == "actual"
    pieces = [known.get(size, Piece(size)) if actual else Piece(size) for size in sizes]
    ways = completing_pieces(task.joined, task.inner, tolerance, most, pieces)
    return [(piece.size, tuple(p.size for p in task.box.pick(beside))) for piece, beside in ways]
