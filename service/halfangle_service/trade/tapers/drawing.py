"""A taper as it is measured, to scale: over rolls at two heights, over two balls in a socket.

Lengths in one unit, angles in radians.
"""

import math
from dataclasses import dataclass

from halfangle_service.trade.cone import diameter_at
from halfangle_service.trade.drawing.dimensions import dimension
from halfangle_service.trade.drawing.sheet import Sheet, View
from halfangle_service.trade.drawing.stage import draw_table
from halfangle_service.trade.drawing.svg import Scale, svg_of
from halfangle_service.trade.tapers.two_heights import Upright
from halfangle_service.trade.units import Units
from halfangle_service.trade.wording import degrees, figure, length

_TALLEST = 95.0
_UNITS: dict[Units, str] = {"in": "Lengths in inches.", "mm": "Lengths in millimetres."}
_UP, _DOWN, _LEFT, _RIGHT = (0.0, -1.0), (0.0, 1.0), (-1.0, 0.0), (1.0, 0.0)


@dataclass(frozen=True, slots=True)
class OverRolls:
    """An upright part over two equal rolls, on the lower blocks, then on the upper ones.

    `measures`: over both rolls, lower and upper.
    """

    part: Upright
    roll_diameter: float
    lower_stack: float
    rise: float
    measures: tuple[float, float]

    @property
    def stacks(self) -> tuple[float, float]:
        """Heights on which the rolls lie."""
        return self.lower_stack, self.lower_stack + self.rise

    def center(self, which: int) -> tuple[float, float]:
        """Center of the right-hand roll, lower (0) or upper (1)."""
        radius = self.roll_diameter / 2.0
        return self.measures[which] / 2.0 - radius, self.stacks[which] + radius


def over_rolls_svg(measured: OverRolls, units: Units) -> str:
    """Draw the part with its rolls at both heights, both measures, and the rise of the blocks."""
    part, radius = measured.part, measured.roll_diameter / 2.0
    base = part.base_diameter / 2.0
    top = base + part.length * math.tan(part.lean)
    half = max(*measured.measures, 2.0 * base, 2.0 * top) / 2.0
    height = max(part.length, measured.stacks[1] + 2.0 * radius)
    sheet = Sheet()
    window = (-half - radius, 0.0, half + radius, height)
    view = sheet.view(window, units, _TALLEST, (16.0, 26.0))
    draw_table(sheet, view, -half - radius, half + radius, 0.0)
    for sign in (-1.0, 1.0):
        _blocks(sheet, view, measured, base, sign)
    outline = [(-base, 0.0), (base, 0.0), (top, part.length), (-top, part.length)]
    sheet.polygon(view.all(outline), "work")
    sheet.line(view.all([(0.0, -0.04 * height), (0.0, 1.05 * height)]), "axis")
    for which in (0, 1):
        x, y = measured.center(which)
        for sign in (-1.0, 1.0):
            sheet.circle(view.at((sign * x, y)), view.scale * radius, "outline", "paper")
            sheet.dot(view.at((sign * x, y)))
    _over_rolls_figures(sheet, view, measured, units, half)
    lines = [
        f"Rolls {figure(measured.roll_diameter, units)}, on the surface, then on blocks. "
        f"{_UNITS[units]}"
    ]
    scale = Scale(view.scale_to(units), units)
    return svg_of(sheet, "Taper over two rolls at two heights", lines, scale=scale)


def _blocks(sheet: Sheet, view: View, measured: OverRolls, base: float, sign: float) -> None:
    """The blocks under a roll at both heights; clear of the part where they can stand so."""
    radius = measured.roll_diameter / 2.0
    for which in (1, 0):
        stack = measured.stacks[which]
        if stack <= 0.0:
            continue
        middle = measured.center(which)[0]
        inner = min(max(middle - 0.6 * radius, base + 0.1 * radius), middle)
        ends = sign * inner, sign * (inner + 1.4 * radius)
        corners = [(ends[0], 0.0), (ends[1], 0.0), (ends[1], stack), (ends[0], stack)]
        sheet.polygon(view.all(corners), "block")


def _over_rolls_figures(
    sheet: Sheet, view: View, measured: OverRolls, units: Units, half: float
) -> None:
    lower, upper = measured.measures
    for name, measure, which, way in (("M1", lower, 0, _DOWN), ("M2", upper, 1, _UP)):
        level = measured.center(which)[1]
        ends = view.at((-measure / 2.0, level)), view.at((measure / 2.0, level))
        edge = 0.0 if which == 0 else max(measured.part.length, level + measured.roll_diameter / 2)
        past = abs(view.at((0.0, edge))[1] - ends[0][1])
        dimension(sheet, *ends, f"{name} = {length(measure, units)}", way, first=past + 9.0)
    low, high = measured.stacks
    edge = half + measured.roll_diameter / 2.0
    ends = view.at((edge, low)), view.at((edge, high))
    dimension(sheet, *ends, f"H = {length(measured.rise, units)}", _RIGHT, first=6.0)
    part = measured.part
    lean = math.degrees(abs(part.lean))
    up = 0.55 * part.length
    at = view.at((-part.base_diameter / 2.0 - up * math.tan(part.lean), up))
    sheet.note(["half angle", degrees(lean, 10.0)], at, (-1.0, 0.0), "arrow")


@dataclass(frozen=True, slots=True)
class OverBalls:
    """A socket with two balls: diameters, and depths of their tops below the mouth."""

    half_angle_rad: float
    mouth_diameter: float
    length: float
    balls: tuple[float, float]
    depths: tuple[float, float]


def over_balls_svg(measured: OverBalls, units: Units) -> str:
    """Draw the socket in section with both balls where they rest, and the depths of their tops."""
    mouth, deep = measured.mouth_diameter / 2.0, measured.length
    end = max(diameter_at(2.0 * mouth, measured.half_angle_rad, deep), 0.0) / 2.0
    wall = 0.3 * mouth + 0.04 * deep
    out = max(0.0, *(-depth for depth in measured.depths))
    sheet = Sheet()
    window = (-mouth - wall, -deep - 0.3 * wall, mouth + wall, out)
    view = sheet.view(window, units, _TALLEST, (30.0, 30.0))
    for sign in (-1.0, 1.0):
        corners = [(mouth, 0.0), (mouth + wall, 0.0), (mouth + wall, -deep), (end, -deep)]
        sheet.polygon(view.all([(sign * x, y) for x, y in corners]), "work", section=True)
    sheet.line(view.all([(-end, -deep), (end, -deep)]), "thin")
    sheet.line(view.all([(-mouth, 0.0), (mouth, 0.0)]), "thin")
    reach = 0.06 * deep
    for ball, depth in zip(measured.balls, measured.depths, strict=True):
        center = (0.0, -depth - ball / 2.0)
        sheet.circle(view.at(center), view.scale * ball / 2.0, "outline", "metal")
        _contacts(sheet, view, center, ball / 2.0, measured.half_angle_rad)
    sheet.line(view.all([(0.0, out + reach), (0.0, -deep - reach)]), "axis")
    ways = (_LEFT, _RIGHT)
    for name, ball, depth, way in zip(
        ("large", "small"), measured.balls, measured.depths, ways, strict=True
    ):
        edge = (mouth + wall) * way[0]
        ends = view.at((0.0, -depth)), view.at((edge, 0.0))
        where = "below" if depth >= 0.0 else "above"
        dimension(sheet, *ends, f"{length(abs(depth), units)} {where}", way, first=6.0)
        at = view.at((0.2 * ball * way[0], -depth - ball / 2.0))
        sheet.note(f"{name} ball {figure(ball, units)}", at, way, "dot")
    ends = view.at((-mouth, 0.0)), view.at((mouth, 0.0))
    past = view.scale * out
    dimension(sheet, *ends, f"mouth {figure(2.0 * mouth, units)}", _UP, first=past + 8.0)
    half = degrees(math.degrees(measured.half_angle_rad), 10.0)
    scale = Scale(view.scale_to(units), units)
    lines = [f"Half angle {half}. Dots: where the balls touch. {_UNITS[units]}"]
    return svg_of(sheet, "Socket over two balls", lines, scale=scale)


def _contacts(
    sheet: Sheet, view: View, center: tuple[float, float], radius: float, half: float
) -> None:
    """Dots where a ball touches both sides of the section."""
    across, down = radius * math.cos(half), radius * math.sin(half)
    for sign in (-1.0, 1.0):
        sheet.dot(view.at((center[0] + sign * across, center[1] - down)), 0.9)
