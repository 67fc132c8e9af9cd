"""The drawing of the sign conventions of a compound plate, as SVG.

`compound_drawing.svg` beside this module is its output, kept as package data for the docs; the
plates in it are turned by the same rotations that the answers are checked with.
"""

import math
from collections.abc import Sequence
from html import escape

import numpy as np

from halfangle_service.trade.sine.compound import Matrix, Vector, plate_rotation
from halfangle_service.trade.wording import plain

WIDTH, HEIGHT = 1120, 580
_INK, _BASE, _UPPER, _STACK, _ACCENT = "#1b2733", "#c9d6e2", "#e8d9b5", "#8fae8b", "#b3392f"
_STYLE = (
    f"text{{font-family:sans-serif;font-size:15px;fill:{_INK}}}"
    ".t{font-size:18px;font-weight:bold}"
    f".a{{fill:{_ACCENT};font-weight:bold}}"
    f"path,line,polygon{{stroke:{_INK};stroke-width:1.5;fill:none;stroke-linejoin:round}}"
    f".v{{stroke:{_ACCENT};stroke-width:2}}"
    ".d{stroke-dasharray:5 4}"
)
Point = tuple[float, float]


def conventions_svg() -> str:
    """Draw axes, hinges, positive angles and slopes of a compound plate with its base along X."""
    parts = [
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {WIDTH} {HEIGHT}" '
        f'width="{WIDTH}" height="{HEIGHT}" role="img" '
        'aria-label="Sign conventions of a compound sine plate">',
        f"<style>{_STYLE}</style>",
        '<defs><marker id="m" viewBox="0 0 10 10" refX="9" refY="5" markerWidth="8" '
        f'markerHeight="8" orient="auto"><path d="M0 0L10 5L0 10z" style="fill:{_ACCENT};'
        'stroke:none"/></marker></defs>',
        f'<rect width="{WIDTH}" height="{HEIGHT}" fill="white"/>',
        *_plates(),
        *_view("Front view: x_angle", "left", "right +X", "x_angle +", (790, 150)),
        *_view("Side view from the right: y_angle", "front", "back +Y", "y_angle +", (790, 330)),
        *_plan((810, 505)),
        "</svg>",
    ]
    return "\n".join(parts) + "\n"


def _project(point: Vector) -> Point:
    """Oblique view from the front right and above; one unit is 100 px."""
    x, y, z = (float(c) for c in point)
    return 110.0 + 100.0 * (x + 0.52 * y), 430.0 - 100.0 * (z + 0.36 * y)


def _plates() -> list[str]:
    """Both plates with positive hinge angles, their stacks, and the axes."""
    base = plate_rotation(math.radians(16), 0.0, "x")
    both = plate_rotation(math.radians(16), math.radians(18), "x")
    lift = base @ np.array([0.0, 0.0, 0.2])
    flat = np.eye(3)
    return [
        _text((40, 40), "Base hinge along X, upper along Y; both angles positive", "t"),
        _slab(flat, np.array([0.0, 0.0, -0.2]), "white"),
        _stack(np.array([2.85, 1.85, -0.08]), base @ np.array([2.85, 1.85, 0.0])),
        _slab(base, np.zeros(3), _BASE),
        _stack(base @ np.array([2.7, 0.2, 0.12]), lift + both @ np.array([2.8, 0.2, 0.0])),
        _slab(both, lift, _UPPER),
        *_axes(),
        _note((120, 480), "base hinge: along X, at the front"),
        _note((20, 262), "upper hinge: along Y"),
        _note((490, 205), "upper +: raises the right"),
        _note((530, 350), "base +: raises the back"),
        _text((40, 550), "A negative angle raises the other side: the left, or the front."),
    ]


def _slab(rotation: Matrix, origin: Vector, fill: str) -> str:
    """A plate 3 long (X), 2 deep (Y) and 0.12 thick, turned about its front left edge."""
    deep, thick = 2.0, 0.12
    faces = (
        [(0, 0, 0), (3, 0, 0), (3, 0, thick), (0, 0, thick)],
        [(3, 0, 0), (3, deep, 0), (3, deep, thick), (3, 0, thick)],
        [(0, 0, thick), (3, 0, thick), (3, deep, thick), (0, deep, thick)],
    )
    return "".join(
        _polygon([_project(origin + rotation @ np.array(corner)) for corner in face], fill)
        for face in faces
    )


def _stack(foot: Vector, head: Vector) -> str:
    """A stack of blocks from a foot up to a head."""
    half = np.array([0.1, 0.0, 0.0])
    top = np.array([foot[0], foot[1], head[2]])
    corners = (foot - half, foot + half, top + half, top - half)
    return _polygon([_project(corner) for corner in corners], _STACK)


def _axes() -> list[str]:
    origin = np.array([4.9, -1.1, -0.3])
    axes = (("X right", (0.8, 0, 0)), ("Y back", (0, 1.0, 0)), ("Z up", (0, 0, 0.8)))
    drawn = []
    for name, axis in axes:
        tip = _project(origin + np.array(axis))
        drawn += [_arrow(_project(origin), tip), _note((tip[0] + 6, tip[1] + 4), name)]
    return drawn


def _view(title: str, low: str, high: str, label: str, at: Point) -> list[str]:
    """One view of a surface that rises to the positive side."""
    x, y = at
    rise = 230.0 * math.tan(math.radians(16))
    return [
        _text((x - 20, y - 100), title, "t"),
        _line(at, (x + 240, y), "d"),
        _polygon([at, (x + 230, y - rise), (x + 230, y)], _UPPER),
        _arc(at, 120, 0, 16),
        _note((x + 126, y - 10), label),
        _text((x - 10, y + 24), low),
        _text((x + 190, y + 24), high),
    ]


def _plan(at: Point) -> list[str]:
    """Plan with the direction toward which a surface rises."""
    x, y = at
    tip = (x + 90 * math.cos(math.radians(37)), y - 90 * math.sin(math.radians(37)))
    return [
        _text((770, 400), "Plan: direction", "t"),
        _line(at, (x + 110, y), "d"),
        _line(at, (x, y - 70), "d"),
        _arrow(at, tip),
        _arc(at, 50, 0, 37),
        _note((x + 56, y - 14), "direction +"),
        _text((x + 116, y + 5), "+X"),
        _text((x - 10, y - 76), "+Y"),
        _text((tip[0] + 8, tip[1] - 2), "rises this way"),
        _text((770, y + 34), "Outward normal: its x and y point downhill."),
    ]


def _polygon(points: Sequence[Point], fill: str) -> str:
    corners = " ".join(f"{x:.1f},{y:.1f}" for x, y in points)
    return f'<polygon points="{corners}" style="fill:{fill}"/>'


def _line(start: Point, end: Point, name: str = "") -> str:
    (x1, y1), (x2, y2) = start, end
    return f'<line class="{name}" x1="{x1:.1f}" y1="{y1:.1f}" x2="{x2:.1f}" y2="{y2:.1f}"/>'


def _arrow(start: Point, end: Point) -> str:
    (x1, y1), (x2, y2) = start, end
    return f'<path class="v" d="M{x1:.1f} {y1:.1f}L{x2:.1f} {y2:.1f}" marker-end="url(#m)"/>'


def _arc(center: Point, radius: float, first_degrees: float, last_degrees: float) -> str:
    """An arc with an arrow, counter-clockwise on the page."""
    (x, y), ends = center, []
    for degrees in (first_degrees, last_degrees):
        angle = math.radians(degrees)
        ends.append((x + radius * math.cos(angle), y - radius * math.sin(angle)))
    (x1, y1), (x2, y2) = ends
    return (
        f'<path class="v" d="M{x1:.1f} {y1:.1f}A{plain(radius)} {plain(radius)} 0 0 0 '
        f'{x2:.1f} {y2:.1f}" '
        'marker-end="url(#m)"/>'
    )


def _text(at: Point, words: str, name: str = "") -> str:
    return f'<text class="{name}" x="{at[0]:.1f}" y="{at[1]:.1f}">{escape(words)}</text>'


def _note(at: Point, words: str) -> str:
    return _text(at, words, "a")
