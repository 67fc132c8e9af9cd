"""Finds which column is which field by its header."""

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from difflib import get_close_matches

from halfangle_client.cli.contract import Field, hint
from halfangle_client.fill._books.cells import column_of, letters
from halfangle_client.fill.errors import MapRefused
from halfangle_client.fill.units import fits, length_unit_of, name_and_unit, sign_of

_ENDINGS = ("_arcsec", "_celsius", "_percent")


@dataclass(frozen=True, slots=True)
class Header:
    """A cell of the header row."""

    column: int
    text: str

    def __str__(self) -> str:
        return f"column {letters(self.column)} {self.text!r}"

    @property
    def words(self) -> str:
        """Its name in plain form, without its unit."""
        return plain(name_and_unit(self.text)[0])

    @property
    def unit(self) -> str:
        """The unit that it states; nothing where it states none."""
        return name_and_unit(self.text)[1]


@dataclass(frozen=True, slots=True)
class Input:
    """A field, and the columns that its value comes from: several of a list."""

    field: Field
    columns: tuple[int, ...]
    header: str


@dataclass(frozen=True, slots=True)
class Labels:
    """What fields are called and measured in, by the service's glossary."""

    glossary: Mapping[str, Mapping[str, str | None]]

    def title(self, name: str) -> str:
        """Title of a field, of a dotted name that of its last part."""
        return self._entry(name).get("title") or ""

    def unit(self, name: str) -> str:
        """Unit of a field."""
        return self._entry(name).get("unit") or ""

    def _entry(self, name: str) -> Mapping[str, str | None]:
        return self.glossary.get(name.rpartition(".")[2], {})


def plain(text: str) -> str:
    """A name with case, spaces, hyphens and underscores forgiven.

    >>> plain("  Center_Distance "), plain("center-distance")
    ('center distance', 'center distance')
    """
    return " ".join(re.sub(r"[\s_\-]+", " ", text).casefold().split())


def inputs_by_header(
    headers: Sequence[Header], fields: Sequence[Field], labels: Labels, units: str
) -> list[Input]:
    """Fields whose name, or title, a header is. Raises MapRefused where two could be meant.

    `units` are those of the request's lengths, where they are known.
    """
    names = {plain(field.name): [field] for field in fields}
    titles: dict[str, list[Field]] = {}
    for each in fields:
        for word in {plain(labels.title(each.name)), plain(_without_unit(each.name))} - {""}:
            titles.setdefault(word, []).append(each)
    found: dict[str, tuple[Field, Header]] = {}
    for header in headers:
        meant = names.get(header.words) or titles.get(header.words) or []
        # Of a title that parts of objects share with a field of the request, that field is meant.
        meant = [f for f in meant if "." not in f.name] or meant
        if not meant:
            continue
        if len(meant) > 1:
            raise MapRefused(
                f"{header} may be {' or '.join(field.name for field in meant)}: name it by the "
                "field, or say which in the map."
            )
        field = meant[0]
        if field.name in found:
            raise MapRefused(
                f"{found[field.name][1]} and {header} are both {field.name}: say which in the map."
            )
        require_unit(header, field, labels, units)
        found[field.name] = (field, header)
    return [Input(field, (header.column,), header.text) for field, header in found.values()]


def inputs_by_map(
    headers: Sequence[Header],
    fields: Sequence[Field],
    columns: Mapping[str, str | Sequence[str]],
    labels: Labels,
    units: str,
) -> list[Input]:
    """Fields with the columns that the map names for them. Raises MapRefused."""
    by_name = {field.name: field for field in fields}
    by_column = {header.column: header for header in headers}
    found: list[Input] = []
    taken: dict[int, str] = {}
    for name, said in columns.items():
        field = by_name.get(name)
        if field is None:
            raise MapRefused(f"the operation has no field {name!r}{hint(name, list(by_name))}.")
        words = [said] if isinstance(said, str) else list(said)
        if len(words) > 1 and not field.many:
            raise MapRefused(f"{name} takes one value: name one column, not {len(words)}.")
        places = tuple(column_named(word, headers) for word in words)
        for place in places:
            if place in taken:
                raise MapRefused(
                    f"column {letters(place)} is named for {taken[place]} and for {name}."
                )
            taken[place] = name
            if place in by_column:
                require_unit(by_column[place], field, labels, units)
        header = by_column.get(places[0])
        found.append(Input(field, places, header.text if header else ""))
    return found


def column_named(word: str, headers: Sequence[Header]) -> int:
    """The column of a header, or of letters. Raises MapRefused."""
    exact = [h for h in headers if h.text.strip() == word.strip()]
    alike = exact or [h for h in headers if plain(word) in {h.words, plain(h.text)}]
    by_letters = column_of(word) if word.isupper() else None
    if len(alike) > 1:
        raise MapRefused(f"{' and '.join(map(str, alike))} are alike: name one by its letters.")
    others = {header.column for header in headers} - {header.column for header in alike}
    if alike and by_letters in others:
        raise MapRefused(f"{word!r} is the header of {alike[0]}, and another column's letters.")
    if alike:
        return alike[0].column
    if by_letters is not None:
        return by_letters
    known = [header.text for header in headers]
    raise MapRefused(f"no column has the header {word!r}{hint(word, known)}.")


def require_unit(header: Header, field: Field, labels: Labels, units: str) -> None:
    """Refuse a header whose unit is not that of its field. Raises MapRefused."""
    unit = labels.unit(field.name)
    if header.unit and unit and not fits(header.unit, unit, units):
        wanted = sign_of(unit, units or "in or mm") or unit
        raise MapRefused(f"{header}: the field {field.name} is in {wanted!r}.")


def length_unit(headers: Sequence[Header]) -> str:
    """`in` or `mm` where headers state one; raises MapRefused where they state both."""
    stated = {length_unit_of(header.unit): header for header in headers}
    stated.pop("", None)
    if len(stated) > 1:
        both = " and ".join(map(str, stated.values()))
        raise MapRefused(f"{both}: all lengths of a request are in one unit.")
    return next(iter(stated), "")


def near_misses(
    headers: Sequence[Header], fields: Sequence[Field], labels: Labels
) -> Iterator[tuple[Header, str]]:
    """Headers that are almost a field's name, each with that name."""
    words = {plain(field.name): field.name for field in fields}
    words |= {plain(labels.title(f.name)): f.name for f in fields if labels.title(f.name)}
    for header in headers:
        near = get_close_matches(header.words, list(words), n=1, cutoff=0.75)
        if near:
            yield header, words[near[0]]


def _without_unit(name: str) -> str:
    for ending in _ENDINGS:
        name = name.removesuffix(ending)
    return name
