"""Runs the tests of a mutant in a copy of the tree that has it, loaded afresh."""

import os
import sys
from collections import deque
from collections.abc import Iterable, Iterator
from contextlib import ExitStack
from dataclasses import dataclass, field
from pathlib import Path

import pytest

from mutation import forks
from mutation.trees import changed_file
from mutation.trials import Finding, Trial

#: pytest found nothing wrong, or none of the tests: cases may be named after what was changed.
_RAN = {pytest.ExitCode.OK, pytest.ExitCode.NO_TESTS_COLLECTED}


@dataclass(eq=False)
class Watch:
    """A pytest plugin: these tests only, in this order; keeps those that fail."""

    wanted: list[str]
    failed: list[str] = field(default_factory=list)

    @pytest.hookimpl(trylast=True)
    def pytest_collection_modifyitems(self, items: list[pytest.Item]) -> None:
        """Choose."""
        order = {name: place for place, name in enumerate(self.wanted)}
        items[:] = [item for item in items if item.nodeid in order]
        items.sort(key=lambda item: order[item.nodeid])

    def pytest_runtest_logreport(self, report: pytest.TestReport) -> None:
        """Keep which test failed."""
        if report.failed:
            self.failed.append(report.nodeid)

    def pytest_collectreport(self, report: pytest.CollectReport) -> None:
        """Keep which file cannot be loaded."""
        if report.failed:
            self.failed.append(f"loading {report.nodeid}")


def run_tests(root: Path, wanted: list[str], *arguments: str) -> tuple[int, list[str]]:
    """Run tests of the copy at `root`; give pytest's status and the tests that failed."""
    os.chdir(root)
    sys.dont_write_bytecode = True
    files = list(dict.fromkeys(name.partition("::")[0] for name in wanted))
    watch = Watch(wanted)
    status = pytest.main([*forks.PYTEST_ARGUMENTS, *arguments, *files], plugins=[watch])
    return int(status), watch.failed


def compile_tests(root: Path) -> int:
    """Collect all tests of the copy at `root`, so that Python and pytest keep them compiled."""
    os.chdir(root)
    return int(pytest.main([*forks.PYTEST_ARGUMENTS, "--collect-only"]))


def try_afresh(trials: Iterable[Trial], copies: list[Path]) -> Iterator[Finding]:
    """Try mutants, one at a time in each copy of the tree; give what became of each."""
    waiting, free = deque(trials), list(copies)
    running: dict[int, tuple[forks.Running, Trial, Path, ExitStack]] = {}
    while waiting or running:
        while waiting and free:
            trial, root, change = waiting.popleft(), free.pop(), ExitStack()
            path = root / trial.mutant.file
            change.enter_context(changed_file(path, trial.mutant.applied(path.read_bytes())))
            begun = forks.start(
                run_tests, root, list(trial.tests), "-x", seconds=trial.limit_seconds
            )
            running[id(begun)] = begun, trial, root, change
        for done in forks.await_any([begun for begun, *_ in running.values()]):
            _, trial, root, change = running.pop(id(done))
            answer = done.answer()
            change.close()
            free.append(root)
            yield _judged(trial, answer)


def _judged(trial: Trial, answer: tuple[int, list[str]] | None) -> Finding:
    if answer is None:
        return trial.found("out-of-time")
    status, failed = answer
    if status == pytest.ExitCode.INTERNAL_ERROR:
        raise RuntimeError(f"pytest itself failed on {trial.mutant}")
    if failed:
        loading = failed[0].startswith("loading ")
        return trial.found("does-not-load" if loading else "killed", failed[0])
    return trial.found("survived" if status in _RAN else "does-not-load")
