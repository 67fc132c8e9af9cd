"""Every advisory against its table: it is raised, it is gone just short, and no row is missing."""

from collections.abc import Iterable, Mapping
from functools import cache

import pytest

from advisories.every import ROWS
from advisories.places import Place, answer, places, places_hit
from advisories.row import Request, Row
from halfangle_service.fields.glossary import advisory_meanings
from releases.paths import Json
from source_support import advisory_codes

WITH_LIMIT = [row for row in ROWS if row.short_of is not None]
#: Nearer than this a value on the other side of a limit leaves no other limit between.
NEAR = 0.0101
#: What no request brings about: the module, what it calls there, the code, and why not.
NEVER: dict[tuple[str, str, str], str] = {
    ("sine.compound.setting", "unusual_stack", "stack-below-zero"): "such a request is refused: no "
    "stack lowers a plate",
    ("sine.correction", "unusual_stack", "rounds-to-nothing"): "the new height is not rounded",
    ("sine.low_stack", "unusual_stack", "small-stack"): "asked of the longer stack only where it "
    "is longer than the plate, and of the height only where it is set as nothing",
    ("sine.low_stack", "unusual_stack", "stack-below-zero"): "angles from 0 are taken, and the "
    "longer stack is never below zero",
    ("sine.requirements", "stack_advisories", "rounds-to-nothing"): "the stack is not rounded",
    ("sine.uncertainty", "stack_advisories", "rounds-to-nothing"): "the stack is not rounded",
    ("sine.stated_errors", "unusual_stack", "rounds-to-nothing"): "the stack is not rounded",
    **{
        (module, name, code): "a file of profiles is read at the start for what it contradicts; "
        "who plans with one gets the advisories"
        for module, name in (("jobs.plan.shop.profiles", "read_boxes"),)
        for code in ("set-of-other-units", "size-of-other-units")
    },
    ("blocks.angle_stack", "note", "bound-reached"): "a guard: the most stacks of as few blocks "
    "known are 705,432 of the 1,000,000; held with a lower bound in test_blocks_angles.py",
}

Given = tuple[str, str, str]


def _named(row: Row) -> str:
    return str(row)


def _never(place: Place) -> tuple[str, str, str]:
    return place.module.partition("topics.")[2], place.name, place.code


@cache
def _raised(row: Row) -> list[Given]:
    return _given(row.operation, row.raising)


@cache
def _short_of(row: Row) -> list[Given]:
    return _given(row.operation, row.falling_short)


def _given(operation: str, request: Request) -> list[Given]:
    """Code, severity and message of each advisory of an answer."""
    return [
        (a["code"], a["severity"], a["message"]) for a in answer(operation, request)["advisories"]
    ]


@pytest.mark.parametrize("row", ROWS, ids=_named)
def test_a_row_raises_its_advisory(row: Row) -> None:
    """The request raises it once, with its severity, and its message names what matters."""
    given = [(s, m) for code, s, m in _raised(row) if code == row.code]
    assert [severity for severity, _ in given] == [row.severity]
    assert [words for words in row.says if words not in given[0][1]] == []


@pytest.mark.parametrize("row", WITH_LIMIT, ids=_named)
def test_just_short_of_its_limit_it_is_gone(row: Row) -> None:
    """The same request with one change is answered without it."""
    assert row.code not in {code for code, _, _ in _short_of(row)}


@pytest.mark.parametrize("row", WITH_LIMIT, ids=_named)
def test_a_row_stands_on_both_sides_of_one_limit(row: Row) -> None:
    """One field is changed, or sent in another's place; a number by 1 % or one step at most."""
    changes = row.short_of or {}
    assert len([value for value in changes.values() if value is not None]) <= 1
    for path, near in changes.items():
        value = _value_at(row.raising, path)
        if _is_number(value) and _is_number(near) and value and near:
            reach = NEAR * max(abs(value), abs(near))
            steps = isinstance(value, int) and isinstance(near, int) and abs(value - near) == 1
            assert steps or abs(value - near) <= reach, f"{path}: {value}, {near}"


def test_every_stop_says_what_it_is_about() -> None:
    """No row of a stop leaves its message unread."""
    assert [str(row) for row in ROWS if row.severity == "stop" and not row.says] == []


def test_what_is_always_said_is_said_by_every_answer() -> None:
    """A row without a limit holds for every answer of its operation in the table."""
    always = [row for row in ROWS if row.short_of is None]
    asked = [(row, other) for row in always for other in ROWS if other.operation == row.operation]
    silent = [
        f"{row}; {other}"
        for row, other in asked
        if row.code not in {code for code, _, _ in _short_of(other)}
    ]
    assert len(always) > 10
    assert silent == []


def test_the_table_has_the_codes_of_the_source_and_no_others() -> None:
    """Every code is there with every severity that it is written with."""
    assert {(row.code, row.severity) for row in ROWS} == set(advisory_codes())


# Places -----------------------------------------------------------------------------------------
@pytest.fixture(scope="module")
def every() -> set[Place]:
    """Every place in the service where an advisory is made."""
    return places()


@pytest.fixture(scope="module")
def hits(every: set[Place]) -> dict[Row, set[Place]]:
    """Places that made the advisory of each row."""
    return {row: places_hit(row, every) for row in ROWS}


def _without_row(
    every: set[Place], hits: Mapping[Row, set[Place]], rows: Iterable[Row]
) -> set[Place]:
    return {p for p in every.difference(*(hits[row] for row in rows)) if _never(p) not in NEVER}


def test_every_place_that_makes_an_advisory_has_a_row(
    every: set[Place], hits: dict[Row, set[Place]]
) -> None:
    """Each call in the source is the one that a row comes through."""
    assert len(every) > 200
    assert sorted(map(str, _without_row(every, hits, ROWS))) == []


def test_a_missing_row_would_be_seen(every: set[Place], hits: dict[Row, set[Place]]) -> None:
    """Without the rows of any one advisory of an operation a place is left without one."""
    unseen = {
        name
        for name in {row.name for row in ROWS}
        if not _without_row(every, hits, [row for row in ROWS if row.name != name])
    }
    # One place may speak for several operations: what they answer is seen in test_judgements.py.
    several = {n for n in unseen if len({r.operation for r in ROWS if r.code == n[1]}) > 1}
    assert unseen == several
    assert len(unseen) < 10


def test_what_is_never_raised_is_still_in_the_source(
    every: set[Place], hits: dict[Row, set[Place]]
) -> None:
    """The list of what no request brings about names places, and no place of a row."""
    named = {_never(place) for place in every}
    assert set(NEVER) - named == set()
    assert set(NEVER) & {_never(place) for found in hits.values() for place in found} == set()


def _value_at(request: Request, path: str) -> Json:
    value: Json = request
    for part in path.split("__"):
        value = value.get(part) if isinstance(value, dict) else None
    return value


def _is_number(value: object) -> bool:
    return isinstance(value, int | float) and not isinstance(value, bool)


def test_every_advisory_of_the_source_has_its_meaning() -> None:
    """The list that the contract and the page show is that of the source, each with a sentence."""
    listed = {(code, severity) for code, (severity, _) in advisory_meanings().items()}
    assert listed == set(advisory_codes())
    assert list(advisory_meanings()) == sorted(advisory_meanings())
    short = [code for code, (_, meaning) in advisory_meanings().items() if len(meaning) < 20]
    assert short == []
    assert all(meaning.endswith(".") for _, meaning in advisory_meanings().values())
