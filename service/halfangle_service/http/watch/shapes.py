"""The shape of a request that took long: how much of what, and never a value of it."""

from collections.abc import Iterator
from typing import Any

from pydantic_core import from_json

from halfangle_service.fields.glossary import glossary

_MOST_LISTS = 5


def shape_of(body: bytes) -> dict[str, object]:
    """Bytes, names and values of a request, its longest text, and its longest lists by their path.

    A name that is no field of any request is the caller's own, so it is told as `other`.

    >>> shape_of(b'{"sizes": [1, 2, 3], "mine": "secret"}')
    {'bytes': 38, 'names': 2, 'values': 4, 'longest_text': 6, 'lists': {'sizes': 3}}
    """
    sent = from_json(body)
    names, values, longest = 0, 0, 0
    lists: dict[str, int] = {}
    for path, value in _parts(sent, ""):
        if isinstance(value, dict):
            names += len(value)
        elif isinstance(value, list):
            lists[path] = max(len(value), lists.get(path, 0))
        else:
            values += 1
            longest = max(longest, len(value)) if isinstance(value, str) else longest
    longest_lists = sorted(lists.items(), key=lambda item: -item[1])[:_MOST_LISTS]
    return {
        "bytes": len(body),
        "names": names,
        "values": values,
        "longest_text": longest,
        "lists": dict(longest_lists),
    }


def _parts(value: Any, path: str) -> Iterator[tuple[str, Any]]:
    """Every value within a value, itself too, with the names that lead there."""
    yield path, value
    if isinstance(value, dict):
        for name, within in value.items():
            known = name if name in glossary() else "other"
            yield from _parts(within, f"{path}.{known}" if path else known)
    elif isinstance(value, list):
        for within in value:
            yield from _parts(within, path)
