"""The changelog of the contract: which names, options, units and numbers a release changes.

One TOML file a topic and `all.toml`, in `openapi/changelog/<release>/`; the README beside them says
what each entry means. Here they are read, with strict checks.
"""

import tomllib
from collections.abc import Iterable, Iterator
from fnmatch import fnmatchcase
from pathlib import Path
from typing import Any

from pydantic import ValidationError

from releases.entries import (
    AdvisoryEntry,
    ChangelogFile,
    Entry,
    FieldEntry,
    NumberFormat,
    OperationEntry,
    RefusalEntry,
    RequestEntry,
    TreeEntry,
    When,
    WordingEntry,
)
from releases.paths import ANY_DEPTH, Pattern


class ChangelogError(Exception):
    """A changelog that cannot be used, and why."""


SECTIONS = tuple(ChangelogFile.model_fields)


class Changelog:
    """All entries of one release."""

    def __init__(self, entries: dict[str, list[Any]]) -> None:
        self.operation: list[OperationEntry] = entries.get("operation", [])
        self.request: list[RequestEntry] = entries.get("request", [])
        self.result: list[TreeEntry] = entries.get("result", [])
        self.basis: list[TreeEntry] = entries.get("basis", [])
        self.problem: list[TreeEntry] = entries.get("problem", [])
        self.advisory: list[AdvisoryEntry] = entries.get("advisory", [])
        self.refusal: list[RefusalEntry] = entries.get("refusal", [])
        self.wording: list[WordingEntry] = entries.get("wording", [])
        self.number_format: list[NumberFormat] = entries.get("number_format", [])

    def __iter__(self) -> Iterator[Entry]:
        for section in SECTIONS:
            yield from getattr(self, section)

    def of(self, operation: str) -> "Changelog":
        """Give the entries about one operation."""
        return Changelog({s: [e for e in getattr(self, s) if e.about(operation)] for s in SECTIONS})

    def stale(self, operations: Iterable[str]) -> Iterator[tuple[Entry, str]]:
        """Give each part of an entry that was never used, where only these operations were run.

        An entry that is about others too is not judged.
        """
        run = frozenset(operations)
        for entry in self:
            for part in entry.parts():
                if not entry.used[part] and _all_run(entry, run):
                    yield entry, part


def _all_run(entry: Entry, run: frozenset[str]) -> bool:
    """True where a run of these operations says whether the entry is needed."""
    return "*" in run or all(name in run for name in _names(entry))


def _names(entry: Entry) -> tuple[str, ...]:
    return (entry.name,) if isinstance(entry, OperationEntry) else entry.operation


def load_changelog(folder: Path, operations: Iterable[str]) -> Changelog:
    """Read every file of a folder; `operations` are those of the release before.

    Raises ChangelogError with file and entry where something is wrong.
    """
    names = tuple(operations)
    topics = {name.partition(".")[0] for name in names}
    entries: dict[str, list[Any]] = {}
    # What holds everywhere comes last: an entry about one topic is the nearer one.
    for file in sorted(folder.glob("*.toml"), key=lambda file: (file.stem == "all", file.stem)):
        if file.stem != "all" and file.stem not in topics:
            raise ChangelogError(f"{file.name}: no topic is called {file.stem}; or write all.toml")
        for section, entry in _read(file):
            _require_known(entry, names)
            entries.setdefault(section, []).append(entry)
    changelog = Changelog(entries)
    _require_one_place(changelog.request, names)
    for trees in (changelog.result, changelog.basis, changelog.problem):
        _require_one_place(trees, names)
    return changelog


def _read(file: Path) -> Iterator[tuple[str, Entry]]:
    try:
        document = tomllib.loads(file.read_text(encoding="utf-8"))
    except tomllib.TOMLDecodeError as error:
        raise ChangelogError(f"{file.name}: {error}") from None
    everywhere = "*" if file.stem == "all" else f"{file.stem}.*"
    for rows in document.values():
        for row in rows if isinstance(rows, list) else ():
            if isinstance(row, dict):
                row.setdefault("operation", everywhere)
    try:
        checked = ChangelogFile.model_validate(document)
    except ValidationError as error:
        wrong = error.errors(include_url=False)[0]
        place = " ".join(str(part) for part in wrong["loc"])
        raise ChangelogError(f"{file.name}: {place}: {wrong['msg']}") from None
    for section in SECTIONS:
        for position, entry in enumerate(getattr(checked, section)):
            entry.came_from(f"{file.name} {section}[{position}]")
            yield section, entry


def _require_known(entry: Entry, names: tuple[str, ...]) -> None:
    for name in _names(entry):
        if not any(fnmatchcase(known, name) for known in names):
            raise ChangelogError(f"{entry.origin}: there was no operation {name}")


def _require_one_place(entries: Iterable[FieldEntry], names: tuple[str, ...]) -> None:
    """Refuse two entries that send the same field of one operation to two places."""
    seen: dict[tuple[str, Pattern], FieldEntry] = {}
    for entry in entries:
        conditional = entry.when != When() or ANY_DEPTH in entry.pattern
        if entry.to is None or conditional:
            continue
        for name in filter(entry.about, names):
            other = seen.setdefault((name, entry.pattern), entry)
            if other.to != entry.to:
                raise ChangelogError(
                    f"{entry.origin} and {other.origin} send {entry.path} to two places"
                )
