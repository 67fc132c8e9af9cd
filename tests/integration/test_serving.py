"""The command `halfangle-service` as its user runs it: start, answer, refuse, stop."""

import json
import re
import signal
import socket
import subprocess
import sys
import threading
import time
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from halfangle_service import __version__
from halfangle_service.app import contract_bytes
from halfangle_service.settings.reading import read_settings
from serving_support import ask, environment, free_port, listens, serving

SINE = "/v1/sine/setting"
GOOD = b'{"units": "in", "center_distance": 5, "angle": 30}'

#: The service as it is, with one heavy operation more that takes until a file appears.
SLOW_SERVICE = """
import sys, time
from dataclasses import replace
from pathlib import Path
from halfangle_service import cli, registry

known = registry.load_registry()
sine = known.operations["sine.setting"]

def wait(request):
    Path(sys.argv[2], "begun").touch()
    while not Path(sys.argv[2], "go").exists():
        time.sleep(0.005)
    return sine.calculate(request)

known.operations["sine.setting"] = replace(sine, calculate=wait, heavy=True)
raise SystemExit(cli.main(["serve", "--port", sys.argv[1]]))
"""


def run_service(*arguments: str, **variables: str) -> subprocess.CompletedProcess[str]:
    """Run the command to its end, with these variables in its environment."""
    return subprocess.run(
        [sys.executable, "-m", "halfangle_service.cli", *arguments],
        capture_output=True,
        text=True,
        check=False,
        timeout=60,
        env={**environment(), **variables},
    )


@pytest.fixture(scope="module")
def port() -> Iterator[int]:
    """Port of a service as a user starts it."""
    chosen = free_port()
    with serving(["-m", "halfangle_service.cli", "serve", "--port", str(chosen)], chosen):
        yield chosen


def test_contract_is_printed() -> None:
    """`halfangle-service contract` prints the very bytes of the contract."""
    assert run_service("contract").stdout.encode() == contract_bytes()


def test_version_is_printed() -> None:
    """`--version` prints the release."""
    assert run_service("--version").stdout.strip() == __version__


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        (("serve", "--port", "70000"), "port"),
        (("serve", "--port", "eighty"), "port"),
        (("serve", "--log-level", "loud"), "log_level"),
        (("serve", "--heavy-workers", "0"), "heavy_workers"),
        (
            (
                "serve",
                "--no-such-flag",
            ),
            "--no-such-flag",
        ),
        (("fly",), "fly"),
        ((), "command"),
    ],
)
def test_a_wrong_setting_is_refused_by_name(arguments: tuple[str, ...], words: str) -> None:
    """A wrong flag ends in a message that names it, not in a trace."""
    ran = run_service(*arguments)
    assert ran.returncode == 2
    assert words in ran.stderr
    assert "Traceback" not in ran.stderr


def test_lists_are_json(monkeypatch: pytest.MonkeyPatch) -> None:
    """Keys in the environment and origins in a flag are JSON lists."""
    monkeypatch.setenv("HALFANGLE_API_KEYS", '["one", "two"]')
    settings = read_settings({"cors_origins": '["https://forms.example"]', "port": "8080"}).settings
    assert settings.api_keys == frozenset({"one", "two"})
    assert settings.cors_origins == ("https://forms.example",)
    assert settings.port == 8080


def test_a_key_is_never_a_flag() -> None:
    """Flags are seen by every user of the machine: a key in one is refused, and not repeated."""
    ran = run_service("serve", "--api-keys", '["hidden-key"]')
    assert ran.returncode == 2
    assert "HALFANGLE_API_KEYS" in ran.stderr
    assert "hidden-key" not in ran.stderr
    assert "--api-keys" not in run_service("serve", "--help").stdout


@pytest.mark.parametrize(
    ("name", "value", "words"),
    [
        ("HALFANGLE_API_KEY", "hidden-key", "HALFANGLE_API_KEY: no such setting"),
        ("halfangle_prot", "8080", "halfangle_prot: no such setting"),
        ("HALFANGLE_API_KEYS", '["hidden-key", ""]', "at least 1 character"),
        ("HALFANGLE_API_KEYS", '["hidden-key", "  "]', "at least 1 character"),
        ("HALFANGLE_API_KEYS", "hidden-key", "api_keys"),
    ],
)
def test_a_setting_that_would_leave_the_door_open_is_refused(
    name: str, value: str, words: str
) -> None:
    """A variable of no setting, or an empty key, ends the start, and no key is repeated."""
    ran = run_service("serve", **{name: value})
    assert ran.returncode == 2
    assert words in ran.stderr
    assert "hidden-key" not in ran.stderr
    assert "Traceback" not in ran.stderr


def test_answers_over_a_socket(port: int) -> None:
    """The served service answers as the one in process does."""
    status, answer = ask(port, "POST", SINE, GOOD)
    assert status == 200
    assert answer["result"]["height"] == pytest.approx(2.5, abs=1e-12)


def test_ten_megabytes_over_a_socket(port: int) -> None:
    """A body past the limit is refused over a real connection, declared or in chunks."""
    whole = b" " * 10_000_000
    chunks = (whole[:65_536] for _ in range(160))
    for body in (whole, chunks):
        headers = {} if isinstance(body, bytes) else {"Transfer-Encoding": "chunked"}
        status, problem = ask(port, "POST", SINE, body, **headers)
        assert (status, problem["type"]) == (413, "/problems/content-too-large")
    assert ask(port, "GET", "/health/live")[0] == 200


def test_what_is_no_http_harms_nobody(port: int) -> None:
    """A caller that speaks no HTTP is refused, and the next one is answered."""
    for noise in (
        b"\x16\x03\x01\x02\x00\x01\x00",
        b"GET\r\n\r\n",
        b"POST / HTTP/1.1\r\nA:" + b"x" * 200_000,
    ):
        with socket.create_connection(("127.0.0.1", port), timeout=5) as connection:
            connection.sendall(noise)
            connection.shutdown(socket.SHUT_WR)
            try:
                received = connection.recv(65_536)
            except ConnectionResetError:
                received = b""
            assert received == b"" or received.startswith(b"HTTP/1.1 4")
    assert ask(port, "POST", SINE, GOOD)[0] == 200


def test_a_caller_that_goes_away_harms_nobody(port: int) -> None:
    """A body that ends half way is dropped, and the next caller is answered."""
    with socket.create_connection(("127.0.0.1", port), timeout=5) as connection:
        head = f"POST {SINE} HTTP/1.1\r\nHost: x\r\nContent-Type: application/json\r\n"
        connection.sendall(f'{head}Content-Length: 50\r\n\r\n{{"units"'.encode())
    assert ask(port, "POST", SINE, GOOD)[0] == 200


def test_a_web_socket_handshake_is_an_ordinary_request(port: int) -> None:
    """A handshake is refused as any request without what it needs: no 500, and no upgrade."""
    handshake = {
        "Connection": "Upgrade",
        "Upgrade": "websocket",
        "Sec-WebSocket-Key": "dGhlIHNhbXBsZSBub25jZQ==",
        "Sec-WebSocket-Version": "13",
    }
    for path, expected in ((SINE, 422), ("/nowhere", 404)):
        status, problem = ask(port, "GET", path, **handshake)
        assert (status, problem["status"]) == (expected, expected)
    assert ask(port, "POST", SINE, GOOD)[0] == 200


@pytest.mark.parametrize("stop", [signal.SIGTERM, signal.SIGINT])
def test_what_was_accepted_is_answered_before_the_stop(
    tmp_path: Path, stop: signal.Signals
) -> None:
    """At SIGTERM or SIGINT an accepted request is answered in full; then the service is gone."""
    port = free_port()
    answers: list[tuple[int, Any]] = []
    with serving(["-c", SLOW_SERVICE, str(port), str(tmp_path)], port) as process:
        caller = threading.Thread(target=lambda: answers.append(ask(port, "POST", SINE, GOOD)))
        caller.start()
        for _ in range(3000):
            if (tmp_path / "begun").exists():
                break
            time.sleep(0.01)
        process.send_signal(stop)
        for _ in range(3000):
            if not listens(port):
                break
            time.sleep(0.01)
        assert not listens(port)
        assert process.poll() is None
        (tmp_path / "go").touch()
        caller.join(timeout=30)
        _, log = process.communicate(timeout=30)
    assert [status for status, _ in answers] == [200]
    assert answers[0][1]["result"]["height"] == pytest.approx(2.5, abs=1e-12)
    assert "Traceback" not in log
    assert process.returncode in {0, -stop}


def test_every_answer_is_one_line_of_json_in_the_log(tmp_path: Path) -> None:
    """The log has one JSON object a request, with its id, and nothing of the request's content."""
    port = free_port()
    command = ["-m", "halfangle_service.cli", "serve", "--port", str(port)]
    with serving(command, port) as process:
        ask(port, "POST", SINE, GOOD, **{"X-Request-ID": "bench-7"})
        ask(port, "GET", "/nowhere?secret=1", **{"X-API-Key": "hidden"})
        process.terminate()
        _, log = process.communicate(timeout=30)
    lines = [json.loads(line) for line in log.splitlines() if line.startswith("{")]
    answered = [line for line in lines if line["event"] == "answered"]
    assert [(a["method"], a["path"], a["status"]) for a in answered] == [
        ("POST", SINE, 200),
        ("GET", "/nowhere", 404),
    ]
    assert answered[0]["milliseconds"] > 0
    assert answered[1]["milliseconds"] is None, "no route was found, so no work was begun"
    assert answered[0]["request_id"] == "bench-7"
    assert re.fullmatch(r"[0-9a-f]{32}", answered[1]["request_id"])
    assert "secret" not in log
    assert "hidden" not in log
