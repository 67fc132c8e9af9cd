"""The dressed profile as a drawing to scale."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from halfangle_service.trade.drawing.dimensions import APART, dimension
from halfangle_service.trade.drawing.marks import TEXT, around
from halfangle_service.trade.drawing.metrics import text_width
from halfangle_service.trade.drawing.sheet import Sheet, View
from halfangle_service.trade.drawing.svg import Scale, svg_of
from halfangle_service.trade.units import Units
from halfangle_service.trade.wheel.profile import Point, Profile
from halfangle_service.trade.wording import plain

_TALLEST = 70.0
_UNITS: dict[Units, str] = {"in": "inches", "mm": "millimetres"}


@dataclass(frozen=True, slots=True)
class Against:
    """The work that a flank grinds: its slope's angle to the axis and its rise, the overrun.

    `large_radius` of a cone, None of a face.
    """

    angle_rad: float
    rise: float
    overrun: float
    large_radius: float | None


def profile_svg(profile: Profile, against: Sequence[Against], units: Units) -> str:
    """Draw the profile with its widths, depth, radii and angles, and the work on its flanks.

    Its lengths are in `units`; `against` in the order of the flanks.
    """
    points = profile.points()
    width, depth = points[-1][0], -min(y for _, y in points)
    body = max(0.6 * depth, 0.15 * width)
    flanks = zip(_flanks(profile), against, strict=True)
    works = [_work(flank, one) for flank, one in flanks]
    corners = [point for work in works for point in work]
    left, _, right, top = around([*corners, (0.0, 0.0), (width, 0.0)])
    sheet = Sheet()
    window = (left, -depth - body, right, top)
    view = sheet.view(window, units, _TALLEST, (24.0, 24.0))
    foot = [(width, -depth - body), (0.0, -depth - body)]
    sheet.polygon(view.all([*points, *foot]), "wheel", None, section=True)
    # Broken off toward its axis.
    sheet.line(view.all([foot[1], points[0]]), "outline")
    sheet.line(view.all([points[-1], foot[0]]), "outline")
    sheet.line(view.all(foot), "thin")
    _removed(sheet, view, points, width)
    for work, one in zip(works, against, strict=True):
        _draw_work(sheet, view, work, one)
    stations = sorted({0.0, width, *(corner.at[0] for corner in profile.corners)})
    _widths(sheet, view, stations, 8.0 + view.scale * top)
    _depths(sheet, view, profile)
    _notes(sheet, view, profile, [one.angle_rad for one in against])
    lines = [
        f"Lengths in {_UNITS[units]}. The wheel's axis lies level, below. "
        "Dashed: what is dressed away."
    ]
    scale = Scale(view.scale_to(units), units)
    return svg_of(sheet, "Dressed wheel and work, in section", lines, scale=scale)


def _widths(sheet: Sheet, view: View, stations: Sequence[float], first: float) -> None:
    """The stretches between stations, the widest first.

    Those too narrow for their figures stand a row higher, their figures over a wide neighbour.
    """
    pairs = [(start, end) for start, end in pairwise(stations) if end > start]
    narrow = [_is_narrow(view, end - start) for start, end in pairs]
    after = [*narrow[1:], False]
    for start, end, is_narrow, before in sorted(
        ((*ends, is_one, then) for ends, is_one, then in zip(pairs, narrow, after, strict=True)),
        key=lambda stretch: stretch[0] - stretch[1],
    ):
        off = first + (APART if is_narrow else 0.0)
        ends = view.at((start, 0.0)), view.at((end, 0.0))
        dimension(sheet, *ends, plain(end - start, 4), (0.0, -1.0), first=off, before=before)


def _is_narrow(view: View, width: float) -> bool:
    return text_width(plain(width, 4), TEXT) > view.scale * width - 1.0


def _flanks(profile: Profile) -> list[tuple[Point, Point]]:
    """Corners at the ends of each flank, before any radius."""
    return [(a.at, b.at) for (a, b), _ in profile.segments() if a.at[1] != b.at[1]]


def _work(flank: tuple[Point, Point], one: Against) -> list[Point]:
    """Outline of the work that lies on a flank: large end, small end, and as much as matters.

    A flank rises from the wheel's side to its periphery; from there the overrun is counted.
    """
    start, end = flank
    upper, way = (end, -1.0) if end[1] > start[1] else (start, 1.0)
    cos, sin = math.cos(one.angle_rad), math.sin(one.angle_rad)
    run = one.rise / math.tan(one.angle_rad)
    small = (upper[0] + way * one.overrun * cos, upper[1] - one.overrun * sin)
    large = (small[0] + way * run, small[1] - one.rise)
    most = 1.4 * one.rise
    over = min(one.large_radius or most, most)
    return [large, small, (small[0], large[1] + over), (large[0], large[1] + over)]


def _draw_work(sheet: Sheet, view: View, work: Sequence[Point], one: Against) -> None:
    """The work over its flank, cut off along its axis, or where it is broken off."""
    sheet.polygon(view.all(work), "work", None)
    sheet.line(view.all([work[3], work[0], work[1], work[2]]))
    whole = one.large_radius is not None and one.large_radius <= 1.4 * one.rise
    sheet.line(view.all([work[2], work[3]]), "axis" if whole else "thin")
    sheet.name("work", view.all(work), (0.0, -1.0))


def _removed(sheet: Sheet, view: View, points: Sequence[Point], width: float) -> None:
    """What is dressed away, between profile and old periphery."""
    sheet.polygon(view.all([*points, (width, 0.0), (0.0, 0.0)]), "pale", None)
    old = [points[0], (0.0, 0.0), (width, 0.0), points[-1]]
    sheet.line(view.all(old), "hidden")
    sheet.line(view.all(points), "outline")


def _depths(sheet: Sheet, view: View, profile: Profile) -> None:
    """The wheel's sides with the depth dressed away there."""
    for (x, y), way in ((profile.corners[0].at, -1.0), (profile.corners[-1].at, 1.0)):
        if y < 0.0:
            dimension(sheet, view.at((x, y)), view.at((x, 0.0)), plain(-y, 4), (way, 0.0))


def _notes(sheet: Sheet, view: View, profile: Profile, angles_rad: Sequence[float]) -> None:
    """Angles beside their flanks, and radii at their arcs."""
    for place, ((start, end), angle) in enumerate(zip(profile.flanks(), angles_rad, strict=True)):
        middle = ((start[0] + end[0]) / 2, (start[1] + end[1]) / 2)
        words = f"{plain(math.degrees(angle))}° to the axis"
        sheet.note(words, view.at(middle), (0.5 if place == 0 else -0.5, 1.0), "arrow")
    for blend in (b for b in profile.blends if b is not None):
        sheet.line(view.all([blend.before, blend.center, blend.after]), "thin")
        up = -1.0 if blend.center[1] > blend.before[1] else 1.0
        sheet.note(f"R {plain(blend.radius, 4)}", view.at(blend.before), (0.2, up), "arrow")
