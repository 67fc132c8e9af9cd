"""Names that stand twice in one object of JSON: which of the two was meant cannot be known."""

from collections import Counter
from collections.abc import Iterable
from typing import Any

from halfangle_service.http.problems import ProblemError, pointer_to

Place = tuple[str | int, ...]


class Repeating(dict[str, Any]):
    """An object that names a field twice."""

    name: str


def noting_repetition(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    """Make an object of its pairs, of a kind of its own where a name comes twice."""
    made = dict(pairs)
    if len(made) == len(pairs):
        return made
    repeating = Repeating(pairs)
    counted = Counter(name for name, _ in pairs)
    repeating.name = next(name for name, count in counted.items() if count > 1)
    return repeating


def repetition(value: Any, place: Place) -> Place | None:
    """Where a name is repeated first, looking inward; None where none is."""
    if isinstance(value, Repeating):
        return (*place, value.name)
    parts: Iterable[tuple[str | int, Any]] = ()
    if isinstance(value, dict):
        parts = value.items()
    elif isinstance(value, list):
        parts = enumerate(value)
    for name, part in parts:
        found = repetition(part, (*place, name))
        if found is not None:
            return found
    return None


def named_twice(place: Place) -> ProblemError:
    """What is said of a name that stands twice."""
    return ProblemError(
        "invalid-request",
        f"{str(place[-1])[:60]} is given twice in one object.",
        errors=[{"pointer": pointer_to(*place), "message": "should be given once"}],
    )
