"""Signs of a standing offset: the work's end seen along the line of the centers. In millimetres."""

from halfangle_service.trade.drawing.sheet import Sheet
from halfangle_service.trade.drawing.svg import svg_of

_WHEEL, _WORK = 26.0, 12.0


def standing_offset_svg() -> str:
    """Draw wheel and work from the end, and which way each offset is positive."""
    sheet = Sheet()
    wheel, work = (44.0, 40.0), (44.0 + _WHEEL + _WORK, 40.0)
    sheet.circle(wheel, _WHEEL, "outline", "wheel")
    sheet.circle(work, _WORK, "outline", "work")
    sheet.line([(wheel[0] - 1.15 * _WHEEL, 40.0), (work[0] + 3.2 * _WORK, 40.0)], "axis")
    sheet.line([(work[0], 40.0 - 2.4 * _WORK), (work[0], 40.0 + 1.6 * _WORK)], "axis")
    sheet.arrow(work, (work[0] - 1.6 * _WORK, 40.0), "heavy")
    sheet.arrow(work, (work[0], 40.0 - 1.9 * _WORK), "heavy")
    sheet.note("wheel", (wheel[0] - 8.0, 50.0), (-1.0, 1.0), "dot")
    sheet.note("work", (work[0] + 6.0, 46.0), (1.0, 1.0), "dot")
    sheet.note(
        ["offset toward wheel +", "makes taper"], (work[0] - 1.4 * _WORK, 40.0), (-0.3, -1.0)
    )
    sheet.note(["offset across", "by its square"], (work[0], 40.0 - 1.7 * _WORK), (1.0, -0.4))
    lines = ["Seen along the line of the centers, from the second one."]
    return svg_of(sheet, "Offsets of a center", lines)
