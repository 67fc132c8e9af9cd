"""One stack: models to maths and back."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import combinations
from typing import Any

from halfangle_service.errors import BeyondBound, Disagreement, Unreachable
from halfangle_service.fields import Units, from_tenth_nm, to_tenth_nm
from halfangle_service.fields.advisories import Advisory, caution, note
from halfangle_service.fields.stacks import BlockAlternative, built_facts, stack_facts
from halfangle_service.fields.supply import (
    ENDS,
    Supply,
    finished_supply,
    where_else,
)
from halfangle_service.operation import Operation, Outcome, Source
from halfangle_service.topics.blocks.models import BlockStackRequest, BlockStackResult
from halfangle_service.trade.stacks.choosing import Choice, choose, completing_sizes
from halfangle_service.trade.stacks.nearest import (
    choose_measured,
    completing_pieces,
    nearest_around,
)
from halfangle_service.trade.stacks.search.layers import MOST_CELLS
from halfangle_service.trade.stacks.search.measured import MOST_CANDIDATES
from halfangle_service.trade.stacks.search.stacking import StackTable
from halfangle_service.trade.stacks.search.work import Work
from halfangle_service.trade.stacks.supply import Box, Piece
from halfangle_service.trade.wording import plain

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
    standing="from-memory",
)
GRADES = Source(
    citation="ISO 3650:1998, table 5, and ASME B89.1.9-2002; each grade names its standing.",
    standing="from-memory",
)
LARGEST = (
    "500 blocks; a table of 12 million heights and 600 million heights times blocks, or else every "
    "pair or triple of the blocks; 12 million blocks tried in partial stacks for preference and "
    "alternatives"
)
#: Past this many blocks, the wringing films and the handling begin to matter.
MANY_BLOCKS = 4
#: How many blocks that would make a height possible are named in a refusal.
_NAMED = 6
#: Most wear blocks of which every choice is tried where their deviations count.
_MOST_WEAR = 4
#: Most stacks looked at for alternatives that do not look alike in an answer.
_MOST_ALIKE = 1_000


@dataclass(frozen=True, slots=True)
class _Task:
    """A request in integers of 0.1 nm: what the blocks between the wear blocks are to make up."""

    request: BlockStackRequest
    supply: Supply
    height: int
    tolerance: int | None
    wear: tuple[Piece, ...]

    @property
    def wear_height(self) -> int:
        """Height of the wear blocks, actual or nominal as the request aims."""
        if not self.wear:
            return 0
        return sum(p.actual if self.request.aim == "actual" else p.size for p in self.wear)

    @property
    def inner(self) -> int:
        """Height that the other blocks are to make up."""
        return self.height - self.wear_height

    @property
    def highest(self) -> int:
        """Height of the highest stack, the wear blocks included."""
        return sum(map(self._length, self.highest_pieces)) + self.wear_height

    @property
    def highest_pieces(self) -> tuple[Piece, ...]:
        """The other blocks of the highest stack, the longest first."""
        pieces = self.joined.pieces if self.measured else self.supply.box.pieces
        return tuple(reversed(sorted(pieces, key=self._length)[-self.max_blocks :]))

    def _length(self, piece: Piece) -> int:
        return piece.actual if self.measured else piece.size

    @property
    def max_blocks(self) -> int:
        """Most other blocks."""
        return self.request.max_blocks - len(self.wear)

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
        return self.supply.box.table(self.max_blocks)


@dataclass(frozen=True, slots=True)
class _Stacks:
    """Stacks in order, each with its wear blocks, and how sure the order is."""

    stacks: tuple[tuple[tuple[Piece, ...], tuple[Piece, ...]], ...]
    choice: Choice


def stack(request: BlockStackRequest) -> Outcome[BlockStackResult]:
    """Fewest blocks for a height, or the nearest actual height."""
    task = _read(request)
    wanted = 1 + request.alternatives
    found = _choose(task, wanted)
    if not found.stacks:
        raise _unbuildable(task, found.choice)
    alternatives = _alternatives(task, found)
    while len(alternatives) < request.alternatives and len(found.stacks) == wanted < _MOST_ALIKE:
        wanted *= 4
        found = _choose(task, wanted)
        alternatives = _alternatives(task, found)
    result = _result(task, found, alternatives)
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
    wear = supply.wear[: ENDS[request.wear_blocks]]
    task = _Task(request, supply, to_tenth_nm(request.height, units), tolerance, wear)
    if task.max_blocks < 1:
        raise Unreachable(
            "The wear blocks leave no block for the stack.",
            fields={"max_blocks": f"should be more than {len(wear)}"},
        )
    return task


def _choose(task: _Task, wanted: int) -> _Stacks:
    request, box = task.request, task.supply.box
    if task.measured:
        return _choose_measured(task, wanted)
    work, tolerance = Work(MOST_CELLS), task.tolerance or 0
    choice = Choice((), True)
    if task.inner > 0:
        most = task.max_blocks
        choice = choose(box, task.inner, tolerance, most, request.prefer, wanted, work)
    return _Stacks(tuple((box.pick(stack), task.wear) for stack in choice.stacks), choice)


def _choose_measured(task: _Task, wanted: int) -> _Stacks:
    """Choose by actual height: with every choice of wear blocks, since they differ as well."""
    work = Work(MOST_CANDIDATES)
    tolerance = task.tolerance if task.request.aim == "actual" else task.tolerance or 0
    found: list[tuple[tuple[int, int], _Task, tuple[Piece, ...]]] = []
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
            found.append((order, way, way.supply.box.pick(positions)))
    found.sort(key=lambda entry: entry[0])
    # A table-less nominal stack is the first found of those as few and as near: none is preferred.
    preferred = task.request.aim == "actual"
    sure = Choice(
        (),
        complete=preferred and all(choice.complete for choice in choices),
        fewest_proved=all(choice.fewest_proved for choice in choices) and not _wear_cut(task),
        searched=min((choice.searched for choice in choices), default=0),
    )
    return _Stacks(tuple((pieces, way.wear) for _, way, pieces in found[:wanted]), sure)


def _ways_of_wear(task: _Task) -> Iterator[_Task]:
    """Give the task with each choice of wear blocks that makes another height.

    Of very many kinds of wear blocks the first few are looked at.
    """
    if task.request.aim == "nominal" or not task.wear:
        yield task
        return
    seen = set()
    tried = [piece for kind in _kinds_of_wear(task)[:_MOST_WEAR] for piece in kind]
    for wear in combinations(tried, len(task.wear)):
        way = replace(task, wear=wear)
        if way.wear_height not in seen:
            seen.add(way.wear_height)
            yield way


def _kinds_of_wear(task: _Task) -> list[list[Piece]]:
    """The wear blocks by their actual length, of each as many as a stack may take."""
    kinds: dict[int, list[Piece]] = {}
    for piece in task.supply.wear:
        kinds.setdefault(piece.actual, []).append(piece)
    return [kind[: len(task.wear)] for kind in kinds.values()]


def _alternatives(task: _Task, found: _Stacks) -> list[dict[str, Any]]:
    """Facts of the stacks but the first; those of blocks that look alike in an answer once."""
    if task.request.alternatives == 0:
        return []
    facts: list[dict[str, Any]] = []
    for pieces, wear in found.stacks:
        stack_of = stack_facts((*pieces, *wear), task.height, task.request.units)
        if stack_of not in facts:
            facts.append(stack_of)
        if len(facts) > task.request.alternatives:
            break
    return facts[1:]


def _result(
    task: _Task, found: _Stacks, alternatives: Sequence[dict[str, Any]]
) -> BlockStackResult:
    inner, wear = found.stacks[0]
    return BlockStackResult(
        **built_facts(inner, wear, task.height, task.request.units),
        proved=found.choice.fewest_proved,
        order_proved=found.choice.complete,
        bound=_bound(task, found.choice),
        alternatives=[BlockAlternative(**facts) for facts in alternatives],
    )


def _bound(task: _Task, choice: Choice) -> str | None:
    """What bounded the search, and what holds in spite of it."""
    if choice.fewest_proved and choice.complete:
        return None
    box, most = len(task.supply.box.pieces), task.max_blocks
    if not choice.fewest_proved and _wear_cut(task):
        return (
            f"Of the wear blocks those of {_MOST_WEAR} lengths were tried: another may come nearer."
        )
    if choice.searched and choice.searched < min(most, box):
        return (
            f"Stacks of up to {choice.searched} of these {box} blocks were searched, not those of "
            f"up to {most}: one of these may come before those given"
            + ("." if choice.fewest_proved else ", nearer by no more than the deviation given.")
        )
    if choice.searched and task.request.aim == "nominal":
        return (
            "These sizes share too fine a step for a table: the count is the fewest, but of stacks "
            "as few and as near none was preferred."
        )
    return (
        "The bound on the work was reached before all stacks of this many blocks were compared: "
        "the count is the fewest, a stack preferred to these may exist."
    )


def _wear_cut(task: _Task) -> bool:
    """True where not every choice of wear blocks is tried."""
    return task.request.aim == "actual" and len(_kinds_of_wear(task)) > _MOST_WEAR


def _unbuildable(task: _Task, choice: Choice) -> Unreachable | BeyondBound:
    """The refusal for a height that these blocks do not build, with what would help."""
    request, units = task.request, task.request.units
    height = f"{plain(request.height, 10)} {units}"
    if task.inner <= 0:
        return _nothing_left(task)
    helpers, nearest = _helpers(task), _nearest(task)
    more = {"nearest": nearest, "would_make_it_possible": helpers}
    if task.height - (task.tolerance or 0) > task.highest:
        highest = plain(from_tenth_nm(task.highest, units), 10)
        return Unreachable(
            f"No stack of up to {request.max_blocks} of these blocks is {height} high; nearest "
            f"below it is {highest} {units}, the highest of all.{_helper_words(helpers, units)}"
            f"{_other_unit_words(task)}",
            fields={"height": f"should be at most {highest} {units}"},
            more=more,
        )
    if choice.searched < min(task.max_blocks, len(task.supply.box.pieces)) and task.measured:
        return BeyondBound(
            f"No stack of up to {choice.searched} of these blocks is {height} high; stacks of up "
            f"to {task.max_blocks} are more than one request searches.",
            fields={"max_blocks": f"should be at most {choice.searched} with so many blocks"},
            more=more,
        )
    within = "" if request.tolerance is None else f" to ± {plain(request.tolerance, 10)} {units}"
    finer = "" if task.measured else _finer_than_set(task, task.table.step)
    return Unreachable(
        f"No stack of up to {request.max_blocks} of these blocks is {height} high{within}; nearest "
        f"{_nearest_words(task, nearest)}.{finer}{_helper_words(helpers, units)}",
        fields=_field_to_change(task),
        more=more,
    )


def _field_to_change(task: _Task) -> dict[str, str]:
    if task.request.aim == "actual":
        return {"tolerance": "should be wider, or left out for the nearest stack"}
    return {"height": "should be a height that these blocks build"}


def _nothing_left(task: _Task) -> Unreachable:
    units = task.request.units
    wear, height = plain(from_tenth_nm(task.wear_height, units), 10), plain(task.request.height, 10)
    return Unreachable(
        f"The wear blocks alone are {wear} {units} high; {height} {units} leaves nothing for the "
        "stack.",
        fields={"height": f"should be more than the wear blocks, {wear} {units}"},
    )


def _nearest(task: _Task) -> dict[str, dict[str, Any] | None]:
    """The nearest stacks below and above, None where there is none."""
    units, found = task.request.units, dict[str, tuple[Piece, ...]]()
    if task.height > task.highest:
        found["below"] = (*task.highest_pieces, *task.wear)
    elif task.measured:
        found = _nearest_of_all(task)
    else:
        sides = zip(("below", "above"), task.table.nearest(task.inner), strict=True)
        for side, sizes in sides:
            if sizes:
                found[side] = (*task.supply.box.pick(task.table.positions(sizes)), *task.wear)
    return {
        side: stack_facts(found[side], task.height, units) if side in found else None
        for side in ("below", "above")
    }


def _nearest_of_all(task: _Task) -> dict[str, tuple[Piece, ...]]:
    """The nearest stacks by height with any choice of wear blocks, these among the pieces."""
    found: dict[str, tuple[int, tuple[Piece, ...]]] = {}
    for way in _ways_of_wear(task):
        for side, positions in nearest_around(way.joined, way.inner, way.max_blocks).items():
            pieces = (*way.joined.pick(positions), *way.wear)
            off = abs(sum(piece.actual for piece in pieces) - task.height)
            if side not in found or off < found[side][0]:
                found[side] = off, pieces
    return {side: pieces for side, (_, pieces) in found.items()}


def _nearest_words(task: _Task, nearest: dict[str, dict[str, Any] | None]) -> str:
    name = "actual_height" if task.request.aim == "actual" else "total"
    return " and ".join(
        f"{side} it is {plain(facts[name], 10)} {task.request.units}"
        for side, facts in nearest.items()
        if facts
    )


def _helpers(task: _Task) -> list[dict[str, Any]]:
    """Single blocks that would make the height possible: those that are away first."""
    units, box, away = task.request.units, task.supply.box, task.supply.away
    tolerance, most = task.tolerance or 0, task.max_blocks
    where = where_else(task.supply, units)
    found: list[tuple[int, tuple[int, ...]]]
    if task.measured:
        aims = task.request.aim == "actual"
        known = {piece.size: piece for piece, _ in reversed(away) if aims}
        pieces = [known.get(size, Piece(size)) for size in where]
        ways = completing_pieces(task.joined, task.inner, tolerance, most, pieces)
        found = [(piece.size, tuple(p.size for p in box.pick(beside))) for piece, beside in ways]
    else:
        found = completing_sizes(task.table, task.inner, tolerance, most, list(where))
    gone = {piece.size for piece, _ in away}
    found.sort(key=lambda entry: entry[0] not in gone)
    return [
        {
            "block": from_tenth_nm(size, units),
            "where": where[size],
            "with": [from_tenth_nm(other, units) for other in others],
        }
        for size, others in found[:_NAMED]
    ]


def _helper_words(helpers: Sequence[dict[str, Any]], units: Units) -> str:
    if not helpers:
        return ""
    first = helpers[0]
    size = plain(first["block"], 10)
    return f" A block of {size} {units} ({first['where']}) would make it possible."


def _finer_than_set(task: _Task, step: int) -> str:
    """Say by how much a height is off the steps that the blocks make."""
    off = task.inner % step
    if not off:
        return ""
    units = task.request.units
    off = off if 2 * off <= step else off - step
    return (
        f" The blocks make steps of {plain(from_tenth_nm(step, units), 10)} {units}; the height "
        "is off "
        f"one by {plain(from_tenth_nm(off, units), 10)} {units}."
    )


def _other_unit_words(task: _Task) -> str:
    """Call out a height that looks like one of the other unit."""
    units = task.request.units
    other: Units = "mm" if units == "in" else "in"
    inner = to_tenth_nm(task.request.height, other) - task.wear_height
    if not task.table.bounded or task.table.stack(inner) is None:
        return ""
    return (
        f" These blocks would build {plain(task.request.height, 10)} {other}: which unit is meant?"
    )


def _advisories(task: _Task, result: BlockStackResult) -> Iterator[Advisory]:
    if result.count > MANY_BLOCKS:
        yield caution(
            "many-blocks",
            f"A stack of {result.count} blocks adds {result.count - 1} wringing films and as many "
            "chances of dirt; a nearby height may need fewer.",
        )
    if not result.proved or not result.order_proved:
        yield note("bound-reached", result.bound or "")
    if len(task.supply.box.materials.union(piece.material for piece in task.wear)) > 1:
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
