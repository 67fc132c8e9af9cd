"""A sheet and what is drawn on it, in millimetres on paper, x to the right and y down."""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field

from halfangle_service.trade.drawing.hatching import hatched
from halfangle_service.trade.drawing.marks import (
    Area,
    Box,
    LineKind,
    Point,
    Stroke,
    Tone,
    Words,
    around,
    in_file,
)
from halfangle_service.trade.drawing.room import Room
from halfangle_service.trade.drawing.scales import scale_within
from halfangle_service.trade.units import Units, to_mm

#: Width of a sheet unless a drawing says another: at 390 pixels its type is 10 pixels high.
WIDTH_MM = 150.0
#: Kept clear along the edges.
EDGE = 3.0
#: Arrowheads: length, and half of the width at the foot, for 24° between the sides.
ARROW, HALF_ARROW = 3.0, 3.0 * math.tan(math.radians(12.0))
#: An arrowhead on a heavy line.
_HEAVY_ARROW = 1.8
_DOT = 0.55
#: End of a leader that there is none of: words that stand beside their place.
BESIDE = "beside"
#: Degrees of arc between the points that stand for an arc where words look for room.
_ARC_STEP = 4.0


@dataclass(frozen=True, slots=True)
class View:
    """Where a plane of the part, x to the right and y up, lies on the sheet.

    `scale`: millimetres on paper for one unit of length; `origin`: the plane's (0, 0) on paper;
    `mirrored`: x to the left.
    """

    scale: float
    origin: Point
    mirrored: bool = False

    def at(self, point: Point) -> Point:
        """A point of the plane on paper."""
        sign = -1.0 if self.mirrored else 1.0
        return self.origin[0] + sign * self.scale * point[0], self.origin[1] - self.scale * point[1]

    def scale_to(self, units: Units) -> float:
        """Paper over part."""
        return self.scale / to_mm(1.0, units)

    def all(self, points: Iterable[Point]) -> list[Point]:
        """Points of the plane on paper."""
        return [self.at(point) for point in points]


@dataclass(frozen=True, slots=True)
class Note:
    """Words that stand for a place of the drawing; where they stand is found at the end.

    `toward`: the way, on paper, in which they would best stand off. `end`: what the leader ends in,
    an arrow on an outline and a dot within one; words that lie beside their place have none.
    `within`: an area in which they stand without a leader where they have room.
    """

    lines: tuple[str, ...]
    at: Point
    toward: Point
    end: str
    bold: bool
    within: tuple[Point, ...]


@dataclass
class Sheet:
    """Marks on a sheet of a width; its height is what the marks take.

    Outlines first, then dimensions, then notes: each looks for room among what is drawn before.
    """

    width: float = WIDTH_MM
    marks: list[Stroke | Area] = field(default_factory=list)
    texts: list[Words] = field(default_factory=list)
    notes: list[Note] = field(default_factory=list)
    room: Room = field(default_factory=Room)
    #: Notes stand no higher: what is over it belongs to another view.
    ceiling: float = -math.inf

    def view(
        self,
        window: Box,
        units: Units,
        tallest: float,
        margins: tuple[float, float] = (12.0, 12.0),
        scale: float | None = None,
        top: float = 0.0,
        *,
        mirrored: bool = False,
    ) -> View:
        """Place a window of the plane (left, bottom, right, top) between the margins.

        At the largest round scale that fits in so many millimetres of height, or at the one given
        (paper over part), centered; its upper edge at `top` on the sheet.
        """
        left, bottom, right, upper = window
        unit = to_mm(1.0, units)
        between = max(self.width - sum(margins), self.width / 8.0)
        if scale is None:
            room = min(between / max(right - left, 1e-9), tallest / max(upper - bottom, 1e-9))
            scale = scale_within(room / unit)
        per_unit = scale * unit
        start = margins[0] + (between - per_unit * (right - left)) / 2.0
        across = start + per_unit * right if mirrored else start - per_unit * left
        return View(per_unit, (across, top + per_unit * upper), mirrored)

    # Lines and areas.

    def line(
        self, points: Sequence[Point], kind: LineKind = "outline", *, closed: bool = False
    ) -> None:
        """A chain of straight lines."""
        chain = (*points, points[0]) if closed else tuple(points)
        self._stroke(Stroke(chain, kind))

    def polygon(
        self,
        points: Sequence[Point],
        tone: Tone | None = None,
        kind: LineKind | None = "outline",
        *,
        section: bool = False,
    ) -> None:
        """An outline with its tone; a `section` is hatched."""
        if tone is not None:
            self.marks.append(Area(tuple(points), tone))
        if section:
            self.marks += [Stroke(line, "hatch") for line in hatched(points)]
        if kind is not None:
            self.line(points, kind, closed=True)

    def circle(
        self, center: Point, radius: float, kind: LineKind = "outline", tone: Tone | None = None
    ) -> None:
        """A full circle."""
        path = _circle(center, radius)
        points = _round(center, radius, 0.0, 360.0)
        if tone is not None:
            self.marks.append(Area(points, tone, path))
        self._stroke(Stroke(points, kind, path))

    def arc(
        self, center: Point, radius: float, start: float, end: float, kind: LineKind = "thin"
    ) -> None:
        """An arc from one direction counter-clockwise to another, in degrees from the right."""
        points = _round(center, radius, start, end)
        (x, y), (to_x, to_y) = points[0], points[-1]
        r, large = in_file(radius), int(end - start > 180.0)
        path = f"M{in_file(x)} {in_file(y)}A{r} {r} 0 {large} 0 {in_file(to_x)} {in_file(to_y)}"
        self._stroke(Stroke(points, kind, path))

    def arrowhead(self, tip: Point, way: Point, times: float = 1.0) -> None:
        """A filled arrowhead whose tip points in a way, so many `times` the usual size."""
        length = math.hypot(*way) or 1.0
        ux, uy = times * way[0] / length, times * way[1] / length
        foot = (tip[0] - ARROW * ux, tip[1] - ARROW * uy)
        across = (-HALF_ARROW * uy, HALF_ARROW * ux)
        corners = (
            tip,
            (foot[0] + across[0], foot[1] + across[1]),
            (foot[0] - across[0], foot[1] - across[1]),
        )
        self.marks.append(Area(corners, "ink"))
        self.room.take_head(around(corners))

    def dot(self, center: Point, radius: float = _DOT) -> None:
        """A filled dot."""
        (x, y), r = center, radius
        box = (x - r, y - r, x + r, y + r)
        self.marks.append(Area(((x - r, y - r), (x + r, y + r)), "ink", _circle(center, radius)))
        self.room.take_head(box)

    def arrow(self, start: Point, end: Point, kind: LineKind = "outline") -> None:
        """A line with an arrowhead at its end."""
        times = _HEAVY_ARROW if kind == "heavy" else 1.0
        along = (end[0] - start[0], end[1] - start[1])
        # The line ends within the head, so that the head's tip is sharp.
        short = min(0.5, 0.5 * times * ARROW / (math.hypot(*along) or 1.0))
        self.line([start, (end[0] - short * along[0], end[1] - short * along[1])], kind)
        self.arrowhead(end, along, times)

    def _stroke(self, stroke: Stroke) -> None:
        self.marks.append(stroke)
        self.room.take_line(stroke.points)

    # Words.

    def write(self, words: Words) -> None:
        """Words where they are said to stand."""
        self.texts.append(words)
        for box in words.boxes():
            self.room.take_words(box)

    def note(
        self,
        words: str | Sequence[str],
        at: Point,
        toward: Point = (1.0, -1.0),
        end: str = "arrow",
        *,
        bold: bool = False,
        within: Sequence[Point] = (),
    ) -> None:
        """Words for a place, set where there is room once all else is drawn."""
        lines = (words,) if isinstance(words, str) else tuple(words)
        self.notes.append(Note(lines, at, toward, end, bold, tuple(within)))

    def name(self, words: str, corners: Sequence[Point], toward: Point = (1.0, -1.0)) -> None:
        """The name of a body: within its outline where there is room, else beside it."""
        count = len(corners)
        middle = (sum(x for x, _ in corners) / count, sum(y for _, y in corners) / count)
        self.note(words, middle, toward, "dot", within=corners)

    def extent(self) -> Box:
        """The box around all that is drawn."""
        boxes = [around(mark.points) for mark in self.marks]
        boxes += [box for words in self.texts for box in words.boxes()]
        lefts, tops, rights, bottoms = zip(*boxes, strict=True)
        return min(lefts), min(tops), max(rights), max(bottoms)


def _round(center: Point, radius: float, start: float, end: float) -> tuple[Point, ...]:
    """Points along an arc, counter-clockwise on the sheet."""
    steps = max(2, math.ceil((end - start) / _ARC_STEP))
    turns = (math.radians(start + (end - start) * k / steps) for k in range(steps + 1))
    return tuple(
        (center[0] + radius * math.cos(turn), center[1] - radius * math.sin(turn)) for turn in turns
    )


def _circle(center: Point, radius: float) -> str:
    """Path of a full circle: two halves."""
    r, across = in_file(radius), in_file(2.0 * radius)
    start = f"M{in_file(center[0] - radius)} {in_file(center[1])}"
    return f"{start}a{r} {r} 0 1 0 {across} 0a{r} {r} 0 1 0 -{across} 0Z"
