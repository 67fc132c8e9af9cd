"""Which numbers of answers are looked at by the tests of values, each by its name.

A number is *read* where a test fetches it by its name (`row["diameter"]`, `row.get("diameter")`),
or compares a whole object or list that holds it with values of its own. Going over `values()` or
`items()` names nothing, and neither does comparing two answers with each other: a test that holds
of any number holds none. A null is no number: who sees only nulls has not read the field.

Only what the fixture `call` gives to tests in `VALUE_TESTS` counts. HTTP and the client carry the
same answers, which tests of theirs hold; what `tests/contract/` asks holds of every answer.
"""

import json
import tomllib
from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from itertools import groupby
from operator import itemgetter
from pathlib import Path
from typing import Any

from halfangle_service.app import contract_bytes
from inlining import inlined
from releases.schemas import Node, Schema, calculations, operation_of

TESTS = Path(__file__).parent
VALUE_TESTS = (TESTS / "published", TESTS / "property")
NOT_HELD = TESTS / "fields_not_held.toml"
NOT_HELD_HEAD = """\
# Numeric fields of answers that no test of values reads; those that some read but none holds: made
# wrong by 5 %, they are not noticed; those that are null in every answer that tests of values ask
# for. The lists may only get shorter. A run of the whole suite holds `unread` and `null` together,
# `tests/load/perturbed_fields.py` all three, which it writes.

"""
ROUNDING = 1e-11
NUMBERS = frozenset({"number", "integer"})

#: A numeric field of an answer: operation, and its path such as `at_stations[].diameter`.
Field = tuple[str, str]


@dataclass
class Reading:
    """What was read so far, by which tests; and the one field that is given wrong, if any.

    `numbers` are the fields that were a number, not null, in some answer, read or not.
    """

    tests_of: defaultdict[Field, set[str]] = field(default_factory=lambda: defaultdict(set))
    numbers: set[Field] = field(default_factory=set)
    test: str | None = None
    wrong: Field | None = None

    def note(self, read: Field) -> None:
        """A field was read by the test that runs."""
        if self.test is not None:
            self.tests_of[read].add(self.test)


READING = Reading()


def is_number(value: object) -> bool:
    """True of a number of JSON."""
    return isinstance(value, int | float) and not isinstance(value, bool)


def made_wrong(number: float) -> float:
    """A number that no test should take for the right one; a whole one stays whole.

    What only rounding leaves is taken for 0.

    >>> made_wrong(2.0), made_wrong(1e-17), made_wrong(3)
    (2.1, 0.01, 4)
    """
    if isinstance(number, int):
        return number + 1
    return 0.01 if abs(number) < ROUNDING else 1.05 * number


def watched_answer(operation: str, answer: dict[str, Any]) -> dict[str, Any]:
    """An answer that notes what is read of its result."""
    return {**answer, "result": _watched(answer["result"], (operation, ""))}


def _watched(value: Any, at: Field) -> Any:
    operation, path = at
    if isinstance(value, dict):
        prefix = f"{path}." if path else ""
        inside = {n: _watched(v, (operation, f"{prefix}{n}")) for n, v in value.items()}
        return WatchedObject(inside, at)
    if isinstance(value, list):
        return WatchedList((_watched(entry, (operation, f"{path}[]")) for entry in value), at)
    if not is_number(value):
        return value
    READING.numbers.add(at)
    return made_wrong(value) if at == READING.wrong else value


class WatchedObject(dict[str, Any]):
    """An object of an answer: what is fetched from it by name is noted."""

    def __init__(self, values: Mapping[str, Any], at: Field) -> None:
        super().__init__(values)
        self.at = at

    def __getitem__(self, name: str) -> Any:
        value = super().__getitem__(name)
        self._note(name, value)
        return value

    def get(self, name: str, default: Any = None) -> Any:
        """As of a dictionary."""
        self._note(name, super().get(name))
        return super().get(name, default)

    def _note(self, name: str, value: object) -> None:
        operation, path = self.at
        for leaf in _numbers_named(f"{path}.{name}" if path else name, value):
            READING.note((operation, leaf))

    def __eq__(self, other: object) -> bool:
        _note_compared(self, other)
        return super().__eq__(other)

    __hash__ = None  # as of a dictionary


class WatchedList(list[Any]):
    """A list of an answer."""

    def __init__(self, values: Iterable[Any], at: Field) -> None:
        super().__init__(values)
        self.at = at

    def __eq__(self, other: object) -> bool:
        _note_compared(self, other)
        return super().__eq__(other)

    __hash__ = None  # as of a list


def _numbers_named(path: str, value: object) -> Iterator[str]:
    """Paths of the numbers that a name stands for: itself, or the entries of its list."""
    if is_number(value):
        yield path
    elif isinstance(value, list) and any(is_number(entry) for entry in value):
        yield f"{path}[]"


def _note_compared(part: WatchedObject | WatchedList, other: object) -> None:
    """Compared with a test's own values, all within is read; with another answer, nothing."""
    if isinstance(other, WatchedObject | WatchedList):
        return
    operation, path = part.at
    for leaf in _leaves(part, path):
        READING.note((operation, leaf))


def _leaves(value: object, path: str) -> Iterator[str]:
    if isinstance(value, dict):
        for name, inside in value.items():
            yield from _leaves(inside, f"{path}.{name}" if path else name)
    elif isinstance(value, list):
        for inside in value:
            yield from _leaves(inside, f"{path}[]")
    elif is_number(value):
        yield path


def numeric_fields() -> set[Field]:
    """Every numeric field of every operation's result, nested ones and lists of numbers too."""
    contract = inlined(json.loads(contract_bytes()))
    return {
        (operation_of(path), leaf.removeprefix("result."))
        for path, item in calculations(contract)
        for leaf in _numeric_leaves(contract, item["post"]["responses"]["200"]["content"])
        if leaf.startswith("result.")
    }


def _numeric_leaves(contract: Schema, forms: Schema) -> Iterator[str]:
    for path, node, _ in Node(contract, forms["application/json"]["schema"]).all_fields():
        if node.kind in NUMBERS:
            yield path
        elif node.kind == "list" and node.items.kind in NUMBERS:
            yield f"{path}[]"


#: What may be amiss with a field, by the name of its list.
AMISS = {"unread": "read by no test", "unheld": "held by no test", "null": "never a number"}
NotHeld = Mapping[str, frozenset[Field]]


def load_not_held(path: Path = NOT_HELD) -> NotHeld:
    """The committed lists; ValueError where one is out of order, so that a merge stays readable."""
    lists = tomllib.loads(path.read_text(encoding="utf-8"))
    held = {}
    for what in AMISS:
        listed = [(operation, name) for operation, names in lists[what].items() for name in names]
        if listed != sorted(set(listed)):
            raise ValueError(f"{path.name} is not sorted, or names a field twice")
        held[what] = frozenset(listed)
    return held


def written_not_held(fields: NotHeld) -> str:
    """The lists as they are committed."""
    tables = ("\n".join(_table(what, fields[what])) for what in AMISS)
    return NOT_HELD_HEAD + "\n\n".join(tables) + "\n"


def _table(name: str, fields: Iterable[Field]) -> Iterator[str]:
    yield f"[{name}]"
    for operation, listed in groupby(sorted(fields), key=itemgetter(0)):
        yield f'"{operation}" = ['
        yield from (f'    "{path}",' for _, path in listed)
        yield "]"


def findings(
    fields: Iterable[Field], amiss: Iterable[Field], listed: Iterable[Field], what: str
) -> list[str]:
    """What differs from the committed list, which may only get shorter: a line for each field."""
    amiss, listed, known = set(amiss), set(listed), set(fields)
    said = {
        f"is {what}": amiss - listed,
        f"is no longer {what}: take it off the list": (listed & known) - amiss,
        "is listed, but no operation answers it": listed - known,
    }
    lines = sorted((field, word) for word, found in said.items() for field in found)
    return [f"{operation} {path} {word}" for (operation, path), word in lines]
