"""Several stacks at once: models to maths and back."""

from collections.abc import Iterator, Sequence

from halfangle_service.errors import Disagreement, Unreachable
from halfangle_service.fields.advisories import Advisory, note
from halfangle_service.operation import Operation, Outcome
from halfangle_service.topics.blocks.models_stacks import (
    BlockNamedStack,
    BlockStacksRequest,
    BlockStacksResult,
)
from halfangle_service.topics.blocks.operations_stack import GRADES, SETS
from halfangle_service.topics.blocks.several import (
    LARGEST,
    METHOD,
    Chosen,
    Several,
    best_of,
    left_out,
    not_all,
    read_several,
    to_height,
)

BOUND_WORDS = (
    "The bound on the work was reached: these stacks can be built, but fewer blocks, or more of "
    "the heights, may be possible."
)


def stacks(request: BlockStacksRequest) -> Outcome[BlockStacksResult]:
    """Several stacks from one box, no block used twice."""
    _require_distinct([entry.name for entry in request.heights])
    heights = [
        to_height(entry.name, entry.height, entry.tolerance, request.units, f"heights/{place}")
        for place, entry in enumerate(request.heights)
    ]
    several = read_several(request, heights, len(heights), request.max_blocks)
    chosen = best_of(several, range(len(heights)))
    if not chosen.indices:
        raise _none_at_all(several, chosen)
    result = _result(several, chosen)
    return Outcome(result, (*several.supply.advisories, *_advisories(several, result)))


def _require_distinct(names: Sequence[str]) -> None:
    for place, name in enumerate(names):
        if name in names[:place]:
            raise Disagreement(
                f"{name!r} names two of heights.",
                fields={f"heights/{place}/name": "should differ from those before it"},
            )


def _none_at_all(several: Several, chosen: Chosen) -> Unreachable:
    left = [left_out(several, place, chosen) for place in range(len(several.heights))]
    return Unreachable(
        f"None of the heights can be built. {left[0].reason}",
        fields={f"heights/{place}/height": entry.reason for place, entry in enumerate(left)},
        more={"left_out": [entry.model_dump() for entry in left]},
    )


def _result(several: Several, chosen: Chosen) -> BlockStacksResult:
    placed = zip(chosen.indices, chosen.stacks, strict=True)
    built = [
        BlockNamedStack(name=several.heights[place].name, **several.facts(place, positions, nth))
        for nth, (place, positions) in enumerate(placed)
    ]
    left = [place for place in range(len(several.heights)) if place not in chosen.indices]
    wear = several.wear_ends * len(built)
    return BlockStacksResult(
        complete=not left,
        stacks=built,
        left_out=[left_out(several, place, chosen) for place in left],
        count=chosen.count + wear,
        fewest_possible=min(chosen.count, chosen.bound) + wear,
        most_possible=chosen.most,
        proved=chosen.proved,
        bound=None if chosen.proved else BOUND_WORDS,
    )


def _advisories(several: Several, result: BlockStacksResult) -> Iterator[Advisory]:
    yield from not_all(several, [entry.name for entry in result.left_out], "")
    if not result.proved:
        gap = result.count - result.fewest_possible
        more = result.most_possible - len(result.stacks)
        words = f" At most {more} more of the heights can stand." if more else ""
        yield note(
            "bound-reached",
            f"{BOUND_WORDS} The number of blocks is at most {gap} too many for these heights."
            f"{words}",
        )


STACKS = Operation(
    topic="blocks",
    verb="stacks",
    title="Several stacks at once",
    summary="Stacks for several heights from one box, no block used twice, the fewest blocks "
    "overall; or why they cannot all stand at once, and the most of them that can.",
    request=BlockStacksRequest,
    result=BlockStacksResult,
    calculate=stacks,
    relations=("count = Σ blocks over the stacks, each block in one stack at most",),
    sources=(METHOD, SETS, GRADES),
    example={
        "units": "in",
        "set": "inch-81",
        "heights": [
            {"name": "base", "height": 2.2361},
            {"name": "top", "height": 2.5},
        ],
    },
    largest_request=LARGEST,
    heavy=True,
)
