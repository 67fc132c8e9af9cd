"""Which numbers of answers could be wrong without any test of values seeing it.

    python tests/load/perturbed_fields.py                          all fields; takes minutes
    python tests/load/perturbed_fields.py --operation 'wheels.*'   those of some operations
    python tests/load/perturbed_fields.py --outside                held by a test marked `outside`

First every test of values runs once, and what it reads is noted (`fields_support`). Then each test
runs again for each field that it reads, with this one number made wrong by 5 % (a whole number by
1) in every answer that it asks for, quick tests first, until one of them fails for the field: so
it is *held*. Fields that no test reads and those that none holds are printed; `--write` writes
them to `tests/fields_not_held.toml`. Status 1 where they differ from what stands there.
"""

import argparse
import sys
from fnmatch import fnmatchcase

import pytest
from _pytest.runner import runtestprotocol
from hypothesis import Phase
from hypothesis import settings as hypothesis_settings

from fields_support import (
    AMISS,
    NOT_HELD,
    READING,
    VALUE_TESTS,
    Field,
    NotHeld,
    findings,
    load_not_held,
    numeric_fields,
    written_not_held,
)


class Perturbing:
    """Runs the tests in its own order in place of pytest's: each once, then with wrong numbers."""

    def __init__(self, fields: set[Field], *, outside: bool) -> None:
        self.fields = fields
        self.outside = outside
        self.held: set[Field] = set()
        self.failed: list[str] = []

    def pytest_configure(self) -> None:
        """A failure is all that is wanted, not its smallest example: before tests are imported."""
        phases = (Phase.explicit, Phase.generate)
        hypothesis_settings.register_profile("first-failure", phases=phases)
        hypothesis_settings.load_profile("first-failure")

    def pytest_runtestloop(self, session: pytest.Session) -> bool:
        """Run everything; True tells pytest that it is done."""
        seconds = {item: self._run_as_it_is(item) for item in session.items}
        for item in sorted(seconds, key=lambda item: seconds[item]):
            for field in self._still_to_hold(item):
                if self._fails(item, field):
                    self.held.add(field)
        return True

    def amiss(self) -> NotHeld:
        """What was found, by the names of the lists."""
        null = self.fields - READING.numbers
        unread = self.fields - null - READING.tests_of.keys()
        unheld = self.fields - null - unread - self.held
        return {"unread": frozenset(unread), "unheld": frozenset(unheld), "null": frozenset(null)}

    def _run_as_it_is(self, item: pytest.Item) -> float:
        reports = _run(item)
        if any(report.failed for report in reports):
            self.failed.append(item.nodeid)
        return sum(report.duration for report in reports)

    def _still_to_hold(self, item: pytest.Item) -> list[Field]:
        if item.nodeid in self.failed:
            return []
        if self.outside and item.get_closest_marker("outside") is None:
            return []
        read = {field for field, tests in READING.tests_of.items() if item.nodeid in tests}
        return sorted(read & self.fields - self.held)

    def _fails(self, item: pytest.Item, field: Field) -> bool:
        READING.wrong = field
        try:
            return any(report.failed for report in _run(item))
        finally:
            READING.wrong = None


def _run(item: pytest.Item) -> list[pytest.TestReport]:
    return runtestprotocol(item, log=False, nextitem=None)


def _argument_parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0] if __doc__ else None)
    parser.add_argument("--operation", default="*", help="only operations of this pattern")
    parser.add_argument("--outside", action="store_true", help="only tests marked outside hold")
    parser.add_argument("--write", action="store_true", help="write the list of what is not held")
    return parser


def main() -> int:
    """Print what is read by no test and what is held by none."""
    arguments = _argument_parser().parse_args()
    fields = {f for f in numeric_fields() if fnmatchcase(f[0], arguments.operation)}
    perturbing = Perturbing(fields, outside=arguments.outside)
    quiet = ["-n0", "--assert=plain", "-qq", "--no-summary", "-p", "no:cacheprovider"]
    status = pytest.main([*quiet, *map(str, VALUE_TESTS)], plugins=[perturbing])
    if status != pytest.ExitCode.OK:
        return 2
    if perturbing.failed:
        print("fail as they are, and hold nothing:", *perturbing.failed, sep="\n    ")
    amiss = perturbing.amiss()
    counts = ", ".join(f"{len(amiss[what])} {said}" for what, said in AMISS.items())
    print(f"{len(fields)} numeric fields: {counts}")
    listed = load_not_held()
    elsewhere = {what: (listed[what] & numeric_fields()) - fields for what in AMISS}
    lines = [
        line
        for what, said in AMISS.items()
        for line in findings(fields, amiss[what], listed[what] - elsewhere[what], said)
    ]
    print(*lines, sep="\n")
    if arguments.write:
        kept = {what: elsewhere[what] | amiss[what] for what in AMISS}
        NOT_HELD.write_text(written_not_held(kept), encoding="utf-8")
    return 1 if lines else 0


if __name__ == "__main__":
    sys.exit(main())
