"""What contributes to an estimate bears one kind of name over the whole project."""

import json
import math
from collections import Counter
from collections.abc import Iterator
from functools import cache
from typing import Any

import pytest

from halfangle_service.app import contract_bytes
from halfangle_service.errors import Refusal
from halfangle_service.fields.estimate import OWN_CAUSES
from halfangle_service.fields.glossary import glossary
from halfangle_service.fields.runout import PHASES_NOT_STATED
from halfangle_service.registry import load_registry
from schema_support import components, request_schemas
from seeded_requests import seeded_requests
from support import Call

SEEDED = 2_000
#: Causes that chance seldom meets: readings of an oval part that scatter, and at uneven angles.
_EVEN, _UNEVEN = range(0, 360, 90), (0, 30, 55, 100, 140, 200, 230, 300, 320, 345)
_OF_READINGS = tuple(
    (
        "runout.indicate",
        {
            "units": "in",
            "surface": "external",
            "indicator_resolution": 0.0001,
            "readings": [
                {"angular_position": angle, "reading": math.cos(2 * math.radians(angle) - 1) / 50}
                for angle in angles
            ],
        },
    )
    for angles in (_EVEN, _UNEVEN)
)


@cache
def stated_by_fields() -> frozenset[str]:
    """Every field of every request."""
    return frozenset(f for name in request_schemas() for f in components()[name]["properties"])


def named_wrongly(names: list[str]) -> list[str]:
    """Those that are neither a field of a request, or the path of one, nor a cause of its own."""
    return [
        name
        for name in names
        if name not in OWN_CAUSES
        and not {part for part in name.split("/") if not part.isdigit()} <= stated_by_fields()
    ]


def objects_in(document: Any) -> Iterator[dict[str, Any]]:
    """Every object of an answer, however deep."""
    if isinstance(document, dict):
        yield document
    inside = document.values() if isinstance(document, dict) else document
    for part in inside if isinstance(document, dict | list) else ():
        yield from objects_in(part)


def faults_of(answer: Any) -> list[str]:
    """What is wrong with the names of an answer's estimates."""
    found: list[str] = []
    for entry in objects_in(answer):
        parts = [(part["name"], part["of"]) for part in entry.get("contributions", ())]
        found += named_wrongly([name for name, _ in parts])
        found += [f"{name} of {of}, twice" for (name, of), n in Counter(parts).items() if n > 1]
        if "contributions" in entry:
            unknown = set(entry["not_stated"]) - {PHASES_NOT_STATED}
            found += named_wrongly(sorted(unknown))
            stated = {name for name, _ in parts}
            found += [f"{name}, stated and not" for name in sorted(unknown & stated)]
    return found


def test_a_wrong_name_would_be_seen() -> None:
    """The check below sees prose, a token that nobody defined, and a name that stands twice."""
    parts: list[tuple[str, str | None]] = [
        ("scatter", None),
        ("expansion of the plate", None),
        ("axis-yaw", None),
    ]
    parts += [("contributors/1/tilt_tir", None), ("block_calibration", "2"), ("scatter", None)]
    estimate = {
        "contributions": [{"name": n, "of": of} for n, of in parts],
        "not_stated": ["nowhere"],
    }
    assert faults_of({"result": [estimate]}) == [
        *("expansion of the plate", "axis-yaw", "scatter of None, twice", "nowhere")
    ]


def test_a_cause_of_its_own_is_no_field() -> None:
    """What a field states bears that field's name, so no cause of its own is spelled like one."""
    assert set(OWN_CAUSES) & set(glossary()) == set()
    assert sorted(OWN_CAUSES) == list(OWN_CAUSES)


@pytest.mark.parametrize("name", load_registry().operations)
def test_examples_name_contributions_by_fields(call: Call, name: str) -> None:
    """In the answer to an example each contribution is a request's field, or has a label."""
    assert faults_of(call(name, **load_registry().operations[name].example)) == []


def test_seeded_requests_name_contributions_by_fields(call: Call) -> None:
    """The same holds for what is asked by chance; each cause of its own is met."""
    told: set[str] = set()
    by_chance = seeded_requests(json.loads(contract_bytes()), SEEDED, 5)
    for name, body in (*_OF_READINGS, *by_chance):
        try:
            answer = call(name, **body) if isinstance(body, dict) else {}
        except (Refusal, ValueError):
            continue
        assert faults_of(answer) == [], (name, body)
        told |= {part["name"] for o in objects_in(answer) for part in o.get("contributions", ())}
    assert set(OWN_CAUSES) <= told
