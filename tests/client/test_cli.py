"""The command `halfangle`, against a service really started."""

import io
import json
import os
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest

from client_support import Act, FaultServer, refusal, run
from halfangle_client import Halfangle, demo
from halfangle_client.cli import others
from halfangle_client.plan import WIDTH

METRIC_JOB: dict[str, Any] = {
    "job": "HL-0533 live center",
    "units": "mm",
    "half_angle": 30,
    "included_angle_tolerance_arcsec": 60,
    "large_diameter": 20,
    "shank": {"kind": "straight", "diameter": 12},
    "limit_tir": 0.002,
    "center_distance": 100,
    "sizes": [1.005, 1.01, 1.02, 1.03, 1.1, 1.2, 1.3, 2, 3, 4, 5, 7, 8.09, 10, 20, 30],
    "grade": "iso-1",
    "runout_errors": {"adapter_tir": 0.002, "fixture_tir": 0.001, "indicating_tir": 0.0005},
}

ROOT = Path(__file__).resolve().parents[2]


def test_demo(service_command: str, capsys: pytest.CaptureFixture[str]) -> None:
    """The demo plans the built-in job in 100 columns, says that it is invented, and ends well."""
    status, out, err = run(capsys, "demo", "--service", service_command)
    assert (status, err) == (0, "")
    assert "[ ] 2   [ ] 0.45   [ ] 0.05" in out
    assert "Harrow Lane Tool & Gauge" in out
    assert "invented" in out
    assert max(len(line) for line in out.splitlines()) <= WIDTH == 100


def test_demo_as_a_command_of_its_own(service_command: str) -> None:
    """Run as a program on a terminal without Unicode, it prints what it can and leaves nothing."""
    command = [sys.executable, "-m", "halfangle_client.cli", "demo", "--service", service_command]
    paths = [str(ROOT / "client"), str(ROOT / "service")]
    done = subprocess.run(
        command,
        check=False,
        capture_output=True,
        env={"PYTHONPATH": ":".join(paths), "PYTHONIOENCODING": "ascii"},
    )
    assert (done.returncode, done.stderr) == (0, b"")
    lines = done.stdout.decode("ascii").splitlines()
    assert '1  holds          -0.1 +/- 44.1"' in next(line for line in lines if line[:2] == "1 ")
    assert max(map(len, lines)) <= WIDTH


@pytest.mark.parametrize(
    ("command", "message"),
    [
        ("false", "did not become ready"),
        ("no-such-command-here", "could not be started"),
        (f"{sys.executable} -c 'raise SystemExit(\"no luck\")'", "no luck"),
    ],
)
def test_demo_without_a_service(
    capsys: pytest.CaptureFixture[str], command: str, message: str
) -> None:
    """Where the service does not start, the demo fails and shows what the service said."""
    status, out, err = run(capsys, "demo", "--service", command)
    assert (status, out) == (3, "")
    assert message in err


def test_demo_whose_service_dies(
    service_command: str, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    """A service that is gone when it should stop is a failure, though the plan was made."""
    started = demo._started

    def start_and_kill(*arguments: Any) -> Any:
        process, client = started(*arguments)
        process.kill()
        process.wait()
        return process, client

    monkeypatch.setattr(demo, "_started", start_and_kill)
    monkeypatch.setattr(others, "demo_text", lambda _: "a plan")
    status, _, err = run(capsys, "demo", "--service", service_command)
    assert status == 3
    assert "ended with status -9" in err


def test_demo_without_the_command(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    """Where the service is not installed, the demo says what to install."""
    monkeypatch.setattr(demo, "which", lambda _: None)
    status, _, err = run(capsys, "demo")
    assert status == 3
    assert "install the distribution halfangle-service" in err


@pytest.mark.usefixtures("at_live")
def test_call(capsys: pytest.CaptureFixture[str]) -> None:
    """A calculation by name, its fields as words, prints the answer as JSON."""
    status, out, err = run(
        capsys, "call", "sine.setting", "units=in", "center_distance=5", "angle=30 00 00"
    )
    assert (status, err) == (0, "")
    assert json.loads(out)["result"]["height"] == pytest.approx(2.5, rel=1e-15)


@pytest.mark.usefixtures("at_live")
@pytest.mark.parametrize(
    ("written", "number"), [(".375", 0.375), ("+5", 5), ("5.", 5), ("+.5e1", 5)]
)
def test_numbers_as_people_write_them(
    capsys: pytest.CaptureFixture[str], written: str, number: float
) -> None:
    """`.375`, `5.` and `+5` are numbers to the command, though they are none in JSON."""
    fields = ["units=in", "included_angle=60", f"amount={written}"]
    status, out, err = run(capsys, "call", "tapers.infeed", *fields)
    assert (status, err) == (0, "")
    assert json.loads(out)["result"]["off_normal"] == number


@pytest.mark.usefixtures("at_live")
@pytest.mark.parametrize("written", ["007", "+", ".", "5,5", "1_000"])
def test_what_is_no_number_stays_text(capsys: pytest.CaptureFixture[str], written: str) -> None:
    """A number with leading zeros is text, as a name may be; so is all that is no number."""
    fields = ["units=in", "included_angle=60", f"amount={written}"]
    status, _, err = run(capsys, "call", "tapers.infeed", *fields)
    assert status == 1
    assert "/amount: should be a valid number" in err


@pytest.mark.usefixtures("at_live")
def test_call_with_objects_and_files(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    """A request may come from a file or standard input; fields override it, dots reach inside."""
    file = tmp_path / "job.json"
    file.write_text(json.dumps(METRIC_JOB), "utf-8")
    fields = ["shank.kind=taper", "shank.diameter=null", 'shank={"kind":"taper"}']
    fields += ["shank.designation=morse-2"]
    status, out, err = run(capsys, "call", "jobs.center", "--input", str(file), *fields)
    assert (status, err) == (0, "")
    assert json.loads(out)["result"]["shank"]["designation"] == "morse-2"
    monkeypatch.setattr("sys.stdin", io.StringIO(json.dumps(METRIC_JOB)))
    status, out, _ = run(capsys, "call", "jobs.center", "--input", "-")
    assert status == 0
    assert json.loads(out)["result"]["shank"]["kind"] == "straight"


@pytest.mark.usefixtures("at_live")
def test_call_of_tables_and_hyphens(capsys: pytest.CaptureFixture[str]) -> None:
    """Tables are called like calculations; a name may be written with hyphens as in its path."""
    status, out, _ = run(capsys, "call", "blocks.get_set", "key=inch-81")
    assert status == 0
    assert json.loads(out)["result"]["name"] == "inch-81"
    status, _, err = run(capsys, "call", "sine.taper-setting", "units=in")
    assert status == 1
    assert "/center_distance: is required" in err


@pytest.mark.usefixtures("at_live")
def test_a_stop_ends_with_a_status_of_its_own(capsys: pytest.CaptureFixture[str]) -> None:
    """An answer that says stop is printed whole, its stop is repeated, and a script sees it."""
    fields = ["units=in", "wheel_diameter=7", "rpm=6000", "marked_rpm=3600"]
    status, out, err = run(capsys, "call", "wheels.speed", *fields)
    assert status == 4
    assert "stop" in {advisory["severity"] for advisory in json.loads(out)["advisories"]}
    assert err.startswith("halfangle: stop: ")


def test_the_help_names_every_exit_status(capsys: pytest.CaptureFixture[str]) -> None:
    """Whoever writes a script finds what each status means, that of a stop too."""
    status, out, _ = run(capsys, "--help")
    assert status == 0
    assert "4 answered and printed, but the answer says stop" in " ".join(out.split())


@pytest.mark.usefixtures("at_live")
def test_a_refusal_is_told_to_a_person(capsys: pytest.CaptureFixture[str]) -> None:
    """A refusal gives its reason, the fields and the facts that help, and no traceback."""
    status, out, err = run(
        capsys, "call", "blocks.stack", "units=in", "height=0.00005", "set=inch-81"
    )
    assert (status, out) == (1, "")
    assert err.startswith("halfangle: ")
    assert "nearest above it is 0.05 in" in err
    assert '  nearest: {"below": null' in err
    assert "Traceback" not in err


@pytest.mark.parametrize(
    ("arguments", "message"),
    [
        (["call", "sine.settin"], "did you mean sine.setting"),
        (["call", "sine.setting", "30"], "not of the form name=value"),
        (["call", "sine.setting", "units=in", "units.a=1"], "units is a value already"),
        (["call", "sine.setting", "--input", "/nowhere/job.json"], "No such file"),
        (["call", "sine.setting", "--json", "/nowhere/job.json"], "in a file: --input"),
        (["plan", "/nowhere/job.json"], "No such file"),
        (["--url", "localhost:8765", "blocks", "list-sets"], "begins with http"),
        (["call", "sine.setting", "units=\udcff"], "in UTF-8"),
    ],
)
def test_wrong_usage(
    capsys: pytest.CaptureFixture[str], arguments: list[str], message: str
) -> None:
    """Wrong usage ends with status 2 and says what is wrong."""
    status, out, err = run(capsys, *arguments)
    assert (status, out) == (2, "")
    assert message in err


@pytest.mark.parametrize(
    ("text", "message"),
    [("{", "holds no JSON"), ("[1]", "but no object"), ("[" * 100_000, "holds no JSON")],
)
def test_a_file_that_is_no_job(
    capsys: pytest.CaptureFixture[str], tmp_path: Path, text: str, message: str
) -> None:
    """A file without a JSON object is wrong usage, not a traceback."""
    file = tmp_path / "job.json"
    file.write_text(text, "utf-8")
    status, _, err = run(capsys, "plan", str(file))
    assert status == 2
    assert message in err


@pytest.mark.parametrize(
    ("arguments", "message"),
    [
        (["operations", "a=1"], "unexpected extra argument (a=1)"),
        (["call", "sine.angle", "--no"], "no such option '--no'"),
    ],
)
def test_stray_arguments(
    capsys: pytest.CaptureFixture[str], arguments: list[str], message: str
) -> None:
    """What the command does not take is refused by the command line itself."""
    status, out, err = run(capsys, *arguments)
    assert (status, out) == (2, "")
    assert message in err


@pytest.mark.parametrize("seconds", ["0", "-1", "nan", "x"])
def test_a_timeout_is_a_time(capsys: pytest.CaptureFixture[str], seconds: str) -> None:
    """A timeout that is no time is refused by the command line itself."""
    status, _, err = run(capsys, "--timeout", seconds, "blocks", "list-sets")
    assert status == 2
    assert "--timeout" in err


def test_a_key_that_no_header_holds(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    """A key that HTTP cannot carry is refused with the name of its variable."""
    monkeypatch.setenv("HALFANGLE_API_KEY", "key\n")
    status, _, err = run(capsys, "blocks", "list-sets")
    assert status == 2
    assert "HALFANGLE_API_KEY: api_key: should be printable ASCII" in err


def test_demo_that_is_told_to_stop(service_command: str, tmp_path: Path) -> None:
    """SIGTERM in the middle of the demo ends it and the service that it started."""
    noted = tmp_path / "pid"
    service = tmp_path / "service"
    service.write_text(f'#!/bin/sh\necho $$ > {noted}\nexec {service_command} "$@"\n', "utf-8")
    service.chmod(0o755)
    code = (
        "import os, signal\n"
        "from halfangle_client import cli\n"
        "from halfangle_client.cli import others\n"
        "others.demo_text = lambda client: os.kill(os.getpid(), signal.SIGTERM) or signal.pause()\n"
        f"raise SystemExit(cli.main(['demo', '--service', {str(service)!r}]))"
    )
    environment = {**os.environ, "PYTHONPATH": f"{ROOT / 'client'}:{ROOT / 'service'}"}
    done = subprocess.run([sys.executable, "-c", code], check=False, env=environment)
    assert done.returncode == 130
    with pytest.raises(ProcessLookupError, match="No such process"):
        os.kill(int(noted.read_text("utf-8")), 0)


@pytest.mark.parametrize(
    "url", ["http://127.0.0.1:9", "http://127.0.0.1:x", "http://", "http://[::"]
)
def test_no_service(capsys: pytest.CaptureFixture[str], url: str) -> None:
    """Where nothing listens, or nothing could, the command says so, with status 3."""
    status, _, err = run(capsys, "blocks", "list-sets", "--url", url)
    assert status == 3
    assert f"{url.rstrip('/')}: no answer" in err
    assert err.count("\n") == 1


def test_a_failing_service(capsys: pytest.CaptureFixture[str], faults: FaultServer) -> None:
    """A failure of the service is not a refusal: status 3."""
    faults.acts = [refusal(500), Act(body=b"{}")]
    status, _, err = run(capsys, "--url", faults.url, "--timeout", "5", "blocks", "list-sets")
    assert status == 3
    assert "made by the test" in err
    status, _, err = run(capsys, "--url", faults.url, "blocks", "list-sets")
    assert status == 3
    assert "Is this the service" in err


@pytest.mark.usefixtures("at_live")
def test_operations(capsys: pytest.CaptureFixture[str], live: Halfangle) -> None:
    """All are listed, one a line: operations, published tables, and other forms of an answer."""
    status, out, _ = run(capsys, "operations")
    assert status == 0
    listed = [line.split()[0] for line in out.splitlines()]
    calculations = [name for name in listed if ".get-" not in name and ".list-" not in name]
    assert {"curves.of", "jobs.routing-csv"} <= set(calculations)
    calculations = [name for name in calculations if name not in {"curves.of", "jobs.routing-csv"}]
    assert calculations == [e.name for e in live.catalogue.list_operations().result.operations]
    assert "blocks.get-set" in listed


@pytest.mark.usefixtures("at_live")
def test_plan(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    """A job from a file is planned; one that must not run is, and ends with a stop's status."""
    file = tmp_path / "job.json"
    job = demo.built_in_job()
    file.write_text(json.dumps(job), "utf-8")
    status, out, err = run(capsys, "plan", str(file))
    assert (status, err) == (0, "")
    assert out.index("CAUTION") < out.index("[ ] 2")
    job["feature"]["limit_tir"] = 0.00001
    file.write_text(json.dumps(job), "utf-8")
    status, out, err = run(capsys, "plan", str(file))
    assert status == 4
    assert "halfangle: stop: No way of the shop keeps every limit" in err
    assert out.index("STOP: ") < out.index("CAUTION")


@pytest.mark.usefixtures("at_live")
def test_a_job_without_units_is_refused(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    """A job that lacks a field is refused by the service, which names it."""
    file = tmp_path / "job.json"
    job = {k: v for k, v in demo.built_in_job().items() if k != "units"}
    file.write_text(json.dumps(job), "utf-8")
    status, _, err = run(capsys, "plan", str(file))
    assert status == 1
    assert "/units: is required" in err


def test_a_closed_pipe_is_no_fault(live: Halfangle) -> None:
    """`halfangle operations | head -1` ends quietly."""
    url = live._manners.base_url
    code = (
        "import sys; from halfangle_client.cli import main; sys.stdin.read(); "
        f"raise SystemExit(main(['--url', {url!r}, 'operations']))"
    )
    with subprocess.Popen(
        [sys.executable, "-c", code],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        env={"PYTHONPATH": str(ROOT / "client")},
    ) as process:
        assert process.stdout is not None
        process.stdout.close()
        process.stdout = None
        _, err = process.communicate()
    assert (process.returncode, err) == (0, b"")
