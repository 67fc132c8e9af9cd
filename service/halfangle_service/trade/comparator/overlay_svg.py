"""The overlay of a profile as SVG, at true size: a bar on it checks the print."""

import math
from collections.abc import Sequence

from halfangle_service.trade.comparator.overlay import Point, Profile, Side, mirrored
from halfangle_service.trade.svg import MM_PER_PX, PALE, Sheet
from halfangle_service.trade.units import Units, to_mm
from halfangle_service.trade.wording import arcsec, degrees, figure, plain, small_length

#: Lengths of the bar on paper, longest first, and the share of the sheet that it may take.
_BARS: dict[Units, tuple[float, ...]] = {
    "in": (4.0, 2.0, 1.0, 0.5),
    "mm": (100.0, 50.0, 20.0, 10.0),
}
_BAR_SHARE = 0.6
#: Room about the profile, and below it for the bar, in millimetres on paper.
_MARGIN_MM, _BAR_ROOM_MM = 12.0, 22.0
#: The titles need so much width, in millimetres on paper.
_LEAST_WIDTH_MM = 120.0
#: Half of a picked point's cross, in millimetres on paper.
_CROSS_MM = 0.6


def overlay_svg(
    profile: Profile, units: Units, tolerance_arcsec: float, picked: Sequence[Point] = ()
) -> str:
    """Draw nominal line, band, axis and bar; `picked` are points as they lie on the profile.

    `tolerance_arcsec` is that of the included angle, for the title.
    """
    paper = profile.magnification * to_mm(1.0, units)  # millimetres on paper for a unit
    length, height = profile.largest[1][0], profile.largest[0][1]
    spare = max(0.0, _LEAST_WIDTH_MM / paper - length) / 2.0
    left, right = -_MARGIN_MM / paper - spare, length + _MARGIN_MM / paper + spare
    bottom, top = -height - (_MARGIN_MM + _BAR_ROOM_MM) / paper, height + _MARGIN_MM / paper
    scale = paper / MM_PER_PX
    title = f"Overlay at {plain(profile.magnification)} : 1"
    sheet = Sheet(left, bottom, right, top, 0.0, title, header_px=96.0, true_size=True)
    sheet.width_px = (right - left) * scale + 2.0 * sheet.margin_px
    _draw_band(sheet, profile)
    sheet.path([(-_MARGIN_MM / paper, 0.0), (length + _MARGIN_MM / paper, 0.0)], "axis")
    for point in picked:
        _cross(sheet, point, _CROSS_MM / paper)
    _draw_bar(sheet, profile, units, -height - (_MARGIN_MM + 4.0) / paper)
    return sheet.render(_lines(profile, units, tolerance_arcsec, picked=bool(picked)))


def _draw_band(sheet: Sheet, profile: Profile) -> None:
    """The band, pale between fine edges, and the nominal line dashed in it, on either side."""
    for turned in (False, True):
        smallest, largest, nominal = (
            mirrored(side) if turned else side
            for side in (profile.smallest, profile.largest, profile.nominal)
        )
        sheet.polygon([*largest, *reversed(smallest)], PALE, "fine")
        sheet.path(nominal, "fine dash")
    _draw_ends(sheet, profile.nominal)


def _draw_ends(sheet: Sheet, nominal: Side) -> None:
    for x, y in nominal:
        sheet.path([(x, -y), (x, y)], "fine")


def _cross(sheet: Sheet, point: Point, half: float) -> None:
    x, y = point
    sheet.path([(x - half, y - half), (x + half, y + half)], "fine")
    sheet.path([(x - half, y + half), (x + half, y - half)], "fine")


def _draw_bar(sheet: Sheet, profile: Profile, units: Units, y: float) -> None:
    """A bar of a round length on paper, with what it is at the part."""
    paper = profile.magnification
    room = _BAR_SHARE * (sheet.right - sheet.left) * paper
    bar = next((b for b in _BARS[units] if b <= room), _BARS[units][-1])
    half, tick = bar / paper / 2.0, 1.5 / to_mm(paper, units)
    middle = (sheet.left + sheet.right) / 2.0
    sheet.path([(middle - half, y), (middle + half, y)])
    for x in (middle - half, middle + half):
        sheet.path([(x, y - tick), (x, y + tick)])
    words = f"{plain(bar)} {units} on paper, {figure(bar / paper, units)} at the part"
    sheet.text((middle, y), words, "", 0.0, 24.0, "middle")


def _lines(profile: Profile, units: Units, tolerance_arcsec: float, *, picked: bool) -> list[str]:
    included = math.degrees(2.0 * profile.cone.half_rad)
    large = figure(profile.cone.large_diameter, units)
    lines = [
        f"Included angle {degrees(included, tolerance_arcsec)} ±{arcsec(tolerance_arcsec)}, large "
        f"diameter {large} ±{small_length(profile.diameter_tolerance, units)}",
        "Solid: smallest and largest allowed. Dashed: as wanted.",
    ]
    return [*lines, "Crosses: points as picked."] if picked else lines
