"""The set-up on a tilted plate, drawn to scale in the plane of the tilt; one unit of length."""

import math
from collections.abc import Sequence

from halfangle_service.trade.clearance.assembly import Assembly, head_parts
from halfangle_service.trade.clearance.bodies import Body, BodyKind, Gap, HeadPart, Point
from halfangle_service.trade.clearance.case import Case
from halfangle_service.trade.svg import ALERT, METAL, PALE, WORK, Sheet
from halfangle_service.trade.units import Units
from halfangle_service.trade.wording import length, option, plain

_FILL: dict[BodyKind, str] = {
    "cone": WORK,
    "shank": WORK,
    "plate": METAL,
    "base": METAL,
    "stack": "#8fae8b",
}
#: Plate and its supports are drawn first, the work last.
_ORDER: dict[BodyKind, int] = {
    "base": 0,
    "stack": 1,
    "plate": 2,
    "fixture-body": 3,
    "shank": 8,
    "cone": 9,
}
_NAMED: frozenset[BodyKind] = frozenset(
    {"plate", "fixture-body", "base", "stack", "nose", "cone", "turning-part"}
)
_WIDTH_PX = 900.0
_LEADER_PX = 36.0
_UNITS: dict[Units, str] = {"in": "inches", "mm": "millimetres"}


def setup_svg(case: Case, closest: Gap, units: Units) -> str:
    """Draw bodies, the wheel's head at both ends of its stroke, the worn wheel, the least gap."""
    assembly = case.assembly
    parts = {
        state: head_parts(head, case.stroke, assembly.cone.slant, case.direction)
        for state, head in case.heads.items()
    }
    tilt = plain(math.degrees(assembly.cone.half_angle))
    lines = [
        f"Tilt {tilt}°, {option(case.direction)}; lengths in {_UNITS[units]}; to scale.",
        "Wheel, flange and guard at the ends of the stroke. Red: the least gap, new or worn.",
    ]
    bodies = assembly.bodies()
    sheet = _sheet(assembly, bodies, parts["new"], len(lines))
    for body in _back_to_front(bodies):
        sheet.polygon(body.corners, _FILL.get(body.kind, PALE))
    for center in assembly.rolls:
        sheet.circle(center, assembly.plate.roll_diameter / 2.0, "", METAL)
    left, right = sheet.left, sheet.right
    sheet.path([(left, assembly.table), (right, assembly.table)], "thin")
    sheet.text((left, assembly.table), "table", "", 4, 15)
    for part in parts["new"]:
        _part(sheet, part)
    for part in parts.get("worn", ())[:1]:
        _part(sheet, part, "thin dash", "worn wheel")
    _axis(sheet, assembly)
    _names(sheet, bodies)
    _closest(sheet, closest, units)
    return sheet.render(lines)


def _sheet(
    assembly: Assembly, bodies: Sequence[Body], parts: Sequence[HeadPart], lines: int
) -> Sheet:
    """A sheet whose window holds bodies and head."""
    points = [corner for body in bodies for corner in body.corners]
    for part in parts:
        for x, z in part.core:
            points += [(x - part.radius, z - part.radius), (x + part.radius, z + part.radius)]
    xs, zs = [x for x, _ in points], [z for _, z in points]
    space = 0.02 * (max(xs) - min(xs))
    return Sheet(
        min(xs) - space,
        min(*zs, assembly.table) - space,
        max(xs) + space,
        max(zs),
        _WIDTH_PX,
        "Wheel over the tilted plate",
        header_px=40.0 + 18.0 * lines,
        margin_px=30.0,
    )


def _back_to_front(bodies: Sequence[Body]) -> list[Body]:
    return sorted(bodies, key=lambda body: _ORDER.get(body.kind, 5))


def _part(sheet: Sheet, part: HeadPart, style: str = "", label: str = "") -> None:
    """A head part at both ends of the stroke, or its swept box."""
    label = label or part.name
    if part.radius == 0.0:
        sheet.polygon(part.core, "none", style or ("wheel" if part.name == "wheel" else "dash"))
        (left, _), (_, top) = part.core[0], part.core[2]
        sheet.text((left, top), label, "", 6, 16, rim=True)
        return
    start, end = part.core
    for center, more in ((start, style), (end, style or "thin dash")):
        solid = "wheel" if part.name == "wheel" else "dash"
        sheet.circle(center, part.radius, more or solid)
    sheet.text((start[0], start[1] + part.radius), label, "", 0, 16, "middle", rim=True)


def _axis(sheet: Sheet, assembly: Assembly) -> None:
    reach = 0.15 * assembly.plate.length
    back = assembly.front - assembly.fixture.body_length - reach
    ends = [assembly.level((u, 0.0)) for u in (back, assembly.cone.length + reach)]
    sheet.path(ends, "axis")


def _names(sheet: Sheet, bodies: Sequence[Body]) -> None:
    """Names of the bodies, in their middles."""
    for body in bodies:
        middle = _middle(body.corners)
        if body.kind in _NAMED:
            sheet.text(middle, body.name, "", 0, 5, "middle", rim=True)


def _middle(corners: Sequence[Point]) -> Point:
    count = len(corners)
    return (sum(x for x, _ in corners) / count, sum(z for _, z in corners) / count)


def _closest(sheet: Sheet, gap: Gap, units: Units) -> None:
    """The least gap as a red line, with its size at the end of a leader that clears the work."""
    sheet.path([gap.on_part, gap.on_body], "alert")
    x, y = sheet.place(gap.on_body)
    sheet.marks.append(f'<circle cx="{x:.2f}" cy="{y:.2f}" r="4" fill="{ALERT}"/>')
    words = f"{gap.part} to {gap.body}: {length(gap.gap, units)}"
    # Up and away from the work, toward the side with more room.
    right = x < sheet.width_px / 2.0
    way = _LEADER_PX if right else -_LEADER_PX
    sheet.marks.append(
        f'<path class="thin" d="M{x:.2f} {y:.2f}l{-way:.0f} {-_LEADER_PX:.0f}" fill="none"/>'
    )
    anchor = "end" if right else "start"
    sheet.text(gap.on_body, words, "a", -way, -_LEADER_PX - 6.0, anchor)
