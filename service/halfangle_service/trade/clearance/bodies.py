"""Bodies of a set-up in the plane of the tilt, and exact distances between them.

Lengths in any one unit.

A part of the wheel's head is a core (a segment or a convex outline) with a radius about it: a wheel
that passes along is its center's path with its own radius. So no circle is ever made a polygon.
Distances of the cores come from shapely; where cores overlap, the least way that parts them is
found by separating axes, which for convex outlines is exact.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Literal

from shapely import LineString, Polygon, get_coordinates, polygons, shortest_line

Point = tuple[float, float]
#: What a body is, whatever it is called.
BodyKind = Literal[
    "cone",
    "shank",
    "nose",
    "turning-part",
    "fixture-body",
    "plate",
    "stack",
    "base",
    "work",
    "holder",
    "angle-plate",
    "bore",
    "table",
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


def gaps_between(pairs: Sequence[tuple[HeadPart, Body]]) -> list[Gap]:
    """Exact distance of each part from its body; where they overlap, less than 0 by the way out."""
    cores = [_shape(part.core) for part, _ in pairs]
    # Outlines of fewer corners end in one of them again, so that all are made at once.
    most = max((len(body.corners) for _, body in pairs), default=0)
    outlines = polygons(
        [(*body.corners, *body.corners[-1:] * (most - len(body.corners))) for _, body in pairs]
    )
    ends = get_coordinates(shortest_line(cores, outlines)).reshape(-1, 4).tolist()
    return [_gap(part, body, *line) for (part, body), line in zip(pairs, ends, strict=True)]


def _gap(part: HeadPart, body: Body, x: float, z: float, to_x: float, to_z: float) -> Gap:
    """The gap, by the shortest line from the part's core to the body."""
    distance = math.hypot(to_x - x, to_z - z)
    if distance < TOUCHING:
        depth = overlap(part.core, body.corners)
        return Gap(part.name, body.name, -depth - part.radius, (x, z), (to_x, to_z))
    share = part.radius / distance
    on_part = (x + share * (to_x - x), z + share * (to_z - z))
    return Gap(part.name, body.name, distance - part.radius, on_part, (to_x, to_z))


@lru_cache(maxsize=64)
def _shape(core: tuple[Point, ...]) -> LineString | Polygon:
    return LineString(core) if len(core) == 2 else Polygon(core)


def overlap(first: tuple[Point, ...], second: tuple[Point, ...]) -> float:
    """Least way that parts two convex outlines (or a segment and one) that overlap.

    Over the normals of all edges, both ways: how far one reaches past the beginning of the other.
    """
    return min(
        way for x, z in (*_normals(first), *_normals(second)) for way in _ways(first, second, x, z)
    )


def _ways(one: Sequence[Point], other: Sequence[Point], x: float, z: float) -> tuple[float, float]:
    """How far each reaches past the beginning of the other along a direction."""
    a, b = ([x * u + z * v for u, v in corners] for corners in (one, other))
    return max(a) - min(b), max(b) - min(a)


def _normals(corners: Sequence[Point]) -> Iterator[Point]:
    """Unit normals of all edges."""
    for (x, z), (to_x, to_z) in zip(corners, (*corners[1:], corners[0]), strict=True):
        length = math.hypot(to_x - x, to_z - z)
        if length > 0.0:
            yield (to_z - z) / length, (x - to_x) / length
