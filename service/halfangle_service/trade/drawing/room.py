"""What of a sheet is taken, and whether words would lie free there; millimetres on paper."""

from collections.abc import Iterable, Sequence
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from halfangle_service.trade.drawing.marks import Box, Point

Boxes = NDArray[np.float64]
#: Keeps a division by the length of an upright or level line away from 0 / 0.
_LEAST = 1e-12


class Room:
    """Lines and boxes that words must not touch."""

    def __init__(self) -> None:
        self._lines: list[tuple[float, float, float, float]] = []
        self._words: list[Box] = []
        self._heads: list[Box] = []

    def take_line(self, points: Sequence[Point]) -> None:
        """A chain of lines lies there."""
        self._lines += [(*start, *end) for start, end in pairwise(points)]

    def take_words(self, box: Box) -> None:
        """Words lie there."""
        self._words.append(box)

    def take_head(self, box: Box) -> None:
        """An arrowhead or a dot lies there; a line may pass it."""
        self._heads.append(box)

    def free(self, boxes: Sequence[Box], rim: float = 0.0) -> NDArray[np.bool_]:
        """Which of these boxes, with a rim, touch nothing that is there."""
        asked = np.asarray(boxes, dtype=float).reshape(-1, 4) + np.array([-rim, -rim, rim, rim])
        hit = np.zeros(len(asked), dtype=bool)
        if self._lines:
            hit |= _crossed(asked, np.asarray(self._lines)).any(axis=1)
        if self._words or self._heads:
            hit |= _overlaid(asked, np.asarray([*self._words, *self._heads])).any(axis=1)
        return ~hit

    def all_free(self, boxes: Iterable[Box], rim: float = 0.0) -> bool:
        """True where none of these boxes touches anything."""
        return bool(self.free(list(boxes), rim).all())

    def words_crossed(self, start: Point, end: Point) -> bool:
        """True where a line would cross words."""
        if not self._words:
            return False
        return bool(_crossed(np.asarray(self._words), np.asarray([(*start, *end)])).any())

    def lines_crossed(self, start: Point, end: Point) -> int:
        """How many lines a leader would cross."""
        if not self._lines:
            return 0
        lines = np.asarray(self._lines)
        (x, y), (to_x, to_y) = start, end
        first, last = lines[:, :2], lines[:, 2:]
        way, along = np.array([to_x - x, to_y - y]), last - first
        from_start = first - (x, y)
        turn = way[0] * along[:, 1] - way[1] * along[:, 0]
        turn = np.where(np.abs(turn) < _LEAST, _LEAST, turn)
        t = (from_start[:, 0] * along[:, 1] - from_start[:, 1] * along[:, 0]) / turn
        u = (from_start[:, 0] * way[1] - from_start[:, 1] * way[0]) / turn
        return int(((t > 0.02) & (t < 1.0) & (u >= 0.0) & (u <= 1.0)).sum())


def _crossed(boxes: Boxes, lines: Boxes) -> NDArray[np.bool_]:
    """Which lines (columns) meet which boxes (rows): by the slabs of both directions."""
    start, way = lines[None, :, :2], (lines[:, 2:] - lines[:, :2])[None, :, :]
    way = np.where(np.abs(way) < _LEAST, _LEAST, way)
    one = (boxes[:, None, :2] - start) / way
    other = (boxes[:, None, 2:] - start) / way
    enters = np.minimum(one, other).max(axis=2)
    leaves = np.maximum(one, other).min(axis=2)
    met: NDArray[np.bool_] = (enters <= leaves) & (enters <= 1.0) & (leaves >= 0.0)
    return met


def _overlaid(boxes: Boxes, others: Boxes) -> NDArray[np.bool_]:
    one, other = boxes[:, None, :], others[None, :, :]
    met: NDArray[np.bool_] = (
        (one[..., 0] < other[..., 2])
        & (other[..., 0] < one[..., 2])
        & (one[..., 1] < other[..., 3])
        & (other[..., 1] < one[..., 3])
    )
    return met
