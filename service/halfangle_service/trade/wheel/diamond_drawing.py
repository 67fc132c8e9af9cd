"""A diamond at the wheel, to scale but for its nib: which way the wheel turns, lean and height.

Lengths in one unit, angles in radians.
"""

import math

from halfangle_service.trade.drawing.dimensions import dimension
from halfangle_service.trade.drawing.sheet import Sheet
from halfangle_service.trade.drawing.svg import svg_of
from halfangle_service.trade.units import Units
from halfangle_service.trade.wording import degrees, figure, length

_TALLEST = 100.0


def diamond_svg(
    wheel_diameter: float, diamond_height: float, nib_lean_rad: float, units: Units
) -> str:
    """Draw the wheel as it turns, its surface moving to the right below, and the nib under it."""
    radius, drag = (
        wheel_diameter / 2.0,
        nib_lean_rad + math.asin(diamond_height / wheel_diameter * 2),
    )
    point = (diamond_height, -math.sqrt(radius**2 - diamond_height**2))
    long, wide = 0.45 * radius, 0.05 * radius
    along = (-math.sin(nib_lean_rad), -math.cos(nib_lean_rad))
    across = (along[1], -along[0])
    sheet = Sheet()
    window = (-radius, -radius - long, radius, radius)
    view = sheet.view(window, units, _TALLEST, (28.0, 28.0))
    center = view.at((0.0, 0.0))
    sheet.circle(center, view.scale * radius, "outline", "wheel")
    sheet.line(view.all([(0.0, 1.05 * radius), (0.0, -radius - long)]), "axis")
    sheet.line(view.all([(0.0, 0.0), point]), "thin")
    body = [
        (
            point[0] + share * long * along[0] + side * wide * across[0],
            point[1] + share * long * along[1] + side * wide * across[1],
        )
        for share, side in ((0.2, 1.0), (1.0, 1.0), (1.0, -1.0), (0.2, -1.0))
    ]
    sheet.polygon(view.all([point, *body]), "metal")
    sheet.dot(center)
    # The arrow on the wheel: counter-clockwise as drawn, so that the surface moves right below.
    turn = view.scale * 0.72 * radius
    sheet.arc(center, turn, 110.0, 160.0, "heavy")
    tip = math.radians(163.0)
    end = (center[0] + turn * math.cos(tip), center[1] - turn * math.sin(tip))
    sheet.arrowhead(end, (-math.sin(tip), -math.cos(tip)), 1.8)
    if diamond_height:
        ends = view.at((0.0, -radius - long)), view.at((diamond_height, -radius - long))
        dimension(sheet, *ends, length(abs(diamond_height), units), (0.0, 1.0), first=6.0)
    where = "drags the point" if drag >= 0.0 else "digs the point in"
    leaning = degrees(math.degrees(abs(drag)), 120.0)
    sheet.note([f"wheel {where}:", f"{leaning} to its radius"], view.at(point), (1.0, 1.0))
    lines = [
        f"Wheel {figure(wheel_diameter, units)}; seen so that its surface moves to the right past "
        "the diamond."
    ]
    return svg_of(sheet, "Drag and height of the diamond", lines)
