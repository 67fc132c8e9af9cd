"""Completion of the command, tried in the shells themselves where they are installed."""

import os
import re
import shutil
import subprocess
from pathlib import Path

import pytest

from client_support import run
from halfangle_client.cli import contract
from support import need_program

SHELLS = ("bash", "zsh", "fish")
#: What is typed, and what is offered: all of it, or some of it where it ends with an ellipsis.
OFFERED = [
    ("halfangle sine ta", ["table", "taper-angle", "taper-setting"]),
    ("halfangle sine setting --units ", ["in", "mm"]),
    ("halfangle sine setting --units in --an", ["--angle"]),
    ("halfangle --url http://x jobs center --shank.k", ["--shank.kind"]),
    ("halfangle jobs center --shank.kind t", ["taper"]),
    ("halfangle call sine.se", ["sine.setting"]),
    ("halfangle completion f", ["fish"]),
    ("halfangle centers effect --no-first.t", ["--no-first.turns"]),
    ("halfangle sine setting --json --pi", ["--pick"]),
]


@pytest.fixture
def scripts(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> Path:
    """A folder with the three scripts as the command prints them."""
    for shell in SHELLS:
        status, out, err = run(capsys, "completion", shell)
        assert (status, err) == (0, "")
        (tmp_path / shell).write_text(out, "utf-8")
    return tmp_path


def shell_command(name: str) -> str:
    """Where a shell is; skips where it is not installed."""
    found = shutil.which(name)
    need_program(found, f"{name} is not installed")
    return str(found)


def output(command: list[str]) -> str:
    """What a command prints; it must end well, and say nothing on standard error."""
    environment = {**os.environ, "TERM": "dumb"}
    done = subprocess.run(
        command, check=False, capture_output=True, text=True, env=environment, timeout=60
    )
    assert (done.returncode, done.stderr) == (0, "")
    return done.stdout


@pytest.mark.parametrize("shell", SHELLS)
def test_a_script_holds_every_operation_and_option(scripts: Path, shell: str) -> None:
    """No operation, option or choice of the contract is missing from a script."""
    text = (scripts / shell).read_text("utf-8")
    words = set(re.findall(r"[^'\s:|()]+", text))
    for name in contract.dotted_names():
        found = contract.named(name)
        assert found is not None
        options = [field.option for field in found.fields if field.place != "path"]
        choices = [choice for field in found.fields for choice in field.choices]
        missing = {name, *options, *choices} - words
        assert not missing, name
    assert "python" not in text.lower()


@pytest.mark.program
@pytest.mark.parametrize(("typed", "wanted"), OFFERED)
def test_bash(scripts: Path, typed: str, wanted: list[str]) -> None:
    """Bash offers what may follow."""
    words = typed.split(" ")
    quoted = " ".join(f"'{word}'" for word in words)
    script = (
        f"source {scripts / 'bash'}; COMP_WORDS=({quoted}); COMP_CWORD={len(words) - 1}; "
        "_halfangle; printf '%s\\n' \"${COMPREPLY[@]}\""
    )
    assert output([shell_command("bash"), "--norc", "-c", script]).split() == wanted


@pytest.mark.program
def test_bash_offers_no_word_for_a_value(scripts: Path) -> None:
    """After an option whose value nobody knows, nothing is offered; after a file's, files."""
    start = f"source {scripts / 'bash'}; COMP_WORDS=(halfangle sine setting"
    end = '); COMP_CWORD=4; _halfangle; echo "${COMPREPLY[@]}"'
    bash = [shell_command("bash"), "--norc", "-c"]
    assert output([*bash, f"{start} --angle ''{end}"]) == "\n"
    assert output([*bash, f"{start} --input {scripts}/z{end}"]) == f"{scripts}/zsh\n"


@pytest.mark.program
@pytest.mark.parametrize(("typed", "wanted"), OFFERED)
def test_fish(scripts: Path, typed: str, wanted: list[str]) -> None:
    """Fish offers what may follow."""
    script = f"source {scripts / 'fish'}; complete -C '{typed}'"
    found = output([shell_command("fish"), "--no-config", "-c", script])
    assert [line.split("\t")[0] for line in found.splitlines()] == wanted


@pytest.mark.program
@pytest.mark.parametrize(("typed", "wanted"), OFFERED)
def test_zsh(scripts: Path, typed: str, wanted: list[str]) -> None:
    """Zsh offers what may follow."""
    words = typed.split(" ")
    quoted = " ".join(f"'{word}'" for word in words)
    # The function's own tables are asked: completion itself runs in a line editor alone.
    script = f"""
        compdef() {{ : }}
        _describe() {{ print -l -- "${{(@)offered%%:*}}" }}
        compadd() {{ shift; print -l -- "$@" }}
        _message() {{ : }}
        source {scripts / "zsh"}
        words=({quoted}); CURRENT={len(words)}; PREFIX='{words[-1]}'
        _halfangle
    """
    found = output([shell_command("zsh"), "-f", "-c", script]).splitlines()
    assert [name for name in found if name.startswith(words[-1])] == wanted
