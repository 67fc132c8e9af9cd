"""Alert rules, dashboard and metrics by the programs that read them: promtool and Prometheus."""

import importlib.util
import json
import shutil
import subprocess
import sys
import threading
import time
import urllib.parse
import urllib.request
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from halfangle_service.http.guards.key_file import entry_for, new_key
from serving_support import ask, environment, free_port, listens
from support import need_program

MONITORING = Path(__file__).parents[2] / "docker/monitoring"
KEY = new_key()
SINE = "/v1/sine/setting"
GOOD = {"units": "in", "center_distance": 5, "angle": 30}
TOO_FAST = {"units": "in", "wheel_diameter": 7, "rpm": 3700, "marked_rpm": 3600}

pytestmark = pytest.mark.program


def promtool(*arguments: str, fed: bytes | None = None) -> str:
    """What promtool says where it finds nothing wrong."""
    need_program(shutil.which("promtool"), "no promtool")
    ran = subprocess.run(
        ["promtool", *arguments], input=fed, capture_output=True, check=False, timeout=60
    )
    assert ran.returncode == 0, (ran.stdout + ran.stderr).decode()
    return ran.stdout.decode()


def written() -> Any:
    """The module that writes the dashboard."""
    spec = importlib.util.spec_from_file_location("dashboard", MONITORING / "dashboard.py")
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    sys.modules["dashboard"] = module
    spec.loader.exec_module(module)
    return module


def test_rules_hold() -> None:
    """Each rule can be read, and speaks at its time and not before."""
    promtool("check", "rules", str(MONITORING / "alerts.yaml"))
    promtool("test", "rules", str(MONITORING / "alerts_test.yaml"))


def test_the_dashboard_is_the_one_that_is_written() -> None:
    """The committed file is that of the script beside it."""
    need_program(shutil.which("promtool"), "no promtool")
    assert (MONITORING / "dashboard.json").read_text() == written().dashboard_json()


@pytest.fixture(scope="module")
def service(tmp_path_factory: pytest.TempPathFactory) -> Iterator[int]:
    """A service of two workers with keys, asked for a little of everything as long as it lives."""
    keys = tmp_path_factory.mktemp("k") / "keys.toml"
    keys.write_text(
        entry_for("erp", KEY) + "expires = 2999-01-01\nrate_per_minute = 600\nrate_burst = 5\n"
    )
    keys.chmod(0o640)
    port = free_port()
    process = subprocess.Popen(
        [sys.executable, "-m", "halfangle_service.cli", "serve", "--port", str(port),
         "--workers", "2", "--keys-file", str(keys), "--log-level", "error"],
        env=environment(),
    )  # fmt: skip
    ended = threading.Event()

    def asking() -> None:
        rows = [{"ref": n, "operation": "sine.setting", "request": GOOD} for n in range(2)]
        while not ended.wait(0.05):
            for path, body in ((SINE, GOOD), (SINE, {}), ("/v1/wheels/speed", TOO_FAST),
                               ("/v1/batches", {"rows": rows})):  # fmt: skip
                ask(port, "POST", path, json.dumps(body).encode(), **{"X-API-Key": KEY})

    try:
        while process.poll() is None and not listens(port):
            time.sleep(0.05)
        caller = threading.Thread(target=asking)
        caller.start()
        yield port
        ended.set()
        caller.join(timeout=30)
    finally:
        ended.set()
        process.terminate()
        assert process.wait(timeout=60) == 0


def test_metrics_are_as_they_should_be(service: int) -> None:
    """Promtool finds nothing to mend in names, help and types."""
    need_program(shutil.which("promtool"), "no promtool")
    with urllib.request.urlopen(f"http://127.0.0.1:{service}/metrics", timeout=30) as answer:
        text = answer.read()
    assert promtool("check", "metrics", fed=text) == ""


def test_every_panel_and_rule_finds_its_numbers(service: int, tmp_path: Path) -> None:
    """A real server that asks the service gives a series for each expression of the dashboard."""
    need_program(shutil.which("prometheus"), "no prometheus")
    port = free_port()
    (tmp_path / "prometheus.yml").write_text(
        "global: {scrape_interval: 1s, evaluation_interval: 1s}\n"
        f"rule_files: ['{MONITORING}/alerts.yaml']\n"
        "scrape_configs:\n"
        f"  - {{job_name: halfangle, static_configs: [{{targets: ['127.0.0.1:{service}']}}]}}\n"
    )
    server = subprocess.Popen(
        ["prometheus", f"--config.file={tmp_path}/prometheus.yml",
         f"--storage.tsdb.path={tmp_path}/data", f"--web.listen-address=127.0.0.1:{port}",
         "--log.level=error"],
        stderr=subprocess.PIPE,
    )  # fmt: skip
    panels = written().PANELS
    missing = {line: panel.title for panel in panels for line in panel.lines}
    try:
        for _ in range(100):
            time.sleep(0.25)
            if server.poll() is None and listens(port):
                missing = {line: title for line, title in missing.items() if not series(port, line)}
            if not missing:
                break
        assert not missing
        rules = asked(port, "rules", "")["groups"][0]["rules"]
        assert {rule["health"] for rule in rules} == {"ok"}
        assert [rule["name"] for rule in rules if rule["alerts"]] == []
    finally:
        server.terminate()
        server.communicate(timeout=30)


def series(port: int, expression: str) -> list[Any]:
    """What an expression of the dashboard gives, over some seconds in place of what is shown."""
    plain = expression.replace("$__rate_interval", "4s")
    found: list[Any] = asked(port, "query", urllib.parse.urlencode({"query": plain}))["result"]
    return found


def asked(port: int, what: str, query: str) -> Any:
    """An answer of the server."""
    with urllib.request.urlopen(f"http://127.0.0.1:{port}/api/v1/{what}?{query}", timeout=30) as a:
        return json.load(a)["data"]
