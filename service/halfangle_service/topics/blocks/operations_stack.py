"""One stack: models to maths and back."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Any

from halfangle_service.errors import BeyondBound, Disagreement, Unreachable
from halfangle_service.operation import Advisory, Operation, Outcome, Source, caution, note
from halfangle_service.quantities import Units, from_tenth_nm, plain, to_tenth_nm
from halfangle_service.topics.blocks.built import built_facts, stack_facts
from halfangle_service.topics.blocks.choosing import (
    Choice,
    choose,
    choose_measured,
    completing_sizes,
    nearest_around,
)
from halfangle_service.topics.blocks.layers import MOST_CELLS
from halfangle_service.topics.blocks.models import (
    BlockAlternative,
    BlockStackRequest,
    BlockStackResult,
)
from halfangle_service.topics.blocks.operations_supply import (
    Supply,
    finished_supply,
)
from halfangle_service.topics.blocks.sets import nominal_sizes
from halfangle_service.topics.blocks.stacking import StackTable, stack_table
from halfangle_service.topics.blocks.supply import Box, Piece
from halfangle_service.topics.blocks.work import Work

METHOD = Source(
    citation="Derived here: dynamic programming over the set's smallest step considers every "
    "combination of blocks, each once; checked against an independent exact solver.",
    standing="derived",
)
MEASURED_METHOD = Source(
    citation="Derived here: every stack of up to three blocks is joined with every other by actual "
    "height; checked against enumeration of every combination.",
    standing="derived",
)
SETS = Source(
    citation="Compositions of sets by count and series; each set names its own source.",
    standing="from memory",
)
GRADES = Source(
    citation="ISO 3650:1998, table 5, and ASME B89.1.9-2002; each grade names its standing.",
    standing="from memory",
)
LARGEST = (
    "500 blocks; a table of 12 million heights and 600 million heights times blocks, or else every "
    "pair or triple of the blocks; 60 million partial stacks times blocks for preference and "
    "alternatives"
)
#: Past this many blocks, the wringing films and the handling begin to matter.
MANY_BLOCKS = 4
#: How many blocks that would make a height possible are named in a refusal.
_NAMED = 6


@dataclass(frozen=True, slots=True)
class _Task:
    """A request in integers of 0.1 nm: what the blocks between the wear blocks are to make up."""

    request: BlockStackRequest
    supply: Supply
    height: int
    tolerance: int | None

    @property
    def wear(self) -> int:
        """Height of the wear blocks, actual or nominal as the request aims."""
        pieces = self.supply.wear
        if not pieces:
            return 0
        return sum(p.actual if self.request.aim == "actual" else p.size for p in pieces)

    @property
    def inner(self) -> int:
        """Height that the other blocks are to make up."""
        return self.height - self.wear

    @property
    def highest(self) -> int:
        """Height of the highest stack, the wear blocks included."""
        return sum(self.supply.box.sizes[: self.max_blocks]) + self.wear

    @property
    def max_blocks(self) -> int:
        """Most other blocks."""
        return self.request.max_blocks - len(self.supply.wear)

    @property
    def measured(self) -> bool:
        """True where stacks are joined by height: by the actual one, or where no table can be.

        Where the sizes share too fine a step for a table, nominal sizes are joined as measured ones
        are.
        """
        return self.request.aim == "actual" or not self.table.bounded

    @property
    def joined(self) -> Box:
        """The blocks whose stacks are joined by height."""
        box = self.supply.box
        if self.request.aim == "actual":
            return box
        return Box(tuple(replace(piece, deviation=0) for piece in box.pieces))

    @property
    def table(self) -> StackTable:
        """Table of the other blocks."""
        return stack_table(self.supply.box.sizes, self.max_blocks)


def stack(request: BlockStackRequest) -> Outcome[BlockStackResult]:
    """Fewest blocks for a height, or the nearest actual height."""
    task = _read(request)
    choice = _choose(task)
    if not choice.stacks:
        raise _unbuildable(task, choice)
    stacks = [task.supply.box.pick(positions) for positions in choice.stacks]
    result = _result(task, stacks, choice)
    return Outcome(result, (*task.supply.advisories, *_advisories(task, result)))


def is_heavy(request: BlockStackRequest) -> bool:
    """True for a request that may take more than a few milliseconds."""
    return (
        request.set is None
        or request.aim == "actual"
        or request.prefer != "large blocks"
        or request.alternatives > 0
        or request.tolerance is not None
    )


def _read(request: BlockStackRequest) -> _Task:
    units = request.units
    supply = finished_supply(request)
    if request.prefer == "least uncertainty" and not supply.box.uncertainty_known:
        raise Disagreement(
            "The least uncertainty cannot be found: neither calibrations nor a grade are known of "
            "some block.",
            fields={"grade": "send it, or box with expanded_uncertainty"},
        )
    tolerance = None if request.tolerance is None else to_tenth_nm(request.tolerance, units)
    task = _Task(request, supply, to_tenth_nm(request.height, units), tolerance)
    if task.max_blocks < 1 or not supply.box.pieces:
        raise Unreachable(
            "The wear blocks leave no block for the stack.",
            fields={"max_blocks": f"should be more than {len(supply.wear)}"},
        )
    return task


def _choose(task: _Task) -> Choice:
    request, box = task.request, task.supply.box
    wanted = 1 + request.alternatives
    if task.inner <= 0:
        return Choice((), True)
    tolerance = task.tolerance or 0
    if task.measured:
        within = task.tolerance if request.aim == "actual" else tolerance
        return choose_measured(task.joined, task.inner, within, task.max_blocks, wanted)
    work = Work(MOST_CELLS)
    return choose(box, task.inner, tolerance, task.max_blocks, request.prefer, wanted, work)


def _result(task: _Task, stacks: Sequence[tuple[Piece, ...]], choice: Choice) -> BlockStackResult:
    units, wear = task.request.units, task.supply.wear
    first, *others = stacks
    return BlockStackResult(
        **built_facts(first, wear, task.height, units),
        proved=choice.fewest_proved,
        order_proved=choice.complete,
        bound=_bound(task, choice),
        alternatives=[
            BlockAlternative(**stack_facts((*stack, *wear), task.height, units)) for stack in others
        ],
    )


def _bound(task: _Task, choice: Choice) -> str | None:
    if choice.fewest_proved and choice.complete:
        return None
    if not choice.fewest_proved:
        return (
            f"Stacks of up to {choice.searched} of these {len(task.supply.box.pieces)} blocks were "
            f"searched, not those of up to {task.max_blocks}: one of these may come nearer, by no "
            "more than the deviation given."
        )
    return (
        "The bound on the work was reached before all stacks of this many blocks were compared: "
        "the count is the fewest, a stack preferred to these may exist."
    )


def _unbuildable(task: _Task, choice: Choice) -> Unreachable | BeyondBound:
    """The refusal for a height that these blocks do not build, with what would help."""
    request, units = task.request, task.request.units
    if task.height - (task.tolerance or 0) > task.highest:
        return _too_high(task)
    if not choice.fewest_proved:
        return BeyondBound(
            f"No stack of up to {choice.searched} of these blocks is {plain(request.height)} "
            f"{units} high; stacks of up to {task.max_blocks} are more than one request searches.",
            fields={"max_blocks": f"should be at most {choice.searched} with so many blocks"},
            more={"nearest": _around(task)},
        )
    if task.inner <= 0:
        return _nothing_left(task)
    if task.measured:
        return _none_near(task)
    table = task.table
    below, above = table.nearest(task.inner)
    nearest = {"below": _nearest_facts(task, below), "above": _nearest_facts(task, above)}
    words = " and ".join(
        f"{name} it is {plain(facts['total'])} {units}" for name, facts in nearest.items() if facts
    )
    helpers = _helpers(task, task.max_blocks)
    finer = _finer_than_set(task, table.step)
    within = "" if request.tolerance is None else f" to ± {plain(request.tolerance)}"
    return Unreachable(
        f"No stack of up to {request.max_blocks} of these blocks is {plain(request.height)} "
        f"{units} high{within}; nearest {words}.{finer}{_helper_words(helpers, units)}",
        fields={"height": "should be a height that these blocks build"},
        more={"nearest": nearest, "would_make_it_possible": helpers},
    )


def _too_high(task: _Task) -> Unreachable:
    units = task.request.units
    highest = from_tenth_nm(task.highest, units)
    facts = _nearest_facts(task, task.supply.box.sizes[: task.max_blocks])
    return Unreachable(
        f"No stack of up to {task.request.max_blocks} of these blocks is "
        f"{plain(task.request.height)} {units} high; nearest below it is {plain(highest)} {units}, "
        f"the highest of all.{_other_unit_words(task)}",
        fields={"height": f"should be at most {plain(highest)} {units}"},
        more={"nearest": {"below": facts, "above": None}, "would_make_it_possible": []},
    )


def _nothing_left(task: _Task) -> Unreachable:
    units = task.request.units
    wear = from_tenth_nm(task.wear, units)
    return Unreachable(
        f"The wear blocks alone are {plain(wear)} {units} high; {plain(task.request.height)} "
        f"{units} leaves nothing for the stack.",
        fields={"height": f"should be more than the wear blocks, {plain(wear)} {units}"},
    )


def _none_near(task: _Task) -> Unreachable:
    """The refusal where stacks are joined by height and none comes within the tolerance."""
    request, units, nearest = task.request, task.request.units, _around(task)
    words = " and ".join(
        f"{side} it is {plain(facts['actual_height'])} {units}"
        for side, facts in nearest.items()
        if facts
    )
    return Unreachable(
        f"No stack of up to {request.max_blocks} of these blocks comes within "
        f"{plain(request.tolerance or 0.0)} {units} of {plain(request.height)} {units}; nearest "
        f"{words}.",
        fields={"tolerance": "should be wider, or left out for the nearest stack"},
        more={"nearest": nearest, "would_make_it_possible": []},
    )


def _around(task: _Task) -> dict[str, dict[str, Any] | None]:
    """The nearest stacks below and above, where stacks are joined by height."""
    nearest: dict[str, dict[str, Any] | None] = {"below": None, "above": None}
    for side, positions in nearest_around(task.joined, task.inner, task.max_blocks).items():
        pieces = (*task.joined.pick(positions), *task.supply.wear)
        nearest[side] = stack_facts(pieces, task.height, task.request.units)
    return nearest


def _nearest_facts(task: _Task, blocks: tuple[int, ...] | None) -> dict[str, object] | None:
    if not blocks:
        return None
    units = task.request.units
    sizes = sorted([*blocks, *(piece.size for piece in task.supply.wear)], reverse=True)
    return {
        "blocks": [from_tenth_nm(size, units) for size in sizes],
        "total": from_tenth_nm(sum(sizes), units),
        "deviation": from_tenth_nm(sum(sizes) - task.height, units),
    }


def _helpers(task: _Task, most: int) -> list[dict[str, Any]]:
    """Single blocks that would make the height possible: those that are away first."""
    units = task.request.units
    layers = task.supply.box.layers(most)
    away = {piece.size: state for piece, state in reversed(task.supply.away)}
    candidates = [*away, *nominal_sizes(units)]
    found = completing_sizes(layers, task.inner, candidates)
    found.sort(key=lambda entry: entry[0] not in away)
    return [
        {
            "block": from_tenth_nm(size, units),
            "where": away.get(size, "not in the box"),
            "with": [from_tenth_nm(other, units) for other in others],
        }
        for size, others in found[:_NAMED]
    ]


def _helper_words(helpers: Sequence[dict[str, Any]], units: Units) -> str:
    if not helpers:
        return ""
    first = helpers[0]
    return f" A block of {plain(first['block'])} {units} ({first['where']}) would make it possible."


def _finer_than_set(task: _Task, step: int) -> str:
    """Say by how much a height is off the steps that the blocks make."""
    off = task.inner % step
    if not off:
        return ""
    units = task.request.units
    off = off if 2 * off <= step else off - step
    return (
        f" The blocks make steps of {plain(from_tenth_nm(step, units))} {units}; the height is off "
        f"one by {plain(from_tenth_nm(off, units))} {units}."
    )


def _other_unit_words(task: _Task) -> str:
    """Call out a height that looks like one of the other unit."""
    units = task.request.units
    other: Units = "mm" if units == "in" else "in"
    inner = to_tenth_nm(task.request.height, other) - task.wear
    if not task.table.bounded or task.table.stack(inner) is None:
        return ""
    return f" These blocks would build {plain(task.request.height)} {other}: which unit is meant?"


def _advisories(task: _Task, result: BlockStackResult) -> Iterator[Advisory]:
    if result.count > MANY_BLOCKS:
        yield caution(
            "many-blocks",
            f"A stack of {result.count} blocks adds {result.count - 1} wringing films and as many "
            "chances of dirt; a nearby height may need fewer.",
        )
    if not result.proved or not result.order_proved:
        yield note("bound-reached", result.bound or "")
    if len(task.supply.box.materials.union(piece.material for piece in task.supply.wear)) > 1:
        yield note(
            "mixed-materials",
            "The box mixes materials: away from 20 °C they grow apart. blocks/budget tells by how "
            "much.",
        )


STACK = Operation(
    topic="blocks",
    verb="stack",
    title="Stack of gauge blocks",
    summary="The fewest gauge blocks that build a height, from a built-in set or from the blocks "
    "that the shop has, proved: no smaller stack exists; or the stack whose measured height comes "
    "nearest.",
    request=BlockStackRequest,
    result=BlockStackResult,
    calculate=stack,
    relations=(
        "total = Σ nominal sizes, each block used at most as often as it is there",
        "actual_height = Σ (nominal size + measured deviation)",
        "standard_uncertainty² = Σ u², u = limit / √3 by grade, or expanded uncertainty / 2",
    ),
    sources=(METHOD, MEASURED_METHOD, SETS, GRADES),
    example={"units": "in", "height": 2.5, "set": "inch-81"},
    largest_request=LARGEST,
    heavy=is_heavy,
)
