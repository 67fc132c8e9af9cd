"""The dressed profile as a drawing to scale."""

import math
from collections.abc import Sequence
from itertools import pairwise

from halfangle_service.trade.svg import PALE, WHEEL, Sheet
from halfangle_service.trade.units import Units
from halfangle_service.trade.wheel.profile import Point, Profile
from halfangle_service.trade.wording import plain


def profile_svg(profile: Profile, angles_rad: Sequence[float], units: Units) -> str:
    """Draw the profile with its widths, depth, radii and angles; its lengths are in `units`."""
    points = profile.points()
    width, depth = points[-1][0], -min(y for _, y in points)
    body = max(0.6 * depth, 0.15 * width)
    sheet = Sheet(
        -0.14 * width, -depth - body, 1.14 * width, 0.12 * width, 760, "Dressed wheel, in section"
    )
    sheet.polygon([*points, (width, -depth - body), (0.0, -depth - body)], WHEEL)
    _removed(sheet, points, width)
    for start, end in _named(profile, points):
        sheet.dimension(start, end, f"{plain(end[0] - start[0], 4)}", 18)
    for edge, below in _depths(profile):
        sheet.dimension(
            *((below, edge) if edge[0] == 0.0 else (edge, below)), f"{plain(-below[1], 4)}", 18
        )
    _notes(sheet, profile, angles_rad)
    words = {"in": "inches", "mm": "millimetres"}[units]
    lines = [f"Lengths in {words}; the wheel's axis lies level, below. Pale: dressed away."]
    return sheet.render(lines)


def _removed(sheet: Sheet, points: Sequence[Point], width: float) -> None:
    """What is dressed away, between profile and old periphery."""
    sheet.polygon([*points, (width, 0.0), (0.0, 0.0)], PALE, "thin dash")
    sheet.path(points)


def _named(profile: Profile, points: Sequence[Point]) -> list[tuple[Point, Point]]:
    """Stretches of the width to dimension along the old periphery: corner to corner."""
    stations = sorted({0.0, points[-1][0], *(c.at[0] for c in profile.corners)})
    pairs = pairwise(stations)
    return [((a, 0.0), (b, 0.0)) for a, b in pairs if b - a > 0.03 * points[-1][0]]


def _depths(profile: Profile) -> list[tuple[Point, Point]]:
    """The wheel's sides with the depth dressed away there."""
    ends = (profile.corners[0].at, profile.corners[-1].at)
    return [((x, 0.0), (x, y)) for x, y in ends if y < 0.0]


def _notes(sheet: Sheet, profile: Profile, angles_rad: Sequence[float]) -> None:
    """Angles beside their flanks, and radii at their arcs."""
    for place, ((start, end), angle) in enumerate(zip(profile.flanks(), angles_rad, strict=True)):
        middle = ((start[0] + end[0]) / 2, (start[1] + end[1]) / 2)
        left = place == 0
        words = f"{plain(math.degrees(angle))}° to the axis"
        sheet.text(middle, words, "a", 12 if left else -12, 20, "start" if left else "end")
    for blend in (b for b in profile.blends if b is not None):
        sheet.path([blend.before, blend.center, blend.after], "thin dash")
        convex = blend.center[1] < blend.before[1]
        sheet.text(
            blend.center, f"R {plain(blend.radius, 4)}", "", 0, 16 if convex else -8, "middle"
        )
