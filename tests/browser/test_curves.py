"""The plot of a page: what a person sees of a curve, and reads off it by keyboard."""

from typing import Any

import pytest
from selenium.webdriver import Keys
from selenium.webdriver.support.wait import WebDriverWait

from browser.support import DARK, DESK, LIGHT, PAPER, TELEPHONE, Browser

pytestmark = pytest.mark.program


def plotted(browser: Browser, name: str, **ends: str) -> None:
    """Send the plot's form of the page that is open, with other ends."""
    for field, value in ends.items():
        browser.run("document.querySelector(arguments[0]).value = arguments[1]", field, value)
    browser.run("document.querySelector('form.plot button').click()")
    shown = f"return document.querySelector('.plotted {name}') !== null"
    WebDriverWait(browser.driver, 60).until(lambda _: browser.run(shown))


@pytest.mark.parametrize("scheme", [LIGHT, DARK])
@pytest.mark.parametrize("width", [DESK, TELEPHONE])
def test_a_curve_is_drawn_with_axes_and_units(browser: Browser, width: int, scheme: str) -> None:
    """Axes with names and units, within the page's width; axe finds nothing, nor does the policy."""
    browser.open("/docs/sine.setting", width, scheme)
    plotted(browser, "svg")
    texts: list[str] = browser.run(
        "return [...document.querySelectorAll('.curve text')].map(t => t.textContent)"
    )
    assert {"Angle (degrees)", "Height (in)", "20", "30", "40"} <= set(texts)
    assert browser.run("return document.documentElement.scrollWidth") <= width
    path: str = browser.run("return document.querySelector('.curve .line').getAttribute('d')")
    assert path.count("L") == 120
    assert browser.findings(within="main") == {}
    assert browser.complaints() == []


def test_a_curve_is_read_by_keyboard(browser: Browser) -> None:
    """The arrow keys move along the curve, and what stands there is said."""
    browser.open("/docs/sine.setting")
    plotted(browser, "svg")
    slider = browser.driver.find_element("css selector", ".reading input")
    said: Any = browser.driver.find_element("css selector", ".reading output")
    assert said.text == "Angle 30 degrees: Height 2.5 in"
    slider.send_keys(Keys.ARROW_RIGHT)
    assert said.text.startswith("Angle 30.25 degrees: Height 2.51")
    assert slider.get_attribute("aria-valuetext") == said.text


def test_a_stop_and_a_refusal_say_where(browser: Browser) -> None:
    """Where an answer says stop, or is refused, the curve ends and the list says from where on."""
    browser.open("/docs/wheels.speed")
    browser.run("document.querySelector('#plot-over').value = 'rpm'")
    plotted(browser, "svg", **{"#plot-from": "1000", "#plot-to": "9000"})
    first = browser.driver.find_element("css selector", ".plotted .advised li")
    assert first.text.startswith("stop over-marked-speed, at RPM (per minute) 3")
    browser.open("/docs/sine.setting")
    plotted(browser, "svg", **{"#plot-to": "100"})
    listed = browser.driver.find_element("css selector", ".plotted .advised")
    assert "refused at Angle (degrees) 90.0833 to 100" in listed.text
    plotted(browser, ".status", **{"#plot-to": "10"})
    status = browser.driver.find_element("css selector", ".plotted")
    assert "422" in status.text
    assert "/over/angle/to" in status.text


def test_a_curve_is_printed_without_its_form(browser: Browser) -> None:
    """On paper the plot stays, the fields that made it go."""
    browser.open("/docs/sine.setting", PAPER)
    plotted(browser, "svg")
    browser.driver.execute_cdp_cmd("Emulation.setEmulatedMedia", {"media": "print"})
    shown = "return document.querySelector(arguments[0]).checkVisibility()"
    assert browser.run(shown, ".curve")
    assert not browser.run(shown, "form.plot")
    assert browser.run("return document.documentElement.scrollWidth") <= PAPER
