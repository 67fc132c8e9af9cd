"""The entries of a changelog: what a release may change, and how each is written.

Every entry counts what it was used for, so that one which never applied is found out.
"""

import re
from collections import Counter
from collections.abc import Iterator
from fnmatch import fnmatchcase
from typing import Annotated, Any, Literal, Self

from pydantic import (
    AfterValidator,
    BaseModel,
    BeforeValidator,
    ConfigDict,
    Field,
    PrivateAttr,
    model_validator,
)

from releases.paths import Pattern, parse_pattern, wildcards

Scalar = str | bool | int | float | None
Severity = Literal["note", "caution", "stop"]


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

    def came_from(self, origin: str) -> None:
        """Note file and place of the entry."""
        self._origin = origin

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
            raise ValueError(
                "says nothing: give to, values, factor, gone, new, changed, words, "
                "tolerance, reworded or keyed"
            )
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
        if self.keyed:
            yield "keyed"
        if self.to is not None or self.factor is not None or self.gone or self.new:
            yield ""


class AdvisoryEntry(Entry):
    """An advisory, by its code before; by its code after where it is new."""

    code: str
    to: str | None = None
    severity: Severity | None = None
    gone: bool = False
    new: bool = False
    reworded: bool = False
    reordered: bool = False
    numbers: bool = True
    match: Regex | None = None

    @model_validator(mode="after")
    def _check(self) -> Self:
        excuses = bool(self.severity or self.reworded or self.reordered)
        if self.gone + self.new + bool(self.to or excuses) != 1:
            raise ValueError("give to, severity, reworded or reordered; or gone; or new")
        if self.gone or self.new or excuses:
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
        if self.reordered:
            yield "reordered"
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
