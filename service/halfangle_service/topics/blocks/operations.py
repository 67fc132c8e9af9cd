"""The blocks topic's operations: models to maths and back."""

from halfangle_service.errors import Disagreement, Unreachable
from halfangle_service.operation import Advisory, Collection, Operation, Outcome, Source, caution
from halfangle_service.quantities import Units, from_tenth_nm, to_tenth_nm
from halfangle_service.topics.blocks.models import (
    BlockSetDetail,
    BlockSetEntry,
    BlockSetList,
    BlockStackRequest,
    BlockStackResult,
)
from halfangle_service.topics.blocks.sets import BlockSet, built_in_sets, find_set
from halfangle_service.topics.blocks.stacking import StackTable, stack_table

_METHOD = Source(
    citation="Derived here: dynamic programming over the set's smallest step considers every "
    "combination of blocks, each once; checked against an independent exact solver.",
    standing="derived",
)
_SETS = Source(
    citation="Compositions of sets by count and series; each set names its own source.",
    standing="from memory",
)
#: Past this many blocks, the wringing films and the handling begin to matter.
MANY_BLOCKS = 4


def stack(request: BlockStackRequest) -> Outcome[BlockStackResult]:
    """Fewest blocks for a height."""
    sizes = available_sizes(request)
    table = stack_table(sizes, request.max_blocks)
    height = to_tenth_nm(request.height, request.units)
    blocks = table.stack(height)
    if blocks is None:
        raise _unbuildable(request, table, height)
    total = from_tenth_nm(sum(blocks), request.units)
    result = BlockStackResult(
        blocks=[from_tenth_nm(size, request.units) for size in blocks],
        count=len(blocks),
        total=total,
        deviation=total - request.height,
        proved=True,
    )
    return Outcome(result, _many_blocks(len(blocks)))


def available_sizes(request: BlockStackRequest) -> tuple[int, ...]:
    """Sizes in 0.1 nm of the blocks to build from; refuses both sources, or neither."""
    if (request.set is None) == (request.sizes is None):
        both = "were both sent" if request.set is not None else "are both missing"
        raise Disagreement(
            f"`set` and `sizes` {both}; the blocks come from one of them.",
            fields={"set": "send either this or sizes", "sizes": "send either this or set"},
        )
    if request.set is not None:
        return find_set(request.set).sizes
    return tuple(to_tenth_nm(size, request.units) for size in request.sizes or ())


def _unbuildable(request: BlockStackRequest, table: StackTable, height: int) -> Unreachable:
    """The refusal for a height that these blocks do not build, with the nearest that they do."""
    below, above = table.nearest(height)
    units = request.units
    nearest = {"below": _stack_facts(below, units), "above": _stack_facts(above, units)}
    words = " and ".join(
        f"{name} it is {facts['total']:.10g} {units}" for name, facts in nearest.items() if facts
    )
    return Unreachable(
        f"No stack of up to {request.max_blocks} of these blocks is {request.height:.10g} "
        f"{units} high; nearest {words}.",
        fields={"height": "should be a height that these blocks build"},
        more={"nearest": nearest},
    )


def _stack_facts(blocks: tuple[int, ...] | None, units: Units) -> dict[str, object] | None:
    if not blocks:
        return None
    return {
        "blocks": [from_tenth_nm(size, units) for size in blocks],
        "total": from_tenth_nm(sum(blocks), units),
    }


def _many_blocks(count: int) -> tuple[Advisory, ...]:
    if count <= MANY_BLOCKS:
        return ()
    return (
        caution(
            "many-blocks",
            f"A stack of {count} blocks adds {count - 1} wringing films and as many chances of "
            "dirt; a nearby height may need fewer.",
        ),
    )


def _entry(block_set: BlockSet) -> BlockSetEntry:
    return BlockSetEntry(
        name=block_set.name,
        units=block_set.units,
        pieces=len(block_set.sizes),
        series=list(block_set.series),
        source=block_set.source,
        standing="published" if block_set.how == "published" else "from memory",
        note=block_set.note,
    )


def _detail(name: str) -> BlockSetDetail | None:
    block_set = built_in_sets().get(name)
    if block_set is None:
        return None
    sizes = [from_tenth_nm(size, block_set.units) for size in block_set.sizes]
    return BlockSetDetail(**dict(_entry(block_set)), sizes=sizes)


OPERATIONS = (
    Operation(
        topic="blocks",
        verb="stack",
        title="Stack of gauge blocks",
        summary="The fewest gauge blocks that build a height, from a built-in set or from the "
        "blocks that the shop has; proved: no smaller stack exists.",
        request=BlockStackRequest,
        result=BlockStackResult,
        calculate=stack,
        relations=("total = Σ blocks, each block used at most as often as it is there",),
        sources=(_METHOD, _SETS),
        example={"units": "in", "height": 2.5, "set": "inch-81"},
        largest_request="500 blocks whose sizes share a step of which the highest stack holds at "
        "most 40 million",
    ),
)

COLLECTIONS = (
    Collection(
        topic="blocks",
        name="sets",
        singular="set",
        key="name",
        title="Built-in sets of gauge blocks",
        summary="Sets by count and series, each with its source. No standard fixes the composition "
        "of a set: check it against your box.",
        listing=BlockSetList,
        rows=lambda: BlockSetList(sets=[_entry(s) for s in built_in_sets().values()]),
        item=BlockSetDetail,
        get=_detail,
        keys=lambda: tuple(built_in_sets()),
        sources=(_SETS,),
    ),
)
