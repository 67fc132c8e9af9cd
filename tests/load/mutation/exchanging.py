"""Tries mutants within functions in a process that has collected all tests.

Loading the service and collecting its tests takes seconds, most tests milliseconds. So one process
does that once, and a fork of it for each mutant exchanges the code of the function and runs the
tests. What such a mutant does when a module is loaded, or while tests are collected, is not seen:
whatever survives here is tried afresh (`running.py`).
"""

import functools
import gc
import os
from collections import deque
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from pathlib import Path
from types import CodeType, FunctionType
from typing import Any

import pytest

from mutation import forks
from mutation.mutants import Mutant
from mutation.running import Watch
from mutation.trials import Finding, Trial

#: Processor time for loading and collecting; the forks have limits of their own.
_SECONDS = 36_000.0


def try_exchanged(
    trials: list[Trial], root: Path, jobs: int, tell: Callable[[str], object]
) -> list[Finding]:
    """Try mutants within functions; those that could not be exchanged count as survivors."""
    begun = forks.start(_collect_and_try, trials, root, jobs, tell, seconds=_SECONDS)
    found = forks.await_any([begun])[0].answer()
    if found is None:
        raise RuntimeError("the process that collects the tests died")
    return list(found)


def _collect_and_try(
    trials: list[Trial], root: Path, jobs: int, tell: Callable[[str], object]
) -> list[Finding]:
    os.chdir(root)
    wanted = dict.fromkeys(name for trial in trials for name in trial.tests)
    files = list(dict.fromkeys(name.partition("::")[0] for name in wanted))
    host = _Host(trials, root, jobs, tell)
    pytest.main([*forks.PYTEST_ARGUMENTS, *files], plugins=[host, host.watch])
    return host.found


@dataclass(eq=False)
class _Host:
    """A pytest plugin that runs the collected tests for each mutant, in forks."""

    trials: list[Trial]
    root: Path
    jobs: int
    tell: Callable[[str], object]
    found: list[Finding] = field(default_factory=list)
    _functions: dict[str, list[FunctionType]] = field(default_factory=dict)
    _items: dict[str, pytest.Item] = field(default_factory=dict)

    def __post_init__(self) -> None:
        wanted = dict.fromkeys(name for trial in self.trials for name in trial.tests)
        self.watch = Watch(list(wanted))

    def pytest_runtestloop(self, session: pytest.Session) -> bool:
        """Try each mutant in place of running the tests once."""
        forks.load_service()
        self._items = {item.nodeid: item for item in session.items}
        for function in _objects(FunctionType):
            self._functions.setdefault(function.__code__.co_filename, []).append(function)
        gc.freeze()
        waiting, running = deque(self.trials), dict[int, tuple[forks.Running, Trial]]()
        while waiting or running:
            while waiting and len(running) < self.jobs:
                trial = waiting.popleft()
                begun = forks.start(self._try, trial, seconds=trial.limit_seconds)
                running[id(begun)] = begun, trial
            for done in forks.await_any([begun for begun, _ in running.values()]):
                trial = running.pop(id(done))[1]
                self._keep(trial, done.answer())
        return True

    def _keep(self, trial: Trial, failed: list[str] | None) -> None:
        if failed is None:
            finding = trial.found("out-of-time")
        else:
            finding = trial.found("killed" if failed else "survived", *failed[:1])
        self.found.append(finding)
        self.tell(f"{len(self.found)}/{len(self.trials)} {finding}")

    def _try(self, trial: Trial) -> list[str]:
        """In a fork: exchange the code, run the tests until one fails; give that one."""
        if not self._exchange(trial.mutant):
            return []
        for cache in _objects(functools._lru_cache_wrapper):
            if cache.__module__.startswith("halfangle_service."):
                cache.cache_clear()
        items = [self._items[name] for name in trial.tests if name in self._items]
        for item, following in zip(items, [*items[1:], None], strict=True):
            item.config.hook.pytest_runtest_protocol(item=item, nextitem=following)
            if self.watch.failed:
                break
        return self.watch.failed

    def _exchange(self, mutant: Mutant) -> bool:
        """Exchange the code of the functions of one file; False where there is none to exchange."""
        path = self.root / mutant.file
        content = path.read_bytes()
        before = compile(content, str(path), "exec")
        after = compile(mutant.applied(content), str(path), "exec")
        new = {(old.co_qualname, old.co_firstlineno): code for old, code in _pairs(before, after)}
        done = False
        for function in self._functions.get(str(path), []):
            code = new.get((function.__code__.co_qualname, function.__code__.co_firstlineno))
            if code is None:
                continue
            if len(code.co_freevars) != len(function.__code__.co_freevars):
                return False
            function.__code__ = code
            done = True
        return done


def _pairs(before: CodeType, after: CodeType) -> Iterator[tuple[CodeType, CodeType]]:
    """Functions of a module before and after that differ, those within others apart."""
    old, new = (
        [part for part in code.co_consts if isinstance(part, CodeType)] for code in (before, after)
    )
    for one, other in zip(old, new, strict=False):
        if one != other and one.co_qualname == other.co_qualname:
            yield one, other
            yield from _pairs(one, other)


def _objects(kind: type[Any]) -> Iterator[Any]:
    return (found for found in gc.get_objects() if isinstance(found, kind))
