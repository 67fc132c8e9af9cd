"""A command for each operation, made from the contract: what it sends and what it prints."""

import io
import json
import re
from pathlib import Path
from typing import Any

import pytest

from client_support import run
from halfangle_client import Halfangle
from halfangle_client.cli import contract
from halfangle_client.cli.helping import words_of

#: Commands of an address that is no operation: what another operation answers, in another form.
OTHER_FORMS = {"curves.of", "jobs.routing-csv"}
OPERATIONS = [contract.named(name) for name in contract.dotted_names() if name not in OTHER_FORMS]
EXAMPLES = {found.name: found for found in OPERATIONS if found is not None}
CALCULATIONS = [name for name, found in EXAMPLES.items() if found.method == "POST"]
SETTING = ["sine", "setting", "--units", "in", "--center-distance", "5"]


def words(name: str) -> list[str]:
    """The command line of an operation's example."""
    found = EXAMPLES[name]
    return [*found.command.split()[1:], *words_of(found, found.example)]


def test_every_calculation_is_there(live: Halfangle) -> None:
    """Every operation of the catalogue has a command, and each command its example."""
    listed = [entry.name for entry in live.catalogue.list_operations().result.operations]
    assert [contract.hyphens(name) for name in CALCULATIONS] == listed
    assert all(EXAMPLES[name].example for name in CALCULATIONS)


@pytest.mark.usefixtures("at_live")
@pytest.mark.parametrize("name", EXAMPLES)
def test_the_same_as_over_http(
    name: str, capsys: pytest.CaptureFixture[str], live: Halfangle
) -> None:
    """The example of an operation, typed as options, gives the JSON that the call gives."""
    status, out, err = run(capsys, *words(name), "--json")
    answer = live.call(name, EXAMPLES[name].example)
    assert json.loads(out) == answer
    assert (status, bool(err)) == ((4, True) if "stop" in severities(answer) else (0, False))


@pytest.mark.usefixtures("at_live")
@pytest.mark.parametrize("name", EXAMPLES)
def test_every_answer_is_a_table(
    name: str, capsys: pytest.CaptureFixture[str], live: Halfangle
) -> None:
    """For a person an answer is titled rows within 80 columns, every field of it named."""
    _, out, _ = run(capsys, *words(name))
    assert EXAMPLES[name].title in out
    assert max(len(line) for line in out.splitlines()) <= 80
    # Schemas, which the catalogue lists, hold patterns of their own.
    assert name == "catalogue.get_operation" or not re.search(
        r"[{}\[\]]|\be-[0-9]|None|null", without_texts(out)
    )
    answer = live.call(name, EXAMPLES[name].example)
    spoken = " ".join(out.split())
    for field in answer["result"]:
        first = field.split("_")[0]
        assert first in spoken, f"{field} is not shown"


@pytest.mark.usefixtures("at_live")
@pytest.mark.parametrize("name", CALCULATIONS)
def test_a_request_from_a_file(
    name: str, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch, live: Halfangle
) -> None:
    """The same request on standard input gives the same, without one option."""
    monkeypatch.setattr("sys.stdin", io.StringIO(json.dumps(dict(EXAMPLES[name].example))))
    _, out, _ = run(capsys, *EXAMPLES[name].command.split()[1:], "--input", "-", "--json")
    assert json.loads(out) == live.call(name, EXAMPLES[name].example)


@pytest.mark.usefixtures("at_live")
@pytest.mark.parametrize(
    ("written", "degrees"),
    [
        ("8°18'", 8.3),
        ("8 18 0", 8.3),
        ("8:18", 8.3),
        ("8.3", 8.3),
        (".375", 0.375),
        ("+30", 30),
        ("30.", 30),
        ("3e1", 30),
    ],
)
def test_angles(capsys: pytest.CaptureFixture[str], written: str, degrees: float) -> None:
    """Decimal degrees go as a number, degrees, minutes and seconds as text."""
    status, out, err = run(capsys, *SETTING, "--angle", written, "--json")
    assert (status, err) == (0, "")
    assert json.loads(out)["result"]["angle"]["degrees"] == pytest.approx(degrees, rel=1e-15)


@pytest.mark.usefixtures("at_live")
@pytest.mark.parametrize("written", ["-5°30'", "-5 30", "-5.5"])
def test_negative_angles_are_no_options(capsys: pytest.CaptureFixture[str], written: str) -> None:
    """An angle that begins with a hyphen is taken, and the service judges it."""
    status, _, err = run(capsys, *SETTING, "--angle", written)
    assert status == 1
    assert "/angle: should be greater than 0°; got -5.5" in err


@pytest.mark.usefixtures("at_live")
@pytest.mark.parametrize(("written", "number"), [(".375", 0.375), ("-.375", -0.375), ("-5", -5)])
def test_numbers(capsys: pytest.CaptureFixture[str], written: str, number: float) -> None:
    """Numbers are taken as people write them, negative ones too."""
    step = ["--angle", "30", "--base-step", written, "--pick", "height"]
    status, out, err = run(capsys, *SETTING, *step)
    assert (status, err) == (0, "")
    assert float(out) == pytest.approx(2.5 + number, rel=1e-15)


@pytest.mark.parametrize(
    ("arguments", "message"),
    [
        ([*SETTING, "--angle", "5,5"], "'5,5' is no angle: decimal degrees with a point"),
        ([*SETTING, "--angle", "steep"], "'steep' is no angle"),
        ([*SETTING, "--angle", "5", "--base-step", "5,5"], "'5,5' is no number; its decimal sign"),
        ([*SETTING, "--angle", "5", "--base-step", "nan"], "'nan' is no number"),
        ([*SETTING, "--angle", "5", "--base-step", "\udcff"], "is no text in UTF-8"),
        ([*SETTING, "--anlge", "5"], "no such option '--anlge'"),
        ([*SETTING, "--angle"], "option '--angle' requires an argument"),
        (["sine", "setting", "--units", "cm"], "'cm' is no choice here; there is: in, mm"),
        (["sine", "setting", "--units", "in"], "missing: --center-distance, --angle (or --input"),
        (["sine", "settin"], "sine has no operation 'settin'; did you mean setting"),
        (["sin"], "no command 'sin'; did you mean sine?"),
        (["blocks", "stack", "--max-blocks", "2.5"], "'2.5' is no whole number"),
        (["blocks", "stack", "--sizes", "1 5,5"], "'5,5' is no number; its decimal sign"),
        (["blocks", "stack", "--box", "{"], "'{' is no JSON"),
        (["jobs", "center", "--shank.kind", "tapr"], "is no choice here; did you mean taper?"),
        (["jobs", "center", "--input", "/nowhere/job.json"], "/nowhere/job.json: No such file"),
    ],
)
def test_wrong_words(
    capsys: pytest.CaptureFixture[str], arguments: list[str], message: str
) -> None:
    """What is no value of its field is refused with status 2 and the reason; nothing is sent."""
    status, out, err = run(capsys, *arguments)
    assert (status, out) == (2, "")
    assert message in err
    assert "Help: halfangle" in err


@pytest.mark.usefixtures("at_live")
def test_options_win_over_the_file(
    capsys: pytest.CaptureFixture[str], tmp_path: Path, live: Halfangle
) -> None:
    """An option stands in place of the file's value, a dotted one inside its object."""
    job = dict(EXAMPLES["jobs.center"].example)
    file = tmp_path / "job.json"
    file.write_text(json.dumps(job), "utf-8")
    options = ["--included-angle", "59 30", "--shank.designation", "morse-3"]
    options += ["--runout-errors.fixture-tir", ".0001", "--box", "null"]
    _, out, _ = run(capsys, "jobs", "center", "--input", str(file), *options[:-2], "--json")
    job["included_angle"] = "59 30"
    job["shank"] = {**job["shank"], "designation": "morse-3"}
    job["runout_errors"] = {**job["runout_errors"], "fixture_tir": 0.0001}
    assert json.loads(out) == live.call("jobs.center", job)


@pytest.mark.usefixtures("at_live")
@pytest.mark.parametrize(
    "sizes",
    [["2 .5"], ["2", ".5"], ["[2, 0.5]"], ["[2]", ".5"]],
)
def test_lists(capsys: pytest.CaptureFixture[str], sizes: list[str]) -> None:
    """A list is written with spaces, entry by entry, or as JSON."""
    options = [word for size in sizes for word in ("--sizes", size)]
    height = ["--units", "in", "--height", "2.5"]
    status, out, err = run(capsys, "blocks", "stack", *height, *options, "--pick", "total")
    assert (status, out, err) == (0, "2.5\n", "")


@pytest.mark.usefixtures("at_live")
def test_switches(capsys: pytest.CaptureFixture[str]) -> None:
    """Yes and no are two options; said neither, the service decides."""
    effect = words("centers.effect")
    assert "--first.turns" in effect
    before = run(capsys, *effect, "--json")[1]
    after = run(capsys, *effect, "--no-first.turns", "--json")[1]
    assert json.loads(before)["result"] != json.loads(after)["result"]


STOPPED = ["wheels", "speed", "--units", "in", "--wheel-diameter", "7", "--rpm", "6000"]
STOPPED += ["--marked-rpm", "3600"]


@pytest.mark.usefixtures("at_live")
def test_a_stop_comes_first_and_has_a_status(capsys: pytest.CaptureFixture[str]) -> None:
    """Who reads one line reads the one that stops the work; who reads none has the status."""
    status, out, err = run(capsys, *STOPPED)
    assert status == 4
    assert out.startswith("STOP 6000 per minute is over marked_rpm")
    assert out.index("CAUTION") < out.index("Surface speed of a wheel")
    assert err.startswith("halfangle: stop: 6000 per minute")


@pytest.mark.usefixtures("at_live")
def test_picking(capsys: pytest.CaptureFixture[str]) -> None:
    """One value is printed in full precision, found by fields and positions."""
    setting = [*SETTING, "--angle", "50", "--pick"]
    assert run(capsys, *setting, "height") == (0, "3.83022221559489\n", "")
    assert run(capsys, *setting, "angle-as-set.dms") == (0, "49°59'58.57\"\n", "")
    assert run(capsys, *setting, "advisories")[1].startswith("caution steep-angle: ")
    stack = ["call", "blocks.stack", "units=in", "height=2.5", "set=inch-81", "--pick"]
    assert run(capsys, *stack, "blocks.1") == (0, "0.5\n", "")
    status, out, err = run(capsys, *stack, "blocks.7")
    assert (status, out) == (1, "")
    assert "--pick has no '7'; there are 2 entries" in err
    assert run(capsys, *stack, "blocks,total") == (0, "2.0 + 0.5 | 2.5\n", "")
    assert run(capsys, *stack, "blocks,total", "--separator", ", ")[1] == "2.0 + 0.5, 2.5\n"
    assert run(capsys, *stack, "blocks", "--separator", "\t")[1] == "2.0\t0.5\n"
    assert "names several values" in run(capsys, *stack, "actual_height")[2]
    assert (
        "did you mean blocks or wear_blocks; there is: blocks, marks"
        in run(capsys, *stack, "block")[2]
    )
    row = ["blocks", "get-set", "inch-81", "--pick"]
    assert run(capsys, *row, "name,sizes.0") == (0, "inch-81 | 0.05\n", "")
    status, _, err = run(capsys, *stack[:-1], "--separator", ";")
    assert (status, "--separator needs --pick" in err) == (2, True)


@pytest.mark.usefixtures("at_live")
def test_no_bare_number_beside_a_stop(capsys: pytest.CaptureFixture[str]) -> None:
    """Where the answer says stop, nothing is picked but a judgement or the advisories."""
    status, out, err = run(capsys, *STOPPED, "--pick", "rpm")
    assert (status, out) == (4, "")
    assert err.startswith("halfangle: stop: ")
    status, out, _ = run(capsys, *STOPPED, "--pick", "forecast")
    assert (status, out) == (4, "does-not-hold\n")
    status, out, _ = run(capsys, *STOPPED, "--pick", "advisories")
    assert (status, out[:5]) == (4, "stop ")


@pytest.mark.parametrize(
    ("arguments", "names"),
    [
        (["--topic", "runout"], {"runout.axis", "runout.v-block", "runout.get-term"}),
        (["--search", "dovetail"], {"tapers.dovetail-over-rolls"}),
        (["--topic", "sine", "--search", "both stacks"], {"sine.compound", "sine.low-stack"}),
    ],
)
def test_operations_are_filtered(
    capsys: pytest.CaptureFixture[str], arguments: list[str], names: set[str]
) -> None:
    """The list is narrowed by topic and by words, without a service."""
    status, out, _ = run(capsys, "--url", "http://127.0.0.1:9", "operations", *arguments)
    listed = {line.split()[0] for line in out.splitlines()}
    assert status == 0
    assert names <= listed
    assert len(listed) < 12
    status, _, err = run(capsys, "operations", "--search", "xylophone")
    assert status == 2
    assert "no operation speaks of 'xylophone'" in err


@pytest.mark.usefixtures("at_live")
def test_glossary(capsys: pytest.CaptureFixture[str]) -> None:
    """A field's meaning is said with its unit; part of a name finds all that hold it."""
    status, out, _ = run(capsys, "glossary", "center-distance")
    assert status == 0
    assert out.startswith("center_distance\n  ")
    assert "[L, length" in out
    assert out.count("\n\n") == 0
    assert run(capsys, "glossary", "eccentricity")[1].startswith("eccentricity\n")
    status, _, err = run(capsys, "glossary", "excentricity")
    assert status == 2
    assert "did you mean eccentricity" in err


def severities(answer: dict[str, Any]) -> set[str]:
    """Of an answer's advisories."""
    return {advisory["severity"] for advisory in answer["advisories"]}


def without_texts(out: str) -> str:
    """The page without its sentences, which may hold any sign."""
    return "\n".join(line for line in out.splitlines() if len(line.split()) < 6)
