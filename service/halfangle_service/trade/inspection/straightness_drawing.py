"""Readings along a surface line, with the narrowest zone that holds them and the fitted line.

Readings are magnified square to the line, so the sheet has no scale: it says how wide the zone is.
Places and readings in one unit, the sheet in mm.
"""

from collections.abc import Sequence

from halfangle_service.trade.drawing.dimensions import dimension
from halfangle_service.trade.drawing.marks import Point
from halfangle_service.trade.drawing.sheet import Sheet
from halfangle_service.trade.drawing.svg import svg_of
from halfangle_service.trade.inspection.straightness import LeastSquares, Zone
from halfangle_service.trade.units import Units
from halfangle_service.trade.wording import figure, small_length

#: Edges of the plot on the sheet, and the height on paper of the range that is drawn, in mm.
_LEFT, _RIGHT, _TALL = 14.0, 116.0, 46.0
#: Half of the range where nothing is left of a straight line, in the unit of the readings.
_NOTHING = 1e-6


class _Plot:
    """Where stations and readings, freed of the zone's slope, lie on the sheet."""

    def __init__(self, places: Sequence[float], readings: Sequence[float], slope: float) -> None:
        """Fit the range of what is drawn, in one unit, to the sheet."""
        self.slope = slope
        left = [y - slope * x for x, y in zip(places, readings, strict=True)]
        self.low, high = min(left), max(left)
        self.first, last = min(places), max(places)
        self.along = (_RIGHT - _LEFT) / (last - self.first)
        self.up = _TALL / max(high - self.low, 2.0 * _NOTHING)

    def at(self, place: float, reading: float) -> Point:
        """A reading at a place, both in the unit of the readings, on the sheet in mm."""
        off = reading - self.slope * place - self.low
        return _LEFT + self.along * (place - self.first), _TALL - self.up * off


def straightness_svg(
    places: Sequence[float],
    readings: Sequence[float],
    zone: Zone,
    line: LeastSquares,
    units: Units,
) -> str:
    """Draw the readings, the zone and the three readings that it rests on, and the fitted line."""
    sheet = Sheet()
    plot = _Plot(places, readings, zone.slope)
    pairs = sorted(zip(places, readings, strict=True))
    first, last = pairs[0][0], pairs[-1][0]
    sheet.line([plot.at(x, y) for x, y in pairs])
    for place in (zone.ends[0], zone.opposite):
        level = readings[place] - zone.slope * places[place]
        ends = [plot.at(x, level + zone.slope * x) for x in (first, last)]
        sheet.line(ends, "thin")
    fitted = [readings[k] - line.residuals[k] for k in range(len(places))]
    by_place = sorted(zip(places, fitted, strict=True))
    sheet.line([plot.at(*by_place[0]), plot.at(*by_place[-1])], "hidden")
    for x, y in pairs:
        sheet.dot(plot.at(x, y), 0.8)
    for place in (*zone.ends, zone.opposite):
        sheet.circle(plot.at(places[place], readings[place]), 2.0, "thin")
    if zone.width:
        level = readings[zone.opposite] - zone.slope * places[zone.opposite]
        base = readings[zone.ends[0]] - zone.slope * places[zone.ends[0]]
        above, below = (plot.at(last, y + zone.slope * last) for y in (level, base))
        dimension(sheet, above, below, small_length(zone.width, units), (1.0, 0.0), first=6.0)
    corner, other = plot.at(first, 0.0)[0], plot.at(last, 0.0)[0]
    foot = _TALL + 2.0
    dimension(sheet, (corner, foot), (other, foot), figure(last - first, units), (0.0, 1.0))
    lines = [
        "Solid: the narrowest zone, level here, and the readings; rings: what it rests on. Dashed: "
        "the line of least squares.",
    ]
    return svg_of(sheet, "Straightness of a line", lines)
