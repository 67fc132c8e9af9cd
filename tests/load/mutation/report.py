"""What is said of a run: how many mutants the tests noticed, and which not."""

import tomllib
from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Literal, get_args

from mutation.mutants import Mutant
from mutation.trees import SERVICE
from mutation.trials import Finding

ACCEPTED = Path(__file__).with_name("accepted.toml")
Standing = Literal["equivalent", "cosmetic"]


@dataclass(frozen=True)
class Accepted:
    """A mutant that may live: it changes nothing, or nothing but words; and why.

    `function`, or the `kind` of change, is named where the same one elsewhere in the file is
    another matter.
    """

    file: str
    before: str
    after: str
    standing: Standing
    reason: str
    function: str = ""
    kind: str = ""

    def __post_init__(self) -> None:
        if self.standing not in get_args(Standing) or not self.reason:
            raise ValueError(f"{self.file}: {self.before}: {self.standing!r} and why not")

    def is_of(self, mutant: Mutant) -> bool:
        """True for the mutant that it speaks of, wherever in its file that now stands."""
        written = mutant.file.removeprefix(f"{SERVICE}/"), mutant.shown_before, mutant.shown_after
        within = self.function in {"", mutant.function} and self.kind in {"", mutant.kind}
        return within and written == (self.file, self.before, self.after)


def load_accepted(path: Path = ACCEPTED) -> list[Accepted]:
    """Read the mutants that may live."""
    return [Accepted(**entry) for entry in tomllib.loads(path.read_text("utf-8"))["accepted"]]


@dataclass(frozen=True)
class Report:
    """Findings of a run, and what is accepted."""

    findings: Sequence[Finding]
    accepted: Sequence[Accepted]

    @property
    def share(self) -> float:
        """Share of mutants that the tests noticed, of those that are not accepted."""
        dead = sum(finding.dead for finding in self.findings)
        return dead / max(1, dead + len(self.unexplained()))

    def unexplained(self) -> list[Finding]:
        """Survivors that nobody has given a reason for."""
        return [f for f in self.findings if not f.dead and self._reason_of(f) is None]

    def lines(self) -> Iterator[str]:
        """The report, a line at a time."""
        yield from self._table("kind", lambda finding: finding.mutant.kind)
        yield ""
        yield from self._table("place", lambda finding: _place_of(finding.mutant.file))
        yield ""
        for finding in sorted(self.findings, key=lambda f: (f.mutant.file, f.mutant.line)):
            if not finding.dead:
                yield from self._survivor(finding)
        fates = Counter(finding.fate for finding in self.findings)
        yield ", ".join(f"{count} {fate}" for fate, count in fates.most_common())
        explained = len(self.findings) - sum(f.dead for f in self.findings)
        explained -= len(self.unexplained())
        yield (
            f"{self.share:.1%} noticed of those of {len(self.findings)} that can be; "
            f"{explained} accepted, {len(self.unexplained())} not explained"
        )

    def _survivor(self, finding: Finding) -> Iterator[str]:
        mutant = finding.mutant
        yield f"{mutant.file.removeprefix(f'{SERVICE}/')}:{mutant.line} {mutant.kind}"
        yield f"    {mutant.shown_before}"
        yield f"  → {mutant.shown_after}"
        reason = self._reason_of(finding)
        if reason:
            yield f"    {reason.standing}: {reason.reason}"
        elif finding.fate == "not-covered":
            yield "    no test executes it"
        else:
            more = f", {finding.left_out} not run for their time" if finding.left_out else ""
            yield f"    {finding.tests} tests{more}"

    def _reason_of(self, finding: Finding) -> Accepted | None:
        return next((entry for entry in self.accepted if entry.is_of(finding.mutant)), None)

    def _table(self, title: str, key: Callable[[Finding], str]) -> Iterator[str]:
        groups: dict[str, list[Finding]] = {}
        for finding in self.findings:
            groups.setdefault(key(finding), []).append(finding)
        yield f"{title:<24} mutants  noticed   share"
        for name, found in sorted(groups.items()):
            dead = sum(finding.dead for finding in found)
            yield f"{name:<24} {len(found):7d} {dead:8d} {dead / len(found):7.0%}"


def _place_of(file: str) -> str:
    """Folder of a file, two deep."""
    return "/".join(file.removeprefix(f"{SERVICE}/").split("/")[:2])
