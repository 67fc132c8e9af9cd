"""What was found of a fault, and whether that will do."""

from collections.abc import Iterable
from dataclasses import dataclass, field

#: Memory after a fault, as a share of that at rest before it.
MOST_MEMORY_KEPT = 1.2
MOST_EXAMPLES = 3


@dataclass
class Counts:
    """What became of requests.

    `answered`: rightly. `refused`: by a problem document that says so (408, 413, 429, 503).
    `broken`: the connection ended before the answer did, and the caller saw that. `wrong`: an
    answer with a wrong value, with more or less than asked, or a failure of the service itself.
    `lost`: no end came in its time.
    """

    answered: int = 0
    refused: int = 0
    broken: int = 0
    wrong: int = 0
    lost: int = 0
    #: The first answers that were wrong.
    examples: list[str] = field(default_factory=list)

    def note_wrong(self, example: str) -> None:
        """Count a wrong answer, and keep it where it is among the first."""
        self.wrong += 1
        if len(self.examples) < MOST_EXAMPLES:
            self.examples.append(example)

    def __str__(self) -> str:
        rest = {"refused": self.refused, "broken": self.broken}
        told = "".join(f", {count:,} {name}" for name, count in rest.items() if count)
        return f"{self.answered:,} right{told}, {self.wrong} wrong, {self.lost} lost"


@dataclass(frozen=True)
class Memory:
    """Memory of all processes of a service in MB: at rest, at its most, after."""

    idle: float
    most: float
    after: float

    def __str__(self) -> str:
        return f"{self.idle:.0f} → {self.most:.0f} → {self.after:.0f} MB"


@dataclass
class Finding:
    """What was done, what came of it, and what must be true of it.

    `may_break`, `may_refuse`: whether callers may see connections that break, and refusals.
    `must`: sentences, each with whether it was true. `seen`: further figures.
    `untried`: why it could not be tried here; empty where it was.
    """

    done: str
    counts: Counts = field(default_factory=Counts)
    may_break: bool = False
    may_refuse: bool = False
    must: dict[str, bool] = field(default_factory=dict)
    seen: dict[str, str] = field(default_factory=dict)
    memory: Memory | None = None
    untried: str = ""

    def failures(self) -> list[str]:
        """What is not as it must be."""
        if self.untried:
            return []
        counts = self.counts
        kept = self.memory is None or self.memory.after <= MOST_MEMORY_KEPT * self.memory.idle
        held = {
            "requests were answered": counts.answered > 0,
            "no answer was wrong": counts.wrong == 0,
            "none was lost": counts.lost == 0,
            "no connection broke": self.may_break or counts.broken == 0,
            "none was refused": self.may_refuse or counts.refused == 0,
            "memory came back": kept,
            **self.must,
        }
        broken = [f"not so: {sentence}" for sentence, true in held.items() if not true]
        return [*broken, *(f"wrong: {example}" for example in counts.examples)]


def report(findings: dict[str, Finding]) -> Iterable[str]:
    """The findings as a table of Markdown, each failure under it."""
    yield "| fault | what was done | requests | seen | memory |"
    yield "|---|---|---|---|---|"
    for name, finding in findings.items():
        if finding.untried:
            yield f"| {name} | **not tried**: {finding.untried} | | | |"
            continue
        seen = "; ".join(f"{what}: {value}" for what, value in finding.seen.items())
        memory = finding.memory or ""
        yield f"| {name} | {finding.done} | {finding.counts} | {seen} | {memory} |"
    failures = [f"{name}: {line}" for name, one in findings.items() for line in one.failures()]
    yield ""
    yield from failures or ["Nothing accepted was lost or wrong."]


def status(findings: dict[str, Finding]) -> int:
    """Exit status: 1 where anything is not as it must be, or nothing could be tried at all."""
    tried = [finding for finding in findings.values() if not finding.untried]
    return int(not tried or any(finding.failures() for finding in tried))
