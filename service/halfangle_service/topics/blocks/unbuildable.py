"""Why a height cannot be built as one stack, and what would do it, nearest way first."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Any

from halfangle_service.errors import BeyondBound, Unreachable
from halfangle_service.fields import Units, from_tenth_nm, to_tenth_nm
from halfangle_service.fields.stacks import BlockAlternative, stack_facts
from halfangle_service.fields.supply import Supply, where_else
from halfangle_service.trade.stacks.choosing import Choice
from halfangle_service.trade.stacks.nearest import Side
from halfangle_service.trade.stacks.one_stack import (
    Task,
    completing_blocks,
    nearest_stacks,
    nothing_left,
)
from halfangle_service.trade.stacks.search.stacking import UNREACHED
from halfangle_service.trade.stacks.supply import Box, Piece
from halfangle_service.trade.stacks.two_stacks import by_difference
from halfangle_service.trade.units import bench_step
from halfangle_service.trade.wording import option, plain, stack

#: How many blocks that would make a height possible are named in a refusal.
_NAMED = 6
#: Most blocks that a request may allow in one stack.
MOST_IN_STACK = 8


def unbuildable(
    supply: Supply, task: Task, choice: Choice, units: Units
) -> Unreachable | BeyondBound:
    """The refusal for a height that these blocks do not build, with what would help."""
    asked = from_tenth_nm(task.height, units)
    height = f"{plain(asked, 10)} {units}"
    if task.inner <= 0:
        wear = plain(from_tenth_nm(task.wear_height, units), 10)
        return Unreachable(
            nothing_left(task.wear_height, asked, units),
            fields={"height": f"should be more than the wear blocks, {wear} {units}"},
        )
    nearest, helpers = nearest_stacks(task), _helpers(supply, task, units)
    facts = {
        side: BlockAlternative(**stack_facts(pieces, task.height, units)).model_dump()
        for side, pieces in nearest.items()
    }
    more = {
        "nearest": {"below": facts.get("below"), "above": facts.get("above")},
        "would_make_it_possible": helpers,
    }
    larger = _more_blocks(task)
    ways = f"{_more_words(larger)}{_helper_words(helpers, units)}"
    fields = {} if larger is None else {"max_blocks": f"should be at least {larger}"}
    if task.height - (task.tolerance or 0) > task.highest:
        highest = plain(from_tenth_nm(task.highest, units), 10)
        return Unreachable(
            f"No stack of up to {task.most} of these blocks is {height} high; nearest "
            f"below it is {highest} {units}, the highest of all.{ways}"
            f"{_other_unit_words(task, units)}",
            fields=fields or {"height": f"should be at most {highest} {units}"},
            more=more,
        )
    if choice.searched < min(task.max_blocks, len(task.box.pieces)) and task.measured:
        return BeyondBound(
            f"No stack of up to {choice.searched} of these blocks is {height} high; stacks of up "
            f"to {task.max_blocks} are more than one request searches.",
            fields={"max_blocks": f"should be at most {choice.searched} with so many blocks"},
            more=more,
        )
    within = "" if task.tolerance is None else f" to ± {_length(task.tolerance, units)}"
    finer = "" if task.measured else _finer_than_set(task, units)
    ways += "" if task.measured or task.wear else two_stacks_words(task.box, task.inner, units)
    if task.aim == "actual":
        fields = {"tolerance": "should be wider, or left out for the nearest stack"}
    return Unreachable(
        f"No stack of up to {task.most} of these blocks is {height} high{within}; nearest "
        f"{_nearest_words(task, nearest, units)}.{finer}{ways}",
        fields=fields or {"height": "should be a height that these blocks build"},
        more=more,
    )


def two_stacks_words(box: Box, height: int, units: Units) -> str:
    """Say how two stacks make a height (0.1 nm) by their difference, to half a bench step.

    Nothing is said where no single block under the low roll does it, or where one stack does.
    """
    table = box.table(MOST_IN_STACK)
    difference = round(height / table.step) * table.step
    off, most_off = abs(difference - height), to_tenth_nm(bench_step(units) / 2.0, units)
    if not table.bounded or off > most_off or table.count(difference) != UNREACHED:
        return ""
    pair = by_difference(table, difference)
    if pair is None:
        return ""
    high = stack(tuple(from_tenth_nm(size, units) for size in pair.high), units)
    low = stack((from_tenth_nm(pair.low, units),), units)
    return (
        f" On a sine plate whose low roll can stand on blocks too, two stacks make "
        f"{_length(difference, units)} by their difference: {high} under the high roll, {low} "
        "under the low one; sine.low-stack finds the fewest blocks."
    )


def _length(length: int, units: Units) -> str:
    return f"{plain(from_tenth_nm(length, units), 10)} {units}"


def _more_blocks(task: Task) -> int | None:
    """The fewest blocks that would do, where that is only more than are allowed."""
    if task.measured or task.most >= MOST_IN_STACK:
        return None
    table = replace(task, most=MOST_IN_STACK).table
    found = table.best_within(task.inner, task.tolerance or 0) if table.bounded else None
    return None if found is None else found[0] + len(task.wear)


def _more_words(larger: int | None) -> str:
    return "" if larger is None else f" A stack of {larger} blocks would do: raise `max_blocks`."


def _nearest_words(task: Task, nearest: Mapping[Side, Sequence[Piece]], units: Units) -> str:
    heights = {
        side: sum(piece.actual if task.aim == "actual" else piece.size for piece in pieces)
        for side, pieces in nearest.items()
    }
    return " and ".join(
        f"{side} it is {_length(height, units)}" for side, height in heights.items()
    )


def _helpers(supply: Supply, task: Task, units: Units) -> list[dict[str, Any]]:
    """Single blocks that would make the height possible: those that are away first."""
    where = where_else(supply, units)
    away = {piece.size: piece for piece, _ in reversed(supply.away)}
    found = completing_blocks(task, list(where), away)
    found.sort(key=lambda entry: entry[0] not in away)
    return [
        {
            "block": from_tenth_nm(size, units),
            "where": where[size],
            "with": [from_tenth_nm(other, units) for other in others],
        }
        for size, others in found[:_NAMED]
    ]


def _helper_words(helpers: Sequence[Mapping[str, Any]], units: Units) -> str:
    if not helpers:
        return ""
    size, where = plain(helpers[0]["block"], 10), option(helpers[0]["where"])
    return f" A block of {size} {units} ({where}) would make it possible."


def _finer_than_set(task: Task, units: Units) -> str:
    """Say by how much a height is off the steps that the blocks make."""
    step = task.table.step
    off = task.inner % step
    if not off:
        return ""
    off = off if 2 * off <= step else off - step
    return (
        f" The blocks make steps of {_length(step, units)}; the height is off one by "
        f"{_length(off, units)}."
    )


def _other_unit_words(task: Task, units: Units) -> str:
    """Call out a height that looks like one of the other unit."""
    other: Units = "mm" if units == "in" else "in"
    asked = from_tenth_nm(task.height, units)
    inner = to_tenth_nm(asked, other) - task.wear_height
    if not task.table.bounded or task.table.stack(inner) is None:
        return ""
    return f" These blocks would build {plain(asked, 10)} {other}: which unit is meant?"
