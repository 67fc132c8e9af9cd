"""How work may lie on a compound plate by quarter turns, and the hinge angles of each way.

Each plate of a compound plate is hinged at one side and raises the other. A surface that asks for
the hinged side to be raised is had by turning the part; one that asks for a steep angle often by
tipping it on its side. Frames, signs and hinge angles as in `compound`, in radians. Derived here:

- part's frame: laid by the rotation Q, the surface's normal is Q n, and the hinges follow from it.
- machine's frame: what stood square on the plate stands along Q z now, and R Q z = m is asked of
  the hinges. Tipped along the upper hinge's sense (Q z = ±x for a base hinge along X) it is
  cos B = ±m_x with A as before; tipped along the base hinge's only where the upper angle is 0.
  A turn in plan changes nothing there: the plate's face stands as it did.
"""

import math
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal, get_args

import numpy as np

from halfangle_service.trade.sine.compound import (
    UP,
    BaseAxis,
    Frame,
    Matrix,
    Side,
    Vector,
    hinge_angles,
    other_axis,
    plate_rotation,
    raised_side,
)

#: Side of the work as it was drawn.
WorkSide = Literal["top", "bottom", "right", "left", "back", "front", "neither"]
#: Side that comes up when the work is tipped; `top` where it is not.
SideUp = Literal["top", "right", "left", "back", "front"]
#: Order in which turns in plan are preferred: as drawn, half round, a quarter either way.
_TURNS = (0, 2, 1, 3)
#: A component of a unit vector that is nothing but rounding.
_NOTHING = 1e-12
#: Direction in the machine's frame of each side.
_DIRECTIONS: dict[WorkSide, tuple[int, int, int]] = {
    "top": (0, 0, 1),
    "bottom": (0, 0, -1),
    "right": (1, 0, 0),
    "left": (-1, 0, 0),
    "back": (0, 1, 0),
    "front": (0, -1, 0),
}
#: Quarter turns about X and Y (right-hand) that bring each side up.
_TIPS: dict[SideUp, tuple[int, int]] = {
    "top": (0, 0),
    "left": (0, 1),
    "right": (0, -1),
    "back": (1, 0),
    "front": (-1, 0),
}


@dataclass(frozen=True, slots=True)
class Laying:
    """A way for work to lie: `side_up` comes up, then so many quarter turns in plan, X toward Y."""

    side_up: SideUp = "top"
    turns: int = 0

    @property
    def rotation(self) -> Matrix:
        """Rotation that takes the work as drawn to how it lies; of whole numbers."""
        about_x, about_y = _TIPS[self.side_up]
        tip = _quarter(0, about_x) @ _quarter(1, about_y)
        return np.asarray(_quarter(2, self.turns) @ tip)

    def side_at(self, side: Side) -> WorkSide:
        """Side of the work, as drawn, that lies at this side of the plate."""
        if side == "neither":
            return "neither"
        direction = self.rotation.T @ np.array(_DIRECTIONS[side])
        return next(
            name for name, along in _DIRECTIONS.items() if np.allclose(direction, along, atol=0.5)
        )


@dataclass(frozen=True, slots=True)
class Laid:
    """A surface's setting with the work laid in some way: the angles of base and upper hinge.

    `normal` is the surface's in the frame stated, the work as it lies.
    """

    laying: Laying
    normal: Vector
    hinges: tuple[float, float]

    @property
    def steepest(self) -> float:
        """The larger of both hinge angles, without its sign."""
        return max(map(abs, self.hinges))


def _quarter(axis: int, turns: int) -> Matrix:
    """Rotation by so many quarter turns about X (0), Y (1) or Z (2), right-hand."""
    cosine, sine = (1, 0, -1, 0)[turns % 4], (0, 1, 0, -1)[turns % 4]
    first, second = (axis + 1) % 3, (axis + 2) % 3
    matrix = np.zeros((3, 3))
    matrix[axis, axis] = 1.0
    matrix[first, first] = matrix[second, second] = cosine
    matrix[second, first], matrix[first, second] = sine, -sine
    return matrix


def laid(normal: Vector, frame: Frame, base_axis: BaseAxis, laying: Laying) -> Laid | None:
    """The setting of a surface with the work laid so; None where no hinge angles give it."""
    if frame == "part":
        turned = laying.rotation @ normal
        if turned[2] <= _NOTHING:
            return None
        return Laid(laying, turned, hinge_angles(turned, frame, base_axis))
    hinges = _machine_hinges(normal, base_axis, laying)
    return None if hinges is None else Laid(laying, normal, hinges)


def _machine_hinges(
    normal: Vector, base_axis: BaseAxis, laying: Laying
) -> tuple[float, float] | None:
    """Hinge angles that bring what stood square on the plate along a normal of the machine."""
    if laying.side_up == "top":
        return hinge_angles(normal, "machine", base_axis)
    square = laying.rotation @ UP
    place, other = (0, 1) if base_axis == "x" else (1, 0)
    base = math.atan2(-normal[other], normal[2])
    if abs(square[place]) > _NOTHING:
        hinges = base, math.copysign(math.acos(_unit(square[place] * normal[place])), square[place])
    elif abs(normal[place]) <= _NOTHING:
        hinges = math.copysign(math.acos(_unit(square[other] * normal[other])), square[other]), 0.0
    else:
        return None
    reached = plate_rotation(*hinges, base_axis) @ square
    upright = max(map(abs, hinges)) >= math.pi / 2.0 - _NOTHING
    return None if upright or not np.allclose(reached, normal, atol=1e-9) else hinges


def _unit(cosine: float) -> float:
    """Clip the last bit of rounding off a cosine."""
    return max(-1.0, min(1.0, float(cosine)))


@dataclass(frozen=True, slots=True)
class RaisedSides:
    """The sides that base and upper plate raise; None where a plate raises either."""

    base: Side | None = None
    upper: Side | None = None

    def fit(self, hinges: tuple[float, float], base_axis: BaseAxis) -> bool:
        """True where hinge angles raise no other sides than these."""
        axes = base_axis, other_axis(base_axis)
        return all(
            wanted is None or raised_side(axis, angle) in (wanted, "neither")
            for wanted, axis, angle in zip((self.base, self.upper), axes, hinges, strict=True)
        )


def as_drawn(normal: Vector, frame: Frame, base_axis: BaseAxis, sides: RaisedSides) -> Laid | None:
    """The setting with the work upright, turned in plan as little as the raised sides allow.

    None where no turn of the work does it: in the machine's frame it changes nothing.
    """
    turns = _TURNS if frame == "part" else (0,)
    found = (laid(normal, frame, base_axis, Laying(turns=turn)) for turn in turns)
    return next((way for way in found if way and sides.fit(way.hinges, base_axis)), None)


def other_layings(
    normal: Vector, frame: Frame, base_axis: BaseAxis, sides: RaisedSides, taken: Laying
) -> list[Laid]:
    """Every other way to lay the work that the raised sides allow, the least steep first.

    Of ways that differ only in which of two sides is raised the one with the least turn is given.
    """
    best: dict[tuple[SideUp, bool], Laid] = {}
    for way in _ways(normal, frame, base_axis):
        kind = way.laying.side_up, bool(way.laying.turns % 2)
        if kind not in best and sides.fit(way.hinges, base_axis):
            best[kind] = way
    best.pop((taken.side_up, bool(taken.turns % 2)), None)
    return sorted(best.values(), key=lambda way: way.steepest)


def _ways(normal: Vector, frame: Frame, base_axis: BaseAxis) -> Iterator[Laid]:
    turns = _TURNS if frame == "part" else (0,)
    for side_up in get_args(SideUp):
        for turn in turns:
            way = laid(normal, frame, base_axis, Laying(side_up, turn))
            if way is not None:
                yield way


#: What lies at each side once the plate is turned a quarter in plan, from +X toward +Y.
_TURNED_SIDE: dict[Side, Side] = {
    "right": "back",
    "back": "left",
    "left": "front",
    "front": "right",
    "neither": "neither",
}


@dataclass(frozen=True, slots=True)
class PlateTurned:
    """A compound plate turned on the machine: by how many quarter turns, and how it stands then."""

    turns: int
    base_axis: BaseAxis
    sides: RaisedSides


def plate_turned(normal: Vector, base_axis: BaseAxis, sides: RaisedSides) -> PlateTurned | None:
    """How to turn the plate so that its face stands with a normal of the machine.

    None where no turn lets the raised sides do it.
    """
    for turns in _TURNS:
        axis, turned = base_axis, sides
        for _ in range(turns):
            axis = other_axis(axis)
            turned = RaisedSides(
                *(
                    None if side is None else _TURNED_SIDE[side]
                    for side in (turned.base, turned.upper)
                )
            )
        if turned.fit(hinge_angles(normal, "machine", axis), axis):
            return PlateTurned(turns, axis, turned)
    return None
