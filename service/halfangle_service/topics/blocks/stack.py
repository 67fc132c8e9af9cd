"""One stack: the fewest blocks for a height, or the stack whose actual height is nearest."""

from collections.abc import Hashable, Iterator
from typing import Annotated

from pydantic import Field

from halfangle_service.errors import Disagreement
from halfangle_service.fields import (
    Count,
    Length,
    NonNegativeLength,
    to_tenth_nm,
)
from halfangle_service.fields.advisories import Advisory, caution, note
from halfangle_service.fields.base import Rule
from halfangle_service.fields.blocks import SOURCES, BlockFinishFields
from halfangle_service.fields.stacks import (
    BlockAlternative,
    BlockBuilt,
    built_facts,
    looks,
    stack_facts,
)
from halfangle_service.fields.supply import ENDS, Supply, finished_supply
from halfangle_service.operation import Outcome, Source, operation
from halfangle_service.topics.blocks.sources import GRADES, SETS
from halfangle_service.topics.blocks.unbuildable import MOST_IN_STACK, unbuildable
from halfangle_service.trade.stacks.choosing import Choice, Preference
from halfangle_service.trade.stacks.one_stack import (
    MOST_WEAR,
    Aim,
    Stacks,
    Task,
    best_stacks,
    require_room,
)
from halfangle_service.trade.stacks.supply import Piece

_METHOD = Source(
    citation="Derived here: dynamic programming over the set's smallest step considers every "
    "combination of blocks, each once; checked against an independent exact solver.",
    standing="derived",
)
_MEASURED_METHOD = Source(
    citation="Derived here: every stack of up to three blocks is joined with every other by actual "
    "height; checked against enumeration of every combination.",
    standing="derived",
)
#: Past this many blocks, the wringing films and the handling begin to matter.
_MANY_BLOCKS = 4
#: Most blocks in a stack, unless a request says otherwise.
_USUAL_BLOCKS = 6
#: Most stacks looked at for alternatives that do not look alike in an answer.
_MOST_ALIKE = 1_000


class BlockStackRequest(BlockFinishFields):
    """A height, the blocks to build it from, and what kind of stack is preferred."""

    rules = (Rule("one-of", SOURCES),)

    height: Length = Field(
        description="Height to build, in `units`; it is taken to the nearest 0.1 nm.",
        examples=[2.5],
    )
    max_blocks: Annotated[int, Count(ge=1, le=MOST_IN_STACK)] = Field(
        _USUAL_BLOCKS, description="Most blocks to wring in one stack, wear blocks included."
    )
    tolerance: NonNegativeLength | None = Field(
        None,
        description="Heights within ± this will do, in `units`: the fewest blocks that come within "
        "it, and of these the nearest. Absent: the height itself by nominal sizes, or the nearest "
        "by measured ones.",
    )
    aim: Aim = Field(
        "nominal",
        description="`nominal`: the nominal sizes sum up to the height. `actual`: the stack whose "
        "actual height, measured deviations included, comes nearest; exact for up to 6 blocks out "
        "of 200 (8 out of 30), and for up to 4 out of more.",
    )
    prefer: Preference = Field(
        "large-blocks",
        description="Which of several stacks of as few blocks: `large-blocks`, the largest block "
        "as large as can be, then the next; `fewer-small-blocks`, the thinnest block as thick as "
        "can be, then the next; `least-wear`, blocks wrung least often; `least-uncertainty`. With "
        "`aim` `actual` the nearest comes first, whatever is preferred.",
    )
    max_alternatives: Annotated[int, Count(ge=0, le=20)] = Field(
        0, description="How many further stacks to give, the next best ones, all different."
    )


class BlockStackResult(BlockBuilt):
    """The stack of the fewest blocks, or the one whose actual height is nearest."""

    proved: bool = Field(
        description="`aim` `nominal`: no stack of fewer blocks exists. `actual`: no stack of up to "
        "`max_blocks` comes nearer. False where the bound on the work was reached first."
    )
    order_proved: bool = Field(
        description="Preference and alternatives are proved: every stack that could come before "
        "the last one given was considered."
    )
    bound: str | None = Field(
        description="What bounded the search, and what holds in spite of it; null where nothing "
        "did."
    )
    alternatives: list[BlockAlternative] = Field(description="The next best stacks, in order.")


def is_heavy(request: BlockStackRequest) -> bool:
    """True for a request that may take more than a few milliseconds.

    The tables of the built-in sets, whole, for the usual number of blocks, are made once and kept.
    """
    return (
        request.set is None
        or bool(request.missing or request.in_use)
        or request.max_blocks != _USUAL_BLOCKS
        or request.aim == "actual"
        or request.prefer != "large-blocks"
        or request.max_alternatives > 0
        or request.tolerance is not None
    )


@operation(
    "blocks.stack",
    relations=(
        "total = Σ nominal sizes, each block used at most as often as it is there",
        "actual_height = Σ (nominal size + measured deviation)",
        "standard_uncertainty² = Σ u², u = limit / √3 by grade, or expanded uncertainty / 2",
    ),
    sources=(_METHOD, _MEASURED_METHOD, SETS, GRADES),
    example={"units": "in", "height": 2.5, "set": "inch-81"},
    largest_request="500 blocks; a table of 12 million heights and 600 million heights times "
    "blocks, or else every pair or triple of the blocks; 12 million blocks tried in partial stacks "
    "for preference and alternatives",
    heavy=is_heavy,
)
def stack(request: BlockStackRequest) -> Outcome[BlockStackResult]:
    """Stack of gauge blocks.

    The fewest gauge blocks that build a height, from a built-in set or from the blocks that the
    shop has, proved: no smaller stack exists; or the stack whose measured height comes nearest.
    """
    supply = finished_supply(request)
    task = _task(request, supply)
    wanted = 1 + request.max_alternatives
    found = best_stacks(task, wanted)
    if not found.stacks:
        raise unbuildable(supply, task, found.choice, request.units)
    alternatives = _alternatives(request, task, found)
    while (
        len(alternatives) < request.max_alternatives and len(found.stacks) == wanted < _MOST_ALIKE
    ):
        wanted *= 4
        found = best_stacks(task, wanted)
        alternatives = _alternatives(request, task, found)
    inner, wear = found.stacks[0]
    result = BlockStackResult(
        **built_facts(inner, wear, task.height, request.units),
        proved=found.choice.fewest_proved,
        order_proved=found.choice.complete,
        bound=_bound(task, found.choice),
        alternatives=alternatives,
    )
    return Outcome(result, (*supply.advisories, *_advisories(task, result)))


def _task(request: BlockStackRequest, supply: Supply) -> Task:
    if request.prefer == "least-uncertainty" and not supply.box.uncertainty_known:
        raise Disagreement(
            "The least uncertainty cannot be found: neither calibrations nor a grade are known of "
            "some block.",
            fields={"grade": "send it, or box with expanded_uncertainty"},
        )
    ends = ENDS[request.wear_ends]
    require_room(request.max_blocks, ends)
    return Task(
        box=supply.box,
        any_wear=supply.wear,
        wear=supply.wear[:ends],
        height=to_tenth_nm(request.height, request.units),
        tolerance=None
        if request.tolerance is None
        else to_tenth_nm(request.tolerance, request.units),
        most=request.max_blocks,
        aim=request.aim,
        prefer=request.prefer,
    )


def _alternatives(request: BlockStackRequest, task: Task, found: Stacks) -> list[BlockAlternative]:
    """The stacks but the first; of those that look alike in an answer one."""
    if request.max_alternatives == 0:
        return []
    different: dict[Hashable, tuple[Piece, ...]] = {}
    for inner, wear in found.stacks:
        pieces = (*inner, *wear)
        different.setdefault(looks(pieces, request.units), pieces)
    others = list(different.values())[1 : 1 + request.max_alternatives]
    return [BlockAlternative(**stack_facts(p, task.height, request.units)) for p in others]


def _bound(task: Task, choice: Choice) -> str | None:
    """What bounded the search, and what holds in spite of it."""
    if choice.fewest_proved and choice.complete:
        return None
    box, most = len(task.box.pieces), task.max_blocks
    if not choice.fewest_proved and task.wear_left_untried:
        return (
            f"Of the wear blocks those of {MOST_WEAR} lengths were tried: another may come nearer."
        )
    if choice.searched and choice.searched < min(most, box):
        return (
            f"Stacks of up to {choice.searched} of these {box} blocks were searched, not those of "
            f"up to {most}: one of these may come before those given"
            + ("." if choice.fewest_proved else ", nearer by no more than the deviation given.")
        )
    if choice.searched and task.aim == "nominal":
        return (
            "These sizes share too fine a step for a table: the count is the fewest, but of stacks "
            "as few and as near none was preferred."
        )
    return (
        "The bound on the work was reached before all stacks of this many blocks were compared: "
        "the count is the fewest, a stack preferred to these may exist."
    )


def _advisories(task: Task, result: BlockStackResult) -> Iterator[Advisory]:
    if result.count > _MANY_BLOCKS:
        yield caution(
            "many-blocks",
            f"A stack of {result.count} blocks adds {result.count - 1} wringing films and as many "
            "chances of dirt; a nearby height may need fewer.",
        )
    if not result.proved or not result.order_proved:
        yield note("bound-reached", result.bound or "")
    if len(task.box.materials.union(piece.material for piece in task.wear)) > 1:
        yield note(
            "mixed-materials",
            "The box mixes materials: away from 20 °C they grow apart. blocks.budget tells by how "
            "much.",
        )
