"""The kit itself: scales, widths, dimension lines, notes that find their room."""

import math
from itertools import pairwise

import pytest
from shapely import LineString, box

from drawings.reading import read
from halfangle_service.trade.drawing.dimensions import GAP, PAST, angle_dimension, dimension
from halfangle_service.trade.drawing.hatching import hatched, interrupted
from halfangle_service.trade.drawing.marks import Words
from halfangle_service.trade.drawing.notes import LEADING
from halfangle_service.trade.drawing.scales import bar_within, scale_within
from halfangle_service.trade.drawing.sheet import ARROW, HALF_ARROW, Sheet
from halfangle_service.trade.drawing.svg import Scale, svg_of
from halfangle_service.trade.set_up_drawing.ladder import draw_ladder

_BELOW = (0.0, 1.0)


def test_arrowheads_are_filled_and_from_15_to_30_degrees() -> None:
    """As ISO 129-1 draws them."""
    assert 15.0 <= math.degrees(2.0 * math.atan2(HALF_ARROW, ARROW)) <= 30.0


def test_a_dimension_stands_off_its_outline() -> None:
    """Extension lines begin off the outline and end past the line; the figure stands over it."""
    sheet = Sheet()
    dimension(sheet, (40.0, 50.0), (90.0, 50.0), "50", _BELOW)
    drawn = read(svg_of(sheet, "A dimension"))
    upright = [line for line in drawn.lines if line.bounds[0] == line.bounds[2]]
    level = next(line for line in drawn.lines if line.length == pytest.approx(50.0))
    assert [line.bounds[1] for line in upright] == pytest.approx([50.0 + GAP] * 2)
    assert [line.bounds[3] - level.bounds[1] for line in upright] == pytest.approx([PAST] * 2)
    figure = next(text for text in drawn.texts if text.words == "50")
    assert figure.shape.bounds[3] < level.bounds[1]
    assert figure.shape.centroid.x == pytest.approx(65.0, abs=0.1)


@pytest.mark.parametrize(
    ("start", "end", "turned"),
    [((40.0, 50.0), (90.0, 50.0), 0.0), ((40.0, 90.0), (40.0, 50.0), -90.0)],
)
def test_figures_read_from_below_or_from_the_right(
    start: tuple[float, float], end: tuple[float, float], turned: float
) -> None:
    """Whichever end is named first."""
    for ends in ((start, end), (end, start)):
        sheet = Sheet()
        dimension(sheet, *ends, "50", (-1.0, 0.0) if turned else _BELOW)
        (text,) = (t for t in read(svg_of(sheet, "A")).texts if t.words == "50")
        assert text.turned == pytest.approx(turned)


def test_dimensions_stand_in_rows() -> None:
    """One that would lie over another stands farther off; a short one has its arrows outside."""
    sheet = Sheet()
    for end in (60.0, 90.0, 42.0):
        dimension(sheet, (40.0, 50.0), (end, 50.0), f"{end - 40.0:g}", _BELOW)
    drawn = read(svg_of(sheet, "Rows"))
    assert drawn.faults() == []
    tips = [ink.exterior.coords[0] for ink in drawn.inks]
    assert len({round(y, 3) for _, y in tips}) == 3


def test_a_small_angle_has_its_arrows_outside() -> None:
    """Half a degree at 60 mm is half a millimetre: the arrows point at it from both sides."""
    sheet = Sheet()
    angle_dimension(sheet, (20.0, 60.0), 0.0, 0.5, "0°30'", [60.0])
    drawn = read(svg_of(sheet, "Angle"))
    upper, lower = sorted(ink.centroid.y for ink in drawn.inks)
    assert upper < 60.0 - math.radians(0.5) * 60.0
    assert lower > 60.0


def test_notes_find_room() -> None:
    """Thirty notes for one place: none over another, none past the sheet's sides."""
    sheet = Sheet()
    sheet.circle((75.0, 60.0), 20.0)
    for number in range(30):
        sheet.note(f"note {number}", (75.0, 60.0), (1.0, -1.0), "dot")
    assert [fault for fault in read(svg_of(sheet, "Notes")).faults() if "each" in fault] == []


def test_a_note_without_room_stands_under_everything() -> None:
    """Words as wide as the sheet stand below all else, with their leader."""
    sheet = Sheet()
    sheet.polygon([(5.0, 0.0), (145.0, 0.0), (145.0, 140.0), (5.0, 140.0)])
    for y in range(1, 140):
        sheet.line([(5.0, float(y)), (145.0, float(y))], "thin")
    sheet.note("m" * 30, (75.0, 70.0))
    drawn = read(svg_of(sheet, "Full"))
    assert next(t for t in drawn.texts if t.words == "m" * 30).shape.bounds[1] > 140.0
    assert drawn.faults() == []


def test_sizes_of_a_ladder_keep_a_line_apart() -> None:
    """Ten blocks of half a millimetre on paper: in order, none closer than a line of text."""
    sheet = Sheet()
    levels = [50.0 + 0.5 * place for place in range(10)]
    draw_ladder(sheet, levels, [f"0.{n}" for n in range(10)], (60.0, 64.0), "High stack 1")
    middles = [text.shape.centroid.y for text in read(svg_of(sheet, "Ladder")).texts[1:11]]
    apart = [below - over for over, below in pairwise(middles)]
    assert min(apart[:8]) == pytest.approx(LEADING, abs=0.01)


def test_hatching_leaves_words_free() -> None:
    """Lines at 45°, evenly apart, within the outline, and none of them over words."""
    outline = [(0.0, 0.0), (40.0, 0.0), (40.0, 30.0), (0.0, 30.0)]
    lines = list(hatched(outline, 2.0))
    inner = box(0.0, 0.0, 40.0, 30.0).buffer(1e-9)
    assert all(inner.covers(LineString(line)) for line in lines)
    total = sum(LineString(line).length for line in lines)
    assert total * 2.0 == pytest.approx(40.0 * 30.0, rel=0.03)
    words = (10.0, 10.0, 25.0, 16.0)
    left = [LineString(part) for line in lines for part in interrupted(line, [words])]
    assert not any(part.intersects(box(*words).buffer(-1e-6)) for part in left)
    assert sum(part.length for part in left) * 2.0 == pytest.approx(
        40.0 * 30.0 - 15.0 * 6.0, rel=0.03
    )


@pytest.mark.parametrize("most", [0.013, 0.0999, 0.1, 0.34, 1.0, 1.7, 9.9, 64.0])
def test_a_scale_is_round_and_no_larger(most: float) -> None:
    """The next round scale up would be too large: at most half again as large is left out."""
    scale = scale_within(most)
    assert 0.6 * most <= scale <= most * (1.0 + 1e-9)


def test_the_bar_is_as_long_as_it_says() -> None:
    """2 in at half size is 25.4 mm on paper, and no more than 42 mm are taken."""
    assert bar_within(42.0, 0.5, "in") == 2.0
    sheet = Sheet()
    sheet.circle((75.0, 40.0), 20.0)
    drawn = read(svg_of(sheet, "Bar", scale=Scale(0.5, "in")))
    assert any(line.length == pytest.approx(25.4) for line in drawn.lines)
    assert any(text.words.startswith("Scale 1 : 2 ") for text in drawn.texts)


def test_words_unheard_of_take_the_widest_room() -> None:
    """A character in no table is as wide as its size, so that it never runs into what follows."""
    assert Words("測定", (0.0, 0.0), 4.0).width == 8.0
