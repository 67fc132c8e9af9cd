"""What a comparison found, written to be read: what the changelog lists, what differs, a table."""

import json
from collections import Counter, defaultdict
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field

from releases.comparing import ABSENT, Finding
from releases.entries import Entry, TreeEntry
from releases.paths import Json, written

_LONGEST = 300


@dataclass(frozen=True)
class Compared:
    """One request with what was found; `renamed` where it was sent or expected in other names."""

    operation: str
    request: Json
    sent_after: Json
    renamed: bool
    findings: Sequence[Finding]

    @property
    def outcome(self) -> str:
        """The column of the table that it counts in."""
        if any(found.entry is None for found in self.findings):
            return "different"
        if self.findings:
            return "listed"
        return "renamed" if self.renamed else "equal"


@dataclass
class Report:
    """All that was compared."""

    compared: list[Compared] = field(default_factory=list)

    @property
    def failed(self) -> int:
        """Requests that differ by more than the changelog says."""
        return sum(one.outcome == "different" for one in self.compared)

    def table(self, only_differences: bool) -> Iterator[str]:
        """Give a line an operation."""
        columns = ("equal", "renamed", "listed", "different")
        counts: dict[str, Counter[str]] = defaultdict(Counter)
        for one in self.compared:
            counts[one.operation][one.outcome] += 1
        yield f"{'operation':34}{'requests':>9}" + "".join(f"{c:>11}" for c in columns)
        for name, count in counts.items():
            if only_differences and not count["different"]:
                continue
            yield f"{name:34}{count.total():>9}" + "".join(f"{count[c]:>11}" for c in columns)
        whole = Counter(one.outcome for one in self.compared)
        yield f"{'all':34}{whole.total():>9}" + "".join(f"{whole[c]:>11}" for c in columns)

    def listed(self) -> Iterator[str]:
        """Give what each entry of the changelog excused, with an instance."""
        by_entry: dict[str, list[tuple[Entry, str, Finding]]] = defaultdict(list)
        for one in self.compared:
            for found in one.findings:
                if found.entry is not None:
                    by_entry[found.entry.origin].append((found.entry, one.operation, found))
        for origin in sorted(by_entry):
            rows = by_entry[origin]
            entry, operation, first = rows[0]
            places = dict.fromkeys(found.group for _, _, found in rows)
            more = f" and {len(places) - 1} more" if len(places) > 1 else ""
            yield f"{origin}: {_what(entry)} {next(iter(places))}{more}, {len(rows)} times"
            yield f"    because {entry.reason}" if entry.reason else "    no reason given"
            largest = max((_relative(found) for _, _, found in rows), default=None)
            change = f" (most {largest:.2g} of the value)" if largest else ""
            both = f"{_short(first.before)} -> {_short(first.after)}"
            yield f"    such as {operation}: {both}{change}"

    def differences(self, show: int) -> Iterator[str]:
        """Give the differences, alike ones together, the first few of each in full."""
        groups: dict[tuple[str, str], list[tuple[Compared, Finding]]] = defaultdict(list)
        for one in self.compared:
            for found in one.findings:
                if found.entry is None:
                    groups[one.operation, found.group].append((one, found))
        for (operation, group), rows in sorted(groups.items(), key=lambda g: (g[0][0], -len(g[1]))):
            requests = len({id(one) for one, _ in rows})
            yield f"{operation} | {group} | in {requests} requests"
            for one, found in rows[:show]:
                yield f"    at       {written(found.place)}"
                yield from _before_and_after(found)
                yield f"    request  {json.dumps(one.request, ensure_ascii=False)}"
                if one.sent_after != one.request:
                    yield f"    sent     {json.dumps(one.sent_after, ensure_ascii=False)}"
                yield ""


def stale_lines(stale: Iterable[tuple[Entry, str]]) -> Iterator[str]:
    """Give the entries that never applied."""
    for entry, part in stale:
        if part == "excused":
            yield f"{entry.origin}: what it allows never occurred"
        else:
            yield f"{entry.origin}: never met{f' ({part})' if part else ''}"


def _what(entry: Entry) -> str:
    if not isinstance(entry, TreeEntry):
        return type(entry).__name__.removesuffix("Entry").lower()
    if entry.tolerance or entry.factor:
        return "same but for rounding"
    names = ("changed", "words", "reworded", "new")
    return next((name for name in names if getattr(entry, name)), "entry")


def _relative(found: Finding) -> float:
    """How much a number changed, as a share of the larger one."""
    pair = (found.before, found.after)
    if not all(isinstance(v, int | float) and not isinstance(v, bool) for v in pair):
        return 0.0
    largest = max(abs(v) for v in pair)
    return abs(pair[0] - pair[1]) / largest if largest else 0.0


def _before_and_after(found: Finding) -> Iterator[str]:
    """Give both values; of long texts the part where they part."""
    before, after = found.before, found.after
    if (
        isinstance(before, str)
        and isinstance(after, str)
        and max(len(before), len(after)) > _LONGEST
    ):
        at = next((i for i, (a, b) in enumerate(zip(before, after, strict=False)) if a != b), 0)
        start = max(0, at - 60)
        before, after = (f"…{text[start : at + 200]}…" for text in (before, after))
    yield f"    before   {_full(before)}"
    yield f"    after    {_full(after)}"


def _full(value: Json) -> str:
    return "(absent)" if value is ABSENT else json.dumps(value, ensure_ascii=False)


def _short(value: Json) -> str:
    text = _full(value)
    return text if len(text) <= 90 else text[:89] + "…"
