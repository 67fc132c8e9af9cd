"""Every advisory is raised with its severity by a request, and not by one just short of it.

`advisories.jsonl` holds one case a line: `request` raises the advisory, and each entry of `short`
changes it (path to value; null takes a field away) so that it does not. The severity is written
there a second time, by what the advisory asks of its reader: a stop forbids, a caution warns of
harm to the work or to a person, a note tells of a better way. Where a rule has a limit of its own
(45°, 60″, 0.025 mm, a third of the wheel) the two requests stand at it; where it follows from
several fields they stand at what this release gives. A case without `short` is of what is said in
every answer, or in all but few.
"""

import json
from pathlib import Path
from typing import Any

import pytest

from halfangle_service.fields.glossary import advisory_meanings
from releases.mutations import with_value, without
from releases.paths import Json, Place
from source_support import advisory_codes
from support import Call

CASES: list[dict[str, Any]] = [
    json.loads(line)
    for line in Path(__file__).with_name("advisories.jsonl").read_text("utf-8").splitlines()
]


def severities(answer: dict[str, Any], code: str) -> set[str]:
    """Severities with which an answer carries an advisory."""
    return {found["severity"] for found in answer["advisories"] if found["code"] == code}


def changed(request: Json, changes: dict[str, Json]) -> Json:
    """A request with fields changed, or taken away where the value is null."""
    for path, value in changes.items():
        place = place_of(path)
        request = without(request, place) if value is None else with_value(request, place, value)
    return request


def place_of(path: str) -> Place:
    """Place that a path such as `heights/0/height` names."""
    return tuple(int(part) if part.isdigit() else part for part in path.split("/"))


def named(cases: list[dict[str, Any]]) -> list[Any]:
    """Cases under the name of their advisory and operation."""
    return [pytest.param(case, id=f"{case['code']}-{case['operation']}") for case in cases]


@pytest.mark.parametrize("case", named(CASES))
def test_an_advisory_has_its_severity(case: dict[str, Any], call: Call) -> None:
    """The request raises the advisory, as a stop, a caution or a note."""
    answer = call(case["operation"], **case["request"])
    assert severities(answer, case["code"]) == {case["severity"]}


@pytest.mark.parametrize("case", named([case for case in CASES if case["short"]]))
def test_just_short_of_an_advisory_it_is_not_given(case: dict[str, Any], call: Call) -> None:
    """With each of the changes the answer does not carry it."""
    for changes in case["short"]:
        answer = call(case["operation"], **changed(case["request"], changes))
        assert severities(answer, case["code"]) == set(), changes


def test_every_advisory_of_the_source_has_its_meaning() -> None:
    """The list that the contract and the page show is that of the source, each with a sentence."""
    listed = {(code, severity) for code, (severity, _) in advisory_meanings().items()}
    assert listed == set(advisory_codes())
    assert list(advisory_meanings()) == sorted(advisory_meanings())
    short = [code for code, (_, meaning) in advisory_meanings().items() if len(meaning) < 20]
    assert short == []
    assert all(meaning.endswith(".") for _, meaning in advisory_meanings().values())


def test_every_advisory_of_the_source_has_a_case() -> None:
    """The table is complete by what the source writes, and holds no other code or severity."""
    assert {(case["code"], case["severity"]) for case in CASES} == set(advisory_codes())
