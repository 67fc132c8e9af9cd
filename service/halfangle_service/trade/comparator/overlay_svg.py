"""The overlay of a profile as SVG, at true size: a bar on it checks the print."""

import math
from collections.abc import Sequence

from halfangle_service.trade.comparator.overlay import Point, Profile, Side, mirrored
from halfangle_service.trade.drawing.sheet import Sheet, View
from halfangle_service.trade.drawing.svg import Scale, svg_of
from halfangle_service.trade.units import Units, to_mm
from halfangle_service.trade.wording import arcsec, degrees, figure, plain, small_length

#: Room about the profile.
_MARGIN_MM = 12.0
#: The titles need so much width.
_LEAST_WIDTH_MM = 130.0
#: Half of a picked point's cross.
_CROSS_MM = 0.6


def overlay_svg(
    profile: Profile, units: Units, tolerance_arcsec: float, picked: Sequence[Point] = ()
) -> str:
    """Draw nominal line, band, axis and bar; `picked` are points as they lie on the profile.

    `tolerance_arcsec` is that of the included angle, for the title.
    """
    length, height = profile.largest[1][0], profile.largest[0][1]
    drawn = to_mm(profile.magnification * length, units)
    sheet = Sheet(width=max(_LEAST_WIDTH_MM, drawn + 2.0 * _MARGIN_MM))
    window = (0.0, -height, length, height)
    margins = (_MARGIN_MM, _MARGIN_MM)
    view = sheet.view(window, units, math.inf, margins, scale=profile.magnification)
    _draw_band(sheet, view, profile)
    reach = 0.8 * _MARGIN_MM / view.scale
    sheet.line(view.all([(-reach, 0.0), (length + reach, 0.0)]), "axis")
    for point in picked:
        _cross(sheet, view.at(point))
    title = f"Overlay at {plain(profile.magnification)} : 1"
    lines = _lines(profile, units, tolerance_arcsec, picked=bool(picked))
    scale = Scale(profile.magnification, units, true_size=True)
    return svg_of(sheet, title, lines, scale=scale)


def _draw_band(sheet: Sheet, view: View, profile: Profile) -> None:
    """The band, pale between fine edges, and the nominal line dashed in it, on either side."""
    for turned in (False, True):
        smallest, largest, nominal = (
            mirrored(side) if turned else side
            for side in (profile.smallest, profile.largest, profile.nominal)
        )
        sheet.polygon(view.all([*largest, *reversed(smallest)]), "pale", "fine")
        sheet.line(view.all(nominal), "dashed")
    _draw_ends(sheet, view, profile.nominal)


def _draw_ends(sheet: Sheet, view: View, nominal: Side) -> None:
    for x, y in nominal:
        sheet.line(view.all([(x, -y), (x, y)]), "fine")


def _cross(sheet: Sheet, at: Point) -> None:
    (x, y), half = at, _CROSS_MM
    sheet.line([(x - half, y - half), (x + half, y + half)], "fine")
    sheet.line([(x - half, y + half), (x + half, y - half)], "fine")


def _lines(profile: Profile, units: Units, tolerance_arcsec: float, *, picked: bool) -> list[str]:
    included = math.degrees(2.0 * profile.cone.half_rad)
    large = figure(profile.cone.large_diameter, units)
    lines = [
        f"Included angle {degrees(included, tolerance_arcsec)} ±{arcsec(tolerance_arcsec)}, large "
        f"diameter {large} ±{small_length(profile.diameter_tolerance, units)}.",
        "Solid: smallest and largest allowed. Dashed: as wanted.",
    ]
    return [*lines, "Crosses: points as picked."] if picked else lines
