"""Work beside a wheel without a plate: a swivelled workhead, the wheel's side, a dressed flank.

One unit of length, angles in radians. In each x is along the ground line, of a dressed flank along
the work's axis or base, from the line's large or high end; z goes from there into the wheel.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from halfangle_service.trade.clearance.assembly import Head, Stroke
from halfangle_service.trade.clearance.bodies import Body, HeadPart, Point, box
from halfangle_service.trade.clearance.turned import Turned

#: What reaches farther than any set-up: a table, in parts of what stands on it.
_FAR = 100.0


def in_workhead(turned: Turned, half_width: float) -> list[Body]:
    """Work in a workhead, seen from above: its body by its width, the axis in the middle."""
    length, front = turned.fixture.body_length, turned.front
    there = box(front - length, -half_width, front, half_width)
    return [*turned.turning(), Body("workhead", "fixture-body", turned.outline(there))]


@dataclass(frozen=True, slots=True)
class Seen:
    """One body from above, and its lowest and highest over the work's axis."""

    body: Body
    low: float
    high: float

    def from_the_side(self, axis: float) -> Body:
        """The same, seen along the wheel's axis, the work's axis at this height."""
        xs = [x for x, _ in self.body.corners]
        corners = box(min(xs), axis + self.low, max(xs), axis + self.high)
        return Body(self.body.name, self.body.kind, corners, self.body.ground)


def beside_the_side(turned: Turned, half_width: float) -> list[Seen]:
    """A cone swivelled to a wheel's side in a fixture on the table, which is there too."""
    fixture = turned.fixture
    radii = {"cone": turned.cone.large_radius, "shank": fixture.shank_radius}
    radii |= {"nose": fixture.nose_radius}
    radii |= {part.name: part.radius for part in fixture.turning}
    seen = [Seen(body, -radii[body.name], radii[body.name]) for body in turned.turning()]
    *_, body = in_workhead(turned, half_width)
    foot = -fixture.axis_height
    named = Body("fixture body", "fixture-body", body.corners)
    return [*seen, Seen(named, foot, foot + fixture.body_height), _table(seen, foot)]


def _table(seen: Sequence[Seen], top: float) -> Seen:
    far = _FAR * max(abs(at) for each in seen for point in each.body.corners for at in point)
    return Seen(Body("table", "table", box(-far, -far, far, far)), top - far, top)


def swivelled_block(outline: Sequence[Body], width: float) -> list[Seen]:
    """Block-like work on its side on the table, seen from above, so wide upward."""
    seen = [Seen(body, -width / 2.0, width / 2.0) for body in outline]
    return [*seen, _table(seen, -width / 2.0)]


def side_parts(
    head: Head, stroke: Stroke, slant: float, below: float
) -> tuple[tuple[HeadPart, ...], tuple[HeadPart, ...]]:
    """A wheel's side over its stroke, from above and along its axis, which lies at z = 0 there.

    `below` is from the spindle down to the work's axis. The wheel stands over the middle of the
    ground line; where its side is not wide enough there for line and overruns, the table travels.
    """
    chord = math.sqrt(max(0.0, head.radius**2 - below**2))
    first, last = -stroke.past_large_end, slant + stroke.past_small_end
    middle = (first + last) / 2.0
    reach = max(0.0, middle - first - chord)
    start, end = middle - reach, middle + reach
    over = (head.flange_width - head.width) / 2.0
    flange = head.flange_radius
    above = [
        HeadPart("wheel", box(start - head.radius, 0.0, end + head.radius, head.width)),
        HeadPart("flange", box(start - flange, -over, end + flange, head.width + over)),
    ]
    path: tuple[Point, ...] = ((start, 0.0), (end, 0.0))
    along = [HeadPart("wheel", path, head.radius), HeadPart("flange", path, flange)]
    if head.guard is not None:
        length, width, edge = head.guard
        half, over = length / 2.0, (width - head.width) / 2.0
        above.append(HeadPart("guard", box(start - half, -over, end + half, head.width + over)))
        top = head.radius + abs(edge)
        along.append(HeadPart("guard", box(start - half, -edge, end + half, top)))
    return tuple(above), tuple(along)


@dataclass(frozen=True, slots=True)
class Flank:
    """A flank over a ground line that falls by an angle along x, from z = 0."""

    angle_rad: float
    slant: float

    def width(self, stroke: Stroke) -> float:
        """Width of wheel that it takes with both overruns."""
        reach = self.slant + stroke.past_large_end + stroke.past_small_end
        return reach * math.cos(self.angle_rad)

    def parts(self, head: Head, stroke: Stroke) -> tuple[HeadPart, ...]:
        """The wheel with the flank dressed on it, seen on edge, and what hangs about it.

        The rest of its width stands at its full diameter past the low end.
        """
        sin, cos = math.sin(self.angle_rad), math.cos(self.angle_rad)
        left = -stroke.past_large_end * cos
        high = stroke.past_large_end * sin
        end = self.slant + stroke.past_small_end
        right, low = end * cos, -end * sin
        spindle, middle = low + head.radius, left + head.width / 2.0
        top = spindle + head.radius
        wheel = (
            (left, high),
            (right, low),
            (left + head.width, low),
            (left + head.width, top),
            (left, top),
        )
        half = head.flange_width / 2.0
        over = box(
            middle - half, spindle - head.flange_radius, middle + half, spindle + head.flange_radius
        )
        parts = [HeadPart("wheel", wheel), HeadPart("flange", over)]
        if head.guard is not None:
            _, width, edge = head.guard
            half = width / 2.0
            parts.append(
                HeadPart(
                    "guard", box(middle - half, spindle - edge, middle + half, top + abs(edge))
                )
            )
        return tuple(parts)


def on_table(bodies: Sequence[Body], top: float) -> list[Body]:
    """Bodies with the table under them, whose top lies at this height."""
    far = _FAR * max(abs(at) for body in bodies for point in body.corners for at in point)
    return [*bodies, Body("table", "table", box(-far, top - far, far, top))]
