"""Where notes stand: the nearest room beside their place, found the same way every time.

Millimetres on paper. Places are tried in a fixed order, by how far they are off and how far they
turn from the way wanted; a leader crosses no words, and lines as few as may be.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import islice

from halfangle_service.trade.drawing.marks import ABOVE_AND_BELOW, TEXT, Box, Point, Words
from halfangle_service.trade.drawing.metrics import ABOVE, text_width
from halfangle_service.trade.drawing.sheet import BESIDE, EDGE, Note, Sheet

#: Lines of a note stand so far apart.
LEADING = 1.3 * TEXT
#: Kept free around words.
RIM = 0.5
_DISTANCES = (2.0, 3.5, 6.0, 9.0, 13.0, 17.0, 22.0, 28.0, 35.0, 43.0, 52.0, 62.0)
#: A turn of so many degrees away from the way wanted is worth a millimetre of leader.
_DEGREES_PER_MM = 9.0


def _ordered(distances: Sequence[float]) -> list[tuple[float, float, float]]:
    """Cost, distance and turn in radians of each place to try, the cheapest first."""
    turns = (sign * turn for turn in range(0, 181, 15) for sign in ((1, -1) if turn else (1,)))
    return sorted(
        ((distance + abs(turn) / _DEGREES_PER_MM, distance, math.radians(turn)))
        for turn in turns
        for distance in distances
    )


#: With a leader, and beside their place without one.
_LED, _BESIDE = _ordered(_DISTANCES[1:]), _ordered(_DISTANCES[:4])
#: A leader's last bit, level, beside the words.
_SHOULDER = 1.5
#: Cost, in millimetres, of a line that the leader crosses.
_CROSSING_MM = 6.0
#: Lines closer than this to level have no shoulder and stand over or under their words.
_STEEP = 0.35
#: Half of what is kept free where a leader ends.
_END = 1.2
#: Shifts of a note under or over everything, as parts of the sheet's width.
_SHIFTS = tuple(sign * step / 16.0 for step in range(9) for sign in (1.0, -1.0))
#: Places looked at in one go.
_TOGETHER = 24


@dataclass(frozen=True, slots=True)
class _Place:
    """Where a note might stand: its box, the leader's end, and what it costs."""

    box: Box
    elbow: Point
    cost: float


def settle(sheet: Sheet) -> None:
    """Set every note of a sheet, in the order in which they came.

    Where their leaders end is kept free of the words of all.
    """
    for note in sheet.notes:
        if _led(note) and not note.within:
            x, y = note.at
            sheet.room.take_head((x - _END, y - _END, x + _END, y + _END))
    for note in sheet.notes:
        if not (note.within and _set_within(sheet, note)):
            _set_beside(sheet, note)
    sheet.notes = []


def _size(note: Note) -> tuple[float, float]:
    width = max(text_width(line, TEXT, bold=note.bold) for line in note.lines)
    return width, (len(note.lines) - 1) * LEADING + ABOVE_AND_BELOW


def _set_within(sheet: Sheet, note: Note) -> bool:
    """Set a note inside its outline, as near its place as may be; False where it has no room."""
    width, height = _size(note)
    boxes = sorted(_grid(note, width, height), key=lambda box: _off(box, note.at))
    if not boxes:
        return False
    for box, free in zip(boxes, sheet.room.free(boxes, RIM), strict=True):
        if free:
            _write(sheet, note, box)
            return True
    return False


def _grid(note: Note, width: float, height: float) -> Iterator[Box]:
    """Boxes of a size inside an outline, a few millimetres apart."""
    xs, ys = [x for x, _ in note.within], [y for _, y in note.within]
    across, down = 4.0, 2.5
    columns = int((max(xs) - min(xs) - width) / across) + 1
    rows = int((max(ys) - min(ys) - height) / down) + 1
    shift = ((max(xs) - min(xs) - width) % across) / 2.0
    drop = ((max(ys) - min(ys) - height) % down) / 2.0
    for column in range(columns):
        for row in range(rows):
            left, top = min(xs) + shift + column * across, min(ys) + drop + row * down
            middle = (left + width / 2.0, top + height / 2.0)
            if inside(note.within, middle):
                yield left, top, left + width, top + height


def _off(box: Box, at: Point) -> float:
    return math.hypot((box[0] + box[2]) / 2.0 - at[0], (box[1] + box[3]) / 2.0 - at[1])


def inside(corners: Sequence[Point], point: Point) -> bool:
    """True where a point lies within an outline."""
    x, y = point
    sides = zip(corners, (*corners[1:], corners[0]), strict=True)
    return (
        sum((b > y) != (d > y) and x < (c - a) * (y - b) / (d - b) + a for (a, b), (c, d) in sides)
        % 2
        == 1
    )


def _set_beside(sheet: Sheet, note: Note) -> None:
    """Set a note off its place, with a leader where it has an end."""
    best = _best(sheet, note)
    if best is None and note.end == BESIDE:
        note = replace(note, end="arrow")
        best = _best(sheet, note)
    place = best or _outside(sheet, note)
    _write(sheet, note, place.box)
    if _led(note):
        _lead(sheet, note, place)


def _best(sheet: Sheet, note: Note) -> _Place | None:
    """The cheapest place that is free; None where there is none."""
    best: tuple[float, _Place] | None = None
    for place in _free(sheet, _places(sheet, note)):
        if best is not None and place.cost >= best[0]:
            break
        if _led(note) and _across_words(sheet, note, place):
            continue
        crossed = sheet.room.lines_crossed(note.at, place.elbow) if _led(note) else 0
        cost = place.cost + _CROSSING_MM * crossed
        if best is None or cost < best[0]:
            best = (cost, place)
    return None if best is None else best[1]


def _free(sheet: Sheet, places: Iterator[_Place]) -> Iterator[_Place]:
    """Those places that are free, a few looked at together: most notes need no more."""
    while some := list(islice(places, _TOGETHER)):
        free = sheet.room.free([place.box for place in some], RIM)
        yield from (place for place, is_free in zip(some, free, strict=True) if is_free)


def _led(note: Note) -> bool:
    return note.end != BESIDE


def _across_words(sheet: Sheet, note: Note, place: _Place) -> bool:
    return sheet.room.words_crossed(note.at, place.elbow)


def _places(sheet: Sheet, note: Note) -> Iterator[_Place]:
    """Where the note might stand, all around its place, the cheapest first, within the sheet."""
    width, height = _size(note)
    wanted = math.atan2(-note.toward[1], note.toward[0])
    shoulder = _SHOULDER if _led(note) else 0.0
    for cost, distance, turn in _LED if _led(note) else _BESIDE:
        angle = wanted + turn
        dx, dy = math.cos(angle), -math.sin(angle)
        elbow = (note.at[0] + distance * dx, note.at[1] + distance * dy)
        box = _box_at(elbow, (dx, dy), width, height, shoulder)
        within = box[0] >= EDGE and box[2] <= sheet.width - EDGE
        if within and box[1] >= sheet.ceiling:
            yield _Place(box, elbow, cost)


def _box_at(elbow: Point, way: Point, width: float, height: float, shoulder: float) -> Box:
    """The box of words at a leader's end: beside it, or over or under it where it is steep."""
    x, y = elbow
    if abs(way[0]) < _STEEP:
        left = x - width / 2.0
        top = y - height - RIM if way[1] < 0.0 else y + RIM
    else:
        left = x + shoulder + RIM if way[0] > 0.0 else x - shoulder - RIM - width
        top = y - height / 2.0
    return left, top, left + width, top + height


def _outside(sheet: Sheet, note: Note) -> _Place:
    """A place under or over everything, for the note that found no other.

    The first to which the leader crosses no words; where it would to each, the first of all.
    """
    places = list(_rows_outside(sheet, note))
    kept = (place for place in places if not sheet.room.words_crossed(note.at, place.elbow))
    return next(kept, places[0])


def _rows_outside(sheet: Sheet, note: Note) -> Iterator[_Place]:
    width, height = _size(note)
    _, top, _, bottom = sheet.extent()
    last = max(sheet.width - EDGE - width, EDGE)
    for below in (True, False):
        elbow_y = bottom + 2.0 if below else top - 2.0
        level = elbow_y + RIM if below else elbow_y - RIM - height
        for share in _SHIFTS:
            elbow_x = min(max(note.at[0] + share * sheet.width, EDGE), sheet.width - EDGE)
            left = min(max(elbow_x - width / 2.0, EDGE), last)
            yield _Place((left, level, left + width, level + height), (elbow_x, elbow_y), 0.0)


def _write(sheet: Sheet, note: Note, box: Box) -> None:
    for number, line in enumerate(note.lines):
        base = box[1] + ABOVE * TEXT + number * LEADING
        sheet.write(Words(line, (box[0], base), TEXT, note.bold))


def _lead(sheet: Sheet, note: Note, place: _Place) -> None:
    chain = [note.at, place.elbow]
    x, y = place.elbow
    if y > place.box[1] and y < place.box[3]:
        chain.append((x + _SHOULDER if x < place.box[0] else x - _SHOULDER, y))
    sheet.line(chain, "thin")
    if note.end == "arrow":
        sheet.arrowhead(note.at, (note.at[0] - x, note.at[1] - y))
    else:
        sheet.dot(note.at)
