"""What of a sheet is taken, and whether words would lie free there; millimetres on paper."""

from collections.abc import Iterable, Sequence
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from halfangle_service.trade.drawing.marks import Box, Point

Rows = NDArray[np.float64]
Flags = NDArray[np.bool_]
#: Words side by side are not read as one sentence.
_SPACE = 1.5
#: Keeps a division by the length of an upright or level line away from 0 / 0.
_LEAST = 1e-12


class _Table:
    """Rows of four numbers that grow, as an array; doubled where it is full."""

    def __init__(self) -> None:
        self._rows: Rows = np.empty((64, 4))
        self._count = 0

    def add(self, rows: Sequence[tuple[float, float, float, float]]) -> None:
        """Add rows."""
        count = self._count + len(rows)
        while count > len(self._rows):
            self._rows = np.concatenate([self._rows, np.empty_like(self._rows)])
        self._rows[self._count : count] = rows
        self._count = count

    @property
    def rows(self) -> Rows:
        """The rows so far."""
        return self._rows[: self._count]


class Room:
    """Lines and boxes that words must not touch."""

    def __init__(self) -> None:
        self._lines, self._words, self._heads = _Table(), _Table(), _Table()

    def take_line(self, points: Sequence[Point]) -> None:
        """A chain of lines lies there."""
        self._lines.add([(*start, *end) for start, end in pairwise(points)])

    def take_words(self, box: Box) -> None:
        """Words lie there."""
        self._words.add([box])

    def take_head(self, box: Box) -> None:
        """An arrowhead or a dot lies there; a line may pass it."""
        self._heads.add([box])

    def free(self, boxes: Sequence[Box], rim: float = 0.0) -> Flags:
        """Which of these boxes, with a rim, touch nothing that is there."""
        asked = np.asarray(boxes, dtype=float).reshape(-1, 4)
        asked = asked + np.array([-rim, -rim, rim, rim])
        apart = asked + np.array([-_SPACE, 0.0, _SPACE, 0.0])
        hit = _overlaid(apart, self._words.rows).any(axis=1)
        hit |= _overlaid(asked, self._heads.rows).any(axis=1)
        hit |= _crossed(asked, _near(asked, self._lines.rows)).any(axis=1)
        return np.logical_not(hit)

    def all_free(self, boxes: Iterable[Box], rim: float = 0.0) -> bool:
        """True where none of these boxes touches anything."""
        return bool(self.free(list(boxes), rim).all())

    def words_crossed(self, start: Point, end: Point) -> bool:
        """True where a line would cross words."""
        return bool(_crossed(self._words.rows, np.array([(*start, *end)])).any())

    def lines_crossed(self, start: Point, end: Point) -> int:
        """How many lines a leader would cross."""
        lines = self._lines.rows
        x, y = start
        way_x, way_y = end[0] - x, end[1] - y
        from_x, from_y = lines[:, 0] - x, lines[:, 1] - y
        along_x, along_y = lines[:, 2] - lines[:, 0], lines[:, 3] - lines[:, 1]
        turn = way_x * along_y - way_y * along_x
        turn = np.where(np.abs(turn) < _LEAST, _LEAST, turn)
        t = (from_x * along_y - from_y * along_x) / turn
        u = (from_x * way_y - from_y * way_x) / turn
        return int(((t > 0.02) & (t < 1.0) & (u >= 0.0) & (u <= 1.0)).sum())


def _near(boxes: Rows, lines: Rows) -> Rows:
    """Lines whose own boxes touch the box around all boxes: no other can be met."""
    if not len(boxes) or not len(lines):
        return lines
    left, top = boxes[:, 0].min(), boxes[:, 1].min()
    right, bottom = boxes[:, 2].max(), boxes[:, 3].max()
    kept = np.minimum(lines[:, 0], lines[:, 2]) <= right
    kept &= np.maximum(lines[:, 0], lines[:, 2]) >= left
    kept &= np.minimum(lines[:, 1], lines[:, 3]) <= bottom
    kept &= np.maximum(lines[:, 1], lines[:, 3]) >= top
    found: Rows = lines[kept]
    return found


def _crossed(boxes: Rows, lines: Rows) -> Flags:
    """Which lines (columns) meet which boxes (rows): by the slabs of both directions."""
    enters = np.full((len(boxes), len(lines)), -np.inf)
    leaves = np.full((len(boxes), len(lines)), np.inf)
    for axis in (0, 1):
        start, way = lines[:, axis], lines[:, axis + 2] - lines[:, axis]
        way = np.where(np.abs(way) < _LEAST, _LEAST, way)
        one = (boxes[:, None, axis] - start) / way
        other = (boxes[:, None, axis + 2] - start) / way
        np.maximum(enters, np.minimum(one, other), out=enters)
        np.minimum(leaves, np.maximum(one, other), out=leaves)
    met: Flags = (enters <= leaves) & (enters <= 1.0) & (leaves >= 0.0)
    return met


def _overlaid(boxes: Rows, others: Rows) -> Flags:
    """Which boxes (rows) lie over which others (columns)."""
    met: Flags = boxes[:, None, 0] < others[:, 2]
    met &= others[:, 0] < boxes[:, None, 2]
    met &= boxes[:, None, 1] < others[:, 3]
    met &= others[:, 1] < boxes[:, None, 3]
    return met
