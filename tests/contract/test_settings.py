"""Settings: where each comes from, what is refused by which name, and what is told of them."""

import json
import subprocess
import sys
import tomllib
from pathlib import Path

import pytest

from halfangle_service import cli
from halfangle_service.settings import GROUPS, Settings
from halfangle_service.settings.reading import WrongSettings, read_settings, variable_of
from halfangle_service.settings.told import help_of
from serving_support import environment


@pytest.fixture(autouse=True)
def _no_settings(monkeypatch: pytest.MonkeyPatch) -> None:
    """No variable of this machine decides."""
    for name in [variable_of(name) for name in (*Settings.model_fields, "config")]:
        monkeypatch.delenv(name, raising=False)


def run(capsys: pytest.CaptureFixture[str], *arguments: str) -> tuple[int, str, str]:
    """Run the command here; gives its status, and what it wrote."""
    try:
        status = cli.main(arguments)
    except SystemExit as ended:
        status = int(ended.code or 0)
    written = capsys.readouterr()
    return status, written.out, written.err


def refusal(capfd: pytest.CaptureFixture[str], *arguments: str) -> str:
    """What `serve` says of settings that it refuses: one line of JSON, status 2."""
    with pytest.raises(SystemExit, match="2"):
        cli.main(["serve", *arguments])
    [line] = capfd.readouterr().err.splitlines()
    said = json.loads(line)
    assert (said["event"], said["level"]) == ("settings refused", "error")
    return str(said["detail"])


# What is told ---------------------------------------------------------------------------------
def test_every_setting_is_told_in_one_group() -> None:
    """No setting is forgotten by the help or by `config`, and none is there twice."""
    grouped = [name for names in GROUPS.values() for name in names]
    assert sorted(grouped) == sorted(Settings.model_fields)


@pytest.mark.parametrize("name", Settings.model_fields)
def test_help_tells_variable_bound_and_default(name: str) -> None:
    """Of each setting: the variable, what it may be, what it is by itself, what it is about."""
    variable, bound, rest = help_of(name).split("; ", 2)
    assert variable == variable_of(name)
    assert bound not in {"", "None"}
    assert rest.startswith("default ")
    assert str(Settings.model_fields[name].description) in rest


def test_help_is_read_at_eighty_columns(capsys: pytest.CaptureFixture[str]) -> None:
    """No line is longer, however wide the terminal is."""
    status, out, _ = run(capsys, "serve", "--help")
    assert status == 0
    assert max(map(len, out.splitlines())) < 80
    assert all(variable_of(name) in out for name in Settings.model_fields)
    assert "--api-keys" not in out


def test_config_is_a_file_of_settings(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    """What `config` prints, given back by --config, gives the same settings; no key is in it."""
    monkeypatch.setenv("HALFANGLE_API_KEYS", '["hidden-key"]')
    monkeypatch.setenv("HALFANGLE_CORS_ORIGINS", '["https://a.example", "https://b.example"]')
    arguments = ("--port", "8080", "--header-seconds", "2.5", "--open-paths", '["health"]')
    status, out, _ = run(capsys, "config", *arguments)
    assert (status, "hidden-key" in out) == (0, False)
    assert tomllib.loads(out)["cors_origins"] == ["https://a.example", "https://b.example"]
    before = read_settings({"port": "8080", "header_seconds": "2.5", "open_paths": '["health"]'})
    (tmp_path / "s.toml").write_text(out)
    monkeypatch.delenv("HALFANGLE_CORS_ORIGINS")
    again = read_settings({"config": str(tmp_path / "s.toml")})
    assert again.settings == before.settings
    assert again.origins["port"].whence == "file"


def test_flag_over_variable_over_file_over_default(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    """The nearer wins, and `config --json` says which it was; keys are masked."""
    file = tmp_path / "s.toml"
    file.write_text("port = 1\nheavy_queue = 2\ncache_seconds = 3\n")
    monkeypatch.setenv("HALFANGLE_CONFIG", str(file))
    monkeypatch.setenv("halfangle_heavy_queue", "20")
    monkeypatch.setenv("HALFANGLE_PORT", "10")
    monkeypatch.setenv("HALFANGLE_API_KEYS", '["hidden-key"]')
    status, out, _ = run(capsys, "config", "--json", "--port", "100")
    told = json.loads(out)["settings"]
    assert status == 0
    found = {name: (told[name]["value"], told[name]["from"]) for name in told}
    assert found["port"] == (100, "flag")
    assert found["heavy_queue"] == (20, "environment")
    assert told["heavy_queue"]["name"] == "halfangle_heavy_queue"
    assert found["cache_seconds"] == (3, "file")
    assert found["stop_seconds"] == (30, "default")
    assert found["api_keys"] == (["***"], "environment")
    assert "hidden-key" not in out


@pytest.mark.parametrize(
    ("name", "content"), [("profiles", "profil = 3"), ("keys_file", "kyes = 3")]
)
def test_config_ends_with_2_where_a_file_is_wrong(
    capsys: pytest.CaptureFixture[str], tmp_path: Path, name: str, content: str
) -> None:
    """Settings are printed all the same; what is wrong with a file stands on standard error."""
    (tmp_path / "f.toml").write_text(content)
    status, out, err = run(capsys, "config", f"--{name.replace('_', '-')}", f"{tmp_path}/f.toml")
    assert (status, f"{name} = " in out) == (2, True)
    assert "the nearest is" in err


# What is refused ------------------------------------------------------------------------------
@pytest.mark.parametrize(
    ("name", "text", "words"),
    [
        ("HALFANGLE_PROT", "1", "HALFANGLE_PROT: no such setting; the nearest is HALFANGLE_PORT"),
        ("HALFANGLE_API_KEY", "hidden", "the nearest is HALFANGLE_API_KEYS"),
        ("halfangle_keyfile", "hidden", "the nearest is HALFANGLE_KEYS_FILE"),
        ("HALFANGLE_ZZZZZZZZZ", "hidden", "HALFANGLE_ZZZZZZZZZ: no such setting"),
        ("HALFANGLE_SERVICE_PORT", "tcp://10.0.0.1:80", "enableServiceLinks: false"),
        ("HALFANGLE_PORT", "hidden", "port (HALFANGLE_PORT): should be a valid integer"),
        ("HALFANGLE_HOST", "", "host (HALFANGLE_HOST): String should have at least 1 character"),
        ("HALFANGLE_WORKERS", "0", "workers (HALFANGLE_WORKERS): should be greater than"),
        ("HALFANGLE_CORS_ORIGINS", "hidden", "cors_origins"),
        ("HALFANGLE_OPEN_PATHS", '["hidden"]', "open_paths (HALFANGLE_OPEN_PATHS"),
        ("HALFANGLE_HEADER_SECONDS", "nan", "header_seconds (HALFANGLE_HEADER_SECONDS)"),
        ("HALFANGLE_RATE_PER_MINUTE", "inf", "rate_per_minute (HALFANGLE_RATE_PER_MINUTE)"),
    ],
)
def test_a_wrong_variable_is_refused_by_its_name(
    capfd: pytest.CaptureFixture[str],
    monkeypatch: pytest.MonkeyPatch,
    name: str,
    text: str,
    words: str,
) -> None:
    """One line of JSON says which, with the nearest name, and repeats no value."""
    monkeypatch.setenv(name, text)
    said = refusal(capfd)
    assert words in said
    assert "hidden" not in said


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        (("--prot", "8080"), "--prot: no such argument; the nearest is --port"),
        (("--por=8080",), "--por: no such argument; the nearest is --port"),
        (("--keys_file", "x"), "the nearest is --keys-file"),
        (("--port",), "expected one argument"),
        (("--api-keys", '["hidden"]'), "set HALFANGLE_API_KEYS"),
        (("--config", "/nowhere.toml"), "/nowhere.toml"),
        (("--keys-file", "/nowhere.toml"), "/nowhere.toml"),
        (("--profiles", "/nowhere.toml"), "/nowhere.toml"),
    ],
)
def test_a_wrong_flag_is_refused_by_its_name(
    capfd: pytest.CaptureFixture[str], arguments: tuple[str, ...], words: str
) -> None:
    """A flag is never shortened, guessed or passed over."""
    said = refusal(capfd, *arguments)
    assert words in said
    assert "hidden" not in said


@pytest.mark.parametrize(
    ("content", "words"),
    [
        (b"prot = 1", "prot: no such setting; the nearest is port"),
        (b'api_keys = ["hidden"]', "keys as they are stand in no file"),
        (b"port = true", "port: is true or false"),
        (b"port = 1970-01-01", "port "),
        (b"port = ", "Invalid value"),
        (b"\xff", "utf-8"),
        (b"#" * 200_000, "larger than 100000 bytes"),
        (b"[port]\nx = 1", "port ("),
        (b"x = " + b"[" * 5000, "recursion"),
    ],
)
def test_a_wrong_file_of_settings_is_refused(tmp_path: Path, content: bytes, words: str) -> None:
    """What names no setting, what is no TOML and what is too large ends the start by its name."""
    (tmp_path / "s.toml").write_bytes(content)
    with pytest.raises(WrongSettings, match=r"s\.toml") as refused:
        read_settings({"config": str(tmp_path / "s.toml")})
    assert words in str(refused.value)
    assert "hidden" not in str(refused.value)


@pytest.mark.skipif(not Path("/dev/zero").exists(), reason="no such device")
@pytest.mark.parametrize("setting", ["config", "profiles"])
def test_a_file_without_end_is_refused(capfd: pytest.CaptureFixture[str], setting: str) -> None:
    """What is read is bounded, whatever size the file says it has."""
    assert "/dev/zero: larger than" in refusal(capfd, f"--{setting}", "/dev/zero")


# Profiles -------------------------------------------------------------------------------------
def test_profiles_are_checked_by_a_command(
    capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    """A good file is told with its digests; of a wrong one the line and the nearest name."""
    good = Path(__file__).parents[2] / "docker/profiles/harrow_lane.toml"
    status, out, _ = run(capsys, "check-profiles", str(good))
    assert (status, out.startswith("Harrow Lane: ")) == (0, True)
    lines = good.read_text().splitlines()
    place = next(n for n, line in enumerate(lines) if line.startswith("name ="))
    lines.insert(place + 1, "unitz = 3")
    (tmp_path / "p.toml").write_text("\n".join(lines))
    status, _, err = run(capsys, "check-profiles", str(tmp_path / "p.toml"))
    assert status == 2
    assert f"line {place + 2}" in err
    assert "the nearest is units" in err


# The process ----------------------------------------------------------------------------------
def test_every_line_of_a_process_is_json() -> None:
    """A warning, a trace of a thread, of a finalizer, of the whole: each is one line of JSON."""
    code = (
        "import sys, threading, warnings\n"
        "from halfangle_service.logs import LogWriter, log_the_server_too\n"
        "with LogWriter(2) as log:\n"
        "    log_the_server_too('info', log)\n"
        "    warnings.warn('odd \\udc80 sign')\n"
        "    thread = threading.Thread(target=lambda: 1 / 0)\n"
        "    thread.start(); thread.join()\n"
        "    class Bad:\n"
        "        def __del__(self): raise ValueError('late')\n"
        "    Bad()\n"
        "    try:\n"
        "        raise LookupError('two\\nlines')\n"
        "    except LookupError:\n"
        "        sys.excepthook(*sys.exc_info())\n"
    )
    ran = subprocess.run(
        [sys.executable, "-c", code],
        capture_output=True,
        text=True,
        env=environment(),
        check=True,
        timeout=60,
    )
    lines = [json.loads(line) for line in ran.stderr.splitlines()]
    traces = [line["exception"] for line in lines if "exception" in line]
    assert len(lines) >= 4
    assert [t.rstrip().splitlines()[-1][:17] for t in traces] == [
        "ZeroDivisionError",
        "ValueError: late",
        "lines",
    ]
