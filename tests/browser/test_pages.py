"""The pages as a person sees them: at a desk, on a telephone, by keyboard, in the dark, printed."""

import pytest
from selenium.webdriver import ActionChains, Keys

from browser.support import DARK, DESK, LIGHT, PAPER, TELEPHONE, Browser
from halfangle_service.registry import load_registry

pytestmark = pytest.mark.program

OPERATIONS = load_registry().operations
OVERVIEW = "/docs"
#: With a drawing, long tables, and a stored answer with one.
SHOWN = ["/docs/sine.compound", "/docs/clearance.tilted-plate"]
PAGES = [OVERVIEW, *(f"/docs/{name}" for name in OPERATIONS)]

_SIDEWAYS = "return document.documentElement.scrollWidth - document.documentElement.clientWidth"
_CUT_OFF = """
return [...document.querySelectorAll("main *, header *, footer *")].filter(part => {
  if (getComputedStyle(part.closest("thead") || part).clipPath !== "none") return false;
  const box = part.getBoundingClientRect();
  return box.width && (box.right > innerWidth + 1 || part.scrollWidth > part.clientWidth + 1
    && getComputedStyle(part).display !== "inline" && !part.matches("textarea"));
}).map(part => part.outerHTML.slice(0, 120));
"""

#: First cells of tables at whose middle something else is on top.
_COVERED = """
return [...document.querySelectorAll("tbody tr:first-child > :first-child")].filter(cell => {
  cell.scrollIntoView({ block: "center" });
  const box = cell.getBoundingClientRect();
  if (!box.width) return false;
  const top = document.elementFromPoint(box.left + 3, box.top + box.height / 2);
  return !cell.contains(top);
}).map(cell => cell.outerHTML.slice(0, 120));
"""


# Sizes and colours ----------------------------------------------------------------------------
@pytest.mark.parametrize("width", [DESK, TELEPHONE])
def test_no_page_scrolls_sideways(browser: Browser, width: int) -> None:
    """Every page fits a desk and a telephone, whatever its longest name."""
    for path in PAGES:
        browser.open(path, width)
        assert browser.run(_SIDEWAYS) <= 0, path
        assert browser.run(_CUT_OFF) == [], path


@pytest.mark.parametrize("width", [DESK, TELEPHONE])
@pytest.mark.parametrize("path", [OVERVIEW, *SHOWN, "/docs/sine.setting"])
def test_no_head_of_a_table_lies_over_its_rows(browser: Browser, path: str, width: int) -> None:
    """Where a row is a short list, the head of the table is for readers aloud alone."""
    browser.open(path, width)
    assert browser.run(_COVERED) == []


@pytest.mark.parametrize("scheme", [LIGHT, DARK])
@pytest.mark.parametrize("width", [DESK, TELEPHONE])
@pytest.mark.parametrize("path", [OVERVIEW, *SHOWN])
def test_axe_finds_nothing(browser: Browser, path: str, width: int, scheme: str) -> None:
    """No finding of any rule, best practice included, in the light and in the dark."""
    browser.open(path, width, scheme)
    assert browser.findings() == {}


def test_a_finding_would_be_seen(browser: Browser) -> None:
    """A field without a label and pale text are found."""
    browser.open(OVERVIEW)
    browser.run(
        "document.querySelector('main').insertAdjacentHTML('beforeend',"
        "'<input><p class=pale>pale</p>');"
        "document.querySelector('.pale').style.color = '#ccc';"
    )
    assert {"label", "color-contrast"} <= set(browser.findings())


def test_nothing_is_fetched_from_elsewhere(browser: Browser) -> None:
    """Pages ask this service alone, and their policy refuses nothing of theirs."""
    browser.requested()
    browser.complaints()
    for path in (OVERVIEW, *SHOWN):
        browser.open(path)
    asked = browser.requested()
    assert len(asked) >= 3
    assert [url for url in asked if not url.startswith(browser.site)] == []
    assert browser.complaints() == []


def test_pages_are_read_without_scripts(browser: Browser) -> None:
    """Without scripts nothing is missing but what needs them, and the page says so."""
    browser.scripts(allowed=False)
    try:
        browser.open(SHOWN[0])
        shown = {
            part: browser.driver.find_element("css selector", part).is_displayed()
            for part in ("#request", ".fields", ".sample pre", ".without-script", "form.try")
        }
    finally:
        browser.scripts(allowed=True)
    assert shown == {**dict.fromkeys(shown, True), "form.try": False}


# Keyboard -------------------------------------------------------------------------------------
def press(browser: Browser, *keys: str) -> None:
    """Press keys, one after another."""
    ActionChains(browser.driver).send_keys(*keys).perform()


def test_the_first_key_leads_to_the_content(browser: Browser) -> None:
    """The first Tab shows a way past the head of the page, and it leads there."""
    browser.open(SHOWN[0])
    press(browser, Keys.TAB)
    skip = browser.driver.switch_to.active_element
    assert skip.text == "Skip to the content"
    assert skip.rect["x"] >= 0
    press(browser, Keys.ENTER, Keys.TAB)
    assert browser.run("return document.activeElement.closest('main') !== null")


@pytest.mark.parametrize("path", SHOWN)
def test_every_control_is_reached_and_left_by_keys(browser: Browser, path: str) -> None:
    """Tab visits each control once in the order of the page, shows where it is, and gets out."""
    browser.open(path)
    controls = browser.run(
        "return [...document.querySelectorAll('a, button, input, textarea')]"
        ".filter(part => part.checkVisibility()).length"
    )
    visited = []
    for _ in range(controls):
        press(browser, Keys.TAB)
        place, outline = browser.run(
            "const all = [...document.querySelectorAll('*')], at = document.activeElement;"
            "return [all.indexOf(at), getComputedStyle(at).outlineStyle]"
        )
        assert outline == "solid", place
        visited.append(place)
    assert visited == sorted(set(visited))
    press(browser, Keys.TAB)
    assert browser.run("return document.activeElement === document.body")


# Paper ----------------------------------------------------------------------------------------
#: What a reader needs, and what only a screen has.
_LOST = """
const screen = ".top nav, .within, .next, .search, .copy, .skip, .trying";
return [...document.querySelectorAll("main *, footer *")].filter(part =>
  part.textContent.trim() && !part.closest(screen) && !part.getClientRects().length
).map(part => part.outerHTML.slice(0, 120));
"""


@pytest.mark.parametrize("path", [OVERVIEW, *SHOWN, "/docs/jobs.center"])
def test_paper_loses_nothing(browser: Browser, path: str) -> None:
    """On paper every text and drawing is there, and nothing is cut off at the edge."""
    browser.open(path, PAPER, media="print")
    assert browser.run(_LOST) == []
    assert browser.run(_CUT_OFF) == []
    assert browser.run("return [...document.images].filter(i => !i.naturalWidth).length") == 0
    assert not browser.driver.find_element("css selector", ".top nav").is_displayed()
