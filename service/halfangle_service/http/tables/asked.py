"""Fields of a request by the names that headers and parameters give them.

A name is the path of a field, its parts joined by dots: `angle`, `shank.kind`. Of a list of objects
one entry is reached by its place (`box.0.size`), or the same field of all entries at once, as a
list (`settings.angle`); where its objects need but one value, the list's own name states that.
"""

from collections.abc import Iterator, Mapping
from copy import deepcopy
from dataclasses import dataclass
from difflib import get_close_matches
from functools import cache
from typing import Any

from pydantic import BaseModel

from halfangle_service.fields.schemas import schema_of
from halfangle_service.http.tables.schemas import Shape

#: A part of a path: a field, the place of an entry, or each entry of a list in turn.
EACH = None
Path = tuple[str | int | None, ...]


class NoField(Exception):
    """A name that is no field which one cell can state, and why."""


@dataclass(frozen=True, slots=True)
class Asked:
    """A field of a request: where it stands, the JSON types of its value, and its unit."""

    path: Path
    types: frozenset[str]
    is_list: bool
    units: frozenset[str]

    @property
    def first_place(self) -> Path:
        """Its path, of several entries the first's."""
        return tuple(0 if part is EACH else part for part in self.path)


class RequestFields:
    """The fields of one operation's request."""

    def __init__(self, model: type[BaseModel]) -> None:
        self._whole = Shape.of_whole(schema_of(model))
        self._names = [*_names(self._whole, "", 0)]

    def find(self, name: str) -> Asked:
        """Give the field of this name; raises NoField."""
        path: list[str | int | None] = []
        shape = self._whole
        for part in name.split("."):
            if part in shape.fields:
                shape = shape.fields[part]
            elif shape.entries.is_object and part.isascii() and part.isdigit():
                place = int(part[:9])
                if place >= shape.most_entries:
                    raise NoField(
                        f"is past the {shape.most_entries} entries that the list may have"
                    )
                path.append(place)
                shape = shape.entries
                continue
            elif part in shape.entries.fields:
                path.append(EACH)
                shape = shape.entries.fields[part]
            else:
                raise NoField(f"is not a field of this request{self.meant(name)}")
            path.append(part)
        return self._single(name, path, shape)

    def _single(self, name: str, path: list[str | int | None], shape: Shape) -> Asked:
        """What one cell states of a field; raises NoField where it cannot."""
        entries = shape.entries
        if not shape.scalars and not entries.scalars and len(entries.required) == 1:
            (needed,) = entries.required
            path += [EACH, needed]
            shape, entries = entries.fields[needed], entries.fields[needed].entries
        types = shape.scalars | entries.scalars
        if not types:
            parts = [*shape.fields, *entries.fields]
            raise NoField(f"has fields of its own: {', '.join(f'{name}.{p}' for p in parts[:8])}")
        each = EACH in path
        if each and entries.scalars:
            raise NoField("holds lists in a list, which no cell can state")
        return Asked(tuple(path), types, each or bool(entries.scalars), shape.units | entries.units)

    def meant(self, name: str) -> str:
        """What a name that is none may have meant, as the end of a sentence."""
        found = self.near(name)
        return f"; did you mean {' or '.join(found)}?" if found else ""

    def near(self, name: str, cutoff: float = 0.6) -> list[str]:
        """The names nearest to one that is none."""
        if not 2 <= len(name) <= 100:
            return []
        found = get_close_matches(name.lower(), self._names, n=2, cutoff=cutoff)
        inside = [known for known in self._names if name in known][:3]
        return found or (inside if cutoff <= 0.6 else [])


def request_fields(model: type[BaseModel]) -> RequestFields:
    """The fields of a request by name."""
    return _request_fields(model)


_request_fields = cache(RequestFields)


def _names(shape: Shape, prefix: str, depth: int) -> Iterator[str]:
    if depth > 5:
        return
    for name, field in shape.fields.items():
        path = f"{prefix}{name}"
        if field.scalars or field.entries.scalars or len(field.entries.required) == 1:
            yield path
        yield from _names(field, f"{path}.", depth + 1)
        yield from _names(field.entries, f"{path}.", depth + 1)


class Claims:
    """Which name states which part of a request, so that no two state the same."""

    def __init__(self) -> None:
        self._names: dict[Path, str] = {}

    def __contains__(self, name: str) -> bool:
        """True where this name states something."""
        return name in self._names.values()

    def claim(self, name: str, field: Asked) -> None:
        """Note what a name states; raises NoField where another states it, or a part of it."""
        path = field.first_place
        for known, other in self._names.items():
            short = min(len(path), len(known))
            if path[:short] == known[:short]:
                raise NoField("is given twice" if name == other else f"states what {other} states")
        self._names[path] = name


class Filling:
    """A request that is being filled in."""

    def __init__(self, root: Mapping[str | int, Any] | None = None) -> None:
        self._root: dict[str | int, Any] = dict(root or {})

    def copy(self) -> "Filling":
        """The same, to be filled in further."""
        parts = self._root.items()
        return Filling({k: deepcopy(v) if isinstance(v, dict | list) else v for k, v in parts})

    def put(self, field: Asked, value: Any) -> None:
        """Put the value of a field; the entries of a list that each entry takes one of."""
        if EACH not in field.path:
            self._put(field.path, value)
            return
        at = field.path.index(EACH)
        for place, entry in enumerate(value):
            if entry != "":
                self._put((*field.path[:at], place, *field.path[at + 1 :]), entry)

    def _put(self, path: Path, value: Any) -> None:
        inside: Any = self._root
        for part in path[:-1]:
            inside = inside.setdefault(part, {})
        inside[path[-1]] = value

    def value(self) -> Any:
        """The request as JSON data."""
        return _with_lists(self._root)


def _with_lists(value: Any) -> Any:
    """The same with what was filled in by place as a list; what is missing between is empty."""
    if not isinstance(value, dict):
        return value
    if any(isinstance(key, int) for key in value):
        return [_with_lists(value.get(place, {})) for place in range(max(value) + 1)]
    return {key: _with_lists(part) for key, part in value.items()}
