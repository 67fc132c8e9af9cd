"""Words of every drawing lie free, by the kit's widths of them and what was read back."""

import re

import pytest

from drawings.cases import NAMES, drawing
from drawings.reading import read

_FIRST_TEXT = re.compile(r'(<text x=")([^"]*)(" y=")([^"]*)')


@pytest.mark.parametrize("name", NAMES)
def test_words_lie_free(name: str) -> None:
    """No words lie over others, over a line or an arrowhead, or leave the sheet."""
    assert read(drawing(name)).faults() == []


@pytest.mark.parametrize("name", NAMES)
def test_a_drawing_says_what_it_is(name: str) -> None:
    """It has a title, a description for those who hear it, and its scale or that it has none."""
    svg = drawing(name)
    assert re.search(r'role="img"><title>[^<]+</title><desc>[^<]+</desc>', svg)
    assert ("Not to scale." in svg) != bool(re.search(r"Scale [\d.]+ : [\d.]+", svg))


@pytest.mark.parametrize("name", NAMES)
def test_a_drawing_is_drawn_alike_everywhere(name: str) -> None:
    """No style sheet, marker, gradient, rim or reference, which a page or a printer may change."""
    found = re.findall(
        r"<style|<marker|Gradient|paint-order|<use|href|class=| id=|url\(", drawing(name)
    )
    assert found == []


def moved(svg: str, to: tuple[float, float]) -> str:
    """A drawing with its first words moved."""
    return _FIRST_TEXT.sub(lambda found: f"{found[1]}{to[0]}{found[3]}{to[1]}", svg, count=1)


def test_a_fault_would_be_seen() -> None:
    """Words moved over others, over a line, over an arrowhead or off the sheet are found."""
    svg = drawing("one stack")
    drawn = read(svg)
    longest = max(drawn.lines, key=lambda line: line.length)
    other = drawn.texts[-1].shape.bounds
    places = {
        "over each other": (10.0 * other[0], 10.0 * other[3] - 8.0),
        "over a line": tuple(10.0 * c for c in longest.interpolate(0.5, normalized=True).coords[0]),
        "over an arrowhead": tuple(10.0 * c for c in drawn.inks[0].centroid.coords[0]),
        "leaves the sheet": (10.0 * drawn.sheet.bounds[2] - 5.0, 0.0),
    }
    for fault, (x, y) in places.items():
        assert any(found.startswith(fault) for found in read(moved(svg, (x, y))).faults()), fault
