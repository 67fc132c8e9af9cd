"""Places in a JSON document, and patterns of places as a changelog writes them.

A place is a tuple of names and list positions: `("box", 0, "size")`. A pattern is its text with
`[]` for any position: `box[].size`. `*` stands for any one name, and `**.` for any depth, none
included: `**.verdict` is `verdict` at the top and everywhere below. `box[0]` is the first entry.
A pattern covers what it names and all below it.
"""

import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from functools import cache
from typing import Any

Place = tuple[str | int, ...]
Json = Any

_SEGMENT = re.compile(r"(?P<name>[^.\[\]]+)?(?P<positions>(?:\[[0-9]*\])*)")


@dataclass(frozen=True)
class Any_:  # noqa: N801  not typing's
    """A wildcard of a pattern, as it is written."""

    sign: str


class Key(str):
    """The place of a row in a list whose rows are told apart by a name, not by their position."""

    __slots__ = ()


ANY_NAME, ANY_POSITION, ANY_DEPTH = Any_("*"), Any_("[]"), Any_("**")
Pattern = tuple[str | int | Any_, ...]


@cache
def parse_pattern(text: str) -> Pattern:
    """Read a pattern.

    >>> parse_pattern("box[].size")
    ('box', Any_(sign='[]'), 'size')

    Raises ValueError where the text is no pattern.
    """
    if not text:
        return ()
    made: list[str | int | Any_] = []
    for part in text.split("."):
        found = _SEGMENT.fullmatch(part)
        if not part or found is None:
            raise ValueError(f"{text!r} is not a path: write names, dots, [] or [0], * and **")
        name = found["name"]
        if name is not None:
            made.append({"*": ANY_NAME, "**": ANY_DEPTH}.get(name, name))
        for position in re.findall(r"\[([0-9]*)\]", found["positions"]):
            made.append(int(position) if position else ANY_POSITION)
    if made and made[-1] is ANY_DEPTH:
        raise ValueError(f"{text!r} ends with **: name the field")
    return tuple(made)


def written(place: Iterable[str | int | Any_]) -> str:
    """Write a place or pattern as text.

    >>> written(("box", 0, "size"))
    'box[0].size'
    """
    text = ""
    for part in place:
        if isinstance(part, int):
            text += f"[{part}]"
        elif part is ANY_POSITION:
            text += "[]"
        else:
            name = part.sign if isinstance(part, Any_) else part
            text += f".{name}" if text else name
    return text


def general(place: Place) -> str:
    """Write a place with `[]` for each list position, so that the same places of lists group."""
    return written(ANY_POSITION if isinstance(part, int | Key) else part for part in place)


@dataclass(frozen=True)
class Match:
    """A pattern that covers a place: how many of its segments, and what the wildcards stand for."""

    length: int
    caught: tuple[Place, ...]


def match(pattern: Pattern, place: Place) -> Match | None:
    """Match a pattern against the start of a place; the shortest match where several are."""
    return _match(pattern, place, 0, ())


def _match(pattern: Pattern, place: Place, at: int, caught: tuple[Place, ...]) -> Match | None:
    if not pattern:
        return Match(at, caught)
    first, rest = pattern[0], pattern[1:]
    if first is ANY_DEPTH:
        for end in range(at, len(place) + 1):
            found = _match(rest, place, end, (*caught, place[at:end]))
            if found:
                return found
        return None
    if at >= len(place):
        return None
    part = place[at]
    if first is ANY_NAME or first is ANY_POSITION:
        fits = isinstance(part, str) if first is ANY_NAME else isinstance(part, int | Key)
        return _match(rest, place, at + 1, (*caught, (part,))) if fits else None
    return _match(rest, place, at + 1, caught) if first == part else None


def filled(pattern: Pattern, caught: Sequence[Place]) -> Place:
    """Give the place that a pattern names once its wildcards stand for what was caught."""
    made: list[str | int] = []
    left = iter(caught)
    for part in pattern:
        if isinstance(part, Any_):
            made.extend(next(left))
        else:
            made.append(part)
    return tuple(made)


def wildcards(pattern: Pattern) -> tuple[Any_, ...]:
    """Give the wildcards of a pattern in order."""
    return tuple(part for part in pattern if isinstance(part, Any_))


def leaves(document: Json, at: Place = ()) -> Iterator[tuple[Place, Json]]:
    """Give every value of a document that holds no other, with its place; `[]` and `{}` are such.

    >>> list(leaves({"box": [{"size": 1}], "more": []}))
    [(('box', 0, 'size'), 1), (('more',), [])]
    """
    if isinstance(document, dict) and document:
        for name, value in document.items():
            yield from leaves(value, (*at, name))
    elif isinstance(document, list) and document:
        for position, value in enumerate(document):
            yield from leaves(value, (*at, position))
    else:
        yield at, document


def rebuilt(found: Iterable[tuple[Place, Json]]) -> Json:
    """Make the document of its leaves; positions of a list that are left out close up.

    >>> rebuilt([(("box", 1, "size"), 1), (("box", 4, "size"), 2)])
    {'box': [{'size': 1}, {'size': 2}]}
    """
    parts: dict[str | int, list[tuple[Place, Json]]] = {}
    for place, value in found:
        if not place:
            # A value where an object should be keeps its place: it is what a wrong request sent.
            return value
        parts.setdefault(place[0], []).append((place[1:], value))
    if parts and all(isinstance(part, int) for part in parts):
        order = sorted(part for part in parts if isinstance(part, int))
        return [rebuilt(parts[part]) for part in order]
    return {str(part): rebuilt(inside) for part, inside in parts.items()}


def covers(pattern: Pattern, place: Place) -> bool:
    """True where the pattern names this place or one above it."""
    return match(pattern, place) is not None


def keyed(document: Json, lists: Sequence[tuple[Pattern, str]], at: Place = ()) -> Json:
    """Give a document whose lists named are objects by the value of a field of their rows."""
    if isinstance(document, dict):
        return {name: keyed(value, lists, (*at, name)) for name, value in document.items()}
    if not isinstance(document, list):
        return document
    rows = [keyed(value, lists, (*at, position)) for position, value in enumerate(document)]
    for pattern, field in lists:
        found = match(pattern, at)
        if found and found.length == len(at) and all(_has(row, field) for row in rows):
            return _by_key(rows, field)
    return rows


def _has(row: Json, field: str) -> bool:
    return isinstance(row, dict) and isinstance(row.get(field), str | int | float)


def _by_key(rows: Iterable[dict[str, Json]], field: str) -> Json:
    made: dict[str, Json] = {}
    for row in rows:
        name, again = str(row[field]), 1
        while Key(name) in made:
            again += 1
            name = f"{row[field]} ({again})"
        made[Key(name)] = row
    return made
