"""A front end's page of forms: each is made of the contract, and what it sends is answered."""

import json
import shutil
import time
from collections.abc import Iterator
from contextlib import contextmanager
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from threading import Thread
from typing import Any
from urllib.parse import quote

import pytest
from selenium.webdriver.common.by import By
from selenium.webdriver.support.ui import Select

from browser.support import Browser, browsing, served
from halfangle_service.fields.glossary import option_labels, title_of
from halfangle_service.http.contract.document import GLOSSARY_PATH
from halfangle_service.http.contract.samples import sample_answer
from halfangle_service.registry import load_registry
from node_support import MODULES, package, run
from serving_support import ask

pytestmark = pytest.mark.program

OPERATIONS = load_registry().operations
SOURCES = Path(__file__).parent / "forms"


@pytest.fixture(scope="module")
def forms(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Browser]:
    """A browser at the page of forms, which another server than the service serves."""
    site = tmp_path_factory.mktemp("site")
    build_page(site)
    with (
        static(site) as page,
        served("--cors-origins", f'["{page}"]') as service,
        browsing(page, tmp_path_factory.mktemp("profile")) as browser,
    ):
        # Made when first asked for, which takes its time on a busy machine.
        for document in ("/openapi.json", GLOSSARY_PATH):
            assert ask(int(service.rpartition(":")[2]), "GET", document)[0] == 200
        browser.open(f"/?service={quote(service)}")
        until(browser, "return window.ready")
        yield browser


def build_page(site: Path) -> None:
    """Bundle the page with the generator of forms, as a front end's build does."""
    for name in ("@rjsf/core", "@rjsf/validator-ajv8", "react-dom", "esbuild"):
        package(name)
    shutil.copy(SOURCES / "index.html", site)
    bundler = MODULES / "esbuild/bin/esbuild"
    options = ("--bundle", "--format=esm", '--define:process.env.NODE_ENV="production"')
    out = f"--outfile={site / 'forms.js'}"
    run("node", str(bundler), str(SOURCES / "page.mjs"), *options, out, "--log-level=warning")


class _Quiet(SimpleHTTPRequestHandler):
    def log_message(self, format: str, *arguments: Any) -> None:  # noqa: A002
        """Say nothing."""


@contextmanager
def static(folder: Path) -> Iterator[str]:
    """Address of a server of a folder's files."""
    handler = partial(_Quiet, directory=str(folder))
    with ThreadingHTTPServer(("127.0.0.1", 0), handler) as server:
        Thread(target=server.serve_forever, daemon=True).start()
        yield f"http://127.0.0.1:{server.server_port}"
        server.shutdown()


def until(browser: Browser, script: str) -> Any:
    """What a script gives at last; after three minutes an error with the console's words."""
    for _ in range(3600):
        found = browser.run(script)
        if found:
            return found
        time.sleep(0.05)
    raise AssertionError(f"nothing came of `{script}`: {browser.complaints()}")


def shown(forms: Browser, path: str, request: dict[str, Any]) -> None:
    """Show the form of an operation."""
    forms.run("window.show(...arguments)", path, request)
    until(forms, f"return document.getElementById({json.dumps(path)})")


def sent(forms: Browser) -> dict[str, Any]:
    """Press the button; what was sent and answered, or what the form says against it."""
    forms.driver.find_element(By.CSS_SELECTOR, "button[type=submit]").click()
    told: dict[str, Any] = until(forms, "return window.sent")
    return told


def test_every_form_sends_its_example_and_is_answered(forms: Browser) -> None:
    """Each field has a label in words, and the filled-in form gets the answer of the example.

    The form adds the defaults of the contract to what is filled in: they are the service's own.
    """
    wrong = {}
    for name, operation in OPERATIONS.items():
        shown(forms, operation.path, dict(operation.example))
        text = forms.run("return document.querySelector('form').textContent")
        titles = {title_of(field) for field in operation.request.model_fields}
        missing = sorted(title for title in titles if title not in text)
        told = sent(forms)
        if missing or told.get("answer") != json.loads(sample_answer(operation)):
            wrong[name] = missing or told
        elif not set(told["request"]) >= set(operation.example):
            wrong[name] = told["request"]
    assert wrong == {}
    assert forms.complaints() == []


def test_a_form_is_filled_in_by_hand(forms: Browser) -> None:
    """Options are chosen by their labels, an angle is typed in seconds; limits of error are folded.

    What is left empty is not sent; while something required is, nothing is.
    """
    operation = OPERATIONS["sine.requirements"]
    shown(forms, operation.path, {})
    folded = "return [...document.querySelectorAll('details')].map(d => [d.innerText, d.open])"
    assert dict(forms.run(folded))["Errors, by their limits"] is False
    forms.driver.find_element(By.CSS_SELECTOR, "button[type=submit]").click()
    assert forms.run("return window.sent") is None
    unfilled = forms.run("return [...document.querySelectorAll('input:invalid')].map(i => i.id)")
    assert set(unfilled) == {"root_center_distance", "root_angle", "root_tolerance_arcsec"}

    choose(forms, "root_units", "mm")
    choose(forms, "root_angle__anyof_select", "Degrees, minutes, seconds")
    for field, typed in (
        ("center_distance", "100"),
        ("angle", "8°17'50\""),
        ("tolerance_arcsec", "20"),
    ):
        forms.driver.find_element(By.ID, f"root_{field}").send_keys(typed)
    told = sent(forms)
    assert told["status"] == 200
    fields = operation.request.model_fields
    assert {name: v for name, v in told["request"].items() if fields[name].default is None} == {}
    assert {name: told["request"][name] for name in fields if fields[name].is_required()} == {
        "units": "mm",
        "center_distance": 100,
        "angle": "8°17'50\"",
        "tolerance_arcsec": 20,
    }


def choose(forms: Browser, identity: str, label: str) -> None:
    """Choose an option by what it says."""
    Select(forms.driver.find_element(By.ID, identity)).select_by_visible_text(label)


def test_every_option_is_offered_by_its_label(forms: Browser) -> None:
    """No token of ours stands on a form where a label does; a choice of two forms is named too."""
    for operation in OPERATIONS.values():
        shown(forms, operation.path, dict(operation.example))
        offered = forms.run("return [...document.querySelectorAll('option')].map(o => o.text)")
        tokens = {text for text in offered if option_labels().get(text, text) != text}
        assert tokens == set(), operation.name
        assert [text for text in offered if "option" in text.lower()] == [], operation.name
