"""A browser and a running service, for tests of what a person sees."""

import base64
import json
import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from selenium.webdriver import Chrome, ChromeOptions, ChromeService

from node_support import package
from serving_support import free_port, serving
from support import need_program

DESK, TELEPHONE, PAPER = 1280, 390, 718
LIGHT, DARK = "light", "dark"
_SWITCHES = (
    "headless",
    "no-sandbox",
    "disable-gpu",
    "disable-quic",
    "disable-sync",
    "disable-dev-shm-usage",
    "disable-background-networking",
    "disable-component-update",
    "no-first-run",
    # A request to anywhere else fails, and is seen.
    "host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1",
)


@dataclass(frozen=True)
class Browser:
    """Chromium at the pages of a service."""

    driver: Chrome
    site: str

    def open(
        self, path: str, width: int = DESK, scheme: str = LIGHT, media: str = "screen"
    ) -> None:
        """Show a page at a width, in a scheme of colours, on a screen or as on paper."""
        size = {"width": width, "height": 900, "deviceScaleFactor": 1, "mobile": width < 500}
        self._command("Emulation.setDeviceMetricsOverride", **size)
        feature = {"name": "prefers-color-scheme", "value": scheme}
        self._command("Emulation.setEmulatedMedia", media=media, features=[feature])
        self.driver.get("about:blank")  # else a change of the fragment alone would load nothing
        self.driver.get(self.site + path)

    def run(self, script: str, *arguments: Any) -> Any:
        """What a script gives that is run in the page."""
        return self.driver.execute_script(script, *arguments)

    def scripts(self, *, allowed: bool) -> None:
        """Let pages run scripts, or not."""
        self._command("Emulation.setScriptExecutionDisabled", value=not allowed)

    def findings(self, within: str = "html", without: str = "#none") -> dict[str, list[str]]:
        """What axe finds against a page, a part of it, or all but a part: places by rule."""
        self.run((package("axe-core") / "axe.min.js").read_text("utf-8"))
        found: list[dict[str, Any]] = self.driver.execute_async_script(
            "const [within, without, done] = arguments;"
            "axe.run({include: [[within]], exclude: [[without]]}, {resultTypes: ['violations']})"
            ".then(found => done(found.violations));",
            within,
            without,
        )
        return {
            rule["id"]: [f"{node['target']}: {node['failureSummary']}" for node in rule["nodes"]]
            for rule in found
        }

    def printed(self, url: str, width: float, height: float) -> bytes:
        """A page as it is printed on paper of a size in inches, as PDF."""
        self.driver.get(url)
        paper = {"paperWidth": width, "paperHeight": height, "preferCSSPageSize": True}
        asked = {**paper, "printBackground": True}
        made: dict[str, str] = self.driver.execute_cdp_cmd("Page.printToPDF", asked)
        return base64.b64decode(made["data"])

    def requested(self) -> list[str]:
        """Addresses of the network that were asked for since the last time."""
        entries = (json.loads(e["message"])["message"] for e in self._log("performance"))
        sent = (e["params"] for e in entries if e["method"] == "Network.requestWillBeSent")
        urls: list[str] = [params["request"]["url"] for params in sent]
        return [url for url in urls if url.startswith(("http", "ws", "ftp"))]

    def complaints(self) -> list[str]:
        """What the console said since the last time."""
        return [entry["message"] for entry in self._log("browser")]

    def _log(self, kind: str) -> list[dict[str, Any]]:
        logged: list[dict[str, Any]] = self.driver.get_log(kind)  # type: ignore[no-untyped-call]
        return logged

    def _command(self, name: str, **arguments: Any) -> None:
        self.driver.execute_cdp_cmd(name, arguments)


@contextmanager
def browsing(site: str, profile: Path) -> Iterator[Browser]:
    """Chromium, at the pages of a site."""
    program, its_driver = shutil.which("chromium"), shutil.which("chromedriver")
    need_program(program and its_driver, "chromium or its chromedriver is not installed")
    options = ChromeOptions()
    options.binary_location = str(program)
    options.set_capability("goog:loggingPrefs", {"browser": "ALL", "performance": "ALL"})
    for switch in (*_SWITCHES, f"user-data-dir={profile}"):
        options.add_argument(f"--{switch}")
    driver = Chrome(options=options, service=ChromeService(str(its_driver)))
    try:
        driver.set_script_timeout(120)
        yield Browser(driver, site)
    finally:
        driver.quit()


@contextmanager
def served(*options: str) -> Iterator[str]:
    """Address of a running service with these options."""
    port = free_port()
    command = ["-m", "halfangle_service.cli", "serve", "--port", str(port)]
    with serving([*command, "--log-level", "error", *options], port):
        yield f"http://127.0.0.1:{port}"
