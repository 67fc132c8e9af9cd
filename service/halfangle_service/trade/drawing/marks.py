"""What a sheet carries: lines, areas and words, in millimetres on paper, x to the right, y down."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Literal

from halfangle_service.trade.drawing.metrics import ABOVE, BELOW, text_width

Point = tuple[float, float]
#: Left, top, right, bottom.
Box = tuple[float, float, float, float]

#: Kinds of line (ISO 128-2): outlines thick, all else thin; hidden edges and things absent dashed,
#: axes chain, extreme positions and neighbours with two dots; `heavy` for what matters
#: most, `fine` and `dashed` for what is measured on a sheet of true size.
LineKind = Literal[
    "outline", "thin", "hidden", "axis", "phantom", "heavy", "fine", "dashed", "hatch"
]
WIDTHS: dict[LineKind, float] = {
    "outline": 0.5,
    "thin": 0.25,
    "hidden": 0.25,
    "axis": 0.25,
    "phantom": 0.25,
    "heavy": 0.9,
    "fine": 0.1,
    "dashed": 0.1,
    "hatch": 0.18,
}
#: Dashes and gaps.
DASHES: dict[LineKind, tuple[float, ...]] = {
    "hidden": (2.0, 1.2),
    "dashed": (1.6, 1.0),
    "axis": (6.0, 1.2, 0.8, 1.2),
    "phantom": (6.0, 1.2, 0.8, 1.2, 0.8, 1.2),
}

#: Tones: told apart in grey too, and never the only sign of anything.
Tone = Literal["paper", "pale", "metal", "work", "block", "wheel", "ink"]
TONES: dict[Tone, str] = {
    "paper": "#ffffff",
    "pale": "#f4f5f3",
    "metal": "#e3e6e8",
    "work": "#bccad8",
    "block": "#cfdcc6",
    "wheel": "#efe4c8",
    "ink": "#14202b",
}
INK = TONES["ink"]

#: Height of type: of words and figures, and of the heading.
TEXT, HEADING = 4.0, 4.8
#: Height of a line of words.
ABOVE_AND_BELOW = (ABOVE + BELOW) * TEXT
#: A figure stands so far above its dimension line: descenders clear it and its arrowheads.
BELOW_LINE = BELOW * TEXT + 0.8
#: Pieces in which a slanted line of words is kept free of others.
_PIECES = 12


@dataclass(frozen=True, slots=True)
class Stroke:
    """A chain of straight lines; an arc is one of short ones, of which `path` is the true form.

    Words keep clear of lines, but of hatching, which is interrupted for them.
    """

    points: tuple[Point, ...]
    kind: LineKind = "outline"
    path: str = ""


@dataclass(frozen=True, slots=True)
class Area:
    """A filled outline without a line of its own; an arrowhead, a dot, a body's tone."""

    points: tuple[Point, ...]
    tone: Tone = "pale"
    path: str = ""


@dataclass(frozen=True, slots=True)
class Words:
    """A line of text from the left end of its base line, turned counter-clockwise on the sheet."""

    text: str
    at: Point
    size: float = TEXT
    bold: bool = False
    turn_degrees: float = 0.0

    @property
    def width(self) -> float:
        """Width along the base line."""
        return text_width(self.text, self.size, bold=self.bold)

    def boxes(self) -> Iterator[Box]:
        """Upright boxes that together hold the words; one where they are level or upright."""
        pieces = 1 if self.turn_degrees % 90.0 == 0.0 else _PIECES
        step = self.width / pieces
        for place in range(pieces):
            yield around(self._corners(place * step, (place + 1) * step))

    def _corners(self, start: float, end: float) -> list[Point]:
        turn = math.radians(self.turn_degrees)
        cos, sin = math.cos(turn), math.sin(turn)
        x, y = self.at
        up, down = ABOVE * self.size, -BELOW * self.size
        return [
            (x + u * cos - v * sin, y - u * sin - v * cos)
            for u, v in ((start, up), (end, up), (start, down), (end, down))
        ]


def around(points: Sequence[Point]) -> Box:
    """The upright box around points."""
    xs, ys = [x for x, _ in points], [y for _, y in points]
    return min(xs), min(ys), max(xs), max(ys)


def grown(box: Box, by: float) -> Box:
    """A box with a rim."""
    return box[0] - by, box[1] - by, box[2] + by, box[3] + by


def in_file(value: float) -> str:
    """A length in the file's unit, a tenth of a millimetre, to a micrometre of paper."""
    return f"{10.0 * value + 0.0:.2f}".rstrip("0").rstrip(".")
