"""The changelog of the contract: which names, options, units and numbers a release changes.

One TOML file a topic and `all.toml`, in `openapi/changelog/<release>/`. `openapi/changelog/README.md`
says what each entry means; here they are read, with strict checks. Every entry counts what it was
used for, so that one which never applied is found out.
"""

import re
import tomllib
from collections import Counter
from collections.abc import Iterable, Iterator
from fnmatch import fnmatchcase
from pathlib import Path
from typing import Annotated, Any, Literal, Self

from pydantic import (
    AfterValidator,
    BaseModel,
    BeforeValidator,
    ConfigDict,
    Field,
    PrivateAttr,
    ValidationError,
    model_validator,
)

from releases.paths import ANY_DEPTH, Pattern, parse_pattern, wildcards

Scalar = str | bool | int | float | None
Severity = Literal["note", "caution", "stop"]


class ChangelogError(Exception):
    """A changelog that cannot be used, and why."""


def _listed(value: Any) -> Any:
    return [value] if isinstance(value, str) else value


def _regex(text: str) -> str:
    re.compile(text)
    return text


def _path(text: str) -> str:
    parse_pattern(text)
    return text


Path_ = Annotated[str, AfterValidator(_path)]
Paths = Annotated[tuple[Path_, ...], BeforeValidator(_listed)]
Regex = Annotated[str, AfterValidator(_regex)]
Names = Annotated[tuple[str, ...], BeforeValidator(_listed), Field(min_length=1)]


class Strict(BaseModel):
    """Refuses keys that it does not know."""

    model_config = ConfigDict(extra="forbid", frozen=True)


class When(Strict):
    """Where an entry holds; all that is given must be so. Paths are those of the release before."""

    sent: Paths = ()
    not_sent: Paths = ()
    equals: dict[Path_, Scalar] = {}
    advisory: str | None = None
    kind: str | None = None
    detail: Regex | None = None


class Entry(Strict):
    """What every entry has: the operations it is about, by their names before, and its reason."""

    operation: Names = ("",)
    when: When = When()
    reason: str = ""
    _origin: str = PrivateAttr("")
    _used: Counter[str] = PrivateAttr(default_factory=Counter)

    def about(self, operation: str) -> bool:
        """True where the entry is about this operation."""
        return any(fnmatchcase(operation, name) for name in self.operation)

    def use(self, what: str = "") -> None:
        """Count a use of the entry, or of one of its parts."""
        self._used[what] += 1

    @property
    def used(self) -> Counter[str]:
        """How often each part of the entry was used."""
        return self._used

    @property
    def origin(self) -> str:
        """File and place of the entry, for messages."""
        return self._origin

    def parts(self) -> Iterator[str]:
        """Parts of the entry that must each be used at least once."""
        yield ""

    def _need_reason(self, why: str) -> None:
        if len(self.reason.split()) < 2:
            raise ValueError(f"{why}: give the reason in words")


class OperationEntry(Entry):
    """An operation that has another name, or is gone."""

    name: str
    to: str | None = None
    gone: bool = False

    @model_validator(mode="after")
    def _check(self) -> Self:
        if (self.to is None) is not self.gone:
            raise ValueError("an operation has another name (`to`) or is `gone`: one of the two")
        if self.gone:
            self._need_reason("an operation is gone")
        return self

    def about(self, operation: str) -> bool:
        """True for the operation named."""
        return operation == self.name


class FieldEntry(Entry):
    """What request and result entries share: another place, other options, another unit."""

    path: Path_
    to: Path_ | None = None
    values: dict[str, Scalar] = {}
    factor: Annotated[float, Field(gt=0)] | None = None

    @property
    def pattern(self) -> Pattern:
        """The place before."""
        return parse_pattern(self.path)

    @property
    def target(self) -> Pattern:
        """The place after."""
        return parse_pattern(self.path if self.to is None else self.to)

    def parts(self) -> Iterator[str]:
        """Each option must occur; else the entry as a whole."""
        if self.values:
            yield from (f"values: {old}" for old in self.values)
        else:
            yield ""

    def _check_places(self) -> None:
        if self.to is not None and wildcards(self.pattern) != wildcards(self.target):
            raise ValueError(f"{self.path} and {self.to} must hold the same [], * and **")

    def _one_of(self, **given: bool) -> None:
        if sum(given.values()) > 1:
            both = " and ".join(name for name, is_given in given.items() if is_given)
            raise ValueError(f"{both} exclude one another")


class RequestEntry(FieldEntry):
    """A request field: renamed, moved, other options, other unit, dropped, or newly sent."""

    dropped: bool = False
    new: Any = None

    @model_validator(mode="after")
    def _check(self) -> Self:
        self._check_places()
        changes = bool(self.to is not None or self.values or self.factor)
        self._one_of(dropped=self.dropped, new=self.new is not None, changes=changes)
        if not (self.dropped or self.new is not None or changes):
            raise ValueError("says nothing: give to, values, factor, dropped or new")
        if self.dropped or self.new is not None:
            self._need_reason("a request field is dropped or new")
        if self.new is not None and wildcards(self.pattern):
            raise ValueError("a new field has one place, without wildcards")
        return self


class TreeEntry(FieldEntry):
    """A place in an answer (result, basis) or in a problem document."""

    gone: bool = False
    new: bool = False
    changed: bool = False
    words: dict[str, Annotated[tuple[str, ...], BeforeValidator(_listed)]] = {}
    tolerance: Annotated[float, Field(gt=0, le=1e-6)] | None = None
    reworded: bool = False
    numbers: bool = True
    keyed: str | None = None
    field: Path_ | None = None
    match: Regex | None = None

    @model_validator(mode="after")
    def _check(self) -> Self:
        self._check_places()
        moves = bool(self.to is not None or self.values or self.factor)
        excuses = bool(self.changed or self.words or self.tolerance or self.reworded)
        self._one_of(gone=self.gone, new=self.new, moves=moves or excuses or bool(self.keyed))
        if not (self.gone or self.new or moves or excuses or bool(self.keyed)):
            raise ValueError("says nothing: give to, values, factor, gone, new, changed, words, "
                             "tolerance, reworded or keyed")
        if self.gone or self.new or excuses or self.keyed:
            self._need_reason("more than a name changes")
        if not self.numbers and not self.reworded:
            raise ValueError("numbers = false goes with reworded")
        if self.field is not None and self.path != "errors":
            raise ValueError('field goes with path = "errors"')
        return self

    def parts(self) -> Iterator[str]:
        """Options, words and the excuse must each occur."""
        yield from (f"values: {old}" for old in self.values)
        yield from (f"words: {old}" for old in self.words)
        if self.changed or self.tolerance or self.reworded:
            yield "excused"
        elif not (self.values or self.words):
            yield ""


class AdvisoryEntry(Entry):
    """An advisory by its code before (after, where it is new): renamed, other severity, reworded."""

    code: str
    to: str | None = None
    severity: Severity | None = None
    gone: bool = False
    new: bool = False
    reworded: bool = False
    numbers: bool = True
    match: Regex | None = None

    @model_validator(mode="after")
    def _check(self) -> Self:
        changes = bool(self.to or self.severity or self.reworded)
        if self.gone + self.new + changes != 1:
            raise ValueError("give to, severity or reworded; or gone; or new")
        if self.severity or self.gone or self.new or self.reworded:
            self._need_reason("more than a name changes")
        return self

    def covers(self, code: str) -> bool:
        """True where the entry is about this code."""
        return fnmatchcase(code, self.code)

    def parts(self) -> Iterator[str]:
        """Each thing that the entry says must occur."""
        if self.to or self.gone or self.new:
            yield ""
        if self.severity:
            yield "severity"
        if self.reworded:
            yield "excused"


class RefusalEntry(Entry):
    """What was answered and is refused now, the reverse, or is refused for another kind."""

    before: str
    after: str
    detail: Regex = ""

    @model_validator(mode="after")
    def _check(self) -> Self:
        self._need_reason("a refusal changes")
        if self.before == self.after:
            raise ValueError("before and after are the same")
        return self


class WordingEntry(Entry):
    """A term of the trade that has another name in sentences."""

    old: Annotated[str, Field(alias="from", min_length=2)]
    to: Annotated[str, Field(min_length=2)]


class NumberFormat(Entry):
    """Numbers in sentences are written in another form, the same to the digits shown."""

    @model_validator(mode="after")
    def _check(self) -> Self:
        self._need_reason("numbers are written otherwise")
        return self


class ChangelogFile(Strict):
    """One file."""

    operation: tuple[OperationEntry, ...] = ()
    request: tuple[RequestEntry, ...] = ()
    result: tuple[TreeEntry, ...] = ()
    basis: tuple[TreeEntry, ...] = ()
    problem: tuple[TreeEntry, ...] = ()
    advisory: tuple[AdvisoryEntry, ...] = ()
    refusal: tuple[RefusalEntry, ...] = ()
    wording: tuple[WordingEntry, ...] = ()
    number_format: tuple[NumberFormat, ...] = ()


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
        return Changelog(
            {s: [e for e in getattr(self, s) if e.about(operation)] for s in SECTIONS}
        )

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
    for file in sorted(folder.glob("*.toml")):
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
            entry._origin = f"{file.name} {section}[{position}]"
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
