"""What both set-up drawings have alike: table, stacks with their sizes, the text along a plate."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from halfangle_service.trade.drawing.marks import ABOVE_AND_BELOW, TEXT, Point, Words
from halfangle_service.trade.drawing.metrics import BELOW, text_width
from halfangle_service.trade.drawing.sheet import EDGE, Sheet, View
from halfangle_service.trade.set_up_drawing.ladder import draw_ladder, ladder_width
from halfangle_service.trade.units import Units
from halfangle_service.trade.wording import block, length


@dataclass(frozen=True, slots=True)
class Stack:
    """Blocks from the bottom up on a seat; `name` heads their sizes; `width` and lengths in a unit.

    `left`: their sizes are written to the left of it, in the plane. Not `told`: which blocks they
    are is not known, and the one size is the height.
    """

    name: str
    sizes: tuple[float, ...]
    middle: float
    seat: float
    width: float
    units: Units
    left: bool = False
    told: bool = True

    @property
    def heading(self) -> str:
        """Name and height; nothing where the blocks are not known."""
        return f"{self.name} {block(sum(self.sizes), self.units)}" if self.told else ""

    @property
    def figures(self) -> list[str]:
        """Sizes from the top down; name and height where the blocks are not known."""
        if not self.told:
            return [f"{self.name} {length(sum(self.sizes), self.units)}"]
        return [block(size, self.units) for size in reversed(self.sizes)]

    @property
    def edge(self) -> float:
        """X of the side beside which the sizes stand."""
        return self.middle + (-0.5 if self.left else 0.5) * self.width

    def outlines(self) -> list[list[Point]]:
        """Outlines of the blocks from the bottom up."""
        found, seat = [], self.seat
        left, right = self.middle - self.width / 2.0, self.middle + self.width / 2.0
        for size in self.sizes:
            top = seat + size
            found.append([(left, seat), (right, seat), (right, top), (left, top)])
            seat = top
        return found

    def draw(self, sheet: Sheet, view: View) -> None:
        """Draw the blocks."""
        for outline in self.outlines():
            sheet.polygon(view.all(outline), "block")

    def write_sizes(self, sheet: Sheet, view: View, end: float) -> None:
        """Write the sizes beside the blocks; their leaders run level to the plate's `end`."""
        middles = [(low[1] + high[1]) / 2.0 for low, _, high, _ in reversed(self.outlines())]
        levels = [view.at((0.0, middle))[1] for middle in middles]
        edge = view.at((self.edge, 0.0))[0]
        left, knee = self.left != view.mirrored, view.at((end, 0.0))[0]
        draw_ladder(sheet, levels, self.figures, (edge, knee), self.heading, left=left)

    def overflow(self, sheet: Sheet, view: View, end: float) -> tuple[float, float]:
        """How far the sizes would lie past the sheet's left and right edge."""
        side = (min if self.left else max)(self.edge, end)
        edge, wide = view.at((side, 0.0))[0], ladder_width(self.figures, self.heading)
        if self.left != view.mirrored:
            return EDGE - (edge - wide), -math.inf
        return -math.inf, edge + wide - (sheet.width - EDGE)


def write_along(sheet: Sheet, words: str, start: Point, end: Point, off: float) -> bool:
    """Write words in the middle of a body along a line, `off` it to its upper side; False: no room.

    `off`: how thick the body is there, in millimetres on paper.
    """
    if start[0] > end[0]:
        start, end = end, start
    length = math.hypot(end[0] - start[0], end[1] - start[1])
    if off < ABOVE_AND_BELOW + 1.0 or text_width(words, TEXT) > 0.8 * length:
        return False
    along = ((end[0] - start[0]) / length, (end[1] - start[1]) / length)
    over = (along[1], -along[0])
    lift = (off - ABOVE_AND_BELOW) / 2.0 + BELOW * TEXT
    begin = (length - text_width(words, TEXT)) / 2.0
    at = (
        start[0] + begin * along[0] + lift * over[0],
        start[1] + begin * along[1] + lift * over[1],
    )
    turn = math.degrees(math.atan2(-along[1], along[0]))
    laid = Words(words, at, TEXT, turn_degrees=round(turn, 3))
    if not sheet.room.all_free(laid.boxes()):
        return False
    sheet.write(laid)
    return True


def middle_of(points: Sequence[Point]) -> Point:
    """The middle of an outline's corners."""
    return sum(x for x, _ in points) / len(points), sum(y for _, y in points) / len(points)
