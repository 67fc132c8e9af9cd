"""Several stacks at once: models to maths and back."""

from collections.abc import Iterator, Sequence

from halfangle_service.errors import Disagreement, Unreachable
from halfangle_service.operation import Advisory, Operation, Outcome, caution, note
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
    read_several,
    to_height,
    why_unbuildable,
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
    chosen = best_of(several.search, range(len(heights)))
    if not chosen.indices:
        raise _none_at_all(several)
    result = _result(several, chosen)
    return Outcome(result, (*several.supply.advisories, *_advisories(result)))


def _require_distinct(names: Sequence[str]) -> None:
    for place, name in enumerate(names):
        if name in names[:place]:
            raise Disagreement(
                f"{name!r} names two of heights.",
                fields={f"heights/{place}/name": "should differ from those before it"},
            )


def _none_at_all(several: Several) -> Unreachable:
    reasons = [why_unbuildable(several, place) for place in range(len(several.heights))]
    return Unreachable(
        f"None of the heights can be built. {reasons[0]}",
        fields={f"heights/{place}/height": reason for place, reason in enumerate(reasons)},
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
        proved=chosen.proved,
        bound=None if chosen.proved else BOUND_WORDS,
    )


def _advisories(result: BlockStacksResult) -> Iterator[Advisory]:
    if not result.complete:
        names = ", ".join(entry.name for entry in result.left_out)
        yield caution(
            "not-all-heights",
            f"These stacks cannot all stand at once: {names} left out. Build in turn, take more "
            "blocks a stack, or borrow a block.",
        )
    if not result.proved:
        gap = result.count - result.fewest_possible
        yield note(
            "bound-reached", f"{BOUND_WORDS} The number of blocks is at most {gap} too many."
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
