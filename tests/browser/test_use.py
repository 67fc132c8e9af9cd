"""What the pages do: find, try an operation, and the packaged page of forms."""

from typing import Any

import pytest
from selenium.webdriver import Keys
from selenium.webdriver.remote.webelement import WebElement
from selenium.webdriver.support.wait import WebDriverWait

from browser.support import DARK, DESK, LIGHT, TELEPHONE, Browser
from halfangle_service.registry import load_registry

pytestmark = pytest.mark.program

OPERATIONS = load_registry().operations
#: Rules that the packaged page's own markup breaks, which is not ours to mend: its editor and its
#: lists have no label, its copy buttons no name, a summary is a button that holds another, and
#: examples scroll that no key reaches. Its colours we do mend. Our own form beside each operation
#: breaks none.
OF_THE_PACKAGED_PAGE = {
    "button-name",
    "label",
    "label-title-only",
    "nested-interactive",
    "scrollable-region-focusable",
    "select-name",
}


def part(browser: Browser, selector: str) -> WebElement:
    """The part of the page that a selector names."""
    found: WebElement = browser.driver.find_element("css selector", selector)
    return found


def until(browser: Browser, condition: str) -> Any:
    """Wait until a script gives something; give it."""
    return WebDriverWait(browser.driver, 60).until(lambda _: browser.run(f"return {condition}"))


# Search ---------------------------------------------------------------------------------------
def found(browser: Browser, words: str) -> list[str]:
    """Type words into the search; the entries that stay."""
    field = part(browser, "#search")
    field.clear()
    field.send_keys(words)
    shown: list[str] = browser.run(
        "return [...document.querySelectorAll('.entry')].filter(e => e.checkVisibility())"
        ".map(e => e.id || e.querySelector('code').textContent)"
    )
    return shown


@pytest.mark.parametrize(
    ("words", "expected"),
    [
        ("tapers.standoff", "tapers.standoff"),
        ("Stand-off gauge", "tapers.standoff"),
        ("center_distance", "glossary-center_distance"),
        ("center distance", "sine.setting"),
        ("wheel-safety", "advisory-wheel-safety"),
        ("unsupported media", "problem-unsupported-media-type"),
        ("blocks sets", "GET /v1/blocks/sets"),
    ],
)
def test_search_finds(browser: Browser, words: str, expected: str) -> None:
    """Operations, fields, words and codes are found however they are written, without a request."""
    browser.open("/docs")
    browser.requested()
    entries = found(browser, words)
    assert expected in entries
    assert len(entries) < 60
    said = part(browser, ".found").text
    assert said == f"{len(entries)} {'entry' if len(entries) == 1 else 'entries'}"
    assert browser.requested() == []


def test_search_says_where_there_is_nothing_and_gives_all_back(browser: Browser) -> None:
    """A word that stands nowhere is said to; without words all is there again."""
    browser.open("/docs")
    every = browser.run("return document.querySelectorAll('.entry').length")
    assert found(browser, "qqq") == []
    assert part(browser, ".found").text == "No entries"
    assert browser.findings() == {}
    part(browser, "#search").send_keys(*[Keys.BACKSPACE] * 3)
    assert browser.run("return document.querySelectorAll('.entry:not([hidden])').length") == every


def test_enter_leads_to_the_first_found(browser: Browser) -> None:
    """Enter moves on to the first entry, and again opens it."""
    browser.open("/docs")
    found(browser, "dovetail")
    part(browser, "#search").send_keys(Keys.ENTER)
    browser.driver.switch_to.active_element.send_keys(Keys.ENTER)
    until(browser, "location.pathname === '/docs/tapers.dovetail-over-rolls'")


# Try it ---------------------------------------------------------------------------------------
def send(browser: Browser, body: str | None = None) -> str:
    """Send the example, or a body, from the page that is open; the status that is shown."""
    if body is not None:
        browser.run("document.querySelector('#try-body').value = arguments[0]", body)
    part(browser, "form.try [type=submit]").click()
    status: str = until(browser, "document.querySelector('.outcome .status')?.textContent")
    return status


@pytest.mark.parametrize("name", OPERATIONS)
def test_every_example_is_answered_on_its_page(browser: Browser, name: str) -> None:
    """Each operation's example is sent from its page and the answer shown; axe finds nothing."""
    browser.open(f"/docs/{name}")
    assert send(browser) == "200 answered"
    assert part(browser, ".outcome pre").text.startswith("{")
    assert browser.run("return [...document.images].filter(i => !i.naturalWidth).length") == 0
    assert browser.findings() == {}


def test_a_stop_comes_first(browser: Browser) -> None:
    """An answer that says stop says it above all else, in a colour that can be read."""
    browser.open("/docs/wheels.speed")
    body = dict(OPERATIONS["wheels.speed"].example)
    assert send(browser, str({**body, "rpm": 60000}).replace("'", '"')) == "200 answered"
    severities = browser.run(
        "return [...document.querySelectorAll('.outcome .advised li')].map(e => e.className)"
    )
    assert severities[0] == "stop"
    assert severities == sorted(severities, key=["stop", "caution", "note"].index)
    assert browser.findings() == {}


def test_a_refusal_names_its_fields(browser: Browser) -> None:
    """What is refused is shown with each field that is wrong, and the example comes back."""
    browser.open("/docs/sine.setting")
    assert send(browser, '{"units": "in", "angle": 95}').startswith("422 ")
    assert "/center_distance" in part(browser, ".outcome").text
    assert "/angle" in part(browser, ".outcome").text
    part(browser, "form.try [type=reset]").click()
    assert part(browser, ".outcome").text == ""
    assert send(browser) == "200 answered"


# The packaged page ----------------------------------------------------------------------------
def forms(browser: Browser, fragment: str, width: int = DESK, scheme: str = LIGHT) -> None:
    """Open the page of forms at one operation."""
    browser.open(f"/docs/try#{fragment}", width, scheme)
    until(browser, "document.querySelector('#forms .opblock.is-open .execute') !== null")


@pytest.mark.parametrize("width", [DESK, TELEPHONE])
def test_a_form_is_opened_and_sent(browser: Browser, width: int) -> None:
    """A link to an operation opens its form with its example, which is sent and answered by 200."""
    browser.requested()
    browser.complaints()
    forms(browser, "/sine/sine_setting", width)
    assert '"center_distance": 5' in browser.run("return document.querySelector('textarea').value")
    browser.run("document.querySelector('#forms .execute').click()")
    status = "#forms .live-responses-table .response-col_status:not(.col_header)"
    assert until(browser, f"document.querySelector('{status}')?.textContent").startswith("200")
    assert browser.run("return document.documentElement.scrollWidth") <= width
    asked = browser.requested()
    assert [url for url in asked if not url.startswith(browser.site)] == []
    assert [said for said in browser.complaints() if "deep link whitespace" not in said] == []


@pytest.mark.parametrize(("width", "scheme"), [(DESK, LIGHT), (TELEPHONE, DARK)])
def test_only_markup_of_the_packaged_page_is_found(
    browser: Browser, width: int, scheme: str
) -> None:
    """Around the packaged page axe finds nothing, within it no colour, and only what is known."""
    forms(browser, "/sine/sine_setting_by_query", width, scheme)
    assert browser.findings(without="#forms") == {}
    assert set(browser.findings("#forms")) <= OF_THE_PACKAGED_PAGE
