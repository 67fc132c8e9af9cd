"""The set-up drawing: one view, or two of a compound plate, each to scale."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from halfangle_service.trade.drawing.dimensions import angle_dimension
from halfangle_service.trade.drawing.marks import HEADING, Box, Point, Words, around
from halfangle_service.trade.drawing.metrics import cut
from halfangle_service.trade.drawing.notes import settle
from halfangle_service.trade.drawing.sheet import EDGE, WIDTH_MM, Sheet, View
from halfangle_service.trade.drawing.svg import svg_of
from halfangle_service.trade.set_up_drawing.ladder import draw_ladder, ladder_width
from halfangle_service.trade.set_up_drawing.plate import (
    PlateOnStacks,
    Standing,
    blocks,
    standing,
)
from halfangle_service.trade.set_up_drawing.work import Piece, Work, placed
from halfangle_service.trade.units import Units, to_mm
from halfangle_service.trade.wording import block, degrees, figure

_UNITS: dict[Units, str] = {"in": "inches", "mm": "millimetres"}
_TALLEST = 95.0
#: Names of the stacks.
HIGH, LOW = "High stack", "Low stack"
_USUAL = "Plate, rolls or work not stated are drawn as usual."


@dataclass(frozen=True, slots=True)
class SetUpView:
    """One plate on its stacks, with the work on it; `title` names the view where there are two.

    `tolerance_arcsec`: to what second the angle is written.
    """

    plate: PlateOnStacks
    work: Work | None = None
    title: str = ""
    tolerance_arcsec: float = 0.0


def set_up_svg(
    views: Sequence[SetUpView],
    units: Units,
    *,
    title: str = "Set-up",
    lines: Sequence[str] = (),
    width: float = WIDTH_MM,
    headed: bool = True,
) -> str:
    """Draw one view of a set-up, or both tilts of a compound plate, one under the other.

    `lines` stand under the title; `width` of the sheet in millimetres; all views have one scale.
    """
    sheet = Sheet(width=width)
    scale, top = None, 0.0
    for view in views:
        scale, top = _draw(sheet, view, units, scale, top)
    said = [*lines, f"Lengths in {_UNITS[units]}."]
    if not all(view.plate.sizes_stated for view in views):
        said.append(_USUAL)
    ratio = None if scale is None else (scale, units)
    return svg_of(sheet, title, said, scale=ratio, headed=headed)


@dataclass(frozen=True, slots=True)
class _Scene:
    """Everything of a view in the plane of the tilt."""

    view: SetUpView
    plate: Standing
    high: list[tuple[float, list[Point]]]
    low: list[tuple[float, list[Point]]]
    piece: Piece | None
    units: Units

    @property
    def window(self) -> Box:
        """What must fit: bodies, rolls, stacks and work."""
        points = [*self.plate.body]
        for (x, y), radius in (
            (self.plate.low_roll, self.plate.low_radius),
            (self.plate.high_roll, self.plate.high_radius),
        ):
            points += [(x - radius, y - radius), (x + radius, y + radius)]
        for _, outline in (*self.high, *self.low):
            points += outline
        if self.piece is not None:
            points += self.leveled([*self.piece.outline, *self.piece.holding])
        points.append((0.0, 0.0))
        return around(points)

    def leveled(self, points: Sequence[Point]) -> list[Point]:
        """From the plate's frame to the plane's."""
        return [self.plate.at(*point) for point in points]

    def heading(self, which: str, sizes: Sequence[float]) -> str:
        """Name and height of a stack."""
        return f"{which} {block(sum(sizes), self.units)}"

    def ladders(self) -> tuple[float, float]:
        """Widths that the sizes beside low and high stack take."""
        low, high = self.view.plate.low, self.view.plate.high
        return (
            ladder_width(self.figures(low), self.heading(LOW, low)) if low else 0.0,
            ladder_width(self.figures(high), self.heading(HIGH, high)) if high else 0.0,
        )

    def figures(self, sizes: Sequence[float]) -> list[str]:
        """Sizes of blocks, from the top down."""
        return [block(size, self.units) for size in reversed(sizes)]


def _scene(view: SetUpView, units: Units) -> _Scene:
    plate = view.plate
    stands = standing(plate)
    high = blocks(plate.high, stands.high_roll[0], 0.0, 1.2 * stands.high_radius)
    low = blocks(plate.low, stands.low_roll[0], plate.base_step, 1.2 * stands.low_radius)
    piece = None
    if view.work is not None:
        piece = placed(view.work, stands.turn, plate.center_distance)
    return _Scene(view, stands, high, low, piece, units)


def _placed(sheet: Sheet, scene: _Scene, scale: float | None, top: float) -> View:
    """Place the view so that the sizes beside its stacks have room, too."""
    left = right = 6.0
    wide_low, wide_high = scene.ladders()
    plate = scene.plate
    for _ in range(4):
        view = sheet.view(scene.window, scene.units, _TALLEST, (left, right), scale, top)
        end = view.at((plate.high_roll[0] + 0.6 * plate.high_radius, 0.0))[0] + wide_high
        start = view.at((plate.low_roll[0] - 0.6 * plate.low_radius, 0.0))[0] - wide_low
        over, under = end - (sheet.width - EDGE), EDGE - start
        if max(over, under) <= 0.0:
            break
        right, left = right + max(over, 0.0), left + max(under, 0.0)
    return view


def _draw(
    sheet: Sheet, view: SetUpView, units: Units, scale: float | None, top: float
) -> tuple[float, float]:
    """Draw one view below what is drawn; gives the scale, and where the next one begins."""
    scene = _scene(view, units)
    if view.title:
        words = cut(view.title, HEADING, sheet.width - 2.0 * EDGE, bold=True)
        sheet.write(Words(words, (EDGE, top + HEADING), HEADING, bold=True))
        top += 2.5 * HEADING
    on_paper = _placed(sheet, scene, scale, top)
    _draw_bodies(sheet, scene, on_paper)
    _draw_stacks(sheet, scene, on_paper)
    _draw_angle(sheet, scene, on_paper)
    _name(sheet, scene, on_paper)
    settle(sheet)
    return on_paper.scale / to_mm(1.0, units), sheet.extent()[3] + 10.0


def _draw_bodies(sheet: Sheet, scene: _Scene, view: View) -> None:
    plate, stated = scene.plate, scene.view.plate
    left, _, right, _ = scene.window
    draw_table(sheet, view.at((left, 0.0)), view.at((max(right, 0.0), 0.0))[0])
    if stated.base_step > 0.0:
        half = 1.2 * plate.low_radius
        seat = [(-half, 0.0), (half, 0.0), (half, stated.base_step), (-half, stated.base_step)]
        sheet.polygon(view.all(seat), "metal")
    for _, outline in (*scene.high, *scene.low):
        sheet.polygon(view.all(outline), "block")
    if scene.piece is not None:
        _draw_piece(sheet, scene, scene.piece, view)
    sheet.polygon(view.all(plate.body), "metal")
    for center, radius in (
        (plate.low_roll, plate.low_radius),
        (plate.high_roll, plate.high_radius),
    ):
        sheet.circle(view.at(center), view.scale * radius, "outline", "paper")
    sheet.line(view.all([plate.low_roll, plate.high_roll]), "axis")


def _draw_piece(sheet: Sheet, scene: _Scene, piece: Piece, view: View) -> None:
    """The work, what holds it, its axis, and the line or face that is ground, level."""
    if piece.holding:
        sheet.polygon(view.all(scene.leveled(piece.holding)), "pale", "phantom")
    sheet.polygon(view.all(scene.leveled(piece.outline)), "work")
    if piece.axis is not None:
        sheet.line(view.all(scene.leveled(piece.axis)), "axis")
    start, end = view.all(scene.leveled(piece.ground))
    sheet.line([start, end], "heavy")


def draw_table(sheet: Sheet, start: Point, right: float) -> None:
    """The surface that everything stands on: a line, hatched under it."""
    (left, level), depth = start, 2.2
    under = level + depth
    corners = [(left, level), (right, level), (right, under), (left, under)]
    sheet.polygon(corners, None, None, section=True)
    sheet.line([(left, level), (right, level)], "outline")


def _draw_stacks(sheet: Sheet, scene: _Scene, view: View) -> None:
    """The sizes of the blocks, beside their stacks."""
    plate, stated = scene.plate, scene.view.plate
    sides = (
        (scene.high, stated.high, HIGH, plate.high_roll[0] + 0.6 * plate.high_radius, False),
        (scene.low, stated.low, LOW, plate.low_roll[0] - 0.6 * plate.low_radius, True),
    )
    for outlines, sizes, which, edge, left in sides:
        if sizes:
            middles = [(low[1] + high[1]) / 2.0 for _, (low, _, high, _) in reversed(outlines)]
            draw_ladder(
                sheet,
                [view.at((0.0, middle))[1] for middle in middles],
                scene.figures(sizes),
                view.at((edge, 0.0))[0],
                scene.heading(which, sizes),
                view.at((0.0, 0.0))[1],
                left=left,
            )


def _draw_angle(sheet: Sheet, scene: _Scene, view: View) -> None:
    """The plate's angle at the low roll's center, over a level line through it."""
    plate, stated = scene.plate, scene.view.plate
    vertex = view.at(plate.low_roll)
    turn = math.degrees(plate.turn)
    radius = 0.62 * view.scale * stated.center_distance
    sheet.line([vertex, (vertex[0] + radius + 3.0, vertex[1])], "thin")
    words = degrees(math.degrees(stated.angle_rad), scene.view.tolerance_arcsec)
    angle_dimension(sheet, vertex, 0.0, turn, words, radius)


def _name(sheet: Sheet, scene: _Scene, view: View) -> None:
    """Notes: the rolls, the distance of their centers, the raised side, the work."""
    plate, stated = scene.plate, scene.view.plate
    middle = view.at(plate.at(0.3 * stated.center_distance, -plate.thickness))
    between = f"{figure(stated.center_distance, scene.units).split()[0]} between centers"
    sheet.note(between, middle, (-0.3, 1.0), "dot")
    low = "hinge" if stated.hinged else "low roll"
    sheet.note(low, view.at(plate.low_roll), (-1.0, 0.3), "dot")
    if stated.raised:
        end = view.at(plate.at(plate.length - plate.before, -plate.thickness / 2.0))
        sheet.note(f"raised: {stated.raised}", end, (0.3, -1.0), "arrow", bold=True)
    work = scene.view.work
    if work is not None and scene.piece is not None:
        lines = (work.name, work.mark) if work.mark else (work.name,)
        sheet.note(lines, _middle(view.all(scene.leveled(scene.piece.outline))), (1.0, -1.0), "dot")
        start, end = view.all(scene.leveled(scene.piece.ground))
        middle = ((start[0] + end[0]) / 2.0, (start[1] + end[1]) / 2.0)
        sheet.note("level under the wheel", middle, (0.2, -1.0), "arrow")


def _middle(points: Sequence[Point]) -> Point:
    return sum(x for x, _ in points) / len(points), sum(y for _, y in points) / len(points)
