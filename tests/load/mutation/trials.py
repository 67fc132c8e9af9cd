"""What is tried, and what came of it."""

from dataclasses import dataclass
from typing import Literal

from mutation.mutants import Mutant
from mutation.recording import Coverage

#: Processor time allowed beyond that of the tests themselves, and how many times theirs.
LOADING_SECONDS, TIMES = 20.0, 4.0

Fate = Literal["killed", "survived", "not-covered", "out-of-time", "does-not-load"]


@dataclass(frozen=True)
class Trial:
    """A mutant and the tests to be run on it, the fastest first; `left_out` for their time."""

    mutant: Mutant
    tests: tuple[str, ...]
    seconds: float
    left_out: int = 0

    @property
    def limit_seconds(self) -> float:
        """Processor time after which it is taken not to end."""
        return LOADING_SECONDS + TIMES * self.seconds

    def found(self, fate: Fate, by: str = "") -> "Finding":
        """What came of it."""
        return Finding(self.mutant, fate, by, len(self.tests), self.left_out)


@dataclass(frozen=True)
class Finding:
    """What became of a mutant; `by` is the test that failed."""

    mutant: Mutant
    fate: Fate
    by: str = ""
    tests: int = 0
    left_out: int = 0

    @property
    def dead(self) -> bool:
        """True where the tests noticed it."""
        return self.fate in {"killed", "out-of-time", "does-not-load"}

    def __str__(self) -> str:
        return f"{self.fate} {self.mutant} {self.by}"


def planned(mutant: Mutant, tests: list[str], recorded: Coverage, most_seconds: float) -> Trial:
    """Give the trial of a mutant with as many of the tests as take so long together."""
    kept, total = list[str](), 0.0
    for name in tests:
        seconds = recorded.tests[name].seconds
        if kept and total + seconds > most_seconds:
            break
        total += seconds
        kept.append(name)
    return Trial(mutant, tuple(kept), total, len(tests) - len(kept))
