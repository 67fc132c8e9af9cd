"""Runs the tests of each mutant in a copy of the tree, until one fails."""

import os
import sys
from collections import deque
from collections.abc import Iterable, Iterator
from contextlib import ExitStack
from dataclasses import dataclass, field
from pathlib import Path
from typing import Literal

import pytest

from mutation import forks
from mutation.mutants import Mutant
from mutation.recording import Coverage
from mutation.trees import changed_file

#: Tests that are tried first: most mutants die of one of the fastest, which need few files.
FIRST = 60
#: Processor time allowed beyond that of the tests themselves, and how many times theirs.
LOADING_SECONDS, TIMES = 20.0, 4.0

#: pytest found nothing wrong, or none of the tests: cases may be named after what was changed.
_RAN = {pytest.ExitCode.OK, pytest.ExitCode.NO_TESTS_COLLECTED}

Fate = Literal["killed", "survived", "not-covered", "out-of-time", "does-not-load"]


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


@dataclass(eq=False)
class _Selection:
    """A pytest plugin: these tests only, in this order; keeps the first that fails."""

    wanted: list[str]
    by: str = ""

    @pytest.hookimpl(trylast=True)
    def pytest_collection_modifyitems(self, items: list[pytest.Item]) -> None:
        """Choose."""
        order = {name: place for place, name in enumerate(self.wanted)}
        items[:] = [item for item in items if item.nodeid in order]
        items.sort(key=lambda item: order[item.nodeid])

    def pytest_runtest_logreport(self, report: pytest.TestReport) -> None:
        """Keep which test failed."""
        if report.failed and not self.by:
            self.by = report.nodeid

    def pytest_collectreport(self, report: pytest.CollectReport) -> None:
        """A file that cannot be loaded kills too."""
        if report.failed and not self.by:
            self.by = f"loading {report.nodeid}"


def run_tests(root: Path, wanted: list[str], *arguments: str) -> tuple[int, str]:
    """Run tests of the copy at `root`; give pytest's status and the first test that failed."""
    os.chdir(root)
    sys.dont_write_bytecode = True
    files = list(dict.fromkeys(name.partition("::")[0] for name in wanted))
    selection = _Selection(wanted)
    status = pytest.main([*forks.PYTEST_ARGUMENTS, *arguments, *files], plugins=[selection])
    return int(status), selection.by


def compile_tests(root: Path) -> int:
    """Collect all tests of the copy at `root`, so that Python and pytest keep them compiled."""
    os.chdir(root)
    return int(pytest.main([*forks.PYTEST_ARGUMENTS, "--collect-only"]))


@dataclass
class _Task:
    """A mutant, and the tests that are still to be run on it, in two parts."""

    mutant: Mutant
    parts: deque[list[str]]
    tests: int
    left_out: int
    place: Path = Path()
    change: ExitStack = field(default_factory=ExitStack)


@dataclass
class Runner:
    """Copies of the tree to work in, and how long the tests of one mutant may take."""

    copies: list[Path]
    recorded: Coverage
    most_seconds: float

    def run(self, mutants: Iterable[tuple[Mutant, list[str]]]) -> Iterator[Finding]:
        """Try mutants, each with its tests, the fastest first; give what became of each."""
        waiting = deque(self._task(mutant, tests) for mutant, tests in mutants)
        free = list(self.copies)
        running: dict[int, tuple[forks.Running, _Task]] = {}
        while waiting or running:
            while waiting and free:
                task = waiting.popleft()
                if not task.parts:
                    yield Finding(task.mutant, "not-covered")
                    continue
                task.place = free.pop()
                begun = self._begin(task)
                running[id(begun)] = begun, task
            if not running:
                continue
            for done in forks.await_any([begun for begun, _ in running.values()]):
                _, task = running.pop(id(done))
                finding = self._judge(task, done)
                free.append(task.place)
                if finding is None:
                    waiting.appendleft(task)
                else:
                    yield finding

    def _task(self, mutant: Mutant, tests: list[str]) -> _Task:
        kept, seconds = list[str](), 0.0
        for name in tests:
            seconds += self.recorded.tests[name].seconds
            if kept and seconds > self.most_seconds:
                break
            kept.append(name)
        parts = deque(part for part in (kept[:FIRST], kept[FIRST:]) if part)
        return _Task(mutant, parts, len(kept), len(tests) - len(kept))

    def _begin(self, task: _Task) -> forks.Running:
        wanted = task.parts.popleft()
        path = task.place / task.mutant.file
        task.change.enter_context(changed_file(path, task.mutant.applied(path.read_bytes())))
        seconds = LOADING_SECONDS + TIMES * sum(self.recorded.tests[n].seconds for n in wanted)
        return forks.start(run_tests, task.place, wanted, "-x", seconds=seconds)

    @staticmethod
    def _judge(task: _Task, done: forks.Running) -> Finding | None:
        """What became of a mutant; None where there are more tests to run."""
        answer = done.answer()
        task.change.close()
        if answer is None:
            return Finding(task.mutant, "out-of-time", tests=task.tests)
        status, by = answer
        if status == pytest.ExitCode.INTERNAL_ERROR:
            raise RuntimeError(f"pytest itself failed on {task.mutant}")
        if by.startswith("loading ") or (status not in _RAN and not by):
            return Finding(task.mutant, "does-not-load", by, task.tests)
        if by:
            return Finding(task.mutant, "killed", by, task.tests)
        return (
            None if task.parts else Finding(task.mutant, "survived", "", task.tests, task.left_out)
        )
