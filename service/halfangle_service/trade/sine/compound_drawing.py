"""The drawing of the sign conventions of a compound plate, as SVG.

`compound_drawing.svg` beside this module is its output, kept as package data for the docs; the
plates in it are turned by the same rotations that the answers are checked with.
"""

import math
from functools import cache

import numpy as np

from halfangle_service.trade.drawing.dimensions import angle_dimension
from halfangle_service.trade.drawing.marks import HEADING, TEXT, Point, Tone, Words
from halfangle_service.trade.drawing.sheet import Sheet, View
from halfangle_service.trade.drawing.svg import svg_of
from halfangle_service.trade.sine.compound import Matrix, Vector, plate_rotation

_WIDTH = 170.0
_BASE, _UPPER = 16.0, 18.0
#: Where the column of views begins, and how long their surfaces are.
_COLUMN, _LONG = 107.0, 42.0


@cache
def conventions_svg() -> str:
    """Draw axes, hinges, positive angles and slopes of a compound plate with its base along X."""
    sheet = Sheet(width=_WIDTH)
    _plates(sheet, View(20.5, (5.0, 80.0)))
    _view(sheet, "From the front: x_angle", "left", "right, +X", 22.0)
    _view(sheet, "From the right: y_angle", "front", "back, +Y", 58.0)
    _plan(sheet, 108.0)
    lines = [
        "Base hinge along X, upper along Y; both angles positive. A negative angle raises the "
        "other side: the left, or the front.",
    ]
    return svg_of(sheet, "Sign conventions of a compound sine plate", lines) + "\n"


def _project(point: Vector) -> Point:
    """Oblique view from the front right and above."""
    x, y, z = (float(c) for c in point)
    return x + 0.52 * y, z + 0.36 * y


def _plates(sheet: Sheet, view: View) -> None:
    """Both plates with positive hinge angles, their stacks, and the axes."""
    base = plate_rotation(math.radians(_BASE), 0.0, "x")
    both = plate_rotation(math.radians(_BASE), math.radians(_UPPER), "x")
    lift = base @ np.array([0.0, 0.0, 0.2])
    _slab(sheet, view, np.eye(3), np.array([0.0, 0.0, -0.2]), "paper")
    _stack(sheet, view, np.array([2.85, 1.85, -0.08]), base @ np.array([2.85, 1.85, 0.0]))
    _slab(sheet, view, base, np.zeros(3), "metal")
    head = lift + both @ np.array([2.8, 0.2, 0.0])
    _stack(sheet, view, base @ np.array([2.7, 0.2, 0.12]), head)
    _slab(sheet, view, both, lift, "work")

    def at(point: Vector) -> Point:
        return view.at(_project(point))

    sheet.note("base hinge: along X, at the front", at(np.array([0.8, 0.0, -0.1])), (0.0, 1.0))
    sheet.note("upper hinge: along Y", at(lift + both @ np.array([0.0, 1.2, 0.0])), (-0.4, -1.0))
    sheet.note(
        ["upper +:", "raises the right"], at(lift + both @ np.array([3.0, 1.0, 0.1])), (1.0, -0.4)
    )
    sheet.note(["base +:", "raises the back"], at(base @ np.array([3.0, 1.7, 0.05])), (1.0, 0.8))
    _axes(sheet, view)


def _slab(sheet: Sheet, view: View, rotation: Matrix, origin: Vector, tone: Tone) -> None:
    """A plate 3 long (X), 2 deep (Y) and 0.12 thick, turned about its front left edge."""
    deep, thick = 2.0, 0.12
    faces = (
        [(0, 0, 0), (3, 0, 0), (3, 0, thick), (0, 0, thick)],
        [(3, 0, 0), (3, deep, 0), (3, deep, thick), (3, 0, thick)],
        [(0, 0, thick), (3, 0, thick), (3, deep, thick), (0, deep, thick)],
    )
    for face in faces:
        corners = [_project(origin + rotation @ np.array(corner)) for corner in face]
        sheet.polygon(view.all(corners), tone)


def _stack(sheet: Sheet, view: View, foot: Vector, head: Vector) -> None:
    """A stack of blocks from a foot up to a head."""
    half = np.array([0.1, 0.0, 0.0])
    top = np.array([foot[0], foot[1], head[2]])
    corners = (foot - half, foot + half, top + half, top - half)
    sheet.polygon(view.all(_project(corner) for corner in corners), "block")


def _axes(sheet: Sheet, view: View) -> None:
    origin = np.array([4.0, -1.1, -0.35])
    for name, axis in (("X right", (0.6, 0, 0)), ("Y back", (0, 0.8, 0)), ("Z up", (0, 0, 0.6))):
        start, tip = (view.at(_project(end)) for end in (origin, origin + np.array(axis)))
        sheet.arrow(start, tip)
        sheet.note(name, tip, (tip[0] - start[0], tip[1] - start[1]), "beside")


def _view(sheet: Sheet, title: str, low: str, high: str, top: float) -> None:
    """One view of a surface that rises to the positive side."""
    _title(sheet, title, top - 16.0)
    x, y = _COLUMN, top + 6.0
    rise = _LONG * math.tan(math.radians(_BASE))
    sheet.polygon([(x, y), (x + _LONG, y - rise), (x + _LONG, y)], "work")
    sheet.line([(x, y), (x + _LONG + 6.0, y)], "thin")
    angle_dimension(sheet, (x, y), 0.0, _BASE, "+", [0.55 * _LONG, 0.62 * _LONG])
    sheet.write(Words(low, (x, y + 5.0), TEXT))
    sheet.note(high, (x + _LONG + 4.0, y), (0.0, 1.0), "beside")


def _plan(sheet: Sheet, top: float) -> None:
    """Plan with the direction toward which a surface rises."""
    _title(sheet, "Plan: direction", top - 24.0)
    x, y = _COLUMN, top + 8.0
    turn = math.radians(37.0)
    tip = (x + 30.0 * math.cos(turn), y - 30.0 * math.sin(turn))
    sheet.line([(x, y), (x + 36.0, y)], "thin")
    sheet.line([(x, y), (x, y - 22.0)], "thin")
    sheet.arrow((x, y), tip)
    angle_dimension(sheet, (x, y), 0.0, 37.0, "+", [16.0])
    sheet.note("+X", (x + 36.0, y), (1.0, 0.0), "beside")
    sheet.note("+Y", (x, y - 22.0), (0.0, -1.0), "beside")
    sheet.note("rises this way", tip, (1.0, -0.5), "beside")
    for number, line in enumerate(("Outward normal: its x and y", "point downhill.")):
        sheet.write(Words(line, (x, y + 7.0 + 5.2 * number), TEXT))


def _title(sheet: Sheet, words: str, base: float) -> None:
    sheet.write(Words(words, (_COLUMN, base), 0.9 * HEADING, bold=True))
