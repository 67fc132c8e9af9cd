"""A center in its hole, and a center hole with its ball, in section and to scale.

Lengths in one unit, angles in radians; the axis stands upright, the mouth up.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from halfangle_service.trade.centers.contact import Contact
from halfangle_service.trade.drawing.dimensions import dimension
from halfangle_service.trade.drawing.marks import Point
from halfangle_service.trade.drawing.sheet import Sheet, View
from halfangle_service.trade.drawing.svg import Scale, svg_of
from halfangle_service.trade.units import Units
from halfangle_service.trade.wording import figure, length, plain

_TALLEST = 85.0
_UNITS: dict[Units, str] = {"in": "Lengths in inches.", "mm": "Lengths in millimetres."}
_BEARS = {
    "mouth": "It bears on the edge at the mouth.",
    "small-end": "It bears on the edge at the small end.",
    "whole-cone": "It bears along the whole cone.",
}
_UP, _DOWN, _RIGHT, _LEFT = (0.0, -1.0), (0.0, 1.0), (1.0, 0.0), (-1.0, 0.0)
#: Half of the point angle of a drill: the tip of the pilot.
_TIP_RAD = math.radians(60.0)


def contact_svg(
    halves_rad: tuple[float, float], mouth: float, pilot: float, found: Contact, units: Units
) -> str:
    """Draw a center (first half angle) in a hole (second), with the circle on which it bears."""
    center, hole = halves_rad
    depth = (mouth - pilot) / (2.0 * math.tan(hole))
    bottom = -max(found.point_from_mouth, depth) - 0.35 * mouth
    wall, over = 0.45 * mouth, 0.35 * mouth
    half = mouth / 2.0 + wall
    sheet = Sheet()
    view = sheet.view((-half, bottom, half, over), units, _TALLEST, (28.0, 28.0))
    _section(sheet, view, [(mouth / 2.0, 0.0), (pilot / 2.0, -depth)], half, bottom)
    point = -found.point_from_mouth
    wide = (over - point) * math.tan(center)
    sheet.polygon(view.all([(0.0, point), (wide, over), (-wide, over)]), "work")
    _edges(sheet, view, [(mouth / 2.0, 0.0), (pilot / 2.0, -depth)], bottom)
    sheet.line(view.all([(0.0, over + 0.06 * mouth), (0.0, bottom)]), "axis")
    level = 0.0 if found.bearing != "small-end" else -depth
    radius = found.diameter / 2.0
    for sign in (-1.0, 1.0):
        sheet.dot(view.at((sign * radius, level)), 1.0)
    gap_level, gap_edge = (-depth, pilot / 2.0) if level == 0.0 else (0.0, mouth / 2.0)
    if found.gap_at_other_end > 0.0:
        between = gap_edge - found.gap_at_other_end / 2.0
        words = f"gap {length(found.gap_at_other_end, units)}"
        sheet.note(words, view.at((between, gap_level)), (1.0, 0.6), "arrow", bold=True)
    said = ["bears on", f"⌀ {figure(found.diameter, units)}"]
    sheet.note(said, view.at((-radius, level)), (-1.0, -0.6), "arrow", bold=True)
    said = ["center", f"{plain(2.0 * math.degrees(center))}°"]
    sheet.note(said, view.at((0.4 * wide, 0.5 * over)), (1.0, -0.4), "dot")
    inside = mouth / 2.0 + 0.6 * wall
    said = ["hole", f"{plain(2.0 * math.degrees(hole))}°"]
    sheet.note(said, view.at((inside, 0.6 * bottom)), (1.0, 0.2), "dot")
    ends = view.at((-pilot / 2.0, bottom)), view.at((pilot / 2.0, bottom))
    dimension(sheet, *ends, f"pilot ⌀ {figure(pilot, units)}", _DOWN)
    ends = view.at((-half, 0.0)), view.at((-half, point))
    dimension(sheet, *ends, f"point {length(-point, units)} deep", _LEFT, first=6.0)
    scale = Scale(view.scale_to(units), units)
    lines = [f"{_BEARS[found.bearing]} {_UNITS[units]}"]
    return svg_of(sheet, "Center in its hole", lines, scale=scale)


@dataclass(frozen=True, slots=True)
class HoleDrawn:
    """A center hole; `chamfer_diameter` None without a chamfer."""

    mouth_diameter: float
    pilot_diameter: float
    cone_depth: float
    half_angle_rad: float
    chamfer_diameter: float | None
    chamfer_depth: float
    pilot_length: float | None

    @property
    def wall(self) -> list[Point]:
        """The right-hand side of the hole, from the face to the pilot's edge."""
        mouth = (self.mouth_diameter / 2.0, -self.chamfer_depth)
        edge = (self.pilot_diameter / 2.0, -self.chamfer_depth - self.cone_depth)
        if self.chamfer_diameter is None:
            return [mouth, edge]
        return [(self.chamfer_diameter / 2.0, 0.0), mouth, edge]


@dataclass(frozen=True, slots=True)
class BallInHole:
    """The ball that checks a hole; `height` of its top over the face."""

    diameter: float
    contact_diameter: float
    height: float


def hole_svg(hole: HoleDrawn, ball: BallInHole, units: Units) -> str:
    """Draw a center hole with its diameters and depths, and the ball that checks it."""
    wall = hole.wall
    edge = -wall[-1][1]
    pilot = hole.pilot_diameter / 2.0
    long = hole.pilot_length or hole.pilot_diameter
    end = -edge - long
    half = 1.5 * wall[0][0]
    top, radius = ball.height, ball.diameter / 2.0
    sheet = Sheet()
    window = (-half, end - 0.4 * pilot, half, max(top, 0.0))
    view = sheet.view(window, units, _TALLEST, (30.0, 32.0))
    shoulder = end + pilot / math.tan(_TIP_RAD)
    sides = [*wall, (pilot, shoulder), (0.0, end)]
    _section(sheet, view, sides, half, window[1])
    _edges(sheet, view, sides, None)
    sheet.circle(view.at((0.0, top - radius)), view.scale * radius, "outline", "metal")
    contact = ball.contact_diameter / 2.0
    level = top - radius - radius * math.sin(hole.half_angle_rad)
    for sign in (-1.0, 1.0):
        sheet.dot(view.at((sign * contact, level)), 0.9)
    reach = 0.1 * half
    sheet.line(view.all([(0.0, max(top, 0.0) + reach), (0.0, window[1] - reach)]), "axis")
    _hole_figures(sheet, view, hole, ball, units, half)
    scale = Scale(view.scale_to(units), units)
    lines = [f"Dots: where the ball touches. {_UNITS[units]}"]
    return svg_of(sheet, "Center hole and the check over a ball", lines, scale=scale)


def _hole_figures(
    sheet: Sheet, view: View, hole: HoleDrawn, ball: BallInHole, units: Units, half: float
) -> None:
    over = view.scale * max(ball.height, 0.0)
    if hole.chamfer_diameter is not None:
        edge = hole.chamfer_diameter / 2.0
        ends = view.at((-edge, 0.0)), view.at((edge, 0.0))
        said = f"⌀ {figure(hole.chamfer_diameter, units)}"
        dimension(sheet, *ends, said, _UP, first=over + 14.0)
    mouth = hole.mouth_diameter / 2.0
    ends = view.at((-mouth, 0.0)), view.at((mouth, 0.0))
    said = f"⌀ {figure(hole.mouth_diameter, units)}"
    dimension(sheet, *ends, said, _UP, first=over + 7.0)
    edge_level = hole.wall[-1][1]
    ends = view.at((half, 0.0)), view.at((half, edge_level))
    dimension(sheet, *ends, f"to pilot {length(-edge_level, units)}", _RIGHT, first=6.0)
    low = view.at((0.0, ball.height))
    ends = low, view.at((-half, 0.0))
    said = "over the face" if ball.height >= 0.0 else "below the face"
    dimension(sheet, *ends, length(abs(ball.height), units), _LEFT, first=6.0)
    radius = ball.diameter / 2.0
    lines = [f"ball {figure(ball.diameter, units)}", said]
    sheet.note(lines, view.at((-0.4 * radius, ball.height - 0.5 * radius)), (-1.0, -0.5), "dot")
    pilot = hole.pilot_diameter / 2.0
    at = view.at((pilot, 1.05 * edge_level))
    sheet.note(f"pilot ⌀ {figure(hole.pilot_diameter, units)}", at, (1.0, 0.6), "arrow")
    included = plain(2.0 * math.degrees(hole.half_angle_rad))
    middle = view.at(((mouth + pilot) / 2.0, -hole.chamfer_depth - hole.cone_depth / 2.0))
    sheet.note(f"{included}°", middle, (1.0, 0.3), "arrow")


def _section(sheet: Sheet, view: View, wall: Sequence[Point], half: float, bottom: float) -> None:
    """The work on both sides of a hole, hatched; `wall` from the face down."""
    down = [*wall] if wall[-1][0] == 0.0 else [*wall, (wall[-1][0], bottom)]
    for sign in (-1.0, 1.0):
        tail = [(0.0, bottom), (half, bottom)] if wall[-1][0] == 0.0 else [(half, bottom)]
        corners = [*down, *tail, (half, 0.0)]
        outline = view.all([(sign * x, y) for x, y in corners])
        sheet.polygon(outline, "pale", None, section=True)
    sheet.line(view.all([(-half, 0.0), (-wall[0][0], 0.0)]))
    sheet.line(view.all([(wall[0][0], 0.0), (half, 0.0)]))


def _edges(sheet: Sheet, view: View, wall: Sequence[Point], bottom: float | None) -> None:
    """The hole's outline and the edges across it, over what lies in it."""
    chain = [*wall] if bottom is None else [*wall, (wall[-1][0], bottom)]
    for sign in (-1.0, 1.0):
        sheet.line(view.all([(sign * x, y) for x, y in chain]))
    if bottom is None:
        for x, y in wall[1:-1]:
            sheet.line(view.all([(-x, y), (x, y)]), "thin")
