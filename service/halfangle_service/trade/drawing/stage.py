"""What things stand on: the surface of a table or a plate, hatched under its line; one unit."""

from halfangle_service.trade.drawing.sheet import Sheet, View

_DEEP = 2.2


def draw_table(sheet: Sheet, view: View, left: float, right: float, level: float) -> None:
    """The surface that everything stands on: a line, hatched under it."""
    (start, y), (end, _) = sorted(view.all([(left, level), (right, level)]))
    corners = [(start, y), (end, y), (end, y + _DEEP), (start, y + _DEEP)]
    sheet.polygon(corners, None, None, section=True)
    sheet.line([(start, y), (end, y)], "outline")
