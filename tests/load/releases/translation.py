"""From one release to the next: a request in its new names, an answer as it is to be expected."""

import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field
from decimal import Decimal
from typing import TypeVar

from releases.changelog import Changelog
from releases.entries import Entry, FieldEntry, RequestEntry, TreeEntry, When
from releases.paths import (
    ANY_POSITION,
    Json,
    Key,
    Pattern,
    Place,
    covers,
    filled,
    keyed,
    leaves,
    match,
    parse_pattern,
    rebuilt,
    written,
)

E = TypeVar("E", bound=Entry)

_DMS = re.compile(r"[+-]?[0-9]{1,3}[°: ].*")
_PART = re.compile(r"[0-9]+(?:\.[0-9]+)?")


@dataclass(frozen=True)
class Answer:
    """What a service said: the HTTP status and the document."""

    status: int
    document: Json

    @property
    def kind(self) -> str:
        """`answered`, or the kind of the problem."""
        if self.status == 200:
            return "answered"
        return str(self.document.get("type", "?")).rpartition("/")[2]

    @property
    def detail(self) -> str:
        """The problem's sentence; empty for an answer."""
        return "" if self.status == 200 else str(self.document.get("detail", ""))

    @property
    def advisories(self) -> list[dict[str, str]]:
        """The advisories; none of a problem."""
        return list(self.document["advisories"]) if self.status == 200 else []


@dataclass(frozen=True)
class Situation:
    """What `when` is judged by: the request in its names before, and what was answered."""

    request: Json
    before: Answer | None = None
    after: Answer | None = None
    _leaves: list[tuple[Place, Json]] = field(default_factory=list)

    def __post_init__(self) -> None:
        self._leaves.extend(leaves(self.request))

    def holds(self, when: When) -> bool:
        """True where all conditions are fulfilled."""
        return (
            all(self._sent(path) for path in when.sent)
            and not any(self._sent(path) for path in when.not_sent)
            and all(self._equals(path, value) for path, value in when.equals.items())
            and (when.advisory is None or when.advisory in self._codes())
            and (when.kind is None or (self.before is not None and self.before.kind == when.kind))
            and (when.detail is None or self._says(when.detail))
        )

    def _sent(self, path: str) -> bool:
        pattern = parse_pattern(path)
        return any(value is not None and covers(pattern, place) for place, value in self._leaves)

    def _equals(self, path: str, wanted: Json) -> bool:
        pattern = parse_pattern(path)
        return any(value == wanted and covers(pattern, place) for place, value in self._leaves)

    def _codes(self) -> set[str]:
        answers = [a for a in (self.before, self.after) if a is not None]
        return {entry["code"] for answer in answers for entry in answer.advisories}

    def _says(self, detail: str) -> bool:
        return self.before is not None and re.search(detail, self.before.detail) is not None


def moved(place: Place, entries: Iterable[FieldEntry], *, count: bool = True) -> Place:
    """Give the place after: the deepest change first, then what changes above it.

    An entry changes the segments in which its two paths differ; another one that changes any of
    these too is left aside. The more exact of two entries for one place counts.
    """
    found = [(entry, hit) for entry in entries if (hit := match(entry.pattern, place))]
    found = [(entry, hit) for entry, hit in found if entry.to is not None]
    found.sort(key=lambda pair: (-pair[1].length, len(pair[1].caught)))
    untouched = len(place)
    for entry, hit in found:
        if hit.length > untouched:
            continue
        old, new = place[: hit.length], filled(entry.target, hit.caught)
        place = new + place[hit.length :]
        if count:
            entry.use()
        untouched = _common(old, new)
    return place


def _common(old: Place, new: Place) -> int:
    """How many first segments two places share, the last one aside."""
    most = min(len(old), len(new)) - 1
    return next((i for i in range(most) if old[i] != new[i]), max(most, 0))


def converted(value: Json, place: Place, entries: Iterable[FieldEntry]) -> Json:
    """Give a value in its option or unit after."""
    for entry in entries:
        hit = match(entry.pattern, place)
        if hit is None or any(isinstance(part, str) for part in place[hit.length :]):
            continue
        if entry.values and (name := _option(value)) in entry.values:
            entry.use(f"values: {name}")
            value = entry.values[name]
        elif entry.factor is not None:
            value = _in_other_unit(value, entry)
    return value


def _option(value: Json) -> str:
    """Write an option as a key of a table."""
    if isinstance(value, bool):
        return str(value).lower()
    return value if isinstance(value, str) else repr(value)


def _in_other_unit(value: Json, entry: FieldEntry) -> Json:
    """Multiply in decimals: 0.07 times 100 is 7, as a person would write it."""
    if isinstance(value, str):
        degrees = _degrees(value)
    elif isinstance(value, bool) or not isinstance(value, int | float):
        degrees = None
    else:
        degrees = Decimal(repr(value))
    if degrees is None or entry.factor is None:
        return value
    entry.use()
    return float(degrees * Decimal(repr(entry.factor)))


def _degrees(text: str) -> Decimal | None:
    """Read an angle in degrees, minutes and seconds, the rest of a request being none."""
    if not _DMS.fullmatch(text):
        return None
    parts = [Decimal(part) for part in _PART.findall(text)][:3]
    size = sum((part / 60**place for place, part in enumerate(parts)), Decimal(0))
    return -size if text.startswith("-") else size


def in_force(entries: Iterable[E], situation: Situation) -> list[E]:
    """Give the entries whose condition holds."""
    return [entry for entry in entries if situation.holds(entry.when)]


def translated_request(body: Json, changelog: Changelog) -> Json:
    """Give a request in the names, options and units after; wrong ones stay as wrong."""
    if not isinstance(body, dict):
        return body
    entries = in_force(changelog.request, Situation(body))
    made = [
        (moved(place, entries), converted(value, place, entries))
        for place, value in leaves(body)
        if place and not _dropped(place, entries)
    ]
    made += _newly_sent(entries, {place for place, _ in made})
    return rebuilt(made)


def _dropped(place: Place, entries: Iterable[RequestEntry]) -> bool:
    dropping = [e for e in entries if e.dropped and covers(e.pattern, place)]
    for entry in dropping:
        entry.use()
    return bool(dropping)


def _newly_sent(entries: Iterable[RequestEntry], sent: set[Place]) -> Iterator[tuple[Place, Json]]:
    for entry in entries:
        if entry.new is None:
            continue
        place = filled(entry.pattern, ())
        if not any(other[: len(place)] == place for other in sent):
            entry.use()
            yield place, entry.new


@dataclass(frozen=True)
class Expected:
    """A value as it should be after, where it was before, and the entries about that place."""

    value: Json
    was: Place
    before: Json
    entries: tuple[TreeEntry, ...]
    renamed: bool


@dataclass
class Expectation:
    """All values of an answer as they should be after, by their place."""

    at: dict[Place, list[Expected]] = field(default_factory=dict)
    gone: dict[Place, TreeEntry] = field(default_factory=dict)


def expected(document: Json, entries: Sequence[TreeEntry]) -> Expectation:
    """Give what an answer of the release before should be at the release after."""
    made = Expectation()
    lists = [(entry.pattern, entry.keyed) for entry in entries if entry.keyed is not None]
    for place, value in leaves(keyed(document, lists)):
        about = tuple(entry for entry in entries if covers(entry.pattern, place))
        keys = _keys_after(place, entries)
        new_place = tuple(
            keys.get(part, part) if isinstance(part, Key) else part
            for part in moved(place, entries)
        )
        gone = next((entry for entry in about if entry.gone), None)
        if gone is not None:
            gone.use()
            made.gone[new_place] = gone
            continue
        new_value = converted(value, place, entries)
        renamed = (new_place, new_value) != (place, value)
        wanted = Expected(new_value, place, value, about, renamed)
        made.at.setdefault(new_place, []).append(wanted)
    return made


def keyed_after(document: Json, entries: Sequence[TreeEntry]) -> Json:
    """Give an answer of the release after with its lists by name where the entries say so."""
    lists = []
    for entry in entries:
        if entry.keyed is not None:
            entry.use()
            key = place_after(parse_pattern(entry.path + "[]." + entry.keyed), entries)
            lists.append((place_after(entry.pattern, entries), str(key[-1])))
    return keyed(document, lists)


def place_after(pattern: Pattern, entries: Sequence[FieldEntry]) -> Pattern:
    """Give where the places of a pattern without `*` and `**` are after."""
    if any(part is not ANY_POSITION and not isinstance(part, str | int) for part in pattern):
        return pattern
    stand_in = tuple(0 if part is ANY_POSITION else part for part in pattern)
    after = moved(tuple(p for p in stand_in if isinstance(p, str | int)), entries, count=False)
    return parse_pattern(written(ANY_POSITION if part == 0 else part for part in after))


def _keys_after(was: Place, entries: Sequence[TreeEntry]) -> dict[str | int, Key]:
    """Give the names of the rows on the way to a place, each with its name after."""
    made: dict[str | int, Key] = {}
    for depth, part in enumerate(was):
        if isinstance(part, Key):
            entry = next(e for e in entries if e.keyed and _is_at(e.pattern, was[:depth]))
            entry.use("keyed")
            name = str(entry.keyed)
            made[part] = Key(converted(str(part), (*was[: depth + 1], name), entries))
    return made


def _is_at(pattern: Pattern, place: Place) -> bool:
    """True where the pattern names this very place."""
    hit = match(pattern, place)
    return hit is not None and hit.length == len(place)
