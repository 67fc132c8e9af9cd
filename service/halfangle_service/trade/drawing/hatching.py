"""Hatching of a section: thin lines at 45°, evenly apart (ISO 128-3); millimetres on paper."""

import math
from collections.abc import Iterator, Sequence

from halfangle_service.trade.drawing.marks import Box, Point

APART = 1.6
#: A line in a corner that is no longer than this is none.
_SHORTEST = 0.05
_COS = math.sqrt(0.5)


def hatched(outline: Sequence[Point], apart: float = APART) -> Iterator[tuple[Point, Point]]:
    """Lines that rise to the right within an outline; holes as second outlines are not known."""
    # Turned so that the lines are level: u along them, v across.
    turned = [((x - y) * _COS, (x + y) * _COS) for x, y in outline]
    sides = list(zip(turned, (*turned[1:], turned[0]), strict=True))
    across = [v for _, v in turned]
    for step in range(math.ceil(min(across) / apart), math.floor(max(across) / apart) + 1):
        level = step * apart
        cuts = sorted(
            u + (level - v) / (to_v - v) * (to_u - u)
            for (u, v), (to_u, to_v) in sides
            if (v <= level) != (to_v <= level)
        )
        for start, end in zip(cuts[::2], cuts[1::2], strict=True):
            if end - start > _SHORTEST:
                yield _back(start, level), _back(end, level)


def _back(u: float, v: float) -> Point:
    return (u + v) * _COS, (v - u) * _COS


def interrupted(line: tuple[Point, Point], boxes: Sequence[Box]) -> Iterator[tuple[Point, Point]]:
    """What is left of a line where words lie over it (hatching is interrupted for them)."""
    (x, y), (to_x, to_y) = line
    wx, wy = to_x - x, to_y - y
    # The line rises to the right: x grows and y falls along it, so that neither way is nothing.
    covered = sorted(
        (max((box[0] - x) / wx, (box[3] - y) / wy), min((box[2] - x) / wx, (box[1] - y) / wy))
        for box in boxes
    )
    free = 0.0
    for enters, leaves in (*covered, (1.0, 1.0)):
        if enters < leaves or enters == 1.0:
            end = min(enters, 1.0)
            if end > free:
                yield (x + free * wx, y + free * wy), (x + end * wx, y + end * wy)
            free = max(free, end, leaves)
