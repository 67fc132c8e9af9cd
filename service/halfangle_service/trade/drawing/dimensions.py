"""Dimensions as ISO 129-1 draws them; millimetres on paper.

Extension lines begin a little off the outline and run a little past the dimension line, which ends
in filled arrowheads; the figure stands above the unbroken line and reads from below or from the
right. Where a figure or its line would lie over something, the dimension stands farther off.
"""

import math
from collections.abc import Iterator
from dataclasses import dataclass

from halfangle_service.trade.drawing.marks import BELOW_LINE, TEXT, Box, Point, Words
from halfangle_service.trade.drawing.metrics import text_width
from halfangle_service.trade.drawing.sheet import ARROW, Sheet

#: Extension lines: their gap to the outline, and how far they run past the dimension line.
GAP, PAST = 0.8, 1.8
#: First distance from the outline, and between rows of dimensions.
FIRST, APART = 8.0, 7.0
#: How far a dimension line runs out where its arrowheads stand outside.
_TAIL = 6.0
_ROWS = 10
#: Half of the boxes in which room is sought along a dimension line.
_HALF = 0.5


@dataclass(frozen=True, slots=True)
class _Laid:
    """A dimension line in one row: its ends, the line with its tails, and the figure."""

    start: Point
    end: Point
    line: tuple[Point, Point]
    outside: bool
    words: Words


def dimension(
    sheet: Sheet, start: Point, end: Point, figure: str, way: Point, first: float = FIRST
) -> None:
    """Dimension the distance between two points, square to `way`, to which it stands off."""
    length = math.hypot(*way)
    off = (way[0] / length, way[1] / length)
    rows = list(_rows(start, end, figure, off, first))
    laid = next((row for row in rows if _lies_free(sheet, row, start, end)), rows[0])
    for from_, to in ((start, laid.start), (end, laid.end)):
        sheet.line([_moved(from_, off, GAP), _moved(to, off, PAST)], "thin")
    sheet.line(laid.line, "thin")
    along = (laid.end[0] - laid.start[0], laid.end[1] - laid.start[1])
    turn = -1.0 if laid.outside else 1.0
    sheet.arrowhead(laid.end, (turn * along[0], turn * along[1]))
    sheet.arrowhead(laid.start, (-turn * along[0], -turn * along[1]))
    sheet.write(laid.words)


def _rows(start: Point, end: Point, figure: str, off: Point, first: float) -> Iterator[_Laid]:
    """The dimension in rows farther and farther off."""
    outer = max(_along(start, off), _along(end, off))
    for row in range(_ROWS):
        level = outer + first + row * APART
        a = _moved(start, off, level - _along(start, off))
        b = _moved(end, off, level - _along(end, off))
        yield _laid(a, b, figure)


def _laid(a: Point, b: Point, figure: str) -> _Laid:
    """A dimension line between two points, with its figure above as one reads it."""
    if (b[0] - a[0], a[1] - b[1]) < (-1e-6, 0.0) or (abs(b[0] - a[0]) < 1e-6 and b[1] > a[1]):
        a, b = b, a
    length = math.hypot(b[0] - a[0], b[1] - a[1])
    along = ((b[0] - a[0]) / length, (b[1] - a[1]) / length) if length else (1.0, 0.0)
    wide = text_width(figure, TEXT)
    outside = length < 2.0 * ARROW + 1.0
    fits = wide <= length - 1.0
    before = _TAIL if outside else 0.0
    after = before if fits else max(before, ARROW if outside else 0.0) + wide + 1.0
    line = (_moved(a, along, -before), _moved(b, along, after))
    begin = (length - wide) / 2.0 if fits else length + after - wide
    foot = _moved(a, along, begin)
    above = (along[1], -along[0])
    turn = math.degrees(math.atan2(-along[1], along[0]))
    words = Words(figure, _moved(foot, above, BELOW_LINE), TEXT, turn_degrees=round(turn, 3))
    return _Laid(a, b, line, outside, words)


def _lies_free(sheet: Sheet, row: _Laid, start: Point, end: Point) -> bool:
    room = sheet.room
    lines = (row.line, (start, row.start), (end, row.end))
    return (
        room.all_free(row.words.boxes(), 0.3)
        and room.all_free(_along_line(*row.line))
        and not any(room.words_crossed(*line) for line in lines)
    )


def _along_line(start: Point, end: Point) -> Iterator[Box]:
    """Small boxes along a line, so that it lies along no other and crosses none."""
    pieces = max(2, math.ceil(math.hypot(end[0] - start[0], end[1] - start[1])))
    for place in range(1, pieces):
        share = place / pieces
        x = start[0] + share * (end[0] - start[0])
        y = start[1] + share * (end[1] - start[1])
        yield x - _HALF, y - _HALF, x + _HALF, y + _HALF


def angle_dimension(
    sheet: Sheet, vertex: Point, start: float, end: float, figure: str, radius: float
) -> None:
    """Dimension an angle on an arc, from one direction counter-clockwise to another, in degrees.

    The sides are lines of the drawing; the figure stands level, where there is room beside the arc.
    """
    middle = math.radians((start + end) / 2.0)
    outside = math.radians(end - start) * radius < 2.0 * ARROW + 1.0
    tail = math.degrees(_TAIL / radius) if outside else 0.0
    sheet.arc(vertex, radius, start - tail, end + tail)
    turn = -1.0 if outside else 1.0
    lean = math.degrees(ARROW / 2.0 / radius)
    for direction, sign in ((end, 1.0), (start, -1.0)):
        tip = _polar(vertex, radius, math.radians(direction))
        # Along the chord of the arrowhead, so that its foot stands on the arc.
        tangent = math.radians(direction - sign * turn * lean)
        way = (-math.sin(tangent) * sign * turn, -math.cos(tangent) * sign * turn)
        sheet.arrowhead(tip, way)
    at = _polar(vertex, radius, middle)
    sheet.note(figure, at, (math.cos(middle), -math.sin(middle)), "beside")


def _polar(center: Point, radius: float, turn: float) -> Point:
    return center[0] + radius * math.cos(turn), center[1] - radius * math.sin(turn)


def _along(point: Point, way: Point) -> float:
    return point[0] * way[0] + point[1] * way[1]


def _moved(point: Point, way: Point, by: float) -> Point:
    return point[0] + by * way[0], point[1] + by * way[1]
