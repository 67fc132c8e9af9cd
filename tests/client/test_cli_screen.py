"""The command on terminals of every kind, and what it loads."""

import json
import os
import re
import subprocess
import sys
from pathlib import Path

import pytest

from client_support import Act, FaultServer, refusal, run
from halfangle_client import Halfangle
from halfangle_client.cli import contract
from halfangle_client.cli.figures import figure

ROOT = Path(__file__).resolve().parents[2]
ESCAPE = "\x1b["
STEEP = ["sine", "setting", "--units", "in", "--center-distance", "5", "--angle", "50"]


@pytest.fixture
def terminal(live: Halfangle) -> "Terminal":
    """The command in a process of its own, asking the live service."""
    return Terminal(live._manners.base_url)


class Terminal:
    """Runs the command with an environment of its own, on a terminal or into a pipe."""

    def __init__(self, url: str) -> None:
        self.environment = {"PYTHONPATH": str(ROOT / "client"), "HALFANGLE_URL": url}

    def piped(self, *words: str, **environment: str) -> bytes:
        """What is printed into a pipe."""
        done = subprocess.run(
            [sys.executable, "-m", "halfangle_client.cli", *words],
            check=False,
            capture_output=True,
            env={**self.environment, **environment},
        )
        assert (done.returncode, done.stderr) == (0, b"")
        return done.stdout

    def typed(self, *words: str, **environment: str) -> str:
        """What is printed on a terminal of 80 columns."""
        pty = pytest.importorskip("pty", reason="no terminals here")
        ours, theirs = pty.openpty()
        command = [sys.executable, "-m", "halfangle_client.cli", *words]
        surroundings = {"TERM": "xterm-256color", "COLUMNS": "80", **environment}
        with subprocess.Popen(
            command, stdout=theirs, stderr=theirs, env={**self.environment, **surroundings}
        ) as process:
            os.close(theirs)
            found = b""
            try:
                while part := os.read(ours, 65_536):
                    found += part
            except OSError:
                pass  # the other end is closed
        os.close(ours)
        assert process.returncode == 0
        return found.decode()


def test_colour_is_for_terminals(terminal: Terminal) -> None:
    """A terminal gets colour; a pipe and NO_COLOR get none, nor does a dumb terminal."""
    assert f"{ESCAPE}1;33mCAUTION" in terminal.typed(*STEEP)
    assert ESCAPE not in terminal.piped(*STEEP).decode()
    for environment in ({"NO_COLOR": "1"}, {"TERM": "dumb"}):
        plain = terminal.typed(*STEEP, **environment)
        assert "CAUTION" in plain
        assert not re.search(r"\x1b\[[0-9;]*3[0-9]", plain)
    assert ESCAPE in terminal.typed("--help")
    assert ESCAPE not in terminal.typed("--help", NO_COLOR="1")
    assert ESCAPE not in terminal.typed(*STEEP, "--json")


def test_a_terminal_without_unicode(terminal: Terminal) -> None:
    """In ASCII signs become words, columns stay columns, and JSON is whole."""
    ascii_only = {"PYTHONIOENCODING": "ascii"}
    table = terminal.piped(*STEEP, **ascii_only).decode("ascii")
    assert "50deg00'00.00\"" in table
    assert 'turns the plate 6.4"' in table
    assert "?" not in table
    assert terminal.piped("sine", "setting", "--help", **ascii_only).isascii()
    answer = json.loads(terminal.piped(*STEEP, "--json", **ascii_only).decode("ascii"))
    assert answer == json.loads(terminal.piped(*STEEP, "--json"))
    assert "″" in answer["advisories"][0]["message"]


@pytest.mark.parametrize(
    "words",
    [[], *(name.split(".") for name in contract.dotted_names()), *([t] for t in contract.topics())],
)
def test_help_fits(capsys: pytest.CaptureFixture[str], words: list[str]) -> None:
    """Help is within 80 columns, breaks no name, and says each field, its bounds and choices."""
    status, out, err = run(capsys, *words, "--help")
    assert (status, err) == (0, "")
    lines = [line for line in out.splitlines() if not re.search(r"--[a-z.-]+ '[\[{]", line)]
    assert max(map(len, lines)) <= 80
    assert "`" not in out
    found = contract.named(".".join(words)) if len(words) == 2 else None
    spoken = " ".join(out.split())
    for field in found.fields if found else ():
        shown = field.name.upper() if field.place == "path" else field.option
        assert shown in spoken
        assert all(choice in spoken for choice in field.choices)
        assert " ".join(field.help.split()) in spoken
    assert "Default: ." not in spoken


def test_other_help(capsys: pytest.CaptureFixture[str]) -> None:
    """The commands that are no operation have help too."""
    for name in ("call", "plan", "sheet", "fill", "demo", "operations", "glossary", "completion"):
        status, out, _ = run(capsys, name, "--help")
        assert status == 0
        assert out.startswith(f"Usage: halfangle {name} ")
    assert run(capsys, "--version") == (0, f"{__import__('halfangle_client').__version__}\n", "")
    status, _, err = run(capsys)
    assert status == 2
    assert "Topics and their operations" in err


def test_a_call_loads_no_models_and_no_httpx(terminal: Terminal) -> None:
    """What takes longer to load than the call itself is not loaded for it, nor Rich for JSON."""
    code = (
        "import sys; from halfangle_client.cli import main; status = main(sys.argv[1:]); "
        "print([n for n in ('httpx', 'pydantic', 'rich', 'http.client') if n in sys.modules], "
        "file=sys.stderr)"
    )

    def loaded(*words: str) -> str:
        command = [sys.executable, "-c", code, *words]
        done = subprocess.run(
            command, check=False, capture_output=True, text=True, env=terminal.environment
        )
        return done.stderr.splitlines()[-1]

    assert loaded(*STEEP) == "['rich', 'http.client']"
    assert loaded(*STEEP, "--json") == "['http.client']"
    assert loaded(*STEEP[:-1], "200") == "['http.client']"
    assert loaded("sine", "setting", "--help") == "[]"
    assert loaded("--help") == "[]"


@pytest.mark.parametrize(
    ("act", "said"),
    [
        (Act(cut=True), "no answer"),
        (Act(body=b"<html>"), "is no answer"),
        (Act(body=b"[]"), "is no answer"),
        (Act(status=502, body=b"<p>bad gateway</p>"), "HTTP 502 without a problem document"),
        (Act(status=302, headers={"Location": "/"}), "HTTP 302 without a problem document"),
        (Act(endless=True, body=b" " * 1_000_000), "longer than 67108864 bytes"),
    ],
)
def test_no_answer_of_the_service(
    capsys: pytest.CaptureFixture[str], faults: FaultServer, act: Act, said: str
) -> None:
    """Whatever came in place of an answer is told in a line, and no traceback."""
    faults.acts = [act] * 3
    status, out, err = run(capsys, "blocks", "list-sets", "--url", faults.url, "--json")
    assert (status, out) == (1 if act.status == 302 else 3, "")
    assert said in err
    assert len(err.splitlines()) == 1


def test_it_tries_again(capsys: pytest.CaptureFixture[str], faults: FaultServer) -> None:
    """A service that is busy, or cut the connection, is asked again, as the client does."""
    faults.acts = [refusal(503, Retry_After="0"), Act(cut=True), Act()]
    status, out, err = run(capsys, "blocks", "list-sets", "--url", faults.url, "--json")
    assert (status, err) == (0, "")
    assert json.loads(out)["result"] == {"sets": []}
    assert len(faults.seen) == 3


@pytest.mark.parametrize("drips", ["head", "body"])
def test_its_time_is_bounded(
    capsys: pytest.CaptureFixture[str], faults: FaultServer, drips: str
) -> None:
    """An answer that comes a byte at a time is not waited for longer than was allowed."""
    faults.acts = [Act(drips=drips, drip_seconds=0.05, wait_seconds=0.0)]  # type: ignore[arg-type]
    status, _, err = run(
        capsys, "blocks", "list-sets", "--url", faults.url, "--timeout", "0.3", "--json"
    )
    assert status == 3
    assert "no answer within 0.3 s" in err


@pytest.mark.parametrize(
    ("value", "unit", "units", "text"),
    [
        (2.5, "length", "in", "2.5 in"),
        (2.12345678, "length", "in", "2.123457 in"),
        (0.00000123456, "length", "in", "0.00000123 in"),
        (53.9367, "length", "mm", "53.9367 mm"),
        (-0.0, "length", "mm", "0 mm"),
        (2.29e-11, "arcsecond", "in", "0″"),
        (-1.425751, "arcsecond", "in", "-1.43″"),
        (47634.8, "arcsecond_per_length", "mm", "47634.8″/mm"),
        (0.0, "length_per_length", "in", "0"),
        (3450, "per_minute", "in", "3450/min"),
        (1e300, "length", "in", "1e+300 in"),
        (True, "", "in", "yes"),
        (None, "length", "in", "–"),
        (5.0, "length", "", "5"),
    ],
)
def test_figures(value: object, unit: str, units: str, text: str) -> None:
    """A figure is rounded to what is read, never by an exponent short of 1e15, with its unit."""
    assert figure(value, unit, units) == text
