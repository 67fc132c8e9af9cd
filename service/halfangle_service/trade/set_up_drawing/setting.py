"""The set-up drawing: one view, or two of a compound plate, each to scale."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from halfangle_service.trade.drawing.dimensions import angle_dimension
from halfangle_service.trade.drawing.marks import HEADING, TEXT, Box, Point, Words, around
from halfangle_service.trade.drawing.metrics import cut
from halfangle_service.trade.drawing.notes import settle
from halfangle_service.trade.drawing.sheet import EDGE, WIDTH_MM, Sheet, View
from halfangle_service.trade.drawing.stage import draw_table
from halfangle_service.trade.drawing.svg import Scale, svg_of
from halfangle_service.trade.set_up_drawing.plate import PlateOnStacks, Standing, standing
from halfangle_service.trade.set_up_drawing.stacks import (
    Stack,
    middle_of,
    write_along,
)
from halfangle_service.trade.set_up_drawing.work import Piece, Work, placed
from halfangle_service.trade.units import Units
from halfangle_service.trade.wording import degrees, figure

#: Names of the stacks.
HIGH, LOW = "High stack", "Low stack"
UNITS_IN_WORDS: dict[Units, str] = {"in": "Lengths in inches.", "mm": "Lengths in millimetres."}
TALLEST = 92.0
#: Radii of the angle's arc that are tried, as parts of the center distance.
_RADII = (0.62, 0.54, 0.46, 0.38, 0.3, 0.23, 0.17, 0.12)
_USUAL = "What was not stated of plate and work is drawn as usual."


@dataclass(frozen=True, slots=True)
class SetUpView:
    """One plate on its stacks, with the work on it; `title` names the view where there are two.

    `tolerance_arcsec`: to what second the angle is written. A plate that raises its left or front
    is drawn the other way round, as it is seen.
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
    tallest: float = TALLEST,
    headed: bool = True,
) -> str:
    """Draw one view of a set-up, or both tilts of a compound plate, one under the other.

    `lines` stand under the title; `width` of the sheet in millimetres, `tallest` the most
    height that what is drawn in a view takes without its words; all views have one scale.
    """
    sheet = Sheet(width=width)
    scale = min(_scale(sheet, view, units, tallest) for view in views)
    top = 0.0
    for view in views:
        top = _draw(sheet, view, units, scale, top)
    said = [*lines, UNITS_IN_WORDS[units]]
    if not all(view.plate.sizes_stated for view in views):
        said.append(_USUAL)
    return svg_of(sheet, title, said, scale=Scale(scale, units), headed=headed)


@dataclass(frozen=True, slots=True)
class _Scene:
    """Everything of a view in the plane of the tilt."""

    view: SetUpView
    plate: Standing
    stacks: tuple[Stack, ...]
    piece: Piece | None
    units: Units

    @property
    def mirrored(self) -> bool:
        """True where the side that is raised is seen at the left."""
        return self.view.plate.raised in ("left", "front")

    @property
    def window(self) -> Box:
        """What must fit: bodies, rolls, stacks and work."""
        points = [*self.plate.body, (0.0, 0.0)]
        for (x, y), radius in self.rolls:
            points += [(x - radius, y - radius), (x + radius, y + radius)]
        points += [point for stack in self.stacks for one in stack.outlines() for point in one]
        if self.piece is not None:
            points += self.leveled([*self.piece.outline, *self.piece.holding])
        return around(points)

    @property
    def rolls(self) -> tuple[tuple[Point, float], tuple[Point, float]]:
        """Centers and radii."""
        plate = self.plate
        return (plate.low_roll, plate.low_radius), (plate.high_roll, plate.high_radius)

    def leveled(self, points: Sequence[Point]) -> list[Point]:
        """From the plate's frame to the plane's."""
        return [self.plate.at(*point) for point in points]


def _scene(view: SetUpView, units: Units) -> _Scene:
    plate, stands = view.plate, standing(view.plate)
    (high, _), (low, _) = stands.high_roll, stands.low_roll
    wide, narrow = 1.2 * stands.high_radius, 1.2 * stands.low_radius
    stacks = (
        Stack(HIGH, plate.high, high, 0.0, wide, units),
        Stack(LOW, plate.low, low, plate.base_step, narrow, units, left=True),
    )
    piece = None
    if view.work is not None:
        piece = placed(view.work, stands.turn, plate.center_distance)
    return _Scene(view, stands, tuple(s for s in stacks if s.sizes), piece, units)


def _placed(
    sheet: Sheet, scene: _Scene, scale: float | None, top: float, tallest: float = TALLEST
) -> View:
    """Place the view so that the sizes beside its stacks have room, too."""
    left = right = 6.0
    for _ in range(12):
        view = sheet.view(
            scene.window,
            scene.units,
            tallest,
            (left, right),
            scale,
            top,
            mirrored=scene.mirrored,
        )
        ends = [x for x, _ in scene.plate.body]
        past = [
            stack.overflow(sheet, view, min(ends) if stack.left else max(ends))
            for stack in scene.stacks
        ]
        over_left = max((at_left for at_left, _ in past), default=0.0)
        over_right = max((at_right for _, at_right in past), default=0.0)
        if max(over_left, over_right) <= 0.0:
            break
        left, right = left + max(over_left, 0.0), right + max(over_right, 0.0)
    return view


def _scale(sheet: Sheet, view: SetUpView, units: Units, tallest: float) -> float:
    return _placed(sheet, _scene(view, units), None, 0.0, tallest).scale_to(units)


def _draw(sheet: Sheet, view: SetUpView, units: Units, scale: float, top: float) -> float:
    """Draw one view below what is drawn; gives where the next one begins."""
    scene = _scene(view, units)
    if view.title:
        words = cut(view.title, HEADING, sheet.width - 2.0 * EDGE, bold=True)
        sheet.write(Words(words, (EDGE, top + HEADING), HEADING, bold=True))
        sheet.ceiling = top + 1.5 * HEADING
        top += 4.0 * HEADING
    on_paper = _placed(sheet, scene, scale, top)
    _draw_bodies(sheet, scene, on_paper)
    _write_sizes(sheet, scene, on_paper)
    _draw_angle(sheet, scene, on_paper)
    _name(sheet, scene, on_paper)
    settle(sheet)
    return sheet.extent()[3] + 10.0


def _draw_bodies(sheet: Sheet, scene: _Scene, view: View) -> None:
    plate, stated = scene.plate, scene.view.plate
    draw_table(sheet, view, *_table_ends(scene), 0.0)
    if stated.base_step > 0.0:
        half = 1.2 * plate.low_radius
        seat = [(-half, 0.0), (half, 0.0), (half, stated.base_step), (-half, stated.base_step)]
        sheet.polygon(view.all(seat), "metal")
    for stack in scene.stacks:
        stack.draw(sheet, view)
    if scene.piece is not None:
        _draw_piece(sheet, scene, scene.piece, view)
    sheet.polygon(view.all(plate.body), "metal")
    for center, radius in scene.rolls:
        sheet.circle(view.at(center), view.scale * radius, "outline", "paper")
    sheet.line(view.all([plate.low_roll, plate.high_roll]), "axis")


def _table_ends(scene: _Scene) -> tuple[float, float]:
    """The table ends a little past the stacks, so that their sizes may stand lower than it."""
    ends = [stack.middle + sign * stack.width for stack in scene.stacks for sign in (-1.0, 1.0)]
    for (x, _), radius in scene.rolls:
        ends += [x - 1.6 * radius, x + 1.6 * radius]
    return min(ends), max(ends)


def _draw_piece(sheet: Sheet, scene: _Scene, piece: Piece, view: View) -> None:
    """The work, what holds it, its axis, and the line or face that is ground, level."""
    if piece.holding:
        sheet.polygon(view.all(scene.leveled(piece.holding)), "pale", "phantom")
    sheet.polygon(view.all(scene.leveled(piece.outline)), "work")
    if piece.axis is not None:
        sheet.line(view.all(scene.leveled(piece.axis)), "axis")
    sheet.line(view.all(scene.leveled(piece.ground)), "heavy")


def _write_sizes(sheet: Sheet, scene: _Scene, view: View) -> None:
    """The sizes of the blocks beside their stacks, past the plate's ends."""
    ends = [x for x, _ in scene.plate.body]
    for stack in scene.stacks:
        stack.write_sizes(sheet, view, min(ends) if stack.left else max(ends))


def _draw_angle(sheet: Sheet, scene: _Scene, view: View) -> None:
    """The plate's angle at the low roll's center, over a level line through it."""
    plate, stated = scene.plate, scene.view.plate
    vertex, turn = view.at(plate.low_roll), math.degrees(plate.turn)
    sign = -1.0 if view.mirrored else 1.0
    sheet.line(
        [vertex, (vertex[0] + sign * 0.7 * view.scale * plate.high_roll[0], vertex[1])], "thin"
    )
    words = degrees(math.degrees(stated.angle_rad), scene.view.tolerance_arcsec)
    start, end = (180.0 - turn, 180.0) if view.mirrored else (0.0, turn)
    radii = [share * view.scale * stated.center_distance for share in _RADII]
    angle_dimension(sheet, vertex, start, end, words, radii)


def _name(sheet: Sheet, scene: _Scene, view: View) -> None:
    """Notes: the rolls, the distance of their centers, the raised side, the work."""
    plate, stated = scene.plate, scene.view.plate
    outward = 1.0 if view.mirrored else -1.0
    low, high = view.all([plate.low_roll, plate.high_roll])
    between = f"{figure(stated.center_distance, scene.units)} between centers"
    if not write_along(sheet, between, low, high, view.scale * plate.thickness):
        middle = view.at(plate.at(0.3 * stated.center_distance, -plate.thickness))
        sheet.note(between, middle, (outward, 1.0), "dot")
    sheet.note("hinge" if stated.hinged else "low roll", low, (outward, 0.3), "dot")
    if stated.raised:
        end = view.at(plate.at(plate.length - plate.before, -plate.thickness / 2.0))
        sheet.note(f"raised: {stated.raised}", end, (-0.3 * outward, -1.0), "arrow", bold=True)
    work = scene.view.work
    if work is not None and scene.piece is not None:
        (x, y), (to_x, to_y) = view.all(scene.leveled(scene.piece.ground))
        ground = (x + 0.15 * (to_x - x), y + 0.15 * (to_y - y))
        sheet.note("level under the wheel", ground, (outward, -0.7), "arrow")
        room = 0.5 * sheet.width
        lines = [cut(line, TEXT, room) for line in (work.name, work.mark) if line]
        outline = view.all(scene.leveled(scene.piece.outline))
        sheet.note(lines, middle_of(outline), (-outward, -1.0), "dot")
