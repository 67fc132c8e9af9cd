"""The set-up on a tilted plate under the wheel, to scale in the plane of the tilt.

Everything that `clearance` knows: plate, fixture, work and stack where they stand, wheel, flange
and guard at both ends of the stroke as far up as they matter, the worn wheel, the least gap.
Lengths in one unit, sheets in millimetres.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from halfangle_service.trade.clearance.assembly import Assembly
from halfangle_service.trade.clearance.bodies import Body, BodyKind, Gap
from halfangle_service.trade.clearance.case import Case
from halfangle_service.trade.drawing.dimensions import dimension
from halfangle_service.trade.drawing.marks import TEXT, Box, Point, Tone, around
from halfangle_service.trade.drawing.metrics import cut
from halfangle_service.trade.drawing.sheet import WIDTH_MM, Sheet, View
from halfangle_service.trade.drawing.stage import draw_table
from halfangle_service.trade.drawing.svg import Scale, svg_of
from halfangle_service.trade.set_up_drawing.head import (
    draw_head,
    half_width,
    name_head,
    stroke_of,
)
from halfangle_service.trade.set_up_drawing.setting import HIGH, LOW, UNITS_IN_WORDS
from halfangle_service.trade.set_up_drawing.stacks import Stack, middle_of
from halfangle_service.trade.units import Units
from halfangle_service.trade.wording import length, option, plain

_TONES: dict[BodyKind, Tone] = {
    "cone": "work",
    "shank": "work",
    "plate": "metal",
    "base": "metal",
    "stack": "block",
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
TALLEST = 115.0
#: Room for the height over all beside the sizes of a low stack.
_DIMENSION = 16.0
#: Names are cut to so much of the sheet.
_NAME_SHARE = 0.4
#: What is drawn of the head over the highest of what matters, as a part of the plate's length.
_OVER = 0.08
#: A head that is no higher than so many times what matters is drawn whole.
_WHOLE = 1.25


@dataclass(frozen=True, slots=True)
class UnderWheel:
    """A set-up under the wheel, with the least gap.

    `high` and `low`: the blocks of the stacks from the bottom up; without them the stack is drawn
    as one. `work` names the work and `mark` says how its marked hand lies, `raised` which side is
    raised (`left` and `front` are drawn the other way round). `loading`: room over the set-up.
    """

    case: Case
    closest: Gap
    high: tuple[float, ...] = ()
    low: tuple[float, ...] = ()
    work: str = "cone"
    mark: str | None = None
    raised: str | None = None

    @property
    def assembly(self) -> Assembly:
        """What stands on the table."""
        return self.case.assembly

    @property
    def sunk(self) -> float:
        """How far the table lies lower than without a stack under the low roll."""
        return sum(self.low)

    @property
    def seat(self) -> float:
        """What both stacks stand on."""
        return self.assembly.base_top - self.sunk

    @property
    def table(self) -> float:
        """The table."""
        return self.assembly.table - self.sunk

    @property
    def bodies(self) -> list[Body]:
        """Everything but the stack, back to front; the base under a low stack stands lower."""
        found = [self._lowered(body) for body in self.assembly.bodies() if body.kind != "stack"]
        return sorted(found, key=lambda body: _ORDER.get(body.kind, 5))

    def _lowered(self, body: Body) -> Body:
        if body.kind != "base":
            return body
        corners = tuple((x, z - self.sunk) for x, z in body.corners)
        return Body(body.name, body.kind, corners, body.ground)

    def stacks(self, units: Units) -> Iterator[Stack]:
        """The stacks that stand there."""
        (low, _), (high, top) = self.assembly.rolls
        width, radius = 0.6 * self.roll, self.roll / 2.0
        sizes = self.high or (top - radius - self.seat,)
        if sum(sizes) > 0.0:
            told = bool(self.high)
            name = HIGH if told else "stack"
            yield Stack(name, sizes, high, self.seat, width, units, told=told)
        if self.low:
            yield Stack(LOW, self.low, low, self.seat, width, units, left=True)

    @property
    def roll(self) -> float:
        """Diameter of the rolls."""
        return self.assembly.plate.roll_diameter


def under_wheel_svg(
    set_up: UnderWheel,
    units: Units,
    *,
    title: str = "Wheel over the tilted plate",
    lines: Sequence[str] = (),
    width: float = WIDTH_MM,
    tallest: float = TALLEST,
    headed: bool = True,
) -> str:
    """Draw bodies, stacks, the wheel's head at both ends of its stroke, and the least gap.

    `tallest`: most height, in millimetres on paper, that what is drawn takes without its words.
    """
    sheet = Sheet(width=width)
    crop = _crop(set_up)
    view = _placed(sheet, set_up, units, crop, tallest)
    _draw_bodies(sheet, set_up, view, units)
    draw_head(sheet, set_up.case, set_up.closest, view, crop)
    for stack in set_up.stacks(units):
        stack.write_sizes(sheet, view, _end(set_up, left=stack.left))
    _dimension(sheet, set_up, view, crop, units)
    _draw_gap(sheet, set_up, view, units)
    _name(sheet, set_up, view)
    name_head(sheet, set_up.case, set_up.closest, view, crop, units)
    tilt = plain(math.degrees(set_up.assembly.cone.half_angle))
    said = [*lines, f"Tilt {tilt}°, {option(set_up.case.direction)}. {UNITS_IN_WORDS[units]}"]
    scale = Scale(view.scale_to(units), units)
    return svg_of(sheet, title, said, scale=scale, headed=headed)


def _standing(set_up: UnderWheel) -> list[Point]:
    """Corners of all that stands there, the rolls' too."""
    corners = [corner for body in set_up.bodies for corner in body.corners]
    half = set_up.roll / 2.0
    for x, z in set_up.assembly.rolls:
        corners += [(x - half, z - half), (x + half, z + half)]
    return [*corners, (0.0, set_up.table)]


def _crop(set_up: UnderWheel) -> float:
    """How far up the head is drawn: past all that stands, its lower edges and the least gap."""
    head = set_up.case.heads["new"]
    matters = [z for _, z in (*_standing(set_up), set_up.closest.on_part, set_up.closest.on_body)]
    matters.append(head.radius - head.flange_radius)
    if head.guard is not None:
        matters.append(head.radius - head.guard[2])
    over = _OVER * set_up.assembly.plate.length
    crop, whole = max(matters) + over, 2.0 * head.radius
    return whole if whole <= _WHOLE * crop else crop


def _window(set_up: UnderWheel, crop: float) -> Box:
    """What must fit: all that stands, and the wheels up to where they are cut."""
    points = _standing(set_up)
    head = set_up.case.heads["new"]
    for x, z in _swept(set_up, head.radius, head.width, crop):
        points.append((x, z))
    return around(points)


def _swept(set_up: UnderWheel, radius: float, width: float, crop: float) -> list[Point]:
    """Corners around a wheel over the stroke, as far up as it is drawn."""
    first, last = stroke_of(set_up.case)
    half = half_width(radius, crop)
    if set_up.case.direction == "along-travel":
        return [(first - half, 0.0), (last + half, min(crop, 2.0 * radius))]
    return [(first, 0.0), (max(last, first + width), min(crop, 2.0 * radius))]


def _placed(sheet: Sheet, set_up: UnderWheel, units: Units, crop: float, tallest: float) -> View:
    """Place the view so that dimensions and the sizes of the blocks have room beside it."""
    left = right = 16.0
    mirrored = set_up.raised in ("left", "front")
    for _ in range(12):
        window = _window(set_up, crop)
        view = sheet.view(window, units, tallest, (left, right), mirrored=mirrored)
        past = [s.overflow(sheet, view, _end(set_up, left=s.left)) for s in set_up.stacks(units)]
        room = _DIMENSION if set_up.low else 0.0
        over_left = max((at_left for at_left, _ in past), default=0.0) + (0.0 if mirrored else room)
        over_right = max((at_right for _, at_right in past), default=0.0) + (
            room if mirrored else 0.0
        )
        if max(over_left, over_right) <= 0.0:
            break
        left, right = left + max(over_left, 0.0), right + max(over_right, 0.0)
    return view


def _end(set_up: UnderWheel, *, left: bool) -> float:
    """The plate's low or high end."""
    (plate,) = (body for body in set_up.bodies if body.kind == "plate")
    return (min if left else max)(x for x, _ in plate.corners)


def _draw_bodies(sheet: Sheet, set_up: UnderWheel, view: View, units: Units) -> None:
    assembly = set_up.assembly
    xs = [x for x, _ in _standing(set_up)]
    draw_table(sheet, view, min(xs), max(x for x, _ in _feet(set_up)), set_up.table)
    for body in (b for b in set_up.bodies if b.kind == "base"):
        sheet.polygon(view.all(body.corners), "metal")
    for stack in set_up.stacks(units):
        stack.draw(sheet, view)
    for body in (b for b in set_up.bodies if b.kind != "base"):
        sheet.polygon(view.all(body.corners), _TONES.get(body.kind, "pale"))
    for center in assembly.rolls:
        sheet.circle(view.at(center), view.scale * set_up.roll / 2.0, "outline", "paper")
    reach = 0.08 * assembly.plate.length
    back = assembly.front - assembly.fixture.body_length - reach
    ends = [assembly.level((u, 0.0)) for u in (back, assembly.cone.length + reach)]
    sheet.line(view.all(ends), "axis")
    sheet.line(view.all([(0.0, 0.0), (assembly.cone.slant, 0.0)]), "heavy")


def _feet(set_up: UnderWheel) -> Iterator[Point]:
    """What stands on the table, at its right and left."""
    half = 0.8 * set_up.roll
    for x, z in set_up.assembly.rolls:
        yield from ((x - half, z), (x + half, z))
    for body in set_up.bodies:
        if body.kind == "base":
            yield from body.corners


def _draw_gap(sheet: Sheet, set_up: UnderWheel, view: View, units: Units) -> None:
    """The least gap as a heavy line between dots, with its size."""
    gap = set_up.closest
    ends = view.all([gap.on_part, gap.on_body])
    sheet.line(ends, "heavy")
    for end in ends:
        sheet.dot(end, 0.9)
    said = f"least gap {length(gap.gap, units)}"
    if gap.gap < 0.0:
        said = f"fouls by {length(-gap.gap, units)}"
    room = _NAME_SHARE * sheet.width
    names = cut(f"{gap.part} to {gap.body}", TEXT, room, bold=True)
    middle = ((ends[0][0] + ends[1][0]) / 2.0, (ends[0][1] + ends[1][1]) / 2.0)
    sheet.note([said, names], middle, (-1.0, -0.6), "arrow", bold=True)


def _dimension(sheet: Sheet, set_up: UnderWheel, view: View, crop: float, units: Units) -> None:
    """Stroke, height over all, and height of the wheel over the table."""
    first, last = stroke_of(set_up.case)
    over = min(crop, 2.0 * set_up.case.heads["new"].radius)
    ends = view.all([(first, over), (last, over)])
    start, end = sorted(ends)
    if set_up.case.direction == "along-travel":
        for x in (first, last):
            sheet.line(view.all([(x, 0.0), (x, over)]), "axis")
    dimension(sheet, start, end, f"stroke {length(last - first, units)}", (0.0, -1.0), first=6.0)
    standing = _standing(set_up)
    highest = max(standing, key=lambda point: point[1])
    left = min(x for x, _ in standing)
    off = (1.0, 0.0) if view.mirrored else (-1.0, 0.0)
    # From the outermost, so that the figures stand clear of everything.
    top = highest[1] if highest[1] > 0.0 else 0.0
    low = view.at((left, set_up.table))
    high = view.at((highest[0] if top else 0.0, top))
    over_all = length(top - set_up.table, units)
    dimension(sheet, low, high, f"over all {over_all}", off, (-off[0], 0.0), first=5.0)


def _name(sheet: Sheet, set_up: UnderWheel, view: View) -> None:
    """Names of the bodies and of the head's parts."""
    room = _NAME_SHARE * sheet.width
    outward = 1.0 if view.mirrored else -1.0
    for body in set_up.bodies:
        corners = view.all(body.corners)
        if body.kind == "cone":
            lines = [cut(line, TEXT, room) for line in (set_up.work, set_up.mark) if line]
            sheet.note(lines, middle_of(corners), (-outward, 0.3), "dot")
        elif body.kind != "shank":
            sheet.name(cut(body.name, TEXT, room), corners, (-outward, 0.6))
    if set_up.raised:
        (plate,) = (body for body in set_up.bodies if body.kind == "plate")
        end = view.at(max(plate.corners))
        sheet.note(f"raised: {set_up.raised}", end, (-outward, -0.3), "arrow", bold=True)
