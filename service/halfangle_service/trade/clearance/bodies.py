"""Bodies of a set-up in the plane of the tilt, and exact distances between them.

Lengths in any one unit.

A part of the wheel's head is a core (a segment or a convex outline) with a radius about it: a wheel
that passes along is its center's path with its own radius. So no circle is ever made a polygon.
Distances of the cores come from shapely; where cores overlap, the least way that parts them is
found by separating axes, which for convex outlines is exact.
"""

from dataclasses import dataclass
from typing import Literal

import numpy as np
from numpy.typing import NDArray
from shapely import LineString, Polygon, shortest_line

Array = NDArray[np.float64]
Point = tuple[float, float]
#: What a body is, whatever it is called.
BodyKind = Literal[
    "cone", "shank", "nose", "turning-part", "fixture-body", "plate", "stack", "base"
]


@dataclass(frozen=True, slots=True)
class Body:
    """A convex outline of the set-up: its corners in order. `ground`: the wheel touches it.

    Only a turning part has a name that somebody gave it; nothing is told from it.
    """

    name: str
    kind: BodyKind
    corners: tuple[Point, ...]
    ground: bool = False


@dataclass(frozen=True, slots=True)
class HeadPart:
    """Wheel, flange or guard over the whole stroke: core, and the radius about it (0: none)."""

    name: str
    core: tuple[Point, ...]
    radius: float = 0.0


@dataclass(frozen=True, slots=True)
class Gap:
    """Distance of a head part from a body, and where; negative: by how much they overlap."""

    part: str
    body: str
    gap: float
    on_part: Point
    on_body: Point


#: Nearer than this, far below an atom in inches or mm, cores touch and no direction is left.
TOUCHING = 1e-12


def box(left: float, bottom: float, right: float, top: float) -> tuple[Point, ...]:
    """Corners of an upright rectangle."""
    return ((left, bottom), (right, bottom), (right, top), (left, top))


def gap_between(part: HeadPart, body: Body) -> Gap:
    """Exact distance of a part from a body; where they overlap, less than 0 by the way out."""
    core, outline = _shape(part.core), Polygon(body.corners)
    line = shortest_line(core, outline)
    distance = float(line.length)
    start, end = ((float(x), float(y)) for x, y in line.coords)
    if distance < TOUCHING:
        depth = overlap(part.core, body.corners)
        return Gap(part.name, body.name, -depth - part.radius, start, end)
    share = part.radius / distance
    on_part = (start[0] + share * (end[0] - start[0]), start[1] + share * (end[1] - start[1]))
    return Gap(part.name, body.name, distance - part.radius, on_part, end)


def _shape(core: tuple[Point, ...]) -> LineString | Polygon:
    return LineString(core) if len(core) == 2 else Polygon(core)


def overlap(first: tuple[Point, ...], second: tuple[Point, ...]) -> float:
    """Least way that parts two convex outlines (or a segment and one) that overlap.

    Over the normals of all edges: how far one reaches past the beginning of the other.
    """
    a, b = np.array(first), np.array(second)
    normals = np.vstack([_normals(a), _normals(b)])
    return float(np.min(np.max(a @ normals.T, axis=0) - np.min(b @ normals.T, axis=0)))


def _normals(corners: Array) -> Array:
    """Unit normals of all edges, both ways."""
    edges = np.roll(corners, -1, axis=0) - corners
    edges = edges[np.hypot(edges[:, 0], edges[:, 1]) > 0.0]
    normals = np.column_stack([edges[:, 1], -edges[:, 0]])
    normals /= np.hypot(normals[:, 0], normals[:, 1])[:, np.newaxis]
    return np.vstack([normals, -normals])
