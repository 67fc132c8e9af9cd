"""What differs between an answer before and the answer after, once the changelog is applied."""

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any

from releases.changelog import Changelog
from releases.entries import AdvisoryEntry, Entry, TreeEntry
from releases.paths import Json, Place, covers, general, leaves, match, parse_pattern, written
from releases.texts import Vocabulary, numbers_agree, same_to_digits_shown
from releases.translation import (
    Answer,
    Expectation,
    Expected,
    Situation,
    expected,
    in_force,
    keyed_after,
    moved,
    place_after,
)

ABSENT = object()
#: Rounding that a change of unit may bring: the number is worked out once in the one unit, once in
#: the other.
UNIT_ROUNDING = 1e-12


@dataclass(frozen=True)
class Finding:
    """One difference: where, what was to be expected, what came; `entry` excuses it if given."""

    place: Place
    before: Json
    after: Json
    note: str = ""
    entry: Entry | None = None

    @property
    def group(self) -> str:
        """The same difference in other requests: place without positions, and the note."""
        return f"{general(self.place)}{': ' + self.note if self.note else ''}"


class Comparison:
    """Compares answers of one operation."""

    def __init__(self, operation: str, path_after: str, changelog: Changelog) -> None:
        self.operation = operation
        self.changelog = changelog.of(operation)
        self._path_after = path_after
        self._words = Vocabulary(_renamed_words(self.changelog))
        #: How many values were expected in another place, option or wording than they were before.
        self.renames = 0

    def compare(self, request: Json, before: Answer, after: Answer) -> list[Finding]:
        """Give all differences of one request, the excused ones with the entry that does so."""
        situation = Situation(request, before, after)
        if before.kind != after.kind:
            return [self._refusal(situation, before, after)]
        if before.status != after.status:
            return [Finding(("status",), before.status, after.status)]
        if before.status == 200:
            return list(self._answers(situation, before, after))
        return list(self._problems(situation, before, after))

    def _refusal(self, situation: Situation, before: Answer, after: Answer) -> Finding:
        detail = after.detail if before.status == 200 else before.detail
        for entry in in_force(self.changelog.refusal, situation):
            kinds = (entry.before, entry.after) == (before.kind, after.kind)
            if kinds and re.search(entry.detail, detail):
                entry.use()
                return Finding(("kind",), before.kind, after.kind, "refusal", entry)
        what = f"{before.kind} before, {after.kind} after"
        return Finding(("kind",), before.detail or before.kind, after.detail or after.kind, what)

    def _answers(self, situation: Situation, before: Answer, after: Answer) -> Iterator[Finding]:
        for part, entries in (("result", self.changelog.result), ("basis", self.changelog.basis)):
            old, new = before.document[part], after.document[part]
            if part == "basis":
                # Of the release itself; that there is a fingerprint at all is a change.
                told = ("release", *(("fingerprint",) if "fingerprint" in old else ()))
                old, new = _without(old, *told), _without(new, *told)
            for found in self._trees(old, new, in_force(entries, situation)):
                yield replace(found, place=(part, *found.place))
        yield from self._advisories(situation, before.advisories, after.advisories)
        others = [set(a.document) - {"result", "basis", "advisories"} for a in (before, after)]
        if others[0] != others[1]:
            yield Finding((), sorted(others[0]), sorted(others[1]), "members of the answer")

    def _trees(self, before: Json, after: Json, entries: Sequence[TreeEntry]) -> Iterator[Finding]:
        """Compare two documents under the entries."""
        wanted = expected(before, entries)
        came = dict(leaves(keyed_after(after, entries)))
        for place, values in wanted.at.items():
            for value in values:
                self.renames += value.renamed
                found = self._leaf(place, value, came.get(place, ABSENT))
                if found is not None:
                    yield found
        for place, entry in wanted.gone.items():
            if place in came and place not in wanted.at:
                yield Finding(place, ABSENT, came[place], f"still there ({entry.origin})")
        yield from _unexpected(wanted, came, entries)

    def _leaf(self, place: Place, wanted: Expected, came: Json) -> Finding | None:
        """Compare one value; None where it is the same."""
        if _same(wanted.value, came):
            return None
        found = Finding(place, wanted.value, came)
        for entry in wanted.entries:
            if entry.match is not None and not re.search(entry.match, str(wanted.before)):
                continue
            if _excuses(entry, wanted, came, self._words):
                return replace(found, entry=entry)
        if isinstance(wanted.value, str) and isinstance(came, str):
            return self._sentence(found)
        return found

    def _sentence(self, found: Finding) -> Finding | None:
        """Judge two texts: the same but for names, or for the form of their numbers."""
        if " " not in found.before and " " not in found.after:
            return found
        if self._words.same(found.before, found.after):
            self.renames += 1
            return None
        for entry in self.changelog.number_format:
            old, new = self._words.neutral(found.before), self._words.neutral(found.after)
            if same_to_digits_shown(old, new):
                entry.use()
                return replace(found, entry=entry)
        return found

    def _advisories(
        self, situation: Situation, before: list[dict[str, str]], after: list[dict[str, str]]
    ) -> Iterator[Finding]:
        """Compare advisories in their order, by code."""
        entries = in_force(self.changelog.advisory, situation)
        old = list(_left_of(before, entries, "gone"))
        new = list(_left_of(after, entries, "new"))
        renamed = [_renamed_advisory(advisory, entries) for advisory in old]
        codes = [[a["code"] for a in renamed], [a["code"] for a in new]]
        if codes[0] != codes[1]:
            place: Place = ("advisories",)
            found = Finding(place, codes[0], codes[1], _codes_that_differ(*codes))
            entry = _reordered(old, entries) if sorted(codes[0]) == sorted(codes[1]) else None
            yield replace(found, entry=entry)
            if entry is None:
                return
            order = sorted(range(len(old)), key=lambda i: codes[0][i])
            old, renamed = [old[i] for i in order], [renamed[i] for i in order]
            new = sorted(new, key=lambda a: a["code"])
        for was, wanted, came in zip(old, renamed, new, strict=True):
            about = [e for e in entries if e.covers(was["code"]) and not (e.gone or e.new)]
            yield from self._advisory(wanted, came, about)

    def _advisory(
        self, wanted: Mapping[str, str], came: Mapping[str, str], about: Sequence[AdvisoryEntry]
    ) -> Iterator[Finding]:
        place: Place = ("advisories", wanted["code"])
        if wanted["severity"] != came["severity"]:
            entry = next((e for e in about if e.severity == came["severity"]), None)
            if entry is not None:
                entry.use("severity")
            yield Finding((*place, "severity"), wanted["severity"], came["severity"], "", entry)
        if wanted["message"] != came["message"]:
            found = Finding((*place, "message"), wanted["message"], came["message"])
            entry = next((e for e in about if _reworded(e, found, self._words)), None)
            judged = replace(found, entry=entry) if entry else self._sentence(found)
            if judged is not None:
                yield judged

    def _problems(self, situation: Situation, before: Answer, after: Answer) -> Iterator[Finding]:
        """Compare two problem documents; the order of `errors` says nothing."""
        requests = in_force(self.changelog.request, situation)
        entries = in_force(self.changelog.problem, situation)
        if after.document.get("instance") != self._path_after:
            yield Finding(("instance",), self._path_after, after.document.get("instance"))
        old_errors, new_errors = _errors(before.document), _errors(after.document)
        old, new = (_without(a.document, "instance", "errors") for a in (before, after))
        if before.kind == "invalid-request" and old_errors:
            # The detail says the same again, for the first three errors.
            old, new = _without(old, "detail"), _without(new, "detail")
        yield from self._trees(old, new, [e for e in entries if e.field is None])
        wanted: dict[Place, list[tuple[Place, str]]] = {}
        for place, messages in old_errors.items():
            wanted.setdefault(moved(place, requests), []).extend((place, m) for m in messages)
        for place in sorted({*wanted, *new_errors}, key=written):
            told = wanted.get(place, [])
            about = [e for e in entries if e.path == "errors" and _is_about(e, told, place)]
            scaled = any(_unit_changes(was, requests) for was, _ in told)
            messages = [message for _, message in told]
            yield from self._errors_at(place, messages, new_errors.get(place, []), about, scaled)

    def _errors_at(
        self,
        place: Place,
        before: list[str],
        after: list[str],
        about: Sequence[TreeEntry],
        scaled: bool,
    ) -> Iterator[Finding]:
        """Compare what is said of one field of the request."""
        where: Place = ("errors", written(place) or "the body")
        if sorted(map(self._words.neutral, before)) == sorted(map(self._words.neutral, after)):
            return
        if len(before) != len(after) or not before:
            found = Finding(where, before or ABSENT, after or ABSENT)
            yield replace(found, entry=_first_used(e for e in about if e.changed))
            return
        for old, new in zip(sorted(before), sorted(after), strict=True):
            found = Finding(where, old, new)
            entry = next(
                (e for e in about if _text_excused(e, found, self._words)),
                None,
            )
            judged = replace(found, entry=entry) if entry else self._sentence(found)
            if judged is not None and not (scaled and judged.entry is None):
                yield judged


def _renamed_words(changelog: Changelog) -> Iterator[tuple[str, str]]:
    """Give every old name with its new one, for sentences that hold them."""
    for entry in (*changelog.request, *changelog.result, *changelog.basis, *changelog.problem):
        for old, new in entry.values.items():
            if isinstance(new, str):
                yield old, new
        names = [str(p[-1]) for p in (entry.pattern, entry.target) if p]
        if len(names) == 2 and names[0] != names[1] and not any("[" in n for n in names):
            yield names[0], names[1]
    for advisory in changelog.advisory:
        if advisory.to is not None:
            yield advisory.code, advisory.to
    for operation in changelog.operation:
        if operation.to is not None:
            yield operation.name, operation.to
    for wording in changelog.wording:
        wording.use()
        yield wording.old, wording.to


def _same(wanted: Json, came: Json) -> bool:
    """True for the same JSON value: true is not 1, but 1 is 1.0."""
    if isinstance(wanted, bool) or isinstance(came, bool):
        return wanted is came
    return bool(wanted == came)


def _close(wanted: Json, came: Json, relative: float) -> bool:
    numbers = all(isinstance(v, int | float) and not isinstance(v, bool) for v in (wanted, came))
    return numbers and abs(wanted - came) <= relative * max(abs(wanted), abs(came))


def _excuses(entry: TreeEntry, wanted: Expected, came: Json, words: Vocabulary) -> bool:
    """True where the entry allows this difference; it is then counted."""
    if (
        isinstance(wanted.before, str)
        and isinstance(came, str)
        and came in entry.words.get(wanted.before, ())
    ):
        entry.use(f"words: {wanted.before}")
        return True
    relative = entry.tolerance or (UNIT_ROUNDING if entry.factor else 0.0)
    if relative and came is not ABSENT and _close(wanted.value, came, relative):
        entry.use("excused" if entry.tolerance else "")
        return True
    if entry.changed:
        entry.use("excused")
        return True
    return _reworded(entry, Finding((), wanted.value, came), words)


def _reworded(entry: TreeEntry | AdvisoryEntry, found: Finding, words: Vocabulary) -> bool:
    """True where other words are allowed, and the numbers in them are the same or need not be."""
    both = isinstance(found.before, str) and isinstance(found.after, str)
    if not (entry.reworded and both):
        return False
    if entry.match is not None and not re.search(entry.match, found.before):
        return False
    if words.same(found.before, found.after):
        return False
    if entry.numbers and not numbers_agree(found.before, found.after):
        return False
    entry.use("excused")
    return True


def _text_excused(entry: TreeEntry, found: Finding, words: Vocabulary) -> bool:
    if entry.match is not None and not re.search(entry.match, found.before):
        return False
    if entry.changed:
        entry.use("excused")
        return True
    return _reworded(entry, found, words)


def _first_used(entries: Iterable[TreeEntry]) -> TreeEntry | None:
    for entry in entries:
        entry.use("excused")
        return entry
    return None


def _unexpected(
    wanted: Expectation, came: Mapping[Place, Json], entries: Sequence[TreeEntry]
) -> Iterator[Finding]:
    """Give what came that was not before: new, part of what changed, or a difference."""
    new = [entry for entry in entries if entry.new]
    changed = [(place_after(e.target, entries), e) for e in entries if e.changed]
    for place, value in came.items():
        if place in wanted.at or place in wanted.gone:
            continue
        entry = next((e for e in new if covers(e.pattern, place)), None)
        if entry is not None:
            entry.use()
        else:
            entry = next((e for pattern, e in changed if covers(pattern, place)), None)
            if entry is not None:
                entry.use("excused")
        yield Finding(place, ABSENT, value, "" if entry else "new", entry)


def _left_of(
    advisories: Iterable[dict[str, str]], entries: Iterable[AdvisoryEntry], what: str
) -> Iterator[dict[str, str]]:
    """Give the advisories that are not declared gone, or new."""
    declared = [entry for entry in entries if getattr(entry, what)]
    for advisory in advisories:
        entry = next((e for e in declared if _names(e, advisory)), None)
        if entry is None:
            yield advisory
        else:
            entry.use()


def _names(entry: AdvisoryEntry, advisory: Mapping[str, str]) -> bool:
    """True where an entry is about this advisory, by its code and what it says."""
    said = entry.match is None or re.search(entry.match, advisory["message"]) is not None
    return said and entry.covers(advisory["code"])


def _reordered(
    advisories: Iterable[dict[str, str]], entries: Iterable[AdvisoryEntry]
) -> AdvisoryEntry | None:
    """Give the entry that lets advisories come in another order."""
    codes = [advisory["code"] for advisory in advisories]
    for entry in entries:
        if entry.reordered and any(map(entry.covers, codes)):
            entry.use("reordered")
            return entry
    return None


def _renamed_advisory(advisory: dict[str, str], entries: Iterable[AdvisoryEntry]) -> dict[str, str]:
    for entry in entries:
        if entry.to is not None and entry.covers(advisory["code"]):
            entry.use()
            return {**advisory, "code": entry.to}
    return advisory


def _codes_that_differ(before: Sequence[str], after: Sequence[str]) -> str:
    """Say which codes went and came."""
    gone = [code for code in before if before.count(code) > after.count(code)]
    came = [code for code in after if after.count(code) > before.count(code)]
    parts = [f"without {', '.join(dict.fromkeys(gone))}"] if gone else []
    parts += [f"with {', '.join(dict.fromkeys(came))}"] if came else []
    return "; ".join(parts) or "in another order"


def _without(document: Mapping[str, Any], *names: str) -> dict[str, Any]:
    return {name: value for name, value in document.items() if name not in names}


def _errors(document: Mapping[str, Any]) -> dict[Place, list[str]]:
    """Give the messages of a problem document by the field they are about."""
    made: dict[Place, list[str]] = {}
    for error in document.get("errors", []):
        made.setdefault(_place_of(error["pointer"]), []).append(error["message"])
    return made


def _place_of(pointer: str) -> Place:
    """Read a JSON pointer into a request."""
    parts = [part.replace("~1", "/").replace("~0", "~") for part in pointer.split("/")[1:]]
    return tuple(int(part) if part.isdecimal() else part for part in parts)


def _is_about(entry: TreeEntry, told: Iterable[tuple[Place, str]], place: Place) -> bool:
    """True where an entry about errors names this field, by its name before or, if new, after."""
    if entry.field is None:
        return True
    pattern = parse_pattern(entry.field)
    return any(covers(pattern, was) for was in [*(was for was, _ in told), place])


def _unit_changes(place: Place, requests: Iterable[Any]) -> bool:
    """True where the bounds in a message are in another unit after."""
    return any(entry.factor is not None and match(entry.pattern, place) for entry in requests)
