"""Notes of a release, made from its changelog."""

import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest

from release_notes import CHANGELOG, changes_of, notes_of

SCRIPT = Path(__file__).parents[2] / "openapi" / "release_notes.py"


@pytest.mark.parametrize(
    ("kind", "entry", "sentence"),
    [
        (
            "request",
            {"operation": "sine.setting", "path": "yaw", "to": "errors.yaw_arcsec", "factor": 3600},
            "`sine.setting`: `yaw` is now `errors.yaw_arcsec`, is what it was times 3600",
        ),
        (
            "request",
            {"path": "kind", "new": "set", "reason": "said,\nnot guessed", "when": {"sent": "set"}},
            "`kind` must now be sent; `set` asks for what it was without (said, not guessed)"
            " — where sent `set`",
        ),
        ("request", {"path": "rounding", "dropped": True}, "`rounding` is no longer taken"),
        (
            "result",
            {"path": "*", "changed": True, "reason": "a fix"},
            "the whole result is another one (a fix)",
        ),
        (
            "result",
            {"path": "verdict", "words": {"good": ["holds", "not-stated"]}},
            "`verdict` says `holds` or `not-stated` where it said `good`",
        ),
        ("advisory", {"code": "steep", "severity": "stop"}, "`steep` is now a stop"),
        (
            "refusal",
            {"before": "impossible", "after": "answered", "reason": "it can be done"},
            "what was `impossible` is now `answered` (it can be done)",
        ),
        (
            "operation",
            {"name": "blocks.angle-stack", "to": "blocks.angle-blocks"},
            "`blocks.angle-stack` is now `blocks.angle-blocks`",
        ),
    ],
)
def test_each_change_is_a_sentence(kind: str, entry: dict[str, Any], sentence: str) -> None:
    """What a caller must do, or will see, is said with its condition and its reason."""
    notes = notes_of("9.9", {"sine": {kind: [entry]}})
    assert f"- {sentence}\n" in notes, notes


def test_what_only_words_a_sentence_otherwise_is_counted() -> None:
    """It is no line of the notes, and its number is said."""
    entries = [{"code": "a", "reworded": True}, {"code": "b", "reworded": True}]
    notes = notes_of("9.9", {"sine": {"advisory": entries}})
    assert "### Advisories" not in notes
    assert "in other words in 2 places" in notes


@pytest.mark.parametrize("release", [path.name for path in CHANGELOG.iterdir() if path.is_dir()])
def test_every_release_has_notes(release: str) -> None:
    """Of each topic's renamed fields the notes hold both names, what holds everywhere first."""
    changes = changes_of(CHANGELOG / release)
    notes = notes_of(release, changes)
    assert notes.index("## Everywhere") < notes.index("## blocks")
    renamed = [e for kinds in changes.values() for e in kinds.get("request", []) if "to" in e]
    assert len(renamed) > 10
    for entry in renamed:
        assert f"`{entry['path']}` is now `{entry['to']}`" in notes


def test_a_release_that_there_is_not_is_refused() -> None:
    """The message names those that there are."""
    ran = subprocess.run(
        [sys.executable, SCRIPT, "../7"], capture_output=True, text=True, check=False
    )
    assert (ran.returncode, ran.stdout) == (1, "")
    assert "there is: 0.2" in ran.stderr
