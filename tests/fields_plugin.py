"""The guard of numbers: after a run of the whole suite, each numeric field was read by a test.

It is judged at the end, and only where every test was run and passed: of a selection nothing
follows. With several workers each hands over what its tests read.
"""

from typing import Any

import pytest

from fields_support import (
    AMISS,
    READING,
    VALUE_TESTS,
    findings,
    load_not_held,
    numeric_fields,
)

FINDINGS: list[str] = []
HANDED_OVER = "fields_read"


@pytest.hookimpl(tryfirst=True)
def pytest_runtest_setup(item: pytest.Item) -> None:
    """What is read from here on is read by this test, where it is a test of values."""
    READING.test = item.nodeid if any(map(item.path.is_relative_to, VALUE_TESTS)) else None


@pytest.hookimpl(optionalhook=True)
def pytest_testnodedown(node: Any) -> None:
    """What the tests of a worker read is read."""
    for operation, path in getattr(node, "workeroutput", {}).get(HANDED_OVER, ()):
        READING.tests_of[operation, path].add(node.gateway.id)


def pytest_sessionfinish(session: pytest.Session, exitstatus: int) -> None:
    """A whole run in which a numeric field was not read has failed."""
    config = session.config
    if hasattr(config, "workerinput"):
        config.workeroutput[HANDED_OVER] = list(READING.tests_of)  # type: ignore[attr-defined]
    elif exitstatus == pytest.ExitCode.OK and _is_whole(config):
        fields = numeric_fields()
        unread = fields - READING.tests_of.keys()
        listed = load_not_held()
        known = listed["unread"] | listed["null"]
        FINDINGS.extend(findings(fields, unread, known, AMISS["unread"]))
        if FINDINGS:
            session.exitstatus = pytest.ExitCode.TESTS_FAILED


#: What narrows nothing here: no test of values drives a program.
_ALL: tuple[object, ...] = (None, False, "", [], "not program")


def _is_whole(config: pytest.Config) -> bool:
    options = ("keyword", "markexpr", "deselect", "ignore", "ignore_glob", "lf", "stepwise")
    narrowed = any(config.getoption(option, None) not in _ALL for option in options)
    everywhere = config.args_source is pytest.Config.ArgsSource.TESTPATHS
    return everywhere and not narrowed and not config.option.collectonly


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter) -> None:
    """Say which fields they are."""
    if FINDINGS:
        terminalreporter.section("numeric fields of answers", red=True)
        for line in FINDINGS:
            terminalreporter.line(line)
