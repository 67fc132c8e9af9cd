"""Readings round a section as a polar plot: eccentricity, high spot, and the side to tap from.

Angles in degrees as marked on the part, drawn counter-clockwise from the right; lengths in one
unit. Radially magnified, so that it has no scale: the rings say what they stand for.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from halfangle_service.trade.angles import format_dm
from halfangle_service.trade.drawing.marks import HEADING, Point, Words
from halfangle_service.trade.drawing.notes import settle
from halfangle_service.trade.drawing.scales import bar_within, scale_within
from halfangle_service.trade.drawing.sheet import EDGE, Sheet
from halfangle_service.trade.drawing.svg import svg_of
from halfangle_service.trade.runout.vectors import Surface, center_of, direction
from halfangle_service.trade.units import Units
from halfangle_service.trade.wording import small_length

#: The circle of the mean reading, and how far from it the farthest reading is drawn.
_MEAN_MM, _SWING_MM = 30.0, 12.0
#: Half of the distance of two plots.
_APART_MM = 66.0
_STEP_DEGREES = 3
#: Of the arrow that says from where to tap: its foot and its tip, from the plot's center.
_TAP_FROM_MM, _TAP_TO_MM = 58.0, 47.0


@dataclass(frozen=True, slots=True)
class SectionRead:
    """A section as it was read: angles in degrees, readings square to the axis less their mean.

    `eccentricity`: the first harmonic of what was read, as a vector. `taps`: what is tapped here,
    in words, and from which side.
    """

    name: str
    angles: Sequence[float]
    readings: Sequence[float]
    eccentricity: complex
    surface: Surface
    taps: Sequence[tuple[str, float]] = ()

    @property
    def farthest(self) -> float:
        """The reading farthest from the mean."""
        return max(abs(self.eccentricity), *(abs(reading) for reading in self.readings))


def runout_svg(sections: Sequence[SectionRead], units: Units) -> str:
    """Draw one section, or two at one magnification, one under the other."""
    sheet = Sheet()
    farthest = max(section.farthest for section in sections)
    times = scale_within(_SWING_MM / farthest) if farthest > 0.0 else 1.0
    for place, section in enumerate(sections):
        _draw(sheet, section, (sheet.width / 2.0, 2.0 * place * _APART_MM), times, units)
    ring = _ring(times)
    lines = [
        f"Rings {small_length(ring, units)} apart, the middle one the mean reading. "
        "Dots: readings. Curve: what the eccentricity alone would read.",
    ]
    return svg_of(sheet, "Runout", lines)


def _ring(times: float) -> float:
    """What the rings are apart: a round length of some millimetres on paper."""
    return bar_within(0.5 * _SWING_MM, times, "mm")


def _draw(sheet: Sheet, section: SectionRead, at: Point, times: float, units: Units) -> None:
    if section.name:
        name = Words(section.name, (EDGE, at[1] - _TAP_FROM_MM), HEADING, bold=True)
        sheet.write(name)
    ring = times * _ring(times)
    for place in (-2, -1, 1, 2):
        sheet.circle(at, _MEAN_MM + place * ring, "fine")
    sheet.circle(at, _MEAN_MM, "hidden")
    _cross(sheet, at)
    _fitted(sheet, section, at, times)
    for angle, reading in zip(section.angles, section.readings, strict=True):
        sheet.dot(_polar(at, _MEAN_MM + times * reading, angle), 1.1)
    _vectors(sheet, section, at, times, units)
    settle(sheet)


def _cross(sheet: Sheet, at: Point) -> None:
    """Axes with their angles, as marked on the part."""
    reach = _MEAN_MM + 1.25 * _SWING_MM
    for angle in (0, 90, 180, 270):
        tip = _polar(at, reach, angle)
        sheet.line([_polar(at, 2.0, angle), tip], "axis")
        way = (tip[0] - at[0], tip[1] - at[1])
        sheet.note(f"{angle}°", tip, way, "beside")


def _fitted(sheet: Sheet, section: SectionRead, at: Point, times: float) -> None:
    """What the eccentricity alone would read."""
    curve = []
    for angle in range(0, 360 + _STEP_DEGREES, _STEP_DEGREES):
        turned = section.eccentricity * complex(
            math.cos(math.radians(angle)), -math.sin(math.radians(angle))
        )
        curve.append(_polar(at, _MEAN_MM + times * turned.real, angle))
    sheet.line(curve)


def _vectors(sheet: Sheet, section: SectionRead, at: Point, times: float, units: Units) -> None:
    """The taps, and the eccentricity as an arrow from the axis to where the center lies."""
    for words, tap in section.taps:
        foot, head = _polar(at, _TAP_FROM_MM, tap), _polar(at, _TAP_TO_MM, tap)
        sheet.arrow(foot, head, "heavy")
        way = (foot[0] - at[0], foot[1] - at[1])
        sheet.note([words, f"from {format_dm(tap)}"], foot, way, "beside", bold=True)
    center = center_of(section.eccentricity, section.surface)
    toward, high = direction(center), direction(section.eccentricity)
    if toward is None or high is None:
        sheet.dot(at, 1.0)
        return
    tip = _polar(at, max(times * abs(center), 4.0), toward)
    sheet.arrow(at, tip, "heavy")
    said = ["center lies off by", small_length(abs(center), units)]
    sheet.note(said, tip, _polar((0.0, 0.0), 1.0, toward + 60.0), "arrow", bold=True)
    spot = _polar(at, _MEAN_MM + times * abs(section.eccentricity), high)
    sheet.note(f"high spot {format_dm(high)}", spot, _polar((0.0, 0.0), 1.0, high - 35.0))


def _polar(at: Point, radius: float, degrees: float) -> Point:
    turn = math.radians(degrees)
    return at[0] + radius * math.cos(turn), at[1] - radius * math.sin(turn)
