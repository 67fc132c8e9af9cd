"""What the bench measures with, to scale: balls in a bore, arms with rolls, a pin on a plate.

Lengths in one unit, angles in radians.
"""

import math
from dataclasses import dataclass

from halfangle_service.trade.drawing.dimensions import angle_dimension, dimension
from halfangle_service.trade.drawing.sheet import Sheet
from halfangle_service.trade.drawing.stage import draw_table
from halfangle_service.trade.drawing.svg import Scale, svg_of
from halfangle_service.trade.units import Units
from halfangle_service.trade.wording import degrees, figure, length

_TALLEST = 95.0
_UNITS: dict[Units, str] = {"in": "Lengths in inches.", "mm": "Lengths in millimetres."}
_UP, _DOWN, _LEFT, _RIGHT = (0.0, -1.0), (0.0, 1.0), (-1.0, 0.0), (1.0, 0.0)


@dataclass(frozen=True, slots=True)
class BallsInBore:
    """A bore with two touching balls, lower and upper: diameters, and depths of their tops."""

    bore: float
    balls: tuple[float, float]
    depths: tuple[float, float]


def bore_svg(measured: BallsInBore, units: Units) -> str:
    """Draw the bore in section with both balls on their walls, and the depths of their tops."""
    half, wall = measured.bore / 2.0, 0.18 * measured.bore
    deep = measured.depths[0] + measured.balls[0] + 0.15 * measured.bore
    out = max(0.0, *(-depth for depth in measured.depths))
    sheet = Sheet()
    view = sheet.view((-half - wall, -deep, half + wall, out), units, _TALLEST, (30.0, 30.0))
    for sign in (-1.0, 1.0):
        corners = [(half, 0.0), (half + wall, 0.0), (half + wall, -deep), (half, -deep)]
        sheet.polygon(view.all([(sign * x, y) for x, y in corners]), "work", section=True)
    sides = (("lower", _LEFT), ("upper", _RIGHT))
    for (name, way), ball, depth in zip(sides, measured.balls, measured.depths, strict=True):
        radius = ball / 2.0
        center = (way[0] * (half - radius), -depth - radius)
        sheet.circle(view.at(center), view.scale * radius, "outline", "metal")
        sheet.dot(view.at((way[0] * half, center[1])), 0.9)
        ends = view.at((center[0], -depth)), view.at((way[0] * (half + wall), 0.0))
        where = "below" if depth >= 0.0 else "above"
        dimension(sheet, *ends, f"{length(abs(depth), units)} {where}", way, first=6.0)
        at = view.at((center[0], center[1] - 0.4 * radius))
        sheet.note(f"{name} ball {figure(ball, units)}", at, way, "dot")
    ends = view.at((-half, 0.0)), view.at((half, 0.0))
    words = f"bore {figure(measured.bore, units)}"
    dimension(sheet, *ends, words, _UP, first=view.scale * out + 8.0)
    lines = [f"Dots: where the balls touch the wall. {_UNITS[units]}"]
    scale = Scale(view.scale_to(units), units)
    return svg_of(sheet, "Bore over two touching balls", lines, scale=scale)


@dataclass(frozen=True, slots=True)
class ArmsWithRolls:
    """Two arms at an angle: lengths to the rolls' centers, rolls, and the measure with them."""

    angle_rad: float
    arms: tuple[float, float]
    rolls: tuple[float, float]
    measure: float
    over: bool


def chord_svg(measured: ArmsWithRolls, units: Units) -> str:
    """Draw both arms with their rolls, the angle between them and the measure."""
    turns = (0.0, measured.angle_rad)
    ends = [
        (arm * math.cos(turn), arm * math.sin(turn))
        for arm, turn in zip(measured.arms, turns, strict=True)
    ]
    room = max(measured.rolls)
    xs, ys = [0.0, *(x for x, _ in ends)], [0.0, *(y for _, y in ends)]
    window = (min(xs) - room, min(ys) - room, max(xs) + room, max(ys) + room)
    sheet = Sheet()
    view = sheet.view(window, units, _TALLEST, (24.0, 24.0))
    for end, roll in zip(ends, measured.rolls, strict=True):
        sheet.line(view.all([(0.0, 0.0), end]), "axis")
        sheet.circle(view.at(end), view.scale * roll / 2.0, "outline", "metal")
        sheet.dot(view.at(end))
    sheet.dot(view.at((0.0, 0.0)), 0.9)
    (x1, y1), (x2, y2) = ends
    apart = math.hypot(x2 - x1, y2 - y1)
    along = ((x2 - x1) / apart, (y2 - y1) / apart)
    sign = -1.0 if measured.over else 1.0
    touch = [
        (x + side * along[0] * roll / 2.0, y + side * along[1] * roll / 2.0)
        for (x, y), roll, side in zip(ends, measured.rolls, (sign, -sign), strict=True)
    ]
    # Outward of the chord, away from the pivot.
    off = (along[1], -along[0])
    outward = 1.0 if off[0] * x1 + off[1] * y1 > 0.0 else -1.0
    way = (outward * off[0], -outward * off[1])
    what = "over rolls" if measured.over else "between rolls"
    first = view.scale * room / 2.0 + 6.0
    words = f"{what} {length(measured.measure, units)}"
    dimension(sheet, view.at(touch[0]), view.at(touch[1]), words, way, first=first)
    turned = math.degrees(measured.angle_rad)
    reach = 0.9 * view.scale * min(measured.arms)
    radii = [share * reach for share in (0.35, 0.5, 0.65, 0.2)]
    angle_dimension(sheet, view.at((0.0, 0.0)), 0.0, turned, degrees(turned, 10.0), radii)
    first_arm, second_arm = (figure(arm, units) for arm in measured.arms)
    lines = [f"Pivot to the rolls' centers: {first_arm} and {second_arm}. {_UNITS[units]}"]
    scale = Scale(view.scale_to(units), units)
    return svg_of(sheet, "Angle by the chord over rolls", lines, scale=scale)


@dataclass(frozen=True, slots=True)
class PinOnPlate:
    """A tilted plate with a pin and a point: places along the face from the stop, and over it.

    `up` is 1 for a stop at the low end, −1 at the high one.
    """

    angle_rad: float
    pin_diameter: float
    pin_along: float
    point: tuple[float, float]
    up: float

    def at(self, along: float, over: float) -> tuple[float, float]:
        """A place along and over the face, by the level; the stop's corner is (0, 0)."""
        cosine, sine = math.cos(self.angle_rad), math.sin(self.angle_rad)
        x = self.up * along
        return x * cosine - over * sine, x * sine + over * cosine


def over_pin_svg(measured: PinOnPlate, units: Units) -> str:
    """Draw face and stop, the pin and the point, and the height from one to the other."""
    radius, (along, over) = measured.pin_diameter / 2.0, measured.point
    end = max(along, measured.pin_along + radius, 2.0 * radius) * 1.08
    deep, high = 0.07 * end, max(1.3 * over, 1.1 * measured.pin_diameter)
    plate = [
        measured.at(*place) for place in ((0.0, 0.0), (end, 0.0), (end, -deep), (-deep, -deep))
    ]
    stop = [(-deep, -deep), (-deep, high), (0.0, high), (0.0, 0.0)]
    body = [measured.at(*place) for place in stop] + plate[1:3]
    pin, point = measured.at(measured.pin_along, radius), measured.at(along, over)
    top = (pin[0], pin[1] + radius)
    foot = min(y for _, y in body)
    xs = [x for x, _ in (*body, point, pin)]
    sheet = Sheet()
    tall = max(*(y for _, y in body), point[1], top[1])
    view = sheet.view((min(xs), foot, max(xs), tall), units, _TALLEST, (26.0, 26.0))
    sheet.polygon(view.all(body), "metal")
    draw_table(sheet, view, min(xs), max(xs), foot)
    sheet.circle(view.at(pin), view.scale * radius, "outline", "paper")
    if over > 0.0:
        sheet.line(view.all([measured.at(along, 0.0), point]), "thin")
    sheet.dot(view.at(point), 0.9)
    way = _RIGHT if point[0] >= pin[0] else _LEFT
    off = view.scale * (max(xs) - max(point[0], top[0])) + 6.0
    off = off if way == _RIGHT else view.scale * (min(point[0], top[0]) - min(xs)) + 6.0
    words = f"{length(abs(point[1] - top[1]), units)} {'over' if point[1] >= top[1] else 'under'}"
    dimension(sheet, view.at(top), view.at(point), words, way, first=off)
    sheet.note("point", view.at(point), (-way[0], -1.0))
    sheet.note(f"pin {figure(measured.pin_diameter, units)}", view.at(pin), (-way[0], -1.0), "dot")
    turned = degrees(math.degrees(measured.angle_rad), 10.0)
    where = "low" if measured.up > 0.0 else "high"
    lines = [f"Plate at {turned}, its stop at the {where} end. {_UNITS[units]}"]
    scale = Scale(view.scale_to(units), units)
    return svg_of(sheet, "Height of a point over a pin", lines, scale=scale)
