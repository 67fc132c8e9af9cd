"""Which tests execute which lines of the service, recorded once a test file.

Each test is a context of coverage.py's. Three things need care:

- A function with a cache runs in the first test that asks for it and not in the next, so caches are
  emptied before each test.
- What runs while a test file is collected (cases made from a table) belongs to all of its tests.
- The bounds of a request run nothing of ours, so it is noted too which operations a test asks.

What a test runs in a process of its own (a started service) is not seen, and does not count.
"""

import functools
import gc
import json
import os
import sys
from collections.abc import Iterator
from dataclasses import dataclass, field
from importlib import import_module
from pathlib import Path
from typing import Any

import coverage
import pytest

from mutation import forks
from mutation.trees import SERVICE, digest_of, files_of

#: Tests that compare with what is committed or with the form of the source: that something was
#: changed is no finding.
FORM = (
    "tests/client/test_generator.py",
    "tests/client/test_surface.py",
    "tests/contract/test_changelog.py",
    "tests/contract/test_drift.py",
    "tests/contract/test_mutation.py",
    "tests/contract/test_structure.py",
)
#: Tests of how the service is carried, mostly by a service in a process of its own, which is not
#: seen here, and those that ask only that nothing breaks: slow, and no number of the trade in them.
CARRIED = (
    "tests/client/test_cli.py",
    "tests/client/test_errors.py",
    "tests/client/test_retries.py",
    "tests/contract/test_framework.py",
    "tests/contract/test_hostile.py",
    "tests/contract/test_schemathesis.py",
    "tests/integration/test_serving.py",
    "tests/integration/test_slow_callers.py",
)
COLLECTION = "collection"
SECONDS_A_FILE = 1800.0


@dataclass
class TestRecord:
    """A test that passed: how long it took, and the operations that it asked."""

    __test__ = False
    seconds: float
    operations: list[str]


@dataclass(eq=False)
class Recorder:
    """A pytest plugin that keeps one context of coverage a test."""

    coverage: coverage.Coverage
    asked: set[str] = field(default_factory=set)
    tests: dict[str, TestRecord] = field(default_factory=dict)
    failed: set[str] = field(default_factory=set)
    _modules: int = 0
    _caches: list[Any] = field(default_factory=list)

    @pytest.hookimpl(hookwrapper=True)
    def pytest_runtest_protocol(self, item: pytest.Item) -> Iterator[None]:
        """Run a test with empty caches in a context of its own."""
        self._empty_caches()
        self.asked.clear()
        self.coverage.switch_context(item.nodeid)
        yield
        self.coverage.switch_context(COLLECTION)

    @pytest.hookimpl(hookwrapper=True)
    def pytest_runtest_call(self) -> Iterator[None]:
        """Note only what the test itself asks: making the service asks every operation."""
        self.asked.clear()
        yield

    def pytest_runtest_logreport(self, report: pytest.TestReport) -> None:
        """Keep time and outcome."""
        if report.when == "call" and report.passed:
            self.tests[report.nodeid] = TestRecord(report.duration, sorted(self.asked))
        elif not report.passed:
            self.failed.add(report.nodeid)

    def _empty_caches(self) -> None:
        if len(sys.modules) != self._modules:
            self._modules = len(sys.modules)
            self._caches = [
                found
                for found in gc.get_objects()
                if isinstance(found, functools._lru_cache_wrapper)
                and found.__module__.startswith("halfangle_service.")
                and found.__name__ != "load_registry"
            ]
        for cache in self._caches:
            cache.cache_clear()


def _record(root: Path, test_file: str, data_file: Path) -> None:
    """Run one test file in the copy at `root` and write what each of its tests executes."""
    os.chdir(root)
    sys.path[:0] = [str(root / "service"), str(root / "client")]
    config = root / ".coveragerc"
    config.write_text("[run]\nrelative_files = true\n", encoding="utf-8")
    measured = coverage.Coverage(
        data_file=str(data_file.with_suffix(".part")),
        source=[str(root / SERVICE)],
        config_file=str(config),
        check_preimported=False,
        messages=False,
    )
    measured.start()
    forks.load_service()
    recorder = Recorder(measured)
    _note_operations(recorder.asked)
    measured.switch_context(COLLECTION)
    pytest.main([*forks.PYTEST_ARGUMENTS, test_file], plugins=[recorder])
    measured.stop()
    measured.save()
    tests = {name: vars(t) for name, t in recorder.tests.items() if name not in recorder.failed}
    about = {"tests": tests, "failed": sorted(recorder.failed)}
    data_file.with_suffix(".json").write_text(json.dumps(about), encoding="utf-8")
    data_file.with_suffix(".part").rename(data_file)


def _note_operations(asked: set[str]) -> None:
    """Note the name of each operation whose request model is asked for."""
    kind: Any = import_module("halfangle_service.operation").Operation

    def request(operation: Any) -> Any:
        asked.add(operation.name)
        return vars(operation)["request"]

    def keep(operation: Any, value: Any) -> None:
        vars(operation)["request"] = value

    kind.request = property(request, keep)


def test_files(root: Path) -> list[str]:
    """Files whose tests count: most under `tests`, and the service's own that hold doctests."""
    names = [name for name in files_of(root) if name.endswith(".py")]
    tests = [n for n in names if Path(n).name.startswith("test_") and n not in FORM + CARRIED]
    service = [n for n in names if n.startswith(SERVICE)]
    return sorted(tests, reverse=True) + [
        name for name in service if ">>> " in (root / name).read_text("utf-8")
    ]


@dataclass
class Coverage:
    """What is recorded: for each test file its data."""

    data: dict[str, Path]
    tests: dict[str, TestRecord] = field(default_factory=dict)
    failed: list[str] = field(default_factory=list)

    def __post_init__(self) -> None:
        self._read = [coverage.CoverageData(basename=str(path)) for path in self.data.values()]
        for data in self._read:
            data.read()
        self._lines: dict[str, dict[int, set[str]]] = {}
        for path in self.data.values():
            about = json.loads(path.with_suffix(".json").read_text("utf-8"))
            self.tests |= {name: TestRecord(**entry) for name, entry in about["tests"].items()}
            self.failed += about["failed"]
        self._of_file: dict[str, list[str]] = {}
        for name in self.tests:
            self._of_file.setdefault(name.partition("::")[0], []).append(name)

    def of_lines(self, file: str, first: int, last: int) -> set[str]:
        """Tests that execute any of these lines of a file of the service."""
        if file not in self._lines:
            self._lines[file] = self._contexts(file)
        found: set[str] = set()
        for line in range(first, last + 1):
            found |= self._lines[file].get(line, set())
        return found & self.tests.keys()

    def of_operation(self, operation: str) -> set[str]:
        """Tests that ask an operation."""
        return {name for name, entry in self.tests.items() if operation in entry.operations}

    def _contexts(self, file: str) -> dict[int, set[str]]:
        lines: dict[int, set[str]] = {}
        for test_file, data in zip(self.data, self._read, strict=True):
            for line, contexts in data.contexts_by_lineno(file).items():
                found = lines.setdefault(line, set())
                found.update(contexts)
                if COLLECTION in contexts:
                    found.update(self._of_file.get(test_file, ()))
        return lines


def record(copies: list[Path], cache: Path, wanted: list[str]) -> Coverage:
    """Record every test file that is not recorded yet, in one copy of the tree for each process."""
    root = copies[0]
    names = files_of_copy(root)
    common = digest_of(root, [name for name in names if _is_common(name)])
    cache.mkdir(parents=True, exist_ok=True)
    data = {
        name: cache / f"{common}-{digest_of(root, [name])}-{Path(name).stem}.coverage"
        for name in wanted
    }
    waiting = [name for name in wanted if not data[name].exists()]
    free, running = list(copies), dict[int, tuple[forks.Running, Path, str]]()
    while waiting or running:
        while waiting and free:
            name, copy = waiting.pop(0), free.pop()
            begun = forks.start(_record, copy, name, data[name], seconds=SECONDS_A_FILE)
            running[id(begun)] = (begun, copy, name)
        for done in forks.await_any([entry for entry, _, _ in running.values()]):
            done.answer()
            _, copy, name = running.pop(id(done))
            free.append(copy)
            print(f"recorded {name}{'' if data[name].exists() else ': FAILED'}", flush=True)
    return Coverage({name: path for name, path in data.items() if path.exists()})


def _is_common(name: str) -> bool:
    """True for what every test file may depend on: the service, and what tests share."""
    shared = name.startswith("tests/") and not Path(name).name.startswith("test_")
    own = name.startswith(("tests/load/mutation/", "tests/load/mutants.py"))
    return name.startswith(SERVICE) or (shared and not own)


def files_of_copy(root: Path) -> list[str]:
    """Paths of the files of a copy, relative to it; nothing that Python wrote there."""
    found = (path for path in root.rglob("*") if path.is_file() and path.suffix != ".pyc")
    return sorted(path.relative_to(root).as_posix() for path in found if path.name[0] != ".")
