"""The fingerprint of an answer: of the request as it was read, and of the release."""

import json
from dataclasses import replace
from typing import Any

import pytest

from halfangle_service import fingerprint
from halfangle_service.fingerprint import DIGITS, fingerprint_of
from halfangle_service.operation import Outcome
from halfangle_service.registry import load_registry

SETTING = load_registry().operations["sine.setting"]


def fingerprint_sent(body: str) -> str:
    """Fingerprint of the answer to a body of `sine.setting`."""
    answer = json.loads(SETTING.answer_json(SETTING.request.model_validate_json(body)))
    made: str = answer["basis"]["fingerprint"]
    return made


ASKED = fingerprint_sent('{"units": "in", "center_distance": 5, "angle": 30}')


@pytest.mark.parametrize(
    "body",
    [
        '{"angle":30,"center_distance":5,"units":"in"}',
        '{"units": "in", "center_distance": 5.000, "angle": 3e1}',
        '{"units": "in", "center_distance": 5, "angle": "30°00\'"}',
        '{"units": "in", "center_distance": 5, "angle": 30, "resolution": null}',
        '{"units": "in", "center_distance": 5, "angle": 30, "base_step": 0}',
    ],
)
def test_one_request_has_one_fingerprint(body: str) -> None:
    """Order, spelling of numbers, nulls and stated defaults tell no two requests apart."""
    assert fingerprint_sent(body) == ASKED
    assert len(ASKED) == DIGITS


@pytest.mark.parametrize(
    "body",
    [
        '{"units": "in", "center_distance": 10, "angle": 30}',
        '{"units": "in", "center_distance": 5, "angle": 30.000000000000004}',
    ],
)
def test_another_request_has_another(body: str) -> None:
    """Another length, and the last digit of a number, tell two requests apart."""
    assert fingerprint_sent(body) != ASKED


def test_another_operation_release_or_shop_has_another(monkeypatch: pytest.MonkeyPatch) -> None:
    """The same request asked of another operation, release or shop is answered by another."""
    made = [fingerprint_of("sine.setting", b"{}"), fingerprint_of("sine.angle", b"{}")]
    made.append(fingerprint_of("sine.setting", b"{}", ("a shop",)))
    monkeypatch.setattr(fingerprint, "__version__", "9.9")
    made.append(fingerprint_of("sine.setting", b"{}"))
    assert len(set(made)) == len(made)


def test_what_an_answer_stands_on_besides_is_in_it() -> None:
    """The digest of a shop's profile that was used is part of the fingerprint."""
    request = SETTING.request.model_validate(SETTING.example)
    outcome: Outcome[Any] = SETTING.outcome(request)
    elsewhere = replace(outcome, stands_on=("another shop",))
    assert SETTING.fingerprint(request, outcome) != SETTING.fingerprint(request, elsewhere)
