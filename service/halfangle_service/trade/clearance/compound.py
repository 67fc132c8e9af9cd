"""Block-like work on a compound plate under a flat wheel.

Lengths in one unit. Machine's frame as in `trade.sine.compound`: x to the right along the table's
travel, y to the back along the wheel's axis, z upward from the face, which lies level at 0. A body
is the hull of its corners. A gap is the larger of those seen from the front and from the side;
where both overlap, what of the body stands within the part's width decides, so that only what meets
in space fouls. Stacks stand under the plates that they raise, and are looked at with them.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import product

import numpy as np
from shapely import MultiPoint

from halfangle_service.trade.clearance.assembly import Head, Stroke, head_parts
from halfangle_service.trade.clearance.bodies import (
    Body,
    BodyKind,
    Gap,
    HeadPart,
    gaps_between,
)
from halfangle_service.trade.clearance.on_base import Holder
from halfangle_service.trade.clearance.plate import Plate
from halfangle_service.trade.clearance.stand import Found, WheelState
from halfangle_service.trade.sine.compound import BaseAxis, Vector, plate_rotation

_NOTHING = 1e-9
#: Halvings in the search for how far a body stands from a part in space.
_HALVINGS = 12


@dataclass(frozen=True, slots=True)
class HingedBody:
    """One plate of a compound plate: its sizes square to its hinge, and its width along it."""

    plate: Plate
    width: float

    def corners(self, along_x: bool) -> list[Vector]:
        """Its corners, the middle of its top at the origin; `along_x`: square to its hinge is x."""
        plate = self.plate
        half = (plate.length / 2.0, self.width / 2.0)
        x, y = half if along_x else half[::-1]
        return _box((-x, -y, -plate.thickness), (x, y, 0.0))

    def low_roll(self, along_x: bool, angle_rad: float) -> Vector:
        """Center of its low roll, whichever end is raised."""
        plate = self.plate
        away = (plate.low_roll_from_end - plate.length / 2.0) * math.copysign(1.0, angle_rad)
        return np.array([away if along_x else 0.0, 0.0 if along_x else away, -plate.thickness])


@dataclass(frozen=True, slots=True)
class SlopedBlock:
    """Work as drawn: its sizes along x, y and z, and the normal of its face.

    The face begins at the highest corner of the top and falls by `rise` at most; past that the top
    is level again.
    """

    sizes: tuple[float, float, float]
    rise: float
    normal: Vector

    @property
    def drop(self) -> float:
        """How far the face's plane falls over the whole top."""
        x, y, z = (float(part) for part in self.normal)
        return (abs(x) * self.sizes[0] + abs(y) * self.sizes[1]) / z

    def under_face(self) -> list[Vector]:
        """Corners of what of the work lies under the face's plane."""
        return _clipped(self._whole(self.sizes[2]), self.normal, self._reach)

    def face(self) -> list[Vector]:
        """Corners of the face itself, as far as it falls."""
        low = np.array([0.0, 0.0, 1.0])
        above = _clipped(self.under_face(), -low, self.rise - self.sizes[2])
        on = [at for at in above if float(self.normal @ at) >= self._reach - self._least]
        return on or above

    def past_face(self) -> list[Vector]:
        """Corners of the work up to its low top, where the face does not take all of it."""
        if self.drop - self.rise <= _NOTHING * self.sizes[2]:
            return []
        return self._whole(self.sizes[2] - self.rise)

    @property
    def _reach(self) -> float:
        """The face's plane along its normal."""
        x, y, z = (float(part) for part in self.normal)
        return z * self.sizes[2] - (abs(x) * self.sizes[0] + abs(y) * self.sizes[1]) / 2.0

    @property
    def _least(self) -> float:
        return _NOTHING * max(self.sizes)

    def _whole(self, height: float) -> list[Vector]:
        x, y = self.sizes[0] / 2.0, self.sizes[1] / 2.0
        return _box((-x, -y, 0.0), (x, y, height))


@dataclass(frozen=True, slots=True)
class Solid:
    """A body by its corners in space; `ground`: the wheel touches it."""

    name: str
    kind: BodyKind
    corners: tuple[Vector, ...]
    ground: bool = False

    def seen(self, across: int, corners: Sequence[Vector] = ()) -> Body:
        """The body from the front (`across` 0) or the side (1); of these corners where given."""
        points = [(float(at[across]), float(at[2])) for at in corners or self.corners]
        hull = MultiPoint(points).convex_hull
        outline = hull.exterior.coords[:-1] if hull.geom_type == "Polygon" else hull.coords[:]
        return Body(self.name, self.kind, tuple((x, z) for x, z in outline), self.ground)

    def within(self, low: float, high: float) -> list[Vector]:
        """Corners of what of it lies from `low` to `high` along y; empty where nothing does."""
        along = np.array([0.0, 1.0, 0.0])
        return _clipped(_clipped(self.corners, along, high), -along, -low)


@dataclass(frozen=True, slots=True)
class CompoundStand:
    """Work laid on both plates at their hinge angles, in the machine's frame.

    `laid` is the work's rotation as it lies on the upper plate, its middle over that of the plate.
    """

    block: SlopedBlock
    holder: Holder
    upper: HingedBody
    base: HingedBody
    hinges: tuple[float, float]
    base_axis: BaseAxis
    laid: Vector

    def solids(self) -> tuple[list[Solid], float, list[Vector]]:
        """Bodies with the face at z = 0 and its least x and y at 0; the table's z; the face."""
        work = [self.laid @ at for at in self.block.under_face()]
        past = [self.laid @ at for at in self.block.past_face()]
        lows, highs = (limit([*work, *past], axis=0) for limit in (np.min, np.max))
        seat = np.array([-(lows[0] + highs[0]) / 2.0, -(lows[1] + highs[1]) / 2.0, -lows[2]])
        seat = seat + np.array([0.0, 0.0, self.holder.seat])
        solids = [Solid("work", "work", self._up([at + seat for at in work]), ground=True)]
        if past:
            up = self._up([at + seat for at in past])
            solids.append(Solid("work past the face", "work", up))
        if self.holder.height > 0.0:
            reach = (self.holder.past_tall_end, self.holder.past_short_end)
            over = max(reach)
            size = (highs - lows) / 2.0
            there = _box(
                (-size[0] - over, -size[1] - over, 0.0),
                (size[0] + over, size[1] + over, self.holder.height),
            )
            solids.append(Solid("holder", "holder", self._up(there)))
        upper_x, base_x = self.base_axis == "x", self.base_axis == "y"
        solids.append(Solid("upper plate", "plate", self._up(self.upper.corners(upper_x))))
        solids.append(Solid("base plate", "plate", self._on_base(self.base.corners(base_x))))
        face = [self._up([self.laid @ at + seat])[0] for at in self.block.face()]
        least = np.min(face, axis=0)
        to = np.array([least[0], least[1], float(np.mean([at[2] for at in face]))])
        moved = [
            Solid(each.name, each.kind, tuple(at - to for at in each.corners), each.ground)
            for each in solids
        ]
        plate = self.base.plate
        roll = self._on_base([self.base.low_roll(base_x, self.hinges[0])])[0]
        table = float(roll[2] - to[2]) - (plate.closed_height - plate.thickness)
        return moved, table, [at - to for at in face]

    def _up(self, points: Sequence[Vector]) -> tuple[Vector, ...]:
        """Points of the upper plate, its top's middle at the origin, in the machine's frame."""
        along_x = self.base_axis == "x"
        roll = self.upper.low_roll(along_x, self.hinges[1])
        turn = plate_rotation(0.0, self.hinges[1], self.base_axis)
        # Its low roll lies as over the closed plate, which stands in the middle of the base plate.
        lift = np.array([0.0, 0.0, self.upper.plate.closed_height])
        return self._on_base([roll + turn @ (at - roll) + lift for at in points])

    def _on_base(self, points: Sequence[Vector]) -> tuple[Vector, ...]:
        roll = self.base.low_roll(self.base_axis == "y", self.hinges[0])
        turn = plate_rotation(self.hinges[0], 0.0, self.base_axis)
        return tuple(roll + turn @ (at - roll) for at in points)


def compound_gaps(
    solids: Sequence[Solid],
    face: Sequence[Vector],
    heads: dict[WheelState, Head],
    past: float,
) -> Found:
    """Every gap, the wheel going past the face by so much on every side."""
    size = np.max(face, axis=0)
    stroke = Stroke(past, past)
    seen = [(solid, solid.seen(0), solid.seen(1)) for solid in solids]
    found: Found = []
    for state, head in heads.items():
        front = head_parts(head, stroke, float(size[0]), "along-travel")
        side = head_parts(head, stroke, float(size[1]), "across-travel")
        pairs = [
            (part, beside, *each)
            for each in seen
            for part, beside in zip(front, side, strict=True)
            if not (each[0].ground and part.name == "wheel")
        ]
        along = gaps_between([(part, body) for part, _, _, body, _ in pairs])
        across = gaps_between([(beside, body) for _, beside, _, _, body in pairs])
        for (part, beside, solid, *_), *both in zip(pairs, along, across, strict=True):
            largest = max(both, key=lambda gap: gap.gap)
            met = largest.gap < 0.0
            found.append((state, _in_space(part, beside, solid, largest) if met else largest))
    return found


def _in_space(part: HeadPart, beside: HeadPart, solid: Solid, seen: Gap) -> Gap:
    """The gap where both views overlap: what of the body lies within the part's width decides."""
    ys = [y for y, _ in beside.core]
    low, high = min(ys), max(ys)

    def within(more: float) -> Gap | None:
        inside = solid.within(low - more, high + more)
        return gaps_between([(part, solid.seen(0, inside))])[0] if inside else None

    closest = within(0.0)
    if closest is not None and closest.gap < 0.0:
        return closest if closest.gap > seen.gap else seen
    # No nearer than w, as long as what lies nearer than w across is no nearer than w along.
    least, most = 0.0, (max(high - low, part.radius) if closest is None else closest.gap)
    for _ in range(_HALVINGS):
        middle = (least + most) / 2.0
        gap = within(middle)
        least, most = (middle, most) if gap is None or gap.gap >= middle else (least, middle)
    on = closest or seen
    return Gap(seen.part, seen.body, least, on.on_part, on.on_body)


def _box(low: Sequence[float], high: Sequence[float]) -> list[Vector]:
    return [np.array(corner) for corner in product(*zip(low, high, strict=True))]


def _clipped(points: Sequence[Vector], normal: Vector, reach: float) -> list[Vector]:
    """Points whose hull is what of the hull of `points` reaches no farther along a normal.

    A way between any two of them lies within their hull, so that no edge has to be known.
    """
    out = [float(normal @ at) - reach for at in points]
    kept = [at for at, past in zip(points, out, strict=True) if past <= 0.0]
    if not kept or len(kept) == len(points):
        return kept
    crossed = [
        one + (other - one) * (past / (past - beyond))
        for one, past in zip(points, out, strict=True)
        if past <= 0.0
        for other, beyond in zip(points, out, strict=True)
        if beyond > 0.0
    ]
    return [*kept, *crossed]
