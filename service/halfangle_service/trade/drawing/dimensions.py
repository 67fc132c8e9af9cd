"""Dimensions as ISO 129-1 draws them; millimetres on paper.

Extension lines begin a little off the outline and run a little past the dimension line, which ends
in filled arrowheads; the figure stands above the unbroken line and reads from below or from the
right. Where a figure or its line would lie over something, the dimension stands farther off.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from halfangle_service.trade.drawing.marks import BELOW_LINE, TEXT, Box, Point, Words
from halfangle_service.trade.drawing.metrics import BELOW, text_width
from halfangle_service.trade.drawing.sheet import ARROW, EDGE, Sheet

#: Extension lines: their gap to the outline, and how far they run past the dimension line.
GAP, PAST = 0.8, 1.8
#: First distance from the outline, and between rows of dimensions.
FIRST, APART = 8.0, 7.0
#: How far a dimension line runs out where its arrowheads stand outside.
_TAIL = 6.0
_ROWS = 10
#: How far an angle's figure stands off its arc.
_CLEAR = 1.4
#: Half of the boxes in which room is sought along a dimension line.
_HALF = 0.5


@dataclass(frozen=True, slots=True)
class _Laid:
    """A dimension line in one row: its ends, the line with its tails, and the figure."""

    start: Point
    end: Point
    line: tuple[Point, Point]
    outside: bool
    centered: bool
    words: Words


def dimension(
    sheet: Sheet,
    start: Point,
    end: Point,
    figure: str,
    *ways: Point,
    first: float = FIRST,
    before: bool = False,
) -> None:
    """Dimension the distance between two points, square to the way in which it stands off.

    Where it has no room there it stands farther off, then in the next of the ways; where it has
    none at all, where it lies over least. A figure that is too wide stands past the line, or
    `before` it where that is to be tried first.
    """
    tried = [
        (way, row)
        for way in map(_unit, ways)
        for row in _rows(start, end, figure, way, first, before=before)
    ]
    off, laid = _best(sheet, (start, end), tried)
    for line in _extensions(laid, start, end, off):
        sheet.line(line, "thin")
    sheet.line(laid.line, "thin")
    along = (laid.end[0] - laid.start[0], laid.end[1] - laid.start[1])
    turn = -1.0 if laid.outside else 1.0
    sheet.arrowhead(laid.end, (turn * along[0], turn * along[1]))
    sheet.arrowhead(laid.start, (-turn * along[0], -turn * along[1]))
    sheet.write(laid.words)


def _best(
    sheet: Sheet, ends: tuple[Point, Point], tried: Sequence[tuple[Point, _Laid]]
) -> tuple[Point, _Laid]:
    """The first row that lies free, or the one that lies over least."""
    best, least = tried[0], math.inf
    for found in tried:
        over = _lies_over(sheet, *found, *ends)
        if over < least:
            best, least = found, over
        if not over:
            break
    return best


def _extensions(laid: _Laid, start: Point, end: Point, off: Point) -> Iterator[tuple[Point, Point]]:
    """Lines from both points, a little off them, to a little past the dimension line."""
    level = _along(laid.start, off)
    for point in (start, end):
        yield _moved(point, off, GAP), _moved(point, off, level - _along(point, off) + PAST)


def _unit(way: Point) -> Point:
    length = math.hypot(*way)
    return way[0] / length, way[1] / length


def _rows(
    start: Point, end: Point, figure: str, off: Point, first: float, *, before: bool
) -> Iterator[_Laid]:
    """The dimension in rows farther and farther off."""
    outer = max(_along(start, off), _along(end, off))
    for row in range(_ROWS):
        level = outer + first + row * APART
        a = _moved(start, off, level - _along(start, off))
        b = _moved(end, off, level - _along(end, off))
        laid = _laid(a, b, figure, before_it=before)
        yield laid
        if not laid.centered:
            yield _laid(a, b, figure, before_it=not before)


def _on_sheet(sheet: Sheet, row: _Laid) -> bool:
    xs = [x for box in row.words.boxes() for x in (box[0], box[2])] + [x for x, _ in row.line]
    return min(xs) >= EDGE and max(xs) <= sheet.width - EDGE


def _laid(a: Point, b: Point, figure: str, *, before_it: bool = False) -> _Laid:
    """A dimension line between two points, with its figure above as one reads it.

    A figure that is too wide stands past its end, or `before_it`.
    """
    if (b[0] - a[0], a[1] - b[1]) < (-1e-6, 0.0) or (abs(b[0] - a[0]) < 1e-6 and b[1] > a[1]):
        a, b = b, a
    length = math.hypot(b[0] - a[0], b[1] - a[1])
    along = ((b[0] - a[0]) / length, (b[1] - a[1]) / length) if length else (1.0, 0.0)
    wide = text_width(figure, TEXT)
    outside = length < 2.0 * ARROW + 1.0
    fits = wide <= length - 1.0
    tail = _TAIL if outside else 0.0
    long = tail if fits else (ARROW if outside else 0.0) + wide + 1.5
    before, after = (long, tail) if before_it else (tail, long)
    line = (_moved(a, along, -before), _moved(b, along, after))
    begin = (length - wide) / 2.0 if fits else -before if before_it else length + after - wide
    foot = _moved(a, along, begin)
    above = (along[1], -along[0])
    turn = math.degrees(math.atan2(-along[1], along[0]))
    words = Words(figure, _moved(foot, above, BELOW_LINE), TEXT, turn_degrees=round(turn, 3))
    return _Laid(a, b, line, outside, fits, words)


def _lies_over(sheet: Sheet, off: Point, row: _Laid, start: Point, end: Point) -> int:
    """How badly a row lies over what is there, 0 where it does not."""
    room = sheet.room
    lines = (row.line, *_extensions(row, start, end, off))
    return (
        16 * (not _on_sheet(sheet, row))
        + 8 * (not room.all_free(row.words.boxes(), 0.3))
        + 4 * any(room.words_crossed(*line) for line in lines)
        + (not room.all_free(_along_line(*row.line)))
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
    sheet: Sheet,
    vertex: Point,
    start: float,
    end: float,
    figure: str,
    radii: Sequence[float],
) -> None:
    """Dimension an angle on an arc, from one direction counter-clockwise to another, in degrees.

    The sides are lines of the drawing. The arc has the first of the radii beside which the figure
    has room, level; where none has, the first that crosses no words, and the figure a leader.
    """
    clear = [r for r in radii if not _over_words(sheet, vertex, start, end, r)] or [radii[-1]]
    found = ((radius, _beside(sheet, vertex, start, end, figure, radius)) for radius in clear)
    radius, words = next(((r, free) for r, free in found if free is not None), (clear[0], None))
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
    if words is not None:
        sheet.write(words)
        return
    middle = math.radians((start + end) / 2.0)
    at = _polar(vertex, radius, middle)
    sheet.note(figure, at, (math.cos(middle), -math.sin(middle)), "arrow")


def _over_words(sheet: Sheet, vertex: Point, start: float, end: float, radius: float) -> bool:
    """True where the arc would lie over words."""
    along = [_polar(vertex, radius, math.radians(start + (end - start) * k / 8)) for k in range(9)]
    return any(sheet.room.words_crossed(*chord) for chord in pairwise(along))


def _beside(
    sheet: Sheet, vertex: Point, start: float, end: float, figure: str, radius: float
) -> Words | None:
    """The figure beside the arc, inside or outside of it, where it is free."""
    wide = text_width(figure, TEXT)
    for share in (0.5, 0.35, 0.65, 0.2, 0.8):
        turn = math.radians(start + share * (end - start))
        for sign in (-1.0, 1.0):
            x, y = _polar(vertex, radius + sign * _CLEAR, turn)
            left = x if sign * math.cos(turn) > 0.0 else x - wide
            words = Words(figure, (left, y + (0.5 - BELOW) * TEXT), TEXT)
            (box,) = words.boxes()
            if (
                sheet.room.all_free([box], 0.6)
                and _clear_of_arc(box, vertex, radius)
                and EDGE <= box[0] <= box[2] <= sheet.width - EDGE
            ):
                return words
    return None


def _clear_of_arc(box: Box, vertex: Point, radius: float) -> bool:
    """True where all corners of a box lie on one side of a circle, with room to it."""
    corners = [(x, y) for x in (box[0], box[2]) for y in (box[1], box[3])]
    far = [math.hypot(x - vertex[0], y - vertex[1]) for x, y in corners]
    nearest_x = min(max(vertex[0], box[0]), box[2])
    nearest_y = min(max(vertex[1], box[1]), box[3])
    nearest = math.hypot(nearest_x - vertex[0], nearest_y - vertex[1])
    return max(far) < radius - 0.6 or nearest > radius + 0.6


def _polar(center: Point, radius: float, turn: float) -> Point:
    return center[0] + radius * math.cos(turn), center[1] - radius * math.sin(turn)


def _along(point: Point, way: Point) -> float:
    return point[0] * way[0] + point[1] * way[1]


def _moved(point: Point, way: Point, by: float) -> Point:
    return point[0] + by * way[0], point[1] + by * way[1]
