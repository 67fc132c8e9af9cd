"""Every drawing as a browser shows it and as a PDF prints it: readable, and the same in both."""

import re
from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
import pytest

from browser.support import Browser, browsing
from drawings.cases import RENDERED, drawing
from drawings.reading import Drawn, read
from drawings.rendering import Picture, Word, as_pdf, pages_of, shown, widths_shown, words_of

pytestmark = pytest.mark.program
#: Least share of dark pixels in the box of words that can be read.
LEAST_DARK = 0.02
#: Largest difference of the mean grey of a cell of 6 mm between the renderers.
LARGEST_DIFFERENCE = 0.12
#: A text is no wider than was kept for it by more than this, in millimetres.
WIDER_MM = 0.1
#: Names of drawings in scripts that the fonts at hand may lack.
FOREIGN = {"other scripts"}


@dataclass(frozen=True)
class Rendered:
    """A drawing, and what both renderers make of it."""

    drawn: Drawn
    browser: Picture
    printed: Picture
    words: list[Word]
    widths: list[float]


@pytest.fixture(scope="module")
def browser(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Browser]:
    """A browser at no pages."""
    with browsing("", tmp_path_factory.mktemp("profile")) as found:
        yield found


@pytest.fixture(scope="module")
def rendered(browser: Browser, tmp_path_factory: pytest.TempPathFactory) -> dict[str, Rendered]:
    """Every drawing by its name."""
    return _rendered(browser, [drawing(name) for name in RENDERED], tmp_path_factory, RENDERED)


def _rendered(
    browser: Browser, svgs: list[str], folders: pytest.TempPathFactory, names: list[str]
) -> dict[str, Rendered]:
    sheets = [read(svg) for svg in svgs]
    seen = shown(browser, svgs, sheets)
    widths = widths_shown(browser)
    pdf = as_pdf(svgs, sheets, folders.mktemp("drawings"))
    printed, words = pages_of(pdf, sheets), words_of(pdf, sheets)
    found = zip(sheets, seen, printed, words, widths, strict=True)
    return {name: Rendered(*parts) for name, parts in zip(names, found, strict=True)}


def unreadable(one: Rendered) -> list[str]:
    """Words in whose box too little is dark, in either renderer."""
    return [
        text.words
        for text in one.drawn.texts
        for picture in (one.browser, one.printed)
        if picture.dark_share(text.shape) < LEAST_DARK
    ]


def unlike(one: Rendered) -> float:
    """Largest difference of the renderers' mean grey in a cell."""
    seen, printed = one.browser.cells(), one.printed.cells()
    rows, columns = (min(a, b) for a, b in zip(seen.shape, printed.shape, strict=True))
    return float(np.abs(seen[:rows, :columns] - printed[:rows, :columns]).max())


def not_found(one: Rendered) -> list[str]:
    """Texts that do not stand in the PDF where they should."""
    lost = []
    for text in one.drawn.texts:
        within = text.shape.buffer(0.5)
        there = "".join(word.text for word in one.words if within.covers(word.shape.centroid))
        if sorted(re.sub(r"\s", "", text.words)) != sorted(_plain(there)):
            lost.append(f"{text.words} | {there}")
    return lost


def _plain(text: str) -> str:
    for written, meant in (("&quot;", '"'), ("&amp;", "&"), ("&lt;", "<"), ("&gt;", ">")):
        text = text.replace(written, meant)
    return re.sub(r"\s|&apos;", lambda found: "'" if found[0] != " " else "", text)


def test_all_words_can_be_read(rendered: dict[str, Rendered]) -> None:
    """In both renderers each text's box holds enough ink."""
    assert {name: found for name, one in rendered.items() if (found := unreadable(one))} == {}


def test_words_stand_where_they_should(rendered: dict[str, Rendered]) -> None:
    """Each text of a drawing is found in the PDF, in its own place."""
    assert {
        name: found
        for name, one in rendered.items()
        if name not in FOREIGN and (found := not_found(one))
    } == {}


def test_words_are_no_wider_than_was_kept_for_them(rendered: dict[str, Rendered]) -> None:
    """The browser's own widths are those that the kit reckons with."""
    wide = [
        (name, text.words)
        for name, one in rendered.items()
        if name not in FOREIGN
        for text, width in zip(one.drawn.texts, one.widths, strict=True)
        if width > _kept(text.shape.area, text.size) + WIDER_MM
    ]
    assert wide == []


def _kept(area: float, size: float) -> float:
    """Width of a text's box, whose height is its size."""
    return area / size


def test_both_draw_the_same(rendered: dict[str, Rendered]) -> None:
    """No cell of 6 mm is darker in one of them by more than a little."""
    assert {
        name: round(by, 3)
        for name, one in rendered.items()
        if name not in FOREIGN and (by := unlike(one)) > LARGEST_DIFFERENCE
    } == {}


def test_a_fault_of_either_would_be_seen(
    browser: Browser, tmp_path_factory: pytest.TempPathFactory
) -> None:
    """White words, words moved after they were kept room for, and what one renderer hides."""
    svg = drawing("one stack")
    white = re.sub(r'fill="#14202b">(<text)', r'fill="#fefefe">\1', svg)
    hidden = svg.replace("<text ", '<text paint-order="stroke" stroke="#fff" stroke-width="9" ')
    made = _rendered(browser, [svg, white, hidden], tmp_path_factory, ["as it is", "white", "rim"])
    assert unreadable(made["as it is"]) == []
    # All but a text along the plate, whose box holds the plate's own lines.
    assert len(unreadable(made["white"])) >= 2 * len(made["white"].drawn.texts) - 2
    # Over the words in the PDF, under them in the browser.
    assert unreadable(made["rim"])
    assert unlike(made["rim"]) > LARGEST_DIFFERENCE
    moved = Rendered(
        read(drawing("two stacks")), *(made["as it is"].browser,) * 2, made["as it is"].words, []
    )
    assert not_found(moved)
