"""Which settings can share a stack: heights that several tolerances have in common. 0.1 nm."""

from collections.abc import Sequence
from dataclasses import dataclass

from halfangle_service.trade.stacks.search.stacking import StackTable


@dataclass(frozen=True, slots=True)
class Shared:
    """A height that serves the wanted ones at these `places`."""

    height: int
    places: tuple[int, ...]


def shared_stacks(table: StackTable, wanted: Sequence[Sequence[int]]) -> list[Shared]:
    """Give heights that each serve two or more of those wanted, none of which is served twice.

    `wanted` holds for each setting the heights that will do, nearest first. The height that serves
    most comes first; of those that serve as many the one that is nearest for them, then the one of
    fewer blocks.
    """
    left = {
        place: {height: rank for rank, height in enumerate(w)} for place, w in enumerate(wanted)
    }
    shared: list[Shared] = []
    while True:
        served: dict[int, list[int]] = {}
        for place, heights in left.items():
            for height in heights:
                served.setdefault(height, []).append(place)
        best = min(
            (height for height, places in served.items() if len(places) > 1),
            key=lambda height: (
                -len(served[height]),
                sum(left[place][height] for place in served[height]),
                table.count(height),
                height,
            ),
            default=None,
        )
        if best is None:
            return shared
        shared.append(Shared(best, tuple(served[best])))
        for place in served[best]:
            del left[place]
