"""The changelog kept in order: what is wrong in it, what never applied, what it is tried with."""

import json
from pathlib import Path

import pytest

from changelog_support import (
    CONTRACT,
    answer,
    changelog_of,
)
from halfangle_service import __version__
from releases.changelog import ChangelogError
from releases.comparing import Comparison
from releases.schemas import calculations
from releases.texts import numbers_agree, same_to_digits_shown
from releases.translation import translated_request
from seeded_requests import seeded_requests
from source_support import ROOT

REFUSED: dict[str, tuple[str, str]] = {
    "an unknown key": ('[[request]]\npath = "a"\nto = "b"\nwhy = "x"', "why: Extra inputs"),
    "an entry that says nothing": ('[[result]]\npath = "a"', "says nothing"),
    "no reason": ('[[result]]\npath = "a"\nchanged = true', "give the reason"),
    "a path that is none": ('[[request]]\npath = "a..b"\nto = "c"', "is not a path"),
    "other wildcards": ('[[request]]\npath = "a[].b"\nto = "c"', "the same"),
    "gone and changed": (
        '[[result]]\npath = "a"\ngone = true\nchanged = true\nreason = "a b"',
        "exclude",
    ),
    "no such operation": (
        '[[request]]\noperation = "sine.cosine"\npath = "a"\nto = "b"',
        "no operation sine.cosine",
    ),
    "two places": (
        '[[request]]\npath = "a"\nto = "b"\n[[request]]\npath = "a"\nto = "c"',
        "to two places",
    ),
    "no TOML": ("[[request]", "sine.toml"),
}


@pytest.mark.parametrize("what", REFUSED)
def test_a_changelog_that_is_wrong_is_refused(tmp_path: Path, what: str) -> None:
    """Each mistake is named with the file it is in."""
    text, message = REFUSED[what]
    with pytest.raises(ChangelogError, match=message):
        changelog_of(tmp_path, text)


def test_a_file_is_named_after_a_topic(tmp_path: Path) -> None:
    """A file of no topic is refused; `all.toml` is about all operations."""
    assert changelog_of(tmp_path, "", "all.toml").request == []
    with pytest.raises(ChangelogError, match="no topic is called cosine"):
        changelog_of(tmp_path, "", "cosine.toml")


def test_what_never_applied_is_told(tmp_path: Path) -> None:
    """An entry that met nothing is stale, where all operations that it is about were run."""
    text = """
[[request]]
path = "a"
to = "b"
[[request]]
path = "way"
values = { "x" = "y", "z" = "w" }
"""
    changelog = changelog_of(tmp_path, text)
    translated_request({"way": "x"}, changelog)
    stale = [(entry.origin, part) for entry, part in changelog.stale({"sine.*"})]
    assert stale == [("sine.toml request[0]", ""), ("sine.toml request[1]", "values: z")]
    assert list(changelog.stale({"sine.setting"})) == []


def test_an_excuse_that_was_never_needed_is_told(tmp_path: Path) -> None:
    """A number that is listed as changed and is the same is stale."""
    text = '[[result]]\npath = "u"\nchanged = true\nreason = "has its mean"\n'
    changelog = changelog_of(tmp_path, text)
    comparison = Comparison("sine.setting", "/v1/sine/setting", changelog)
    assert comparison.compare({}, answer({"u": 1}), answer({"u": 1})) == []
    assert [part for _, part in changelog.stale({"sine.*"})] == ["excused"]
    comparison.compare({}, answer({"u": 1}), answer({"u": 2}))
    assert list(changelog.stale({"sine.*"})) == []


@pytest.mark.parametrize(
    ("before", "after", "alike"),
    [
        ("off by -3e-05 in", "off by -0.00003 in", True),
        ("off by 0.12346 in", "off by 0.123 in", True),
        ("off by 0.12346 in", "off by 0.124 in", False),
        ("20 blocks", "21 blocks", False),
        ("off by 1 in", "short by 1 in", False),
    ],
)
def test_numbers_in_another_form_are_the_same_to_the_digits_shown(
    before: str, after: str, alike: bool
) -> None:
    """Only the form of a number may differ, and its digits only where fewer are shown."""
    assert same_to_digits_shown(before, after) is alike


def test_names_are_not_read_as_numbers() -> None:
    """The digits of a job, a mark or a set are no numbers of the sentence."""
    assert numbers_agree("HL-0412 from inch-81: B17, 0.5", "HL-0413 from inch-88: B18, 0.5")


def test_the_same_seed_makes_the_same_distinct_requests_of_every_operation() -> None:
    """Requests follow from the contract and the seed alone, and none comes twice."""
    contract = json.loads(CONTRACT.read_text(encoding="utf-8"))
    made = list(seeded_requests(contract, 660, 3))
    assert made == list(seeded_requests(contract, 660, 3))
    assert made != list(seeded_requests(contract, 660, 4))
    assert len({json.dumps(one) for one in made}) >= 655
    operations = {path for path, _ in calculations(contract)}
    assert len({name for name, _ in made}) == len(operations)


def test_the_newest_changelog_is_of_this_release() -> None:
    """What the contract changes is listed under the release that serves it."""
    folders = [path.name for path in (ROOT / "openapi/changelog").iterdir() if path.is_dir()]
    assert max(folders, key=_number) == __version__.rpartition(".")[0]


def _number(release: str) -> tuple[int, ...]:
    return tuple(map(int, release.split(".")))
