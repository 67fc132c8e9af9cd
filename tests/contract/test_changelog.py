"""The changelog of the contract: how its entries are read, translate requests, and are applied."""

from pathlib import Path
from typing import Any

import pytest

from changelog_support import (
    answer,
    differences,
    findings,
    problem,
    sent,
)
from releases.paths import Json

TRANSLATED: dict[str, tuple[str, Json, Json]] = {
    "a field renamed": ('path = "yaw"\nto = "turn"', {"yaw": 1, "x": 2}, {"turn": 1, "x": 2}),
    "a field moved": ('path = "yaw"\nto = "plate.yaw"', {"yaw": 1}, {"plate": {"yaw": 1}}),
    "a field of each row": (
        'path = "box[].size"\nto = "box[].length"',
        {"box": [{"size": 1, "n": 2}, {"size": 3}]},
        {"box": [{"length": 1, "n": 2}, {"length": 3}]},
    ),
    "a list renamed": (
        'path = "box"\nto = "own"',
        {"box": [{"s": 1}], "a": []},
        {"own": [{"s": 1}], "a": []},
    ),
    "a name at any depth": (
        'path = "**.tilt"\nto = "**.pitch"',
        {"tilt": 1, "a": [{"tilt": 2}]},
        {"pitch": 1, "a": [{"pitch": 2}]},
    ),
    "options": (
        'path = "way"\nvalues = { "flat wheel" = "flat-wheel" }',
        {"way": "flat wheel", "note": "flat wheel"},
        {"way": "flat-wheel", "note": "flat wheel"},
    ),
    "a unit, in decimals": ('path = "share"\nfactor = 100', {"share": 0.07}, {"share": 7.0}),
    "a unit, from degrees and minutes": (
        'path = "yaw"\nfactor = 3600',
        {"yaw": "-0 15 30"},
        {"yaw": -930.0},
    ),
    "a wrong value stays wrong": ('path = "yaw"\nfactor = 3600', {"yaw": [True]}, {"yaw": [True]}),
    "a field dropped": ('path = "old"\ndropped = true\nreason = "is of no use"', {"old": 1}, {}),
    "a field newly sent": (
        'path = "kind"\nnew = "set"\nwhen.sent = "set"\nreason = "is said now"',
        {"set": "inch-81"},
        {"set": "inch-81", "kind": "set"},
    ),
    "a field newly sent elsewhere only": (
        'path = "kind"\nnew = "set"\nwhen.sent = "set"\nreason = "is said now"',
        {"set": None},
        {"set": None},
    ),
    "no object": ('path = "yaw"\nto = "turn"', [1, 2], [1, 2]),
    "an object where a value was sent": (
        'path = "yaw"\nto = "plate.yaw"',
        {"plate": "x", "yaw": 1},
        {"plate": "x"},
    ),
}


@pytest.mark.parametrize("what", TRANSLATED)
def test_requests_are_sent_in_their_names_options_and_units_after(
    tmp_path: Path, what: str
) -> None:
    """Each kind of entry turns a request before into the one after, and no other field."""
    entry, before, after = TRANSLATED[what]
    assert sent(tmp_path, f"[[request]]\n{entry}\n", before) == after


@pytest.mark.parametrize("to", ["box[].length", "own[].length"])
def test_a_place_may_change_in_two_entries(tmp_path: Path, to: str) -> None:
    """Where a list and a field of its rows are renamed, the field's entry may name either list."""
    text = f'[[request]]\npath = "box"\nto = "own"\n[[request]]\npath = "box[].size"\nto = "{to}"\n'
    assert sent(tmp_path, text, {"box": [{"size": 1, "n": 2}]}) == {"own": [{"length": 1, "n": 2}]}


def test_two_names_may_change_places(tmp_path: Path) -> None:
    """An entry is about the name before, also where another entry gives that name."""
    text = '[[request]]\npath = "a"\nto = "b"\n[[request]]\npath = "b"\nto = "a"\n'
    assert sent(tmp_path, text, {"a": 1, "b": 2}) == {"b": 1, "a": 2}


#: Entry, result before, result after: no difference with the entry, some without it.
ALLOWED: dict[str, tuple[str, Json, Json]] = {
    "renamed": ('path = "rss"\nto = "estimate.value"', {"rss": 1.5}, {"estimate": {"value": 1.5}}),
    "options": (
        'path = "**.way"\nvalues = { "a b" = "a-b" }',
        {"x": [{"way": "a b"}]},
        {"x": [{"way": "a-b"}]},
    ),
    "another unit": ('path = "yaw"\nfactor = 3600', {"yaw": 0.1}, {"yaw": 360.00000000000006}),
    "gone": (
        'path = "old"\ngone = true\nreason = "of no use"',
        {"old": {"a": 1}, "b": 2},
        {"b": 2},
    ),
    "new": (
        'path = "more"\nnew = true\nreason = "was asked for"',
        {"b": 2},
        {"b": 2, "more": [{"a": None}]},
    ),
    "changed": ('path = "u"\nchanged = true\nreason = "has its mean"', {"u": 38.9}, {"u": 21.6}),
    "rows changed": (
        'path = "rows"\nto = "lines"\nchanged = true\nreason = "one more"',
        {"rows": [{"a": 1}]},
        {"lines": [{"a": 1}, {"a": 2}]},
    ),
    "rounding": (
        'path = "u"\ntolerance = 1e-12\nreason = "another order"',
        {"u": 0.3},
        {"u": 0.30000000000000004},
    ),
    "words": (
        'path = "v"\nwords = { "good" = ["holds"] }\nreason = "a forecast"',
        {"v": "good"},
        {"v": "holds"},
    ),
    "reworded": (
        'path = "bound"\nreworded = true\nreason = "shorter words"',
        {"bound": "Stops at 20 blocks."},
        {"bound": "At most 20 blocks are tried."},
    ),
    "rows by name": (
        'path = "rows"\nkeyed = "name"\nreason = "by size"',
        {"rows": [{"name": "a", "x": 1}, {"name": "b", "x": 2}]},
        {"rows": [{"name": "b", "x": 2}, {"name": "a", "x": 1}]},
    ),
}


@pytest.mark.parametrize("what", ALLOWED)
def test_what_is_listed_is_no_difference_and_nothing_else_is_let_through(
    tmp_path: Path, what: str
) -> None:
    """An entry excuses what it names; without it, or with another number beside, it is found."""
    entry, before, after = ALLOWED[what]
    text = f"[[result]]\n{entry}\n"
    assert differences(findings(tmp_path, text, answer(before), answer(after))) == []
    assert differences(findings(tmp_path, "", answer(before), answer(after)))
    more = answer({**after, "beside": 1.0000000000000002})
    found = findings(tmp_path, text, answer({**before, "beside": 1.0}), more)
    assert differences(found) == ["result.beside"]


@pytest.mark.parametrize(("before", "after"), [(1, True), (0, None), ("1", 1), ([], None)])
def test_values_of_other_types_are_not_the_same(tmp_path: Path, before: Json, after: Json) -> None:
    """A number, a truth, a text and null are never taken for one another."""
    assert differences(findings(tmp_path, "", answer({"x": before}), answer({"x": after})))


def test_one_whole_number_is_the_same_with_and_without_a_point(tmp_path: Path) -> None:
    """JSON knows one kind of number."""
    assert findings(tmp_path, "", answer({"x": 1}), answer({"x": 1.0})) == []


def test_an_entry_holds_only_under_its_condition(tmp_path: Path) -> None:
    """A number listed for requests with a yaw may not change in one without."""
    text = '[[result]]\npath = "u"\nchanged = true\nwhen.sent = "yaw"\nreason = "has its mean"\n'
    pair = answer({"u": 1}), answer({"u": 2})
    assert differences(findings(tmp_path, text, *pair, {"yaw": 0.5})) == []
    assert differences(findings(tmp_path, text, *pair, {"yaw": None})) == ["result.u"]


def steep(message: str, code: str = "steep-angle", severity: str = "caution") -> dict[str, str]:
    """An advisory."""
    return {"code": code, "severity": severity, "message": message}


ADVISORIES: dict[str, tuple[str, list[Any], list[Any]]] = {
    "code": ('code = "steep-angle"\nto = "steep"', [steep("x")], [steep("x", "steep")]),
    "severity": (
        'code = "steep-angle"\nseverity = "stop"\nreason = "it slips"',
        [steep("x")],
        [steep("x", severity="stop")],
    ),
    "gone": ('code = "steep-*"\ngone = true\nreason = "said elsewhere"', [steep("x")], []),
    "new": ('code = "steep-angle"\nnew = true\nreason = "was silent"', [], [steep("x")]),
    "order": (
        'code = "b"\nreordered = true\nreason = "stops first"',
        [steep("x", "b"), steep("y", "a")],
        [steep("y", "a"), steep("x", "b")],
    ),
    "words": (
        'code = "steep-angle"\nreworded = true\nreason = "plainer words"',
        [steep("Past 45° it slips.")],
        [steep("It slips past 45°.")],
    ),
}


@pytest.mark.parametrize("what", ADVISORIES)
def test_advisories_change_only_as_listed(tmp_path: Path, what: str) -> None:
    """Code, severity, words, presence and order of advisories are each found unless listed."""
    entry, before, after = ADVISORIES[what]
    pair = answer({}, before), answer({}, after)
    assert differences(findings(tmp_path, f"[[advisory]]\n{entry}\n", *pair)) == []
    assert differences(findings(tmp_path, "", *pair))


def test_a_reworded_sentence_keeps_its_numbers(tmp_path: Path) -> None:
    """Other words are allowed, another number in them is not."""
    text = '[[advisory]]\ncode = "steep-angle"\nreworded = true\nreason = "plainer words"\n'
    pair = answer({}, [steep("Past 45° it slips.")]), answer({}, [steep("It slips past 60°.")])
    assert differences(findings(tmp_path, text, *pair)) == ["advisories.steep-angle.message"]
    free = text + "numbers = false\n"
    assert differences(findings(tmp_path, free, *pair)) == []


def test_sentences_follow_the_names_of_fields_and_options(tmp_path: Path) -> None:
    """A sentence that differs only in a field's and an option's name is the same."""
    text = """
[[request]]
path = "base_step"
to = "seat_offset"
[[request]]
path = "way"
values = { "flat wheel" = "flat-wheel" }
"""
    before = answer({}, [steep("base_step 2 with a flat wheel")], ["h = L + base_step"])
    after = answer({}, [steep("seat_offset 2 with a flat-wheel")], ["h = L + seat_offset"])
    assert findings(tmp_path, text, before, after) == []
    assert len(differences(findings(tmp_path, "", before, after))) == 2


def test_refusals_follow_the_names_and_their_pointers(tmp_path: Path) -> None:
    """Pointers and messages of a refusal are in the new names; the order of errors is free."""
    text = '[[request]]\npath = "height"\nto = "stack_height"\n'
    before = problem("disagreement", "`height` was sent.", height="send this", angle="or this")
    after = problem(
        "disagreement", "`stack_height` was sent.", angle="or this", stack_height="send this"
    )
    assert findings(tmp_path, text, before, after) == []
    assert differences(findings(tmp_path, "", before, after)) == [
        "detail",
        "errors.height",
        "errors.stack_height",
    ]


def test_a_refusal_that_is_answered_now_is_listed(tmp_path: Path) -> None:
    """Another kind of refusal, or none, is found unless listed with the detail that it is about."""
    entry = """
[[refusal]]
before = "impossible"
after = "answered"
detail = "low roll"
reason = "is built"
"""
    before = problem("impossible", "It is below the low roll.")
    assert differences(findings(tmp_path, entry, before, answer({}))) == []
    other = problem("impossible", "It is past the vertical.")
    assert differences(findings(tmp_path, entry, other, answer({}))) == [
        "kind: impossible before, answered after"
    ]
