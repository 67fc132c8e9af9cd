"""The wheel's head over a set-up: wheel, flange and guard at both ends of the stroke.

Lengths in any one unit.
"""

import math
from collections.abc import Sequence

from halfangle_service.trade.clearance.assembly import Head, head_parts
from halfangle_service.trade.clearance.bodies import Gap, HeadPart
from halfangle_service.trade.clearance.case import Case
from halfangle_service.trade.drawing.marks import LineKind, Point, around
from halfangle_service.trade.drawing.sheet import Sheet, View
from halfangle_service.trade.units import Units
from halfangle_service.trade.wording import figure


def stroke_of(case: Case) -> tuple[float, float]:
    """X of the wheel's lowest line, or of its near side across the travel, at both ends."""
    stroke, slant = case.stroke, case.assembly.cone.slant
    return -stroke.past_large_end, slant + stroke.past_small_end


def half_width(radius: float, crop: float) -> float:
    """Half of the widest of a circle that stands on z = 0, up to a height."""
    return radius if crop >= radius else math.sqrt(max(crop * (2.0 * radius - crop), 0.0))


def _parts(case: Case, head: Head) -> tuple[HeadPart, ...]:
    return head_parts(head, case.stroke, case.assembly.cone.slant, case.direction)


def _ends(case: Case, closest: Gap) -> tuple[float, float]:
    """The ends of the stroke, the one nearer to the least gap first."""
    first, last = stroke_of(case)
    near = closest.on_part[0]
    return (first, last) if abs(near - first) <= abs(near - last) else (last, first)


def draw_head(sheet: Sheet, case: Case, closest: Gap, view: View, crop: float) -> None:
    """The head at both ends of its stroke: the end nearer to the least gap in full lines."""
    ends = _ends(case, closest)
    new, worn = case.heads["new"], case.heads.get("worn")
    if case.direction == "along-travel":
        _draw_circles(sheet, view, new, worn, ends, crop)
    else:
        _draw_on_edge(sheet, view, case, crop)
    for part in _parts(case, new):
        if part.name == "guard":
            _draw_box(sheet, view, part.core, crop, "phantom")


def _draw_circles(
    sheet: Sheet,
    view: View,
    new: Head,
    worn: Head | None,
    ends: tuple[float, float],
    crop: float,
) -> None:
    kinds: tuple[LineKind, LineKind] = ("outline", "phantom")
    for x, kind in zip(ends, kinds, strict=True):
        _circle(sheet, view, (x, new.radius), new.radius, crop, kind)
    _circle(sheet, view, (ends[0], new.radius), new.flange_radius, crop, "thin")
    if worn is not None:
        _circle(sheet, view, (ends[0], worn.radius), worn.radius, crop, "hidden")


def _circle(
    sheet: Sheet, view: View, center: Point, radius: float, crop: float, kind: LineKind
) -> None:
    """A circle, or so much of it as lies under a height."""
    rise = (crop - center[1]) / radius
    if rise >= 1.0:
        sheet.circle(view.at(center), view.scale * radius, kind)
    elif rise > -1.0:
        turn = math.degrees(math.asin(rise))
        sheet.arc(view.at(center), view.scale * radius, -180.0 - turn, turn, kind)


def _draw_on_edge(sheet: Sheet, view: View, case: Case, crop: float) -> None:
    """The wheel seen on edge at the first end of its stroke, and what it sweeps."""
    first, _ = stroke_of(case)
    new, worn = case.heads["new"], case.heads.get("worn")
    for part in _parts(case, new):
        if part.name in ("wheel", "flange"):
            _draw_box(sheet, view, part.core, crop, "phantom")
    right, overhang = first + new.width, (new.flange_width - new.width) / 2.0
    low, high = new.radius - new.flange_radius, new.radius + new.flange_radius
    flange = ((first - overhang, low), (right + overhang, high))
    if new.flange_width > new.width:
        _draw_box(sheet, view, _box(*flange), crop, "thin")
    wheel = _box((first, 0.0), (right, 2.0 * new.radius))
    _draw_box(sheet, view, wheel, crop, "outline")
    if worn is not None and 2.0 * worn.radius < crop:
        level = view.all([(first, 2.0 * worn.radius), (right, 2.0 * worn.radius)])
        sheet.line(level, "hidden")


def _box(low: Point, high: Point) -> tuple[Point, ...]:
    return (low, (high[0], low[1]), high, (low[0], high[1]))


def _draw_box(
    sheet: Sheet, view: View, corners: Sequence[Point], crop: float, kind: LineKind
) -> None:
    """An upright rectangle, open above where it is cut off."""
    left, bottom, right, top = around(corners)
    if bottom >= crop:
        return
    upper = min(top, crop)
    chain = [(left, upper), (left, bottom), (right, bottom), (right, upper)]
    sheet.line(view.all(chain), kind, closed=top <= crop)


def name_head(
    sheet: Sheet, case: Case, closest: Gap, view: View, crop: float, units: Units
) -> None:
    """Name wheel, worn wheel, flange and guard at their lines, with their diameters."""
    ends, new, worn = _ends(case, closest), case.heads["new"], case.heads.get("worn")
    said = f"wheel {figure(2.0 * new.radius, units)}"
    outward = -1.0 if ends[0] <= ends[1] else 1.0
    if case.direction == "along-travel":
        _at_arc(sheet, view, (ends[0], new.radius), crop, said, outward)
        if worn is not None:
            words = f"worn {figure(2.0 * worn.radius, units)}"
            _at_arc(sheet, view, (ends[0], worn.radius), crop, words, -outward)
    else:
        first, _ = stroke_of(case)
        at = view.at((first, 0.7 * min(crop, 2.0 * new.radius)))
        sheet.note(said, at, (-1.0, 0.2), "arrow")
    for part in _parts(case, new):
        left, bottom, right, _ = around(part.core)
        if part.name == "guard" and bottom < crop:
            sheet.note("guard", view.at((left, (bottom + crop) / 2.0)), (-1.0, -0.2), "arrow")
        elif part.name == "flange" and case.direction == "across-travel" and bottom < crop:
            sheet.note("flange", view.at((right, bottom)), (1.0, 0.4), "arrow")


def _at_arc(
    sheet: Sheet, view: View, center: Point, crop: float, words: str, outward: float
) -> None:
    """A note at a wheel's outline, a third of the way up to where it is cut or to its middle."""
    radius = center[1]
    up = 0.55 * min(crop, radius)
    at = (center[0] + outward * half_width(radius, up), up)
    sign = -1.0 if view.mirrored else 1.0
    sheet.note(words, view.at(at), (sign * outward, 0.1), "arrow")
